// Amounts in words, names of enumerations, slips of the pen, trade item numbers, amounts and
// changes.
#include "larderloop/core/words.h"

#include "larderloop/core/changes.h"
#include "unit/core/core_household.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

TEST(Plural, FollowsEnglish) {
  const std::pair<const char*, const char*> cases[] = {
      {"pouch", "pouches"}, {"can", "cans"},      {"box", "boxes"},   {"glass", "glasses"},
      {"tray", "trays"},    {"berry", "berries"}, {"loaf", "loaves"}, {"dish", "dishes"}};
  for (const auto& [one, many] : cases) {
    EXPECT_EQ(plural(one, 2), many);
    EXPECT_EQ(plural(one, 0), many);
    EXPECT_EQ(plural(one, 1), one);
    EXPECT_EQ(plural(one, -1), one);
  }
  EXPECT_EQ(plural("", 2), "");
}

TEST(UnitsWords, SayUnitsFirstAndTheRestInServings) {
  const Food jar = make_food("jam", FoodKind::kFood, 6, "jar");
  const std::pair<std::int64_t, const char*> cases[] = {{0, "no jars"},
                                                        {1, "half a serving"},
                                                        {2, "1 serving"},
                                                        {3, "1.5 servings"},
                                                        {6, "3 servings"},
                                                        {12, "1 jar"},
                                                        {18, "1 jar and 3 servings"},
                                                        {13, "1 jar and half a serving"},
                                                        {24, "2 jars"},
                                                        {-24, "minus 2 jars"}};
  for (const auto& [halves, words] : cases)
    EXPECT_EQ(units_words(jar, HalfServings(halves)), words);
  EXPECT_EQ(units_words(make_food("x", FoodKind::kFood, 1, "pouch"), HalfServings::units(2, 1)),
            "2 pouches");
}

TEST(Words, OfMoneyMassAndLists) {
  EXPECT_EQ(money_words(249, "EUR"), "2.49 EUR");
  EXPECT_EQ(money_words(5, "EUR"), "0.05 EUR");
  EXPECT_EQ(money_words(100, "USD"), "1.00 USD");
  EXPECT_EQ(money_words(-249, "EUR"), "-2.49 EUR");
  EXPECT_EQ(money_words(0, "EUR"), "0.00 EUR");
  EXPECT_EQ(mass_words(850), "850 g");
  EXPECT_EQ(mass_words(1000), "1 kg");
  EXPECT_EQ(mass_words(1200), "1.2 kg");
  EXPECT_EQ(mass_words(1005), "1.005 kg");
  EXPECT_EQ(mass_words(0), "0 g");
  EXPECT_EQ(list_words({}), "");
  EXPECT_EQ(list_words({"a"}), "a");
  EXPECT_EQ(list_words({"a", "b"}), "a and b");
  EXPECT_EQ(list_words({"a", "b", "c"}), "a, b and c");
}

template <class Enum, class Name, class Parse>
void both_ways(std::initializer_list<Enum> values, Name name, Parse parse) {
  for (const Enum value : values) {
    EXPECT_FALSE(name(value).empty());
    EXPECT_EQ(parse(name(value)), value) << name(value);
  }
  EXPECT_FALSE(parse(""));
  EXPECT_FALSE(parse("nothing"));
}

TEST(Names, OfEnumerationsAreReadBothWays) {
  using enum FoodKind;
  both_ways({kFood, kDrink, kWater, kPetFood, kThing}, food_kind_name, parse_food_kind);
  both_ways({Meal::kBreakfast, Meal::kLunch, Meal::kDinner, Meal::kSnack}, meal_name, parse_meal);
  both_ways({Role::kMain, Role::kSide, Role::kFruit, Role::kSnack, Role::kDrink, Role::kComfort,
             Role::kPetMeal, Role::kWater, Role::kThing},
            role_name, parse_role);
  both_ways(
      {PlaceKind::kKit, PlaceKind::kBox, PlaceKind::kBag, PlaceKind::kPantry, PlaceKind::kShelf},
      place_kind_name, parse_place_kind);
  both_ways({LotState::kOk, LotState::kDoubtful, LotState::kRecalled}, lot_state_name,
            parse_lot_state);
  both_ways({EntryKind::kReceived, EntryKind::kFound, EntryKind::kMoved, EntryKind::kOpened,
             EntryKind::kEaten, EntryKind::kGivenAway, EntryKind::kThrownOut, EntryKind::kLost,
             EntryKind::kCounted, EntryKind::kCorrected},
            entry_kind_name, parse_entry_kind);
  both_ways({ReviewEventKind::kStarted, ReviewEventKind::kFinished, ReviewEventKind::kSkipped,
             ReviewEventKind::kMoved},
            review_event_name, parse_review_event);
  both_ways({MarkWhat::kThere, MarkWhat::kMissing, MarkWhat::kDamaged, MarkWhat::kRedated},
            mark_what_name, parse_mark_what);
  both_ways({Sex::kFemale, Sex::kMale}, sex_name, parse_sex);
  both_ways({Activity::kInactive, Activity::kLowActive, Activity::kActive, Activity::kVeryActive},
            activity_name, parse_activity);
  both_ways({Verdict::kLiked, Verdict::kTired, Verdict::kHardToOpen, Verdict::kHardToPrepare,
             Verdict::kNeededWater, Verdict::kNotEnough},
            verdict_name, parse_verdict);
  both_ways({Region::kOther, Region::kEu, Region::kUs}, region_name, parse_region);
}

