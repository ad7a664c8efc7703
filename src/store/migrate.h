// migrate.h - from one form of the book to the next: each step in one transaction, after a backup
// beside the file.
#pragma once

#include "store/sqlite_handle.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace larderloop::store {

// Pairs of (schema version reached, SQL text): 1, 2, 3, ... The text sets PRAGMA user_version
// itself.
using Migrations = std::vector<std::pair<int, std::string_view>>;

// "LLbk": at byte 68 of every book (docs/book.md).
inline constexpr std::int64_t kApplicationId = 0x4C4C626B;

// What a book may be named in messages and where its backups go.
struct Upgrade {
  std::string shown_path;  // as the caller named it
  std::string real_path;
  std::string stamp;  // for the names of the backups
  int busy_timeout_ms = 0;
};

[[nodiscard]] int newest_of(const Migrations& migrations);
// The version of a book; kStore when it is no book, or newer than `migrations` know.
[[nodiscard]] int known_version(const Connection& connection, const Migrations& migrations,
                                const std::string& shown_path);

// Every step that is missing. No transaction may be open. Failing leaves the last version that was
// reached.
void migrate_file(const Connection& connection, const Migrations& migrations,
                  const Upgrade& upgrade, std::vector<std::string>& notes);
// The same for a database that nobody else sees: no backups.
void migrate_private(const Connection& connection, const Migrations& migrations);

}  // namespace larderloop::store
