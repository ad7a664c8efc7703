// plan, shop, nudge: the answers.
#include "cli/command.h"
#include "cli/plan_problem.h"
#include "larderloop/app/nudge.h"
#include "larderloop/app/shop.h"
#include "larderloop/render/plan_json.h"
#include "larderloop/render/plan_text.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <memory>

namespace larderloop::cli {
namespace {

// The plan, with the shown meals kept.
Result<PlanReport> keep_plan(Runtime& runtime, const PlanEffort& effort = {}) {
  return runtime.keep(
      [&](const Household& household, Asked asked) { return make_plan(household, asked, effort); });
}

bool proven(const PlanReport& plan) {
  const auto all = [](const std::vector<plan::Level>& levels) {
    return std::all_of(levels.begin(), levels.end(),
                       [](const plan::Level& level) { return level.proven(); });
  };
  return all(plan.eat_down.levels) &&
         std::all_of(plan.kits.begin(), plan.kits.end(),
                     [&](const KitPlan& kit) { return all(kit.levels); });
}

}  // namespace

Action add_plan(CLI::App& app, Runtime& runtime) {
  auto all = std::make_shared<bool>(false);
  auto compare = std::make_shared<bool>(false);
  app.add_flag("--all", *all, "Every planned meal, not only this week and the next");
  app.add_flag("--compare", *compare,
               "Also set it beside plain date order, in numbers: waste, money, packs, repeats, broken rules");
  auto problem = std::make_shared<PlanProblemOptions>();
  add_plan_problem_options(app, *problem);
  set_help(
      app,
      {"larderloop plan\nlarderloop plan --all\nlarderloop plan --now 2027-10-02\n"
       "larderloop plan --dump-problem week.json\nlarderloop plan --problem week.json --prove\n",
       "For each kit: what comes out, what goes in from the pantry, what to buy. Then the meals at "
       "which the "
       "household eats up what is ageing, soonest date first, and what to give away. Every rule "
       "(allergies, diets, "
       "refusals, dates, appetite, weekly tolerance) is checked again before the plan is shown. A "
       "problem in a file needs no book; docs/planning.md describes its form.",
       {{5, "with --prove: the plan is not proven best"}}});
  return [all, compare, problem, &runtime]() -> Result<int> {
    if (Status sound = check_plan_problem_options(*problem); !sound) return fail(sound.error());
    if (problem->by_itself()) {
      if (*all || *compare) {
        return fail(ErrorKind::kUsage, "'--all' and '--compare' are for the plan of the book",
                    "leave them out here");
      }
      return plan_problem(*problem, runtime);
    }
    PlanEffort effort;
    effort.with_plain = *compare;
    if (problem->limited()) {
      auto limits = limits_of(*problem);
      if (!limits) return fail(limits.error());
      effort.limits = *limits;
    }
    warn_of_clock(*problem, runtime);
    auto plan = keep_plan(runtime, effort);
    if (!plan) return fail(plan.error());
    const int code = proof_code(*problem, proven(*plan), runtime);
    if (runtime.options.json) {
      runtime.print_bytes(render_plan_json(runtime.household(), *plan));
      return code;
    }
    runtime.print(render_plan_text(runtime.household(), *plan, *all));
    if (*compare) runtime.print("\n" + render_compare_text(plan->eat_down));
    return code;
  };
}

Action add_shop(CLI::App& app, Runtime& runtime) {
  struct Options {
    bool pantry = false, csv = false;
    std::string output;
  };
  auto given = std::make_shared<Options>();
  app.add_flag("--pantry", given->pantry, "Also what is missing to the par levels of the pantry");
  app.add_flag("--csv", given->csv, "As a table for a spreadsheet (RFC 4180)");
  app.add_option("-o,--output", given->output, "Write to this file")->type_name("FILE");
  set_help(app, {"larderloop shop\nlarderloop shop --pantry\nlarderloop shop --csv -o list.csv\n",
                 "The replacement list: how many packs, good through which date at least, for "
                 "whom, and what the label must "
                 "not say. Read the label of every package: recipes change between purchases.",
                 {}});
  return [given, &runtime]() -> Result<int> {
    auto plan = keep_plan(runtime);
    if (!plan) return fail(plan.error());
    const Household& household = runtime.household();
    const ShopList list = shop_list(household, *plan, given->pantry);
    if (!given->csv && !runtime.options.json && given->output.empty()) {
      runtime.print(render_shop_text(household, list));
      return 0;
    }
    const std::string bytes = given->csv             ? render_shop_csv(household, list)
                              : runtime.options.json ? render_shop_json(household, list)
                                                     : render_shop_text(household, list);
    if (Status done = runtime.deliver(given->output, bytes); !done) return fail(done.error());
    return 0;
  };
}

Action add_nudge(CLI::App& app, Runtime& runtime) {
  auto only_if_due = std::make_shared<bool>(false);
  auto exit_code = std::make_shared<bool>(false);
  auto html = std::make_shared<bool>(false);
  app.add_flag("--html", *html, "As a page of HTML, for a mail");
  app.add_flag("--only-if-due", *only_if_due, "Say nothing when nothing is due");
  app.add_flag("--exit-code", *exit_code,
               "End with 1 when something is due, with 0 when nothing is");
  set_help(app, {"larderloop nudge\nlarderloop nudge --only-if-due\nlarderloop nudge --html\n",
                 "This week in at most twelve lines, for a mail or a chat: what to eat at which "
                 "meal, what to buy, what to "
                 "give away, which review is due.",
                 {{1, "with --exit-code: something is due"}}});
  const auto show = [only_if_due, exit_code, html, &runtime](const std::string& text, bool due) {
    if (*html && (due || !*only_if_due)) {
      runtime.print_bytes(text);
    } else if (runtime.options.json) {
      runtime.print_bytes(text);
    } else if (due || !*only_if_due) {
      runtime.print(text);
    }
    return *exit_code && due ? 1 : 0;
  };
  return [show, html, &runtime]() -> Result<int> {
    if (*html && runtime.options.json)
      return fail(ErrorKind::kUsage, "--html and --json are two forms of one answer", "leave one out");
    const std::string question = *html ? "nudge html" : runtime.options.json ? "nudge json" : "nudge";
    if (const auto kept = runtime.recall(question)) return show(kept->first, kept->second == 1);
    auto nudge =
        runtime.keep([&](const Household& household, Asked asked) -> Result<Outcome<NudgeReport>> {
          auto plan = make_plan(household, asked);
          if (!plan) return fail(plan.error());
          return Outcome<NudgeReport>{make_nudge(household, plan->report, asked),
                                      std::move(plan->changes)};
        });
    if (!nudge) return fail(nudge.error());
    const std::string text = *html                  ? render_nudge_html(runtime.household(), *nudge)
                             : runtime.options.json ? render_nudge_json(*nudge)
                                                    : render_nudge_text(runtime.household(), *nudge);
    runtime.remember(question, text, nudge->due() ? 1 : 0);
    return show(text, nudge->due());
  };
}

}  // namespace larderloop::cli
