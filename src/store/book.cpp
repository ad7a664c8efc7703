#include "larderloop/store/book.h"

#include "store/check_file.h"
#include "store/copy.h"
#include "store/failure.h"
#include "store/files.h"
#include "store/load.h"
#include "store/migrations.h"
#include "store/opening.h"
#include "store/save.h"

#include <utility>

namespace larderloop {
namespace {

using store::Connection;
using store::guarded;
using store::StoreFailure;
using store::Transaction;

// The new file has another name until it is whole, so it needs no journal.
constexpr const char* kPrivateFile = "PRAGMA journal_mode = MEMORY; PRAGMA synchronous = OFF";
constexpr const char* kWal = "PRAGMA journal_mode = WAL";
constexpr const char* kVersion = "PRAGMA user_version";

}  // namespace

struct Book::Handle {
  std::string path;  // as the caller named it
  store::Opened opened;

  [[nodiscard]] const Connection& newest() const {
    return opened.memory ? *opened.memory : opened.file;
  }
  // From one snapshot, also inside a write.
  [[nodiscard]] Household load() const {
    if (newest().in_transaction()) return store::load_household(newest());
    Transaction snapshot(newest(), Transaction::Kind::kRead);
    Household household = store::load_household(newest());
    snapshot.commit();
    store::expect_unchanged(opened, path);
    return household;
  }
  void roll_back() const {
    if (opened.file.in_transaction())
      sqlite3_exec(opened.file.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
  }
};

int newest_schema() {
  return store::newest_of(embedded_migrations());
}

Book::Book(std::unique_ptr<Handle> handle) : handle_(std::move(handle)) {}
Book::Book(Book&&) noexcept = default;
Book& Book::operator=(Book&&) noexcept = default;
Book::~Book() = default;

Status Book::create(const std::string& path, const Household& household, const BookOptions&) {
  return guarded(path, [&] {
    store::NewFile file(path);
    {
      const Connection connection(store::real_path(file.path()), store::Access::kNew, 0);
      connection.run(kPrivateFile);
      store::migrate_private(connection, embedded_migrations());
      Transaction transaction(connection, Transaction::Kind::kWrite);
      store::save_household(connection, household);
      transaction.commit();
      connection.run(kWal);
    }
    file.publish();
  });
}

Result<Book> Book::open(const std::string& path, const BookOptions& options) {
  return guarded(path, [&] {
    return Book(std::make_unique<Handle>(
        Handle{path, store::open_book(path, store::Purpose::kWrite, embedded_migrations(),
                                      options.busy_timeout_ms, options.backup_stamp)}));
  });
}

Result<Book> Book::open_read_only(const std::string& path, const BookOptions& options) {
  return guarded(path, [&] {
    return Book(std::make_unique<Handle>(
        Handle{path, store::open_book(path, store::Purpose::kQuery, embedded_migrations(),
                                      options.busy_timeout_ms, options.backup_stamp)}));
  });
}

Result<Household> Book::load() {
  return guarded(handle_->path, [&] { return handle_->load(); });
}

Result<Book::Write> Book::begin_write() {
  return guarded(handle_->path, [&] {
    const Connection& file = handle_->opened.file;
    if (handle_->opened.read_only) {
      throw StoreFailure(
          ErrorKind::kOutput, "'" + handle_->path + "' can only be read here; nothing was changed",
          "allow writing to the file and its folder, or copy it to a folder you may write to");
    }
    if (file.in_transaction())
      throw StoreFailure(ErrorKind::kDefect, "a write is going on already");
    file.run("BEGIN IMMEDIATE");
    Write write(*handle_);
    if (file.number(kVersion) != handle_->opened.version) {
      throw StoreFailure(ErrorKind::kBusy,
                         "another program just changed the form of '" + handle_->path + "'",
                         "run the same command again");
    }
    return write;
  });
}

Book::Write::Write(Handle& handle) : handle_(&handle) {}

Book::Write::Write(Write&& other) noexcept : handle_(std::exchange(other.handle_, nullptr)) {}

Book::Write::~Write() {
  if (handle_ != nullptr) handle_->roll_back();
}

Result<Household> Book::Write::load() {
  if (handle_ == nullptr) return fail(ErrorKind::kDefect, "this write is over");
  return guarded(handle_->path, [&] { return handle_->load(); });
}

Status Book::Write::apply(const Changes& changes) {
  if (handle_ == nullptr) return fail(ErrorKind::kDefect, "this write is over");
  Status applied =
      guarded(handle_->path, [&] { store::save_changes(handle_->opened.file, changes); });
  if (!applied) {
    handle_->roll_back();
    handle_ = nullptr;
  }
  return applied;
}

Status Book::Write::commit() {
  if (handle_ == nullptr) return fail(ErrorKind::kDefect, "this write is over");
  Handle& handle = *std::exchange(handle_, nullptr);
  Status committed = guarded(handle.path, [&] { handle.opened.file.run("COMMIT"); });
  if (!committed) handle.roll_back();
  return committed;
}

Status Book::backup(const std::string& path) {
  // Whatever goes wrong with the copy is said of the copy.
  return guarded(path, [&] {
    const store::Opened& opened = handle_->opened;
    if (opened.file.in_transaction())
      throw StoreFailure(ErrorKind::kDefect, "a write is going on; finish it before the backup");
    Transaction snapshot(opened.file, Transaction::Kind::kRead);
    std::optional<Household> ours;
    if (!opened.memory) ours = store::load_household(opened.file);
    store::copy_to_new_file(opened.file, path, [&](const Connection& copy) {
      store::expect_unchanged(opened, handle_->path);
      if (const std::vector<std::string> findings = store::check_file(copy, embedded_migrations());
          !findings.empty()) {
        throw StoreFailure(
            ErrorKind::kStore,
            "no backup was made, because '" + handle_->path + "' is damaged: " + findings.front(),
            "see all that is wrong: larderloop check; keep this file, and restore an earlier "
            "backup");
      }
      if (ours && store::load_household(copy) != *ours) {
        throw StoreFailure(
            ErrorKind::kOutput,
            "the copy '" + path + "' does not hold what was written to it; it was removed",
            "look whether the disk is healthy, or name a file on another one");
      }
    });
    snapshot.commit();
  });
}

Result<std::vector<std::string>> Book::check() {
  return guarded(handle_->path, [&] {
    std::vector<std::string> findings =
        store::check_file(handle_->opened.file, embedded_migrations());
    store::expect_unchanged(handle_->opened, handle_->path);
    return findings;
  });
}

const std::vector<std::string>& Book::notes() const {
  return handle_->opened.notes;
}
int Book::schema_version() const {
  return handle_->opened.version;
}
bool Book::read_only() const {
  return handle_->opened.read_only;
}

}  // namespace larderloop
