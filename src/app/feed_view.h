// feed_view.h - one event of the calendar as one reader sees it, without stamps: what is compared
// to see whether it changed is just what is shown.
#pragma once

#include "larderloop/app/feed.h"

namespace larderloop {

[[nodiscard]] FeedEvent as_told_to_one(FeedEvent event, const FeedPart& part);
// Neither food nor place nor name; a cancelled event has none.
[[nodiscard]] FeedEvent as_private(FeedEvent event);

}  // namespace larderloop
