// lot retire, code: what was entered by mistake, or with a wrong code.
#include "cli/command.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/app/look.h"
#include "larderloop/app/lot_mistakes.h"
#include "larderloop/core/words.h"
#include "larderloop/render/json_things.h"

#include <memory>

namespace larderloop::cli {
namespace {

struct MistakeOptions {
  std::string lot, note;
  std::vector<std::string> code;
};

std::string entries_words(std::size_t count) {
  return std::to_string(count) + (count == 1 ? " entry" : " entries");
}

Status print_lot(Runtime& runtime, LotId lot) {
  if (!runtime.options.json) return {};
  auto show = show_lot(runtime.household(), lot, runtime.asked().today);
  if (!show) return fail(show.error());
  runtime.print_bytes(render_lot_json(runtime.household(), *show, runtime.asked().today));
  return {};
}

// What is taken back of what was used says something of people's meals, so somebody has to want
// that.
Result<bool> wanted(Runtime& runtime, const LotTakenBack& back) {
  if (!back.used || runtime.options.dry_run) return true;
  return runtime.confirm("take back all " + entries_words(back.reversed.size()) + " of lot " +
                         std::to_string(back.lot.value()) +
                         ", also what was eaten, given away, thrown out or lost of it");
}

Result<int> retire(const MistakeOptions& given, Runtime& runtime) {
  const auto task = [&](const Household& household, Asked asked) -> Result<Outcome<LotTakenBack>> {
    auto lot = named_lot(household, given.lot);
    if (!lot) return fail(lot.error());
    return take_lot_back(household, (*lot)->id,
                         given.note.empty() ? "entered by mistake" : given.note, asked);
  };
  auto tried = runtime.read(task);
  if (!tried) return fail(tried.error());
  auto yes = wanted(runtime, tried->report);
  if (!yes) return fail(yes.error());
  if (!*yes) {
    runtime.note("nothing was written");
    return 0;
  }
  auto done = runtime.write(task);
  if (!done) return fail(done.error());
  if (Status printed = print_lot(runtime, done->lot); !printed) return fail(printed.error());
  const Lot& lot = *find_lot(runtime.household(), done->lot);
  const std::string number = std::to_string(lot.id.value());
  runtime.note("took back lot " + number + " (" + find_food(runtime.household(), lot.food)->name +
               "): " + entries_words(done->reversed.size()) +
               " corrected, nothing of it is left; it stays in the book: larderloop lot show " +
               number);
  return 0;
}

Result<int> code(const MistakeOptions& given, Runtime& runtime) {
  const std::string text = joined_words(given.code);
  auto done = runtime.write(
      [&](const Household& household, Asked asked) -> Result<Outcome<LotEnteredAgain>> {
        auto lot = named_lot(household, given.lot);
        if (!lot) return fail(lot.error());
        return enter_lot_with_code(household, (*lot)->id, text == "none" ? "" : text, asked);
      });
  if (!done) return fail(done.error());
  if (Status printed = print_lot(runtime, done->lot.id); !printed) return fail(printed.error());
  const std::string number = std::to_string(done->lot.id.value());
  runtime.note("lot " + std::to_string(done->back.lot.value()) + " is now lot " + number + " (" +
               find_food(runtime.household(), done->lot.food)->name + "), " +
               (done->lot.lot_code.empty() ? std::string("without a code")
                                           : "lot code " + done->lot.lot_code) +
               ": " + entries_words(done->entries.size()) +
               " entered again; see: larderloop lot show " + number);
  return 0;
}

}  // namespace

Action add_lot_retire(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<MistakeOptions>();
  app.add_option("LOT", given->lot, "Number, or a food of which just one lot is on hand")
      ->required();
  add_text(app, "--note", given->note, "TEXT", "Why ('entered by mistake' if left out)");
  set_help(
      app,
      {"larderloop lot retire 17\nlarderloop lot retire 17 --note 'entered twice'\n",
       "For a lot that was never there: everything that was recorded of it is taken back, by "
       "further "
       "entries, and nothing of it is left. Asks first when some of it was eaten or used "
       "otherwise. "
       "The lot stays in the book. What really was there and is gone is recorded instead: record "
       "eaten, given-away, thrown-out, lost.",
       {}});
  return [given, &runtime] { return retire(*given, runtime); };
}

Action add_lot_code(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<MistakeOptions>();
  app.add_option("LOT", given->lot, "Number, or a food of which just one lot is on hand")
      ->required();
  app.add_option("CODE", given->code, "The code as it is really printed; none: there is none")
      ->required();
  set_help(
      app,
      {"larderloop lot code 17 L6074\nlarderloop lot code lentil-stew none\n",
       "A lot is never changed, so it is entered again under a new number, with date, label and "
       "state as they were read last and with everything that was recorded of it, and the old "
       "one is taken back. In a review that is going on, walk past it again.",
       {}});
  return [given, &runtime] { return code(*given, runtime); };
}

}  // namespace larderloop::cli
