// ical_text.h - texts made fit for iCalendar (RFC 5545 section 3.3.11): libical 3.0.16 lets control
// characters and broken UTF-8 through.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace larderloop {

// Valid UTF-8 without control characters, surrogates, noncharacters and byte order marks. Every
// kind of line end (CR LF, CR, NEL, U+2028, U+2029) becomes LF; HTAB stays.
[[nodiscard]] std::string clean_text(std::string_view text);
// As clean_text on one line: line ends and tabs become single spaces, none at the ends.
[[nodiscard]] std::string clean_line(std::string_view text);
// At most `octets` octets of valid UTF-8, cut between characters, then ending in an ellipsis.
[[nodiscard]] std::string cut_text(std::string text, std::size_t octets);

}  // namespace larderloop
