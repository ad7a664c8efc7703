// placing.h - who eats from a place, and what must therefore not be put there.
// Safety:   fails closed. A place of a kit that no menu line names is taken for communal: everyone
// might eat from it.
#pragma once

#include "larderloop/core/eligible.h"
#include "larderloop/core/household.h"
#include "larderloop/core/lot.h"
#include "larderloop/core/result.h"

#include <vector>

namespace larderloop {

// The people of the place's own menu lines; in a kit without any, every human; outside kits nobody
// in particular (meals ask again). Key order.
[[nodiscard]] std::vector<PersonKey> eaters_at(const Household& household, const PlaceKey& place);
// Those of them who must not have it. Water and things are nobody's to refuse; food of one species
// lies fine beside that of another as long as somebody there can have it.
[[nodiscard]] std::vector<PersonRefusal> refusals_at(const Household& household, const Food& food,
                                                     const Statement* label, const PlaceKey& place,
                                                     Day today);
// May more of this lot be put there? kBadData with the reason and the next step: somebody who eats
// from there must not have it, the lot is doubtful or recalled and the place is in a kit, or its
// safety date has passed.
[[nodiscard]] Status may_put(const Household& household, const LotFacts& facts,
                             const PlaceKey& place, Day today);
// "Mira must not have it: the label says it contains sesame; Jon ..."
[[nodiscard]] std::string must_not_words(const Household& household,
                                         const std::vector<PersonRefusal>& refusals);

}  // namespace larderloop
