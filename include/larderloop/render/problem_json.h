// problem_json.h - planning problems and their solutions as JSON (docs/planning.md,
// docs/schema/problem-1, docs/schema/solution-1).
#pragma once

#include "larderloop/app/planning_problem.h"

#include <string>

namespace larderloop {

// What read_problem() reads: members that have their default are left out.
// read_problem(render_problem_json(p)) is p.
[[nodiscard]] std::string render_problem_json(const PlanningProblem& problem);
// {"schema": "larderloop.solution/1", "as_of": today of the problem, a whole number, "data":
// {stage, levels, vector, bounds, proven, plan}}
[[nodiscard]] std::string render_solution_json(const PlanningProblem& problem,
                                               const ProblemSolution& solution);

}  // namespace larderloop
