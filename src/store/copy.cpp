#include "store/copy.h"

#include "store/failure.h"
#include "store/files.h"

#include <new>

namespace larderloop::store {
namespace {

struct FinishBackup {
  void operator()(sqlite3_backup* handle) const { sqlite3_backup_finish(handle); }
};

// The copy is written to a name of its own and synced at the end, so it needs no journal.
constexpr const char* kPrivateFile = "PRAGMA journal_mode = MEMORY; PRAGMA synchronous = OFF";
constexpr const char* kWal = "PRAGMA journal_mode = WAL";

}  // namespace

void copy_pages(const Connection& from, const Connection& to) {
  const std::unique_ptr<sqlite3_backup, FinishBackup> backup(
      sqlite3_backup_init(to.handle(), "main", from.handle(), "main"));
  if (backup == nullptr)
    throw SqliteFailure(sqlite3_extended_errcode(to.handle()), sqlite3_errmsg(to.handle()));
  const int code = sqlite3_backup_step(backup.get(), -1);
  if (code == SQLITE_NOMEM) throw std::bad_alloc();
  if (code != SQLITE_DONE) throw SqliteFailure(code, sqlite3_errstr(code));
}

void copy_to_new_file(const Connection& from, const std::string& path,
                      const std::function<void(const Connection&)>& verify) {
  NewFile file(path);
  const std::string real = real_path(file.path());
  {
    const Connection to(real, Access::kNew, 0);
    to.run(kPrivateFile);
    copy_pages(from, to);
    to.run(kWal);
  }
  {
    const Connection copy(real, Access::kQuery, 0);
    verify(copy);
  }
  file.publish();
}

}  // namespace larderloop::store
