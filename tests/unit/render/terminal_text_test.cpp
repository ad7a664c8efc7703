// Widths follow Unicode Standard Annex 11 (East Asian Width): wide and full-width characters take
// two cells.
#include "larderloop/render/terminal_text.h"

#include "larderloop/render/table.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

TEST(VisibleText, ShowsWhatCouldMoveTheCursor) {
  EXPECT_EQ(visible_text("a\x1b[2Jb", LineEnds::kKeep), "a\\x1b[2Jb");
  EXPECT_EQ(visible_text("a\rb\tc\x7f", LineEnds::kKeep), "a\\x0db\\x09c\\x7f");
  EXPECT_EQ(visible_text("a\nb", LineEnds::kKeep), "a\nb");
  EXPECT_EQ(visible_text("a\nb", LineEnds::kEscape), "a\\nb");
  EXPECT_EQ(visible_text("\xc2\x9b", LineEnds::kKeep), "\\x9b");  // C1 control sequence introducer
  EXPECT_EQ(visible_text("\xe2\x80\xae"
                         "abc",
                         LineEnds::kKeep),
            "\\u202eabc");  // right-to-left override
}

TEST(VisibleText, KeepsLettersOfAllScripts) {
  for (const char* text : {"Plum jam", "Žluťoučký", "Ελιά", "米", "🍲"})
    EXPECT_EQ(visible_text(text, LineEnds::kEscape), text);
}

// Ill-formed sequences of RFC 3629 section 10: overlong forms, surrogates, lone continuation bytes,
// beyond U+10FFFF.
TEST(VisibleText, ShowsBytesThatAreNoText) {
  EXPECT_EQ(visible_text("\xff", LineEnds::kKeep), "\\xff");
  EXPECT_EQ(visible_text("\xc0\xaf", LineEnds::kKeep), "\\xc0\\xaf");
  EXPECT_EQ(visible_text("\xe0\x80\xaf", LineEnds::kKeep), "\\xe0\\x80\\xaf");
  EXPECT_EQ(visible_text("\xed\xa0\x80", LineEnds::kKeep), "\\xed\\xa0\\x80");
  EXPECT_EQ(visible_text("\xf4\x90\x80\x80", LineEnds::kKeep), "\\xf4\\x90\\x80\\x80");
  EXPECT_EQ(visible_text("\xe2\x82", LineEnds::kKeep), "\\xe2\\x82");
  EXPECT_EQ(visible_text("\x80", LineEnds::kKeep), "\\x80");
}

TEST(VisibleText, KnowsUtf8) {
  EXPECT_TRUE(is_utf8(""));
  EXPECT_TRUE(is_utf8("Žito 米 🍲"));
  EXPECT_FALSE(is_utf8("\xff"));
  EXPECT_FALSE(is_utf8("a\xc3"));
}

TEST(Cells, CountsCellsNotBytes) {
  EXPECT_EQ(cells("abc"), 3U);
  EXPECT_EQ(cells("é"), 1U);
  EXPECT_EQ(cells("e\xcc\x81"), 1U);  // combining acute
  EXPECT_EQ(cells("米"), 2U);
  EXPECT_EQ(cells("🍲"), 2U);
}

TEST(Cells, FitsBetweenCharacters) {
  EXPECT_EQ(fit_cells("abcdef", 6), "abcdef");
  EXPECT_EQ(fit_cells("abcdef", 4), "abc…");
  EXPECT_EQ(fit_cells("米米米", 4), "米…");
  EXPECT_EQ(fit_cells("ab", 1), "…");
}

TEST(Table, AlignsAndNeverEndsInSpaces) {
  Table table({{"LOT", Align::kRight}, {"FOOD"}, {"NOTE"}});
  table.add({"7", "Žito"});
  table.add({"17", "Rice", "x"});
  EXPECT_EQ(table.text(),
            "LOT  FOOD  NOTE\n"
            "  7  Žito\n"
            " 17  Rice  x\n");
}

TEST(Table, CutsTheWidestColumnToTheTerminal) {
  Table table({{"A"}, {"B"}});
  table.add({"short", "a very long text that does not fit into the line"});
  const std::string text = table.text(30);
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = text.find('\n', begin);
    EXPECT_LE(cells(text.substr(begin, end - begin)), 30U);
    begin = end + 1;
  }
  EXPECT_NE(text.find("short  a very"), std::string::npos);
}

TEST(Table, CellsCannotBreakTheLine) {
  Table table({{"A"}});
  table.add({"one\ntwo\x1b[0m"});
  EXPECT_EQ(table.text(), "A\none\\ntwo\\x1b[0m\n");
}

}  // namespace
}  // namespace larderloop
