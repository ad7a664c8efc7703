// What would have avoided waste: hand-made records, each with a plain answer.
#include "larderloop/app/advice.h"

#include "kit_household.h"
#include "larderloop/core/stock.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const Day kToday = day_at("2029-01-01");

Food& food_of(Household& household, std::string_view key) {
  for (Food& food : household.foods) {
    if (food.key.str() == key) return food;
  }
  throw std::runtime_error("no such food");
}

// Bo and Ida, the pantry and the kit, and no lots yet.
Household empty_record() {
  Household household = kit_household();
  household.lots.clear();
  household.entries.clear();
  for (Food& food : household.foods) {
    food.packs.clear();
    food.storage = {};
  }
  return household;
}

// `units` of a food that came on a day for `paid` cents, good through another.
LotId add_lot(Household& household, std::string_view food, std::int64_t units, std::string_view on,
              std::string_view good_through, std::int64_t paid, std::string_view at = "pantry") {
  const NextIds ids = next_ids(household);
  Lot lot;
  lot.id = ids.lot;
  lot.food = FoodKey(std::string(food));
  lot.mark = {std::string(good_through), MarkKind::kBestBefore, Precision::kDay,
              parse_iso_day(good_through)};
  lot.received = day_at(on);
  lot.label = label_of({{"mustard", Declared::kContains}}, {Diet::kVegan});
  household.lots.push_back(lot);
  Entry entry;
  entry.id = ids.entry;
  entry.on = lot.received;
  entry.written_at = midnight(entry.on);
  entry.at = {lot.id, PlaceKey(std::string(at)), std::nullopt};
  entry.amount = HalfServings::units(units, find_food(household, lot.food)->servings);
  entry.paid_cents = paid;
  household.entries.push_back(entry);
  return lot.id;
}

Entry& add(Household& household, EntryKind kind, LotId lot, std::string_view on, std::int64_t units,
           std::string_view at = "pantry") {
  Entry entry;
  entry.id = next_ids(household).entry;
  entry.kind = kind;
  entry.on = day_at(on);
  entry.written_at = midnight(entry.on);
  entry.at = {lot, PlaceKey(std::string(at)), std::nullopt};
  entry.amount =
      HalfServings::units(units, find_food(household, find_lot(household, lot)->food)->servings);
  household.entries.push_back(entry);
  return household.entries.back();
}

std::vector<Advice> advice_of(const Household& household) {
  EXPECT_TRUE(replay(household));
  const auto advice = make_advice(household, std::nullopt, std::nullopt, kToday);
  EXPECT_TRUE(advice);
  return *advice;
}

Remedy only_remedy(const Household& household) {
  const auto advice = advice_of(household);
  EXPECT_EQ(advice.size(), 1U);
  EXPECT_TRUE(advice.at(0).best);
  return advice.at(0).best.value_or(Remedy{});
}

TEST(Advice, NothingThrownOutNeedsNone) {
  Household household = empty_record();
  add(household, EntryKind::kEaten, add_lot(household, "stew", 2, "2027-02-01", "2028-01-31", 400),
      "2027-03-01", 2);
  EXPECT_TRUE(advice_of(household).empty());
}

// Six at once, four eaten, two thrown out: packs of two or four would have done, and the book has
// twos.
TEST(Advice, ASmallerPackThatTheBookHas) {
  Household household = empty_record();
  food_of(household, "stew").packs = {{"Corner shop", 6, 1200}, {"Market hall", 2, 500}};
  const LotId lot = add_lot(household, "stew", 6, "2027-02-01", "2028-01-31", 1200);
  add(household, EntryKind::kEaten, lot, "2027-03-01", 4);
  add(household, EntryKind::kThrownOut, lot, "2028-02-20", 2);
  const Remedy remedy = only_remedy(household);
  EXPECT_EQ(remedy.kind, RemedyKind::kPack);
  EXPECT_EQ(remedy.units, 2);
  EXPECT_TRUE(remedy.known);
  EXPECT_EQ(remedy.units_before, 6);
  EXPECT_EQ(remedy.avoided, 4) << "two pouches of one serving";
  EXPECT_EQ(remedy.cents, 400);
}

TEST(Advice, APackThatTheBookDoesNotHaveIsTheLargestThatHelps) {
  Household household = empty_record();
  food_of(household, "stew").packs = {{"Corner shop", 6, 1200}};
  const LotId lot = add_lot(household, "stew", 6, "2027-02-01", "2028-01-31", 1200);
  add(household, EntryKind::kEaten, lot, "2027-03-01", 4);
  add(household, EntryKind::kThrownOut, lot, "2028-02-20", 2);
  const Remedy remedy = only_remedy(household);
  EXPECT_EQ(remedy.kind, RemedyKind::kPack);
  EXPECT_EQ(remedy.units, 4);
  EXPECT_FALSE(remedy.known);
}

