// The checker objects to every rule of docs/planning.md that a plan breaks, one at a time.
#include "unit/plan/eat_problems.h"

#include <gtest/gtest.h>

namespace larderloop::plan {
namespace {

void expect_violation(const EatDownProblem& problem, const EatDownPlan& plan,
                      const std::string& words) {
  EXPECT_NE(first_violation(problem, plan).find(words), std::string::npos)
      << "wanted: " << words << "\nfound: " << first_violation(problem, plan);
}

TEST(CheckEatDown, AllowsAPlanThatKeepsEveryRule) {
  const Verdict verdict = check(two_at_table(), both_cans());
  EXPECT_TRUE(verdict.allowed()) << verdict.violations.front();
  EXPECT_EQ(level(verdict, "wasted"), 0);
  EXPECT_EQ(level(verdict, "dislike"), 8);
  EXPECT_EQ(level(verdict, "order"), 2 * 1 * (1 + (28 - 10) / 7));
}

TEST(CheckEatDown, RefusesWhatIsNotInTheProblem) {
  EatDownPlan plan = both_cans();
  plan.opened.push_back({"jar", "d0", 1});
  expect_violation(two_at_table(), plan, "not in the problem");
  plan = both_cans();
  plan.servings.push_back({"beans", "d0", "cleo", 1});
  expect_violation(two_at_table(), plan, "not in the problem");
  plan = both_cans();
  plan.wasted.push_back({"jar", 0});
  expect_violation(two_at_table(), plan, "not in the problem");
}

TEST(CheckEatDown, RefusesLinesTwiceAndNegativeNumbers) {
  EatDownPlan plan = both_cans();
  plan.servings.push_back(plan.servings.front());
  expect_violation(two_at_table(), plan, "planned twice");
  plan = both_cans();
  plan.opened.push_back(plan.opened.front());
  expect_violation(two_at_table(), plan, "planned twice");
  plan = both_cans();
  plan.servings.push_back({"beans", "d2", "ana", -1});
  expect_violation(two_at_table(), plan, "negative");
  plan = both_cans();
  plan.opened.push_back({"can", "d2", -1});
  plan.wasted.push_back({"can", 1});
  expect_violation(two_at_table(), plan, "negative");
}

TEST(CheckEatDown, RefusesFoodThatSomebodyMustNotOrWillNotEat) {
  EatDownProblem problem = two_at_table();
  problem.eaters[1].avoid = {"soy"};
  expect_violation(problem, both_cans(), "must not or will not eat");
  problem = two_at_table();
  problem.eaters[0].ratings["beans"] = -2;
  expect_violation(problem, both_cans(), "must not or will not eat");
  problem.eaters[0].ratings["beans"] = -1;
  EXPECT_EQ(first_violation(problem, both_cans()), "");
}

TEST(CheckEatDown, RefusesTheWrongKindOfMealAndPeopleWhoAreNotThere) {
  EatDownProblem problem = two_at_table();
  problem.products[0].kinds = {Kind::kDinner};
  expect_violation(problem, both_cans(), "does not suit");
  problem = two_at_table();
  problem.meals[1].eaters = {"ana"};
  expect_violation(problem, both_cans(), "not at this meal");
}

TEST(CheckEatDown, RefusesOpeningPastTheLastGoodDayOrBeforeItIsThere) {
  EatDownProblem problem = two_at_table();
  problem.lots[0].last_good_day = 0;
  expect_violation(problem, both_cans(), "after its last good day");
  problem.lots[0].last_good_day = 1;  // that day still counts
  EXPECT_EQ(first_violation(problem, both_cans()), "");
  problem.lots[0].available_from = 1;
  expect_violation(problem, both_cans(), "before it is available");
  problem = two_at_table();
  problem.today = 1;
  expect_violation(problem, both_cans(), "before it is available");
}

TEST(CheckEatDown, RefusesToTouchWhatIsKept) {
  EatDownProblem problem = two_at_table();
  problem.lots[0].last_good_day = 28;
  expect_violation(problem, both_cans(), "kept");
  EatDownPlan plan;
  EXPECT_EQ(first_violation(problem, plan), "");
  plan.wasted = {{"can", 2}};
  expect_violation(problem, plan, "kept");
}

TEST(CheckEatDown, RefusesUnitsThatVanishOrAppear) {
  EatDownPlan plan = both_cans();
  plan.opened.pop_back();
  plan.servings.resize(2);
  expect_violation(two_at_table(), plan, "of 2");
  plan.wasted = {{"can", 1}};
  EXPECT_EQ(first_violation(two_at_table(), plan), "");
  plan.wasted = {{"can", 2}};
  expect_violation(two_at_table(), plan, "of 2");
}

TEST(CheckEatDown, RefusesMoreThanAppetiteToleranceAndMonotony) {
  EatDownProblem problem = two_at_table();
  problem.meals[0].appetite["ana"] = 0;
  expect_violation(problem, both_cans(), "appetite 0");
  problem = two_at_table();
  problem.tolerance = 1;
  expect_violation(problem, both_cans(), "tolerance 1");
  problem.eaters[0].tolerance = problem.eaters[1].tolerance = 2;
  EXPECT_EQ(first_violation(problem, both_cans()), "");
  problem.monotony = 1;
  expect_violation(problem, both_cans(), "at most 1");
  problem.eaters[0].monotony = problem.eaters[1].monotony = 2;
  EXPECT_EQ(first_violation(problem, both_cans()), "");
}

TEST(CheckEatDown, CountsWhatWasEatenEarlierThisWeek) {
  EatDownProblem problem = two_at_table();
  problem.eaters[0].eaten_this_week["beans"] = 1;
  expect_violation(problem, both_cans(), "3 servings of product 'beans', at most 2");
  problem.eaters[0].eaten_this_week = {{"rice", 3}};
  expect_violation(problem, both_cans(), "5 servings, tolerance 4");
  problem.week_start = -7;  // another week: today is in week 1
  EXPECT_EQ(first_violation(problem, both_cans()), "");
}

TEST(CheckEatDown, RefusesServingsWithoutAUnitAndUnitsWithoutAServing) {
  EatDownPlan plan = both_cans();
  plan.servings.push_back({"beans", "d2", "ana", 1});
  EatDownProblem problem = two_at_table();
  problem.monotony = 3;
  expect_violation(problem, plan, "without an open unit");
  plan = both_cans();
  plan.servings.resize(2);
  expect_violation(two_at_table(), plan, "1 units opened for 0 servings");
}

TEST(CheckEatDown, AnOpenedUnitLivesByItsOpenLifeAlsoPastItsDate) {
  EatDownProblem problem = two_at_table();
  problem.products[0].open_days = 2;
  problem.lots[0].units = 1;
  problem.lots[0].last_good_day = 0;
  EatDownPlan plan;
  plan.opened = {{"can", "d0", 1}};
  plan.servings = {{"beans", "d0", "ana", 1}, {"beans", "d2", "ben", 1}};
  EXPECT_EQ(first_violation(problem, plan), "");
  plan.servings[1].meal = "d3";
  expect_violation(problem, plan, "without an open unit");
}

TEST(CheckEatDown, GivesAwayOnlyInTimeAndOnlyWhatMayBe) {
  EatDownProblem problem = two_at_table();
  problem.donate_days = 10;
  EatDownPlan plan;
  plan.donated = {{"can", 2}};
  EXPECT_EQ(level(check(problem, plan), "donated"), 4);
  EXPECT_EQ(first_violation(problem, plan), "");
  problem.donate_days = 11;
  expect_violation(problem, plan, "too near");
  problem.donate_days = 10;
  problem.lots[0].may_donate = false;
  expect_violation(problem, plan, "may not be given away");
}

EatDownProblem with_open_can() {
  EatDownProblem problem = two_at_table();
  EatLot open;
  open.id = "rest";
  open.product = "beans";
  open.units = 1;
  open.last_good_day = 2;
  open.already_open = true;
  open.open_servings = 1;
  problem.lots.push_back(open);
  problem.lots[0].units = 0;
  return problem;
}

TEST(CheckEatDown, WhatIsAlreadyOpenIsEatenThroughItsDayAndTheRestIsWasted) {
  const EatDownProblem problem = with_open_can();
  EatDownPlan plan;
  EXPECT_EQ(level(check(problem, plan), "wasted"), 1);
  plan.servings = {{"beans", "d2", "ana", 1}};
  EXPECT_EQ(first_violation(problem, plan), "");
  EXPECT_EQ(level(check(problem, plan), "wasted"), 0);
  plan.servings[0].meal = "d3";
  expect_violation(problem, plan, "without an open unit");
  plan.servings = {{"beans", "d1", "ana", 1}, {"beans", "d1", "ben", 1}};
  expect_violation(problem, plan, "without an open unit");
}

TEST(CheckEatDown, WhatIsAlreadyOpenIsNeitherOpenedNorGivenAwayNorThrownOutWhole) {
  const EatDownProblem problem = with_open_can();
  EatDownPlan plan;
  plan.opened = {{"rest", "d0", 1}};
  expect_violation(problem, plan, "open already");
  plan = {};
  plan.donated = {{"rest", 1}};
  expect_violation(problem, plan, "open already");
  plan = {};
  plan.wasted = {{"rest", 1}};
  expect_violation(problem, plan, "open already");
}

TEST(CheckEatDown, WhatIsAlreadyOpenIsEatenBeforeAnotherUnitIsOpened) {
  EatDownProblem problem = with_open_can();
  problem.lots[0].units = 1;
  EatDownPlan plan;
  plan.opened = {{"can", "d0", 1}};
  plan.servings = {{"beans", "d0", "ana", 1}};
  expect_violation(problem, plan, "1 units opened for 0 servings");
  plan.servings.push_back({"beans", "d0", "ben", 1});
  EXPECT_EQ(first_violation(problem, plan), "");
  EXPECT_EQ(level(check(problem, plan), "wasted"), 1);
}

TEST(CheckEatDown, CountsLateAndChanged) {
  EatDownProblem problem = two_at_table();
  problem.lots[0].last_good_day = 4;
  EXPECT_EQ(level(check(problem, both_cans()), "late"), 2 * (7 - 4) + 2 * (7 - 3));
  problem.published = {
      {"beans", "d0", "ana", 1}, {"beans", "d3", "ben", 2}, {"beans", "gone", "ben", 5}};
  problem.published_until = 4;
  EXPECT_EQ(level(check(problem, both_cans()), "changed"), 2 + 3);
  problem.published_until = 0;
  EXPECT_EQ(level(check(problem, both_cans()), "changed"), 1);
}

TEST(CheckEatDown, RefusesNumbersThatLeave64Bits) {
  EatDownProblem problem = two_at_table();
  problem.lots[0].units = INT64_MAX;
  EatDownPlan plan;
  plan.wasted = {{"can", INT64_MAX}};
  expect_violation(problem, plan, "too large");
}

TEST(CheckEatDown, RefusesAProblemThatCannotBeJudged) {
  EatDownProblem problem = two_at_table();
  problem.lots.push_back(problem.lots[0]);
  expect_violation(problem, both_cans(), "twice");
  problem = two_at_table();
  problem.lots[0].product = "rice";
  expect_violation(problem, both_cans(), "not in the problem");
  problem = two_at_table();
  problem.products[0].servings = 0;
  expect_violation(problem, both_cans(), "no servings");
}

}  // namespace
}  // namespace larderloop::plan
