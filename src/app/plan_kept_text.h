// plan_kept_text.h - plans as lines of text, and fingerprints of problems. Private to this room.
#pragma once

#include "larderloop/plan/solve.h"

#include <optional>
#include <string>

namespace larderloop {

// Two problems with the same fingerprint have the same plans. What was shown before is left out: a
// plan stays the same when it is shown.
[[nodiscard]] std::string fingerprint(const plan::EatDownProblem& problem);
[[nodiscard]] std::string fingerprint(const plan::RefillProblem& problem);

[[nodiscard]] std::string plan_text(const plan::Solution<plan::EatDownPlan>& solution);
[[nodiscard]] std::string plan_text(const plan::Solution<plan::RefillPlan>& solution);
// Nothing when the text is not one of plan_text().
[[nodiscard]] bool read_plan(const std::string& text, plan::Solution<plan::EatDownPlan>& solution);
[[nodiscard]] bool read_plan(const std::string& text, plan::Solution<plan::RefillPlan>& solution);

}  // namespace larderloop
