// Stock is what the record says: every kind of entry, every refusal with its next step, and
// corrections.
#include "larderloop/core/stock.h"

#include "unit/core/core_household.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const PlaceKey kShelf("top-shelf");
const PlaceKey kBag("ada-bag");

StockKey key_at(const PlaceKey& place, std::optional<Day> opened = std::nullopt) {
  return {LotId(1), place, opened};
}

// Four sealed pouches of two servings (16 half servings) on the shelf, by entry 1.
class LedgerOfStew : public ::testing::Test {
 protected:
  LedgerOfStew() : ledger(home) { EXPECT_TRUE(ledger.apply(home.entries[0])); }

  Entry entry(EntryKind kind, const StockKey& at, std::int64_t halves,
              const char* on = "2026-06-01") {
    Entry made;
    made.id = EntryId(next_++);
    made.kind = kind;
    made.on = day_at(on);
    made.written_at = midnight(made.on);
    made.at = at;
    made.amount = HalfServings(halves);
    return made;
  }
  Entry moved(const StockKey& at, const PlaceKey& to, std::int64_t halves) {
    Entry made = entry(EntryKind::kMoved, at, halves);
    made.to = to;
    return made;
  }
  Entry corrected(std::int64_t id) {
    Entry made = entry(EntryKind::kCorrected, {}, 0);
    made.corrects = EntryId(id);
    return made;
  }
  void accept(const Entry& entry) {
    const auto status = ledger.apply(entry);
    ASSERT_TRUE(status) << status.error().what;
  }
  // Refused with these words and a next step, and nothing has changed.
  void refuse(const Entry& entry, const std::string& words, bool has_next_step = true) {
    const Stock before = ledger.stock();
    const auto totals = ledger.totals();
    const auto status = ledger.apply(entry);
    ASSERT_FALSE(status) << words;
    EXPECT_EQ(status.error().kind, ErrorKind::kBadData);
    EXPECT_NE(status.error().what.find(words), std::string::npos) << status.error().what;
    EXPECT_EQ(!status.error().next_step.empty(), has_next_step) << status.error().what;
    EXPECT_EQ(ledger.stock(), before);
    EXPECT_EQ(ledger.totals(), totals);
  }
  std::int64_t halves(const PlaceKey& place, std::optional<Day> opened = std::nullopt) {
    return ledger.on_hand(key_at(place, opened)).halves();
  }

  Household home = core_household();
  Ledger ledger;

 private:
  std::int64_t next_ = 10;
};

TEST_F(LedgerOfStew, EveryKindDoesWhatItsNameSays) {
  EXPECT_EQ(halves(kShelf), 16);
  accept(entry(EntryKind::kFound, key_at(kShelf), 4));
  EXPECT_EQ(halves(kShelf), 20);
  accept(moved(key_at(kShelf), kBag, 8));
  EXPECT_EQ(halves(kShelf), 12);
  EXPECT_EQ(halves(kBag), 8);
  accept(entry(EntryKind::kOpened, key_at(kBag), 4));
  const Day opened = day_at("2026-06-01");
  EXPECT_EQ(halves(kBag), 4);
  EXPECT_EQ(halves(kBag, opened), 4);
  accept(entry(EntryKind::kEaten, key_at(kBag, opened), 1, "2026-06-02"));
  EXPECT_EQ(halves(kBag, opened), 3);
  accept(moved(key_at(kBag, opened), kShelf, 3));
  EXPECT_EQ(halves(kShelf, opened), 3);
  accept(entry(EntryKind::kThrownOut, key_at(kShelf, opened), 3));
  accept(entry(EntryKind::kGivenAway, key_at(kShelf), 4));
  accept(entry(EntryKind::kLost, key_at(kShelf), 4));
  Entry counted = entry(EntryKind::kCounted, key_at(kShelf), 8);
  counted.change = ledger.counted_change(counted.at, counted.amount);
  EXPECT_EQ(counted.change, 4);
  accept(counted);
  EXPECT_EQ(ledger.stock(),
            (Stock{{key_at(kShelf), HalfServings(8)}, {key_at(kBag), HalfServings(4)}}))
      << "nothing with zero";
  LotTotals want;
  want.received = 16, want.found = 4, want.counted = 4, want.eaten = 1, want.given_away = 4,
  want.thrown_out = 3, want.lost = 4;
  EXPECT_EQ(ledger.totals().at(LotId(1)), want);
  EXPECT_EQ(want.in() - want.out(), 12);
}

