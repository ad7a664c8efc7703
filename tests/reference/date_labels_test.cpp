// Date labels as published sources describe or print them. Every case names where its form or its
// result is from; results that follow from the calendar alone (last day of a month, leap years)
// were checked with Python's datetime.
#include "intake/date_readings.h"
#include "larderloop/intake/date_text.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const Day kToday = *parse_iso_day("2026-11-25");

// `day` empty: refused.
struct Label {
  const char* text;
  const char* day;
  Precision precision = Precision::kDay;
};

void check(const Label& label) {
  const auto mark = parse_date_text(label.text, MarkKind::kBestBefore, kToday);
  if (*label.day == '\0') {
    EXPECT_FALSE(mark) << label.text << " was taken for "
                       << (mark && mark->day ? iso_day(*mark->day) : "none");
    return;
  }
  ASSERT_TRUE(mark) << label.text << ": " << mark.error().what;
  ASSERT_TRUE(mark->day) << label.text;
  EXPECT_EQ(iso_day(*mark->day), label.day) << label.text;
  EXPECT_EQ(mark->precision, label.precision) << label.text;
}

// Regulation (EU) 1169/2011 Annex X 1 and 2: day, month and year "in that order and in uncoded
// form"; "best before ..." with the day, "best before end ..." otherwise, month and year or the
// year alone being enough for what keeps more than 3 or 18 months.
TEST(DateLabels, EuropeanUnion) {
  for (const Label& label : {
           Label{"best before 15 March 2027", "2027-03-15"},
           Label{"use by 15 MAR 2027", "2027-03-15"},
           Label{"BBE 03/27", "2027-03-31", Precision::kMonth},
           Label{"BBE MAR 27", "2027-03-31", Precision::kMonth},
           Label{"Best before end: March 2027", "2027-03-31", Precision::kMonth},
           Label{"Best before end 2028", "2028-12-31", Precision::kYear},
           Label{"BEST BEFORE 2028", ""},  // a year alone goes with "end" only
           Label{"2028", ""},
           Label{"15.03.2027", "2027-03-15"},
           Label{"15th March 2027", "2027-03-15"},
           Label{"29/02/2028", "2028-02-29"},
           Label{"29 FEB 2027", ""},
           Label{"31 APR 2027", ""},
       }) {
    check(label);
  }
}

// USDA FSIS, Food Product Dating: an open date shows month and day, and the year on shelf-stable
// and frozen food, with a phrase beside it such as "best if used by"; month first. Two all-number
// orders can therefore be meant, so a date that both allow is refused.
TEST(DateLabels, UnitedStates) {
  for (const Label& label : {
           Label{"March 15, 2027", "2027-03-15"},
           Label{"Best if used by Mar 15 2027", "2027-03-15"},
           Label{"BEST BY SEPT 2027", "2027-09-30", Precision::kMonth},
           Label{"Sell by 15 MAR 2027", "2027-03-15"},
           Label{"04/13/27", "2027-04-13"},
           Label{"03/13/2027", "2027-03-13"},
           Label{"03/04/27", ""},
           Label{"03/04/2027", ""},
           Label{"04/04/27", "2027-04-04"},
           Label{"13/13/27", ""},
       }) {
    check(label);
  }
}

// Australia New Zealand Food Standards Code, Standard 1.2.5: day in digits, month in digits or
// letters, year of two or four digits; month and year where the food keeps more than three months.
TEST(DateLabels, AustraliaAndNewZealand) {
  for (const Label& label : {
           Label{"15MAR27", "2027-03-15"},
           Label{"14MAR28", "2028-03-14"},
           Label{"9 MAR 27", "2027-03-09"},
           Label{"15-mar-27", "2027-03-15"},
           Label{"MAR2027", "2027-03-31", Precision::kMonth},
           Label{"03/2027", "2027-03-31", Precision::kMonth},
           Label{"13/04/27", "2027-04-13"},
           Label{"21/04/27", "2027-04-21"},  // as 2021-04-27 it would be more than five years back
           Label{"22/04/27", ""},            // 2022-04-27 would not
           Label{"27 MAR 28", ""},
           Label{"32 MAR 27", "2032-03-27"},
           Label{"MAR 27", ""},
           Label{"MAR 45", "2045-03-31", Precision::kMonth},
           Label{"12/45", "2045-12-31", Precision::kMonth},
           Label{"28/03/27", ""},
           Label{"31/03/27", ""},
           Label{"29/02/27", ""},
           Label{"30/02/28", ""},
           Label{"27/03", ""},
           Label{"FEB 30", ""},
       }) {
    check(label);
  }
}

