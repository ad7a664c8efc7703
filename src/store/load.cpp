#include "store/load.h"

#include "store/names.h"

namespace larderloop::store {
namespace {

constexpr const char* kStatements = "SELECT id, read_by, read_on FROM statement";
constexpr const char* kStatementAllergens =
    "SELECT statement, allergen, declared FROM statement_allergen";
constexpr const char* kStatementDiets = "SELECT statement, diet FROM statement_diet";
constexpr const char* kHousehold =
    "SELECT book_id, name, time_zone, region, currency, margin_days, slack_days, donate_days, "
    "late_days,"
    "  tolerance_half_servings, monotony_half_servings, variety_cap, week_starts, shopping_day, date_order "
    "FROM household";
constexpr const char* kOwnAllergens = "SELECT key, since FROM own_allergen ORDER BY key";

}  // namespace

void no_owner(const char* table) {
  throw StoreFailure(ErrorKind::kStore,
                     std::string("the book is damaged: '") + table +
                         "' has a line for something that is not there",
                     "see what else is wrong: larderloop check; then restore a backup");
}

Labels::Labels(const Connection& connection) {
  Query statements(connection, kStatements);
  while (statements.step()) {
    Statement& statement = statements_[statements.integer(0)];
    statement.read_by = statements.text(1);
    statement.read_on = statements.day(2);
  }
  Query allergens(connection, kStatementAllergens);
  while (allergens.step()) {
    const auto found = statements_.find(allergens.integer(0));
    if (found == statements_.end()) no_owner("statement_allergen");
    found->second.declared.emplace(allergens.text(1), allergens.named(2, parse_declared));
  }
  Query diets(connection, kStatementDiets);
  while (diets.step()) {
    const auto found = statements_.find(diets.integer(0));
    if (found == statements_.end()) no_owner("statement_diet");
    found->second.suits.insert(diets.named(1, parse_diet));
  }
}

std::optional<Statement> Labels::at(const Query& row, int column) const {
  if (row.is_null(column)) return std::nullopt;
  const auto found = statements_.find(row.integer(column));
  // A label that is gone must not look like a label that never was read.
  if (found == statements_.end()) no_owner("label");
  return found->second;
}

DateMark mark_at(const Query& row, int column) {
  DateMark mark;
  mark.text = row.text(column);
  mark.kind = row.named(column + 1, parse_mark_kind);
  mark.precision = row.named(column + 2, parse_precision);
  mark.day = row.maybe_day(column + 3);
  return mark;
}

std::optional<DateMark> maybe_mark_at(const Query& row, int column) {
  if (row.is_null(column + 1)) return std::nullopt;
  return mark_at(row, column);
}

void load_settings(const Connection& connection, Household& household) {
  Query row(connection, kHousehold);
  if (!row.step()) no_owner("household");
  household.book_id = row.text(0);
  Settings& settings = household.settings;
  settings.name = row.text(1);
  settings.time_zone = row.text(2);
  settings.region = row.named(3, parse_region);
  settings.currency = row.text(4);
  settings.margin_days = row.small(5);
  settings.slack_days = row.small(6);
  settings.donate_days = row.small(7);
  settings.late_days = row.small(8);
  settings.tolerance = row.amount(9);
  settings.monotony = row.amount(10);
  settings.variety_cap = row.small(11);
  settings.week_starts = row.named(12, parse_weekday_word);
  settings.shopping_day = row.named(13, parse_weekday_word);
  settings.date_order = row.named(14, parse_date_order);
  load_feed_settings(connection, settings.feed);
  Query own(connection, kOwnAllergens);
  while (own.step()) household.own_allergens.push_back({own.text(0), own.day(1)});
}

Household load_household(const Connection& connection) {
  Household household;
  load_settings(connection, household);
  const Labels labels(connection);
  load_foods(connection, labels, household);
  load_people(connection, household);
  load_places(connection, household);
  load_table(connection, household);
  load_wishes(connection, household);
  load_lots(connection, labels, household);
  load_entries(connection, household);
  load_reviews(connection, household);
  load_trials(connection, household);
  load_buying(connection, household);
  load_shown(connection, household);
  load_feeds(connection, household);
  return household;
}

}  // namespace larderloop::store
