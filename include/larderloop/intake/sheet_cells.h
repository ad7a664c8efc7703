// sheet_cells.h - one cell of a spreadsheet to a value, or what is wrong with it. An empty cell never gets here: it says nothing.
// Numbers:  decimals are exact. A comma is the decimal sign where the file's delimiter leaves no doubt (semicolons), a point where it is the
//           comma; anything that could be a thousand as well as a decimal is refused.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "larderloop/core/household.h"
#include "larderloop/intake/sheet_columns.h"

namespace larderloop {

struct CellFault {
  std::string what;
  std::string remedy;
};
template <class Value>
using Cell = tl::expected<Value, CellFault>;
[[nodiscard]] inline tl::unexpected<CellFault> bad_cell(std::string what, std::string remedy) {
  return tl::unexpected<CellFault>(CellFault{std::move(what), std::move(remedy)});
}

[[nodiscard]] std::string_view trimmed_cell(std::string_view cell);
[[nodiscard]] std::string lowered_cell(std::string_view cell);  // A to Z only

// Times `scale`, a power of ten, exactly. No sign, no exponent.
[[nodiscard]] Cell<std::int64_t> cell_decimal(std::string_view cell, char delimiter, std::int64_t scale);
[[nodiscard]] Cell<std::int64_t> cell_whole(std::string_view cell, char delimiter, std::int64_t least, std::int64_t most);
// Grams or millilitres: a bare number in the column's unit (`own`: "g", "kg", "ml") or in the header's, or with its unit behind it, as 0,25 kg.
[[nodiscard]] Cell<std::int64_t> cell_amount(std::string_view cell, char delimiter, std::string_view own, const HeaderHint& hint);
// Cents; a currency before or behind it is passed over when it is the household's or a sign.
[[nodiscard]] Cell<std::int64_t> cell_money(std::string_view cell, char delimiter, std::string_view currency);
[[nodiscard]] Cell<HalfServings> cell_servings(std::string_view cell, char delimiter);
[[nodiscard]] Cell<bool> cell_yes(std::string_view cell);
// A day: 2026-10-03, or numbers with a four-digit year when they can only be one day, or `order` says how they are meant.
[[nodiscard]] Cell<Day> cell_day(std::string_view cell, DateOrder order);
// Fourteen digits. A spreadsheet drops the zeros in front of numbers; they are put back when the check digit is right.
[[nodiscard]] Cell<std::string> cell_gtin(std::string_view cell);
// The words between ; , / or line ends; none for "none".
[[nodiscard]] std::vector<std::string> cell_list(std::string_view cell);
[[nodiscard]] bool says_none(std::string_view cell);
// "Corner shop:6:8.40; Market:1:1.60"
[[nodiscard]] Cell<std::vector<Pack>> cell_packs(std::string_view cell, char delimiter);
// An allergen by its key or by its word ("cereals with gluten"); `own`: keys of the household.
[[nodiscard]] Cell<std::string> cell_allergen(std::string_view word, const std::vector<OwnAllergen>& own);

[[nodiscard]] CellFault unknown_cell_word(std::string_view cell, const std::vector<std::string>& accepted);
// One of a fixed list of words; case, blanks, '-' and '_' are the same.
template <class Value, class Names, class NameOf>
[[nodiscard]] Cell<Value> cell_word(std::string_view cell, const Names& values, NameOf name_of) {
  std::string wanted = lowered_cell(cell);
  for (char& each : wanted) {
    if (each == '-' || each == ' ') each = '_';
  }
  std::vector<std::string> accepted;
  for (const Value& value : values) {
    if (name_of(value) == wanted) return value;
    accepted.emplace_back(name_of(value));
  }
  return tl::unexpected<CellFault>(unknown_cell_word(cell, accepted));
}

}  // namespace larderloop
