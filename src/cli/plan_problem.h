// plan_problem.h - the options of `plan` that are about planning problems by themselves: solved
// from a file, written down, or exported for another solver; and how hard to try.
#pragma once

#include "larderloop/cli/runtime.h"
#include "larderloop/core/result.h"
#include "larderloop/plan/solve.h"

#include <string>

namespace CLI {
class App;
}

namespace larderloop::cli {

// As they were typed.
struct PlanProblemOptions {
  std::string problem, dump, model, level, stage, kit, nodes, seconds;
  bool plain_names = false;
  bool prove = false;

  // Is it about a problem by itself, and not about the plan of the book?
  [[nodiscard]] bool by_itself() const {
    return !problem.empty() || !dump.empty() || !model.empty();
  }
  [[nodiscard]] bool limited() const { return prove || !nodes.empty() || !seconds.empty(); }
};
void add_plan_problem_options(CLI::App& app, PlanProblemOptions& options);

// kUsage: options that need another one, or do not go together. kBadData: not a number.
[[nodiscard]] Status check_plan_problem_options(const PlanProblemOptions& options);
// --nodes and --seconds; --prove lifts the limits that are not given.
[[nodiscard]] Result<plan::Limits> limits_of(const PlanProblemOptions& options);
// Says that the clock ends the search, when it does.
void warn_of_clock(const PlanProblemOptions& options, Runtime& runtime);
// The exit code after the answer: with --prove that of kNotProven, with a message, when it is not
// proven best.
[[nodiscard]] int proof_code(const PlanProblemOptions& options, bool proven, Runtime& runtime);
// Pre: by_itself(). The exit code.
[[nodiscard]] Result<int> plan_problem(const PlanProblemOptions& options, Runtime& runtime);

}  // namespace larderloop::cli
