// Whatever lies where a book is expected: a plain answer, and the file as it was.
#include "store/opening.h"

#include "store/failure.h"
#include "store/migrations.h"
#include "unit/store/sample.h"
#include "unit/store/workshop.h"

#include <csignal>

namespace larderloop::testing {
namespace {

class Opening : public ::testing::Test {
 protected:
  void SetUp() override { ASSERT_TRUE(is_done(Book::create(path_, before_, {}))); }
  // Both ways to open say the same, and touch nothing.
  void refused(const std::string& path, ErrorKind kind, const std::string& words) {
    const std::string bytes = std::filesystem::is_regular_file(path) ? bytes_of(path) : "";
    const std::set<std::string> names = folder_.names();
    for (const auto& opened : {Book::open(path, {}), Book::open_read_only(path, {})}) {
      EXPECT_TRUE(failed_as(opened, kind));
      if (opened) continue;
      EXPECT_NE(opened.error().what.find(words), std::string::npos) << opened.error().what;
      EXPECT_NE(opened.error().what.find(path), std::string::npos) << opened.error().what;
    }
    EXPECT_EQ(folder_.names(), names);
    if (std::filesystem::is_regular_file(path)) {
      EXPECT_EQ(bytes_of(path), bytes);
    }
  }
  // A program that dies between its commit and closing the book leaves changes in the -wal.
  void leave_changes_waiting() {
    EXPECT_EQ(in_child([&]() -> std::string {
                auto book = Book::open(path_, {});
                if (!book) return said(book);
                Changes changes;
                changes.entries = {added_};
                {
                  auto write = book->begin_write();
                  if (!write || !write->apply(changes) || !write->commit()) return "not written";
                }
                raise(SIGKILL);
                return "alive";
              }),
              "signal 9");
    ASSERT_GT(std::filesystem::file_size(path_ + "-wal"), 0u);
  }
  void everybody_may_read() {
    for (const std::string& name : folder_.names()) chmod(folder_.file(name).c_str(), 0444);
  }
  Folder folder_;
  std::string path_ = folder_.file("household.book");
  Household before_ = sample_household();
  Entry added_ = sample_entry(12, EntryKind::kFound, "2026-06-01", 6);
};

TEST_F(Opening, NothingThere) {
  refused(folder_.file("other.book"), ErrorKind::kNotFound, "there is no book");
}

TEST_F(Opening, AFolder) {
  refused(folder_.path(), ErrorKind::kStore, "is a folder");
}

TEST_F(Opening, NotAFile) {
  refused("/dev/null", ErrorKind::kStore, "is not a file");
}

TEST_F(Opening, AnEmptyFile) {
  put_bytes(path_, "");
  refused(path_, ErrorKind::kStore, "is empty");
}

TEST_F(Opening, SomethingElse) {
  put_bytes(path_, "a shopping list\n");
  refused(path_, ErrorKind::kStore, "is not a book");
  put_bytes(path_, std::string(20000, '\0'));
  refused(path_, ErrorKind::kStore, "is not a book");
}

TEST_F(Opening, ADatabaseOfAnotherProgram) {
  const std::string other = folder_.file("music.db");
  ASSERT_EQ(raw_sql(other, "CREATE TABLE song (name TEXT)"), "");
  refused(other, ErrorKind::kStore, "not a book");
}

TEST_F(Opening, ANewerSchema) {
  ASSERT_EQ(raw_sql(path_, "PRAGMA user_version = " + std::to_string(newest_schema() + 1)), "");
  refused(path_, ErrorKind::kStore, "newer version");
}

TEST_F(Opening, NoSchemaNumber) {
  ASSERT_EQ(raw_sql(path_, "PRAGMA user_version = 0"), "");
  refused(path_, ErrorKind::kStore, "damaged");
}

TEST_F(Opening, ABookWithoutATable) {
  ASSERT_EQ(raw_sql(path_, "PRAGMA foreign_keys = OFF; DROP TABLE entry"), "");
  EXPECT_TRUE(failed_as(load_from(path_), ErrorKind::kStore));
  const auto findings = check_of(path_);
  ASSERT_TRUE(is_done(findings));
  EXPECT_NE(std::find(findings->begin(), findings->end(), "the table 'entry' is missing"),
            findings->end());
}

TEST_F(Opening, NoPermission) {
  chmod(path_.c_str(), 0000);
  EXPECT_EQ(in_child([&] { return said(Book::open(path_, {})); }, true),
            "store: '" + path_ + "' cannot be read: Permission denied");
  chmod(path_.c_str(), 0444);
  chmod(folder_.path().c_str(), 0000);
  EXPECT_EQ(in_child([&] { return said(Book::open_read_only(path_, {})); }, true),
            "store: '" + path_ + "' cannot be opened: Permission denied");
}

// What a reader without any right to write sees of the book and leaves beside it.
std::string read_as_nobody(const std::string& path, const Household& expected) {
  return in_child(
      [&]() -> std::string {
        auto book = Book::open_read_only(path, {});
        if (!book) return said(book);
        const auto loaded = book->load();
        if (!loaded) return said(loaded);
        const auto findings = book->check();
        if (!findings) return said(findings);
        if (!findings->empty()) return findings->front();
        return *loaded == expected ? "the same" : "another household";
      },
      true);
}

TEST_F(Opening, AFolderWhereNothingCanBeWritten) {
  everybody_may_read();
  chmod(folder_.path().c_str(), 0555);
  EXPECT_EQ(read_as_nobody(path_, before_), "the same");
  EXPECT_EQ(folder_.names(), std::set<std::string>{"household.book"});
  EXPECT_EQ(in_child(
                [&]() -> std::string {
                  auto book = Book::open(path_, {});
                  if (!book) return said(book);
                  return (book->read_only() ? "read-only, " : "writable, ") +
                         said(book->begin_write());
                },
                true),
            "read-only, output: '" + path_ + "' can only be read here; nothing was changed");
}

TEST_F(Opening, AFileThatCannotBeWrittenLeavesItsFolderTidy) {
  everybody_may_read();
  EXPECT_EQ(read_as_nobody(path_, before_), "the same");
  EXPECT_EQ(folder_.names(), std::set<std::string>{"household.book"});
}

TEST_F(Opening, ABackupCanBeMadeOfAFileThatCannotBeWritten) {
  everybody_may_read();
  EXPECT_EQ(in_child(
                [&] {
                  auto book = Book::open_read_only(path_, {});
                  return book ? said(book->backup(folder_.file("copy.book"))) : said(book);
                },
                true),
            "done");
  chmod(folder_.file("copy.book").c_str(), 0600);
  EXPECT_EQ(*load_from(folder_.file("copy.book")), before_);
}

TEST_F(Opening, ChangesThatWaitAreReadWhereNothingCanBeWritten) {
  leave_changes_waiting();
  everybody_may_read();
  chmod(folder_.path().c_str(), 0555);
  Household after = before_;
  after.entries.push_back(added_);
  EXPECT_EQ(read_as_nobody(path_, after), "the same");
}

TEST_F(Opening, ChangesThatWaitAreNeverLeftOut) {
  leave_changes_waiting();
  std::filesystem::remove(path_ + "-shm");
  everybody_may_read();
  chmod(folder_.path().c_str(), 0555);
  Household after = before_;
  after.entries.push_back(added_);
  const std::string answer = read_as_nobody(path_, after);
  EXPECT_EQ(answer.find("store: the last changes of"), 0u) << answer;
}

TEST_F(Opening, ReadingPutsRightWhatAKilledProgramLeft) {
  leave_changes_waiting();
  Household after = before_;
  after.entries.push_back(added_);
  EXPECT_EQ(*load_from(path_), after);
  EXPECT_EQ(folder_.names(), std::set<std::string>{"household.book"});
}

TEST_F(Opening, ABookThatIsBeingWrittenIsNotTakenForFrozen) {
  using namespace store;
  const Opened frozen{
      path_, Connection(path_, Access::kFrozen, 0), std::nullopt, file_state(path_), true, 1, {}};
  EXPECT_NO_THROW(expect_unchanged(frozen, path_));
  Changes changes;
  changes.entries = {added_};
  ASSERT_TRUE(is_done(write_to(path_, changes)));
  const auto noticed = guarded(path_, [&] { expect_unchanged(frozen, path_); });
  EXPECT_TRUE(failed_as(noticed, ErrorKind::kBusy));
}

TEST_F(Opening, ReadersCannotWrite) {
  auto book = Book::open_read_only(path_, {});
  ASSERT_TRUE(is_done(book));
  EXPECT_TRUE(book->read_only());
  EXPECT_TRUE(failed_as(book->begin_write(), ErrorKind::kOutput));
}

TEST_F(Opening, ABookWithAnotherJournalIsStillABook) {
  ASSERT_EQ(raw_sql(path_, "PRAGMA journal_mode = DELETE"), "");
  EXPECT_EQ(*load_from(path_), before_);
  Changes changes;
  changes.entries = {added_};
  ASSERT_TRUE(is_done(write_to(path_, changes)));
  EXPECT_EQ(bytes_of(path_).substr(18, 2), "\x02\x02") << "writing goes back to WAL";
}

}  // namespace
}  // namespace larderloop::testing
