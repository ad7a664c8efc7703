// A household written as a document and read again is the same household, and writing it again
// gives the same bytes.
#include "larderloop/core/validate.h"
#include "larderloop/intake/document.h"
#include "support/household_gen.h"
#include "support/problem_maker.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

using test::Dice;
using test::test_scale;

constexpr const char* kTexts[] = {"plain",
                                  "quotes \" and \\ and /",
                                  "a line\nand another\tafter a tab",
                                  "Grüße an Żaneta, 水 and \xF0\x9F\xA5\xAB",
                                  "  spaces around  ",
                                  "\x01 control",
                                  "[1, {\"not\": \"json\"}]"};

std::string some_text(Dice& dice) {
  return kTexts[dice.between(0, 6)];
}

// What generated households leave out: notes, feed stamps, findings of reviews, and every member
// that is rarely written.
void decorate(Household& home, Dice& dice) {
  for (Person& person : home.people) {
    if (dice.one_in(2)) person.note = some_text(dice);
  }
  for (Food& food : home.foods) {
    if (dice.one_in(3)) food.note = some_text(dice);
    if (dice.one_in(3)) food.needs_water_ml = dice.between(1, 900);
  }
  for (Place& place : home.places) {
    if (dice.one_in(3)) place.note = some_text(dice);
  }
  for (Lot& lot : home.lots) {
    if (dice.one_in(3)) lot.note = some_text(dice);
    if (dice.one_in(3)) lot.lot_code = some_text(dice);
  }
  for (Reading& reading : home.readings) {
    if (dice.one_in(3)) reading.note = some_text(dice);
  }
  for (Entry& entry : home.entries) {
    if (dice.one_in(6)) entry.note = some_text(dice);
  }
  for (TableException& exception : home.exceptions) exception.note = some_text(dice);
  Settings& settings = home.settings;
  settings.name = some_text(dice);
  settings.currency = dice.one_in(2) ? "EUR" : "USD";
  settings.slack_days = static_cast<int>(dice.between(0, 60));
  settings.donate_days = static_cast<int>(dice.between(0, 60));
  settings.late_days = static_cast<int>(dice.between(0, 60));
  settings.monotony = HalfServings(dice.between(1, 9));
  settings.week_starts = static_cast<Weekday>(dice.between(0, 6));
  settings.shopping_day = static_cast<Weekday>(dice.between(0, 6));
  const Day slot = *resolve_day(2026, 4, 4);
  const PlaceKey kit = home.review_rules.front().kit;
  std::int64_t event = static_cast<std::int64_t>(home.review_events.size());
  home.review_events.push_back({ReviewEventId(++event), kit, slot, ReviewEventKind::kStarted, slot,
                                std::nullopt, some_text(dice)});
  home.review_events.push_back({ReviewEventId(++event), kit, *resolve_day(2027, 4, 3),
                                ReviewEventKind::kMoved, slot, *resolve_day(2027, 4, 10), ""});
  home.review_events.push_back({ReviewEventId(++event), kit, *resolve_day(2027, 10, 2),
                                ReviewEventKind::kSkipped, slot, std::nullopt, ""});
  std::int64_t number = 0;
  for (const Entry& entry : home.entries) {
    if (entry.kind == EntryKind::kCorrected || !dice.one_in(4)) continue;
    ReviewMark mark{MarkId(++number),
                    kit,
                    slot,
                    entry.at,
                    static_cast<MarkWhat>(dice.between(0, 3)),
                    slot,
                    HalfServings(0),
                    std::nullopt};
    if (mark.what == MarkWhat::kMissing || mark.what == MarkWhat::kDamaged)
      mark.amount = HalfServings(dice.between(1, 9));
    if (mark.what == MarkWhat::kRedated)
      mark.mark = DateMark{some_text(dice), MarkKind::kUseBy, Precision::kYear, resolve_year(2028)};
    home.review_marks.push_back(mark);
  }
  for (int generation = 1; generation <= 2; ++generation) {
    const Instant at = midnight(slot) + std::chrono::seconds(dice.between(0, 86'399));
    home.feed.push_back({"review|" + kit.str() + "|2026-10-03", generation, generation == 2,
                         static_cast<int>(dice.between(0, 9)), at, some_text(dice)});
  }
}

void expect_round_trip(const Household& home, std::uint64_t seed) {
  const auto problems = validate(home);
  ASSERT_TRUE(problems.empty()) << "seed " << seed << ": " << problems.front().where << " "
                                << problems.front().what;
  const std::string text = render_document(home);
  const auto read = parse_document(text);
  ASSERT_TRUE(read) << "seed " << seed << ": " << read.error().what << " "
                    << (read.error().problems.empty() ? ""
                                                      : read.error().problems[0].where + ": " +
                                                            read.error().problems[0].what);
  EXPECT_EQ(read->settings, home.settings) << "seed " << seed;
  EXPECT_EQ(read->people, home.people) << "seed " << seed;
  EXPECT_EQ(read->foods, home.foods) << "seed " << seed;
  EXPECT_EQ(read->places, home.places) << "seed " << seed;
  EXPECT_EQ(read->menu, home.menu) << "seed " << seed;
  EXPECT_EQ(read->lots, home.lots) << "seed " << seed;
  EXPECT_EQ(read->readings, home.readings) << "seed " << seed;
  EXPECT_EQ(read->entries, home.entries) << "seed " << seed;
  EXPECT_EQ(read->review_events, home.review_events) << "seed " << seed;
  EXPECT_EQ(read->review_marks, home.review_marks) << "seed " << seed;
  EXPECT_EQ(read->shown_meals, home.shown_meals) << "seed " << seed;
  EXPECT_EQ(read->feed, home.feed) << "seed " << seed;
  ASSERT_EQ(*read, home) << "seed " << seed;
  ASSERT_EQ(render_document(*read), text) << "seed " << seed;
  ASSERT_FALSE(text.empty());
  EXPECT_EQ(text.back(), '\n');
}

TEST(DocumentRoundTrip, OfGeneratedHouseholds) {
  for (std::uint64_t seed = 1; seed <= 25 * test_scale(); ++seed) {
    ASSERT_NO_FATAL_FAILURE(
        expect_round_trip(generate_household(seed, static_cast<int>(seed * 7 % 60)), seed));
  }
}

TEST(DocumentRoundTrip, OfHouseholdsWithEveryMemberAndOddTexts) {
  for (std::uint64_t seed = 1; seed <= 25 * test_scale(); ++seed) {
    Dice dice(seed);
    Household home = generate_household(seed, static_cast<int>(seed * 5 % 40));
    decorate(home, dice);
    sort_lists(home);
    ASSERT_NO_FATAL_FAILURE(expect_round_trip(home, seed));
  }
}

}  // namespace
}  // namespace larderloop
