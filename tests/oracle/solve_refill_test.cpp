// The exact refill against exhaustive search on tiny random problems, level by level, and against
// the problems solved by hand and by three solvers outside this project (HiGHS, CBC, GLPK;
// tests/oracle/cases).
#include "larderloop/plan/check.h"
#include "larderloop/plan/solve.h"
#include "oracle/brute_force.h"
#include "support/case_reader.h"
#include "support/problem_maker.h"

#include <gtest/gtest.h>

#include <optional>

namespace larderloop::plan {
namespace {

using test::Vector;

Vector values(const std::vector<Level>& levels) {
  Vector all;
  for (const Level& level : levels) all.push_back(level.value);
  return all;
}

TEST(SolveRefill, ProvesTheOptimumOfTheCases) {
  int cases = 0;
  for (const test::PlanCase& each : test::read_plan_cases(LARDERLOOP_SRC "/tests/oracle/cases")) {
    if (!each.refill) continue;
    SCOPED_TRACE(each.name);
    cases += 1;
    const Solution<RefillPlan> solution = solve(each.refill_problem, Limits{});
    EXPECT_EQ(values(solution.levels), each.optimum);
    EXPECT_TRUE(solution.proven());
    EXPECT_FALSE(solution.stopped);
    EXPECT_EQ(values(check(each.refill_problem, solution.plan).levels), each.optimum);
  }
  EXPECT_EQ(cases, 6);
}

struct Counts {
  int problems = 0, unmet = 0, short_of_energy = 0, repeats = 0, costly = 0;
};

// Every kind of tiny problem: with limits and budget, with good units kept in place, with more
// offers or more lots.
RefillProblem tiny(std::uint64_t seed) {
  test::RefillSize size = test::kTinyRefill;
  size.limits = seed % 2 == 0;
  size.lines = 2 + static_cast<std::int64_t>(seed / 2 % 3);
  size.lots = 1 + static_cast<std::int64_t>(seed / 6 % 4);
  size.offers = 1 + static_cast<std::int64_t>(seed / 24 % 3);
  size.eaters = 1 + static_cast<std::int64_t>(seed / 72 % 3);
  RefillProblem problem = test::make_refill_problem(seed, size);
  problem.keep_in_place = seed % 3 == 0;
  if (size.limits && seed % 5 < 2) {  // enough for some packs, not for all
    problem.budget = 0;
    for (const Offer& offer : problem.offers) *problem.budget += offer.price * 2 / 3;
  }
  return problem;
}

TEST(SolveRefill, EqualsExhaustiveSearchOnEveryLevel) {
  constexpr std::int64_t kMostPlans = 5'000;
  Counts seen;
  for (std::uint64_t seed = 1; seen.problems < 1'500 * static_cast<int>(test::test_scale());
       ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const RefillProblem problem = tiny(seed);
    std::optional<Vector> best;
    if (!test::every_refill_plan(problem, kMostPlans, [&](const RefillPlan&, const Vector& levels) {
          if (!best || levels < *best) best = levels;
        })) {
      continue;
    }
    const Solution<RefillPlan> solution = solve(problem, Limits{});
    const Verdict verdict = check(problem, solution.plan);
    ASSERT_TRUE(verdict.allowed()) << verdict.violations.front();
    ASSERT_EQ(values(solution.levels), *best);
    ASSERT_EQ(values(verdict.levels), *best);
    ASSERT_TRUE(solution.proven());
    for (const Level& level : solution.levels) ASSERT_EQ(*level.bound, level.value) << level.name;
    const std::size_t after = problem.keep_in_place ? 2 : 1;
    seen.problems += 1;
    seen.unmet += (*best)[0] > 0 ? 1 : 0;
    seen.short_of_energy += (*best)[after] > 0 ? 1 : 0;
    seen.repeats += (*best)[after + 1] > 0 ? 1 : 0;
    seen.costly += (*best)[after + 2] > 0 ? 1 : 0;
  }
  // Every level had something to decide.
  EXPECT_GT(seen.unmet, seen.problems / 10);
  EXPECT_GT(seen.short_of_energy, seen.problems / 10);
  EXPECT_GT(seen.repeats, seen.problems / 20);
  EXPECT_GT(seen.costly, seen.problems / 20);
}

}  // namespace
}  // namespace larderloop::plan
