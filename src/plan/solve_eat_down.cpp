// The exact eat-down planner: the careful greedy plan, then the integer program level by level,
// then the independent checker.
#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"
#include "larderloop/plan/solve.h"
#include "plan/eat_model.h"
#include "plan/lexicographic.h"
#include "plan/write_model.h"

namespace larderloop::plan {
namespace {

std::vector<std::int64_t> vector_of(const Verdict& verdict) {
  std::vector<std::int64_t> values;
  for (const Level& level : verdict.levels) values.push_back(level.value);
  return values;
}

// The better of two plans to start from: what was shown kept, or all free.
EatDownPlan starting_plan(const EatDownProblem& problem) {
  EatDownPlan plan = plan_eat_down(problem);
  if (problem.published.empty()) return plan;
  EatDownProblem free = problem;
  free.published.clear();
  EatDownPlan other = plan_eat_down(free);
  const bool better = vector_of(check(problem, other)) < vector_of(check(problem, plan));
  return better ? other : plan;
}

}  // namespace

Solution<EatDownPlan> solve(const EatDownProblem& problem, const Limits& limits) {
  Solution<EatDownPlan> solution;
  solution.plan = starting_plan(problem);
  Verdict verdict = check(problem, solution.plan);
  solution.levels = verdict.levels;
  const EatModel model(problem);
  const MipPoint start = model.point_of(solution.plan);
  if (!verdict.allowed() || !allowed(model.mip(), start)) {
    solution.stopped = true;
    return solution;
  }
  const MipOutcome outcome = solve_levels(model.mip(), start, limits);
  EatDownPlan planned = model.plan_of(outcome.point);
  Verdict judged = check(problem, planned);
  if (judged.allowed() && vector_of(judged) <= vector_of(verdict)) {
    solution.plan = std::move(planned);
    solution.levels = std::move(judged.levels);
  }
  solution.stopped = outcome.stopped;
  for (std::size_t k = 0; k < solution.levels.size(); ++k) {
    Level& level = solution.levels[k];
    level.bound = std::min(outcome.bounds[k], level.value);
    if (level.value !=
        outcome.values[k]) {  // the levels from here on were worked out for another plan
      solution.stopped = true;
      break;
    }
  }
  return solution;
}

std::string export_model(const EatDownProblem& problem, const std::string& level,
                         const std::vector<std::int64_t>& values, ModelFormat format) {
  const EatModel model(problem);
  const std::vector<MipLevel>& levels = model.mip().levels;
  for (std::size_t at = 0; at < levels.size(); ++at) {
    if (levels[at].name == level && values.size() >= at)
      return write_model(model.mip(), at, values, format);
  }
  return {};
}

}  // namespace larderloop::plan
