// Twelve problems whose optimum was reasoned out by hand (each file says how) and confirmed by
// three solvers that have nothing to do with this project (HiGHS, CBC, GLPK). The checker must find
// exactly that; the planners may be worse, never better.
#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"
#include "support/case_reader.h"

#include <gtest/gtest.h>

namespace larderloop::plan {
namespace {

const std::vector<test::PlanCase>& cases() {
  static const std::vector<test::PlanCase> all =
      test::read_plan_cases(LARDERLOOP_SRC "/tests/oracle/cases");
  return all;
}

std::vector<std::int64_t> values(const Verdict& verdict) {
  std::vector<std::int64_t> all;
  for (const Level& level : verdict.levels) all.push_back(level.value);
  return all;
}

TEST(Cases, AreAllThere) {
  EXPECT_EQ(cases().size(), 12U);
}

TEST(Cases, CheckerFindsTheExpectedLevelsOfTheExpectedPlan) {
  for (const test::PlanCase& each : cases()) {
    SCOPED_TRACE(each.name);
    ASSERT_TRUE(each.has_plan);
    const Verdict verdict = each.refill ? check(each.refill_problem, each.refill_plan)
                                        : check(each.eat_problem, each.eat_plan);
    EXPECT_TRUE(verdict.allowed()) << verdict.violations.front();
    EXPECT_EQ(values(verdict), each.optimum);
    ASSERT_EQ(verdict.levels.size(), each.levels.size());
    for (std::size_t k = 0; k < each.levels.size(); ++k)
      EXPECT_EQ(verdict.levels[k].name, each.levels[k]);
  }
}

TEST(Cases, PlannersAreAllowedAndNeverBetterThanTheProvenOptimum) {
  for (const test::PlanCase& each : cases()) {
    SCOPED_TRACE(each.name);
    const Verdict verdict = each.refill
                                ? check(each.refill_problem, plan_refill(each.refill_problem))
                                : check(each.eat_problem, plan_eat_down(each.eat_problem));
    EXPECT_TRUE(verdict.allowed()) << verdict.violations.front();
    EXPECT_GE(values(verdict), each.optimum);
  }
}

// The level that matters most is met exactly on each of them: nothing unmet, nothing wasted that
// need not be.
TEST(Cases, PlannersReachTheFirstLevel) {
  for (const test::PlanCase& each : cases()) {
    SCOPED_TRACE(each.name);
    const Verdict verdict = each.refill
                                ? check(each.refill_problem, plan_refill(each.refill_problem))
                                : check(each.eat_problem, plan_eat_down(each.eat_problem));
    EXPECT_EQ(verdict.levels.front().value, each.optimum.front());
  }
}

// First-expired-first-out without regard to people hands the nut bar to somebody who must not have
// it, or leaves it over.
TEST(Cases, PlainDateOrderIsWorseWhereAnAllergyDecides) {
  for (const test::PlanCase& each : cases()) {
    if (each.name != "eat-down-1-allergy-beats-date-order") continue;
    const Verdict verdict = check(each.eat_problem, plain_date_order(each.eat_problem));
    EXPECT_TRUE(!verdict.allowed() || values(verdict) > each.optimum);
    return;
  }
  FAIL() << "the case is missing";
}

}  // namespace
}  // namespace larderloop::plan
