#include "larderloop/app/plan.h"

#include <algorithm>

#include "app/plan_build.h"
#include "app/plan_shown.h"

namespace larderloop {

Result<Outcome<PlanReport>> make_plan(const Household& household, Asked asked, const PlanEffort& effort) {
  auto view = view_book(household, asked.today);
  if (!view) return fail(view.error());
  Outcome<PlanReport> outcome;
  PlanReport& report = outcome.report;
  report.as_of = asked.today;

  // The kit whose review is nearest is served from the pantry first.
  std::vector<KitSchedule> kits;
  for (const PlaceKey& kit : places_of_kind(household, PlaceKind::kKit)) {
    auto schedule = kit_schedule(household, kit, asked.today);
    if (!schedule) return fail(schedule.error());
    kits.push_back(std::move(*schedule));
  }
  const auto review_day = [](const KitSchedule& kit) { return kit.current ? kit.current->day : kit.next.day; };
  std::stable_sort(kits.begin(), kits.end(), [&](const KitSchedule& a, const KitSchedule& b) { return review_day(a) < review_day(b); });
  KeptPlans kept(household.kept_plans, effort.limits);
  Reserved reserved;
  for (const KitSchedule& kit : kits) {
    auto plan = plan_kit_in(*view, kit, reserved, asked.today, kept);
    if (!plan) return fail(plan.error());
    for (const Fill& fill : plan->fills) {
      if (fill.from == FillFrom::kPantry) reserved[fill.at] += fill.units;
    }
    report.kits.push_back(std::move(*plan));
  }
  auto eat = plan_eating(*view, report.kits, reserved, household.shown_meals, asked.today, effort.with_plain, kept);
  if (!eat) return fail(eat.error());
  report.eat_down = std::move(*eat);
  std::vector<ShownMeal> shown = to_show(household, report.eat_down, asked.today);
  report.eat_down.changed = differences(*view, shown, asked.today);
  if (shown != household.shown_meals) outcome.changes.shown_meals = std::move(shown);
  std::vector<KeptPlan> plans = kept.now();
  if (plans != household.kept_plans) outcome.changes.kept_plans = std::move(plans);
  return outcome;
}

}  // namespace larderloop
