#include "plan/compiled.h"

#include <algorithm>
#include <tuple>

namespace larderloop::plan {
namespace {

std::int64_t quantity(std::int64_t value) {
  return std::clamp<std::int64_t>(value, 0, CompiledEat::kMost);
}
std::int64_t far_day(std::int64_t day) {
  return std::clamp(day, -CompiledEat::kFar, CompiledEat::kFar);
}

unsigned bit(Kind kind) {
  return 1U << static_cast<unsigned>(kind);
}

template <typename T>
std::vector<const T*> by_id(const std::vector<T>& all) {
  std::vector<const T*> sorted;
  for (const T& each : all) sorted.push_back(&each);
  std::sort(sorted.begin(), sorted.end(), [](const T* a, const T* b) { return a->id < b->id; });
  return sorted;
}

bool wants(const EatProduct& product, const Eater& eater) {
  for (const std::string& tag : product.contains) {
    if (eater.avoid.count(tag) > 0) return false;
  }
  const auto rated = eater.ratings.find(product.id);
  return rated == eater.ratings.end() || rated->second > -2;
}

}  // namespace

CompiledEat::CompiledEat(const EatDownProblem& problem)
    : today(far_day(problem.today)),
      end(far_day(today + far_day(problem.horizon_days))),
      eaters(by_id(problem.eaters)) {
  for (const EatProduct* product : by_id(problem.products)) {
    const std::int64_t servings = std::clamp<std::int64_t>(product->servings, 1, kMost);
    const std::int64_t keeps =
        servings == 1 ? 0 : std::clamp<std::int64_t>(product->open_days, 0, kFar);
    unsigned kinds = 0;
    for (const Kind kind : product->kinds) kinds |= bit(kind);
    products.push_back({product, servings, keeps, kinds});
    for (const Eater* eater : eaters) {
      const auto rated = eater->ratings.find(product->id);
      will_.push_back(wants(*product, *eater) ? 1 : 0);
      ratings_.push_back(rated == eater->ratings.end() ? 0 : rated->second);
    }
  }
  compile_meals(problem);
  compile_lots(problem);
  compile_limits(problem);
}

void CompiledEat::compile_meals(const EatDownProblem& problem) {
  std::vector<const EatMeal*> calendar;
  for (const EatMeal& meal : problem.meals) {
    if (meal.day >= problem.today) calendar.push_back(&meal);
  }
  std::sort(calendar.begin(), calendar.end(), [](const EatMeal* a, const EatMeal* b) {
    return std::tie(a->day, a->kind, a->id) < std::tie(b->day, b->kind, b->id);
  });
  for (const EatMeal* source : calendar) {
    const std::int64_t day = far_day(source->day);
    const std::int64_t since = day - far_day(problem.week_start);
    const std::int64_t week = since / 7 - (since % 7 < 0 ? 1 : 0);
    if (week_numbers_.empty() || week_numbers_.back() != week) {
      week_numbers_.push_back(week);
      week_ends_.push_back(meals.size());
    }
    Meal meal{source, day, bit(source->kind), week_numbers_.size() - 1, seats.size(), seats.size(), {}};
    for (const std::string& id : source->without) {
      const std::size_t product = product_of(id);
      if (product < products.size()) meal.without.push_back(product);
    }

    std::set<std::string> seated(source->eaters.begin(), source->eaters.end());
    for (const std::string& id : seated) {
      const std::size_t eater = eater_of(id);
      const std::int64_t wanted = quantity(source->appetite.of(id, 1));
      if (eater < eaters.size() && wanted > 0) seats.push_back({meals.size(), eater, wanted});
    }
    meal.seats_end = seats.size();
    meal_index_.emplace_back(source->id, meals.size());
    meals.push_back(std::move(meal));
    week_ends_.back() = meals.size();
  }
  std::sort(meal_index_.begin(), meal_index_.end());
}

void CompiledEat::compile_lots(const EatDownProblem& problem) {
  for (const EatLot& source : problem.lots) {
    const std::size_t product = product_of(source.product);
    if (source.last_good_day >= end || product == products.size()) continue;
    Lot lot{&source, product, 0, today, far_day(source.last_good_day), false};
    if (source.available_from) lot.from = std::max(today, far_day(*source.available_from));
    lot.units = quantity(source.already_open ? source.open_servings : source.units);
    lot.donatable =
        source.may_donate && !source.already_open && lot.last - today >= problem.donate_days;
    (source.already_open ? open_lots : lots).push_back(lot);
  }
  const auto sooner = [](const Lot& a, const Lot& b) {
    return std::tie(a.last, a.source->id) < std::tie(b.last, b.source->id);
  };
  std::sort(lots.begin(), lots.end(), sooner);
  std::sort(open_lots.begin(), open_lots.end(), sooner);
}

void CompiledEat::compile_limits(const EatDownProblem& problem) {
  for (const std::int64_t week : week_numbers_) {
    for (const Eater* eater : eaters) {
      std::int64_t limit = quantity(eater->tolerance.value_or(problem.tolerance));
      if (week == 0) {
        for (const auto& [product, servings] : eater->eaten_this_week) limit -= quantity(servings);
      }
      week_limit.push_back(std::max<std::int64_t>(0, limit));
    }
    for (const Product& product : products) {
      for (const Eater* eater : eaters) {
        std::int64_t limit = quantity(eater->monotony.value_or(problem.monotony));
        if (week == 0) limit -= quantity(eater->eaten_this_week.of(product.source->id, 0));
        product_limit.push_back(std::max<std::int64_t>(0, limit));
      }
    }
  }
}

std::size_t CompiledEat::first_meal(std::int64_t day) const {
  const auto found =
      std::lower_bound(meals.begin(), meals.end(), day,
                       [](const Meal& meal, std::int64_t on) { return meal.day < on; });
  return static_cast<std::size_t>(found - meals.begin());
}

std::size_t CompiledEat::product_of(const std::string& id) const {
  const auto found = std::lower_bound(
      products.begin(), products.end(), id,
      [](const Product& product, const std::string& key) { return product.source->id < key; });
  if (found == products.end() || found->source->id != id) return products.size();
  return static_cast<std::size_t>(found - products.begin());
}

std::size_t CompiledEat::eater_of(const std::string& id) const {
  const auto found =
      std::lower_bound(eaters.begin(), eaters.end(), id,
                       [](const Eater* eater, const std::string& key) { return eater->id < key; });
  if (found == eaters.end() || (*found)->id != id) return eaters.size();
  return static_cast<std::size_t>(found - eaters.begin());
}

std::size_t CompiledEat::meal_of(const std::string& id) const {
  const auto found =
      std::lower_bound(meal_index_.begin(), meal_index_.end(), std::pair(id, std::size_t{0}));
  return found == meal_index_.end() || found->first != id ? meals.size() : found->second;
}

std::size_t CompiledEat::seat_of(std::size_t meal, std::size_t eater) const {
  for (std::size_t seat = meals[meal].seats_begin; seat < meals[meal].seats_end; ++seat) {
    if (seats[seat].eater == eater) return seat;
  }
  return seats.size();
}

}  // namespace larderloop::plan
