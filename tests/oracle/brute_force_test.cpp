// The checker and the planners against exhaustive search on tiny random problems.
#include "oracle/brute_force.h"

#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"
#include "support/problem_maker.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <set>

namespace larderloop::plan {
namespace {

using test::Vector;

constexpr std::int64_t kMostPlans = 20'000;

Vector values(const Verdict& verdict) {
  Vector all;
  for (const Level& level : verdict.levels) all.push_back(level.value);
  return all;
}

std::string text(const EatDownPlan& plan) {
  std::set<std::string> lines;
  for (const Opened& each : plan.opened)
    lines.insert("o" + each.lot + each.meal + std::to_string(each.units));
  for (const MealServing& each : plan.servings) {
    lines.insert("s" + each.product + each.meal + each.eater + std::to_string(each.servings));
  }
  for (const LotUnits& each : plan.donated)
    lines.insert("d" + each.lot + std::to_string(each.units));
  for (const LotUnits& each : plan.wasted)
    lines.insert("w" + each.lot + std::to_string(each.units));
  std::string all;
  for (const std::string& line : lines) all += line + "\n";
  return all;
}

// A plan like the given one with one number more or less: mostly against a rule, sometimes not.
void nudge(EatDownPlan& plan, const EatDownProblem& problem, test::Dice& dice) {
  const auto pick = [&](const auto& list) -> const auto& {
    return list[static_cast<std::size_t>(
        dice.between(0, static_cast<std::int64_t>(list.size()) - 1))];
  };
  const EatMeal& meal = pick(problem.meals);
  if (dice.one_in(2)) {
    const std::string& product = pick(problem.products).id;
    const std::string& eater = pick(problem.eaters).id;
    for (auto each = plan.servings.begin(); each != plan.servings.end(); ++each) {
      if (each->product != product || each->meal != meal.id || each->eater != eater) continue;
      if (--each->servings == 0) plan.servings.erase(each);
      return;
    }
    plan.servings.push_back({product, meal.id, eater, 1});
    return;
  }
  const EatLot& lot = pick(problem.lots);
  auto closed = std::find_if(plan.wasted.begin(), plan.wasted.end(),
                             [&](const LotUnits& each) { return each.lot == lot.id; });
  auto* list = &plan.wasted;
  if (closed == plan.wasted.end()) {
    list = &plan.donated;
    closed = std::find_if(list->begin(), list->end(),
                          [&](const LotUnits& each) { return each.lot == lot.id; });
  }
  if (closed == list->end()) return;
  if (--closed->units == 0) list->erase(closed);
  for (Opened& each : plan.opened) {
    if (each.lot == lot.id && each.meal == meal.id) {
      each.units += 1;
      return;
    }
  }
  plan.opened.push_back({lot.id, meal.id, 1});
}

TEST(EatDownOracle, CheckerAllowsExactlyWhatExhaustiveSearchFindsAndCountsTheSame) {
  int problems = 0, refused = 0, nudged = 0;
  for (std::uint64_t seed = 1; problems < 60 * static_cast<int>(test::test_scale()); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const EatDownProblem problem = test::make_eat_problem(seed, test::kTinyEat);
    std::vector<EatDownPlan> plans;
    std::set<std::string> allowed;
    const bool all = test::every_eat_down_plan(
        problem, 2'000, [&](const EatDownPlan& plan, const Vector& levels) {
          plans.push_back(plan);
          allowed.insert(text(plan));
          const Verdict verdict = check(problem, plan);
          ASSERT_TRUE(verdict.allowed()) << verdict.violations.front();
          ASSERT_EQ(values(verdict), levels);
        });
    if (HasFailure()) return;
    if (!all || plans.size() < 3) continue;
    problems += 1;
    test::Dice dice(seed);
    for (int n = 0; n < 100; ++n) {
      EatDownPlan other = plans[static_cast<std::size_t>(
          dice.between(0, static_cast<std::int64_t>(plans.size()) - 1))];
      nudge(other, problem, dice);
      if (dice.one_in(2)) nudge(other, problem, dice);
      const bool allows = check(problem, other).allowed();
      ASSERT_EQ(allows, allowed.count(text(other)) > 0) << text(other);
      nudged += 1;
      refused += allows ? 0 : 1;
    }
  }
  EXPECT_GT(refused, nudged / 10);
  EXPECT_LT(refused, nudged);
}

TEST(EatDownOracle, PlannerIsNeverBetterAndSeldomWastesMoreThanTheOptimum) {
  int problems = 0, wastes_more = 0, donates_more = 0;
  for (std::uint64_t seed = 1; problems < 300 * static_cast<int>(test::test_scale()); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    test::EatSize size = test::kTinyEat;
    size.meals_a_week = 1 + static_cast<std::int64_t>(seed % 2);
    const EatDownProblem problem = test::make_eat_problem(seed, size);
    std::optional<Vector> best;
    if (!test::every_eat_down_plan(problem, kMostPlans,
                                   [&](const EatDownPlan&, const Vector& levels) {
                                     if (!best || levels < *best) best = levels;
                                   })) {
      continue;
    }
    problems += 1;
    const Verdict verdict = check(problem, plan_eat_down(problem));
    ASSERT_TRUE(verdict.allowed()) << verdict.violations.front();
    ASSERT_GE(values(verdict), *best);
    if (verdict.levels[0].value > (*best)[0]) {
      wastes_more += 1;
    } else if (verdict.levels[1].value > (*best)[1]) {
      donates_more += 1;
    }
  }
  RecordProperty("wastes_more", wastes_more);
  RecordProperty("donates_more", donates_more);
  EXPECT_LE(wastes_more * 100, problems * 3);
  EXPECT_LE(donates_more * 100, problems * 3);
}

TEST(RefillOracle, CheckerAllowsWhatExhaustiveSearchFindsAndCountsTheSame) {
  for (std::uint64_t seed = 1; seed <= 60 * test::test_scale(); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    test::RefillSize size = test::kTinyRefill;
    size.limits = seed % 2 == 0;
    const RefillProblem problem = test::make_refill_problem(seed, size);
    test::every_refill_plan(problem, 2'000, [&](const RefillPlan& plan, const Vector& levels) {
      const Verdict verdict = check(problem, plan);
      ASSERT_TRUE(verdict.allowed()) << verdict.violations.front();
      ASSERT_EQ(values(verdict), levels);
    });
    if (HasFailure()) return;
  }
}

