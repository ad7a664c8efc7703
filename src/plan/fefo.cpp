// Soonest date first with regard to people: a careful greedy plan, then bounded local improvement.
// Work is counted in steps, never in time, so that the same problem gives the same plan.
#include "plan/fefo.h"

#include "larderloop/plan/planner.h"
#include "plan/write_plan.h"

#include <algorithm>
#include <map>

namespace larderloop::plan {
namespace {

constexpr std::int64_t kMakeRoomWork = 400'000;
constexpr std::int64_t kSettleWork = 250'000;
constexpr std::size_t kMostUnits = 200'000;  // units planned at all; what is beyond stays unopened

Rank rank_of(const CompiledEat& problem, bool liking_first) {
  // What each eater could eat of everything in scope, in servings.
  std::vector<std::int64_t> choice(problem.eaters.size(), 0);
  for (const CompiledEat::Lot& lot : problem.lots) {
    const std::int64_t servings =
        std::min(CompiledEat::kMost,
                 lot.units * std::min<std::int64_t>(problem.products[lot.product].servings, 1000));
    for (std::size_t eater = 0; eater < problem.eaters.size(); ++eater) {
      if (problem.will_eat(lot.product, eater))
        choice[eater] = std::min(CompiledEat::kMost, choice[eater] + servings);
    }
  }
  Rank rank;
  for (std::size_t product = 0; product < problem.products.size(); ++product) {
    for (std::size_t eater = 0; eater < problem.eaters.size(); ++eater) {
      const std::int64_t dislike = 2 - std::clamp(problem.rating(product, eater), -2, 2);
      rank.push_back(liking_first ? dislike * 2 * CompiledEat::kMost + choice[eater]
                                  : choice[eater] * 8 + dislike);
    }
  }
  return rank;
}

class Publisher {
 public:
  Publisher(Table& table, const EatDownProblem& problem)
      : table_(table), c_(table.problem()), problem_(problem) {
    for (const CompiledEat::Lot& lot : c_.open_lots) open_left_.push_back(lot.units);
    for (std::size_t lot = 0; lot < c_.lots.size(); ++lot)
      lots_of_[c_.lots[lot].product].push_back(lot);
  }

  void keep() {
    for (const auto& [key, servings] : shown()) {
      const auto& [meal, product, seat] = key;
      std::int64_t wanted = std::min(servings, table_.room(seat, product));
      wanted -= from_open_lots(meal, product, seat, wanted);
      if (wanted == 0 || open_lot_waits(meal, product)) continue;
      wanted -= from_opened_units(meal, product, seat, wanted);
      while (wanted > 0) {
        const std::int64_t served = from_new_unit(meal, product, seat, wanted);
        if (served == 0) break;
        wanted -= served;
      }
    }
  }

