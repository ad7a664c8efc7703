// brute_force.h - the planning problems solved by trying everything: for tiny problems, in tests
// only. Written from docs/planning.md without a look at the planners or the checker; no line is
// shared with either.
#pragma once

#include "larderloop/plan/problem.h"

#include <cstdint>
#include <functional>
#include <vector>

namespace larderloop::test {

using Vector = std::vector<std::int64_t>;

// Calls `visit` with every allowed plan in which closed units are donated where they can be, else
// wasted, and its levels. Gives up and returns false after `most` plans. Only for problems without
// lots that are already open.
bool every_eat_down_plan(const plan::EatDownProblem& problem, std::int64_t most,
                         const std::function<void(const plan::EatDownPlan&, const Vector&)>& visit);
// Calls `visit` with every allowed plan that buys no pack without need, and its levels.
bool every_refill_plan(const plan::RefillProblem& problem, std::int64_t most,
                       const std::function<void(const plan::RefillPlan&, const Vector&)>& visit);

}  // namespace larderloop::test
