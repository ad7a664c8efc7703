// plan_wishes.h - what the family asks of the meals, between the book and the eat-down problem.
// Rule: a wish is never stronger than the predicate, a date or a limit. A want that cannot be is
// told with its reason; one that can be goes into the problem as a wished serving.
#pragma once

#include "app/plan_build.h"

#include <set>
#include <string>
#include <vector>

namespace larderloop {

// The wish for a person (null: for everyone) that nothing of the kit is planned at a meal; null
// when there is none. A wish for everyone concerns every person too.
[[nodiscard]] const Wish* wants_nothing(const Household& household, Day day, Meal meal,
                                        const PersonKey* person);
// The wish that keeps a food from a person at a meal, with or without a food of its own; null when
// there is none.
[[nodiscard]] const Wish* not_wanted(const Household& household, const FoodKey& food, Day day,
                                     Meal meal, const PersonKey& person);
// Is this wanted at the meal, for the person or everyone?
[[nodiscard]] bool is_wanted(const Household& household, const FoodKey& food, Day day, Meal meal,
                             const PersonKey& person);

// Products that are not wanted at a meal by everyone (person null), or by this person at this very
// meal although not always.
[[nodiscard]] std::set<std::string> without_at(const Household& household, const Products& products,
                                               Day day, Meal meal, const PersonKey* person,
                                               Day today, Day until);
// Foods that a person wants at no meal from today to before `until`.
[[nodiscard]] std::set<FoodKey> never_wanted(const Household& household, const PersonKey& person,
                                             Day today, Day until);
// "not-wished:mira": carried by what Mira never wants, avoided by Mira.
[[nodiscard]] std::string not_wished_tag(const PersonKey& person);

// Puts the wants into the problem as wished servings, or tells why one cannot be. What keeps beyond
// the horizon gives units to a lot of its own for them. Pre: lots, meals, eaters and products are
// there.
void ask_wishes(const BookView& view, Day today, EatBuild& build);
// What became of the wants in the plan as told.
void tell_wishes(const EatBuild& build, EatDown& eat);

}  // namespace larderloop
