// feeds.h - the calendar as the household wants it: what it tells, under which addresses, and what calendar servers were sent and told.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "larderloop/core/date.h"
#include "larderloop/core/id.h"

namespace larderloop {

// One event that is or was in the calendar feed. `key`: what it stands for ("review|home-kit|2026-10-03"); with
// `generation` it names the event for ever: an event that left the feed never comes back under the same identity.
// `content`: the event without its stamps, as last written, to see whether it changed.
struct FeedStamp {
  std::string key;
  int generation = 1;
  bool in_feed = true;
  int sequence = 0;
  Instant changed_at{};
  std::string content;
  friend bool operator==(const FeedStamp&, const FeedStamp&) = default;
};

// What the calendar tells of, and how much of it.
enum class FeedKind { kReview, kEatSoon, kShopBy, kGiveAway };
inline constexpr FeedKind kAllFeedKinds[] = {FeedKind::kReview, FeedKind::kEatSoon, FeedKind::kShopBy, FeedKind::kGiveAway};
[[nodiscard]] std::string_view feed_kind_name(FeedKind kind);  // "eat_soon"
[[nodiscard]] std::optional<FeedKind> parse_feed_kind(std::string_view name);
enum class FeedDetail { kFull, kPrivate };  // private: neither food nor place nor name
inline constexpr FeedDetail kAllFeedDetails[] = {FeedDetail::kFull, FeedDetail::kPrivate};
[[nodiscard]] std::string_view feed_detail_name(FeedDetail detail);  // "private"
[[nodiscard]] std::optional<FeedDetail> parse_feed_detail(std::string_view name);

// How reviews stand in the calendar: each by itself, or as one event of a kit that repeats.
enum class FeedReviews { kDated, kSeries };
inline constexpr FeedReviews kAllFeedReviews[] = {FeedReviews::kDated, FeedReviews::kSeries};
[[nodiscard]] std::string_view feed_reviews_name(FeedReviews reviews);  // "series"
[[nodiscard]] std::optional<FeedReviews> parse_feed_reviews(std::string_view name);

// `alarm_days`: kinds that ring, and how many days before the day, 1..30, at nine in the morning.
struct FeedSettings {
  FeedDetail detail = FeedDetail::kFull;
  std::set<FeedKind> kinds{FeedKind::kReview, FeedKind::kEatSoon, FeedKind::kShopBy, FeedKind::kGiveAway};
  std::map<FeedKind, int> alarm_days;
  FeedReviews reviews = FeedReviews::kDated;
  friend bool operator==(const FeedSettings&, const FeedSettings&) = default;
};

// An address under which a calendar is served, for one phone or person. Its unguessable part is told once, when the address is made;
// the book keeps only the SHA-256 of that text (FIPS 180-4), 64 hexadecimal digits. `person`: only the meals of this person; absent = of
// the whole household. A revoked address stays in the book and is never valid again.
struct FeedAddress {
  FeedAddressId id;
  std::string name;  // "Mira's phone"
  std::string token_sha256;
  std::optional<PersonKey> person;
  FeedDetail detail = FeedDetail::kFull;
  Instant created_at{};
  std::optional<Instant> revoked_at;
  friend bool operator==(const FeedAddress&, const FeedAddress&) = default;
};

// What a calendar server was last sent under `uid`. `collection`: its address without name or password; `href`: where the item lies there;
// `etag`: the server's mark of that version, empty when it gave none; `sent`: the bytes as sent.
struct PushedItem {
  std::string collection;
  std::string uid;
  std::string href;
  std::string etag;
  std::string sent;
  friend bool operator==(const PushedItem&, const PushedItem&) = default;
};

// A to-do that was ticked off on a calendar server and entered into the record, so that it is entered once. `on`: the day it was done;
// `what`: the to-do in words. Append-only.
struct TaskDone {
  std::string uid;
  Day on{};
  std::string what;
  friend bool operator==(const TaskDone&, const TaskDone&) = default;
};

}  // namespace larderloop
