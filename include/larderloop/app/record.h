// record.h - what happened to a lot, as entries of the append-only record. Mistakes are corrected
// by a further entry. Amounts:  whole units, or servings in halves. Eating part of a sealed unit
// opens it: an opened and an eaten entry together. Safety:   moving and receiving refuse what
// may_put() refuses; what was found or counted is a fact and is recorded with a warning.
#pragma once

#include "larderloop/app/asked.h"
#include "larderloop/core/eligible.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <optional>
#include <string>
#include <vector>

namespace larderloop {

enum class AmountUnit { kUnits, kHalfServings, kAll };
// "2", "1.5 servings", "half serving", "all". `value`: units or half servings; nothing for kAll.
struct AmountAsked {
  AmountUnit unit = AmountUnit::kUnits;
  std::int64_t value = 0;
};

// Which stock of the lot: what comes naturally (opened before sealed for servings, sealed for
// units), or only one of them.
enum class Which { kAny, kSealed, kOpened };

struct RecordRequest {
  EntryKind kind = EntryKind::kEaten;  // not kCorrected
  LotId lot;
  AmountAsked amount;
  std::optional<PlaceKey>
      at;  // needed where the lot lies in several places; received, found, counted: always
  std::optional<PlaceKey> to;  // moved
  Which which = Which::kAny;
  std::optional<PersonKey> who;
  std::optional<Meal> meal;
  std::optional<Day> on;  // absent = today
  std::optional<std::int64_t> paid_cents;
  std::string note;
};

// `entries`: as they will be written. `opened_units`: sealed units that were opened for it.
// `left_there`: of the lot where it was (moved: where it came from); `left`: of the lot anywhere.
// `must_not`: who eats from the place, or ate, and must not have it.
struct Recorded {
  std::vector<Entry> entries;
  LotId lot;
  FoodKey food;
  PlaceKey place;
  int opened_units = 0;
  HalfServings left_there;
  HalfServings left;
  std::vector<PersonRefusal> must_not;
};

// kNotFound, kBadData with the next step; then nothing is to be written.
[[nodiscard]] Result<Outcome<Recorded>> record(const Household& household,
                                               const RecordRequest& request, Asked asked);

// Reverses entries, each by a further one, in the given order. Undoing an opened unit that was
// eaten from needs both, the eaten one first.
struct Corrected {
  std::vector<Entry> entries;   // the new ones
  std::vector<Entry> reversed;  // the old ones
};
[[nodiscard]] Result<Outcome<Corrected>> correct(const Household& household,
                                                 const std::vector<EntryId>& which,
                                                 const std::string& note, Asked asked);

// The record, newest first. `limit` 0 = all.
struct EntryFilter {
  std::optional<LotId> lot;
  std::optional<Day> since;
  std::size_t limit = 0;
};
struct EntryRow {
  Entry entry;
  LotId lot;  // of a correction: that of the entry it reverses
  FoodKey food;
  bool corrected = false;  // reversed by a later one
};
[[nodiscard]] std::vector<EntryRow> list_entries(const Household& household,
                                                 const EntryFilter& filter);

}  // namespace larderloop
