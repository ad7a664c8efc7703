// plan_kept.h - solves the household's planning problems, or takes the plan that the book keeps for
// the very same problem. Private to this room. A kept plan is only text from a file: it counts when
// the checker allows it and counts the levels it claims. Every plan that comes out of here was
// checked once, kept or new.
#pragma once

#include "larderloop/core/result.h"
#include "larderloop/core/household.h"
#include "larderloop/plan/solve.h"

#include <optional>
#include <string>
#include <vector>

namespace larderloop {

class KeptPlans {
 public:
  // `limits`: asked for by somebody: a plan that is not proven is worked out anew. Absent: the
  // household's own.
  KeptPlans(const std::vector<KeptPlan>& kept, std::optional<plan::Limits> limits)
      : kept_(kept), limits_(limits) {}

  // kDefect: the planner's plan breaks a rule.
  [[nodiscard]] Result<plan::Solution<plan::EatDownPlan>> eat_down(
      const plan::EatDownProblem& problem);
  [[nodiscard]] Result<plan::Solution<plan::RefillPlan>> refill(const std::string& kit,
                                                                const plan::RefillProblem& problem);

  // What is to be kept from now on: every plan asked for here, by name.
  [[nodiscard]] std::vector<KeptPlan> now() const;

 private:
  template <typename Problem, typename Plan>
  Result<plan::Solution<Plan>> solve(const std::string& name, const Problem& problem);

  const std::vector<KeptPlan>& kept_;
  std::optional<plan::Limits> limits_;
  std::vector<KeptPlan> now_;
};

}  // namespace larderloop
