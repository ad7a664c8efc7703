// raw_predicate.h - a second opinion on who must not have what, for tests only. Written from the raw declarations of a household: it
// calls nothing of core's allergen, lot or eligibility code, and is slow and obvious on purpose.
// Used by:  tests/property/safety_walk_test.cpp
#pragma once

#include <string>

#include "larderloop/core/household.h"

namespace larderloop::raw {

// Must this person not be given food of this lot? Empty = may; else why, for the test's message.
[[nodiscard]] std::string forbidden_lot(const Household& household, const PersonKey& person, LotId lot, Day today);
// The same for a pack that is yet to be bought: judged by the food's last read label.
[[nodiscard]] std::string forbidden_pack(const Household& household, const PersonKey& person, const FoodKey& food, Day today);

}  // namespace larderloop::raw
