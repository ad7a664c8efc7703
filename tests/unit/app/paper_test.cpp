// Sizes of sheets: ISO 216 (A4), ANSI/ASME Y14.1 (Letter, 8.5 x 11 in). Order of right-to-left names: Unicode Standard Annex 9.
#include "larderloop/app/paper.h"

#include <gtest/gtest.h>

#include "app/paper_parts.h"
#include "kit_household.h"

namespace larderloop {
namespace {

PaperDocument printed(const Household& household, PaperWhat what, bool private_ = false) {
  PaperRequest request;
  request.what = what;
  request.private_ = private_;
  request.grid = *label_grid({}, {});
  auto made = make_paper(household, request, kReviewDay.today);
  EXPECT_TRUE(made.has_value()) << made.error().what;
  return made.value_or(PaperDocument{});
}

bool says(const PaperDocument& document, const std::string& what) { return paper_words(document).find(what) != std::string::npos; }

TEST(LabelSheet, SizesOfTheStandards) {
  EXPECT_EQ((PaperSheet{PaperSize::kA4}.width_mm()), 210);
  EXPECT_EQ((PaperSheet{PaperSize::kA4}.height_mm()), 297);
  EXPECT_NEAR((PaperSheet{PaperSize::kLetter}.width_mm()), 8.5 * 25.4, 1e-9);
  EXPECT_NEAR((PaperSheet{PaperSize::kLetter}.height_mm()), 11 * 25.4, 1e-9);
}

TEST(LabelSheet, UsualGridsLieOnTheirSheetsInTheMiddle) {
  for (const PaperSize size : kAllPaperSizes) {
    const PaperSheet sheet{size};
    for (const LabelGrid& grid : usual_grids(size)) {
      GridRequest request;
      request.width = grid.width;
      request.height = grid.height;
      const auto made = label_grid(sheet, request);
      ASSERT_TRUE(made.has_value()) << grid_words(grid);
      EXPECT_EQ(made->count(), grid.count());
      const LabelPlace last = place_of_label(*made, 1, made->count() - 1);
      EXPECT_NEAR(sheet.width_mm() - last.x - made->width, made->left, 1e-9);
      EXPECT_NEAR(sheet.height_mm() - last.y - made->height, made->top, 1e-9);
    }
  }
}

TEST(LabelSheet, ByNumbersAlone) {
  GridRequest request;
  request.width = 50;
  request.height = 30;
  request.columns = 3;
  request.rows = 8;
  request.left = 8;
  request.top = 10.5;
  request.pitch_x = 60;
  request.pitch_y = 34.25;
  const auto grid = label_grid({}, request);
  ASSERT_TRUE(grid.has_value()) << grid.error().what;
  // The fifth label from the third place on is in the third row, first column.
  const LabelPlace place = place_of_label(*grid, 3, 4);
  EXPECT_EQ(place.sheet, 0);
  EXPECT_DOUBLE_EQ(place.x, 8);
  EXPECT_DOUBLE_EQ(place.y, 10.5 + 2 * 34.25);
  EXPECT_EQ(place_of_label(*grid, 3, 22).sheet, 1);
  EXPECT_DOUBLE_EQ(place_of_label(*grid, 3, 22).y, 10.5);
}

TEST(LabelSheet, WhatCannotBeIsRefused) {
  GridRequest outside;
  outside.columns = 3;
  EXPECT_FALSE(label_grid({}, outside).has_value());
  GridRequest overlapping;
  overlapping.pitch_x = 90;
  EXPECT_FALSE(label_grid({}, overlapping).has_value());
  GridRequest small;
  small.width = 12;
  small.height = 12;
  EXPECT_FALSE(label_grid({}, small).has_value());
}

TEST(Paper, NamesKeepTheirOrderAndMoveNothing) {
  EXPECT_EQ(paper::name_on_paper("Žofie"), "Žofie");
  EXPECT_EQ(paper::name_on_paper("a\x1b[2J\nb"), "a [2J b");
  EXPECT_EQ(paper::name_on_paper("\u202eabc\u202c"), "abc");
  EXPECT_EQ(paper::name_on_paper("נועה"), "\u2068נועה\u2069");
  EXPECT_EQ(paper::name_on_paper("ليلى"), "\u2068ليلى\u2069");
  EXPECT_EQ(paper::name_on_paper("米子"), "米子");
}

TEST(Paper, NothingThereIsSaidPlainly) {
  const Household empty;
  for (const PaperWhat what : kAllPapers) {
    if (what == PaperWhat::kReplacementList) continue;
    PaperRequest request;
    request.what = what;
    const auto made = make_paper(empty, request, kReviewDay.today);
    ASSERT_FALSE(made.has_value());
    EXPECT_EQ(made.error().kind, ErrorKind::kBadData);
    EXPECT_FALSE(made.error().next_step.empty());
  }
  Household no_menu = kit_household();
  no_menu.menu.clear();
  PaperRequest request;
  request.what = PaperWhat::kMenuCard;
  EXPECT_FALSE(make_paper(no_menu, request, kReviewDay.today).has_value());
}

TEST(Paper, TheMenuCardWarnsOfWhatSomebodyMustNotHave) {
  Household household = kit_household();
  PaperDocument before = printed(household, PaperWhat::kMenuCard);
  const std::string wrong = "lot " + std::to_string(add_stew(household, "2028-01-31", "bag-bo", 1, {{"sesame", Declared::kContains}, {"mustard", Declared::kContains}, {"milk", Declared::kContains}, {"peanut", Declared::kContains}}).value());
  EXPECT_FALSE(says(before, wrong));
  bool anybody = false;
  for (const Person& person : household.people) anybody = anybody || (person.key == PersonKey("bo") && !person.avoid.empty());
  if (!anybody) {
    for (Person& person : household.people) {
      if (person.key == PersonKey("bo")) person.avoid = {{"sesame", false}};
    }
  }
  const PaperDocument after = printed(household, PaperWhat::kMenuCard);
  EXPECT_TRUE(says(after, wrong)) << paper_words(after);
  EXPECT_TRUE(says(after, "NOT for")) << paper_words(after);
  EXPECT_TRUE(says(after, "Read the label"));
  EXPECT_TRUE(says(after, "Opened wet food without a fridge is eaten"));
}

TEST(Paper, PrivatePaperHasNoHealthFacts) {
  Household household = kit_household();
  for (Person& person : household.people) {
    person.avoid = {{"sesame", false}};
    person.diets = {Diet::kVegetarian};
  }
  add_stew(household, "2028-01-31", "bag-bo", 1, {{"sesame", Declared::kContains}});
  for (const PaperWhat what : kAllPapers) {
    if (what == PaperWhat::kReplacementList) continue;
    const PaperDocument open = printed(household, what);
    const PaperDocument closed = printed(household, what, true);
    EXPECT_TRUE(says(open, "sesame")) << paper_name(what);
    EXPECT_FALSE(says(closed, "sesame")) << paper_words(closed);
    EXPECT_FALSE(says(closed, "vegetarian")) << paper_words(closed);
  }
  EXPECT_TRUE(says(printed(household, PaperWhat::kMenuCard, true), "NOT for"));
}

TEST(Paper, WhatIsMissingIsSaidBesideTheMeal) {
  Household household = kit_household();
  household.entries.clear();
  EXPECT_TRUE(says(printed(household, PaperWhat::kMenuCard), "NOT IN THE BAG"));
}

}  // namespace
}  // namespace larderloop
