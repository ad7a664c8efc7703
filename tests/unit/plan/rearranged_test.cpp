// Plans rearranged by trial: always allowed, never worse, and what was promised stays.
#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"
#include "plan/fefo.h"
#include "support/problem_maker.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <vector>

namespace larderloop::plan {
namespace {

constexpr std::int64_t kWork = 300'000;

std::vector<std::int64_t> values(const EatDownProblem& problem, const EatDownPlan& plan) {
  const Verdict verdict = check(problem, plan);
  EXPECT_TRUE(verdict.allowed()) << verdict.violations.front();
  std::vector<std::int64_t> all;
  for (const Level& level : verdict.levels) all.push_back(level.value);
  return all;
}

test::EatSize household() {
  test::EatSize size = test::kFamilyEat;
  size.products = 12;
  size.lots = 40;
  size.weeks = 8;
  return size;
}

TEST(Rearranged, PlansOfHouseholdsGetBetter) {
  int better = 0;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    SCOPED_TRACE(seed);
    const EatDownProblem problem = test::make_eat_problem(seed, household());
    const CompiledEat compiled(problem);
    const EatDownPlan greedy = plan_eat_down(problem);
    const auto before = values(problem, greedy);
    const auto after = values(problem, rearranged(problem, compiled, greedy, kWork));
    EXPECT_LE(after, before);
    better += after < before ? 1 : 0;
  }
  EXPECT_GT(better, 10);
}

// Opened packs that keep some days, opened by another planner, so that units take servings from one
// another.
TEST(Rearranged, AnyAllowedPlanCanBeLaidOut) {
  for (std::uint64_t seed = 1; seed <= 200 * test::test_scale(); ++seed) {
    SCOPED_TRACE(seed);
    const EatDownProblem problem = test::make_eat_problem(seed, test::kTinyEat);
    const CompiledEat compiled(problem);
    const EatDownPlan by_date = plain_date_order_with_rules(problem);
    if (!check(problem, by_date).allowed()) continue;
    const EatDownPlan after = rearranged(problem, compiled, by_date, kWork);
    EXPECT_LE(values(problem, after).front(), values(problem, by_date).front());
  }
}

std::int64_t day_of(const EatDownProblem& problem, const std::string& meal) {
  const auto found = std::find_if(problem.meals.begin(), problem.meals.end(),
                                  [&](const EatMeal& each) { return each.id == meal; });
  return found->day;
}

TEST(Rearranged, WhatWasShownStays) {
  test::EatSize size = household();
  size.published = true;
  int shown = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(seed);
    EatDownProblem problem = test::make_eat_problem(seed, size);
    problem.keep_published = true;
    const CompiledEat compiled(problem);
    const EatDownPlan plan = plan_eat_down(problem);
    const EatDownPlan after = rearranged(problem, compiled, plan, kWork);
    EXPECT_EQ(values(problem, after).front(),
              values(problem, plan).front());  // the level "dropped"
    for (const MealServing& each : problem.published) {
      const auto holds = [&](const EatDownPlan& of) {
        return std::any_of(of.servings.begin(), of.servings.end(), [&](const MealServing& line) {
          return line.product == each.product && line.meal == each.meal &&
                 line.eater == each.eater && line.servings >= each.servings;
        });
      };
      if (!holds(plan) || day_of(problem, each.meal) > problem.published_until) continue;
      ++shown;
      EXPECT_TRUE(holds(after)) << each.product << " at " << each.meal;
    }
  }
  EXPECT_GT(shown, 10);
}

TEST(Rearranged, IsTheSameTwice) {
  const EatDownProblem problem = test::make_eat_problem(3, household());
  const CompiledEat compiled(problem);
  const EatDownPlan greedy = plan_eat_down(problem);
  EXPECT_EQ(rearranged(problem, compiled, greedy, kWork).servings,
            rearranged(problem, compiled, greedy, kWork).servings);
}

}  // namespace
}  // namespace larderloop::plan
