// Changes, all or nothing.
#include "larderloop/core/changes.h"
#include "unit/store/sample.h"
#include "unit/store/workshop.h"

namespace larderloop::testing {
namespace {

class Writing : public ::testing::Test {
 protected:
  void SetUp() override { ASSERT_TRUE(is_done(Book::create(path_, before_, {}))); }
  Folder folder_;
  std::string path_ = folder_.file("household.book");
  Household before_ = sample_household();
};

Changes all_kinds_of_changes(const Household& household) {
  Changes changes;
  changes.settings = household.settings;
  changes.settings->name = "Moved";
  changes.settings->margin_days = 7;
  changes.own_allergens = {{"kiwi", day("2026-11-01")}, {"lychee", day("2026-11-02")}};
  Person mira = household.people[0];
  mira.avoid = {{"peanut", false}};
  mira.diets = {Diet::kVegan};
  mira.ratings = {{FoodKey("apple"), 2}};
  mira.born.reset();
  Person new_one;
  new_one.key = PersonKey("alba");
  new_one.name = "Alba";
  changes.people = {mira, new_one};
  Food apple = sample_food("apple", FoodKind::kFood, 1);
  apple.label =
      Statement{{{"gluten", Declared::kMayContain}}, {Diet::kVegan}, "Ned", day("2026-11-02")};
  Food lentils = household.foods[3];
  lentils.label->declared = {{"mustard", Declared::kContains}};
  lentils.packs.pop_back();
  lentils.meals = {Meal::kLunch};
  lentils.roles.clear();
  Food bar = household.foods[0];
  bar.label = Statement{{}, {}, "Ned", day("2026-11-02")};
  changes.foods = {apple, lentils, bar};
  Place car = household.places[2];
  car.key = PlaceKey("car-kit");
  Place bag = household.places[0];
  bag.parent = PlaceKey("car-box");
  Place car_box = household.places[1];
  car_box.key = PlaceKey("car-box");
  car_box.parent = PlaceKey("car-kit");
  changes.places = {bag, car_box, car};
  changes.review_rules = {{PlaceKey("kit"), "FREQ=YEARLY", day("2027-01-01"), std::nullopt},
                          {PlaceKey("car-kit"), "FREQ=YEARLY", day("2027-01-02"), 3}};
  MenuLine line = household.menu[0];
  line.role.reset();
  line.food = FoodKey("apple");
  line.people = {PersonKey("alba")};
  MenuLine new_line = line;
  new_line.id = next_ids(household).menu_line;
  changes.menu = {line, new_line};
  Wish wish = household.wishes[0];
  wish.food = FoodKey("apple");
  Wish new_wish = wish;
  new_wish.id = next_ids(household).wish;
  new_wish.person = PersonKey("alba");
  changes.wishes = {wish, new_wish};
  changes.wishes_back = {household.wishes[1].id, household.wishes[4].id};
  Lot lot = household.lots[0];
  lot.id = next_ids(household).lot;
  Reading reading = household.readings[0];
  reading.id = next_ids(household).reading;
  reading.lot = lot.id;
  changes.lots = {lot};
  changes.readings = {reading};
  Entry entry =
      sample_entry(next_ids(household).entry.value(), EntryKind::kReceived, "2026-11-03", 12);
  entry.at.lot = lot.id;
  changes.entries = {entry};
  ReviewEvent event = household.review_events[0];
  event.id = next_ids(household).review_event;
  changes.review_events = {event};
  ReviewMark mark = household.review_marks[3];
  mark.id = next_ids(household).mark;
  changes.review_marks = {mark};
  Trial trial = household.trials[0];
  trial.id = next_ids(household).trial;
  TrialNote note = household.trial_notes[0];
  note.id = next_ids(household).trial_note;
  note.trial = trial.id;
  changes.trials = {trial};
  changes.trial_notes = {note};
  changes.trial_ends = {{household.trials[1].id, note.on, ""}};
  BuyNote bought = household.buy_notes[1];
  bought.id = next_ids(household).buy_note;
  changes.buy_notes = {bought};
  changes.mappings = {{"m2", SheetKind::kLots, {{"Haltbar bis", "date"}}},
                      {"shop", SheetKind::kFoods, {{"a", "name"}}}};
  changes.mappings_back = {"m1"};
  changes.menu_back = {household.menu[1].id, household.menu[2].id};
  changes.table = std::vector<TableSeat>{{Weekday::kFriday, Meal::kLunch, {PersonKey("alba")}}};
  changes.exceptions = std::vector<TableException>{
      {day("2026-12-01"), day("2026-12-02"), {Meal::kLunch}, false, {}, {PersonKey("alba")}, "n"}};
  changes.places[0].note = "m";
  changes.places.push_back(household.places[3]);
  changes.places.back().retired.reset();
  changes.shown_meals = std::vector<ShownMeal>{household.shown_meals[2]};
  FeedStamp stamp = household.feed[1];
  stamp.sequence = 9;
  stamp.content = "changed";
  stamp.in_feed = false;
  FeedStamp new_stamp = stamp;
  new_stamp.generation = 3;
  changes.feed = {stamp, new_stamp};
  changes.settings = household.settings;
  changes.settings->feed = {FeedDetail::kFull, {FeedKind::kEatSoon}, {{FeedKind::kShopBy, 30}}};
  FeedAddress address = household.feed_addresses[1];
  address.revoked_at = instant("2026-11-25T08:00:00Z");
  FeedAddress new_address = household.feed_addresses[1];
  new_address.id = next_ids(household).feed_address;
  new_address.token_sha256 = std::string(64, 'b');
  changes.feed_addresses = {address, new_address};
  changes.pushed = std::vector<PushedItem>{household.pushed[1]};
  changes.tasks_done = {{"0", day("2026-11-25"), "first by its identity"}};
  return changes;
}

TEST_F(Writing, TheBookAfterwardsIsTheHouseholdAfterTheChanges) {
  const Changes changes = all_kinds_of_changes(before_);
  ASSERT_TRUE(is_done(write_to(path_, changes)));
  Household expected = before_;
  apply_changes(expected, changes);
  const auto loaded = load_from(path_);
  ASSERT_TRUE(is_done(loaded));
  EXPECT_EQ(loaded->people, expected.people);
  EXPECT_EQ(loaded->foods, expected.foods);
  EXPECT_EQ(loaded->feed, expected.feed);
  EXPECT_EQ(loaded->wishes, expected.wishes);
  EXPECT_EQ(loaded->wishes.size(), 4U);
  EXPECT_EQ(*loaded, expected);
  EXPECT_TRUE(check_of(path_)->empty());
}

TEST_F(Writing, ALabelThatAFoodNoLongerHasLeavesNothingBehind) {
  Changes changes;
  changes.foods = {before_.foods[3]};
  for (int time = 0; time < 3; ++time) ASSERT_TRUE(is_done(write_to(path_, changes)));
  changes.foods[0].label.reset();
  ASSERT_TRUE(is_done(write_to(path_, changes)));
  // Three labels of lots and readings stay: lots 1 and 3, reading 2.
  EXPECT_EQ(raw_sql(path_,
                    "CREATE TEMP TABLE t (n INTEGER CHECK (n = 3)); INSERT INTO t SELECT count(*) "
                    "FROM statement"),
            "");
  EXPECT_FALSE(load_from(path_)->foods[3].label);
}

TEST_F(Writing, SeesItsOwnChangesAndOthersDoNotUntilItIsDone) {
  auto book = Book::open(path_, {});
  auto reader = Book::open_read_only(path_, {});
  ASSERT_TRUE(is_done(book));
  ASSERT_TRUE(is_done(reader));
  {
    auto write = book->begin_write();
    ASSERT_TRUE(is_done(write));
    const Changes changes = all_kinds_of_changes(before_);
    ASSERT_TRUE(is_done(write->apply(changes)));
    Household expected = before_;
    apply_changes(expected, changes);
    EXPECT_EQ(*write->load(), expected);
    EXPECT_EQ(*reader->load(), before_);
    Changes more;
    more.entries = {
        sample_entry(next_ids(expected).entry.value(), EntryKind::kFound, "2026-11-04", 6)};
    ASSERT_TRUE(is_done(write->apply(more)));
    apply_changes(expected, more);
    ASSERT_TRUE(is_done(write->commit()));
    EXPECT_EQ(*reader->load(), expected);
    EXPECT_FALSE(write->commit()) << "a write is committed once";
  }
}

TEST_F(Writing, WithoutCommitNothingHappened) {
  {
    auto book = Book::open(path_, {});
    ASSERT_TRUE(is_done(book));
    auto write = book->begin_write();
    ASSERT_TRUE(is_done(write));
    ASSERT_TRUE(is_done(write->apply(all_kinds_of_changes(before_))));
  }
  EXPECT_EQ(*load_from(path_), before_);
}

TEST_F(Writing, ChangesThatDoNotFitAreRefusedWhole) {
  const auto refused = [&](const Changes& changes) {
    EXPECT_TRUE(failed_as(write_to(path_, changes), ErrorKind::kBadData));
    EXPECT_EQ(*load_from(path_), before_);
  };
  Changes changes = all_kinds_of_changes(before_);
  changes.entries.push_back(changes.entries.back());  // a number that is taken
  refused(changes);
  changes = {};
  changes.entries = {
      sample_entry(2, EntryKind::kFound, "2026-06-01", 6)};  // slips in before an earlier one
  refused(changes);
  changes.entries = {sample_entry(50, EntryKind::kFound, "2026-06-01", 6)};
  changes.entries[0].at.lot = LotId(99);
  refused(changes);
  changes.entries[0].at = {LotId(1), PlaceKey("nowhere"), std::nullopt};
  refused(changes);
  changes = {};
  changes.entries = {before_.entries[5]};
  changes.entries[0].id = EntryId(60);  // corrects entry 6 once more
  refused(changes);
  changes = {};
  changes.lots = {before_.lots[0]};  // that lot is there
  refused(changes);
  changes = {};
  changes.places = {before_.places[0]};
  changes.places[0].parent = PlaceKey("nowhere");  // found at the commit
  refused(changes);
}

// Lots, their labels and entries are written some at once (store/rows.h): any number of them arrives, each with its own values.
TEST_F(Writing, AnyNumberOfRowsArrives) {
  for (const int many : {1, 2, 15, 16, 17, 31, 32, 33, 50}) {
    const Household before = *load_from(path_);
    const NextIds next = next_ids(before);
    Changes changes;
    for (int row = 0; row < many; ++row) {
      const Lot& like = before_.lots[static_cast<std::size_t>(row) % 3];
      Lot lot;
      lot.id = LotId(next.lot.value() + row);
      lot.food = like.food;
      lot.mark = like.mark;
      lot.received = like.received;
      lot.note = like.note;
      lot.lot_code = "L" + std::to_string(row);
      if (row % 3 != 1) {
        Statement label{{}, {}, "Reader " + std::to_string(row), day("2026-10-01")};
        if (row % 2 == 0) label.declared = {{"milk", Declared::kContains}, {"soy", Declared::kMayContain}};
        if (row % 5 == 0) label.suits = {Diet::kVegan};
        lot.label = std::move(label);
      }
      changes.lots.push_back(lot);
      Entry entry = sample_entry(next.entry.value() + row, EntryKind::kReceived, "2026-11-04", 6);
      entry.at.lot = lot.id;
      if (row % 2 == 0) entry.paid_cents = row;
      entry.note = "row " + std::to_string(row);
      changes.entries.push_back(entry);
    }
    ASSERT_TRUE(is_done(write_to(path_, changes))) << many;
    Household expected = before;
    apply_changes(expected, changes);
    const auto loaded = load_from(path_);
    ASSERT_TRUE(is_done(loaded));
    EXPECT_EQ(loaded->lots, expected.lots) << many;
    EXPECT_EQ(*loaded, expected) << many;
    EXPECT_TRUE(check_of(path_)->empty());
  }
}

TEST_F(Writing, OneWrongRowAmongManyRefusesAll) {
  for (const std::size_t wrong : {std::size_t{1}, std::size_t{7}, std::size_t{15}, std::size_t{16}, std::size_t{19}}) {
    Changes changes;
    for (int row = 0; row < 20; ++row) changes.entries.push_back(sample_entry(50 + row, EntryKind::kFound, "2026-06-01", 6));
    Changes nowhere = changes;
    nowhere.entries[wrong].at.place = PlaceKey("nowhere");
    EXPECT_TRUE(failed_as(write_to(path_, nowhere), ErrorKind::kBadData)) << wrong;
    changes.entries[wrong].id = EntryId(50);  // does not follow on
    EXPECT_TRUE(failed_as(write_to(path_, changes), ErrorKind::kBadData)) << wrong;
    EXPECT_EQ(*load_from(path_), before_) << wrong;
  }
}

TEST_F(Writing, ARefusedChangeEndsTheWrite) {
  auto book = Book::open(path_, {});
  ASSERT_TRUE(is_done(book));
  auto write = book->begin_write();
  ASSERT_TRUE(is_done(write));
  Changes good;
  good.entries = {sample_entry(50, EntryKind::kFound, "2026-06-01", 6)};
  ASSERT_TRUE(is_done(write->apply(good)));
  Changes bad;
  bad.entries = {sample_entry(50, EntryKind::kFound, "2026-06-01", 6)};
  ASSERT_FALSE(write->apply(bad));
  EXPECT_FALSE(write->commit());
  EXPECT_EQ(*book->load(), before_);
  EXPECT_TRUE(is_done(book->begin_write())) << "the lock was not given back";
}

TEST_F(Writing, AMovedWriteIsStillTheOneWrite) {
  auto book = Book::open(path_, {});
  ASSERT_TRUE(is_done(book));
  auto begun = book->begin_write();
  ASSERT_TRUE(is_done(begun));
  EXPECT_FALSE(book->begin_write()) << "one at a time";
  Book moved_book = std::move(*book);
  Book::Write moved = std::move(*begun);
  Changes good;
  good.entries = {sample_entry(50, EntryKind::kFound, "2026-06-01", 6)};
  ASSERT_TRUE(is_done(moved.apply(good)));
  ASSERT_TRUE(is_done(moved.commit()));
  EXPECT_EQ(moved_book.load()->entries.back(), good.entries.back());
}

}  // namespace
}  // namespace larderloop::testing
