// Books of every released schema still open and say the same.
#include "unit/store/sample.h"
#include "unit/store/workshop.h"

namespace larderloop::testing {
namespace {

std::string fixture(int version) {
  std::string number = std::to_string(version);
  number.insert(0, 4 - number.size(), '0');
  return std::string(LARDERLOOP_SRC) + "/tests/store_fixtures/schema-" + number + ".sql";
}

TEST(Fixtures, EveryReleasedSchemaOpens) {
  for (int version = 1; version <= newest_schema(); ++version) {
    SCOPED_TRACE(fixture(version));
    const Folder folder;
    const std::string path = folder.file("old.book");
    const std::string sql = bytes_of(fixture(version));
    ASSERT_FALSE(sql.empty()) << "a released schema has its fixture";
    ASSERT_EQ(raw_sql(path, sql), "");
    EXPECT_TRUE(check_of(path)->empty()) << "the fixture is not what that schema was";
    // Through a copy in memory, then in the file itself.
    EXPECT_EQ(*load_from(path), sample_household_of(version));
    {
      auto book = Book::open(path, {});
      ASSERT_TRUE(is_done(book));
      EXPECT_EQ(book->schema_version(), newest_schema());
      EXPECT_EQ(*book->load(), sample_household_of(version));
      EXPECT_EQ(book->notes().size(), static_cast<std::size_t>(newest_schema() - version));
    }
    EXPECT_TRUE(check_of(path)->empty());
  }
}

}  // namespace
}  // namespace larderloop::testing
