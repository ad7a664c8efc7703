#include "larderloop/core/stock.h"

#include <array>

#include "larderloop/core/words.h"

namespace larderloop {
namespace {

constexpr std::size_t kMostProblems = 200;

std::string lot_words(const Food& food, LotId lot) { return "lot " + std::to_string(lot.value()) + " (" + food.name + ")"; }

std::string place_words(const Household& household, const StockKey& at) {
  const Place* place = find_place(household, at.place);
  std::string words = place == nullptr ? at.place.str() : place->name;
  if (at.opened_on) words += ", opened " + plain_day(*at.opened_on);
  return words;
}

tl::unexpected<Error> refuse(std::string what, std::string next_step) {
  return fail(ErrorKind::kBadData, std::move(what), std::move(next_step));
}

bool leaves(EntryKind kind) {
  return kind == EntryKind::kEaten || kind == EntryKind::kGivenAway || kind == EntryKind::kThrownOut ||
         kind == EntryKind::kLost;
}

std::int64_t& total_of(LotTotals& totals, EntryKind kind) {
  switch (kind) {
    case EntryKind::kFound:
      return totals.found;
    case EntryKind::kEaten:
      return totals.eaten;
    case EntryKind::kGivenAway:
      return totals.given_away;
    case EntryKind::kThrownOut:
      return totals.thrown_out;
    case EntryKind::kLost:
      return totals.lost;
    case EntryKind::kCounted:
      return totals.counted;
    case EntryKind::kReceived:
    case EntryKind::kMoved:
    case EntryKind::kOpened:
    case EntryKind::kCorrected:
      break;
  }
  return totals.received;
}

}  // namespace

HalfServings Ledger::on_hand(const StockKey& at) const {
  const auto found = stock_.find(at);
  return found == stock_.end() ? HalfServings() : found->second;
}

std::int64_t Ledger::counted_change(const StockKey& at, HalfServings amount) const {
  return amount.halves() - on_hand(at).halves();
}

Status Ledger::apply(const Entry& entry) {
  if (done_.count(entry.id) > 0) {
    return refuse("entry " + std::to_string(entry.id.value()) + " is there twice", "give every entry a number of its own");
  }
  if (entry.kind == EntryKind::kCorrected) {
    const auto found = done_.find(entry.corrects);
    const std::string number = std::to_string(entry.corrects.value());
    if (found == done_.end()) {
      return refuse("there is no entry " + number + " to correct", "see: larderloop record list");
    }
    if (found->second.entry.kind == EntryKind::kCorrected) {
      return refuse("entry " + number + " is a correction itself", "record what happened once more instead");
    }
    if (found->second.corrected) {
      return refuse("entry " + number + " was corrected already", "see: larderloop record list");
    }
    if (auto undone = apply_change(found->second.entry, -1); !undone) return undone;
    found->second.corrected = true;
    remember(entry);
    return {};
  }
  if (auto checked = check_form(entry); !checked) return checked;
  if (auto applied = apply_change(entry, 1); !applied) return applied;
  remember(entry);
  return {};
}

// Numbers grow, so the end is the place; the words of an entry are not needed to undo it.
void Ledger::remember(const Entry& entry) {
  Entry kept;
  kept.id = entry.id;
  kept.kind = entry.kind;
  kept.on = entry.on;
  kept.at = entry.at;
  kept.to = entry.to;
  kept.amount = entry.amount;
  kept.change = entry.change;
  done_.emplace_hint(done_.end(), entry.id, Done{std::move(kept), false});
}

// What an entry must be like whatever lies where.
Status Ledger::check_form(const Entry& entry) const {
  const Lot* lot = find_lot(*household_, entry.at.lot);
  if (lot == nullptr) {
    return refuse("there is no lot " + std::to_string(entry.at.lot.value()), "see: larderloop lot list");
  }
  const Food& food = *find_food(*household_, lot->food);
  const auto name_of_lot = [&] { return lot_words(food, lot->id); };
  if (find_place(*household_, entry.at.place) == nullptr) {
    return refuse("there is no place '" + entry.at.place.str() + "'", "see: larderloop place list");
  }
  const std::int64_t unit = HalfServings::units(1, food.servings).halves();
  const std::int64_t amount = entry.amount.halves();
  if (amount < 0 || (amount == 0 && entry.kind != EntryKind::kCounted)) {
    return refuse("nothing of " + name_of_lot() + " is no amount to record", "name an amount above zero");
  }
  if (amount > kMaxUnits * unit) {
    return refuse(units_words(food, entry.amount) + " of " + name_of_lot() + " is more than anybody keeps",
                  "check the number; at most " + std::to_string(kMaxUnits) + " at once");
  }
  if (entry.on < lot->received) {
    return refuse(name_of_lot() + " was received on " + plain_day(lot->received) + ", after " + plain_day(entry.on),
                  "check the date of the entry");
  }
  const bool sealed = !entry.at.opened_on;
  const bool arrives = entry.kind == EntryKind::kReceived || entry.kind == EntryKind::kFound;
  if (arrives && !sealed) {
    return refuse("what is opened is not " + std::string(entry_kind_name(entry.kind)), "record it as sealed, then as opened");
  }
  if (entry.at.opened_on && *entry.at.opened_on > entry.on) {
    return refuse(name_of_lot() + " was opened on " + plain_day(*entry.at.opened_on) + ", after " + plain_day(entry.on),
                  "check the date of the entry");
  }
  if (sealed && amount % unit != 0) {
    return refuse("a sealed " + food.unit + " of " + name_of_lot() + " cannot be divided", "open one first: larderloop record opened " +
                                                                                      std::to_string(lot->id.value()));
  }
  if (entry.kind == EntryKind::kOpened) {
    if (food.kind == FoodKind::kThing) return refuse(name_of_lot() + " is nothing to open", "");
    if (!sealed || amount != unit) {
      return refuse("one sealed " + food.unit + " is opened at a time", "record each " + food.unit + " by itself");
    }
  }
  if (entry.kind == EntryKind::kMoved) {
    if (find_place(*household_, entry.to) == nullptr) {
      return refuse("there is no place '" + entry.to.str() + "' to move to", "see: larderloop place list");
    }
    if (entry.to == entry.at.place) return refuse(name_of_lot() + " is there already", "name another place");
  }
  if (entry.kind == EntryKind::kCounted && counted_change(entry.at, entry.amount) != entry.change) {
    return refuse("the count of " + name_of_lot() + " does not fit: by the record " + units_words(food, on_hand(entry.at)) +
                      " were in " + place_words(*household_, entry.at),
                  "count again: larderloop record counted " + std::to_string(lot->id.value()) + " N --at " +
                      entry.at.place.str());
  }
  return {};
}

// Moves amounts; `sign` -1 undoes. Nothing changes unless every position stays at zero or above.
Status Ledger::apply_change(const Entry& entry, int sign) {
  const std::int64_t amount = sign * entry.amount.halves();
  struct Change {
    StockKey at;
    std::int64_t by = 0;
  };
  std::array<Change, 2> moves;
  std::size_t count = 0;
  const auto add = [&](StockKey at, std::int64_t by) { moves[count++] = {std::move(at), by}; };
  switch (entry.kind) {
    case EntryKind::kReceived:
    case EntryKind::kFound:
      add(entry.at, amount);
      break;
    case EntryKind::kMoved:
      add(entry.at, -amount);
      add(StockKey{entry.at.lot, entry.to, entry.at.opened_on}, amount);
      break;
    case EntryKind::kOpened:
      add(entry.at, -amount);
      add(StockKey{entry.at.lot, entry.at.place, entry.on}, amount);
      break;
    case EntryKind::kEaten:
    case EntryKind::kGivenAway:
    case EntryKind::kThrownOut:
    case EntryKind::kLost:
      add(entry.at, -amount);
      break;
    case EntryKind::kCounted:
      add(entry.at, sign * entry.change);
      break;
    case EntryKind::kCorrected:
      return {};
  }
  for (std::size_t index = 0; index < count; ++index) {
    const auto& [at, change] = moves[index];
    const HalfServings there = on_hand(at);
    if (there.halves() + change >= 0) continue;
    const Lot& lot = *find_lot(*household_, entry.at.lot);
    const Food& food = *find_food(*household_, lot.food);
    const std::string name = lot_words(food, lot.id) + " has " + units_words(food, there) + " in " +
                             place_words(*household_, at) + ", not " + units_words(food, HalfServings(-change));
    if (sign < 0) {
      return refuse("entry " + std::to_string(entry.id.value()) + " cannot be taken back any more: " + name,
                    "correct the later entries of this lot first: larderloop record list --lot " +
                        std::to_string(lot.id.value()));
    }
    return refuse(name, "if there is more, count it: larderloop record counted " + std::to_string(lot.id.value()) +
                            " N --at " + at.place.str());
  }
  for (std::size_t index = 0; index < count; ++index) {
    const auto& [at, change] = moves[index];
    if (change == 0) continue;
    HalfServings& there = stock_[at];
    there = HalfServings(there.halves() + change);
    if (there == HalfServings()) stock_.erase(at);
  }
  LotTotals& totals = totals_[entry.at.lot];
  if (entry.kind == EntryKind::kCounted) totals.counted += sign * entry.change;
  else if (entry.kind == EntryKind::kReceived || entry.kind == EntryKind::kFound || leaves(entry.kind)) {
    total_of(totals, entry.kind) += amount;
  }
  return {};
}

namespace {

Result<Ledger> replay_if(const Household& household, Day last) {
  Ledger ledger(household);
  Error error = make_error(ErrorKind::kBadData, "the record cannot be replayed", "see: larderloop check");
  for (std::size_t index = 0; index < household.entries.size(); ++index) {
    const Entry& entry = household.entries[index];
    if (entry.on > last) continue;
    if (auto applied = ledger.apply(entry); !applied && error.problems.size() < kMostProblems) {
      error.problems.push_back({"/entries/" + std::to_string(index), std::to_string(entry.id.value()),
                                applied.error().what, applied.error().next_step});
    }
  }
  if (!error.problems.empty()) return fail(std::move(error));
  return ledger;
}

}  // namespace

Result<Ledger> replay(const Household& household) { return replay_if(household, Day::max()); }
Result<Ledger> replay_through(const Household& household, Day day) { return replay_if(household, day); }

}  // namespace larderloop
