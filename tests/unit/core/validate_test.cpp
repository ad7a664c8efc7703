// Every inconsistency of a household is found, at its place in the document: settings, people,
// foods, places.
#include "unit/core/broken_household.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const Broken kSettingsAndPeople[] = {
    {"book id", [](Household& h) { h.book_id = "ours"; }, "/book_id"},
    {"book id in capitals", [](Household& h) { h.book_id[1] = 'A'; }, "/book_id"},
    {"margin", [](Household& h) { h.settings.margin_days = -1; }, "/settings/margin_days"},
    {"slack", [](Household& h) { h.settings.slack_days = 366; }, "/settings/slack_days"},
    {"donate", [](Household& h) { h.settings.donate_days = -1; }, "/settings/donate_days"},
    {"late", [](Household& h) { h.settings.late_days = 61; }, "/settings/late_days"},
    {"variety", [](Household& h) { h.settings.variety_cap = 0; }, "/settings/variety_cap"},
    {"tolerance", [](Household& h) { h.settings.tolerance = HalfServings(-1); },
     "/settings/tolerance"},
    {"monotony", [](Household& h) { h.settings.monotony = HalfServings(0); }, "/settings/monotony"},
    {"currency", [](Household& h) { h.settings.currency = "eur"; }, "/settings/currency"},
    {"own key form",
     [](Household& h) {
       h.own_allergens = {{"Kiwi", day_at("2026-01-01")}};
     },
     "/own_allergens/0/key"},
    {"own key known",
     [](Household& h) {
       h.own_allergens = {{"milk", day_at("2026-01-01")}};
     },
     "/own_allergens/0/key"},
    {"own key twice",
     [](Household& h) {
       h.own_allergens = {{"kiwi", {}}, {"kiwi", {}}};
     },
     "/own_allergens/1/key"},
    {"person key",
     [](Household& h) {
       h.people[1].key = PersonKey("Ben");
       h.table.clear();
     },
     "/people/1/key"},
    {"person twice", [](Household& h) { h.people.insert(h.people.begin(), h.people[0]); },
     "/people/1/key"},
    {"person everyone", [](Household& h) { h.people[2].key = PersonKey("everyone"); },
     "/people/2/key"},
    {"person name", [](Household& h) { h.people[1].name.clear(); }, "/people/1/name"},
    {"species", [](Household& h) { h.people[2].species.clear(); }, "/people/2/species"},
    {"appetite", [](Household& h) { h.people[0].appetite = HalfServings(21); },
     "/people/0/appetite"},
    {"person tolerance", [](Household& h) { h.people[0].tolerance = HalfServings(401); },
     "/people/0/tolerance"},
    {"energy", [](Household& h) { h.people[0].energy_kcal = -1; }, "/people/0/energy_kcal"},
    {"avoid unknown",
     [](Household& h) {
       h.people[0].avoid = {{"milkk", false}};
     },
     "/people/0/avoid/0/key"},
    {"avoid twice",
     [](Household& h) {
       h.people[0].avoid = {{"milk", false}, {"milk", true}};
     },
     "/people/0/avoid/1/key"},
    {"rating of nothing", [](Household& h) { h.people[0].ratings[FoodKey("soup")] = 1; },
     "/people/0/ratings/soup"},
    {"rating range", [](Household& h) { h.people[0].ratings[FoodKey("opener")] = 3; },
     "/people/0/ratings/opener"},
};

