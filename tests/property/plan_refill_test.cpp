// Properties of the refill planner on seeded random problems; every message names the seed.
#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"
#include "support/problem_maker.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

namespace larderloop::plan {
namespace {

using test::RefillSize;

constexpr RefillSize kSizes[] = {
    {1, 1, 1, 1, 1, 1, 2, true},   {2, 4, 2, 6, 6, 3, 3, true},     {3, 6, 3, 12, 10, 6, 3, false},
    {3, 5, 3, 12, 14, 5, 4, true}, {4, 12, 5, 30, 40, 12, 4, true}, {2, 3, 2, 8, 8, 0, 3, false},
};

template <typename Body>
void for_seeds(std::uint64_t count, Body body) {
  for (const RefillSize& size : kSizes) {
    for (std::uint64_t seed = 1; seed <= count * test::test_scale(); ++seed) {
      SCOPED_TRACE("seed " + std::to_string(seed) + ", " + std::to_string(size.lines) + " lines");
      body(test::make_refill_problem(seed, size));
      if (testing::Test::HasFailure()) return;
    }
  }
}

std::string text(const RefillPlan& plan) {
  std::string all;
  for (const OfferPacks& each : plan.packs)
    all += each.offer + "|" + std::to_string(each.packs) + "\n";
  for (const Move& each : plan.moves)
    all += each.lot + "|" + each.offer + "|" + each.line + "|" + std::to_string(each.units) + "\n";
  for (const LineUnits& each : plan.unmet)
    all += each.line + "|" + std::to_string(each.units) + "\n";
  return all;
}

void add(RefillPlan& plan, const std::string& lot, const std::string& line) {
  const auto move = std::find_if(plan.moves.begin(), plan.moves.end(), [&](const Move& each) {
    return each.lot == lot && each.line == line;
  });
  if (move != plan.moves.end()) {
    move->units += 1;
  } else {
    plan.moves.push_back({lot, "", line, 1});
  }
  for (LineUnits& unmet : plan.unmet) {
    if (unmet.line == line) unmet.units -= 1;
  }
}

TEST(PlanRefill, IsAlwaysAllowed) {
  for_seeds(400, [](const RefillProblem& problem) {
    const Verdict verdict = check(problem, plan_refill(problem));
    EXPECT_TRUE(verdict.allowed()) << verdict.violations.front();
  });
}

TEST(PlanRefill, GivesTheSamePlanAgainAndInWhateverOrderTheProblemIsWritten) {
  for_seeds(60, [](const RefillProblem& problem) {
    RefillProblem turned = problem;
    std::reverse(turned.eaters.begin(), turned.eaters.end());
    std::reverse(turned.products.begin(), turned.products.end());
    std::reverse(turned.containers.begin(), turned.containers.end());
    std::reverse(turned.lines.begin(), turned.lines.end());
    std::reverse(turned.lots.begin(), turned.lots.end());
    std::reverse(turned.offers.begin(), turned.offers.end());
    const std::string plan = text(plan_refill(problem));
    EXPECT_EQ(plan, text(plan_refill(problem)));
    EXPECT_EQ(plan, text(plan_refill(turned)));
  });
}

// No line stays empty while a source that it accepts lies about unused, limits and budget aside.
TEST(PlanRefill, LeavesNoLineEmptyBesideAFreeSource) {
  for_seeds(150, [](RefillProblem problem) {
    problem.budget.reset();
    for (Container& container : problem.containers)
      container.mass_limit = container.volume_limit = std::nullopt;
    const RefillPlan plan = plan_refill(problem);
    std::map<std::string, std::int64_t> used;
    for (const Move& move : plan.moves) used[move.lot + move.offer] += move.units;
    for (const LineUnits& unmet : plan.unmet) {
      // One more unit of a free source on this line: the checker must object, or the plan was not
      // full.
      for (const RefillLot& lot : problem.lots) {
        if (used[lot.id] >= lot.units) continue;
        RefillPlan fuller = plan;
        add(fuller, lot.id, unmet.line);
        EXPECT_FALSE(check(problem, fuller).allowed()) << lot.id << " was free for " << unmet.line;
      }
    }
  });
}

// What a refill put in stays when the same kit is planned again with nothing else around.
TEST(PlanRefill, KeepsGoodUnitsInTheirContainer) {
  for_seeds(100, [](const RefillProblem& problem) {
    RefillProblem filled = problem;
    filled.lots.clear();
    filled.offers.clear();
    filled.budget.reset();
    for (Container& container : filled.containers)
      container.mass_limit = container.volume_limit = std::nullopt;
    std::int64_t number = 0;
    std::map<std::string, std::string> container_of, product_of;
    for (const RefillLine& line : problem.lines) container_of[line.id] = line.container;
    for (const RefillLot& lot : problem.lots) product_of[lot.id] = lot.product;
    for (const Offer& offer : problem.offers) product_of[offer.id] = offer.product;
    const RefillPlan plan = plan_refill(problem);
    for (const Move& move : plan.moves) {
      filled.lots.push_back({"n" + std::to_string(number++), product_of.at(move.lot + move.offer),
                             move.units, problem.hold_until, true, container_of.at(move.line)});
    }
    const Verdict verdict = check(filled, plan_refill(filled));
    ASSERT_TRUE(verdict.allowed()) << verdict.violations.front();
    EXPECT_LE(verdict.levels[0].value, check(problem, plan).levels[0].value);
    EXPECT_EQ(verdict.levels[3].value, 0);
  });
}

TEST(PlanRefill, HouseholdsOfAnySizeAreAllowed) {
  for (std::uint64_t seed = 1; seed <= 5 * test::test_scale(); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const RefillProblem problem = test::make_refill_problem(seed, test::kFamilyRefill);
    const Verdict verdict = check(problem, plan_refill(problem));
    EXPECT_TRUE(verdict.allowed()) << verdict.violations.front();
  }
}

}  // namespace
}  // namespace larderloop::plan
