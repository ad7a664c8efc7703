// planning_problem.h - planning problems by themselves: taken from a household or a file, solved,
// and written down for others to solve. Meaning:  docs/planning.md. The problems taken from a
// household are the very ones that its plan comes from (plan.h).
#pragma once

#include "larderloop/app/asked.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"
#include "larderloop/plan/problem.h"
#include "larderloop/plan/solve.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace larderloop {

// `name`: free text that says what the problem is.
struct PlanningProblem {
  std::string name;
  std::variant<plan::EatDownProblem, plan::RefillProblem> problem;
};

// "eat-down" or "refill".
[[nodiscard]] std::string_view stage_of(const PlanningProblem& problem);
[[nodiscard]] std::int64_t today_of(const PlanningProblem& problem);

// The eat-down problem that make_plan() solves, after the refills of all kits and with what the
// household was shown.
[[nodiscard]] Result<plan::EatDownProblem> eat_down_problem(const Household& household,
                                                            Asked asked);
// The refill problem of one kit, less what kits with an earlier review were promised. kNotFound: no
// such kit.
[[nodiscard]] Result<plan::RefillProblem> refill_problem(const Household& household,
                                                         const PlaceKey& kit, Asked asked);

// The same problem without names: ids, tags and named foods become eater-1, product-01 and the
// like. The order of ids stays, so that whatever depends on it stays, too.
[[nodiscard]] PlanningProblem with_plain_names(const PlanningProblem& problem);

// A problem in the JSON format of docs/planning.md, or a case file with such a problem in its
// member "instance". kBadData: Error.problems lists every fault, with JSON pointer, value and what
// to do. Lists come out sorted by id.
[[nodiscard]] Result<PlanningProblem> read_problem(std::string_view text);

struct ProblemSolution {
  std::variant<plan::Solution<plan::EatDownPlan>, plan::Solution<plan::RefillPlan>> solution;
  [[nodiscard]] const std::vector<plan::Level>& levels() const;
  [[nodiscard]] bool proven() const;
};
// Solved, and judged once more by the checker. kDefect when a plan breaks a rule or its levels are
// not what the checker counts.
[[nodiscard]] Result<ProblemSolution> solve_problem(const PlanningProblem& problem,
                                                    const plan::Limits& limits);

// The integer program of one level as text. `level`: its name; empty for the first. `unproven`:
// names of levels before it that are held at a value not proven best. kUsage: no such level.
struct ModelText {
  std::string text;
  std::vector<std::string> unproven;
};
[[nodiscard]] Result<ModelText> model_text(const PlanningProblem& problem, const std::string& level,
                                           plan::ModelFormat format, const plan::Limits& limits);

}  // namespace larderloop
