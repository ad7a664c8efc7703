// solve.h - the exact planners: the levels of a problem one after the other, each with its value
// and a proven bound. Meaning:  docs/planning.md. A plan returned here has passed the independent
// checker (check.h) in 64-bit integers; its level values are the
//           checker's. Deterministic: limits count steps, never time, unless `seconds` is given.
#pragma once

#include "larderloop/plan/problem.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace larderloop::plan {

// How hard to try. What is not proven when a limit ends keeps the best plan found and its bound,
// and the next level goes on from there.
struct Limits {
  std::int64_t nodes = 200;            // of branch and bound, a level
  std::int64_t largest_model = 4'000;  // columns; a larger exact model is not built: parts of it
                                       // give the plan, a smaller one the bounds
  std::optional<double>
      seconds;  // of wall-clock time for the whole problem; opt-in, since the result may then vary
};
// What a household's own plan is worth: mostly one or two seconds, with bounds that are honest.
[[nodiscard]] Limits household_limits();
// Proof at any price.
[[nodiscard]] Limits without_limits();

// `levels`: in order; `bound` is a proven lower bound given the values of the levels before it (for
// a level after an unproven one: relative to the value reached there). `stopped`: a limit ended the
// search of some level.
template <typename Plan>
struct Solution {
  Plan plan;
  std::vector<Level> levels;
  bool stopped = false;
  [[nodiscard]] bool proven() const {
    for (const Level& level : levels) {
      if (!level.proven()) return false;
    }
    return true;
  }
};

// `before`: the solution of a problem that was much like this one. As far as its plan still goes the search starts there, so that little
// changes when little happened. `may_stand`: where that plan goes on as near to its bounds as it was then, or waste is proven and the rest is
// within two hundredths, there is no further search, unless more than the household's usual limits is asked for.
[[nodiscard]] Solution<EatDownPlan> solve(const EatDownProblem& problem, const Limits& limits,
                                          const Solution<EatDownPlan>* before = nullptr,
                                          bool may_stand = false);
[[nodiscard]] Solution<RefillPlan> solve(const RefillProblem& problem, const Limits& limits);

// The integer program of one level, the levels before it held at `values` (as many as there are
// levels before; the name of a level picks it), as text in the free MPS or the CPLEX LP format,
// which every common solver reads. Its optimum is the value of the level. Empty when no level has
// this name.
enum class ModelFormat { kMps, kLp };
[[nodiscard]] std::string export_model(const EatDownProblem& problem, const std::string& level,
                                       const std::vector<std::int64_t>& values, ModelFormat format);
[[nodiscard]] std::string export_model(const RefillProblem& problem, const std::string& level,
                                       const std::vector<std::int64_t>& values, ModelFormat format);

}  // namespace larderloop::plan
