// Which rules may stand in a repeating event, and what is advised instead of the others.
#include "larderloop/calendar/rule.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

Day day(std::string_view text) {
  return parse_iso_day(text).value();
}

struct Rule {
  const char* starts;
  const char* rule;
};

// Shapes on which libical 3.0.16, ical.js 2.2.1, rrule 2.8.1, python-dateutil 2.8.2 and
// rrule-temporal 2.2.8 gave the same dates, and the dates of CS-10 and CS-11 are the clock-change
// Sundays of RFC 5545 section 3.6.5; tests/e2e/feed_series.py has the first three expand them.
constexpr Rule kSafe[] = {{"2026-03-07", "FREQ=YEARLY;BYMONTH=3,9;BYDAY=1SA"},
                          {"2026-03-07", "FREQ=MONTHLY;INTERVAL=6;BYDAY=1SA"},
                          {"2026-03-31", "FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=-1"},
                          {"2026-04-26", "FREQ=YEARLY;BYMONTH=4,10;BYDAY=-1SU"},
                          {"2026-01-15", "FREQ=YEARLY;BYMONTH=1,7"},
                          {"2024-02-29", "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=-1"},
                          {"2026-03-28", "FREQ=MONTHLY;INTERVAL=3;BYDAY=-1SA"},
                          {"2026-03-08", "FREQ=YEARLY;BYMONTH=3;BYDAY=2SU"},
                          {"2026-03-29", "FREQ=YEARLY;BYMONTH=3,10;BYDAY=-1SU"},
                          {"2026-06-30", "FREQ=YEARLY;BYMONTH=6,12;BYMONTHDAY=30"}};

TEST(SeriesRule, TheListIsAllowedAsItIs) {
  for (const Rule& each : kSafe) {
    ASSERT_TRUE(check_review_rule(each.rule, day(each.starts))) << each.rule;
    const SeriesRule series = series_rule(each.rule, day(each.starts));
    EXPECT_EQ(series.rule, each.rule) << series.objection;
    EXPECT_EQ(series.objection, "") << each.rule;
  }
  EXPECT_EQ(series_rule("bymonth=9,3;freq=yearly;byday=1sa;wkst=su", day("2026-03-07")).rule,
            "FREQ=YEARLY;BYMONTH=3,9;BYDAY=1SA")
      << "in one spelling";
}

struct Other {
  const char* starts;
  const char* rule;
  const char* instead;
};

TEST(SeriesRule, OthersAreNotAndTheNearestIsNamed) {
  for (const Other& each : {
           Other{"2027-04-03", "FREQ=WEEKLY;INTERVAL=13", "FREQ=MONTHLY;INTERVAL=3;BYDAY=1SA"},
           Other{"2027-04-03", "FREQ=DAILY;INTERVAL=90", "FREQ=MONTHLY;INTERVAL=3;BYDAY=1SA"},
           Other{"2027-04-15", "FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=15",
                 "FREQ=YEARLY;BYMONTH=4,10;BYMONTHDAY=15"},
           Other{"2027-04-15", "FREQ=MONTHLY;INTERVAL=6", "FREQ=YEARLY;BYMONTH=4,10;BYMONTHDAY=15"},
           Other{"2027-04-15", "FREQ=YEARLY", "FREQ=YEARLY;BYMONTH=4;BYMONTHDAY=15"},
           Other{"2027-04-05", "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1MO,3FR",
                 "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1MO"},
           Other{"2027-04-01", "FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=1",
                 "FREQ=YEARLY;BYMONTH=1,2,3,4,5,6,7,8,9,10,11,12;BYDAY=1TH"},
           Other{"2027-04-03", "FREQ=MONTHLY;INTERVAL=5;BYMONTHDAY=3",
                 "FREQ=MONTHLY;INTERVAL=5;BYDAY=1SA"},
           Other{"2027-04-01", "FREQ=YEARLY;BYMONTH=4,10;BYMONTHDAY=1,15",
                 "FREQ=YEARLY;BYMONTH=4,10;BYMONTHDAY=1"},
       }) {
    const SeriesRule series = series_rule(each.rule, day(each.starts));
    EXPECT_EQ(series.rule, "") << each.rule;
    EXPECT_NE(series.objection, "") << each.rule;
    EXPECT_EQ(series.instead, each.instead) << each.rule;
    EXPECT_EQ(series_rule(series.instead, day(each.starts)).rule, series.instead)
        << "the advice is on the list";
  }
}

// The reference's traps (expansions that engines differ on), never to be written.
TEST(SeriesRule, WhatProgramsDisagreeOnIsNeverWritten) {
  for (const Rule& each : {
           Rule{"2026-03-07", "FREQ=YEARLY;BYMONTH=3,9;BYDAY=SA;BYSETPOS=1"},
           Rule{"2026-03-31", "FREQ=YEARLY;BYMONTH=3,9;BYMONTHDAY=-1"},
           Rule{"2024-02-29", "FREQ=YEARLY"},
           Rule{"2026-05-30", "FREQ=MONTHLY;INTERVAL=6;BYDAY=5SA"},
           Rule{"2026-03-31", "FREQ=DAILY;BYMONTHDAY=-1"},
           Rule{"2026-03-31", "FREQ=WEEKLY;BYMONTH=3,9;BYDAY=SA"},
           Rule{"2026-03-07", "FREQ=YEARLY;BYMONTH=3,9;BYDAY=1SA;UNTIL=20270904"},
           Rule{"2026-03-07", "FREQ=YEARLY;BYMONTH=3,9;BYDAY=1SA;COUNT=3"},
           Rule{"1997-05-19", "FREQ=YEARLY;BYDAY=20MO"},
           Rule{"1997-05-12", "FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO"},
           Rule{"2026-03-07", "FREQ=SOMETIMES"},
       }) {
    const SeriesRule series = series_rule(each.rule, day(each.starts));
    EXPECT_EQ(series.rule, "") << each.rule;
    EXPECT_EQ(series_rule(series.instead, day(each.starts)).rule, series.instead) << each.rule;
  }
}

}  // namespace
}  // namespace larderloop
