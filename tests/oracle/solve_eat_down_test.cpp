// The exact eat-down planner against exhaustive search and against the cases.
#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"
#include "larderloop/plan/solve.h"
#include "oracle/brute_force.h"
#include "support/case_reader.h"
#include "support/problem_maker.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace larderloop::plan {
namespace {

using test::Vector;

constexpr std::int64_t kMostPlans = 20'000;

// Never the exact model: only blocks of meals for the bounds and a part of the model for the plan.
constexpr Limits kInParts{20, -1, std::nullopt};

Vector values(const std::vector<Level>& levels) {
  Vector all;
  for (const Level& level : levels) all.push_back(level.value);
  return all;
}

// Problems in which every rule of the page occurs: wishes, what was shown kept or not, foods not
// wanted at a meal.
EatDownProblem tiny(std::uint64_t seed) {
  test::EatSize size = test::kTinyEat;
  test::Dice dice(seed * 7 + 3);
  size.published = dice.one_in(2);
  if (dice.one_in(3)) size.meals_a_week = 2;
  EatDownProblem problem = test::make_eat_problem(seed, size);
  problem.keep_published = size.published && dice.one_in(2);
  for (EatMeal& meal : problem.meals) {
    if (dice.one_in(8)) meal.without.insert(problem.products.front().id);
    if (dice.one_in(6) && !meal.eaters.empty())
      problem.wished.push_back(
          {problem.products.back().id, meal.id, meal.eaters.front(), dice.between(1, 2)});
  }
  return problem;
}

std::optional<Vector> best_by_trying(const EatDownProblem& problem) {
  std::optional<Vector> best;
  const bool all =
      test::every_eat_down_plan(problem, kMostPlans, [&](const EatDownPlan&, const Vector& levels) {
        if (!best || levels < *best) best = levels;
      });
  return all ? best : std::nullopt;
}

TEST(SolveEatDown, ReachesTheOptimumOfEveryCaseAndProvesIt) {
  int seen = 0;
  for (const test::PlanCase& each : test::read_plan_cases(LARDERLOOP_SRC "/tests/oracle/cases")) {
    if (each.refill) continue;
    SCOPED_TRACE(each.name);
    const Solution<EatDownPlan> solution = solve(each.eat_problem, Limits{});
    EXPECT_EQ(values(solution.levels), each.optimum);
    EXPECT_TRUE(solution.proven());
    EXPECT_TRUE(check(each.eat_problem, solution.plan).allowed());
    ++seen;
  }
  EXPECT_EQ(seen, 6);
}

TEST(SolveEatDown, IsTheBestOfAllPlansLevelByLevel) {
  std::uint64_t searched = 0;
  for (std::uint64_t seed = 1; seed <= 1500 * test::test_scale(); ++seed) {
    SCOPED_TRACE(seed);
    const EatDownProblem problem = tiny(seed);
    const std::optional<Vector> best = best_by_trying(problem);
    if (!best) continue;
    ++searched;
    const Solution<EatDownPlan> solution = solve(problem, Limits{});
    ASSERT_EQ(values(solution.levels), *best);
    ASSERT_TRUE(solution.proven());
    ASSERT_TRUE(check(problem, solution.plan).allowed());
  }
  EXPECT_GT(searched, 500U);
}

// A bound counts beside the values before it: up to the first level that falls short it must not
// pass the optimum.
TEST(SolveEatDown, BoundsOfBlocksOfMealsNeverPassTheOptimum) {
  std::uint64_t searched = 0, proven = 0;
  for (std::uint64_t seed = 1; seed <= 1500 * test::test_scale(); ++seed) {
    SCOPED_TRACE(seed);
    const EatDownProblem problem = tiny(seed);
    const std::optional<Vector> best = best_by_trying(problem);
    if (!best) continue;
    ++searched;
    const Solution<EatDownPlan> solution = solve(problem, kInParts);
    ASSERT_TRUE(check(problem, solution.plan).allowed());
    ASSERT_GE(values(solution.levels), *best);
    ASSERT_EQ(solution.levels.size(), best->size());
    for (std::size_t k = 0; k < best->size(); ++k) {
      ASSERT_TRUE(solution.levels[k].bound) << solution.levels[k].name;
      ASSERT_LE(*solution.levels[k].bound, (*best)[k]) << solution.levels[k].name;
      if (solution.levels[k].value > (*best)[k]) break;
    }
    if (solution.levels.front().proven()) ++proven;
  }
  EXPECT_GT(searched, 500U);
  EXPECT_GT(proven, searched / 2);
}

TEST(SolveEatDown, FamiliesAreNeverWorseThanTheGreedyPlanAndTheSameTwice) {
  test::EatSize size = test::kFamilyEat;
  size.products = 14;
  size.lots = 40;
  size.weeks = 8;
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    SCOPED_TRACE(seed);
    const EatDownProblem problem = test::make_eat_problem(seed, size);
    const Solution<EatDownPlan> once = solve(problem, kInParts);
    const Verdict verdict = check(problem, once.plan);
    ASSERT_TRUE(verdict.allowed()) << verdict.violations.front();
    EXPECT_LE(values(once.levels), values(check(problem, plan_eat_down(problem)).levels));
    EatDownProblem shuffled = problem;
    std::reverse(shuffled.lots.begin(), shuffled.lots.end());
    std::reverse(shuffled.meals.begin(), shuffled.meals.end());
    std::reverse(shuffled.products.begin(), shuffled.products.end());
    std::reverse(shuffled.eaters.begin(), shuffled.eaters.end());
    const Solution<EatDownPlan> again = solve(shuffled, kInParts);
    EXPECT_EQ(values(again.levels), values(once.levels));
    EXPECT_EQ(again.plan.servings, once.plan.servings);
  }
}

