#include "larderloop/app/record.h"

#include "larderloop/app/placing.h"
#include "larderloop/core/lot.h"
#include "larderloop/core/stock.h"
#include "larderloop/core/words.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace larderloop {
namespace {

// Builds the entries of one request against a ledger that already holds the record.
class Recorder {
 public:
  Recorder(const Household& household, const RecordRequest& request, Asked asked, Ledger ledger)
      : household_(household),
        request_(request),
        asked_(asked),
        ledger_(std::move(ledger)),
        lot_(*find_lot(household, request.lot)),
        food_(*find_food(household, lot_.food)),
        facts_(lot_facts(household, lot_)),
        on_(request.on.value_or(asked.today)),
        next_(next_ids(household).entry.value()) {}

  Result<Outcome<Recorded>> run() {
    if (Status dated = check_day(); !dated) return fail(dated.error());
    if (Status made = make(); !made) return fail(made.error());
    if (Status then = check_later_days(); !then) return fail(then.error());
    Outcome<Recorded> outcome;
    outcome.report.entries = entries_;
    outcome.report.lot = lot_.id;
    outcome.report.food = food_.key;
    outcome.report.place = place_;
    outcome.report.opened_units = opened_units_;
    for (const auto& [at, amount] : ledger_.stock()) {
      if (at.lot != lot_.id) continue;
      outcome.report.left += amount;
      if (at.place == place_) outcome.report.left_there += amount;
    }
    outcome.report.must_not = concerned();
    outcome.changes.entries = entries_;
    return outcome;
  }

 private:
  std::string lot_words() const {
    return "lot " + std::to_string(lot_.id.value()) + " ('" + food_.name + "')";
  }
  std::string number() const { return std::to_string(lot_.id.value()); }
  std::string show_hint() const { return "see where it lies: larderloop lot show " + number(); }

  Status check_day() const {
    if (on_ > asked_.today) {
      return fail(ErrorKind::kBadData,
                  "'" + iso_day(on_) + "' has not come yet; the record holds what happened",
                  "leave --on away for today, " + iso_day(asked_.today));
    }
    if (on_ < lot_.received) {
      return fail(ErrorKind::kBadData,
                  "on " + plain_day(on_) + " " + lot_words() +
                      " was not there yet: it was received on " + plain_day(lot_.received),
                  "name a later day with --on, or see the lot: larderloop lot show " + number());
    }
    return {};
  }

  Status make() {
    switch (request_.kind) {
      case EntryKind::kReceived:
      case EntryKind::kFound:
        return make_arrival();
      case EntryKind::kCounted:
        return make_count();
      case EntryKind::kOpened:
        return make_opened();
      case EntryKind::kEaten:
      case EntryKind::kGivenAway:
      case EntryKind::kThrownOut:
      case EntryKind::kLost:
      case EntryKind::kMoved:
        return make_departure();
      case EntryKind::kCorrected:
        break;
    }
    return fail(ErrorKind::kDefect, "corrections are not recorded this way");
  }

  // ---- what comes ----

  Result<HalfServings> whole_units(std::int64_t least) const {
    const std::int64_t unit = 2 * food_.servings;
    if (request_.amount.unit == AmountUnit::kAll) {
      return fail(ErrorKind::kBadData, "'all' says nothing here", "write how many units");
    }
    const std::int64_t halves = request_.amount.unit == AmountUnit::kUnits
                                    ? request_.amount.value * unit
                                    : request_.amount.value;
    if (halves % unit != 0) {
      return fail(ErrorKind::kBadData, "sealed stock is counted in whole units",
                  "write how many units of '" + food_.name + "'");
    }
    if (halves / unit < least || halves / unit > kMaxUnits) {
      return fail(ErrorKind::kBadData,
                  "'" + std::to_string(halves / unit) + "' units cannot be right",
                  "from " + std::to_string(least) + " to " + std::to_string(kMaxUnits));
    }
    return HalfServings(halves);
  }

  Status make_arrival() {
    auto amount = whole_units(1);
    if (!amount) return fail(amount.error());
    place_ = *request_.at;
    if (request_.kind == EntryKind::kReceived) {
      if (Status allowed = may_put(household_, facts_, place_, asked_.today); !allowed)
        return allowed;
    }
    return add(request_.kind, {lot_.id, place_, std::nullopt}, *amount);
  }

