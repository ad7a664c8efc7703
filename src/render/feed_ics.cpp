#include "larderloop/calendar/ics.h"
#include "larderloop/render/plan_json.h"

namespace larderloop {

Result<std::string> render_feed_ics(const FeedReport& report) {
  std::vector<CalendarEvent> events;
  events.reserve(report.events.size());
  for (const FeedEvent& event : report.events) {
    std::vector<CalendarMove> moved;
    for (const FeedMoved& each : event.moved) moved.push_back({each.from, each.to, each.alarm_uid});
    events.push_back({event.uid, event.changed_at, event.sequence, event.begin, event.end, event.summary,
                      event.description, std::string(feed_kind_words(event.kind)), event.cancelled,
                      event.related_uid, event.alarm_uid, event.alarm_days, event.rule, event.without, std::move(moved)});
  }
  return render_calendar(report.name, std::move(events));
}

}  // namespace larderloop
