// opening.h - from a path to a connection that can be read, whatever the file, its folder and its
// age allow. Cases:    writable file and folder   an ordinary connection; kQuery also tidies up
// after a program that was killed
//           read-only file or folder   frozen (no locks, nothing made) when no changes wait in a
//           -wal; then file_state tells
//                                      whether somebody wrote meanwhile. With a -wal in use:
//                                      SQLite's read-only way
//           older schema               writable: migrated after a backup; else a copy in memory is,
//           and is read instead
#pragma once

#include "store/files.h"
#include "store/migrate.h"
#include "store/sqlite_handle.h"

#include <optional>
#include <string>
#include <vector>

namespace larderloop::store {

enum class Purpose { kWrite, kQuery };

struct Opened {
  std::string real_path;
  Connection file;
  std::optional<Connection> memory;  // the same book in the newest form
  std::optional<FileState> frozen;   // as it was before it was read
  bool read_only = true;
  int version = 0;
  std::vector<std::string> notes;
};

// Errors: SqliteFailure, StoreFailure.
[[nodiscard]] Opened open_book(const std::string& path, Purpose purpose,
                               const Migrations& migrations, int busy_timeout_ms,
                               const std::string& backup_stamp);
// kBusy when a frozen file is not what it was.
void expect_unchanged(const Opened& opened, const std::string& path);

}  // namespace larderloop::store
