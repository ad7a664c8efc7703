// A plan laid out on a table as it stands, to be rearranged there.
#include "plan/fefo.h"
#include "plan/write_plan.h"

#include <algorithm>
#include <map>
#include <set>
#include <string_view>
#include <tuple>
#include <utility>

namespace larderloop::plan {
namespace {

// What was shown or asked for.
std::set<std::tuple<std::size_t, std::size_t, std::size_t>> promised(
    const CompiledEat& c, const EatDownProblem& problem) {
  std::set<std::tuple<std::size_t, std::size_t, std::size_t>> all;  // product, meal, eater
  const auto add = [&](const MealServing& each, std::int64_t until) {
    const std::size_t meal = c.meal_of(each.meal);
    if (meal < c.meals.size() && c.meals[meal].source->day <= until)
      all.emplace(c.product_of(each.product), meal, c.eater_of(each.eater));
  };
  for (const MealServing& each : problem.published) add(each, problem.published_until);
  for (const MealServing& each : problem.wished) add(each, CompiledEat::kFar);
  return all;
}

// Lays an allowed plan out on an empty table.
class Layout {
 public:
  explicit Layout(Table& table) : table_(table), c_(table.problem()) {
    for (const CompiledEat::Lot& lot : c_.open_lots) open_left_.push_back(lot.units);
  }

  void lay(const EatDownPlan& plan) {
    std::map<std::string_view, std::size_t> lots;
    for (std::size_t lot = 0; lot < c_.lots.size(); ++lot)
      lots.emplace(c_.lots[lot].source->id, lot);
    std::map<std::size_t, std::map<std::size_t, AtMeal>> by_product;
    for (const Opened& each : plan.opened) {
      const auto lot = lots.find(each.lot);
      const std::size_t meal = c_.meal_of(each.meal);
      if (lot == lots.end() || meal == c_.meals.size()) continue;
      AtMeal& at = by_product[c_.lots[lot->second].product][meal];
      at.opened.insert(at.opened.end(),
                       static_cast<std::size_t>(std::max<std::int64_t>(0, each.units)),
                       lot->second);
    }
    for (const MealServing& each : plan.servings) {
      const std::size_t product = c_.product_of(each.product), meal = c_.meal_of(each.meal),
                        eater = c_.eater_of(each.eater);
      if (product == c_.products.size() || meal == c_.meals.size() || eater == c_.eaters.size())
        continue;
      const std::size_t seat = c_.seat_of(meal, eater);
      if (seat < c_.seats.size()) by_product[product][meal].eaten.emplace_back(seat, each.servings);
    }
    for (const auto& [product, meals] : by_product) lay(product, meals);
  }

 private:
  struct AtMeal {
    std::vector<std::size_t> opened;  // lots
    Helpings eaten;
  };

  void lay(std::size_t product, const std::map<std::size_t, AtMeal>& meals) {
    std::vector<OpenedUnit> units;
    std::size_t oldest = 0;
    for (const auto& [meal, at] : meals) {
      while (oldest < units.size() && (units[oldest].eaten == c_.products[product].servings ||
                                       !serves(units[oldest], product, meal)))
        ++oldest;
      for (const std::size_t lot : at.opened) {
        OpenedUnit unit;
        unit.lot = lot;
        unit.meal = meal;
        units.push_back(unit);
      }
      for (const auto& [seat, servings] : at.eaten)
        serve(product, meal, seat, servings, units, oldest);
    }
    for (OpenedUnit& unit : units) {
      if (!unit.helpings.empty() && !eaten_at(unit, unit.meal)) exchange(unit, product, units);
    }
    for (OpenedUnit& unit : units) {
      if (unit.helpings.empty()) continue;
      table_.units_left[unit.lot] -= 1;
      table_.units.push_back(std::move(unit));
    }
  }

