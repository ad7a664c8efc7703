// calendar.
#include "cli/command.h"
#include "cli/option_parts.h"
#include "cli/publish.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/render/plan_json.h"
#include "larderloop/render/sync.h"

#include <memory>

namespace larderloop::cli {
namespace {

struct CalendarOptions {
  std::string output, person, detail;
  std::vector<std::string> kinds;
  bool todos = false;
};

Result<FeedView> read_view(const Household& household, const CalendarOptions& given) {
  FeedView view = usual_view(household.settings.feed);
  if (!given.person.empty()) {
    auto person = named_person(household, given.person);
    if (!person) return fail(person.error());
    view.person = (*person)->key;
  }
  if (!given.detail.empty()) {
    auto detail = read_word<FeedDetail>("--detail", given.detail, parse_feed_detail,
                                        names_of(kAllFeedDetails, feed_detail_name));
    if (!detail) return fail(detail.error());
    view.detail = *detail;
  }
  if (!given.kinds.empty()) view.kinds.clear();
  for (const std::string& word : given.kinds) {
    auto kind = read_word<FeedKind>("--kind", word, parse_feed_kind,
                                    names_of(kAllFeedKinds, feed_kind_name));
    if (!kind) return fail(kind.error());
    view.kinds.insert(*kind);
  }
  return view;
}

// The question as it is remembered: with everything that changes the answer.
std::string question_of(const CalendarOptions& given, bool json) {
  std::string question = given.todos ? "todos" : "calendar";
  if (json) question += " json";
  if (!given.person.empty()) question += " person " + given.person;
  if (!given.detail.empty()) question += " detail " + given.detail;
  for (const std::string& kind : given.kinds) question += " kind " + kind;
  return question;
}

}  // namespace

Result<FeedReport> publish(Runtime& runtime, PlanReport* planned) {
  return runtime.keep([&](const Household& household, Asked asked) -> Result<Outcome<FeedReport>> {
    auto plan = make_plan(household, asked);
    if (!plan) return fail(plan.error());
    auto made = make_feed(household, plan->report, asked);
    if (!made) return fail(made.error());
    made->changes.shown_meals = std::move(plan->changes.shown_meals);
    made->changes.kept_plans = std::move(plan->changes.kept_plans);
    if (planned != nullptr) *planned = std::move(plan->report);
    return made;
  });
}

Action add_calendar(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<CalendarOptions>();
  app.add_option("-o,--output", given->output, "Write the calendar to this file")->type_name("FILE");
  add_text(app, "--person", given->person, "PERSON",
           "Only the meals in which this person eats; left out: everyone's");
  add_text(app, "--detail", given->detail, "DETAIL",
           "full, or private: neither food nor place nor name (else the setting of the book)");
  add_list(app, "--kind", given->kinds, "KIND",
           "Only this: review, eat-soon, shop or give-away; may be repeated (else the setting of "
           "the book)");
  app.add_flag("--todos", given->todos, "To-dos, to be ticked off, instead of events");
  set_help(app, {"larderloop calendar -o feed.ics\n"
                 "larderloop calendar --todos -o tasks.ics\n"
                 "larderloop calendar --person mira -o mira.ics\n"
                 "larderloop calendar --detail private --kind review -o hall.ics\n"
                 "larderloop calendar --json\n",
                 "An iCalendar file (RFC 5545): reviews of the next two years, meals of this week "
                 "and the next at which something is to be eaten, shop-by and give-away dates, all "
                 "as whole days. When nothing changed the file is the same byte for byte; what is "
                 "done leaves it. An event has the same identity in every view, but for what one person "
                 "sees of a meal day. Reviews as one repeating event a kit: larderloop settings set "
                 "feed-reviews series",
                 {}});
  return [given, &runtime]() -> Result<int> {
    const std::string question = question_of(*given, runtime.options.json);
    if (const auto kept = runtime.recall(question)) {
      const Status done = runtime.deliver(given->output, kept->first);
      if (!done) return fail(done.error());
      return 0;
    }
    if (given->todos &&
        (!given->person.empty() || !given->detail.empty() || !given->kinds.empty())) {
      return fail(ErrorKind::kUsage, "to-dos are for the whole household, in full detail",
                  "leave out --person, --detail and --kind, or --todos");
    }
    PlanReport planned;
    auto feed = publish(runtime, &planned);
    if (!feed) return fail(feed.error());
    if (given->todos) {
      const TodoReport report = make_todos(runtime.household(), planned, *feed);
      auto bytes = runtime.options.json
                       ? Result<std::string>(render_todos_json(report, runtime.asked().today))
                       : render_todos_ics(report);
      if (!bytes) return fail(bytes.error());
      runtime.remember(question, *bytes, 0);
      if (Status done = runtime.deliver(given->output, *bytes); !done) return fail(done.error());
      return 0;
    }
    auto view = read_view(runtime.household(), *given);
    if (!view) return fail(view.error());
    const FeedReport seen = feed_view(runtime.household(), *feed, *view);
    auto bytes = runtime.options.json
                     ? Result<std::string>(render_feed_json(seen, runtime.asked().today))
                     : render_feed_ics(seen);
    if (!bytes) return fail(bytes.error());
    runtime.remember(question, *bytes, 0);
    if (Status done = runtime.deliver(given->output, *bytes); !done) return fail(done.error());
    return 0;
  };
}

}  // namespace larderloop::cli