TEST(Nearest, FindsASlipAndNothingFarther) {
  const std::vector<std::string> known{"almond", "milk", "sesame", "soy"};
  EXPECT_EQ(nearest("almnod", known), "almond");  // two letters swapped
  EXPECT_EQ(nearest("sesam", known), "sesame");
  EXPECT_EQ(nearest("mlik", known), "milk");
  EXPECT_EQ(nearest("milk", known), "milk");
  EXPECT_EQ(nearest("soyy", known), "soy");
  EXPECT_EQ(nearest("banana", known), "");
  EXPECT_EQ(nearest("", known), "");
  EXPECT_EQ(nearest("milk", {}), "");
  EXPECT_EQ(nearest("cat", {"bat", "hat"}), "bat") << "the first of equals";
  EXPECT_EQ(nearest(std::string(65, 'a'), {std::string(65, 'a')}), "")
      << "too long to be looked at";
}

TEST(Gtin, IsPaddedToFourteenDigitsWhenItsCheckDigitIsRight) {
  EXPECT_EQ(normal_gtin("9520000000011"), "09520000000011");
  EXPECT_EQ(normal_gtin("95200002"), "00000095200002");
  EXPECT_EQ(normal_gtin("19520000000018"), "19520000000018");
  EXPECT_EQ(normal_gtin("400000000008"), "00400000000008");
  for (const char* text : {"", "9520000000012", "952000000001", "95200000000110", "95200000000",
                           "9520000000011 ", "952000000001a", "0", "９"}) {
    EXPECT_EQ(normal_gtin(text), "") << text;
  }
}

TEST(HalfServings, CountExactly) {
  EXPECT_EQ(HalfServings::servings(3).halves(), 6);
  EXPECT_EQ(HalfServings::units(2, 3).halves(), 12);
  EXPECT_EQ(HalfServings(13).whole_units(3), 2);
  EXPECT_EQ(HalfServings(11).whole_units(3), 1);
  EXPECT_LT(HalfServings(1), HalfServings(2));
  HalfServings amount(5);
  amount += HalfServings(2);
  amount -= HalfServings(4);
  EXPECT_EQ(amount + HalfServings(1) - HalfServings(2), HalfServings(2));
}

TEST(Changes, AreEmptyOnlyWithoutAnything) {
  EXPECT_TRUE(Changes{}.empty());
  Changes changes;
  changes.shown_meals.emplace();
  EXPECT_FALSE(changes.empty()) << "an empty plan replaces the kept one";
  changes = {};
  changes.settings.emplace();
  EXPECT_FALSE(changes.empty());
  changes = {};
  changes.feed.push_back({});
  EXPECT_FALSE(changes.empty());
}

