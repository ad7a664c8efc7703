#include "larderloop/render/kit_propose.h"

#include "larderloop/core/label_figures.h"
#include "larderloop/core/words.h"
#include "render/json_common.h"
#include "render/plain.h"

#include <fmt/core.h>

namespace larderloop {

std::string render_kit_proposal_text(const Household& household, const KitProposal& proposal,
                                     bool written) {
  std::string text = fmt::format(
      "A menu for the {}, {} {}{}\n", plain::place(household, proposal.kit), proposal.days,
      plural("day", proposal.days), written ? ", written down." : ", proposed.");
  PersonKey person;
  int day = 0;
  for (const MenuLine& line : proposal.lines) {
    if (line.people.front() != person) {
      person = line.people.front();
      day = 0;
      text += "\n" + find_person(household, person)->name + ", in " +
              plain::place(household, line.place) + "\n";
    }
    if (line.day != day) {
      day = line.day;
      std::int64_t kcal = 0;
      for (const ProposedDay& each : proposal.energy) {
        if (each.person == person && each.day == day) kcal = each.kcal;
      }
      text += fmt::format("  Day {}, about {} kcal\n", day, label_kcal(static_cast<double>(kcal)));
    }
    text += fmt::format("    {}: {} {}\n", meal_name(*line.meal), line.units,
                        plain::food(household, line.food));
  }
  for (const std::string& gap : proposal.gaps) text += "\n- " + gap + "\n";
  text += fmt::format(
      "\nAbout {} and {:.1f} kg. Foods that the book knows, by their last read labels: read every "
      "label again when you buy.\n",
      money_words(proposal.cost_cents, household.settings.currency),
      static_cast<double>(proposal.mass_g) / 1000);
  if (!written)
    text +=
        "Nothing was written. To write the lines into the kit menu, and change them by hand then: "
        "the same again with --apply.\n";
  return text;
}

std::string render_kit_proposal_json(const KitProposal& proposal, bool written, Day as_of) {
  json::Json data;
  data["kit"] = proposal.kit.str();
  data["days"] = proposal.days;
  data["written"] = written;
  data["lines"] = json::Json::array();
  for (const MenuLine& line : proposal.lines) {
    data["lines"].push_back({{"id", line.id.value()},
                             {"place", line.place.str()},
                             {"person", line.people.front().str()},
                             {"day", line.day},
                             {"meal", meal_name(*line.meal)},
                             {"food", line.food.str()},
                             {"units", line.units}});
  }
  data["gaps"] = proposal.gaps;
  data["energy"] = json::Json::array();
  for (const ProposedDay& each : proposal.energy) {
    data["energy"].push_back({{"person", each.person.str()},
                              {"day", each.day},
                              {"energy", json::quantity(each.kcal, "kcal")}});
  }
  data["cost_cents"] = proposal.cost_cents;
  data["mass"] = json::quantity(proposal.mass_g, "g");
  return json::document("kit_proposal", as_of, std::move(data));
}

}  // namespace larderloop
