// object.h - single calendar objects, as a CalDAV collection holds them (RFC 4791 section 4.1: one
// UID an object), and to-dos.
#pragma once

#include "larderloop/core/date.h"
#include "larderloop/core/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

// A to-do due on a day (RFC 5545 section 3.6.2). `related_to`: the UID of the event it belongs to,
// or empty. Texts as in CalendarEvent. `cancelled`: only the last one of an otherwise empty
// calendar.
struct CalendarTodo {
  std::string uid;       // hex and '-' only
  Instant changed_at{};  // DTSTAMP and LAST-MODIFIED
  int sequence = 0;
  Day due{};
  std::string summary;
  std::string description;
  std::string category;
  std::string related_to;
  std::string mark;  // of what is to be done, letters of a uid: goes along as X-LARDERLOOP-MARK;
                     // may be empty
  bool cancelled = false;
};

// The whole calendar of to-dos, sorted by day then uid. kDefect as for render_calendar (ics.h).
[[nodiscard]] Result<std::string> render_todos(std::string_view name,
                                               std::vector<CalendarTodo> todos);

// One object of a calendar: everything with one UID. `bytes`: a calendar of its own, with what
// every calendar must have and no more.
struct CalendarObject {
  std::string uid;
  std::string summary;
  std::string bytes;
};
// The objects of a calendar that this program wrote, by uid. kDefect when it cannot be read.
[[nodiscard]] Result<std::vector<CalendarObject>> split_calendar(std::string_view calendar);

// How far somebody is with a to-do; of an event always kOpen.
enum class TickState { kOpen, kStarted, kDone, kDropped };

// An object as a server gives it back. `content`: all that people see of it, whatever the order and
// folding of its lines: every property but the stamps (DTSTAMP, CREATED, LAST-MODIFIED, SEQUENCE),
// a client's own (X-...) and, of a to-do, how far it is. Two objects with the same content say the
// same.
struct ReadObject {
  std::string uid;
  std::string summary;
  bool todo = false;
  std::string content;
  std::string mark;  // of a to-do of ours
  TickState state = TickState::kOpen;
  std::optional<Instant> done_at;
};
// Nothing when it is no calendar with an event or a to-do with a UID.
[[nodiscard]] std::optional<ReadObject> read_object(std::string_view bytes);

}  // namespace larderloop
