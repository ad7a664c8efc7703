// Small changes of an eat-down plan. The checker judges what comes out.
#include "app/why_eat.h"

#include <algorithm>
#include <limits>

namespace larderloop::what_if {

std::vector<const plan::EatMeal*> in_order(const plan::EatDownProblem& problem) {
  std::vector<const plan::EatMeal*> meals;
  for (const plan::EatMeal& meal : problem.meals) meals.push_back(&meal);
  std::sort(meals.begin(), meals.end(), [](const plan::EatMeal* a, const plan::EatMeal* b) {
    return std::tie(a->day, a->kind, a->id) < std::tie(b->day, b->kind, b->id);
  });
  return meals;
}

EatEdit::EatEdit(const plan::EatDownProblem& problem, const plan::EatDownPlan& plan)
    : problem_(problem), meals_(in_order(problem)) {
  for (const plan::Eater& eater : problem.eaters) {
    eaters_[eater.id] = &eater;
    for (const auto& [product, servings] : eater.eaten_this_week) {
      in_week_[{0, eater.id}] += servings;
      same_[{0, eater.id, product}] += servings;
    }
  }
  for (const plan::EatProduct& product : problem.products) products_[product.id] = &product;
  for (const plan::EatLot& lot : problem.lots) lots_[lot.id] = &lot;
  for (std::size_t k = 0; k < meals_.size(); ++k) index_[meals_[k]->id] = k;
  for (const plan::MealServing& each : plan.servings)
    add(index_.at(each.meal), each.eater, each.product, each.servings);
  for (const plan::Opened& each : plan.opened)
    opened_[{index_.at(each.meal), each.lot}] += each.units;
  for (const plan::LotUnits& each : plan.donated) donated_[each.lot] += each.units;
  for (const plan::LotUnits& each : plan.wasted) wasted_[each.lot] += each.units;
}

std::int64_t EatEdit::week_of(std::size_t meal) const {
  return (meals_[meal]->day - problem_.week_start) / 7;
}

std::size_t EatEdit::index_of(const std::string& meal) const {
  return index_.at(meal);
}

void EatEdit::add(std::size_t meal, const std::string& eater, const std::string& product,
                  std::int64_t servings) {
  servings_[{meal, eater, product}] += servings;
  at_meal_[{meal, eater}] += servings;
  in_week_[{week_of(meal), eater}] += servings;
  same_[{week_of(meal), eater, product}] += servings;
}

std::vector<std::size_t> EatEdit::take_out(const std::string& lot,
                                           const std::vector<plan::Dealt>& dealt) {
  for (const plan::Dealt& each : dealt) {
    if (each.lot == lot)
      add(index_.at(each.meal), each.eater, lots_.at(lot)->product, -each.servings);
  }
  std::vector<std::size_t> openings;
  for (auto& [at, units] : opened_) {
    if (at.second != lot) continue;
    openings.insert(openings.end(), static_cast<std::size_t>(units), at.first);
    units = 0;
  }
  donated_.erase(lot);
  wasted_.erase(lot);
  return openings;
}

bool EatEdit::suits(const plan::EatMeal& meal, const plan::EatProduct& product) const {
  return product.kinds.count(meal.kind) > 0 && meal.without.count(product.id) == 0;
}

std::int64_t EatEdit::spare(std::size_t meal, const std::string& eater_id,
                            const std::string& product_id) const {
  const plan::EatMeal& at = *meals_[meal];
  const plan::EatProduct& product = *products_.at(product_id);
  const plan::Eater& eater = *eaters_.at(eater_id);
  if (!suits(at, product)) return 0;
  const bool avoids =
      std::any_of(product.contains.begin(), product.contains.end(),
                  [&](const std::string& tag) { return eater.avoid.count(tag) > 0; });
  const auto rating = eater.ratings.find(product_id);
  if (avoids || (rating != eater.ratings.end() && rating->second <= -2)) return 0;
  const auto had = [](const auto& map, const auto& key) {
    const auto found = map.find(key);
    return found == map.end() ? std::int64_t{0} : found->second;
  };
  const std::int64_t week = week_of(meal);
  const std::int64_t left = std::min(
      {at.appetite.of(eater_id, 1) - had(at_meal_, std::pair(meal, eater_id)),
       eater.tolerance.value_or(problem_.tolerance) - had(in_week_, std::pair(week, eater_id)),
       eater.monotony.value_or(problem_.monotony) -
           had(same_, std::tuple(week, eater_id, product_id))});
  return std::max<std::int64_t>(0, left);
}

std::int64_t EatEdit::serve(std::size_t meal, const std::string& product, std::int64_t most) {
  std::vector<std::string> eaters = meals_[meal]->eaters;
  const auto rating = [&](const std::string& eater) {
    const auto found = eaters_.at(eater)->ratings.find(product);
    return found == eaters_.at(eater)->ratings.end() ? 0 : found->second;
  };
  std::stable_sort(eaters.begin(), eaters.end(), [&](const std::string& a, const std::string& b) {
    return rating(a) > rating(b);
  });
  std::int64_t served = 0;
  for (const std::string& eater : eaters) {
    const std::int64_t servings = std::min(most - served, spare(meal, eater, product));
    if (servings <= 0) continue;
    add(meal, eater, product, servings);
    served += servings;
  }
  return served;
}

std::int64_t EatEdit::room(const plan::EatLot& lot, std::size_t meal) const {
  const std::vector<std::string>& eaters = meals_[meal]->eaters;
  if (std::none_of(eaters.begin(), eaters.end(),
                   [&](const std::string& eater) { return spare(meal, eater, lot.product) > 0; }))
    return 0;
  EatEdit copy = *this;
  const plan::EatProduct& product = *products_.at(lot.product);
  const std::int64_t unit = lot.already_open ? lot.open_servings : product.servings;
  std::int64_t served = copy.serve(meal, lot.product, unit);
  const std::int64_t until = lot.already_open       ? lot.last_good_day
                             : product.servings > 1 ? meals_[meal]->day + product.open_days
                                                    : meals_[meal]->day - 1;
  if (!lot.already_open && product.open_days == 0) return served;
  for (std::size_t k = meal + 1; k < meals_.size() && meals_[k]->day <= until && served < unit; ++k)
    served += copy.serve(k, lot.product, unit - served);
  return served;
}

bool EatEdit::put_in(const std::string& lot_id, const std::vector<std::size_t>& openings) {
  const plan::EatLot& lot = *lots_.at(lot_id);
  const plan::EatProduct& product = *products_.at(lot.product);
  const std::int64_t from = std::max(problem_.today, lot.available_from.value_or(problem_.today));
  std::int64_t units = 0;
  for (const std::size_t meal : openings) {
    const std::int64_t day = meals_[meal]->day;
    if (day < from || day > lot.last_good_day || (!lot.already_open && units == lot.units))
      return false;
    units += 1;
    if (!lot.already_open) opened_[{meal, lot_id}] += 1;
    std::int64_t left = lot.already_open ? lot.open_servings : product.servings;
    const std::int64_t first = serve(meal, lot.product, left);
    if (first == 0) return false;
    left -= first;
    const bool keeps = lot.already_open || (product.servings > 1 && product.open_days > 0);
    const std::int64_t until = lot.already_open ? lot.last_good_day : day + product.open_days;
    for (std::size_t k = meal + 1; keeps && left > 0 && k < meals_.size(); ++k) {
      if (meals_[k]->day > until) break;
      left -= serve(k, lot.product, left);
    }
  }
  if (lot.already_open) return true;
  if (lot.units > units) {
    const bool gives = lot.may_donate && lot.last_good_day - problem_.today >= problem_.donate_days;
    (gives ? donated_ : wasted_)[lot_id] = lot.units - units;
  }
  return true;
}

plan::EatDownPlan EatEdit::plan() const {
  plan::EatDownPlan plan;
  for (const auto& [at, units] : opened_) {
    if (units > 0) plan.opened.push_back({at.second, meals_[at.first]->id, units});
  }
  for (const auto& [key, servings] : servings_) {
    const auto& [meal, eater, product] = key;
    if (servings > 0) plan.servings.push_back({product, meals_[meal]->id, eater, servings});
  }
  for (const auto& [lot, units] : donated_) {
    if (units > 0) plan.donated.push_back({lot, units});
  }
  for (const auto& [lot, units] : wasted_) {
    if (units > 0) plan.wasted.push_back({lot, units});
  }
  return plan;
}

}  // namespace larderloop::what_if
