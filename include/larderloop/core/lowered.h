// lowered.h - small letters for comparing words: A to Z only, whatever the locale; other bytes of
// UTF-8 stay.
#pragma once

#include <string>
#include <string_view>

namespace larderloop {

[[nodiscard]] inline std::string lowered(std::string_view text) {
  std::string all(text);
  for (char& each : all) {
    if (each >= 'A' && each <= 'Z') each = static_cast<char>(each - 'A' + 'a');
  }
  return all;
}

}  // namespace larderloop
