// Food that was shown for meals that passed and that nobody ate.
#include "kit_household.h"
#include "larderloop/app/nudge.h"
#include "larderloop/app/plan.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const LotId kLeaves(3);  // two pouches, good through 30 June 2027

// Shown at dinner on each of these days, for Bo.
Household shown_on(const std::vector<const char*>& days) {
  Household household = kit_household();
  for (const char* day : days) {
    household.shown_meals.push_back(
        {day_at(day),
         Meal::kDinner,
         {{{kLeaves, PlaceKey("bag-bo"), {}}, PersonKey("bo"), HalfServings(2)}}});
  }
  return household;
}

void eat(Household& household, const char* on) {
  Entry entry;
  entry.id = next_ids(household).entry;
  entry.kind = EntryKind::kEaten;
  entry.on = day_at(on);
  entry.written_at = midnight(entry.on);
  entry.at = {kLeaves, PlaceKey("bag-bo"), std::nullopt};
  entry.amount = HalfServings(2);
  household.entries.push_back(entry);
}

EatDown plan_on(const Household& household, const char* today) {
  const auto plan = make_plan(household, asked_on(today));
  EXPECT_TRUE(plan) << plan.error().what;
  return plan ? plan->report.eat_down : EatDown{};
}

TEST(Skipped, ThreeTimesIsSaidAndItIsStillPlanned) {
  const Household household = shown_on({"2027-04-05", "2027-04-07", "2027-04-09"});
  EXPECT_TRUE(plan_on(household, "2027-04-09").skipped.empty()) << "today's dinner is to come";
  const EatDown eat = plan_on(household, "2027-04-10");
  ASSERT_EQ(eat.skipped.size(), 1U);
  EXPECT_EQ(eat.skipped.front().lot, kLeaves);
  EXPECT_EQ(eat.skipped.front().times, 3);
  EXPECT_EQ(eat.skipped.front().people, std::vector<PersonKey>{PersonKey("bo")});
  EXPECT_EQ(eat.skipped.front().give_by, day_at("2027-05-31")) << "30 days before its date";
  bool planned = false;
  for (const PlannedMeal& meal : eat.meals) {
    for (const Helping& helping : meal.helpings) planned = planned || helping.at.lot == kLeaves;
  }
  EXPECT_TRUE(planned);
  EXPECT_EQ(plan_on(household, "2027-05-31").skipped.size(), 1U);
  EXPECT_TRUE(plan_on(household, "2027-06-01").skipped.empty()) << "more than eight weeks ago";
  const EatDown late = plan_on(shown_on({"2027-05-03", "2027-05-05", "2027-05-07"}), "2027-06-01");
  ASSERT_EQ(late.skipped.size(), 1U);
  EXPECT_FALSE(late.skipped.front().give_by) << "too late to give away";
}

TEST(Skipped, EatingStartsTheCountAnew) {
  Household household = shown_on({"2027-04-05", "2027-04-07", "2027-04-09", "2027-04-11"});
  EXPECT_EQ(plan_on(household, "2027-04-12").skipped.front().times, 4);
  Household once = household;
  eat(once, "2027-04-05");
  EXPECT_EQ(plan_on(once, "2027-04-12").skipped.front().times, 3);
  eat(household, "2027-04-07");
  EXPECT_TRUE(plan_on(household, "2027-04-12").skipped.empty());
  Entry back;
  back.id = next_ids(household).entry;
  back.kind = EntryKind::kCorrected;
  back.on = day_at("2027-04-12");
  back.written_at = midnight(back.on);
  back.corrects = household.entries.back().id;
  household.entries.push_back(back);
  EXPECT_EQ(plan_on(household, "2027-04-12").skipped.front().times, 4)
      << "it was not eaten after all";
}

TEST(Skipped, WhoWasAwaySkippedNothing) {
  Household household = shown_on({"2027-04-05", "2027-04-07", "2027-04-09"});
  household.exceptions = {
      {day_at("2027-04-07"), day_at("2027-04-07"), {}, false, {PersonKey("bo")}, {}, ""}};
  EXPECT_TRUE(plan_on(household, "2027-04-10").skipped.empty());
}

TEST(Skipped, PassedMealsStayInTheBookForEightWeeks) {
  Household household = shown_on({"2027-02-12", "2027-02-13", "2027-04-09"});
  auto plan = make_plan(household, asked_on("2027-04-10"));
  ASSERT_TRUE(plan);
  ASSERT_TRUE(plan->changes.shown_meals);
  const std::vector<ShownMeal>& kept = *plan->changes.shown_meals;
  ASSERT_GT(kept.size(), 2U);
  EXPECT_EQ(kept[0].day, day_at("2027-02-13"));
  EXPECT_EQ(kept[1].day, day_at("2027-04-09"));
  EXPECT_GE(kept[2].day, day_at("2027-04-10"));
  household = after(household, plan->changes);
  EXPECT_TRUE(make_plan(household, asked_on("2027-04-10"))->changes.empty());
}

TEST(Skipped, TheNudgeMentionsIt) {
  const Household household = shown_on({"2027-04-05", "2027-04-07", "2027-04-09"});
  const Asked asked = asked_on("2027-04-10");
  const auto plan = make_plan(household, asked);
  ASSERT_TRUE(plan);
  std::string all;
  for (const NudgeItem& item : make_nudge(household, plan->report, asked).items)
    all += item.text + "\n";
  EXPECT_NE(all.find("Skipped 3 times: Lentil stew; give it away by Mon 31 May, or rate it lower"),
            std::string::npos)
      << all;
}

}  // namespace
}  // namespace larderloop
