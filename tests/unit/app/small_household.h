// small_household.h - two people, a cat, a kit of two bags in a box, a pantry: enough for the tasks
// of things and record.
#pragma once

#include "larderloop/app/asked.h"
#include "larderloop/core/household.h"
#include "larderloop/core/validate.h"

#include <stdexcept>

namespace larderloop {

inline Day day_at(std::string_view text) {
  return parse_iso_day(text).value();
}

inline Asked asked_on(std::string_view day) {
  return {day_at(day), midnight(day_at(day))};
}

inline Statement label_of(std::map<std::string, Declared> declared, std::set<Diet> suits = {}) {
  return {std::move(declared), std::move(suits), "Ida", day_at("2026-10-03")};
}

// Ida avoids sesame, Bo nothing. "stew": one serving a pouch, label read (mustard); "jam": six
// servings a jar, label never read. Lot 1: six pouches in the pantry, its label read. Lot 2: two
// jars in the pantry. Entries 1 and 2 received them on 1 February 2027.
inline Household small_household() {
  Household household;
  household.book_id = "6b1f0f0c-4f43-4c2c-9e55-0d8f6b7a1c11";
  Person bo, ida, cat;
  bo.key = PersonKey("bo");
  bo.name = "Bo";
  ida.key = PersonKey("ida");
  ida.name = "Ida";
  ida.avoid = {{"sesame", false}};
  cat.key = PersonKey("tomte");
  cat.name = "Tomte";
  cat.species = "cat";
  household.people = {bo, ida, cat};
  Food jam, stew, kibble;
  jam.key = FoodKey("jam");
  jam.name = "Plum jam";
  jam.unit = "jar";
  jam.servings = 6;
  jam.storage.opened_days = 20;
  stew.key = FoodKey("stew");
  stew.name = "Lentil stew";
  stew.unit = "pouch";
  stew.label = label_of({{"mustard", Declared::kContains}}, {Diet::kVegan});
  kibble.key = FoodKey("kibble");
  kibble.name = "Cat food";
  kibble.kind = FoodKind::kPetFood;
  kibble.species = "cat";
  household.foods = {jam, kibble, stew};
  const auto place = [](const char* key, const char* name, PlaceKind kind, const char* parent) {
    Place made;
    made.key = PlaceKey(key);
    made.name = name;
    made.kind = kind;
    made.parent = PlaceKey(parent);
    return made;
  };
  household.places = {place("bag-bo", "Bo's bag", PlaceKind::kBag, "box"),
                      place("bag-ida", "Ida's bag", PlaceKind::kBag, "box"),
                      place("box", "Box", PlaceKind::kBox, "kit"),
                      place("kit", "Kit", PlaceKind::kKit, ""),
                      place("pantry", "Pantry", PlaceKind::kPantry, "")};
  const auto line = [](std::int64_t id, const char* at, std::vector<PersonKey> people) {
    MenuLine made;
    made.id = MenuLineId(id);
    made.place = PlaceKey(at);
    made.people = std::move(people);
    made.day = 1;
    made.meal = Meal::kDinner;
    made.role = Role::kMain;
    return made;
  };
  household.menu = {line(1, "bag-bo", {PersonKey("bo")}), line(2, "bag-ida", {PersonKey("ida")})};
  const auto lot = [](std::int64_t id, const char* food) {
    Lot made;
    made.id = LotId(id);
    made.food = FoodKey(food);
    made.mark = {"2028-05", MarkKind::kBestBefore, Precision::kMonth, parse_iso_day("2028-05-31")};
    made.received = parse_iso_day("2027-02-01").value();
    return made;
  };
  household.lots = {lot(1, "stew"), lot(2, "jam")};
  household.lots.front().label = label_of({{"mustard", Declared::kContains}}, {Diet::kVegan});
  const auto received = [](std::int64_t id, std::int64_t halves) {
    Entry made;
    made.id = EntryId(id);
    made.on = parse_iso_day("2027-02-01").value();
    made.written_at = midnight(made.on);
    made.at = {LotId(id), PlaceKey("pantry"), std::nullopt};
    made.amount = HalfServings(halves);
    return made;
  };
  household.entries = {received(1, 12), received(2, 24)};
  return household;
}

// The household after a task's changes; a change that leaves it inconsistent is the test's failure.
inline Household after(Household household, const Changes& changes) {
  apply_changes(household, changes);
  const auto findings = validate(household);
  if (!findings.empty())
    throw std::logic_error(findings.front().where + ": " + findings.front().what);
  return household;
}

}  // namespace larderloop
