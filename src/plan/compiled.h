// compiled.h - an eat-down problem with numbers for ids: what the planners search in. Private to
// this room. Leaves out what can play no part: lots beyond the horizon, meals before today, eaters
// and products nobody knows. Quantities are cut at kMost and days at kFar, so that no sum of the
// search can leave 64 bits.
#pragma once

#include "larderloop/plan/problem.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace larderloop::plan {

struct CompiledEat {
  static constexpr std::int64_t kMost = 1'000'000'000;
  static constexpr std::int64_t kFar = std::int64_t{1} << 55;

  struct Product {
    const EatProduct* source;
    std::int64_t servings;
    std::int64_t open_days;  // 0 also where a unit is one serving
    unsigned kinds;          // a bit a kind of meal
  };
  struct Meal {
    const EatMeal* source;
    std::int64_t day;
    unsigned kind;     // its bit
    std::size_t week;  // counts weeks with meals only
    std::size_t seats_begin, seats_end;
    std::vector<std::size_t> without;  // products not wanted at this meal, sorted
  };
  struct Seat {
    std::size_t meal;
    std::size_t eater;
    std::int64_t appetite;
  };
  struct Lot {
    const EatLot* source;
    std::size_t product;
    std::int64_t units;       // sealed; of an open lot the servings left
    std::int64_t from, last;  // days
    bool donatable;
  };

  explicit CompiledEat(const EatDownProblem& problem);

  [[nodiscard]] bool will_eat(std::size_t product, std::size_t eater) const {
    return will_[product * eaters.size() + eater] != 0;
  }
  [[nodiscard]] int rating(std::size_t product, std::size_t eater) const {
    return ratings_[product * eaters.size() + eater];
  }
  [[nodiscard]] bool suits(std::size_t product, std::size_t meal) const {
    const Meal& at = meals[meal];
    return (products[product].kinds & at.kind) != 0 &&
           (at.without.empty() ||
            !std::binary_search(at.without.begin(), at.without.end(), product));
  }
  // The first meal on or after the day; meals.size() when there is none.
  [[nodiscard]] std::size_t first_meal(std::int64_t day) const;
  [[nodiscard]] std::size_t week_end(std::size_t week) const { return week_ends_[week]; }
  [[nodiscard]] std::size_t weeks() const { return week_ends_.size(); }
  // Indexes by id; size of the list when unknown.
  [[nodiscard]] std::size_t product_of(const std::string& id) const;
  [[nodiscard]] std::size_t meal_of(const std::string& id) const;
  [[nodiscard]] std::size_t eater_of(const std::string& id) const;
  [[nodiscard]] std::size_t seat_of(std::size_t meal,
                                    std::size_t eater) const;  // seats.size() when not there

  std::int64_t today = 0;
  std::int64_t end = 0;
  std::vector<const Eater*> eaters;  // by id
  std::vector<Product> products;     // by id
  std::vector<Meal> meals;           // in calendar order
  std::vector<Seat> seats;           // by meal, then eater
  std::vector<Lot> lots;             // sealed, soonest date first, then by id
  std::vector<Lot> open_lots;        // opened before today, likewise
  // What an eater may still have: in a week at all, and of one product in a week.
  std::vector<std::int64_t> week_limit;     // week * eaters + eater
  std::vector<std::int64_t> product_limit;  // (week * products + product) * eaters + eater

 private:
  void compile_meals(const EatDownProblem& problem);
  void compile_lots(const EatDownProblem& problem);
  void compile_limits(const EatDownProblem& problem);

  std::vector<char> will_;
  std::vector<int> ratings_;
  std::vector<std::size_t> week_ends_;
  std::vector<std::int64_t> week_numbers_;
  std::vector<std::pair<std::string, std::size_t>> meal_index_;  // sorted by id
};

}  // namespace larderloop::plan
