#include "larderloop/app/reviews.h"

#include <gtest/gtest.h>

#include "kit_household.h"
#include "larderloop/core/stock.h"

namespace larderloop {
namespace {

const PlaceKey kKit("kit");

std::vector<std::string> states(const Household& household, std::string_view today, std::size_t most) {
  std::vector<std::string> list;
  const auto slots = review_slots(household, kKit, day_at(today));
  EXPECT_TRUE(slots);
  for (const ReviewSlot& slot : *slots) {
    if (list.size() < most) list.push_back(iso_day(slot.day) + " " + std::string(slot_state_words(slot.state)));
  }
  return list;
}

Household finished(Household household, Asked asked) {
  household = after(household, start_review(household, kKit, asked)->changes);
  return after(household, finish_review(household, kKit, asked)->changes);
}

TEST(ReviewSchedule, TheLatestDueOneCountsAndEarlierOnesAreMissed) {
  const Household household = kit_household();
  EXPECT_EQ(states(household, "2027-04-02", 2), (std::vector<std::string>{"2027-04-03 coming", "2027-10-02 coming"}));
  EXPECT_EQ(states(household, "2027-04-03", 2), (std::vector<std::string>{"2027-04-03 due", "2027-10-02 coming"}));
  EXPECT_EQ(states(household, "2027-10-02", 2), (std::vector<std::string>{"2027-04-03 missed", "2027-10-02 due"}));
}

TEST(ReviewSchedule, HoldUntilIsTheNextReviewAndSlack) {
  Household household = kit_household();
  const auto due = kit_schedule(household, kKit, day_at("2027-04-03"));
  ASSERT_TRUE(due);
  EXPECT_EQ(iso_day(due->current->day), "2027-04-03");
  EXPECT_EQ(iso_day(due->hold_until), "2027-10-16");
  household.review_rules.front().slack_days = 0;
  EXPECT_EQ(iso_day(kit_schedule(household, kKit, day_at("2027-04-03"))->hold_until), "2027-10-02");
  const auto between = kit_schedule(finished(kit_household(), kReviewDay), kKit, day_at("2027-06-01"));
  ASSERT_TRUE(between);
  EXPECT_FALSE(between->current);
  EXPECT_EQ(iso_day(between->hold_until), "2027-10-16") << "what stayed must not be asked to leave in between";
}

TEST(ReviewSchedule, ThirtyDaysEarlyCountsForTheComingOne) {
  const Household household = finished(kit_household(), kReviewDay);
  EXPECT_FALSE(kit_schedule(household, kKit, day_at("2027-09-01"))->current) << "31 days early";
  const auto early = kit_schedule(household, kKit, day_at("2027-09-02"));
  ASSERT_TRUE(early->current);
  EXPECT_EQ(iso_day(early->current->slot), "2027-10-02");
  EXPECT_EQ(iso_day(early->hold_until), "2028-04-15");
  EXPECT_FALSE(start_review(household, kKit, asked_on("2027-07-01")));
}

TEST(ReviewSchedule, SkippedAndMovedOnesKeepTheOthersInPlace) {
  Household household = kit_household();
  const auto moved = move_review(household, kKit, std::nullopt, day_at("2027-04-10"), asked_on("2027-04-01"));
  ASSERT_TRUE(moved);
  household = after(household, moved->changes);
  EXPECT_EQ(states(household, "2027-04-05", 2), (std::vector<std::string>{"2027-04-10 coming", "2027-10-02 coming"}));
  EXPECT_EQ(iso_day(kit_schedule(household, kKit, day_at("2027-04-10"))->current->slot), "2027-04-03");
  const auto past_its_neighbour = move_review(household, kKit, std::nullopt, day_at("2027-10-02"), asked_on("2027-04-01"));
  ASSERT_FALSE(past_its_neighbour);
  EXPECT_NE(past_its_neighbour.error().what.find("Sat 2 Oct 2027"), std::string::npos);
  household = after(household, skip_review(household, kKit, std::nullopt, asked_on("2027-04-01"))->changes);
  EXPECT_EQ(states(household, "2027-04-20", 2), (std::vector<std::string>{"2027-04-10 skipped", "2027-10-02 coming"}));
  EXPECT_FALSE(skip_review(household, kKit, day_at("2027-04-03"), asked_on("2027-04-01"))) << "skipped twice";
}

TEST(ReviewSchedule, AKitWithoutARuleHasTheDefault) {
  Household household = kit_household();
  household.review_rules.clear();
  EXPECT_EQ(states(household, "2027-03-01", 1), (std::vector<std::string>{"2027-04-03 coming"}));
}

TEST(ReviewWalk, FinishTakesOutWhatWillNotLast) {
  Household household = kit_household();
  household = after(household, start_review(household, kKit, kReviewDay)->changes);
  const auto done = finish_review(household, kKit, kReviewDay);
  ASSERT_TRUE(done);
  ASSERT_EQ(done->report.left.size(), 1U);
  EXPECT_EQ(done->report.left.front().at.lot, LotId(3));
  EXPECT_EQ(done->report.left.front().reason, LeaveReason::kTooOld);
  household = after(household, done->changes);
  const auto ledger = replay(household);
  EXPECT_EQ(ledger->on_hand({LotId(3), PlaceKey("pantry"), std::nullopt}), HalfServings(4));
  EXPECT_EQ(ledger->on_hand({LotId(4), PlaceKey("bag-ida"), std::nullopt}), HalfServings(2));
  const auto again = finish_review(household, kKit, kReviewDay);
  ASSERT_TRUE(again);
  EXPECT_TRUE(again->report.already_done);
  EXPECT_TRUE(again->changes.empty());
}

TEST(ReviewWalk, TheHoldUntilDayItselfStillCounts) {
  Household household = kit_household();
  const LotId on_the_day = add_stew(household, "2027-10-16", "bag-bo", 1);
  const LotId a_day_short = add_stew(household, "2027-10-15", "bag-bo", 1);
  const auto ledger = replay(finished(household, kReviewDay));
  EXPECT_EQ(ledger->on_hand({on_the_day, PlaceKey("bag-bo"), std::nullopt}), HalfServings(2));
  EXPECT_EQ(ledger->on_hand({a_day_short, PlaceKey("bag-bo"), std::nullopt}), HalfServings());
}

TEST(ReviewWalk, MarksBecomeEntriesAndReadings) {
  Household household = kit_household();
  household = after(household, start_review(household, kKit, kReviewDay)->changes);
  const StockKey bo{LotId(3), PlaceKey("bag-bo"), std::nullopt};
  const StockKey ida{LotId(4), PlaceKey("bag-ida"), std::nullopt};
  household = after(household, mark_review(household, {kKit, bo, MarkWhat::kMissing, 1, std::nullopt}, kReviewDay)->changes);
  household = after(household, mark_review(household, {kKit, bo, MarkWhat::kDamaged, 1, std::nullopt}, kReviewDay)->changes);
  DateMark sooner{"BBE 08 2027", MarkKind::kBestBefore, Precision::kMonth, day_at("2027-08-31")};
  household = after(household, mark_review(household, {kKit, ida, MarkWhat::kRedated, std::nullopt, sooner}, kReviewDay)->changes);
  const auto done = finish_review(household, kKit, kReviewDay);
  ASSERT_TRUE(done);
  std::map<LeaveReason, LotId> left;
  for (const Leaving& each : done->report.left) left[each.reason] = each.at.lot;
  EXPECT_EQ(left, (std::map<LeaveReason, LotId>{{LeaveReason::kMissing, LotId(3)},
                                                {LeaveReason::kDamaged, LotId(3)},
                                                {LeaveReason::kTooOld, LotId(4)}}));
  const auto ledger = replay(after(household, done->changes));
  EXPECT_EQ(ledger->totals().at(LotId(3)).lost, 2);
  EXPECT_EQ(ledger->totals().at(LotId(3)).thrown_out, 2);
  EXPECT_EQ(ledger->on_hand({LotId(4), PlaceKey("pantry"), std::nullopt}), HalfServings(2)) << "redated, so it will not last";
}

TEST(ReviewWalk, ThereTakesBackAndShrunkenStockCutsTheMark) {
  Household household = kit_household();
  household = after(household, start_review(household, kKit, kReviewDay)->changes);
  const StockKey bo{LotId(3), PlaceKey("bag-bo"), std::nullopt};
  household = after(household, mark_review(household, {kKit, bo, MarkWhat::kMissing, 2, std::nullopt}, kReviewDay)->changes);
  Changes eaten;
  Entry entry;
  entry.id = next_ids(household).entry;
  entry.kind = EntryKind::kEaten;
  entry.on = kReviewDay.today;
  entry.at = bo;
  entry.amount = HalfServings(2);
  eaten.entries = {entry};
  const Household shrunken = after(household, eaten);
  EXPECT_EQ(replay(after(shrunken, finish_review(shrunken, kKit, kReviewDay)->changes))->totals().at(LotId(3)).lost, 2);
  household = after(household, mark_review(household, {kKit, bo, MarkWhat::kThere, std::nullopt, std::nullopt}, kReviewDay)->changes);
  EXPECT_EQ(replay(after(household, finish_review(household, kKit, kReviewDay)->changes))->totals().at(LotId(3)).lost, 0);
}

TEST(ReviewWalk, RefusalsNameTheNextStep) {
  const Household household = kit_household();
  const StockKey bo{LotId(3), PlaceKey("bag-bo"), std::nullopt};
  const auto not_begun = mark_review(household, {kKit, bo, MarkWhat::kThere, std::nullopt, std::nullopt}, kReviewDay);
  ASSERT_FALSE(not_begun);
  EXPECT_NE(not_begun.error().next_step.find("larderloop review start kit"), std::string::npos);
  EXPECT_FALSE(finish_review(household, kKit, kReviewDay));
  const Household begun = after(household, start_review(household, kKit, kReviewDay)->changes);
  EXPECT_FALSE(mark_review(begun, {kKit, bo, MarkWhat::kMissing, 3, std::nullopt}, kReviewDay)) << "more than there is";
  const StockKey pantry{LotId(1), PlaceKey("pantry"), std::nullopt};
  EXPECT_FALSE(mark_review(begun, {kKit, pantry, MarkWhat::kThere, std::nullopt, std::nullopt}, kReviewDay));
  EXPECT_FALSE(review_slots(household, PlaceKey("pantry"), kReviewDay.today)) << "not a kit";
}

TEST(ReviewWalk, PastASafetyDateIsThrownOutNotKept) {
  Household household = kit_household();
  household.settings.region = Region::kEu;
  household.lots[2].mark = {"USE BY 01 04 2027", MarkKind::kUseBy, Precision::kDay, day_at("2027-04-01")};
  household = finished(household, kReviewDay);
  const auto ledger = replay(household);
  EXPECT_EQ(ledger->totals().at(LotId(3)).thrown_out, 4);
  EXPECT_EQ(ledger->on_hand({LotId(3), PlaceKey("pantry"), std::nullopt}), HalfServings());
}

TEST(ReviewSheet, FollowsThePackingOrderAndSaysWhatComesOut) {
  const auto sheet = review_sheet(kit_household(), kKit, kReviewDay.today);
  ASSERT_TRUE(sheet);
  ASSERT_EQ(sheet->places.size(), 2U);
  EXPECT_EQ(sheet->places[0].place, PlaceKey("bag-bo"));
  EXPECT_TRUE(sheet->places[0].lines.front().leaves);
  EXPECT_FALSE(sheet->places[1].lines.front().leaves);
}

}  // namespace
}  // namespace larderloop
