#include "larderloop/app/cautions.h"

#include "larderloop/app/placing.h"
#include "larderloop/core/energy_need.h"
#include "larderloop/core/stock.h"

#include <algorithm>

namespace larderloop {
namespace {

constexpr int kInfantYears = 2;
// What keeps longer once opened is not wet food (USDA FSIS storage-time data, opened).
constexpr int kDryDays = 14;

bool of_kit(const Household& household, const PlaceKey& place, const PlaceKey& kit) {
  return kit.empty() || kit_of(household, place) == kit;
}

bool is_formula(const Household& household, const FoodKey& key) {
  const Food* food = key.empty() ? nullptr : find_food(household, key);
  return food != nullptr && food->infant_formula;
}

bool is_infant(const Household& household, const PersonKey& key, Day today) {
  const Person* person = find_person(household, key);
  return person != nullptr && person->is_human() && !person->retired && person->born &&
         *person->born <= today && years_on(*person->born, today) < kInfantYears;
}

}  // namespace

std::string_view caution_name(Caution caution) {
  switch (caution) {
    case Caution::kLabel:
      return "label";
    case Caution::kPurchase:
      return "purchase";
    case Caution::kContainers:
      return "containers";
    case Caution::kSpoiled:
      return "spoiled";
    case Caution::kOpened:
      return "opened";
    case Caution::kFlood:
      return "flood";
    case Caution::kFloodTins:
      return "flood_tins";
    case Caution::kOutage:
      return "outage";
    case Caution::kFormula:
      return "formula";
    case Caution::kLifting:
      return "lifting";
    case Caution::kEstimates:
      return "estimates";
    case Caution::kNoPromise:
      return "no_promise";
    case Caution::kIll:
      return "ill";
  }
  return {};
}

std::string_view caution_words(Caution caution) {
  switch (caution) {
    case Caution::kLabel:
      return "Read the label of everything before somebody eats it. When the label and this paper "
             "disagree, the label is right.";
    case Caution::kPurchase:
      return "Read the label of every package, also of food you know: recipes change between "
             "purchases.";
    case Caution::kContainers:
      return "Tins and packs that bulge, leak, are cracked, rusted or badly dented go out unopened "
             "and untasted, whatever their date.";
    case Caution::kSpoiled:
      return "When something spurts, foams or smells wrong as it is opened: do not taste it, wrap "
             "it up and throw it out where no child and no animal gets at it.";
    case Caution::kOpened:
      return "Opened wet food without a fridge is eaten at that meal: what has stood for two "
             "hours, "
             "in heat above 32 degrees C for one, is thrown out.";
    case Caution::kFlood:
      return "What flood water touched is thrown out, all but undamaged all-metal tins and "
             "retort pouches. Screw caps, pull rings, crimped caps, paper, cloth, plastic and "
             "home-canned food go out. Ask the local food-safety or emergency authority first.";
    case Caution::kFloodTins:
      return "Tins from a flood are cleaned and disinfected as the local authority says, and "
             "marked "
             "anew. Without its label nobody knows what is in a tin: it is not for anybody with an "
             "allergy or a diet.";
    case Caution::kOutage:
      return "Without power a closed fridge stays cold for about four hours, a full freezer for "
             "two "
             "days, half full for one. Food that spoils goes out after two hours above 4 degrees "
             "C. "
             "Eat from the fridge first, then the freezer, the kit last.";
    case Caution::kFormula:
      return "Infant formula: ready-to-feed is the safest kind where water is not. With powder "
             "take "
             "bottled water and the exact amount of its label, never thinner; it is used within "
             "two "
             "hours of mixing and one hour of the first sip, and the rest is thrown out. Past its "
             "use-by date it is fed to nobody and given to nobody. The child's doctor or clinic "
             "decides.";
    case Caution::kLifting:
      return "Lift a box close to the body with both hands, two people where it is heavy, never a "
             "child; water is carried bottle by bottle.";
    case Caution::kEstimates:
      return "Energy and lifting are estimates for healthy adults; for infants, pregnancy and "
             "illness ask a professional.";
    case Caution::kNoPromise:
      return "No finding does not mean that a food is safe: the label, your local food and "
             "emergency authorities and a doctor or dietitian decide.";
    case Caution::kIll:
      return "For anybody who is ill, ask a doctor.";
  }
  return {};
}

bool concerns_formula(const Household& household, const PlaceKey& kit, Day today) {
  const bool menu =
      std::any_of(household.menu.begin(), household.menu.end(), [&](const MenuLine& line) {
        if (!of_kit(household, line.place, kit)) return false;
        const std::vector<PersonKey> eaters = eaters_of(household, line);
        return is_formula(household, line.food) ||
               std::any_of(eaters.begin(), eaters.end(), [&](const PersonKey& each) {
                 return is_infant(household, each, today);
               });
      });
  if (menu) return true;
  const auto ledger = replay(household);
  if (!ledger) return true;  // nothing is known: better said than not
  return std::any_of(ledger->stock().begin(), ledger->stock().end(), [&](const auto& lies) {
    const StockKey& at = lies.first;
    return of_kit(household, at.place, kit) &&
           is_formula(household, find_lot(household, at.lot)->food);
  });
}

bool spoils_when_opened(const Food& food) {
  return (food.kind == FoodKind::kFood || food.kind == FoodKind::kPetFood ||
          food.kind == FoodKind::kDrink) &&
         food.storage.opened_days < kDryDays;
}

}  // namespace larderloop
