#include "larderloop/store/book.h"

#include "larderloop/core/validate.h"
#include "unit/store/sample.h"
#include "unit/store/workshop.h"

#include <concepts>

namespace larderloop::testing {
namespace {

static_assert(!std::copy_constructible<Book>);
static_assert(!std::copy_constructible<Book::Write>);

Household empty_household() {
  Household household;
  household.book_id = "11111111-2222-4333-8444-555555555555";
  return household;
}

TEST(Book, GivesBackEveryFieldAndWord) {
  const Folder folder;
  const std::string path = folder.file("household.book");
  const Household sample = sample_household();
  const std::vector<Problem> problems = validate(sample);
  ASSERT_TRUE(problems.empty()) << "the sample itself is wrong: " << problems.front().where;
  ASSERT_TRUE(is_done(Book::create(path, sample, {})));
  const auto loaded = load_from(path);
  ASSERT_TRUE(is_done(loaded));
  EXPECT_EQ(loaded->settings, sample.settings);
  EXPECT_EQ(loaded->foods, sample.foods);
  EXPECT_EQ(loaded->people, sample.people);
  EXPECT_EQ(loaded->menu, sample.menu);
  EXPECT_EQ(loaded->lots, sample.lots);
  EXPECT_EQ(loaded->readings, sample.readings);
  EXPECT_EQ(loaded->entries, sample.entries);
  EXPECT_EQ(*loaded, sample);
}

TEST(Book, GivesBackAnEmptyHousehold) {
  const Folder folder;
  ASSERT_TRUE(is_done(Book::create(folder.file("b"), empty_household(), {})));
  const auto loaded = load_from(folder.file("b"));
  ASSERT_TRUE(is_done(loaded));
  EXPECT_EQ(*loaded, empty_household());
}

TEST(Book, GivesBackRandomRecords) {
  for (int round = 1; round <= 5 * scale(); ++round) {
    SCOPED_TRACE("seed " + std::to_string(round));
    const Folder folder;
    Household household = sample_household();
    make_random_record(household, static_cast<std::uint64_t>(round), 20, 400);
    ASSERT_GT(household.entries.size(), 100u);
    ASSERT_TRUE(is_done(Book::create(folder.file("b"), household, {})));
    const auto loaded = load_from(folder.file("b"));
    ASSERT_TRUE(is_done(loaded));
    EXPECT_EQ(*loaded, household);
  }
}

TEST(Book, IsOneSoundPrivateFile) {
  const Folder folder;
  const std::string path = folder.file("household.book");
  ASSERT_TRUE(is_done(Book::create(path, sample_household(), {})));
  EXPECT_EQ(folder.names(), std::set<std::string>{"household.book"});
  EXPECT_EQ(std::filesystem::status(path).permissions(),
            std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
  // SQLite file format, sections 1.3.15 and 1.3.3 (sqlite.org/fileformat2.html): application id at
  // byte 68, WAL = 2 at byte 18.
  const std::string bytes = bytes_of(path);
  EXPECT_EQ(bytes.substr(68, 4), "LLbk");
  EXPECT_EQ(bytes.substr(18, 2), "\x02\x02");
  const auto findings = check_of(path);
  ASSERT_TRUE(is_done(findings));
  EXPECT_TRUE(findings->empty()) << findings->front();
  EXPECT_EQ(bytes_of(path), bytes) << "reading and checking changed the file";
  EXPECT_EQ(folder.names(), std::set<std::string>{"household.book"});
}

TEST(Book, IsOneFileAgainAfterWriting) {
  const Folder folder;
  ASSERT_TRUE(is_done(Book::create(folder.file("b"), sample_household(), {})));
  Changes changes;
  changes.entries = {sample_entry(12, EntryKind::kFound, "2026-06-01", 6)};
  ASSERT_TRUE(is_done(write_to(folder.file("b"), changes)));
  EXPECT_EQ(folder.names(), std::set<std::string>{"b"});
  EXPECT_EQ(load_from(folder.file("b"))->entries.back(), changes.entries.back());
}

TEST(Book, CreateLeavesWhatIsThere) {
  const Folder folder;
  put_bytes(folder.file("b"), "mine");
  EXPECT_TRUE(
      failed_as(Book::create(folder.file("b"), sample_household(), {}), ErrorKind::kBadData));
  EXPECT_EQ(bytes_of(folder.file("b")), "mine");
  EXPECT_EQ(folder.names(), std::set<std::string>{"b"});
}

TEST(Book, CreateDoesNotTakeOverThePartsOfAnotherBook) {
  const Folder folder;
  for (const char* name : {"b-wal", "b-shm", "b-journal"}) {
    put_bytes(folder.file(name), "left over");
    EXPECT_TRUE(
        failed_as(Book::create(folder.file("b"), sample_household(), {}), ErrorKind::kBadData));
    EXPECT_EQ(folder.names(), std::set<std::string>{name});
    std::filesystem::remove(folder.file(name));
  }
}

TEST(Book, CreateThatFailsLeavesNothing) {
  const Folder folder;
  Household dangling = sample_household();
  dangling.lots.back().food = FoodKey("no-such-food");
  EXPECT_TRUE(failed_as(Book::create(folder.file("b"), dangling, {}), ErrorKind::kBadData));
  EXPECT_TRUE(folder.names().empty());
  EXPECT_TRUE(failed_as(Book::create(folder.file("no/such/folder/b"), sample_household(), {}),
                        ErrorKind::kOutput));
  EXPECT_TRUE(folder.names().empty());
}

TEST(Book, OddNamesAreOnlyNames) {
  const Folder folder;
  for (const char* name : {"a b?immutable=1#x%20", "file:x", ":memory:", "süß"}) {
    const std::string path = folder.file(name);
    ASSERT_TRUE(is_done(Book::create(path, sample_household(), {}))) << name;
    EXPECT_TRUE(is_done(load_from(path))) << name;
    EXPECT_TRUE(folder.names().count(name)) << name;
  }
  const std::string before = std::filesystem::current_path().string();
  std::filesystem::current_path(folder.path());
  EXPECT_TRUE(is_done(load_from(":memory:")));
  EXPECT_TRUE(is_done(load_from("file:x")));
  std::filesystem::current_path(before);
}

TEST(Book, ASymbolicLinkLeadsToTheBook) {
  const Folder folder;
  ASSERT_TRUE(is_done(Book::create(folder.file("b"), sample_household(), {})));
  std::filesystem::create_symlink(folder.file("b"), folder.file("link"));
  Changes changes;
  changes.entries = {sample_entry(12, EntryKind::kFound, "2026-06-01", 6)};
  ASSERT_TRUE(is_done(write_to(folder.file("link"), changes)));
  EXPECT_EQ(load_from(folder.file("b"))->entries.size(), sample_household().entries.size() + 1);
  EXPECT_TRUE(
      failed_as(Book::create(folder.file("link"), sample_household(), {}), ErrorKind::kBadData));
}

TEST(Book, NewestSchemaIsWhatAFreshBookHas) {
  const Folder folder;
  ASSERT_TRUE(is_done(Book::create(folder.file("b"), empty_household(), {})));
  const auto book = Book::open(folder.file("b"), {});
  ASSERT_TRUE(is_done(book));
  EXPECT_EQ(book->schema_version(), newest_schema());
  EXPECT_TRUE(book->notes().empty());
  EXPECT_FALSE(book->read_only());
}

}  // namespace
}  // namespace larderloop::testing
