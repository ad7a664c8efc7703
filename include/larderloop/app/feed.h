// feed.h - what the household's calendar says: reviews, eat-soon meal days, shop-by and give-away dates, all of whole days.
// Views:    the feed is made once for the whole household; what one person or a private calendar sees is worked out from it. An event has the
//           same identity in all of them, but for meal days: one person's part is an event of its own, because people join meals and leave
//           them. Stamps move in a view only with what that view shows.
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

// How often an event changed, and when last, in the eyes of one kind of reader.
struct FeedRevision {
  Instant changed_at{};
  int sequence = 0;
};
// What one person is told of a meal day, with an identity and stamps of its own: it begins and ends with that person being there.
struct FeedPart {
  std::string summary;
  std::string description;
  std::string uid;
  std::string alarm_uid;
  FeedRevision full;
  FeedRevision hidden;
};
// One review of a series that is on another day than the rule puts it.
struct FeedMoved {
  Day from{};
  Day to{};
  std::string alarm_uid;
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
  FeedRevision hidden;  // of the private event, which tells less and so changes less often
  std::string related;      // key of the review that this shopping belongs to; empty: none
  std::string related_uid;
  int alarm_days = 0;       // 0: no alarm
  std::string alarm_uid;
  std::string rule;               // it repeats by this rule from `begin` on; empty: it does not
  std::vector<Day> without;       // days of the rule on which it is not: skipped or done early
  std::vector<FeedMoved> moved;
  std::string series;             // a review that stands in the calendar as one of this series (key); empty: by itself
  std::string series_uid;
  std::map<PersonKey, FeedPart> parts;  // meal days: who eats something, and what they are told
  bool cancelled = false;  // only the last event of an otherwise empty feed, which must not be without any
};
struct FeedReport {
  std::string name;
  std::vector<FeedEvent> events;  // by begin, uid
};
// With the setting `series` the reviews of a kit are there twice: each by itself, which keeps the identity of its to-do, and as one
// repeating event. feed_view() shows the latter.
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
// stands for nothing at all. Days, identities and stamps come from `whole`. By begin, uid. Pure.
[[nodiscard]] FeedReport feed_view(const Household& household, const FeedReport& whole, const FeedView& view);

}  // namespace larderloop
