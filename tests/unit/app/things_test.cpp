#include "larderloop/app/things.h"

#include "larderloop/app/find.h"
#include "larderloop/app/look.h"
#include "larderloop/app/placing.h"
#include "small_household.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const Asked kAsked = asked_on("2027-03-01");

TEST(Find, ByKeyNameAndNumber) {
  const Household household = small_household();
  EXPECT_EQ((*named_person(household, "ida"))->key, PersonKey("ida"));
  EXPECT_EQ((*named_person(household, "IDA"))->key, PersonKey("ida"));
  EXPECT_EQ((*named_food(household, "lentil stew"))->key, FoodKey("stew"));
  EXPECT_EQ((*named_place(household, "Ida's bag"))->key, PlaceKey("bag-ida"));
  for (const char* text : {"1", "#1", "lot 1", "stew", "Lentil stew"})
    EXPECT_EQ((*named_lot(household, text))->id, LotId(1)) << text;
  for (const char* text : {"", "0", "3", "-1", "1.0", "kibble"}) {
    const auto lot = named_lot(household, text);
    ASSERT_FALSE(lot) << text;
    EXPECT_EQ(lot.error().kind, ErrorKind::kNotFound) << text;
  }
  // As long as a scan, and not one: told so.
  EXPECT_EQ(named_lot(household, "99999999999999999999").error().kind, ErrorKind::kBadData);
  const auto slip = named_person(household, "idda");
  ASSERT_FALSE(slip);
  EXPECT_EQ(slip.error().next_step, "did you mean 'ida'?");
}

TEST(Find, AmbiguousNamesAreNotGuessed) {
  Household household = small_household();
  Person other = household.people.front();
  other.key = PersonKey("bo-2");
  other.name = "Ida";
  household.people.insert(household.people.begin() + 1, other);
  const auto found = named_person(household, "Ida");
  ASSERT_FALSE(found);
  EXPECT_EQ(found.error().kind, ErrorKind::kBadData);
  EXPECT_NE(found.error().next_step.find("bo-2, ida"), std::string::npos);
  EXPECT_TRUE(named_person(household, "ida"));  // a key is never ambiguous
}

TEST(Things, AnUnknownAllergenIsASlipUntilItIsNamedAsOnesOwn) {
  Person person;
  person.name = "Eva";
  person.avoid = {{"kiwi", false}};
  EXPECT_FALSE(add_person(small_household(), person, {}, kAsked));
  const auto added = add_person(small_household(), person, {"kiwi"}, kAsked);
  ASSERT_TRUE(added);
  EXPECT_EQ(added->report.own_allergens, std::vector<std::string>{"kiwi"});
  const Household household = after(small_household(), added->changes);
  EXPECT_EQ(household.own_allergens, (std::vector<OwnAllergen>{{"kiwi", kAsked.today}}));
}

TEST(Things, ANewAvoidItemNamesTheLotsThatAreWrongFromNowOn) {
  Household household = small_household();
  household.entries.front().at.place = PlaceKey("bag-bo");
  Person bo = household.people.front();
  bo.avoid = {{"mustard", false}};
  const auto changed = change_person(household, bo, {}, kAsked);
  ASSERT_TRUE(changed);
  EXPECT_EQ(changed->report.now_wrong, std::vector<LotId>{LotId(1)});
}

TEST(Things, ALotIsWrittenWithItsReceivedEntry) {
  NewLot request;
  request.food = FoodKey("stew");
  request.units = 3;
  request.at = PlaceKey("bag-ida");
  request.mark = {"2028-05", MarkKind::kBestBefore, Precision::kMonth, day_at("2028-05-31")};
  EXPECT_FALSE(add_lot(small_household(), request, kAsked));  // unread, and Ida eats from there
  request.label = LabelRead{};
  request.label->read_by = "Bo";
  request.label->same_as_food = true;
  const auto added = add_lot(small_household(), request, kAsked);
  ASSERT_TRUE(added);
  EXPECT_EQ(added->report.lot.id, LotId(3));
  EXPECT_EQ(added->report.received.amount, HalfServings(6));
  EXPECT_FALSE(added->report.label->differs);
  EXPECT_EQ(added->report.lot.label->read_on, kAsked.today);
  EXPECT_EQ(added->report.facts.good_through, day_at("2028-05-31"));
  (void)after(small_household(), added->changes);
}

