// Rows about open units: nothing is opened without a serving eaten from it at once, and nothing is
// eaten that is not open.
#include "plan/eat_model.h"

#include <algorithm>
#include <set>

namespace larderloop::plan {
namespace {

void append(std::vector<MipTerm>& terms, const std::vector<MipTerm>& more, std::int64_t factor) {
  for (const MipTerm& term : more) terms.push_back({term.column, factor * term.factor});
}

}  // namespace

// Servings here from units the plan opens: all that is eaten less what comes from units opened
// before today.
std::vector<MipTerm> EatModel::fresh(const Slot& slot) const {
  std::vector<MipTerm> terms;
  for (const std::size_t serving : slot.servings) terms.push_back({servings_[serving].column, 1});
  for (const std::size_t from : slot.from_open) terms.push_back({from_open_[from].column, -1});
  return terms;
}

std::vector<MipTerm> EatModel::opened(const Slot& slot) const {
  std::vector<MipTerm> terms;
  for (const std::size_t opening : slot.openings) terms.push_back({openings_[opening].column, 1});
  return terms;
}

// Units opened before today come first: where anything is eaten from a newly opened one, those at
// hand are eaten up. Asked of single meals only.
void EatModel::add_open_lot_rows(std::size_t product) {
  std::map<std::size_t, std::vector<MipTerm>> so_far;  // by lot
  for (Slot& slot : slots_[product]) {
    if (slot.from_open.empty()) continue;
    const std::string at = std::to_string(product) + "_" + std::to_string(slot.block);
    const std::vector<MipTerm> eaten = fresh(slot);
    mip_.add_row("less" + at, 0, MipRow::kNone, eaten);
    if (!slot.single) continue;
    slot.fresh = mip_.add_column("w" + at, 0, 1, 0);
    std::vector<MipTerm> only_then = eaten;
    only_then.push_back({slot.fresh, -slot.most});
    mip_.add_row("only" + at, MipRow::kNone, 0, std::move(only_then));
    for (const std::size_t from : slot.from_open) {
      const FromOpen& each = from_open_[from];
      std::vector<MipTerm>& terms = so_far[each.lot];
      terms.push_back({each.column, 1});
      std::vector<MipTerm> used_up = terms;
      used_up.push_back({slot.fresh, -c_.open_lots[each.lot].units});
      mip_.add_row("up" + std::to_string(each.lot) + "_" + std::to_string(slot.block), 0,
                   MipRow::kNone, std::move(used_up));
    }
  }
}

// Units finished at the meal they are opened at.
void EatModel::add_unit_rows(std::size_t product) {
  const std::int64_t servings = c_.products[product].servings;
  for (const Slot& slot : slots_[product]) {
    const std::string at = std::to_string(product) + "_" + std::to_string(slot.block);
    const std::vector<MipTerm> opens = opened(slot);
    const std::vector<MipTerm> eats = fresh(slot);
    std::vector<MipTerm> row = eats;
    append(row, opens, -1);
    mip_.add_row("eat" + at, 0, servings == 1 ? 0 : MipRow::kNone, std::move(row));
    if (servings == 1) continue;
    std::vector<MipTerm> from = eats;
    append(from, opens, -std::min(servings, slot.at_once));
    mip_.add_row("from" + at, MipRow::kNone, 0, std::move(from));
    if (!slot.from_open.empty()) continue;
    for (const std::size_t serving :
         slot.servings) {  // valid, and makes the relaxation much tighter
      const int column = servings_[serving].column;
      std::vector<MipTerm> tight{{column, 1}};
      append(tight, opens, -servings_[serving].at_once);
      mip_.add_row("tight" + at + "_" + std::to_string(column), MipRow::kNone, 0, std::move(tight));
    }
  }
}

// What the seats of the slots that a unit opened at `first` may serve can take.
std::int64_t EatModel::window_most(std::size_t product, std::size_t first) const {
  const std::vector<Slot>& slots = slots_[product];
  const std::int64_t through = slots[first].last_day + c_.products[product].open_days;
  std::map<std::pair<std::size_t, std::size_t>, std::int64_t> by_week;  // (week, eater)
  for (std::size_t k = first; k < slots.size() && slots[k].first_day <= through; ++k) {
    for (const std::size_t serving : slots[k].servings) {
      const BlockSeat& seat = blocks_.seats[servings_[serving].seat];
      by_week[{blocks_.blocks[seat.block].week, seat.eater}] += upper(servings_[serving].column);
    }
  }
  std::int64_t sum = 0;
  for (const auto& [key, most] : by_week) {
    const std::size_t at = key.first * c_.eaters.size() + key.second;
    const std::size_t alike =
        (key.first * c_.products.size() + product) * c_.eaters.size() + key.second;
    sum = std::min(CompiledEat::kMost,
                   sum + std::min({most, c_.week_limit[at], c_.product_limit[alike]}));
  }
  return sum;
}

// Units that keep: servings are carried from one meal to the next, oldest first, in units that are
// still good there. Windows of openings are differences of `o`, the units opened so far, so that
// their rows stay short.
void EatModel::add_carrying_rows(std::size_t product) {
  std::vector<Slot>& slots = slots_[product];
  const CompiledEat::Product& of = c_.products[product];
  // Does a unit opened in the one slot still serve in the other?
  const auto keeps = [&](std::size_t from, std::size_t to) {
    return slots[from].last_day + of.open_days >= slots[to].first_day;
  };
  std::vector<int> so_far;  // by slot
  std::int64_t all_units = 0, most_so_far = 0;
  for (const std::size_t pool : pools_of_[product])
    all_units = std::min(CompiledEat::kMost, all_units + pools_[pool].units);
  std::vector<MipTerm> all_eaten, all_useful;
  std::size_t first_alive = 0;  // oldest slot whose units still serve this one
  for (std::size_t k = 0; k < slots.size(); ++k) {
    Slot& slot = slots[k];
    const std::string at = std::to_string(product) + "_" + std::to_string(slot.block);
    const std::vector<MipTerm> opens = opened(slot);
    const std::vector<MipTerm> eats = fresh(slot);
    most_so_far = std::min(all_units, most_so_far + slot.most);
    slot.so_far = mip_.add_column("o" + at, 0, most_so_far, 2);
    so_far.push_back(slot.so_far);
    std::vector<MipTerm> counts{{so_far[k], 1}};
    append(counts, opens, -1);
    if (k > 0) counts.push_back({so_far[k - 1], -1});
    mip_.add_row("count" + at, 0, 0, std::move(counts));

    std::vector<MipTerm> at_once = eats;  // nothing opened without a serving eaten
    append(at_once, opens, -1);
    mip_.add_row("eat" + at, 0, MipRow::kNone, std::move(at_once));

    while (!keeps(first_alive, k)) ++first_alive;
    // Units opened in [first_alive, k] serve here.
    const auto alive = [&](std::vector<MipTerm>& terms, std::size_t from, std::int64_t factor) {
      terms.push_back({so_far[k], factor});
      if (from > 0) terms.push_back({so_far[from - 1], -factor});
    };
    std::vector<MipTerm> balance = eats;  // eaten + carried on <= carried here + opened
    append(balance, opens, -of.servings);
    if (k > 0 && slots[k - 1].carried >= 0) balance.push_back({slots[k - 1].carried, -1});
    if (k + 1 < slots.size()) {
      std::size_t from = first_alive;
      while (from <= k && !keeps(from, k + 1)) ++from;
      if (from <= k) {
        slot.carried = mip_.add_column("c" + at, 0,
                                       std::min(CompiledEat::kMost, most_so_far * of.servings), 2);
        balance.push_back({slot.carried, 1});
        std::vector<MipTerm> carry{{slot.carried, 1}};
        alive(carry, from, -of.servings);
        mip_.add_row("carry" + at, MipRow::kNone, 0, std::move(carry));
      }
    }
    mip_.add_row("from" + at, MipRow::kNone, 0, std::move(balance));

    for (const std::size_t serving : slot.servings) {
      if (!slot.from_open.empty()) break;
      const int column = servings_[serving].column;
      std::vector<MipTerm> tight{{column, 1}};
      alive(tight, first_alive, -upper(column));
      mip_.add_row("tight" + at + "_" + std::to_string(column), MipRow::kNone, 0, std::move(tight));
    }
    append(all_eaten, eats, 1);
    if (!opens.empty()) append(all_useful, opens, -std::min(of.servings, window_most(product, k)));
  }
  // Of a unit at most what its window can take is eaten.
  append(all_eaten, all_useful, 1);
  if (!all_eaten.empty())
    mip_.add_row("useful" + std::to_string(product), MipRow::kNone, 0, std::move(all_eaten));
}

}  // namespace larderloop::plan
