// Reasons from the eat-down problem: why then, and why not at all.
#include "app/why_work.h"

#include <algorithm>

namespace larderloop::what_if {
namespace {

constexpr std::size_t kMealsBefore = 12;  // looked at before the one that is planned

bool avoids(const plan::EatDownProblem& problem, const std::string& product,
            const std::string& eater, const std::string& kind) {
  for (const plan::EatProduct& each : problem.products) {
    if (each.id == product) return each.contains.count(kind + eater) > 0;
  }
  return false;
}

const plan::EatProduct& product_of(const plan::EatDownProblem& problem, const std::string& id) {
  return *std::find_if(problem.products.begin(), problem.products.end(),
                       [&](const plan::EatProduct& each) { return each.id == id; });
}

const plan::EatLot& lot_of(const plan::EatDownProblem& problem, const std::string& id) {
  return *std::find_if(problem.lots.begin(), problem.lots.end(),
                       [&](const plan::EatLot& each) { return each.id == id; });
}

// Has no place in this problem although another species' or no food: no reason worth telling.
bool tells(const std::optional<RefusalReason>& refusal) {
  return refusal && refusal->refusal != Refusal::kWrongSpecies &&
         refusal->refusal != Refusal::kNotFood;
}

class Rules {
 public:
  Rules(Work& work, const std::string& lot)
      : work_(work),
        problem_(work.eat_plan->problem()),
        position_(*work.eat.lots.at(lot)),
        lot_(lot_of(problem_, lot)) {}

  [[nodiscard]] Reason reason(WhyRule rule) const {
    Reason reason;
    reason.rule = rule;
    reason.food = position_.food->key;
    reason.lot = position_.at.lot;
    return reason;
  }
  [[nodiscard]] EatRule rule(WhyRule which) const {
    EatRule rule;
    rule.rule = which;
    rule.lot = lot_.id;
    rule.product = lot_.product;
    return rule;
  }

  // The first rule that keeps the lot from this meal.
  std::optional<Reason> at(std::size_t index) {
    const plan::EatMeal& meal = *in_order(problem_)[index];
    std::vector<std::pair<EatRule, Reason>> rules;
    const auto add = [&](WhyRule which, const std::string& eater) -> Reason& {
      rules.emplace_back(rule(which), reason(which));
      rules.back().first.eater = eater;
      rules.back().first.meal = meal.id;
      rules.back().second.when = work_.time_of(meal);
      if (!eater.empty()) rules.back().second.person = PersonKey(eater);
      rules.back().second.alone = meal.eaters.size() == 1;
      return rules.back().second;
    };
    if (lot_.available_from && meal.day < *lot_.available_from)
      add(WhyRule::kStillInKit, {}).until = number_day(*lot_.available_from);
    if (product_of(problem_, lot_.product).kinds.count(meal.kind) == 0)
      add(WhyRule::kNotForThatMeal, {});
    for (const std::string& eater : meal.eaters) {
      const auto refusal = work_.refusal(position_, PersonKey(eater));
      if (tells(refusal)) add(WhyRule::kMustNot, eater).refusal = refusal;
      if (meal.without.count(lot_.product) > 0 ||
          avoids(problem_, lot_.product, eater, "not-wished:"))
        add(WhyRule::kNotWished, eater);
    }
    for (const std::string& eater : meal.eaters) {
      if (work_.refusal(position_, PersonKey(eater))) continue;
      add(WhyRule::kSameFoodLimit, eater).limit = HalfServings(same_food_limit(eater));
      add(WhyRule::kWeekLimit, eater).limit = HalfServings(week_limit(eater));
      add(WhyRule::kAppetite, eater).limit = HalfServings(meal.appetite.of(eater, 1));
    }
    for (auto& [rule, told] : rules) {
      if (work_.eat_plan->binds_at(rule, lot_.id, index)) return told;
    }
    return std::nullopt;
  }

  // The first rule that keeps more of it from being eaten.
  std::optional<Reason> eating() {
    std::vector<std::pair<EatRule, Reason>> rules;
    const auto add = [&](WhyRule which) -> Reason& {
      rules.emplace_back(rule(which), reason(which));
      return rules.back().second;
    };
    add(WhyRule::kNotForThatMeal);
    for (const plan::Eater& eater : problem_.eaters) {
      const auto refusal = work_.refusal(position_, PersonKey(eater.id));
      const bool wish = avoids(problem_, lot_.product, eater.id, "not-wished:");
      if (!tells(refusal) && !wish) continue;
      Reason& told = add(wish ? WhyRule::kNotWished : WhyRule::kMustNot);
      told.person = PersonKey(eater.id);
      told.refusal = wish ? std::nullopt : refusal;
      rules.back().first.eater = eater.id;
    }
    add(WhyRule::kSameFoodLimit).limit = HalfServings(problem_.monotony);
    add(WhyRule::kWeekLimit).limit = HalfServings(problem_.tolerance);
    add(WhyRule::kAppetite);
    add(WhyRule::kDate).good_through = position_.good_through;
    for (auto& [rule, told] : rules) {
      if (work_.eat_plan->binds_eating(rule, lot_.id)) return told;
    }
    return std::nullopt;
  }

