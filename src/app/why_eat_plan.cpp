// Which rule of the eat-down problem keeps the plan as it is.
#include "app/why_eat.h"

#include <algorithm>

namespace larderloop::what_if {
namespace {

constexpr std::int64_t kPlenty = 1'000;  // half servings: more than anybody has of one unit

plan::EatProduct* product_in(plan::EatDownProblem& problem, const std::string& id) {
  for (plan::EatProduct& each : problem.products) {
    if (each.id == id) return &each;
  }
  return nullptr;
}

void let_have(plan::EatDownProblem& problem, const EatRule& rule, const std::string& kind) {
  plan::EatProduct* product = product_in(problem, rule.product);
  if (product == nullptr) return;
  product->contains.erase(kind + rule.eater);
  for (plan::Eater& eater : problem.eaters) {
    const auto rating = eater.ratings.find(rule.product);
    if (eater.id == rule.eater && rating != eater.ratings.end() && rating->second <= -2)
      eater.ratings.erase(rating);
  }
}

void raise_limit(plan::EatDownProblem& problem, const EatRule& rule, bool same_food) {
  if (rule.eater.empty()) (same_food ? problem.monotony : problem.tolerance) += kPlenty;
  for (plan::Eater& eater : problem.eaters) {
    if (!rule.eater.empty() && eater.id != rule.eater) continue;
    std::optional<std::int64_t>& limit = same_food ? eater.monotony : eater.tolerance;
    if (limit) {
      *limit += kPlenty;
    } else if (!rule.eater.empty()) {
      limit = (same_food ? problem.monotony : problem.tolerance) + kPlenty;
    }
  }
}

}  // namespace

plan::EatDownProblem without(const plan::EatDownProblem& problem, const EatRule& rule) {
  plan::EatDownProblem freer = problem;
  const auto of_lot = [&](const auto& change) {
    for (plan::EatLot& lot : freer.lots) {
      if (lot.id == rule.lot) change(lot);
    }
  };
  switch (rule.rule) {
    case WhyRule::kDate:
      of_lot([&](plan::EatLot& lot) {
        lot.last_good_day = std::max(lot.last_good_day, freer.today + freer.horizon_days - 1);
      });
      break;
    case WhyRule::kStillInKit:
      of_lot([](plan::EatLot& lot) { lot.available_from.reset(); });
      break;
    case WhyRule::kTooLateToGive:
      freer.donate_days = 0;
      break;
    case WhyRule::kNeverGiven:
      of_lot([](plan::EatLot& lot) { lot.may_donate = true; });
      break;
    case WhyRule::kMustNot:
      let_have(freer, rule, "not-for:");
      break;
    case WhyRule::kNotWished:
      let_have(freer, rule, "not-wished:");
      for (plan::EatMeal& meal : freer.meals) {
        if (rule.meal.empty() || meal.id == rule.meal) meal.without.erase(rule.product);
      }
      break;
    case WhyRule::kNotForThatMeal:
      if (plan::EatProduct* product = product_in(freer, rule.product)) {
        for (const plan::EatMeal& meal : freer.meals) {
          if (rule.meal.empty() || meal.id == rule.meal) product->kinds.insert(meal.kind);
        }
      }
      break;
    case WhyRule::kAppetite:
      for (plan::EatMeal& meal : freer.meals) {
        if (!rule.meal.empty() && meal.id != rule.meal) continue;
        for (const std::string& eater : meal.eaters) {
          if (!rule.eater.empty() && eater != rule.eater) continue;
          meal.appetite.add(eater, 1) += kPlenty;
        }
      }
      break;
    case WhyRule::kWeekLimit:
      raise_limit(freer, rule, false);
      break;
    case WhyRule::kSameFoodLimit:
      raise_limit(freer, rule, true);
      break;
    case WhyRule::kSetAside:
    case WhyRule::kShown:
    case WhyRule::kAllUsed:
    case WhyRule::kWorse:
      break;  // no rules of this problem
  }
  return freer;
}

std::vector<std::int64_t> values_of(const plan::Verdict& verdict) {
  std::vector<std::int64_t> values;
  for (const plan::Level& level : verdict.levels) values.push_back(level.value);
  return values;
}

EatPlan::EatPlan(const plan::EatDownProblem& problem, const plan::EatDownPlan& plan)
    : free_(problem), plan_(plan), dealt_(plan::deal(problem, plan)) {
  free_.published.clear();
  free_.published_until = free_.today - 1;  // also: days shown are not searched otherwise than others
  free_.keep_published = false;
  const plan::Verdict verdict = plan::check(free_, plan_);
  levels_ = verdict.levels;
  values_ = values_of(verdict);
}

std::vector<std::size_t> EatPlan::meals_of(const std::string& lot) const {
  const EatEdit edit(free_, plan_);
  std::vector<std::size_t> meals;
  for (const plan::Opened& each : plan_.opened) {
    if (each.lot == lot) meals.push_back(edit.index_of(each.meal));
  }
  if (meals.empty()) {
    for (const plan::Dealt& each : dealt_) {
      if (each.lot == lot) meals.push_back(edit.index_of(each.meal));
    }
  }
  std::sort(meals.begin(), meals.end());
  meals.erase(std::unique(meals.begin(), meals.end()), meals.end());
  return meals;
}

bool EatPlan::certifies(const plan::EatDownProblem& freer, const plan::EatDownPlan& other) const {
  const plan::Verdict verdict = plan::check(freer, other);
  return verdict.allowed() && values_of(verdict) < values_ && !plan::check(free_, other).allowed();
}

bool EatPlan::moved_to(const plan::EatDownProblem& problem, const std::string& lot,
                       std::size_t meal,
                       const std::function<bool(const plan::EatDownPlan&)>& use) const {
  EatEdit rest(problem, plan_);
  const std::vector<std::size_t> openings = rest.take_out(lot, dealt_);
  const auto with = [&](std::vector<std::size_t> at) {
    std::sort(at.begin(), at.end());
    EatEdit edit = rest;
    return edit.put_in(lot, at) && use(edit.plan());
  };
  if (rest.lot(lot).already_open) return with({meal});
  if (openings.empty()) return false;
  // All units that are opened first, then one of them.
  std::vector<std::size_t> all = openings, one = openings;
  for (std::size_t& each : all) {
    if (each == openings.front()) each = meal;
  }
  one.front() = meal;
  return with(all) || (all != one && with(one));
}

bool EatPlan::binds_at(const EatRule& rule, const std::string& lot, std::size_t meal) const {
  const plan::EatDownProblem freer = without(free_, rule);
  return moved_to(freer, lot, meal,
                  [&](const plan::EatDownPlan& other) { return certifies(freer, other); });
}

bool EatPlan::binds_eating(const EatRule& rule, const std::string& lot) const {
  const plan::EatDownProblem freer = without(free_, rule);
  EatEdit rest(freer, plan_);
  std::vector<std::size_t> openings = rest.take_out(lot, dealt_);
  const plan::EatLot& what = rest.lot(lot);
  if (!what.already_open && static_cast<std::int64_t>(openings.size()) >= what.units) return false;
  if (!openings.empty() && !rest.put_in(lot, openings)) return false;
  // The first meal that takes a whole unit, else the one that takes the most of it.
  std::size_t best = rest.meals().size();
  std::int64_t most = 0;
  const std::int64_t from = std::max(freer.today, what.available_from.value_or(freer.today));
  for (std::size_t k = 0; k < rest.meals().size(); ++k) {
    const std::int64_t day = rest.meals()[k]->day;
    if (day < from || day > what.last_good_day) continue;
    const std::int64_t room = rest.room(what, k);
    if (room > most) {
      most = room;
      best = k;
    }
  }
  if (most == 0) return false;
  openings.push_back(best);
  std::sort(openings.begin(), openings.end());
  EatEdit edit(freer, plan_);
  (void)edit.take_out(lot, dealt_);
  return edit.put_in(lot, openings) && certifies(freer, edit.plan());
}

bool EatPlan::binds_giving(const EatRule& rule, const std::string& lot) const {
  const plan::EatDownProblem freer = without(free_, rule);
  EatEdit edit(freer, plan_);
  const std::vector<std::size_t> openings = edit.take_out(lot, dealt_);
  return edit.put_in(lot, openings) && certifies(freer, edit.plan());
}

EatPlan::Possible EatPlan::possible_at(const std::string& lot, std::size_t meal) const {
  Possible possible = Possible::kNo;
  (void)moved_to(free_, lot, meal, [&](const plan::EatDownPlan& other) {
    const plan::Verdict verdict = plan::check(free_, other);
    if (!verdict.allowed()) return false;
    const bool better = values_of(verdict) < values_;
    if (better || possible == Possible::kNo)
      possible = better ? Possible::kBetter : Possible::kWorse;
    return better;
  });
  return possible;
}

}  // namespace larderloop::what_if
