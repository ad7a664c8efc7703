// feed.h - what the household's calendar says: reviews, eat-soon meal days, shop-by and give-away dates, all of whole days.
// Privacy:  first names, foods and places only; allergens, ages and health facts at no level. Texts carry dates, never "today".
#pragma once

#include <string>
#include <vector>

#include "larderloop/app/asked.h"
#include "larderloop/app/plan.h"

namespace larderloop {

[[nodiscard]] std::string_view feed_kind_words(FeedKind kind);  // the CATEGORIES vocabulary: "Review", "Eat soon", "Shop", "Give away"

struct FeedEvent {
  std::string key;  // identity: "review|home-kit|2027-04-03"; never the same for two things
  std::string uid;
  FeedKind kind = FeedKind::kReview;
  Day begin{};
  Day end{};  // exclusive
  std::string summary;
  std::string description;
  Instant changed_at{};
  int sequence = 0;
  bool cancelled = false;  // only the last event of an otherwise empty feed, which must not be without any
};
struct FeedReport {
  std::string name;
  std::vector<FeedEvent> events;  // by begin, uid
};
// Changes hold the stamps of events that are new, changed or gone. Nothing changed: no changes, and every stamp as it was.
[[nodiscard]] Result<Outcome<FeedReport>> make_feed(const Household& household, const PlanReport& plan, Asked asked);

}  // namespace larderloop
