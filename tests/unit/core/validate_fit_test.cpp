// What belongs to which kind of line, entry and mark, and that one fault does not hide another.
#include "unit/core/broken_household.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

void add_shown(Household& h, std::int64_t halves) {
  h.shown_meals = {{day_at("2026-12-01"),
                    Meal::kDinner,
                    {{h.entries[0].at, PersonKey("ada"), HalfServings(halves)}}}};
}

void add_dog(Household& h) {
  Person rex;
  rex.key = PersonKey("rex");
  rex.name = "Rex";
  rex.species = "dog";
  h.people.push_back(rex);
}

void add_cat_food_for(Household& h, const char* pet) {
  add_line(h, std::nullopt, "cat-dinner", false);
  h.menu[1].people = {PersonKey(pet)};
}

void add_thing(Household& h, int day, std::optional<Meal> meal) {
  add_line(h, Role::kThing, "", false);
  h.menu[1].day = day;
  h.menu[1].meal = meal;
}

const Broken kFit[] = {
    {"food of another species",
     [](Household& h) {
       add_dog(h);
       add_cat_food_for(h, "rex");
     },
     "/menu/1/people"},
    {"a thing for a day", [](Household& h) { add_thing(h, 2, std::nullopt); }, "/menu/1/day"},
    {"a thing for a meal", [](Household& h) { add_thing(h, 0, Meal::kLunch); }, "/menu/1/meal"},
    {"who found it",
     [](Household& h) {
       add_entry(h, EntryKind::kFound, 4);
       h.entries[1].who = PersonKey("ada");
     },
     "/entries/1/who"},
    {"lost at a meal",
     [](Household& h) {
       add_entry(h, EntryKind::kLost, 4);
       h.entries[1].meal = Meal::kDinner;
     },
     "/entries/1/meal"},
    {"paid for eating",
     [](Household& h) {
       add_entry(h, EntryKind::kEaten, 4);
       h.entries[1].paid_cents = 100;
     },
     "/entries/1/paid_cents"},
    {"an absurd price", [](Household& h) { h.entries[0].paid_cents = 1'000'000'001; },
     "/entries/0/paid_cents"},
    {"less than nothing there",
     [](Household& h) {
       add_review(h, ReviewEventKind::kStarted);
       add_mark(h, MarkWhat::kThere, -1);
     },
     "/review_marks/0"},
    {"more missing than anybody keeps",
     [](Household& h) {
       add_review(h, ReviewEventKind::kStarted);
       add_mark(h, MarkWhat::kMissing, 2'000'000'001);
     },
     "/review_marks/0"},
    {"a serving of nothing", [](Household& h) { add_shown(h, 0); }, "/shown_meals/0/servings/0"},
};

TEST(ValidateFit, FindsWhatBelongsToAnotherKind) {
  each_is_found(kFit);
}

TEST(ValidateFit, AcceptsWhatFits) {
  Household home = core_household();
  add_cat_food_for(home, "minka");
  add_line(home, Role::kThing, "", false);
  home.menu[2].day = 0;
  home.menu[2].meal.reset();
  add_entry(home, EntryKind::kEaten, 4);
  home.entries[0].paid_cents = 1'000'000'000;
  home.entries[1].who = PersonKey("ada");
  home.entries[1].meal = Meal::kDinner;
  add_review(home, ReviewEventKind::kStarted);
  add_mark(home, MarkWhat::kThere, 0);
  add_shown(home, 1);
  for (const Problem& problem : validate(home)) {
    ADD_FAILURE() << problem.where << ": " << problem.what;
  }
}

TEST(ValidateFit, AFaultElsewhereDoesNotHideAnOverdrawnLot) {
  Household home = core_household();
  home.settings.currency = "euro";
  home.people[0].avoid[0].key = "peanutt";
  add_entry(home, EntryKind::kEaten, 20);
  std::vector<std::string> places;
  for (const Problem& problem : validate(home)) places.push_back(problem.where);
  EXPECT_EQ(places, (std::vector<std::string>{"/settings/currency", "/people/0/avoid/0/key",
                                              "/entries/1"}));
}

// A unit of no servings or a lot of no food cannot be replayed: found as such, and nothing breaks.
TEST(ValidateFit, WhatCannotBeReplayedIsNot) {
  Household home = core_household();
  home.foods[3].servings = 0;
  add_entry(home, EntryKind::kEaten, 20);
  auto problems = validate(home);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].where, "/foods/3/servings");
  home = core_household();
  home.lots[0].food = FoodKey("soup");
  problems = validate(home);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].where, "/lots/0/food");
}

}  // namespace
}  // namespace larderloop
