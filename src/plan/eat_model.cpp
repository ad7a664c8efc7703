// The pools of the eat-down model and its rows about lots and people. Columns: eat_model_slots.cpp;
// rows about open units: eat_model_units.cpp; levels: eat_model_levels.cpp; plans in and out:
// eat_model_plan.cpp.
#include "plan/eat_model.h"

#include <algorithm>
#include <string>
#include <tuple>

namespace larderloop::plan {

EatModel::EatModel(const EatDownProblem& problem, const CompiledEat& compiled, Grain grain,
                   const Support* only)
    : problem_(problem), c_(compiled), blocks_(compiled, problem, grain) {
  pools_of_.resize(c_.products.size());
  slots_.resize(c_.products.size());
  make_pools();
  for (std::size_t product = 0; product < c_.products.size(); ++product) make_slots(product, only);
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
// their columns keep already are left out.
void EatModel::add_people_rows() {
  struct Sum {
    std::vector<MipTerm> terms;
    std::int64_t most = 0;
  };
  const std::size_t eaters = c_.eaters.size();
  std::vector<Sum> at_seat(blocks_.seats.size()), in_week(c_.weeks() * eaters);
  std::map<std::size_t, Sum> of_product;
  for (const Serving& serving : servings_) {
    const BlockSeat& seat = blocks_.seats[serving.seat];
    const std::size_t week = blocks_.blocks[seat.block].week;
    const std::size_t key = (week * c_.products.size() + serving.product) * eaters + seat.eater;
    for (Sum* sum :
         {&at_seat[serving.seat], &in_week[week * eaters + seat.eater], &of_product[key]}) {
      sum->terms.push_back({serving.column, 1});
      sum->most += upper(serving.column);
    }
  }
  const auto add = [&](const char* prefix, std::size_t key, Sum& sum, std::int64_t limit) {
    if (sum.most > limit)
      mip_.add_row(prefix + std::to_string(key), MipRow::kNone, limit, std::move(sum.terms));
  };
  for (std::size_t seat = 0; seat < at_seat.size(); ++seat)
    add("seat", seat, at_seat[seat], blocks_.seats[seat].appetite);
  for (std::size_t key = 0; key < in_week.size(); ++key)
    add("week", key, in_week[key], c_.week_limit[key]);
  for (auto& [key, sum] : of_product) add("alike", key, sum, c_.product_limit[key]);
}

}  // namespace larderloop::plan
