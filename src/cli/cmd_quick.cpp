// quick: a day's shopping, one line a lot.
#include "cli/command.h"
#include "cli/entry_parts.h"
#include "cli/lines.h"
#include "cli/option_parts.h"
#include "larderloop/app/find.h"
#include "larderloop/core/words.h"
#include "larderloop/intake/quick_line.h"
#include "larderloop/render/json_things.h"

#include <algorithm>
#include <memory>

namespace larderloop::cli {
namespace {

struct QuickOptions {
  std::string file, at, read_by;
};

constexpr std::size_t kMostBytes = 1U << 20;

NewLot lot_of(const QuickLot& quick) {
  NewLot lot;
  lot.food = quick.food;
  lot.units = quick.units;
  lot.at = quick.at;
  lot.mark = quick.printed.mark;
  lot.lot_code = quick.printed.lot_code;
  lot.paid_cents = quick.paid_cents;
  if (quick.same) {
    LabelRead label;
    label.read_by = quick.read_by;
    label.same_as_food = true;
    lot.label = label;
  }
  return lot;
}

// On a terminal each line is answered at once; an empty one ends the list.
Result<std::string> typed_lines(LineInput& input, const Household& household, const QuickHow& how,
                                Runtime& runtime, Day today) {
  runtime.warn("One line a lot, as: 6 lentil 2027-08 @pantry   An empty line ends the list.");
  std::string all;
  while (const auto line = input.line()) {
    if (line->empty()) break;
    // With all lines before, so that @PLACE and read by count; only the last one is told.
    const std::string with = all + *line + "\n";
    const QuickList list = read_quick_lines(household, with, how, today);
    if (!list.problems.empty()) {
      runtime.warn("  not taken: " + list.problems.back().what +
                   (list.problems.back().remedy.empty() ? "" : "; " + list.problems.back().remedy));
      continue;
    }
    const bool added = list.lots.size() > read_quick_lines(household, all, how, today).lots.size();
    runtime.warn(added ? "  " + new_lot_words(household, lot_of(list.lots.back()))
                       : std::string("  from here on"));
    all = with;
  }
  return all;
}

// The list, read off the book as it is now; nothing is written before the yes.
Result<int> run(const QuickOptions& given, Runtime& runtime) {
  auto input = LineInput::open(given.file);
  if (!input) return fail(input.error());
  QuickHow how;
  how.read_by = given.read_by;
  std::vector<LotToEnter> lots;
  auto asked_for = runtime.read([&](const Household& household, Asked asked) -> Result<int> {
    how.order = household_order(household);
    if (!given.at.empty()) {
      auto place = named_place(household, given.at);
      if (!place) return fail(place.error());
      how.at = (*place)->key;
    }
    auto text = input->terminal() && !runtime.options.no_input
                    ? typed_lines(*input, household, how, runtime, asked.today)
                    : input->rest(kMostBytes);
    if (!text) return fail(text.error());
    const QuickList list = read_quick_lines(household, *text, how, asked.today);
    std::vector<Problem> problems = list.problems;
    for (const QuickLot& each : list.lots)
      lots.push_back({"line " + std::to_string(each.line), lot_of(each)});
    // What could be read is held against the rules as well, so that everything that is wrong is
    // told at once.
    if (auto tried = enter_lots(household, lots, asked); !tried)
      problems.insert(problems.end(), tried.error().problems.begin(), tried.error().problems.end());
    if (!problems.empty()) {
      std::stable_sort(problems.begin(), problems.end(), [](const Problem& a, const Problem& b) {
        return std::stoul(a.where.substr(5)) < std::stoul(b.where.substr(5));
      });
      const std::string count = std::to_string(problems.size());
      Error error =
          make_error(ErrorKind::kBadData,
                     problems.size() == 1 ? "1 line cannot be entered; nothing was written"
                                          : count + " lines cannot be entered; nothing was written",
                     "mend them and enter the whole list again");
      error.problems = std::move(problems);
      return fail(std::move(error));
    }
    for (const QuickLot& each : list.lots) {
      const std::string line =
          std::to_string(each.line) + ": " + new_lot_words(household, lot_of(each));
      if (!runtime.options.json) runtime.print(line + "\n");
      for (const std::string& warning : each.warnings)
        runtime.warn(std::to_string(each.line) + ": " + warning);
    }
    return 0;
  });
  if (!asked_for) return fail(asked_for.error());
  if (lots.empty()) {
    runtime.note("no lot is in the list; nothing was written");
    return 0;
  }
  if (!runtime.options.dry_run) {
    auto yes = runtime.confirm("enter these " + std::to_string(lots.size()) + " " +
                               plural("lot", static_cast<std::int64_t>(lots.size())));
    if (!yes) return fail(yes.error());
    if (!*yes) {
      runtime.note("nothing was written");
      return 0;
    }
  }
  auto entered = runtime.write(
      [&](const Household& household, Asked asked) { return enter_lots(household, lots, asked); });
  if (!entered) return fail(entered.error());
  if (runtime.options.json)
    runtime.print_bytes(
        render_lots_entered_json(runtime.household(), entered->lots, runtime.asked().today));
  std::size_t unread = 0;
  for (const LotAdded& each : entered->lots) {
    tell_added(runtime, each);
    if (!each.label) ++unread;
  }
  if (unread > 0) {
    runtime.note(std::to_string(unread) +
                 " labels were not read: nobody who avoids anything or keeps a diet gets those; "
                 "next: larderloop lot label LOT --read-by NAME --same");
  }
  return 0;
}

}  // namespace

Action add_quick(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<QuickOptions>();
  app.add_option("FILE", given->file, "The list; standard input when it is left out or -");
  add_text(app, "--at", given->at, "PLACE", "Where things are put unless a line says otherwise");
  add_text(app, "--read-by", given->read_by, "NAME",
           "Who read the labels of the lines that say 'same'");
  set_help(app, {"larderloop quick\nlarderloop quick shopping.txt --at pantry --read-by Mira\n"
                 "echo '6 lentil stew 2027-08 same' | larderloop quick --read-by Mira -y\n",
                 "One line a lot: UNITS FOOD DATE, and if need be 'lot CODE', @PLACE, =PRICE, and "
                 "'same' when somebody read the label and it says the "
                 "same as last time. UNITS may be left out for one. FOOD is a key, a name, the "
                 "number under the bars, a scan, or beginnings of "
                 "words as long as only one food has them: 'len stew' for Lentil stew, 'lentil "
                 "pouch 250g'. DATE is written as printed. "
                 "A line '@PLACE' alone or 'read by NAME' alone counts for the lines behind it. "
                 "All lines are checked and shown before anything is "
                 "written; one that is wrong keeps back all.",
                 {}});
  return [given, &runtime] { return run(*given, runtime); };
}

}  // namespace larderloop::cli
