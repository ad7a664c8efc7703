// Plans into points of the model and back.
#include "plan/eat_model.h"

#include <algorithm>
#include <deque>

namespace larderloop::plan {

MipPoint EatModel::point_of(const EatDownPlan& plan) const {
  MipPoint point(mip_.columns.size(), 0);
  const auto value = [&](int column) -> std::int64_t& {
    return point[static_cast<std::size_t>(column)];
  };
  std::map<std::string, std::size_t> pool_of;
  for (std::size_t pool = 0; pool < pools_.size(); ++pool) {
    for (const std::size_t lot : pools_[pool].lots) pool_of[c_.lots[lot].source->id] = pool;
  }
  std::map<std::pair<std::size_t, std::size_t>, std::int64_t> opened;  // (pool, meal)
  for (const Opened& each : plan.opened) {
    const auto pool = pool_of.find(each.lot);
    if (pool != pool_of.end()) opened[{pool->second, c_.meal_of(each.meal)}] += each.units;
  }
  for (const Opening& opening : openings_) {
    const auto found = opened.find({opening.pool, opening.meal});
    if (found != opened.end()) value(opening.column) = found->second;
  }
  for (const MealServing& each : plan.servings) {
    const std::size_t meal = c_.meal_of(each.meal);
    const std::size_t eater = c_.eater_of(each.eater);
    if (meal == c_.meals.size() || eater == c_.eaters.size()) continue;
    const auto column = served_.find({c_.product_of(each.product), c_.seat_of(meal, eater)});
    if (column != served_.end()) value(column->second) = each.servings;
  }
  std::vector<std::int64_t> before;
  for (const CompiledEat::Lot& lot : c_.open_lots) before.push_back(lot.units);
  for (std::size_t product = 0; product < c_.products.size(); ++product)
    fill_in(product, before, point);
  for (const Short& each : shorts_)
    value(each.column) = std::max<std::int64_t>(0, each.wanted - value(each.serving));
  return point;
}

// The columns that follow from what is opened and eaten: soonest dated of the units that were open
// before, then oldest first.
void EatModel::fill_in(std::size_t product, std::vector<std::int64_t>& before,
                       MipPoint& point) const {
  const auto value = [&](int column) -> std::int64_t& {
    return point[static_cast<std::size_t>(column)];
  };
  const CompiledEat::Product& of = c_.products[product];
  const std::vector<Slot>& slots = slots_[product];
  std::deque<std::pair<std::int64_t, std::int64_t>> open;  // last day, servings
  std::int64_t so_far = 0;
  for (std::size_t k = 0; k < slots.size(); ++k) {
    const Slot& slot = slots[k];
    const std::int64_t day = c_.meals[slot.meal].day;
    std::int64_t wanted = 0, units = 0;
    for (const std::size_t serving : slot.servings) wanted += value(servings_[serving].column);
    for (const std::size_t opening : slot.openings) units += value(openings_[opening].column);
    for (const std::size_t from : slot.from_open) {
      const FromOpen& each = from_open_[from];
      const std::int64_t taken = std::min(wanted, before[each.lot]);
      value(each.column) = taken;
      before[each.lot] -= taken;
      wanted -= taken;
    }
    if (slot.fresh >= 0) value(slot.fresh) = wanted > 0 ? 1 : 0;
    if (of.open_days == 0) continue;
    while (!open.empty() && open.front().first < day) open.pop_front();
    if (units > 0) open.emplace_back(day + of.open_days, units * of.servings);
    for (auto& [through, left] : open) {
      const std::int64_t taken = std::min(wanted, left);
      left -= taken;
      wanted -= taken;
    }
    so_far += units;
    value(slot.so_far) = so_far;
    if (slot.carried < 0) continue;
    for (const auto& [through, left] : open) {
      if (through >= c_.meals[slots[k + 1].meal].day) value(slot.carried) += left;
    }
  }
}

EatDownPlan EatModel::plan_of(const MipPoint& point) const {
  const auto value = [&](int column) { return point[static_cast<std::size_t>(column)]; };
  EatDownPlan plan;
  std::vector<std::vector<const Opening*>> of_pool(pools_.size());
  for (const Opening& opening : openings_) {
    if (value(opening.column) > 0) of_pool[opening.pool].push_back(&opening);
  }
  std::vector<std::int64_t> left;
  for (const CompiledEat::Lot& lot : c_.lots) left.push_back(lot.units);
  for (std::size_t pool = 0; pool < pools_.size(); ++pool) {
    std::sort(of_pool[pool].begin(), of_pool[pool].end(),
              [](const Opening* a, const Opening* b) { return a->meal < b->meal; });
    auto lot = pools_[pool].lots.begin();
    for (const Opening* opening : of_pool[pool]) {
      std::int64_t units = value(opening->column);
      while (units > 0 && lot != pools_[pool].lots.end()) {
        const std::int64_t taken = std::min(units, left[*lot]);
        if (taken > 0)
          plan.opened.push_back(
              {c_.lots[*lot].source->id, c_.meals[opening->meal].source->id, taken});
        units -= taken;
        left[*lot] -= taken;
        if (left[*lot] == 0) ++lot;
      }
    }
  }
  for (const Serving& serving : servings_) {
    if (value(serving.column) <= 0) continue;
    plan.servings.push_back({c_.products[serving.product].source->id,
                             c_.meals[serving.meal].source->id,
                             c_.eaters[c_.seats[serving.seat].eater]->id, value(serving.column)});
  }
  std::map<std::string, std::int64_t> opened;
  for (const Opened& each : plan.opened) opened[each.lot] += each.units;
  for (const EatLot& lot : problem_.lots) {
    if (lot.already_open || lot.last_good_day >= c_.end) continue;
    const auto found = opened.find(lot.id);
    const std::int64_t rest = lot.units - (found == opened.end() ? 0 : found->second);
    const bool donate =
        lot.may_donate && lot.last_good_day - problem_.today >= problem_.donate_days;
    if (rest > 0) (donate ? plan.donated : plan.wasted).push_back({lot.id, rest});
  }
  const auto by_lot = [](const LotUnits& a, const LotUnits& b) { return a.lot < b.lot; };
  std::sort(plan.donated.begin(), plan.donated.end(), by_lot);
  std::sort(plan.wasted.begin(), plan.wasted.end(), by_lot);
  std::map<std::string, std::size_t> rank;
  for (std::size_t meal = 0; meal < c_.meals.size(); ++meal) rank[c_.meals[meal].source->id] = meal;
  std::sort(plan.opened.begin(), plan.opened.end(), [&](const Opened& a, const Opened& b) {
    return std::pair(rank.at(a.meal), a.lot) < std::pair(rank.at(b.meal), b.lot);
  });
  std::sort(plan.servings.begin(), plan.servings.end(),
            [&](const MealServing& a, const MealServing& b) {
              return std::tuple(rank.at(a.meal), a.eater, a.product) <
                     std::tuple(rank.at(b.meal), b.eater, b.product);
            });
  return plan;
}

}  // namespace larderloop::plan
