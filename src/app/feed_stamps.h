// feed_stamps.h - the identity and the stamps of the calendar's events.
#pragma once

#include "larderloop/app/feed.h"

#include <vector>

namespace larderloop {

// Gives events and their parts UIDs, stamps, alarms and relations; `changed` gets the stamps that
// are new, moved or gone.
void stamp_feed(const Household& household, Instant now, std::vector<FeedEvent>& events,
                std::vector<FeedStamp>& changed);

}  // namespace larderloop
