// Storage times without a printed date: received day and the short end of the published range.
// Source: USDA FSIS storage-time data, workbook v128 of 6 September 2018, sheet "Product"; the
// number is the product id, times
//         count from the date of purchase, unopened, in the pantry. Days worked out by hand; a
//         short month gives its last day.
#include "larderloop/core/lot.h"
#include "larderloop/intake/document.h"

#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <sstream>

namespace larderloop {
namespace {

Day at(const char* text) {
  return parse_iso_day(text).value();
}

struct Row {
  int months_short;
  int months_long;  // 0 = one time only, or none published
  int opened_most;  // the most days opened, pantry or refrigerator, that any column gives; 0 = none
                    // published
};

const std::map<int, Row> kPublished = {
    {216, {12, 24, 365}},  // chocolate, solid: 1-2 years; opened 1 year
    {335, {24, 0, 365}},   // dry pasta: 2 years; opened 1 year
    {338, {24, 0, 365}},   // white rice: 2 years; opened 1 year
    {368, {0, 0, 1}},      // infant formula: discard after use-by; opened 1 day in the refrigerator
    {370, {12, 18, 10}},   // applesauce: 12-18 months; opened 7-10 days
    {372, {24, 60, 4}},    // low-acid tins: 2-5 years; opened 3-4 days
    {373, {12, 18, 7}},    // high-acid tins: 12-18 months; opened 5-7 days
    {374, {6, 12, 92}},    // ready-to-eat cereal: 6-12 months; opened 2-3 months
    {377, {8, 0, 123}},    // crackers: 8 months; opened 1 month, 3-4 in the refrigerator
    {379, {6, 0, 184}},    // dried fruit: 6 months; opened 1 month, 6 in the refrigerator
    {380, {6, 9, 0}},      // gummy fruit snacks: 6-9 months
    {386, {12, 0, 275}},   // nuts in jars or tins: 1 year; opened 2-9 months
    {387, {6, 24, 92}},    // peanut butter: 6-24 months; opened 2-3 months
    {405, {0, 0, 12}},     // juice boxes: package date; opened 8-12 days
    {413, {0, 0, 0}},      // bottled water: indefinitely
    {432, {18, 0, 0}},     // fruit cocktail, tinned: up to 18 months
    {617, {18, 0, 4}},     // tuna, pouch: 18 months; opened 3-4 days
    {619, {12, 0, 2}},     // seafood, tinned: 1 year; opened 1-2 days
    {644, {6, 12, 7}},     // shelf-stable milk: 6-12 months; opened 5-7 days
    {647, {9, 12, 0}},     // tomato sauce, home-canned: 9-12 months
    {658, {6, 12, 0}},     // cereal or granola bars: 6-12 months
};

Household bought(int product, const char* received) {
  const Row& row = kPublished.at(product);
  Household home;
  Food food;
  food.key = FoodKey("food");
  if (row.months_short > 0) food.storage.months_short = row.months_short;
  if (row.months_long > 0) food.storage.months_long = row.months_long;
  home.foods = {food};
  Lot lot;
  lot.id = LotId(1);
  lot.food = food.key;
  lot.received = at(received);
  home.lots = {lot};
  return home;
}

TEST(StorageRules, WithoutADateTheShortEndCounts) {
  const struct {
    int product;
    const char* received;
    const char* good_through;
  } rows[] = {{372, "2024-03-01", "2026-03-01"}, {373, "2026-01-31", "2027-01-31"},
              {377, "2026-01-10", "2026-09-10"}, {379, "2026-08-31", "2027-02-28"},
              {379, "2027-08-31", "2028-02-29"}, {377, "2026-06-30", "2027-02-28"},
              {617, "2026-11-25", "2028-05-25"}, {619, "2024-02-29", "2025-02-28"},
              {370, "2026-05-31", "2027-05-31"}, {387, "2026-03-31", "2026-09-30"},
              {644, "2025-12-31", "2026-06-30"}, {658, "2026-10-31", "2027-04-30"},
              {386, "2026-07-04", "2027-07-04"}, {216, "2026-11-30", "2027-11-30"},
              {647, "2026-05-31", "2027-02-28"}};
  for (const auto& row : rows) {
    const Household home = bought(row.product, row.received);
    const LotFacts facts = lot_facts(home, home.lots[0]);
    EXPECT_EQ(facts.basis, DayBasis::kEstimated) << row.product;
    EXPECT_FALSE(facts.safety) << row.product << ": times of quality, not of safety";
    ASSERT_TRUE(facts.good_through) << row.product;
    EXPECT_EQ(iso_day(*facts.good_through), row.good_through) << row.product;
  }
}

TEST(StorageRules, WhatTheTableGivesNoTimeForGetsNone) {
  for (const int product : {405, 413, 368}) {
    const Household home = bought(product, "2026-01-10");
    EXPECT_EQ(lot_facts(home, home.lots[0]).good_through, std::nullopt) << product;
  }
}

TEST(StorageRules, APrintedDateStandsBeforeTheTable) {
  Household home = bought(372, "2024-03-01");
  home.lots[0].mark = {"2027-06-30", MarkKind::kBestBefore, Precision::kDay, at("2027-06-30")};
  EXPECT_EQ(lot_facts(home, home.lots[0]).good_through, at("2027-06-30"));
}

TEST(StorageRules, OpenedTheShortEndCountsFromTheDayOfOpening) {
  // 372: tinned beans opened, refrigerator, 3-4 days.
  Household home = bought(372, "2026-01-10");
  home.foods[0].storage.opened_days = 3;
  EXPECT_EQ(good_through_at(home.foods[0], lot_facts(home, home.lots[0]), at("2026-05-01")),
            at("2026-05-04"));
  // 377: crackers, unopened to 10 September, opened 1 month at most: whichever is earlier.
  home = bought(377, "2026-01-10");
  home.foods[0].storage.opened_days = 28;
  EXPECT_EQ(good_through_at(home.foods[0], lot_facts(home, home.lots[0]), at("2026-02-01")),
            at("2026-03-01"));
  EXPECT_EQ(good_through_at(home.foods[0], lot_facts(home, home.lots[0]), at("2026-09-01")),
            at("2026-09-10"));
}

// CDC, Creating and Storing an Emergency Water Supply, 2017: replace water that was not bought
// every six months.
TEST(StorageRules, WaterFilledAtHomeIsReplacedEverySixMonths) {
  for (const auto& [filled, due] :
       {std::pair{"2026-01-15", "2026-07-15"}, std::pair{"2026-08-31", "2027-02-28"}}) {
    Household home = bought(413, filled);
    home.foods[0].kind = FoodKind::kWater;
    home.foods[0].self_filled = true;
    const LotFacts facts = lot_facts(home, home.lots[0]);
    EXPECT_EQ(facts.basis, DayBasis::kFilled);
    EXPECT_EQ(facts.good_through, at(due));
  }
}

TEST(StorageRules, TheDemoHouseholdQuotesTheTableRightly) {
  std::ifstream file(std::string(LARDERLOOP_SRC) + "/data/demo/household.json");
  std::stringstream text;
  text << file.rdbuf();
  const auto home = parse_document(text.str());
  ASSERT_TRUE(home) << home.error().what;
  const std::string quoted = "USDA FSIS storage-time data v128 (2018), product ";
  int quotes = 0;
  for (const Food& food : home->foods) {
    if (food.storage.source.compare(0, quoted.size(), quoted) != 0) continue;
    const std::string number = food.storage.source.substr(quoted.size());
    if (number.empty() || number.find_first_not_of("0123456789") != std::string::npos) continue;
    const int product = std::stoi(number);
    const auto row = kPublished.find(product);
    ASSERT_NE(row, kPublished.end()) << food.name << " quotes product " << product;
    EXPECT_EQ(food.storage.months_short.value_or(0), row->second.months_short) << food.name;
    EXPECT_EQ(food.storage.months_long.value_or(0), row->second.months_long) << food.name;
    if (row->second.opened_most > 0) {
      EXPECT_LE(food.storage.opened_days, row->second.opened_most) << food.name;
    }
    ++quotes;
  }
  EXPECT_GT(quotes, 20);
}

}  // namespace
}  // namespace larderloop
