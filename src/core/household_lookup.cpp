#include "larderloop/core/household.h"

#include <algorithm>

namespace larderloop {
namespace {

constexpr int kDeepest = 16;  // nesting is checked on input; a ring must not hang a reader

template <class List, class Key>
auto find_in(const List& list, const Key& key) -> decltype(list.data()) {
  const auto found =
      std::lower_bound(list.begin(), list.end(), key,
                       [](const auto& each, const Key& wanted) { return each.key < wanted; });
  return found != list.end() && found->key == key ? &*found : nullptr;
}

}  // namespace

const Person* find_person(const Household& household, const PersonKey& key) {
  return find_in(household.people, key);
}
const Food* find_food(const Household& household, const FoodKey& key) {
  return find_in(household.foods, key);
}
const Place* find_place(const Household& household, const PlaceKey& key) {
  return find_in(household.places, key);
}

const Lot* find_lot(const Household& household, LotId id) {
  const auto found =
      std::lower_bound(household.lots.begin(), household.lots.end(), id,
                       [](const Lot& each, LotId wanted) { return each.id < wanted; });
  return found != household.lots.end() && found->id == id ? &*found : nullptr;
}

PlaceKey kit_of(const Household& household, const PlaceKey& place) {
  const Place* at = find_place(household, place);
  for (int depth = 0; at != nullptr && depth < kDeepest; ++depth) {
    if (at->kind == PlaceKind::kKit) return at->key;
    at = at->parent.empty() ? nullptr : find_place(household, at->parent);
  }
  return {};
}

bool is_within(const Household& household, const PlaceKey& place, const PlaceKey& outer) {
  const Place* at = find_place(household, place);
  for (int depth = 0; at != nullptr && depth < kDeepest; ++depth) {
    if (at->key == outer) return true;
    at = at->parent.empty() ? nullptr : find_place(household, at->parent);
  }
  return false;
}

std::string place_path(const Household& household, const PlaceKey& place) {
  std::string path;
  const Place* at = find_place(household, place);
  for (int depth = 0; at != nullptr && depth < kDeepest; ++depth) {
    path = path.empty() ? at->name : at->name + " > " + path;
    at = at->parent.empty() ? nullptr : find_place(household, at->parent);
  }
  return path.empty() ? place.str() : path;
}

std::vector<PlaceKey> places_of_kind(const Household& household, PlaceKind kind) {
  std::vector<PlaceKey> keys;
  for (const Place& place : household.places) {
    if (place.kind == kind && !place.retired) keys.push_back(place.key);
  }
  return keys;
}

}  // namespace larderloop
