// feed.h - what the household's calendar says: reviews, eat-soon meal days, shop-by and give-away dates, all of whole days.
// Views:    the feed is made once for the whole household; what one person or a private calendar sees is worked out from it, so that an
//           event has the same identity and stamps in all of them.
// Privacy:  first names, foods and places only; allergens, ages and health facts at no level. Texts carry dates, never "today".
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "larderloop/app/asked.h"
#include "larderloop/app/plan.h"

namespace larderloop {

[[nodiscard]] std::string_view feed_kind_words(FeedKind kind);  // the CATEGORIES vocabulary: "Review", "Eat soon", "Shop", "Give away"

// What one person is told of a meal day.
struct FeedPart {
  std::string summary;
  std::string description;
};
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
  std::string related;      // key of the review that this shopping belongs to; empty: none
  std::string related_uid;
  int alarm_days = 0;       // 0: no alarm
  std::string alarm_uid;
  std::map<PersonKey, FeedPart> parts;  // meal days: who eats something, and what they are told
  bool cancelled = false;  // only the last event of an otherwise empty feed, which must not be without any
};
struct FeedReport {
  std::string name;
  std::vector<FeedEvent> events;  // by begin, uid
};
// Changes hold the stamps of events that are new, changed or gone. Nothing changed: no changes, and every stamp as it was.
[[nodiscard]] Result<Outcome<FeedReport>> make_feed(const Household& household, const PlanReport& plan, Asked asked);

// Who looks, how closely, and at what. A person sees only the meals in which they eat; reviews, shopping and giving away are everyone's.
struct FeedView {
  std::optional<PersonKey> person;
  FeedDetail detail = FeedDetail::kFull;
  std::set<FeedKind> kinds;
};
[[nodiscard]] FeedView usual_view(const FeedSettings& settings);
// The calendar of a view. Private: neither food nor place nor name, not even the household's. Never without an event: a cancelled one
// stands for nothing at all. Identities, days, stamps and order stay those of `whole`. Pure.
[[nodiscard]] FeedReport feed_view(const Household& household, const FeedReport& whole, const FeedView& view);

}  // namespace larderloop
