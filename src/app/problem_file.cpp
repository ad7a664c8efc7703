#include "app/problem_file_parts.h"
#include "larderloop/app/planning_problem.h"

#include <algorithm>

namespace larderloop {
namespace {

using problem_file::Findings;
using problem_file::JsonNode;
using problem_file::JsonType;
using problem_file::Need;
using problem_file::Path;
using problem_file::Reader;

enum class Stage { kEatDown, kRefill };

const intake::Names<Stage>& stages() {
  static const intake::Names<Stage> names = {{"eat-down", Stage::kEatDown},
                                             {"refill", Stage::kRefill}};
  return names;
}

}  // namespace

Result<PlanningProblem> read_problem(std::string_view text) {
  constexpr std::string_view kThing = "the planning problem";
  const Result<JsonNode> document = intake::parse_json(text, kThing);
  if (!document) return fail(document.error());
  Findings findings;
  PlanningProblem problem;
  // A case file tells more than the problem; that part is for people.
  const Path root;
  const JsonNode* inner =
      document->type == JsonType::kObject ? document->find("instance") : nullptr;
  const Path path = inner == nullptr ? Path() : Path(root, "instance");
  Reader in(inner == nullptr ? *document : *inner, path, findings, "a planning problem");
  std::optional<Stage> stage;
  if (const JsonNode* node = in.member("stage", Need::kRequired)) {
    stage = intake::read_enum(*node, Path(path, "stage"), findings, stages());
  }
  // Without its stage nothing else in it can be judged.
  if (!stage) return fail(findings.as_error(*document, kThing));
  in.text("name", problem.name);
  if (*stage == Stage::kRefill) {
    problem.problem = problem_file::read_refill(in);
  } else {
    problem.problem = problem_file::read_eat_down(in);
  }
  in.finish();
  if (!findings.empty()) return fail(findings.as_error(*document, kThing));
  return problem;
}

}  // namespace larderloop
