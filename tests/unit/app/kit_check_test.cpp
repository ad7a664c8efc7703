// What the check of a kit finds in a small kit, one thing at a time. The mutations of a whole kit
// are tests/property/kit_check_mutations_test.cpp. Today is Saturday 3 April 2027, hold-until is 16
// October 2027; see kit_household.h.
#include "larderloop/app/kit_check.h"

#include "kit_household.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace larderloop {
namespace {

KitCheck checked(const Household& household) {
  auto check = check_kit(household, PlaceKey("kit"), kReviewDay.today);
  EXPECT_TRUE(check) << check.error().what;
  return *check;
}

// Findings of one topic at one place, as "must" or "note", one after the other.
std::string found(const KitCheck& check, Topic topic, const char* place) {
  std::string text;
  for (const KitFinding& each : check.findings) {
    if (each.topic == topic && each.place == PlaceKey(place))
      text += std::string(text.empty() ? "" : " ") + std::string(gravity_name(each.gravity));
  }
  return text;
}

Lot& lot_of(Household& household, std::int64_t id) {
  return *std::find_if(household.lots.begin(), household.lots.end(),
                       [&](const Lot& each) { return each.id == LotId(id); });
}

Food& food_of(Household& household, const char* key) {
  return *std::find_if(household.foods.begin(), household.foods.end(),
                       [&](const Food& each) { return each.key == FoodKey(key); });
}

TEST(KitCheck, WhatWillNotLastMustGoAndWhatLastsStays) {
  const KitCheck check = checked(kit_household());
  EXPECT_NE(found(check, Topic::kDate, "bag-bo"), "");
  EXPECT_EQ(found(check, Topic::kDate, "bag-ida"), "");
  EXPECT_FALSE(check.ready());
}

TEST(KitCheck, TheHoldUntilDayItselfIsLongEnough) {
  Household household = kit_household();
  lot_of(household, 3).mark.day = day_at("2027-10-16");
  EXPECT_EQ(found(checked(household), Topic::kDate, "bag-bo"), "");
  lot_of(household, 3).mark.day = day_at("2027-10-15");
  EXPECT_EQ(found(checked(household), Topic::kDate, "bag-bo"), "must");
}

TEST(KitCheck, AnAllergenIsAMustWhereItsPersonEatsAndNowhereElse) {
  Household household = kit_household();
  for (const std::int64_t lot : {3, 4})
    lot_of(household, lot).label = label_of({{"sesame", Declared::kMayContain}});
  const KitCheck check = checked(household);
  EXPECT_EQ(found(check, Topic::kAllergen, "bag-ida"), "must");
  EXPECT_EQ(found(check, Topic::kAllergen, "bag-bo"), "");
}

TEST(KitCheck, AnUnreadLabelIsAMustOnlyForWhoAvoidsSomething) {
  Household household = kit_household();
  for (const std::int64_t lot : {3, 4}) lot_of(household, lot).label.reset();
  const KitCheck check = checked(household);
  EXPECT_EQ(found(check, Topic::kLabel, "bag-ida"), "must");
  EXPECT_EQ(found(check, Topic::kLabel, "bag-bo").find("must"), std::string::npos);
}

TEST(KitCheck, ADoubtfulOrRecalledLotMustGo) {
  for (const LotState state : {LotState::kDoubtful, LotState::kRecalled}) {
    Household household = kit_household();
    lot_of(household, 4).state = state;
    const KitCheck check = checked(household);
    EXPECT_EQ(found(check, Topic::kState, "bag-ida"), "must") << lot_state_name(state);
    EXPECT_NE(found(check, Topic::kMenu, "bag-ida"), "") << "it fills no line";
  }
}

TEST(KitCheck, ATinNeedsItsOpenerInTheVerySameBag) {
  Household household = kit_household();
  food_of(household, "stew").needs_opener = true;
  const KitCheck without = checked(household);
  EXPECT_EQ(found(without, Topic::kUse, "bag-bo"), "must");
  EXPECT_EQ(found(without, Topic::kUse, "bag-ida"), "must");
  Food opener;
  opener.key = FoodKey("opener");
  opener.name = "Can opener";
  opener.kind = FoodKind::kThing;
  opener.is_opener = true;
  household.foods.insert(household.foods.begin() + 2, opener);
  Lot lot;
  lot.id = next_ids(household).lot;
  lot.food = opener.key;
  lot.received = day_at("2027-02-01");
  Entry entry;
  entry.id = next_ids(household).entry;
  entry.on = lot.received;
  entry.written_at = midnight(entry.on);
  entry.at = {lot.id, PlaceKey("bag-bo"), std::nullopt};
  entry.amount = HalfServings(2);
  household.lots.push_back(lot);
  household.entries.push_back(entry);
  const KitCheck with = checked(household);
  EXPECT_EQ(found(with, Topic::kUse, "bag-bo"), "");
  EXPECT_EQ(found(with, Topic::kUse, "bag-ida"), "must");
}

TEST(KitCheck, FoodThatHasToBeCookedMustGo) {
  Household household = kit_household();
  food_of(household, "stew").no_cook = false;
  const KitCheck check = checked(household);
  EXPECT_NE(found(check, Topic::kUse, "bag-ida").find("must"), std::string::npos);
  EXPECT_NE(found(check, Topic::kMenu, "bag-ida").find("must"), std::string::npos);
}

TEST(KitCheck, EverythingFoundSaysWhatToDo) {
  const KitCheck check = checked(kit_household());
  ASSERT_FALSE(check.findings.empty());
  for (const KitFinding& each : check.findings) {
    EXPECT_FALSE(each.what.empty());
    EXPECT_FALSE(each.todo.empty() && each.gravity == Gravity::kMust) << each.what;
  }
  EXPECT_EQ(check_kit(kit_household(), PlaceKey("attic"), kReviewDay.today).error().kind,
            ErrorKind::kNotFound);
}

}  // namespace
}  // namespace larderloop
