// What a change would make wrong, before it is written. Today is Saturday 3 April 2027; see
// kit_household.h.
#include "larderloop/app/what_if.h"

#include "kit_household.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace larderloop {
namespace {

Outcome<WhatIfReport> told(const Household& household, const WhatIf& assumed) {
  auto outcome = what_if(household, assumed, kReviewDay);
  EXPECT_TRUE(outcome) << outcome.error().what;
  return *outcome;
}

bool finds(const std::vector<KitFinding>& findings, Topic topic, const char* place) {
  return std::any_of(findings.begin(), findings.end(), [&](const KitFinding& each) {
    return each.topic == topic && each.place == PlaceKey(place);
  });
}

const KitWhatIf& kit_of_report(const WhatIfReport& report) {
  EXPECT_EQ(report.kits.size(), 1U);
  return report.kits.front();
}

TEST(WhatIf, ANewAllergyMakesTheBagOfThatPersonWrong) {
  WhatIf assumed;
  assumed.person = PersonKey("ida");
  assumed.avoid = {{"mustard", false}};
  const Household household = kit_household();
  const auto outcome = told(household, assumed);
  const KitWhatIf& kit = kit_of_report(outcome.report);
  EXPECT_TRUE(finds(kit.wrong, Topic::kAllergen, "bag-ida") ||
              finds(kit.wrong, Topic::kLabel, "bag-ida"));
  EXPECT_FALSE(finds(kit.wrong, Topic::kAllergen, "bag-bo"));
  EXPECT_FALSE(kit.ready_after);
  // Written down, it is what was assumed, and the check then finds the same.
  const Household then = after(household, outcome.changes);
  const auto& avoid = find_person(then, PersonKey("ida"))->avoid;
  EXPECT_TRUE(std::any_of(avoid.begin(), avoid.end(),
                          [](const Avoid& each) { return each.key == "mustard"; }));
  EXPECT_EQ(avoid.size(), 2U) << "what was avoided before is kept";
  const auto check = check_kit(then, PlaceKey("kit"), kReviewDay.today);
  ASSERT_TRUE(check);
  EXPECT_TRUE(finds(check->findings, Topic::kAllergen, "bag-ida") ||
              finds(check->findings, Topic::kLabel, "bag-ida"));
}

TEST(WhatIf, AnAllergyToNothingInTheKitChangesNothing) {
  WhatIf assumed;
  assumed.person = PersonKey("bo");
  Household household = kit_household();
  for (Lot& lot : household.lots) lot.label = label_of({}, {Diet::kVegan});
  assumed.avoid = {{"sesame", false}};
  const auto outcome = told(household, assumed);
  EXPECT_FALSE(finds(kit_of_report(outcome.report).wrong, Topic::kAllergen, "bag-bo"));
}

TEST(WhatIf, ARecallByLotCodeTakesJustThatLot) {
  Household household = kit_household();
  for (Lot& lot : household.lots) lot.lot_code = lot.id == LotId(4) ? "L44" : "L33";
  WhatIf assumed;
  assumed.lot_code = "L44";
  const auto outcome = told(household, assumed);
  const KitWhatIf& kit = kit_of_report(outcome.report);
  EXPECT_TRUE(finds(kit.wrong, Topic::kState, "bag-ida"));
  EXPECT_FALSE(finds(kit.wrong, Topic::kState, "bag-bo"));
  for (const Reading& reading : outcome.changes.readings) EXPECT_EQ(reading.lot, LotId(4));
  EXPECT_EQ(outcome.changes.readings.size(), 1U);
}

TEST(WhatIf, WhatCannotBeWrittenSaysSoAndWritesNothing) {
  WhatIf assumed;
  assumed.leaves = PersonKey("bo");
  const auto outcome = told(kit_household(), assumed);
  EXPECT_FALSE(outcome.report.not_written.empty());
  EXPECT_TRUE(outcome.changes.people.empty());
  EXPECT_FALSE(outcome.report.assumed.empty());
}

TEST(WhatIf, NothingAssumedAndNobodyKnownAreRefused) {
  const auto nothing = what_if(kit_household(), WhatIf{}, kReviewDay);
  ASSERT_FALSE(nothing.has_value());
  EXPECT_EQ(nothing.error().kind, ErrorKind::kUsage);
  EXPECT_FALSE(nothing.error().next_step.empty());
}

TEST(WhatIf, AHotPlaceShortensWhatItsFoodLasts) {
  Household household = kit_household();
  WhatIf assumed;
  assumed.hot = PlaceKey("bag-ida");
  const auto outcome = told(household, assumed);
  EXPECT_TRUE(finds(kit_of_report(outcome.report).wrong, Topic::kHeat, "bag-ida"));
  EXPECT_FALSE(finds(kit_of_report(outcome.report).wrong, Topic::kHeat, "bag-bo"));
}

}  // namespace
}  // namespace larderloop
