// planner.h - the planners. Deterministic: the same problem gives the same plan.
#pragma once

#include "larderloop/plan/problem.h"

namespace larderloop::plan {

// Soonest date first with regard to people: every hard rule holds, the rest is greedy and may be improved on.
[[nodiscard]] EatDownPlan plan_eat_down(const EatDownProblem& problem);
// Plain date order without regard to people, as by hand: at each meal everyone at the table is handed the soonest-dated food that suits the kind of
// meal. For comparison only; the checker says what it breaks.
[[nodiscard]] EatDownPlan plain_date_order(const EatDownProblem& problem);
// The same among allowed people: at each meal, in the order of ids, each is handed the soonest-dated food they may have, up to appetite, tolerance and
// monotony. Every hard rule holds; nothing is looked ahead for. For comparison only.
[[nodiscard]] EatDownPlan plain_date_order_with_rules(const EatDownProblem& problem);
// Keep good units where they lie, move in from the pantry (longest-dated first), then buy the cheapest packs.
[[nodiscard]] RefillPlan plan_refill(const RefillProblem& problem);

// From which unit a serving comes: servings of a plan dealt out to lots, oldest opened unit first. Sorted by meal in calendar
// order, eater, lot.
struct Dealt {
  std::string lot;
  std::string meal;
  std::string eater;
  std::int64_t servings = 0;
};
// Pre: the plan is allowed.
[[nodiscard]] std::vector<Dealt> deal(const EatDownProblem& problem, const EatDownPlan& plan);

}  // namespace larderloop::plan
