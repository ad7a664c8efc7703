// save.h - from the values of core into the tables. Things that people describe are new or replaced
// by their key; what happened is only added. Errors: SqliteFailure, StoreFailure (failure.h). Pre:
// inside a write transaction.
#pragma once

#include "larderloop/core/changes.h"
#include "larderloop/core/household.h"
#include "store/sqlite_handle.h"

#include <optional>
#include <vector>

namespace larderloop::store {

// Everything into an empty book.
void save_household(const Connection& connection, const Household& household);
void save_changes(const Connection& connection, const Changes& changes);

// Parts of both.
void insert_identity(const Connection& connection, const Household& household);
void save_settings(const Connection& connection, const Settings& settings);
void save_own_allergens(const Connection& connection, const std::vector<OwnAllergen>& allergens);
void save_foods(const Connection& connection, const std::vector<Food>& foods);
void save_people(const Connection& connection, const std::vector<Person>& people);
void save_places(const Connection& connection, const std::vector<Place>& places);
void save_review_rules(const Connection& connection, const std::vector<ReviewRule>& rules);
void save_menu(const Connection& connection, const std::vector<MenuLine>& menu);
void save_wishes(const Connection& connection, const std::vector<Wish>& wishes);
void drop_wishes(const Connection& connection, const std::vector<WishId>& ids);
void drop_menu(const Connection& connection, const std::vector<MenuLineId>& ids);
void drop_review_rules(const Connection& connection, const std::vector<PlaceKey>& kits);
void insert_seats(const Connection& connection, const std::vector<TableSeat>& table);
void insert_exceptions(const Connection& connection, const std::vector<TableException>& exceptions);
void replace_seats(const Connection& connection, const std::vector<TableSeat>& table);
void replace_exceptions(const Connection& connection,
                        const std::vector<TableException>& exceptions);
void add_buy_notes(const Connection& connection, const std::vector<BuyNote>& notes);
void save_mappings(const Connection& connection, const std::vector<ImportMapping>& mappings);
void drop_mappings(const Connection& connection, const std::vector<std::string>& names);
void insert_table(const Connection& connection, const Household& household);
void add_lots(const Connection& connection, const std::vector<Lot>& lots);
void add_readings(const Connection& connection, const std::vector<Reading>& readings);
void add_entries(const Connection& connection, const std::vector<Entry>& entries);
void add_review_events(const Connection& connection, const std::vector<ReviewEvent>& events);
void add_review_marks(const Connection& connection, const std::vector<ReviewMark>& marks);
void add_trials(const Connection& connection, const std::vector<Trial>& trials,
                const std::vector<TrialNote>& notes, const std::vector<TrialEnd>& ends);
void replace_shown(const Connection& connection, const std::vector<ShownMeal>& meals);
void replace_kept_plans(const Connection& connection, const std::vector<KeptPlan>& plans);
void save_feed(const Connection& connection, const std::vector<FeedStamp>& stamps);
void save_feed_settings(const Connection& connection, const FeedSettings& feed);
void save_feed_addresses(const Connection& connection, const std::vector<FeedAddress>& addresses);
void replace_pushed(const Connection& connection, const std::vector<PushedItem>& items);
void add_tasks_done(const Connection& connection, const std::vector<TaskDone>& tasks);

// Writes label statements, each for one owner.
class LabelWriter {
 public:
  explicit LabelWriter(const Connection& connection);
  // The number of the new statement; absent for none.
  std::optional<std::int64_t> add(const std::optional<Statement>& statement);
  // A food's own statement, after the food has another one.
  void remove(std::int64_t id);

 private:
  const Connection& connection_;
  Query statement_, allergen_, diet_, drop_statement_, drop_allergens_, drop_diets_;
};

// Writes the labels of many owners at once, each as a statement of its own. The number of the
// first; the others follow on.
[[nodiscard]] std::int64_t add_labels(const Connection& connection,
                                      const std::vector<const Statement*>& labels);

// Sets :mark_text, :mark_kind, :mark_precision, :mark_day.
void set_mark(Query& query, const std::optional<DateMark>& mark);
// Sets :lot, :place, :opened_on.
void set_stock_key(Query& query, const StockKey& at);

}  // namespace larderloop::store
