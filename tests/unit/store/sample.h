// sample.h - a household that uses every field and every word of the book at least once. Invented
// people, generic foods. tests/store_fixtures/schema-N.sql holds sample_household_of(N), this very
// household as far as schema N can say it: when the household grows, keep those files as they are.
#pragma once

#include "larderloop/core/household.h"
#include "larderloop/core/stock.h"
#include "unit/store/sample_feeds.h"

#include <cstdint>
#include <random>
#include <string>

namespace larderloop::testing {


inline Food sample_food(const char* key, FoodKind kind, std::int64_t servings) {
  Food food;
  food.key = FoodKey(key);
  food.name = std::string("Food named ") + key;
  food.kind = kind;
  food.servings = servings;
  return food;
}

inline void add_foods(Household& household) {
  Food bar = sample_food("bar", FoodKind::kFood, 1);
  bar.roles = {Role::kSnack, Role::kComfort, Role::kFruit};
  bar.infant_formula = true;
  bar.home_canned = true;
  bar.choking_risk = true;
  bar.honey = true;
  Food cat_food = sample_food("cat-food", FoodKind::kPetFood, 1);
  cat_food.species = "cat";
  cat_food.roles = {Role::kPetMeal};
  cat_food.rotate = Rotate::kNo;
  Food coffee = sample_food("coffee", FoodKind::kDrink, 4);
  coffee.roles = {Role::kDrink};
  coffee.needs_hot_water = true;
  coffee.no_cook = false;
  coffee.needs_water_ml = 200;
  coffee.refrigerate = true;
  Food lentils = sample_food("lentils", FoodKind::kFood, 3);
  lentils.name = "Linsen \"süß\"; '--' \xF0\x9F\x8D\xB2";
  lentils.gtin = "00012345678905";
  lentils.unit = "can";
  lentils.mass_g = 400;
  lentils.volume_ml = 380;
  lentils.energy_kcal = 420;
  lentils.label =
      Statement{{{"celery", Declared::kContains}, {"tree_nut:almond", Declared::kMayContain}},
                {Diet::kVegan, Diet::kVegetarian, Diet::kPescatarian, Diet::kGlutenFree,
                 Diet::kHalal, Diet::kKosher},
                "Mira",
                day("2026-03-01")};
  lentils.sodium_mg = 980;
  lentils.needs_opener = true;
  lentils.needs_spoon = true;
  lentils.staple = true;
  lentils.meals = {Meal::kBreakfast, Meal::kLunch, Meal::kDinner, Meal::kSnack};
  lentils.roles = {Role::kMain, Role::kSide};
  lentils.packs = {{"Corner shop", 6, 899}, {"", 1, 179}, {"Corner shop", 6, 899}};
  lentils.storage = {24, 60, 3, "storage table, row 7"};
  lentils.rotate = Rotate::kYes;
  lentils.par_level = 4;
  lentils.note = "two\nlines";
  Food opener = sample_food("opener", FoodKind::kThing, 1);
  opener.roles = {Role::kThing};
  opener.is_opener = true;
  opener.is_cutlery = true;
  Food water = sample_food("water", FoodKind::kWater, 1);
  water.volume_ml = 1500;
  water.self_filled = true;
  water.roles = {Role::kWater};
  Food soup = sample_food("soup", FoodKind::kFood, 2);
  soup.retired = day("2026-06-01");
  household.foods = {bar, cat_food, coffee, lentils, opener, soup, water};
}

inline void add_people(Household& household) {
  Person mira;
  mira.key = PersonKey("mira");
  mira.name = "Mira";
  mira.born = day("1984-02-29");
  mira.tolerance = HalfServings(6);
  mira.energy_kcal = 2000;
  mira.sex = Sex::kFemale;
  mira.height_cm = 171;
  mira.mass_g = 64500;
  mira.activity = Activity::kLowActive;
  mira.avoid = {{"kiwi", false}, {"milk", false}, {"sesame", true}};
  mira.diets = {Diet::kVegetarian, Diet::kHalal};
  mira.ratings = {{FoodKey("bar"), 2}, {FoodKey("coffee"), -2}, {FoodKey("lentils"), -1}};
  mira.note = "soft food";
  Person ned;
  ned.key = PersonKey("ned");
  ned.name = "Ned";
  ned.appetite = HalfServings(1);
  ned.ratings = {{FoodKey("bar"), 1}};
  Person tom;
  tom.key = PersonKey("tom");
  tom.name = "Tom";
  tom.species = "cat";
  tom.mass_g = 4200;
  ned.sex = Sex::kMale;
  ned.activity = Activity::kVeryActive;
  Person uma;
  uma.key = PersonKey("uma");
  uma.name = "Uma";
  uma.retired = day("2026-06-02");
  household.people = {mira, ned, tom, uma};
}

inline void add_places(Household& household) {
  const auto place = [](const char* key, PlaceKind kind, const char* parent) {
    Place made;
    made.key = PlaceKey(key);
    made.name = std::string("Place ") + key;
    made.kind = kind;
    made.parent = PlaceKey(parent);
    return made;
  };
  // "bag" comes before its parent in key order.
  Place bag = place("bag", PlaceKind::kBag, "box");
  Place box = place("box", PlaceKind::kBox, "kit");
  box.mass_limit_g = 12000;
  box.volume_limit_ml = 40000;
  box.hot = true;
  box.note = "in the hall";
  Place old_kit = place("old-kit", PlaceKind::kKit, "");
  old_kit.retired = day("2026-06-03");
  household.places = {bag, box, place("kit", PlaceKind::kKit, ""), old_kit,
                      place("pantry", PlaceKind::kPantry, ""),
                      place("shelf", PlaceKind::kShelf, "pantry")};
  household.review_rules = {{PlaceKey("kit"), "FREQ=MONTHLY;INTERVAL=6", day("2026-04-04"), 21}};
}

inline void add_menu_and_table(Household& household) {
  std::int64_t id = 0;
  for (const Role role : kAllRoles) {
    MenuLine line;
    line.id = MenuLineId(++id * 3);
    line.place = PlaceKey("bag");
    line.people = {PersonKey("mira"), PersonKey("ned")};
    line.day = 1;
    line.meal = kAllMeals[static_cast<std::size_t>(id) % 4];
    line.role = role;
    if (role == Role::kPetMeal) line.people = {PersonKey("tom")};
    if (role == Role::kThing) {
      line.people.clear();
      line.day = 0;
      line.meal.reset();
    }
    if (role == Role::kWater) line.ml = 3000;
    household.menu.push_back(line);
  }
  MenuLine by_food;
  by_food.id = MenuLineId(100);
  by_food.place = PlaceKey("kit");
  by_food.everyone = true;
  by_food.food = FoodKey("water");
  by_food.ml = 4000;
  by_food.priority = 7;
  household.menu.push_back(by_food);
  for (const Weekday weekday :
       {Weekday::kMonday, Weekday::kTuesday, Weekday::kWednesday, Weekday::kThursday,
        Weekday::kFriday, Weekday::kSaturday, Weekday::kSunday}) {
    for (const Meal meal : kAllMeals)
      household.table.push_back({weekday, meal, {PersonKey("mira"), PersonKey("ned")}});
  }
  household.table.back().people.clear();
  household.exceptions = {{day("2026-07-01"), day("2026-07-01"), {}, true, {}, {}, ""},
                          {day("2026-12-24"),
                           day("2026-12-26"),
                           {Meal::kDinner, Meal::kLunch},
                           false,
                           {PersonKey("ned")},
                           {PersonKey("mira")},
                           "away"}};
}

inline void add_lots(Household& household) {
  std::int64_t id = 0;
  for (const MarkKind kind : kAllMarkKinds) {
    Lot lot;
    lot.id = LotId(++id);
    lot.food = FoodKey(id % 2 == 1 ? "lentils" : "bar");
    lot.mark.kind = kind;
    if (kind != MarkKind::kNone) {
      lot.mark.text = "as printed";
      lot.mark.precision = id % 3 == 0   ? Precision::kDay
                           : id % 3 == 1 ? Precision::kMonth
                                         : Precision::kYear;
      lot.mark.day = day("2028-12-31");
    }
    lot.lot_code = "L" + std::to_string(id);
    lot.received = day("2026-04-04");
    lot.state = id % 3 == 0   ? LotState::kOk
                : id % 3 == 1 ? LotState::kDoubtful
                              : LotState::kRecalled;
    lot.note = id == 2 ? "dented" : "";
    if (id == 1)
      lot.label =
          Statement{{{"milk", Declared::kMayContain}}, {Diet::kKosher}, "Ned", day("2026-04-04")};
    if (id == 3) lot.label = Statement{{}, {}, "Ned", day("2026-04-05")};
    household.lots.push_back(lot);
  }
  Reading told;
  told.id = ReadingId(2);
  told.lot = LotId(1);
  told.on = day("2026-05-01");
  told.by = "Mira";
  told.mark =
      DateMark{"BEST BEFORE 03 2028", MarkKind::kBestBefore, Precision::kMonth, day("2028-03-31")};
  told.label = Statement{{{"milk", Declared::kContains}}, {}, "Mira", day("2026-05-01")};
  told.state = LotState::kRecalled;
  told.note = "notice in the shop";
  Reading unmarked;
  unmarked.id = ReadingId(5);
  unmarked.lot = LotId(2);
  unmarked.on = day("2026-05-02");
  unmarked.by = "Ned";
  unmarked.mark = DateMark{};
  Reading state_only;
  state_only.id = ReadingId(6);
  state_only.lot = LotId(2);
  state_only.on = day("2026-05-03");
  state_only.by = "Ned";
  state_only.state = LotState::kOk;
  household.readings = {told, unmarked, state_only};
}

inline Entry sample_entry(std::int64_t id, EntryKind kind, const char* on, std::int64_t halves) {
  Entry entry;
  entry.id = EntryId(id);
  entry.kind = kind;
  entry.on = day(on);
  entry.written_at = instant("2026-06-01T23:59:59Z");
  entry.at = {LotId(1), PlaceKey("pantry"), std::nullopt};
  entry.amount = HalfServings(halves);
  return entry;
}

// Lot 1 is of "lentils": 6 half servings a can.
inline void add_entries(Household& household) {
  Entry received = sample_entry(1, EntryKind::kReceived, "2026-04-04", 48);
  received.paid_cents = 899;
  received.note = "it's \"new\"";
  Entry moved = sample_entry(3, EntryKind::kMoved, "2026-04-05", 18);
  moved.to = PlaceKey("bag");
  Entry opened = sample_entry(4, EntryKind::kOpened, "2026-04-06", 6);
  Entry eaten = sample_entry(5, EntryKind::kEaten, "2026-04-06", 1);
  eaten.at.opened_on = day("2026-04-06");
  eaten.who = PersonKey("ned");
  eaten.meal = Meal::kSnack;
  Entry counted = sample_entry(6, EntryKind::kCounted, "2026-04-07", 12);
  counted.change = -12;
  Entry corrected = sample_entry(7, EntryKind::kCorrected, "2026-04-08", 0);
  corrected.at = {};
  corrected.corrects = EntryId(6);
  household.entries = {received,
                       moved,
                       opened,
                       eaten,
                       counted,
                       corrected,
                       sample_entry(8, EntryKind::kFound, "2026-04-09", 6),
                       sample_entry(9, EntryKind::kGivenAway, "2026-04-10", 6),
                       sample_entry(10, EntryKind::kThrownOut, "2026-04-11", 6),
                       sample_entry(11, EntryKind::kLost, "2026-04-12", 6)};
}

inline void add_reviews_and_shown(Household& household) {
  std::int64_t id = 0;
  for (const ReviewEventKind kind : {ReviewEventKind::kStarted, ReviewEventKind::kFinished,
                                     ReviewEventKind::kSkipped, ReviewEventKind::kMoved}) {
    ReviewEvent event;
    event.id = ReviewEventId(++id);
    event.kit = PlaceKey("kit");
    event.slot = day("2026-10-04");
    event.kind = kind;
    event.on = day("2026-10-03");
    if (kind == ReviewEventKind::kMoved) event.moved_to = day("2026-10-11");
    event.note = "n" + std::to_string(id);
    household.review_events.push_back(event);
  }
  id = 0;
  for (const MarkWhat what :
       {MarkWhat::kThere, MarkWhat::kMissing, MarkWhat::kDamaged, MarkWhat::kRedated}) {
    ReviewMark mark;
    mark.id = MarkId(++id);
    mark.kit = PlaceKey("kit");
    mark.slot = day("2026-10-04");
    mark.at = {LotId(1), PlaceKey("bag"), std::nullopt};
    mark.what = what;
    mark.on = day("2026-10-04");
    mark.amount = HalfServings(6);
    if (what == MarkWhat::kRedated)
      mark.mark = DateMark{"2027", MarkKind::kUseBy, Precision::kYear, day("2027-12-31")};
    household.review_marks.push_back(mark);
  }
  const ShownServing one{
      {LotId(1), PlaceKey("pantry"), day("2026-04-06")}, PersonKey("mira"), HalfServings(2)};
  const ShownServing two{
      {LotId(2), PlaceKey("pantry"), std::nullopt}, PersonKey("ned"), HalfServings(1)};
  household.kept_plans = {{"eat-down", "00ff", "waste\t12\t1\n"}};
  household.shown_meals = {{day("2026-11-25"), Meal::kBreakfast, {one, two}},
                           {day("2026-11-25"), Meal::kDinner, {}},
                           {day("2026-11-26"), Meal::kLunch, {two}}};
  household.feed = {{"meal|2026-11-25", 1, false, 3, instant("2026-11-20T06:00:00Z"), "a\r\nb"},
                    {"meal|2026-11-25", 2, true, 0, instant("2026-11-21T06:00:00Z"), ""},
                    {"review|kit|2026-10-04", 1, true, 1, instant("2026-11-21T06:00:01Z"), "text"}};
}

inline void add_wishes(Household& household) {
  const Day friday = day("2026-11-27");
  household.wishes = {
      {WishId(1), WishKind::kWant, FoodKey("bar"), friday, friday, Meal::kSnack, PersonKey("ned")},
      {WishId(2), WishKind::kWant, FoodKey("lentils"), friday, friday, Meal::kDinner, {}},
      {WishId(4), WishKind::kNot, FoodKey("lentils"), {}, {}, {}, PersonKey("mira")},
      {WishId(5),
       WishKind::kNot,
       FoodKey("coffee"),
       friday,
       friday + Days(9),
       Meal::kBreakfast,
       {}},
      {WishId(9), WishKind::kNot, FoodKey(), friday, friday, Meal::kLunch, {}}};
}

inline void add_trials(Household& household) {
  household.trials = {{TrialId(2),
                       PlaceKey("kit"),
                       day("2026-09-12"),
                       day("2026-09-13"),
                       {PersonKey("mira"), PersonKey("tom")},
                       "first"},
                      {TrialId(3), PlaceKey("kit"), day("2026-11-21"), day("2026-11-21"), {}, ""}};
  std::int64_t id = 4;
  for (const Verdict verdict : kAllVerdicts) {
    household.trial_notes.push_back({TrialNoteId(++id), TrialId(id < 8 ? 2 : 3), FoodKey("lentils"),
                                     PersonKey(id % 2 == 0 ? "mira" : "ned"), verdict,
                                     day("2026-09-13"), id == 5 ? "twice" : ""});
  }
  household.trial_ends = {{TrialId(2), day("2026-09-14"), "over"}};
}

inline void add_buying(Household& household) {
  household.buy_notes = {{BuyNoteId(1), FoodKey("lentils"), PlaceKey("kit"), day("2026-10-05"),
                          BuyNoteKind::kNotAvailable, FoodKey(), ""},
                         {BuyNoteId(3), FoodKey("lentils"), PlaceKey(), day("2026-10-06"),
                          BuyNoteKind::kBoughtInstead, FoodKey("bar"), "cheaper"}};
  std::int64_t number = 0;
  for (const SheetKind sheet : kAllSheetKinds) {
    household.mappings.push_back(
        {"m" + std::to_string(++number), sheet, {{"Best before", "date"}, {"Shelf; row", ""}}});
  }
}

inline Household sample_household() {
  Household household;
  household.book_id = "0b5c6a52-7d1e-4c36-9a57-3f1f2d1c8e44";
  household.settings = {"The attic",
                        "Europe/Lisbon",
                        Region::kEu,
                        "CHF",
                        1,
                        15,
                        31,
                        8,
                        HalfServings(9),
                        HalfServings(5),
                        3,
                        Weekday::kSunday,
                        Weekday::kTuesday,
                        DateOrder::kDmy};
  household.settings.feed = {FeedDetail::kPrivate,
                             {FeedKind::kReview, FeedKind::kShopBy, FeedKind::kGiveAway},
                             {{FeedKind::kReview, 7}, {FeedKind::kEatSoon, 1}},
                             FeedReviews::kSeries};
  household.own_allergens = {{"kiwi", day("2026-02-03")}};
  add_foods(household);
  add_people(household);
  add_places(household);
  add_menu_and_table(household);
  add_lots(household);
  add_entries(household);
  add_reviews_and_shown(household);
  add_wishes(household);
  add_trials(household);
  add_buying(household);
  add_feeds(household);
  return household;
}

// What a book of an older schema says of it.
inline Household sample_household_of(int schema) {
  Household household = sample_household();
  if (schema < 2) household.wishes.clear();
  if (schema < 3) household.kept_plans.clear();
  if (schema < 7) household.settings.feed.reviews = FeedReviews::kDated;
  if (schema < 6) {
    household.settings.feed = {};
    household.feed_addresses.clear();
    household.pushed.clear();
    household.tasks_done.clear();
  }
  if (schema < 5) {
    household.settings.date_order = DateOrder::kNone;
    household.foods.erase(household.foods.end() - 2);
    household.people.pop_back();
    household.places.erase(household.places.begin() + 3);
    household.exceptions[1].guests.clear();
    household.buy_notes.clear();
    household.mappings.clear();
  }
  if (schema < 4) {
    for (Person& person : household.people) {
      person.sex.reset();
      person.height_cm.reset();
      person.mass_g.reset();
      person.activity.reset();
    }
    for (Food& food : household.foods) {
      food.sodium_mg.reset();
      food.needs_spoon = food.refrigerate = food.choking_risk = food.honey = false;
      food.is_opener = food.is_cutlery = false;
    }
    household.trials.clear();
    household.trial_notes.clear();
    household.trial_ends.clear();
  }
  return household;
}

// Replaces the record by one of `lots` lots and about `entries` possible entries of every kind. The
// same seed gives the same.
inline void make_random_record(Household& household, std::uint64_t seed, int lots, int entries) {
  std::mt19937_64 random(seed);
  const auto below = [&](std::size_t bound) { return static_cast<std::size_t>(random() % bound); };
  household.lots.clear();
  household.readings.clear();
  household.entries.clear();
  household.review_events.clear();
  household.review_marks.clear();
  household.shown_meals.clear();
  for (int number = 1; number <= lots; ++number) {
    Lot lot;
    lot.id = LotId(number);
    lot.food = household.foods[below(household.foods.size())].key;
    lot.received = day("2026-01-01") + Days(static_cast<int>(below(100)));
    lot.mark = {"31.12.2028", MarkKind::kBestBefore, Precision::kDay, day("2028-12-31")};
    if (below(2) == 0)
      lot.label =
          Statement{{{"milk", Declared::kMayContain}}, {Diet::kVegetarian}, "Mira", lot.received};
    household.lots.push_back(lot);
  }
  Ledger ledger(household);
  std::int64_t next = 0;
  for (int turn = 0; turn < entries; ++turn) {
    Entry entry;
    entry.id = EntryId(next + 1);
    entry.kind = kAllEntryKinds[below(10)];
    entry.on = day("2026-05-01") + Days(turn / 40);
    entry.written_at = midnight(entry.on) + std::chrono::seconds(turn);
    const Lot& lot = household.lots[below(household.lots.size())];
    const std::int64_t unit = 2 * find_food(household, lot.food)->servings;
    entry.at = {lot.id, household.places[below(household.places.size())].key, std::nullopt};
    entry.amount = HalfServings(unit * static_cast<std::int64_t>(1 + below(6)));
    // Mostly something that lies somewhere, else little would be possible.
    if (!ledger.stock().empty() && below(4) != 0 && entry.kind != EntryKind::kReceived &&
        entry.kind != EntryKind::kFound) {
      auto position = ledger.stock().begin();
      std::advance(position, static_cast<std::ptrdiff_t>(below(ledger.stock().size())));
      entry.at = position->first;
      entry.amount = entry.kind == EntryKind::kOpened || below(2) == 0
                         ? HalfServings(entry.at.opened_on ? 1 : unit)
                         : position->second;
    }
    if (entry.kind == EntryKind::kMoved)
      entry.to = household.places[below(household.places.size())].key;
    if (entry.kind == EntryKind::kCounted)
      entry.change = ledger.counted_change(entry.at, entry.amount);
    if (entry.kind == EntryKind::kCorrected) {
      entry.at = {};
      entry.amount = HalfServings();
      entry.corrects =
          EntryId(static_cast<std::int64_t>(1 + below(static_cast<std::size_t>(next + 1))));
    }
    if (!ledger.apply(entry)) continue;
    household.entries.push_back(entry);
    ++next;
  }
}

}  // namespace larderloop::testing
