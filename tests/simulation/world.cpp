#include "simulation/world.h"

#include "support/problem_maker.h"

#include <algorithm>
#include <string>

namespace larderloop::simulation {
namespace {

using test::Dice;

// Dice of their own for each question and day, so that no answer hangs on what was asked before.
Dice dice_for(std::uint64_t seed, std::uint64_t question, std::int64_t day,
              std::uint64_t whom = 0) {
  std::uint64_t mixed = seed;
  for (const std::uint64_t part : {question, static_cast<std::uint64_t>(day), whom}) {
    mixed = (mixed ^ (part + 0x9E3779B97F4A7C15U + (mixed << 6U) + (mixed >> 2U))) *
            0xBF58476D1CE4E5B9U;
  }
  return Dice(mixed);
}

std::string numbered(const char* what, std::size_t number) {
  return std::string(what) + (number < 10 ? "0" : "") + std::to_string(number);
}

SimFood make_food(Dice& dice, std::size_t number) {
  SimFood food;
  food.id = numbered("f", number);
  food.role = number % 2 == 0 ? "main" : "snack";
  food.kinds = {number % 2 == 0 ? plan::Kind::kDinner : plan::Kind::kLunch};
  if (dice.one_in(2)) food.kinds = {plan::Kind::kLunch, plan::Kind::kDinner};
  if (dice.one_in(3))
    food.contains.insert(numbered("t", static_cast<std::size_t>(dice.between(0, 3))));
  food.servings = dice.one_in(2) ? 1 : dice.between(2, 5);
  food.open_days = food.servings > 1 ? 5 * dice.between(0, 4) : 0;
  food.life_days = 30 * dice.between(5, 24);
  food.pack_units = dice.between(1, 6);
  food.price = food.pack_units * dice.between(80, 350);
  food.kcal = food.servings * dice.between(100, 400);
  return food;
}

}  // namespace

World::World(std::uint64_t seed) : seed_(seed) {
  Dice dice(seed);
  for (std::size_t food = 0; food < 20; ++food) foods.push_back(make_food(dice, food));
  const auto count = static_cast<std::size_t>(dice.between(2, 5));
  for (std::size_t number = 0; number < count; ++number) {
    SimPerson person;
    person.id = numbered("p", number);
    if (dice.one_in(2))
      person.avoid.insert(numbered("t", static_cast<std::size_t>(dice.between(0, 3))));
    for (std::size_t food = 0; food < foods.size(); ++food)
      person.ratings.push_back(dice.one_in(3) ? static_cast<int>(dice.between(-2, 2)) : 0);
    person.appetite = dice.between(1, 2);
    people.push_back(std::move(person));
    menu.push_back({numbered("m", 2 * number), number, "main", dice.between(3, 6)});
    menu.push_back({numbered("m", 2 * number + 1), number, "snack", dice.between(2, 5)});
  }
}

bool World::may_eat(std::size_t person, std::size_t food) const {
  const SimPerson& who = people[person];
  const SimFood& what = foods[food];
  const bool forbidden =
      std::any_of(what.contains.begin(), what.contains.end(),
                  [&](const std::string& tag) { return who.avoid.count(tag) > 0; });
  return !forbidden && who.ratings[food] > -2;
}

std::size_t World::index_of(const std::string& id) {
  return static_cast<std::size_t>(std::stoul(id.substr(1)));
}

std::vector<SimMeal> World::meals(std::int64_t from, std::int64_t to) {
  std::vector<SimMeal> all;
  for (std::int64_t day = from; day < to; ++day) {
    const std::int64_t weekday = day % 7;
    if (weekday != 1 && weekday != 4 && weekday != 6) continue;
    const std::string number = std::to_string(day);
    all.push_back({"day " + std::string(6 - number.size(), '0') + number, day,
                   weekday == 6 ? plan::Kind::kLunch : plan::Kind::kDinner});
  }
  return all;
}

bool World::meal_held(std::int64_t day) const {
  return !dice_for(seed_, 1, day).one_in(6);
}
bool World::at_table(std::size_t person, std::int64_t day) const {
  return !dice_for(seed_, 2, day, person).one_in(10);
}
bool World::gives_away(std::int64_t day) const {
  return !dice_for(seed_, 3, day).one_in(4);
}
bool World::buys_too_much(std::int64_t day, std::size_t& food) const {
  Dice dice = dice_for(seed_, 4, day);
  food = static_cast<std::size_t>(dice.between(0, static_cast<std::int64_t>(foods.size()) - 1));
  return day % 7 == 0 && dice.one_in(3);
}
bool World::snacks(std::int64_t day, std::size_t& person, std::uint64_t& pick) const {
  Dice dice = dice_for(seed_, 5, day);
  person = static_cast<std::size_t>(dice.between(0, static_cast<std::int64_t>(people.size()) - 1));
  pick = static_cast<std::uint64_t>(dice.between(0, 1'000'000));
  return day % 7 == 3 && dice.one_in(2);
}

}  // namespace larderloop::simulation
