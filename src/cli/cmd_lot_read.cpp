// lot label, state, date: what was learnt of a lot after it was entered.
#include "cli/command.h"
#include "cli/entry_parts.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/app/placing.h"
#include "larderloop/app/things.h"
#include "larderloop/render/json_things.h"
#include "larderloop/render/text_things.h"

#include <memory>

namespace larderloop::cli {
namespace {

constexpr LotState kStates[] = {LotState::kOk, LotState::kDoubtful, LotState::kRecalled};

struct ReadOptions {
  std::string lot, by, state, kind, note;
  std::vector<std::string> date;
  LabelOptions label;
};

// Finds the lot, lets `fill` say what was learnt, writes it, and says what it means.
template <class Fill>
Result<int> learn(const ReadOptions& given, Runtime& runtime, Fill fill) {
  auto read =
      runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<LotRead>> {
        auto lot = named_lot(household, given.lot);
        if (!lot) return fail(lot.error());
        LotLearnt request;
        request.lot = (*lot)->id;
        request.by = given.by;
        request.note = given.note;
        if (Status filled = fill(household, request, asked); !filled) return fail(filled.error());
        return read_lot(household, request, asked);
      });
  if (!read) return fail(read.error());
  const Household& household = runtime.household();
  const std::string number = std::to_string(read->after.id.value());
  if (runtime.options.json)
    runtime.print_bytes(render_lot_read_json(household, *read, runtime.asked().today));
  std::string what;
  const auto say = [&](const std::string& words) { what += (what.empty() ? "" : "; ") + words; };
  if (read->reading.label) say("label read");
  if (read->reading.state) say("state " + std::string(lot_state_name(*read->reading.state)));
  if (read->reading.mark) say(date_words(read->after));
  runtime.note("lot " + number + " (" + find_food(household, read->after.food)->name +
               "): " + what + "; reading " + std::to_string(read->reading.id.value()) +
               "; see: larderloop lot show " + number);
  if (read->label) {
    for (const std::string& line : label_lines(household, *read->label)) {
      if (read->label->must_not.empty())
        runtime.note(line);
      else
        runtime.warn(line);
    }
  }
  if (read->reading.state && *read->reading.state != LotState::kOk) {
    runtime.warn("keep lot " + number +
                 " apart and do not eat from it; for a recall do as its notice says");
  }
  for (const auto& [place, refused] : read->now_wrong) {
    runtime.warn("it lies in " + find_place(household, place)->name + ", and must leave there: " +
                 must_not_words(household, refused) + "; next: larderloop record moved " + number +
                 " all --at " + place.str() + " --to PLACE");
  }
  return 0;
}

void add_lot_argument(CLI::App& app, ReadOptions& given) {
  app.add_option("LOT", given.lot, "Number, or a food of which just one lot is on hand")
      ->required();
}

}  // namespace

Action add_lot_label(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ReadOptions>();
  add_lot_argument(app, *given);
  add_label_options(app, given->label, "--read-by", "--same");
  add_text(app, "--note", given->note, "TEXT", "A remark");
  set_help(app,
           {"larderloop lot label 17 --read-by Mira --same\n"
            "larderloop lot label 17 --read-by Mira --contains gluten,milk --may-contain peanut\n"
            "larderloop lot label 17 --read-by Mira\n",
            "Write down what this very label says. --read-by alone means: I read it, and it names "
            "none of the allergens. The tool repeats what was "
            "read and never says that a food is safe." +
                known_keys_sentence(),
            {}});
  return [given, &runtime] {
    return learn(*given, runtime, [&](const Household&, LotLearnt& request, Asked) -> Status {
      auto label = read_label(given->label, "--read-by", "--same");
      if (!label) return fail(label.error());
      if (!*label)
        return fail(ErrorKind::kUsage, "nobody is named who read the label",
                    "say who read it: --read-by NAME");
      request.by = (*label)->read_by;
      request.label = *label;
      return {};
    });
  };
}

Action add_lot_state(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ReadOptions>();
  add_lot_argument(app, *given);
  app.add_option("STATE", given->state, "ok, doubtful or recalled")->required();
  add_text(app, "--by", given->by, "NAME", "Who found it");
  add_text(app, "--note", given->note, "TEXT", "Why");
  set_help(app, {"larderloop lot state 17 doubtful --note 'dented at the seam'\nlarderloop lot "
                 "state 17 recalled\n",
                 "A doubtful or recalled lot is never planned and never counts as filling a kit.",
                 {}});
  return [given, &runtime] {
    return learn(*given, runtime, [&](const Household&, LotLearnt& request, Asked) -> Status {
      auto state = read_word<LotState>("STATE", given->state, parse_lot_state,
                                       names_of(kStates, lot_state_name));
      if (!state) return fail(state.error());
      request.state = *state;
      return {};
    });
  };
}

