// scan: what a bar code says, and lots entered by scanning.
#include "cli/command.h"
#include "cli/entry_parts.h"
#include "cli/lines.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/core/words.h"
#include "larderloop/intake/gs1.h"
#include "larderloop/render/entry_json.h"
#include "larderloop/render/entry_text.h"
#include "larderloop/render/json_things.h"

#include <algorithm>
#include <memory>

namespace larderloop::cli {
namespace {

struct ScanOptions {
  std::vector<std::string> texts;
  std::string at, units, date, read_by;
  bool upce = false, same = false;
};

bool is_scan(const std::string& line) {
  const bool eight = line.size() == 8 && line.find_first_not_of("0123456789") == std::string::npos;
  return eight || looks_like_scan(line);
}

// One thing that was scanned, on its way to a lot.
struct Scanned {
  std::size_t line = 0;
  Scan scan;
  std::optional<FoodKey> food;
  std::int64_t units = 1;
  std::optional<PrintedMark> printed;
};

class Session {
 public:
  Session(const ScanOptions& given, Runtime& runtime, LineInput& input)
      : given_(given), runtime_(runtime), input_(input) {}

  // The texts of the command line, or the lines of the input until it ends or an empty line comes.
  void run(const Household& household, Asked asked) {
    household_ = household;
    asked_ = asked;
    asking_ = input_.terminal() && !runtime_.options.no_input;
    if (!given_.texts.empty() && given_.texts != std::vector<std::string>{"-"}) {
      std::size_t number = 0;
      for (const std::string& text : given_.texts) take(text, ++number);
      return;
    }
    if (asking_) runtime_.warn("Scan; an empty line ends.");
    while (const auto line = input_.line()) {
      if (line->empty() && asking_) break;
      if (!line->empty()) take(*line, input_.number());
    }
  }

  std::vector<Scanned> all;
  std::vector<Food> new_foods;
  std::vector<Problem> problems;

 private:
  void problem(std::size_t line, const std::string& text, const std::string& what,
               const std::string& remedy) {
    if (asking_)
      runtime_.warn("  not taken: " + what + "; " + remedy);
    else
      problems.push_back({"line " + std::to_string(line), text, what, remedy});
  }

  // A scan, or the date of the one before it.
  void take(const std::string& text, std::size_t line) {
    if (!is_scan(text) && !all.empty() && entering() && !all.back().printed) {
      const Food* food = all.back().food ? find_food(household_, *all.back().food) : nullptr;
      auto printed =
          read_printed(household_, food, text, MarkKind::kBestBefore, asked_.today, asked_.today);
      if (!printed) return problem(line, text, printed.error().what, printed.error().next_step);
      all.back().printed = *printed;
      if (asking_)
        runtime_.warn("  " + std::string(mark_kind_words(printed->mark.kind)) +
                      (printed->mark.day ? " " + plain_day(*printed->mark.day) : ""));
      return;
    }
    auto scan = read_scan(text, asked_.today, {given_.upce, known_gtins(household_), false});
    if (!scan) {
      const Error error = scan.error().error();
      return problem(line, text, error.what, error.next_step);
    }
    Scanned one;
    one.line = line;
    one.scan = *scan;
    const auto found = food_with_gtin(household_, scan->item.gtin);
    if (found)
      one.food = (*found)->key;
    else if (entering() && !start_food(one))
      return problem(line, text, found.error().what, found.error().next_step);
    if (scan->mark().day) one.printed = PrintedMark{scan->mark(), scan->lot_code};
    if (entering() && again(one)) return;
    if (asking_) {
      runtime_.print(render_scan_text(household_, one.scan,
                                      one.food ? find_food(household_, *one.food) : nullptr));
      if (entering() && !one.printed && given_.date.empty())
        runtime_.warn("  The date as it is printed:");
    }
    if (!one.printed && entering() && !given_.date.empty()) {
      auto printed = read_printed(household_, nullptr, given_.date, MarkKind::kBestBefore,
                                  asked_.today, asked_.today);
      if (!printed)
        return problem(line, given_.date, printed.error().what, printed.error().next_step);
      one.printed = *printed;
    }
    if (one.printed && one.printed->lot_code.empty()) one.printed->lot_code = one.scan.lot_code;
    all.push_back(std::move(one));
  }