TEST(Changes, ReplaceByKeyAddInOrderAndAppend) {
  Household home = core_household();
  Changes changes;
  Person ben = *find_person(home, PersonKey("ben"));
  ben.name = "Benno";
  Person bea;
  bea.key = PersonKey("bea");
  bea.name = "Bea";
  changes.people = {ben, bea};
  changes.foods = {make_food("aubergine", FoodKind::kFood, 1, "jar")};
  MenuLine line = home.menu[0];
  line.units = 3;
  changes.menu = {line};
  changes.lots = {make_lot(2, "lentil-stew", MarkKind::kNone, "")};
  Entry found = home.entries[0];
  found.id = EntryId(2);
  found.at.lot = LotId(2);
  changes.entries = {found};
  changes.feed = {
      {"b", 1, true, 0, {}, "x"}, {"a", 2, true, 0, {}, "y"}, {"a", 1, true, 0, {}, "z"}};
  changes.settings = Settings{};
  changes.settings->margin_days = 5;
  apply_changes(home, changes);
  ASSERT_EQ(home.people.size(), 4U);
  EXPECT_EQ(home.people[1].name, "Bea");
  EXPECT_EQ(find_person(home, PersonKey("ben"))->name, "Benno");
  EXPECT_EQ(home.foods.front().key, FoodKey("aubergine"));
  ASSERT_EQ(home.menu.size(), 1U);
  EXPECT_EQ(home.menu[0].units, 3);
  EXPECT_EQ(home.lots.back().id, LotId(2));
  EXPECT_EQ(home.entries.back().id, EntryId(2));
  EXPECT_EQ(home.settings.margin_days, 5);
  ASSERT_EQ(home.feed.size(), 3U);
  EXPECT_EQ(home.feed[0].content + home.feed[1].content + home.feed[2].content, "zyx");
  Household sorted = home;
  sort_lists(sorted);
  EXPECT_EQ(sorted, home);
  EXPECT_TRUE(validate(home).empty());

  Changes stamp;
  stamp.feed = {{"a", 2, false, 1, {}, "w"}};
  stamp.shown_meals.emplace();
  home.shown_meals.push_back({});
  apply_changes(home, stamp);
  ASSERT_EQ(home.feed.size(), 3U);
  EXPECT_EQ(home.feed[1].content, "w");
  EXPECT_TRUE(home.shown_meals.empty());
}

TEST(Changes, OfWishesReplaceThemByNumberAndTakeThemBack) {
  Household home = core_household();
  const auto not_wanted = [](std::int64_t id, const char* food) {
    return Wish{WishId(id), WishKind::kNot, FoodKey(food), {}, {}, {}, {}};
  };
  home.wishes = {not_wanted(1, "a"), not_wanted(4, "b"), not_wanted(6, "c")};
  EXPECT_EQ(next_ids(home).wish, WishId(7));
  Changes changes;
  changes.wishes = {not_wanted(4, "d"), not_wanted(7, "e")};
  changes.wishes_back = {WishId(6)};
  EXPECT_FALSE(changes.empty());
  apply_changes(home, changes);
  EXPECT_EQ(home.wishes, (std::vector<Wish>{not_wanted(1, "a"), not_wanted(4, "d"), not_wanted(7, "e")}));
  Changes back;
  back.wishes_back = {WishId(1)};
  EXPECT_FALSE(back.empty());
}

TEST(Changes, OfTheCalendarReplaceAddressesByNumberAndAllThatWasSent) {
  Household home = core_household();
  FeedAddress one;
  one.id = FeedAddressId(1);
  FeedAddress three;
  three.id = FeedAddressId(3);
  home.feed_addresses = {one, three};
  EXPECT_EQ(next_ids(home).feed_address, FeedAddressId(4));
  home.pushed = {{"c", "u", "h", "", ""}};
  home.tasks_done = {{"b", Day{}, ""}};
  one.revoked_at = Instant{};
  Changes changes;
  changes.feed_addresses = {one};
  EXPECT_FALSE(changes.empty());
  changes.tasks_done = {{"a", Day{}, ""}};
  apply_changes(home, changes);
  EXPECT_EQ(home.feed_addresses, (std::vector<FeedAddress>{one, three}));
  EXPECT_EQ(home.pushed.size(), 1U);
  EXPECT_EQ(home.tasks_done, (std::vector<TaskDone>{{"a", Day{}, ""}, {"b", Day{}, ""}}));
  Changes sent;
  sent.pushed.emplace();
  EXPECT_FALSE(sent.empty());
  apply_changes(home, sent);
  EXPECT_TRUE(home.pushed.empty());
  Changes done;
  done.tasks_done = {{"c", Day{}, ""}};
  EXPECT_FALSE(done.empty());
}

TEST(Changes, OfNothingChangeNothing) {
  Household home = core_household();
  apply_changes(home, Changes{});
  EXPECT_EQ(home, core_household());
}

TEST(NextIds, FollowTheLargestAndBeginWithOne) {
  const NextIds none = next_ids(Household{});
  EXPECT_EQ(none.lot, LotId(1));
  EXPECT_EQ(none.entry, EntryId(1));
  EXPECT_EQ(none.menu_line, MenuLineId(1));
  Household home = core_household();
  home.entries.back().id = EntryId(41);
  home.readings.push_back({});
  home.readings.back().id = ReadingId(7);
  const NextIds ids = next_ids(home);
  EXPECT_EQ(ids.entry, EntryId(42));
  EXPECT_EQ(ids.reading, ReadingId(8));
  EXPECT_EQ(ids.lot, LotId(2));
  EXPECT_EQ(ids.menu_line, MenuLineId(2));
  EXPECT_EQ(ids.mark, MarkId(1));
  EXPECT_EQ(ids.review_event, ReviewEventId(1));
}

}  // namespace
}  // namespace larderloop
