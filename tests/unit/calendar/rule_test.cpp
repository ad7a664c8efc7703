#include "larderloop/calendar/rule.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace larderloop {
namespace {

Day day(std::string_view text) {
  return parse_iso_day(text).value();
}

std::string dates(std::string_view rule, std::string_view starts, std::string_view begin,
                  std::string_view end) {
  const auto found = rule_dates(rule, day(starts), day(begin), day(end));
  if (!found) return found.error().what;
  std::string text;
  for (const Day each : *found) text += (text.empty() ? "" : " ") + iso_day(each);
  return text;
}

TEST(RuleDates, AreInsideTheHalfOpenRange) {
  const std::string rule = "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA";
  EXPECT_EQ(dates(rule, "2026-04-04", "2026-10-03", "2027-04-03"), "2026-10-03");
  EXPECT_EQ(dates(rule, "2026-04-04", "2026-10-03", "2027-04-04"), "2026-10-03 2027-04-03");
  EXPECT_EQ(dates(rule, "2026-04-04", "2020-01-01", "2026-04-05"), "2026-04-04");
  EXPECT_EQ(dates(rule, "2026-04-04", "2026-10-04", "2026-10-04"), "");
}

TEST(RuleDates, ReadSmallLettersAndListsInAnyOrder) {
  EXPECT_EQ(dates("freq=yearly;byday=1sa;bymonth=10,4,4", "2026-04-04", "2026-01-01", "2027-01-01"),
            "2026-04-04 2026-10-03");
}

// A start that is no day of the rule: the phase of the weeks, without an end of the counting.
TEST(RuleDates, DailyAndWeeklyRulesEndWithTheRange) {
  EXPECT_EQ(dates("FREQ=WEEKLY;BYDAY=MO", "2022-12-06", "2022-12-06", "2022-12-20"),
            "2022-12-12 2022-12-19");
  EXPECT_EQ(dates("FREQ=DAILY;BYMONTH=4", "2023-01-20", "2023-01-20", "2023-04-03"),
            "2023-04-01 2023-04-02");
}

TEST(RuleDates, MoreThanTenThousandAreRefused) {
  const auto many =
      rule_dates("FREQ=DAILY", day("2000-01-01"), day("2000-01-01"), day("2030-01-01"));
  ASSERT_FALSE(many);
  EXPECT_EQ(many.error().kind, ErrorKind::kBadData);
  EXPECT_EQ(
      rule_dates("FREQ=DAILY", day("2000-01-01"), day("2000-01-01"), day("2027-05-19"))->size(),
      10'000U);
}

struct Unreadable {
  std::string rule;
  std::string why;
};

TEST(RuleDates, UnreadableRulesNameThePart) {
  const std::vector<Unreadable> cases{
      {"", "empty"},
      {"every spring", "'EVERY SPRING'"},
      {"RRULE:FREQ=YEARLY", "RRULE"},
      {"BYMONTH=4", "FREQ is missing"},
      {"FREQ=FORTNIGHTLY", "'FORTNIGHTLY'"},
      {"FREQ=HOURLY", "finer"},
      {"FREQ=YEARLY;", "''"},
      {"FREQ=YEARLY;FREQ=DAILY", "twice"},
      {"FREQ=YEARLY;BYMONTH=13", "'13'"},
      {"FREQ=YEARLY;BYMONTH=0", "'0'"},
      {"FREQ=YEARLY;BYMONTH=4,", "''"},
      {"FREQ=MONTHLY;BYMONTHDAY=32", "'32'"},
      {"FREQ=MONTHLY;BYDAY=6SA", "six"},
      {"FREQ=MONTHLY;BYDAY=0SA", "'0SA'"},
      {"FREQ=MONTHLY;BYDAY=SAT", "'SAT'"},
      {"FREQ=WEEKLY;BYDAY=1SA", "numbered"},
      {"FREQ=WEEKLY;BYMONTHDAY=1", "BYMONTHDAY"},
      {"FREQ=MONTHLY;BYWEEKNO=20", "BYWEEKNO"},
      {"FREQ=MONTHLY;BYYEARDAY=20", "BYYEARDAY"},
      {"FREQ=MONTHLY;BYSETPOS=1", "BYSETPOS"},
      {"FREQ=MONTHLY;INTERVAL=0", "'0'"},
      {"FREQ=MONTHLY;INTERVAL=40000", "'40000'"},
      {"FREQ=MONTHLY;INTERVAL=-1", "'-1'"},
      {"FREQ=YEARLY;COUNT=0", "'0'"},
      {"FREQ=YEARLY;COUNT=2;UNTIL=20300101", "exclude"},
      {"FREQ=YEARLY;UNTIL=20270230", "'20270230'"},
      {"FREQ=YEARLY;UNTIL=20270301T000000Z", "'20270301T000000Z'"},
      {"FREQ=YEARLY;WKST=XX", "'XX'"},
      {"FREQ=YEARLY;BYHOUR=9", "BYHOUR"},
      {"RSCALE=GREGORIAN;FREQ=MONTHLY;SKIP=BACKWARD", "RSCALE"},
      {"FREQ=YEARLY;X-BAG=1", "'X-BAG'"},
      {"FREQ=YEARLY;BYMONTH=" + std::string(3000, '1'), "too long"},
  };
  for (const Unreadable& each : cases) {
    const auto found =
        rule_dates(each.rule, day("2026-04-04"), day("2026-04-04"), day("2030-01-01"));
    ASSERT_FALSE(found) << each.rule;
    EXPECT_EQ(found.error().kind, ErrorKind::kBadData);
    EXPECT_NE(found.error().what.find(each.why), std::string::npos)
        << each.rule << ": " << found.error().what;
    EXPECT_FALSE(found.error().next_step.empty()) << each.rule;
    EXPECT_FALSE(check_review_rule(each.rule, day("2026-04-04"))) << each.rule;
  }
}

// Each was seen to give other dates than python3-dateutil 2.8.2 and RFC 5545 section 3.3.10
// (docs/limits.md).
TEST(RuleDates, WhatTheEngineGetsWrongIsRefused) {
  for (const std::string_view rule :
       {"FREQ=YEARLY;BYMONTHDAY=24", "FREQ=YEARLY;BYWEEKNO=35", "FREQ=YEARLY;BYWEEKNO=-26;BYDAY=TU",
        "FREQ=YEARLY;BYMONTH=1;BYWEEKNO=1;BYDAY=FR", "FREQ=YEARLY;BYWEEKNO=10;BYDAY=TU;WKST=WE",
        "FREQ=YEARLY;BYMONTH=6,12;BYYEARDAY=168", "FREQ=DAILY;BYMONTHDAY=-1",
        "FREQ=DAILY;BYDAY=MO;BYSETPOS=1", "FREQ=WEEKLY;BYDAY=MO,TU;BYSETPOS=1",
        "FREQ=WEEKLY;INTERVAL=2;BYDAY=SU", "FREQ=MONTHLY;BYMONTHDAY=-25,7;BYSETPOS=-1"}) {
    const auto found = rule_dates(rule, day("2026-04-04"), day("2026-04-04"), day("2030-01-01"));
    ASSERT_FALSE(found) << rule;
    EXPECT_NE(found.error().what.find("computed rightly"), std::string::npos) << found.error().what;
    EXPECT_FALSE(check_review_rule(rule, day("2026-04-04"))) << rule;
  }
}

struct Review {
  std::string rule;
  std::string starts;
  std::string hint;  // empty: the rule is fit
};

TEST(ReviewRule, FitOnesPassAndTheOthersGetASpellingThatWorks) {
  const std::vector<Review> cases{
      {std::string(kDefaultReviewRule), "2026-04-04", ""},
      {"FREQ=MONTHLY;INTERVAL=6", "2026-01-15", ""},
      {"FREQ=MONTHLY;INTERVAL=24", "2026-01-15", ""},
      {"FREQ=WEEKLY;INTERVAL=26", "2026-01-15", ""},
      {"FREQ=WEEKLY;INTERVAL=26;BYDAY=TH", "2026-01-15", ""},
      {"FREQ=YEARLY", "2026-01-31", ""},
      {"FREQ=MONTHLY;INTERVAL=12", "2026-01-31", ""},
      {"FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA;COUNT=4", "2026-04-04",
       "write 'FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA'"},
      {"FREQ=YEARLY;UNTIL=20300101", "2026-04-04", "write 'FREQ=YEARLY'"},
      {"FREQ=YEARLY;BYMONTH=4;BYHOUR=9", "2026-04-04", "write 'FREQ=YEARLY;BYMONTH=4'"},
      {"FREQ=YEARLY", "2024-02-29", "write 'FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=-1'"},
      {"FREQ=MONTHLY;INTERVAL=6", "2026-08-31", "write 'FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=-1'"},
      {"FREQ=YEARLY;BYMONTH=3,9;BYMONTHDAY=-1", "2026-03-31",
       "write 'FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=-1'"},
      {"FREQ=YEARLY;BYMONTH=3,10;BYMONTHDAY=-1", "2026-03-31",
       "write 'FREQ=YEARLY;BYMONTH=3,10;BYMONTHDAY=28' and start on 2026-10-28"},
      {"FREQ=YEARLY;BYMONTH=6,12;BYMONTHDAY=31", "2026-12-31",
       "write 'FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=-1'"},
      {"FREQ=MONTHLY;INTERVAL=6;BYDAY=5SA", "2026-05-30",
       "write 'FREQ=YEARLY;BYMONTH=5,11;BYDAY=-1SA'"},
      {"FREQ=YEARLY;BYMONTH=3,9;BYDAY=SA;BYSETPOS=1", "2026-03-07",
       "write 'FREQ=YEARLY;BYMONTH=3,9;BYDAY=1SA'"},
      {"FREQ=YEARLY;BYMONTH=3,9;BYDAY=SA;BYSETPOS=-1", "2026-09-26",
       "write 'FREQ=YEARLY;BYMONTH=3,9;BYDAY=-1SA'"},
      {"FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=28,29,30,31;BYSETPOS=-1", "2026-02-28",
       "write 'FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=-1'"},
      {"FREQ=WEEKLY;BYDAY=MO,WE;BYSETPOS=1", "2026-03-02", "write 'FREQ=WEEKLY;BYDAY=MO'"},
      {"FREQ=DAILY;BYMONTHDAY=-1", "2026-03-31", "write 'FREQ=MONTHLY;BYMONTHDAY=-1'"},
      {"FREQ=WEEKLY;BYMONTH=3,9;BYDAY=SA", "2026-03-31",
       "write 'FREQ=YEARLY;BYMONTH=3,9;BYDAY=SA' and start on 2026-09-05"},
      {"FREQ=YEARLY;BYDAY=20MO", "1997-05-19", "write 'FREQ=YEARLY;BYMONTH=5;BYDAY=3MO'"},
      {"FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO", "1997-05-12", "write 'FREQ=YEARLY;BYMONTH=5;BYDAY=2MO'"},
      {"FREQ=YEARLY;BYMONTHDAY=24", "2026-04-24", "write 'FREQ=MONTHLY;BYMONTHDAY=24'"},
      {"FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA", "2026-04-05", "start on 2026-10-03"},
      {"FREQ=WEEKLY;INTERVAL=2;BYDAY=SU", "2023-05-13", "start on 2023-05-14"},
      {"FREQ=YEARLY;INTERVAL=3", "2026-04-04", "write 'FREQ=YEARLY;BYMONTH=4;BYDAY=1SA'"},
      {"FREQ=YEARLY;INTERVAL=3", "2026-05-30", "write 'FREQ=YEARLY;BYMONTH=5;BYDAY=-1SA'"},
      {"FREQ=YEARLY;BYYEARDAY=366", "2028-12-31", "write 'FREQ=YEARLY;BYMONTH=12;BYDAY=-1SU'"},
      {"FREQ=MONTHLY;INTERVAL=25", "2026-04-04", "write 'FREQ=YEARLY;BYMONTH=4;BYDAY=1SA'"},
  };
  for (const Review& each : cases) {
    const Day starts = day(each.starts);
    const Status fit = check_review_rule(each.rule, starts);
    ASSERT_EQ(fit.has_value(), each.hint.empty())
        << each.rule << " " << (fit ? "" : fit.error().what);
    if (fit) continue;
    EXPECT_EQ(fit.error().kind, ErrorKind::kBadData);
    const std::string& hint = fit.error().next_step;
    EXPECT_EQ(hint, each.hint) << each.rule;
    // The advice is taken: it must work.
    const std::size_t quote = hint.find('\'');
    const std::string spelling = quote == std::string::npos
                                     ? each.rule
                                     : hint.substr(quote + 1, hint.rfind('\'') - quote - 1);
    const std::size_t start = hint.find("start on ");
    const Day from = start == std::string::npos ? starts : day(hint.substr(start + 9));
    const Status better = check_review_rule(spelling, from);
    EXPECT_TRUE(better) << spelling << " " << (better ? "" : better.error().what);
  }
}

// The first Saturdays of April and October 2026 and 2027 (4 April, 3 October, 3 April).
TEST(DefaultReview, IsTheFirstSaturdayOfAprilOrOctober) {
  EXPECT_EQ(iso_day(first_default_review(day("2026-01-01"))), "2026-04-04");
  EXPECT_EQ(iso_day(first_default_review(day("2026-04-04"))), "2026-04-04");
  EXPECT_EQ(iso_day(first_default_review(day("2026-04-05"))), "2026-10-03");
  EXPECT_EQ(iso_day(first_default_review(day("2026-10-04"))), "2027-04-03");
  EXPECT_EQ(iso_day(first_default_review(day("2026-12-31"))), "2027-04-03");
}

TEST(DefaultReview, StartsTheDefaultRuleFromEveryDay) {
  for (Day from = day("2026-01-01"); from < day("2030-01-01"); from += Days(17)) {
    const Day first = first_default_review(from);
    ASSERT_GE(first, from);
    ASSERT_TRUE(check_review_rule(kDefaultReviewRule, first)) << iso_day(first);
  }
}

}  // namespace
}  // namespace larderloop
