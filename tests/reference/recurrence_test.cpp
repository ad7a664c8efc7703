// Recurrence rules against published dates: recurrence_rows.csv names the source of every row. The
// traps below are rules on which programs differ; the right dates follow RFC 5545 section 3.3.10,
// and python3-dateutil 2.8.2 gives the same. A trap is computed rightly or refused.
#include "larderloop/calendar/rule.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace larderloop {
namespace {

struct Row {
  std::string id;
  Day starts{};
  std::vector<Day> expected;
  std::string rule;
};

std::vector<Day> days(const std::string& text) {
  std::vector<Day> result;
  std::istringstream words(text);
  for (std::string word; words >> word;) result.push_back(parse_iso_day(word).value());
  return result;
}

std::vector<Row> rows() {
  std::ifstream file(LARDERLOOP_SRC "/tests/reference/recurrence_rows.csv");
  std::vector<Row> result;
  for (std::string line; std::getline(file, line);) {
    if (line.rfind('#', 0) == 0 || line.rfind("id|", 0) == 0) continue;
    std::vector<std::string> cells;
    std::istringstream pieces(line);
    for (std::string cell; std::getline(pieces, cell, '|');) cells.push_back(cell);
    result.push_back(
        {cells.at(0), parse_iso_day(cells.at(1)).value(), days(cells.at(2)), cells.at(4)});
  }
  return result;
}

std::string words(const std::vector<Day>& dates) {
  std::string text;
  for (const Day day : dates) text += iso_day(day) + " ";
  return text;
}

TEST(Recurrence, GivesTheDatesOfPublishedExamples) {
  const std::vector<Row> all = rows();
  ASSERT_EQ(all.size(), 34U);
  for (const Row& row : all) {
    const bool ends =
        row.rule.find("COUNT") != std::string::npos || row.rule.find("UNTIL") != std::string::npos;
    // Endless rules are read to their last published date.
    const Day end = ends ? add_months(row.starts, 12 * 50) : row.expected.back() + Days(1);
    const auto dates = rule_dates(row.rule, row.starts, row.starts, end);
    ASSERT_TRUE(dates) << row.id << ": " << dates.error().what;
    EXPECT_EQ(words(*dates), words(row.expected)) << row.id << " " << row.rule;
  }
}

// libical/libical#795: BYSETPOS under FREQ=WEEKLY. 2024-10-23 2024-10-28 2024-10-30 would be right;
// libical 3.0.16 ignores it.
TEST(Recurrence, RefusesTheOnePublishedExampleThatTheEngineGetsWrong) {
  const Day starts = parse_iso_day("2024-10-23").value();
  const auto dates = rule_dates("FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=1,3;COUNT=3", starts,
                                starts, starts + Days(30));
  ASSERT_FALSE(dates);
  EXPECT_EQ(dates.error().kind, ErrorKind::kBadData);
}

enum class Answer { kRight, kRefused };

struct Trap {
  std::string id;
  std::string starts;
  std::string rule;
  Answer dates;    // of rule_dates
  Answer reviews;  // of check_review_rule
  std::string expected;
};

TEST(Recurrence, TrapsAreComputedRightOrRefused) {
  constexpr Answer kRight = Answer::kRight;
  constexpr Answer kRefused = Answer::kRefused;
  const std::vector<Trap> traps{
      {"CE-01", "2026-03-07", "FREQ=YEARLY;BYMONTH=3,9;BYDAY=SA;BYSETPOS=1", kRight, kRefused,
       "2026-03-07 2027-03-06 2028-03-04"},
      {"CE-02", "2026-03-07", "FREQ=YEARLY;BYMONTH=3,9;BYDAY=SA;BYSETPOS=1,-1", kRight, kRefused,
       "2026-03-07 2026-09-26 2027-03-06 2027-09-25"},
      {"CE-03", "2026-03-31", "FREQ=YEARLY;BYMONTH=3,9;BYMONTHDAY=-1", kRight, kRefused,
       "2026-03-31 2026-09-30 2027-03-31 2027-09-30 2028-03-31 2028-09-30"},
      {"CE-04", "2024-02-29", "FREQ=YEARLY", kRight, kRefused, "2024-02-29 2028-02-29 2032-02-29"},
      {"CE-05", "2026-08-31", "FREQ=MONTHLY;INTERVAL=6", kRight, kRefused,
       "2026-08-31 2027-08-31 2028-08-31"},
      {"CE-06", "2026-12-31", "FREQ=YEARLY;BYMONTH=6,12;BYMONTHDAY=31", kRight, kRefused,
       "2026-12-31 2027-12-31"},
      {"CE-07", "2026-02-28", "FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=28,29,30,31;BYSETPOS=-1", kRight,
       kRefused, "2026-02-28 2026-08-31 2027-02-28 2027-08-31 2028-02-29"},
      {"CE-08", "2026-05-30", "FREQ=MONTHLY;INTERVAL=6;BYDAY=5SA", kRight, kRefused,
       "2026-05-30 2027-05-29 2030-11-30 2031-05-31"},
      {"CE-09", "2026-03-10", "FREQ=YEARLY;BYMONTH=3,9;BYDAY=1SA", kRight, kRefused,
       "2026-09-05 2027-03-06 2027-09-04"},
      {"CE-10", "2026-03-01", "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", kRefused, kRefused, ""},
      {"CE-11", "2026-03-31", "FREQ=DAILY;BYMONTHDAY=-1", kRefused, kRefused, ""},
      {"CE-12", "2026-03-31", "FREQ=WEEKLY;BYMONTH=3,9;BYDAY=SA", kRight, kRefused,
       "2026-09-05 2026-09-12 2026-09-19"},
      {"CE-13", "2026-01-31", "FREQ=YEARLY;BYMONTH=1,7;BYDAY=SA;BYMONTHDAY=-1,-2,-3,-4,-5,-6,-7",
       kRight, kRefused, "2026-01-31 2026-07-25 2027-01-30 2027-07-31"},
      {"CE-14", "2024-02-29", "FREQ=YEARLY;BYMONTH=2,8;BYMONTHDAY=-1", kRight, kRefused,
       "2024-02-29 2024-08-31 2025-02-28 2025-08-31 2026-02-28"},
  };
  for (const Trap& trap : traps) {
    const Day starts = parse_iso_day(trap.starts).value();
    const std::vector<Day> expected = days(trap.expected);
    const Day end = expected.empty() ? starts + Days(3660) : expected.back() + Days(1);
    const auto dates = rule_dates(trap.rule, starts, starts, end);
    ASSERT_EQ(dates.has_value(), trap.dates == kRight) << trap.id;
    if (dates) {
      EXPECT_EQ(words(*dates), words(expected)) << trap.id << " " << trap.rule;
    }
    EXPECT_EQ(check_review_rule(trap.rule, starts).has_value(), trap.reviews == kRight) << trap.id;
  }
}

// CE-15: months added to the first date, never to the last one: the day of the month comes back
// after a short month.
TEST(Recurrence, MonthsAddedFromTheAnchorKeepTheMonthEnd) {
  const Day anchor = parse_iso_day("2026-08-31").value();
  std::vector<Day> dates;
  for (int step = 0; step < 5; ++step) dates.push_back(add_months(anchor, 6 * step));
  EXPECT_EQ(words(dates), words(days("2026-08-31 2027-02-28 2027-08-31 2028-02-29 2028-08-31")));
}

// The shapes on which five implementations agree are the ones that a kit may use.
TEST(Recurrence, TheSafeShapesAreFitForReviews) {
  for (const Row& row : rows()) {
    if (row.id.rfind("CS-", 0) != 0) continue;
    const bool ends =
        row.rule.find("COUNT") != std::string::npos || row.rule.find("UNTIL") != std::string::npos;
    const Status fit = check_review_rule(row.rule, row.starts);
    EXPECT_EQ(fit.has_value(), !ends) << row.id << " " << (fit ? "" : fit.error().what);
  }
}

}  // namespace
}  // namespace larderloop
