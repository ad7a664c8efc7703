#include "unit/store/sample.h"
#include "unit/store/workshop.h"

namespace larderloop::testing {
namespace {

class Backup : public ::testing::Test {
 protected:
  void SetUp() override { ASSERT_TRUE(is_done(Book::create(path_, before_, {}))); }
  Folder folder_;
  std::string path_ = folder_.file("household.book");
  std::string copy_ = folder_.file("copy.book");
  Household before_ = sample_household();
};

TEST_F(Backup, IsAWholeBook) {
  auto book = Book::open_read_only(path_, {});
  ASSERT_TRUE(is_done(book));
  ASSERT_TRUE(is_done(book->backup(copy_)));
  EXPECT_EQ(*load_from(copy_), before_);
  EXPECT_TRUE(check_of(copy_)->empty());
  EXPECT_EQ(std::filesystem::status(copy_).permissions(),
            std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
  Changes changes;
  changes.entries = {sample_entry(12, EntryKind::kFound, "2026-06-01", 6)};
  EXPECT_TRUE(is_done(write_to(copy_, changes)));
  EXPECT_EQ(*book->load(), before_) << "the copy is a book of its own";
}

TEST_F(Backup, NeverOverwrites) {
  put_bytes(copy_, "mine");
  auto book = Book::open_read_only(path_, {});
  ASSERT_TRUE(is_done(book));
  EXPECT_TRUE(failed_as(book->backup(copy_), ErrorKind::kBadData));
  EXPECT_TRUE(failed_as(book->backup(path_), ErrorKind::kBadData));
  EXPECT_EQ(bytes_of(copy_), "mine");
  EXPECT_TRUE(failed_as(book->backup(folder_.file("no/such/folder")), ErrorKind::kOutput));
}

TEST_F(Backup, HoldsWhatIsCommittedAndNothingElse) {
  auto writer = Book::open(path_, {});
  ASSERT_TRUE(is_done(writer));
  Changes changes;
  changes.entries = {sample_entry(12, EntryKind::kFound, "2026-06-01", 6)};
  auto write = writer->begin_write();
  ASSERT_TRUE(is_done(write));
  ASSERT_TRUE(is_done(write->apply(changes)));
  EXPECT_FALSE(writer->backup(copy_)) << "in the middle of a write";
  auto reader = Book::open_read_only(path_, {});
  ASSERT_TRUE(is_done(reader));
  ASSERT_TRUE(is_done(reader->backup(copy_)));
  EXPECT_EQ(*load_from(copy_), before_);
  ASSERT_TRUE(is_done(write->commit()));
  ASSERT_TRUE(is_done(reader->backup(folder_.file("later.book"))));
  EXPECT_EQ(load_from(folder_.file("later.book"))->entries.back(), changes.entries.back());
}

}  // namespace
}  // namespace larderloop::testing
