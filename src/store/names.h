// names.h - words of the file for enumerations that core has no word for; all others are core's own
// words.
#pragma once

#include "larderloop/core/allergen.h"
#include "larderloop/core/household.h"

#include <optional>
#include <string_view>

namespace larderloop::store {

[[nodiscard]] std::string_view declared_word(Declared declared);  // "may_contain"
[[nodiscard]] std::optional<Declared> parse_declared(std::string_view word);
[[nodiscard]] std::string_view rotate_word(Rotate rotate);  // "auto"
[[nodiscard]] std::optional<Rotate> parse_rotate(std::string_view word);
[[nodiscard]] std::string_view weekday_word(Weekday weekday);  // "monday"
[[nodiscard]] std::optional<Weekday> parse_weekday_word(std::string_view word);

}  // namespace larderloop::store