  // The very same package code once more is one unit more.
  bool again(const Scanned& one) {
    for (Scanned& each : all) {
      const bool same = each.scan.item.gtin == one.scan.item.gtin &&
                        each.scan.lot_code == one.scan.lot_code &&
                        each.scan.mark() == one.scan.mark();
      if (!same) continue;
      each.units += 1;
      if (asking_) runtime_.warn("  once more: " + std::to_string(each.units));
      return true;
    }
    return false;
  }

  // An unknown number starts a food, when somebody is there to name it.
  bool start_food(Scanned& one) {
    if (!asking_) return false;
    runtime_.warn("  " + one.scan.item.gtin + " is new. What is it called? (empty: leave it)");
    const auto name = input_.line();
    if (!name || name->empty()) return false;
    Food food;
    food.name = *name;
    food.gtin = one.scan.item.gtin;
    food.mass_g = one.scan.net_grams;
    auto added = add_food(household_, food, asked_);
    if (!added) {
      runtime_.warn("  " + added.error().what + "; " + added.error().next_step);
      return false;
    }
    apply_changes(household_, added->changes);
    new_foods.push_back(added->report.food);
    one.food = added->report.food.key;
    runtime_.warn("  added food " + one.food->str() +
                  "; its label was not read: it counts as unsafe for everyone who avoids anything "
                  "or keeps a diet");
    return true;
  }

  [[nodiscard]] bool entering() const { return !given_.at.empty(); }

  const ScanOptions& given_;
  Runtime& runtime_;
  LineInput& input_;
  Household household_;
  Asked asked_;
  bool asking_ = false;
};

Error refused(std::vector<Problem> problems) {
  Error error =
      make_error(ErrorKind::kBadData,
                 std::to_string(problems.size()) +
                     (problems.size() == 1 ? " scan cannot be taken" : " scans cannot be taken") +
                     "; nothing was written",
                 "mend what is named above and scan all of it again");
  error.problems = std::move(problems);
  return error;
}

Result<int> tell(const Session& session, const Household& household, Runtime& runtime) {
  std::vector<std::pair<const Scan*, const Food*>> rows;
  for (const Scanned& each : session.all)
    rows.emplace_back(&each.scan, each.food ? find_food(household, *each.food) : nullptr);
  if (runtime.options.json) {
    runtime.print_bytes(render_scans_json(rows, runtime.asked().today));
    return 0;
  }
  for (const auto& [scan, food] : rows) {
    runtime.print(render_scan_text(household, *scan, food));
    for (const std::string& warning : scan->warnings) runtime.warn(warning);
    if (food == nullptr)
      runtime.note("no food has this number yet; next: larderloop food add NAME --gtin " +
                   scan->item.gtin);
    else
      runtime.note("next: larderloop scan CODE --at PLACE --units N" +
                   std::string(scan->mark().day ? "" : " --date TEXT"));
  }
  return 0;
}

Result<int> enter(const ScanOptions& given, const Session& session, const PlaceKey& at,
                  std::int64_t units, Runtime& runtime) {
  std::vector<LotToEnter> lots;
  for (const Scanned& each : session.all) {
    NewLot lot;
    lot.food = *each.food;
    lot.units = each.units * units;
    lot.at = at;
    lot.mark = each.printed->mark;
    lot.lot_code = each.printed->lot_code;
    if (!each.scan.serial.empty()) lot.note = "serial number " + each.scan.serial;
    if (!given.read_by.empty()) {
      LabelRead label;
      label.read_by = given.read_by;
      label.same_as_food = true;
      lot.label = label;
    }
    lots.push_back({"line " + std::to_string(each.line), lot});
  }
  const auto with_foods = [&](const Household& household) {
    Household after = household;
    Changes foods;
    foods.foods = session.new_foods;
    apply_changes(after, foods);
    return after;
  };
  Household shown = with_foods(runtime.household());
  if (lots.size() > 1 || session.all.front().units > 1 || !given.texts.empty()) {
    for (const LotToEnter& each : lots)
      runtime.note(each.where + ": " + new_lot_words(shown, each.lot));
  }
  if (lots.size() > 1 && !runtime.options.dry_run) {
    auto yes = runtime.confirm("enter these " + std::to_string(lots.size()) + " lots");
    if (!yes) return fail(yes.error());
    if (!*yes) {
      runtime.note("nothing was written");
      return 0;
    }
  }
  auto entered =
      runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<LotsEntered>> {
        auto outcome = enter_lots(with_foods(household), lots, asked);
        if (!outcome) return outcome;
        Changes all;
        all.foods = session.new_foods;
        append_changes(all, outcome->changes);
        outcome->changes = std::move(all);
        return outcome;
      });
  if (!entered) return fail(entered.error());
  if (runtime.options.json)
    runtime.print_bytes(
        render_lots_entered_json(runtime.household(), entered->lots, runtime.asked().today));
  for (const LotAdded& each : entered->lots) tell_added(runtime, each);
  if (given.read_by.empty())
    runtime.note(
        "the labels were not read: nobody who avoids anything or keeps a diet gets these; next: "
        "larderloop lot label LOT --read-by NAME --same");
  return 0;
}

Result<int> run(const ScanOptions& given, Runtime& runtime) {
  auto input = LineInput::open("");
  if (!input) return fail(input.error());
  if (given.same != !given.read_by.empty()) {
    return fail(ErrorKind::kUsage, "'--label-same-as-food' and '--label-read-by' belong together",
                "say who read the label, and that it says the same as last time");
  }
  Session session(given, runtime, *input);
  PlaceKey at;
  std::int64_t units = 1;
  auto read = runtime.read([&](const Household& household, Asked asked) -> Result<int> {
    if (!given.at.empty()) {
      auto place = named_place(household, given.at);
      if (!place) return fail(place.error());
      at = (*place)->key;
    } else if (!given.units.empty() || !given.date.empty() || given.same) {
      return fail(ErrorKind::kUsage, "'--at' is missing",
                  "say where it is put: --at PLACE; without it a scan is only read");
    }
    if (!given.units.empty()) {
      auto count = read_count("--units", given.units, 1, kMaxUnits);
      if (!count) return fail(count.error());
      units = *count;
    }
    session.run(household, asked);
    return 0;
  });
  if (!read) return fail(read.error());
  if (!at.empty()) {
    for (const Scanned& each : session.all) {
      if (each.printed) continue;
      session.problems.push_back(
          {"line " + std::to_string(each.line), each.scan.item.gtin, "the code tells no date",
           "add --date TEXT, or write the date as printed in the line behind it"});
    }
  }
  if (!session.problems.empty()) return fail(refused(std::move(session.problems)));
  if (session.all.empty())
    return fail(ErrorKind::kBadData, "nothing was scanned",
                "scan the bar code, or type the digits under it: larderloop scan 9520000000110");
  return at.empty() ? tell(session, runtime.household(), runtime)
                    : enter(given, session, at, units, runtime);
}

}  // namespace

