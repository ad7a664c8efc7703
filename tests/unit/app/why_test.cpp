#include "larderloop/app/why.h"

#include "kit_household.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace larderloop {
namespace {

WhyReport asked(const Household& household, const WhyAbout& about) {
  const auto report = why(household, about, kReviewDay);
  EXPECT_TRUE(report) << report.error().what;
  return report ? report->report : WhyReport{};
}

const WhyPart* part_of(const WhyReport& report, Fate fate) {
  const auto found = std::find_if(report.parts.begin(), report.parts.end(),
                                  [&](const WhyPart& part) { return part.fate == fate; });
  return found == report.parts.end() ? nullptr : &*found;
}

const Reason* reason_of(const WhyPart* part, WhyRule rule) {
  if (part == nullptr) return nullptr;
  const auto found = std::find_if(part->reasons.begin(), part->reasons.end(),
                                  [&](const Reason& reason) { return reason.rule == rule; });
  return found == part->reasons.end() ? nullptr : &*found;
}

// Ida alone on Saturday, both on Sunday, nobody else ever; nothing leaves the kit.
Household week_of_two() {
  Household household = kit_household();
  household.lots[2].mark.day = day_at("2028-06-30");
  household.table = {
      {static_cast<Weekday>(weekday_of(day_at("2027-04-03"))), Meal::kDinner, {PersonKey("ida")}},
      {static_cast<Weekday>(weekday_of(day_at("2027-04-04"))),
       Meal::kDinner,
       {PersonKey("bo"), PersonKey("ida")}}};
  std::sort(household.table.begin(), household.table.end(),
            [](const TableSeat& a, const TableSeat& b) { return a.weekday < b.weekday; });
  return household;
}

TEST(Why, TheOnlyOneAtTheTableMustNotHaveIt) {
  Household household = week_of_two();
  const LotId lot =
      add_stew(household, "2027-04-09", "pantry", 1, {{"sesame", Declared::kContains}});
  const WhyReport report = asked(household, lot);
  const WhyPart* eaten = part_of(report, Fate::kEaten);
  ASSERT_NE(eaten, nullptr);
  EXPECT_EQ(eaten->when->day, day_at("2027-04-04"));
  const Reason* reason = reason_of(eaten, WhyRule::kMustNot);
  ASSERT_NE(reason, nullptr);
  EXPECT_EQ(reason->person, PersonKey("ida"));
  EXPECT_EQ(reason->when->day, day_at("2027-04-03"));
  EXPECT_TRUE(reason->alone);
  // Without that rule it is eaten then.
  household.people[1].avoid.clear();
  const WhyReport freed = asked(household, lot);
  const WhyPart* sooner = part_of(freed, Fate::kEaten);
  ASSERT_NE(sooner, nullptr);
  EXPECT_EQ(sooner->when->day, day_at("2027-04-03"));
}

TEST(Why, WhatIsLeftOverNamesTheLimitThatBinds) {
  Household household = week_of_two();
  for (Person& person : household.people) person.tolerance = HalfServings(2);
  const LotId lot = add_stew(household, "2027-04-09", "pantry", 4);
  const WhyReport report = asked(household, lot);
  const WhyPart* left = part_of(report, Fate::kLeftOver);
  ASSERT_NE(left, nullptr);
  EXPECT_NE(reason_of(left, WhyRule::kWeekLimit), nullptr);
  EXPECT_NE(reason_of(left, WhyRule::kTooLateToGive), nullptr);
  for (Person& person : household.people) person.tolerance = HalfServings(40);
  household.settings.monotony = HalfServings(40);
  for (Person& person : household.people) person.appetite = HalfServings(8);
  EXPECT_EQ(part_of(asked(household, lot), Fate::kLeftOver), nullptr);
}

TEST(Why, WhatDoesNotLastIsNotKept) {
  const Household household = kit_household();
  const WhyReport report = asked(household, LotId(3));
  const WhyPart* eaten = part_of(report, Fate::kEaten);
  ASSERT_NE(eaten, nullptr);
  const Reason* reason = reason_of(eaten, WhyRule::kDate);
  ASSERT_NE(reason, nullptr);
  EXPECT_EQ(reason->good_through, day_at("2027-06-30"));
  EXPECT_EQ(reason->until, day_at("2027-10-16"));
}

TEST(Why, WhatStaysAndWhatMovesIn) {
  const Household household = kit_household();
  EXPECT_NE(part_of(asked(household, LotId(4)), Fate::kStays), nullptr);
  EXPECT_NE(part_of(asked(household, LotId(1)), Fate::kMovesIn), nullptr);
}

TEST(Why, WhatIsBoughtNamesWhatWouldDo) {
  Household household = kit_household();
  household.lots.front().state = LotState::kDoubtful;
  const WhyReport report = asked(household, FoodKey("stew"));
  const WhyPart* bought = part_of(report, Fate::kBought);
  ASSERT_NE(bought, nullptr);
  EXPECT_EQ(bought->people, (std::vector<PersonKey>{PersonKey("bo")}));
  const Reason* aside = reason_of(bought, WhyRule::kSetAside);
  ASSERT_NE(aside, nullptr);
  EXPECT_EQ(aside->lot, LotId(1));
  // Sound, it fills the line, and nothing is bought.
  household.lots.front().state = LotState::kOk;
  EXPECT_FALSE(why(household, FoodKey("stew"), kReviewDay));
}

TEST(Why, EmptyMealsSayWhy) {
  Household household = week_of_two();
  const auto no_meal = [&](const char* day, Meal meal) {
    return asked(household, MealTime{day_at(day), meal}).no_meal;
  };
  EXPECT_EQ(no_meal("2027-04-02", Meal::kDinner), NoMeal::kPassed);
  EXPECT_EQ(no_meal("2029-04-02", Meal::kDinner), NoMeal::kBeyond);
  EXPECT_EQ(no_meal("2027-04-05", Meal::kDinner), NoMeal::kNobody);
  Wish nothing;
  nothing.id = WishId(1);
  nothing.kind = WishKind::kNot;
  nothing.from = nothing.through = day_at("2027-04-04");
  household.wishes = {nothing};
  EXPECT_EQ(no_meal("2027-04-04", Meal::kDinner), NoMeal::kWish);
}

TEST(Why, WhatIsNotThereIsRefused) {
  const Household household = kit_household();
  EXPECT_EQ(why(household, LotId(99), kReviewDay).error().kind, ErrorKind::kNotFound);
  EXPECT_EQ(why(household, FoodKey("jam"), kReviewDay).error().kind, ErrorKind::kNotFound);
}

}  // namespace
}  // namespace larderloop