// Two packs of six say that seven at least were wanted, so no pack size saves the household from
// itself; a lower level would.
TEST(Advice, OfTwoPacksMoreThanOneWasWanted) {
  Household household = empty_record();
  food_of(household, "stew").packs = {{"Corner shop", 6, 1200}};
  const LotId lot = add_lot(household, "stew", 12, "2027-02-01", "2028-01-31", 2400);
  add(household, EntryKind::kEaten, lot, "2027-03-01", 2);
  add(household, EntryKind::kThrownOut, lot, "2028-02-20", 10);
  const Remedy remedy = only_remedy(household);
  EXPECT_EQ(remedy.kind, RemedyKind::kPar);
  EXPECT_EQ(remedy.units, 2);
  EXPECT_EQ(remedy.cents, 2000);
}

// Two are there when four more come; of these four two are thrown out. A level of four would have
// bought two.
TEST(Advice, AParLevelCountsWhatIsThere) {
  Household household = empty_record();
  const LotId first = add_lot(household, "stew", 2, "2027-02-01", "2029-01-31", 400);
  const LotId second = add_lot(household, "stew", 4, "2027-03-01", "2028-01-31", 800);
  add(household, EntryKind::kEaten, second, "2027-04-01", 2);
  add(household, EntryKind::kThrownOut, second, "2028-02-20", 2);
  const Remedy remedy = only_remedy(household);
  EXPECT_EQ(remedy.kind, RemedyKind::kPar);
  EXPECT_EQ(remedy.units, 4);
  EXPECT_EQ(remedy.avoided, 4);
  EXPECT_EQ(remedy.cents, 400);
  // With a level that was bought beyond, another level is no answer.
  food_of(household, "stew").par_level = 3;
  EXPECT_FALSE(advice_of(household).at(0).best);
  (void)first;
}

// What lay in the kit had its use there.
TEST(Advice, WhatFilledTheKitNeededToBeBought) {
  Household household = empty_record();
  food_of(household, "stew").packs = {{"Corner shop", 2, 400}};
  const LotId lot = add_lot(household, "stew", 2, "2027-02-01", "2027-09-30", 400, "bag-bo");
  add(household, EntryKind::kThrownOut, lot, "2027-10-02", 2, "bag-bo");
  const auto advice = advice_of(household);
  ASSERT_EQ(advice.size(), 1U);
  EXPECT_FALSE(advice[0].best);
}

TEST(Advice, ALotThatTurnedUpLaterIsNotTracedBack) {
  Household household = empty_record();
  food_of(household, "stew").packs = {{"Corner shop", 6, 1200}};
  const LotId lot = add_lot(household, "stew", 6, "2027-02-01", "2028-01-31", 1200);
  add(household, EntryKind::kFound, lot, "2027-02-10", 1);
  add(household, EntryKind::kEaten, lot, "2027-03-01", 4);
  add(household, EntryKind::kThrownOut, lot, "2028-02-20", 2);
  EXPECT_FALSE(advice_of(household).at(0).best);
}

// A soup that keeps for two years stands beside the stew. One of it is bought and eaten after the
// stew was thrown out.
Household stew_and_soup() {
  Household household = empty_record();
  Food soup = food_of(household, "stew");
  soup.key = FoodKey("soup");
  soup.name = "Pea soup";
  household.foods.insert(household.foods.end() - 1, soup);
  std::sort(household.foods.begin(), household.foods.end(),
            [](const Food& a, const Food& b) { return a.key < b.key; });
  const LotId stew = add_lot(household, "stew", 1, "2027-02-01", "2027-05-31", 300, "bag-bo");
  add(household, EntryKind::kThrownOut, stew, "2027-06-05", 1, "bag-bo");
  const LotId soup_lot = add_lot(household, "soup", 1, "2027-07-01", "2029-07-01", 350);
  add(household, EntryKind::kEaten, soup_lot, "2027-08-01", 1);
  return household;
}

TEST(Advice, AnotherFoodThatWouldHaveBeenEatenInPlaceOfALaterOne) {
  const Remedy remedy = only_remedy(stew_and_soup());
  EXPECT_EQ(remedy.kind, RemedyKind::kFood);
  EXPECT_EQ(remedy.food.str(), "soup");
  EXPECT_EQ(remedy.people, (std::vector<PersonKey>{PersonKey("bo"), PersonKey("ida")}));
  EXPECT_EQ(remedy.avoided, 2);
  EXPECT_EQ(remedy.cents, 300) << "what the stew cost";
}

TEST(Advice, NoFoodThatOneOfThemMustNotHave) {
  Household household = stew_and_soup();
  food_of(household, "soup").label = label_of({{"sesame", Declared::kContains}}, {Diet::kVegan});
  EXPECT_FALSE(advice_of(household).at(0).best) << "Ida avoids sesame";
  food_of(household, "soup").label.reset();
  EXPECT_FALSE(advice_of(household).at(0).best) << "nobody read the label";
}

