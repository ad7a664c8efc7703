// What the planners do on small problems, and on odd ones.
#include "unit/plan/eat_problems.h"

#include <gtest/gtest.h>

namespace larderloop::plan {
namespace {

Verdict judged(const EatDownProblem& problem) {
  const EatDownPlan plan = plan_eat_down(problem);
  Verdict verdict = check(problem, plan);
  EXPECT_TRUE(verdict.allowed()) << verdict.violations.front();
  const Verdict plain = check(problem, plain_date_order(problem));
  EXPECT_EQ(plain.levels.size(), 6U);
  return verdict;
}

TEST(PlanEatDown, EatsWhatIsThere) {
  const Verdict verdict = judged(two_at_table());
  EXPECT_EQ(level(verdict, "wasted"), 0);
  EXPECT_EQ(level(verdict, "late"), 0);
}

TEST(PlanEatDown, OpensNothingThatCouldBeGivenAwayWhenSomeWouldBeLeft) {
  EatDownProblem problem = two_at_table();
  problem.products[0].servings = 3;
  problem.donate_days = 5;
  const EatDownPlan plan = plan_eat_down(problem);
  EXPECT_TRUE(plan.opened.empty());
  ASSERT_EQ(plan.donated.size(), 1U);
  EXPECT_EQ(plan.donated[0].units, 2);
  problem.donate_days = 30;  // too late to give away: two of three servings are better than none
  EXPECT_EQ(level(judged(problem), "wasted"), 2);
}

TEST(PlanEatDown, EatsWhatIsOpenFirst) {
  EatDownProblem problem = two_at_table();
  EatLot open;
  open.id = "rest";
  open.product = "beans";
  open.units = 1;
  open.last_good_day = 3;
  open.already_open = true;
  open.open_servings = 1;
  problem.lots.push_back(open);
  problem.monotony = 3;
  const EatDownPlan plan = plan_eat_down(problem);
  EXPECT_EQ(level(judged(problem), "wasted"), 0);
  const std::vector<Dealt> dealt = deal(problem, plan);
  ASSERT_FALSE(dealt.empty());
  EXPECT_EQ(dealt.front().lot, "rest");
}

TEST(PlanEatDown, NobodyIsServedWhatTheyMustNotEat) {
  EatDownProblem problem = two_at_table();
  problem.eaters[0].avoid = problem.eaters[1].avoid = {"soy"};
  const EatDownPlan plan = plan_eat_down(problem);
  EXPECT_TRUE(plan.servings.empty());
  EXPECT_EQ(level(judged(problem), "wasted"), 4);
  EXPECT_FALSE(check(problem, plain_date_order(problem)).allowed());
}

TEST(PlanEatDown, AnswersOddProblems) {
  EXPECT_EQ(level(judged({}), "wasted"), 0);
  EatDownProblem problem = two_at_table();
  problem.meals.clear();
  EXPECT_EQ(level(judged(problem), "wasted"), 4);
  problem = two_at_table();
  problem.lots.clear();
  EXPECT_EQ(level(judged(problem), "wasted"), 0);
  problem = two_at_table();
  for (EatMeal& meal : problem.meals) meal.appetite = {{"ana", 0}, {"ben", 0}};
  EXPECT_EQ(level(judged(problem), "wasted"), 4);
  problem = two_at_table();
  problem.horizon_days = 1;
  problem.lots[0].last_good_day = 0;
  EXPECT_EQ(level(judged(problem), "wasted"), 2);
  problem.horizon_days = 0;
  EXPECT_EQ(level(judged(problem), "wasted"), 0);
  problem = two_at_table();
  problem.tolerance = 0;
  EXPECT_EQ(level(judged(problem), "wasted"), 4);
}

TEST(PlanEatDown, AnswersTenThousandUnitsAndDatesACenturyAway) {
  EatDownProblem problem = two_at_table();
  problem.lots[0].units = 10'000;
  EXPECT_EQ(level(judged(problem), "wasted"), 2 * 10'000 - 4);
  for (EatMeal& meal : problem.meals) meal.appetite = {{"ana", 100'000}, {"ben", 100'000}};
  problem.tolerance = problem.monotony = 100'000;
  EXPECT_EQ(level(judged(problem), "wasted"), 0);
  problem = two_at_table();
  problem.horizon_days = 40'000;
  problem.lots[0].last_good_day = 36'500;
  problem.meals[4].day = 36'500;
  problem.lots[0].available_from = 36'000;
  EXPECT_EQ(level(judged(problem), "donated"), 2);
  problem.lots[0].last_good_day = INT64_MAX;
  EXPECT_EQ(level(judged(problem), "donated"), 0);
}

TEST(Deal, FollowsTheOldestUnitAndSortsByMealEaterAndLot) {
  EatDownProblem problem = two_at_table();
  problem.products[0].open_days = 7;
  problem.lots[0].units = 1;
  EatLot later = problem.lots[0];
  later.id = "a-later-can";
  problem.lots.push_back(later);
  EatDownPlan plan;
  plan.opened = {{"can", "d0", 1}, {"a-later-can", "d1", 1}};
  plan.servings = {{"beans", "d0", "ben", 1},
                   {"beans", "d1", "ana", 1},
                   {"beans", "d1", "ben", 1},
                   {"beans", "d2", "ana", 1}};
  ASSERT_EQ(first_violation(problem, plan), "");
  const std::vector<Dealt> dealt = deal(problem, plan);
  ASSERT_EQ(dealt.size(), 4U);
  EXPECT_EQ(dealt[0].lot, "can");
  EXPECT_EQ(dealt[1].lot, "can");
  EXPECT_EQ(dealt[1].eater, "ana");
  EXPECT_EQ(dealt[2].lot, "a-later-can");
  EXPECT_EQ(dealt[3].lot, "a-later-can");
}

// A snack that only one product can fill goes to it, though another line wanted that product first.
TEST(PlanRefill, ExchangesSoThatNoLineStaysEmpty) {
  RefillProblem problem;
  problem.hold_until = 200;
  problem.eaters.resize(2);
  problem.eaters[0].id = "ana";
  problem.eaters[1].id = "ben";
  problem.eaters[1].avoid = {"nuts"};
  problem.products = {{"nut-bar", {"snack"}, {"nuts"}, 0, 0, 0, true, false},
                      {"oat-bar", {"snack"}, {}, 0, 0, 0, true, false}};
  problem.containers = {{"bag-a", "home", {}, {}}, {"bag-b", "home", {}, {}}};
  problem.lines = {{"a", "bag-a", {"ana"}, 1, "", "snack", 1, 9},
                   {"b", "bag-b", {"ben"}, 1, "", "snack", 1, 1}};
  problem.lots = {{"oat", "oat-bar", 1, 400, true, "bag-a"}, {"nut", "nut-bar", 1, 300, false, ""}};
  const RefillPlan plan = plan_refill(problem);
  EXPECT_TRUE(check(problem, plan).allowed());
  EXPECT_TRUE(plan.unmet.empty());
}

// Two days alike: each gets one of the two rich tins, whatever order they were found in.
TEST(PlanRefill, SpreadsTheRichestUnitsOverTheDays) {
  RefillProblem problem;
  problem.eaters.resize(1);
  problem.eaters[0].id = "ana";
  problem.products = {{"rich", {"main"}, {}, 500, 1, 1, true, false},
                      {"thin", {"main"}, {}, 100, 1, 1, true, false}};
  problem.containers = {{"bag", "home", {}, {}}};
  problem.lines = {{"day1", "bag", {"ana"}, 1, "", "main", 2, 1},
                   {"day2", "bag", {"ana"}, 2, "", "main", 2, 1}};
  problem.lots = {{"a", "rich", 2, 400, true, "bag"}, {"b", "thin", 2, 300, true, "bag"}};
  const RefillPlan plan = plan_refill(problem);
  EXPECT_TRUE(check(problem, plan).allowed());
  ASSERT_EQ(plan.moves.size(), 4U);
  for (const Move& move : plan.moves) EXPECT_EQ(move.units, 1) << move.lot << " on " << move.line;
}

TEST(PlanRefill, AnswersOddProblems) {
  EXPECT_TRUE(check(RefillProblem{}, plan_refill({})).allowed());
  RefillProblem problem;
  problem.containers = {{"bag", "", 0, 0}};
  problem.products = {{"tin", {"main"}, {}, 1, 1, 1, true, false}};
  problem.lines = {{"main", "bag", {}, 1, "", "main", 10'000, 1}};
  problem.lots = {{"shelf", "tin", 10'000, 36'500, false, ""}};
  RefillPlan plan = plan_refill(problem);
  EXPECT_TRUE(check(problem, plan).allowed());
  ASSERT_EQ(plan.unmet.size(), 1U);
  problem.containers[0].mass_limit = problem.containers[0].volume_limit = std::nullopt;
  plan = plan_refill(problem);
  EXPECT_TRUE(check(problem, plan).allowed());
  EXPECT_TRUE(plan.unmet.empty());
  problem.lots[0].units = 0;
  problem.offers = {{"shop", "tin", 7, 100, 36'500, {}}};
  problem.budget = 700;
  plan = plan_refill(problem);
  EXPECT_TRUE(check(problem, plan).allowed());
  EXPECT_EQ(plan.unmet.at(0).units, 10'000 - 49);
}

}  // namespace
}  // namespace larderloop::plan
