// Days, instants and date marks.
#include "larderloop/core/date.h"
#include "larderloop/core/date_mark.h"

#include <gtest/gtest.h>

#include <set>

namespace larderloop {
namespace {

Day at(const char* text) {
  return parse_iso_day(text).value();
}

TEST(ParseIsoDay, ReadsRealDaysOfTheRangeAndWritesThemBack) {
  for (const char* text :
       {"1900-01-01", "2199-12-31", "2024-02-29", "2000-02-29", "2026-11-25", "1999-12-31"}) {
    const auto day = parse_iso_day(text);
    ASSERT_TRUE(day) << text;
    EXPECT_EQ(iso_day(*day), text);
  }
}

TEST(ParseIsoDay, ReadsNothingElse) {
  for (const char* text : {"",           "2027",       "2027-3-15",   "2027-03-5",   "27-03-15",
                           "2027/03/15", "20270315",   " 2027-03-15", "2027-03-15 ", "2027-02-29",
                           "1900-02-29", "2100-02-29", "2027-04-31",  "2027-00-10",  "2027-13-01",
                           "2027-01-00", "2027-01-32", "1899-12-31",  "2200-01-01",  "+027-03-15",
                           "-027-03-15", "2027-03-1a", "2027-0x-15",  "2027-03-15T", "２027-03-15",
                           "2027-W11-1"}) {
    EXPECT_FALSE(parse_iso_day(text)) << text;
  }
}

TEST(ParseIsoInstant, ReadsWholeUtcSecondsOnly) {
  for (const char* text : {"2027-03-15T08:30:00Z", "1900-01-01T00:00:00Z", "2199-12-31T23:59:59Z",
                           "2024-02-29T12:00:01Z"}) {
    const auto instant = parse_iso_instant(text);
    ASSERT_TRUE(instant) << text;
    EXPECT_EQ(iso_instant(*instant), text);
  }
  for (const char* text :
       {"2027-03-15", "2027-03-15T08:30:00", "2027-03-15t08:30:00Z", "2027-03-15T08:30:00z",
        "2027-03-15 08:30:00Z", "2027-03-15T24:00:00Z", "2027-03-15T08:60:00Z",
        "2027-03-15T08:30:60Z", "2027-03-15T08:30:00.5Z", "2027-03-15T08:30:00+00:00",
        "2027-02-30T08:30:00Z", "2027-03-15T8:30:00Z"}) {
    EXPECT_FALSE(parse_iso_instant(text)) << text;
  }
  // The Unix epoch and one second before it: RFC 3339 and POSIX time agree there.
  EXPECT_EQ(parse_iso_instant("1970-01-01T00:00:00Z")->time_since_epoch().count(), 0);
  EXPECT_EQ(parse_iso_instant("1969-12-31T23:59:59Z")->time_since_epoch().count(), -1);
  EXPECT_EQ(day_of(*parse_iso_instant("1969-12-31T23:59:59Z")), at("1969-12-31"));
  EXPECT_EQ(iso_instant(*parse_iso_instant("1969-12-31T23:59:59Z")), "1969-12-31T23:59:59Z");
  EXPECT_EQ(midnight(at("2026-11-25")), *parse_iso_instant("2026-11-25T00:00:00Z"));
}

TEST(DayWords, AreEnglishAndTheSameEverywhere) {
  EXPECT_EQ(plain_day(at("2026-10-03")), "Sat 3 Oct 2026");
  EXPECT_EQ(short_day(at("2026-10-03")), "Sat 3 Oct");
  EXPECT_EQ(compact_day(at("2027-03-05")), "20270305");
  EXPECT_EQ(plain_day(at("2024-02-29")), "Thu 29 Feb 2024");
}

TEST(Weekdays, AreReadInAnyCaseButWhole) {
  EXPECT_EQ(weekday_of(at("2026-11-25")), Weekday::kWednesday);
  EXPECT_EQ(weekday_of(at("2000-01-01")), Weekday::kSaturday);
  EXPECT_EQ(weekday_of(at("1900-01-01")), Weekday::kMonday);
  for (int number = 0; number < 7; ++number) {
    const auto weekday = static_cast<Weekday>(number);
    EXPECT_EQ(parse_weekday(weekday_name(weekday)), weekday);
  }
  EXPECT_EQ(parse_weekday("SUNDAY"), Weekday::kSunday);
  EXPECT_EQ(parse_weekday("sunday"), Weekday::kSunday);
  for (const char* text : {"", "sun", "sundays", "sonntag", "7", " sunday"})
    EXPECT_FALSE(parse_weekday(text)) << text;
}

TEST(AddMonths, KeepsTheDayOrTakesTheLastOfAShortMonth) {
  const struct {
    const char* from;
    int months;
    const char* to;
  } cases[] = {{"2026-08-31", 6, "2027-02-28"},  {"2023-08-31", 6, "2024-02-29"},
               {"2024-02-29", 12, "2025-02-28"}, {"2024-02-29", 48, "2028-02-29"},
               {"2026-11-25", 0, "2026-11-25"},  {"2026-01-31", 1, "2026-02-28"},
               {"2026-12-15", 1, "2027-01-15"},  {"2027-01-15", -1, "2026-12-15"},
               {"2026-03-31", -1, "2026-02-28"}, {"2026-05-31", -18, "2024-11-30"},
               {"2026-10-31", 600, "2076-10-31"}};
  for (const auto& each : cases)
    EXPECT_EQ(iso_day(add_months(at(each.from), each.months)), each.to)
        << each.from << " + " << each.months;
}

TEST(DaysBetween, CountsForwardAndBack) {
  EXPECT_EQ(days_between(at("2026-02-28"), at("2026-03-01")), 1);
  EXPECT_EQ(days_between(at("2024-02-28"), at("2024-03-01")), 2);
  EXPECT_EQ(days_between(at("2026-03-01"), at("2026-02-28")), -1);
  EXPECT_EQ(days_between(at("2026-11-25"), at("2026-11-25")), 0);
  EXPECT_EQ(year_of(at("2026-12-31")), 2026);
}

TEST(StartOfWeek, GoesBackToTheHouseholdsFirstDay) {
  EXPECT_EQ(start_of_week(at("2026-11-25"), Weekday::kMonday), at("2026-11-23"));
  EXPECT_EQ(start_of_week(at("2026-11-25"), Weekday::kSunday), at("2026-11-22"));
  EXPECT_EQ(start_of_week(at("2026-11-25"), Weekday::kWednesday), at("2026-11-25"));
  EXPECT_EQ(start_of_week(at("2026-11-25"), Weekday::kThursday), at("2026-11-19"));
  EXPECT_EQ(start_of_week(at("2027-01-01"), Weekday::kMonday), at("2026-12-28"));
}

TEST(AgeYears, CountsBirthdaysAndLeapDays) {
  EXPECT_EQ(age_years(at("2020-11-25"), at("2026-11-24")), 5);
  EXPECT_EQ(age_years(at("2020-11-25"), at("2026-11-25")), 6);
  EXPECT_EQ(age_years(at("2026-11-25"), at("2026-11-25")), 0);
  EXPECT_LT(age_years(at("2026-11-26"), at("2026-11-25")), 0);
  EXPECT_EQ(age_years(at("2020-02-29"), at("2026-02-28")), 5);
  EXPECT_EQ(age_years(at("2020-02-29"), at("2026-03-01")), 6);
  EXPECT_EQ(age_years(at("2020-02-29"), at("2024-02-29")), 4);
}

TEST(ResolveDay, KnowsTheEndOfMonthsAndYears) {
  EXPECT_EQ(resolve_day(2027, 3, 15), at("2027-03-15"));
  EXPECT_FALSE(resolve_day(2027, 2, 29));
  EXPECT_FALSE(resolve_day(2027, 0, 1));
  EXPECT_FALSE(resolve_day(2027, 1, 0));
  EXPECT_EQ(resolve_month(2027, 2), at("2027-02-28"));
  EXPECT_EQ(resolve_month(2028, 2), at("2028-02-29"));
  EXPECT_EQ(resolve_month(2027, 12), at("2027-12-31"));
  EXPECT_FALSE(resolve_month(2027, 0));
  EXPECT_FALSE(resolve_month(2027, 13));
  EXPECT_EQ(resolve_year(2027), at("2027-12-31"));
}

TEST(ResolveDay, TakesNoNumberThatOnlyComesRoundToADay) {
  for (const unsigned round : {256U, 65'536U}) {
    EXPECT_FALSE(resolve_day(2027, round + 3, 15)) << round;
    EXPECT_FALSE(resolve_day(2027, 3, round + 15)) << round;
    EXPECT_FALSE(resolve_month(2027, round + 3)) << round;
  }
  for (const int year : {65'536 + 2027, 10'000, 0, -2027, 2027 - 65'536}) {
    EXPECT_FALSE(resolve_day(year, 3, 15)) << year;
    EXPECT_FALSE(resolve_month(year, 3)) << year;
    EXPECT_FALSE(resolve_year(year)) << year;
  }
}

TEST(MarkKinds, HaveANameOfTheirOwnReadBothWays) {
  std::set<std::string_view> words;
  for (const MarkKind kind : kAllMarkKinds) {
    EXPECT_EQ(parse_mark_kind(mark_kind_name(kind)), kind);
    EXPECT_TRUE(words.insert(mark_kind_words(kind)).second);
  }
  EXPECT_FALSE(parse_mark_kind("best before"));
  EXPECT_FALSE(parse_mark_kind(""));
  for (const Precision precision : {Precision::kDay, Precision::kMonth, Precision::kYear}) {
    EXPECT_EQ(parse_precision(precision_name(precision)), precision);
  }
  EXPECT_FALSE(parse_precision("Day"));
}

TEST(MarkKinds, OnlyBestBeforeAndUseByTellHowLongItIsGood) {
  for (const MarkKind kind : kAllMarkKinds) {
    EXPECT_EQ(gives_good_through(kind), kind == MarkKind::kBestBefore || kind == MarkKind::kUseBy)
        << mark_kind_name(kind);
  }
}

}  // namespace
}  // namespace larderloop
