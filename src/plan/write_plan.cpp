#include "plan/write_plan.h"

#include <algorithm>
#include <deque>
#include <map>
#include <optional>

namespace larderloop::plan {
namespace {

using Openings =
    std::map<std::pair<std::size_t, std::size_t>, std::int64_t>;  // (meal, lot) -> units

// Openings of one product at the last moment that still serves every helping; nothing when a date
// would be passed.
std::optional<Openings> as_needed(const CompiledEat& c, std::size_t product,
                                  const std::vector<const OpenedUnit*>& units) {
  const CompiledEat::Product& of = c.products[product];
  std::map<std::size_t, std::int64_t> servings;  // by meal
  std::map<std::size_t, std::int64_t> closed;    // by lot, soonest date first
  for (const OpenedUnit* unit : units) {
    closed[unit->lot] += 1;
    for (const auto& [seat, eaten] : unit->helpings) servings[c.seats[seat].meal] += eaten;
  }
  Openings openings;
  std::deque<std::pair<std::int64_t, std::int64_t>> open;  // last day, servings left
  for (auto [meal, wanted] : servings) {
    const std::int64_t day = c.meals[meal].day;
    while (!open.empty() && open.front().first < day) open.pop_front();
    while (wanted > 0) {
      if (open.empty()) {
        auto lot = std::find_if(closed.begin(), closed.end(), [&](const auto& each) {
          return each.second > 0 && c.lots[each.first].from <= day &&
                 day <= c.lots[each.first].last;
        });
        if (lot == closed.end()) return std::nullopt;
        lot->second -= 1;
        openings[{meal, lot->first}] += 1;
        open.emplace_back(day + of.open_days, of.servings);
      }
      const std::int64_t taken = std::min(wanted, open.front().second);
      wanted -= taken;
      open.front().second -= taken;
      if (open.front().second == 0) open.pop_front();
    }
  }
  return openings;
}

}  // namespace

EatDownPlan write_plan(const Table& table, const EatDownProblem& problem) {
  const CompiledEat& c = table.problem();
  std::map<std::pair<std::size_t, std::size_t>, std::int64_t> eaten;  // (seat, product)
  std::map<std::size_t, std::vector<const OpenedUnit*>> by_product;
  for (const OpenedUnit& unit : table.units) {
    if (!unit.live) continue;
    by_product[c.lots[unit.lot].product].push_back(&unit);
    for (const auto& [seat, servings] : unit.helpings)
      eaten[{seat, c.lots[unit.lot].product}] += servings;
  }
  for (std::size_t lot = 0; lot < c.open_lots.size(); ++lot) {
    for (const auto& [seat, servings] : table.from_open[lot])
      eaten[{seat, c.open_lots[lot].product}] += servings;
  }

  EatDownPlan plan;
  Openings openings;
  for (const auto& [product, units] : by_product) {
    std::optional<Openings> needed;
    if (c.products[product].open_days > 0) needed = as_needed(c, product, units);
    if (needed) {
      openings.insert(needed->begin(), needed->end());
    } else {
      for (const OpenedUnit* unit : units) openings[{unit->meal, unit->lot}] += 1;
    }
  }
  std::map<const EatLot*, std::int64_t> opened;
  for (const auto& [key, units] : openings) {
    const EatLot* lot = c.lots[key.second].source;
    plan.opened.push_back({lot->id, c.meals[key.first].source->id, units});
    opened[lot] += units;
  }
  std::map<std::string, std::size_t> position;
  for (std::size_t meal = 0; meal < c.meals.size(); ++meal)
    position[c.meals[meal].source->id] = meal;
  std::sort(plan.opened.begin(), plan.opened.end(), [&](const Opened& a, const Opened& b) {
    return std::pair(position[a.meal], a.lot) < std::pair(position[b.meal], b.lot);
  });
  for (const auto& [key, servings] : eaten) {
    const CompiledEat::Seat& seat = c.seats[key.first];
    plan.servings.push_back({c.products[key.second].source->id, c.meals[seat.meal].source->id,
                             c.eaters[seat.eater]->id, servings});
  }
  for (const EatLot& lot : problem.lots) {
    if (lot.already_open || lot.last_good_day >= c.end) continue;
    const std::int64_t left = lot.units - opened[&lot];
    if (left <= 0) continue;
    const bool donate = lot.may_donate && lot.last_good_day - problem.today >= problem.donate_days;
    (donate ? plan.donated : plan.wasted).push_back({lot.id, left});
  }
  const auto by_id = [](const LotUnits& a, const LotUnits& b) { return a.lot < b.lot; };
  std::sort(plan.donated.begin(), plan.donated.end(), by_id);
  std::sort(plan.wasted.begin(), plan.wasted.end(), by_id);
  return plan;
}

}  // namespace larderloop::plan
