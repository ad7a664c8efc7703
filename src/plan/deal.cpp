#include "larderloop/plan/planner.h"

#include "plan/by_id.h"

#include <algorithm>
#include <map>
#include <string_view>
#include <tuple>

namespace larderloop::plan {
namespace {

struct OpenStock {
  const std::string* lot;
  std::int64_t from, through, left;
};

}  // namespace

std::vector<Dealt> deal(const EatDownProblem& problem, const EatDownPlan& plan) {
  const ById<EatProduct> products(problem.products);
  const ById<EatLot> lots(problem.lots);
  const ById<EatMeal> meals(problem.meals);
  std::vector<const EatMeal*> calendar;
  calendar.reserve(problem.meals.size());
  for (const EatMeal& meal : problem.meals) calendar.push_back(&meal);
  const auto sooner = [](const EatMeal* a, const EatMeal* b) {
    return std::tie(a->day, a->kind, a->id) < std::tie(b->day, b->kind, b->id);
  };
  if (!std::is_sorted(calendar.begin(), calendar.end(), sooner)) std::sort(calendar.begin(), calendar.end(), sooner);
  const auto place_of = [&](const EatMeal* meal) { return static_cast<std::size_t>(meal - problem.meals.data()); };
  std::vector<std::size_t> rank(calendar.size());
  for (std::size_t meal = 0; meal < calendar.size(); ++meal) rank[place_of(calendar[meal])] = meal;
  const auto position = [&](const std::string& meal) { return rank[place_of(meals.at(meal))]; };

  // Per product: units that were open before, soonest date first, then the plan's in the order of
  // opening.
  std::map<std::string_view, std::vector<OpenStock>> stock;
  std::vector<const EatLot*> open_lots;
  for (const auto& [id, lot] : lots) {
    if (lot->already_open && lot->last_good_day < problem.today + problem.horizon_days)
      open_lots.push_back(lot);
  }
  std::stable_sort(open_lots.begin(), open_lots.end(), [](const EatLot* a, const EatLot* b) {
    return a->last_good_day < b->last_good_day;
  });
  for (const EatLot* lot : open_lots) {
    const std::int64_t from = std::max(problem.today, lot->available_from.value_or(problem.today));
    stock[lot->product].push_back({&lot->id, from, lot->last_good_day, lot->open_servings});
  }
  std::vector<std::vector<const Opened*>> opened(calendar.size());
  for (const Opened& line : plan.opened) opened[position(line.meal)].push_back(&line);
  std::vector<std::vector<const MealServing*>> served(calendar.size());
  for (const MealServing& line : plan.servings) served[position(line.meal)].push_back(&line);

  std::vector<Dealt> dealt;
  for (std::size_t meal = 0; meal < calendar.size(); ++meal) {
    const std::int64_t day = calendar[meal]->day;
    std::sort(opened[meal].begin(), opened[meal].end(),
              [](const Opened* a, const Opened* b) { return a->lot < b->lot; });
    for (const Opened* line : opened[meal]) {
      const EatLot& lot = *lots.at(line->lot);
      const EatProduct& product = *products.at(lot.product);
      const std::int64_t keeps = product.servings > 1 ? product.open_days : 0;
      stock[lot.product].push_back({&lot.id, day, day + keeps, line->units * product.servings});
    }
    std::sort(served[meal].begin(), served[meal].end(),
              [](const MealServing* a, const MealServing* b) {
                return std::tie(a->eater, a->product) < std::tie(b->eater, b->product);
              });
    std::map<std::pair<std::string_view, std::string_view>, std::int64_t> taken;  // (eater, lot)
    for (const MealServing* line : served[meal]) {
      std::int64_t wanted = line->servings;
      for (OpenStock& open : stock[line->product]) {
        if (wanted == 0) break;
        if (open.left == 0 || day < open.from || day > open.through) continue;
        const std::int64_t servings = std::min(wanted, open.left);
        taken[{line->eater, *open.lot}] += servings;
        open.left -= servings;
        wanted -= servings;
      }
    }
    for (const auto& [key, servings] : taken)
      dealt.push_back({std::string(key.second), calendar[meal]->id, std::string(key.first), servings});
    // What must be finished at its meal is gone after it, also where another meal follows on the
    // same day.
    for (const Opened* line : opened[meal]) {
      const EatProduct& product = *products.at(lots.at(line->lot)->product);
      if (product.servings > 1 && product.open_days > 0) continue;
      for (OpenStock& open : stock[product.id]) {
        if (!lots.at(*open.lot)->already_open) open.left = 0;
      }
    }
  }
  return dealt;
}

}  // namespace larderloop::plan
