#include <algorithm>

#include "app/book_view.h"
#include "larderloop/app/reviews.h"

namespace larderloop {

Result<PlaceKey> only_kit(const Household& household) {
  const auto kits = places_of_kind(household, PlaceKind::kKit);
  if (kits.size() == 1) return kits.front();
  if (kits.empty()) {
    return fail(ErrorKind::kNotFound, "the household has no kit", "add one: larderloop place add \"Home kit\" --kind kit");
  }
  std::string names;
  for (const PlaceKey& kit : kits) names += (names.empty() ? "" : ", ") + kit.str();
  return fail(ErrorKind::kUsage, "the household has several kits", "name one of: " + names);
}

Result<StockKey> position_in_kit(const Household& household, const PlaceKey& kit, LotId lot,
                                 const std::optional<PlaceKey>& at, Day today) {
  auto view = view_book(household, today);
  if (!view) return fail(view.error());
  std::vector<StockKey> found;
  for (const Position& position : view->positions) {
    const bool here = position.at.lot == lot && *position.kit == kit;
    if (here && (!at || position.at.place == *at)) found.push_back(position.at);
  }
  const std::string number = std::to_string(lot.value());
  if (found.empty()) {
    return fail(ErrorKind::kBadData,
                "lot " + number + " is not in " + (at ? "'" + at->str() + "'" : "'" + kit.str() + "'") + " by the book",
                "if it is there, record it: larderloop record found " + number + " 1 --at PLACE");
  }
  if (found.size() > 1) {
    std::string places;
    for (const StockKey& each : found) places += (places.empty() ? "" : ", ") + each.place.str();
    return fail(ErrorKind::kUsage, "lot " + number + " lies in several places of the kit", "name one with --at: " + places);
  }
  return found.front();
}

}  // namespace larderloop
