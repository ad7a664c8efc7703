// json_parts.h - the recurring members of the JSON views.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "larderloop/app/reviews.h"
#include "larderloop/core/household.h"

namespace larderloop::json_parts {

using Json = nlohmann::ordered_json;

[[nodiscard]] Json day(const std::optional<Day>& day);
[[nodiscard]] Json servings(HalfServings amount);  // {"value": "1.5", "unit": "serving"}
[[nodiscard]] Json keys(const std::vector<PersonKey>& people);
[[nodiscard]] Json keys(const std::vector<PlaceKey>& places);
// lot, place, opened_on: the members of a stock position are put into `into`.
void put_position(Json& into, const StockKey& at);
// food (key) and name
void put_food(Json& into, const Household& household, const FoodKey& food);
[[nodiscard]] Json schedule(const KitSchedule& schedule);
[[nodiscard]] Json slot(const ReviewSlot& slot);
[[nodiscard]] Json leaving(const Household& household, const std::vector<Leaving>& list);
[[nodiscard]] std::string document(const std::string& schema, Day as_of, Json data);

}  // namespace larderloop::json_parts
