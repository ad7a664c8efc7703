// Whatever is recorded, accepted or refused: nothing comes from nowhere, nothing vanishes, and no
// position is below zero.
#include "larderloop/core/stock.h"
#include "support/household_gen.h"
#include "support/problem_maker.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

using test::Dice;
using test::test_scale;

template <class T>
const T& some(Dice& dice, const std::vector<T>& list) {
  return list[static_cast<std::size_t>(
      dice.between(0, static_cast<std::int64_t>(list.size()) - 1))];
}

// Mostly possible, now and then absurd: wrong places, lots, dates, amounts and numbers.
Entry some_entry(Dice& dice, const Household& home, const Ledger& ledger, std::int64_t id) {
  Entry entry;
  entry.id = EntryId(dice.one_in(40) ? dice.between(1, id) : id);
  entry.kind = kAllEntryKinds[dice.between(0, 9)];
  entry.on = *resolve_day(2026, 11, 20) +
             Days(dice.one_in(20) ? dice.between(-400, 0) : dice.between(0, 5));
  const Lot& lot = some(dice, home.lots);
  entry.at = {dice.one_in(40) ? LotId(999) : lot.id,
              dice.one_in(40) ? PlaceKey("nowhere") : some(dice, home.places).key, std::nullopt};
  const bool arrives = entry.kind == EntryKind::kReceived || entry.kind == EntryKind::kFound;
  if (!arrives && !ledger.stock().empty() && !dice.one_in(5)) {
    auto at = ledger.stock().begin();
    std::advance(at, dice.between(0, static_cast<std::int64_t>(ledger.stock().size()) - 1));
    entry.at = at->first;
  }
  if (dice.one_in(20)) entry.at.opened_on = entry.on - Days(dice.between(-2, 3));
  const Lot* taken = find_lot(home, entry.at.lot);
  const std::int64_t unit =
      taken == nullptr ? 2
                       : HalfServings::units(1, find_food(home, taken->food)->servings).halves();
  const bool in_halves = entry.at.opened_on || dice.one_in(10);
  entry.amount = HalfServings(entry.kind == EntryKind::kOpened && !dice.one_in(5) ? unit
                              : in_halves ? dice.between(-1, 4)
                                          : unit * dice.between(dice.one_in(20) ? -1 : 1, 4));
  entry.to = some(dice, home.places).key;
  if (entry.kind == EntryKind::kCounted) {
    entry.change =
        dice.one_in(10) ? dice.between(-5, 5) : ledger.counted_change(entry.at, entry.amount);
  }
  if (entry.kind == EntryKind::kCorrected) entry.corrects = EntryId(dice.between(1, id));
  return entry;
}

void check_conserved(const Ledger& ledger) {
  std::map<LotId, std::int64_t> on_hand;
  for (const auto& [at, amount] : ledger.stock()) {
    ASSERT_GT(amount.halves(), 0);
    on_hand[at.lot] += amount.halves();
  }
  for (const auto& [lot, totals] : ledger.totals()) {
    for (const std::int64_t each : {totals.received, totals.found, totals.eaten, totals.given_away,
                                    totals.thrown_out, totals.lost}) {
      ASSERT_GE(each, 0);
    }
    ASSERT_EQ(totals.received + totals.found + totals.counted,
              totals.eaten + totals.given_away + totals.thrown_out + totals.lost + on_hand[lot]);
    on_hand.erase(lot);
  }
  ASSERT_TRUE(on_hand.empty()) << "stock of a lot without totals";
}

TEST(Conservation, HoldsOverEverySequenceOfEntries) {
  std::map<std::string_view, int> accepted;
  int refused = 0;
  for (std::uint64_t seed = 1; seed <= 150 * test_scale(); ++seed) {
    const Household home = generate_household(seed, 3);
    Dice dice(seed);
    Ledger ledger(home);
    for (std::int64_t id = 1; id <= 80; ++id) {
      const Entry entry = some_entry(dice, home, ledger, id);
      const Ledger before = ledger;
      const auto status = ledger.apply(entry);
      ASSERT_NO_FATAL_FAILURE(check_conserved(ledger)) << "seed " << seed << ", entry " << id;
      if (!status) {
        ++refused;
        ASSERT_EQ(ledger.stock(), before.stock())
            << "seed " << seed << ", entry " << id << " was refused and changed stock";
        ASSERT_EQ(ledger.totals(), before.totals());
        ASSERT_EQ(status.error().kind, ErrorKind::kBadData);
        ASSERT_FALSE(status.error().what.empty());
        continue;
      }
      ++accepted[entry_kind_name(entry.kind)];
      if (entry.kind == EntryKind::kCorrected) continue;
      Entry undo;
      undo.id = EntryId(1000);
      undo.kind = EntryKind::kCorrected;
      undo.corrects = entry.id;
      Ledger undone = ledger;
      ASSERT_TRUE(undone.apply(undo))
          << "seed " << seed << ", entry " << id << ": the last entry can always be taken back";
      ASSERT_EQ(undone.stock(), before.stock()) << "seed " << seed << ", entry " << id;
      for (const auto& [lot, totals] : undone.totals()) {
        const auto was = before.totals().find(lot);
        ASSERT_EQ(totals, was == before.totals().end() ? LotTotals{} : was->second);
      }
    }
  }
  EXPECT_GT(refused, 500);
  for (const EntryKind kind : kAllEntryKinds)
    EXPECT_GT(accepted[entry_kind_name(kind)], 30) << entry_kind_name(kind);
}

TEST(Conservation, GeneratedRecordsReplayToTheSameStockInOneGoAndDayByDay) {
  for (std::uint64_t seed = 1; seed <= 30 * test_scale(); ++seed) {
    const Household home = generate_household(seed, 40);
    const auto whole = replay(home);
    ASSERT_TRUE(whole);
    ASSERT_NO_FATAL_FAILURE(check_conserved(*whole));
    const auto last = replay_through(home, *resolve_day(2026, 11, 20));
    ASSERT_TRUE(last);
    EXPECT_EQ(last->stock(), whole->stock());
    const auto before = replay_through(home, *resolve_day(2026, 3, 31));
    ASSERT_TRUE(before);
    EXPECT_TRUE(before->stock().empty());
    const auto summer = replay_through(home, *resolve_day(2026, 8, 1));
    ASSERT_TRUE(summer) << summer.error().problems.front().what;
    ASSERT_NO_FATAL_FAILURE(check_conserved(*summer));
  }
}

}  // namespace
}  // namespace larderloop
