#include "cli/values.h"

#include "cli/amount_text.h"

#include <gtest/gtest.h>

namespace larderloop::cli {
namespace {

const Day kToday = *parse_iso_day("2027-03-01");

TEST(Values, DaysAsNumbersAndAsWords) {
  const struct {
    const char* text;
    const char* day;
  } cases[] = {{"2027-03-15", "2027-03-15"}, {"today", "2027-03-01"},
               {"yesterday", "2027-02-28"},  {"tomorrow", "2027-03-02"},
               {"+3d", "2027-03-04"},        {"-1d", "2027-02-28"},
               {"+2w", "2027-03-15"},        {"2028-02-29", "2028-02-29"}};
  for (const auto& each : cases) {
    const auto day = read_day("--on", each.text, kToday);
    ASSERT_TRUE(day) << each.text;
    EXPECT_EQ(iso_day(*day), each.day);
  }
  for (const char* text : {"", "2027-02-29", "2027-3-1", "15.03.2027", "+d", "3d", "+3",
                           "+99999999999999d", "+3m", "Today", "now"}) {
    const auto day = read_day("--on", text, kToday);
    ASSERT_FALSE(day) << text;
    EXPECT_EQ(day.error().kind, ErrorKind::kBadData);
    EXPECT_NE(day.error().next_step.find("2027-03-15"), std::string::npos);
  }
}

TEST(Values, QuantitiesCarryTheirUnit) {
  EXPECT_EQ(read_mass("--mass", "500g").value(), 500);
  EXPECT_EQ(read_mass("--mass", "1.5kg").value(), 1500);
  EXPECT_EQ(read_mass("--mass", "0.001 kg").value(), 1);
  EXPECT_EQ(read_volume("--volume", "330ml").value(), 330);
  EXPECT_EQ(read_volume("--volume", "1.5l").value(), 1500);
  EXPECT_EQ(read_energy("--energy", "2000").value(), 2000);
  EXPECT_EQ(read_energy("--energy", "310kcal").value(), 310);
  for (const char* text : {"500", "", "g", "-5g", "0g", "1,5kg", "1.0001kg", "1.5g", "1e3g",
                           "500 lb", "99999999999999999999g", "1.g", ".5kg"}) {
    EXPECT_FALSE(read_mass("--mass", text)) << text;
  }
}

TEST(Values, MoneyIsExact) {
  EXPECT_EQ(read_money("--paid", "4.50").value(), 450);
  EXPECT_EQ(read_money("--paid", "4.5").value(), 450);
  EXPECT_EQ(read_money("--paid", "4").value(), 400);
  EXPECT_EQ(read_money("--paid", "0.07").value(), 7);
  EXPECT_EQ(read_money("--paid", "0").value(), 0);
  for (const char* text : {"4,50", "4.505", "-1", "", "1 EUR", "1e2", "9999999999"})
    EXPECT_FALSE(read_money("--paid", text)) << text;
}

TEST(Values, ServingsComeInHalves) {
  EXPECT_EQ(read_servings("--appetite", "0.5").value(), HalfServings(1));
  EXPECT_EQ(read_servings("--appetite", "half").value(), HalfServings(1));
  EXPECT_EQ(read_servings("--appetite", "1").value(), HalfServings(2));
  EXPECT_EQ(read_servings("--appetite", "1.50").value(), HalfServings(3));
  for (const char* text : {"0", "0.3", "-1", "", "1,5", "1001", "1.25"})
    EXPECT_FALSE(read_servings("--appetite", text)) << text;
}

TEST(Values, PacksMayHaveColonsInTheShop) {
  const auto pack = read_pack("--pack", "Shop: upper town:6:8.40");
  ASSERT_TRUE(pack);
  EXPECT_EQ(pack->shop, "Shop: upper town");
  EXPECT_EQ(pack->units, 6);
  EXPECT_EQ(pack->price_cents, 840);
  for (const char* text : {"", "shop", "shop:6", ":6:8.40", "shop:0:1", "shop:6:", "shop::1", "::"})
    EXPECT_FALSE(read_pack("--pack", text)) << text;
}

TEST(Values, WordsAcceptDashesAndSuggest) {
  const auto kind = read_word<FoodKind>("--kind", "pet-food", parse_food_kind,
                                        names_of(kAllFoodKinds, food_kind_name));
  ASSERT_TRUE(kind);
  EXPECT_EQ(*kind, FoodKind::kPetFood);
  const auto slip = read_word<FoodKind>("--kind", "pet-fod", parse_food_kind,
                                        names_of(kAllFoodKinds, food_kind_name));
  ASSERT_FALSE(slip);
  EXPECT_EQ(slip.error().next_step, "did you mean 'pet-food'?");
}

struct AmountCase {
  std::vector<std::string> words;
  AmountUnit unit;
  std::int64_t value;
};

TEST(AmountText, ReadsUnitsServingsAndAll) {
  const AmountCase cases[] = {{{"2"}, AmountUnit::kUnits, 2},
                              {{"2", "units"}, AmountUnit::kUnits, 2},
                              {{"1 unit"}, AmountUnit::kUnits, 1},
                              {{"1.5", "servings"}, AmountUnit::kHalfServings, 3},
                              {{"half", "serving"}, AmountUnit::kHalfServings, 1},
                              {{"half", "a", "serving"}, AmountUnit::kHalfServings, 1},
                              {{"a serving"}, AmountUnit::kHalfServings, 2},
                              {{"0.5servings"}, AmountUnit::kHalfServings, 1},
                              {{"all"}, AmountUnit::kAll, 0}};
  for (const AmountCase& each : cases) {
    const auto amount = read_amount(each.words, 1);
    ASSERT_TRUE(amount) << each.words.front();
    EXPECT_EQ(amount->unit, each.unit) << each.words.front();
    EXPECT_EQ(amount->value, each.value) << each.words.front();
  }
}

TEST(AmountText, RefusesWhatIsNoAmount) {
  for (const char* text : {"", "0", "-1", "1.5", "two", "0 servings", "0.3 servings", "100001",
                           "servings", "half", "1 serving 2", "0x2", "2 packs"}) {
    const auto amount = read_amount({text}, 1);
    ASSERT_FALSE(amount) << text;
    EXPECT_EQ(amount.error().kind, ErrorKind::kBadData) << text;
    EXPECT_FALSE(amount.error().next_step.empty()) << text;
  }
}

TEST(AmountText, ACountMayBeZero) {
  EXPECT_EQ(read_amount({"0"}, 0).value().value, 0);
  EXPECT_EQ(read_amount({"0", "servings"}, 0).value().unit, AmountUnit::kHalfServings);
}

}  // namespace
}  // namespace larderloop::cli
