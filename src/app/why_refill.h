// why_refill.h - what-if on the refill problem: a lot more, or one rule less, and what the plan
// would make of it. Rule:     as in why_eat.h: the checker judges every changed plan.
#pragma once

#include "larderloop/app/why.h"
#include "larderloop/plan/check.h"
#include "larderloop/plan/problem.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace larderloop::what_if {

// Would everyone on the line have this product, and does it serve there?
[[nodiscard]] bool accepts(const plan::RefillProblem& problem, const plan::RefillLine& line,
                           const plan::RefillProduct& product);
// Who on the line keeps the product from it by a tag or a rating; empty also when it does not serve
// there.
[[nodiscard]] std::vector<std::string> who_refuses(const plan::RefillProblem& problem,
                                                   const plan::RefillLine& line,
                                                   const plan::RefillProduct& product);
[[nodiscard]] const plan::RefillProduct* find_product(const plan::RefillProblem& problem,
                                                      const std::string& id);
// The problem where this eater may have the product.
[[nodiscard]] plan::RefillProblem let_have(const plan::RefillProblem& problem,
                                           const std::string& product, const std::string& eater);
// The problem with a lot of another problem put in beside its own, under an id of its own; its last
// good day is at least the hold-until date.
struct Borrowed {
  plan::RefillProblem problem;
  std::string lot;  // its id there
};
[[nodiscard]] Borrowed borrow(const plan::RefillProblem& problem, const plan::RefillProblem& from,
                              const plan::RefillLot& lot);

class RefillPlanned {
 public:
  // Problem and plan must outlive it.
  RefillPlanned(const plan::RefillProblem& problem, const plan::RefillPlan& plan);
  [[nodiscard]] const std::vector<plan::Level>& levels() const { return levels_; }
  // Units of a lot that the plan uses.
  [[nodiscard]] std::int64_t used(const std::string& lot) const;
  // A better plan of the changed problem that takes more of the lot, and that the problem itself
  // forbids. `lines`: only places on these lines are given to it; empty: any.
  [[nodiscard]] std::optional<plan::RefillPlan> with_lot(const plan::RefillProblem& changed,
                                                         const std::string& lot,
                                                         const std::set<std::string>& lines) const;

 private:
  const plan::RefillProblem& problem_;
  const plan::RefillPlan& plan_;
  std::vector<plan::Level> levels_;
};

}  // namespace larderloop::what_if
