// trial start, note, finish, show.
#include "cli/command.h"
#include "cli/kit_argument.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/app/trial.h"
#include "larderloop/render/trial.h"

#include <memory>

namespace larderloop::cli {
namespace {

struct TrialOptions {
  std::string kit, from, through, note, trial, food, verdict, person, on;
  std::vector<std::string> people;
};

Status read_a_day(const char* name, const std::string& text, Day today, Day& into) {
  if (text.empty()) return {};
  auto day = read_day(name, text, today);
  if (!day) return fail(day.error());
  into = *day;
  return {};
}

Result<Trial> read_trial(const Household& household, const TrialOptions& given, Day today) {
  Trial trial;
  auto kit = kit_named(household, given.kit);
  if (!kit) return fail(kit.error());
  trial.kit = *kit;
  trial.from = today;
  if (Status read = read_a_day("--from", given.from, today, trial.from); !read)
    return fail(read.error());
  trial.through = trial.from + Days(1);
  if (Status read = read_a_day("--through", given.through, today, trial.through); !read)
    return fail(read.error());
  for (const std::string& name : given.people) {
    auto person = named_person(household, name);
    if (!person) return fail(person.error());
    trial.people.push_back((*person)->key);
  }
  trial.note = given.note;
  return trial;
}

Result<TrialNote> read_note(const Household& household, const TrialOptions& given, Day today) {
  TrialNote note;
  auto trial = named_trial(household, given.trial);
  if (!trial) return fail(trial.error());
  note.trial = *trial;
  auto food = named_food(household, given.food);
  if (!food) return fail(food.error());
  note.food = (*food)->key;
  auto verdict = read_word<Verdict>("VERDICT", given.verdict, parse_verdict,
                                    names_of(kAllVerdicts, verdict_name));
  if (!verdict) return fail(verdict.error());
  note.verdict = *verdict;
  auto person = named_person(household, given.person);
  if (!person) return fail(person.error());
  note.person = (*person)->key;
  note.on = today;
  if (Status read = read_a_day("--on", given.on, today, note.on); !read) return fail(read.error());
  note.note = given.note;
  return note;
}

void tell(Runtime& runtime, const TrialReport& report) {
  if (runtime.options.json)
    runtime.print_bytes(render_trial_json(runtime.household(), report, runtime.asked().today));
  else
    runtime.print(render_trial_text(runtime.household(), report));
}

}  // namespace

Action add_trial_start(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<TrialOptions>();
  app.add_option("KIT", given->kit, "The kit; may be left out when there is only one");
  add_text(app, "--from", given->from, "DATE", "First day; today if left out");
  add_text(app, "--through", given->through, "DATE",
           "Last day; the day after the first if left out");
  add_list(app, "--people", given->people, "PEOPLE", "Who lives from it; left out: everyone");
  add_text(app, "--note", given->note, "TEXT", "A remark");
  set_help(app, {"larderloop trial start home-kit --from 2027-05-08 --people mira,jorik\n",
                 "A weekend lived from the kit shows what no list does. Record what is eaten as "
                 "always (record eaten), say what it was like "
                 "(trial note), and end it (trial finish).",
                 {}});
  return [given, &runtime]() -> Result<int> {
    auto done =
        runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<TrialReport>> {
          auto trial = read_trial(household, *given, asked.today);
          if (!trial) return fail(trial.error());
          return start_trial(household, std::move(*trial), asked);
        });
    if (!done) return fail(done.error());
    if (runtime.options.json) tell(runtime, *done);
    runtime.note("began trial " + std::to_string(done->trial.id.value()) +
                 "; next: larderloop trial note FOOD liked --person PERSON");
    return 0;
  };
}

Action add_trial_note(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<TrialOptions>();
  app.add_option("FOOD", given->food, "Key or name")->required();
  app.add_option("VERDICT", given->verdict,
                 "liked, tired, hard-to-open, hard-to-prepare, needed-water, not-enough")
      ->required();
  add_text(app, "--person", given->person, "PERSON", "Who says so")->required();
  add_text(app, "--trial", given->trial, "NUMBER", "Which trial; the latest if left out");
  add_text(app, "--on", given->on, "DATE", "When; today if left out");
  add_text(app, "--note", given->note, "TEXT", "A remark");
  set_help(
      app,
      {"larderloop trial note lentil-stew-pouch liked --person jorik\n"
       "larderloop trial note sardine-tin hard-to-open --person odil --note 'the ring broke'\n",
       "Several verdicts on one food are several notes. Liked and tired change ratings at the end "
       "of the trial; the others become advice.",
       {}});
  return [given, &runtime]() -> Result<int> {
    auto done =
        runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<TrialReport>> {
          auto note = read_note(household, *given, asked.today);
          if (!note) return fail(note.error());
          return larderloop::add_trial_note(household, std::move(*note), asked);
        });
    if (!done) return fail(done.error());
    if (runtime.options.json) tell(runtime, *done);
    runtime.note("noted in trial " + std::to_string(done->trial.id.value()) +
                 "; at its end: larderloop trial finish " + std::to_string(done->trial.id.value()));
    return 0;
  };
}

Action add_trial_finish(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<TrialOptions>();
  app.add_option("TRIAL", given->trial, "Its number; the latest if left out");
  add_text(app, "--note", given->note, "TEXT", "A remark");
  set_help(app, {"larderloop trial finish\nlarderloop trial finish 2 -n\n",
                 "Ends the trial: what somebody liked is rated one higher, what somebody got tired "
                 "of one lower (never to a refusal). "
                 "Refills and meals follow the ratings.",
                 {}});
  return [given, &runtime]() -> Result<int> {
    auto done =
        runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<TrialReport>> {
          auto trial = named_trial(household, given->trial);
          if (!trial) return fail(trial.error());
          return finish_trial(household, *trial, given->note, asked);
        });
    if (!done) return fail(done.error());
    tell(runtime, *done);
    runtime.note("ended trial " + std::to_string(done->trial.id.value()) +
                 "; next: larderloop plan");
    return 0;
  };
}

Action add_trial_show(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<TrialOptions>();
  app.add_option("TRIAL", given->trial, "Its number; the latest if left out");
  set_help(app, {"larderloop trial show\nlarderloop trial show 1 --json\n",
                 "What was eaten, what was said of it, and what follows from that.",
                 {}});
  return [given, &runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked) -> Result<int> {
      auto trial = named_trial(household, given->trial);
      if (!trial) return fail(trial.error());
      tell(runtime, show_trial(household, *trial));
      return 0;
    });
  };
}

}  // namespace larderloop::cli
