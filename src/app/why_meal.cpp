// Why a meal is planned as it is, or why nothing is planned then.
#include "app/plan_wishes.h"
#include "app/why_work.h"

#include <algorithm>

namespace larderloop::what_if {
namespace {

constexpr std::size_t kMostFoods = 2;  // of a meal that are priced
constexpr std::size_t kMostLots = 12;  // that are eaten later, looked at for an empty meal

NoMeal no_meal(const Work& work, const MealTime& when) {
  if (when.day < work.today) return NoMeal::kPassed;
  if (when.day >= work.eat.until) return NoMeal::kBeyond;
  if (wants_nothing(*work.household, when.day, when.meal, nullptr)) return NoMeal::kWish;
  if (at_table(*work.household, when.day, when.meal).empty()) return NoMeal::kNobody;
  return when.day == work.today ? NoMeal::kRecorded : NoMeal::kNobody;
}

std::vector<std::size_t> tables(const Work& work, const MealTime& when) {
  std::vector<std::size_t> found;
  const std::vector<const plan::EatMeal*> meals = in_order(work.eat_plan->problem());
  for (std::size_t k = 0; k < meals.size(); ++k) {
    if (work.time_of(*meals[k]) == when) found.push_back(k);
  }
  return found;
}

// Nothing is planned: the first lot eaten later that a rule keeps from this meal.
void explain_nothing(Work& work, const std::vector<std::size_t>& at, WhyPart& part,
                     WhyReport& report) {
  std::vector<std::pair<std::size_t, std::string>> later;
  for (const plan::EatLot& lot : work.eat_plan->problem().lots) {
    const std::vector<std::size_t> meals = work.eat_plan->meals_of(lot.id);
    if (!meals.empty() && meals.front() > at.back()) later.emplace_back(meals.front(), lot.id);
  }
  if (later.empty()) {
    report.no_meal = NoMeal::kNothingLeft;
    return;
  }
  std::sort(later.begin(), later.end());
  if (later.size() > kMostLots) later.resize(kMostLots);
  for (const auto& [meal, lot] : later) {
    for (const std::size_t table : at) {
      if (work.eat_plan->possible_at(lot, table) != EatPlan::Possible::kNo) continue;
      if (auto reason = bound_at(work, lot, table)) {
        part.reasons.push_back(std::move(*reason));
        return;
      }
    }
  }
}

void explain_food(Work& work, const std::vector<std::size_t>& at, const std::string& product,
                  WhyPart& part) {
  const std::vector<const plan::EatMeal*> meals = in_order(work.eat_plan->problem());
  plan::EatDownProblem other = work.eat_plan->problem();
  for (plan::EatMeal& meal : other.meals) {
    for (const std::size_t table : at) {
      if (meals[table]->id == meal.id) meal.without.insert(product);
    }
  }
  Reason reason;
  reason.food = work.food_of(product);
  reason.when = part.when;
  reason.worse = work.price(OtherWay::kNotThen, other);
  if (reason.worse) part.reasons.push_back(std::move(reason));
}

}  // namespace

void why_meal(Work& work, const MealTime& when, WhyReport& report) {
  report.meal = when;
  const std::vector<std::size_t> at = tables(work, when);
  const std::vector<const plan::EatMeal*> meals = in_order(work.eat_plan->problem());
  WhyPart nothing;
  nothing.fate = Fate::kNothingThen;
  nothing.when = when;
  if (at.empty()) {
    report.no_meal = no_meal(work, when);
    report.parts.push_back(std::move(nothing));
    return;
  }
  std::vector<std::string> products;
  for (const plan::Dealt& each : work.eat_plan->dealt()) {
    const bool here =
        std::any_of(at.begin(), at.end(), [&](std::size_t k) { return meals[k]->id == each.meal; });
    if (!here) continue;
    const Position& position = *work.eat.lots.at(each.lot);
    auto part = std::find_if(report.parts.begin(), report.parts.end(),
                             [&](const WhyPart& one) { return one.at == position.at; });
    if (part == report.parts.end()) {
      WhyPart first;
      first.fate = Fate::kAtMeal;
      first.food = position.food->key;
      first.at = position.at;
      first.when = when;
      first.good_through = position.good_through;
      report.parts.push_back(std::move(first));
      part = report.parts.end() - 1;
      const auto lot = std::find_if(work.eat.problem.lots.begin(), work.eat.problem.lots.end(),
                                    [&](const plan::EatLot& one) { return one.id == each.lot; });
      products.push_back(lot->product);
    }
    part->amount += HalfServings(each.servings);
    const PersonKey person(each.eater);
    if (std::find(part->people.begin(), part->people.end(), person) == part->people.end())
      part->people.push_back(person);
  }
  if (report.parts.empty()) {
    explain_nothing(work, at, nothing, report);
    report.parts.push_back(std::move(nothing));
    return;
  }
  for (std::size_t k = 0; k < report.parts.size() && k < kMostFoods; ++k)
    explain_food(work, at, products[k], report.parts[k]);
}

}  // namespace larderloop::what_if
