// plan --problem, --dump-problem, --export-model: planning problems by themselves.
#include "cli/files.h"
#include "cli/kit_argument.h"
#include "cli/option_parts.h"
#include "cli/plan_problem.h"
#include "cli/values.h"
#include "larderloop/app/planning_problem.h"
#include "larderloop/render/problem_json.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <charconv>

namespace larderloop::cli {
namespace {

constexpr const char* kEatDown = "eat-down";
constexpr const char* kRefill = "refill";
constexpr std::int64_t kMostNodes = 1'000'000'000;
constexpr double kMostSeconds = 1e6;

Result<double> read_seconds(const std::string& text) {
  double value = 0;
  const char* end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, value, std::chars_format::fixed);
  if (error != std::errc() || stop != end || !(value > 0) || value > kMostSeconds) {
    return fail(ErrorKind::kBadData, "cannot read --seconds '" + text + "'",
                "write a number above 0 and up to a million, for example 10 or 0.5");
  }
  return value;
}

Result<plan::ModelFormat> read_format(const std::string& path) {
  const auto ends_with = [&](const std::string& ending) {
    return path.size() > ending.size() &&
           path.compare(path.size() - ending.size(), ending.size(), ending) == 0;
  };
  if (ends_with(".mps")) return plan::ModelFormat::kMps;
  if (ends_with(".lp")) return plan::ModelFormat::kLp;
  return fail(ErrorKind::kUsage, "cannot tell the format of --export-model '" + path + "'",
              "let the name end in .mps or .lp");
}

Result<PlanningProblem> problem_of_book(const PlanProblemOptions& given, Runtime& runtime) {
  return runtime.read([&](const Household& household, Asked asked) -> Result<PlanningProblem> {
    PlanningProblem problem;
    problem.name = (given.stage == kRefill ? kRefill : kEatDown);
    problem.name += " " + iso_day(asked.today);
    if (given.stage != kRefill) {
      auto eat = eat_down_problem(household, asked);
      if (!eat) return fail(eat.error());
      problem.problem = std::move(*eat);
      return problem;
    }
    auto kit = kit_named(household, given.kit);
    if (!kit) return fail(kit.error());
    auto refill = refill_problem(household, *kit, asked);
    if (!refill) return fail(refill.error());
    problem.name += " " + kit->str();
    problem.problem = std::move(*refill);
    return problem;
  });
}

Result<PlanningProblem> problem_of_file(const std::string& path) {
  auto text = read_input(path);
  if (!text) return fail(text.error());
  return read_problem(*text);
}

Result<int> write_model(const PlanProblemOptions& given, const PlanningProblem& problem,
                        const plan::Limits& limits, Runtime& runtime) {
  auto format = read_format(given.model);
  if (!format) return fail(format.error());
  auto model = model_text(problem, given.level, *format, limits);
  if (!model) return fail(model.error());
  for (const std::string& name : model->unproven) {
    runtime.warn("The level '" + name +
                 "' is held at the best value found, which is not proven best.");
  }
  if (Status written = runtime.deliver(given.model, model->text); !written)
    return fail(written.error());
  return 0;
}

Result<int> solve_and_print(const PlanProblemOptions& given, const PlanningProblem& problem,
                            const plan::Limits& limits, Runtime& runtime) {
  auto solution = solve_problem(problem, limits);
  if (!solution) return fail(solution.error());
  runtime.print_bytes(render_solution_json(problem, *solution));
  return proof_code(given, solution->proven(), runtime);
}

}  // namespace

