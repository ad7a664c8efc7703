// What the household was shown stays: its servings are placed before anything else, and nothing
// moves them later.
#include "plan/fefo.h"

#include <algorithm>
#include <deque>
#include <map>
#include <optional>
#include <tuple>

namespace larderloop::plan {
namespace {

using Demand = std::map<std::size_t, Helpings>;  // by meal: who is to be served

std::int64_t servings_of(const Helpings& helpings) {
  std::int64_t sum = 0;
  for (const auto& [seat, servings] : helpings) sum += servings;
  return sum;
}

// Finds units to open for the shown servings of one product: each as late as it can be, but one
// meal earlier for every serving that would otherwise find all dates past.
class Cover {
 public:
  Cover(Table& table, std::size_t product, Demand demand)
      : table_(table),
        c_(table.problem()),
        of_(c_.products[product]),
        product_(product),
        demand_(std::move(demand)) {
    for (std::size_t lot = 0; lot < c_.lots.size(); ++lot) {
      if (c_.lots[lot].product == product) lots_.push_back(lot);
    }
  }

  void run() {
    std::optional<std::size_t> furthest;
    std::map<std::size_t, std::int64_t>
        tried;  // what was opened earlier when the furthest meal fell short first
    while (const auto short_at = open_units()) {
      if (!furthest || *short_at > *furthest) {
        furthest = short_at;
        tried = earlier_;
      }
      if (open_one_earlier(*short_at)) continue;
      earlier_ = tried;
      drop_at(*furthest);
    }
    for (OpenedUnit& unit : units_) {
      if (unit.helpings.empty()) continue;
      table_.units_left[unit.lot] -= 1;
      table_.units.push_back(std::move(unit));
    }
  }

 private:
  [[nodiscard]] std::optional<std::size_t> lot_for(std::int64_t day) const {
    for (const std::size_t lot : lots_) {
      const auto used = used_.find(lot);
      const std::int64_t left = table_.units_left[lot] - (used == used_.end() ? 0 : used->second);
      if (left > 0 && c_.lots[lot].from <= day && day <= c_.lots[lot].last) return lot;
    }
    return std::nullopt;
  }

  bool open(std::size_t meal) {
    const auto lot = lot_for(c_.meals[meal].day);
    if (!lot || table_.units.size() + units_.size() >= Table::kMostUnits) return false;
    used_[*lot] += 1;
    opened_[meal] += 1;
    OpenedUnit unit;
    unit.lot = *lot;
    unit.meal = meal;
    unit.published = true;
    units_.push_back(unit);
    return true;
  }

  // Serves the demand from units opened for it; tells the first meal that falls short.
  std::optional<std::size_t> open_units() {
    units_.clear();
    used_.clear();
    opened_.clear();
    std::size_t oldest = 0;
    for (const auto& [meal, helpings] : demand_) {
      while (oldest < units_.size() && !serves(units_[oldest], meal)) ++oldest;
      const std::int64_t earlier = std::min(earlier_at(meal), servings_of(helpings));
      for (std::int64_t n = 0; n < earlier; ++n) open(meal);
      for (auto [seat, wanted] : helpings) {
        for (std::size_t index = oldest; wanted > 0; ++index) {
          if (index == units_.size() && !open(meal)) return meal;
          if (!serves(units_[index], meal)) continue;
          const std::int64_t servings = std::min(wanted, of_.servings - units_[index].eaten);
          if (servings == 0) continue;
          units_[index].helpings.emplace_back(seat, servings);
          units_[index].eaten += servings;
          wanted -= servings;
        }
      }
    }
    return std::nullopt;
  }

  [[nodiscard]] bool serves(const OpenedUnit& unit, std::size_t meal) const {
    return unit.meal == meal ||
           (of_.open_days > 0 && c_.meals[meal].day <= c_.meals[unit.meal].day + of_.open_days);
  }

  // A further unit at the latest earlier meal where something is eaten and a lot is good, back to
  // where no unit keeps from one meal to the next.
  bool open_one_earlier(std::size_t short_at) {
    if (of_.open_days == 0) return false;
    std::int64_t next = c_.meals[short_at].day;
    for (auto at = demand_.lower_bound(short_at); at != demand_.begin();) {
      --at;
      const std::size_t meal = at->first;
      const std::int64_t day = c_.meals[meal].day;
      if (day + of_.open_days < next) return false;
      next = day;
      const std::int64_t units = std::max(opened_[meal], earlier_at(meal));
      if (units >= servings_of(at->second) || !lot_for(day)) continue;
      earlier_[meal] = units + 1;
      return true;
    }
    return false;
  }

