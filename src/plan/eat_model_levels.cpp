// The levels of the eat-down model, in order.
#include "plan/eat_model.h"

#include <algorithm>

namespace larderloop::plan {
namespace {

constexpr std::int64_t kMostLateDays = 10'000;

}  // namespace

void EatModel::add_levels() {
  if (!problem_.wished.empty()) add_not_served("wishes", problem_.wished, false);
  if (problem_.keep_published) add_not_served("dropped", problem_.published, true);

  MipLevel wasted{"wasted", 0, {}}, donated{"donated", 0, {}}, dislike{"dislike", 0, {}},
      late{"late", 0, {}}, order{"order", 0, {}};
  for (const CompiledEat::Lot& lot : c_.lots) {
    (lot.donatable ? donated : wasted).constant += lot.units * c_.products[lot.product].servings;
  }
  for (const CompiledEat::Lot& lot : c_.open_lots) wasted.constant += lot.units;
  for (const Opening& opening : openings_) {
    const Pool& pool = pools_[opening.pool];
    const std::int64_t servings = c_.products[pool.product].servings;
    if (pool.donatable) {
      wasted.terms.push_back({opening.column, servings});
      donated.terms.push_back({opening.column, -servings});
    }
    const std::int64_t late_by = std::clamp<std::int64_t>(problem_.late_days, 0, kMostLateDays) -
                                 (pool.last - opening.first_day);
    if (late_by > 0) late.terms.push_back({opening.column, servings * late_by});
    const std::int64_t by_week = (opening.first_day - c_.today) * (1 + (c_.end - pool.last) / 7);
    if (by_week != 0) order.terms.push_back({opening.column, servings * by_week});
  }
  for (const Serving& serving : servings_) {
    wasted.terms.push_back({serving.column, -1});
    const int points = 2 - c_.rating(serving.product, blocks_.seats[serving.seat].eater);
    if (points != 0) dislike.terms.push_back({serving.column, points});
  }
  mip_.levels.push_back(std::move(wasted));
  mip_.levels.push_back(std::move(donated));
  mip_.levels.push_back(std::move(dislike));
  mip_.levels.push_back(std::move(late));
  add_changed();
  mip_.levels.push_back(std::move(order));
}

// Servings listed, by column; those that no column can serve are counted in `impossible`, those of
// meals that are over or gone not at all.
std::map<int, std::int64_t> EatModel::listed(const std::vector<MealServing>& servings,
                                             bool published, std::int64_t& impossible) const {
  std::map<int, std::int64_t> wanted;
  impossible = 0;
  for (const MealServing& line : servings) {
    const std::size_t meal = c_.meal_of(line.meal);
    if (meal == c_.meals.size() ||
        (published && c_.meals[meal].source->day > problem_.published_until))
      continue;
    const std::size_t product = c_.product_of(line.product);
    const std::size_t eater = c_.eater_of(line.eater);
    const std::int64_t amount = std::clamp<std::int64_t>(line.servings, 0, CompiledEat::kMost);
    const std::size_t seat = eater == c_.eaters.size() ? c_.seats.size() : c_.seat_of(meal, eater);
    const auto column = product == c_.products.size() || seat == c_.seats.size()
                            ? served_.end()
                            : served_.find({product, blocks_.seat_block[seat]});
    if (column == served_.end()) {
      impossible += amount;
    } else {
      std::int64_t& sum = wanted[column->second];
      sum = std::min(CompiledEat::kMost, sum + amount);
    }
  }
  return wanted;
}

// max(0, wanted - served); its column is shared by all levels that ask for the same.
int EatModel::short_of(int served, std::int64_t wanted) {
  for (const Short& known : shorts_) {
    if (known.serving == served && known.wanted == wanted) return known.column;
  }
  const std::string number = std::to_string(shorts_.size());
  const int missing = mip_.add_column("s" + number, 0, wanted, 2);
  mip_.add_row("short" + number, wanted, MipRow::kNone, {{missing, 1}, {served, 1}});
  shorts_.push_back({missing, served, wanted});
  return missing;
}

void EatModel::add_not_served(const char* name, const std::vector<MealServing>& servings,
                              bool published) {
  MipLevel level{name, 0, {}};
  for (const auto& [column, wanted] : listed(servings, published, level.constant)) {
    level.terms.push_back({short_of(column, wanted), 1});
  }
  mip_.levels.push_back(std::move(level));
}

// |served - published| = served - published + 2 max(0, published - served).
void EatModel::add_changed() {
  MipLevel level{"changed", 0, {}};
  const auto wanted = listed(problem_.published, true, level.constant);
  for (const Serving& serving : servings_) {
    const EatBlock& block = blocks_.blocks[blocks_.seats[serving.seat].block];
    if (c_.meals[block.meals.front()].source->day <= problem_.published_until)
      level.terms.push_back({serving.column, 1});
  }
  for (const auto& [column, amount] : wanted) {
    level.constant -= amount;
    level.terms.push_back({short_of(column, amount), 2});
  }
  mip_.levels.push_back(std::move(level));
}

}  // namespace larderloop::plan
