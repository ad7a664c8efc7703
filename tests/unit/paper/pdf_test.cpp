// What a drawn file is from outside (sizes, words, codes) is checked by independent readers in tests/e2e/print_paper.py.
#include "larderloop/paper/pdf.h"

#include "larderloop/paper/qr.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>

namespace larderloop {
namespace {

PaperDocument document_of(std::size_t rows, const std::string& text) {
  PaperDocument document;
  document.what = PaperWhat::kMenuCard;
  document.title = "Card";
  document.household = "Some people";
  document.as_of = *parse_iso_day("2027-04-03");
  PaperPage page{"Card", "of something", {}};
  PaperTable table{"Day 1", {{"Who", 1}, {"What", 3}}, {}};
  for (std::size_t row = 0; row < rows; ++row) table.rows.push_back({{"Mira", false, true}, {text, true}});
  page.blocks.emplace_back(PaperWarning{"look at this"});
  page.blocks.emplace_back(std::move(table));
  document.pages.push_back(std::move(page));
  return document;
}

const Instant kNow = *parse_iso_instant("2027-04-03T00:00:00Z");

TEST(Pdf, SameDocumentSameBytesOtherTimeOtherBytes) {
  const PaperDocument document = document_of(3, "1 pouch Lentil stew");
  const auto one = draw_pdf(document, kNow), two = draw_pdf(document, kNow);
  ASSERT_TRUE(one.has_value()) << one.error().what;
  EXPECT_EQ(one->bytes, two->bytes);
  EXPECT_EQ(one->bytes.substr(0, 5), "%PDF-");
  EXPECT_NE(one->bytes, draw_pdf(document, kNow + std::chrono::hours(1))->bytes);
}

TEST(Pdf, RunsOnOverSheets) {
  EXPECT_EQ(draw_pdf(document_of(5, "short"), kNow)->sheets, 1);
  EXPECT_GT(draw_pdf(document_of(200, "short"), kNow)->sheets, 3);
  // One row that is taller than a sheet ends, too.
  std::string tall;
  for (int line = 0; line < 300; ++line) tall += "a line of a very long cell\n";
  const auto made = draw_pdf(document_of(1, tall), kNow);
  EXPECT_GT(made->sheets, 4);
  EXPECT_LT(made->sheets, 12);
}

TEST(Pdf, SaysForWhichTextThereIsNoLetter) {
  EXPECT_TRUE(draw_pdf(document_of(1, "Žofie, ليلى, נועה"), kNow)->no_glyphs.empty());
  // U+10E123 is for private use, in a plane that no font of a system has.
  EXPECT_EQ(draw_pdf(document_of(1, "\U0010E123"), kNow)->no_glyphs, std::vector<std::string>{"\U0010E123"});
}

TEST(Pdf, AListOfWhatToAvoidIsNeverCutOff) {
  PaperDocument document;
  document.what = PaperWhat::kLabels;
  document.grid = *label_grid({}, {});
  PaperLabel label{"Mira's bag", {{"Must not have: sesame"}}, {{"see the box card"}}};
  document.labels = {label};
  EXPECT_TRUE(draw_pdf(document, kNow)->too_long.empty());
  for (int each = 0; each < 300; ++each) document.labels[0].lines[0].text += ", something else";
  EXPECT_EQ(draw_pdf(document, kNow)->too_long, std::vector<std::string>{"Mira's bag"});
}

// ISO/IEC 18004: version 1 has 21 modules a side, each further one 4 more; a finder pattern (7 x 7, its ring dark) in three corners.
TEST(Codes, HaveTheFormOfTheStandard) {
  PaperDocument document;
  document.pages.push_back({"", "", {PaperCode{"https://kit.example/home", "", {}}}});
  ASSERT_TRUE(make_codes(document).has_value());
  const std::string& modules = std::get<PaperCode>(document.pages[0].blocks[0]).modules;
  const auto side = static_cast<std::size_t>(std::lround(std::sqrt(static_cast<double>(modules.size()))));
  EXPECT_EQ(side * side, modules.size());
  EXPECT_EQ((side - 21) % 4, 0U);
  const auto ring = [&](std::size_t x, std::size_t y) {
    for (std::size_t each = 0; each < 7; ++each) {
      if (modules[y * side + x + each] != '1' || modules[(y + 6) * side + x + each] != '1') return false;
    }
    return true;
  };
  EXPECT_TRUE(ring(0, 0) && ring(side - 7, 0) && ring(0, side - 7));
  EXPECT_FALSE(ring(side - 7, side - 7));
}

TEST(Codes, TooLongIsRefused) {
  PaperDocument document;
  document.pages.push_back({"", "", {PaperCode{std::string(5000, 'a'), "", {}}}});
  EXPECT_FALSE(make_codes(document).has_value());
}

}  // namespace
}  // namespace larderloop