  Status make_count() {
    place_ = *request_.at;
    StockKey at{lot_.id, place_, std::nullopt};
    HalfServings amount;
    if (request_.which == Which::kOpened) {
      std::vector<StockKey> opened;
      for (const auto& [key, there] : ledger_.stock()) {
        if (key.lot == lot_.id && key.place == place_ && key.opened_on) opened.push_back(key);
      }
      if (opened.size() != 1) {
        return fail(
            ErrorKind::kBadData,
            opened.empty() ? "nothing of " + lot_words() + " is open there"
                           : "several units of " + lot_words() + " are open there",
            opened.empty() ? "open one first: larderloop record opened " + number() : show_hint());
      }
      at = opened.front();
      if (request_.amount.unit == AmountUnit::kAll)
        return fail(ErrorKind::kBadData, "'all' says nothing here", "write how many servings");
      amount = HalfServings(request_.amount.unit == AmountUnit::kUnits
                                ? request_.amount.value * 2 * food_.servings
                                : request_.amount.value);
    } else {
      auto units = whole_units(0);
      if (!units) return fail(units.error());
      amount = *units;
    }
    return add(EntryKind::kCounted, at, amount);
  }

  // ---- what goes ----

  using Positions = std::vector<std::pair<StockKey, HalfServings>>;

