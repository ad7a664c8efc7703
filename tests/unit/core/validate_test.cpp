// Every inconsistency of a household is found, at its place in the document.
#include "larderloop/core/words.h"
#include "unit/core/core_household.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

namespace larderloop {
namespace {

struct Broken {
  const char* name;
  std::function<void(Household&)> how;
  const char* where;
};

// After sorting the foods are: 0 canister, 1 cat-dinner, 2 formula, 3 lentil-stew, 4 opener;
// the people 0 ada, 1 ben, 2 minka; the places 0 ada-bag, 1 crate, 2 home-kit, 3 pantry, 4
// top-shelf.
void add_reading(Household& h, std::optional<LotState> state) {
  Reading reading;
  reading.id = ReadingId(static_cast<std::int64_t>(h.readings.size()) + 1);
  reading.lot = LotId(1);
  reading.on = day_at("2026-06-01");
  reading.by = "Ada";
  reading.state = state;
  h.readings.push_back(reading);
}

void add_review(Household& h, ReviewEventKind kind) {
  ReviewEvent event;
  event.id = ReviewEventId(static_cast<std::int64_t>(h.review_events.size()) + 1);
  event.kit = PlaceKey("home-kit");
  event.slot = day_at("2026-10-03");
  event.kind = kind;
  event.on = event.slot;
  h.review_events.push_back(event);
}

void add_mark(Household& h, MarkWhat what, std::int64_t halves) {
  ReviewMark mark;
  mark.id = MarkId(static_cast<std::int64_t>(h.review_marks.size()) + 1);
  mark.kit = PlaceKey("home-kit");
  mark.slot = day_at("2026-10-03");
  mark.at = h.entries[0].at;
  mark.what = what;
  mark.on = mark.slot;
  mark.amount = HalfServings(halves);
  h.review_marks.push_back(mark);
}

void add_line(Household& h, std::optional<Role> role, const char* food, bool everyone) {
  MenuLine line = h.menu[0];
  line.id = MenuLineId(static_cast<std::int64_t>(h.menu.size()) + 1);
  line.role = role;
  line.food = FoodKey(food);
  line.everyone = everyone;
  line.people.clear();
  h.menu.push_back(line);
}

void add_entry(Household& h, EntryKind kind, std::int64_t halves) {
  Entry entry = h.entries[0];
  entry.id = EntryId(static_cast<std::int64_t>(h.entries.size()) + 1);
  entry.kind = kind;
  entry.amount = HalfServings(halves);
  h.entries.push_back(entry);
}

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

const Broken kMenuAndTable[] = {
    {"line ids", [](Household& h) { h.menu.push_back(h.menu[0]); }, "/menu/1/id"},
    {"line id zero", [](Household& h) { h.menu[0].id = MenuLineId(0); }, "/menu/0/id"},
    {"line place", [](Household& h) { h.menu[0].place = PlaceKey("cellar"); }, "/menu/0/place"},
    {"line in the pantry", [](Household& h) { h.menu[0].place = PlaceKey("top-shelf"); },
     "/menu/0/place"},
    {"role and food", [](Household& h) { h.menu[0].food = FoodKey("lentil-stew"); }, "/menu/0"},
    {"neither role nor food", [](Household& h) { h.menu[0].role.reset(); }, "/menu/0"},
    {"line food",
     [](Household& h) {
       h.menu[0].role.reset();
       h.menu[0].food = FoodKey("soup");
     },
     "/menu/0/food"},
    {"conditional food",
     [](Household& h) {
       h.foods[3].needs_hot_water = true;
       h.menu[0].role.reset();
       h.menu[0].food = FoodKey("lentil-stew");
     },
     "/menu/0/food"},
    {"line person", [](Household& h) { h.menu[0].people = {PersonKey("zoe")}; }, "/menu/0/people"},
    {"nobody", [](Household& h) { h.menu[0].people.clear(); }, "/menu/0/people"},
    {"everyone and somebody", [](Household& h) { h.menu[0].everyone = true; }, "/menu/0/people"},
    {"people's food for a pet", [](Household& h) { h.menu[0].people = {PersonKey("minka")}; },
     "/menu/0/people"},
    {"pet meal for a person", [](Household& h) { h.menu[0].role = Role::kPetMeal; },
     "/menu/0/people"},
    {"pet meal for everyone", [](Household& h) { add_line(h, Role::kPetMeal, "", true); },
     "/menu/1/everyone"},
    {"a thing for somebody", [](Household& h) { h.menu[0].role = Role::kThing; }, "/menu/0/people"},
    {"water without ml", [](Household& h) { add_line(h, Role::kWater, "", true); }, "/menu/1/ml"},
    {"named water without ml", [](Household& h) { add_line(h, std::nullopt, "canister", true); },
     "/menu/1/ml"},
    {"ml of food", [](Household& h) { h.menu[0].ml = 500; }, "/menu/0/ml"},
    {"units", [](Household& h) { h.menu[0].units = 0; }, "/menu/0/units"},
    {"day", [](Household& h) { h.menu[0].day = 32; }, "/menu/0/day"},
    {"priority", [](Household& h) { h.menu[0].priority = 101; }, "/menu/0/priority"},
    {"seat twice", [](Household& h) { h.table.push_back(h.table[0]); }, "/table/1"},
    {"seat of nobody known", [](Household& h) { h.table[0].people = {PersonKey("zoe")}; },
     "/table/0/people"},
    {"seat of a pet", [](Household& h) { h.table[0].people = {PersonKey("minka")}; },
     "/table/0/people"},
    {"seat named twice",
     [](Household& h) {
       h.table[0].people = {PersonKey("ada"), PersonKey("ada")};
     },
     "/table/0/people"},
    {"exception ends first",
     [](Household& h) {
       h.exceptions = {{day_at("2026-12-02"), day_at("2026-12-01"), {}, true, {}, ""}};
     },
     "/exceptions/0/through"},
    {"exception of nothing",
     [](Household& h) {
       h.exceptions = {{day_at("2026-12-01"), day_at("2026-12-01"), {}, false, {}, ""}};
     },
     "/exceptions/0"},
    {"exception of a pet",
     [](Household& h) {
       h.exceptions = {
           {day_at("2026-12-01"), day_at("2026-12-01"), {}, false, {PersonKey("minka")}, ""}};
     },
     "/exceptions/0/away"},
};

const Broken kRecordAndReviews[] = {
    {"lot ids", [](Household& h) { h.lots.push_back(h.lots[0]); }, "/lots/1/id"},
    {"lot food", [](Household& h) { h.lots[0].food = FoodKey("soup"); }, "/lots/0/food"},
    {"mark without day", [](Household& h) { h.lots[0].mark.day.reset(); }, "/lots/0/mark/day"},
    {"no mark with day", [](Household& h) { h.lots[0].mark.kind = MarkKind::kNone; },
     "/lots/0/mark/day"},
    {"month not at its end",
     [](Household& h) {
       h.lots[0].mark.precision = Precision::kMonth;
       h.lots[0].mark.day = day_at("2027-03-30");
     },
     "/lots/0/mark/day"},
    {"year not at its end", [](Household& h) { h.lots[0].mark.precision = Precision::kYear; },
     "/lots/0/mark/day"},
    {"lot label", [](Household& h) { h.lots[0].label->read_by.clear(); }, "/lots/0/label/read_by"},
    {"reading of nothing", [](Household& h) { add_reading(h, std::nullopt); }, "/readings/0"},
    {"reading of no lot",
     [](Household& h) {
       add_reading(h, LotState::kDoubtful);
       h.readings[0].lot = LotId(7);
     },
     "/readings/0/lot"},
    {"reading ids",
     [](Household& h) {
       add_reading(h, LotState::kOk);
       add_reading(h, LotState::kOk);
       h.readings[1].id = ReadingId(1);
     },
     "/readings/1/id"},
    {"reading mark",
     [](Household& h) {
       add_reading(h, std::nullopt);
       h.readings[0].mark = DateMark{"", MarkKind::kUseBy, Precision::kDay, std::nullopt};
     },
     "/readings/0/mark/day"},
    {"reading label",
     [](Household& h) {
       add_reading(h, std::nullopt);
       h.readings[0].label = Statement{};
     },
     "/readings/0/label/read_by"},
    {"entry ids",
     [](Household& h) {
       add_entry(h, EntryKind::kFound, 4);
       h.entries[1].id = EntryId(1);
     },
     "/entries/1/id"},
    {"entry lot", [](Household& h) { h.entries[0].at.lot = LotId(7); }, "/entries/0/lot"},
    {"entry place", [](Household& h) { h.entries[0].at.place = PlaceKey("cellar"); },
     "/entries/0/place"},
    {"entry to",
     [](Household& h) {
       add_entry(h, EntryKind::kMoved, 4);
       h.entries[1].to = PlaceKey("cellar");
     },
     "/entries/1/to"},
    {"entry who",
     [](Household& h) {
       add_entry(h, EntryKind::kEaten, 4);
       h.entries[1].who = PersonKey("zoe");
     },
     "/entries/1/who"},
    {"entry paid", [](Household& h) { h.entries[0].paid_cents = -1; }, "/entries/0/paid_cents"},
    {"overdrawn", [](Household& h) { add_entry(h, EntryKind::kEaten, 20); }, "/entries/1"},
    {"corrects nothing",
     [](Household& h) {
       add_entry(h, EntryKind::kCorrected, 0);
       h.entries[1].corrects = EntryId(9);
     },
     "/entries/1"},
    {"rule of no kit", [](Household& h) { h.review_rules[0].kit = PlaceKey("pantry"); },
     "/review_rules/0/kit"},
    {"rule of nothing", [](Household& h) { h.review_rules[0].kit = PlaceKey("cellar"); },
     "/review_rules/0/kit"},
    {"two rules", [](Household& h) { h.review_rules.push_back(h.review_rules[0]); },
     "/review_rules/1/kit"},
    {"empty rule", [](Household& h) { h.review_rules[0].rule.clear(); }, "/review_rules/0/rule"},
    {"rule slack", [](Household& h) { h.review_rules[0].slack_days = 366; },
     "/review_rules/0/slack_days"},
    {"finished unstarted", [](Household& h) { add_review(h, ReviewEventKind::kFinished); },
     "/review_events/0/slot"},
    {"moved nowhere", [](Household& h) { add_review(h, ReviewEventKind::kMoved); },
     "/review_events/0/moved_to"},
    {"started elsewhere",
     [](Household& h) {
       add_review(h, ReviewEventKind::kStarted);
       h.review_events[0].moved_to = day_at("2026-10-10");
     },
     "/review_events/0/moved_to"},
    {"mark unstarted", [](Household& h) { add_mark(h, MarkWhat::kThere, 0); },
     "/review_marks/0/slot"},
    {"missing nothing",
     [](Household& h) {
       add_review(h, ReviewEventKind::kStarted);
       add_mark(h, MarkWhat::kMissing, 0);
     },
     "/review_marks/0"},
    {"redated to nothing",
     [](Household& h) {
       add_review(h, ReviewEventKind::kStarted);
       add_mark(h, MarkWhat::kRedated, 0);
     },
     "/review_marks/0/mark"},
    {"mark place",
     [](Household& h) {
       add_review(h, ReviewEventKind::kStarted);
       add_mark(h, MarkWhat::kThere, 0);
       h.review_marks[0].at.place = PlaceKey("x");
     },
     "/review_marks/0/place"},
    {"shown lot",
     [](Household& h) {
       h.shown_meals = {
           {day_at("2026-12-01"),
            Meal::kDinner,
            {{{LotId(7), PlaceKey("pantry"), std::nullopt}, PersonKey("ada"), HalfServings(2)}}}};
     },
     "/shown_meals/0/servings/0/lot"},
    {"shown person",
     [](Household& h) {
       h.shown_meals = {{day_at("2026-12-01"),
                         Meal::kDinner,
                         {{h.entries[0].at, PersonKey("zoe"), HalfServings(2)}}}};
     },
     "/shown_meals/0/servings/0/person"},
    {"stamp without key", [](Household& h) { h.feed = {{}}; }, "/feed/0"},
    {"stamp twice",
     [](Household& h) {
       h.feed = {{"a", 1, true, 0, {}, ""}, {"a", 1, false, 0, {}, ""}};
     },
     "/feed/1"},
};

template <std::size_t N>
void each_is_found(const Broken (&table)[N]) {
  for (const Broken& broken : table) {
    Household home = core_household();
    broken.how(home);
    const auto problems = validate(home);
    const auto found = std::find_if(problems.begin(), problems.end(), [&](const Problem& problem) {
      return problem.where == broken.where;
    });
    std::vector<std::string> places;
    for (const Problem& problem : problems) places.push_back(problem.where);
    ASSERT_NE(found, problems.end()) << broken.name << ": found only " << list_words(places);
    EXPECT_FALSE(found->what.empty()) << broken.name;
    EXPECT_FALSE(found->remedy.empty()) << broken.name;
  }
}

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
TEST(Validate, FindsFaultsOfMenuAndTable) {
  each_is_found(kMenuAndTable);
}
TEST(Validate, FindsFaultsOfTheRecordAndReviews) {
  each_is_found(kRecordAndReviews);
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
