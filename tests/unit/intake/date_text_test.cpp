// Typed dates: the forms, what refusals say, and that nothing is guessed. Published cases:
// tests/reference/date_labels_test.cpp.
#include "larderloop/intake/date_text.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const Day kToday = *parse_iso_day("2026-11-25");

DateMark read(std::string_view text, MarkKind kind = MarkKind::kBestBefore) {
  const auto mark = parse_date_text(text, kind, kToday);
  EXPECT_TRUE(mark) << text << ": " << (mark ? "" : mark.error().what);
  return mark.value_or(DateMark{});
}

Error refused(std::string_view text, MarkKind kind = MarkKind::kBestBefore) {
  const auto mark = parse_date_text(text, kind, kToday);
  EXPECT_FALSE(mark) << text << " was taken for "
                     << (mark && mark->day ? iso_day(*mark->day) : "none");
  if (mark) return {};
  EXPECT_EQ(mark.error().kind, ErrorKind::kBadData) << text;
  EXPECT_FALSE(mark.error().next_step.empty()) << text;
  return mark.error();
}

TEST(DateText, KeepsTheTextAsTyped) {
  const DateMark mark = read("  BBE 08 2027 ");
  EXPECT_EQ(mark.text, "BBE 08 2027");
  EXPECT_EQ(mark.kind, MarkKind::kBestBefore);
  EXPECT_EQ(mark.precision, Precision::kMonth);
  EXPECT_EQ(iso_day(*mark.day), "2027-08-31");
}

TEST(DateText, PhrasesNameTheKind) {
  const struct {
    const char* text;
    MarkKind kind;
  } cases[] = {
      {"best before 2027-03-15", MarkKind::kBestBefore},
      {"Best Before: 2027-03-15", MarkKind::kBestBefore},
      {"BEST BEFORE END 2027-03", MarkKind::kBestBefore},
      {"best before end of March 2027", MarkKind::kBestBefore},
      {"best if used by March 15, 2027", MarkKind::kBestBefore},
      {"Best if used before 2027-03-15", MarkKind::kBestBefore},
      {"BB 15 MAR 2027", MarkKind::kBestBefore},
      {"use by 2027-03-15", MarkKind::kUseBy},
      {"USE  BY\t15.03.2027", MarkKind::kUseBy},
      {"sell by 2027-03-15", MarkKind::kSellBy},
      {"packed on 2026-03-15", MarkKind::kPackedOn},
      {"packed 2026-03-15", MarkKind::kPackedOn},
      {"produced on 2026-03-15", MarkKind::kProducedOn},
      {"produced: 2026-03-15", MarkKind::kProducedOn},
  };
  for (const auto& each : cases) {
    // The phrase outranks the kind that was named beside it.
    EXPECT_EQ(read(each.text, MarkKind::kUseBy).kind, each.kind) << each.text;
    EXPECT_EQ(read(each.text, MarkKind::kNone).kind, each.kind) << each.text;
  }
  EXPECT_EQ(read("2027-03-15", MarkKind::kUseBy).kind, MarkKind::kUseBy);
}

TEST(DateText, ADateWithoutKindIsRefused) {
  const Error error = refused("2027-03-15", MarkKind::kNone);
  EXPECT_NE(error.what.find("what kind of date"), std::string::npos) << error.what;
  EXPECT_EQ(error.next_step,
            "write 'best before 2027-03-15' or 'use by 2027-03-15', as the package has it");
}

TEST(DateText, NoneIsNoMark) {
  EXPECT_EQ(read("none"), DateMark{});
  EXPECT_EQ(read(" NONE "), DateMark{});
}

TEST(DateText, MonthsInWords) {
  constexpr const char* kNames[] = {"January",   "February", "March",    "April",
                                    "May",       "June",     "July",     "August",
                                    "September", "October",  "November", "December"};
  for (unsigned month = 1; month <= 12; ++month) {
    const std::string name = kNames[month - 1];
    for (const std::string& word : {name, name.substr(0, 3)}) {
      const DateMark mark = read("15 " + word + " 2027");
      EXPECT_EQ(mark.day, resolve_day(2027, month, 15)) << word;
      EXPECT_EQ(mark.precision, Precision::kDay);
      EXPECT_EQ(read(word + " 2027").day, resolve_month(2027, month)) << word;
    }
  }
  EXPECT_EQ(read("15 sept 2027").day, resolve_day(2027, 9, 15));
  EXPECT_EQ(read("2027 Mar 15").day, resolve_day(2027, 3, 15));
  EXPECT_EQ(read("1st Mar 2027").day, resolve_day(2027, 3, 1));
  EXPECT_EQ(read("March 22nd, 2027").day, resolve_day(2027, 3, 22));
  EXPECT_EQ(read("3rd Mar 27").day, resolve_day(2027, 3, 3));
  refused("15 Marc 2027");
  refused("15 septe 2027");
}

