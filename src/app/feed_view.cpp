// What one reader of the calendar sees of it.
#include "app/plain_names.h"
#include "larderloop/app/feed.h"
#include "larderloop/calendar/ics.h"

#include <algorithm>

namespace larderloop {
namespace {

constexpr const char* kPrivateName = "Food kit";

std::string_view private_summary(FeedKind kind) {
  switch (kind) {
    case FeedKind::kReview:
      return "Review a food kit";
    case FeedKind::kEatSoon:
      return "Eat something up";
    case FeedKind::kShopBy:
      return "Shop for a food kit";
    case FeedKind::kGiveAway:
      return "Give something away";
  }
  return "";
}

FeedEvent nothing(const Household& household) {
  FeedEvent event;
  event.key = "nothing";
  event.uid = uuid_v5(household.book_id, event.key);
  event.begin = *parse_iso_day("2000-01-01");
  event.end = event.begin + Days(1);
  event.changed_at = midnight(event.begin);
  event.summary = "Nothing planned";
  event.description = "There is nothing to tell in this calendar.";
  event.cancelled = true;
  return event;
}

}  // namespace

FeedView usual_view(const FeedSettings& settings) {
  return {std::nullopt, settings.detail, settings.kinds};
}

FeedEvent as_told_to_one(FeedEvent event, const FeedPart& part) {
  event.summary = part.summary;
  event.description = part.description;
  event.uid = part.uid;
  event.alarm_uid = part.alarm_uid;
  return event;
}

FeedEvent as_private(FeedEvent event) {
  if (event.cancelled) return event;
  event.summary = private_summary(event.kind);
  event.description = "What exactly stands in the household's book.";
  return event;
}

FeedReport feed_view(const Household& household, const FeedReport& whole, const FeedView& view) {
  FeedReport seen;
  const bool is_private = view.detail == FeedDetail::kPrivate;
  seen.name = is_private ? kPrivateName : whole.name;
  if (view.person && !is_private) seen.name += ": " + first_name(household, *view.person);
  seen.events.reserve(whole.events.size());
  for (const FeedEvent& each : whole.events) {
    if (!each.cancelled && view.kinds.count(each.kind) == 0) continue;
    if (!each.series_uid.empty()) continue;  // the series stands for it
    FeedEvent event = each;
    FeedRevision full{each.changed_at, each.sequence};
    FeedRevision hidden = each.hidden;
    if (view.person && each.kind == FeedKind::kEatSoon) {
      const auto part = each.parts.find(*view.person);
      if (part == each.parts.end()) continue;
      event = as_told_to_one(std::move(event), part->second);
      full = part->second.full;
      hidden = part->second.hidden;
    }
    event.parts.clear();
    if (is_private) event = as_private(std::move(event));
    event.changed_at = (is_private ? hidden : full).changed_at;
    event.sequence = (is_private ? hidden : full).sequence;
    seen.events.push_back(std::move(event));
  }
  if (seen.events.empty()) seen.events.push_back(nothing(household));
  std::sort(seen.events.begin(), seen.events.end(), [](const FeedEvent& a, const FeedEvent& b) {
    return a.begin != b.begin ? a.begin < b.begin : a.uid < b.uid;
  });
  return seen;
}

}  // namespace larderloop