TEST_F(LedgerOfStew, RefusesWhatCannotHaveHappenedAndSaysWhatToDo) {
  const Day june = day_at("2026-06-01");
  refuse(entry(EntryKind::kEaten, key_at(kShelf), 20), "has 4 pouches in Top shelf, not 5 pouches");
  refuse(entry(EntryKind::kEaten, key_at(kBag), 4), "has no pouches in Ada's bag");
  refuse(entry(EntryKind::kEaten, key_at(kShelf, june), 2), "opened Mon 1 Jun 2026");
  refuse(entry(EntryKind::kEaten, key_at(kShelf), 3), "a sealed pouch");
  refuse(entry(EntryKind::kEaten, key_at(kShelf), 0), "no amount to record");
  refuse(entry(EntryKind::kEaten, key_at(kShelf), -4), "no amount to record");
  refuse(entry(EntryKind::kReceived, key_at(kShelf), 4 * (kMaxUnits + 1)),
         "more than anybody keeps");
  refuse(entry(EntryKind::kReceived, key_at(kShelf), 4, "2026-04-30"),
         "was received on Fri 1 May 2026, after Thu 30 Apr 2026");
  refuse(entry(EntryKind::kFound, key_at(kShelf, june), 4), "what is opened is not found");
  refuse(entry(EntryKind::kEaten, key_at(kShelf, day_at("2026-06-02")), 1),
         "was opened on Tue 2 Jun 2026, after Mon 1 Jun 2026");
  refuse(entry(EntryKind::kOpened, key_at(kShelf), 8), "one sealed pouch is opened at a time");
  refuse(entry(EntryKind::kOpened, key_at(kShelf, june), 4),
         "one sealed pouch is opened at a time");
  refuse(moved(key_at(kShelf), kShelf, 4), "is there already");
  refuse(moved(key_at(kShelf), PlaceKey("moon"), 4), "there is no place 'moon' to move to");
  refuse(entry(EntryKind::kFound, {LotId(1), PlaceKey("moon"), std::nullopt}, 4),
         "there is no place 'moon'");
  refuse(entry(EntryKind::kFound, {LotId(9), kShelf, std::nullopt}, 4), "there is no lot 9");
  Entry counted = entry(EntryKind::kCounted, key_at(kShelf), 8);
  counted.change = 8;
  refuse(counted, "does not fit: by the record 4 pouches were in Top shelf");
  Entry again = home.entries[0];
  refuse(again, "entry 1 is there twice");
}

TEST_F(LedgerOfStew, ThingsAreNotOpened) {
  home.lots.push_back(make_lot(2, "opener", MarkKind::kNone, ""));
  const StockKey at{LotId(2), kShelf, std::nullopt};
  accept(entry(EntryKind::kReceived, at, 2));
  refuse(entry(EntryKind::kOpened, at, 2), "is nothing to open", false);
}

TEST_F(LedgerOfStew, CountingToNothingAndCountingRightAreCounts) {
  Entry right = entry(EntryKind::kCounted, key_at(kShelf), 16);
  accept(right);
  EXPECT_EQ(halves(kShelf), 16);
  Entry none = entry(EntryKind::kCounted, key_at(kShelf), 0);
  none.change = -16;
  accept(none);
  EXPECT_TRUE(ledger.stock().empty());
  EXPECT_EQ(ledger.totals().at(LotId(1)).counted, -16);
}

TEST_F(LedgerOfStew, ACorrectionRestoresWhatWasBeforeEveryKind) {
  const Day june = day_at("2026-06-01");
  accept(moved(key_at(kShelf), kBag, 4));
  accept(entry(EntryKind::kOpened, key_at(kShelf), 4));
  Entry counted = entry(EntryKind::kCounted, key_at(kShelf), 12);
  counted.change = 4;
  const std::vector<Entry> each{entry(EntryKind::kReceived, key_at(kShelf), 4),
                                entry(EntryKind::kFound, key_at(kShelf), 4),
                                moved(key_at(kShelf), kBag, 4),
                                entry(EntryKind::kOpened, key_at(kShelf), 4),
                                entry(EntryKind::kEaten, key_at(kShelf, june), 1),
                                entry(EntryKind::kGivenAway, key_at(kShelf), 4),
                                entry(EntryKind::kThrownOut, key_at(kShelf), 4),
                                entry(EntryKind::kLost, key_at(kShelf), 4),
                                counted};
  for (const Entry& done : each) {
    const Stock before = ledger.stock();
    const auto totals = ledger.totals();
    accept(done);
    EXPECT_NE(ledger.stock(), before) << entry_kind_name(done.kind);
    accept(corrected(done.id.value()));
    EXPECT_EQ(ledger.stock(), before) << entry_kind_name(done.kind);
    EXPECT_EQ(ledger.totals(), totals) << entry_kind_name(done.kind);
  }
}

