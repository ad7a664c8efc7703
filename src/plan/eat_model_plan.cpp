// Plans into points of the model and back.
#include "plan/eat_model.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <tuple>

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
  std::map<std::pair<std::size_t, std::size_t>, std::int64_t> opened;  // (pool, block)
  for (const Opened& each : plan.opened) {
    const auto pool = pool_of.find(each.lot);
    const std::size_t meal = c_.meal_of(each.meal);
    if (pool != pool_of.end() && meal < c_.meals.size())
      opened[{pool->second, blocks_.block_of[meal]}] += each.units;
  }
  for (const Opening& opening : openings_) {
    const auto found = opened.find({opening.pool, opening.block});
    if (found != opened.end()) value(opening.column) = found->second;
  }
  for (const MealServing& each : plan.servings) {
    const std::size_t meal = c_.meal_of(each.meal);
    const std::size_t eater = c_.eater_of(each.eater);
    if (meal == c_.meals.size() || eater == c_.eaters.size()) continue;
    const std::size_t seat = c_.seat_of(meal, eater);
    if (seat == c_.seats.size()) continue;
    const auto column = served_.find({c_.product_of(each.product), blocks_.seat_block[seat]});
    if (column != served_.end()) value(column->second) += each.servings;
  }
  take_from_open_lots(plan, point);
  for (std::size_t product = 0; product < c_.products.size(); ++product) fill_in(product, point);
  for (const Short& each : shorts_)
    value(each.column) = std::max<std::int64_t>(0, each.wanted - value(each.serving));
  return point;
}

// What comes from units opened before today: at every meal first, soonest date first.
void EatModel::take_from_open_lots(const EatDownPlan& plan, MipPoint& point) const {
  if (from_open_.empty()) return;
  std::map<std::pair<std::size_t, std::size_t>, int> columns;  // (lot, block)
  for (const FromOpen& each : from_open_) columns[{each.lot, each.block}] = each.column;
  std::map<std::pair<std::size_t, std::size_t>, std::int64_t> eaten;  // (meal, product)
  for (const MealServing& each : plan.servings) {
    const std::size_t meal = c_.meal_of(each.meal);
    if (meal < c_.meals.size()) eaten[{meal, c_.product_of(each.product)}] += each.servings;
  }
  std::vector<std::int64_t> left;
  for (const CompiledEat::Lot& lot : c_.open_lots) left.push_back(lot.units);
  for (auto& [key, wanted] : eaten) {
    const auto [meal, product] = key;
    const std::int64_t day = c_.meals[meal].day;
    for (std::size_t lot = 0; lot < c_.open_lots.size(); ++lot) {
      const CompiledEat::Lot& open = c_.open_lots[lot];
      if (open.product != product || day < open.from || day > open.last) continue;
      const std::int64_t taken = std::min(wanted, left[lot]);
      left[lot] -= taken;
      wanted -= taken;
      const auto column = columns.find({lot, blocks_.block_of[meal]});
      if (column != columns.end()) point[static_cast<std::size_t>(column->second)] += taken;
    }
  }
}

// The columns that follow from what is opened and eaten; as much as can be is carried on.
void EatModel::fill_in(std::size_t product, MipPoint& point) const {
  const auto value = [&](int column) -> std::int64_t& {
    return point[static_cast<std::size_t>(column)];
  };
  const CompiledEat::Product& of = c_.products[product];
  const std::vector<Slot>& slots = slots_[product];
  std::vector<std::int64_t> so_far;
  std::int64_t carried = 0;
  std::size_t alive = 0;
  for (std::size_t k = 0; k < slots.size(); ++k) {
    const Slot& slot = slots[k];
    std::int64_t eaten = 0, units = 0;
    for (const MipTerm& term : fresh(slot)) eaten += term.factor * value(term.column);
    for (const MipTerm& term : opened(slot)) units += term.factor * value(term.column);
    if (slot.fresh >= 0) value(slot.fresh) = eaten > 0 ? 1 : 0;
    if (of.open_days == 0) continue;
    so_far.push_back((k == 0 ? 0 : so_far.back()) + units);
    value(slot.so_far) = so_far.back();
    carried += of.servings * units - eaten;
    if (slot.carried < 0) {
      carried = 0;
      continue;
    }
    while (alive <= k && slots[alive].last_day + of.open_days < slots[k + 1].first_day) ++alive;
    const std::int64_t before = alive == 0 ? 0 : so_far[alive - 1];
    carried = std::clamp<std::int64_t>(of.servings * (so_far.back() - before), 0,
                                       std::max<std::int64_t>(0, carried));
    value(slot.carried) = carried;
  }
}