// What is left a week later when everybody ate what was planned, and the rest was given away or is
// past. Pre: units are eaten up at the meal where they are opened, and the next week begins a week
// after today.
EatDownProblem a_week_later(EatDownProblem problem, const EatDownPlan& plan) {
  const std::int64_t then = problem.today + 7;
  std::map<std::string, std::int64_t> opened;
  for (const Opened& each : plan.opened) {
    for (const EatMeal& meal : problem.meals) {
      if (meal.id == each.meal && meal.day < then) opened[each.lot] += each.units;
    }
  }
  for (const LotUnits& each : plan.donated) opened[each.lot] += each.units;
  for (EatLot& lot : problem.lots) {
    lot.units -= opened[lot.id];
    if (lot.last_good_day < then) lot.units = 0;
  }
  std::vector<EatMeal> meals;
  for (const EatMeal& meal : problem.meals) {
    if (meal.day >= then) meals.push_back(meal);
  }
  problem.meals = meals;
  for (Eater& eater : problem.eaters) eater.eaten_this_week.clear();
  problem.today = problem.week_start = then;
  problem.horizon_days -= 7;
  return problem;
}

EatDownPlan from_day(const EatDownProblem& problem, const EatDownPlan& plan) {
  const auto later = [&](const auto& each) {
    return std::any_of(problem.meals.begin(), problem.meals.end(),
                       [&](const EatMeal& meal) { return meal.id == each.meal; });
  };
  EatDownPlan rest = plan;
  rest.opened.clear();
  rest.servings.clear();
  rest.donated.clear();
  rest.wasted.clear();
  std::copy_if(plan.opened.begin(), plan.opened.end(), std::back_inserter(rest.opened), later);
  std::copy_if(plan.servings.begin(), plan.servings.end(), std::back_inserter(rest.servings),
               later);
  for (const LotUnits& each : plan.wasted) {
    const auto lot = std::find_if(problem.lots.begin(), problem.lots.end(),
                                  [&](const EatLot& one) { return one.id == each.lot; });
    if (lot->last_good_day >= problem.today) rest.wasted.push_back(each);
  }
  return rest;
}