  [[nodiscard]] const plan::EatLot& lot() const { return lot_; }

 private:
  [[nodiscard]] const plan::Eater& eater_of(const std::string& id) const {
    return *std::find_if(problem_.eaters.begin(), problem_.eaters.end(),
                         [&](const plan::Eater& each) { return each.id == id; });
  }
  [[nodiscard]] std::int64_t week_limit(const std::string& eater) const {
    return eater_of(eater).tolerance.value_or(problem_.tolerance);
  }
  [[nodiscard]] std::int64_t same_food_limit(const std::string& eater) const {
    return eater_of(eater).monotony.value_or(problem_.monotony);
  }

  Work& work_;
  const plan::EatDownProblem& problem_;
  const Position& position_;
  const plan::EatLot& lot_;
};

// Somebody at the meal who would have it, to ask for it there.
std::optional<plan::MealServing> wish_at(const Work& work, const plan::EatLot& lot,
                                         const plan::EatMeal& meal) {
  const plan::EatDownProblem& problem = work.eat_plan->problem();
  for (const std::string& eater : meal.eaters) {
    if (meal.without.count(lot.product) > 0 || avoids(problem, lot.product, eater, "not-for:") ||
        avoids(problem, lot.product, eater, "not-wished:"))
      continue;
    return plan::MealServing{lot.product, meal.id, eater, std::min<std::int64_t>(2, meal.appetite.of(eater, 1))};
  }
  return std::nullopt;
}

std::optional<Reason> priced(Work& work, const Rules& rules, OtherWay way,
                             const plan::EatMeal& meal) {
  const auto wish = wish_at(work, rules.lot(), meal);
  if (!wish) return std::nullopt;
  plan::EatDownProblem other = work.eat_plan->problem();
  other.wished.push_back(*wish);
  Reason reason = rules.reason(WhyRule::kWorse);
  reason.when = work.time_of(meal);
  reason.worse = work.price(way, other);
  if (!reason.worse || reason.worse->level.empty()) return std::nullopt;
  return reason;
}

}  // namespace

std::optional<Reason> bound_at(Work& work, const std::string& eat_lot, std::size_t meal) {
  return Rules(work, eat_lot).at(meal);
}

void explain_not_sooner(Work& work, const std::string& eat_lot, WhyPart& part) {
  const std::vector<std::size_t> meals = work.eat_plan->meals_of(eat_lot);
  if (meals.empty()) return;
  Rules rules(work, eat_lot);
  const std::vector<const plan::EatMeal*> all = in_order(work.eat_plan->problem());
  const plan::EatProduct& product = product_of(work.eat_plan->problem(), rules.lot().product);
  std::optional<std::size_t> possible;
  bool shown = false;
  std::size_t looked = 0;
  for (std::size_t k = meals.front(); k-- > 0 && looked < kMealsBefore;) {
    if (product.kinds.count(all[k]->kind) == 0) continue;
    looked += 1;
    switch (work.eat_plan->possible_at(eat_lot, k)) {
      case EatPlan::Possible::kBetter:
        shown = true;
        continue;
      case EatPlan::Possible::kWorse:
        if (!possible) possible = k;
        continue;
      case EatPlan::Possible::kNo:
        break;
    }
    if (auto reason = rules.at(k)) {
      part.reasons.push_back(std::move(*reason));
      return;
    }
  }
  if (shown && !work.eat.problem.published.empty()) {
    part.reasons.push_back(rules.reason(WhyRule::kShown));
    return;
  }
  if (possible) {
    if (auto reason = priced(work, rules, OtherWay::kAtThatMeal, *all[*possible]))
      part.reasons.push_back(std::move(*reason));
  }
}

void explain_not_eaten(Work& work, const std::string& eat_lot, WhyPart& part) {
  Rules rules(work, eat_lot);
  if (auto reason = rules.eating()) {
    part.reasons.push_back(std::move(*reason));
    return;
  }
  const plan::EatLot& lot = rules.lot();
  const plan::EatProduct& product = product_of(work.eat_plan->problem(), lot.product);
  for (const plan::EatMeal* meal : in_order(work.eat_plan->problem())) {
    const bool then = meal->day >= lot.available_from.value_or(meal->day) &&
                      meal->day <= lot.last_good_day && product.kinds.count(meal->kind) > 0;
    if (!then || !wish_at(work, lot, *meal)) continue;
    if (auto reason = priced(work, rules, OtherWay::kEatIt, *meal))
      part.reasons.push_back(std::move(*reason));
    return;
  }
}

void explain_not_given(Work& work, const std::string& eat_lot, WhyPart& part) {
  Rules rules(work, eat_lot);
  for (const WhyRule rule : {WhyRule::kTooLateToGive, WhyRule::kNeverGiven}) {
    if (!work.eat_plan->binds_giving(rules.rule(rule), eat_lot)) continue;
    Reason reason = rules.reason(rule);
    reason.good_through = part.good_through;
    part.reasons.push_back(std::move(reason));
  }
}

}  // namespace larderloop::what_if