TEST(Things, ADifferentLabelSaysWhomItConcernsAndBecomesTheFoodsLast) {
  NewLot request;
  request.food = FoodKey("stew");
  request.units = 1;
  request.at = PlaceKey("pantry");
  request.label = LabelRead{"Bo", false, {"mustard"}, {"sesame"}, {}};
  const auto added = add_lot(small_household(), request, kAsked);
  ASSERT_TRUE(added);
  EXPECT_TRUE(added->report.label->differs);
  ASSERT_EQ(added->report.label->must_not.size(), 1U);
  EXPECT_EQ(added->report.label->must_not.front().person, PersonKey("ida"));
  EXPECT_EQ(added->report.label->must_not.front().reason,
            (RefusalReason{Refusal::kMayContain, "sesame"}));
  const Household household = after(small_household(), added->changes);
  EXPECT_EQ(find_food(household, FoodKey("stew"))->label->declared.at("sesame"),
            Declared::kMayContain);
}

TEST(Things, SameAsBeforeNeedsABefore) {
  LotLearnt request;
  request.lot = LotId(2);
  request.label = LabelRead{"Bo", true, {}, {}, {}};
  EXPECT_FALSE(read_lot(small_household(), request, kAsked));
  request.label = LabelRead{"", false, {}, {}, {}};
  EXPECT_FALSE(read_lot(small_household(), request, kAsked));
}

TEST(Things, AReadingThatMakesAPlaceWrongSaysWhere) {
  Household household = small_household();
  household.entries.front().at.place = PlaceKey("bag-ida");
  LotLearnt request;
  request.lot = LotId(1);
  request.label = LabelRead{"Bo", false, {"sesame"}, {}, {}};
  const auto read = read_lot(household, request, kAsked);
  ASSERT_TRUE(read);
  ASSERT_EQ(read->report.now_wrong.size(), 1U);
  EXPECT_EQ(read->report.now_wrong.front().first, PlaceKey("bag-ida"));
  EXPECT_EQ(read->changes.readings.size(), 1U);
}

TEST(Placing, ACatsFoodLiesBesidePeoplesFoodWhereTheCatEats) {
  Household household = small_household();
  const Food& kibble = *find_food(household, FoodKey("kibble"));
  EXPECT_FALSE(refusals_at(household, kibble, nullptr, PlaceKey("bag-bo"), kAsked.today).empty());
  MenuLine line = household.menu.front();
  line.id = MenuLineId(3);
  line.people = {PersonKey("tomte")};
  line.role = Role::kPetMeal;
  household.menu.push_back(line);
  EXPECT_TRUE(refusals_at(household, kibble, nullptr, PlaceKey("bag-bo"), kAsked.today).empty());
  EXPECT_TRUE(refusals_at(household, *find_food(household, FoodKey("stew")),
                          &*household.lots.front().label, PlaceKey("bag-bo"), kAsked.today)
                  .empty());
}

TEST(Look, LotsAreSoonestFirstAndNamedWhereTheyAreWrong) {
  Household household = small_household();
  household.lots[1].mark = {"2027-05-01", MarkKind::kBestBefore, Precision::kDay,
                            day_at("2027-05-01")};
  household.entries[1].at.place = PlaceKey("bag-ida");
  const auto rows = list_lots(household, {}, kAsked.today);
  ASSERT_TRUE(rows);
  ASSERT_EQ(rows->size(), 2U);
  EXPECT_EQ(rows->front().facts.id, LotId(2));
  EXPECT_EQ(rows->front().lies.front().must_not.size(), 1U);
  EXPECT_TRUE(rows->back().lies.front().must_not.empty());
  const auto ida = show_person(household, PersonKey("ida"), kAsked.today);
  ASSERT_TRUE(ida);
  EXPECT_EQ(ida->wrong.size(), 1U);
  EXPECT_EQ(ida->eats_from, std::vector<PlaceKey>{PlaceKey("bag-ida")});
}

}  // namespace
}  // namespace larderloop
