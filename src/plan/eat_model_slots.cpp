// The columns of the eat-down model: what can be opened and eaten of a product, slot by slot.
#include "plan/eat_model.h"

#include <algorithm>
#include <optional>
#include <set>
#include <string>

namespace larderloop::plan {
namespace {

std::string numbered(const char* prefix, std::size_t a, std::size_t b) {
  return std::string(prefix) + std::to_string(a) + "_" + std::to_string(b);
}

}  // namespace

std::int64_t EatModel::most_at(std::size_t product, std::size_t seat) const {
  const CompiledEat::Seat& at = c_.seats[seat];
  if (!c_.will_eat(product, at.eater)) return 0;
  const std::size_t week = c_.meals[at.meal].week;
  return std::min(
      {at.appetite, c_.week_limit[week * c_.eaters.size() + at.eater],
       c_.product_limit[(week * c_.products.size() + product) * c_.eaters.size() + at.eater]});
}

// Collects the meals of a slot before its columns are made.
class EatModel::SlotMaker {
 public:
  SlotMaker(EatModel& model, std::size_t product) : model_(model), product_(product) {}

  struct Taker {
    std::int64_t most = 0, at_once = 0;
  };

  void add(std::size_t meal, const std::vector<std::pair<std::size_t, std::int64_t>>& takers,
           const std::vector<std::size_t>& from, const std::vector<std::size_t>& before) {
    const std::int64_t day = model_.c_.meals[meal].day;
    const std::size_t block = model_.blocks_.block_of[meal];
    if (takers_.empty()) {
      slot_.block = block;
      slot_.first_day = day;
      slot_.single = model_.blocks_.single(block);
    }
    slot_.last_day = day;
    std::int64_t here = 0;
    for (const auto& [seat, servings] : takers) {
      Taker& taker = takers_[model_.blocks_.seat_block[seat]];
      taker.most = std::min(CompiledEat::kMost, taker.most + servings);
      taker.at_once = std::max(taker.at_once, servings);
      here = std::min(CompiledEat::kMost, here + servings);
    }
    slot_.at_once = std::max(slot_.at_once, here);
    for (const std::size_t pool : from) openings_.try_emplace({block, pool}, day);
    for (const std::size_t lot : before) from_open_.insert({block, lot});
  }

  std::optional<Slot> make() {
    if (takers_.empty()) return std::nullopt;
    const CompiledEat& c = model_.c_;
    std::map<std::size_t, std::int64_t> most;  // by block
    for (auto& [seat, taker] : takers_) {
      const BlockSeat& at = model_.blocks_.seats[seat];
      const std::size_t week = model_.blocks_.blocks[at.block].week;
      taker.most = std::min(
          {taker.most, c.week_limit[week * c.eaters.size() + at.eater],
           c.product_limit[(week * c.products.size() + product_) * c.eaters.size() + at.eater]});
      std::int64_t& sum = most[at.block];
      sum = std::min(CompiledEat::kMost, sum + taker.most);
      slot_.most = std::min(CompiledEat::kMost, slot_.most + taker.most);
    }
    for (const auto& [key, day] : openings_) {
      const auto [block, pool] = key;
      const std::int64_t limit = std::min(model_.pools_[pool].units, most[block]);
      slot_.openings.push_back(model_.openings_.size());
      model_.openings_.push_back(
          {pool, block, day, model_.mip_.add_column(numbered("x", pool, block), 0, limit, 0)});
    }
    for (const auto& [seat, taker] : takers_) {
      slot_.servings.push_back(model_.servings_.size());
      const int column = model_.mip_.add_column(numbered("z", product_, seat), 0, taker.most, 1);
      model_.servings_.push_back({product_, seat, taker.at_once, column});
      model_.served_[{product_, seat}] = column;
    }
    for (const auto& [block, lot] : from_open_) {
      slot_.from_open.push_back(model_.from_open_.size());
      const std::int64_t limit = std::min(c.open_lots[lot].units, most[block]);
      model_.from_open_.push_back(
          {lot, block, model_.mip_.add_column(numbered("y", lot, block), 0, limit, 1)});
    }
    return std::move(slot_);
  }

 private:
  EatModel& model_;
  std::size_t product_;
  Slot slot_;
  std::map<std::size_t, Taker> takers_;  // by seat of the blocks
  std::map<std::pair<std::size_t, std::size_t>, std::int64_t> openings_;
  std::set<std::pair<std::size_t, std::size_t>> from_open_;
};

// A meal belongs to a slot when something of the product can be eaten there: from a unit opened
// there or, while it keeps, before, or from one that was open before today.
void EatModel::make_slots(std::size_t product, const Support* only) {
  if (pools_of_[product].empty() &&
      std::none_of(c_.open_lots.begin(), c_.open_lots.end(),
                   [&](const auto& lot) { return lot.product == product; }))
    return;
  const CompiledEat::Product& of = c_.products[product];
  std::int64_t fresh_through = c_.today - 1;  // a unit opened so far keeps through this day
  std::map<std::size_t, SlotMaker>
      makers;  // by block or group, which follow each other as their first meals do
  std::vector<std::size_t> order;
  for (std::size_t meal = 0; meal < c_.meals.size(); ++meal) {
    if (!c_.suits(product, meal)) continue;
    const std::int64_t day = c_.meals[meal].day;
    std::vector<std::pair<std::size_t, std::int64_t>> takers;
    for (std::size_t seat = c_.meals[meal].seats_begin; seat < c_.meals[meal].seats_end; ++seat) {
      if (only != nullptr && (*only)[product * c_.seats.size() + seat] == 0) continue;
      const std::int64_t servings = most_at(product, seat);
      if (servings > 0) takers.emplace_back(seat, servings);
    }
    if (takers.empty()) continue;
    std::vector<std::size_t> from, before;
    for (const std::size_t pool : pools_of_[product]) {
      if (pools_[pool].from <= day && day <= pools_[pool].last) from.push_back(pool);
    }
    for (std::size_t lot = 0; lot < c_.open_lots.size(); ++lot) {
      const CompiledEat::Lot& open = c_.open_lots[lot];
      if (open.product == product && open.units > 0 && open.from <= day && day <= open.last)
        before.push_back(lot);
    }
    if (!from.empty()) fresh_through = std::max(fresh_through, day + of.open_days);
    if (day > fresh_through && before.empty()) continue;
    const std::size_t block = blocks_.block_of[meal];
    const std::size_t key = of.open_days > 0 ? blocks_.blocks[block].group : block;
    if (makers.try_emplace(key, *this, product).second) order.push_back(key);
    makers.at(key).add(meal, takers, from, before);
  }
  for (const std::size_t key : order) {
    if (auto slot = makers.at(key).make()) slots_[product].push_back(std::move(*slot));
  }
}

}  // namespace larderloop::plan
