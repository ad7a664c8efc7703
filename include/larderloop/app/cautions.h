// cautions.h - every caution that the program shows, in our own words, each in this one place.
// Source:   docs/sources.md, section Cautions, row by row. None of them says that a food is safe;
// the label, local authorities and licensed practice go before all of them.
#pragma once

#include "larderloop/core/household.h"

#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

enum class Caution {
  kLabel,       // before anybody eats
  kPurchase,    // at every purchase
  kContainers,  // what goes out whatever its date
  kSpoiled,     // on opening
  kOpened,      // without a fridge
  kFlood,       // what flood water touched
  kFloodTins,   // what may be saved of it
  kOutage,      // a fridge without power
  kFormula,     // infant formula
  kLifting,
  kEstimates,  // of energy and of what can be lifted
  kNoPromise,  // what a check without findings means
  kIll
};
inline constexpr Caution kAllCautions[] = {
    Caution::kLabel,   Caution::kPurchase, Caution::kContainers, Caution::kSpoiled,
    Caution::kOpened,  Caution::kFlood,    Caution::kFloodTins,  Caution::kOutage,
    Caution::kFormula, Caution::kLifting,  Caution::kEstimates,  Caution::kNoPromise,
    Caution::kIll};
[[nodiscard]] std::string_view caution_name(Caution caution);  // "flood_tins"
// Whole sentences.
[[nodiscard]] std::string_view caution_words(Caution caution);

// Is infant formula concerned: does the kit hold some, does its menu ask for it, or does somebody
// under two years eat from it? `kit` empty: anywhere in the book. Retired people do not count.
[[nodiscard]] bool concerns_formula(const Household& household, const PlaceKey& kit, Day today);
// Does opened food of this kind spoil within days, so that it is one sitting without a fridge?
[[nodiscard]] bool spoils_when_opened(const Food& food);

}  // namespace larderloop
