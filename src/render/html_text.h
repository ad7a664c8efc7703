// html_text.h - text as it stands between the tags of HTML, and in quoted attributes.
#pragma once

#include <string>
#include <string_view>

namespace larderloop {

// The five characters of markup are written as references; a line end becomes a break.
[[nodiscard]] std::string html_text(std::string_view text);

}  // namespace larderloop
