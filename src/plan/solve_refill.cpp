// The exact refill: the careful greedy plan is where the search starts and what is left when it
// fails.
#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"
#include "larderloop/plan/solve.h"
#include "plan/lexicographic.h"
#include "plan/refill_model.h"
#include "plan/write_model.h"

#include <optional>
#include <utility>

namespace larderloop::plan {
namespace {

// Allowed for every problem that is well formed, even where the greedy plan is not.
RefillPlan nothing_placed(const RefillProblem& problem) {
  RefillPlan plan;
  for (const RefillLine& line : problem.lines)
    if (line.units > 0) plan.unmet.push_back({line.id, line.units});
  return plan;
}

RefillPlan start_plan(const RefillProblem& problem) {
  RefillPlan plan = plan_refill(problem);
  if (check(problem, plan).allowed()) return plan;
  return nothing_placed(problem);
}

// The plan of the search with the bounds it proved; empty when the checker does not confirm it.
// Where the plan is even better than its point, the bounds of the levels behind were worked out for
// another value and say nothing.
std::optional<Solution<RefillPlan>> confirmed(const RefillProblem& problem, RefillPlan plan,
                                              const MipOutcome& outcome) {
  Verdict verdict = check(problem, plan);
  if (!verdict.allowed() || verdict.levels.size() != outcome.values.size()) return std::nullopt;
  Solution<RefillPlan> solution{std::move(plan), std::move(verdict.levels), outcome.stopped};
  bool same = true;
  for (std::size_t at = 0; at < solution.levels.size() && same; ++at) {
    Level& level = solution.levels[at];
    if (level.value > outcome.values[at] || level.value < outcome.bounds[at]) return std::nullopt;
    level.bound = outcome.bounds[at];
    same = level.value == outcome.values[at];
  }
  solution.stopped = solution.stopped || !same;
  return solution;
}

}  // namespace

Solution<RefillPlan> solve(const RefillProblem& problem, const Limits& limits) {
  RefillPlan start = start_plan(problem);
  if (const std::optional<RefillModel> model = make_refill_model(problem)) {
    const MipPoint from = point_of(*model, start);
    if (allowed(model->mip, from)) {
      const MipOutcome outcome = solve_levels(model->mip, from, effort_of(limits));
      if (auto solution = confirmed(problem, plan_of(*model, outcome.point), outcome))
        return *std::move(solution);
    }
  }
  std::vector<Level> levels = check(problem, start).levels;
  return {std::move(start), std::move(levels), true};
}

std::string export_model(const RefillProblem& problem, const std::string& level,
                         const std::vector<std::int64_t>& values, ModelFormat format) {
  const std::optional<RefillModel> model = make_refill_model(problem);
  if (!model) return {};
  for (std::size_t at = 0; at < model->mip.levels.size(); ++at) {
    if (model->mip.levels[at].name == level && values.size() >= at)
      return write_model(model->mip, at, values, format);
  }
  return {};
}

}  // namespace larderloop::plan
