// sheet.h - what shopping found of a replacement list, and how columns of a spreadsheet are read.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "larderloop/core/date.h"
#include "larderloop/core/id.h"

namespace larderloop {

// What shopping found of the replacement list: a food that could not be had, or was replaced by another. Append-only. `kit`: for which
// kit it was wanted; empty = the pantry. `instead`: for kBoughtInstead.
enum class BuyNoteKind { kNotAvailable, kBoughtInstead };
inline constexpr BuyNoteKind kAllBuyNoteKinds[] = {BuyNoteKind::kNotAvailable, BuyNoteKind::kBoughtInstead};
[[nodiscard]] std::string_view buy_note_name(BuyNoteKind kind);  // "not_available"
[[nodiscard]] std::optional<BuyNoteKind> parse_buy_note(std::string_view name);

struct BuyNote {
  BuyNoteId id;
  FoodKey food;
  PlaceKey kit;
  Day on{};
  BuyNoteKind kind = BuyNoteKind::kNotAvailable;
  FoodKey instead;
  std::string note;
  friend bool operator==(const BuyNote&, const BuyNote&) = default;
};

// ---- spreadsheets ----------------------------------------------------------------------------------------------------

enum class SheetKind { kFoods, kLots, kPeople, kMenu };
inline constexpr SheetKind kAllSheetKinds[] = {SheetKind::kFoods, SheetKind::kLots, SheetKind::kPeople, SheetKind::kMenu};
[[nodiscard]] std::string_view sheet_kind_name(SheetKind kind);  // "foods"
[[nodiscard]] std::optional<SheetKind> parse_sheet_kind(std::string_view name);

// Which column of somebody's spreadsheet means what, kept under a name: header -> field of the template; an empty field: pass over.
struct ImportMapping {
  std::string name;
  SheetKind sheet = SheetKind::kLots;
  std::map<std::string, std::string> columns;
  friend bool operator==(const ImportMapping&, const ImportMapping&) = default;
};

}  // namespace larderloop