void add_plan_problem_options(CLI::App& app, PlanProblemOptions& options) {
  const std::string effort = "How hard to try";
  add_text(
      app, "--nodes", options.nodes, "N",
      "Steps of branch and bound that each aim may take (20 when not given; 200 with --seconds)")
      ->group(effort);
  add_text(app, "--seconds", options.seconds, "S",
           "Seconds that the whole search may take; the same question may then get another answer")
      ->group(effort);
  app.add_flag("--prove", options.prove,
               "No limit but those given; end with 5 when the plan is not proven best")
      ->group(effort);
  const std::string group = "Planning problems by themselves";
  add_text(app, "--problem", options.problem, "FILE",
           "Solve the problem in this JSON file instead of the book's; - is standard input. The "
           "answer is always JSON")
      ->group(group);
  add_text(app, "--dump-problem", options.dump, "FILE",
           "Write the book's problem to this JSON file; - is standard output")
      ->group(group);
  add_text(app, "--export-model", options.model, "FILE",
           "Write the integer program of one aim to this file, .mps or .lp, for any solver")
      ->group(group);
  add_text(app, "--level", options.level, "NAME",
           "The aim that is exported (else the first); those before it are held at what is reached")
      ->group(group);
  add_text(app, "--stage", options.stage, "STAGE",
           "Which problem of the book: eat-down (when not given) or refill")
      ->group(group);
  add_text(app, "--kit", options.kit, "KIT", "The kit to refill, when there are several")
      ->group(group);
  app.add_flag("--plain-names", options.plain_names,
               "Write eater-1, product-1 and so on instead of the household's names")
      ->group(group);
}

Status check_plan_problem_options(const PlanProblemOptions& given) {
  const auto needs = [](const std::string& option, const std::string& other) {
    return fail(ErrorKind::kUsage, "'" + option + "' is only for " + other,
                "see: larderloop plan --help");
  };
  const bool of_book = given.problem.empty() && given.by_itself();
  if (!given.dump.empty() && !given.model.empty()) {
    return fail(ErrorKind::kUsage, "'--dump-problem' and '--export-model' do not go together",
                "write one after the other");
  }
  if (!given.level.empty() && given.model.empty()) return needs("--level", "--export-model");
  if (given.plain_names && given.dump.empty()) return needs("--plain-names", "--dump-problem");
  if (!given.stage.empty() && !of_book)
    return needs("--stage", "a problem of the book: --dump-problem or --export-model");
  if (!given.kit.empty() && given.stage != kRefill) return needs("--kit", "--stage refill");
  if (!given.stage.empty() && given.stage != kEatDown && given.stage != kRefill)
    return fail(unknown_word("--stage", given.stage, {kEatDown, kRefill}));
  if (!given.model.empty()) {
    if (auto format = read_format(given.model); !format) return fail(format.error());
  }
  if (auto limits = limits_of(given); !limits) return fail(limits.error());
  return {};
}

Result<plan::Limits> limits_of(const PlanProblemOptions& given) {
  plan::Limits limits = given.prove             ? plan::without_limits()
                        : given.seconds.empty() ? plan::household_limits()
                                                : plan::Limits{};
  if (!given.nodes.empty()) {
    auto nodes = read_count("--nodes", given.nodes, 1, kMostNodes);
    if (!nodes) return fail(nodes.error());
    limits.nodes = *nodes;
  }
  if (!given.seconds.empty()) {
    auto seconds = read_seconds(given.seconds);
    if (!seconds) return fail(seconds.error());
    limits.seconds = *seconds;
  }
  return limits;
}

void warn_of_clock(const PlanProblemOptions& given, Runtime& runtime) {
  if (given.seconds.empty()) return;
  runtime.warn("The search ends by the clock: the same question may get another answer.");
}

int proof_code(const PlanProblemOptions& given, bool proven, Runtime& runtime) {
  if (!given.prove || proven) return 0;
  return runtime.report(make_error(ErrorKind::kNotProven, "the plan is not proven best",
                                   "give it more: leave out --nodes and --seconds"));
}

Result<int> plan_problem(const PlanProblemOptions& given, Runtime& runtime) {
  auto limits = limits_of(given);
  if (!limits) return fail(limits.error());
  auto problem =
      given.problem.empty() ? problem_of_book(given, runtime) : problem_of_file(given.problem);
  if (!problem) return fail(problem.error());
  if (!given.dump.empty()) {
    const std::string text =
        render_problem_json(given.plain_names ? with_plain_names(*problem) : *problem);
    if (Status written = runtime.deliver(given.dump, text); !written) return fail(written.error());
    return 0;
  }
  warn_of_clock(given, runtime);
  if (!given.model.empty()) return write_model(given, *problem, *limits, runtime);
  return solve_and_print(given, *problem, *limits, runtime);
}

}  // namespace larderloop::cli
