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
  std::optional<Day> shop_by;  // the earliest shop_by_day of the kits that the list is for
  std::vector<ShopGroup> groups;
  std::vector<Unmet> unmet;    // no known food fits
  std::int64_t cost_cents = 0;
};
// The household's last shopping day on or before `need`; when that is past, its next one. It moves once a week at most.
[[nodiscard]] Day shop_by_day(const Settings& settings, Day need, Day today);

// `plan`: of the same household and day.
[[nodiscard]] ShopList shop_list(const Household& household, const PlanReport& plan, bool pantry);

}  // namespace larderloop
