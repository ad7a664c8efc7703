// right_kit.h - the demo household after its review, with everything of the plan done: the kit as
// it should be. For tests of the check of a kit. Used by:
// tests/property/kit_check_mutations_test.cpp (needs the rooms app and intake)
#pragma once

#include "larderloop/core/household.h"

namespace larderloop::made {

inline const PlaceKey kDemoKit{"home-kit"};
// The demo household as its document has it.
[[nodiscard]] Household demo_household();
// Reviews the kit, reads every label anew (as the food's last one), takes out what must not be
// there, fills from the pantry and from the shop, gives everyone who avoids what a line names
// something else, and fills water afresh. The record is then written anew: one entry a position.
[[nodiscard]] Household right_kit(Household household, const PlaceKey& kit, Day today);

}  // namespace larderloop::made