void EatModel::mark(const MipPoint& point, Support& support) const {
  support.resize(c_.products.size() * c_.seats.size(), 0);
  std::set<std::tuple<std::size_t, std::size_t, std::size_t>> wanted;  // (product, week, eater)
  for (const auto& [key, column] : served_) {
    if (point[static_cast<std::size_t>(column)] <= 0) continue;
    const BlockSeat& seat = blocks_.seats[key.second];
    wanted.insert({key.first, blocks_.blocks[seat.block].week, seat.eater});
  }
  for (std::size_t seat = 0; seat < c_.seats.size(); ++seat) {
    const std::size_t week = c_.meals[c_.seats[seat].meal].week;
    for (std::size_t product = 0; product < c_.products.size(); ++product) {
      if (wanted.count({product, week, c_.seats[seat].eater}) > 0)
        support[product * c_.seats.size() + seat] = 1;
    }
  }
}

Parts EatModel::weeks_of_columns() const {
  Parts parts(mip_.columns.size());
  const auto at = [&](int column) -> Belongs& { return parts[static_cast<std::size_t>(column)]; };
  for (std::size_t product = 0; product < slots_.size(); ++product) {
    for (const Slot& slot : slots_[product]) {
      for (const std::size_t each : slot.openings)
        at(openings_[each].column) = {blocks_.blocks[openings_[each].block].week, product};
      for (const std::size_t each : slot.servings) {
        const std::size_t block = blocks_.seats[servings_[each].seat].block;
        at(servings_[each].column) = {blocks_.blocks[block].week, product};
      }
      for (const std::size_t each : slot.from_open)
        at(from_open_[each].column) = {blocks_.blocks[from_open_[each].block].week, product};
      for (const int column : {slot.so_far, slot.carried}) {
        if (column >= 0) at(column) = {Belongs::kFollows, product};
      }
      if (slot.fresh >= 0) at(slot.fresh) = {blocks_.blocks[slot.block].week, product};
    }
  }
  for (const Short& each : shorts_) at(each.column) = {Belongs::kFollows, at(each.serving).family};
  return parts;
}

EatDownPlan EatModel::plan_of(const MipPoint& point) const {
  const auto value = [&](int column) { return point[static_cast<std::size_t>(column)]; };
  const auto meal_of = [&](std::size_t block) { return blocks_.blocks[block].meals.front(); };
  EatDownPlan plan;
  std::vector<std::vector<const Opening*>> of_pool(pools_.size());
  for (const Opening& opening : openings_) {
    if (value(opening.column) > 0) of_pool[opening.pool].push_back(&opening);
  }
  std::vector<std::int64_t> left;
  for (const CompiledEat::Lot& lot : c_.lots) left.push_back(lot.units);
  for (std::size_t pool = 0; pool < pools_.size(); ++pool) {
    std::sort(of_pool[pool].begin(), of_pool[pool].end(),
              [](const Opening* a, const Opening* b) { return a->block < b->block; });
    auto lot = pools_[pool].lots.begin();
    for (const Opening* opening : of_pool[pool]) {
      std::int64_t units = value(opening->column);
      while (units > 0 && lot != pools_[pool].lots.end()) {
        const std::int64_t taken = std::min(units, left[*lot]);
        if (taken > 0)
          plan.opened.push_back(
              {c_.lots[*lot].source->id, c_.meals[meal_of(opening->block)].source->id, taken});
        units -= taken;
        left[*lot] -= taken;
        if (left[*lot] == 0) ++lot;
      }
    }
  }
  for (const Serving& serving : servings_) {
    if (value(serving.column) <= 0) continue;
    const BlockSeat& seat = blocks_.seats[serving.seat];
    plan.servings.push_back({c_.products[serving.product].source->id,
                             c_.meals[meal_of(seat.block)].source->id, c_.eaters[seat.eater]->id,
                             value(serving.column)});
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
