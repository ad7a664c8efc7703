// One cell to a value, and headers in several words. The words are common use, collected by us.
#include "larderloop/intake/sheet_cells.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

std::string decimal(std::string_view cell, char delimiter) {
  const auto read = cell_decimal(cell, delimiter, 100);
  return read ? std::to_string(*read) : "no";
}

TEST(SheetCells, DecimalSignsAreReadOnlyWithoutDoubt) {
  EXPECT_EQ(decimal("8.40", ','), "840");
  EXPECT_EQ(decimal("8,40", ','), "840");
  EXPECT_EQ(decimal("8,4", ';'), "840");
  EXPECT_EQ(decimal("8", '\t'), "800");
  EXPECT_EQ(decimal("1,000", ';'), "100") << "the comma is the decimal sign where semicolons stand between cells";
  EXPECT_EQ(decimal("1,000", ','), "no") << "one or a thousand";
  EXPECT_EQ(decimal("1.000", ','), "100");
  EXPECT_EQ(decimal("1.000", ';'), "no");
  EXPECT_EQ(decimal("1.000", '\t'), "no");
  EXPECT_EQ(decimal("0.500", ';'), "50") << "no thousand begins with 0";
  for (const char* cell : {"", "-1", "+1", "1e3", "1.2.3", "1,", ",5", "0.001", "1 000", "9999999999999", "\xD9\xA3"}) EXPECT_EQ(decimal(cell, ','), "no") << cell;
}

