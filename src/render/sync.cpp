#include "larderloop/render/sync.h"

#include "larderloop/calendar/object.h"
#include "larderloop/core/words.h"
#include "render/json_parts.h"

namespace larderloop {
namespace {

using json_parts::Json;

std::string counted(std::size_t count, const std::string& word) {
  return std::to_string(count) + " " + plural(word, static_cast<std::int64_t>(count));
}

std::string deed_words(const SyncLine& line, bool dry_run) {
  switch (line.step.deed) {
    case SyncDeed::kCreate:
      return dry_run ? "new, would be sent" : "new, sent";
    case SyncDeed::kReplace:
      return dry_run ? "changed, would be sent" : "changed, sent";
    case SyncDeed::kRemove:
      return dry_run ? "done or gone, would be taken away" : "done or gone, taken away";
    case SyncDeed::kAdopt:
      return "there already";
    case SyncDeed::kForget:
      return "gone here and there";
    case SyncDeed::kKeep:
      break;
  }
  switch (line.step.kept) {
    case KeptWhy::kEdited:
      return "left as it is: somebody changed it there";
    case KeptWhy::kUnknown:
      return "left as it is: it was there before this book sent it";
    case KeptWhy::kTakenAway:
      return "not sent again: somebody took it away there";
    case KeptWhy::kTicked:
      return "left as it is: ticked off there, and not yet taken in";
    case KeptWhy::kNone:
      break;
  }
  return "";
}

std::string line_words(const SyncLine& line, bool dry_run) {
  switch (line.result) {
    case SyncResult::kChanged:
      return "left as it is: somebody changed it there at this very time";
    case SyncResult::kRefused:
      return "not done: " + line.why;
    case SyncResult::kDone:
    case SyncResult::kKept:
      break;
  }
  return deed_words(line, dry_run);
}

const char* result_name(SyncResult result) {
  switch (result) {
    case SyncResult::kDone:
      return "done";
    case SyncResult::kKept:
      return "kept";
    case SyncResult::kChanged:
      return "changed";
    case SyncResult::kRefused:
      return "refused";
  }
  return "";
}

}  // namespace

Result<std::string> render_todos_ics(const TodoReport& report) {
  std::vector<CalendarTodo> todos;
  todos.reserve(report.todos.size());
  for (const Todo& each : report.todos) {
    CalendarTodo todo;
    todo.uid = each.uid;
    todo.changed_at = each.changed_at;
    todo.sequence = each.sequence;
    todo.due = each.due;
    todo.summary = each.summary;
    todo.description = each.description;
    todo.category = std::string(feed_kind_words(each.kind));
    todo.related_to = each.related_to;
    todo.mark = each.mark;
    todo.cancelled = each.cancelled;
    todos.push_back(std::move(todo));
  }
  return render_todos(report.name, std::move(todos));
}

std::string render_todos_json(const TodoReport& report, Day as_of) {
  Json todos = Json::array();
  for (const Todo& each : report.todos) {
    todos.push_back(
        Json{{"uid", each.uid},
             {"kind", std::string(feed_kind_words(each.kind))},
             {"due", iso_day(each.due)},
             {"meal", each.meal ? Json(std::string(meal_name(*each.meal))) : Json(nullptr)},
             {"summary", each.summary},
             {"description", each.description},
             {"related_to", each.related_to.empty() ? Json(nullptr) : Json(each.related_to)},
             {"changed_at", iso_instant(each.changed_at)},
             {"sequence", each.sequence},
             {"cancelled", each.cancelled}});
  }
  return json::document("todos", as_of, Json{{"name", report.name}, {"todos", std::move(todos)}});
}

std::string render_sync_text(const SyncReport& report) {
  std::string text;
  bool taken = false, ticked = false;
  for (const SyncLine& line : report.lines) {
    text += (line.step.summary.empty() ? line.step.uid : line.step.summary) + ": " +
            line_words(line, report.dry_run) + "\n";
    const bool kept = line.result == SyncResult::kKept || line.result == SyncResult::kChanged;
    ticked = ticked || (kept && line.step.kept == KeptWhy::kTicked);
    taken = taken || (kept && line.step.kept != KeptWhy::kTicked);
  }
  if (report.lines.empty())
    text += "Nothing to send: " + counted(report.same, "item") + " there as wanted.\n";
  else
    text += counted(report.same, "item") + " unchanged.\n";
  if (report.others > 0) text += counted(report.others, "other item") + " there, left alone.\n";
  if (ticked) text += "Take in what was ticked off: larderloop pull " + report.collection + "\n";
  if (taken)
    text +=
        "To put the household's own version in place of what others did there, add --take-over.\n";
  return text;
}

std::string render_sync_json(const SyncReport& report, Day as_of) {
  Json lines = Json::array();
  for (const SyncLine& line : report.lines) {
    lines.push_back(Json{{"uid", line.step.uid},
                         {"summary", line.step.summary},
                         {"deed", std::string(sync_deed_name(line.step.deed))},
                         {"result", result_name(line.result)},
                         {"kept_because", line.step.kept == KeptWhy::kNone
                                              ? Json(nullptr)
                                              : Json(std::string(kept_why_name(line.step.kept)))},
                         {"why", line.why}});
  }
  return json::document(
      "pushed", as_of,
      Json{{"collection", report.collection},
           {"dry_run", report.dry_run},
           {"items", std::move(lines)},
           {"unchanged", report.same},
           {"others", report.others},
           {"stopped", report.stopped.empty() ? Json(nullptr) : Json(report.stopped)}});
}

std::string render_ticks_text(const TickReport& report) {
  std::string text;
  for (const TickLine& line : report.lines) {
    text += line.summary + ": " + line.words + "\n";
    if (!line.next.empty()) text += "  " + line.next + "\n";
  }
  if (report.lines.empty()) text += "Nothing new was ticked off.\n";
  return text;
}

std::string render_ticks_json(const TickReport& report, const std::string& collection, Day as_of) {
  Json lines = Json::array();
  for (const TickLine& line : report.lines) {
    Json entries = Json::array();
    for (const Entry& each : line.entries) entries.push_back(each.id.value());
    lines.push_back(Json{{"uid", line.uid},
                         {"summary", line.summary},
                         {"result", std::string(tick_result_name(line.result))},
                         {"on", iso_day(line.on)},
                         {"entries", std::move(entries)},
                         {"words", line.words},
                         {"next", line.next.empty() ? Json(nullptr) : Json(line.next)}});
  }
  return json::document("pulled", as_of,
                        Json{{"collection", collection},
                             {"items", std::move(lines)},
                             {"before", report.before},
                             {"others", report.others}});
}

}  // namespace larderloop