  // What of the lot lies at the one place that is meant: opened before sealed, the longest open
  // first.
  Result<Positions> positions() {
    Positions found;
    std::set<PlaceKey> places;
    // A place that is named holds what lies in it directly; only then what lies inside it.
    const auto here = [&](const auto& each) {
      return each.first.lot == lot_.id && request_.at && each.first.place == *request_.at;
    };
    const bool direct = std::any_of(ledger_.stock().begin(), ledger_.stock().end(), here);
    for (const auto& [key, amount] : ledger_.stock()) {
      if (key.lot != lot_.id || (direct && key.place != *request_.at)) continue;
      if (request_.at && !is_within(household_, key.place, *request_.at)) continue;
      if (request_.which == Which::kOpened && !key.opened_on) continue;
      if (request_.which == Which::kSealed && key.opened_on) continue;
      if (request_.kind == EntryKind::kOpened && key.opened_on) continue;
      found.emplace_back(key, amount);
      places.insert(key.place);
    }
    if (found.empty()) {
      const std::string form =
          request_.which == Which::kOpened                                          ? "opened "
          : request_.which == Which::kSealed || request_.kind == EntryKind::kOpened ? "sealed "
                                                                                    : "";
      const std::string where =
          request_.at ? " at '" + find_place(household_, *request_.at)->name + "'" : "";
      return fail(ErrorKind::kBadData,
                  "nothing " + form + "of " + lot_words() + " is on hand" + where, show_hint());
    }
    if (places.size() > 1) {
      std::string which;
      for (const PlaceKey& place : places) which += (which.empty() ? "" : ", ") + place.str();
      return fail(ErrorKind::kBadData, lot_words() + " lies in several places",
                  "name one with --at: " + which);
    }
    place_ = *places.begin();
    std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
      if (a.first.opened_on.has_value() != b.first.opened_on.has_value())
        return a.first.opened_on.has_value();
      return a.first.opened_on < b.first.opened_on;
    });
    return found;
  }

  Status too_much(HalfServings asked_for, HalfServings there, std::string_view form) const {
    return fail(ErrorKind::kBadData,
                "there are only " + units_words(food_, there) +
                    (form.empty() ? "" : " " + std::string(form)) + " of " + lot_words() + " at '" +
                    find_place(household_, place_)->name + "', not " +
                    units_words(food_, asked_for),
                "take at most that, or say what is really there: larderloop record counted " +
                    number() + " N --at " + place_.str());
  }

  Status make_opened() {
    auto there = positions();
    if (!there) return fail(there.error());
    auto amount = request_.amount.unit == AmountUnit::kAll
                      ? Result<HalfServings>(there->front().second)
                      : whole_units(1);
    if (!amount) return fail(amount.error());
    if (*amount > there->front().second) return too_much(*amount, there->front().second, "sealed");
    const HalfServings unit = HalfServings::servings(food_.servings);
    for (HalfServings left = *amount; left >= unit; left -= unit) {
      if (Status opened = add(EntryKind::kOpened, there->front().first, unit); !opened)
        return opened;
      opened_units_ += 1;
    }
    return {};
  }

  Status make_departure() {
    if (request_.kind == EntryKind::kMoved) {
      if (Status allowed = may_put(household_, facts_, *request_.to, asked_.today); !allowed)
        return allowed;
    }
    auto there = positions();
    if (!there) return fail(there.error());
    if (request_.kind == EntryKind::kMoved && place_ == *request_.to) {
      return fail(ErrorKind::kBadData, lot_words() + " lies there already", show_hint());
    }
    if (request_.amount.unit == AmountUnit::kAll) {
      for (const auto& [at, amount] : *there) {
        if (Status taken = add(request_.kind, at, amount); !taken) return taken;
      }
      return {};
    }
    const std::int64_t unit = 2 * food_.servings;
    const bool units = request_.amount.unit == AmountUnit::kUnits;
    const HalfServings wanted(units ? request_.amount.value * unit : request_.amount.value);
    if (wanted.halves() < 1 || wanted > HalfServings::units(kMaxUnits, food_.servings)) {
      return fail(ErrorKind::kBadData,
                  "'" + std::to_string(request_.amount.value) + "' cannot be right",
                  "write how many units, or servings as '1.5 servings'");
    }
    // Whole units mean sealed ones; what is open is named by servings, by --opened, or by "all".
    if (units && request_.which != Which::kOpened) {
      const auto& [at, amount] = there->back();
      const HalfServings sealed = at.opened_on ? HalfServings() : amount;
      if (wanted > sealed)
        return too_much(wanted, sealed, there->size() > 1 || at.opened_on ? "sealed" : "");
      return add(request_.kind, at, wanted);
    }
    return take_servings(*there, wanted);
  }

  Status take_servings(const Positions& there, HalfServings wanted) {
    HalfServings sum;
    for (const auto& [at, amount] : there) sum += amount;
    if (wanted > sum)
      return too_much(wanted, sum, request_.which == Which::kOpened ? "opened" : "");
    const HalfServings unit = HalfServings::servings(food_.servings);
    HalfServings left = wanted;
    for (const auto& [at, amount] : there) {
      if (left == HalfServings()) break;
      HalfServings part = std::min(left, amount);
      if (!at.opened_on) part -= HalfServings(part.halves() % unit.halves());
      left -= part;
      if (part > HalfServings()) {
        if (Status taken = add(request_.kind, at, part); !taken) return taken;
      }
      if (at.opened_on || left == HalfServings()) continue;
      if (request_.kind == EntryKind::kMoved) {
        return fail(ErrorKind::kBadData, "part of a sealed unit cannot be moved",
                    "move whole units, or open one first: larderloop record opened " + number() +
                        " --at " + place_.str());
      }
      if (Status opened = add(EntryKind::kOpened, at, unit); !opened) return opened;
      opened_units_ += 1;
      if (Status taken = add(request_.kind, {at.lot, at.place, on_}, left); !taken) return taken;
      left = HalfServings();
    }
    return {};
  }

  // ---- both ----

  Status add(EntryKind kind, const StockKey& at, HalfServings amount) {
    Entry entry;
    entry.id = EntryId(next_ + static_cast<std::int64_t>(entries_.size()));
    entry.kind = kind;
    entry.on = on_;
    entry.written_at = asked_.now;
    entry.at = at;
    entry.amount = amount;
    if (kind == EntryKind::kMoved) entry.to = *request_.to;
    if (kind == EntryKind::kCounted) entry.change = ledger_.counted_change(at, amount);
    if (kind == EntryKind::kEaten) {
      entry.who = request_.who;
      entry.meal = request_.meal;
    }
    if (kind == EntryKind::kReceived && entries_.empty()) entry.paid_cents = request_.paid_cents;
    entry.note = request_.note;
    if (Status applied = ledger_.apply(entry); !applied) return applied;
    entries_.push_back(std::move(entry));
    return {};
  }

  // An entry for an earlier day must leave every later day possible: nothing may be taken before it
  // was there.
  Status check_later_days() const {
    std::set<Day> days;
    for (const Entry& entry : household_.entries) {
      if (entry.at.lot == lot_.id && entry.on > on_) days.insert(entry.on);
    }
    if (days.empty()) return {};
    days.insert(on_);
    Household with = household_;
    with.entries.insert(with.entries.end(), entries_.begin(), entries_.end());
    for (const Day day : days) {
      if (replay_through(with, day)) continue;
      return fail(ErrorKind::kBadData,
                  "on " + plain_day(on_) + " that cannot have been: " + lot_words() +
                      " did not lie there like this",
                  "see its entries: larderloop record list --lot " + number());
    }
    return {};
  }

  std::vector<PersonRefusal> concerned() const {
    const Statement* label = facts_.label ? &*facts_.label : nullptr;
    if (request_.kind == EntryKind::kEaten && request_.who)
      return refusals(household_, {*request_.who}, food_, label, on_);
    if (request_.kind == EntryKind::kFound || request_.kind == EntryKind::kCounted) {
      return refusals_at(household_, food_, label, place_, on_);
    }
    return {};
  }

  const Household& household_;
  const RecordRequest& request_;
  Asked asked_;
  Ledger ledger_;
  const Lot& lot_;
  const Food& food_;
  LotFacts facts_;
  Day on_;
  std::int64_t next_;
  PlaceKey place_;
  std::vector<Entry> entries_;
  int opened_units_ = 0;
};

}  // namespace

