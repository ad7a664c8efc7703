// The columns of the eat-down model and its rows about lots and people. Rows about open units:
// eat_model_units.cpp; levels: eat_model_levels.cpp; plans in and out: eat_model_plan.cpp.
#include "plan/eat_model.h"

#include <algorithm>
#include <tuple>

namespace larderloop::plan {
namespace {

std::string numbered(const char* prefix, std::size_t a, std::size_t b) {
  return std::string(prefix) + std::to_string(a) + "_" + std::to_string(b);
}

}  // namespace

EatModel::EatModel(const EatDownProblem& problem) : problem_(problem), c_(problem) {
  pools_of_.resize(c_.products.size());
  slots_.resize(c_.products.size());
  make_pools();
  for (std::size_t product = 0; product < c_.products.size(); ++product) make_slots(product);
  add_pool_rows();
  add_people_rows();
  for (std::size_t product = 0; product < c_.products.size(); ++product) {
    add_open_lot_rows(product);
    if (c_.products[product].open_days > 0) {
      add_carrying_rows(product);
    } else {
      add_unit_rows(product);
    }
  }
  add_levels();
}

void EatModel::make_pools() {
  std::map<std::tuple<std::size_t, std::int64_t, std::int64_t, bool>, Pool> alike;
  for (std::size_t lot = 0; lot < c_.lots.size(); ++lot) {
    const CompiledEat::Lot& of = c_.lots[lot];
    if (of.last < c_.today || of.units == 0) continue;
    Pool& pool = alike
                     .try_emplace({of.product, of.last, of.from, of.donatable},
                                  Pool{of.product, of.from, of.last, 0, of.donatable, {}})
                     .first->second;
    pool.units = std::min(CompiledEat::kMost, pool.units + of.units);
    pool.lots.push_back(lot);
  }
  for (auto& [key, pool] : alike) {
    std::sort(pool.lots.begin(), pool.lots.end(), [&](std::size_t a, std::size_t b) {
      return c_.lots[a].source->id < c_.lots[b].source->id;
    });
    pools_of_[pool.product].push_back(pools_.size());
    pools_.push_back(std::move(pool));
  }
}

std::int64_t EatModel::most_at(std::size_t product, std::size_t seat) const {
  const CompiledEat::Seat& at = c_.seats[seat];
  if (!c_.will_eat(product, at.eater)) return 0;
  const std::size_t week = c_.meals[at.meal].week;
  return std::min(
      {at.appetite, c_.week_limit[week * c_.eaters.size() + at.eater],
       c_.product_limit[(week * c_.products.size() + product) * c_.eaters.size() + at.eater]});
}

// A slot is a meal at which something of the product can be eaten: from a unit opened there or,
// while it keeps, before, or from one that was open before today.
void EatModel::make_slots(std::size_t product) {
  const CompiledEat::Product& of = c_.products[product];
  std::int64_t fresh_through = c_.today - 1;  // a unit opened so far keeps through this day
  for (std::size_t meal = 0; meal < c_.meals.size(); ++meal) {
    if (!c_.suits(product, meal)) continue;
    const std::int64_t day = c_.meals[meal].day;
    std::vector<std::pair<std::size_t, std::int64_t>> takers;
    std::int64_t most = 0;
    for (std::size_t seat = c_.meals[meal].seats_begin; seat < c_.meals[meal].seats_end; ++seat) {
      const std::int64_t servings = most_at(product, seat);
      if (servings <= 0) continue;
      takers.emplace_back(seat, servings);
      most = std::min(CompiledEat::kMost, most + servings);
    }
    if (takers.empty()) continue;
    std::vector<std::size_t> from;
    for (const std::size_t pool : pools_of_[product]) {
      if (pools_[pool].from <= day && day <= pools_[pool].last) from.push_back(pool);
    }
    std::vector<std::size_t> before;
    for (std::size_t lot = 0; lot < c_.open_lots.size(); ++lot) {
      const CompiledEat::Lot& open = c_.open_lots[lot];
      if (open.product == product && open.units > 0 && open.from <= day && day <= open.last)
        before.push_back(lot);
    }
    if (!from.empty()) fresh_through = std::max(fresh_through, day + of.open_days);
    if (day > fresh_through && before.empty()) continue;

    Slot slot;
    slot.meal = meal;
    slot.most = most;
    for (const std::size_t pool : from) {
      slot.openings.push_back(openings_.size());
      openings_.push_back(
          {pool, meal,
           mip_.add_column(numbered("x", pool, meal), 0, std::min(pools_[pool].units, most), 0)});
    }
    for (const auto& [seat, servings] : takers) {
      slot.servings.push_back(servings_.size());
      const int column = mip_.add_column(numbered("z", product, seat), 0, servings, 1);
      servings_.push_back({product, meal, seat, column});
      served_[{product, seat}] = column;
    }
    for (const std::size_t lot : before) {
      slot.from_open.push_back(from_open_.size());
      from_open_.push_back({lot, meal,
                            mip_.add_column(numbered("y", lot, meal), 0,
                                            std::min(c_.open_lots[lot].units, most), 1)});
    }
    slots_[product].push_back(std::move(slot));
  }
}

void EatModel::add_pool_rows() {
  std::vector<std::vector<MipTerm>> opened(pools_.size());
  for (const Opening& opening : openings_) opened[opening.pool].push_back({opening.column, 1});
  for (std::size_t pool = 0; pool < pools_.size(); ++pool) {
    if (!opened[pool].empty())
      mip_.add_row("pool" + std::to_string(pool), MipRow::kNone, pools_[pool].units,
                   std::move(opened[pool]));
  }
  std::vector<std::vector<MipTerm>> from(c_.open_lots.size());
  for (const FromOpen& each : from_open_) from[each.lot].push_back({each.column, 1});
  for (std::size_t lot = 0; lot < from.size(); ++lot) {
    if (!from[lot].empty())
      mip_.add_row("open" + std::to_string(lot), MipRow::kNone, c_.open_lots[lot].units,
                   std::move(from[lot]));
  }
}

// Appetite at a meal, tolerance in a week, monotony of a product in a week. Rows that the bounds of
// their columns already keep are left out.
void EatModel::add_people_rows() {
  struct Sum {
    std::vector<MipTerm> terms;
    std::int64_t most = 0;
  };
  const std::size_t eaters = c_.eaters.size();
  std::vector<Sum> at_seat(c_.seats.size()), in_week(c_.weeks() * eaters);
  std::map<std::size_t, Sum> of_product;
  for (const Serving& serving : servings_) {
    const CompiledEat::Seat& seat = c_.seats[serving.seat];
    const std::size_t week = c_.meals[serving.meal].week;
    const std::size_t key = (week * c_.products.size() + serving.product) * eaters + seat.eater;
    for (Sum* sum :
         {&at_seat[serving.seat], &in_week[week * eaters + seat.eater], &of_product[key]}) {
      sum->terms.push_back({serving.column, 1});
      sum->most += mip_.columns[static_cast<std::size_t>(serving.column)].upper;
    }
  }
  const auto add = [&](const char* prefix, std::size_t key, Sum& sum, std::int64_t limit) {
    if (sum.most > limit)
      mip_.add_row(prefix + std::to_string(key), MipRow::kNone, limit, std::move(sum.terms));
  };
  for (std::size_t seat = 0; seat < at_seat.size(); ++seat)
    add("seat", seat, at_seat[seat], c_.seats[seat].appetite);
  for (std::size_t key = 0; key < in_week.size(); ++key)
    add("week", key, in_week[key], c_.week_limit[key]);
  for (auto& [key, sum] : of_product) add("alike", key, sum, c_.product_limit[key]);
}

}  // namespace larderloop::plan
