// The eat-down part of the plan: a solved and checked problem told in the household's words.
#include <algorithm>

#include "app/plan_build.h"
#include "app/plan_shown.h"
#include "app/plan_wishes.h"
#include "larderloop/plan/planner.h"

namespace larderloop {
namespace {

class Teller {
 public:
  Teller(const BookView& view, const EatBuild& build, Day today) : view_(view), build_(build), today_(today) {}

  // Who eats what from which unit. The predicate is asked once more about every single helping.
  Status tell_meals(const plan::EatDownPlan& solved, EatDown& eat) const {
    std::map<std::pair<std::string, std::string>, std::int64_t> opened;  // (lot, meal) still to be shown as opened
    for (const plan::Opened& each : solved.opened) opened[{each.lot, each.meal}] += each.units;
    std::map<std::pair<Day, Meal>, PlannedMeal> meals;
    for (const plan::Dealt& dealt : plan::deal(build_.problem, solved)) {
      const Position& position = *build_.lots.at(dealt.lot);
      const Person* person = find_person(*view_.household, PersonKey(dealt.eater));
      const auto refusal = why_not(*view_.household, *person, *position.food, effective_label(*position.facts), view_.today);
      if (refusal) {
        return fail(ErrorKind::kDefect,
                    "the plan gives " + position.food->name + " to " + person->name + ", but " + refusal_words(*refusal),
                    "please report this with: larderloop export");
      }
      const auto [day, meal] = sits_at(*find_meal(build_.problem, dealt.meal));
      PlannedMeal& planned = meals[{day, meal}];
      planned.day = day;
      planned.meal = meal;
      Helping helping;
      helping.at = position.at;
      helping.food = position.food->key;
      helping.person = person->key;
      helping.amount = HalfServings(dealt.servings);
      helping.good_through = position.good_through;
      const auto opens = opened.find({dealt.lot, dealt.meal});
      if (opens != opened.end()) {
        helping.opened_units = opens->second;
        opened.erase(opens);
      }
      planned.helpings.push_back(std::move(helping));
    }
    for (auto& [key, meal] : meals) {
      std::stable_sort(meal.helpings.begin(), meal.helpings.end(), [](const Helping& a, const Helping& b) {
        if (a.food != b.food) return a.food < b.food;
        if (a.at != b.at) return a.at < b.at;
        return a.person < b.person;
      });
      eat.meals.push_back(std::move(meal));
    }
    return {};
  }

  void tell_rest(const plan::EatDownPlan& solved, EatDown& eat) const {
    for (const plan::LotUnits& each : solved.donated) {
      const Position& position = *build_.lots.at(each.lot);
      const Day by = *position.good_through - Days(view_.household->settings.donate_days);
      eat.give_away.push_back({position.at, position.food->key, HalfServings::units(each.units, position.food->servings),
                               by, position.good_through});
    }
    std::stable_sort(eat.give_away.begin(), eat.give_away.end(),
                     [](const GiveAway& a, const GiveAway& b) { return a.by < b.by; });
    for (const plan::LotUnits& each : solved.wasted) {
      const Position& position = *build_.lots.at(each.lot);
      eat.left_over.push_back({position.at, position.food->key,
                               HalfServings::units(each.units, position.food->servings), position.good_through});
    }
  }

  // What is over, and what waits for somebody, wherever it lies.
  void tell_state(EatDown& eat) const {
    for (const Position& position : view_.positions) {
      const FoodKind kind = position.food->kind;
      if (kind == FoodKind::kWater || kind == FoodKind::kThing) continue;
      if (position.facts->state != LotState::kOk) {
        eat.waiting.push_back({position.at, position.food->key, position.amount, position.facts->state});
      } else if (position.good_through && *position.good_through < today_) {
        eat.past.push_back({position.at, position.food->key, position.amount, *position.good_through,
                            position.facts->safety, position.facts->basis});
      }
    }
    std::stable_sort(eat.past.begin(), eat.past.end(), [](const PastDate& a, const PastDate& b) {
      return a.safety != b.safety ? a.safety : a.good_through < b.good_through;
    });
  }

 private:
  const BookView& view_;
  const EatBuild& build_;
  Day today_;
};

}  // namespace

Result<EatDown> plan_eating(const BookView& view, const std::vector<KitPlan>& kits, const Reserved& reserved,
                            const std::vector<ShownMeal>& shown, Day today, bool with_plain, KeptPlans& kept) {
  const EatBuild build = build_eat_down(view, kits, reserved, shown, today);
  const auto solution = kept.eat_down(build.problem);
  if (!solution) return fail(solution.error());
  const plan::EatDownPlan& solved = solution->plan;
  EatDown eat;
  eat.until = build.until;
  eat.levels = solution->levels;
  const Teller teller(view, build, today);
  if (auto told = teller.tell_meals(solved, eat); !told) return fail(told.error());
  teller.tell_rest(solved, eat);
  teller.tell_state(eat);
  tell_wishes(build, eat);
  eat.skipped = skipped(view, today);
  if (with_plain) eat.comparison = compare_with_plain(view, build, solved, kits, today);
  return eat;
}

}  // namespace larderloop
