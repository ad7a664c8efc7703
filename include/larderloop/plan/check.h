// check.h - the independent checker: is a plan allowed, and what is it worth? Shares no code with any planner.
#pragma once

#include <string>
#include <vector>

#include "larderloop/plan/problem.h"

namespace larderloop::plan {

// `violations`: every broken hard rule as a sentence with the ids concerned, in a fixed order; empty = allowed. `levels`: the
// objective levels from the plan alone, in 64-bit integers (eat-down: wasted, donated, dislike, late, changed, order; refill: unmet, energy,
// repeats, cost, dislike, handled, dates); meaningful only without violations.
struct Verdict {
  std::vector<std::string> violations;
  std::vector<Level> levels;
  [[nodiscard]] bool allowed() const { return violations.empty(); }
};

[[nodiscard]] Verdict check(const EatDownProblem& problem, const EatDownPlan& plan);
[[nodiscard]] Verdict check(const RefillProblem& problem, const RefillPlan& plan);

}  // namespace larderloop::plan
