// table.h - a half-made eat-down plan: which unit is opened where and who eats from it. Private to
// this room. Every step keeps every hard rule; a unit placed can be taken back, so searches try and
// undo.
#pragma once

#include "plan/compiled.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

namespace larderloop::plan {

// By product: the eaters who will eat it, in the order in which they are served.
using Rank = std::vector<std::vector<std::size_t>>;

using Helpings = std::vector<std::pair<std::size_t, std::int64_t>>;  // seat, servings

// One unit opened at a meal, with the servings eaten from it there and, while it keeps, later.
struct OpenedUnit {
  std::size_t lot = 0;
  std::size_t meal = 0;
  Helpings helpings;
  std::int64_t eaten = 0;
  bool published = false;  // holds servings that were shown; stays
  bool live = true;
};

class Table {
 public:
  static constexpr std::size_t kMostUnits =
      200'000;  // planned at all; what is beyond stays unopened

  explicit Table(const CompiledEat& problem);

  // How much of the product the seat can still take.
  [[nodiscard]] std::int64_t room(std::size_t seat, std::size_t product) const;
  // Could anyone take any of the product in this week? False lets searches jump over it.
  [[nodiscard]] bool week_has_room(std::size_t week, std::size_t product) const;
  void eat(std::size_t seat, std::size_t product, std::int64_t servings);

  // Takes up to `wanted` servings at the meal, in the order of `rank`.
  std::int64_t serve(std::size_t meal, std::size_t product, std::int64_t wanted, const Rank& rank,
                     Helpings& helpings);
  // Fills a unit from its meal through its open life. Pre: unit.lot and unit.meal are set.
  void fill(OpenedUnit& unit, const Rank& rank);
  void take_back(OpenedUnit& unit);  // its servings; the helpings stay listed
  void put_back(OpenedUnit& unit);   // what take_back took

  // The earliest meal where a unit of the lot is eaten up; without such a meal, unless
  // `whole_only`, the one where most of it is eaten. The unit is filled, but not listed.
  std::optional<OpenedUnit> place(std::size_t lot, bool whole_only, const Rank& rank);

  [[nodiscard]] const CompiledEat& problem() const { return problem_; }
  [[nodiscard]] std::int64_t work() const { return work_; }

  std::vector<OpenedUnit> units;
  std::vector<std::int64_t> units_left;    // by lot
  std::vector<Helpings> from_open;         // by open lot
  std::vector<std::size_t> first_opening;  // by product: no unit is opened before this meal

 private:
  const CompiledEat& problem_;
  std::vector<std::size_t> seat_at_;     // meal * eaters + eater
  std::vector<std::int64_t> seat_left_;  // likewise; 0 also for who is not there
  std::vector<std::int64_t> week_left_, product_left_;
  mutable std::int64_t work_ = 0;
};

}  // namespace larderloop::plan
