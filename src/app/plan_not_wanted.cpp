// What is not wanted: by everyone, by a person at some meals, by a person always.
#include "app/plan_wishes.h"

#include <algorithm>

namespace larderloop {
namespace {

bool concerns(const Wish& wish, const PersonKey* person) {
  return !wish.person || (person != nullptr && *wish.person == *person);
}

// From today to before `until`, at every meal.
bool always(const Wish& wish, Day today, Day until) {
  return !wish.meal && (!wish.from || (*wish.from <= today && until <= *wish.through + Days(1)));
}

}  // namespace

const Wish* wants_nothing(const Household& household, Day day, Meal meal, const PersonKey* person) {
  for (const Wish& wish : household.wishes) {
    if (wish.kind == WishKind::kNot && wish.food.empty() && wish.covers(day, meal) &&
        concerns(wish, person))
      return &wish;
  }
  return nullptr;
}

const Wish* not_wanted(const Household& household, const FoodKey& food, Day day, Meal meal,
                       const PersonKey& person) {
  for (const Wish& wish : household.wishes) {
    if (wish.kind == WishKind::kNot && (wish.food.empty() || wish.food == food) &&
        wish.covers(day, meal) && concerns(wish, &person))
      return &wish;
  }
  return nullptr;
}

bool is_wanted(const Household& household, const FoodKey& food, Day day, Meal meal,
               const PersonKey& person) {
  return std::any_of(household.wishes.begin(), household.wishes.end(), [&](const Wish& wish) {
    return wish.kind == WishKind::kWant && wish.food == food && wish.covers(day, meal) &&
           concerns(wish, &person);
  });
}

std::set<std::string> without_at(const Household& household, const Products& products, Day day,
                                 Meal meal, const PersonKey* person, Day today, Day until) {
  std::set<std::string> without;
  for (const Wish& wish : household.wishes) {
    if (wish.kind != WishKind::kNot || wish.food.empty() || !wish.covers(day, meal)) continue;
    const bool own = person != nullptr && wish.person == *person && !always(wish, today, until);
    if (person == nullptr ? wish.person.has_value() : !own) continue;
    for (const auto& [id, product] : products.all()) {
      if (product.food->key == wish.food) without.insert(id);
    }
  }
  return without;
}

std::set<FoodKey> never_wanted(const Household& household, const PersonKey& person, Day today,
                               Day until) {
  std::set<FoodKey> foods;
  for (const Wish& wish : household.wishes) {
    if (wish.kind == WishKind::kNot && !wish.food.empty() && wish.person == person &&
        always(wish, today, until))
      foods.insert(wish.food);
  }
  return foods;
}

std::string not_wished_tag(const PersonKey& person) {
  return "not-wished:" + person.str();
}

}  // namespace larderloop
