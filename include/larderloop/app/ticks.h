// ticks.h - to-dos that people ticked off in their calendar become entries of the record, once
// each. Rules:    an eat-soon meal was eaten as it was planned, unless the plan of that meal has
// changed since the to-do was sent: then nothing is
//           guessed, and the person is asked to record it. What was recorded by hand for the same
//           meal is not recorded twice. Giving away counts like eating. Shopping is only noted:
//           what came home is received with its date and label. A review is never finished by a
//           tick.
#pragma once

#include "larderloop/app/plan.h"
#include "larderloop/app/todos.h"

#include <optional>
#include <string>
#include <vector>

namespace larderloop {

// A to-do that is ticked off on the server. `mark`: of the to-do as this book sent it, else as it
// stands there.
struct Tick {
  std::string uid;
  std::string summary;
  std::string mark;
  std::optional<Instant> done_at;
};

// kRecorded: entries were written. kAlready: all of it was in the record already. kNoted: kept as
// done, nothing is written for it. kAsk: nothing was written or kept; somebody has to look, and the
// tick is told again next time.
enum class TickResult { kRecorded, kAlready, kNoted, kAsk };
[[nodiscard]] std::string_view tick_result_name(TickResult result);  // "recorded"

struct TickLine {
  std::string uid;
  std::string summary;
  TickResult result = TickResult::kNoted;
  Day on{};
  std::vector<Entry> entries;
  std::string words;  // what became of it, one plain clause
  std::string next;   // the next step; may be empty
};
struct TickReport {
  std::vector<TickLine> lines;
  std::size_t before = 0;  // ticks that were taken in earlier
  std::size_t others = 0;  // ticked to-dos that are none of this book's
};
// `plan`: of the same household and day.
[[nodiscard]] Result<Outcome<TickReport>> take_ticks(const Household& household,
                                                     const PlanReport& plan,
                                                     const std::vector<Tick>& ticks, Asked asked);

}  // namespace larderloop
