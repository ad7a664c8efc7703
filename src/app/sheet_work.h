// sheet_work.h - what reading the four spreadsheets has in common: the row at hand, its cells, and what is wrong with them.
#pragma once

#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "larderloop/app/sheets.h"
#include "larderloop/intake/csv.h"
#include "larderloop/intake/sheet_cells.h"

namespace larderloop {

inline constexpr std::size_t kLongestCell = 10'000;         // bytes; more is no cell that somebody wrote
inline constexpr std::size_t kMostSheetProblems = 10'000;  // then the rest of the file is not looked at

// As spreadsheets keep a text: without blanks around it and carriage returns in it.
[[nodiscard]] std::string settled_text(std::string_view text);

class SheetWork {
 public:
  SheetWork(const Household& book, const SheetRequest& request, Asked asked, const FileColumns& columns, char delimiter)
      : household(book), how(request), when(asked), columns_(columns), delimiter_(delimiter) {}

  const Household& household;
  const SheetRequest& how;
  Asked when;
  SheetReport report;
  Changes changes;
  std::vector<Problem> problems;

  void take(const CsvRow& row) {
    row_ = &row;
    faults_ = problems.size();
  }
  [[nodiscard]] std::size_t line() const { return row_->line; }
  [[nodiscard]] char delimiter() const { return delimiter_; }
  [[nodiscard]] bool row_is_sound() const { return problems.size() == faults_; }
  [[nodiscard]] bool has(Col col) const { return columns_.has(col); }
  [[nodiscard]] HeaderHint hint(Col col) const { return has(col) ? columns_.file_column(col).hint : HeaderHint{}; }
  // The cell of the row, without blanks around it; empty when there is no such column.
  [[nodiscard]] std::string_view cell(Col col) const;
  [[nodiscard]] bool says(Col col) const { return !cell(col).empty(); }

  // "line 12, best before"
  [[nodiscard]] std::string where(std::size_t line, Col col) const;
  void fault(Col col, std::string what, std::string remedy) { fault_at(line(), col, std::string(cell(col)), std::move(what), std::move(remedy)); }
  void fault(Col col, const CellFault& found) { fault(col, found.what, found.remedy); }
  void fault_at(std::size_t line, Col col, std::string value, std::string what, std::string remedy);
  void news(std::size_t line, RowDid did, std::string words);

  // The value of a cell that says something; nothing, after a fault, when it cannot be read.
  template <class Value>
  [[nodiscard]] std::optional<Value> value(Col col, const Cell<Value>& read) {
    if (read) return *read;
    fault(col, read.error());
    return std::nullopt;
  }
  void text(Col col, std::string& into);  // what is known stays when only blanks or line ends differ
  void whole(Col col, std::int64_t least, std::int64_t most, std::int64_t& into);
  void whole(Col col, std::int64_t least, std::int64_t most, std::optional<std::int64_t>& into);  // "none" takes it away
  void amount(Col col, std::string_view unit, std::int64_t& into);
  void amount(Col col, std::string_view unit, std::optional<std::int64_t>& into);
  void yes(Col col, bool& into);
  void day(Col col, std::optional<Day>& into);  // none that is to come, unless it is known
  template <class Value, class Names, class NameOf>
  void word(Col col, const Names& names, NameOf name_of, Value& into) {
    if (!says(col)) return;
    if (const auto read = value(col, cell_word<Value>(cell(col), names, name_of))) into = *read;
  }
  template <class Value, class Names, class NameOf>
  void words(Col col, const Names& names, NameOf name_of, std::set<Value>& into) {
    if (!says(col)) return;
    std::set<Value> all;
    for (const std::string& each : cell_list(cell(col))) {
      if (const auto read = value(col, cell_word<Value>(each, names, name_of))) all.insert(*read);
    }
    into = std::move(all);
  }
  // Keys of allergens in a cell that says something.
  [[nodiscard]] std::set<std::string> allergens(Col col);
  // The label that the row tells; nothing when it tells none or after a fault. `known`: the one it may only repeat, whose day then stays.
  [[nodiscard]] std::optional<Statement> label(const Statement* known);

 private:
  const FileColumns& columns_;
  char delimiter_;
  const CsvRow* row_ = nullptr;
  std::size_t faults_ = 0;
};

// "name 'a' becomes 'b', mass_g '' becomes '250'"
[[nodiscard]] std::string differences(SheetKind sheet, const std::vector<std::string>& before, const std::vector<std::string>& after);
// Which line of the file a key or number came from, for findings of the validator: "/foods/3/gtin" and the keys in the household's order.
struct CameFrom {
  std::string list;                 // "foods"
  std::vector<std::size_t> lines;   // by place in the list; 0: not from the file
};
void find_inconsistencies(SheetWork& work, const CameFrom& from);

void import_foods(SheetWork& work, CsvReader& reader);
void import_people(SheetWork& work, CsvReader& reader);
void import_menu(SheetWork& work, CsvReader& reader);
void import_lots(SheetWork& work, CsvReader& reader);

// Calls read_row() for each row of the file that holds something and is not against the format.
template <class ReadRow>
void each_row(SheetWork& work, CsvReader& reader, std::size_t width, ReadRow read_row) {
  CsvRow row;
  while (work.problems.size() < kMostSheetProblems && reader.next(row)) {
    if (row.fault.empty() && row.blank()) continue;
    ++work.report.rows;
    work.take(row);
    while (row.cells.size() > width && trimmed_cell(row.cells.back()).empty()) row.cells.pop_back();
    if (!row.fault.empty()) {
      work.problems.push_back({"line " + std::to_string(row.line), std::string(row.cells[row.faulty].substr(0, 40)), row.fault,
                               "put the whole cell in quotes, and write a quote inside it twice"});
    } else if (row.cells.size() > width) {
      work.problems.push_back({"line " + std::to_string(row.line), std::string(row.cells.back().substr(0, 40)),
                               "the row has " + std::to_string(row.cells.size()) + " cells, the first row " + std::to_string(width),
                               "a cell with the character between cells in it has to be quoted"});
    } else if (std::any_of(row.cells.begin(), row.cells.end(), [](std::string_view cell) { return cell.size() > kLongestCell; })) {
      work.problems.push_back({"line " + std::to_string(row.line), "", "a cell is longer than " + std::to_string(kLongestCell) + " bytes", "see whether a quote is missing before it"});
    } else {
      read_row();
    }
  }
}

}  // namespace larderloop
