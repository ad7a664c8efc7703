// shop.h - the replacement list, and with `pantry` the par levels on top: what to buy, by shop.
#pragma once

#include <vector>

#include "larderloop/app/plan.h"

namespace larderloop {

struct ShopGroup {
  std::string shop;  // empty: no shop known
  std::vector<BuyLine> lines;
  std::int64_t cost_cents = 0;
};
struct ShopList {
  Day as_of{};
  std::optional<Day> shop_by;  // the last shopping day before the first kit review the list is for, or today when it is due
  std::vector<ShopGroup> groups;
  std::vector<Unmet> unmet;    // no known food fits
  std::int64_t cost_cents = 0;
};
// `plan`: of the same household and day.
[[nodiscard]] ShopList shop_list(const Household& household, const PlanReport& plan, bool pantry);

}  // namespace larderloop
