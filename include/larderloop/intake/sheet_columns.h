// sheet_columns.h - the columns of the four spreadsheets (foods, lots, people, menu), and which column of somebody's file is which of them.
// Rules:    a header is known by the column's own name or by one of the usual words for it ("best before", "qty", "where"), whatever its case,
//           blanks and punctuation. Nothing is guessed: a header that means nothing here is named, and passed over only when somebody says so.
#pragma once

#include <array>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "larderloop/core/date_mark.h"
#include "larderloop/core/result.h"
#include "larderloop/core/sheet.h"

namespace larderloop {

enum class Col {
  kKey, kName, kKind, kSpecies, kGtin, kUnit, kServings, kMass, kVolume, kEnergy, kSodium, kContains, kMayContain, kSuits, kReadBy, kReadOn,
  kNeedsCooking, kNeedsHotWater, kNeedsWater, kNeedsOpener, kNeedsSpoon, kRefrigerate, kChokingRisk, kHoney, kIsOpener, kIsCutlery,
  kInfantFormula, kHomeCanned, kSelfFilled, kStaple, kMeals, kRoles, kPacks, kKeepsFrom, kKeepsTo, kOpenedDays, kStorageSource, kRotate,
  kParLevel, kNote, kRetired,                                                                                                     // foods
  kLot, kFood, kPlace, kUnits, kOpenedOn, kServingsLeft, kDate, kDateKind, kDateDay, kDatePrecision, kLotCode, kReceived, kState, kPaid,  // lots
  kBorn, kAppetite, kTolerance, kSex, kHeight, kBodyMass, kActivity, kAvoid, kAvoidAccepting, kAvoidOwn, kDiets, kRatings,               // people
  kLine, kFor, kDay, kMeal, kRole, kPriority,                                                                                     // menu
  kCount
};
inline constexpr std::size_t kColCount = static_cast<std::size_t>(Col::kCount);

// `meaning`: one plain sentence for the template. `example`: a cell as one writes it.
struct ColumnInfo {
  Col col;
  std::string_view name;
  std::string_view meaning;
  std::string_view example;
};
[[nodiscard]] const std::vector<ColumnInfo>& sheet_columns(SheetKind sheet);

// What the header itself tells of the values below it. `unit`: "g", "kg", "ml", "l"; "?" when the header names no unit and the column's own
// must not be taken for granted ("weight"). `mark`: a header such as "use by" says what kind of date it is.
struct HeaderHint {
  std::string_view unit;
  MarkKind mark = MarkKind::kNone;
};

// One column of the file. `col` is Col::kCount where it is passed over.
struct FileColumn {
  std::string header;
  Col col = Col::kCount;
  HeaderHint hint;
};
struct FileColumns {
  std::vector<FileColumn> columns;                // in the file's order
  std::array<int, kColCount> at{};                // where each one is; -1: nowhere
  [[nodiscard]] bool has(Col col) const { return at[static_cast<std::size_t>(col)] >= 0; }
  [[nodiscard]] const FileColumn& file_column(Col col) const { return columns[static_cast<std::size_t>(at[static_cast<std::size_t>(col)])]; }
};

// How headers are to be read: what was kept under a name, and what is said now, which comes first. Header -> name of a column; empty: pass over.
struct HeaderHow {
  std::map<std::string, std::string> kept;
  std::map<std::string, std::string> said;
  bool pass_over = false;  // whatever means nothing here
};
// kBadData with a problem for each: headers that mean nothing, two that mean the same, columns that are said and are not there.
[[nodiscard]] Result<FileColumns> match_columns(SheetKind sheet, const std::vector<std::string>& headers, std::size_t line, const HeaderHow& how);
// What was matched, to be kept under a name.
[[nodiscard]] std::map<std::string, std::string> columns_to_keep(SheetKind sheet, const FileColumns& columns);
[[nodiscard]] std::string_view column_name(SheetKind sheet, Col col);  // "" for none

}  // namespace larderloop