TEST(DateText, TwoReadingsAreOfferedNotGuessed) {
  const Error numbers = refused("03/04/2027");
  EXPECT_EQ(numbers.what, "'03/04/2027' could be 3 April or 4 March 2027");
  EXPECT_EQ(numbers.next_step, "write 2027-04-03 or 2027-03-04");
  const Error years = refused("27 MAR 28");
  EXPECT_EQ(years.what, "'27 MAR 28' could be 28 March 2027 or 27 March 2028");
  EXPECT_EQ(years.next_step, "write 2027-03-28 or 2028-03-27");
  const Error dense = refused("03042027");
  EXPECT_EQ(dense.what, "'03042027' could be 3 April or 4 March 2027");
  const Error phrase = refused("use by 03/04/27");
  EXPECT_NE(phrase.what.find("3 April"), std::string::npos) << phrase.what;
  EXPECT_NE(phrase.what.find("4 March"), std::string::npos) << phrase.what;
}

TEST(DateText, OneReadingLeftIsTaken) {
  EXPECT_EQ(read("13/04/2027").day, resolve_day(2027, 4, 13));
  EXPECT_EQ(read("04/13/2027").day, resolve_day(2027, 4, 13));
  EXPECT_EQ(read("04/04/2027").day, resolve_day(2027, 4, 4));
  EXPECT_EQ(read("31.12.2026").day, resolve_day(2026, 12, 31));
}

TEST(DateText, AShortMonthIsATypingErrorAndNeverAnotherOrder) {
  EXPECT_NE(refused("30/02/28").what.find("February 2028 has no day 30"), std::string::npos);
  EXPECT_NE(refused("31/04/27").what.find("April 2027 has no day 31"), std::string::npos);
  EXPECT_NE(refused("2027-02-29").what.find("February 2027 has no day 29"), std::string::npos);
  EXPECT_EQ(read("2028-02-29").day, resolve_day(2028, 2, 29));
}

TEST(DateText, TheWindowIsFiveYearsBackAndThirtyAhead) {
  EXPECT_EQ(read("2021-11-25").day, resolve_day(2021, 11, 25));
  EXPECT_EQ(refused("2021-11-24").what, "'2021-11-24' is not between 2021-11-25 and 2056-11-25");
  EXPECT_EQ(read("2056-11-25").day, resolve_day(2056, 11, 25));
  refused("2056-11-26");
  EXPECT_EQ(read("2056-10").day, resolve_day(2056, 10, 31));
  refused("2056-11");  // its last day is past the window
  refused("(15)561126");
  const Error buddhist = refused("2570-03-15");
  EXPECT_NE(buddhist.next_step.find("2027-03-15"), std::string::npos) << buddhist.next_step;
}

TEST(DateText, WhatHasNoYearOrMayBeACodeIsRefused) {
  for (const char* text :
       {"15 Mar", "Mar 15", "March", "15/03", "03/15", "2028", "best before 2028", "270315", "0327",
        "L6074", "6074", "26074", "123456789", "12345678901234567890"}) {
    refused(text);
  }
}

TEST(DateText, NonsenseIsRefused) {
  for (const char* text : {"",
                           "   ",
                           "best before",
                           "best before none",
                           "bbe",
                           "soon",
                           "2027-00-10",
                           "2027-13-01",
                           "2027-03-00",
                           "2027-03-32",
                           "2027-3-4-5",
                           "20270315 1",
                           "15 Mar 202",
                           "15 Mar 20277",
                           "+2027-03-15",
                           "2027_03_15",
                           "2027-03-15Z",
                           "15th 2027",
                           "Mar Apr 2027",
                           "15 15th Mar",
                           "2027-03-15 25:00",
                           "2027-03-15 12:60",
                           "best beforehand 2027-03-15",
                           "\xD9\xA1\xD9\xA2/2027"}) {
    refused(text);
  }
  refused(std::string(101, '1'));
}

TEST(DateText, ATimeOfDayIsDropped) {
  EXPECT_EQ(read("USE BY 15 MAR 2027 14:32").day, resolve_day(2027, 3, 15));
  EXPECT_EQ(read("2027-03-15 00:00").day, resolve_day(2027, 3, 15));
}

TEST(DateText, DashesAndBlanksOfAnyKind) {
  EXPECT_EQ(read("15\xE2\x80\x93"
                 "03\xE2\x80\x93"
                 "2027")
                .day,
            resolve_day(2027, 3, 15));
  EXPECT_EQ(read("2027\xE2\x88\x92"
                 "03")
                .day,
            resolve_day(2027, 3, 31));
  EXPECT_EQ(read("15\xC2\xA0MAR\xC2\xA0"
                 "2027")
                .day,
            resolve_day(2027, 3, 15));
}

TEST(DateText, Gs1ElementsCarryTheirKind) {
  EXPECT_EQ(read("(11)260315").kind, MarkKind::kProducedOn);
  EXPECT_EQ(read("(13)260315").kind, MarkKind::kPackedOn);
  EXPECT_EQ(read("(15)270315").kind, MarkKind::kBestBefore);
  EXPECT_EQ(read("(16)270315").kind, MarkKind::kSellBy);
  const DateMark mark = read(" (17) 270315 ", MarkKind::kNone);
  EXPECT_EQ(mark.kind, MarkKind::kUseBy);
  EXPECT_EQ(mark.text, "(17) 270315");
  EXPECT_EQ(mark.day, resolve_day(2027, 3, 15));
  for (const char* text :
       {"(12)270315", "(10)270315", "(17)27031", "(17)2703155", "(17270315", "(17)270229",
        "(17)271301", "(17)270000", "(17)27O315", "()270315", "(17)270315(10)A1", "(17)", "("}) {
    refused(text);
  }
}

}  // namespace
}  // namespace larderloop
