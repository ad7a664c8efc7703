// asked.h - when the question is asked; every task takes it as an argument, none reads a clock.
#pragma once

#include <utility>

#include "larderloop/core/changes.h"
#include "larderloop/core/date.h"

namespace larderloop {

// `today`: the household's calendar day. `now`: the instant that stamps what is written.
struct Asked {
  Day today{};
  Instant now{};
};

// What a task found and what it wants written. The command decides whether it is (never under --dry-run).
template <class Report>
struct Outcome {
  Report report;
  Changes changes;
};

}  // namespace larderloop
