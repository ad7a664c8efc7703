// problem_maker.h - seeded random planning problems: the same seed gives the same problem on every
// machine.
#pragma once

#include "larderloop/plan/problem.h"

#include <cstdint>

namespace larderloop::test {

// A sequence of its own (xorshift64*), since the standard library's distributions differ between
// implementations.
class Dice {
 public:
  explicit Dice(std::uint64_t seed);
  [[nodiscard]] std::int64_t between(std::int64_t low, std::int64_t high);  // both included
  [[nodiscard]] bool one_in(std::int64_t n) { return between(1, n) == 1; }

 private:
  std::uint64_t state_;
};

struct EatSize {
  std::int64_t eaters, products, lots, weeks, meals_a_week, most_units, most_servings;
  bool open_lots;  // some lots were opened before today
  bool published;  // something was shown before
};
// Small enough for exhaustive search.
inline constexpr EatSize kTinyEat{2, 2, 2, 2, 1, 2, 3, false, false};
// A household of four to six with a pantry, half a year ahead.
inline constexpr EatSize kFamilyEat{6, 60, 250, 26, 10, 8, 12, true, true};
[[nodiscard]] plan::EatDownProblem make_eat_problem(std::uint64_t seed, const EatSize& size);

struct RefillSize {
  std::int64_t eaters, products, containers, lines, lots, offers, most_units;
  bool limits;  // mass, volume, budget, packs to be had
};
inline constexpr RefillSize kTinyRefill{2, 3, 2, 3, 2, 2, 2, false};
inline constexpr RefillSize kFamilyRefill{5, 40, 7, 70, 150, 30, 4, true};
[[nodiscard]] plan::RefillProblem make_refill_problem(std::uint64_t seed, const RefillSize& size);

// How many times as many random problems as usual: LARDERLOOP_TEST_SCALE, 1 without it.
[[nodiscard]] std::uint64_t test_scale();

}  // namespace larderloop::test
