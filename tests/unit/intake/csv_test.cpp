// Tables as spreadsheets write them. Encodings: windows-1252 as the WHATWG Encoding Standard has it (0x80 is the euro sign; 0x81 has no character
// in the code page of the vendor), RFC 2781 (UTF-16), RFC 3629 (UTF-8). Formulas: OWASP, "CSV Injection". The grammar is held against RFC 4180
// in tests/reference/csv_rfc4180_test.cpp.
#include "larderloop/intake/csv.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

using Rows = std::vector<std::vector<std::string>>;

// All rows as cells; a refusal as one row with its first fault.
Rows read(std::string_view bytes, std::optional<char> delimiter = std::nullopt) {
  const auto csv = open_csv(std::string(bytes), delimiter);
  if (!csv) return {{"refused", csv.error().what}};
  CsvReader reader(*csv);
  CsvRow row;
  Rows rows;
  while (reader.next(row)) {
    if (!row.fault.empty()) return {{"refused", "line " + std::to_string(row.line) + ": " + row.fault}};
    rows.emplace_back(row.cells.begin(), row.cells.end());
  }
  return rows;
}

TEST(Csv, QuotesAndLineEnds) {
  EXPECT_EQ(read("a,b,c\r\n\"Beans, red\",2,\"say \"\"hi\"\"\"\r\n"), (Rows{{"a", "b", "c"}, {"Beans, red", "2", "say \"hi\""}}));
  EXPECT_EQ(read("a,b\n\"Rice\nwhite\",3\n"), (Rows{{"a", "b"}, {"Rice\nwhite", "3"}}));
  EXPECT_EQ(read("a,b\r1,2\r"), (Rows{{"a", "b"}, {"1", "2"}})) << "a lone CR ends a row, as old spreadsheets wrote it";
  EXPECT_EQ(read("a,b\n1,2"), (Rows{{"a", "b"}, {"1", "2"}})) << "the last line end may be missing";
  EXPECT_EQ(read("a,b\n 1 ,2\n"), (Rows{{"a", "b"}, {" 1 ", "2"}})) << "blanks are part of a cell (RFC 4180 2.4)";
  EXPECT_EQ(read("a,b\n1,\n"), (Rows{{"a", "b"}, {"1", ""}}));
  EXPECT_EQ(read("a,b\n1,"), (Rows{{"a", "b"}, {"1", ""}}));
  EXPECT_EQ(read("a,b\n\"\",\"\"\n"), (Rows{{"a", "b"}, {"", ""}}));
  EXPECT_EQ(read("a\n\"\"\"\"\"\"\n"), (Rows{{"a"}, {"\"\""}}));
  EXPECT_EQ(read("a\n\"x\r\ny\rz\"\n"), (Rows{{"a"}, {"x\r\ny\rz"}})) << "line ends inside quotes stay as they are";
}

TEST(Csv, RowsKnowTheLineTheyBeginAt) {
  const auto csv = open_csv("sep=,\r\na,b\r\n\"two\r\nlines\",1\r\n\r\nx,2\r\n");
  ASSERT_TRUE(csv);
  CsvReader reader(*csv);
  CsvRow row;
  std::vector<std::size_t> lines;
  std::vector<bool> blank;
  while (reader.next(row)) {
    lines.push_back(row.line);
    blank.push_back(row.blank());
  }
  EXPECT_EQ(lines, (std::vector<std::size_t>{2, 3, 5, 6}));
  EXPECT_EQ(blank, (std::vector<bool>{false, false, true, false}));
}

TEST(Csv, Delimiters) {
  EXPECT_EQ(read("Ware;Menge\nBohnen;1,5\n\"a;b\";2\n"), (Rows{{"Ware", "Menge"}, {"Bohnen", "1,5"}, {"a;b", "2"}}));
  EXPECT_EQ(read("a\tb\n1\t2\n"), (Rows{{"a", "b"}, {"1", "2"}}));
  EXPECT_EQ(read("a|b\n1|2\n"), (Rows{{"a", "b"}, {"1", "2"}}));
  EXPECT_EQ(read("sep=;\na,x;b\n1;2\n"), (Rows{{"a,x", "b"}, {"1", "2"}}));
  EXPECT_EQ(read("sep=\t\r\na\tb\r\n"), (Rows{{"a", "b"}}));
  EXPECT_EQ(read("sep=x\n"), (Rows{{"sep=x"}})) << "no delimiter, so it is a header";
  EXPECT_EQ(read("\"a;b;c\",d\n"), (Rows{{"a;b;c", "d"}})) << "what is quoted does not count";
  EXPECT_EQ(read("a\n1\n"), (Rows{{"a"}, {"1"}}));
  EXPECT_EQ(read("a,b;c\n", ';'), (Rows{{"a,b", "c"}})) << "as the option says";
}

