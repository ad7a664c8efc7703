// What the calendar tells, under which addresses, and what calendar servers were sent.
#include "core/validate_parts.h"

#include <set>
#include <utility>

namespace larderloop {
namespace {

constexpr int kMostAlarmDays = 30;
constexpr std::size_t kHashDigits = 64;

bool is_hash(std::string_view text) {
  return text.size() == kHashDigits && text.find_first_not_of("0123456789abcdef") == text.npos;
}

void check_settings(Findings& findings) {
  const FeedSettings& feed = findings.household.settings.feed;
  if (feed.kinds.empty()) {
    findings.add("/settings/feed/kinds", "", "a calendar without any kind of event",
                 "name at least one: review, eat_soon, shop, give_away");
  }
  for (const auto& [kind, days] : feed.alarm_days) {
    if (days >= 1 && days <= kMostAlarmDays) continue;
    findings.add("/settings/feed/alarm_days/" + std::string(feed_kind_name(kind)),
                 std::to_string(days), "an alarm rings 1 to 30 days before",
                 "write a number from 1 to 30, or leave it out");
  }
}

void check_addresses(Findings& findings) {
  std::int64_t last = 0;
  std::set<std::string> hashes;
  for (std::size_t index = 0; index < findings.household.feed_addresses.size(); ++index) {
    const FeedAddress& each = findings.household.feed_addresses[index];
    const std::string where = at("feed_addresses", index);
    if (each.id.value() <= last) {
      findings.add(where + "/id", std::to_string(each.id.value()),
                   "numbers have to grow from one to the next",
                   "write a number above " + std::to_string(last));
    }
    last = std::max(last, each.id.value());
    if (each.name.empty())
      findings.add(where + "/name", "", "the address has no name", "say for whom it is");
    if (!is_hash(each.token_sha256)) {
      findings.add(where + "/token_sha256", each.token_sha256, "not 64 hexadecimal digits",
                   "make a new address: larderloop feed add NAME");
    } else if (!hashes.insert(each.token_sha256).second) {
      findings.add(where + "/token_sha256", each.token_sha256, "two addresses are the same",
                   "make a new address: larderloop feed add NAME");
    }
    if (each.person) findings.check_person(where + "/person", *each.person);
    if (each.revoked_at && *each.revoked_at < each.created_at) {
      findings.add(where + "/revoked_at", iso_instant(*each.revoked_at),
                   "revoked before it was made", "write an instant after created_at");
    }
  }
}

void check_pushed(Findings& findings) {
  std::set<std::pair<std::string, std::string>> seen;
  for (std::size_t index = 0; index < findings.household.pushed.size(); ++index) {
    const PushedItem& each = findings.household.pushed[index];
    const std::string where = at("pushed", index);
    if (each.collection.empty() || each.uid.empty() || each.href.empty()) {
      findings.add(where, each.uid, "not an item of a calendar server",
                   "leave it out: it is sent anew");
    } else if (!seen.insert({each.collection, each.uid}).second) {
      findings.add(where, each.uid, "this item is there twice", "leave one out");
    }
  }
  std::set<std::string> done;
  for (std::size_t index = 0; index < findings.household.tasks_done.size(); ++index) {
    const TaskDone& each = findings.household.tasks_done[index];
    const std::string where = at("tasks_done", index) + "/uid";
    if (each.uid.empty()) {
      findings.add(where, "", "a to-do that is done has its identity", "leave it out");
    } else if (!done.insert(each.uid).second) {
      findings.add(where, each.uid, "this to-do is done twice", "leave one out");
    }
  }
}

}  // namespace

void validate_feed(Findings& findings) {
  check_settings(findings);
  check_addresses(findings);
  check_pushed(findings);
}

}  // namespace larderloop
