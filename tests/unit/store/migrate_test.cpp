// From an older form to a newer one, with steps that exist only here.
#include "store/migrate.h"

#include "store/failure.h"
#include "store/load.h"
#include "store/migrations.h"
#include "store/opening.h"
#include "unit/store/sample.h"
#include "unit/store/workshop.h"

namespace larderloop::testing {
namespace {

using store::Migrations;
using store::open_book;
using store::Purpose;

constexpr const char* kStamp = "20261125T081500Z";

class Migrating : public ::testing::Test {
 protected:
  void SetUp() override { ASSERT_TRUE(is_done(Book::create(path_, before_, {}))); }
  // The released steps and further ones.
  static Migrations with(const std::vector<std::string_view>& steps) {
    Migrations all = embedded_migrations();
    for (const std::string_view step : steps) all.emplace_back(all.back().first + 1, step);
    return all;
  }
  [[nodiscard]] Result<store::Opened> open(const Migrations& migrations,
                                           Purpose purpose = Purpose::kWrite) const {
    return store::guarded(path_,
                          [&] { return open_book(path_, purpose, migrations, 1000, kStamp); });
  }
  [[nodiscard]] std::string backup_name(int version, const std::string& more = "") const {
    return "household.book.before-schema-" + std::to_string(version) + "-" + kStamp + more +
           ".backup";
  }
  Folder folder_;
  std::string path_ = folder_.file("household.book");
  Household before_ = sample_household();
  int next_ = newest_schema() + 1;
};

// The numbers are those after schema 7; the released steps are all of the list, so these follow.
constexpr std::string_view kNickname =
    "ALTER TABLE person ADD COLUMN nickname TEXT; PRAGMA user_version = 8;";
constexpr std::string_view kShoeSize =
    "ALTER TABLE person ADD COLUMN shoe_size INTEGER; PRAGMA user_version = 9;";

TEST_F(Migrating, TheEmbeddedStepsAreNumberedFromOne) {
  int expected = 0;
  for (const auto& step : embedded_migrations()) EXPECT_EQ(step.first, ++expected);
  EXPECT_EQ(newest_schema(), expected);
}

TEST_F(Migrating, EachStepAfterABackupThatIsNamed) {
  {
    const auto opened = open(with({kNickname, kShoeSize}));
    ASSERT_TRUE(is_done(opened));
    EXPECT_EQ(opened->version, next_ + 1);
    EXPECT_EQ(store::load_household(opened->file), before_);
    ASSERT_EQ(opened->notes.size(), 2u);
    EXPECT_NE(opened->notes[0].find(folder_.file(backup_name(next_))), std::string::npos)
        << opened->notes[0];
    EXPECT_NE(opened->notes[1].find(folder_.file(backup_name(next_ + 1))), std::string::npos)
        << opened->notes[1];
    EXPECT_EQ(opened->file.number(
                  "SELECT count(*) FROM person WHERE nickname IS NULL AND shoe_size IS NULL"),
              4);
    EXPECT_EQ(opened->file.number("PRAGMA foreign_keys"), 1);
  }
  EXPECT_EQ(folder_.names(),
            (std::set<std::string>{"household.book", backup_name(next_), backup_name(next_ + 1)}));
  // The first backup is a book as this program knows it; the book itself no longer is.
  EXPECT_EQ(*load_from(folder_.file(backup_name(next_))), before_);
  EXPECT_TRUE(check_of(folder_.file(backup_name(next_)))->empty());
  EXPECT_TRUE(failed_as(Book::open(path_, {}), ErrorKind::kStore));
  const auto again = open(with({kNickname, kShoeSize}));
  ASSERT_TRUE(is_done(again));
  EXPECT_TRUE(again->notes.empty());
}

TEST_F(Migrating, NeverOverAnEarlierBackup) {
  put_bytes(folder_.file(backup_name(next_)), "mine");
  ASSERT_TRUE(is_done(open(with({kNickname}))));
  EXPECT_EQ(bytes_of(folder_.file(backup_name(next_))), "mine");
  EXPECT_EQ(*load_from(folder_.file(backup_name(next_, "-2"))), before_);
}

TEST_F(Migrating, AStepThatFailsChangesNothing) {
  for (const std::string_view step :
       {std::string_view("ALTER TABLE person ADD COLUMN nickname TEXT; INSERT INTO nowhere VALUES "
                         "(1); PRAGMA user_version = 8;"),
        std::string_view("ALTER TABLE person ADD COLUMN nickname TEXT;"),  // says no number
        std::string_view("DROP TRIGGER entry_is_kept; DROP TABLE review_mark; DELETE FROM person; "
                         "PRAGMA user_version = 8;")}) {  // leaves references to nobody
    EXPECT_FALSE(open(with({step}))) << step;
    EXPECT_EQ(*load_from(path_), before_) << step;
    EXPECT_TRUE(check_of(path_)->empty()) << step;
  }
}

TEST_F(Migrating, TheStepsThatWentWellStay) {
  EXPECT_FALSE(open(with({kNickname, "nonsense"})));
  const auto opened = open(with({kNickname}));
  ASSERT_TRUE(is_done(opened));
  EXPECT_TRUE(opened->notes.empty());
}

TEST_F(Migrating, ReadersReadACopyInMemoryAndTouchNothing) {
  const std::string bytes = bytes_of(path_);
  {
    const auto opened = open(with({kNickname}), Purpose::kQuery);
    ASSERT_TRUE(is_done(opened));
    ASSERT_TRUE(opened->memory);
    EXPECT_TRUE(opened->read_only);
    EXPECT_EQ(opened->memory->number("SELECT count(*) FROM person WHERE nickname IS NULL"), 4);
    EXPECT_EQ(store::load_household(*opened->memory), before_);
    EXPECT_EQ(opened->version, next_ - 1);
    EXPECT_EQ(opened->notes.size(), 1u);
  }
  EXPECT_EQ(bytes_of(path_), bytes);
  EXPECT_EQ(folder_.names(), std::set<std::string>{"household.book"});
}

TEST_F(Migrating, ADamagedBookIsNotRewritten) {
  ASSERT_EQ(raw_sql(path_, "PRAGMA foreign_keys = OFF; DELETE FROM food WHERE key = 'coffee'"), "");
  const std::string bytes = bytes_of(path_);
  EXPECT_FALSE(open(with({kNickname})));
  EXPECT_EQ(bytes_of(path_), bytes);
  EXPECT_EQ(folder_.names(), std::set<std::string>{"household.book"});
}

}  // namespace
}  // namespace larderloop::testing
