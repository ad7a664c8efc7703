// lot add, list, show.
#include "cli/command.h"
#include "cli/entry_parts.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/app/look.h"
#include "larderloop/app/things.h"
#include "larderloop/intake/gs1.h"
#include "larderloop/render/json_things.h"
#include "larderloop/render/text_things.h"

#include <memory>

namespace larderloop::cli {
namespace {

struct LotOptions {
  std::string food, units, at, date, kind, lot_code, received, paid, note;
  LabelOptions label;
};

Result<Outcome<LotAdded>> add(const Household& household, const LotOptions& given, Asked asked, std::vector<std::string>& warnings) {
  auto food = named_food(household, given.food);
  if (!food) return fail(food.error());
  auto place = named_place(household, given.at);
  if (!place) return fail(place.error());
  NewLot request;
  request.food = (*food)->key;
  request.at = (*place)->key;
  request.lot_code = given.lot_code;
  request.note = given.note;
  auto units = read_count("--units", given.units, 1, kMaxUnits);
  if (!units) return fail(units.error());
  request.units = *units;
  MarkKind kind = MarkKind::kBestBefore;
  if (!given.kind.empty()) {
    auto named = read_word<MarkKind>("--kind", given.kind, parse_mark_kind,
                                     names_of(kAllMarkKinds, mark_kind_name));
    if (!named) return fail(named.error());
    kind = *named;
  }
  if (!given.received.empty()) {
    auto day = read_day("--received", given.received, asked.today);
    if (!day) return fail(day.error());
    request.received = *day;
  }
  // A scan that names the food may tell the date as well.
  const std::string& date = given.date.empty() && looks_like_scan(given.food) ? given.food : given.date;
  if (date.empty()) return fail(ErrorKind::kUsage, "'--date' is missing", "write it as printed: --date 'best before end 2027-08', or --date none");
  auto printed = read_printed(household, *food, date, kind, asked.today, request.received.value_or(asked.today), &warnings);
  if (!printed) return fail(printed.error());
  request.mark = printed->mark;
  if (request.lot_code.empty()) request.lot_code = printed->lot_code;
  if (!given.paid.empty()) {
    auto paid = read_money("--paid", given.paid);
    if (!paid) return fail(paid.error());
    request.paid_cents = *paid;
  }
  auto label = read_label(given.label, "--label-read-by", "--label-same-as-food");
  if (!label) return fail(label.error());
  request.label = *label;
  return add_lot(household, request, asked);
}

Result<int> run_add(const LotOptions& given, Runtime& runtime) {
  std::vector<std::string> warnings;
  auto added = runtime.write(
      [&](const Household& household, Asked asked) { return add(household, given, asked, warnings); });
  if (!added) return fail(added.error());
  for (const std::string& warning : warnings) runtime.warn(warning);
  const Household& household = runtime.household();
  const std::string number = std::to_string(added->lot.id.value());
  if (runtime.options.json)
    runtime.print_bytes(render_lot_added_json(household, *added, runtime.asked().today));
  runtime.note("added lot " + number + ": " + given.units + " of " +
               find_food(household, added->lot.food)->name + " in " +
               find_place(household, added->received.at.place)->name + "; entry " +
               std::to_string(added->received.id.value()) + "; see: larderloop lot show " + number);
  runtime.note(date_words(added->facts));
  if (added->facts.good_through && *added->facts.good_through < runtime.asked().today) {
    runtime.warn("that day is past already");
  }
  if (!added->label) {
    const bool before = find_food(household, added->lot.food)->label.has_value();
    runtime.note(
        "its label was not read: nobody who avoids anything or keeps a diet gets it; next: "
        "larderloop lot label " +
        number + " --read-by NAME " +
        (before ? "(--same, or --contains KEYS)" : "--contains KEYS --may-contain KEYS"));
  } else {
    for (const std::string& line : label_lines(household, *added->label)) {
      if (added->label->must_not.empty())
        runtime.note(line);
      else
        runtime.warn(line);
    }
  }
  return 0;
}

struct ListOptions {
  std::string food, at, kind;
  bool all = false;
};

}  // namespace

Action add_lot_add(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<LotOptions>();
  app.add_option("FOOD", given->food, "Key or name of the food, the number under its bars, or a scan")->required();
  add_text(app, "--units", given->units, "N", "How many units")->required();
  add_text(app, "--at", given->at, "PLACE", "Where they are put")->required();
  add_text(app, "--date", given->date, "TEXT",
           "The date as printed: 'best before end 2027-08', '15AUG27 lot L7', '(15)270800', or none");
  add_text(
      app, "--kind", given->kind, "KIND",
      "best-before if left out; use-by, sell-by, packed-on, produced-on: when the date has no words");
  add_text(app, "--lot-code", given->lot_code, "TEXT", "The code printed beside the date");
  add_text(app, "--received", given->received, "DATE", "When it came (today if left out)");
  add_text(app, "--paid", given->paid, "MONEY", "What these units cost together, as 4.50");
  add_text(app, "--note", given->note, "TEXT", "A remark");
  add_label_options(app, given->label, "--label-read-by", "--label-same-as-food");
  set_help(
      app,
      {"larderloop lot add lentil-stew --units 6 --at pantry --date 'best before end 2027-08' \\\n"
       "  --label-read-by Mira --label-same-as-food --paid 8.40\n"
       "larderloop lot add oat-bar --units 12 --at bag-mira --date 2027-03-15 --label-read-by Jon "
       "\\\n"
       "  --contains gluten,milk --may-contain peanut\n",
       "The date and the label are read off the very packages, because recipes change. A lot whose "
       "label nobody read is "
       "not for a person who avoids anything or keeps a diet." +
           known_keys_sentence(),
       {}});
  return [given, &runtime] { return run_add(*given, runtime); };
}

Action add_lot_list(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ListOptions>();
  add_text(app, "--food", given->food, "FOOD", "Only lots of this food");
  add_text(app, "--at", given->at, "PLACE", "Only what lies in this place or inside it");
  add_text(app, "--kind", given->kind, "KIND", "Only food, drink, water, pet-food or thing");
  app.add_flag("--all", given->all, "Also lots of which nothing is left");
  set_help(app,
           {"larderloop lot list --at home-kit\nlarderloop lot list --food lentil-stew --all\n",
            "Soonest date first.",
            {}});
  return [given, &runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      LotFilter filter;
      filter.all = given->all;
      if (!given->food.empty()) {
        auto food = named_food(household, given->food);
        if (!food) return fail(food.error());
        filter.food = (*food)->key;
      }
      if (!given->at.empty()) {
        auto place = named_place(household, given->at);
        if (!place) return fail(place.error());
        filter.at = (*place)->key;
      }
      if (!given->kind.empty()) {
        auto kind = read_food_kind("--kind", given->kind);
        if (!kind) return fail(kind.error());
        filter.kind = *kind;
      }
      auto rows = list_lots(household, filter, asked.today);
      if (!rows) return fail(rows.error());
      if (runtime.options.json)
        runtime.print_bytes(render_lots_json(household, *rows, asked.today));
      else
        runtime.print(render_lots(household, *rows, asked.today, runtime.width()));
      return 0;
    });
  };
}

Action add_lot_show(CLI::App& app, Runtime& runtime) {
  auto name = std::make_shared<std::string>();
  app.add_option("LOT", *name, "Number, or a food of which just one lot is on hand")->required();
  set_help(app, {"larderloop lot show 17\nlarderloop lot show lentil-stew\n",
                 "Shows its date, its label, whom it is not for, where it lies and its entries.",
                 {}});
  return [name, &runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      auto lot = named_lot(household, *name);
      if (!lot) return fail(lot.error());
      auto show = show_lot(household, (*lot)->id, asked.today);
      if (!show) return fail(show.error());
      if (runtime.options.json)
        runtime.print_bytes(render_lot_json(household, *show, asked.today));
      else
        runtime.print(render_lot(household, *show, asked.today));
      return 0;
    });
  };
}

}  // namespace larderloop::cli
