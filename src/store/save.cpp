#include "store/save.h"

#include "store/names.h"
#include "store/rows.h"

#include <sqlite3.h>

namespace larderloop::store {
namespace {

constexpr const char* kInsertStatement =
    "INSERT INTO statement (read_by, read_on) VALUES (:read_by, :read_on)";
constexpr const char* kNextStatement = "SELECT coalesce(max(id), 0) + 1 FROM statement";
constexpr const char* kInsertNumbered =
    "INSERT INTO statement (id, read_by, read_on) VALUES (:id, :read_by, :read_on)";
constexpr const char* kInsertAllergen =
    "INSERT INTO statement_allergen (statement, allergen, declared) VALUES (:statement, :allergen, "
    ":declared)";
constexpr const char* kInsertDiet =
    "INSERT INTO statement_diet (statement, diet) VALUES (:statement, :diet)";
constexpr const char* kDropStatement = "DELETE FROM statement WHERE id = :id";
constexpr const char* kDropAllergens = "DELETE FROM statement_allergen WHERE statement = :id";
constexpr const char* kDropDiets = "DELETE FROM statement_diet WHERE statement = :id";

constexpr const char* kInsertHousehold =
    "INSERT INTO household (id, book_id, name, time_zone, region, currency, margin_days, "
    "slack_days, donate_days,"
    "  late_days, tolerance_half_servings, monotony_half_servings, variety_cap, week_starts, "
    "shopping_day, date_order) "
    "VALUES (1, :book_id, :name, :time_zone, :region, :currency, :margin_days, :slack_days, "
    ":donate_days,"
    "  :late_days, :tolerance, :monotony, :variety_cap, :week_starts, :shopping_day, :date_order)";
constexpr const char* kUpdateSettings =
    "UPDATE household SET name = :name, time_zone = :time_zone, region = :region, currency = "
    ":currency,"
    "  margin_days = :margin_days, slack_days = :slack_days, donate_days = :donate_days, late_days "
    "= :late_days,"
    "  tolerance_half_servings = :tolerance, monotony_half_servings = :monotony, variety_cap = "
    ":variety_cap,"
    "  week_starts = :week_starts, shopping_day = :shopping_day, date_order = :date_order "
    "WHERE id = 1";
constexpr const char* kSaveOwnAllergen =
    "INSERT INTO own_allergen (key, since) VALUES (:key, :since) ON CONFLICT (key) DO UPDATE SET "
    "since = excluded.since";

void set_settings(Query& query, const Settings& settings) {
  query.set(":name", settings.name)
      .set(":time_zone", settings.time_zone)
      .set(":region", region_name(settings.region))
      .set(":currency", settings.currency)
      .set(":margin_days", settings.margin_days)
      .set(":slack_days", settings.slack_days)
      .set(":donate_days", settings.donate_days)
      .set(":late_days", settings.late_days)
      .set(":tolerance", settings.tolerance)
      .set(":monotony", settings.monotony)
      .set(":variety_cap", settings.variety_cap)
      .set(":week_starts", weekday_word(settings.week_starts))
      .set(":shopping_day", weekday_word(settings.shopping_day))
      .set(":date_order", date_order_name(settings.date_order));
}

}  // namespace

LabelWriter::LabelWriter(const Connection& connection)
    : connection_(connection),
      statement_(connection, kInsertStatement),
      allergen_(connection, kInsertAllergen),
      diet_(connection, kInsertDiet),
      drop_statement_(connection, kDropStatement),
      drop_allergens_(connection, kDropAllergens),
      drop_diets_(connection, kDropDiets) {}

std::optional<std::int64_t> LabelWriter::add(const std::optional<Statement>& statement) {
  if (!statement) return std::nullopt;
  statement_.set(":read_by", statement->read_by).set(":read_on", statement->read_on).run();
  const std::int64_t id = sqlite3_last_insert_rowid(connection_.handle());
  for (const auto& [allergen, declared] : statement->declared) {
    allergen_.set(":statement", id)
        .set(":allergen", allergen)
        .set(":declared", declared_word(declared))
        .run();
  }
  for (const Diet diet : statement->suits)
    diet_.set(":statement", id).set(":diet", diet_name(diet)).run();
  return id;
}

void LabelWriter::remove(std::int64_t id) {
  drop_allergens_.set(":id", id).run();
  drop_diets_.set(":id", id).run();
  drop_statement_.set(":id", id).run();
}

std::int64_t add_labels(const Connection& connection, const std::vector<const Statement*>& labels) {
  const std::int64_t first = connection.number(kNextStatement);
  std::size_t allergens = 0;
  std::size_t diets = 0;
  Rows statements(connection, kInsertNumbered, labels.size());
  std::int64_t id = first;
  for (const Statement* each : labels) {
    statements.row().set(":id", id++).set(":read_by", each->read_by).set(":read_on", each->read_on);
    statements.done();
    allergens += each->declared.size();
    diets += each->suits.size();
  }
  Rows declared(connection, kInsertAllergen, allergens);
  Rows suits(connection, kInsertDiet, diets);
  id = first;
  for (const Statement* each : labels) {
    for (const auto& [allergen, how] : each->declared) {
      declared.row()
          .set(":statement", id)
          .set(":allergen", allergen)
          .set(":declared", declared_word(how));
      declared.done();
    }
    for (const Diet diet : each->suits) {
      suits.row().set(":statement", id).set(":diet", diet_name(diet));
      suits.done();
    }
    ++id;
  }
  return first;
}

void set_mark(Query& query, const std::optional<DateMark>& mark) {
  if (mark) {
    query.set(":mark_text", mark->text)
        .set(":mark_kind", mark_kind_name(mark->kind))
        .set(":mark_precision", precision_name(mark->precision))
        .set(":mark_day", mark->day);
  } else {
    query.set_null(":mark_text")
        .set_null(":mark_kind")
        .set_null(":mark_precision")
        .set_null(":mark_day");
  }
}

void set_stock_key(Query& query, const StockKey& at) {
  query.set(":lot", at.lot).set(":place", at.place).set(":opened_on", at.opened_on);
}

void insert_identity(const Connection& connection, const Household& household) {
  Query insert(connection, kInsertHousehold);
  set_settings(insert, household.settings);
  insert.set(":book_id", household.book_id).run();
  save_feed_settings(connection, household.settings.feed);
}

void save_settings(const Connection& connection, const Settings& settings) {
  Query update(connection, kUpdateSettings);
  set_settings(update, settings);
  update.run();
  save_feed_settings(connection, settings.feed);
}

void save_own_allergens(const Connection& connection, const std::vector<OwnAllergen>& allergens) {
  Query save(connection, kSaveOwnAllergen);
  for (const OwnAllergen& each : allergens)
    save.set(":key", each.key).set(":since", each.since).run();
}

void save_household(const Connection& connection, const Household& household) {
  insert_identity(connection, household);
  save_own_allergens(connection, household.own_allergens);
  save_foods(connection, household.foods);
  save_people(connection, household.people);
  save_places(connection, household.places);
  save_review_rules(connection, household.review_rules);
  save_menu(connection, household.menu);
  insert_table(connection, household);
  save_wishes(connection, household.wishes);
  add_lots(connection, household.lots);
  add_readings(connection, household.readings);
  add_entries(connection, household.entries);
  add_review_events(connection, household.review_events);
  add_review_marks(connection, household.review_marks);
  add_trials(connection, household.trials, household.trial_notes, household.trial_ends);
  add_buy_notes(connection, household.buy_notes);
  save_mappings(connection, household.mappings);
  replace_shown(connection, household.shown_meals);
  replace_kept_plans(connection, household.kept_plans);
  save_feed(connection, household.feed);
  save_feed_addresses(connection, household.feed_addresses);
  replace_pushed(connection, household.pushed);
  add_tasks_done(connection, household.tasks_done);
}

void save_changes(const Connection& connection, const Changes& changes) {
  if (changes.settings) save_settings(connection, *changes.settings);
  if (!changes.own_allergens.empty()) save_own_allergens(connection, changes.own_allergens);
  if (!changes.foods.empty()) save_foods(connection, changes.foods);
  if (!changes.people.empty()) save_people(connection, changes.people);
  if (!changes.places.empty()) save_places(connection, changes.places);
  if (!changes.review_rules.empty()) save_review_rules(connection, changes.review_rules);
  if (!changes.menu.empty()) save_menu(connection, changes.menu);
  if (!changes.menu_back.empty()) drop_menu(connection, changes.menu_back);
  if (!changes.review_rules_back.empty()) drop_review_rules(connection, changes.review_rules_back);
  if (changes.table) replace_seats(connection, *changes.table);
  if (changes.exceptions) replace_exceptions(connection, *changes.exceptions);
  if (!changes.wishes.empty()) save_wishes(connection, changes.wishes);
  if (!changes.wishes_back.empty()) drop_wishes(connection, changes.wishes_back);
  if (!changes.lots.empty()) add_lots(connection, changes.lots);
  if (!changes.readings.empty()) add_readings(connection, changes.readings);
  if (!changes.entries.empty()) add_entries(connection, changes.entries);
  if (!changes.review_events.empty()) add_review_events(connection, changes.review_events);
  if (!changes.review_marks.empty()) add_review_marks(connection, changes.review_marks);
  add_trials(connection, changes.trials, changes.trial_notes, changes.trial_ends);
  if (!changes.buy_notes.empty()) add_buy_notes(connection, changes.buy_notes);
  if (!changes.mappings.empty()) save_mappings(connection, changes.mappings);
  if (!changes.mappings_back.empty()) drop_mappings(connection, changes.mappings_back);
  if (changes.shown_meals) replace_shown(connection, *changes.shown_meals);
  if (changes.kept_plans) replace_kept_plans(connection, *changes.kept_plans);
  if (!changes.feed.empty()) save_feed(connection, changes.feed);
  if (!changes.feed_addresses.empty()) save_feed_addresses(connection, changes.feed_addresses);
  if (changes.pushed) replace_pushed(connection, *changes.pushed);
  if (!changes.tasks_done.empty()) add_tasks_done(connection, changes.tasks_done);
}

}  // namespace larderloop::store
