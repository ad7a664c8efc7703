#include "app/feed_stamps.h"

#include "app/feed_view.h"
#include "larderloop/calendar/ics.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>

namespace larderloop {
namespace {

// Everything that is shown of an event but its stamps.
std::string content_of(const FeedEvent& event) {
  std::string content = iso_day(event.begin) + "/" + iso_day(event.end) + "\n" +
                        std::string(feed_kind_words(event.kind)) +
                        (event.cancelled ? " cancelled" : "") + "\n" + event.summary + "\n" +
                        event.description;
  if (event.alarm_days > 0) content += "\nalarm " + std::to_string(event.alarm_days);
  if (!event.related_uid.empty()) content += "\nrelated " + event.related_uid;
  if (!event.series_uid.empty()) content += "\nof series " + event.series_uid;
  if (!event.rule.empty()) content += "\n" + event.rule;
  for (const Day each : event.without) content += "\nwithout " + iso_day(each);
  for (const FeedMoved& each : event.moved)
    content += "\nmoved " + iso_day(each.from) + " to " + iso_day(each.to);
  return content;
}

std::string part_key(const FeedEvent& event, const PersonKey& person) {
  return event.key + "|" + person.str();
}

// No key of a person has a blank in it.
std::string hidden_key(const std::string& key) {
  return key + "|private detail";
}

// Gives events their identity and their stamps, and says which stamps are new.
class Stamper {
 public:
  Stamper(const Household& household, Instant now, std::vector<FeedStamp>& changed)
      : household_(household), now_(now), changed_(changed) {
    for (const FeedStamp& each : household.feed) {
      const FeedStamp*& kept = latest_[each.key];
      if (kept == nullptr || each.generation > kept->generation) kept = &each;
    }
  }

  void stamp(std::vector<FeedEvent>& events) {
    identify(events);
    for (FeedEvent& event : events) {
      const FeedRevision full = revision_of(event.key, content_of(event));
      event.changed_at = full.changed_at;
      event.sequence = full.sequence;
      event.hidden = revision_of(hidden_key(event.key), content_of(as_private(event)));
      for (auto& [person, part] : event.parts) {
        const std::string key = part_key(event, person);
        FeedEvent told = as_told_to_one(event, part);
        part.full = revision_of(key, content_of(told));
        part.hidden = revision_of(hidden_key(key), content_of(as_private(std::move(told))));
      }
    }
    for (const auto& [key, kept] : latest_) {
      if (!kept->in_feed || present_.count(key) > 0) continue;
      FeedStamp gone = *kept;
      gone.in_feed = false;
      gone.content.clear();  // it is compared with nothing any more
      changed_.push_back(std::move(gone));
    }
  }

 private:
  // What left the feed never comes back under the same identity.
  int generation_of(const std::string& key) const {
    const auto found = latest_.find(key);
    if (found == latest_.end()) return 1;
    return found->second->generation + (found->second->in_feed ? 0 : 1);
  }

  std::string uid_of(const std::string& key) const {
    return uuid_v5(household_.book_id, key + "|" + std::to_string(generation_of(key)));
  }

  // Names events for ever, and the alarms and relations between them.
  void identify(std::vector<FeedEvent>& events) const {
    std::map<std::string, std::string> uids;
    for (FeedEvent& event : events) {
      event.uid = uid_of(event.key);
      uids[event.key] = event.uid;
      for (auto& [person, part] : event.parts) part.uid = uid_of(part_key(event, person));
    }
    for (FeedEvent& event : events) {
      if (event.series.empty()) continue;
      event.series_uid = uids.at(event.series);
      uids[event.key] = event.series_uid;  // what belongs to it belongs to the series
    }
    for (FeedEvent& event : events) {
      const auto review = uids.find(event.related);
      if (!event.related.empty() && review != uids.end()) event.related_uid = review->second;
      const auto alarm = household_.settings.feed.alarm_days.find(event.kind);
      if (event.cancelled || alarm == household_.settings.feed.alarm_days.end()) continue;
      event.alarm_days = alarm->second;
      event.alarm_uid = uuid_v5(household_.book_id, "alarm|" + event.uid);
      for (auto& [person, part] : event.parts)
        part.alarm_uid = uuid_v5(household_.book_id, "alarm|" + part.uid);
      for (FeedMoved& each : event.moved)
        each.alarm_uid = uuid_v5(household_.book_id, event.alarm_uid + "|" + iso_day(each.from));
    }
  }

  // As before when what is shown is as before.
  FeedRevision revision_of(const std::string& key, std::string content) {
    present_.insert(key);
    FeedStamp next;
    next.key = key;
    next.generation = generation_of(key);
    next.content = std::move(content);
    next.changed_at = now_;
    const auto found = latest_.find(key);
    if (found != latest_.end() && found->second->in_feed) {
      const FeedStamp& kept = *found->second;
      if (kept.content == next.content) return {kept.changed_at, kept.sequence};
      next.sequence = kept.sequence + 1;
      next.changed_at = std::max(now_, kept.changed_at + std::chrono::seconds(1));
    }
    const FeedRevision revision{next.changed_at, next.sequence};
    changed_.push_back(std::move(next));
    return revision;
  }

  const Household& household_;
  Instant now_;
  std::vector<FeedStamp>& changed_;
  std::map<std::string, const FeedStamp*> latest_;
  std::set<std::string> present_;
};

}  // namespace

void stamp_feed(const Household& household, Instant now, std::vector<FeedEvent>& events,
                std::vector<FeedStamp>& changed) {
  Stamper(household, now, changed).stamp(events);
}

}  // namespace larderloop
