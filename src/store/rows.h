// rows.h - many rows into one table, some by each run of a statement: what SQLite does once a
// statement (a savepoint, looking up triggers and references) is then done once for all of them.
// Every row is checked as it would be alone. Errors: as Query.
#pragma once

#include "store/sqlite_handle.h"

#include <cstddef>
#include <optional>
#include <string>

namespace larderloop::store {

class Rows {
 public:
  // `sql`: an INSERT that ends with the values of one row, each a name of its own: "INSERT INTO t
  // (a, b) VALUES (:a, :b)". `total`: how many rows will come; the last of them is written when it
  // is done().
  Rows(const Connection& connection, const char* sql, std::size_t total);
  // The next row, whose values are to be set.
  Query& row();
  // Its values are all set.
  void done();

 private:
  void prepare();
  const Connection& connection_;
  std::string sql_;
  int values_ = 0;
  std::size_t left_;
  std::size_t size_ = 0;  // rows of the statement
  std::size_t at_ = 0;
  std::optional<Query> query_;
};

}  // namespace larderloop::store
