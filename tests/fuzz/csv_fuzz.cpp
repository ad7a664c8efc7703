// Any bytes as a spreadsheet: refused, or rows whose cells come back the same when they are written again; headers and cells are read whatever
// they are.
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "larderloop/intake/csv.h"
#include "larderloop/intake/sheet_cells.h"
#include "larderloop/intake/sheet_columns.h"
#include "require.h"

namespace {

void try_cell(std::string_view cell, char delimiter) {
  using namespace larderloop;
  const auto told = [](const auto& read) { require(read.has_value() || (!read.error().what.empty() && !read.error().remedy.empty()), "a fault says what and what next"); };
  const auto number = cell_decimal(cell, delimiter, 1000);
  told(number);
  require(!number || *number >= 0, "no number is negative");
  told(cell_whole(cell, delimiter, 1, 100));
  told(cell_amount(cell, delimiter, "g", {}));
  told(cell_amount(cell, delimiter, "ml", {"?", MarkKind::kNone}));
  told(cell_money(cell, delimiter, "EUR"));
  told(cell_servings(cell, delimiter));
  told(cell_yes(cell));
  for (const DateOrder order : kAllDateOrders) told(cell_day(cell, order));
  const auto gtin = cell_gtin(cell);
  told(gtin);
  require(!gtin || gtin->size() == 14, "a GTIN has 14 digits");
  told(cell_packs(cell, delimiter));
  for (const std::string& word : cell_list(cell)) {
    require(!word.empty(), "a word of a list is one");
    told(cell_allergen(word, {}));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace larderloop;
  const auto csv = open_csv(std::string(reinterpret_cast<const char*>(data), size));
  if (!csv) {
    require(!csv.error().what.empty() && !csv.error().next_step.empty(), "a refusal says what and what next");
    return 0;
  }
  CsvReader reader(*csv);
  CsvRow row;
  std::size_t line = 0;
  bool first = true;
  int tried = 0;  // looking for near words is slow work, the more so under the sanitizers
  while (reader.next(row)) {
    require(row.line > line, "lines go on");
    line = row.line;
    require(!row.cells.empty(), "a row has a cell");
    require(row.fault.empty() || row.faulty < row.cells.size(), "a fault names its cell");
    std::vector<std::string> cells(row.cells.begin(), row.cells.end());
    if (first) {
      for (const SheetKind sheet : kAllSheetKinds) static_cast<void>(match_columns(sheet, cells, row.line, {}));
    }
    first = false;
    std::vector<std::string> written;
    for (const std::string& cell : cells) {
      require(without_guard(guarded(cell)) == cell, "the guard comes off");
      written.push_back(guarded(cell));
      if (constexpr int kMostTried = 12; ++tried <= kMostTried) try_cell(cell, csv->delimiter);
    }
    const auto again = open_csv("x\r\n" + csv_line(written), ',');
    require(again.has_value(), "what was written is a table");
    CsvReader second(*again);
    CsvRow back;
    require(second.next(back) && second.next(back), "two rows");
    require(back.fault.empty() && std::vector<std::string>(back.cells.begin(), back.cells.end()) == cells, "cells come back the same");
  }
  return 0;
}
