// push and pull: the calendar on a CalDAV server.
#include "cli/command.h"
#include "cli/credentials.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/feed.h"
#include "larderloop/dav/collection.h"
#include "larderloop/render/plan_json.h"
#include "larderloop/render/sync.h"

#include <algorithm>
#include <memory>

namespace larderloop::cli {
namespace {

struct ServerOptions {
  std::string url, credentials, ca, timeout;
  bool insecure = false;
};

void add_server_options(CLI::App& app, ServerOptions& given) {
  app.add_option("URL", given.url, "Address of one calendar on the server: https://host/path/")
      ->required();
  add_text(app, "--credentials", given.credentials, "FILE",
           "Name in its first line, password in its second; mode 0600");
  add_text(app, "--ca", given.ca, "FILE", "Trust these certificates (PEM) instead of the system's");
  add_text(app, "--timeout", given.timeout, "SECONDS",
           "How long one request may take, 1 to 600 (30)");
  app.add_flag("--insecure", given.insecure,
               "Allow http:// to another machine: only in a home network that you trust");
}

Result<DavCollection> open_collection(const ServerOptions& given, Runtime& runtime) {
  DavAccess access;
  access.url = given.url;
  access.allow_plain = given.insecure;
  access.ca_file = given.ca;
  if (!given.timeout.empty()) {
    auto seconds = read_count("--timeout", given.timeout, 1, 600);
    if (!seconds) return fail(seconds.error());
    access.timeout_seconds = static_cast<int>(*seconds);
  }
  if (!given.credentials.empty()) {
    auto credentials = read_credentials(given.credentials);
    if (!credentials) return fail(credentials.error());
    access.user = credentials->user;
    access.password = credentials->password;
  }
  const auto address = parse_dav_address(given.url);
  const bool open_wire =
      address && address->scheme == "http" && !address->is_loopback() && given.insecure;
  auto collection = DavCollection::open(std::move(access));
  if (collection && open_wire)
    runtime.warn("not protected: everybody in this network can read the calendar and the password");
  return collection;
}

// What the household wants on the server, with the plan and the stamps kept.
Result<std::vector<CalendarObject>> wanted_objects(Runtime& runtime, bool todos) {
  PlanReport planned;
  auto feed =
      runtime.keep([&](const Household& household, Asked asked) -> Result<Outcome<FeedReport>> {
        auto plan = make_plan(household, asked);
        if (!plan) return fail(plan.error());
        auto made = make_feed(household, plan->report, asked);
        if (!made) return fail(made.error());
        made->changes.shown_meals = std::move(plan->changes.shown_meals);
        made->changes.kept_plans = std::move(plan->changes.kept_plans);
        planned = std::move(plan->report);
        return made;
      });
  if (!feed) return fail(feed.error());
  auto bytes = todos ? render_todos_ics(make_todos(runtime.household(), planned, *feed))
                     : render_feed_ics(*feed);
  if (!bytes) return fail(bytes.error());
  auto objects = split_calendar(*bytes);
  if (!objects) return fail(objects.error());
  // The line that keeps an empty file legal is no item of a collection, which may be empty.
  objects->erase(std::remove_if(objects->begin(), objects->end(),
                                [](const CalendarObject& each) {
                                  return each.bytes.find("STATUS:CANCELLED") != std::string::npos;
                                }),
                 objects->end());
  return objects;
}

std::vector<PushedItem> of_collection(const Household& household, const std::string& url) {
  std::vector<PushedItem> items;
  for (const PushedItem& each : household.pushed) {
    if (each.collection == url) items.push_back(each);
  }
  return items;
}

// The list of what was sent, with what one step changed.
void remember(std::vector<PushedItem>& pushed, const std::string& url, const SyncStep& step,
              const std::string& etag) {
  pushed.erase(std::remove_if(pushed.begin(), pushed.end(),
                              [&](const PushedItem& each) {
                                return each.collection == url && each.uid == step.uid;
                              }),
               pushed.end());
  if (step.deed == SyncDeed::kRemove || step.deed == SyncDeed::kForget) return;
  pushed.push_back({url, step.uid, step.href, etag, step.bytes});
}

Result<std::vector<RemoteItem>> remote_items(DavCollection& collection, bool todos) {
  if (Status fit = collection.check(todos ? "VTODO" : "VEVENT"); !fit) return fail(fit.error());
  auto listed = collection.list();
  if (!listed) return fail(listed.error());
  std::vector<RemoteItem> items;
  for (DavItem& each : *listed)
    items.push_back({std::move(each.href), std::move(each.etag), std::move(each.data)});
  return items;
}

// Sends one step. After a 412 it looks: an answer that was lost on its way has done its work.
Result<SyncLine> send(DavCollection& collection, SyncStep step, std::string& etag) {
  SyncLine line;
  etag = step.etag;
  if (step.deed == SyncDeed::kKeep) line.result = SyncResult::kKept;
  if (step.deed == SyncDeed::kCreate) step.href = collection.href_for(step.uid);
  Result<DavDone> done = DavDone{};
  if (step.deed == SyncDeed::kCreate || step.deed == SyncDeed::kReplace)
    done = collection.put(step.href, step.bytes, step.etag);
  if (step.deed == SyncDeed::kRemove) done = collection.remove(step.href, step.etag);
  if (!done) return fail(done.error());
  const bool sent = step.deed == SyncDeed::kCreate || step.deed == SyncDeed::kReplace;
  if (sent && done->result == DavResult::kDone) etag = done->etag;
  if (done->result == DavResult::kGone && step.deed != SyncDeed::kRemove)
    line.result = SyncResult::kChanged;
  if (done->result == DavResult::kChanged) {
    line.result = SyncResult::kChanged;
    auto there = collection.get(step.href);
    if (!there) return fail(there.error());
    const auto object = *there ? read_object((*there)->data) : std::nullopt;
    const auto wanted = read_object(step.bytes);
    if (sent && object && wanted && object->uid == step.uid && object->content == wanted->content &&
        object->state == TickState::kOpen) {
      line.result = SyncResult::kDone;
      etag = (*there)->etag;
    }
  }
  if (done->result == DavResult::kRefused) {
    line.result = SyncResult::kRefused;
    line.why = done->why;
  }
  line.step = std::move(step);
  return line;
}

Result<int> push(const ServerOptions& server, bool todos, bool take_over, Runtime& runtime) {
  auto collection = open_collection(server, runtime);
  if (!collection) return fail(collection.error());
  auto wanted = wanted_objects(runtime, todos);
  if (!wanted) return fail(wanted.error());
  const std::string& url = collection->url();
  auto remote = remote_items(*collection, todos);
  if (!remote) return fail(remote.error());
  std::vector<PushedItem> pushed = runtime.household().pushed;
  SyncPlan plan = plan_sync(*wanted, of_collection(runtime.household(), url), *remote,
                            runtime.household().tasks_done, take_over);
  SyncReport report;
  report.collection = url;
  report.dry_run = runtime.options.dry_run;
  report.same = plan.same;
  report.others = plan.others;
  std::optional<Error> stopped;
  for (SyncStep& step : plan.steps) {
    if (report.dry_run) {
      const SyncResult result =
          step.deed == SyncDeed::kKeep ? SyncResult::kKept : SyncResult::kDone;
      report.lines.push_back({std::move(step), result, {}});
      continue;
    }
    std::string etag;
    auto line = send(*collection, std::move(step), etag);
    if (!line) {
      stopped = line.error();
      report.stopped = stopped->what;
      break;
    }
    if (line->result == SyncResult::kDone) remember(pushed, url, line->step, etag);
    report.lines.push_back(std::move(*line));
  }
  std::sort(pushed.begin(), pushed.end(), [](const PushedItem& a, const PushedItem& b) {
    return std::tie(a.collection, a.uid) < std::tie(b.collection, b.uid);
  });
  // What was sent is remembered also when the rest could not be.
  if (!report.dry_run && pushed != runtime.household().pushed) {
    auto kept = runtime.write([&](const Household&, Asked) -> Result<Outcome<int>> {
      Outcome<int> outcome{0, {}};
      outcome.changes.pushed = pushed;
      return outcome;
    });
    if (!kept) return fail(kept.error());
  }
  // Adopting and forgetting are the book's own affair.
  report.lines.erase(std::remove_if(report.lines.begin(), report.lines.end(),
                                    [](const SyncLine& line) {
                                      return line.step.deed == SyncDeed::kAdopt ||
                                             line.step.deed == SyncDeed::kForget;
                                    }),
                     report.lines.end());
  if (stopped && report.lines.empty()) return fail(*stopped);
  if (runtime.options.json)
    runtime.print_bytes(render_sync_json(report, runtime.asked().today));
  else
    runtime.print(render_sync_text(report));
  if (stopped) return fail(*stopped);
  return report.open_ends() ? 1 : 0;
}

Result<int> pull(const ServerOptions& server, Runtime& runtime) {
  auto collection = open_collection(server, runtime);
  if (!collection) return fail(collection.error());
  auto remote = remote_items(*collection, true);
  if (!remote) return fail(remote.error());
  const std::string& url = collection->url();
  auto report =
      runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<TickReport>> {
        std::vector<Tick> ticks;
        const std::vector<PushedItem> pushed = of_collection(household, url);
        for (const RemoteItem& each : *remote) {
          const auto object = read_object(each.bytes);
          if (!object || !object->todo || object->state != TickState::kDone) continue;
          Tick tick{object->uid, object->summary, object->mark, object->done_at};
          const auto sent = std::find_if(pushed.begin(), pushed.end(), [&](const PushedItem& item) {
            return item.uid == object->uid;
          });
          if (const auto before = sent == pushed.end() ? std::nullopt : read_object(sent->sent)) {
            tick.summary = before->summary;
            tick.mark = before->mark;
          }
          ticks.push_back(std::move(tick));
        }
        std::sort(ticks.begin(), ticks.end(),
                  [](const Tick& a, const Tick& b) { return a.uid < b.uid; });
        auto plan = make_plan(household, asked);
        if (!plan) return fail(plan.error());
        return take_ticks(household, plan->report, ticks, asked);
      });
  if (!report) return fail(report.error());
  if (runtime.options.json)
    runtime.print_bytes(render_ticks_json(*report, url, runtime.asked().today));
  else
    runtime.print(render_ticks_text(*report));
  const bool asks =
      std::any_of(report->lines.begin(), report->lines.end(),
                  [](const TickLine& line) { return line.result == TickResult::kAsk; });
  return asks ? 1 : 0;
}

constexpr const char* kSafety =
    "The password comes from a file that only you can read. https is needed, but for this very "
    "machine; redirections are not followed.";

}  // namespace

