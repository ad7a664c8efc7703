#include "store/sqlite_handle.h"

#include "store/failure.h"

#include <limits>
#include <new>

namespace larderloop::store {
namespace {

[[noreturn]] void give_up(int code, const std::string& words) {
  if ((code & 0xff) == SQLITE_NOMEM) throw std::bad_alloc();
  throw SqliteFailure(code, words);
}

[[noreturn]] void give_up(sqlite3* handle, int code) {
  const bool same = handle != nullptr && sqlite3_errcode(handle) == (code & 0xff);
  give_up(code, same ? sqlite3_errmsg(handle) : sqlite3_errstr(code));
}

// "/a b" -> "file:///a%20b?immutable=1" (RFC 3986, section 2).
std::string frozen_uri(const std::string& path) {
  constexpr std::string_view kHex = "0123456789ABCDEF";
  std::string uri = "file://";
  for (const char each : path) {
    const bool plain = (each >= 'a' && each <= 'z') || (each >= 'A' && each <= 'Z') ||
                       (each >= '0' && each <= '9') || each == '/' || each == '.' || each == '-' ||
                       each == '_';
    if (plain) {
      uri += each;
    } else {
      const auto byte = static_cast<unsigned char>(each);
      uri += '%';
      uri += kHex[byte / 16];
      uri += kHex[byte % 16];
    }
  }
  return uri + "?immutable=1";
}

int open_flags(Access access) {
  switch (access) {
    case Access::kNew:
    case Access::kWrite:
    case Access::kQuery:
      return SQLITE_OPEN_READWRITE;
    case Access::kRead:
      return SQLITE_OPEN_READONLY;
    case Access::kFrozen:
      return SQLITE_OPEN_READONLY | SQLITE_OPEN_URI;
    case Access::kMemory:
      return SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_MEMORY;
  }
  return SQLITE_OPEN_READONLY;
}

std::string open_name(const std::string& path, Access access) {
  if (access == Access::kMemory) return ":memory:";
  return access == Access::kFrozen ? frozen_uri(path) : path;
}

// Safe against power failure (FULL) and against schemas made by others: no functions with side
// effects, no tricks with the schema table, no replacing that would slip past the triggers.
constexpr const char* kEveryConnection =
    "PRAGMA foreign_keys = ON;"
    "PRAGMA recursive_triggers = ON;"
    "PRAGMA trusted_schema = OFF;"
    "PRAGMA cell_size_check = ON;"
    "PRAGMA synchronous = FULL;"
    "PRAGMA temp_store = MEMORY;";

// Whoever uses SQLite in this process before us decides instead: then this does nothing. Keeping
// account of its memory costs a lock a piece; and a few pages of memory beforehand serve a file,
// but not the small tables that SQLite makes for "IN (...)" in a CHECK, at every row anew.
void set_up_library() {
  static const bool once = sqlite3_config(SQLITE_CONFIG_MEMSTATUS, 0) == SQLITE_OK &&
                           sqlite3_config(SQLITE_CONFIG_PAGECACHE, nullptr, 0, 0) == SQLITE_OK;
  static_cast<void>(once);
}

}  // namespace

Connection::Connection(const std::string& path, Access access, int busy_timeout_ms) {
  set_up_library();
  sqlite3* raw = nullptr;
  const int code =
      sqlite3_open_v2(open_name(path, access).c_str(), &raw,
                      open_flags(access) | SQLITE_OPEN_EXRESCODE | SQLITE_OPEN_NOMUTEX, nullptr);
  handle_.reset(raw);
  if (code != SQLITE_OK) give_up(raw, code);
  sqlite3_busy_timeout(raw, busy_timeout_ms);
  sqlite3_db_config(raw, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
  sqlite3_db_config(raw, SQLITE_DBCONFIG_DQS_DML, 0, nullptr);
  sqlite3_db_config(raw, SQLITE_DBCONFIG_DQS_DDL, 0, nullptr);
  run(kEveryConnection);
  if (access == Access::kQuery || access == Access::kRead || access == Access::kFrozen)
    run("PRAGMA query_only = ON");
}

void Connection::run(const char* sql) const {
  char* words = nullptr;
  const int code = sqlite3_exec(handle_.get(), sql, nullptr, nullptr, &words);
  const std::string message = words != nullptr ? words : sqlite3_errstr(code);
  sqlite3_free(words);
  if (code != SQLITE_OK) give_up(code, message);
}

std::int64_t Connection::number(const char* sql) const {
  Query query(*this, sql);
  if (!query.step())
    throw StoreFailure(ErrorKind::kDefect, std::string("no row from '") + sql + "'");
  return query.integer(0);
}

bool Connection::in_transaction() const {
  return sqlite3_get_autocommit(handle_.get()) == 0;
}

bool Connection::writable() const {
  return sqlite3_db_readonly(handle_.get(), "main") == 0;
}

Query::Query(const Connection& connection, const char* sql) {
  sqlite3_stmt* raw = nullptr;
  const int code = sqlite3_prepare_v2(connection.handle(), sql, -1, &raw, nullptr);
  handle_.reset(raw);
  if (code != SQLITE_OK) give_up(connection.handle(), code);
}

void Query::check(int code) const {
  if (code != SQLITE_OK) give_up(sqlite3_db_handle(handle_.get()), code);
}

int Query::parameter(const char* name) {
  const std::size_t turn = set_++;
  if (turn < order_.size() && order_[turn].first == name) return before_ + order_[turn].second;
  const int index = sqlite3_bind_parameter_index(handle_.get(), name);
  if (index == 0)
    throw StoreFailure(ErrorKind::kDefect, std::string("no parameter '") + name + "'");
  if (turn == order_.size()) order_.emplace_back(name, index);
  return before_ + index;
}

int Query::parameters() const {
  return sqlite3_bind_parameter_count(handle_.get());
}

void Query::set_row(int before) {
  before_ = before;
  set_ = 0;
}

Query& Query::set(const char* name, std::int64_t value) {
  check(sqlite3_bind_int64(handle_.get(), parameter(name), value));
  return *this;
}

Query& Query::set(const char* name, std::string_view value) {
  const char* bytes = value.data() != nullptr ? value.data() : "";
  check(sqlite3_bind_text64(handle_.get(), parameter(name), bytes, value.size(), SQLITE_TRANSIENT,
                            SQLITE_UTF8));
  return *this;
}

Query& Query::set_null(const char* name) {
  check(sqlite3_bind_null(handle_.get(), parameter(name)));
  return *this;
}

bool Query::step() {
  const int code = sqlite3_step(handle_.get());
  if (code == SQLITE_ROW) return true;
  if (code != SQLITE_DONE) give_up(sqlite3_db_handle(handle_.get()), code);
  return false;
}

void Query::run() {
  while (step()) {
  }
  check(sqlite3_reset(handle_.get()));
  set_ = 0;
}

bool Query::is_null(int column) const {
  return sqlite3_column_type(handle_.get(), column) == SQLITE_NULL;
}

std::int64_t Query::integer(int column) const {
  return sqlite3_column_int64(handle_.get(), column);
}

int Query::small(int column) const {
  const std::int64_t value = integer(column);
  if (value < std::numeric_limits<int>::min() || value > std::numeric_limits<int>::max())
    bad_value(column, "a smaller number");
  return static_cast<int>(value);
}

std::string_view Query::view(int column) const {
  const unsigned char* bytes = sqlite3_column_text(handle_.get(), column);
  if (bytes == nullptr) {
    if (!is_null(column)) throw std::bad_alloc();
    return {};
  }
  return {reinterpret_cast<const char*>(bytes),
          static_cast<std::size_t>(sqlite3_column_bytes(handle_.get(), column))};
}

Day Query::day(int column) const {
  const auto value = parse_iso_day(view(column));
  if (!value) bad_value(column, "a day like 2027-03-15");
  return *value;
}

Instant Query::instant(int column) const {
  const auto value = parse_iso_instant(view(column));
  if (!value) bad_value(column, "an instant like 2027-03-15T08:30:00Z");
  return *value;
}

std::optional<std::int64_t> Query::maybe_integer(int column) const {
  if (is_null(column)) return std::nullopt;
  return integer(column);
}

std::optional<int> Query::maybe_small(int column) const {
  if (is_null(column)) return std::nullopt;
  return small(column);
}

std::optional<Day> Query::maybe_day(int column) const {
  if (is_null(column)) return std::nullopt;
  return day(column);
}

void Query::bad_value(int column, const char* wanted) const {
  const char* name = sqlite3_column_name(handle_.get(), column);
  throw StoreFailure(ErrorKind::kStore,
                     "the book is damaged: '" + text(column) + "' stands for '" +
                         (name != nullptr ? name : "?") + "' where " + wanted + " belongs",
                     "see what else is wrong: larderloop check; then restore a backup");
}

Transaction::Transaction(const Connection& connection, Kind kind) : connection_(connection) {
  connection_.run(kind == Kind::kWrite ? "BEGIN IMMEDIATE" : "BEGIN");
}

Transaction::~Transaction() {
  // A failed statement may have rolled back already; a roll-back that fails leaves nothing that
  // could be done here.
  if (open_ && connection_.in_transaction())
    sqlite3_exec(connection_.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
}

void Transaction::commit() {
  connection_.run("COMMIT");
  open_ = false;
}

}  // namespace larderloop::store
