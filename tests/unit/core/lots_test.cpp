// What is known of a lot today, where places are, and keys.
#include "larderloop/core/lot.h"
#include "unit/core/core_household.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

Lot lot_of(std::int64_t id, const char* food, MarkKind kind, const char* day) {
  return make_lot(id, food, kind, day);
}

Food& food_in(Household& home, const char* key) {
  return const_cast<Food&>(*find_food(home, FoodKey(key)));
}

TEST(LotFacts, PrintedDatesCountTheStorageTableOnlyWithoutOne) {
  const Household home = core_household();
  for (const MarkKind kind : kAllMarkKinds) {
    const LotFacts facts = lot_facts(home, lot_of(2, "lentil-stew", kind, "2026-09-30"));
    const bool printed = kind == MarkKind::kBestBefore || kind == MarkKind::kUseBy;
    EXPECT_EQ(facts.basis, printed ? DayBasis::kPrinted : DayBasis::kEstimated)
        << mark_kind_name(kind);
    EXPECT_EQ(facts.good_through, day_at(printed ? "2026-09-30" : "2028-05-01"))
        << mark_kind_name(kind);
    EXPECT_FALSE(facts.safety);
  }
}

TEST(LotFacts, WithoutDateAndStorageTimeNothingTells) {
  const Household home = core_household();
  const LotFacts facts = lot_facts(home, lot_of(2, "opener", MarkKind::kNone, ""));
  EXPECT_EQ(facts.basis, DayBasis::kNone);
  EXPECT_EQ(facts.good_through, std::nullopt);
  EXPECT_EQ(good_through_at(*find_food(home, FoodKey("opener")), facts, std::nullopt),
            std::nullopt);
}

TEST(LotFacts, SelfFilledWaterIsDueSixMonthsAfterFillingBoughtWaterAsPrinted) {
  Household home = core_household();
  Lot filled = lot_of(2, "canister", MarkKind::kNone, "");
  filled.received = day_at("2026-08-31");
  LotFacts facts = lot_facts(home, filled);
  EXPECT_EQ(facts.basis, DayBasis::kFilled);
  EXPECT_EQ(facts.good_through, day_at("2027-02-28"));
  food_in(home, "canister").self_filled = false;
  facts = lot_facts(home, filled);
  EXPECT_EQ(facts.basis, DayBasis::kNone);
  facts = lot_facts(home, lot_of(2, "canister", MarkKind::kBestBefore, "2028-01-31"));
  EXPECT_EQ(facts.basis, DayBasis::kPrinted);
  EXPECT_EQ(facts.good_through, day_at("2028-01-31"));
}

TEST(LotFacts, TheMarginComesOffEveryKindOfDay) {
  Household home = core_household();
  home.settings.margin_days = 10;
  EXPECT_EQ(
      lot_facts(home, lot_of(2, "lentil-stew", MarkKind::kBestBefore, "2027-03-31")).good_through,
      day_at("2027-03-21"));
  EXPECT_EQ(lot_facts(home, lot_of(2, "lentil-stew", MarkKind::kNone, "")).good_through,
            day_at("2028-04-21"));
  EXPECT_EQ(lot_facts(home, lot_of(2, "canister", MarkKind::kNone, "")).good_through,
            day_at("2026-10-22"));
}

TEST(LotFacts, UseByIsASafetyDateInTheEuAndFormulaEverywhere) {
  for (const Region region : {Region::kOther, Region::kEu, Region::kUs}) {
    Household home = core_household();
    home.settings.region = region;
    EXPECT_EQ(lot_facts(home, lot_of(2, "lentil-stew", MarkKind::kUseBy, "2027-03-31")).safety,
              region == Region::kEu);
    EXPECT_FALSE(
        lot_facts(home, lot_of(2, "lentil-stew", MarkKind::kBestBefore, "2027-03-31")).safety);
    EXPECT_TRUE(lot_facts(home, lot_of(2, "formula", MarkKind::kUseBy, "2027-03-31")).safety);
    EXPECT_TRUE(lot_facts(home, lot_of(2, "formula", MarkKind::kBestBefore, "2027-03-31")).safety);
  }
}

TEST(LotFacts, TheLatestReadingOfEachThingCounts) {
  Household home = core_household();
  home.lots.push_back(lot_of(2, "lentil-stew", MarkKind::kNone, ""));
  Reading first;
  first.id = ReadingId(1);
  first.lot = LotId(1);
  first.on = day_at("2026-06-01");
  first.mark = lot_of(1, "lentil-stew", MarkKind::kBestBefore, "2027-01-31").mark;
  first.state = LotState::kDoubtful;
  Reading second = first;
  second.id = ReadingId(2);
  second.state.reset();
  second.mark = lot_of(1, "lentil-stew", MarkKind::kUseBy, "2027-02-28").mark;
  second.label = label_read({{"soy", Declared::kContains}});
  home.readings = {first, second};
  const LotFacts facts = lot_facts(home, home.lots[0]);
  EXPECT_EQ(facts.good_through, day_at("2027-02-28"));
  EXPECT_EQ(facts.mark.kind, MarkKind::kUseBy);
  EXPECT_EQ(facts.state, LotState::kDoubtful);
  EXPECT_EQ(facts.label, second.label);
  EXPECT_EQ(facts.received, day_at("2026-05-01"));
  const LotFacts other = lot_facts(home, home.lots[1]);
  EXPECT_EQ(other.label, std::nullopt);
  EXPECT_EQ(other.state, LotState::kOk);

  const auto all = all_lot_facts(home);
  ASSERT_EQ(all.size(), 2U);
  for (std::size_t index = 0; index < 2; ++index) {
    const LotFacts one = lot_facts(home, home.lots[index]);
    EXPECT_EQ(all[index].id, one.id);
    EXPECT_EQ(all[index].good_through, one.good_through);
    EXPECT_EQ(all[index].label, one.label);
    EXPECT_EQ(all[index].state, one.state);
    EXPECT_EQ(all[index].basis, one.basis);
  }
}

