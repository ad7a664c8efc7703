// The checker objects to every rule of docs/planning.md that a refill breaks, one at a time.
#include "larderloop/plan/check.h"

#include <gtest/gtest.h>

namespace larderloop::plan {
namespace {

// One bag of ana's, a place for a main dish and one for two snacks; a pantry tin and bars in packs
// of three.
RefillProblem one_bag() {
  RefillProblem problem;
  problem.hold_until = 200;
  problem.eaters.resize(1);
  problem.eaters[0].id = "ana";
  problem.products = {{"bar", {"snack", "food:bar"}, {"nuts"}, 200, 40, 50, true, false},
                      {"tin", {"main"}, {}, 300, 250, 200, true, false}};
  problem.containers = {{"bag", "home", {}, {}}};
  problem.lines = {{"main", "bag", {"ana"}, 1, "lunch", "main", 1, 10},
                   {"snack", "bag", {"ana"}, 1, "snack", "snack", 2, 3}};
  problem.lots = {{"shelf", "tin", 2, 300, false, ""}};
  problem.offers = {{"shop", "bar", 3, 300, 400, {}}};
  return problem;
}

RefillPlan filled() {
  RefillPlan plan;
  plan.packs = {{"shop", 1}};
  plan.moves = {{"shelf", "", "main", 1}, {"", "shop", "snack", 2}};
  return plan;
}

std::string first_violation(const RefillProblem& problem, const RefillPlan& plan) {
  const Verdict verdict = check(problem, plan);
  return verdict.allowed() ? "" : verdict.violations.front();
}

void expect_violation(const RefillProblem& problem, const RefillPlan& plan,
                      const std::string& words) {
  EXPECT_NE(first_violation(problem, plan).find(words), std::string::npos)
      << "wanted: " << words << "\nfound: " << first_violation(problem, plan);
}

TEST(CheckRefill, AllowsAPlanThatKeepsEveryRule) {
  const Verdict verdict = check(one_bag(), filled());
  ASSERT_TRUE(verdict.allowed()) << verdict.violations.front();
  const std::int64_t expected[] = {0, 0, 0, 300 - 50, 6, 3, (1295 - 300) + 2 * (1295 - 400)};
  for (std::size_t k = 0; k < 7; ++k)
    EXPECT_EQ(verdict.levels[k].value, expected[k]) << verdict.levels[k].name;
}

TEST(CheckRefill, RefusesWhatIsNotInTheProblemOrNamedWrongly) {
  RefillPlan plan = filled();
  plan.moves[0].lot = "cellar";
  expect_violation(one_bag(), plan, "not in the problem");
  plan = filled();
  plan.moves[0].offer = "shop";
  expect_violation(one_bag(), plan, "exactly one source");
  plan = filled();
  plan.moves[0].lot = "";
  expect_violation(one_bag(), plan, "exactly one source");
  plan = filled();
  plan.packs.push_back({"market", 0});
  expect_violation(one_bag(), plan, "not in the problem");
  plan = filled();
  plan.unmet.push_back({"dessert", 0});
  expect_violation(one_bag(), plan, "not in the problem");
}

TEST(CheckRefill, RefusesLinesTwiceAndNegativeNumbers) {
  RefillPlan plan = filled();
  plan.moves.push_back(plan.moves[0]);
  expect_violation(one_bag(), plan, "planned twice");
  plan = filled();
  plan.packs.push_back(plan.packs[0]);
  expect_violation(one_bag(), plan, "told twice");
  plan = filled();
  plan.unmet = {{"main", -1}};
  expect_violation(one_bag(), plan, "negative");
  plan = filled();
  plan.packs[0].packs = -1;
  expect_violation(one_bag(), plan, "negative");
}

TEST(CheckRefill, RefusesFoodThatIsUnsafeRefusedCookedOrOutOfItsRole) {
  RefillProblem problem = one_bag();
  problem.eaters[0].avoid = {"nuts"};
  expect_violation(problem, filled(), "must not or will not eat");
  problem = one_bag();
  problem.eaters[0].ratings["bar"] = -2;
  expect_violation(problem, filled(), "must not or will not eat");
  problem = one_bag();
  problem.products[1].no_cook = false;
  expect_violation(problem, filled(), "needs cooking");
  problem = one_bag();
  problem.lines[1].role = "food:tin";
  expect_violation(problem, filled(), "does not serve as 'food:tin'");
  problem.lines[1].role = "food:bar";
  EXPECT_EQ(first_violation(problem, filled()), "");
}

TEST(CheckRefill, RefusesWhatDoesNotLast) {
  RefillProblem problem = one_bag();
  problem.lots[0].last_good_day = 199;
  expect_violation(problem, filled(), "hold-until");
  problem.lots[0].last_good_day = 200;
  EXPECT_EQ(first_violation(problem, filled()), "");
  problem.offers[0].last_good_day = 199;
  expect_violation(problem, filled(), "hold-until");
}

TEST(CheckRefill, RefusesMoreThanThereIs) {
  RefillProblem problem = one_bag();
  problem.lots[0].units = 0;
  expect_violation(problem, filled(), "1 units placed of 0");
  problem = one_bag();
  problem.offers[0].pack_units = 1;
  expect_violation(problem, filled(), "2 units placed of 1 bought");
  problem = one_bag();
  problem.offers[0].max_packs = 0;
  expect_violation(problem, filled(), "at most 0");
  problem = one_bag();
  problem.budget = 299;
  expect_violation(problem, filled(), "budget");
  problem.budget = 300;
  EXPECT_EQ(first_violation(problem, filled()), "");
}

TEST(CheckRefill, RefusesLinesThatAreNotAccountedFor) {
  RefillPlan plan = filled();
  plan.moves.pop_back();
  expect_violation(one_bag(), plan, "0 units placed or unmet of 2");
  plan.unmet = {{"snack", 2}};
  EXPECT_EQ(first_violation(one_bag(), plan), "");
  EXPECT_EQ(check(one_bag(), plan).levels[0].value, 6);
  plan.unmet = {{"snack", 3}};
  expect_violation(one_bag(), plan, "3 units placed or unmet of 2");
}

TEST(CheckRefill, RefusesABagThatIsTooHeavyOrTooFull) {
  RefillProblem problem = one_bag();
  problem.containers[0].mass_limit = 329;
  expect_violation(problem, filled(), "330 g, at most 329");
  problem.containers[0].mass_limit = 330;
  EXPECT_EQ(first_violation(problem, filled()), "");
  problem.containers[0].volume_limit = 299;
  expect_violation(problem, filled(), "300 ml, at most 299");
}

TEST(CheckRefill, CountsEnergyOfSharedLinesByTheFloor) {
  RefillProblem problem = one_bag();
  problem.eaters.push_back(problem.eaters[0]);
  problem.eaters[1].id = "ben";
  problem.eaters[0].energy_target = 1000;
  problem.lines[1].eaters = {"ana", "ben"};
  problem.products[0].kcal = 201;
  EXPECT_EQ(check(problem, filled()).levels[1].value, 1000 - 300 - 2 * 100);
}

TEST(CheckRefill, RefusesNumbersThatLeave64Bits) {
  RefillProblem problem = one_bag();
  problem.lines[1].units = INT64_MAX;
  RefillPlan plan = filled();
  plan.moves.pop_back();
  plan.unmet = {{"snack", INT64_MAX}};
  expect_violation(problem, plan, "too large");
}

}  // namespace
}  // namespace larderloop::plan
