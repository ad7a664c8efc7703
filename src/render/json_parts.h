// json_parts.h - the recurring members of plan, review and list as JSON, on top of json_common.h.
#pragma once

#include <vector>

#include "larderloop/app/reviews.h"
#include "larderloop/app/plan.h"
#include "render/json_common.h"

namespace larderloop::json_parts {

using json::Json;

// lot, place, opened_on: the members of a stock position are put into `into`.
void put_position(Json& into, const StockKey& at);
// food (key) and name
void put_food(Json& into, const Household& household, const FoodKey& food);
[[nodiscard]] Json schedule(const KitSchedule& schedule);
[[nodiscard]] Json slot(const ReviewSlot& slot);
[[nodiscard]] Json leaving(const Household& household, const std::vector<Leaving>& list);

[[nodiscard]] Json comparison(const Comparison& all);

}  // namespace larderloop::json_parts
