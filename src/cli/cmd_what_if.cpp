// what-if: what a change would make wrong.
#include "cli/command.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/app/what_if.h"
#include "larderloop/render/what_if.h"

#include <memory>

namespace larderloop::cli {
namespace {

struct WhatIfOptions {
  std::string person, joins, born, leaves, birthday, gtin, code, lot, hot;
  std::vector<std::string> avoid, avoid_accepting, diets;
  LabelOptions label;
  bool apply = false;
};

template <class Key, class Find>
Status put_key(const Household& household, const std::string& text, Find find,
               std::optional<Key>& into) {
  if (text.empty()) return {};
  auto found = find(household, text);
  if (!found) return fail(found.error());
  into = (*found)->key;
  return {};
}

Status read_people(const Household& household, const WhatIfOptions& given, Day today,
                   WhatIf& assumed) {
  for (const Status& each : {put_key(household, given.person, named_person, assumed.person),
                             put_key(household, given.leaves, named_person, assumed.leaves),
                             put_key(household, given.birthday, named_person, assumed.older)}) {
    if (!each) return each;
  }
  std::vector<Avoid> avoid;
  for (const std::string& key : given.avoid) avoid.push_back({key, false});
  for (const std::string& key : given.avoid_accepting) avoid.push_back({key, true});
  auto diets = read_diets("--diet", given.diets);
  if (!diets) return fail(diets.error());
  const bool about = !avoid.empty() || !diets->empty();
  if (given.person.empty() && given.joins.empty() && about)
    return fail(ErrorKind::kUsage, "it does not say for whom",
                "name somebody: --person PERSON, or --joins NAME");
  if (!given.person.empty() && !about)
    return fail(ErrorKind::kUsage, "nothing is assumed of '" + given.person + "'",
                "give --avoid KEYS or --diet DIETS");
  if (!given.person.empty()) {
    assumed.avoid = std::move(avoid);
    assumed.diets = *diets;
  }
  if (given.joins.empty()) return {};
  Person joins;
  joins.name = given.joins;
  if (given.person.empty()) {
    joins.avoid = std::move(avoid);
    joins.diets = *diets;
  }
  if (!given.born.empty()) {
    auto born = read_day("--born", given.born, today);
    if (!born) return fail(born.error());
    joins.born = *born;
  }
  assumed.joins = std::move(joins);
  return {};
}

Result<WhatIf> read_what_if(const Household& household, const WhatIfOptions& given, Day today) {
  WhatIf assumed;
  if (Status people = read_people(household, given, today, assumed); !people)
    return fail(people.error());
  if (Status hot = put_key(household, given.hot, named_place, assumed.hot); !hot)
    return fail(hot.error());
  assumed.gtin = given.gtin;
  assumed.lot_code = given.code;
  auto label = read_label(given.label, "--label-read-by", "");
  if (!label) return fail(label.error());
  if (label->has_value() != !given.lot.empty())
    return fail(ErrorKind::kUsage, "a label belongs to a lot",
                "give --lot LOT, --label-read-by NAME and what it says: --contains, --may-contain, "
                "--suits");
  if (!given.lot.empty()) {
    auto lot = named_lot(household, given.lot);
    if (!lot) return fail(lot.error());
    assumed.lot = (*lot)->id;
    assumed.label = *label;
  }
  return assumed;
}

}  // namespace

Action add_what_if(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<WhatIfOptions>();
  add_text(app, "--person", given->person, "PERSON", "Whose allergy or diet is new");
  add_list(app, "--avoid", given->avoid, "KEYS", "What they must not have from now on");
  add_list(app, "--avoid-accepting-may-contain", given->avoid_accepting, "KEYS",
           "The same, where they accept 'may contain'");
  add_list(app, "--diet", given->diets, "DIETS", "The diet they keep from now on");
  add_text(app, "--joins", given->joins, "NAME",
           "Somebody joins the household; --avoid and --diet are theirs");
  add_text(app, "--born", given->born, "DATE", "When who joins was born");
  add_text(app, "--leaves", given->leaves, "PERSON", "Somebody leaves the household");
  add_text(app, "--birthday", given->birthday, "PERSON", "Somebody is a year older");
  add_text(app, "--recall-gtin", given->gtin, "DIGITS", "A food is recalled");
  add_text(app, "--recall-code", given->code, "TEXT",
           "A lot code is recalled; with --recall-gtin only of that food");
  add_text(app, "--lot", given->lot, "LOT", "Whose label reads otherwise");
  add_label_options(app, given->label, "--label-read-by", "");
  add_text(app, "--hot", given->hot, "PLACE", "A place that gets hot, 30 degrees or more at times");
  app.add_flag("--apply", given->apply, "Write it down");
  set_help(app, {"larderloop what-if --person mira --avoid milk\nlarderloop what-if --joins Runa "
                 "--born 2027-02-14\n"
                 "larderloop what-if --recall-gtin 09520000000110 --recall-code L7A "
                 "--apply\nlarderloop what-if --hot home-box-1\n",
                 "Says which bags, meals and plans would be wrong, and what the refill would be. "
                 "Nothing is written without --apply.",
                 {}});
  return [given, &runtime]() -> Result<int> {
    const auto task = [&](const Household& household,
                          Asked asked) -> Result<Outcome<WhatIfReport>> {
      auto assumed = read_what_if(household, *given, asked.today);
      if (!assumed) return fail(assumed.error());
      auto outcome = what_if(household, *assumed, asked);
      if (outcome && given->apply && !outcome->report.not_written.empty())
        return fail(ErrorKind::kUsage, "this cannot be written down as it is",
                    outcome->report.not_written);
      return outcome;
    };
    Result<WhatIfReport> report =
        given->apply
            ? runtime.write(task)
            : runtime.read([&](const Household& household, Asked asked) -> Result<WhatIfReport> {
                auto outcome = task(household, asked);
                if (!outcome) return fail(outcome.error());
                return std::move(outcome->report);
              });
    if (!report) return fail(report.error());
    if (runtime.options.json)
      runtime.print_bytes(
          render_what_if_json(runtime.household(), *report, given->apply, runtime.asked().today));
    else
      runtime.print(render_what_if_text(runtime.household(), *report, given->apply));
    return 0;
  };
}

}  // namespace larderloop::cli
