// Lots, readings, entries, reviews, and what was shown.
#include "store/rows.h"
#include "store/save.h"

namespace larderloop::store {
namespace {

constexpr const char* kAddLot =
    "INSERT INTO lot (id, food, mark_text, mark_kind, mark_precision, mark_day, lot_code, "
    "received, label, state, note) "
    "VALUES (:id, :food, :mark_text, :mark_kind, :mark_precision, :mark_day, :lot_code, :received, "
    ":label, :state, :note)";
constexpr const char* kAddReading =
    "INSERT INTO reading (id, lot, day, told_by, mark_text, mark_kind, mark_precision, mark_day, "
    "label, state, note) "
    "VALUES (:id, :lot, :day, :told_by, :mark_text, :mark_kind, :mark_precision, :mark_day, "
    ":label, :state, :note)";
constexpr const char* kAddEntry =
    "INSERT INTO entry (id, kind, day, written_at, lot, place, opened_on, to_place, half_servings,"
    "  change_half_servings, corrects, who, meal, paid_cents, note) "
    "VALUES (:id, :kind, :day, :written_at, :lot, :place, :opened_on, :to_place, :half_servings,"
    "  :change_half_servings, :corrects, :who, :meal, :paid_cents, :note)";
constexpr const char* kAddReviewEvent =
    "INSERT INTO review_event (id, kit, slot, kind, day, moved_to, note) "
    "VALUES (:id, :kit, :slot, :kind, :day, :moved_to, :note)";
constexpr const char* kAddReviewMark =
    "INSERT INTO review_mark (id, kit, slot, lot, place, opened_on, what, day, half_servings,"
    "  mark_text, mark_kind, mark_precision, mark_day) "
    "VALUES (:id, :kit, :slot, :lot, :place, :opened_on, :what, :day, :half_servings,"
    "  :mark_text, :mark_kind, :mark_precision, :mark_day)";
constexpr const char* kDropKeptPlans = "DELETE FROM kept_plan";
constexpr const char* kAddKeptPlan =
    "INSERT INTO kept_plan (name, problem, plan) VALUES (:name, :problem, :plan)";
constexpr const char* kDropShown = "DELETE FROM shown_serving; DELETE FROM shown_meal";
constexpr const char* kAddShownMeal = "INSERT INTO shown_meal (day, meal) VALUES (:day, :meal)";
constexpr const char* kAddShownServing =
    "INSERT INTO shown_serving (day, meal, number, lot, place, opened_on, person, half_servings) "
    "VALUES (:day, :meal, :number, :lot, :place, :opened_on, :person, :half_servings)";
constexpr const char* kSaveFeedStamp =
    "INSERT INTO feed_stamp (key, generation, in_feed, sequence, changed_at, content) "
    "VALUES (:key, :generation, :in_feed, :sequence, :changed_at, :content) "
    "ON CONFLICT (key, generation) DO UPDATE SET in_feed = excluded.in_feed, sequence = "
    "excluded.sequence,"
    "  changed_at = excluded.changed_at, content = excluded.content";

}  // namespace

void add_lots(const Connection& connection, const std::vector<Lot>& lots) {
  std::vector<const Statement*> labels;
  for (const Lot& lot : lots) {
    if (lot.label) labels.push_back(&*lot.label);
  }
  std::int64_t label = add_labels(connection, labels);
  Rows rows(connection, kAddLot, lots.size());
  for (const Lot& lot : lots) {
    Query& add = rows.row();
    set_mark(add, lot.mark);
    add.set(":id", lot.id)
        .set(":food", lot.food)
        .set(":lot_code", lot.lot_code)
        .set(":received", lot.received)
        .set(":label", lot.label ? std::optional(label++) : std::nullopt)
        .set(":state", lot_state_name(lot.state))
        .set(":note", lot.note);
    rows.done();
  }
}

void add_readings(const Connection& connection, const std::vector<Reading>& readings) {
  LabelWriter labels(connection);
  Query add(connection, kAddReading);
  for (const Reading& reading : readings) {
    set_mark(add, reading.mark);
    reading.state ? add.set(":state", lot_state_name(*reading.state)) : add.set_null(":state");
    add.set(":id", reading.id)
        .set(":lot", reading.lot)
        .set(":day", reading.on)
        .set(":told_by", reading.by)
        .set(":label", labels.add(reading.label))
        .set(":note", reading.note)
        .run();
  }
}

void add_entries(const Connection& connection, const std::vector<Entry>& entries) {
  Rows rows(connection, kAddEntry, entries.size());
  for (const Entry& entry : entries) {
    Query& add = rows.row();
    set_stock_key(add, entry.at);
    entry.meal ? add.set(":meal", meal_name(*entry.meal)) : add.set_null(":meal");
    add.set(":id", entry.id)
        .set(":kind", entry_kind_name(entry.kind))
        .set(":day", entry.on)
        .set(":written_at", entry.written_at)
        .set(":to_place", entry.to)
        .set(":half_servings", entry.amount)
        .set(":change_half_servings", entry.change)
        .set(":corrects", entry.corrects)
        .set(":who", entry.who)
        .set(":paid_cents", entry.paid_cents)
        .set(":note", entry.note);
    rows.done();
  }
}

void add_review_events(const Connection& connection, const std::vector<ReviewEvent>& events) {
  Query add(connection, kAddReviewEvent);
  for (const ReviewEvent& event : events) {
    add.set(":id", event.id)
        .set(":kit", event.kit)
        .set(":slot", event.slot)
        .set(":kind", review_event_name(event.kind))
        .set(":day", event.on)
        .set(":moved_to", event.moved_to)
        .set(":note", event.note)
        .run();
  }
}

void add_review_marks(const Connection& connection, const std::vector<ReviewMark>& marks) {
  Query add(connection, kAddReviewMark);
  for (const ReviewMark& mark : marks) {
    set_stock_key(add, mark.at);
    set_mark(add, mark.mark);
    add.set(":id", mark.id)
        .set(":kit", mark.kit)
        .set(":slot", mark.slot)
        .set(":what", mark_what_name(mark.what))
        .set(":day", mark.on)
        .set(":half_servings", mark.amount)
        .run();
  }
}

void replace_shown(const Connection& connection, const std::vector<ShownMeal>& meals) {
  connection.run(kDropShown);
  Query add_meal(connection, kAddShownMeal);
  Query add_serving(connection, kAddShownServing);
  for (const ShownMeal& meal : meals) {
    add_meal.set(":day", meal.day).set(":meal", meal_name(meal.meal)).run();
    std::int64_t number = 0;
    for (const ShownServing& serving : meal.servings) {
      set_stock_key(add_serving, serving.at);
      add_serving.set(":day", meal.day)
          .set(":meal", meal_name(meal.meal))
          .set(":number", ++number)
          .set(":person", serving.person)
          .set(":half_servings", serving.amount)
          .run();
    }
  }
}

void replace_kept_plans(const Connection& connection, const std::vector<KeptPlan>& plans) {
  connection.run(kDropKeptPlans);
  Query add(connection, kAddKeptPlan);
  for (const KeptPlan& each : plans)
    add.set(":name", each.name).set(":problem", each.problem).set(":plan", each.plan).run();
}

void save_feed(const Connection& connection, const std::vector<FeedStamp>& stamps) {
  Query save(connection, kSaveFeedStamp);
  for (const FeedStamp& stamp : stamps) {
    save.set(":key", stamp.key)
        .set(":generation", stamp.generation)
        .set(":in_feed", stamp.in_feed)
        .set(":sequence", stamp.sequence)
        .set(":changed_at", stamp.changed_at)
        .set(":content", stamp.content)
        .run();
  }
}

}  // namespace larderloop::store