Action add_push(CLI::App& app, Runtime& runtime) {
  struct Options {
    ServerOptions server;
    bool todos = false, take_over = false;
  };
  auto given = std::make_shared<Options>();
  add_server_options(app, given->server);
  app.add_flag("--todos", given->todos,
               "Send the to-dos, to a task list of their own, instead of the events");
  app.add_flag(
      "--take-over", given->take_over,
      "Put the household's version in place of what others changed, made or took away there");
  set_help(app,
           {"larderloop push https://calendar.example/mira/kit/ --credentials "
            "~/.config/larderloop/server\n"
            "larderloop push https://calendar.example/mira/kit-tasks/ --todos --credentials "
            "~/.config/larderloop/server\n"
            "larderloop push https://calendar.example/mira/kit/ --credentials server --dry-run\n",
            std::string("Brings a calendar on a CalDAV server (RFC 4791) up to date: only what "
                        "changed is sent, what is done is taken away. What somebody "
                        "else changed, made or took away there is told and left as it is. The "
                        "calendar must exist on the server. ") +
                kSafety,
            {{1, "something was left as it is there, or the server refused it: see the lines"}}});
  return [given, &runtime]() -> Result<int> {
    return push(given->server, given->todos, given->take_over, runtime);
  };
}

Action add_pull(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ServerOptions>();
  add_server_options(app, *given);
  set_help(app,
           {"larderloop pull https://calendar.example/mira/kit-tasks/ --credentials "
            "~/.config/larderloop/server\n",
            std::string("Takes in what was ticked off in a task list that push --todos filled, "
                        "each once: a meal becomes entries of what was eaten as it was "
                        "planned, giving away likewise; shopping and reviews are only noted. When "
                        "the plan of a meal has changed since, nothing is "
                        "recorded and you are asked. The list on the server is not changed; the "
                        "next push takes away what is done. ") +
                kSafety,
            {{1, "a tick could not be taken in: see the lines"}}});
  return [given, &runtime]() -> Result<int> { return pull(*given, runtime); };
}

}  // namespace larderloop::cli
