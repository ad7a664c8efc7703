#include "larderloop/app/meal_items.h"

#include <algorithm>

#include "app/plain_names.h"

namespace larderloop {

std::vector<MealItem> meal_items(const PlannedMeal& meal) {
  std::vector<MealItem> items;
  for (const Helping& helping : meal.helpings) {
    auto item = std::find_if(items.begin(), items.end(), [&](const MealItem& each) { return each.at == helping.at; });
    if (item == items.end()) {
      items.push_back({helping.food, helping.at, {}, 0, {}, helping.good_through});
      item = items.end() - 1;
    }
    item->amount += helping.amount;
    item->units_opened += helping.opened_units;
    if (std::find(item->people.begin(), item->people.end(), helping.person) == item->people.end()) {
      item->people.push_back(helping.person);
    }
  }
  for (MealItem& item : items) std::sort(item.people.begin(), item.people.end());
  return items;
}

std::string item_words(const Household& household, const MealItem& item) {
  return food_words(household, item.food) + " (" + first_names(household, item.people) + ")";
}

std::string meal_line(const Household& household, const PlannedMeal& meal) {
  // Two lots of one food at one meal are one thing to whoever cooks.
  std::vector<MealItem> foods;
  for (const MealItem& item : meal_items(meal)) {
    auto same = std::find_if(foods.begin(), foods.end(), [&](const MealItem& each) { return each.food == item.food; });
    if (same == foods.end()) {
      foods.push_back(item);
      continue;
    }
    for (const PersonKey& person : item.people) {
      if (std::find(same->people.begin(), same->people.end(), person) == same->people.end()) {
        same->people.push_back(person);
      }
    }
    std::sort(same->people.begin(), same->people.end());
  }
  std::string line(meal_name(meal.meal));
  line += ": ";
  for (std::size_t index = 0; index < foods.size(); ++index) {
    line += (index == 0 ? "" : ", ") + item_words(household, foods[index]);
  }
  return line;
}

}  // namespace larderloop
