// Money, energy and days left: small records with a plain answer each.
#include "larderloop/app/waste.h"

#include "small_household.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

Entry& add_entry(Household& household, EntryKind kind, std::int64_t lot, std::string_view on,
                 std::int64_t halves) {
  Entry entry;
  entry.id = next_ids(household).entry;
  entry.kind = kind;
  entry.on = day_at(on);
  entry.written_at = midnight(entry.on);
  entry.at = {LotId(lot), PlaceKey("pantry"), std::nullopt};
  entry.amount = HalfServings(halves);
  household.entries.push_back(entry);
  return household.entries.back();
}

Food& food_of(Household& household, std::string_view key) {
  for (Food& food : household.foods) {
    if (food.key.str() == key) return food;
  }
  throw std::runtime_error("no such food");
}

WasteReport waste_of(const Household& household) {
  const auto report = make_waste(household, std::nullopt, std::nullopt);
  EXPECT_TRUE(report);
  return *report;
}

// Six pouches of stew came on 1 February 2027, good through 31 May 2028.
TEST(Waste, MoneyIsWhatWasPaidAndItsPartsSumUpToIt) {
  Household household = small_household();
  household.entries[0].paid_cents = 1000;
  food_of(household, "stew").packs = {{"Corner shop", 2, 500}};
  add_entry(household, EntryKind::kEaten, 1, "2027-03-01", 2);
  add_entry(household, EntryKind::kGivenAway, 1, "2027-03-02", 4);
  add_entry(household, EntryKind::kThrownOut, 1, "2027-03-03", 6);
  const WasteRow row = waste_of(household).rows.back();
  ASSERT_EQ(row.food.str(), "stew");
  EXPECT_EQ(row.bought.cents, 1000);
  EXPECT_EQ(row.eaten.cents, 167) << "a sixth";
  EXPECT_EQ(row.given_away.cents, 333) << "half of it is gone by now";
  EXPECT_EQ(row.thrown_out.cents, 500);
  EXPECT_EQ(row.thrown_out.pack_cents, 0);
}

TEST(Waste, WhereNothingSaysWhatWasPaidThePackDoesAndItIsSaid) {
  Household household = small_household();
  food_of(household, "stew").packs = {{"Corner shop", 1, 300}, {"Market hall", 2, 500}};
  add_entry(household, EntryKind::kThrownOut, 1, "2027-03-03", 6);
  const WasteRow row = waste_of(household).rows.back();
  EXPECT_EQ(row.thrown_out.cents, 750) << "three at the cheapest pack's 2.50";
  EXPECT_EQ(row.thrown_out.pack_cents, 750);
  EXPECT_EQ(row.thrown_out.without_price, 0);
}

TEST(Waste, WhatIsNotKnownIsCountedAndNotTakenForNothing) {
  Household household = small_household();
  food_of(household, "stew").energy_kcal = 350;
  add_entry(household, EntryKind::kThrownOut, 1, "2027-03-03", 6);
  add_entry(household, EntryKind::kThrownOut, 2, "2027-03-03", 12);
  const WasteReport report = waste_of(household);
  EXPECT_EQ(report.total.thrown_out.without_price, 18);
  EXPECT_EQ(report.total.thrown_out.cents, 0);
  EXPECT_EQ(report.total.thrown_out.kcal, 1050);
  EXPECT_EQ(report.total.thrown_out.without_energy, 12) << "a jar of jam";
}

TEST(Waste, PaidNothingIsAPrice) {
  Household household = small_household();
  household.entries[0].paid_cents = 0;
  food_of(household, "stew").packs = {{"Corner shop", 1, 300}};
  add_entry(household, EntryKind::kThrownOut, 1, "2027-03-03", 6);
  const WasteRow row = waste_of(household).rows.back();
  EXPECT_EQ(row.thrown_out.cents, 0);
  EXPECT_EQ(row.thrown_out.without_price, 0);
}

TEST(Waste, DaysLeftAreWeighedByServingsAndMayBeNegative) {
  Household household = small_household();
  add_entry(household, EntryKind::kEaten, 1, "2028-05-21", 2);      // 10 days left
  add_entry(household, EntryKind::kEaten, 1, "2028-05-31", 4);      // 0
  add_entry(household, EntryKind::kThrownOut, 1, "2028-06-03", 6);  // 3 past
  const WasteReport report = waste_of(household);
  EXPECT_EQ(report.total.eaten.average_tenths(), 33);
  EXPECT_EQ(report.total.thrown_out.average_tenths(), -30);
  EXPECT_EQ(report.total.given_away.average_tenths(), std::nullopt);
}

TEST(Waste, ALotWithoutADateHasNoDaysLeft) {
  Household household = small_household();
  household.lots[0].mark = {};
  add_entry(household, EntryKind::kEaten, 1, "2027-05-21", 2);
  const WasteReport report = waste_of(household);
  EXPECT_EQ(report.total.eaten.dated, 0);
  EXPECT_EQ(report.total.eaten.average_tenths(), std::nullopt);
}

TEST(Waste, CorrectedEntriesAreWorthNothingAndYearsStandApart) {
  Household household = small_household();
  household.entries[0].paid_cents = 600;
  const EntryId wrong = add_entry(household, EntryKind::kThrownOut, 1, "2027-03-03", 6).id;
  Entry back;
  back.id = next_ids(household).entry;
  back.kind = EntryKind::kCorrected;
  back.on = day_at("2027-03-04");
  back.corrects = wrong;
  household.entries.push_back(back);
  add_entry(household, EntryKind::kThrownOut, 1, "2028-03-03", 4);
  const WasteReport report = waste_of(household);
  ASSERT_EQ(report.years.size(), 2U);
  EXPECT_EQ(report.years[0].thrown_out.amount, 0);
  EXPECT_EQ(report.years[0].bought.cents, 600);
  EXPECT_EQ(report.years[1].thrown_out.cents, 200);
  EXPECT_EQ(report.years[1].bought.amount, 0);
  const auto one = make_waste(household, 2028, FoodKey("stew"));
  ASSERT_TRUE(one);
  EXPECT_EQ(one->total.thrown_out.cents, 200) << "the same cents, whichever part is asked for";
  EXPECT_EQ(one->rows.size(), 1U);
}

}  // namespace
}  // namespace larderloop
