// publish.h - the one way to the calendar, for every command that hands it on.
#pragma once

#include "larderloop/app/feed.h"
#include "larderloop/cli/runtime.h"

namespace larderloop::cli {

// Plans, makes the feed of the whole household, and keeps in the book what was shown and the stamps.
[[nodiscard]] Result<FeedReport> publish(Runtime& runtime, PlanReport* planned = nullptr);

}  // namespace larderloop::cli
