// kit_household.h - small_household with a review rule, a full table, and lots in the bags: enough for reviews, plan and feed.
// Today is Saturday 3 April 2027 in these tests: the review is due, the next one is on 2 October, hold-until is 16 October 2027.
#pragma once

#include "small_household.h"

namespace larderloop {

inline const Asked kReviewDay = asked_on("2027-04-03");

// A lot of `units` of "stew" with a best-before day, received at `place` on 1 February 2027; its label says mustard.
inline LotId add_stew(Household& household, const char* best_before, const char* place, std::int64_t units,
                      std::map<std::string, Declared> declared = {{"mustard", Declared::kContains}}) {
  const NextIds ids = next_ids(household);
  Lot lot;
  lot.id = ids.lot;
  lot.food = FoodKey("stew");
  lot.mark = {best_before, MarkKind::kBestBefore, Precision::kDay, parse_iso_day(best_before)};
  lot.received = day_at("2027-02-01");
  lot.label = label_of(std::move(declared), {Diet::kVegan});
  household.lots.push_back(lot);
  Entry entry;
  entry.id = ids.entry;
  entry.on = lot.received;
  entry.written_at = midnight(entry.on);
  entry.at = {lot.id, PlaceKey(place), std::nullopt};
  entry.amount = HalfServings::units(units, 1);
  household.entries.push_back(entry);
  return lot.id;
}

// Lot 3: two pouches in Bo's bag that will not last (30 June 2027). Lot 4: one in Ida's bag that will. Lot 1 in the pantry will, too.
inline Household kit_household() {
  Household household = small_household();
  for (Food& food : household.foods) {
    if (food.key != FoodKey("stew")) continue;
    food.roles = {Role::kMain};
    food.meals = {Meal::kLunch, Meal::kDinner};
    food.packs = {{"Corner shop", 2, 500}};
    food.storage.months_short = 24;
  }
  ReviewRule rule;
  rule.kit = PlaceKey("kit");
  rule.rule = "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA";
  rule.starts = day_at("2027-04-03");
  household.review_rules = {rule};
  for (int weekday = 0; weekday < 7; ++weekday) {
    for (const Meal meal : {Meal::kLunch, Meal::kDinner}) {
      household.table.push_back({static_cast<Weekday>(weekday), meal, {PersonKey("bo"), PersonKey("ida")}});
    }
  }
  add_stew(household, "2027-06-30", "bag-bo", 2);
  add_stew(household, "2028-03-31", "bag-ida", 1);
  return household;
}

}  // namespace larderloop
