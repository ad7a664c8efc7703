// sheets.h - foods, lots, people and kit menus as spreadsheets: written for people to fill in, and read back all or nothing.
// Rules:    an empty cell says nothing: a new thing has the default, of a known one stays what the book has. What is known already is not
//           written again. Everything that commands refuse is refused here, and named by line, column and value.
// Safety:   an empty cell for allergens is unknown, never "none"; who is new has to say what they must not have, or none.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "larderloop/app/asked.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"
#include "larderloop/intake/sheet_columns.h"

namespace larderloop {

// `bytes`: the file. `mapping`: name of a kept one. `columns`: header -> column, empty: pass over. `read_by`: who read the labels of rows that do
// not say it; they count as read today. `counted`: another amount of a lot that is named by its number is a count.
struct SheetRequest {
  SheetKind sheet = SheetKind::kLots;
  std::string bytes;
  std::optional<char> delimiter;
  std::string mapping;
  std::map<std::string, std::string> columns;
  std::string save_mapping;
  bool pass_over = false;
  std::string read_by;
  bool counted = false;
};

enum class RowDid { kAdded, kChanged, kCounted };
[[nodiscard]] std::string_view row_did_name(RowDid did);  // "added"
struct RowNews {
  std::size_t line = 0;
  RowDid did = RowDid::kAdded;
  std::string words;
};

inline constexpr std::size_t kMostRowNews = 200;

// `rows` = added + changed + counted + known. `news`: the first kMostRowNews of what is not known. `first`: what must be seen before anything
// else, whole sentences: people who avoid something else from now on, whom new labels concern. `notes`: the rest worth saying.
struct SheetReport {
  SheetKind sheet = SheetKind::kLots;
  std::string encoding;
  char delimiter = ',';
  std::vector<FileColumn> columns;
  std::size_t rows = 0, added = 0, changed = 0, counted = 0, known = 0;
  std::vector<RowNews> news;
  std::vector<std::string> first;
  std::vector<std::string> notes;
  std::string saved_mapping;
};
// kBadData with a problem for each cell that is wrong (`where`: "line 12, best before"), kNotFound for a mapping that is not kept; then nothing is
// to be written.
[[nodiscard]] Result<Outcome<SheetReport>> import_sheet(const Household& household, const SheetRequest& request, Asked asked);

// The sheet as a file: all foods, people and menu lines; lots with something on hand, a row for each place they lie in. kBadData when the
// record cannot be replayed.
[[nodiscard]] Result<std::string> export_sheet(const Household& household, SheetKind sheet);
// The first row alone, to be filled in.
[[nodiscard]] std::string sheet_template(SheetKind sheet);

}  // namespace larderloop
