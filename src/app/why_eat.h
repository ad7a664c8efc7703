// why_eat.h - what-if on the eat-down problem: one rule changed, and a small change of the plan
// that the rule forbids. Rule:     an answer counts only when the checker allows the changed plan
// without the rule, forbids it with the rule, and counts
//           better levels than those of the plan. So a fault in here can lose a reason, never make
//           one up.
#pragma once

#include "larderloop/app/why.h"
#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"
#include "larderloop/plan/problem.h"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

namespace larderloop::what_if {

// One rule of the eat-down problem; empty members: all of them.
struct EatRule {
  WhyRule rule = WhyRule::kDate;
  std::string lot, product, meal, eater;
};
// The problem with that rule taken away, for that thing only.
[[nodiscard]] plan::EatDownProblem without(const plan::EatDownProblem& problem,
                                           const EatRule& rule);

[[nodiscard]] std::vector<std::int64_t> values_of(const plan::Verdict& verdict);
// Meals in calendar order.
[[nodiscard]] std::vector<const plan::EatMeal*> in_order(const plan::EatDownProblem& problem);

// A plan being changed.
class EatEdit {
 public:
  // Problem and plan must outlive it.
  EatEdit(const plan::EatDownProblem& problem, const plan::EatDownPlan& plan);
  // Takes a lot out of the plan; returns the meals where units were opened, a unit each, in order.
  std::vector<std::size_t> take_out(const std::string& lot, const std::vector<plan::Dealt>& dealt);
  // Opens a unit at each of these meals; what is not opened is given away or wasted. False: nobody
  // eats of a unit.
  [[nodiscard]] bool put_in(const std::string& lot, const std::vector<std::size_t>& openings);
  // Servings of the product that could be eaten from a unit opened at the meal, up to a unit.
  [[nodiscard]] std::int64_t room(const plan::EatLot& lot, std::size_t meal) const;
  [[nodiscard]] const std::vector<const plan::EatMeal*>& meals() const { return meals_; }
  [[nodiscard]] std::size_t index_of(const std::string& meal) const;
  [[nodiscard]] const plan::EatLot& lot(const std::string& id) const { return *lots_.at(id); }
  [[nodiscard]] plan::EatDownPlan plan() const;
  // How much more this eater could have of the product at the meal.
  [[nodiscard]] std::int64_t spare(std::size_t meal, const std::string& eater,
                                   const std::string& product) const;

 private:
  [[nodiscard]] std::int64_t week_of(std::size_t meal) const;
  [[nodiscard]] bool suits(const plan::EatMeal& meal, const plan::EatProduct& product) const;
  void add(std::size_t meal, const std::string& eater, const std::string& product,
           std::int64_t servings);
  std::int64_t serve(std::size_t meal, const std::string& product, std::int64_t most);

  const plan::EatDownProblem& problem_;
  std::map<std::string, const plan::Eater*> eaters_;
  std::map<std::string, const plan::EatProduct*> products_;
  std::map<std::string, const plan::EatLot*> lots_;
  std::vector<const plan::EatMeal*> meals_;
  std::map<std::string, std::size_t> index_;
  std::map<std::tuple<std::size_t, std::string, std::string>, std::int64_t>
      servings_;                                                        // meal, eater, product
  std::map<std::pair<std::size_t, std::string>, std::int64_t> opened_;  // meal, lot
  std::map<std::string, std::int64_t> donated_, wasted_;
  std::map<std::pair<std::size_t, std::string>, std::int64_t> at_meal_;
  std::map<std::pair<std::int64_t, std::string>, std::int64_t> in_week_;
  std::map<std::tuple<std::int64_t, std::string, std::string>, std::int64_t> same_;
};

// The plan in force and the ways to vary it.
class EatPlan {
 public:
  // `problem` may hold what was shown; it is left out of what is compared.
  EatPlan(const plan::EatDownProblem& problem, const plan::EatDownPlan& plan);

  [[nodiscard]] const plan::EatDownProblem& problem() const { return free_; }
  [[nodiscard]] const plan::EatDownPlan& plan() const { return plan_; }
  [[nodiscard]] const std::vector<plan::Level>& levels() const { return levels_; }
  [[nodiscard]] const std::vector<plan::Dealt>& dealt() const { return dealt_; }
  // Meals (positions in calendar order) where units of the lot are opened, or an open one is eaten
  // from.
  [[nodiscard]] std::vector<std::size_t> meals_of(const std::string& lot) const;

  // Would the lot, without the rule, be eaten at this meal in a better plan, and does the rule
  // forbid that plan?
  [[nodiscard]] bool binds_at(const EatRule& rule, const std::string& lot, std::size_t meal) const;
  // Would more of the lot be eaten at all?
  [[nodiscard]] bool binds_eating(const EatRule& rule, const std::string& lot) const;
  // Would more of it be given away?
  [[nodiscard]] bool binds_giving(const EatRule& rule, const std::string& lot) const;
  // Is it possible at the meal under all rules, and is the plan then better, or not?
  enum class Possible { kNo, kWorse, kBetter };
  [[nodiscard]] Possible possible_at(const std::string& lot, std::size_t meal) const;

 private:
  [[nodiscard]] bool certifies(const plan::EatDownProblem& freer,
                               const plan::EatDownPlan& other) const;
  // Plans with the lot moved to the meal, given to `use` until it says true.
  [[nodiscard]] bool moved_to(const plan::EatDownProblem& problem, const std::string& lot,
                              std::size_t meal,
                              const std::function<bool(const plan::EatDownPlan&)>& use) const;

  plan::EatDownProblem free_;
  const plan::EatDownPlan& plan_;
  std::vector<plan::Dealt> dealt_;
  std::vector<plan::Level> levels_;
  std::vector<std::int64_t> values_;
};

}  // namespace larderloop::what_if
