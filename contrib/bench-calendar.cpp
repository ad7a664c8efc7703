// Feeds of 10, 100 and 10,000 events: time and memory of our writer beside bare libical building the very same objects, in one run. Run by contrib/bench-feed.
// Both get the same list of events; the bytes that come out have to be equal. Times: the best of several rounds, the two taking turns. Memory: how much more a
// process of its own came to hold at most (VmHWM).
#include "larderloop/calendar/ics.h"

#include <libical/ical.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <iostream>
#include <string>
#include <vector>

using namespace larderloop;

namespace {

std::vector<CalendarEvent> events_of(int count) {
  std::vector<CalendarEvent> events;
  for (int number = 0; number < count; ++number) {
    CalendarEvent event;
    event.uid = uuid_v5("6b1f0f0c-4f43-4c2c-9e55-0d8f6b7a1c11", "event|" + std::to_string(number));
    event.changed_at = Instant(std::chrono::seconds(1'806'000'000 + number));
    event.sequence = number % 4;
    event.begin = Day{date::local_days{date::year{2027} / 4 / 3}} + Days(number % 731);
    event.end = event.begin + Days(1);
    event.summary = "Eat soon: lentil stew, crème brûlée mix, plum jam";
    event.description =
        "Dinner\n- 2 servings of lentil stew, for Mira and Jon, from the blue box; lower shelf, good through 3 May 2027\n- 1 serving of plum jam, for "
        "Ada, from the pantry, good through 12 June 2027\nLook, smell, and read the label before you serve it.";
    event.category = "Eat soon";
    if (number % 8 == 0) {
      event.alarm_days = 1;
      event.alarm_uid = uuid_v5(event.uid, "alarm");
    }
    events.push_back(std::move(event));
  }
  std::sort(events.begin(), events.end(), [](const CalendarEvent& a, const CalendarEvent& b) { return a.begin != b.begin ? a.begin < b.begin : a.uid < b.uid; });
  return events;
}

std::string ours(const std::vector<CalendarEvent>& events) {
  auto text = render_calendar("Kit and pantry", events);
  if (!text) std::abort();
  return std::move(*text);
}

icaltimetype day_of(Day day) {
  const date::year_month_day ymd{day};
  icaltimetype time{};
  time.year = static_cast<int>(ymd.year());
  time.month = static_cast<int>(static_cast<unsigned>(ymd.month()));
  time.day = static_cast<int>(static_cast<unsigned>(ymd.day()));
  time.is_date = 1;
  return time;
}

// As a program would that uses libical and nothing else, and trusts its input.
std::string bare(const std::vector<CalendarEvent>& events) {
  static icaltimezone* const utc = icaltimezone_get_utc_timezone();
  icaldurationtype poll = icaldurationtype_null_duration();
  poll.hours = 12;
  const auto extension = [](const char* name, const char* value) {
    icalproperty* property = icalproperty_new_x(value);
    icalproperty_set_x_name(property, name);
    return property;
  };
  icalcomponent* calendar = icalcomponent_vanew(
      ICAL_VCALENDAR_COMPONENT, icalproperty_new_version("2.0"), icalproperty_new_prodid("-//larderloop//household feed//EN"), icalproperty_new_calscale("GREGORIAN"),
      icalproperty_new_name("Kit and pantry"), extension("X-WR-CALNAME", "Kit and pantry"), icalproperty_new_refreshinterval(poll), extension("X-PUBLISHED-TTL", "PT12H"),
      icalproperty_new_color("teal"), nullptr);
  for (const CalendarEvent& each : events) {
    const icaltimetype changed = icaltime_from_timet_with_zone(static_cast<time_t>(each.changed_at.time_since_epoch().count()), 0, utc);
    icalcomponent* event = icalcomponent_vanew(
        ICAL_VEVENT_COMPONENT, icalproperty_new_uid(each.uid.c_str()), icalproperty_new_dtstamp(changed), icalproperty_new_lastmodified(changed),
        icalproperty_new_sequence(each.sequence), icalproperty_new_dtstart(day_of(each.begin)), icalproperty_new_dtend(day_of(each.end)),
        icalproperty_new_summary(each.summary.c_str()), icalproperty_new_description(each.description.c_str()), icalproperty_new_categories(each.category.c_str()),
        icalproperty_new_transp(ICAL_TRANSP_TRANSPARENT), icalproperty_new_status(ICAL_STATUS_CONFIRMED), nullptr);
    if (!each.alarm_uid.empty()) {
      icaltriggertype trigger = icaltriggertype_from_int(0);
      trigger.duration.is_neg = 1;
      trigger.duration.hours = 15;
      icalcomponent_add_component(event, icalcomponent_vanew(ICAL_VALARM_COMPONENT, icalproperty_new_uid(each.alarm_uid.c_str()), icalproperty_new_action(ICAL_ACTION_DISPLAY),
                                                             icalproperty_new_trigger(trigger), icalproperty_new_description(each.summary.c_str()), nullptr));
    }
    icalcomponent_add_component(calendar, event);
  }
  char* buffer = icalcomponent_as_ical_string_r(calendar);
  std::string text = buffer;
  icalmemory_free_buffer(buffer);
  icalcomponent_free(calendar);
  return text;
}

using Build = std::function<std::string(const std::vector<CalendarEvent>&)>;

double seconds_of(const Build& build, const std::vector<CalendarEvent>& events, int times) {
  const auto begun = std::chrono::steady_clock::now();
  for (int time = 0; time < times; ++time) {
    if (build(events).empty()) std::abort();
  }
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count() / times;
}

long most_kib() {
  std::ifstream file("/proc/self/status");
  for (std::string word; file >> word;) {
    long kib = 0;
    if (word == "VmHWM:" && file >> kib) return kib;
  }
  return 0;
}

// How much more this process came to hold while it built one calendar; nothing may have been built before.
long memory_of(const Build& build, const std::vector<CalendarEvent>& events) {
  const long before = most_kib();
  if (build(events).empty()) std::abort();
  return most_kib() - before;
}

// The same in a process of its own.
long memory_of(const std::string& program, const std::string& whose, int count) {
  FILE* child = popen(("'" + program + "' " + whose + " " + std::to_string(count)).c_str(), "r");
  long kib = 0;
  if (child == nullptr || std::fscanf(child, "%ld", &kib) != 1 || pclose(child) != 0) std::abort();
  return kib;
}

}  // namespace

int main(int, char** argv) {
  if (argv[1] != nullptr && argv[2] != nullptr) {
    const bool own = std::string(argv[1]) == "ours";
    std::printf("%ld\n", memory_of(own ? Build(ours) : Build(bare), events_of(std::atoi(argv[2]))));
    return 0;
  }
  constexpr int kRounds = 15;
  std::printf("%-10s%12s%12s%8s%14s%14s%8s\n", "events", "ours ms", "libical ms", "ratio", "ours KiB", "libical KiB", "ratio");
  for (const int count : {10, 100, 10'000}) {
    const auto events = events_of(count);
    if (ours(events) != bare(events)) {
      std::fputs("the two calendars are not the same\n", stderr);
      return 1;
    }
    const int times = std::max(1, 2'000 / count);
    double own = 1e9;
    double peer = 1e9;
    for (int round = 0; round < kRounds; ++round) {
      own = std::min(own, seconds_of(ours, events, times));
      peer = std::min(peer, seconds_of(bare, events, times));
    }
    const long own_kib = memory_of(argv[0], "ours", count);
    const long peer_kib = memory_of(argv[0], "libical", count);
    std::printf("%-10d%12.3f%12.3f%8.2f%14ld%14ld%8.2f\n", count, own * 1e3, peer * 1e3, own / peer, own_kib, peer_kib, static_cast<double>(own_kib) / static_cast<double>(std::max(1L, peer_kib)));
  }
  return 0;
}
