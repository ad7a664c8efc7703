// kit propose: a first menu out of the foods that the book knows.
#include "cli/command.h"
#include "cli/kit_argument.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/kit_propose.h"
#include "larderloop/render/kit_propose.h"

#include <memory>

namespace larderloop::cli {
namespace {

struct ProposeOptions {
  std::string kit, person, days;
  bool apply = false;
};

Result<Outcome<KitProposal>> propose(const Household& household, const ProposeOptions& given,
                                     Asked asked) {
  constexpr int kUsual = 3;
  constexpr std::int64_t kMost = 14;
  auto kit = kit_named(household, given.kit);
  if (!kit) return fail(kit.error());
  std::optional<PersonKey> person;
  if (!given.person.empty()) {
    auto found = named_person(household, given.person);
    if (!found) return fail(found.error());
    person = (*found)->key;
  }
  int days = kUsual;
  if (!given.days.empty()) {
    auto count = read_count("--days", given.days, 1, kMost);
    if (!count) return fail(count.error());
    days = static_cast<int>(*count);
  }
  auto outcome = propose_menu(household, *kit, person, days, asked);
  if (!outcome || !given.apply) return outcome;
  if (!outcome->report.have_meals.empty())
    return fail(
        ErrorKind::kBadData,
        find_person(household, outcome->report.have_meals.front())->name +
            " has meals in this kit already: the lines would come on top",
        "take those lines out of the kit menu first, or name somebody without: --person PERSON");
  if (outcome->report.lines.empty())
    return fail(ErrorKind::kBadData, "there is nothing to write: no food that the book knows fits",
                "add foods: larderloop food add");
  return outcome;
}

}  // namespace

Action add_kit_propose(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ProposeOptions>();
  app.add_option("KIT", given->kit, "The kit; may be left out when there is only one");
  add_text(app, "--person", given->person, "PERSON",
           "Only for this person; left out: for everybody");
  add_text(app, "--days", given->days, "N", "For so many days; 3 if left out");
  app.add_flag("--apply", given->apply, "Write the lines into the kit menu");
  set_help(
      app,
      {"larderloop kit propose home-kit --person mira\nlarderloop kit propose --days 3 --apply\n",
       "A menu out of the foods that the book knows, in units of one sitting, by the exact "
       "planner: variety first, then what each person likes, "
       "energy, cost. Who must not have something is never given it. Edit it by hand afterwards.",
       {}});
  return [given, &runtime]() -> Result<int> {
    const auto task = [&](const Household& household, Asked asked) {
      return propose(household, *given, asked);
    };
    Result<KitProposal> report =
        given->apply
            ? runtime.write(task)
            : runtime.read([&](const Household& household, Asked asked) -> Result<KitProposal> {
                auto outcome = task(household, asked);
                if (!outcome) return fail(outcome.error());
                return std::move(outcome->report);
              });
    if (!report) return fail(report.error());
    if (runtime.options.json)
      runtime.print_bytes(render_kit_proposal_json(*report, given->apply, runtime.asked().today));
    else
      runtime.print(render_kit_proposal_text(runtime.household(), *report, given->apply));
    return 0;
  };
}

}  // namespace larderloop::cli
