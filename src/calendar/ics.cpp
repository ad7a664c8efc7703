#include "larderloop/calendar/ics.h"

#include "calendar/ical_build.h"
#include "calendar/ical_handles.h"
#include "calendar/ical_text.h"
#include "larderloop/calendar/rule.h"

#include <algorithm>
#include <utility>

namespace larderloop {
namespace {

constexpr const char* kColor = "teal";  // a CSS3 colour name, as RFC 7986 section 5.9 asks
constexpr const char* kPollEvery = "PT12H";
constexpr unsigned kPollHours = 12;
constexpr int kMostAlarmDays = 30;
constexpr unsigned kAlarmHours = 15;  // before midnight: nine in the morning of the day before

tl::unexpected<Error> defect(std::string what) {
  return fail(ErrorKind::kDefect, std::move(what));
}

Status check(const std::vector<CalendarEvent>& events) {
  if (events.empty()) return defect("a calendar without an event is not legal");
  std::vector<std::string_view> uids;
  for (const CalendarEvent& each : events) {
    if (!ical::is_uid(each.uid))
      return defect("the event uid '" + each.uid + "' is not hex and '-'");
    if (each.end <= each.begin)
      return defect("the event '" + each.uid + "' does not end after it begins");
    if (each.sequence < 0) return defect("the event '" + each.uid + "' has a negative sequence");
    if (!ical::is_plain_category(each.category))
      return defect("the category '" + each.category + "' has more than letters");
    if (!each.related_uid.empty() && !ical::is_uid(each.related_uid))
      return defect("the event '" + each.uid + "' is related to no uid");
    if (!each.alarm_uid.empty() &&
        (!ical::is_uid(each.alarm_uid) || each.alarm_days < 1 || each.alarm_days > kMostAlarmDays))
      return defect("the event '" + each.uid + "' has an alarm without uid or days");
    if (!each.rule.empty() && series_rule(each.rule, each.begin).rule != each.rule)
      return defect("the rule '" + each.rule + "' is not for a repeating event");
    if (each.rule.empty() && (!each.without.empty() || !each.moved.empty()))
      return defect("the event '" + each.uid + "' does not repeat, so nothing is moved");
    uids.push_back(each.uid);
  }
  std::sort(uids.begin(), uids.end());
  const auto twin = std::adjacent_find(uids.begin(), uids.end());
  if (twin != uids.end()) return defect("two events have the uid '" + std::string(*twin) + "'");
  return {};
}

// A trigger before the start: readers store minutes before the event and nothing else, and an
// all-day event begins at midnight of the reader's zone (RFC 5545 section 3.8.6.3).
ical::Builder alarm_of(const CalendarEvent& event, const std::string& uid,
                       const std::string& summary) {
  ical::Builder built(ICAL_VALARM_COMPONENT);
  icaltriggertype trigger = icaltriggertype_from_int(0);
  trigger.duration.is_neg = 1;
  trigger.duration.days = static_cast<unsigned>(event.alarm_days - 1);
  trigger.duration.hours = kAlarmHours;
  built.add(icalproperty_new_uid(uid.c_str()));
  built.add(icalproperty_new_action(ICAL_ACTION_DISPLAY));
  built.add(icalproperty_new_trigger(trigger));
  built.add(icalproperty_new_description(summary.empty() ? "Reminder" : summary.c_str()));
  return built;
}

// What all repetitions have; `moved`: of one that is on another day.
ical::Builder event_of(const CalendarEvent& event, const CalendarMove* moved = nullptr) {
  ical::Builder built(ICAL_VEVENT_COMPONENT);
  const std::string summary = cut_text(clean_line(event.summary), ical::kSummaryOctets);
  const std::string description = cut_text(clean_text(event.description), ical::kDescriptionOctets);
  built.add(icalproperty_new_uid(event.uid.c_str()));
  built.add(icalproperty_new_dtstamp(ical::utc(event.changed_at)));
  built.add(icalproperty_new_lastmodified(ical::utc(event.changed_at)));
  built.add(icalproperty_new_sequence(event.sequence));
  const Day begin = moved == nullptr ? event.begin : moved->to;
  if (moved != nullptr) built.add(icalproperty_new_recurrenceid(ical::day(moved->from)));
  built.add(icalproperty_new_dtstart(ical::day(begin)));
  built.add(icalproperty_new_dtend(ical::day(begin + (event.end - event.begin))));
  if (moved == nullptr && !event.rule.empty()) {
    const ical::Recurrence rule(event.rule);
    built.add(icalproperty_new_rrule(rule.value()));
    for (const Day each : event.without) built.add(icalproperty_new_exdate(ical::day(each)));
  }
  if (!summary.empty()) built.add(icalproperty_new_summary(summary.c_str()));
  if (!description.empty()) built.add(icalproperty_new_description(description.c_str()));
  if (!event.category.empty()) built.add(icalproperty_new_categories(event.category.c_str()));
  built.add(icalproperty_new_transp(ICAL_TRANSP_TRANSPARENT));
  built.add(
      icalproperty_new_status(event.cancelled ? ICAL_STATUS_CANCELLED : ICAL_STATUS_CONFIRMED));
  if (!event.related_uid.empty()) built.add(icalproperty_new_relatedto(event.related_uid.c_str()));
  const std::string& alarm = moved == nullptr ? event.alarm_uid : moved->alarm_uid;
  if (!alarm.empty()) built.add(alarm_of(event, alarm, summary));
  return built;
}

// What libical could not write it replaces by an error property; a second reading finds it, and
// whatever it cannot read back.
bool reads_back(const std::string& text, std::size_t events) {
  const ical::Component parsed(icalparser_parse_string(text.c_str()));
  if (!parsed || icalcomponent_isa(parsed.get()) != ICAL_VCALENDAR_COMPONENT) return false;
  if (icalcomponent_count_errors(parsed.get()) != 0) return false;
  return icalcomponent_count_components(parsed.get(), ICAL_VEVENT_COMPONENT) ==
         static_cast<int>(events);
}

}  // namespace

Result<std::string> render_calendar(std::string_view name, std::vector<CalendarEvent> events) {
  if (Status sound = check(events); !sound) return fail(sound.error());
  std::sort(events.begin(), events.end(), [](const CalendarEvent& a, const CalendarEvent& b) {
    return a.begin != b.begin ? a.begin < b.begin : a.uid < b.uid;
  });
  ical::prepare();
  const std::string title = ical::calendar_name(name);
  icaldurationtype poll = icaldurationtype_null_duration();
  poll.hours = kPollHours;
  ical::Builder calendar(ICAL_VCALENDAR_COMPONENT);
  calendar.add(icalproperty_new_version("2.0"));
  calendar.add(icalproperty_new_prodid(ical::kProductId));
  calendar.add(icalproperty_new_calscale("GREGORIAN"));
  calendar.add(icalproperty_new_name(title.c_str()));
  calendar.add_extension("X-WR-CALNAME", title);
  calendar.add(icalproperty_new_refreshinterval(poll));
  calendar.add_extension("X-PUBLISHED-TTL", kPollEvery);
  calendar.add(icalproperty_new_color(kColor));
  std::size_t written = 0;
  for (const CalendarEvent& each : events) {
    written += 1 + each.moved.size();
    calendar.add(event_of(each));
    for (const CalendarMove& moved : each.moved) calendar.add(event_of(each, &moved));
  }
  std::string text = calendar.text();
  if (text.empty() || !reads_back(text, written))
    return defect("the calendar could not be written");
  return text;
}

}  // namespace larderloop
