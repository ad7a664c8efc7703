// case_reader.h - planning problems with a known optimum, read from JSON files (tests/oracle/cases,
// described in docs/planning.md).
#pragma once

#include "larderloop/plan/problem.h"

#include <cstdint>
#include <string>
#include <vector>

namespace larderloop::test {

struct PlanCase {
  std::string name;
  bool refill = false;
  plan::RefillProblem refill_problem;
  plan::RefillPlan refill_plan;
  plan::EatDownProblem eat_problem;
  plan::EatDownPlan eat_plan;
  bool has_plan = false;
  std::vector<std::string> levels;
  std::vector<std::int64_t> optimum;  // the level values of every optimal plan
};

// All cases of the folder by name. Throws when a file is not as described.
[[nodiscard]] std::vector<PlanCase> read_plan_cases(const std::string& folder);

}  // namespace larderloop::test
