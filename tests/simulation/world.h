// world.h - an invented household for years of simulated life, and the chances that befall it.
// Everything here is invented: people, foods, prices, habits and every chance. The same seed gives
// the same world, and the same chances to whoever lives in it, whatever plan they follow.
#pragma once

#include "larderloop/plan/problem.h"

#include <cstddef>
#include <cstdint>
#include <set>
#include <string>
#include <vector>

namespace larderloop::simulation {

struct SimFood {
  std::string id;
  std::string role;  // "main" or "snack" in a kit
  std::set<std::string> contains;
  std::set<plan::Kind> kinds;
  std::int64_t servings = 1;
  std::int64_t open_days = 0;
  std::int64_t life_days = 365;  // good through so many days after buying
  std::int64_t pack_units = 1;
  std::int64_t price = 100;
  std::int64_t kcal = 0;
};

struct SimPerson {
  std::string id;
  std::set<std::string> avoid;
  std::vector<int> ratings;  // by food
  std::int64_t appetite = 1;
};

// A kit with a bag for each person: so many units of a role.
struct SimLine {
  std::string id;
  std::size_t person = 0;
  std::string role;
  std::int64_t units = 1;
};

struct SimMeal {
  std::string id;
  std::int64_t day = 0;
  plan::Kind kind = plan::Kind::kDinner;
};

inline constexpr std::int64_t kStep = 28;          // days from one plan to the next
inline constexpr std::int64_t kStepsToReview = 6;  // every 24 weeks
inline constexpr std::int64_t kSlack = 14;         // days a review may be late
inline constexpr std::int64_t kHorizon = 182;      // of a plan
inline constexpr std::int64_t kDonateDays = 30;
inline constexpr std::int64_t kTolerance = 4;  // servings a person and week
inline constexpr std::int64_t kMonotony = 2;   // of one food

class World {
 public:
  explicit World(std::uint64_t seed);

  [[nodiscard]] bool may_eat(std::size_t person, std::size_t food) const;
  // The number in the id of a food, person or line: its place in the list.
  [[nodiscard]] static std::size_t index_of(const std::string& id);
  // The meals at which kit food is eaten, from the first day through the day before the last one:
  // two dinners and a lunch a week.
  [[nodiscard]] static std::vector<SimMeal> meals(std::int64_t from, std::int64_t to);

  // The chances.
  [[nodiscard]] bool meal_held(std::int64_t day) const;  // else something else was eaten
  [[nodiscard]] bool at_table(std::size_t person, std::int64_t day) const;
  [[nodiscard]] bool gives_away(std::int64_t day) const;  // else it is forgotten this time
  [[nodiscard]] bool buys_too_much(std::int64_t day,
                                   std::size_t& food) const;  // a pack nobody planned
  [[nodiscard]] bool snacks(std::int64_t day, std::size_t& person, std::uint64_t& pick) const;

  std::vector<SimFood> foods;
  std::vector<SimPerson> people;
  std::vector<SimLine> menu;

 private:
  std::uint64_t seed_;
};

}  // namespace larderloop::simulation