TEST(RefillOracle, PlannerLeavesAsLittleUnmetAsCanBeWithoutLimits) {
  int problems = 0, compared = 0;
  for (std::uint64_t seed = 1; problems < 400 * static_cast<int>(test::test_scale()); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    test::RefillSize size = test::kTinyRefill;
    size.lines = 2 + static_cast<std::int64_t>(seed % 4);
    size.lots = 1 + static_cast<std::int64_t>(seed % 5);
    const RefillProblem problem = test::make_refill_problem(seed, size);
    std::optional<Vector> best;
    if (!test::every_refill_plan(problem, kMostPlans, [&](const RefillPlan&, const Vector& levels) {
          if (!best || levels < *best) best = levels;
        })) {
      continue;
    }
    problems += 1;
    const Verdict verdict = check(problem, plan_refill(problem));
    ASSERT_TRUE(verdict.allowed()) << verdict.violations.front();
    ASSERT_EQ(verdict.levels[0].value, (*best)[0]);
    ASSERT_GE(values(verdict), *best);
    if ((*best)[0] > 0) compared += 1;
  }
  EXPECT_GT(compared, problems / 10);
}

TEST(RefillOracle, PlannerIsNeverBetterUnderLimits) {
  int problems = 0, leaves_more = 0;
  for (std::uint64_t seed = 1; problems < 300 * static_cast<int>(test::test_scale()); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    test::RefillSize size = test::kTinyRefill;
    size.limits = true;
    const RefillProblem problem = test::make_refill_problem(seed, size);
    std::optional<Vector> best;
    if (!test::every_refill_plan(problem, kMostPlans, [&](const RefillPlan&, const Vector& levels) {
          if (!best || levels < *best) best = levels;
        })) {
      continue;
    }
    problems += 1;
    const Verdict verdict = check(problem, plan_refill(problem));
    ASSERT_TRUE(verdict.allowed()) << verdict.violations.front();
    ASSERT_GE(values(verdict), *best);
    if (verdict.levels[0].value > (*best)[0]) leaves_more += 1;
  }
  RecordProperty("leaves_more", leaves_more);
  EXPECT_LE(leaves_more * 100, problems * 3);
}

}  // namespace
}  // namespace larderloop::plan