Action add_scan(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ScanOptions>();
  app.add_option("TEXT", given->texts,
                 "What the scanner sent, or the digits under the bars; lines of standard input "
                 "when left out or -");
  add_text(app, "--at", given->at, "PLACE",
           "Enter it, and put it there; without this a scan is only read");
  add_text(app, "--units", given->units, "N",
           "How many units each scan stands for (1 if left out)");
  add_text(app, "--date", given->date, "TEXT", "The date as printed, where the code tells none");
  add_text(app, "--label-read-by", given->read_by, "NAME",
           "Who read the labels of these very packages");
  app.add_flag("--label-same-as-food", given->same,
               "They say the same as the last label read of the food");
  app.add_flag("--upce", given->upce, "Eight digits are a UPC-E, not a GTIN-8");
  set_help(app, {"larderloop scan 9520000000110\n"
                 "larderloop scan '(01)09520000000110(17)270831(10)L7' --at pantry --units 6\n"
                 "larderloop scan --at pantry\n",
                 "Reads GTINs, GS1 element strings with or without symbology identifier, the form "
                 "with brackets, and Digital Links (never opened). "
                 "A scanner that types like a keyboard works at this and every other prompt, also "
                 "as the name of a food. "
                 "With --at each scan is one unit, the same code once more is one more, and a line "
                 "that is no scan is the date of the package before. "
                 "On a terminal a number that no food has asks for the name of a new food.",
                 {}});
  return [given, &runtime] { return run(*given, runtime); };
}

}  // namespace larderloop::cli
