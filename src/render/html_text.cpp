#include "render/html_text.h"

namespace larderloop {

std::string html_text(std::string_view text) {
  std::string safe;
  for (const char each : text) {
    switch (each) {
      case '&':
        safe += "&amp;";
        break;
      case '<':
        safe += "&lt;";
        break;
      case '>':
        safe += "&gt;";
        break;
      case '"':
        safe += "&quot;";
        break;
      case '\'':
        safe += "&#39;";
        break;
      case '\n':
        safe += "<br>";
        break;
      default:
        safe += each;
    }
  }
  return safe;
}

}  // namespace larderloop