Result<Outcome<Recorded>> record(const Household& household, const RecordRequest& request,
                                 Asked asked) {
  if (find_lot(household, request.lot) == nullptr) {
    return fail(ErrorKind::kNotFound, "there is no lot " + std::to_string(request.lot.value()),
                "see them all: larderloop lot list");
  }
  const bool needs_place = request.kind == EntryKind::kReceived ||
                           request.kind == EntryKind::kFound || request.kind == EntryKind::kCounted;
  if (needs_place && !request.at)
    return fail(ErrorKind::kUsage, "the place is missing", "say where with --at PLACE");
  if (request.kind == EntryKind::kMoved && !request.to)
    return fail(ErrorKind::kUsage, "the new place is missing", "say where to with --to PLACE");
  auto ledger = replay(household);
  if (!ledger) return fail(ledger.error());
  return Recorder(household, request, asked, std::move(*ledger)).run();
}

Result<Outcome<Corrected>> correct(const Household& household, const std::vector<EntryId>& which,
                                   const std::string& note, Asked asked) {
  auto ledger = replay(household);
  if (!ledger) return fail(ledger.error());
  Outcome<Corrected> outcome;
  std::int64_t next = next_ids(household).entry.value();
  for (const EntryId id : which) {
    const auto old = std::find_if(household.entries.begin(), household.entries.end(),
                                  [&](const Entry& each) { return each.id == id; });
    const std::string number = std::to_string(id.value());
    if (old == household.entries.end()) {
      return fail(ErrorKind::kNotFound, "there is no entry " + number,
                  "see the last ones: larderloop record list");
    }
    if (old->kind == EntryKind::kCorrected) {
      return fail(ErrorKind::kBadData, "entry " + number + " is itself a correction",
                  "record again what really happened");
    }
    Entry entry;
    entry.id = EntryId(next++);
    entry.kind = EntryKind::kCorrected;
    entry.on = asked.today;
    entry.written_at = asked.now;
    entry.corrects = id;
    entry.note = note;
    if (Status applied = ledger->apply(entry); !applied) {
      Error error = applied.error();
      error.kind = ErrorKind::kBadData;
      if (error.next_step.empty()) {
        error.next_step =
            "correct what was recorded after it first: larderloop record list --lot " +
            std::to_string(old->at.lot.value());
      }
      return fail(std::move(error));
    }
    outcome.report.entries.push_back(entry);
    outcome.report.reversed.push_back(*old);
  }
  outcome.changes.entries = outcome.report.entries;
  return outcome;
}

std::vector<EntryRow> list_entries(const Household& household, const EntryFilter& filter) {
  std::map<EntryId, LotId> lots;
  std::set<EntryId> corrected;
  for (const Entry& entry : household.entries) {
    lots[entry.id] = entry.kind == EntryKind::kCorrected ? lots[entry.corrects] : entry.at.lot;
    if (entry.kind == EntryKind::kCorrected) corrected.insert(entry.corrects);
  }
  std::vector<EntryRow> rows;
  for (auto entry = household.entries.rbegin(); entry != household.entries.rend(); ++entry) {
    const LotId of = lots[entry->id];
    if (filter.lot && of != *filter.lot) continue;
    if (filter.since && entry->on < *filter.since) continue;
    if (filter.limit > 0 && rows.size() == filter.limit) break;
    const Lot* lot = find_lot(household, of);
    rows.push_back(
        {*entry, of, lot == nullptr ? FoodKey() : lot->food, corrected.count(entry->id) > 0});
  }
  return rows;
}

}  // namespace larderloop
