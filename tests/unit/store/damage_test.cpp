// Damaged files: never a crash, never a household that is silently less than it was. SQLite keeps
// no check sums, so a letter that turned into another inside a text stays unseen here
// (docs/book.md); damage of the structure does not.
#include "unit/store/sample.h"
#include "unit/store/workshop.h"

#include <random>

namespace larderloop::testing {
namespace {

constexpr std::size_t kPage = 4096;

enum class Seen { kRefused, kFound, kUnharmed, kOtherValues };

class Damage : public ::testing::Test {
 protected:
  void SetUp() override {
    make_random_record(before_, 7, 60, 1200);
    ASSERT_TRUE(is_done(Book::create(path_, before_, {})));
    whole_ = bytes_of(path_);
    ASSERT_EQ(whole_.size() % kPage, 0u);
    ASSERT_GT(whole_.size(), 40 * kPage);
  }
  // Reads, checks, copies and tries to write the file with these bytes.
  Seen look_at(const std::string& bytes) {
    const std::string path = folder_.file("damaged.book");
    for (const std::string& name : folder_.names()) {
      if (name.find("damaged.book") == 0 || name == "copy.book")
        std::filesystem::remove(folder_.file(name));
    }
    put_bytes(path, bytes);
    auto book = Book::open_read_only(path, {});
    if (!book) {
      EXPECT_TRUE(failed_as(book, ErrorKind::kStore));
      return Seen::kRefused;
    }
    const auto findings = book->check();
    const auto loaded = book->load();
    if (!loaded) {
      EXPECT_TRUE(failed_as(loaded, ErrorKind::kStore));
    }
    if (!findings) {
      EXPECT_TRUE(failed_as(findings, ErrorKind::kStore));
      return Seen::kRefused;
    }
    if (!loaded || !findings->empty()) {
      const Status copied = book->backup(folder_.file("copy.book"));
      EXPECT_FALSE(copied) << "a backup of a damaged book";
      EXPECT_FALSE(std::filesystem::exists(folder_.file("copy.book")));
    }
    // Writing waits for the disk, so not every time; whatever comes of it, it must come back.
    if (++looks_ % 8 == 0) {
      Changes changes;
      changes.entries = {sample_entry(100'000, EntryKind::kFound, "2026-12-01", 6)};
      static_cast<void>(write_to(path, changes));
    }
    if (!loaded) return Seen::kRefused;
    if (!findings->empty()) return Seen::kFound;
    return *loaded == before_ ? Seen::kUnharmed : Seen::kOtherValues;
  }
  Folder folder_;
  std::string path_ = folder_.file("household.book");
  Household before_ = sample_household();
  std::string whole_;
  int looks_ = 0;
};

TEST_F(Damage, TheWholeFileIsSound) {
  EXPECT_EQ(look_at(whole_), Seen::kUnharmed);
}

TEST_F(Damage, CutOffAnywhere) {
  std::mt19937_64 random(11);
  std::vector<std::size_t> lengths = {1,
                                      15,
                                      16,
                                      99,
                                      100,
                                      512,
                                      kPage - 1,
                                      kPage,
                                      kPage + 1,
                                      whole_.size() - kPage,
                                      whole_.size() - 1};
  for (int more = 0; more < 20 * scale(); ++more)
    lengths.push_back(1 + random() % (whole_.size() - 1));
  for (const std::size_t length : lengths) {
    const Seen seen = look_at(whole_.substr(0, length));
    EXPECT_TRUE(seen == Seen::kRefused || seen == Seen::kFound)
        << "cut to " << length << " of " << whole_.size();
  }
}

TEST_F(Damage, AnyPageZeroed) {
  for (std::size_t page = 0; page < whole_.size() / kPage; ++page) {
    std::string bytes = whole_;
    std::fill_n(bytes.begin() + static_cast<std::ptrdiff_t>(page * kPage), kPage, '\0');
    const Seen seen = look_at(bytes);
    EXPECT_TRUE(seen == Seen::kRefused || seen == Seen::kFound) << "page " << page;
  }
}

// Two bytes at 3 of a b-tree page: how many cells it has (fileformat2.html, section 1.6).
bool has_cells(const std::string& bytes, std::size_t page) {
  return bytes[page * kPage + 3] != 0 || bytes[page * kPage + 4] != 0;
}

// Page 0 begins with the file's header and is another case; an empty page in the place of a full
// one is a table that lost its rows, which nothing in an SQLite file contradicts (docs/book.md).
TEST_F(Damage, APageInThePlaceOfAnother) {
  std::mt19937_64 random(12);
  const std::size_t pages = whole_.size() / kPage;
  int tried = 0;
  for (int round = 0; round < 30 * scale(); ++round) {
    const std::size_t from = 1 + random() % (pages - 1);
    const std::size_t to = 1 + random() % (pages - 1);
    std::string bytes = whole_;
    bytes.replace(to * kPage, kPage, whole_, from * kPage, kPage);
    if (bytes == whole_ || !has_cells(whole_, from)) continue;
    ++tried;
    const Seen seen = look_at(bytes);
    EXPECT_TRUE(seen == Seen::kRefused || seen == Seen::kFound)
        << "page " << from << " over " << to;
  }
  EXPECT_GT(tried, 10);
}

TEST_F(Damage, TurnedBitsNeverCrash) {
  std::mt19937_64 random(13);
  int noticed = 0;
  const int rounds = 60 * scale();
  for (int round = 0; round < rounds; ++round) {
    std::string bytes = whole_;
    for (int bits = 0; bits < 64; ++bits) {
      char& byte = bytes[random() % bytes.size()];
      byte = static_cast<char>(byte ^ (1 << (random() % 8)));
    }
    const Seen seen = look_at(bytes);
    if (seen == Seen::kRefused || seen == Seen::kFound) ++noticed;
  }
  EXPECT_GT(noticed, rounds / 2) << "64 turned bits are hardly ever only in texts";
}

// The parts of the file that say how to read the rest.
TEST_F(Damage, TurnedBitsInTheStructureAreSeen) {
  int noticed = 0;
  int tried = 0;
  for (std::size_t page = 1; page < whole_.size() / kPage; ++page) {
    std::string bytes = whole_;
    char& kind =
        bytes[page *
              kPage];  // the kind of b-tree page: 2, 5, 10 or 13 (fileformat2.html, section 1.6)
    if (kind != 2 && kind != 5 && kind != 10 && kind != 13) continue;
    kind = static_cast<char>(kind ^ 0x40);
    ++tried;
    const Seen seen = look_at(bytes);
    if (seen == Seen::kRefused || seen == Seen::kFound) ++noticed;
  }
  EXPECT_GT(tried, 40);
  EXPECT_EQ(noticed, tried);
}

// What was done to the book with another program that does not care.
TEST_F(Damage, WhatTheSchemaPromisedAndIsGoneIsFound) {
  const auto findings_after = [&](const std::string& sql) {
    put_bytes(folder_.file("b"), whole_);
    EXPECT_EQ(raw_sql(folder_.file("b"), sql), "");
    const auto findings = check_of(folder_.file("b"));
    EXPECT_TRUE(is_done(findings));
    return findings && !findings->empty() ? findings->front() : "";
  };
  EXPECT_EQ(findings_after("DROP TRIGGER entry_stays"), "the trigger 'entry_stays' is missing");
  EXPECT_EQ(findings_after("DROP TRIGGER lot_grows; CREATE TRIGGER lot_grows BEFORE INSERT ON lot "
                           "BEGIN SELECT 1; END"),
            "the trigger 'lot_grows' was changed");
  EXPECT_EQ(findings_after(
                "CREATE TRIGGER twice AFTER INSERT ON entry BEGIN DELETE FROM feed_stamp; END"),
            "the trigger 'twice' does not belong here");
  EXPECT_EQ(findings_after("ALTER TABLE person ADD COLUMN shoe_size INTEGER"),
            "the table 'person' was changed");
  EXPECT_EQ(findings_after("PRAGMA foreign_keys = OFF; DELETE FROM food WHERE key = 'coffee'"),
            "1 in 'food_role' name something that is not in 'food'");
  EXPECT_EQ(
      findings_after(
          "PRAGMA ignore_check_constraints = ON; UPDATE food SET servings = 0 WHERE key = 'bar'"),
      "the file is damaged: CHECK constraint failed in food");
  EXPECT_EQ(
      findings_after(
          "CREATE VIEW mine AS SELECT name FROM person; CREATE INDEX my_index ON food (name)"),
      "");
}

TEST_F(Damage, AValueThatCannotBeReadIsNamed) {
  ASSERT_EQ(raw_sql(path_,
                    "PRAGMA ignore_check_constraints = ON; UPDATE person SET born = '1984-02-30' "
                    "WHERE key = 'mira'"),
            "");
  const auto loaded = load_from(path_);
  ASSERT_TRUE(failed_as(loaded, ErrorKind::kStore));
  EXPECT_NE(loaded.error().what.find("'1984-02-30' stands for 'born'"), std::string::npos)
      << loaded.error().what;
}

// A label that is gone must not read as a label that says nothing.
TEST_F(Damage, ALostLabelIsNotAnUnreadLabel) {
  ASSERT_EQ(raw_sql(path_,
                    "PRAGMA foreign_keys = OFF; DROP TRIGGER statement_is_kept; DELETE FROM "
                    "statement WHERE id = (SELECT max(label) FROM lot)"),
            "");
  EXPECT_TRUE(failed_as(load_from(path_), ErrorKind::kStore));
}

}  // namespace
}  // namespace larderloop::testing
