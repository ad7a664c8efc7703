// plain_names.h - names of things as people say them, for lines that more than one output shows.
#pragma once

#include <string>
#include <vector>

#include "larderloop/core/household.h"

namespace larderloop {

[[nodiscard]] std::string first_name(const Household& household, const PersonKey& person);
[[nodiscard]] std::string first_names(const Household& household, const std::vector<PersonKey>& people);  // "Mira, Jon and Ada"
[[nodiscard]] std::string food_words(const Household& household, const FoodKey& food);
[[nodiscard]] std::string place_words(const Household& household, const PlaceKey& place);
[[nodiscard]] std::string meal_words(Meal meal);  // "Dinner"

}  // namespace larderloop