TEST(Csv, Encodings) {
  EXPECT_EQ(read("\xEF\xBB\xBFname\nP\xC3\xA2t\xC3\xA9\n"), (Rows{{"name"}, {"P\xC3\xA2t\xC3\xA9"}}));
  EXPECT_EQ(read("name\nP\xE2t\xE9 \x80\n"), (Rows{{"name"}, {"P\xC3\xA2t\xC3\xA9 \xE2\x82\xAC"}}));
  EXPECT_EQ(read(std::string_view("\xFF\xFE" "a\0\n\0\xE9\0\n\0", 10)), (Rows{{"a"}, {"\xC3\xA9"}}));
  EXPECT_EQ(read(std::string_view("\xFE\xFF" "\0a\0\n\0\xE9\0\n", 10)), (Rows{{"a"}, {"\xC3\xA9"}}));
  EXPECT_EQ(read(std::string_view("\xFF\xFE\x3D\xD8\x00\xDE", 6)), (Rows{{"\xF0\x9F\x98\x80"}})) << "U+1F600 as two surrogates";
  EXPECT_EQ(open_csv("\xEF\xBB\xBF" "a\n")->encoding, "UTF-8");
  EXPECT_EQ(open_csv("a\xE9\n")->encoding, "Windows-1252");
  EXPECT_EQ(read("a\n\x81\xE9\n")[0][0], "refused") << "0x81 means nothing in Windows-1252";
  EXPECT_EQ(read("\xEF\xBB\xBF" "a\n\xE9\n")[0][0], "refused") << "it says that it is UTF-8";
  EXPECT_EQ(read(std::string_view("\xFF\xFE" "a", 3))[0][0], "refused") << "half a character of UTF-16";
  EXPECT_EQ(read(std::string_view("\xFF\xFE\x3D\xD8", 4))[0][0], "refused") << "half a pair of surrogates";
  EXPECT_EQ(read(std::string_view("a\0b\0", 4))[0][0], "refused") << "UTF-16 without its mark";
  // RFC 3629: no overlong forms, no surrogates, nothing above U+10FFFF. Such bytes are not UTF-8.
  for (const char* bytes : {"\xC0\xAF", "\xE0\x9F\xBF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xE2\x82"}) {
    const auto csv = open_csv(bytes);
    EXPECT_TRUE(!csv || csv->encoding == "Windows-1252") << bytes;
  }
}

TEST(Csv, Refusals) {
  EXPECT_EQ(read("a,b\n\"x\"y,1\n"), (Rows{{"refused", "line 2: something stands behind the closing quote of a cell"}}));
  EXPECT_EQ(read("a,b\nx\"y,1\n"), (Rows{{"refused", "line 2: a quote stands inside a cell that is not quoted"}}));
  EXPECT_EQ(read("a,b\n1,2\n4,\"3\n5,6\n"), (Rows{{"refused", "line 3: a quote is not closed"}}));
  EXPECT_EQ(read(""), (Rows{{"refused", "the table is empty"}}));
  EXPECT_EQ(read("\n\n"), (Rows{{"refused", "the table is empty"}}));
}

TEST(Csv, TextsThatASpreadsheetWouldChangeAreGuardedAndComeBack) {
  for (const char* text : {"=1+1", "@x", "-cmd", "+x", "\tx", "\rx", "'=x", "007", "1E5", "3-4", "2027-08", "03APR27", "Aug 2027", "Sept 3", "monday 1", "TRUE", "false", "(15)270800", " x", ".5"}) {
    EXPECT_EQ(guarded(text), "'" + std::string(text));
  }
  for (const char* text : {"", "it's", "'t mill", "L6074", "Lentil stew", "March", "Maya 2", "Margarine 500 g", "true story", "trueness", "none", "\xC3\xA9", "BBE 08 2027"}) {
    EXPECT_EQ(guarded(text), text);
  }
  for (const char* text : {"=1+1", "'=1", "''x", "'", "", "-2", "a\r\nb", "\"", "'-x", "-", "\xC3\xA9", "''=", "'''7", "a,b", " x "}) {
    EXPECT_EQ(without_guard(guarded(text)), text);
    EXPECT_EQ(read("x\r\n" + csv_line({guarded(text), "1"})), (Rows{{"x"}, {text, "1"}}));
  }
}

TEST(Csv, Writing) {
  EXPECT_EQ(csv_line({"-1.5", "a,b", " x", "say \"hi\"", "", "two\nlines"}), "-1.5,\"a,b\",\" x\",\"say \"\"hi\"\"\",,\"two\nlines\"\r\n");
  EXPECT_EQ(csv_file("a\r\n"), "a\r\n");
  EXPECT_EQ(csv_file("\xC3\xA9\r\n"), "\xEF\xBB\xBF\xC3\xA9\r\n");
}

}  // namespace
}  // namespace larderloop