 private:
  // (meal, product, seat) -> servings, as far as rules about people and meals allow.
  std::map<std::tuple<std::size_t, std::size_t, std::size_t>, std::int64_t> shown() const {
    std::map<std::tuple<std::size_t, std::size_t, std::size_t>, std::int64_t> servings;
    for (const MealServing& line : problem_.published) {
      const std::size_t product = c_.product_of(line.product);
      const std::size_t meal = c_.meal_of(line.meal);
      const std::size_t eater = c_.eater_of(line.eater);
      if (product == c_.products.size() || meal == c_.meals.size() || eater == c_.eaters.size())
        continue;
      if (c_.meals[meal].source->day > problem_.published_until || !c_.suits(product, meal))
        continue;
      const std::size_t seat = c_.seat_of(meal, eater);
      if (seat == c_.seats.size()) continue;
      std::int64_t& sum = servings[{meal, product, seat}];
      sum = std::min(CompiledEat::kMost,
                     sum + std::clamp<std::int64_t>(line.servings, 0, CompiledEat::kMost));
    }
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

  std::int64_t from_opened_units(std::size_t meal, std::size_t product, std::size_t seat,
                                 std::int64_t wanted) {
    std::int64_t served = 0;
    for (OpenedUnit& unit : table_.units) {
      const CompiledEat::Product& of = c_.products[product];
      const bool keeps =
          unit.meal == meal ||
          (of.open_days > 0 && c_.meals[meal].day <= c_.meals[unit.meal].day + of.open_days);
      if (c_.lots[unit.lot].product != product || !keeps) continue;
      served += serve_from(unit, seat, std::min(wanted - served, of.servings - unit.eaten));
    }
    return served;
  }

  std::int64_t from_new_unit(std::size_t meal, std::size_t product, std::size_t seat,
                             std::int64_t wanted) {
    if (table_.units.size() >= kMostUnits) return 0;
    for (const std::size_t lot : lots_of_[product]) {
      const CompiledEat::Lot& of = c_.lots[lot];
      const std::int64_t day = c_.meals[meal].day;
      if (table_.units_left[lot] == 0 || day < of.from || day > of.last) continue;
      OpenedUnit unit;
      unit.lot = lot;
      unit.meal = meal;
      unit.published = true;
      table_.units_left[lot] -= 1;
      table_.units.push_back(unit);
      return serve_from(table_.units.back(), seat, std::min(wanted, c_.products[product].servings));
    }
    return 0;
  }

  std::int64_t serve_from(OpenedUnit& unit, std::size_t seat, std::int64_t servings) {
    if (servings == 0) return 0;
    table_.eat(seat, c_.lots[unit.lot].product, servings);
    unit.helpings.emplace_back(seat, servings);
    unit.eaten += servings;
    return servings;
  }

  Table& table_;
  const CompiledEat& c_;
  const EatDownProblem& problem_;
  std::vector<std::int64_t> open_left_;
  std::map<std::size_t, std::vector<std::size_t>> lots_of_;
};

}  // namespace

Rank scarce_first(const CompiledEat& problem) {
  return rank_of(problem, false);
}
Rank liked_first(const CompiledEat& problem) {
  return rank_of(problem, true);
}

void keep_published(Table& table, const EatDownProblem& problem, const Rank& rank) {
  Publisher(table, problem).keep();
  for (OpenedUnit& unit : table.units) table.fill(unit, rank);
}

void serve_open_lots(Table& table, const Rank& rank) {
  const CompiledEat& c = table.problem();
  for (std::size_t lot = 0; lot < c.open_lots.size(); ++lot) {
    const CompiledEat::Lot& of = c.open_lots[lot];
    std::int64_t left = of.units;
    for (const auto& [seat, servings] : table.from_open[lot]) left -= servings;
    std::size_t meal = c.first_meal(of.from);
    for (; meal < c.meals.size() && c.meals[meal].day <= of.last && left > 0; ++meal) {
      if (c.suits(of.product, meal))
        left -= table.serve(meal, of.product, left, rank, table.from_open[lot]);
    }
    std::size_t& opening = table.first_opening[of.product];
    for (const auto& [seat, servings] : table.from_open[lot])
      opening = std::max(opening, c.seats[seat].meal + 1);
    if (left > 0) opening = std::max(opening, meal);
  }
}

void serve_by_date(Table& table, const Rank& rank) {
  const CompiledEat& c = table.problem();
  const auto serve = [&](bool donatable, bool whole_only) {
    for (std::size_t lot = 0; lot < c.lots.size(); ++lot) {
      if (c.lots[lot].donatable != donatable) continue;
      while (table.units_left[lot] > 0 && table.units.size() < kMostUnits) {
        auto unit = table.place(lot, whole_only, rank);
        if (!unit) break;
        table.units_left[lot] -= 1;
        table.units.push_back(std::move(*unit));
      }
    }
  };
  serve(false, true);
  serve(false, false);
  serve(true, true);
}

Worth worth(const Table& table, std::int64_t late_days) {
  const CompiledEat& c = table.problem();
  std::int64_t wasted = 0, donated = 0, dislike = 0, late = 0;
  for (std::size_t lot = 0; lot < c.lots.size(); ++lot) {
    (c.lots[lot].donatable ? donated : wasted) +=
        table.units_left[lot] * c.products[c.lots[lot].product].servings;
  }
  for (const OpenedUnit& unit : table.units) {
    if (!unit.live) continue;
    const CompiledEat::Lot& lot = c.lots[unit.lot];
    const std::int64_t servings = c.products[lot.product].servings;
    wasted += servings - unit.eaten;
    const std::int64_t ahead = lot.last - c.meals[unit.meal].day;
    late += servings *
            std::max<std::int64_t>(0, std::clamp<std::int64_t>(late_days, 0, 10'000) - ahead);
    for (const auto& [seat, eaten] : unit.helpings)
      dislike += eaten * (2 - c.rating(lot.product, c.seats[seat].eater));
  }
  for (std::size_t lot = 0; lot < c.open_lots.size(); ++lot) {
    wasted += c.open_lots[lot].units;
    for (const auto& [seat, eaten] : table.from_open[lot]) wasted -= eaten;
  }
  return {wasted, donated, dislike, late};
}

EatDownPlan plan_eat_down(const EatDownProblem& problem) {
  const CompiledEat compiled(problem);
  const Rank ranks[] = {scarce_first(compiled), liked_first(compiled)};
  std::optional<Table> best;
  for (const Rank& rank : ranks) {
    Table table(compiled);
    keep_published(table, problem, rank);
    serve_open_lots(table, rank);
    serve_by_date(table, rank);
    if (!best || worth(table, problem.late_days) < worth(*best, problem.late_days))
      best.emplace(std::move(table));
  }
  make_room(*best, ranks[0], kMakeRoomWork);
  settle(*best, ranks[1], kSettleWork);
  return write_plan(*best, problem);
}

}  // namespace larderloop::plan