TEST(SolveEatDown, AFollowedPlanGoesOnAsGoodAsItWas) {
  test::EatSize size = test::kFamilyEat;
  size.products = 14;
  size.lots = 60;
  size.weeks = 12;
  size.open_lots = size.published = false;
  std::uint64_t better = 0;
  for (std::uint64_t seed = 1; seed <= 3; ++seed) {
    SCOPED_TRACE(seed);
    EatDownProblem problem = test::make_eat_problem(seed, size);
    problem.week_start = problem.today;
    for (EatProduct& product : problem.products) product.open_days = 0;
    const Solution<EatDownPlan> first = solve(problem, household_limits());
    const EatDownProblem next = a_week_later(problem, first.plan);
    const Verdict rest = check(next, from_day(next, first.plan));
    ASSERT_TRUE(rest.allowed()) << rest.violations.front();
    const Solution<EatDownPlan> second = solve(next, household_limits(), &first, true);
    ASSERT_TRUE(check(next, second.plan).allowed());
    EXPECT_LE(values(second.levels), values(rest.levels));
    for (std::size_t k = 0; k < rest.levels.size(); ++k) {
      if (rest.levels[k].name == "late") break;
      ASSERT_TRUE(second.levels[k].bound);
      EXPECT_LE(*second.levels[k].bound, rest.levels[k].value);
      if (second.levels[k].value < rest.levels[k].value) break;
    }
    // A poor plan of the day before, with nothing known of how good it was, is not simply gone on
    // with.
    Solution<EatDownPlan> poor;
    poor.plan = plain_date_order_with_rules(problem);
    const Vector then = values(check(problem, poor.plan).levels);
    const Vector now = values(solve(problem, household_limits(), &poor, true).levels);
    EXPECT_LE(now, then);
    const Vector best = values(first.levels);
    EXPECT_LE(Vector(now.begin(), now.begin() + 3), Vector(best.begin(), best.begin() + 3));
    better += now < then ? 1U : 0U;
  }
  EXPECT_EQ(better, 3U);
}

TEST(SolveEatDown, WithNothingToDecideThereIsStillAPlan) {
  EatDownProblem problem;
  EXPECT_TRUE(solve(problem, Limits{}).proven());
  problem.products.push_back({"p", 2, 0, {Kind::kDinner}, {"milk"}});
  problem.lots.push_back({"l", "p", 10'000, 5, {}, false, 0, true});
  EXPECT_EQ(values(solve(problem, Limits{}).levels).front(), 20'000);  // no meals: all wasted
  Eater eater;
  eater.id = "e";
  eater.avoid = {"milk"};
  problem.eaters.push_back(eater);
  EatMeal meal;
  meal.id = "m";
  meal.kind = Kind::kDinner;
  meal.eaters = {"e"};
  problem.meals.push_back(meal);
  EXPECT_EQ(values(solve(problem, Limits{}).levels).front(), 20'000);  // nobody may eat it
  problem.eaters.front().avoid.clear();
  problem.meals.front().appetite["e"] = 0;
  EXPECT_EQ(values(solve(problem, Limits{}).levels).front(), 20'000);  // no appetite
  problem.meals.front().appetite["e"] = 4;
  const Solution<EatDownPlan> fed = solve(problem, Limits{});
  EXPECT_EQ(values(fed.levels).front(), 20'000 - 2);  // monotony: two servings a week
  EXPECT_TRUE(fed.proven());
  problem.horizon_days = 1;
  EXPECT_TRUE(solve(problem, Limits{}).proven());  // kept beyond the horizon: nothing to do
  problem.horizon_days = 40'000;
  problem.lots.front().last_good_day = 36'500;  // a century
  const Solution<EatDownPlan> far = solve(problem, Limits{});
  EXPECT_TRUE(check(problem, far.plan).allowed());
}

}  // namespace
}  // namespace larderloop::plan
