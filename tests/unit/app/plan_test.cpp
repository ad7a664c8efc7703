#include "larderloop/app/plan.h"

#include <gtest/gtest.h>

#include "kit_household.h"
#include "larderloop/app/shop.h"

namespace larderloop {
namespace {

const PlaceKey kKit("kit");

PlanReport plan_of(const Household& household, Asked asked = kReviewDay) {
  const auto plan = make_plan(household, asked);
  EXPECT_TRUE(plan) << plan.error().what;
  return plan ? plan->report : PlanReport{};
}

const Fill* fill_of(const KitPlan& kit, std::int64_t line) {
  for (const Fill& fill : kit.fills) {
    if (fill.line == MenuLineId(line)) return &fill;
  }
  return nullptr;
}

std::int64_t eaten_of(const PlanReport& plan, LotId lot) {
  std::int64_t halves = 0;
  for (const PlannedMeal& meal : plan.eat_down.meals) {
    for (const Helping& helping : meal.helpings) {
      if (helping.at.lot == lot) halves += helping.amount.halves();
    }
  }
  return halves;
}

TEST(KitPlan, FirstWhatIsThereThenThePantryThenTheShop) {
  const Household household = kit_household();
  const PlanReport plan = plan_of(household);
  ASSERT_EQ(plan.kits.size(), 1U);
  const KitPlan& kit = plan.kits.front();
  ASSERT_EQ(kit.leaves.size(), 1U);
  EXPECT_EQ(kit.leaves.front().at.lot, LotId(3));
  ASSERT_NE(fill_of(kit, 2), nullptr);
  EXPECT_EQ(fill_of(kit, 2)->from, FillFrom::kStays);
  ASSERT_NE(fill_of(kit, 1), nullptr);
  EXPECT_EQ(fill_of(kit, 1)->from, FillFrom::kPantry);
  EXPECT_EQ(fill_of(kit, 1)->at.lot, LotId(1));
  EXPECT_TRUE(kit.full());
}

TEST(KitPlan, WhatIsMissingIsBoughtInPacksWithDateAndCautions) {
  Household household = kit_household();
  household.lots.front().state = LotState::kDoubtful;  // the pantry's cannot be used
  household.menu[1].units = 3;
  const KitPlan kit = plan_of(household).kits.front();
  ASSERT_EQ(kit.buy.size(), 1U);
  const BuyLine& line = kit.buy.front();
  EXPECT_EQ(line.units, 3);  // one for Bo, two more for Ida
  EXPECT_EQ(line.packs, 2);
  EXPECT_EQ(kit.cost_cents, 1000);
  EXPECT_EQ(iso_day(line.good_through_at_least), "2027-10-16");
  EXPECT_EQ(line.for_people, (std::vector<PersonKey>{PersonKey("bo"), PersonKey("ida")}));
  EXPECT_EQ(line.must_not_say, std::vector<std::string>{"sesame"});
  EXPECT_EQ(line.nor_may_contain, std::vector<std::string>{"sesame"});
}

TEST(KitPlan, APackThatDoesNotLastAsFarAsTheBookKnowsIsNotProposed) {
  Household household = kit_household();
  household.lots.front().mark.day = day_at("2027-06-30");  // now half of the lots were bought with five months to go
  const KitPlan kit = plan_of(household).kits.front();
  EXPECT_TRUE(kit.buy.empty());
  ASSERT_EQ(kit.unmet.size(), 1U);
  EXPECT_NE(kit.unmet.front().why.find("no pack of it is known to last through Sat 16 Oct 2027"), std::string::npos);
}

TEST(KitPlan, AnUnreadLabelNeverEntersTheBagOfSomebodyWithAnAllergy) {
  Household household = kit_household();
  for (Lot& lot : household.lots) lot.label.reset();
  for (Food& food : household.foods) food.packs.clear();
  const KitPlan kit = plan_of(household).kits.front();
  EXPECT_NE(fill_of(kit, 1), nullptr) << "Bo avoids nothing";
  EXPECT_EQ(fill_of(kit, 2), nullptr) << "Ida avoids sesame";
  ASSERT_EQ(kit.label_needed.size(), 1U);
  EXPECT_EQ(kit.label_needed.front().at.place, PlaceKey("bag-ida"));
  ASSERT_EQ(kit.unmet.size(), 1U);
}

TEST(KitPlan, WhatLiesInAWrongBagIsSaid) {
  Household household = kit_household();
  add_stew(household, "2028-03-31", "bag-ida", 1, {{"sesame", Declared::kMayContain}});
  const KitPlan kit = plan_of(household).kits.front();
  ASSERT_EQ(kit.wrong_bag.size(), 1U);
  EXPECT_EQ(kit.wrong_bag.front().at.lot, LotId(5));
}

TEST(KitPlan, TwoKitsAreNotPromisedTheSameUnits) {
  Household household = kit_household();
  Place car;
  car.key = PlaceKey("car");
  car.name = "Car";
  car.kind = PlaceKind::kKit;
  household.places.push_back(car);
  MenuLine line = household.menu.front();
  line.id = MenuLineId(3);
  line.place = PlaceKey("car");
  line.units = 6;  // all that the pantry has, and the kit's first line wants one of them
  household.menu.push_back(line);
  sort_lists(household);
  std::int64_t promised = 0;
  for (const KitPlan& kit : plan_of(household).kits) {
    for (const Fill& fill : kit.fills) {
      if (fill.from == FillFrom::kPantry && fill.at.lot == LotId(1)) promised += fill.units;
    }
  }
  EXPECT_EQ(promised, 6);
}

TEST(KitPlan, WaterIsCountedInMillilitresAndFilledAfresh) {
  Household household = kit_household();
  Food jug;
  jug.key = FoodKey("jug");
  jug.name = "Water jug";
  jug.kind = FoodKind::kWater;
  jug.unit = "jug";
  jug.volume_ml = 5000;
  jug.self_filled = true;
  Food bottle = jug;
  bottle.key = FoodKey("bottle");
  bottle.name = "Bottled water";
  bottle.self_filled = false;
  bottle.volume_ml = 1500;
  bottle.packs = {{"Corner shop", 6, 300}};
  household.foods.push_back(jug);
  household.foods.push_back(bottle);
  MenuLine line;
  line.id = MenuLineId(3);
  line.place = PlaceKey("box");
  line.everyone = true;
  line.role = Role::kWater;
  line.ml = 12000;
  household.menu.push_back(line);
  sort_lists(household);
  const NextIds ids = next_ids(household);
  Lot lot;
  lot.id = ids.lot;
  lot.food = jug.key;
  lot.received = day_at("2026-10-03");
  household.lots.push_back(lot);
  Entry entry;
  entry.id = ids.entry;
  entry.on = lot.received;
  entry.at = {lot.id, PlaceKey("box"), std::nullopt};
  entry.amount = HalfServings(2);
  household.entries.push_back(entry);
  const KitPlan kit = plan_of(household).kits.front();
  EXPECT_EQ(kit.water.need_ml, 12000);
  EXPECT_EQ(kit.water.have_ml, 5000);
  ASSERT_EQ(kit.water.to_refill.size(), 1U) << "six months are over before the next review";
  ASSERT_EQ(kit.buy.size(), 1U);
  EXPECT_EQ(kit.buy.front().ml, 7000);
  EXPECT_EQ(kit.buy.front().units, 5);
  EXPECT_EQ(kit.buy.front().packs, 1);
}

TEST(EatDown, WhatLeavesTheKitIsEatenByThoseWhoMay) {
  Household household = kit_household();
  const LotId sesame = add_stew(household, "2027-05-31", "pantry", 2, {{"sesame", Declared::kContains}});
  const PlanReport plan = plan_of(household);
  EXPECT_EQ(eaten_of(plan, LotId(3)), 4);
  EXPECT_EQ(eaten_of(plan, sesame), 4);
  for (const PlannedMeal& meal : plan.eat_down.meals) {
    for (const Helping& helping : meal.helpings) {
      if (helping.at.lot == sesame) {
        EXPECT_EQ(helping.person, PersonKey("bo"));
      }
    }
  }
}

TEST(EatDown, TheRecordOfThisWeekCountsTowardsItsLimits) {
  Household household = kit_household();
  household.settings.monotony = HalfServings(2);  // one stew a week each
  Entry eaten;
  eaten.id = next_ids(household).entry;
  eaten.kind = EntryKind::kEaten;
  eaten.on = kReviewDay.today;
  eaten.at = {LotId(3), PlaceKey("bag-bo"), std::nullopt};
  eaten.amount = HalfServings(2);
  eaten.who = PersonKey("bo");
  eaten.meal = Meal::kLunch;
  household.entries.push_back(eaten);
  for (const PlannedMeal& meal : plan_of(household).eat_down.meals) {
    for (const Helping& helping : meal.helpings) {
      if (helping.person == PersonKey("bo")) {
        EXPECT_GE(meal.day, day_at("2027-04-05")) << "Bo had his stew of the week";
      }
    }
  }
}

TEST(EatDown, NobodyAtHomeNobodyPlanned) {
  Household household = kit_household();
  household.exceptions = {{day_at("2027-04-03"), day_at("2027-04-11"), {}, true, {}, {}, "away"}};
  for (const PlannedMeal& meal : plan_of(household).eat_down.meals) EXPECT_GT(meal.day, day_at("2027-04-11"));
}

TEST(EatDown, PastRecalledAndDoubtfulAreTold) {
  Household household = kit_household();
  const LotId past = add_stew(household, "2027-03-01", "pantry", 1);
  const LotId recalled = add_stew(household, "2028-03-01", "pantry", 1);
  household.lots.back().state = LotState::kRecalled;
  const PlanReport plan = plan_of(household);
  ASSERT_EQ(plan.eat_down.past.size(), 1U);
  EXPECT_EQ(plan.eat_down.past.front().at.lot, past);
  EXPECT_FALSE(plan.eat_down.past.front().safety);
  ASSERT_EQ(plan.eat_down.waiting.size(), 1U);
  EXPECT_EQ(plan.eat_down.waiting.front().at.lot, recalled);
  EXPECT_EQ(eaten_of(plan, past) + eaten_of(plan, recalled), 0);
}

TEST(EatDown, WhatNobodyMayEatIsGivenAwayInTime) {
  Household household = kit_household();
  for (Person& person : household.people) person.ratings[FoodKey("stew")] = -2;
  const PlanReport plan = plan_of(household);
  ASSERT_FALSE(plan.eat_down.give_away.empty());
  EXPECT_EQ(iso_day(plan.eat_down.give_away.front().by), "2027-05-31") << "30 days before 30 June";
  EXPECT_TRUE(plan.eat_down.meals.empty());
}

TEST(EatDown, TheShownPlanStaysAndAChangeIsSaid) {
  Household household = kit_household();
  auto first = make_plan(household, kReviewDay);
  ASSERT_TRUE(first);
  household = after(household, first->changes);
  ASSERT_FALSE(household.shown_meals.empty());
  const auto again = make_plan(household, kReviewDay);
  EXPECT_TRUE(again->changes.empty());
  EXPECT_TRUE(again->report.eat_down.changed.empty());
  Reading recalled;
  recalled.id = next_ids(household).reading;
  recalled.lot = household.shown_meals.front().servings.front().at.lot;
  recalled.on = kReviewDay.today;
  recalled.state = LotState::kRecalled;
  household.readings.push_back(recalled);
  const auto changed = make_plan(household, kReviewDay);
  ASSERT_FALSE(changed->report.eat_down.changed.empty());
  EXPECT_NE(changed->report.eat_down.changed.front().find("was set aside"), std::string::npos);
}

TEST(Shop, GroupsByShopAndTopsUpThePantryWhenAsked) {
  Household household = kit_household();
  household.lots.front().state = LotState::kDoubtful;
  for (Food& food : household.foods) {
    if (food.key == FoodKey("jam")) {
      food.par_level = 5;
      food.packs = {{"Market hall", 1, 300}};
    }
  }
  const PlanReport plan = plan_of(household);
  const ShopList kits = shop_list(household, plan, false);
  ASSERT_EQ(kits.groups.size(), 1U);
  EXPECT_EQ(kits.groups.front().shop, "Corner shop");
  const ShopList all = shop_list(household, plan, true);
  ASSERT_EQ(all.groups.size(), 2U);
  EXPECT_EQ(all.groups.back().lines.front().units, 3) << "five jars, two are there";
  EXPECT_EQ(all.cost_cents, kits.cost_cents + 900);
}

TEST(Shop, TheDayIsAShoppingDayOnOrBeforeTheNeed) {
  const Settings settings;  // Saturdays
  EXPECT_EQ(iso_day(shop_by_day(settings, day_at("2027-04-07"), day_at("2027-03-29"))), "2027-04-03");
  EXPECT_EQ(iso_day(shop_by_day(settings, day_at("2027-04-03"), day_at("2027-04-03"))), "2027-04-03");
  EXPECT_EQ(iso_day(shop_by_day(settings, day_at("2027-04-03"), day_at("2027-04-06"))), "2027-04-10");
}

}  // namespace
}  // namespace larderloop
