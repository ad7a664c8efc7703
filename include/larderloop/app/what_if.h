// what_if.h - what a change would make wrong, before anything is written: a new allergy or diet,
// somebody who comes or goes, a birthday, a recall, a label that reads otherwise, a place that
// became hot. Meaning:  the household is changed in memory, every kit is checked and its refill
// planned as it is and as it would be, and the difference is told.
#pragma once

#include "larderloop/app/asked.h"
#include "larderloop/app/kit_check.h"
#include "larderloop/app/plan.h"
#include "larderloop/app/things.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <optional>
#include <string>
#include <vector>

namespace larderloop {

// What is assumed; several at once are one change. `avoid`, `diets`: of `person`. `joins`: a new
// person, key may be empty. `older`: who has a birthday. `gtin`, `lot_code`: of a recall; both
// given = lots that match both. `label`: of `lot`.
struct WhatIf {
  std::optional<PersonKey> person;
  std::vector<Avoid> avoid;
  std::set<Diet> diets;
  std::optional<Person> joins;
  std::optional<PersonKey> leaves;
  std::optional<PersonKey> older;
  std::string gtin;
  std::string lot_code;
  std::optional<LotId> lot;
  std::optional<LabelRead> label;
  std::optional<PlaceKey> hot;
};

// A helping of the plan as it was last shown that would be wrong.
struct WrongMeal {
  Day day{};
  Meal meal = Meal::kDinner;
  PersonKey person;
  FoodKey food;
  LotId lot;
  std::string why;
};
struct KitWhatIf {
  PlaceKey kit;
  bool ready_before = false;
  bool ready_after = false;
  std::vector<KitFinding> wrong;   // findings that are new
  std::vector<KitFinding> solved;  // findings that would be gone
  std::vector<BuyLine> buy;        // that the refill would buy and does not buy now
  std::vector<Unmet> unmet;        // lines that would stay empty and do not now
  std::int64_t cost_before = 0;    // of the refill, in cents
  std::int64_t cost_after = 0;
};
struct WhatIfReport {
  std::vector<std::string> assumed;  // plain clauses
  std::vector<KitWhatIf> kits;       // by key
  std::vector<WrongMeal> meals;      // by day, meal, person
  std::string not_written;           // why this cannot be written down as it is; empty: it can
};

// The changes are what would be written: nothing for what cannot be. kUsage: nothing is assumed.
// kBadData, kNotFound: as the commands that write it.
[[nodiscard]] Result<Outcome<WhatIfReport>> what_if(const Household& household,
                                                    const WhatIf& assumed, Asked asked);

}  // namespace larderloop
