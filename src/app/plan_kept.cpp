#include "app/plan_kept.h"

#include "app/plan_build.h"
#include "app/plan_kept_text.h"
#include "larderloop/core/date.h"
#include "larderloop/plan/check.h"

#include <algorithm>
#include <type_traits>

namespace larderloop {
namespace {

// Levels that count against what was shown: they change when the plan itself is what is shown.
bool against_shown(const std::string& level) {
  return level == "dropped" || level == "changed" || level == "order";
}

// The kept plan with its levels as they count now; false when it may not be used.
template <typename Problem, typename Plan>
bool still_holds(const Problem& problem, plan::Solution<Plan>& kept) {
  plan::Verdict verdict = plan::check(problem, kept.plan);
  if (!verdict.allowed() || verdict.levels.size() != kept.levels.size()) return false;
  for (std::size_t k = 0; k < kept.levels.size(); ++k) {
    plan::Level& now = verdict.levels[k];
    const plan::Level& then = kept.levels[k];
    if (now.name != then.name) return false;
    if (now.name == "dropped" && now.value > 0) return false;  // something else was shown since
    if (now.value == then.value) {
      now.bound = then.bound;
    } else if (!against_shown(now.name)) {
      return false;
    } else if (now.value == 0) {
      now.bound = 0;
    }
  }
  kept.levels = std::move(verdict.levels);
  kept.stopped = !kept.proven();
  return true;
}

// A plan of an earlier day may stand as it is. One of today is asked for again because somebody
// changed something, a guest perhaps, and wants to see what becomes of it.
bool of_earlier_day(const plan::EatDownPlan& plan, std::int64_t today) {
  const std::string begins = iso_day(number_day(today));  // as the names of its meals do
  return std::any_of(plan.servings.begin(), plan.servings.end(),
                     [&](const plan::MealServing& each) { return each.meal < begins; });
}

}  // namespace

template <typename Problem, typename Plan>
Result<plan::Solution<Plan>> KeptPlans::solve(const std::string& name, const Problem& problem) {
  const std::string print = fingerprint(problem);
  const auto found = std::find_if(kept_.begin(), kept_.end(),
                                  [&](const KeptPlan& each) { return each.name == name; });
  plan::Solution<Plan> solution;
  const bool readable = found != kept_.end() && read_plan(found->plan, solution);
  const bool same = readable && found->problem == print && still_holds(problem, solution) &&
                    (!limits_ || solution.proven());
  if (!same) {
    const plan::Limits limits = limits_.value_or(plan::household_limits());
    if constexpr (std::is_same_v<Plan, plan::EatDownPlan>) {
      const plan::Solution<Plan> before = std::move(solution);
      solution = plan::solve(problem, limits, readable ? &before : nullptr,
                             of_earlier_day(before.plan, problem.today));
    } else {
      solution = plan::solve(problem, limits);
    }
    const plan::Verdict verdict = plan::check(problem, solution.plan);
    if (!verdict.allowed()) {
      return fail(ErrorKind::kDefect,
                  "the plan '" + name + "' breaks a rule: " + verdict.violations.front(),
                  "please report this with: larderloop export");
    }
  }
  now_.push_back({name, print, same ? found->plan : plan_text(solution)});
  return solution;
}

Result<plan::Solution<plan::EatDownPlan>> KeptPlans::eat_down(const plan::EatDownProblem& problem) {
  return solve<plan::EatDownProblem, plan::EatDownPlan>("eat-down", problem);
}

Result<plan::Solution<plan::RefillPlan>> KeptPlans::refill(const std::string& kit,
                                                           const plan::RefillProblem& problem) {
  return solve<plan::RefillProblem, plan::RefillPlan>("refill " + kit, problem);
}

std::vector<KeptPlan> KeptPlans::now() const {
  std::vector<KeptPlan> sorted = now_;
  std::sort(sorted.begin(), sorted.end(),
            [](const KeptPlan& a, const KeptPlan& b) { return a.name < b.name; });
  return sorted;
}

}  // namespace larderloop
