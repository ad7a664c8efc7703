// The comparison with plain date order on a household small enough to count by hand. Numbers are
// reasoned out beside each test.
#include "kit_household.h"
#include "larderloop/app/plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <tuple>

namespace larderloop {
namespace {

// Saturday 3 April 2027, weeks from Monday: Bo and Ida at dinner on this Saturday and Sunday only.
// No kit menu; the foods rotate.
//   stew: one serving a pouch, 2 for 5.00 and 5 for 10.00, 300 kcal
Household two_dinners() {
  Household household = small_household();
  household.menu.clear();
  household.lots.clear();
  household.entries.clear();
  for (Food& food : household.foods) {
    food.rotate = Rotate::kYes;
    food.meals = {Meal::kDinner};
    if (food.key == FoodKey("stew")) {
      food.packs = {{"Corner shop", 2, 500}, {"Market", 5, 1000}};
      food.energy_kcal = 300;
    }
  }
  for (const Weekday day : {Weekday::kSaturday, Weekday::kSunday})
    household.table.push_back({day, Meal::kDinner, {PersonKey("bo"), PersonKey("ida")}});
  return household;
}

Comparison compared(const Household& household) {
  PlanEffort effort;
  effort.with_plain = true;
  const auto plan = make_plan(household, asked_on("2027-04-03"), effort);
  EXPECT_TRUE(plan) << plan.error().what;
  return plan && plan->report.eat_down.comparison ? *plan->report.eat_down.comparison
                                                  : Comparison{};
}

TEST(Compare, IsOnlyMadeWhenAskedFor) {
  const auto plan = make_plan(two_dinners(), asked_on("2027-04-03"));
  ASSERT_TRUE(plan);
  EXPECT_FALSE(plan->report.eat_down.comparison);
}

// Six pouches good through Sunday, four seats: whoever shares them out, four are eaten and two are
// not. Too late to give away. Two pouches at the cheaper 2.00 each are 4.00, and 600 kcal.
TEST(Compare, WhatNobodyCanEatIsTheSameForAll) {
  Household household = two_dinners();
  add_stew(household, "2027-04-04", "pantry", 6);
  const Comparison all = compared(household);
  NotEaten two;
  two.units = 2;
  two.amount = HalfServings::servings(2);
  two.cents = 400;
  two.kcal = 600;
  EatingTally expected;
  expected.handed_out = HalfServings::servings(4);
  expected.thrown_away = two;
  EXPECT_EQ(all.plan, expected);
  EXPECT_EQ(all.allowed, expected);
  EXPECT_EQ(all.plain, expected);
  EXPECT_TRUE(all.examples.empty());
}

// Two pouches with sesame through Sunday, and two without: Ida must not have the first. By date
// alone each of them goes to a seat on Saturday (lots in the order of ids), one of them to Ida;
// allowed only, Bo has his on Saturday and Sunday, Ida the others. Nothing is wasted anywhere.
TEST(Compare, WhatGoesToTheWrongPersonIsARuleBrokenAndNoWaste) {
  Household household = two_dinners();
  add_stew(household, "2027-04-04", "pantry", 2, {{"sesame", Declared::kContains}});
  add_stew(household, "2027-04-04", "pantry", 2);
  const Comparison all = compared(household);
  EXPECT_EQ(all.plain.must_not, HalfServings::servings(1));
  EXPECT_EQ(all.plain.broken_rules, 1U);
  ASSERT_EQ(all.examples.size(), 1U);
  EXPECT_NE(all.examples[0].find("Ida would be handed Lentil stew"), std::string::npos);
  for (const EatingTally* each : {&all.plan, &all.allowed}) {
    EXPECT_EQ(each->must_not, HalfServings());
    EXPECT_EQ(each->broken_rules, 0U);
  }
  for (const EatingTally* each : {&all.plan, &all.allowed, &all.plain}) {
    EXPECT_EQ(each->handed_out, HalfServings::servings(4));
    EXPECT_EQ(each->thrown_away, NotEaten{});
  }
}

// Who refuses it is told apart from who must not have it.
TEST(Compare, RefusedIsNotForbidden) {
  Household household = two_dinners();
  household.people[1].ratings = {{FoodKey("stew"), -2}};
  add_stew(household, "2027-04-04", "pantry", 4);
  const Comparison all = compared(household);
  EXPECT_EQ(all.plain.will_not, HalfServings::servings(2));  // Ida, on both days
  EXPECT_EQ(all.plain.must_not, HalfServings());
  EXPECT_EQ(all.plain.thrown_away.units, 0);
  EXPECT_EQ(all.allowed.thrown_away.units, 2);  // Bo has two; nobody may be handed the others
  EXPECT_EQ(all.plan.thrown_away.units, 2);
}

// Two jars of six servings, good through Saturday, twenty days once opened, label never read: Ida,
// who avoids sesame, may not have it. Allowed only, Bo opens one on Saturday and has one serving on
// each weekend day through 18 April: six; the other jar stays closed. By date alone both eat of it
// on 3, 4 and 10 April, and the jar is empty; the other is past. No pack is known, so no price, and
// no energy.
TEST(Compare, AnOpenedJarCountsByServings) {
  Household household = two_dinners();
  household.lots.push_back(
      {LotId(1),
       FoodKey("jam"),
       {"2027-04-03", MarkKind::kBestBefore, Precision::kDay, day_at("2027-04-03")},
       "",
       day_at("2027-02-01"),
       std::nullopt,
       LotState::kOk,
       ""});
  Entry entry;
  entry.id = EntryId(1);
  entry.on = day_at("2027-02-01");
  entry.written_at = midnight(entry.on);
  entry.at = {LotId(1), PlaceKey("pantry"), std::nullopt};
  entry.amount = HalfServings::units(2, 6);
  household.entries.push_back(entry);
  const Comparison all = compared(household);
  EXPECT_EQ(all.allowed.handed_out, HalfServings::servings(6));
  EXPECT_EQ(all.allowed.thrown_away.units, 1);
  EXPECT_EQ(all.allowed.thrown_away.amount, HalfServings::servings(6));
  EXPECT_EQ(all.allowed.thrown_away.without_price, HalfServings::servings(6));
  EXPECT_EQ(all.allowed.thrown_away.without_energy, HalfServings::servings(6));
  EXPECT_EQ(all.allowed.thrown_away.cents, 0);
  EXPECT_EQ(all.plain.must_not, HalfServings::servings(3));
  EXPECT_EQ(all.plain.thrown_away.amount, HalfServings::servings(6));
}

// Three dinners in one week: a third serving of the same food in it is a repeat, whoever hands it
// out.
TEST(Compare, TheThirdOfAFoodInAWeekIsARepeat) {
  Household household = two_dinners();
  household.table.push_back({Weekday::kFriday, Meal::kDinner, {PersonKey("bo"), PersonKey("ida")}});
  std::sort(household.table.begin(), household.table.end(),
            [](const TableSeat& a, const TableSeat& b) {
              return std::tie(a.weekday, a.meal) < std::tie(b.weekday, b.meal);
            });
  add_stew(household, "2027-04-11", "pantry", 10);  // 3, 4, 9, 10 and 11 April
  const Comparison all = compared(household);
  EXPECT_EQ(all.plain.handed_out, HalfServings::servings(10));
  EXPECT_EQ(all.plain.repeats, HalfServings::servings(2));
  EXPECT_EQ(all.allowed.handed_out, HalfServings::servings(8));
  EXPECT_EQ(all.allowed.repeats, HalfServings());
  EXPECT_EQ(all.plan.repeats, HalfServings());
  EXPECT_EQ(all.plan.thrown_away.units, 2);
}

// The kit of kit_household without its pantry lot: Bo's line is empty, one pack of two for 5.00
// fills it, whoever refills.
TEST(Compare, PurchasesStandBesideTheGreedyRefill) {
  Household household = kit_household();
  household.lots.front().state = LotState::kDoubtful;
  const Comparison all = compared(household);
  const PurchaseTally one{1, 500, 0};
  EXPECT_EQ(all.bought, one);
  EXPECT_EQ(all.greedy, one);
}

}  // namespace
}  // namespace larderloop
