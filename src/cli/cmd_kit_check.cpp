// kit check: would the kit feed these people safely?
#include "cli/command.h"
#include "cli/exit_status.h"
#include "cli/kit_argument.h"
#include "larderloop/app/kit_check.h"
#include "larderloop/render/kit_check.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <memory>

namespace larderloop::cli {

Action add_kit_check(CLI::App& app, Runtime& runtime) {
  auto kit = std::make_shared<std::string>();
  auto all = std::make_shared<bool>(false);
  app.add_option("KIT", *kit, "The kit; left out: all of them");
  app.add_flag("--all", *all, "Masses, and how every lot stands, too");
  set_help(
      app,
      {"larderloop kit check\nlarderloop kit check home-kit --all\n",
       "Says ready or not ready, and by bag, person, day and meal what to put right: the menu, "
       "allergens, unread labels, small children, openers and cutlery, dates, energy, water, mass. "
       "It repeats what people wrote down; it does not say that a food is safe.",
       {{1, "a kit is not ready"}}});
  return [kit, all, &runtime]() -> Result<int> {
    auto checks =
        runtime.read([&](const Household& household, Asked asked) -> Result<std::vector<KitCheck>> {
          std::vector<PlaceKey> kits = places_of_kind(household, PlaceKind::kKit);
          if (!kit->empty() || kits.empty()) {
            auto named = kit_named(household, *kit);
            if (!named) return fail(named.error());
            kits = {*named};
          }
          std::vector<KitCheck> found;
          for (const PlaceKey& each : kits) {
            auto check = check_kit(household, each, asked.today);
            if (!check) return fail(check.error());
            found.push_back(std::move(*check));
          }
          return found;
        });
    if (!checks) return fail(checks.error());
    if (runtime.options.json) {
      runtime.print_bytes(
          render_kit_checks_json(runtime.household(), *checks, runtime.asked().today));
    } else {
      std::string text;
      for (const KitCheck& each : *checks) {
        text += (text.empty() ? "" : "\n") + render_kit_check_text(runtime.household(), each, *all, runtime.asked().today);
      }
      runtime.print(text);
    }
    const bool ready = std::all_of(checks->begin(), checks->end(),
                                   [](const KitCheck& each) { return each.ready(); });
    return ready ? 0 : kSomething;
  };
}

}  // namespace larderloop::cli