TEST_F(LedgerOfStew, RefusesCorrectionsOfNothingOfCorrectionsAndOfWhatIsUsed) {
  refuse(corrected(77), "there is no entry 77 to correct");
  const Entry eaten = entry(EntryKind::kEaten, key_at(kShelf), 4);
  accept(eaten);
  refuse(corrected(1), "entry 1 cannot be taken back any more");
  const Entry undo = corrected(eaten.id.value());
  accept(undo);
  refuse(corrected(eaten.id.value()), "was corrected already");
  refuse(corrected(undo.id.value()), "is a correction itself");
  accept(corrected(1));
  EXPECT_TRUE(ledger.stock().empty());
}

TEST_F(LedgerOfStew, FindsEntriesByTheirNumbersWhateverTheOrderTheyCameIn) {
  Entry first = entry(EntryKind::kEaten, key_at(kShelf), 4);
  Entry second = moved(key_at(kShelf), kBag, 4);
  Entry third = entry(EntryKind::kFound, key_at(kBag), 4);
  first.id = EntryId(140);
  second.id = EntryId(120);
  third.id = EntryId(130);
  for (const Entry& each : {first, second, third}) accept(each);
  for (const Entry& each : {second, third, first}) {
    refuse(each, "entry " + std::to_string(each.id.value()) + " is there twice");
  }
  for (const std::int64_t absent : {119, 125, 135, 141}) {
    refuse(corrected(absent), "there is no entry " + std::to_string(absent) + " to correct");
  }
  for (const Entry& each : {third, first, second}) accept(corrected(each.id.value()));
  EXPECT_EQ(halves(kShelf), 16);
  EXPECT_EQ(halves(kBag), 0);
  refuse(corrected(130), "was corrected already");
}

TEST(Replay, NamesEveryEntryThatCannotBe) {
  Household home = core_household();
  Entry eaten = home.entries[0];
  eaten.id = EntryId(2);
  eaten.kind = EntryKind::kEaten;
  eaten.amount = HalfServings(20);
  home.entries.push_back(eaten);
  eaten.id = EntryId(3);
  eaten.amount = HalfServings(4);
  home.entries.push_back(eaten);
  eaten.id = EntryId(4);
  eaten.amount = HalfServings(3);
  home.entries.push_back(eaten);
  const auto ledger = replay(home);
  ASSERT_FALSE(ledger);
  ASSERT_EQ(ledger.error().problems.size(), 2U);
  EXPECT_EQ(ledger.error().problems[0].where, "/entries/1");
  EXPECT_EQ(ledger.error().problems[0].value, "2");
  EXPECT_EQ(ledger.error().problems[1].where, "/entries/3");
}

TEST(Replay, ThroughADayLeavesLaterEntriesOut) {
  Household home = core_household();
  Entry eaten = home.entries[0];
  eaten.id = EntryId(2);
  eaten.kind = EntryKind::kEaten;
  eaten.on = day_at("2026-07-01");
  eaten.amount = HalfServings(4);
  home.entries.push_back(eaten);
  const auto on_hand = [&](const char* day) {
    return replay_through(home, day_at(day))->on_hand(key_at(kShelf)).halves();
  };
  EXPECT_EQ(on_hand("2026-04-30"), 0);
  EXPECT_EQ(on_hand("2026-05-01"), 16);
  EXPECT_EQ(on_hand("2026-06-30"), 16);
  EXPECT_EQ(on_hand("2026-07-01"), 12);
  EXPECT_EQ(replay(home)->on_hand(key_at(kShelf)).halves(), 12);
}

}  // namespace
}  // namespace larderloop
