// kit_argument.h - the KIT argument of review and plan: a kit by key or name, or the only one there
// is.
#pragma once

#include "larderloop/app/find.h"
#include "larderloop/app/reviews.h"

#include <string>

namespace larderloop::cli {

[[nodiscard]] inline Result<PlaceKey> kit_named(const Household& household,
                                                const std::string& text) {
  if (text.empty()) return only_kit(household);
  auto place = named_place(household, text);
  if (!place) return fail(place.error());
  if ((*place)->kind == PlaceKind::kKit) return (*place)->key;
  const PlaceKey kit = kit_of(household, (*place)->key);
  return fail(ErrorKind::kBadData,
              "'" + text + "' is a " + std::string(place_kind_name((*place)->kind)) + ", not a kit",
              kit.empty() ? "see: larderloop place list --kind kit" : "name its kit: " + kit.str());
}

}  // namespace larderloop::cli
