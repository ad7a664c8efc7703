// write_plan.h - from a filled table to the plan as it is handed out. Private to this room.
#pragma once

#include "plan/table.h"

namespace larderloop::plan {

// Units of a product that keeps open are opened only when the ones opened before are eaten or past,
// where their dates allow it; lots by soonest date. Lines sorted as problem.h says.
[[nodiscard]] EatDownPlan write_plan(const Table& table, const EatDownProblem& problem);

}  // namespace larderloop::plan
