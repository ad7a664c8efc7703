// words.h - amounts as people say them: English, exact, independent of the locale.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "larderloop/core/household.h"

namespace larderloop {

// "pouch", 2 -> "pouches"; 1 (and -1) keeps the word.
[[nodiscard]] std::string plural(std::string_view word, std::int64_t count);
// "2 pouches", "1 jar and 3 servings", "half a serving", "2.5 servings", "no pouches". Whole units first, the rest in servings.
[[nodiscard]] std::string units_words(const Food& food, HalfServings amount);
[[nodiscard]] std::string money_words(std::int64_t cents, std::string_view currency);  // "2.49 EUR"
[[nodiscard]] std::string mass_words(std::int64_t grams);                              // "850 g", "1.2 kg"
[[nodiscard]] std::string list_words(const std::vector<std::string>& names);           // "a, b and c"

}  // namespace larderloop
