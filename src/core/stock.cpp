#include "larderloop/core/stock.h"

#include <algorithm>
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
  if (find_deed(entry.id) != nullptr) {
    return refuse("entry " + std::to_string(entry.id.value()) + " is there twice", "give every entry a number of its own");
  }
  if (entry.kind == EntryKind::kCorrected) {
    Deed* const found = find_deed(entry.corrects);
    const std::string number = std::to_string(entry.corrects.value());
    if (found == nullptr) {
      return refuse("there is no entry " + number + " to correct", "see: larderloop record list");
    }
    if (found->kind == EntryKind::kCorrected) {
      return refuse("entry " + number + " is a correction itself", "record what happened once more instead");
    }
    if (found->corrected) {
      return refuse("entry " + number + " was corrected already", "see: larderloop record list");
    }
    if (auto undone = apply_change(*found, -1); !undone) return undone;
    found->corrected = true;
    remember(deed_of(entry));
    return {};
  }
  if (auto checked = check_form(entry); !checked) return checked;
  Deed deed = deed_of(entry);
  if (auto applied = apply_change(deed, 1); !applied) return applied;
  remember(std::move(deed));
  return {};
}

Ledger::Deed Ledger::deed_of(const Entry& entry) {
  return {entry.id, entry.kind, entry.on, entry.at, entry.to, entry.amount, entry.change, false};
}

// Numbers grow, so a new one is behind all others.
Ledger::Deed* Ledger::find_deed(EntryId id) {
  if (done_.empty() || done_.back().id < id) return nullptr;
  const auto found = std::lower_bound(done_.begin(), done_.end(), id, [](const Deed& deed, EntryId wanted) { return deed.id < wanted; });
  return found->id == id ? &*found : nullptr;
}

void Ledger::remember(Deed deed) {
  if (done_.empty()) done_.reserve(household_->entries.size());
  auto place = done_.end();
  if (!done_.empty() && deed.id < done_.back().id) {
    place = std::upper_bound(done_.begin(), done_.end(), deed.id, [](EntryId wanted, const Deed& each) { return wanted < each.id; });
  }
  done_.insert(place, std::move(deed));
}

// Most entries are of a lot that was asked about before, and of the place where it was then.
Ledger::Known& Ledger::known_of(const Lot& lot) {
  known_.resize(household_->lots.size());
  return known_[static_cast<std::size_t>(&lot - household_->lots.data())];
}

const Food& Ledger::food_of(const Lot& lot) {
  const std::vector<Food>& foods = household_->foods;
  std::size_t& known = known_of(lot).food;
  if (known >= foods.size() || foods[known].key != lot.food)
    known = static_cast<std::size_t>(find_food(*household_, lot.food) - foods.data());
  return foods[known];
}

bool Ledger::is_place(const PlaceKey& key, const Lot& lot) {
  const std::vector<Place>& places = household_->places;
  std::size_t& known = known_of(lot).place;
  if (known < places.size() && places[known].key == key) return true;
  const Place* const found = find_place(*household_, key);
  if (found == nullptr) return false;
  known = static_cast<std::size_t>(found - places.data());
  return true;
}

// What an entry must be like whatever lies where.
Status Ledger::check_form(const Entry& entry) {
  const Lot* lot = find_lot(*household_, entry.at.lot);
  if (lot == nullptr) {
    return refuse("there is no lot " + std::to_string(entry.at.lot.value()), "see: larderloop lot list");
  }
  const Food& food = food_of(*lot);
  const auto name_of_lot = [&] { return lot_words(food, lot->id); };
  if (!is_place(entry.at.place, *lot)) {
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
    if (!is_place(entry.to, *lot)) {
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
Status Ledger::apply_change(const Deed& deed, int sign) {
  const std::int64_t amount = sign * deed.amount.halves();
  struct Change {
    const StockKey* at = nullptr;
    std::int64_t by = 0;
    Stock::iterator there;
    [[nodiscard]] std::int64_t after(const Stock& stock) const { return by + (there == stock.end() ? 0 : there->second.halves()); }
  };
  StockKey other;  // of what is moved or opened: where it is then
  std::array<Change, 2> moves;
  std::size_t count = 0;
  const auto add = [&](const StockKey& at, std::int64_t by) { moves[count++] = {&at, by, stock_.find(at)}; };
  switch (deed.kind) {
    case EntryKind::kReceived:
    case EntryKind::kFound:
      add(deed.at, amount);
      break;
    case EntryKind::kMoved:
      other = StockKey{deed.at.lot, deed.to, deed.at.opened_on};
      add(deed.at, -amount);
      add(other, amount);
      break;
    case EntryKind::kOpened:
      other = StockKey{deed.at.lot, deed.at.place, deed.on};
      add(deed.at, -amount);
      add(other, amount);
      break;
    case EntryKind::kEaten:
    case EntryKind::kGivenAway:
    case EntryKind::kThrownOut:
    case EntryKind::kLost:
      add(deed.at, -amount);
      break;
    case EntryKind::kCounted:
      add(deed.at, sign * deed.change);
      break;
    case EntryKind::kCorrected:
      return {};
  }
  for (std::size_t index = 0; index < count; ++index) {
    const Change& move = moves[index];
    if (move.after(stock_) >= 0) continue;
    const Lot& lot = *find_lot(*household_, deed.at.lot);
    const Food& food = *find_food(*household_, lot.food);
    const std::string name = lot_words(food, lot.id) + " has " + units_words(food, on_hand(*move.at)) + " in " +
                             place_words(*household_, *move.at) + ", not " + units_words(food, HalfServings(-move.by));
    if (sign < 0) {
      return refuse("entry " + std::to_string(deed.id.value()) + " cannot be taken back any more: " + name,
                    "correct the later entries of this lot first: larderloop record list --lot " +
                        std::to_string(lot.id.value()));
    }
    return refuse(name, "if there is more, count it: larderloop record counted " + std::to_string(lot.id.value()) +
                            " N --at " + move.at->place.str());
  }
  // The two positions differ, so that one change leaves the other's place in the stock alone.
  for (std::size_t index = 0; index < count; ++index) {
    const Change& move = moves[index];
    if (move.by == 0) continue;
    const HalfServings after(move.after(stock_));
    if (move.there == stock_.end()) stock_.emplace(*move.at, after);
    else if (after == HalfServings()) stock_.erase(move.there);
    else move.there->second = after;
  }
  LotTotals& totals = totals_[deed.at.lot];
  if (deed.kind == EntryKind::kCounted) totals.counted += sign * deed.change;
  else if (deed.kind == EntryKind::kReceived || deed.kind == EntryKind::kFound || leaves(deed.kind)) {
    total_of(totals, deed.kind) += amount;
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
