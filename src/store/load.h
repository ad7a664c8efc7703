// load.h - from the tables to the values of core: one query and one pass a table, never a query a
// row. Errors:   SqliteFailure, StoreFailure (failure.h). Pre: inside one transaction, so that all
// tables are of one moment.
#pragma once

#include "larderloop/core/household.h"
#include "store/failure.h"
#include "store/sqlite_handle.h"

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

namespace larderloop::store {

[[nodiscard]] Household load_household(const Connection& connection);

// All label statements of the book, by their number.
class Labels {
 public:
  explicit Labels(const Connection& connection);
  // The statement whose number stands in this column; absent for NULL.
  [[nodiscard]] std::optional<Statement> at(const Query& row, int column) const;

 private:
  std::unordered_map<std::int64_t, Statement> statements_;
};

// Parts of it, in order of use.
void load_settings(const Connection& connection, Household& household);
void load_foods(const Connection& connection, const Labels& labels, Household& household);
void load_people(const Connection& connection, Household& household);
void load_places(const Connection& connection, Household& household);
void load_table(const Connection& connection, Household& household);
void load_wishes(const Connection& connection, Household& household);
void load_lots(const Connection& connection, const Labels& labels, Household& household);
void load_entries(const Connection& connection, Household& household);
void load_reviews(const Connection& connection, Household& household);
void load_trials(const Connection& connection, Household& household);
void load_buying(const Connection& connection, Household& household);
void load_shown(const Connection& connection, Household& household);
void load_feed_settings(const Connection& connection, FeedSettings& feed);
void load_feeds(const Connection& connection, Household& household);

// The date mark in four columns from `column` on: text, kind, precision, day.
[[nodiscard]] DateMark mark_at(const Query& row, int column);
[[nodiscard]] std::optional<DateMark> maybe_mark_at(const Query& row, int column);

[[noreturn]] void no_owner(const char* table);

// The one of `things` that has `key`, for a table read in the same order: `cursor` only goes
// forward.
template <class Thing, class Wanted, class KeyOf>
Thing& owner_of(std::vector<Thing>& things, std::size_t& cursor, const Wanted& key, KeyOf key_of,
                const char* table) {
  while (cursor < things.size() && key_of(things[cursor]) < key) ++cursor;
  if (cursor == things.size() || key_of(things[cursor]) != key) no_owner(table);
  return things[cursor];
}

}  // namespace larderloop::store
