// What is retired is named nowhere and holds nothing; what shopping found; mappings of columns.
#include "unit/core/broken_household.h"

namespace larderloop {
namespace {

const Day kGone = day_at("2026-11-01");

Person* person_in(Household& home, const char* key) {
  for (Person& each : home.people) {
    if (each.key.str() == key) return &each;
  }
  return nullptr;
}
Place* place_in(Household& home, const char* key) {
  for (Place& each : home.places) {
    if (each.key.str() == key) return &each;
  }
  return nullptr;
}
Food* food_in(Household& home, const char* key) {
  for (Food& each : home.foods) {
    if (each.key.str() == key) return &each;
  }
  return nullptr;
}

const Broken kRetired[] = {
    {"a bag of the menu", [](Household& h) { place_in(h, "ada-bag")->retired = kGone; },
     "/menu/0/place"},
    {"a place with stock", [](Household& h) { place_in(h, "top-shelf")->retired = kGone; },
     "/places/"},
    {"a food with stock",
     [](Household& h) {
       h.menu.clear();
       food_in(h, "lentil-stew")->retired = kGone;
     },
     "/foods/"},
    {"a food of the menu",
     [](Household& h) {
       h.entries.clear();
       h.menu[0].role.reset();
       h.menu[0].food = FoodKey("lentil-stew");
       food_in(h, "lentil-stew")->retired = kGone;
     },
     "/menu/0/food"},
    {"a person of the menu",
     [](Household& h) {
       h.menu[0].everyone = false;
       h.menu[0].people = {PersonKey("ben")};
       person_in(h, "ben")->retired = kGone;
     },
     "/menu/0/people"},
    {"a guest",
     [](Household& h) {
       h.menu.clear();
       h.table.clear();
       h.exceptions = {
           {day_at("2026-12-01"), day_at("2026-12-01"), {}, false, {}, {PersonKey("ben")}, ""}};
       person_in(h, "ben")->retired = kGone;
     },
     "/exceptions/0/guests"},
    {"a kit with a rule", [](Household& h) { place_in(h, "home-kit")->retired = kGone; },
     "/review_rules/0/kit"},
    {"a guest when nobody eats at home",
     [](Household& h) {
       h.exceptions = {
           {day_at("2026-12-01"), day_at("2026-12-01"), {}, true, {}, {PersonKey("ben")}, ""}};
     },
     "/exceptions/0/guests"},
    {"away and a guest",
     [](Household& h) {
       h.exceptions = {{day_at("2026-12-01"),
                        day_at("2026-12-01"),
                        {},
                        false,
                        {PersonKey("ben")},
                        {PersonKey("ben")},
                        ""}};
     },
     "/exceptions/0/guests"},
};

// The position of a food or place in its list is of no interest here, only the list.
TEST(Validate, FindsWhatIsRetiredAndStillNamed) {
  for (const Broken& each : kRetired) {
    Household home = core_household();
    ASSERT_TRUE(validate(home).empty());
    each.how(home);
    bool found = false;
    for (const Problem& problem : validate(home))
      found = found || problem.where.rfind(each.where, 0) == 0;
    EXPECT_TRUE(found) << each.name;
  }
}

TEST(Validate, WhatIsRetiredAndNamedNowhereIsInOrder) {
  Household home = core_household();
  home.menu.clear();
  home.table.clear();
  home.exceptions.clear();
  home.review_rules.clear();
  home.entries.clear();
  for (Person& each : home.people) each.retired = kGone;
  for (Food& each : home.foods) each.retired = kGone;
  for (Place& each : home.places) each.retired = kGone;
  EXPECT_TRUE(validate(home).empty());
  // An upper place may not go before what is in it.
  place_in(home, "ada-bag")->retired.reset();
  EXPECT_FALSE(validate(home).empty());
}

void add_notes(Household& home, const std::function<void(Household&)>& change) {
  home.buy_notes = {{BuyNoteId(2), FoodKey("lentil-stew"), PlaceKey("home-kit"), kGone,
                     BuyNoteKind::kNotAvailable, FoodKey(), ""}};
  home.mappings = {{"list", SheetKind::kLots, {{"Best before", "date"}}}};
  change(home);
}
const Broken kShopping[] = {
    {"id again",
     [](Household& h) {
       add_notes(h, [](Household& t) { t.buy_notes.push_back(t.buy_notes[0]); });
     },
     "/buy_notes/1/id"},
    {"no food",
     [](Household& h) {
       add_notes(h, [](Household& t) { t.buy_notes[0].food = FoodKey("soup"); });
     },
     "/buy_notes/0/food"},
    {"no kit",
     [](Household& h) {
       add_notes(h, [](Household& t) { t.buy_notes[0].kit = PlaceKey("ada-bag"); });
     },
     "/buy_notes/0/kit"},
    {"instead",
     [](Household& h) {
       add_notes(h, [](Household& t) { t.buy_notes[0].instead = FoodKey("lentil-stew"); });
     },
     "/buy_notes/0/instead"},
    {"nothing instead",
     [](Household& h) {
       add_notes(h, [](Household& t) { t.buy_notes[0].kind = BuyNoteKind::kBoughtInstead; });
     },
     "/buy_notes/0/instead"},
    {"name again",
     [](Household& h) { add_notes(h, [](Household& t) { t.mappings.push_back(t.mappings[0]); }); },
     "/mappings/1/name"},
    {"no name",
     [](Household& h) { add_notes(h, [](Household& t) { t.mappings[0].name.clear(); }); },
     "/mappings/0/name"},
    {"no columns",
     [](Household& h) { add_notes(h, [](Household& t) { t.mappings[0].columns.clear(); }); },
     "/mappings/0/columns"},
};

TEST(Validate, FindsFaultsOfShoppingAndMappings) {
  each_is_found(kShopping);
  Household home = core_household();
  add_notes(home, [](Household&) {});
  EXPECT_TRUE(validate(home).empty());
}

}  // namespace
}  // namespace larderloop
