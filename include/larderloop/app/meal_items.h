// meal_items.h - a planned meal as people say it: one line a food, who eats it, where it lies.
#pragma once

#include <string>
#include <vector>

#include "larderloop/app/plan.h"

namespace larderloop {

// Helpings of one food from one stock position at one meal. `units_opened`: sealed units taken and opened for it.
struct MealItem {
  FoodKey food;
  StockKey at;
  HalfServings amount;
  std::int64_t units_opened = 0;
  std::vector<PersonKey> people;  // key order
  std::optional<Day> good_through;
};
[[nodiscard]] std::vector<MealItem> meal_items(const PlannedMeal& meal);

// "Lentil stew pouch (Mira and Jon)": food and first names.
[[nodiscard]] std::string item_words(const Household& household, const MealItem& item);
// "dinner: Lentil stew pouch (Mira and Jon), Rice cakes (Ada)"
[[nodiscard]] std::string meal_line(const Household& household, const PlannedMeal& meal);

}  // namespace larderloop
