// sync.h - to-dos, and what was sent to and came back from a calendar server: text for people,
// JSON, iCalendar.
#pragma once

#include "larderloop/app/sync.h"
#include "larderloop/app/ticks.h"
#include "larderloop/app/todos.h"

#include <string>

namespace larderloop {

// The to-dos as a calendar: RFC 5545 text.
[[nodiscard]] Result<std::string> render_todos_ics(const TodoReport& report);
[[nodiscard]] std::string render_todos_json(const TodoReport& report, Day as_of);

[[nodiscard]] std::string render_sync_text(const SyncReport& report);
[[nodiscard]] std::string render_sync_json(const SyncReport& report, Day as_of);

[[nodiscard]] std::string render_ticks_text(const TickReport& report);
[[nodiscard]] std::string render_ticks_json(const TickReport& report, const std::string& collection,
                                            Day as_of);

}  // namespace larderloop
