// The ledger says what the entries sum up to, position by position and lot by lot. The sums are
// made here, from the accepted entries alone: received + found + count corrections = eaten + given
// away + thrown out + lost + on hand (the balance of a store; common practice of stock keeping).
// Beside conservation this finds what lies in the wrong place.
#include "larderloop/core/stock.h"
#include "support/household_gen.h"
#include "unit/core/core_household.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <sstream>

namespace larderloop {

// One attempt to write something, sensible or not. `change_off`: by how much a count is told
// wrongly.
struct Attempt {
  EntryKind kind = EntryKind::kReceived;
  int day = 0;
  std::int64_t lot = 1;
  int place = 0;
  int to = 0;
  int opened = -1;  // day, -1 = sealed
  int pick = -1;    // from the stock there is, in place of lot, place and opened; -1 = not
  std::int64_t units = 1;
  std::int64_t halves = 0;  // on top of the units
  std::int64_t change_off = 0;
  std::int64_t back = 1;  // corrected: how many attempts ago
};

namespace {

// The last place is in no household, nor is lot 9. All lots came on day 1.
constexpr std::array kPlaceNames{"top-shelf", "ada-bag", "crate", "moon"};
const Day kBefore = day_at("2026-04-30");

Household home_of_three_lots() {
  Household home = core_household();
  home.lots.push_back(make_lot(2, "opener", MarkKind::kNone, ""));
  home.lots.push_back(make_lot(3, "cat-dinner", MarkKind::kUseBy, "2027-01-31"));
  home.entries.clear();
  return home;
}

// What every record begins with: six units of every lot on the shelf.
std::vector<Entry> first_entries(const Household& home) {
  std::vector<Entry> entries;
  for (const Lot& lot : home.lots) {
    Entry entry;
    entry.id = EntryId(lot.id.value());
    entry.on = lot.received;
    entry.written_at = midnight(entry.on);
    entry.at = {lot.id, PlaceKey(kPlaceNames[0]), std::nullopt};
    entry.amount = HalfServings::units(6, find_food(home, lot.food)->servings);
    entries.push_back(entry);
  }
  return entries;
}

bool is_one_of(EntryKind kind, std::initializer_list<EntryKind> kinds) {
  return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

PlaceKey place_of(int index) {
  return PlaceKey(kPlaceNames.at(static_cast<std::size_t>(index)));
}

Entry entry_of(const Household& home, const Ledger& ledger, const Attempt& attempt,
               std::int64_t id) {
  Entry entry;
  entry.id = EntryId(id);
  entry.kind = attempt.kind;
  entry.on = kBefore + Days(attempt.day);
  entry.written_at = midnight(entry.on);
  if (attempt.kind == EntryKind::kCorrected) {
    entry.corrects = EntryId(id - attempt.back);
    return entry;
  }
  entry.at.lot = LotId(attempt.lot);
  entry.at.place = place_of(attempt.place);
  if (attempt.opened >= 0) entry.at.opened_on = kBefore + Days(attempt.opened);
  const bool arrives = is_one_of(attempt.kind, {EntryKind::kReceived, EntryKind::kFound});
  if (attempt.pick >= 0 && !arrives && !ledger.stock().empty()) {
    const auto size = static_cast<int>(ledger.stock().size());
    entry.at = std::next(ledger.stock().begin(), attempt.pick % size)->first;
  }
  const Lot* lot = find_lot(home, entry.at.lot);
  const std::int64_t servings = lot == nullptr ? 1 : find_food(home, lot->food)->servings;
  entry.amount = HalfServings::units(attempt.units, servings) + HalfServings(attempt.halves);
  if (attempt.kind == EntryKind::kMoved) entry.to = place_of(attempt.to);
  if (attempt.kind == EntryKind::kCounted) {
    entry.change = ledger.counted_change(entry.at, entry.amount) + attempt.change_off;
  }
  return entry;
}

// ---- the sums, from what was accepted and is not taken back ----

struct Sums {
  std::map<StockKey, std::int64_t> on_hand;
  std::map<LotId, std::int64_t> in, out;
};

Sums sums_of(const std::vector<Entry>& accepted) {
  std::set<EntryId> taken_back;
  for (const Entry& entry : accepted) {
    if (entry.kind == EntryKind::kCorrected) taken_back.insert(entry.corrects);
  }
  Sums sums;
  for (const Entry& entry : accepted) {
    if (entry.kind == EntryKind::kCorrected || taken_back.count(entry.id) > 0) continue;
    const std::int64_t amount =
        entry.kind == EntryKind::kCounted ? entry.change : entry.amount.halves();
    if (is_one_of(entry.kind, {EntryKind::kReceived, EntryKind::kFound, EntryKind::kCounted})) {
      sums.on_hand[entry.at] += amount;
      sums.in[entry.at.lot] += amount;
      continue;
    }
    sums.on_hand[entry.at] -= amount;
    if (entry.kind == EntryKind::kMoved) {
      sums.on_hand[{entry.at.lot, entry.to, entry.at.opened_on}] += amount;
    } else if (entry.kind == EntryKind::kOpened) {
      sums.on_hand[{entry.at.lot, entry.at.place, entry.on}] += amount;
    } else {
      sums.out[entry.at.lot] += amount;
    }
  }
  for (auto at = sums.on_hand.begin(); at != sums.on_hand.end();)
    at = at->second == 0 ? sums.on_hand.erase(at) : std::next(at);
  return sums;
}

// An entry can be taken back once, is no correction, and without it nothing is below zero.
bool can_be_taken_back(const std::vector<Entry>& accepted, const Entry& correction) {
  const auto target = std::find_if(accepted.begin(), accepted.end(), [&](const Entry& each) {
    return each.id == correction.corrects;
  });
  if (target == accepted.end() || target->kind == EntryKind::kCorrected) return false;
  std::vector<Entry> then = accepted;
  for (const Entry& each : accepted) {
    if (each.kind == EntryKind::kCorrected && each.corrects == target->id) return false;
  }
  then.push_back(correction);
  const Sums sums = sums_of(then);
  return std::all_of(sums.on_hand.begin(), sums.on_hand.end(),
                     [](const auto& each) { return each.second >= 0; });
}

template <class Map, class Key>
std::int64_t value_at(const Map& map, const Key& key) {
  const auto found = map.find(key);
  return found == map.end() ? 0 : found->second;
}

// Empty when the ledger balances and says what the sums say.
std::string fault_of(const Household& home, const Ledger& ledger,
                     const std::vector<Entry>& accepted) {
  std::ostringstream fault;
  std::map<LotId, std::int64_t> lies;
  for (const auto& [at, amount] : ledger.stock()) {
    if (amount.halves() <= 0)
      fault << "lot " << at.lot.value() << " has " << amount.halves() << " at " << at.place.str()
            << "; ";
    lies[at.lot] += amount.halves();
  }
  const Sums sums = sums_of(accepted);
  for (const Lot& lot : home.lots) {
    const auto found = ledger.totals().find(lot.id);
    const LotTotals totals = found == ledger.totals().end() ? LotTotals{} : found->second;
    const std::int64_t here = value_at(lies, lot.id);
    if (totals.in() != totals.out() + here) {
      fault << "lot " << lot.id.value() << ": " << totals.in() << " in, " << totals.out()
            << " out, " << here << " on hand; ";
    }
    if (totals.in() != value_at(sums.in, lot.id) || totals.out() != value_at(sums.out, lot.id)) {
      fault << "lot " << lot.id.value() << ": totals are not the sums of its entries; ";
    }
  }
  std::map<StockKey, std::int64_t> stock;
  for (const auto& [at, amount] : ledger.stock()) stock[at] = amount.halves();
  if (stock != sums.on_hand) fault << "what lies where is not the sum of the entries; ";
  return fault.str();
}

// ---- random attempts: mostly sensible ones, so that long records come about, and every kind of
// nonsense ----

rc::Gen<Attempt> any_attempt() {
  using rc::gen::element;
  using rc::gen::inRange;
  using rc::gen::just;
  using rc::gen::set;
  using rc::gen::weightedOneOf;
  return rc::gen::build<Attempt>(
      set(&Attempt::kind,
          weightedOneOf<EntryKind>(
              {{4, element(EntryKind::kMoved, EntryKind::kOpened, EntryKind::kCorrected)},
               {6, rc::gen::elementOf(std::vector<EntryKind>(std::begin(kAllEntryKinds),
                                                             std::end(kAllEntryKinds)))}})),
      set(&Attempt::day, weightedOneOf<int>({{12, inRange(1, 5)}, {1, just(0)}})),
      set(&Attempt::lot, weightedOneOf<std::int64_t>({{12, element<std::int64_t>(1, 1, 1, 2, 3)},
                                                      {1, just<std::int64_t>(9)}})),
      set(&Attempt::place, weightedOneOf<int>({{20, inRange(0, 3)}, {1, just(3)}})),
      set(&Attempt::to, weightedOneOf<int>({{20, inRange(0, 3)}, {1, just(3)}})),
      set(&Attempt::opened, weightedOneOf<int>({{2, just(-1)}, {1, inRange(1, 5)}})),
      set(&Attempt::pick, weightedOneOf<int>({{3, inRange(0, 12)}, {2, just(-1)}})),
      set(&Attempt::units,
          weightedOneOf<std::int64_t>({{8, element<std::int64_t>(1, 1, 1, 2, 3)},
                                       {2, just<std::int64_t>(0)},
                                       {1, element<std::int64_t>(-1, kMaxUnits, kMaxUnits + 1)}})),
      set(&Attempt::halves, weightedOneOf<std::int64_t>(
                                {{2, just<std::int64_t>(0)}, {1, inRange<std::int64_t>(-3, 4)}})),
      set(&Attempt::change_off, weightedOneOf<std::int64_t>({{5, just<std::int64_t>(0)},
                                                             {1, inRange<std::int64_t>(-4, 5)}})),
      set(&Attempt::back, weightedOneOf<std::int64_t>({{3, inRange<std::int64_t>(1, 5)},
                                                       {1, inRange<std::int64_t>(1, 30)}})));
}

struct Seen {
  std::map<EntryKind, std::int64_t> accepted, refused;
};

TEST(LedgerSums, EveryAttemptLeavesWhatTheAcceptedEntriesSumUpTo) {
  const Household home = home_of_three_lots();
  Seen seen;
  const bool held = rc::check("every lot balances after every attempt", [&] {
    const auto attempts = *rc::gen::container<std::vector<Attempt>>(any_attempt());
    Ledger ledger(home);
    std::vector<Entry> accepted = first_entries(home);
    for (const Entry& entry : accepted) RC_ASSERT(ledger.apply(entry).has_value());
    std::int64_t id = accepted.back().id.value();
    for (const Attempt& attempt : attempts) {
      const Entry entry = entry_of(home, ledger, attempt, ++id);
      const Stock stock = ledger.stock();
      const auto totals = ledger.totals();
      const Status status = ledger.apply(entry);
      if (entry.kind == EntryKind::kCorrected) {
        RC_ASSERT(status.has_value() == can_be_taken_back(accepted, entry));
      }
      if (status) {
        accepted.push_back(entry);
        ++seen.accepted[entry.kind];
        if (entry.kind == EntryKind::kCounted) RC_ASSERT(ledger.on_hand(entry.at) == entry.amount);
      } else {
        RC_ASSERT(ledger.stock() == stock);
        RC_ASSERT(ledger.totals() == totals);
        RC_ASSERT(!status.error().what.empty());
        ++seen.refused[entry.kind];
      }
      const std::string fault = fault_of(home, ledger, accepted);
      RC_ASSERT(fault == std::string());
    }
  });
  EXPECT_TRUE(held);
  for (const EntryKind kind : kAllEntryKinds) {
    EXPECT_GT(seen.accepted[kind], 0) << "never tried: " << entry_kind_name(kind);
    EXPECT_GT(seen.refused[kind], 0) << "never refused: " << entry_kind_name(kind);
  }
}

TEST(LedgerSums, WholeHouseholdsSumUpOnEveryDay) {
  std::size_t days_seen = 0;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const Household home = generate_household(seed, 40);
    const auto whole = replay(home);
    ASSERT_TRUE(whole) << "seed " << seed << ": " << whole.error().problems.front().what;
    EXPECT_EQ(fault_of(home, *whole, home.entries), "") << "seed " << seed;
    std::set<Day> days;
    for (const Entry& entry : home.entries) days.insert(entry.on);
    for (const Day day : days) {
      const auto until = replay_through(home, day);
      ASSERT_TRUE(until) << "seed " << seed << ", " << iso_day(day) << ": "
                         << until.error().problems.front().what;
      std::vector<Entry> entries;
      for (const Entry& entry : home.entries) {
        if (entry.on <= day) entries.push_back(entry);
      }
      EXPECT_EQ(fault_of(home, *until, entries), "") << "seed " << seed << ", " << iso_day(day);
      ++days_seen;
    }
  }
  EXPECT_GT(days_seen, 100U);
}

}  // namespace

// For the report of a failing case.
void showValue(const Attempt& attempt, std::ostream& out) {
  out << entry_kind_name(attempt.kind) << " on day " << attempt.day << ", lot " << attempt.lot
      << ", place " << attempt.place << " to " << attempt.to << ", opened " << attempt.opened
      << ", pick " << attempt.pick << ", " << attempt.units << " units and " << attempt.halves
      << " halves, count off by " << attempt.change_off << ", corrects " << attempt.back << " back";
}

}  // namespace larderloop
