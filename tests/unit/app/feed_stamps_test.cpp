// Identities and stamps of the calendar's events (RFC 5545 sections 3.8.4.7 and 3.8.7.4): one for
// ever, moved only by what is shown.
#include "app/feed_stamps.h"

#include "larderloop/core/changes.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const PersonKey kMira("mira");
const PersonKey kJon("jon");

FeedEvent meal_day() {
  FeedEvent event;
  event.key = "eat|2027-04-05";
  event.kind = FeedKind::kEatSoon;
  event.begin = parse_iso_day("2027-04-05").value();
  event.end = event.begin + Days(1);
  event.summary = "Eat soon: lentil stew, plum jam";
  event.parts[kMira].summary = "Eat soon: lentil stew";
  event.parts[kJon].summary = "Eat soon: plum jam";
  return event;
}

// A household that keeps its stamps, and a clock that goes on by an hour each time.
class Home {
 public:
  Home() { household_.book_id = "6b1f0f0c-4f43-4c2c-9e55-0d8f6b7a1c11"; }

  std::vector<FeedEvent> publish(std::vector<FeedEvent> events) {
    now_ += std::chrono::hours(1);
    Changes changes;
    stamp_feed(household_, now_, events, changes.feed);
    changed = changes.feed.size();
    apply_changes(household_, changes);
    return events;
  }

  [[nodiscard]] Instant now() const { return now_; }
  Settings& settings() { return household_.settings; }
  std::size_t changed = 0;

 private:
  Household household_;
  Instant now_ = parse_iso_instant("2027-04-03T08:00:00Z").value();
};

TEST(FeedStamps, NothingMovesWhenNothingChanged) {
  Home home;
  const auto before = home.publish({meal_day()});
  EXPECT_EQ(home.changed, 6U) << "the day, two people, each in full and private";
  const auto after = home.publish({meal_day()});
  EXPECT_EQ(home.changed, 0U);
  EXPECT_EQ(after[0].changed_at, before[0].changed_at);
  EXPECT_EQ(after[0].parts.at(kMira).full.changed_at, before[0].parts.at(kMira).full.changed_at);
}

TEST(FeedStamps, AChangeMovesWhoeverSeesIt) {
  Home home;
  const auto before = home.publish({meal_day()});
  FeedEvent other = meal_day();
  other.summary = "Eat soon: bean soup, plum jam";
  other.parts[kMira].summary = "Eat soon: bean soup";
  const auto after = home.publish({other});
  EXPECT_EQ(after[0].uid, before[0].uid);
  EXPECT_EQ(after[0].sequence, 1);
  EXPECT_EQ(after[0].changed_at, home.now());
  EXPECT_EQ(after[0].parts.at(kMira).uid, before[0].parts.at(kMira).uid);
  EXPECT_EQ(after[0].parts.at(kMira).full.sequence, 1);
  EXPECT_EQ(after[0].parts.at(kJon).full.sequence, 0) << "Jon's jam is as it was";
  EXPECT_EQ(after[0].hidden.sequence, 0) << "a private calendar tells no food";
  EXPECT_EQ(after[0].parts.at(kMira).hidden.sequence, 0);
}

TEST(FeedStamps, WhatLeftComesBackAsAnother) {
  Home home;
  const auto first = home.publish({meal_day()});
  FeedEvent alone = meal_day();
  alone.parts.erase(kMira);
  const auto without = home.publish({alone});
  EXPECT_EQ(without[0].uid, first[0].uid);
  const auto again = home.publish({meal_day()});
  EXPECT_EQ(again[0].uid, first[0].uid) << "the household's meal was there all the time";
  EXPECT_NE(again[0].parts.at(kMira).uid, first[0].parts.at(kMira).uid);
  EXPECT_EQ(again[0].parts.at(kMira).full.sequence, 0);
  EXPECT_EQ(again[0].parts.at(kJon).uid, first[0].parts.at(kJon).uid);
  home.publish({});
  const auto back = home.publish({meal_day()});
  EXPECT_NE(back[0].uid, first[0].uid);
}

TEST(FeedStamps, NoTwoAreTheSame) {
  Home home;
  home.settings().feed.alarm_days = {{FeedKind::kEatSoon, 1}};
  const auto made = home.publish({meal_day()});
  std::set<std::string> all;
  for (const std::string& each : {made[0].uid, made[0].alarm_uid, made[0].parts.at(kMira).uid,
                                  made[0].parts.at(kMira).alarm_uid, made[0].parts.at(kJon).uid,
                                  made[0].parts.at(kJon).alarm_uid}) {
    EXPECT_FALSE(each.empty());
    EXPECT_TRUE(all.insert(each).second) << each;
  }
}

TEST(FeedStamps, ASeriesChangesWithItsDays) {
  Home home;
  FeedEvent review;
  review.key = "review|home-kit|2027-04-03";
  review.begin = parse_iso_day("2027-04-03").value();
  review.end = review.begin + Days(1);
  review.series = "series|home-kit|R|";
  FeedEvent series = review;
  series.key = review.series;
  series.series.clear();
  series.rule = "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA";
  FeedEvent shop = review;
  shop.key = "shop|home-kit|2027-04-03";
  shop.series.clear();
  shop.kind = FeedKind::kShopBy;
  shop.related = review.key;
  const auto first = home.publish({review, series, shop});
  EXPECT_EQ(first[0].series_uid, first[1].uid);
  EXPECT_EQ(first[2].related_uid, first[1].uid) << "the review itself is out of sight";
  series.moved = {{review.begin, review.begin + Days(7), {}}};
  const auto moved = home.publish({review, series, shop});
  EXPECT_EQ(moved[1].uid, first[1].uid);
  EXPECT_EQ(moved[1].sequence, 1);
  EXPECT_EQ(moved[1].hidden.sequence, 1) << "a private calendar shows days";
  EXPECT_EQ(moved[0].sequence, 0);
  series.without = {parse_iso_day("2028-04-01").value()};
  EXPECT_EQ(home.publish({review, series, shop})[1].sequence, 2);
}

}  // namespace
}  // namespace larderloop
