#include "plan/table.h"

#include <algorithm>

namespace larderloop::plan {

Table::Table(const CompiledEat& problem)
    : from_open(problem.open_lots.size()),
      first_opening(problem.products.size(), 0),
      problem_(problem),
      seat_at_(problem.meals.size() * problem.eaters.size(), problem.seats.size()),
      seat_left_(seat_at_.size(), 0),
      week_left_(problem.week_limit),
      product_left_(problem.product_limit) {
  for (const CompiledEat::Lot& lot : problem.lots) units_left.push_back(lot.units);
  for (std::size_t seat = 0; seat < problem.seats.size(); ++seat) {
    const CompiledEat::Seat& at = problem.seats[seat];
    seat_at_[at.meal * problem.eaters.size() + at.eater] = seat;
    seat_left_[at.meal * problem.eaters.size() + at.eater] = at.appetite;
  }
}

std::int64_t Table::room(std::size_t seat, std::size_t product) const {
  work_ += 1;
  const CompiledEat::Seat& at = problem_.seats[seat];
  if (!problem_.will_eat(product, at.eater)) return 0;
  const std::size_t week = problem_.meals[at.meal].week;
  const std::size_t eaters = problem_.eaters.size();
  return std::min({seat_left_[at.meal * eaters + at.eater], week_left_[week * eaters + at.eater],
                   product_left_[(week * problem_.products.size() + product) * eaters + at.eater]});
}

bool Table::week_has_room(std::size_t week, std::size_t product) const {
  const std::size_t eaters = problem_.eaters.size();
  work_ += 1;
  for (std::size_t eater = 0; eater < eaters; ++eater) {
    if (week_left_[week * eaters + eater] > 0 && problem_.will_eat(product, eater) &&
        product_left_[(week * problem_.products.size() + product) * eaters + eater] > 0) {
      return true;
    }
  }
  return false;
}

void Table::eat(std::size_t seat, std::size_t product, std::int64_t servings) {
  const CompiledEat::Seat& at = problem_.seats[seat];
  const std::size_t week = problem_.meals[at.meal].week;
  const std::size_t eaters = problem_.eaters.size();
  seat_left_[at.meal * eaters + at.eater] -= servings;
  week_left_[week * eaters + at.eater] -= servings;
  product_left_[(week * problem_.products.size() + product) * eaters + at.eater] -= servings;
}

std::int64_t Table::serve(std::size_t meal, std::size_t product, std::int64_t wanted,
                          const Rank& rank, Helpings& helpings) {
  const std::size_t eaters = problem_.eaters.size(), week = problem_.meals[meal].week;
  std::int64_t* const seat_left = seat_left_.data() + meal * eaters;
  std::int64_t* const week_left = week_left_.data() + week * eaters;
  std::int64_t* const product_left =
      product_left_.data() + (week * problem_.products.size() + product) * eaters;
  std::int64_t served = 0;
  for (const std::size_t eater : rank[product]) {
    work_ += 1;
    const std::int64_t servings =
        std::min({wanted - served, seat_left[eater], week_left[eater], product_left[eater]});
    if (servings <= 0) continue;
    seat_left[eater] -= servings;
    week_left[eater] -= servings;
    product_left[eater] -= servings;
    helpings.emplace_back(seat_at_[meal * eaters + eater], servings);
    served += servings;
    if (served == wanted) break;
  }
  return served;
}

void Table::fill(OpenedUnit& unit, const Rank& rank) {
  const std::size_t product = problem_.lots[unit.lot].product;
  const CompiledEat::Product& of = problem_.products[product];
  const std::int64_t through = problem_.meals[unit.meal].day + of.open_days;
  for (std::size_t meal = unit.meal; meal < problem_.meals.size() && unit.eaten < of.servings;
       ++meal) {
    if (meal > unit.meal && (of.open_days == 0 || problem_.meals[meal].day > through)) break;
    if (!problem_.suits(product, meal)) continue;
    unit.eaten += serve(meal, product, of.servings - unit.eaten, rank, unit.helpings);
    if (unit.eaten == 0) break;  // nothing is opened without a serving eaten from it at once
  }
}

void Table::take_back(OpenedUnit& unit) {
  for (const auto& [seat, servings] : unit.helpings)
    eat(seat, problem_.lots[unit.lot].product, -servings);
}

void Table::put_back(OpenedUnit& unit) {
  for (const auto& [seat, servings] : unit.helpings)
    eat(seat, problem_.lots[unit.lot].product, servings);
}

std::optional<OpenedUnit> Table::place(std::size_t lot, bool whole_only, const Rank& rank) {
  const CompiledEat::Lot& of = problem_.lots[lot];
  const std::int64_t servings = problem_.products[of.product].servings;
  std::optional<OpenedUnit> best;
  std::size_t checked_week = problem_.weeks();
  std::size_t meal = std::max(problem_.first_meal(of.from), first_opening[of.product]);
  while (meal < problem_.meals.size() && problem_.meals[meal].day <= of.last) {
    const std::size_t week = problem_.meals[meal].week;
    if (week != checked_week) {
      checked_week = week;
      if (!week_has_room(week, of.product)) {
        meal = problem_.week_end(week);
        continue;
      }
    }
    if (problem_.suits(of.product, meal)) {
      OpenedUnit unit;
      unit.lot = lot;
      unit.meal = meal;
      fill(unit, rank);
      if (unit.eaten == servings) return unit;
      take_back(unit);
      if (unit.eaten > (best ? best->eaten : 0)) best = std::move(unit);
    }
    meal += 1;
  }
  if (whole_only || !best) return std::nullopt;
  put_back(*best);
  return best;
}

}  // namespace larderloop::plan