  void serve(std::size_t product, std::size_t meal, std::size_t seat, std::int64_t wanted,
             std::vector<OpenedUnit>& units, std::size_t oldest) {
    const auto take = [&](std::int64_t left) {
      const std::int64_t taken = std::min(wanted, left);
      table_.eat(seat, product, taken);
      wanted -= taken;
      return taken;
    };
    const std::int64_t day = c_.meals[meal].day;
    for (std::size_t lot = 0; lot < c_.open_lots.size() && wanted > 0; ++lot) {
      const CompiledEat::Lot& of = c_.open_lots[lot];
      if (of.product != product || open_left_[lot] == 0 || day < of.from || day > of.last) continue;
      const std::int64_t taken = take(open_left_[lot]);
      open_left_[lot] -= taken;
      table_.from_open[lot].emplace_back(seat, taken);
    }
    for (std::size_t index = oldest; index < units.size() && wanted > 0; ++index) {
      OpenedUnit& unit = units[index];
      const std::int64_t left = c_.products[product].servings - unit.eaten;
      if (left == 0 || !serves(unit, product, meal)) continue;
      const std::int64_t taken = take(left);
      unit.eaten += taken;
      unit.helpings.emplace_back(seat, taken);
    }
  }

  [[nodiscard]] bool serves(const OpenedUnit& unit, std::size_t product, std::size_t meal) const {
    const std::int64_t keeps = c_.products[product].open_days;
    return unit.meal == meal ||
           (keeps > 0 && c_.meals[meal].day <= c_.meals[unit.meal].day + keeps);
  }
  [[nodiscard]] bool eaten_at(const OpenedUnit& unit, std::size_t meal) const {
    return servings_at(unit, meal) > 0;
  }
  [[nodiscard]] std::int64_t servings_at(const OpenedUnit& unit, std::size_t meal) const {
    std::int64_t sum = 0;
    for (const auto& [seat, servings] : unit.helpings) {
      if (c_.seats[seat].meal == meal) sum += servings;
    }
    return sum;
  }

  // Nothing is opened without a serving eaten at once, so a unit that is to be moved by itself
  // needs one of its own: a serving there out of an older unit for a later one. Where that cannot
  // be both units are held.
  void exchange(OpenedUnit& unit, std::size_t product, std::vector<OpenedUnit>& units) {
    for (OpenedUnit& other : units) {
      if (&other == &unit) continue;
      if (servings_at(other, unit.meal) < (other.meal == unit.meal ? 2 : 1)) continue;
      auto& [later, servings] = unit.helpings.back();
      if (!serves(other, product, c_.seats[later].meal)) continue;
      const auto there =
          std::find_if(other.helpings.begin(), other.helpings.end(), [&](const auto& helping) {
            return helping.second > 0 && c_.seats[helping.first].meal == unit.meal;
          });
      const std::size_t seat = there->first;
      there->second -= 1;
      other.helpings.emplace_back(later, 1);
      servings -= 1;
      unit.helpings.emplace_back(seat, 1);
      const auto none = [](const auto& helping) { return helping.second == 0; };
      for (OpenedUnit* each : {&unit, &other}) {
        each->helpings.erase(std::remove_if(each->helpings.begin(), each->helpings.end(), none),
                             each->helpings.end());
      }
      return;
    }
    unit.published = true;
    for (OpenedUnit& other : units) other.published = other.published || eaten_at(other, unit.meal);
  }

  Table& table_;
  const CompiledEat& c_;
  std::vector<std::int64_t> open_left_;
};

// The plan as a table, and what is missing added to it.
void lay(Table& table, const EatDownProblem& problem, const EatDownPlan& plan) {
  const CompiledEat& c = table.problem();
  const Rank rank = scarce_first(c);
  Layout(table).lay(plan);
  const auto stays = promised(c, problem);
  for (OpenedUnit& unit : table.units) {
    unit.published =
        unit.published ||
        std::any_of(unit.helpings.begin(), unit.helpings.end(), [&](const auto& helping) {
          const CompiledEat::Seat& seat = c.seats[helping.first];
          return stays.count({c.lots[unit.lot].product, seat.meal, seat.eater}) > 0;
        });
  }
  serve_open_lots(table, rank);
  serve_by_date(table, rank);
}

}  // namespace

EatDownPlan rearranged(const EatDownProblem& problem, const CompiledEat& compiled,
                       const EatDownPlan& plan, std::int64_t work) {
  Table table(compiled);
  lay(table, problem, plan);
  rearrange(table, problem, work);
  return write_plan(table, problem);
}

}  // namespace larderloop::plan
