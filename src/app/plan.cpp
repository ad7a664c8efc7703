#include "larderloop/app/plan.h"

#include <algorithm>

#include "app/plan_build.h"
#include "app/plan_shown.h"

namespace larderloop {
namespace {

constexpr int kMostRounds = 4;

}  // namespace

Result<Outcome<PlanReport>> make_plan(const Household& household, Asked asked, bool with_plain) {
  auto view = view_book(household);
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
  Reserved reserved;
  for (const KitSchedule& kit : kits) {
    auto plan = plan_kit_in(*view, kit, reserved, asked.today);
    if (!plan) return fail(plan.error());
    for (const Fill& fill : plan->fills) {
      if (fill.from == FillFrom::kPantry) reserved[fill.at] += fill.units;
    }
    report.kits.push_back(std::move(*plan));
  }
  // A plan that differs from what was shown is worked out once more around what is now shown, until it stays: asking again the same
  // day then changes nothing.
  std::vector<ShownMeal> shown = household.shown_meals;
  for (int round = 0; round < kMostRounds; ++round) {
    auto eat = plan_eating(*view, report.kits, reserved, shown, asked.today, with_plain);
    if (!eat) return fail(eat.error());
    report.eat_down = std::move(*eat);
    std::vector<ShownMeal> now = to_show(household, report.eat_down, asked.today);
    const bool settled = now == shown;
    shown = std::move(now);
    if (settled) break;
  }
  report.eat_down.changed = differences(*view, shown, asked.today);
  if (shown != household.shown_meals) outcome.changes.shown_meals = std::move(shown);
  return outcome;
}

}  // namespace larderloop
