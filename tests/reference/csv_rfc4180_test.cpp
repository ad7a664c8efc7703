// RFC 4180 (October 2005), section 2: the seven rules with the examples printed there, and files made by its grammar.
//   file = [header CRLF] record *(CRLF record) [CRLF]      escaped = DQUOTE *(TEXTDATA / COMMA / CR / LF / 2DQUOTE) DQUOTE
//   TEXTDATA = %x20-21 / %x23-2B / %x2D-7E
#include <gtest/gtest.h>

#include <random>

#include "larderloop/intake/csv.h"

namespace larderloop {
namespace {

using Rows = std::vector<std::vector<std::string>>;

Rows read(const std::string& bytes) {
  const auto csv = open_csv(bytes, ',');
  if (!csv) return {{"refused"}};
  CsvReader reader(*csv);
  CsvRow row;
  Rows rows;
  while (reader.next(row)) {
    if (!row.fault.empty()) return {{"refused"}};
    rows.emplace_back(row.cells.begin(), row.cells.end());
  }
  return rows;
}

TEST(Rfc4180, TheExamplesOfItsRules) {
  const Rows two{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
  EXPECT_EQ(read("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"), two) << "rule 1";
  EXPECT_EQ(read("aaa,bbb,ccc\r\nzzz,yyy,xxx"), two) << "rule 2";
  EXPECT_EQ(read("field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"),
            (Rows{{"field_name", "field_name", "field_name"}, two[0], two[1]})) << "rule 3";
  EXPECT_EQ(read("aaa,bbb,ccc"), (Rows{two[0]})) << "rule 4";
  EXPECT_EQ(read("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"), two) << "rule 5";
  EXPECT_EQ(read("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"), (Rows{{"aaa", "b\r\nbb", "ccc"}, two[1]})) << "rule 6";
  EXPECT_EQ(read("\"aaa\",\"b\"\"bb\",\"ccc\""), (Rows{{"aaa", "b\"bb", "ccc"}})) << "rule 7";
}

TEST(Rfc4180, WhatItForbids) {
  EXPECT_EQ(read("aaa,b\"bb,ccc"), (Rows{{"refused"}})) << "rule 5: no quotes inside fields that are not enclosed";
  EXPECT_EQ(read("\"aaa\"a,bbb"), (Rows{{"refused"}}));
  EXPECT_EQ(read("\"aaa"), (Rows{{"refused"}}));
}

TEST(Rfc4180, FilesOfItsGrammarAreReadAndWrittenBack) {
  std::mt19937 random(4180);
  const auto pick = [&](std::size_t below) { return static_cast<std::size_t>(random()) % below; };
  std::string text_data;
  for (char each = 0x20; each < 0x7F; ++each) {
    if (each != '"' && each != ',') text_data += each;
  }
  for (int round = 0; round < 2000; ++round) {
    Rows rows(1 + pick(4), std::vector<std::string>(1 + pick(4)));
    std::string file, ours;
    for (auto& row : rows) {
      if (&row != &rows.front()) file += "\r\n";
      for (std::size_t column = 0; column < row.size(); ++column) {
        const bool escaped = pick(2) == 0;
        std::string cell, written;
        for (std::size_t length = 1 + pick(6); length > 0; --length) {
          const std::string piece = !escaped || pick(3) > 0 ? std::string(1, text_data[pick(text_data.size())])
                                                            : std::vector<std::string>{",", "\r", "\n", "\""}[pick(4)];
          cell += piece;
          written += piece == "\"" ? "\"\"" : piece;
        }
        // The apostrophe that guards texts against spreadsheets is ours, not the standard's.
        if (cell.front() == '\'') cell.front() = written.front() = 'x';
        row[column] = cell;
        file += (column > 0 ? "," : "") + (escaped ? "\"" + written + "\"" : written);
      }
      ours += csv_line(row);
    }
    if (pick(2) == 0) file += "\r\n";
    bool blank = true;
    for (const auto& row : rows) {
      for (const std::string& cell : row) blank = blank && cell.find_first_not_of(" \r\n\t") == std::string::npos;
    }
    if (blank) continue;
    if (file.rfind("sep=", 0) == 0) continue;
    EXPECT_EQ(read(file), rows) << file;
    EXPECT_EQ(read(ours), rows) << ours;
  }
}

}  // namespace
}  // namespace larderloop
