// review mark, skip, move.
#include "cli/command.h"
#include "cli/entry_parts.h"
#include "cli/kit_argument.h"
#include "cli/values.h"
#include "larderloop/core/words.h"
#include "larderloop/render/done_json.h"
#include "larderloop/render/plan_json.h"

#include <CLI/CLI.hpp>

#include <memory>

namespace larderloop::cli {
namespace {

struct MarkOptions {
  std::string kit, lot, what, units, at, date;
};

constexpr MarkWhat kAllMarks[] = {MarkWhat::kThere, MarkWhat::kMissing, MarkWhat::kDamaged,
                                  MarkWhat::kRedated};

Result<MarkRequest> mark_request(const Household& household, const MarkOptions& given,
                                 Asked asked) {
  MarkRequest request;
  auto kit = kit_named(household, given.kit);
  if (!kit) return fail(kit.error());
  request.kit = *kit;
  auto lot = named_lot(household, given.lot);
  if (!lot) return fail(lot.error());
  auto what =
      read_word<MarkWhat>("WHAT", given.what, parse_mark_what, names_of(kAllMarks, mark_what_name));
  if (!what) return fail(what.error());
  request.what = *what;
  std::optional<PlaceKey> place;
  if (!given.at.empty()) {
    auto named = named_place(household, given.at);
    if (!named) return fail(named.error());
    place = (*named)->key;
  }
  auto at = position_in_kit(household, *kit, (*lot)->id, place, asked.today);
  if (!at) return fail(at.error());
  request.at = *at;
  if (!given.units.empty() && given.units != "all") {
    auto units = read_count("UNITS", given.units, 1, kMaxUnits);
    if (!units) return fail(units.error());
    request.units = *units;
  }
  if (!given.date.empty()) {
    auto printed = read_printed(household, find_food(household, (*lot)->food), given.date, MarkKind::kBestBefore, asked.today, (*lot)->received);
    if (!printed) return fail(printed.error());
    request.mark = printed->mark;
  }
  return request;
}

struct SlotOptions {
  std::string kit, date, to;
};

Result<std::optional<Day>> slot_of(const SlotOptions& given, Asked asked) {
  if (given.date.empty()) return std::optional<Day>();
  auto day = read_day("--date", given.date, asked.today);
  if (!day) return fail(day.error());
  return std::optional<Day>(*day);
}

}  // namespace

Action add_review_mark(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<MarkOptions>();
  app.add_option("KIT", given->kit, "The kit")->required();
  app.add_option("LOT", given->lot, "The lot: its number on the review sheet, or a food of which one lot is on hand")
      ->required();
  app.add_option("WHAT", given->what, "there, missing, damaged or redated")->required();
  app.add_option("UNITS", given->units,
                 "How many are missing or damaged; all of them when left out");
  app.add_option("--at", given->at, "The bag or box, when the lot lies in several")
      ->type_name("PLACE");
  app.add_option("--date", given->date, "For redated: the date that is really printed")
      ->type_name("TEXT");
  set_help(
      app,
      {"larderloop review mark home-kit 17 there\nlarderloop review mark home-kit 17 missing 1\n"
       "larderloop review mark home-kit 23 damaged --at bag-mira\n"
       "larderloop review mark home-kit 31 redated --date \"best before end 2027-08\"\n",
       "Marks count when the review is finished. 'there' takes back an earlier missing or damaged. "
       "Tins and packs "
       "that bulge, leak, are cracked, rusted or badly dented are damaged: throw them out "
       "unopened.",
       {}});
  return [given, &runtime]() -> Result<int> {
    auto done =
        runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<MarkDone>> {
          auto request = mark_request(household, *given, asked);
          if (!request) return fail(request.error());
          return mark_review(household, *request, asked);
        });
    if (!done) return fail(done.error());
    if (runtime.options.json)
      runtime.print_bytes(render_review_marked_json(*done, runtime.asked().today));
    const Household& household = runtime.household();
    const Lot& lot = *find_lot(household, done->mark.at.lot);
    const Food& food = *find_food(household, lot.food);
    std::string line = "marked " + std::string(mark_what_name(done->mark.what)) + ": ";
    const bool counted =
        done->mark.what == MarkWhat::kMissing || done->mark.what == MarkWhat::kDamaged;
    line +=
        (counted ? units_words(food, done->mark.amount) + " of " + units_words(food, done->on_hand)
                 : units_words(food, done->on_hand)) +
        " " + food.name + " (lot " + std::to_string(lot.id.value()) + ") in " +
        find_place(household, done->mark.at.place)->name;
    if (done->mark.mark)
      line += "; the date reads " + std::string(mark_kind_words(done->mark.mark->kind)) + " " +
              plain_day(*done->mark.mark->day);
    line += counted ? "; to take it back: larderloop review mark " + done->mark.kit.str() + " " +
                          std::to_string(lot.id.value()) + " there"
                    : "";
    runtime.note(line);
    return 0;
  };
}

Action add_review_skip(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<SlotOptions>();
  app.add_option("KIT", given->kit, "The kit; may be left out when there is only one");
  app.add_option("--date", given->date, "Which review; the next one when left out")
      ->type_name("DATE");
  set_help(app,
           {"larderloop review skip home-kit\nlarderloop review skip car-kit --date 2027-09-12\n",
            "Leaves one review out. What is in the kit then has to last to the one after it.",
            {}});
  return [given, &runtime]() -> Result<int> {
    auto changed = runtime.write(
        [&](const Household& household, Asked asked) -> Result<Outcome<ReviewChanged>> {
          auto kit = kit_named(household, given->kit);
          if (!kit) return fail(kit.error());
          auto slot = slot_of(*given, asked);
          if (!slot) return fail(slot.error());
          return skip_review(household, *kit, *slot, asked);
        });
    if (!changed) return fail(changed.error());
    if (runtime.options.json)
      runtime.print_bytes(render_review_changed_json(*changed, runtime.asked().today));
    runtime.note("skipped: the review of " + plain_day(changed->before.day) +
                 "; see: larderloop review dates");
    return 0;
  };
}

Action add_review_move(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<SlotOptions>();
  app.add_option("KIT", given->kit, "The kit; may be left out when there is only one");
  app.add_option("--to", given->to, "The new day")->type_name("DATE")->required();
  app.add_option("--date", given->date, "Which review; the current or next one when left out")
      ->type_name("DATE");
  set_help(app, {"larderloop review move home-kit --to 2027-10-09\n",
                 "Moves one review to another day between its neighbours; the others stay where "
                 "the rule puts them.",
                 {}});
  return [given, &runtime]() -> Result<int> {
    auto changed = runtime.write(
        [&](const Household& household, Asked asked) -> Result<Outcome<ReviewChanged>> {
          auto kit = kit_named(household, given->kit);
          if (!kit) return fail(kit.error());
          auto slot = slot_of(*given, asked);
          if (!slot) return fail(slot.error());
          auto to = read_day("--to", given->to, asked.today);
          if (!to) return fail(to.error());
          return move_review(household, *kit, *slot, *to, asked);
        });
    if (!changed) return fail(changed.error());
    if (runtime.options.json)
      runtime.print_bytes(render_review_changed_json(*changed, runtime.asked().today));
    runtime.note("moved: the review of " + plain_day(changed->before.day) + " to " +
                 plain_day(changed->after.day) + "; back: larderloop review move " +
                 changed->before.kit.str() + " --date " + iso_day(changed->before.slot) + " --to " +
                 iso_day(changed->before.day));
    return 0;
  };
}

}  // namespace larderloop::cli
