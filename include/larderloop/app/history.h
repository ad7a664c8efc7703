// history.h - what became of the food: sums of the record by food and year. They equal the record, to the half serving.
#pragma once

#include <vector>

#include "larderloop/core/household.h"
#include "larderloop/core/result.h"
#include "larderloop/core/stock.h"

namespace larderloop {

// Amounts in half servings; `counted` is the net of counts. `waste_permille`: thrown out per thousand of what left stock as eaten, given
// away or thrown out (lost is not waste: nobody knows); absent when nothing left.
struct HistoryRow {
  FoodKey food;
  int year = 0;  // 0 in the totals
  LotTotals totals;
  std::optional<int> waste_permille;
  std::int64_t paid_cents = 0;
};
struct HistoryReport {
  std::vector<HistoryRow> rows;   // by food, year
  std::vector<HistoryRow> years;  // by year, all foods
};
// An entry counts in the year it happened (`on`); a corrected entry and its correction do not count at all.
[[nodiscard]] Result<HistoryReport> make_history(const Household& household, std::optional<int> year, std::optional<FoodKey> food);

}  // namespace larderloop
