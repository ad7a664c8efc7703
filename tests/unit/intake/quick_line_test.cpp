#include "larderloop/intake/quick_line.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const Day kToday = *parse_iso_day("2027-04-03");

Food food(const char* key, const char* name, const char* unit, std::int64_t mass) {
  Food made;
  made.key = FoodKey(key);
  made.name = name;
  made.unit = unit;
  made.mass_g = mass;
  return made;
}

Household household() {
  Household home;
  home.foods = {food("oat-bar", "Oat bar", "bar", 40),
                food("orange-marmalade", "Orange marmalade", "jar", 450),
                food("rice-cakes-pack", "Rice cakes", "pack", 150)};
  Place pantry;
  pantry.key = PlaceKey("pantry");
  pantry.name = "Pantry";
  home.places = {pantry};
  return home;
}

QuickList read(const char* lines) {
  return read_quick_lines(household(), lines, {PlaceKey("pantry"), "", DateOrder::kNone}, kToday);
}

TEST(QuickLine, TheDayOfADateIsNoAmount) {
  const QuickList list =
      read("3 ri ca 15 Jun 2027\n2 rice 150g 15 Jun 2027\n1 rice 0.15kg 06 2027\n");
  ASSERT_TRUE(list.problems.empty());
  ASSERT_EQ(list.lots.size(), 3U);
  EXPECT_EQ(list.lots[0].printed.mark.day, parse_iso_day("2027-06-15"));
  EXPECT_EQ(list.lots[1].printed.mark.day, parse_iso_day("2027-06-15"));
  EXPECT_EQ(list.lots[2].printed.mark.day, parse_iso_day("2027-06-30"));
  EXPECT_EQ(list.lots[2].units, 1);
}

TEST(QuickLine, AMonthThatCouldBeAPartOfTheNameIsNotGuessed) {
  const QuickList list =
      read("2 orange mar 5 2028");  // marmalade in May, or something of oranges on 5 March
  ASSERT_EQ(list.problems.size(), 1U);
  EXPECT_EQ(list.problems[0].what, "the date could be 'mar 5 2028' or '5 2028'");
  EXPECT_EQ(read("2 orange marm 5 2028").lots.at(0).printed.mark.day, parse_iso_day("2028-05-31"));
  EXPECT_EQ(read("2 orange marmalade mar 5 2028").lots.at(0).printed.mark.day,
            parse_iso_day("2028-03-05"));  // a whole name ends there
}

TEST(QuickLine, UnitsPlaceAndPriceStandWhereTheyLike) {
  const QuickList list = read("oat bar =1.20 bbe 3/28 lot L6074\n2x oat @pantry use by 15MAR28\n");
  ASSERT_TRUE(list.problems.empty());
  EXPECT_EQ(list.lots[0].units, 1);
  EXPECT_EQ(list.lots[0].paid_cents, 120);
  EXPECT_EQ(list.lots[0].printed.lot_code, "L6074");
  EXPECT_EQ(list.lots[1].units, 2);
  EXPECT_EQ(list.lots[1].printed.mark.kind, MarkKind::kUseBy);
}

}  // namespace
}  // namespace larderloop
