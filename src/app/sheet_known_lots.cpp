// Lots of the book that a row speaks of: the same food, date, code, day and place.
#include <algorithm>

#include "app/sheet_lots.h"
#include "larderloop/app/placing.h"
#include "larderloop/core/words.h"

namespace larderloop {
namespace {

bool same_words(const Statement& a, const Statement& b) { return a.declared == b.declared && a.suits == b.suits; }

std::string number_words(LotId id) { return "lot " + std::to_string(id.value()); }

}  // namespace

KnownLots::KnownLots(SheetWork& work, const LotReader& reader) : work_(work), reader_(reader) {
  const NextIds next = next_ids(work.household);
  next_entry_ = next.entry.value();
  next_reading_ = next.reading.value();
  if (work.household.lots.empty()) return;
  auto ledger = replay(work.household);
  if (!ledger) {
    broken_ = ledger.error();
    return;
  }
  ledger_ = std::move(*ledger);
  facts_ = all_lot_facts(work.household);
  for (std::size_t index = 0; index < facts_.size(); ++index)
    by_identity_[lot_identity(facts_[index].food, facts_[index].mark, work.household.lots[index].lot_code)].push_back(index);
}

std::vector<const LotFacts*> KnownLots::like(const SheetLot& row) const {
  std::vector<const LotFacts*> all;
  const auto found = by_identity_.find(lot_identity(row.food->key, row.mark, row.lot_code));
  if (found == by_identity_.end()) return all;
  for (const std::size_t index : found->second) {
    if (!row.received_said || facts_[index].received == row.received) all.push_back(&facts_[index]);
  }
  std::stable_sort(all.begin(), all.end(), [&](const LotFacts* a, const LotFacts* b) { return (a->id.value() == row.number) > (b->id.value() == row.number); });
  return all;
}

// Does just this lie there, and no other row speaks of it?
bool KnownLots::take(const SheetLot& row, const LotFacts& facts) {
  const StockKey at{facts.id, row.place->key, row.opened_on};
  if (ledger_->on_hand(at) != row.amount || !taken_.insert(at).second) return false;
  taken_lots_.insert(facts.id);
  const bool read = settle_label(row, facts);
  const bool changed = settle_state(row, facts) || read;
  ++(changed ? work_.report.changed : work_.report.known);
  return true;
}

bool KnownLots::settle(const SheetLot& row) {
  if (facts_.empty()) return false;
  const auto candidates = like(row);
  // A lot named by its number is that one, if it can be.
  const bool named = !candidates.empty() && candidates.front()->id.value() == row.number;
  for (const LotFacts* each : candidates) {
    if (named && each != candidates.front()) break;
    if (take(row, *each)) return true;
  }
  const Lot* numbered = row.number == 0 ? nullptr : find_lot(work_.household, LotId(row.number));
  if (numbered != nullptr) {
    const auto facts = std::lower_bound(facts_.begin(), facts_.end(), numbered->id, [](const LotFacts& each, LotId id) { return each.id < id; });
    settle_numbered(row, *numbered, *facts);
    return true;
  }
  if (candidates.empty()) return false;
  put_off_.push_back(row);
  return true;
}

void KnownLots::settle_numbered(const SheetLot& row, const Lot& lot, const LotFacts& facts) {
  const std::string number = std::to_string(lot.id.value());
  const std::string name = number_words(lot.id);
  const Food& food = *find_food(work_.household, lot.food);
  if (lot.food != row.food->key) {
    refuse(row, Col::kLot, number, name + " of the book is " + food.name + ", not " + row.food->name, "leave the number empty to enter it as a new lot");
    return;
  }
  if (facts.mark.kind != row.mark.kind || facts.mark.day != row.mark.day) {
    refuse(row, Col::kDate, row.mark.text, name + " has another date: " + (facts.mark.day ? std::string(mark_kind_words(facts.mark.kind)) + " " + plain_day(*facts.mark.day) : "none"),
           "if this is what is printed: larderloop lot date " + number + " TEXT; if it is another lot, leave the number empty");
    return;
  }
  if (settled_text(lot.lot_code) != settled_text(row.lot_code)) {
    refuse(row, Col::kLotCode, row.lot_code, name + " has another code: '" + lot.lot_code + "'", "write that code, for it stays as it was entered; if it is another lot, leave the number empty");
    return;
  }
  if (row.received_said && lot.received != row.received) {
    refuse(row, Col::kReceived, iso_day(row.received), name + " was received on " + plain_day(lot.received), "leave this cell empty; if it is another lot, leave the number empty");
    return;
  }
  const StockKey at{lot.id, row.place->key, row.opened_on};
  const HalfServings there = ledger_->on_hand(at);
  const Col count = row.opened_on ? Col::kServingsLeft : Col::kUnits;
  const std::string by_record = "by the record there " + std::string(there == HalfServings() ? "is nothing" : "are " + units_words(food, there)) + " of " + name + " in " + row.place->name;
  if (taken_.count(at) > 0) {
    refuse(row, count, "", name + " in " + row.place->name + " stands in another row already", "leave one of the two rows out");
    return;
  }
  if (there == HalfServings() || !work_.how.counted) {
    refuse(row, count, "", by_record, there == HalfServings() ? "if it was moved or opened: larderloop record moved, larderloop record opened; if it turned up: larderloop record found " + number
                                                              : "if that is what is really there: larderloop record counted " + number + " N --at " + row.place->key.str() + ", or import with --counted");
    return;
  }
  taken_.insert(at);
  taken_lots_.insert(lot.id);
  Entry entry;
  entry.id = EntryId(next_entry_++);
  entry.kind = EntryKind::kCounted;
  entry.on = work_.when.today;
  entry.written_at = work_.when.now;
  entry.at = at;
  entry.amount = row.amount;
  entry.change = row.amount.halves() - there.halves();
  work_.changes.entries.push_back(entry);
  ++work_.report.counted;
  work_.news(row.line, RowDid::kCounted, name + " (" + food.name + ") in " + row.place->name + ": " + units_words(food, there) + " become " + units_words(food, row.amount));
}

// A label that the row tells of a lot that was not read, or says something else: a reading, when the lot is named by its number.
bool KnownLots::settle_label(const SheetLot& row, const LotFacts& facts) {
  const Statement* told = reader_.label(row.label);
  if (told == nullptr) return false;
  const auto [before, first] = told_labels_.emplace(facts.id, row.label);
  if (!first) {
    if (!same_words(*reader_.label(before->second), *told)) refuse(row, Col::kContains, "", "another row tells another label of " + number_words(facts.id), "a lot has one label: write the same in all its rows");
    return false;
  }
  if (facts.label && same_words(*facts.label, *told)) return false;
  const std::string number = std::to_string(facts.id.value());
  if (row.number != facts.id.value()) {
    refuse(row, Col::kContains, "", "this is " + number_words(facts.id) + " of the book, " + (facts.label ? "whose label says something else" : "whose label was not read"),
           "write its number in a column lot, or: larderloop lot label " + number + " --read-by NAME");
    return false;
  }
  Reading reading;
  reading.id = ReadingId(next_reading_++);
  reading.lot = facts.id;
  reading.on = work_.when.today;
  reading.by = told->read_by;
  reading.label = *told;
  work_.changes.readings.push_back(std::move(reading));
  labels_read_.emplace_back(facts.food, row.label);
  work_.news(row.line, RowDid::kChanged, number_words(facts.id) + " (" + find_food(work_.household, facts.food)->name + "): label read");
  tell_wrong_places(facts, *told);
  return true;
}

void KnownLots::tell_wrong_places(const LotFacts& facts, const Statement& label) {
  const Food& food = *find_food(work_.household, facts.food);
  const Stock& stock = ledger_->stock();
  for (auto at = stock.lower_bound(StockKey{facts.id, PlaceKey(), std::nullopt}); at != stock.end() && at->first.lot == facts.id; ++at) {
    const auto wrong = refusals_at(work_.household, food, &label, at->first.place, work_.when.today);
    if (wrong.empty()) continue;
    const std::string number = std::to_string(facts.id.value());
    work_.report.first.push_back(number_words(facts.id) + " lies in " + find_place(work_.household, at->first.place)->name + ", and must leave there: " + must_not_words(work_.household, wrong) +
                                 "; next: larderloop record moved " + number + " all --at " + at->first.place.str() + " --to PLACE");
  }
}

bool KnownLots::settle_state(const SheetLot& row, const LotFacts& facts) {
  if (!row.state) return false;
  const auto [before, first] = told_states_.emplace(facts.id, *row.state);
  if (!first) {
    if (before->second != *row.state) refuse(row, Col::kState, std::string(lot_state_name(*row.state)), "another row tells another state of " + number_words(facts.id), "a lot has one state: write the same in all its rows");
    return false;
  }
  if (*row.state == facts.state) return false;
  const std::string number = std::to_string(facts.id.value());
  const std::string state(lot_state_name(*row.state));
  if (row.number != facts.id.value()) {
    refuse(row, Col::kState, state, "this is " + number_words(facts.id) + " of the book, which is " + std::string(lot_state_name(facts.state)), "larderloop lot state " + number + " " + state);
    return false;
  }
  Reading reading;
  reading.id = ReadingId(next_reading_++);
  reading.lot = facts.id;
  reading.on = work_.when.today;
  reading.state = *row.state;
  work_.changes.readings.push_back(std::move(reading));
  work_.news(row.line, RowDid::kChanged, number_words(facts.id) + " (" + find_food(work_.household, facts.food)->name + "): " + state);
  return true;
}

std::vector<SheetLot> KnownLots::finish() {
  std::vector<SheetLot> fresh;
  for (SheetLot& row : put_off_) {
    const LotFacts* left = nullptr;
    const LotFacts* here = nullptr;
    for (const LotFacts* each : like(row)) {
      if (taken_lots_.count(each->id) > 0) continue;
      if (left == nullptr) left = each;
      const HalfServings there = ledger_->on_hand({each->id, row.place->key, row.opened_on});
      if (here == nullptr && there != HalfServings()) here = each;
    }
    if (left == nullptr) {
      fresh.push_back(std::move(row));
      continue;
    }
    const LotFacts& facts = here != nullptr ? *here : *left;
    const std::string number = std::to_string(facts.id.value());
    const std::string other = "; if it came besides, enter it by hand: larderloop lot add";
    if (here != nullptr) {
      const Food& food = *row.food;
      refuse(row, row.opened_on ? Col::kServingsLeft : Col::kUnits, "", "the book knows these as " + number_words(facts.id) + ", of which " + units_words(food, ledger_->on_hand({facts.id, row.place->key, row.opened_on})) + " are in " + row.place->name,
             "if that is what is really there: larderloop record counted " + number + " N --at " + row.place->key.str() + other);
    } else {
      refuse(row, Col::kPlace, row.place->key.str(), "the book knows these as " + number_words(facts.id) + ", and nothing of it lies in " + row.place->name + " any more",
             "leave the row out; see: larderloop lot show " + number + other);
    }
  }
  return fresh;
}

}  // namespace larderloop
