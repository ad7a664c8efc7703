#include "larderloop/app/planning_problem.h"

#include "app/plan_build.h"
#include "app/plan_shown.h"
#include "larderloop/core/words.h"
#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"

#include <algorithm>
#include <optional>

namespace larderloop {
namespace {

// The kits in the order in which make_plan() serves them from the pantry.
Result<std::vector<KitSchedule>> schedules(const Household& household, Day today) {
  std::vector<KitSchedule> kits;
  for (const PlaceKey& kit : places_of_kind(household, PlaceKind::kKit)) {
    auto schedule = kit_schedule(household, kit, today);
    if (!schedule) return fail(schedule.error());
    kits.push_back(std::move(*schedule));
  }
  const auto review_day = [](const KitSchedule& kit) {
    return kit.current ? kit.current->day : kit.next.day;
  };
  std::stable_sort(kits.begin(), kits.end(), [&](const KitSchedule& a, const KitSchedule& b) {
    return review_day(a) < review_day(b);
  });
  return kits;
}

// Plans one kit and promises it what it takes from the pantry.
Result<KitPlan> serve_kit(const BookView& view, const KitSchedule& kit, Reserved& reserved,
                          Day today, KeptPlans& kept) {
  auto plan = plan_kit_in(view, kit, reserved, today, kept);
  if (!plan) return plan;
  for (const Fill& fill : plan->fills) {
    if (fill.from == FillFrom::kPantry) reserved[fill.at] += fill.units;
  }
  return plan;
}

template <typename Problem, typename Plan>
Status judge(const Problem& problem, const plan::Solution<Plan>& solved) {
  const plan::Verdict verdict = plan::check(problem, solved.plan);
  const std::string report = "please report this with: larderloop plan --dump-problem";
  if (!verdict.allowed()) {
    return fail(ErrorKind::kDefect,
                "the plan of the problem breaks a rule: " + verdict.violations.front(), report);
  }
  const bool same = std::equal(verdict.levels.begin(), verdict.levels.end(), solved.levels.begin(),
                               solved.levels.end(), [](const plan::Level& a, const plan::Level& b) {
                                 return a.name == b.name && a.value == b.value;
                               });
  if (!same)
    return fail(ErrorKind::kDefect, "the levels of the plan are not those that the checker counts",
                report);
  return {};
}

template <typename Problem>
std::vector<plan::Level> level_names(const Problem& problem) {
  if constexpr (std::is_same_v<Problem, plan::EatDownProblem>) {
    return plan::check(problem, plan::plan_eat_down(problem)).levels;
  } else {
    return plan::check(problem, plan::plan_refill(problem)).levels;
  }
}

template <typename Problem>
Result<ModelText> model_of(const Problem& problem, const std::string& asked,
                           plan::ModelFormat format, const plan::Limits& limits) {
  const std::vector<plan::Level> levels = level_names(problem);
  const auto found =
      asked.empty() ? levels.begin()
                    : std::find_if(levels.begin(), levels.end(),
                                   [&](const plan::Level& level) { return level.name == asked; });
  if (found == levels.end()) {
    std::vector<std::string> names;
    for (const plan::Level& level : levels) names.push_back(level.name);
    return fail(ErrorKind::kUsage, "the problem has no level '" + asked + "'",
                "name one of " + list_words(names));
  }
  ModelText model;
  std::vector<std::int64_t> values;
  if (found != levels.begin()) {
    const auto solved = plan::solve(problem, limits);
    if (Status judged = judge(problem, solved); !judged) return fail(judged.error());
    for (const plan::Level& level : solved.levels) {
      if (level.name == found->name) break;
      values.push_back(level.value);
      if (!level.proven()) model.unproven.push_back(level.name);
    }
  }
  model.text = plan::export_model(problem, found->name, values, format);
  return model;
}

}  // namespace

std::string_view stage_of(const PlanningProblem& problem) {
  return std::holds_alternative<plan::RefillProblem>(problem.problem) ? "refill" : "eat-down";
}

std::int64_t today_of(const PlanningProblem& problem) {
  return std::visit([](const auto& each) { return each.today; }, problem.problem);
}

Result<plan::EatDownProblem> eat_down_problem(const Household& household, Asked asked) {
  auto view = view_book(household, asked.today);
  if (!view) return fail(view.error());
  auto schedule = schedules(household, asked.today);
  if (!schedule) return fail(schedule.error());
  std::vector<KitPlan> kits;
  KeptPlans kept(household.kept_plans, std::nullopt);
  Reserved reserved;
  for (const KitSchedule& each : *schedule) {
    auto plan = serve_kit(*view, each, reserved, asked.today, kept);
    if (!plan) return fail(plan.error());
    kits.push_back(std::move(*plan));
  }
  return build_eat_down(*view, kits, reserved, household.shown_meals, asked.today).problem;
}

Result<plan::RefillProblem> refill_problem(const Household& household, const PlaceKey& kit,
                                           Asked asked) {
  auto view = view_book(household, asked.today);
  if (!view) return fail(view.error());
  auto schedule = schedules(household, asked.today);
  if (!schedule) return fail(schedule.error());
  KeptPlans kept(household.kept_plans, std::nullopt);
  Reserved reserved;
  for (const KitSchedule& each : *schedule) {
    if (each.kit == kit) return build_refill(*view, each, reserved, asked.today).problem;
    if (auto plan = serve_kit(*view, each, reserved, asked.today, kept); !plan) return fail(plan.error());
  }
  return fail(ErrorKind::kNotFound, "there is no kit '" + kit.str() + "'",
              "see: larderloop place list --kind kit");
}

const std::vector<plan::Level>& ProblemSolution::levels() const {
  return std::visit([](const auto& each) -> const std::vector<plan::Level>& { return each.levels; },
                    solution);
}

bool ProblemSolution::proven() const {
  return std::visit([](const auto& each) { return each.proven(); }, solution);
}

Result<ProblemSolution> solve_problem(const PlanningProblem& problem, const plan::Limits& limits) {
  return std::visit(
      [&](const auto& each) -> Result<ProblemSolution> {
        auto solved = plan::solve(each, limits);
        if (Status judged = judge(each, solved); !judged) return fail(judged.error());
        return ProblemSolution{std::move(solved)};
      },
      problem.problem);
}

Result<ModelText> model_text(const PlanningProblem& problem, const std::string& level,
                             plan::ModelFormat format, const plan::Limits& limits) {
  return std::visit([&](const auto& each) { return model_of(each, level, format, limits); },
                    problem.problem);
}

}  // namespace larderloop
