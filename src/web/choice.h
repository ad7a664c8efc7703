// choice.h - what a request asks of a document besides its bytes: coding, conditions, dates (RFC
// 9110 sections 12.5.3, 13.1, 5.6.7).
#pragma once

#include "larderloop/core/date.h"

#include <string>
#include <string_view>

namespace larderloop {

// May the answer come as gzip? By the value of Accept-Encoding.
[[nodiscard]] bool accepts_gzip(std::string_view accept_encoding);
// Is this tag, `"mark"` with its quotes, among those of If-None-Match? Compared weakly, as the
// field demands; "*" is any.
[[nodiscard]] bool names_tag(std::string_view if_none_match, std::string_view tag);
// "Sat, 03 Apr 2027 08:00:00 GMT"
[[nodiscard]] std::string http_date(Instant at);
// gzip (RFC 1952) without a time in it: the same bytes give the same bytes.
[[nodiscard]] std::string packed(std::string_view bytes);

}  // namespace larderloop
