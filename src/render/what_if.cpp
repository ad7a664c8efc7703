#include "larderloop/render/what_if.h"

#include "larderloop/core/words.h"
#include "render/json_common.h"
#include "render/plain.h"

#include <fmt/core.h>

namespace larderloop {
namespace {

using json::Json;

std::string finding_line(const Household& household, const KitFinding& each) {
  return fmt::format("{}: {}", plain::place(household, each.place), each.what);
}

std::string kit_text(const Household& household, const KitWhatIf& kit) {
  const std::string state = kit.ready_after    ? "ready"
                            : kit.ready_before ? "no longer ready"
                                               : "not ready, as it is now";
  std::string text = fmt::format("\n{}: {}.\n", plain::place(household, kit.kit), state);
  plain::Section wrong("Would be wrong");
  plain::Section other("Would be worth knowing");
  for (const KitFinding& each : kit.wrong)
    (each.gravity == Gravity::kMust ? wrong : other)
        .line(finding_line(household, each) + "\n      " + each.todo);
  plain::Section solved("Would be right then");
  for (const KitFinding& each : kit.solved) solved.line(finding_line(household, each));
  plain::Section buy("The refill would also buy");
  for (const BuyLine& each : kit.buy)
    buy.line(fmt::format("{} {}", each.units, plain::food(household, each.food)));
  plain::Section unmet("Nothing known would fill");
  for (const Unmet& each : kit.unmet)
    unmet.line(plain::menu_line(household, each.line) + ": " + each.why);
  for (const plain::Section* section : {&wrong, &other, &solved, &buy, &unmet}) {
    if (!section->empty()) text += section->text();
  }
  if (kit.wrong.empty() && kit.solved.empty() && kit.buy.empty() && kit.unmet.empty())
    return text + "  Nothing changes.\n";
  if (kit.cost_before != kit.cost_after) {
    text += fmt::format("  The refill would cost {} instead of {}.\n",
                        money_words(kit.cost_after, household.settings.currency),
                        money_words(kit.cost_before, household.settings.currency));
  }
  return text;
}

Json finding_of(const KitFinding& each) {
  return {{"gravity", gravity_name(each.gravity)},
          {"topic", topic_name(each.topic)},
          {"place", each.place.str()},
          {"person", each.person ? Json(each.person->str()) : Json(nullptr)},
          {"lot", each.lot.empty() ? Json(nullptr) : Json(each.lot.value())},
          {"what", each.what},
          {"todo", each.todo}};
}

}  // namespace

std::string render_what_if_text(const Household& household, const WhatIfReport& report,
                                bool written) {
  std::string text =
      fmt::format("{}: {}.\n", written ? "Written down" : "What if", list_words(report.assumed));
  for (const KitWhatIf& kit : report.kits) text += kit_text(household, kit);
  plain::Section meals("Planned meals that would be wrong");
  for (const WrongMeal& each : report.meals) {
    const Person* person = find_person(household, each.person);
    meals.line(fmt::format("{}, {}: {} for {}: {}", plain_day(each.day), meal_name(each.meal),
                           plain::food(household, each.food),
                           person == nullptr ? each.person.str() : person->name, each.why));
  }
  if (!meals.empty()) text += meals.text();
  if (!written) {
    text += report.not_written.empty()
                ? "Nothing was written. To write it down: the same again with --apply.\n"
                : "Nothing was written: " + report.not_written + ".\n";
  }
  return text;
}

std::string render_what_if_json(const Household&, const WhatIfReport& report, bool written,
                                Day as_of) {
  Json data;
  data["assumed"] = report.assumed;
  data["written"] = written;
  data["not_written"] = json::text_or_null(report.not_written);
  data["kits"] = Json::array();
  for (const KitWhatIf& kit : report.kits) {
    Json one = {{"kit", kit.kit.str()},
                {"ready_before", kit.ready_before},
                {"ready_after", kit.ready_after}};
    one["wrong"] = Json::array();
    one["solved"] = Json::array();
    one["buy"] = Json::array();
    one["unmet"] = Json::array();
    for (const KitFinding& each : kit.wrong) one["wrong"].push_back(finding_of(each));
    for (const KitFinding& each : kit.solved) one["solved"].push_back(finding_of(each));
    for (const BuyLine& each : kit.buy)
      one["buy"].push_back({{"food", each.food.str()}, {"units", each.units}});
    for (const Unmet& each : kit.unmet)
      one["unmet"].push_back(
          {{"line", each.line.value()}, {"units", each.units}, {"why", each.why}});
    one["cost_before_cents"] = kit.cost_before;
    one["cost_after_cents"] = kit.cost_after;
    data["kits"].push_back(std::move(one));
  }
  data["meals"] = Json::array();
  for (const WrongMeal& each : report.meals) {
    data["meals"].push_back({{"day", iso_day(each.day)},
                             {"meal", meal_name(each.meal)},
                             {"person", each.person.str()},
                             {"food", each.food.str()},
                             {"lot", each.lot.value()},
                             {"why", each.why}});
  }
  return json::document("what_if", as_of, std::move(data));
}

}  // namespace larderloop
