// sqlite_handle.h - SQLite's C handles with an owner: Connection, Query, Transaction.
// Errors:   thrown as SqliteFailure or StoreFailure, caught at the edge of the room by guarded()
// (failure.h). SQLITE_NOMEM is std::bad_alloc.
#pragma once

#include "larderloop/core/amount.h"
#include "larderloop/core/date.h"
#include "larderloop/core/id.h"

#include <sqlite3.h>

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace larderloop::store {

struct CloseConnection {
  void operator()(sqlite3* handle) const { sqlite3_close(handle); }
};
struct FinalizeStatement {
  void operator()(sqlite3_stmt* handle) const { sqlite3_finalize(handle); }
};

enum class Access {
  kNew,     // an empty file is filled
  kWrite,   // an existing file, read and written
  kQuery,   // the same handle, but only queries: recovers and tidies up after a program that was
            // killed
  kRead,    // an existing file that may not be written
  kFrozen,  // an existing file that nobody writes: no locks, nothing made beside it
  kMemory,  // no file
};

// One connection. Everything that is prepared from it must be gone before it is.
class Connection {
 public:
  // `path` is absolute, or empty for kMemory.
  Connection(const std::string& path, Access access, int busy_timeout_ms);
  [[nodiscard]] sqlite3* handle() const { return handle_.get(); }
  // Runs statements without values; rows are dropped.
  void run(const char* sql) const;
  // The whole number that a statement of one row and column gives.
  [[nodiscard]] std::int64_t number(const char* sql) const;
  [[nodiscard]] bool in_transaction() const;
  [[nodiscard]] bool writable() const;

 private:
  std::unique_ptr<sqlite3, CloseConnection> handle_;
};

// One prepared statement. Values are set by name, columns are read by position, both typed. An
// empty key, a zero id and an absent optional are NULL.
class Query {
 public:
  Query(const Connection& connection, const char* sql);

  Query& set(const char* name, std::int64_t value);
  Query& set(const char* name, std::string_view value);
  Query& set(const char* name, const std::string& value) {
    return set(name, std::string_view(value));
  }
  Query& set(const char* name, const char* value) { return set(name, std::string_view(value)); }
  Query& set(const char* name, int value) { return set(name, std::int64_t{value}); }
  Query& set(const char* name, bool value) { return set(name, std::int64_t{value ? 1 : 0}); }
  Query& set(const char* name, HalfServings value) { return set(name, value.halves()); }
  Query& set(const char* name, Day value) { return set(name, iso_day(value)); }
  Query& set(const char* name, Instant value) { return set(name, iso_instant(value)); }
  Query& set_null(const char* name);
  template <class Tag>
  Query& set(const char* name, const Key<Tag>& value) {
    return value.empty() ? set_null(name) : set(name, value.str());
  }
  template <class Tag>
  Query& set(const char* name, Id<Tag> value) {
    return value.empty() ? set_null(name) : set(name, value.value());
  }
  template <class T>
  Query& set(const char* name, const std::optional<T>& value) {
    return value ? set(name, *value) : set_null(name);
  }

  // How many values it has.
  [[nodiscard]] int parameters() const;
  // The values that are set from here on are those of a row whose first stands behind `before`
  // others (rows.h).
  void set_row(int before);

  // True: there is a row, to be read before the next step. False: there is none any more.
  bool step();
  // To the end; then the statement can be given new values.
  void run();

  [[nodiscard]] bool is_null(int column) const;
  [[nodiscard]] std::int64_t integer(int column) const;
  [[nodiscard]] int small(int column) const;  // an int; another value is a StoreFailure
  [[nodiscard]] bool flag(int column) const { return integer(column) != 0; }
  [[nodiscard]] std::string_view view(int column) const;  // until the next step; empty for NULL
  [[nodiscard]] std::string text(int column) const { return std::string(view(column)); }
  [[nodiscard]] Day day(int column) const;          // StoreFailure when it is none
  [[nodiscard]] Instant instant(int column) const;  // StoreFailure when it is none
  [[nodiscard]] HalfServings amount(int column) const { return HalfServings(integer(column)); }
  [[nodiscard]] std::optional<std::int64_t> maybe_integer(int column) const;
  [[nodiscard]] std::optional<int> maybe_small(int column) const;
  [[nodiscard]] std::optional<Day> maybe_day(int column) const;
  template <class KeyType>
  [[nodiscard]] KeyType key(int column) const {
    return KeyType(text(column));
  }
  template <class IdType>
  [[nodiscard]] IdType id(int column) const {
    return IdType(integer(column));
  }
  // One of a set of names; `parse` gives an optional. StoreFailure for a name it does not know.
  template <class Parse>
  [[nodiscard]] auto named(int column, Parse parse) const {
    const auto value = parse(view(column));
    if (!value) bad_value(column, "a word that is known here");
    return *value;
  }
  template <class Parse>
  [[nodiscard]] auto maybe_named(int column, Parse parse) const
      -> decltype(parse(std::string_view())) {
    if (is_null(column)) return std::nullopt;
    return named(column, parse);
  }
  [[noreturn]] void bad_value(int column, const char* wanted) const;

 private:
  [[nodiscard]] int parameter(const char* name);
  void check(int code) const;
  std::unique_ptr<sqlite3_stmt, FinalizeStatement> handle_;
  // Rows are mostly set in one order, so each name is looked for where it stood in the first row.
  std::vector<std::pair<std::string, int>> order_;
  std::size_t set_ = 0;
  int before_ = 0;
};

// Rolls back unless committed.
class Transaction {
 public:
  enum class Kind { kRead, kWrite };
  Transaction(const Connection& connection, Kind kind);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  Transaction(Transaction&&) = delete;
  Transaction& operator=(Transaction&&) = delete;
  void commit();

 private:
  const Connection& connection_;
  bool open_ = true;
};

}  // namespace larderloop::store