const Broken kFoodsAndPlaces[] = {
    {"food key", [](Household& h) { h.foods[2].key = FoodKey("for mula"); }, "/foods/2/key"},
    {"food twice", [](Household& h) { h.foods.push_back(h.foods[4]); }, "/foods/5/key"},
    {"food name", [](Household& h) { h.foods[3].name.clear(); }, "/foods/3/name"},
    {"gtin check digit", [](Household& h) { h.foods[3].gtin = "09520000000012"; }, "/foods/3/gtin"},
    {"gtin not padded", [](Household& h) { h.foods[3].gtin = "9520000000011"; }, "/foods/3/gtin"},
    {"gtin too long", [](Household& h) { h.foods[3].gtin = "0952000000001111"; }, "/foods/3/gtin"},
    {"gtin one digit", [](Household& h) { h.foods[3].gtin = "0"; }, "/foods/3/gtin"},
    {"a food that opens cans", [](Household& h) { h.foods[0].is_opener = true; }, "/foods/0/is_opener"},
    {"pet food without species", [](Household& h) { h.foods[1].species.clear(); },
     "/foods/1/species"},
    {"food with species", [](Household& h) { h.foods[3].species = "cat"; }, "/foods/3/species"},
    {"water servings", [](Household& h) { h.foods[0].servings = 2; }, "/foods/0/servings"},
    {"thing servings", [](Household& h) { h.foods[4].servings = 2; }, "/foods/4/servings"},
    {"water content", [](Household& h) { h.foods[0].volume_ml.reset(); }, "/foods/0/volume_ml"},
    {"role of people's food", [](Household& h) { h.foods[3].roles = {Role::kPetMeal}; },
     "/foods/3/roles"},
    {"role of pet food", [](Household& h) { h.foods[1].roles = {Role::kMain}; }, "/foods/1/roles"},
    {"role of water", [](Household& h) { h.foods[0].roles = {Role::kDrink}; }, "/foods/0/roles"},
    {"role of a thing", [](Household& h) { h.foods[4].roles = {Role::kComfort}; },
     "/foods/4/roles"},
    {"unit", [](Household& h) { h.foods[3].unit.clear(); }, "/foods/3/unit"},
    {"servings", [](Household& h) { h.foods[2].servings = 0; }, "/foods/2/servings"},
    {"servings too many", [](Household& h) { h.foods[2].servings = kMaxServingsPerUnit + 1; },
     "/foods/2/servings"},
    {"mass", [](Household& h) { h.foods[3].mass_g = -1; }, "/foods/3/mass_g"},
    {"volume", [](Household& h) { h.foods[3].volume_ml = 100'001; }, "/foods/3/volume_ml"},
    {"food energy", [](Household& h) { h.foods[3].energy_kcal = 20'001; }, "/foods/3/energy_kcal"},
    {"needs water", [](Household& h) { h.foods[3].needs_water_ml = -1; },
     "/foods/3/needs_water_ml"},
    {"par level", [](Household& h) { h.foods[3].par_level = -1; }, "/foods/3/par_level"},
    {"pack units",
     [](Household& h) {
       h.foods[3].packs = {{"Shop", 0, 100}};
     },
     "/foods/3/packs/0/units"},
    {"pack price",
     [](Household& h) {
       h.foods[3].packs = {{"Shop", 1, -1}};
     },
     "/foods/3/packs/0/price_cents"},
    {"storage short", [](Household& h) { h.foods[3].storage.months_short = -1; },
     "/foods/3/storage/months_short"},
    {"storage long", [](Household& h) { h.foods[3].storage.months_long = 23; },
     "/foods/3/storage/months_long"},
    {"storage opened", [](Household& h) { h.foods[3].storage.opened_days = -1; },
     "/foods/3/storage/opened_days"},
    {"label key",
     [](Household& h) {
       h.foods[3].label = label_read({{"mlik", Declared::kContains}});
     },
     "/foods/3/label/contains"},
    {"label warning key",
     [](Household& h) {
       h.foods[3].label = label_read({{"mlik", Declared::kMayContain}});
     },
     "/foods/3/label/may_contain"},
    {"label reader", [](Household& h) { h.foods[3].label = Statement{}; },
     "/foods/3/label/read_by"},
    {"label contradicts itself",
     [](Household& h) {
       h.foods[3].label = label_read({{"milk", Declared::kContains}}, {Diet::kVegan});
     },
     "/foods/3/label/suits"},
    {"place key",
     [](Household& h) {
       h.places[4].key = PlaceKey("x_y");
       h.entries.clear();
     },
     "/places/4/key"},
    {"place twice", [](Household& h) { h.places.push_back(h.places[4]); }, "/places/5/key"},
    {"place name", [](Household& h) { h.places[4].name.clear(); }, "/places/4/name"},
    {"place mass", [](Household& h) { h.places[0].mass_limit_g = -1; }, "/places/0/mass_limit_g"},
    {"place volume", [](Household& h) { h.places[0].volume_limit_ml = 1'000'001; },
     "/places/0/volume_limit_ml"},
    {"kit inside", [](Household& h) { h.places[2].parent = PlaceKey("pantry"); },
     "/places/2/parent"},
    {"shelf alone", [](Household& h) { h.places[4].parent = PlaceKey(); }, "/places/4/parent"},
    {"in nothing", [](Household& h) { h.places[4].parent = PlaceKey("cellar"); },
     "/places/4/parent"},
    {"shelf in a kit", [](Household& h) { h.places[4].parent = PlaceKey("home-kit"); },
     "/places/4/parent"},
    {"box in a box", [](Household& h) { h.places[1].parent = PlaceKey("ada-bag"); },
     "/places/1/parent"},
    {"bag in a pantry", [](Household& h) { h.places[0].parent = PlaceKey("pantry"); },
     "/places/0/parent"},
};

TEST(Validate, FindsNothingInAValidHousehold) {
  for (const Problem& problem : validate(core_household()))
    ADD_FAILURE() << problem.where << " " << problem.what;
}

TEST(Validate, FindsFaultsOfSettingsAndPeople) {
  each_is_found(kSettingsAndPeople);
}
TEST(Validate, FindsFaultsOfFoodsAndPlaces) {
  each_is_found(kFoodsAndPlaces);
}

TEST(Validate, NamesTheNearestKnownKey) {
  Household home = core_household();
  home.people[0].avoid = {{"peanutt", false}};
  home.lots[0].food = FoodKey("lentl-stew");
  const auto problems = validate(home);
  ASSERT_EQ(problems.size(), 2U);
  EXPECT_EQ(problems[0].value, "peanutt");
  EXPECT_NE(problems[0].remedy.find("'peanut'"), std::string::npos);
  EXPECT_NE(problems[1].remedy.find("'lentil-stew'"), std::string::npos);
}

TEST(Validate, AcceptsOwnAllergensMovedReviewsAndUnsortedLists) {
  Household home = core_household();
  home.own_allergens = {{"kiwi", day_at("2026-01-01")}};
  home.people[0].avoid = {{"kiwi", false}};
  add_review(home, ReviewEventKind::kMoved);
  home.review_events[0].moved_to = day_at("2026-10-10");
  add_review(home, ReviewEventKind::kStarted);
  add_mark(home, MarkWhat::kMissing, 4);
  add_review(home, ReviewEventKind::kFinished);
  std::reverse(home.people.begin(), home.people.end());
  std::reverse(home.foods.begin(), home.foods.end());
  std::reverse(home.places.begin(), home.places.end());
  for (const Problem& problem : validate(home))
    ADD_FAILURE() << problem.where << " " << problem.what;
  Household sorted = home;
  sort_lists(sorted);
  EXPECT_EQ(sorted.foods, core_household().foods);
  EXPECT_EQ(sorted.places, core_household().places);
}

TEST(Validate, ARingOfPlacesIsAFaultAndNoHang) {
  Household home = core_household();
  home.places[0].parent = PlaceKey("crate");
  home.places[1].parent = PlaceKey("ada-bag");
  EXPECT_FALSE(validate(home).empty());
}

}  // namespace
}  // namespace larderloop
