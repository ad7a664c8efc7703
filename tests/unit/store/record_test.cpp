// What happened stays as it was written, whoever opens the file with whatever program.
#include "unit/store/sample.h"
#include "unit/store/workshop.h"

#include <map>
#include <string>

namespace larderloop::testing {
namespace {

class Record : public ::testing::Test {
 protected:
  void SetUp() override { ASSERT_TRUE(is_done(Book::create(path_, before_, {}))); }
  // SQLite refuses for that reason, and nothing is different.
  void refused(const std::string& sql, const std::string& words) {
    const std::string reason = raw_sql(path_, sql);
    EXPECT_NE(reason.find(words), std::string::npos) << sql << ": " << reason;
    const auto loaded = load_from(path_);
    ASSERT_TRUE(is_done(loaded)) << sql;
    EXPECT_EQ(*loaded, before_) << sql;
  }
  Folder folder_;
  std::string path_ = folder_.file("household.book");
  Household before_ = sample_household();
};

TEST_F(Record, IsNeverChanged) {
  refused("UPDATE entry SET half_servings = 1 WHERE id = 1", "is never changed");
  refused("UPDATE entry SET note = note WHERE id = 1", "is never changed");
  refused("UPDATE OR REPLACE entry SET id = 1 WHERE id = 3", "is never changed");
  refused("UPDATE lot SET mark_day = '2030-01-01', mark_kind = 'use_by' WHERE id = 1",
          "is never changed");
  refused("UPDATE lot SET label = NULL", "is never changed");
  refused("UPDATE reading SET state = 'ok'", "is never changed");
  refused("UPDATE trial SET note = 'x'", "is never changed");
  refused("UPDATE trial_note SET verdict = 'liked'", "is never changed");
  refused("UPDATE trial_end SET note = 'x'", "is never changed");
  refused("UPDATE buy_note SET note = 'x'", "is never changed");
  refused("DELETE FROM trial_person", "is never changed");
  refused("DELETE FROM trial_end", "is never deleted");
  refused("INSERT INTO trial_end VALUES (2, '2026-09-20', '')", "ends once");
  refused("UPDATE review_event SET slot = '2026-10-05'", "is never changed");
  refused("UPDATE review_mark SET what = 'there'", "is never changed");
}

TEST_F(Record, IsNeverDeleted) {
  for (const char* table :
       {"entry", "lot", "reading", "review_event", "review_mark", "trial", "trial_note", "buy_note"}) {
    refused(std::string("DELETE FROM ") + table, "is never deleted");
    refused(std::string("PRAGMA foreign_keys = OFF; DELETE FROM ") + table +
                " WHERE id = (SELECT max(id) FROM " + table + ")",
            "is never deleted");
  }
}

// Replacing deletes without the triggers that forbid deleting, unless the owner of the connection
// asks for them.
TEST_F(Record, IsNeverReplaced) {
  for (const char* table :
       {"entry", "lot", "reading", "review_event", "review_mark", "trial", "trial_note", "buy_note"}) {
    refused(std::string("INSERT OR REPLACE INTO ") + table + " SELECT * FROM " + table +
                " ORDER BY id DESC LIMIT 1",
            "are numbered upwards");
    refused(std::string("INSERT OR IGNORE INTO ") + table + " SELECT * FROM " + table +
                " ORDER BY id LIMIT 1",
            "are numbered upwards");
  }
  refused("INSERT OR REPLACE INTO statement SELECT * FROM statement", "is never replaced");
  refused("INSERT OR REPLACE INTO household SELECT * FROM household", "a book holds one household");
}

TEST_F(Record, LabelsThatWereReadStay) {
  const std::string of_lot = "(SELECT label FROM lot WHERE id = 1)";
  const std::string of_reading = "(SELECT label FROM reading WHERE label IS NOT NULL)";
  const std::string of_food = "(SELECT label FROM food WHERE label IS NOT NULL)";
  for (const std::string& label : {of_lot, of_reading}) {
    refused("UPDATE statement SET read_on = '2020-01-01' WHERE id = " + label, "is never changed");
    refused("DELETE FROM statement_allergen WHERE statement = " + label, "is never changed");
    refused("INSERT INTO statement_allergen VALUES (" + label + ", 'soy', 'contains')",
            "is never changed");
    refused(
        "INSERT OR REPLACE INTO statement_allergen VALUES (" + label + ", 'milk', 'may_contain')",
        "is never changed");
    refused("UPDATE statement_allergen SET allergen = 'soy' WHERE statement = " + label,
            "is never changed");
    refused("INSERT INTO statement_diet VALUES (" + label + ", 'vegan')", "is never changed");
    refused("PRAGMA foreign_keys = OFF; DELETE FROM statement WHERE id = " + label,
            "is never deleted");
  }
  refused("DELETE FROM statement_diet WHERE statement = " + of_lot, "is never changed");
  refused("UPDATE statement_diet SET diet = 'vegan' WHERE statement = " + of_lot,
          "is never changed");
  refused("UPDATE statement_allergen SET declared = 'may_contain' WHERE statement = " + of_food,
          "is never changed");
}

TEST_F(Record, IdentitiesStay) {
  refused("UPDATE household SET book_id = '22222222-2222-4333-8444-555555555555'",
          "is never changed");
  refused("DELETE FROM household", "a book holds one household");
  refused("DELETE FROM feed_stamp", "is never forgotten");
  refused("UPDATE feed_stamp SET generation = 7 WHERE generation = 2", "is never changed");
  refused("DELETE FROM feed_address", "never forgotten");
  refused("UPDATE feed_address SET revoked_at = NULL WHERE id = 1", "stays revoked");
  refused("UPDATE feed_address SET token_sha256 = '" + std::string(64, 'c') + "' WHERE id = 3",
          "is never changed");
  refused("DELETE FROM task_done", "is never forgotten");
  refused("UPDATE task_done SET day = '2026-11-22'", "is never changed");
}

// The meaning of a column cannot be broken by hand either.
TEST_F(Record, ValuesHaveTheirForm) {
  refused("INSERT INTO own_allergen VALUES ('fig', '2026-02-30')", "CHECK constraint failed");
  refused("INSERT INTO own_allergen VALUES ('fig', '2026-2-3')", "CHECK constraint failed");
  refused("UPDATE person SET born = 'yesterday' WHERE key = 'mira'", "CHECK constraint failed");
  refused("UPDATE feed_stamp SET changed_at = '2026-11-20 06:00:00'", "CHECK constraint failed");
  refused("UPDATE feed_stamp SET changed_at = '2026-02-30T06:00:00Z'", "CHECK constraint failed");
  refused("UPDATE food SET servings = 0", "CHECK constraint failed");
  refused("UPDATE feed_kind SET alarm_days = 31", "CHECK constraint failed");
  refused("UPDATE household SET feed_detail = 'some'", "CHECK constraint failed");
  refused("UPDATE household SET feed_reviews = 'some'", "CHECK constraint failed");
  refused("UPDATE food SET servings = 'many'", "cannot store TEXT value");
  refused("UPDATE food SET kind = 'meat' WHERE key = 'bar'", "CHECK constraint failed");
  refused("UPDATE person SET key = 'Mira B' WHERE key = 'tom'", "CHECK constraint failed");
  refused("UPDATE place SET parent = 'nowhere' WHERE key = 'bag'", "FOREIGN KEY constraint failed");
  refused("DELETE FROM food WHERE key = 'lentils'", "FOREIGN KEY constraint failed");
  refused("DELETE FROM person WHERE key = 'mira'", "FOREIGN KEY constraint failed");
  refused("UPDATE menu_line SET food = 'bar'", "CHECK constraint failed");
  refused(
      "INSERT INTO entry SELECT 99, 'eaten', day, written_at, NULL, place, NULL, NULL, 1, 0, NULL, "
      "NULL, NULL, NULL, '' FROM entry WHERE id = 1",
      "CHECK constraint failed");
}

using Position = std::tuple<std::int64_t, std::string, std::string>;

std::map<Position, std::int64_t> stock_of_view(const std::string& path) {
  std::map<Position, std::int64_t> stock;
  sqlite3* handle = nullptr;
  sqlite3_stmt* rows = nullptr;
  EXPECT_EQ(sqlite3_open_v2(path.c_str(), &handle, SQLITE_OPEN_READONLY, nullptr), SQLITE_OK);
  EXPECT_EQ(sqlite3_prepare_v2(
                handle, "SELECT lot, place, coalesce(opened_on, ''), half_servings FROM stock", -1,
                &rows, nullptr),
            SQLITE_OK);
  const auto text = [&](int column) {
    return std::string(reinterpret_cast<const char*>(sqlite3_column_text(rows, column)));
  };
  while (sqlite3_step(rows) == SQLITE_ROW) {
    stock[{sqlite3_column_int64(rows, 0), text(1), text(2)}] = sqlite3_column_int64(rows, 3);
  }
  sqlite3_finalize(rows);
  sqlite3_close(handle);
  return stock;
}

std::map<Position, std::int64_t> stock_of_ledger(const Household& household) {
  std::map<Position, std::int64_t> stock;
  const auto ledger = replay(household);
  EXPECT_TRUE(is_done(ledger));
  for (const auto& [at, amount] : ledger->stock()) {
    stock[{at.lot.value(), at.place.str(), at.opened_on ? iso_day(*at.opened_on) : ""}] =
        amount.halves();
  }
  return stock;
}

// Two ways to the stock that share no code: summing up in SQL, and core's replay entry by entry.
TEST(Stock, TheViewIsWhatTheRecordComesTo) {
  for (int round = 1; round <= 10 * scale(); ++round) {
    SCOPED_TRACE("seed " + std::to_string(round));
    const Folder folder;
    Household household = sample_household();
    make_random_record(household, static_cast<std::uint64_t>(round), 12, 600);
    std::set<EntryKind> kinds;
    for (const Entry& entry : household.entries) kinds.insert(entry.kind);
    ASSERT_EQ(kinds.size(), std::size(kAllEntryKinds))
        << "a record without every kind of entry proves little";
    ASSERT_TRUE(is_done(Book::create(folder.file("b"), household, {})));
    const auto stock = stock_of_ledger(household);
    EXPECT_FALSE(stock.empty());
    EXPECT_EQ(stock_of_view(folder.file("b")), stock);
  }
}

}  // namespace
}  // namespace larderloop::testing
