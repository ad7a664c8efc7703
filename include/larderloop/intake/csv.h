// csv.h - tables as spreadsheets write and read them: RFC 4180, and what is common practice beside it.
// Encodings: UTF-8 with or without byte-order mark, UTF-16 with one, else Windows-1252 (of which the printing part of Latin-1 is a part).
// Rows:      end with LF, CR or CRLF. Cells stand between commas, semicolons, tabs or bars: as "sep=;" in the first line says, else the one that
//            stands most often in the header.
// Guard:     a text that a spreadsheet would run as a formula or take for a number, a date or a truth value is written behind an
//            apostrophe, which reading takes away again (OWASP, CSV Injection).
#pragma once

#include <cstddef>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "larderloop/core/result.h"

namespace larderloop {

// The text of a file as UTF-8, without mark and "sep=" line. `encoding`: "UTF-8", "UTF-16" or "Windows-1252". `first_line`: the number of the
// line in the file that `text` begins with.
struct CsvText {
  std::string text;
  std::string encoding;
  char delimiter = ',';
  std::size_t first_line = 1;
};
// `delimiter`: used whatever the header looks like. kBadData: bytes of no such encoding, zero bytes, nothing at all.
[[nodiscard]] Result<CsvText> open_csv(std::string bytes, std::optional<char> delimiter = std::nullopt);

// One row. The cells live until the next row is read, and as long as the text. `line`: of the file, from 1, where the row begins. `fault`: what
// is against the format, empty when nothing is; `faulty`: the cell it was found in.
struct CsvRow {
  std::size_t line = 0;
  std::vector<std::string_view> cells;
  std::string fault;
  std::size_t faulty = 0;
  [[nodiscard]] bool blank() const;  // no cell holds anything
  std::deque<std::string> made;      // cells that had to be put together
};

// Reads row after row. Faults: a quote that is not closed or stands inside an unquoted cell, text behind a closing quote.
class CsvReader {
 public:
  explicit CsvReader(const CsvText& csv) : text_(csv.text), delimiter_(csv.delimiter), line_(csv.first_line) {}
  // False at the end of the text; then `row` is as it was.
  [[nodiscard]] bool next(CsvRow& row);

 private:
  [[nodiscard]] bool at_end() const { return at_ == text_.size(); }
  [[nodiscard]] bool ends_cell() const;
  std::string_view quoted(CsvRow& row);
  std::string_view plain(CsvRow& row);
  void fault(CsvRow& row, const char* what);
  std::string_view text_;
  char delimiter_;
  std::size_t line_;
  std::size_t at_ = 0;
};

// Would a spreadsheet make something else of this text?
[[nodiscard]] bool needs_guard(std::string_view text);
[[nodiscard]] std::string guarded(std::string text);                     // for texts of people; numbers and days go as they are
[[nodiscard]] std::string_view without_guard(std::string_view cell);  // what guarded() was given, for every text
// One row with commas and CRLF, quoted where RFC 4180 wants it.
[[nodiscard]] std::string csv_line(const std::vector<std::string>& cells);
// The rows as a file: a byte-order mark comes first when there is a character beyond ASCII, or spreadsheets would misread it.
[[nodiscard]] std::string csv_file(const std::string& rows);

}  // namespace larderloop
