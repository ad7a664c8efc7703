// Local improvement of an eat-down plan. Published servings and what was open before stay where
// they are.
#include "plan/fefo.h"

#include <algorithm>
#include <optional>
#include <tuple>
#include <utility>

namespace larderloop::plan {
namespace {

constexpr int kTriesForALot = 60;

class Improver {
 public:
  Improver(Table& table, const Rank& rank, std::int64_t work_limit)
      : table_(table), c_(table.problem()), rank_(rank), stop_(table.work() + work_limit) {}

  void make_room() {
    for (const bool donatable : {false, true}) {
      for (std::size_t lot = 0; lot < c_.lots.size(); ++lot) {
        if (c_.lots[lot].donatable != donatable) continue;
        while (table_.units_left[lot] > 0 && table_.work() < stop_ && place_by_moving(lot)) {
        }
      }
    }
  }

  void settle() {
    for (std::size_t index = 0; index < table_.units.size() && table_.work() < stop_; ++index) {
      OpenedUnit& unit = table_.units[index];
      if (unit.live && !unit.published) better_place(unit);
    }
  }

 private:
  // (servings wasted, servings donated) that a unit adds compared with leaving it closed.
  std::pair<std::int64_t, std::int64_t> value(const OpenedUnit& unit) const {
    const CompiledEat::Lot& lot = c_.lots[unit.lot];
    const std::int64_t servings = c_.products[lot.product].servings;
    if (!lot.donatable) return {-unit.eaten, 0};
    return {servings - unit.eaten, -servings};
  }

  bool in_the_way(const OpenedUnit& unit, std::size_t lot) const {
    const CompiledEat::Lot& of = c_.lots[lot];
    const std::int64_t through = of.last + c_.products[of.product].open_days;
    return std::any_of(unit.helpings.begin(), unit.helpings.end(), [&](const auto& helping) {
      const CompiledEat::Seat& seat = c_.seats[helping.first];
      const std::int64_t day = c_.meals[seat.meal].day;
      return c_.will_eat(of.product, seat.eater) && day >= of.from && day <= through;
    });
  }

  // Takes one unit out, places one of the lot, places the first one anew; keeps the change when
  // less is wasted or donated.
  bool place_by_moving(std::size_t lot) {
    const bool whole_only = c_.lots[lot].donatable;
    int tries = 0;
    for (std::size_t index = 0; index < table_.units.size(); ++index) {
      if (tries >= kTriesForALot || table_.work() >= stop_) return false;
      if (!table_.units[index].live || table_.units[index].published) continue;
      if (table_.units[index].lot == lot || !in_the_way(table_.units[index], lot)) continue;
      tries += 1;
      const OpenedUnit moved = table_.units[index];
      table_.take_back(table_.units[index]);
      auto placed = table_.place(lot, whole_only, rank_);
      if (placed) {
        auto again = table_.place(moved.lot, c_.lots[moved.lot].donatable, rank_);
        auto after = value(*placed);
        if (again) {
          after.first += value(*again).first;
          after.second += value(*again).second;
        }
        if (after < value(moved)) {
          table_.units_left[lot] -= 1;
          if (again) {
            table_.units[index] = std::move(*again);
          } else {
            table_.units[index].live = false;
            table_.units_left[moved.lot] += 1;
          }
          table_.units.push_back(std::move(*placed));
          return true;
        }
        if (again) table_.take_back(*again);
        table_.take_back(*placed);
      }
      table_.put_back(table_.units[index]);
    }
    return false;
  }

  std::tuple<std::int64_t, std::int64_t, std::int64_t> cost(const OpenedUnit& unit) const {
    const CompiledEat::Lot& lot = c_.lots[unit.lot];
    std::int64_t dislike = 0;
    for (const auto& [seat, eaten] : unit.helpings)
      dislike += eaten * (2 - c_.rating(lot.product, c_.seats[seat].eater));
    return {-unit.eaten, dislike, c_.meals[unit.meal].day};
  }

  // The best of all meals for one unit, everything else as it is.
  void better_place(OpenedUnit& unit) {
    const CompiledEat::Lot& lot = c_.lots[unit.lot];
    table_.take_back(unit);
    std::optional<OpenedUnit> best;
    std::size_t meal = std::max(c_.first_meal(lot.from), table_.first_opening[lot.product]);
    for (; meal < c_.meals.size() && c_.meals[meal].day <= lot.last; ++meal) {
      if (table_.work() >= stop_) break;
      const std::size_t week = c_.meals[meal].week;
      if (!c_.suits(lot.product, meal)) continue;
      if (!table_.week_has_room(week, lot.product)) {
        meal = c_.week_end(week) - 1;
        continue;
      }
      OpenedUnit other;
      other.lot = unit.lot;
      other.meal = meal;
      table_.fill(other, rank_);
      table_.take_back(other);
      if (cost(other) < (best ? cost(*best) : cost(unit))) best = std::move(other);
    }
    if (best) unit = std::move(*best);
    table_.put_back(unit);
  }

  Table& table_;
  const CompiledEat& c_;
  const Rank& rank_;
  std::int64_t stop_;
};

}  // namespace

void make_room(Table& table, const Rank& rank, std::int64_t work_limit) {
  Improver(table, rank, work_limit).make_room();
}
void settle(Table& table, const Rank& rank, std::int64_t work_limit) {
  Improver(table, rank, work_limit).settle();
}

}  // namespace larderloop::plan