TEST(GoodThroughAt, OpenedFoodEndsWithTheEarlierOfBoth) {
  const Household home = core_household();
  const Food& stew = *find_food(home, FoodKey("lentil-stew"));  // three days once opened
  LotFacts facts = lot_facts(home, home.lots[0]);
  EXPECT_EQ(good_through_at(stew, facts, std::nullopt), day_at("2027-03-31"));
  EXPECT_EQ(good_through_at(stew, facts, day_at("2026-11-20")), day_at("2026-11-23"));
  EXPECT_EQ(good_through_at(stew, facts, day_at("2027-03-30")), day_at("2027-03-31"));
  facts.good_through.reset();
  EXPECT_EQ(good_through_at(stew, facts, day_at("2026-11-20")), day_at("2026-11-23"));
  Food at_once = stew;
  at_once.storage.opened_days = 0;
  EXPECT_EQ(good_through_at(at_once, facts, day_at("2026-11-20")), day_at("2026-11-20"));
  Food thing = stew;
  thing.kind = FoodKind::kThing;
  EXPECT_EQ(good_through_at(thing, lot_facts(home, home.lots[0]), day_at("2026-11-20")),
            day_at("2027-03-31"));
}

TEST(Lookups, FindByKeyOrSayThatThereIsNone) {
  const Household home = core_household();
  EXPECT_EQ(find_person(home, PersonKey("ben"))->name, "Ben");
  EXPECT_EQ(find_person(home, PersonKey("zoe")), nullptr);
  EXPECT_EQ(find_person(home, PersonKey("")), nullptr);
  EXPECT_EQ(find_food(home, FoodKey("opener"))->kind, FoodKind::kThing);
  EXPECT_EQ(find_food(home, FoodKey("aaa")), nullptr);
  EXPECT_EQ(find_place(home, PlaceKey("crate"))->kind, PlaceKind::kBox);
  EXPECT_EQ(find_lot(home, LotId(1))->food, FoodKey("lentil-stew"));
  EXPECT_EQ(find_lot(home, LotId(2)), nullptr);
  EXPECT_EQ(find_lot(Household{}, LotId(1)), nullptr);
}

TEST(Places, KnowTheirKitTheirPathAndWhatTheyAreIn) {
  Household home = core_household();
  EXPECT_EQ(kit_of(home, PlaceKey("ada-bag")), PlaceKey("home-kit"));
  EXPECT_EQ(kit_of(home, PlaceKey("home-kit")), PlaceKey("home-kit"));
  EXPECT_TRUE(kit_of(home, PlaceKey("top-shelf")).empty());
  EXPECT_TRUE(kit_of(home, PlaceKey("nowhere")).empty());
  EXPECT_TRUE(is_within(home, PlaceKey("ada-bag"), PlaceKey("home-kit")));
  EXPECT_TRUE(is_within(home, PlaceKey("crate"), PlaceKey("crate")));
  EXPECT_FALSE(is_within(home, PlaceKey("crate"), PlaceKey("ada-bag")));
  EXPECT_FALSE(is_within(home, PlaceKey("top-shelf"), PlaceKey("home-kit")));
  EXPECT_EQ(place_path(home, PlaceKey("ada-bag")), "Home kit > Crate > Ada's bag");
  EXPECT_EQ(place_path(home, PlaceKey("nowhere")), "nowhere");
  EXPECT_EQ(places_of_kind(home, PlaceKind::kKit), (std::vector<PlaceKey>{PlaceKey("home-kit")}));
  for (Place& place : home.places) {
    if (place.key.str() == "crate") place.parent = PlaceKey("ada-bag");
  }
  EXPECT_TRUE(kit_of(home, PlaceKey("ada-bag")).empty()) << "a ring ends";
}

TEST(Keys, HaveOneForm) {
  for (const char* text :
       {"a", "0", "lentil-stew", "a-1-b", "123456789012345678901234567890123456789012345678"})
    EXPECT_TRUE(is_key(text)) << text;
  for (const char* text : {"", "-a", "a-", "a--b", "A", "a b", "a_b", "ä", "a.b",
                           "1234567890123456789012345678901234567890123456789"}) {
    EXPECT_FALSE(is_key(text)) << text;
  }
}

TEST(Keys, AreMadeFromNames) {
  const std::pair<const char*, const char*> cases[] = {
      {"Lentil pouch, 250 g", "lentil-pouch-250-g"},
      {"  Ada's bag ", "adas-bag"},
      {"Crème fraîche", "creme-fraiche"},
      {"Müsli & Nüsse", "musli-nusse"},
      {"Žemlovka Łódź", "zemlovka-lodz"},
      {"Straße", "strasse"},
      {"Smørrebrød", "smorrebrod"},
      {"水", "name"},
      {"", "name"},
      {"---", "name"}};
  for (const auto& [name, key] : cases) EXPECT_EQ(key_from_name(name, "name"), key) << name;
  const std::string cut = key_from_name(std::string(47, 'a') + " b c", "name");
  EXPECT_TRUE(is_key(cut)) << cut;
  EXPECT_EQ(cut, std::string(47, 'a'));
}

}  // namespace
}  // namespace larderloop
