// Lots, readings, entries, reviews, and what was shown.
#include "store/load.h"
#include "store/names.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace larderloop::store {
namespace {

constexpr const char* kLots =
    "SELECT id, food, mark_text, mark_kind, mark_precision, mark_day, lot_code, received, label, "
    "state, note "
    "FROM lot ORDER BY id";
constexpr const char* kReadings =
    "SELECT id, lot, day, told_by, mark_text, mark_kind, mark_precision, mark_day, label, state, "
    "note "
    "FROM reading ORDER BY id";
constexpr const char* kEntries =
    "SELECT id, kind, day, written_at, lot, place, opened_on, to_place, half_servings, "
    "change_half_servings, corrects,"
    "  who, meal, paid_cents, note "
    "FROM entry ORDER BY id";
constexpr const char* kReviewEvents =
    "SELECT id, kit, slot, kind, day, moved_to, note FROM review_event ORDER BY id";
constexpr const char* kReviewMarks =
    "SELECT id, kit, slot, lot, place, opened_on, what, day, half_servings,"
    "  mark_text, mark_kind, mark_precision, mark_day "
    "FROM review_mark ORDER BY id";
constexpr const char* kKeptPlans = "SELECT name, problem, plan FROM kept_plan ORDER BY name";
constexpr const char* kShownMeals = "SELECT day, meal FROM shown_meal";
constexpr const char* kShownServings =
    "SELECT day, meal, lot, place, opened_on, person, half_servings FROM shown_serving ORDER BY "
    "day, meal, number";
constexpr const char* kFeedStamps =
    "SELECT key, generation, in_feed, sequence, changed_at, content FROM feed_stamp ORDER BY key, "
    "generation";

StockKey stock_key_at(const Query& row, int column) {
  return {row.id<LotId>(column), row.key<PlaceKey>(column + 1), row.maybe_day(column + 2)};
}

}  // namespace

void load_lots(const Connection& connection, const Labels& labels, Household& household) {
  Query lots(connection, kLots);
  while (lots.step()) {
    Lot lot;
    lot.id = lots.id<LotId>(0);
    lot.food = lots.key<FoodKey>(1);
    lot.mark = mark_at(lots, 2);
    lot.lot_code = lots.text(6);
    lot.received = lots.day(7);
    lot.label = labels.at(lots, 8);
    lot.state = lots.named(9, parse_lot_state);
    lot.note = lots.text(10);
    household.lots.push_back(std::move(lot));
  }
  Query readings(connection, kReadings);
  while (readings.step()) {
    Reading reading;
    reading.id = readings.id<ReadingId>(0);
    reading.lot = readings.id<LotId>(1);
    reading.on = readings.day(2);
    reading.by = readings.text(3);
    reading.mark = maybe_mark_at(readings, 4);
    reading.label = labels.at(readings, 8);
    reading.state = readings.maybe_named(9, parse_lot_state);
    reading.note = readings.text(10);
    household.readings.push_back(std::move(reading));
  }
}

void load_entries(const Connection& connection, Household& household) {
  {
    constexpr std::int64_t kMostAtOnce = 100'000;  // a damaged number must not ask for all memory
    Query last(connection, "SELECT coalesce(max(id), 0) FROM entry");
    if (last.step()) household.entries.reserve(static_cast<std::size_t>(std::clamp<std::int64_t>(last.integer(0), 0, kMostAtOnce)));
  }
  Query rows(connection, kEntries);
  while (rows.step()) {
    Entry& entry = household.entries.emplace_back();
    entry.id = rows.id<EntryId>(0);
    entry.kind = rows.named(1, parse_entry_kind);
    entry.on = rows.day(2);
    entry.written_at = rows.instant(3);
    entry.at = stock_key_at(rows, 4);
    if (!rows.is_null(7)) entry.to = rows.key<PlaceKey>(7);
    entry.amount = rows.amount(8);
    entry.change = rows.integer(9);
    entry.corrects = rows.id<EntryId>(10);
    if (!rows.is_null(11)) entry.who = rows.key<PersonKey>(11);
    entry.meal = rows.maybe_named(12, parse_meal);
    entry.paid_cents = rows.maybe_integer(13);
    entry.note = rows.text(14);
  }
}

void load_reviews(const Connection& connection, Household& household) {
  Query events(connection, kReviewEvents);
  while (events.step()) {
    ReviewEvent event;
    event.id = events.id<ReviewEventId>(0);
    event.kit = events.key<PlaceKey>(1);
    event.slot = events.day(2);
    event.kind = events.named(3, parse_review_event);
    event.on = events.day(4);
    event.moved_to = events.maybe_day(5);
    event.note = events.text(6);
    household.review_events.push_back(std::move(event));
  }
  Query marks(connection, kReviewMarks);
  while (marks.step()) {
    ReviewMark mark;
    mark.id = marks.id<MarkId>(0);
    mark.kit = marks.key<PlaceKey>(1);
    mark.slot = marks.day(2);
    mark.at = stock_key_at(marks, 3);
    mark.what = marks.named(6, parse_mark_what);
    mark.on = marks.day(7);
    mark.amount = marks.amount(8);
    mark.mark = maybe_mark_at(marks, 9);
    household.review_marks.push_back(std::move(mark));
  }
}

void load_shown(const Connection& connection, Household& household) {
  std::map<std::pair<Day, Meal>, ShownMeal> shown;
  Query meals(connection, kShownMeals);
  while (meals.step()) {
    const Day day = meals.day(0);
    const Meal meal = meals.named(1, parse_meal);
    shown[{day, meal}] = ShownMeal{day, meal, {}};
  }
  Query servings(connection, kShownServings);
  while (servings.step()) {
    const auto found = shown.find({servings.day(0), servings.named(1, parse_meal)});
    if (found == shown.end()) no_owner("shown_serving");
    found->second.servings.push_back(
        {stock_key_at(servings, 2), servings.key<PersonKey>(5), servings.amount(6)});
  }
  for (auto& each : shown) household.shown_meals.push_back(std::move(each.second));
  Query plans(connection, kKeptPlans);
  while (plans.step())
    household.kept_plans.push_back({plans.text(0), plans.text(1), plans.text(2)});
  Query stamps(connection, kFeedStamps);
  while (stamps.step()) {
    FeedStamp stamp;
    stamp.key = stamps.text(0);
    stamp.generation = stamps.small(1);
    stamp.in_feed = stamps.flag(2);
    stamp.sequence = stamps.small(3);
    stamp.changed_at = stamps.instant(4);
    stamp.content = stamps.text(5);
    household.feed.push_back(std::move(stamp));
  }
}

}  // namespace larderloop::store
