#include "store/opening.h"

#include "store/copy.h"
#include "store/failure.h"

#include <utility>

namespace larderloop::store {
namespace {

constexpr const char* kPageSize = "PRAGMA page_size";
constexpr const char* kJournalMode = "PRAGMA journal_mode";
constexpr const char* kWal = "PRAGMA journal_mode = WAL";

bool nothing_waits(const std::string& path) {
  return absent_or_empty(path + "-wal") && absent_or_empty(path + "-journal");
}

// SQLite would take what is missing of a last page for zeros. While changes wait, the file may grow
// under our eyes.
void expect_whole_pages(const Opened& opened, const std::string& path) {
  const std::int64_t page = opened.file.number(kPageSize);
  if (!nothing_waits(opened.real_path) || page < 1 || file_state(opened.real_path).size % page == 0)
    return;
  throw StoreFailure(ErrorKind::kStore, "'" + path + "' is damaged: its end was cut off",
                     "keep this file as it is, and go on with a copy made by 'larderloop backup' "
                     "or one of the .backup files beside it");
}

// Could the file be read if nothing had to be made or written for it?
bool asks_for_writing(const SqliteFailure& failure) {
  const int kind = failure.code & 0xff;
  return kind == SQLITE_CANTOPEN || kind == SQLITE_READONLY || kind == SQLITE_IOERR ||
         kind == SQLITE_FULL;
}

Opened opened(const std::string& real, Access access, const Migrations& migrations,
              const std::string& path, int busy_timeout_ms) {
  std::optional<FileState> frozen;
  if (access == Access::kFrozen) frozen = file_state(real);
  Opened result{real, Connection(real, access, busy_timeout_ms), std::nullopt, frozen, true, 0, {}};
  result.version = known_version(result.file, migrations, path);
  expect_whole_pages(result, path);
  result.read_only = access != Access::kWrite || !result.file.writable();
  return result;
}

Opened opened_to_read(const std::string& real, const Migrations& migrations,
                      const std::string& path, int busy_timeout_ms) {
  const bool writable = may_write(real);
  if (!writable && nothing_waits(real))
    return opened(real, Access::kFrozen, migrations, path, busy_timeout_ms);
  try {
    return opened(real, writable ? Access::kQuery : Access::kRead, migrations, path,
                  busy_timeout_ms);
  } catch (const SqliteFailure& failure) {
    // A full disk, or a folder that cannot take the file that readers share.
    if (!asks_for_writing(failure)) throw;
    if (nothing_waits(real))
      return opened(real, Access::kFrozen, migrations, path, busy_timeout_ms);
    if (writable) throw;
  }
  throw StoreFailure(ErrorKind::kStore,
                     "the last changes of '" + path + "' are still in '" + path +
                         "-wal' and cannot be read where nothing can be written",
                     "copy both files together to a folder you may write to, and open the copy");
}

// Keeps what is there when somebody else is just using the file: a rollback journal is as safe,
// only slower.
void prefer_wal(const Connection& connection) {
  Query mode(connection, kJournalMode);
  if (!mode.step() || mode.view(0) == "wal") return;
  mode.run();
  try {
    connection.run(kWal);
  } catch (const SqliteFailure& failure) {
    if ((failure.code & 0xff) != SQLITE_BUSY) throw;
  }
}

}  // namespace

Opened open_book(const std::string& path, Purpose purpose, const Migrations& migrations,
                 int busy_timeout_ms, const std::string& backup_stamp) {
  expect_readable_file(path);
  const std::string real = real_path(path);
  const bool write = purpose == Purpose::kWrite && may_write(real);
  Opened result = write ? opened(real, Access::kWrite, migrations, path, busy_timeout_ms)
                        : opened_to_read(real, migrations, path, busy_timeout_ms);
  if (!result.read_only) prefer_wal(result.file);
  if (result.version == newest_of(migrations)) return result;
  if (!result.read_only) {
    migrate_file(result.file, migrations, {path, real, backup_stamp, busy_timeout_ms},
                 result.notes);
    result.version = newest_of(migrations);
    return result;
  }
  result.memory.emplace("", Access::kMemory, 0);
  copy_pages(result.file, *result.memory);
  expect_unchanged(result, path);
  migrate_private(*result.memory, migrations);
  result.notes.push_back("'" + path + "' has the older schema " + std::to_string(result.version) +
                         "; it is read through a copy in memory, and the file stays as it is");
  return result;
}

void expect_unchanged(const Opened& opened, const std::string& path) {
  if (opened.frozen && file_state(opened.real_path) != *opened.frozen) {
    throw StoreFailure(ErrorKind::kBusy,
                       "'" + path + "' was written by another program while it was read",
                       "try again in a moment");
  }
}

}  // namespace larderloop::store
