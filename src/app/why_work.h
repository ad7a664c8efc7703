// why_work.h - the plan of the book with the problems it comes from, and what a question may cost.
// Private to this room.
#pragma once

#include "app/plan_build.h"
#include "app/why_eat.h"
#include "app/why_refill.h"
#include "larderloop/app/why.h"

#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace larderloop::what_if {

struct KitWork {
  const KitPlan* plan = nullptr;
  Reserved reserved;  // what kits before it were promised
  RefillBuild build;
  plan::Solution<plan::RefillPlan> solved;
};

// Pointers into it stay good while it lives.
class Work {
 public:
  [[nodiscard]] static Result<std::unique_ptr<Work>> make(const Household& household, Asked asked);

  const Household* household = nullptr;
  Day today{};
  BookView view;
  Outcome<PlanReport> planned;
  std::vector<KitWork> kits;
  EatBuild eat;
  plan::Solution<plan::EatDownPlan> eaten;
  std::unique_ptr<EatPlan> eat_plan;
  int solves = 0;

  // The best plan of the other problem beside the one in force: the first level on which it is
  // worse. Nothing: it cannot be, it is not worse anywhere although another one, or no solve is
  // left.
  [[nodiscard]] std::optional<Worse> price(OtherWay way, const plan::EatDownProblem& other);
  [[nodiscard]] std::optional<Worse> price(OtherWay way, const KitWork& kit,
                                           const plan::RefillProblem& other);

  // The refill problem of the kit if the named lots were sound and lasted; the book behind it lives
  // as long as this.
  struct IfGood {
    Household household;
    BookView view;
    RefillBuild build;
  };
  [[nodiscard]] Result<std::unique_ptr<IfGood>> if_good(const KitWork& kit,
                                                        const std::set<LotId>& lots) const;

  [[nodiscard]] const KitWork* kit_of(const PlaceKey& place) const;
  [[nodiscard]] FoodKey food_of(const std::string& eat_product) const;
  [[nodiscard]] MealTime time_of(const plan::EatMeal& meal) const;
  // Why this person must not have this lot.
  [[nodiscard]] std::optional<RefusalReason> refusal(const Position& position,
                                                     const PersonKey& person) const;
};

// Reasons of a lot, by the way.
void explain_not_sooner(Work& work, const std::string& eat_lot, WhyPart& part);
void explain_not_eaten(Work& work, const std::string& eat_lot, WhyPart& part);
void explain_not_given(Work& work, const std::string& eat_lot, WhyPart& part);
// It would be kept in a kit, or packed, if it lasted or were sound.
void explain_not_packed(Work& work, const Position& position, WhyPart& part);
void explain_spare(Work& work, const KitWork& kit, const Position& position, WhyPart& part);
void explain_packed(Work& work, const KitWork& kit, const Position& position, WhyPart& part);

// Rules that keep a lot from a meal, tried one after the other; the first that binds.
[[nodiscard]] std::optional<Reason> bound_at(Work& work, const std::string& eat_lot,
                                             std::size_t meal);

void why_lot(Work& work, LotId lot, WhyReport& report);
void why_meal(Work& work, const MealTime& when, WhyReport& report);
[[nodiscard]] Status why_food(Work& work, const FoodKey& food, WhyReport& report);

}  // namespace larderloop::what_if
