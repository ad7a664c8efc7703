// core_household.h - a small valid household that the unit tests of core bend to their needs.
#pragma once

#include "larderloop/core/household.h"
#include "larderloop/core/validate.h"

namespace larderloop {

inline Day day_at(const char* text) {
  return parse_iso_day(text).value();
}

inline Statement label_read(std::map<std::string, Declared> declared = {},
                            std::set<Diet> suits = {}) {
  return Statement{std::move(declared), std::move(suits), "Ada", day_at("2026-05-02")};
}

inline Food make_food(const char* key, FoodKind kind, std::int64_t servings, const char* unit) {
  Food food;
  food.key = FoodKey(key);
  food.name = key;
  food.kind = kind;
  food.servings = servings;
  food.unit = unit;
  return food;
}

inline Place make_place(const char* key, const char* name, PlaceKind kind, const char* parent) {
  Place place;
  place.key = PlaceKey(key);
  place.name = name;
  place.kind = kind;
  place.parent = PlaceKey(parent);
  return place;
}

inline Lot make_lot(std::int64_t id, const char* food, MarkKind kind, const char* day) {
  Lot lot;
  lot.id = LotId(id);
  lot.food = FoodKey(food);
  lot.mark.kind = kind;
  if (kind != MarkKind::kNone) lot.mark.day = day_at(day);
  lot.mark.text = day;
  lot.received = day_at("2026-05-01");
  return lot;
}

// Units of lentil stew are pouches of two servings. Lot 1: four of them on the top shelf since 1
// May 2026.
inline Household core_household() {
  Household home;
  home.book_id = "0a1b2c3d-4e5f-4a6b-8c7d-9e0f1a2b3c4d";
  Person ada;
  ada.key = PersonKey("ada");
  ada.name = "Ada";
  ada.avoid = {{"peanut", false}};
  Person ben;
  ben.key = PersonKey("ben");
  ben.name = "Ben";
  Person minka;
  minka.key = PersonKey("minka");
  minka.name = "Minka";
  minka.species = "cat";
  home.people = {ada, ben, minka};

  Food stew = make_food("lentil-stew", FoodKind::kFood, 2, "pouch");
  stew.roles = {Role::kMain};
  stew.storage = {24, 60, 3, "common practice"};
  Food cat = make_food("cat-dinner", FoodKind::kPetFood, 1, "can");
  cat.species = "cat";
  cat.roles = {Role::kPetMeal};
  Food water = make_food("canister", FoodKind::kWater, 1, "canister");
  water.volume_ml = 10'000;
  water.self_filled = true;
  water.roles = {Role::kWater};
  Food opener = make_food("opener", FoodKind::kThing, 1, "piece");
  opener.roles = {Role::kThing};
  Food formula = make_food("formula", FoodKind::kDrink, 1, "bottle");
  formula.infant_formula = true;
  home.foods = {stew, cat, water, opener, formula};

  home.places = {make_place("home-kit", "Home kit", PlaceKind::kKit, ""),
                 make_place("crate", "Crate", PlaceKind::kBox, "home-kit"),
                 make_place("ada-bag", "Ada's bag", PlaceKind::kBag, "crate"),
                 make_place("pantry", "Pantry", PlaceKind::kPantry, ""),
                 make_place("top-shelf", "Top shelf", PlaceKind::kShelf, "pantry")};
  home.review_rules = {{PlaceKey("home-kit"), "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA",
                        day_at("2026-04-04"), std::nullopt}};

  MenuLine dinner;
  dinner.id = MenuLineId(1);
  dinner.place = PlaceKey("ada-bag");
  dinner.people = {PersonKey("ada")};
  dinner.day = 1;
  dinner.meal = Meal::kDinner;
  dinner.role = Role::kMain;
  home.menu = {dinner};
  home.table = {{Weekday::kMonday, Meal::kDinner, {PersonKey("ada"), PersonKey("ben")}}};

  home.lots = {make_lot(1, "lentil-stew", MarkKind::kBestBefore, "2027-03-31")};
  home.lots[0].label = label_read();
  Entry received;
  received.id = EntryId(1);
  received.kind = EntryKind::kReceived;
  received.on = day_at("2026-05-01");
  received.written_at = midnight(received.on);
  received.at = {LotId(1), PlaceKey("top-shelf"), std::nullopt};
  received.amount = HalfServings::units(4, 2);
  home.entries = {received};
  sort_lists(home);
  return home;
}

}  // namespace larderloop
