// eat_problems.h - small eat-down problems for the tests of this room.
#pragma once

#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"

#include <string>
#include <vector>

namespace larderloop::plan {

inline EatMeal lunch(const std::string& id, std::int64_t day, std::vector<std::string> eaters) {
  EatMeal meal;
  meal.id = id;
  meal.day = day;
  meal.kind = Kind::kLunch;
  meal.eaters = std::move(eaters);
  return meal;
}

// ana and ben, lunches on days 0..4 (one week), a can of two servings to be finished at once.
inline EatDownProblem two_at_table() {
  EatDownProblem problem;
  problem.horizon_days = 28;
  problem.eaters = {{}, {}};
  problem.eaters[0].id = "ana";
  problem.eaters[1].id = "ben";
  problem.products = {{"beans", 2, 0, {Kind::kLunch}, {"soy"}}};
  for (std::int64_t day = 0; day < 5; ++day) {
    problem.meals.push_back(lunch("d" + std::to_string(day), day, {"ana", "ben"}));
  }
  EatLot lot;
  lot.id = "can";
  lot.product = "beans";
  lot.units = 2;
  lot.last_good_day = 10;
  problem.lots = {lot};
  return problem;
}

inline EatDownPlan both_cans() {
  EatDownPlan plan;
  plan.opened = {{"can", "d0", 1}, {"can", "d1", 1}};
  for (const char* meal : {"d0", "d1"}) {
    for (const char* eater : {"ana", "ben"}) plan.servings.push_back({"beans", meal, eater, 1});
  }
  return plan;
}

inline std::string first_violation(const EatDownProblem& problem, const EatDownPlan& plan) {
  const Verdict verdict = check(problem, plan);
  return verdict.allowed() ? "" : verdict.violations.front();
}

inline std::int64_t level(const Verdict& verdict, const std::string& name) {
  for (const Level& each : verdict.levels) {
    if (each.name == name) return each.value;
  }
  return -1;
}

}  // namespace larderloop::plan
