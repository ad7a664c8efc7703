// review dates, start, sheet, finish.
#include "cli/command.h"
#include "cli/kit_argument.h"
#include "larderloop/app/plan.h"
#include "larderloop/core/words.h"
#include "larderloop/render/cautions.h"
#include "larderloop/render/plan_json.h"
#include "larderloop/render/plan_text.h"

#include <CLI/CLI.hpp>

#include <memory>

namespace larderloop::cli {
namespace {

std::shared_ptr<std::string> add_kit(CLI::App& app) {
  auto kit = std::make_shared<std::string>();
  app.add_option("KIT", *kit, "The kit; may be left out when there is only one");
  return kit;
}

}  // namespace

Action add_review_dates(CLI::App& app, Runtime& runtime) {
  auto kit = add_kit(app);
  auto all = std::make_shared<bool>(false);
  app.add_flag("--all", *all, "Past reviews from the beginning, too");
  set_help(app, {"larderloop review dates\nlarderloop review dates home-kit --json\n",
                 "The reviews of each kit: the last year and the next two.",
                 {}});
  return [kit, all, &runtime]() -> Result<int> {
    auto slots = runtime.read(
        [&](const Household& household, Asked asked) -> Result<std::vector<ReviewSlot>> {
          std::vector<PlaceKey> kits = places_of_kind(household, PlaceKind::kKit);
          if (!kit->empty()) {
            auto named = kit_named(household, *kit);
            if (!named) return fail(named.error());
            kits = {*named};
          }
          std::vector<ReviewSlot> found;
          for (const PlaceKey& each : kits) {
            auto of_kit = review_slots(household, each, asked.today);
            if (!of_kit) return fail(of_kit.error());
            for (const ReviewSlot& slot : *of_kit) {
              const int away = days_between(asked.today, slot.day);
              if (away < 731 && (*all || away > -366)) found.push_back(slot);
            }
          }
          return found;
        });
    if (!slots) return fail(slots.error());
    const Day today = runtime.asked().today;
    if (runtime.options.json)
      runtime.print_bytes(render_review_dates_json(*slots, today));
    else
      runtime.print(render_review_dates_text(runtime.household(), *slots, today));
    return 0;
  };
}

Action add_review_start(CLI::App& app, Runtime& runtime) {
  auto kit = add_kit(app);
  auto after_use = std::make_shared<bool>(false);
  app.add_flag("--after-use", *after_use, "The kit was used in earnest: begin from 'everything was used'");
  set_help(app,
           {"larderloop review start home-kit\nlarderloop review start home-kit --after-use\n",
            "Begins the walk through a kit. A review can be begun up to 30 days before its day, after use at any time: then "
            "everything counts as used until it is marked as there (review mark KIT LOT there), or as used in part "
            "(review mark KIT LOT missing 2).",
            {}});
  return [kit, after_use, &runtime]() -> Result<int> {
    auto started = runtime.write(
        [&](const Household& household, Asked asked) -> Result<Outcome<ReviewStarted>> {
          auto named = kit_named(household, *kit);
          if (!named) return fail(named.error());
          return start_review(household, *named, asked, *after_use);
        });
    if (!started) return fail(started.error());
    const KitSchedule& schedule = started->schedule;
    const std::string key = schedule.kit.str();
    if (runtime.options.json) {
      auto sheet = review_sheet(runtime.household(), schedule.kit, runtime.asked().today);
      if (!sheet) return fail(sheet.error());
      runtime.print_bytes(
          render_review_sheet_json(runtime.household(), *sheet, runtime.asked().today));
      return 0;
    }
    runtime.print((started->already_open ? "The review of " : "Begun: the review of ") +
                  plain_day(schedule.current->day) +
                  (started->already_open ? " is begun already; its marks are kept.\n" : ".\n") +
                  std::to_string(started->positions) + " " + plural("thing", started->positions) +
                  " to look at; what stays must be good through " + plain_day(schedule.hold_until) +
                  ".\n");
    if (started->after_use) {
      // After a disaster: what water and warmth did to the food.
      runtime.print(render_cautions({Caution::kFlood, Caution::kFloodTins, Caution::kOutage}));
      runtime.note("everything counts as used; mark what came home: larderloop review mark " + key +
                   " LOT there, or LOT missing 2 when 2 were used; then: larderloop review finish " + key);
      return 0;
    }
    runtime.note("what lies where: larderloop review sheet " + key +
                 "; mark what differs: larderloop review mark " + key +
                 " LOT missing|damaged|redated; then: larderloop review finish " + key);
    return 0;
  };
}

Action add_review_sheet(CLI::App& app, Runtime& runtime) {
  auto kit = add_kit(app);
  set_help(app,
           {"larderloop review sheet home-kit\n",
            "What should lie in each bag and box, in packing order, with what has to come out.",
            {}});
  return [kit, &runtime]() -> Result<int> {
    auto sheet = runtime.read([&](const Household& household, Asked asked) -> Result<ReviewSheet> {
      auto named = kit_named(household, *kit);
      if (!named) return fail(named.error());
      return review_sheet(household, *named, asked.today);
    });
    if (!sheet) return fail(sheet.error());
    if (runtime.options.json) {
      runtime.print_bytes(
          render_review_sheet_json(runtime.household(), *sheet, runtime.asked().today));
    } else {
      runtime.print(render_review_sheet_text(runtime.household(), *sheet, runtime.asked().today));
    }
    return 0;
  };
}

Action add_review_finish(CLI::App& app, Runtime& runtime) {
  auto kit = add_kit(app);
  set_help(app, {"larderloop review finish home-kit\nlarderloop review finish home-kit -n\n",
                 "What was not marked counts as there. Writes down what was missing, thrown out or redated, moves what will not last to "
                 "the next review into "
                 "the pantry, and shows what goes in instead. Nothing is written unless all of it "
                 "is; finishing again "
                 "changes nothing.",
                 {}});
  return [kit, &runtime]() -> Result<int> {
    auto finished = runtime.write(
        [&](const Household& household, Asked asked) -> Result<Outcome<ReviewFinished>> {
          auto named = kit_named(household, *kit);
          if (!named) return fail(named.error());
          return finish_review(household, *named, asked);
        });
    if (!finished) return fail(finished.error());
    const Asked asked = runtime.asked();
    if (runtime.options.json) {
      runtime.print_bytes(render_review_finished_json(runtime.household(), *finished, asked.today));
      return 0;
    }
    runtime.print(render_review_finished_text(runtime.household(), *finished));
    auto plan = plan_kit(runtime.household(), finished->schedule.kit, asked.today);
    if (!plan) return fail(plan.error());
    runtime.print("\n" + render_kit_plan_text(runtime.household(), *plan));
    return 0;
  };
}

}  // namespace larderloop::cli
