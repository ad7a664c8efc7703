// book.h - the household's file: one SQLite database. All SQL of the project is behind this header.
// Safety:   WAL, synchronous=FULL, foreign keys on; triggers forbid changing or deleting what happened; writers take the lock first.
// Format:   docs/book.md.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "larderloop/core/changes.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

namespace larderloop {

struct BookOptions {
  int busy_timeout_ms = 5000;
  std::string backup_stamp;  // for the name of a backup made before a migration ("20261125T081500Z")
};

class Book {
 public:
  Book(Book&&) noexcept;
  Book& operator=(Book&&) noexcept;
  Book(const Book&) = delete;             // one handle, one file lock
  Book& operator=(const Book&) = delete;
  ~Book();

  // Makes a new book holding `household`, in one step: on failure no file is left. kBadData when the file exists.
  [[nodiscard]] static Status create(const std::string& path, const Household& household, const BookOptions& options);
  // Never creates. kNotFound: no such file; kStore: not a book, damaged, or newer (with advice). An older schema is migrated after a
  // backup beside the file, named in notes(). Read-only media open read-only.
  [[nodiscard]] static Result<Book> open(const std::string& path, const BookOptions& options);
  [[nodiscard]] static Result<Book> open_read_only(const std::string& path, const BookOptions& options);

  // Everything, from one consistent snapshot, lists sorted.
  [[nodiscard]] Result<Household> load();

  // A write: takes the write lock (kBusy after the time-out), then load(), apply() as often as needed, commit(). Without commit everything is undone.
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
    explicit Write(Book& book);
    Book* book_;
    bool open_ = true;
  };
  [[nodiscard]] Result<Write> begin_write();

  // A consistent copy at `path` (must not exist), with the record checked in the copy.
  [[nodiscard]] Status backup(const std::string& path);
  // What SQLite and the schema say is wrong with the file: integrity, foreign keys, triggers in place. Empty = sound. Household rules are validate.h's.
  [[nodiscard]] Result<std::vector<std::string>> check();
  [[nodiscard]] const std::vector<std::string>& notes() const;
  [[nodiscard]] int schema_version() const;
  [[nodiscard]] bool read_only() const;

 private:
  struct Handle;
  explicit Book(std::unique_ptr<Handle> handle);
  std::unique_ptr<Handle> handle_;
};

// The schema this program writes.
[[nodiscard]] int newest_schema();

}  // namespace larderloop
