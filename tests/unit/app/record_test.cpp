// The rule that every test here leans on, for each lot: received + found + counted = eaten + given
// away + thrown out + lost + on hand.
#include "larderloop/app/record.h"

#include "larderloop/core/stock.h"
#include "small_household.h"

#include <gtest/gtest.h>

#include <random>

namespace larderloop {
namespace {

const Asked kAsked = asked_on("2027-03-01");
const LotId kStew{1};
const LotId kJam{2};

RecordRequest request(EntryKind kind, LotId lot, AmountUnit unit, std::int64_t value) {
  RecordRequest made;
  made.kind = kind;
  made.lot = lot;
  made.amount = {unit, value};
  return made;
}

std::map<std::string, std::int64_t> on_hand(const Household& household, LotId lot) {
  const Ledger ledger = replay(household).value();
  std::map<std::string, std::int64_t> found;
  for (const auto& [at, amount] : ledger.stock()) {
    if (at.lot == lot)
      found[at.place.str() + (at.opened_on ? " " + iso_day(*at.opened_on) : "")] = amount.halves();
  }
  return found;
}

using Map = std::map<std::string, std::int64_t>;

Household recorded(const Household& household, const RecordRequest& what, Asked asked = kAsked) {
  auto outcome = record(household, what, asked);
  if (!outcome) throw std::logic_error(outcome.error().what);
  return after(household, outcome->changes);
}

TEST(Record, UnitsComeFromSealedStock) {
  const auto household =
      recorded(small_household(), request(EntryKind::kEaten, kStew, AmountUnit::kUnits, 2));
  EXPECT_EQ(on_hand(household, kStew), (Map{{"pantry", 8}}));
}

TEST(Record, PartOfAUnitOpensIt) {
  const auto outcome = record(
      small_household(), request(EntryKind::kEaten, kJam, AmountUnit::kHalfServings, 3), kAsked);
  ASSERT_TRUE(outcome);
  ASSERT_EQ(outcome->report.entries.size(), 2U);
  EXPECT_EQ(outcome->report.entries[0].kind, EntryKind::kOpened);
  EXPECT_EQ(outcome->report.entries[1].kind, EntryKind::kEaten);
  EXPECT_EQ(outcome->report.opened_units, 1);
  const auto household = after(small_household(), outcome->changes);
  EXPECT_EQ(on_hand(household, kJam), (Map{{"pantry", 12}, {"pantry 2027-03-01", 9}}));
}

TEST(Record, WholeUnitsOfServingsStaySealedAndTheRestOpensOne) {
  const auto household =
      recorded(small_household(), request(EntryKind::kEaten, kJam, AmountUnit::kHalfServings, 13));
  EXPECT_EQ(on_hand(household, kJam), (Map{{"pantry 2027-03-01", 11}}));
}

TEST(Record, ServingsComeFromTheLongestOpenFirst) {
  auto household =
      recorded(small_household(), request(EntryKind::kOpened, kJam, AmountUnit::kUnits, 1),
               asked_on("2027-02-10"));
  household = recorded(household, request(EntryKind::kOpened, kJam, AmountUnit::kUnits, 1),
                       asked_on("2027-02-12"));
  household = recorded(household, request(EntryKind::kEaten, kJam, AmountUnit::kHalfServings, 14));
  EXPECT_EQ(on_hand(household, kJam), (Map{{"pantry 2027-02-12", 10}}));
}

TEST(Record, OverdrawIsRefusedForEveryKindThatTakes) {
  for (const EntryKind kind : {EntryKind::kEaten, EntryKind::kGivenAway, EntryKind::kThrownOut,
                               EntryKind::kLost, EntryKind::kMoved, EntryKind::kOpened}) {
    auto what = request(kind, kStew, AmountUnit::kUnits, 7);
    if (kind == EntryKind::kMoved) what.to = PlaceKey("bag-bo");
    const auto outcome = record(small_household(), what, kAsked);
    ASSERT_FALSE(outcome) << entry_kind_name(kind);
    EXPECT_EQ(outcome.error().kind, ErrorKind::kBadData);
    EXPECT_FALSE(outcome.error().next_step.empty());
  }
}

TEST(Record, DaysThatCannotBe) {
  for (const char* day : {"2027-03-02", "2027-01-31"}) {
    auto what = request(EntryKind::kEaten, kStew, AmountUnit::kUnits, 1);
    what.on = day_at(day);
    EXPECT_FALSE(record(small_household(), what, kAsked)) << day;
  }
  // Moved away on 20 February: on the 25th nothing was in the pantry, on the 10th it was, but the
  // move would then have been too large.
  auto moved = request(EntryKind::kMoved, kStew, AmountUnit::kAll, 0);
  moved.to = PlaceKey("bag-bo");
  const auto household = recorded(small_household(), moved, asked_on("2027-02-20"));
  auto eaten = request(EntryKind::kEaten, kStew, AmountUnit::kUnits, 1);
  eaten.on = day_at("2027-02-10");
  EXPECT_FALSE(record(household, eaten, kAsked));
  eaten.on = day_at("2027-02-20");
  EXPECT_TRUE(record(household, eaten, kAsked));
}

TEST(Record, PlaceIsAskedForWhereItMatters) {
  auto moved = request(EntryKind::kMoved, kStew, AmountUnit::kUnits, 2);
  moved.to = PlaceKey("bag-bo");
  const auto household = recorded(small_household(), moved);
  auto eaten = request(EntryKind::kEaten, kStew, AmountUnit::kUnits, 1);
  const auto refused = record(household, eaten, kAsked);
  ASSERT_FALSE(refused);
  EXPECT_NE(refused.error().next_step.find("bag-bo"), std::string::npos);
  eaten.at = PlaceKey("kit");
  EXPECT_EQ(on_hand(recorded(household, eaten), kStew), (Map{{"bag-bo", 2}, {"pantry", 8}}));
  for (const EntryKind kind : {EntryKind::kReceived, EntryKind::kFound, EntryKind::kCounted}) {
    EXPECT_FALSE(record(household, request(kind, kStew, AmountUnit::kUnits, 1), kAsked))
        << entry_kind_name(kind);
  }
}

TEST(Record, NothingGoesToWhomItIsNotFor) {
  // The jam's label was never read; Ida avoids sesame.
  auto moved = request(EntryKind::kMoved, kJam, AmountUnit::kUnits, 1);
  moved.to = PlaceKey("bag-ida");
  const auto unread = record(small_household(), moved, kAsked);
  ASSERT_FALSE(unread);
  EXPECT_NE(unread.error().what.find("Ida must not have it"), std::string::npos);
  moved.to = PlaceKey("bag-bo");
  EXPECT_TRUE(record(small_household(), moved, kAsked));
  // No menu line names the box: everyone might eat from it.
  moved.to = PlaceKey("box");
  EXPECT_FALSE(record(small_household(), moved, kAsked));
  moved.to = PlaceKey("pantry");
  EXPECT_FALSE(record(small_household(), moved, kAsked));  // lies there already
}

TEST(Record, WhatWasFoundIsAFactAndAWarning) {
  auto found = request(EntryKind::kFound, kJam, AmountUnit::kUnits, 1);
  found.at = PlaceKey("bag-ida");
  const auto outcome = record(small_household(), found, kAsked);
  ASSERT_TRUE(outcome);
  ASSERT_EQ(outcome->report.must_not.size(), 1U);
  EXPECT_EQ(outcome->report.must_not.front().person, PersonKey("ida"));
}

TEST(Record, DoubtfulAndRecalledGoIntoNoKit) {
  for (const LotState state : {LotState::kDoubtful, LotState::kRecalled}) {
    auto household = small_household();
    household.lots.front().state = state;
    auto moved = request(EntryKind::kMoved, kStew, AmountUnit::kUnits, 1);
    moved.to = PlaceKey("bag-bo");
    EXPECT_FALSE(record(household, moved, kAsked)) << lot_state_name(state);
  }
}

TEST(Correct, TakesBackInTheGivenOrder) {
  const auto household =
      recorded(small_household(), request(EntryKind::kEaten, kJam, AmountUnit::kHalfServings, 1));
  EXPECT_FALSE(correct(household, {EntryId(3)}, "", kAsked));  // the opened unit was eaten from
  const auto outcome = correct(household, {EntryId(4), EntryId(3)}, "", kAsked);
  ASSERT_TRUE(outcome);
  const auto undone = after(household, outcome->changes);
  EXPECT_EQ(on_hand(undone, kJam), (Map{{"pantry", 24}}));
  EXPECT_FALSE(correct(undone, {EntryId(4)}, "", kAsked));  // not twice
  EXPECT_FALSE(correct(undone, {EntryId(5)}, "", kAsked));  // not a correction
  const auto missing = correct(undone, {EntryId(99)}, "", kAsked);
  ASSERT_FALSE(missing);
  EXPECT_EQ(missing.error().kind, ErrorKind::kNotFound);
}

TEST(ListEntries, KnowsTheLotOfACorrection) {
  auto household =
      recorded(small_household(), request(EntryKind::kEaten, kStew, AmountUnit::kUnits, 1));
  household = after(household, correct(household, {EntryId(3)}, "", kAsked)->changes);
  EntryFilter filter;
  filter.lot = kStew;
  const auto rows = list_entries(household, filter);
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_EQ(rows[0].entry.kind, EntryKind::kCorrected);
  EXPECT_TRUE(rows[1].corrected);
  EXPECT_EQ(rows[0].food, FoodKey("stew"));
}

// Random requests, most of them impossible: whatever is accepted keeps the household consistent and
// every lot's sum right.
TEST(Record, RandomRequestsConserveEveryLot) {
  constexpr unsigned kSeed = 20270301;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  const auto pick = [&](std::int64_t least, std::int64_t most) {
    return std::uniform_int_distribution<std::int64_t>(least, most)(random);
  };
  Household household = small_household();
  int accepted = 0;
  for (int step = 0; step < 600; ++step) {
    RecordRequest what;
    what.kind = kAllEntryKinds[pick(0, 8)];
    what.lot = LotId(pick(1, 2));
    what.amount = {static_cast<AmountUnit>(pick(0, 2)), pick(0, 5)};
    const auto place = [&] { return household.places[static_cast<std::size_t>(pick(0, 4))].key; };
    if (pick(0, 3) > 0) what.at = place();
    if (pick(0, 3) > 0) what.to = place();
    what.which = static_cast<Which>(pick(0, 2));
    if (pick(0, 4) == 0) what.on = day_at("2027-02-15") + Days(static_cast<int>(pick(0, 20)));
    const auto outcome = record(household, what, kAsked);
    if (!outcome) {
      EXPECT_NE(outcome.error().kind, ErrorKind::kDefect) << outcome.error().what;
      continue;
    }
    ++accepted;
    household = after(household, outcome->changes);
    const auto ledger = replay(household);
    ASSERT_TRUE(ledger);
    for (const auto& [lot, totals] : ledger->totals()) {
      std::int64_t here = 0;
      for (const auto& [at, amount] : ledger->stock()) here += at.lot == lot ? amount.halves() : 0;
      ASSERT_EQ(totals.in(), totals.out() + here) << "step " << step;
    }
  }
  EXPECT_GT(accepted, 50);
}

}  // namespace
}  // namespace larderloop
