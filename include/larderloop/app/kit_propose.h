// kit_propose.h - a first kit menu for one person or for everybody, out of the foods that the book
// knows: the exact refill planner over packs yet to be bought, with a plain structure of meals by
// age. To be edited by hand afterwards. Safety:   who may be given what is why_not()'s answer, by
// each food's last read label; under four years nothing that is marked as a choking risk. Infants
//           under one year are left out: their feeding is for a professional to say.
#pragma once

#include "larderloop/app/asked.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"
#include "larderloop/plan/problem.h"

#include <optional>
#include <string>
#include <vector>

namespace larderloop {

struct ProposedDay {
  PersonKey person;
  int day = 0;
  std::int64_t kcal = 0;  // of foods whose energy is known
};
struct KitProposal {
  PlaceKey kit;
  int days = 3;
  std::vector<MenuLine> lines;  // by person, day, meal; ids follow on
  std::vector<std::string>
      gaps;  // what nothing known can fill, and who was left out: plain sentences
  std::vector<PersonKey> have_meals;  // who has meals in this kit already; with them nothing is to be written
  std::vector<ProposedDay> energy;    // by person, day
  std::int64_t cost_cents = 0;      // at the cheapest packs, by the unit
  std::int64_t mass_g = 0;
  std::vector<plan::Level> levels;  // of the planner: variety, liking, energy, cost, ...
};

// `person`: only for them. `days`: 1 to 14. The changes hold the lines. kBadData: who it is for has
// meals in this kit already; no food is known.
[[nodiscard]] Result<Outcome<KitProposal>> propose_menu(const Household& household,
                                                        const PlaceKey& kit,
                                                        const std::optional<PersonKey>& person,
                                                        int days, Asked asked);

}  // namespace larderloop
