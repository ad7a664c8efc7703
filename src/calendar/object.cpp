#include "larderloop/calendar/object.h"

#include "calendar/ical_build.h"
#include "calendar/ical_handles.h"

#include <algorithm>
#include <map>
#include <set>

namespace larderloop {
namespace {

constexpr const char* kMark = "X-LARDERLOOP-MARK";

tl::unexpected<Error> defect(std::string what) {
  return fail(ErrorKind::kDefect, std::move(what));
}

Status check(const std::vector<CalendarTodo>& todos) {
  if (todos.empty()) return defect("a calendar without a to-do is not legal");
  std::set<std::string_view> uids;
  for (const CalendarTodo& each : todos) {
    if (!ical::is_uid(each.uid))
      return defect("the to-do uid '" + each.uid + "' is not hex and '-'");
    if (!each.related_to.empty() && !ical::is_uid(each.related_to))
      return defect("the uid '" + each.related_to + "' is not hex and '-'");
    if (!each.mark.empty() && !ical::is_uid(each.mark))
      return defect("the mark '" + each.mark + "' is not hex and '-'");
    if (each.sequence < 0) return defect("the to-do '" + each.uid + "' has a negative sequence");
    if (!ical::is_plain_category(each.category))
      return defect("the category '" + each.category + "' has more than letters");
    if (!uids.insert(each.uid).second) return defect("two to-dos have the uid '" + each.uid + "'");
  }
  return {};
}

ical::Builder todo_of(const CalendarTodo& todo) {
  ical::Builder built(ICAL_VTODO_COMPONENT);
  const std::string summary = cut_text(clean_line(todo.summary), ical::kSummaryOctets);
  const std::string description = cut_text(clean_text(todo.description), ical::kDescriptionOctets);
  built.add(icalproperty_new_uid(todo.uid.c_str()));
  built.add(icalproperty_new_dtstamp(ical::utc(todo.changed_at)));
  built.add(icalproperty_new_lastmodified(ical::utc(todo.changed_at)));
  built.add(icalproperty_new_sequence(todo.sequence));
  built.add(icalproperty_new_due(ical::day(todo.due)));
  if (!summary.empty()) built.add(icalproperty_new_summary(summary.c_str()));
  if (!description.empty()) built.add(icalproperty_new_description(description.c_str()));
  if (!todo.category.empty()) built.add(icalproperty_new_categories(todo.category.c_str()));
  if (!todo.related_to.empty()) built.add(icalproperty_new_relatedto(todo.related_to.c_str()));
  if (!todo.mark.empty()) built.add_extension(kMark, todo.mark);
  built.add(
      icalproperty_new_status(todo.cancelled ? ICAL_STATUS_CANCELLED : ICAL_STATUS_NEEDSACTION));
  return built;
}

bool is_item(icalcomponent* each) {
  const icalcomponent_kind kind = icalcomponent_isa(each);
  return kind == ICAL_VEVENT_COMPONENT || kind == ICAL_VTODO_COMPONENT;
}

// The events and to-dos of a calendar, borrowed.
std::vector<icalcomponent*> items_of(icalcomponent* calendar) {
  std::vector<icalcomponent*> items;
  icalcompiter each = icalcomponent_begin_component(calendar, ICAL_ANY_COMPONENT);
  for (; icalcompiter_deref(&each) != nullptr; icalcompiter_next(&each)) {
    if (is_item(icalcompiter_deref(&each))) items.push_back(icalcompiter_deref(&each));
  }
  return items;
}

std::string uid_of(icalcomponent* item) {
  const char* uid = icalcomponent_get_uid(item);
  return uid == nullptr ? std::string() : std::string(uid);
}

std::string summary_of(icalcomponent* item) {
  const char* summary = icalcomponent_get_summary(item);
  return summary == nullptr ? std::string() : std::string(summary);
}

std::string mark_of(icalcomponent* item) {
  icalproperty* property = icalcomponent_get_first_property(item, ICAL_X_PROPERTY);
  for (; property != nullptr; property = icalcomponent_get_next_property(item, ICAL_X_PROPERTY)) {
    const char* name = icalproperty_get_x_name(property);
    const ical::Buffer value(icalproperty_get_value_as_string_r(property));
    if (name != nullptr && value && std::string_view(name) == kMark) return value.get();
  }
  return {};
}

bool is_stamp(icalproperty_kind kind) {
  return kind == ICAL_DTSTAMP_PROPERTY || kind == ICAL_CREATED_PROPERTY ||
         kind == ICAL_LASTMODIFIED_PROPERTY || kind == ICAL_SEQUENCE_PROPERTY ||
         kind == ICAL_X_PROPERTY || kind == ICAL_XLICERROR_PROPERTY ||
         kind == ICAL_ACKNOWLEDGED_PROPERTY;
}

bool is_progress(icalproperty_kind kind) {
  return kind == ICAL_STATUS_PROPERTY || kind == ICAL_COMPLETED_PROPERTY ||
         kind == ICAL_PERCENTCOMPLETE_PROPERTY;
}

// Values that stand for the default are as good as left out: some servers and clients write them.
bool is_default(icalproperty* property) {
  const icalproperty_kind kind = icalproperty_isa(property);
  return (kind == ICAL_PRIORITY_PROPERTY && icalproperty_get_priority(property) == 0) ||
         (kind == ICAL_CLASS_PROPERTY && icalproperty_get_class(property) == ICAL_CLASS_PUBLIC);
}

// The lines of a component and of what is in it, sorted: order and folding do not count.
std::vector<std::string> lines_of(icalcomponent* component, bool todo) {
  std::vector<std::string> lines;
  icalproperty* property = icalcomponent_get_first_property(component, ICAL_ANY_PROPERTY);
  for (; property != nullptr;
       property = icalcomponent_get_next_property(component, ICAL_ANY_PROPERTY)) {
    const icalproperty_kind kind = icalproperty_isa(property);
    if (is_stamp(kind) || is_default(property) || (todo && is_progress(kind))) continue;
    const ical::Buffer text(icalproperty_as_ical_string_r(property));
    if (text) lines.emplace_back(text.get());
  }
  icalcompiter each = icalcomponent_begin_component(component, ICAL_ANY_COMPONENT);
  for (; icalcompiter_deref(&each) != nullptr; icalcompiter_next(&each)) {
    icalcomponent* inner = icalcompiter_deref(&each);
    std::string block = std::string(icalcomponent_kind_to_string(icalcomponent_isa(inner))) + "\n";
    for (const std::string& line : lines_of(inner, false)) block += " " + line;
    lines.push_back(block);
  }
  std::sort(lines.begin(), lines.end());
  return lines;
}

std::optional<Instant> instant_of(const icaltimetype& time) {
  if (icaltime_is_null_time(time)) return std::nullopt;
  const auto on = ical::day(time);
  if (!on || time.hour < 0 || time.hour > 23 || time.minute < 0 || time.minute > 59 ||
      time.second < 0 || time.second > 60)
    return std::nullopt;
  return midnight(*on) + std::chrono::hours(time.hour) + std::chrono::minutes(time.minute) +
         std::chrono::seconds(time.second);
}

TickState state_of(icalcomponent* todo) {
  const icalproperty_status status = icalcomponent_get_status(todo);
  if (status == ICAL_STATUS_COMPLETED) return TickState::kDone;
  if (status == ICAL_STATUS_CANCELLED) return TickState::kDropped;
  if (status == ICAL_STATUS_INPROCESS) return TickState::kStarted;
  // Some clients tick by the moment or by one hundred per cent alone (RFC 5545 sections 3.8.2.1
  // and 3.8.1.8).
  if (icalcomponent_get_first_property(todo, ICAL_COMPLETED_PROPERTY) != nullptr)
    return TickState::kDone;
  icalproperty* percent = icalcomponent_get_first_property(todo, ICAL_PERCENTCOMPLETE_PROPERTY);
  if (percent == nullptr || icalproperty_get_percentcomplete(percent) <= 0) return TickState::kOpen;
  return icalproperty_get_percentcomplete(percent) >= 100 ? TickState::kDone : TickState::kStarted;
}

ical::Component parse(std::string_view bytes) {
  ical::prepare();
  const std::string text(bytes);
  ical::Component parsed(icalparser_parse_string(text.c_str()));
  if (parsed && icalcomponent_isa(parsed.get()) != ICAL_VCALENDAR_COMPONENT) parsed.reset();
  return parsed;
}

}  // namespace

Result<std::string> render_todos(std::string_view name, std::vector<CalendarTodo> todos) {
  if (Status sound = check(todos); !sound) return fail(sound.error());
  std::sort(todos.begin(), todos.end(), [](const CalendarTodo& a, const CalendarTodo& b) {
    return a.due != b.due ? a.due < b.due : a.uid < b.uid;
  });
  ical::prepare();
  const std::string title = ical::calendar_name(name);
  ical::Builder calendar(ICAL_VCALENDAR_COMPONENT);
  calendar.add(icalproperty_new_version("2.0"));
  calendar.add(icalproperty_new_prodid(ical::kProductId));
  calendar.add(icalproperty_new_calscale("GREGORIAN"));
  calendar.add(icalproperty_new_name(title.c_str()));
  calendar.add_extension("X-WR-CALNAME", title);
  for (const CalendarTodo& each : todos) calendar.add(todo_of(each));
  std::string text = calendar.text();
  const ical::Component back = parse(text);
  if (!back || icalcomponent_count_errors(back.get()) != 0 ||
      items_of(back.get()).size() != todos.size())
    return defect("the to-dos could not be written");
  return text;
}

Result<std::vector<CalendarObject>> split_calendar(std::string_view calendar) {
  const ical::Component whole = parse(calendar);
  if (!whole || icalcomponent_count_errors(whole.get()) != 0)
    return defect("the calendar could not be read back");
  std::map<std::string, std::vector<icalcomponent*>> by_uid;
  for (icalcomponent* item : items_of(whole.get())) by_uid[uid_of(item)].push_back(item);
  std::vector<CalendarObject> objects;
  for (const auto& [uid, items] : by_uid) {
    if (!ical::is_uid(uid)) return defect("the calendar has an item without a uid");
    ical::Builder object(ICAL_VCALENDAR_COMPONENT);
    object.add(icalproperty_new_version("2.0"));
    object.add(icalproperty_new_prodid(ical::kProductId));
    for (icalcomponent* item : items) object.add_component(icalcomponent_new_clone(item));
    objects.push_back({uid, summary_of(items.front()), object.text()});
    if (objects.back().bytes.empty()) return defect("the calendar could not be taken apart");
  }
  return objects;
}

std::optional<ReadObject> read_object(std::string_view bytes) {
  const ical::Component calendar = parse(bytes);
  if (!calendar) return std::nullopt;
  const std::vector<icalcomponent*> items = items_of(calendar.get());
  if (items.empty() || uid_of(items.front()).empty()) return std::nullopt;
  ReadObject object;
  object.uid = uid_of(items.front());
  object.summary = summary_of(items.front());
  object.todo = icalcomponent_isa(items.front()) == ICAL_VTODO_COMPONENT;
  std::vector<std::string> blocks;
  for (icalcomponent* item : items) {
    std::string block = std::string(icalcomponent_kind_to_string(icalcomponent_isa(item))) + "\n";
    for (const std::string& line : lines_of(item, object.todo)) block += line;
    blocks.push_back(std::move(block));
  }
  std::sort(blocks.begin(), blocks.end());
  for (const std::string& block : blocks) object.content += block;
  if (!object.todo) return object;
  object.mark = mark_of(items.front());
  object.state = state_of(items.front());
  icalproperty* done = icalcomponent_get_first_property(items.front(), ICAL_COMPLETED_PROPERTY);
  if (done != nullptr) object.done_at = instant_of(icalproperty_get_completed(done));
  return object;
}

}  // namespace larderloop