Action add_lot_date(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ReadOptions>();
  add_lot_argument(app, *given);
  app.add_option("TEXT", given->date, "The date as it is really printed")->required();
  add_text(app, "--kind", given->kind, "KIND",
           "best-before if left out; use-by, sell-by, packed-on, produced-on");
  add_text(app, "--by", given->by, "NAME", "Who read it");
  add_text(app, "--note", given->note, "TEXT", "A remark");
  set_help(app, {"larderloop lot date 17 best before end 2027-08\nlarderloop lot date 17 "
                 "2027-03-15 --kind use-by\n",
                 "",
                 {}});
  return [given, &runtime] {
    return learn(*given, runtime, [&](const Household& household, LotLearnt& request, Asked asked) -> Status {
      MarkKind kind = MarkKind::kBestBefore;
      if (!given->kind.empty()) {
        auto named = read_word<MarkKind>("--kind", given->kind, parse_mark_kind,
                                         names_of(kAllMarkKinds, mark_kind_name));
        if (!named) return fail(named.error());
        kind = *named;
      }
      const Lot& lot = *find_lot(household, request.lot);
      auto printed = read_printed(household, find_food(household, lot.food), joined_words(given->date), kind, asked.today, lot.received);
      if (!printed) return fail(printed.error());
      request.mark = printed->mark;
      return {};
    });
  };
}

Action add_lot_change(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ReadOptions>();
  auto date = std::make_shared<std::string>();
  add_lot_argument(app, *given);
  add_text(app, "--date", *date, "TEXT", "The date as it is really printed, or none");
  add_text(app, "--kind", given->kind, "KIND",
           "best-before if left out; use-by, sell-by, packed-on, produced-on");
  add_text(app, "--state", given->state, "STATE", "ok, doubtful or recalled");
  add_text(app, "--by", given->by, "NAME", "Who found it");
  add_text(app, "--note", given->note, "TEXT", "A remark");
  add_label_options(app, given->label, "--label-read-by", "--label-same-as-food");
  set_help(app,
           {"larderloop lot change 17 --date 'best before end 2027-08' --label-read-by Mira \\\n"
            "  --label-same-as-food\n"
            "larderloop lot change 17 --state doubtful --note 'dented at the seam'\n",
            "Date, label and state at once: what lot date, lot label and lot state say one by one. "
            "What was entered stays in the book, and this comes after it. Another code: lot code. Food "
            "and the day it came stay as they were; if they are wrong, take the lot back (lot retire) "
            "and add it again. Units are counted: record counted." +
                known_keys_sentence(),
            {}});
  return [given, date, &runtime] {
    return learn(
        *given, runtime, [&](const Household& household, LotLearnt& request, Asked asked) -> Status {
          auto label = read_label(given->label, "--label-read-by", "--label-same-as-food");
          if (!label) return fail(label.error());
          request.label = *label;
          if (request.by.empty() && *label) request.by = (*label)->read_by;
          if (!given->state.empty()) {
            auto state = read_word<LotState>("--state", given->state, parse_lot_state,
                                             names_of(kStates, lot_state_name));
            if (!state) return fail(state.error());
            request.state = *state;
          }
          if (!date->empty()) {
            MarkKind kind = MarkKind::kBestBefore;
            if (!given->kind.empty()) {
              auto named = read_word<MarkKind>("--kind", given->kind, parse_mark_kind,
                                               names_of(kAllMarkKinds, mark_kind_name));
              if (!named) return fail(named.error());
              kind = *named;
            }
            const Lot& lot = *find_lot(household, request.lot);
            auto printed = read_printed(household, find_food(household, lot.food), *date, kind,
                                        asked.today, lot.received);
            if (!printed) return fail(printed.error());
            request.mark = printed->mark;
          }
          if (!request.mark && !request.label && !request.state) {
            return fail(ErrorKind::kUsage, "nothing is said that could be changed",
                        "give --date, --state, or what the label says");
          }
          return {};
        });
  };
}

}  // namespace larderloop::cli
