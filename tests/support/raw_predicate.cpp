#include "raw_predicate.h"

#include <algorithm>

namespace larderloop::raw {
namespace {

bool starts_with_group(const std::string& text, const std::string& group) {
  return text.size() > group.size() && text.compare(0, group.size(), group) == 0 && text[group.size()] == ':';
}

bool gluten_grain(const std::string& key) {
  for (const char* grain : {"wheat", "rye", "barley", "oats"}) {
    if (key == grain || starts_with_group(key, grain)) return true;
  }
  return false;
}

bool speak_of_the_same(const std::string& a, const std::string& b) {
  if (a == b || starts_with_group(a, b) || starts_with_group(b, a)) return true;
  if (a == "gluten" && gluten_grain(b)) return true;
  return b == "gluten" && gluten_grain(a);
}

// vegan food suits vegetarians, vegetarian food suits those who eat fish as well.
bool claims(const Statement& label, Diet wanted) {
  if (label.suits.count(wanted) > 0) return true;
  if (wanted == Diet::kVegetarian) return label.suits.count(Diet::kVegan) > 0;
  if (wanted == Diet::kPescatarian) {
    return label.suits.count(Diet::kVegan) > 0 || label.suits.count(Diet::kVegetarian) > 0;
  }
  return false;
}

const Person& person_of(const Household& household, const PersonKey& key) {
  return *std::find_if(household.people.begin(), household.people.end(),
                       [&](const Person& person) { return person.key == key; });
}

const Food& food_of(const Household& household, const FoodKey& key) {
  return *std::find_if(household.foods.begin(), household.foods.end(),
                       [&](const Food& food) { return food.key == key; });
}

std::string forbidden(const Household& household, const Person& person, const Food& food, const Statement* label, Day today) {
  if (person.species != "human" && (food.kind != FoodKind::kPetFood || food.species != person.species)) {
    return "a pet is given what is not its food";
  }
  if (person.species == "human" && food.kind != FoodKind::kFood && food.kind != FoodKind::kDrink) {
    return "a person is given what is not people's food";
  }
  if (food.infant_formula) {
    bool named = false;
    for (const MenuLine& line : household.menu) {
      for (const PersonKey& eater : line.people) named = named || (line.food == food.key && eater == person.key);
    }
    if (!named) return "infant formula for somebody whom no line names it for";
  }
  const auto rating = person.ratings.find(food.key);
  if (rating != person.ratings.end() && rating->second <= -2) return "refused by " + person.name;
  if (person.species == "human" && person.born) {
    // The birthday at which the danger is over: CDC "Choking Hazards" (under four), CDC "Foods and Drinks to Avoid" (honey under one).
    const auto over_at = [&](int age) { return date::year_month_day{*person.born} + date::years{age}; };
    const date::year_month_day on{today};
    if (food.choking_risk && on < over_at(4)) return "can choke " + person.name;
    if (food.honey && on < over_at(1)) return "honey for " + person.name;
  }
  if (person.avoid.empty() && person.diets.empty()) return {};
  if (label == nullptr) return "the label was not read";
  for (const Avoid& avoid : person.avoid) {
    for (const OwnAllergen& own : household.own_allergens) {
      if (own.key == avoid.key && label->read_on < own.since) return "read before anybody looked for " + own.key;
    }
    for (const auto& [key, declared] : label->declared) {
      if (!speak_of_the_same(key, avoid.key)) continue;
      if (declared == Declared::kContains) return "contains " + key;
      if (!avoid.accept_may_contain) return "may contain " + key;
    }
  }
  for (const Diet diet : person.diets) {
    if (!claims(*label, diet)) return "the label does not support a diet";
  }
  return {};
}

}  // namespace

std::string forbidden_lot(const Household& household, const PersonKey& person, LotId id, Day today) {
  const Lot& lot = *std::find_if(household.lots.begin(), household.lots.end(),
                                 [&](const Lot& each) { return each.id == id; });
  const Statement* label = lot.label ? &*lot.label : nullptr;
  LotState state = lot.state;
  for (const Reading& reading : household.readings) {
    if (reading.lot != id) continue;
    if (reading.label) label = &*reading.label;
    if (reading.state) state = *reading.state;
  }
  if (state != LotState::kOk) return "the lot was set aside";
  return forbidden(household, person_of(household, person), food_of(household, lot.food), label, today);
}

std::string forbidden_pack(const Household& household, const PersonKey& person, const FoodKey& key, Day today) {
  const Food& food = food_of(household, key);
  return forbidden(household, person_of(household, person), food, food.label ? &*food.label : nullptr, today);
}

}  // namespace larderloop::raw
