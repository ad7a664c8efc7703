// ics.h - iCalendar text (RFC 5545, RFC 7986, RFC 9074) from plain events, written by libical. No METHOD, no calendar UID.
// Bytes:    CRLF, lines of at most 75 octets, fixed order; the same input gives the same bytes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "larderloop/core/date.h"
#include "larderloop/core/result.h"

namespace larderloop {

// One repetition that is on another day than the rule puts it. `alarm_uid`: as in CalendarEvent.
struct CalendarMove {
  Day from{};
  Day to{};
  std::string alarm_uid{};
};

// An all-day event on [begin, end). `category`: one of a fixed vocabulary without punctuation. Control characters and invalid
// UTF-8 in texts are removed; summary is cut at 255 octets and description at 2048, between characters, with an ellipsis.
struct CalendarEvent {
  std::string uid;  // hex and '-' only
  Instant changed_at{};  // DTSTAMP and LAST-MODIFIED
  int sequence = 0;
  Day begin{};
  Day end{};
  std::string summary;
  std::string description;
  std::string category;
  bool cancelled = false;
  std::string related_uid{};  // RELATED-TO: the event this one belongs to; empty: none
  std::string alarm_uid{};    // of the one alarm (RFC 9074 section 4); empty: no alarm
  int alarm_days = 0;         // it rings at nine in the morning so many days before, 1..30
  std::string rule{};         // it repeats: RRULE, one that series_rule() writes so; `begin` is a day of it
  std::vector<Day> without{};        // EXDATE: days of the rule on which it is not
  std::vector<CalendarMove> moved{};  // each an event of its own, with RECURRENCE-ID, under the same uid
};

// The whole calendar, events sorted by begin then uid. kDefect when there is no event (a calendar without a component is not
// legal, RFC 5545 section 3.6), when an end is not after its begin, when two events share a uid, or when a rule is not fit for a series.
[[nodiscard]] Result<std::string> render_calendar(std::string_view name, std::vector<CalendarEvent> events);

// UUID version 5 (RFC 4122 section 4.3) of a name inside a name space given as a UUID; lower case. Empty when `space` is no UUID.
[[nodiscard]] std::string uuid_v5(std::string_view space, std::string_view name);
// A random UUID (version 4) from the system's generator.
[[nodiscard]] std::string random_uuid();
[[nodiscard]] bool is_uuid(std::string_view text);

}  // namespace larderloop
