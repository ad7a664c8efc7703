#include "larderloop/app/kit_check.h"

#include "app/kit_check_work.h"
#include "larderloop/core/words.h"

#include <algorithm>
#include <tuple>

namespace larderloop {
namespace {

std::string joined(std::string_view name) {
  std::string words(name);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

}  // namespace

std::string_view gravity_name(Gravity gravity) {
  switch (gravity) {
    case Gravity::kMust:
      return "must";
    case Gravity::kShould:
      return "should";
    case Gravity::kNote:
      return "note";
  }
  return "";
}

std::string_view topic_name(Topic topic) {
  switch (topic) {
    case Topic::kMenu:
      return "menu";
    case Topic::kAllergen:
      return "allergen";
    case Topic::kLabel:
      return "label";
    case Topic::kNear:
      return "near";
    case Topic::kChild:
      return "child";
    case Topic::kUse:
      return "use";
    case Topic::kOpened:
      return "opened";
    case Topic::kState:
      return "state";
    case Topic::kDate:
      return "date";
    case Topic::kHeat:
      return "heat";
    case Topic::kWater:
      return "water";
    case Topic::kEnergy:
      return "energy";
    case Topic::kSodium:
      return "sodium";
    case Topic::kVariety:
      return "variety";
    case Topic::kMass:
      return "mass";
    case Topic::kVolume:
      return "volume";
  }
  return "";
}

std::string_view stand_name(Stand stand) {
  switch (stand) {
    case Stand::kGood:
      return "good";
    case Stand::kPast:
      return "past";
    case Stand::kUnsafe:
      return "unsafe";
    case Stand::kUnknown:
      return "unknown";
    case Stand::kRecalled:
      return "recalled";
    case Stand::kDoubtful:
      return "doubtful";
  }
  return "";
}

std::size_t KitCheck::count(Gravity gravity) const {
  return static_cast<std::size_t>(
      std::count_if(findings.begin(), findings.end(),
                    [&](const KitFinding& each) { return each.gravity == gravity; }));
}

std::string lot_words(const Position& position) {
  return "lot " + std::to_string(position.at.lot.value()) + ", " + position.food->name;
}

bool is_eaten(const Food& food) {
  return food.kind != FoodKind::kWater && food.kind != FoodKind::kThing;
}

bool usable_in_kit(const Food& food) {
  if (food.kind == FoodKind::kThing) return true;
  return food.no_cook && !food.needs_hot_water && !food.refrigerate;
}

std::string line_words(const KitCheckWork& work, const MenuLine& line) {
  std::string words =
      line.role ? joined(role_name(*line.role)) : find_food(work.household, line.food)->name;
  if (line.units != 1) words = std::to_string(line.units) + " of " + words;
  if (line.everyone) {
    words += " for everyone";
  } else if (!line.people.empty()) {
    std::vector<std::string> names;
    for (const PersonKey& person : line.people) names.push_back(work.name(person));
    words += " for " + list_words(names);
  }
  if (line.day > 0) words += ", day " + std::to_string(line.day);
  if (line.meal) words += ", " + std::string(meal_name(*line.meal));
  return words;
}

Result<KitCheck> check_kit(const Household& household, const PlaceKey& kit, Day today) {
  auto schedule = kit_schedule(household, kit, today);
  if (!schedule) return fail(schedule.error());
  auto view = view_book(household, today);
  if (!view) return fail(view.error());
  KitCheck check;
  check.schedule = *schedule;
  KitCheckWork work(*view, today, check);
  work.kit = kit;
  for (const Position& position : view->positions) {
    if (*position.kit == kit) work.inside.push_back(&position);
  }
  std::map<PlaceKey, std::set<PersonKey>> eaters;
  for (const MenuLine& line : household.menu) {
    if (view->kit_of_place.at(line.place) != kit) continue;
    work.lines.push_back(&line);
    check.days = std::max(check.days, line.day);
    for (const PersonKey& person : eaters_of(household, line)) eaters[line.place].insert(person);
  }
  for (const auto& [place, people] : eaters)
    work.eaters[place].assign(people.begin(), people.end());
  check_menu(work);
  check_foods(work);
  check_needs(work);
  check_carry(work);
  std::stable_sort(check.findings.begin(), check.findings.end(),
                   [](const KitFinding& a, const KitFinding& b) {
                     return std::tie(a.gravity, a.place, a.day, a.meal) <
                            std::tie(b.gravity, b.place, b.day, b.meal);
                   });
  return check;
}

}  // namespace larderloop
