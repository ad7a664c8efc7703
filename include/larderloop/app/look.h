// look.h - lists of things, and everything that is known of one of them.
#pragma once

#include "larderloop/app/record.h"
#include "larderloop/core/eligible.h"
#include "larderloop/core/household.h"
#include "larderloop/core/lot.h"
#include "larderloop/core/result.h"

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace larderloop {

// Stock at one place, with the last day it counts as good there (opened units: the opened-life rule
// applied) and who eats from there and must not have it.
struct Lying {
  StockKey at;
  FoodKey food;
  HalfServings amount;
  std::optional<Day> good_through;
  std::vector<PersonRefusal> must_not;
};

// `good_through`: the soonest of what is on hand, else the lot's own.
struct LotRow {
  LotFacts facts;
  std::vector<Lying> lies;  // by place, opened_on
  HalfServings on_hand;
  std::optional<Day> good_through;
};
// `all`: also lots of which nothing is left. `at`: only what lies in that place or inside it.
struct LotFilter {
  std::optional<FoodKey> food;
  std::optional<PlaceKey> at;
  std::optional<FoodKind> kind;
  bool all = false;
};
// Soonest first; lots without a day last; then by number. Fails when the record cannot be replayed.
[[nodiscard]] Result<std::vector<LotRow>> list_lots(const Household& household,
                                                    const LotFilter& filter, Day today);

struct LotShow {
  Lot lot;
  LotRow row;
  std::vector<Reading> readings;
  std::vector<EntryRow> entries;  // oldest first
  std::vector<PersonRefusal>
      must_not;  // of all people, by the label of this very lot; other species are left out
};
[[nodiscard]] Result<LotShow> show_lot(const Household& household, LotId lot, Day today);

struct FoodShow {
  Food food;
  std::vector<LotRow> lots;             // on hand, soonest first
  std::vector<PersonRefusal> must_not;  // of all people, by the food's last read label
};
[[nodiscard]] Result<FoodShow> show_food(const Household& household, const FoodKey& food, Day today);

// `mass_g`: of what lies there and inside, opened units counted whole; `unweighed`: units whose
// mass nobody gave.
struct PlaceShow {
  Place place;
  std::vector<PlaceKey> inside;  // directly
  std::vector<PersonKey> eaters;
  std::vector<Lying> lies;  // there and inside it, by place, food, lot
  std::int64_t mass_g = 0;
  std::int64_t unweighed = 0;
};
[[nodiscard]] Result<PlaceShow> show_place(const Household& household, const PlaceKey& place, Day today);

struct PersonShow {
  Person person;
  std::vector<PlaceKey> eats_from;  // places with a menu line for the person
  std::vector<std::pair<FoodKey, RefusalReason>> must_not;  // foods, by their last read label
  std::vector<Lying> wrong;  // what lies where the person eats and is not for them
};
[[nodiscard]] Result<PersonShow> show_person(const Household& household, const PersonKey& person,
                                             Day today);

}  // namespace larderloop
