// Where nothing printed decides, the stricter reading counts: formula without a printed day, and
// water filled at home into a bottle that has a date of its own.
#include "larderloop/core/lot.h"
#include "unit/core/core_household.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

Food& food_in(Household& home, const char* key) {
  return const_cast<Food&>(*find_food(home, FoodKey(key)));
}

// Infant formula: its date is a safety date everywhere (21 CFR 107.20). Without a printed one the
// estimate is held as strictly; that is the tool's own rule, on the safe side.
TEST(LotStrictness, AnEstimatedDayOfFormulaIsASafetyDate) {
  Household home = core_household();
  food_in(home, "formula").storage.months_short = 6;
  for (const MarkKind kind :
       {MarkKind::kNone, MarkKind::kSellBy, MarkKind::kPackedOn, MarkKind::kProducedOn}) {
    const LotFacts facts = lot_facts(home, make_lot(2, "formula", kind, "2026-05-01"));
    EXPECT_EQ(facts.basis, DayBasis::kEstimated) << mark_kind_name(kind);
    EXPECT_EQ(facts.good_through, day_at("2026-11-01")) << mark_kind_name(kind);
    EXPECT_TRUE(facts.safety) << mark_kind_name(kind);
  }
  EXPECT_FALSE(lot_facts(home, make_lot(3, "lentil-stew", MarkKind::kNone, "")).safety);
}

TEST(LotStrictness, WithoutAnyDayThereIsNoSafetyDate) {
  const Household home = core_household();
  const LotFacts facts = lot_facts(home, make_lot(2, "formula", MarkKind::kNone, ""));
  EXPECT_EQ(facts.good_through, std::nullopt);
  EXPECT_FALSE(facts.safety);
}

// Water filled at home is replaced every six months: CDC, Creating and Storing an Emergency Water
// Supply, 2017. A date on the bottle is about what was in it first.
TEST(LotStrictness, ADateOnTheBottleOnlyShortensTheSixMonthsOfFilledWater) {
  Household home = core_household();
  LotFacts facts = lot_facts(home, make_lot(2, "canister", MarkKind::kBestBefore, "2029-01-31"));
  EXPECT_EQ(facts.basis, DayBasis::kFilled);
  EXPECT_EQ(facts.good_through, day_at("2026-11-01"));
  facts = lot_facts(home, make_lot(2, "canister", MarkKind::kBestBefore, "2026-08-31"));
  EXPECT_EQ(facts.basis, DayBasis::kPrinted);
  EXPECT_EQ(facts.good_through, day_at("2026-08-31"));
  food_in(home, "canister").storage.months_short = 24;
  facts = lot_facts(home, make_lot(2, "canister", MarkKind::kNone, ""));
  EXPECT_EQ(facts.basis, DayBasis::kFilled);
  EXPECT_EQ(facts.good_through, day_at("2026-11-01"));
}

}  // namespace
}  // namespace larderloop
