// waste.h - what the food was worth: money and energy that was bought, eaten, given away, thrown
// out, and how long it would have kept. Price:    of a lot: what was paid for it, over all its
// received entries that say so; where none does, the cheapest pack of its food (a
//           unit for price_cents / units); where there is none either, unknown. What is unknown is
//           counted as such and never taken for 0.
// Rounding: to the nearest cent and kcal of all that left a lot so far, so that the parts of a lot
// sum up to the whole of it. Days:     life left is the good-through day of the unopened lot, as
// far as readings tell today, less the day of the entry; negative = past
//           it. Opened life is no part of it: a jar opened and eaten on one evening was eaten as
//           early as its date was far.
#pragma once

#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace larderloop {

// A part of the record. `amount` and what lacks something in half servings.
struct Worth {
  std::int64_t amount = 0;
  std::int64_t cents = 0;  // of what has a price
  std::int64_t pack_cents =
      0;  // the part of `cents` that is by a pack's price, as nobody wrote down what was paid
  std::int64_t without_price = 0;
  std::int64_t kcal = 0;            // of what has one in the book; water and things have none
  std::int64_t without_energy = 0;  // food, drink and pet food whose energy the book does not know
  std::int64_t dated = 0;           // has a good-through day
  std::int64_t days_left = 0;       // sum over `dated` of days x half servings
  // Average days left in tenths of a day, to the nearest, halves away from zero; absent where
  // nothing has a date.
  [[nodiscard]] std::optional<std::int64_t> average_tenths() const;
  void add(const Worth& other);
  friend bool operator==(const Worth&, const Worth&) = default;
};

// `bought`: what received entries brought in; life left is then counted from the day it came.
struct WasteRow {
  FoodKey food;  // empty: all foods
  int year = 0;  // 0: all years
  Worth bought, eaten, given_away, thrown_out, lost;
  void add(const WasteRow& other);
};

struct WasteReport {
  std::vector<WasteRow> rows;   // by food, year
  std::vector<WasteRow> years;  // by year, all foods
  WasteRow total;
};

// An entry counts in the year it happened; a corrected entry and its correction do not count at
// all. Fails where the record does.
[[nodiscard]] Result<WasteReport> make_waste(const Household& household, std::optional<int> year,
                                             const std::optional<FoodKey>& food);

}  // namespace larderloop
