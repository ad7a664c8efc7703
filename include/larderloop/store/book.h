// book.h - the household's file: one SQLite database. All SQL of the project is behind this header.
// Safety:   WAL, synchronous=FULL, foreign keys on; triggers forbid changing or deleting what
// happened; writers take the lock first. Format:   docs/book.md.
#pragma once

#include "larderloop/core/changes.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace larderloop {

struct BookOptions {
  int busy_timeout_ms = 5000;
  std::string
      backup_stamp;  // for the name of a backup made before a migration ("20261125T081500Z")
};

class Book {
  struct Handle;

 public:
  Book(Book&&) noexcept;
  Book& operator=(Book&&) noexcept;
  Book(const Book&) = delete;  // one handle, one file lock
  Book& operator=(const Book&) = delete;
  ~Book();

  // Makes a new book holding `household`, in one step: on failure no file is left. kBadData when
  // the file exists.
  [[nodiscard]] static Status create(const std::string& path, const Household& household,
                                     const BookOptions& options);
  // Never creates. kNotFound: no such file; kStore: not a book, damaged, or newer (with advice). An
  // older schema is migrated after a backup beside the file, named in notes(). Read-only media open
  // read-only.
  [[nodiscard]] static Result<Book> open(const std::string& path, const BookOptions& options);
  // Never changes what the book says. Where neither file nor folder can be written it still works,
  // unless changes of a program that was killed wait in a -wal beside it (kStore, with advice). An
  // older schema is read through a copy in memory.
  [[nodiscard]] static Result<Book> open_read_only(const std::string& path,
                                                   const BookOptions& options);

  // Everything, from one consistent snapshot, lists sorted.
  [[nodiscard]] Result<Household> load();

  // A write: takes the write lock (kBusy after the time-out), then load(), apply() as often as
  // needed, commit(). Without commit everything is undone; a failed apply undoes everything at once
  // and ends the write. Must not outlive the book. One at a time; kOutput when the book can only be
  // read.
  class Write {
   public:
    Write(Write&&) noexcept;
    Write& operator=(Write&&) = delete;
    Write(const Write&) = delete;
    Write& operator=(const Write&) = delete;
    ~Write();  // rolls back unless committed
    [[nodiscard]] Result<Household> load();
    [[nodiscard]] Status apply(const Changes& changes);
    [[nodiscard]] Status commit();

   private:
    friend class Book;
    explicit Write(Handle& handle);
    Handle* handle_;  // null once it is over
  };
  [[nodiscard]] Result<Write> begin_write();

  // A consistent copy at `path` (must not exist: kBadData), synced, checked and compared before it
  // gets its name. A damaged book gives none (kStore).
  [[nodiscard]] Status backup(const std::string& path);
  // What SQLite and the schema say is wrong with the file: integrity, foreign keys, the tables and
  // triggers of the schema in place. Empty = sound. Household rules are validate.h's.
  [[nodiscard]] Result<std::vector<std::string>> check();
  [[nodiscard]] const std::vector<std::string>& notes() const;
  [[nodiscard]] int schema_version() const;
  [[nodiscard]] bool read_only() const;

 private:
  explicit Book(std::unique_ptr<Handle> handle);
  std::unique_ptr<Handle> handle_;
};

// The schema this program writes.
[[nodiscard]] int newest_schema();

}  // namespace larderloop
