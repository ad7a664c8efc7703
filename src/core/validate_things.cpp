// People, foods, places and settings.
#include <algorithm>
#include <set>

#include "core/validate_parts.h"

namespace larderloop {
namespace {

constexpr std::int64_t kMostGrams = 100'000;
constexpr std::int64_t kMostKcal = 20'000;
constexpr std::int64_t kMostCents = 10'000'000;

template <class Key>
void check_key(Findings& findings, const std::string& where, const Key& key, std::set<Key>& seen) {
  if (!is_key(key.str())) {
    findings.add(where + "/key", key.str(), "not a key: small letters, digits and single '-' between, at most 48",
                 "write '" + key_from_name(key.str(), "name") + "'");
  }
  if (!seen.insert(key).second) findings.add(where + "/key", key.str(), "this key is there twice", "give each one its own");
}

void check_range(Findings& findings, const std::string& where, std::int64_t value, std::int64_t least, std::int64_t most) {
  if (value >= least && value <= most) return;
  findings.add(where, std::to_string(value), "out of range",
               "write a number from " + std::to_string(least) + " to " + std::to_string(most));
}

void check_range(Findings& findings, const std::string& where, const std::optional<std::int64_t>& value, std::int64_t least,
                 std::int64_t most) {
  if (value) check_range(findings, where, *value, least, most);
}

bool is_uuid_text(const std::string& text) {
  if (text.size() != 36) return false;
  for (std::size_t index = 0; index < text.size(); ++index) {
    const char c = text[index];
    const bool dash = index == 8 || index == 13 || index == 18 || index == 23;
    const bool hex = (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f');
    if (dash ? c != '-' : !hex) return false;
  }
  return true;
}

void check_name(Findings& findings, const std::string& where, const std::string& name) {
  if (name.empty()) findings.add(where + "/name", "", "the name is empty", "write what people call it");
}

void check_kind_of_food(Findings& findings, const std::string& where, const Food& food) {
  const bool pet_food = food.kind == FoodKind::kPetFood;
  if (pet_food != !food.species.empty()) {
    findings.add(where + "/species", food.species, pet_food ? "pet food needs its species" : "only pet food has a species",
                 pet_food ? "write whose food it is, for example \"cat\"" : "leave it out");
  }
  const bool single = food.kind == FoodKind::kWater || food.kind == FoodKind::kThing;
  if (single && food.servings != 1) {
    findings.add(where + "/servings", std::to_string(food.servings), "water and things have one serving a unit", "write 1");
  }
  if (food.kind == FoodKind::kWater && !food.volume_ml) {
    findings.add(where + "/volume_ml", "", "water needs its content in ml", "write how much one unit holds");
  }
  for (const auto& [is_so, name] : {std::pair{food.is_opener, "/is_opener"}, {food.is_cutlery, "/is_cutlery"}}) {
    if (is_so && food.kind != FoodKind::kThing)
      findings.add(where + name, "true", "only a thing can be that", "leave it out, or make it a thing");
  }
  for (const Role role : food.roles) {
    const bool fits = (role == Role::kPetMeal) == pet_food && (role == Role::kWater) == (food.kind == FoodKind::kWater) &&
                      (role == Role::kThing) == (food.kind == FoodKind::kThing);
    if (!fits) {
      findings.add(where + "/roles", std::string(role_name(role)),
                   "a " + std::string(food_kind_name(food.kind)) + " cannot have this role", "leave it out, or change the kind");
    }
  }
}

}  // namespace

void validate_settings(Findings& findings) {
  const Settings& settings = findings.household.settings;
  if (!is_uuid_text(findings.household.book_id)) {
    findings.add("/book_id", findings.household.book_id, "not a UUID in small letters",
                 "leave the one that larderloop new made, or make one with uuidgen");
  }
  check_range(findings, "/settings/margin_days", settings.margin_days, 0, 365);
  check_range(findings, "/settings/slack_days", settings.slack_days, 0, 365);
  check_range(findings, "/settings/donate_days", settings.donate_days, 0, 365);
  check_range(findings, "/settings/late_days", settings.late_days, 0, 60);
  check_range(findings, "/settings/variety_cap", settings.variety_cap, 1, 100);
  check_range(findings, "/settings/tolerance", settings.tolerance.halves(), 0, 400);
  check_range(findings, "/settings/monotony", settings.monotony.halves(), 1, 400);
  const bool currency = settings.currency.size() == 3 && std::all_of(settings.currency.begin(), settings.currency.end(),
                                                                    [](char c) { return c >= 'A' && c <= 'Z'; });
  if (!currency) {
    findings.add("/settings/currency", settings.currency, "not a currency code (ISO 4217)", "write three capitals, for example EUR");
  }
  std::set<std::string> seen;
  for (std::size_t index = 0; index < findings.household.own_allergens.size(); ++index) {
    const std::string& key = findings.household.own_allergens[index].key;
    const std::string where = at("own_allergens", index) + "/key";
    const bool word = !key.empty() && key.find_first_not_of("abcdefghijklmnopqrstuvwxyz_:") == std::string::npos;
    if (!word) findings.add(where, key, "not an allergen key", "write small letters, for example 'kiwi'");
    if (is_known_allergen(key)) findings.add(where, key, "a published list has this key already", "leave it out");
    if (!seen.insert(key).second) findings.add(where, key, "this key is there twice", "leave one out");
  }
}

void validate_people(Findings& findings) {
  std::set<PersonKey> seen;
  for (std::size_t index = 0; index < findings.household.people.size(); ++index) {
    const Person& person = findings.household.people[index];
    const std::string where = at("people", index);
    check_key(findings, where, person.key, seen);
    check_name(findings, where, person.name);
    if (person.key.str() == "everyone") findings.add(where + "/key", "everyone", "this word means all people", "choose another key");
    if (person.species.empty()) findings.add(where + "/species", "", "the species is empty", "leave it out for people");
    check_range(findings, where + "/appetite", person.appetite.halves(), 0, 20);
    if (person.tolerance) check_range(findings, where + "/tolerance", person.tolerance->halves(), 0, 400);
    check_range(findings, where + "/energy_kcal", person.energy_kcal, 0, kMostKcal);
    check_range(findings, where + "/height_cm", person.height_cm, 20, 250);
    check_range(findings, where + "/mass_g", person.mass_g, 1, 400'000);
    std::set<std::string> avoided;
    for (std::size_t each = 0; each < person.avoid.size(); ++each) {
      const std::string place = where + "/avoid/" + std::to_string(each) + "/key";
      findings.check_allergen(place, person.avoid[each].key);
      if (!avoided.insert(person.avoid[each].key).second) findings.add(place, person.avoid[each].key, "avoided twice", "leave one out");
    }
    for (const auto& [food, rating] : person.ratings) {
      const std::string place = where + "/ratings/" + food.str();
      findings.check_food(place, food);
      check_range(findings, place, rating, -2, 2);
    }
  }
}

void validate_foods(Findings& findings) {
  std::set<FoodKey> seen;
  for (std::size_t index = 0; index < findings.household.foods.size(); ++index) {
    const Food& food = findings.household.foods[index];
    const std::string where = at("foods", index);
    check_key(findings, where, food.key, seen);
    check_name(findings, where, food.name);
    if (!food.gtin.empty() && (food.gtin.size() != 14 || normal_gtin(food.gtin) != food.gtin)) {
      const std::string whole = normal_gtin(food.gtin);
      const bool digits = food.gtin.size() > 1 && food.gtin.find_first_not_of("0123456789") == std::string::npos;
      findings.add(where + "/gtin", food.gtin, "not a GTIN of 14 digits with a right check digit",
                   !whole.empty()               ? "write '" + whole + "'"
                   : digits && food.gtin.size() < 15 ? std::string("read it off the package again; the last digit would be '") +
                                                      gtin_check_digit(food.gtin.substr(0, food.gtin.size() - 1)) + "'"
                                                : "read the digits under the barcode again, or leave it out");
    }
    check_kind_of_food(findings, where, food);
    if (food.unit.empty()) findings.add(where + "/unit", "", "the unit is empty", "write what one is called: pouch, can, jar");
    check_range(findings, where + "/servings", food.servings, 1, kMaxServingsPerUnit);
    check_range(findings, where + "/mass_g", food.mass_g, 0, kMostGrams);
    check_range(findings, where + "/volume_ml", food.volume_ml, 0, kMostGrams);
    check_range(findings, where + "/energy_kcal", food.energy_kcal, 0, kMostKcal);
    check_range(findings, where + "/sodium_mg", food.sodium_mg, 0, kMostGrams);
    check_range(findings, where + "/needs_water_ml", food.needs_water_ml, 0, kMostGrams);
    check_range(findings, where + "/par_level", food.par_level, 0, kMaxUnits);
    if (food.label) findings.check_statement(where + "/label", *food.label);
    for (std::size_t each = 0; each < food.packs.size(); ++each) {
      const std::string place = where + "/packs/" + std::to_string(each);
      check_range(findings, place + "/units", food.packs[each].units, 1, kMaxUnits);
      check_range(findings, place + "/price_cents", food.packs[each].price_cents, 0, kMostCents);
    }
    const Storage& storage = food.storage;
    if (storage.months_short) check_range(findings, where + "/storage/months_short", *storage.months_short, 0, 600);
    if (storage.months_long) check_range(findings, where + "/storage/months_long", *storage.months_long, storage.months_short.value_or(0), 600);
    check_range(findings, where + "/storage/opened_days", storage.opened_days, 0, 3650);
  }
}

void validate_places(Findings& findings) {
  std::set<PlaceKey> seen;
  for (std::size_t index = 0; index < findings.household.places.size(); ++index) {
    const Place& place = findings.household.places[index];
    const std::string where = at("places", index);
    check_key(findings, where, place.key, seen);
    check_name(findings, where, place.name);
    check_range(findings, where + "/mass_limit_g", place.mass_limit_g, 0, 1'000'000);
    check_range(findings, where + "/volume_limit_ml", place.volume_limit_ml, 0, 1'000'000);
    const bool top = place.kind == PlaceKind::kKit || place.kind == PlaceKind::kPantry;
    if (top != place.parent.empty()) {
      findings.add(where + "/parent", place.parent.str(),
                   top ? "a " + std::string(place_kind_name(place.kind)) + " stands by itself" : "it has to be in something",
                   top ? "leave the parent out" : "name the kit, box or pantry it is in");
      continue;
    }
    if (top) continue;
    const Place* parent = findings.place(place.parent);
    if (parent == nullptr) {
      findings.check_place(where + "/parent", place.parent);
      continue;
    }
    const bool fits = place.kind == PlaceKind::kBox     ? parent->kind == PlaceKind::kKit
                      : place.kind == PlaceKind::kBag   ? parent->kind == PlaceKind::kBox || parent->kind == PlaceKind::kKit
                                                        : parent->kind == PlaceKind::kPantry;
    if (!fits) {
      findings.add(where + "/parent", place.parent.str(),
                   "a " + std::string(place_kind_name(place.kind)) + " cannot be in a " + std::string(place_kind_name(parent->kind)),
                   "places nest as kit > box > bag and pantry > shelf");
    }
  }
}

}  // namespace larderloop
