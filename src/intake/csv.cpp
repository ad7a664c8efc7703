#include "larderloop/intake/csv.h"

#include <algorithm>
#include <array>

namespace larderloop {
namespace {

constexpr std::string_view kMark = "\xEF\xBB\xBF";

bool is_digit(char each) { return each >= '0' && each <= '9'; }

// Words by which spreadsheets know a date or a truth value: "Aug 2027", "Monday 3", "TRUE".
bool begins_like_a_date(std::string_view text) {
  constexpr std::array<std::string_view, 19> kNames = {"january", "february", "march", "april", "may", "june", "july", "august", "september", "october",
                                                       "november", "december", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"};
  std::string word;
  for (const char each : text) {
    const char small = each >= 'A' && each <= 'Z' ? static_cast<char>(each - 'A' + 'a') : each;
    if (small < 'a' || small > 'z') break;
    word += small;
  }
  if (word == "true" || word == "false") return word.size() == text.size();
  constexpr std::size_t kShort = 3;
  if (word.size() < kShort || text.find_first_of("0123456789") == std::string_view::npos) return false;
  return std::any_of(kNames.begin(), kNames.end(), [&](std::string_view name) { return name.substr(0, word.size()) == word; });
}

}  // namespace

bool CsvRow::blank() const {
  return std::all_of(cells.begin(), cells.end(), [](std::string_view cell) { return cell.find_first_not_of(" \t") == std::string_view::npos; });
}

bool CsvReader::ends_cell() const {
  return at_end() || text_[at_] == delimiter_ || text_[at_] == '\n' || text_[at_] == '\r';
}

void CsvReader::fault(CsvRow& row, const char* what) {
  if (!row.fault.empty()) return;
  row.fault = what;
  row.faulty = row.cells.size();
}

std::string_view CsvReader::plain(CsvRow& row) {
  const std::size_t begin = at_;
  bool quote = false;
  for (; !ends_cell(); ++at_) quote = quote || text_[at_] == '"';
  if (quote) fault(row, "a quote stands inside a cell that is not quoted");
  return text_.substr(begin, at_ - begin);
}

// Most quoted cells are one piece of the text; one with doubled quotes is put together.
std::string_view CsvReader::quoted(CsvRow& row) {
  const std::size_t begin = ++at_;
  std::string* made = nullptr;
  std::size_t piece = begin;
  while (!at_end()) {
    const char each = text_[at_];
    if (each == '\n' || (each == '\r' && text_.substr(at_ + 1, 1) != "\n")) ++line_;
    ++at_;
    if (each != '"') continue;
    if (text_.substr(at_, 1) == "\"") {
      if (made == nullptr) made = &row.made.emplace_back();
      made->append(text_, piece, at_ - piece);
      piece = ++at_;
      continue;
    }
    std::string_view cell = text_.substr(piece, at_ - 1 - piece);
    if (made != nullptr) cell = made->append(cell);
    if (!ends_cell()) fault(row, "something stands behind the closing quote of a cell");
    while (!ends_cell()) ++at_;
    return cell;
  }
  fault(row, "a quote is not closed");
  return text_.substr(begin);
}

bool CsvReader::next(CsvRow& row) {
  if (at_end()) return false;
  row.line = line_;
  row.cells.clear();
  row.made.clear();
  row.fault.clear();
  row.faulty = 0;
  for (;;) {
    const bool opens = !at_end() && text_[at_] == '"';
    row.cells.push_back(without_guard(opens ? quoted(row) : plain(row)));
    if (at_end()) return true;
    const char each = text_[at_++];
    if (each == delimiter_) continue;
    if (each == '\r' && !at_end() && text_[at_] == '\n') ++at_;
    ++line_;
    return true;
  }
}

bool needs_guard(std::string_view text) {
  if (text.empty()) return false;
  if (text.front() == '\'') return needs_guard(text.substr(1));
  constexpr std::string_view kStarts = "=+-@.,(%$#";
  const auto first = static_cast<unsigned char>(text.front());
  return first <= ' ' || is_digit(text.front()) || kStarts.find(text.front()) != std::string_view::npos || begins_like_a_date(text);
}

std::string guarded(std::string text) {
  if (needs_guard(text)) text.insert(text.begin(), '\'');
  return text;
}

std::string_view without_guard(std::string_view cell) {
  if (cell.size() > 1 && cell.front() == '\'' && needs_guard(cell.substr(1))) cell.remove_prefix(1);
  return cell;
}

std::string csv_line(const std::vector<std::string>& cells) {
  std::string line;
  for (std::size_t index = 0; index < cells.size(); ++index) {
    const std::string& cell = cells[index];
    if (index > 0) line += ',';
    const bool quote = cell.find_first_of(",;\t|\"\r\n") != std::string::npos || (!cell.empty() && (cell.front() == ' ' || cell.back() == ' '));
    if (!quote) {
      line += cell;
      continue;
    }
    line += '"';
    for (const char each : cell) {
      if (each == '"') line += '"';
      line += each;
    }
    line += '"';
  }
  return line + "\r\n";
}

std::string csv_file(const std::string& rows) {
  const bool ascii = std::all_of(rows.begin(), rows.end(), [](char each) { return static_cast<unsigned char>(each) < 0x80; });
  return ascii ? rows : std::string(kMark) + rows;
}

}  // namespace larderloop
