// Properties of the eat-down planner on seeded random problems; every message names the seed.
#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"
#include "support/problem_maker.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <tuple>

namespace larderloop::plan {
namespace {

using test::EatSize;

constexpr EatSize kSizes[] = {
    {1, 1, 1, 1, 3, 3, 4, false, false},  {2, 3, 5, 2, 4, 3, 6, true, true},
    {3, 4, 12, 3, 7, 4, 4, true, true},   {3, 2, 10, 4, 7, 3, 8, true, true},
    {4, 8, 30, 8, 10, 6, 12, true, true}, {2, 6, 20, 6, 5, 5, 3, true, true},
};

template <typename Body>
void for_seeds(std::uint64_t count, Body body) {
  for (const EatSize& size : kSizes) {
    for (std::uint64_t seed = 1; seed <= count * test::test_scale(); ++seed) {
      SCOPED_TRACE("seed " + std::to_string(seed) + ", " + std::to_string(size.lots) + " lots");
      body(test::make_eat_problem(seed, size));
      if (testing::Test::HasFailure()) return;
    }
  }
}

std::string text(const EatDownPlan& plan) {
  std::string all;
  for (const Opened& each : plan.opened)
    all += each.lot + "|" + each.meal + "|" + std::to_string(each.units) + "\n";
  for (const MealServing& each : plan.servings) {
    all += each.product + "|" + each.meal + "|" + each.eater + "|" + std::to_string(each.servings) +
           "\n";
  }
  for (const LotUnits& each : plan.donated)
    all += each.lot + "|given|" + std::to_string(each.units) + "\n";
  for (const LotUnits& each : plan.wasted)
    all += each.lot + "|left|" + std::to_string(each.units) + "\n";
  return all;
}

TEST(PlanEatDown, IsAlwaysAllowed) {
  for_seeds(400, [](const EatDownProblem& problem) {
    const Verdict verdict = check(problem, plan_eat_down(problem));
    EXPECT_TRUE(verdict.allowed()) << verdict.violations.front();
  });
}

TEST(PlanEatDown, GivesTheSamePlanAgainAndInWhateverOrderTheProblemIsWritten) {
  for_seeds(60, [](const EatDownProblem& problem) {
    EatDownProblem turned = problem;
    std::reverse(turned.eaters.begin(), turned.eaters.end());
    std::reverse(turned.products.begin(), turned.products.end());
    std::reverse(turned.lots.begin(), turned.lots.end());
    std::reverse(turned.meals.begin(), turned.meals.end());
    std::reverse(turned.published.begin(), turned.published.end());
    const std::string plan = text(plan_eat_down(problem));
    EXPECT_EQ(plan, text(plan_eat_down(problem)));
    EXPECT_EQ(plan, text(plan_eat_down(turned)));
  });
}

// A plan that was shown stays when nothing has changed: all of it, on every day that was shown.
TEST(PlanEatDown, KeepsWhatWasShownWhereItIsStillAllowed) {
  for_seeds(150, [](EatDownProblem problem) {
    problem.published.clear();
    const EatDownPlan shown = plan_eat_down(problem);
    problem.published = shown.servings;
    problem.published_until = problem.today + 13;
    const EatDownPlan again = plan_eat_down(problem);
    const Verdict verdict = check(problem, again);
    ASSERT_TRUE(verdict.allowed()) << verdict.violations.front();
    std::map<std::string, std::int64_t> day;
    for (const EatMeal& meal : problem.meals) day[meal.id] = meal.day;
    std::map<std::tuple<std::string, std::string, std::string>, std::int64_t> planned;
    for (const MealServing& each : again.servings)
      planned[{each.product, each.meal, each.eater}] = each.servings;
    for (const MealServing& each : shown.servings) {
      if (day.at(each.meal) > problem.published_until) continue;
      EXPECT_GE((planned[{each.product, each.meal, each.eater}]), each.servings)
          << each.product << " for " << each.eater << " at " << each.meal;
    }
  });
}

// One more lot does not turn the shown weeks upside down either.
TEST(PlanEatDown, KeepsWhatWasShownWhenFoodIsAdded) {
  for_seeds(60, [](EatDownProblem problem) {
    problem.published.clear();
    problem.published = plan_eat_down(problem).servings;
    problem.published_until = problem.today + 13;
    const auto sealed = std::find_if(problem.lots.begin(), problem.lots.end(),
                                     [](const EatLot& lot) { return !lot.already_open; });
    if (sealed == problem.lots.end()) return;
    EatLot more = *sealed;
    more.id = "z-more";
    more.units += 2;
    problem.lots.push_back(more);
    const EatDownPlan again = plan_eat_down(problem);
    ASSERT_TRUE(check(problem, again).allowed());
    std::map<std::string, std::int64_t> day;
    for (const EatMeal& meal : problem.meals) day[meal.id] = meal.day;
    std::map<std::tuple<std::string, std::string, std::string>, std::int64_t> planned;
    for (const MealServing& each : again.servings)
      planned[{each.product, each.meal, each.eater}] = each.servings;
    for (const MealServing& each : problem.published) {
      if (day.at(each.meal) > problem.published_until) continue;
      EXPECT_GE((planned[{each.product, each.meal, each.eater}]), each.servings)
          << each.product << " for " << each.eater << " at " << each.meal;
    }
  });
}

TEST(PlanEatDown, DealsEveryServingToUnitsThatAreOpenAndGood) {
  for_seeds(150, [](const EatDownProblem& problem) {
    const EatDownPlan plan = plan_eat_down(problem);
    std::map<std::string, const EatLot*> lots;
    std::map<std::string, const EatMeal*> meals;
    std::map<std::string, const EatProduct*> products;
    for (const EatLot& lot : problem.lots) lots[lot.id] = &lot;
    for (const EatMeal& meal : problem.meals) meals[meal.id] = &meal;
    for (const EatProduct& product : problem.products) products[product.id] = &product;
    std::map<std::string, std::int64_t> supply, used, opened_first;
    for (const Opened& each : plan.opened) {
      supply[each.lot] += each.units * products.at(lots.at(each.lot)->product)->servings;
      const std::int64_t day = meals.at(each.meal)->day;
      if (opened_first.count(each.lot) == 0 || day < opened_first[each.lot])
        opened_first[each.lot] = day;
    }
    for (const EatLot& lot : problem.lots) {
      if (lot.already_open) supply[lot.id] = lot.open_servings;
    }
    std::map<std::tuple<std::string, std::string, std::string>, std::int64_t> dealt;
    for (const Dealt& each : deal(problem, plan)) {
      const EatLot& lot = *lots.at(each.lot);
      EXPECT_GT(each.servings, 0);
      used[each.lot] += each.servings;
      dealt[{lot.product, each.meal, each.eater}] += each.servings;
      const std::int64_t day = meals.at(each.meal)->day;
      if (lot.already_open) {
        EXPECT_LE(day, lot.last_good_day);
      } else {
        EXPECT_GE(day, opened_first.at(each.lot));
      }
    }
    for (const auto& [lot, servings] : used) EXPECT_LE(servings, supply[lot]) << lot;
    for (const MealServing& each : plan.servings) {
      EXPECT_EQ((dealt[{each.product, each.meal, each.eater}]), each.servings);
    }
    std::int64_t served = 0, handed = 0;
    for (const MealServing& each : plan.servings) served += each.servings;
    for (const auto& [key, servings] : dealt) handed += servings;
    EXPECT_EQ(served, handed);
  });
}

// Plain date order may break rules about people, but never invents food or ignores a date.
TEST(PlainDateOrder, BreaksOnlyRulesAboutPeople) {
  for_seeds(150, [](const EatDownProblem& problem) {
    EatDownProblem everyone = problem;
    for (Eater& eater : everyone.eaters) {
      eater.avoid.clear();
      eater.ratings.clear();
      eater.eaten_this_week.clear();
      eater.tolerance = 1'000'000;
      eater.monotony = 1'000'000;
    }
    const EatDownPlan plan = plain_date_order(problem);
    EXPECT_EQ(text(plan), text(plain_date_order(everyone)));
    const Verdict verdict = check(everyone, plan);
    EXPECT_TRUE(verdict.allowed()) << verdict.violations.front();
  });
}

TEST(PlanEatDown, HouseholdsOfAnySizeAreAllowed) {
  for (std::uint64_t seed = 1; seed <= 3 * test::test_scale(); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const EatDownProblem problem = test::make_eat_problem(seed, test::kFamilyEat);
    const Verdict verdict = check(problem, plan_eat_down(problem));
    EXPECT_TRUE(verdict.allowed()) << verdict.violations.front();
  }
}

}  // namespace
}  // namespace larderloop::plan