TEST(Advice, NoFoodThatWouldHaveBeenPastItsDateToo) {
  Household household = stew_and_soup();
  household.lots.back().mark.day = parse_iso_day("2027-09-01");  // 62 days after it came
  EXPECT_FALSE(advice_of(household).at(0).best);
}

// The soup was there before the stew was thrown out: one more would have been one too many.
TEST(Advice, NoFoodThatWasBoughtBefore) {
  Household household = stew_and_soup();
  household.lots.back().received = day_at("2027-06-01");
  household.entries[2].on = day_at("2027-06-01");
  EXPECT_FALSE(advice_of(household).at(0).best);
}

TEST(Advice, NoFoodThatNobodyBoughtLater) {
  Household household = stew_and_soup();
  household.entries.back().kind = EntryKind::kGivenAway;
  EXPECT_FALSE(advice_of(household).at(0).best);
}

// Ten pouches leave the kit on 2 October with ten days left, four are eaten, six are thrown out.
Household late_review() {
  Household household = empty_record();
  household.review_events = {{ReviewEventId(1),
                              PlaceKey("kit"),
                              day_at("2027-10-02"),
                              ReviewEventKind::kStarted,
                              day_at("2027-10-02"),
                              {},
                              ""},
                             {ReviewEventId(2),
                              PlaceKey("kit"),
                              day_at("2027-10-02"),
                              ReviewEventKind::kFinished,
                              day_at("2027-10-02"),
                              {},
                              ""}};
  const LotId lot = add_lot(household, "stew", 10, "2027-04-03", "2027-10-11", 1000, "bag-bo");
  add(household, EntryKind::kMoved, lot, "2027-10-02", 10, "bag-bo").to = PlaceKey("pantry");
  add(household, EntryKind::kEaten, lot, "2027-10-05", 4).who = PersonKey("bo");
  add(household, EntryKind::kThrownOut, lot, "2027-10-20", 6);
  return household;
}

// Four in ten days is 2.8 a week: two weeks would have been 5.6 of the six, three are 8.4.
TEST(Advice, AnEarlierReviewAtThePaceTheyAte) {
  const Remedy remedy = only_remedy(late_review());
  EXPECT_EQ(remedy.kind, RemedyKind::kReview);
  EXPECT_EQ(remedy.kit.str(), "kit");
  EXPECT_EQ(remedy.weeks, 3);
  EXPECT_EQ(remedy.avoided, 12);
  EXPECT_EQ(remedy.cents, 600);
}

// Two servings of one food a week is the household's limit; Ida eats none of it, Bo one serving.
TEST(Advice, AnEarlierReviewOnlyAsFarAsMealsHaveRoom) {
  Household household = late_review();
  household.people.erase(household.people.begin() + 1);  // Ida
  household.settings.monotony = HalfServings(2);
  const Remedy remedy = only_remedy(household);
  EXPECT_EQ(remedy.weeks, 6) << "one pouch a week for six pouches";
  household.settings.monotony = HalfServings(0);
  EXPECT_FALSE(advice_of(household).at(0).best);
}

TEST(Advice, AnEarlierReviewDoesNotHelpWhatNobodyAteInTime) {
  Household household = late_review();
  household.entries[2].kind = EntryKind::kGivenAway;
  household.entries[2].who.reset();
  EXPECT_FALSE(advice_of(household).at(0).best);
}

TEST(Advice, AnEarlierReviewLeavesWhatLastsToTheNextOne) {
  Household household = late_review();
  household.lots.back().mark.day = day_at("2028-04-10");  // the next review is on 1 April 2028
  household.entries.back().on = day_at("2028-04-20");
  EXPECT_FALSE(advice_of(household).at(0).best) << "earlier, it would have stayed in the kit";
}

TEST(Advice, ThreeFoodsByMoneyThenByServings) {
  Household household = empty_record();
  for (const char* food : {"jam", "kibble", "stew"}) {
    const LotId lot = add_lot(household, food, 3, "2027-02-01", "2028-01-31", 100);
    add(household, EntryKind::kThrownOut, lot, "2028-02-20", std::string(food) == "jam" ? 1 : 2);
  }
  household.entries[2].paid_cents.reset();  // kibble, without a price
  household.entries[4].paid_cents = 900;    // stew
  const auto advice = advice_of(household);
  ASSERT_EQ(advice.size(), 3U);
  EXPECT_EQ(advice[0].food.str(), "stew");
  EXPECT_EQ(advice[1].food.str(), "jam");
  EXPECT_EQ(advice[2].food.str(), "kibble");
  const auto one = make_advice(household, 2027, std::nullopt, kToday);
  ASSERT_TRUE(one);
  EXPECT_TRUE(one->empty()) << "nothing was thrown out in 2027";
}

}  // namespace
}  // namespace larderloop
