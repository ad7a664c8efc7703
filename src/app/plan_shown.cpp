#include "app/plan_shown.h"

#include <algorithm>
#include <map>
#include <set>

#include "app/plan_build.h"
#include "app/plan_wishes.h"
#include "larderloop/core/words.h"

namespace larderloop {
namespace {

using MealKey = std::pair<Day, Meal>;

std::map<MealKey, std::vector<ShownServing>> by_meal(const std::vector<ShownMeal>& meals, Day today) {
  std::map<MealKey, std::vector<ShownServing>> map;
  for (const ShownMeal& meal : meals) {
    if (meal.day >= today) map[{meal.day, meal.meal}] = meal.servings;
  }
  return map;
}

std::string food_name(const BookView& view, LotId lot) {
  const auto facts = view.facts.find(lot);
  const Food* food = facts == view.facts.end() ? nullptr : find_food(*view.household, facts->second.food);
  return food == nullptr ? "lot " + std::to_string(lot.value()) : food->name;
}

std::string foods_of(const BookView& view, const std::vector<ShownServing>& servings) {
  std::vector<std::string> names;
  for (const ShownServing& serving : servings) {
    std::string name = food_name(view, serving.at.lot);
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
  }
  return list_words(names);
}

// Why a serving that was shown cannot be any more; empty when it still could.
std::string why_gone(const BookView& view, const MealKey& meal, const ShownServing& serving) {
  const Household& household = *view.household;
  const auto position = std::find_if(view.positions.begin(), view.positions.end(),
                                     [&](const Position& each) { return each.at == serving.at; });
  const std::string food = food_name(view, serving.at.lot);
  if (position == view.positions.end()) return food + " is no longer there";
  if (position->facts->state != LotState::kOk) return food + " was set aside";
  if (!position->good_through || *position->good_through < meal.first) return food + " will not last until then";
  const std::vector<PersonKey> table = at_table(household, meal.first, meal.second);
  const Person* person = find_person(household, serving.person);
  if (person == nullptr) return serving.person.str() + " is no longer in the household";
  if (person->is_human() && std::find(table.begin(), table.end(), serving.person) == table.end()) {
    return person->name + " is not at the table";
  }
  if (not_wanted(household, position->food->key, meal.first, meal.second, serving.person)) {
    return person->name + " asked for no " + (wants_nothing(household, meal.first, meal.second, &serving.person) ? "kit food" : food) + " then";
  }
  const auto refusal = why_not(household, *person, *position->food, effective_label(*position->facts), view.today);
  if (refusal) return food + " is not for " + person->name + ": " + refusal_words(*refusal);
  return {};
}

void add_wanted(const BookView& view, const MealKey& meal, const std::vector<ShownServing>& servings,
                std::set<std::string>& reasons) {
  for (const ShownServing& serving : servings) {
    const auto facts = view.facts.find(serving.at.lot);
    if (facts != view.facts.end() &&
        is_wanted(*view.household, facts->second.food, meal.first, meal.second, serving.person)) {
      reasons.insert(food_name(view, serving.at.lot) + " was asked for");
    }
  }
}

}  // namespace

std::vector<ShownMeal> to_show(const Household& household, const EatDown& eat, Day today) {
  const Day end = start_of_week(today, household.settings.week_starts) + Days(14);
  std::vector<ShownMeal> shown;
  for (const ShownMeal& meal : household.shown_meals) {
    if (meal.day < today && meal.day >= today - Days(kShownDays)) shown.push_back(meal);
  }
  for (const PlannedMeal& meal : eat.meals) {
    if (meal.day >= end) continue;
    ShownMeal each;
    each.day = meal.day;
    each.meal = meal.meal;
    for (const Helping& helping : meal.helpings) each.servings.push_back({helping.at, helping.person, helping.amount});
    std::sort(each.servings.begin(), each.servings.end());
    shown.push_back(std::move(each));
  }
  std::sort(shown.begin(), shown.end(), [](const ShownMeal& a, const ShownMeal& b) {
    return a.day != b.day ? a.day < b.day : a.meal < b.meal;
  });
  return shown;
}

std::vector<std::string> differences(const BookView& view, const std::vector<ShownMeal>& shown, Day today) {
  const auto before = by_meal(view.household->shown_meals, today);
  const auto after = by_meal(shown, today);
  if (before.empty()) return {};
  std::set<std::pair<Day, Meal>> eaten;
  for (const Entry& entry : view.household->entries) {
    if (entry.kind == EntryKind::kEaten && entry.on >= today && entry.meal) eaten.insert({entry.on, *entry.meal});
  }
  Day last = today;
  for (const auto& [meal, servings] : before) last = std::max(last, meal.first);
  std::set<MealKey> meals;
  for (const auto& each : before) meals.insert(each.first);
  for (const auto& each : after) meals.insert(each.first);

  std::vector<std::string> lines;
  for (const MealKey& meal : meals) {
    if (meal.first > last || eaten.count(meal) > 0) continue;  // newly in sight, or done
    const auto old_one = before.find(meal);
    const auto new_one = after.find(meal);
    if (old_one != before.end() && new_one != after.end() && old_one->second == new_one->second) continue;
    std::string line = short_day(meal.first) + ", " + std::string(meal_name(meal.second)) + ": ";
    if (old_one == before.end()) {
      line += "now " + foods_of(view, new_one->second);
    } else {
      line += new_one == after.end() ? "no longer " + foods_of(view, old_one->second)
                                     : foods_of(view, new_one->second) + ", was " + foods_of(view, old_one->second);
      std::set<std::string> reasons;
      for (const ShownServing& serving : old_one->second) {
        std::string reason = why_gone(view, meal, serving);
        if (!reason.empty()) reasons.insert(std::move(reason));
      }
      if (new_one != after.end()) add_wanted(view, meal, new_one->second, reasons);
      line += reasons.empty() ? " (to waste less elsewhere)"
                              : " (" + list_words({reasons.begin(), reasons.end()}) + ")";
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace larderloop