TEST(SheetCells, AmountsHaveAUnit) {
  EXPECT_EQ(*cell_amount("250", ',', "g", {}), 250);
  EXPECT_EQ(*cell_amount("0,25 kg", ';', "g", {}), 250);
  EXPECT_EQ(*cell_amount("62.5", ',', "kg", {}), 62'500);
  EXPECT_EQ(*cell_amount("1.5 L", ',', "ml", {}), 1500);
  EXPECT_EQ(*cell_amount("2", ',', "g", {"kg", MarkKind::kNone}), 2000) << "as the header says";
  EXPECT_FALSE(cell_amount("250", ',', "g", {"?", MarkKind::kNone})) << "a header 'weight' says no unit";
  EXPECT_FALSE(cell_amount("250 ml", ',', "g", {}));
  EXPECT_FALSE(cell_amount("9 oz", ',', "g", {}));
  EXPECT_FALSE(cell_amount("g", ',', "g", {}));
}

TEST(SheetCells, DaysThatCouldBeTwo) {
  EXPECT_EQ(iso_day(*cell_day("2026-10-03", DateOrder::kNone)), "2026-10-03");
  EXPECT_EQ(iso_day(*cell_day("2026/10/3", DateOrder::kMdy)), "2026-10-03");
  EXPECT_EQ(iso_day(*cell_day("13.10.2026", DateOrder::kNone)), "2026-10-13");
  EXPECT_EQ(iso_day(*cell_day("10/13/2026", DateOrder::kNone)), "2026-10-13");
  EXPECT_EQ(iso_day(*cell_day("03.03.2026", DateOrder::kNone)), "2026-03-03") << "both readings are the same day";
  EXPECT_EQ(iso_day(*cell_day("03/10/2026", DateOrder::kDmy)), "2026-10-03");
  EXPECT_EQ(iso_day(*cell_day("03/10/2026", DateOrder::kMdy)), "2026-03-10");
  EXPECT_FALSE(cell_day("03/10/2026", DateOrder::kNone));
  EXPECT_FALSE(cell_day("10/13/2026", DateOrder::kDmy)) << "no other order is tried when the household has one";
  for (const char* cell : {"31.04.2026", "2026-02-29", "1.1.26", "2026", "10/2026", "1-1-1-2026", "1//2026", "46298", "today"}) EXPECT_FALSE(cell_day(cell, DateOrder::kNone)) << cell;
}

TEST(SheetCells, Lists) {
  using Words = std::vector<std::string>;
  EXPECT_EQ(cell_list("milk; egg,tree_nut:almond / soy\nfish"), (Words{"milk", "egg", "tree_nut:almond", "soy", "fish"}));
  EXPECT_EQ(cell_list("None"), Words{});
  EXPECT_EQ(cell_list(" ; ,"), Words{});
  EXPECT_EQ(*cell_allergen("Milk", {}), "milk");
  EXPECT_EQ(*cell_allergen("almond", {}), "tree_nut:almond");
  EXPECT_EQ(*cell_allergen("kiwi", {{"kiwi", Day{}}}), "kiwi");
  EXPECT_FALSE(cell_allergen("kiwi", {}));
  EXPECT_EQ(cell_allergen("mlik", {}).error().remedy, "did you mean 'milk'?");
}

TEST(SheetCells, Packs) {
  const auto packs = cell_packs("Corner shop:6:8.40; A: b; c:1:1,5\nMarket:2:3", ';');
  ASSERT_TRUE(packs);
  EXPECT_EQ(*packs, (std::vector<Pack>{{"Corner shop", 6, 840}, {"A: b; c", 1, 150}, {"Market", 2, 300}}));
  EXPECT_TRUE(cell_packs("none", ',')->empty());
  for (const char* cell : {"shop", "shop:1", "shop:0:1", "shop:1:x", "a:1:1;b"}) EXPECT_FALSE(cell_packs(cell, ',')) << cell;
}

TEST(SheetCells, NumbersUnderBars) {
  // GS1 General Specifications 7.9: the check digit is counted from the right, so zeros in front change nothing.
  EXPECT_EQ(*cell_gtin("09520000000110"), "09520000000110");
  EXPECT_EQ(*cell_gtin("9520000000110"), "09520000000110");
  EXPECT_EQ(*cell_gtin("9 520000 000110"), "09520000000110");
  EXPECT_EQ(*cell_gtin("96385074"), "00000096385074");
  for (const char* cell : {"9520000000111", "9.52E+12", "110", "", "095200000001100"}) EXPECT_FALSE(cell_gtin(cell)) << cell;
}

Col meaning(SheetKind sheet, const std::string& header) {
  HeaderHow how;
  how.pass_over = true;
  const auto columns = match_columns(sheet, {header}, 1, how);
  return columns ? columns->columns.front().col : Col::kCount;
}

TEST(SheetHeaders, SeveralWordsForOneColumn) {
  for (const char* header : {"date", "Best before", "BEST-BEFORE", " bb ", "Use by", "use_by", "expiry", "Expiry date", "MHD"}) EXPECT_EQ(meaning(SheetKind::kLots, header), Col::kDate) << header;
  for (const char* header : {"units", "Qty", "QUANTITY", "count", "how many?", "pcs."}) EXPECT_EQ(meaning(SheetKind::kLots, header), Col::kUnits) << header;
  for (const char* header : {"place", "Where", "Location", "stored in", "shelf"}) EXPECT_EQ(meaning(SheetKind::kLots, header), Col::kPlace) << header;
  EXPECT_EQ(meaning(SheetKind::kFoods, "name"), Col::kName);
  EXPECT_EQ(meaning(SheetKind::kLots, "name"), Col::kFood) << "the name in a list of lots is that of the food";
  EXPECT_EQ(meaning(SheetKind::kFoods, "allergens"), Col::kContains);
  EXPECT_EQ(meaning(SheetKind::kPeople, "allergens"), Col::kAvoid);
  EXPECT_EQ(meaning(SheetKind::kPeople, "qty"), Col::kCount);
  HeaderHow how;
  EXPECT_EQ(match_columns(SheetKind::kLots, {"use by"}, 1, how)->columns.front().hint.mark, MarkKind::kUseBy);
  how.kept = {{"Datum", "date"}, {"Best before", ""}};
  how.said = {{"BEST before", "received"}};
  const auto columns = match_columns(SheetKind::kLots, {"Datum", "Best before"}, 1, how);
  ASSERT_TRUE(columns);
  EXPECT_EQ(columns->columns[0].col, Col::kDate);
  EXPECT_EQ(columns->columns[1].col, Col::kReceived) << "what is said now comes before what was kept";
  EXPECT_EQ(columns_to_keep(SheetKind::kLots, *columns), (std::map<std::string, std::string>{{"Best before", "received"}, {"Datum", "date"}}));
}

TEST(SheetHeaders, EveryColumnHasItsNameOnceAndAnswersToIt) {
  for (const SheetKind sheet : kAllSheetKinds) {
    std::vector<std::string> names;
    for (const ColumnInfo& each : sheet_columns(sheet)) names.emplace_back(each.name);
    const auto columns = match_columns(sheet, names, 1, {});
    ASSERT_TRUE(columns) << sheet_kind_name(sheet);
    for (std::size_t index = 0; index < names.size(); ++index) EXPECT_EQ(columns->columns[index].col, sheet_columns(sheet)[index].col) << names[index];
  }
}

}  // namespace
}  // namespace larderloop