  [[nodiscard]] std::int64_t earlier_at(std::size_t meal) const {
    const auto found = earlier_.find(meal);
    return found == earlier_.end() ? 0 : found->second;
  }

  // One serving fewer at the meal: it is no longer possible.
  void drop_at(std::size_t meal) {
    auto& [seat, servings] = demand_.at(meal).back();
    table_.eat(seat, product_, -1);
    servings -= 1;
    if (servings == 0) demand_.at(meal).pop_back();
    if (demand_.at(meal).empty()) demand_.erase(meal);
  }

  Table& table_;
  const CompiledEat& c_;
  const CompiledEat::Product& of_;
  std::size_t product_;
  Demand demand_;
  std::vector<std::size_t> lots_;                // soonest date first
  std::map<std::size_t, std::int64_t> earlier_;  // units to be opened at a meal without need
  std::map<std::size_t, std::int64_t> opened_;   // by meal
  std::map<std::size_t, std::int64_t> used_;     // by lot
  std::vector<OpenedUnit> units_;                // in the order of opening
};

class Publisher {
 public:
  Publisher(Table& table, const EatDownProblem& problem)
      : table_(table), c_(table.problem()), problem_(problem) {
    for (const CompiledEat::Lot& lot : c_.open_lots) open_left_.push_back(lot.units);
  }

  void keep() {
    std::map<std::size_t, Demand> demand;  // by product, from sealed units
    for (const auto& [key, servings] : shown()) {
      const auto& [meal, product, seat] = key;
      std::int64_t wanted = std::min(servings, table_.room(seat, product));
      wanted -= from_open_lots(meal, product, seat, wanted);
      if (wanted == 0 || open_lot_waits(meal, product)) continue;
      table_.eat(seat, product, wanted);
      demand[product][meal].emplace_back(seat, wanted);
    }
    for (auto& [product, of] : demand) Cover(table_, product, std::move(of)).run();
  }

 private:
  // (meal, product, seat) -> servings, as far as rules about people and meals allow.
  std::map<std::tuple<std::size_t, std::size_t, std::size_t>, std::int64_t> shown() const {
    std::map<std::tuple<std::size_t, std::size_t, std::size_t>, std::int64_t> servings;
    const auto add = [&](const MealServing& line, std::int64_t until) {
      const std::size_t product = c_.product_of(line.product);
      const std::size_t meal = c_.meal_of(line.meal);
      const std::size_t eater = c_.eater_of(line.eater);
      if (product == c_.products.size() || meal == c_.meals.size() || eater == c_.eaters.size())
        return;
      if (c_.meals[meal].source->day > until || !c_.suits(product, meal)) return;
      const std::size_t seat = c_.seat_of(meal, eater);
      if (seat == c_.seats.size()) return;
      const std::int64_t wanted = std::clamp<std::int64_t>(line.servings, 0, CompiledEat::kMost);
      std::int64_t& most = servings[{meal, product, seat}];
      most = std::max(most, wanted);
    };
    // What the family asked for is served like what it was shown.
    for (const MealServing& line : problem_.wished) add(line, CompiledEat::kFar);
    for (const MealServing& line : problem_.published) add(line, problem_.published_until);
    return servings;
  }

  std::int64_t from_open_lots(std::size_t meal, std::size_t product, std::size_t seat,
                              std::int64_t wanted) {
    std::int64_t served = 0;
    for (std::size_t lot = 0; lot < c_.open_lots.size() && served < wanted; ++lot) {
      const CompiledEat::Lot& of = c_.open_lots[lot];
      const std::int64_t day = c_.meals[meal].day;
      if (of.product != product || day < of.from || day > of.last) continue;
      const std::int64_t servings = std::min(wanted - served, open_left_[lot]);
      if (servings == 0) continue;
      table_.eat(seat, product, servings);
      table_.from_open[lot].emplace_back(seat, servings);
      open_left_[lot] -= servings;
      served += servings;
    }
    return served;
  }

  // An open unit of the product that only comes later is eaten before another one is opened.
  bool open_lot_waits(std::size_t meal, std::size_t product) const {
    for (std::size_t lot = 0; lot < c_.open_lots.size(); ++lot) {
      const CompiledEat::Lot& of = c_.open_lots[lot];
      if (of.product == product && open_left_[lot] > 0 && of.last >= c_.meals[meal].day)
        return true;
    }
    return false;
  }

  Table& table_;
  const CompiledEat& c_;
  const EatDownProblem& problem_;
  std::vector<std::int64_t> open_left_;
};

}  // namespace

void keep_published(Table& table, const EatDownProblem& problem, const Rank& rank) {
  Publisher(table, problem).keep();
  for (OpenedUnit& unit : table.units) table.fill(unit, rank);
}

}  // namespace larderloop::plan