// RFC 3339 section 5.6 (full-date) and ISO 8601: four digits of the year, then month and day; also
// without separators (ISO 8601 basic format).
TEST(DateLabels, YearFirst) {
  for (const Label& label : {
           Label{"2027-03-15", "2027-03-15"}, Label{"2027/3/5", "2027-03-05"},
           Label{"2027-03", "2027-03-31", Precision::kMonth}, Label{"20270315", "2027-03-15"},
           Label{"15032027", "2027-03-15"}, Label{"03042027", ""}, Label{"270315", ""},
           Label{"2027-13-04", ""}, Label{"00/2027", ""}, Label{"MAR 1999", ""},
           Label{"O3/2027", ""},     // the letter
           Label{"2570-03-15", ""},  // Thai packages count Buddhist years
       }) {
    check(label);
  }
}

// GS1 General Specifications 3.4: AI 11, 13, 15, 16, 17 are YYMMDD; day 00 stands for the last day
// of the month, leap years included. The pairs 130200 -> 28 February 2013 and 160200 -> 29 February
// 2016 are those of the text as quoted by the library python-stdnum (pull request 294); here the
// clock stands so that they are plausible.
TEST(DateLabels, Gs1DayZeroIsTheLastOfTheMonth) {
  const Day then = *parse_iso_day("2012-06-01");
  const struct {
    const char* text;
    const char* day;
  } quoted[] = {{"(15)130200", "2013-02-28"}, {"(15)160200", "2016-02-29"}};
  for (const auto& each : quoted) {
    const auto mark = parse_date_text(each.text, MarkKind::kNone, then);
    ASSERT_TRUE(mark) << each.text << ": " << mark.error().what;
    EXPECT_EQ(iso_day(*mark->day), each.day);
    EXPECT_EQ(mark->precision, Precision::kMonth);
  }
  // Results of the GS1 Barcode Syntax Engine 1.4.1 (valid or not) and of the parsers biip and
  // gs1-barcode-parser-mod (the day).
  for (const Label& label : {
           Label{"(15)270800", "2027-08-31", Precision::kMonth},
           Label{"(17)270200", "2027-02-28", Precision::kMonth},
           Label{"(17)280200", "2028-02-29", Precision::kMonth},
           Label{"(17)280229", "2028-02-29"},
           Label{"(17)270228", "2027-02-28"},
           Label{"(17)270229", ""},
           Label{"(17)271331", ""},
           Label{"(17)270431", ""},
           Label{"(17)270000", ""},
           Label{"(18)270228", ""},
           Label{"(15)000229", ""},  // 2000 was a leap year, and is too far back
           Label{"(15)760101", ""},
           Label{"(15)770101", ""},
           Label{"(15)500101", "2050-01-01"},
           Label{"(15)510101", "2051-01-01"},
       }) {
    check(label);
  }
}

// GS1 General Specifications 7.12: with d = two digits less those of the current year, d of 51 and
// more is the last century, -50 and less the next. The years for 2026 are those of the parsers biip
// and gs1-barcode-parser-mod.
TEST(DateLabels, Gs1Centuries) {
  EXPECT_EQ(intake::full_year(0, 2026), 2000);
  EXPECT_EQ(intake::full_year(27, 2026), 2027);
  EXPECT_EQ(intake::full_year(50, 2026), 2050);
  EXPECT_EQ(intake::full_year(76, 2026), 2076);
  EXPECT_EQ(intake::full_year(77, 2026), 1977);
  EXPECT_EQ(intake::full_year(99, 2026), 1999);
  EXPECT_EQ(intake::full_year(10, 2060), 2110);  // by the rule: d = -50
  EXPECT_EQ(intake::full_year(11, 2060), 2011);  // by the rule: d = -49
}

}  // namespace
}  // namespace larderloop
