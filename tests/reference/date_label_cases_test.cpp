// Printed date labels, one row a case. The results of 1 to 82 were worked out by a throwaway program of the rules in docs/sources.md with
// Python's datetime, and every date again by ICU through Node 20. Forms: EU Regulation (EU) 1169/2011 Annex X and Regulation (EC) 2295/2003
// Annex I (phrases in other languages); US USDA FSIS Food Product Dating; CA Food and Drug Regulations B.01.007; AU Australia New Zealand
// Food Standards Code 1.2.5; JP trade pages on Japan, China, Korea, Thailand, Taiwan; CLDR names of months in ICU; ISO 8601; policy a choice
// of this project.
#include "larderloop/intake/date_text.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const Day kToday = *parse_iso_day("2026-11-25");
constexpr DateOrder kNo = DateOrder::kNone;
constexpr DateOrder kDmy = DateOrder::kDmy;
constexpr DateOrder kMdy = DateOrder::kMdy;
constexpr DateOrder kYmd = DateOrder::kYmd;

struct LabelCase {
  const char* id;
  const char* text;
  DateOrder order;
  const char* expected;  // the day, with " month" or " year"; empty: refused
  const char* source;
};

std::string told(const LabelCase& each) {
  DateHow how;
  how.order = each.order;
  const auto mark = parse_date_text(each.text, MarkKind::kBestBefore, kToday, how);
  if (!mark) {
    EXPECT_EQ(mark.error().kind, ErrorKind::kBadData) << each.id;
    EXPECT_FALSE(mark.error().next_step.empty()) << each.id;
    return "";
  }
  std::string line = mark->day ? iso_day(*mark->day) : "none";
  if (mark->precision != Precision::kDay) line += " " + std::string(precision_name(mark->precision));
  if (mark->kind != MarkKind::kBestBefore) line += " " + std::string(mark_kind_name(mark->kind));
  return line;
}

TEST(DateLabelCases, AllOfTheTable) {
  for (const LabelCase& each : {
           LabelCase{"1", "2027-03-15", kNo, "2027-03-15", "ISO"},
           {"2", "2027/3/5", kNo, "2027-03-05", "ISO"},
           {"3", "2027年3月15日", kNo, "2027-03-15", "JP"},
           {"4", "2027-03", kNo, "2027-03-31 month", "ISO"},
           {"5", "03/2027", kNo, "2027-03-31 month", "EU"},
           {"6", "15 MAR 2027", kNo, "2027-03-15", "EU"},
           {"7", "March 15, 2027", kNo, "2027-03-15", "US"},
           {"8", "15th March 2027", kNo, "2027-03-15", "EU"},
           {"9", "15MAR27", kNo, "2027-03-15", "AU"},
           {"10", "14MAR28", kNo, "2028-03-14", "AU"},
           {"11", "9 MAR 27", kNo, "2027-03-09", "AU"},
           {"12", "15-mar-27", kNo, "2027-03-15", "AU"},
           {"13", "MAR2027", kNo, "2027-03-31 month", "AU"},
           {"14", "BEST BY SEPT 2027", kNo, "2027-09-30 month", "US"},
           {"15", "BBE 03/27", kNo, "2027-03-31 month", "EU"},
           {"16", "BBE MAR 27", kNo, "2027-03-31 month", "EU"},
           {"17", "Best before end: March 2027", kNo, "2027-03-31 month", "EU"},
           {"18", "Best before end 2028", kNo, "2028-12-31 year", "EU"},
           {"19", "BEST BEFORE 2028", kNo, "", "EU: a year alone goes with end"},
           {"20", "2028", kNo, "", "policy"},
           {"21", "MAR 27", kNo, "", "AU, US: March 2027 or 27 March"},
           {"22", "MAR 45", kNo, "2045-03-31 month", "AU"},
           {"23", "FEB 30", kNo, "", "policy"},
           {"24", "27 MAR 28", kNo, "", "AU, CA: 2027-03-28 or 2028-03-27"},
           {"25", "27 MAR 28", kDmy, "2028-03-27", "AU"},
           {"26", "27MAR28", kYmd, "2027-03-28", "CA"},
           {"27", "32 MAR 27", kNo, "2032-03-27", "CA"},
           {"28", "BB/MA 27 JA 30", kNo, "2027-01-30", "CA"},
           {"29", "BB/MA 2027 MA 05", kNo, "2027-05-05", "CA"},
           {"30", "2027JN07", kNo, "2027-06-07", "CA"},
           {"31", "2027-JL-07", kNo, "2027-07-07", "CA"},
           {"32", "27 MR 28", kNo, "2027-03-28", "CA"},
           {"33", "27 AL 31", kNo, "", "CA: no 31 April"},
           {"34", "JN 28", kNo, "", "CA: no year"},
           {"35", "28 JN", kNo, "", "CA: no year"},
           {"36", "28 NO 30", kNo, "2028-11-30", "CA"},
           {"37", "28 DE 24", kNo, "2028-12-24", "CA"},
           {"38", "27 AU 08", kNo, "2027-08-08", "CA"},
           {"39", "03/04/27", kNo, "", "EU, US: 3 April or 4 March"},
           {"40", "03/04/27", kDmy, "2027-04-03", "EU"},
           {"41", "03/04/27", kMdy, "2027-03-04", "US"},
           {"42", "03/04/2027", kNo, "", "EU, US"},
           {"43", "04/04/27", kNo, "2027-04-04", "EU, US agree"},
           {"44", "13/04/27", kNo, "2027-04-13", "EU"},
           {"45", "04/13/27", kNo, "2027-04-13", "US"},
           {"46", "13/13/27", kNo, "", "policy"},
           {"47", "21/04/27", kNo, "2027-04-21", "EU"},
           {"48", "22/04/27", kNo, "", "EU, or 2022-04-27"},
           {"49", "28/03/27", kNo, "", "EU, or 2028-03-27"},
           {"50", "28/03/27", kDmy, "2027-03-28", "EU"},
           {"51", "31/03/27", kNo, "", "EU, or 2031-03-27"},
           {"52", "27.03.04", kYmd, "2027-03-04", "JP"},
           {"53", "03/13/2027", kDmy, "", "policy: month 13"},
           {"54", "29 FEB 2027", kNo, "", "datetime: no such day"},
           {"55", "29/02/2028", kNo, "2028-02-29", "datetime"},
           {"56", "29/02/27", kNo, "", "datetime: no such day"},
           {"57", "30/02/28", kNo, "", "policy: a typing error"},
           {"58", "31 APR 2027", kNo, "", "datetime: no such day"},
           {"59", "2027-13-04", kNo, "", "ISO: month 13"},
           {"60", "00/2027", kNo, "", "month 0"},
           {"61", "20270315", kNo, "2027-03-15", "ISO basic form"},
           {"62", "15032027", kNo, "2027-03-15", "EU"},
           {"63", "03042027", kNo, "", "EU, US"},
           {"64", "270315", kNo, "", "policy: packed digits"},
           {"65", "270315", kYmd, "2027-03-15", "policy"},
           {"66", "0327", kNo, "", "MMYY, DDMM, YDDD, DDDY"},
           {"67", "12/45", kNo, "2045-12-31 month", "EU"},
           {"68", "27/03", kNo, "", "policy"},
           {"69", "USE BY 15 MAR 2027 14:32", kNo, "2027-03-15 use_by", "EU"},
           {"70", "Sell by 15 MAR 2027", kNo, "2027-03-15 sell_by", "US"},
           {"71", "PKD 15 MAR 2026", kNo, "2026-03-15 packed_on", "trade"},
           {"72", "MHD 15.03.2027", kNo, "2027-03-15", "EU"},
           {"73", "mindestens haltbar bis Ende 03/2027", kNo, "2027-03-31 month", "EU"},
           {"74", "15 août 2027", kNo, "2027-08-15", "CLDR"},
           {"75", "15 DE MARZO DE 2027", kNo, "2027-03-15", "CLDR"},
           {"76", "15 JUI 2027", kNo, "", "CLDR: juin or juillet"},
           {"77", "O3/2027", kNo, "", "policy: the letter O"},
           {"78", "2570-03-15", kNo, "", "JP: Buddhist years"},
           {"79", "116.03.15", kNo, "", "JP: years of the Republic"},
           {"80", "R9.3.15", kNo, "", "JP: Reiwa"},
           {"81", "MAR 1999", kNo, "", "policy: outside the window"},
           {"82", "15\u201303\u20132027", kNo, "2027-03-15", "policy: en dashes"},
           // Food facts: F01 to F07 EU Annex X and GS1 day 00; F09 policy. Earlier years than the window allows: same rule, see below.
           {"F02", "best before end 02/2027", kNo, "2027-02-28 month", "EU"},
           {"F03", "best before end 02/2028", kNo, "2028-02-29 month", "EU, leap year"},
           {"F05", "best before end 2027", kNo, "2027-12-31 year", "EU"},
           {"F07", "(17)280200", kNo, "2028-02-29 month use_by", "GS1 day 00"},
           {"F09", "03/04/26", kNo, "", "policy"},
           {"F18", "packed on 2026-03-01", kNo, "2026-03-01 packed_on", "Codex CXS 1 section 2"},
           // Labels of the task's own wording.
           {"T1", "BBE 08 2027", kNo, "2027-08-31 month", "EU"},
           {"T2", "EXP 2027 JN 05", kNo, "2027-06-05 use_by", "CA"},
           {"T3", "03APR27", kNo, "2027-04-03", "AU"},
           {"T4", "best by Apr 3 2027", kNo, "2027-04-03", "US"},
       }) {
    EXPECT_EQ(told(each), each.expected) << each.id << ": " << each.text << " (" << each.source << ")";
  }
}

// F01, F06 and F04: the same labels on days when they are plausible.
TEST(DateLabelCases, OtherDays) {
  const Day then = *parse_iso_day("2025-06-01");
  EXPECT_EQ(iso_day(*parse_date_text("best before end 08/2026", MarkKind::kNone, then)->day), "2026-08-31");
  EXPECT_EQ(iso_day(*parse_date_text("(17)260200", MarkKind::kNone, then)->day), "2026-02-28");
  const Day later = *parse_iso_day("2090-06-01");
  EXPECT_EQ(iso_day(*parse_date_text("best before end 02/2100", MarkKind::kNone, later)->day), "2100-02-28");  // no leap year
}

// F08: Regulation (EU) 1169/2011 Annex X 1(c): what keeps no longer than three months needs no year. The day after purchase that comes
// first, within about three months: common practice.
TEST(DateLabelCases, ADayWithoutYearNeedsThePurchase) {
  DateHow how;
  how.received = *parse_iso_day("2026-11-30");
  const Day today = *parse_iso_day("2026-11-30");
  EXPECT_EQ(iso_day(*parse_date_text("best before 23 Jan", MarkKind::kNone, today, how)->day), "2027-01-23");
  EXPECT_EQ(iso_day(*parse_date_text("best before Jan 23", MarkKind::kNone, today, how)->day), "2027-01-23");
  EXPECT_FALSE(parse_date_text("best before 23 Jan", MarkKind::kNone, today));         // bought when?
  EXPECT_FALSE(parse_date_text("23 Jan", MarkKind::kBestBefore, today, how));          // no phrase
  EXPECT_FALSE(parse_date_text("use by 23 Jan", MarkKind::kBestBefore, today, how));   // only best before
  EXPECT_FALSE(parse_date_text("best before 23 Jun", MarkKind::kNone, today, how));    // half a year
  EXPECT_FALSE(parse_date_text("best before MAR 27", MarkKind::kNone, today, how));    // or March 2027
  EXPECT_FALSE(parse_date_text("best before 29 Feb", MarkKind::kNone, today, how));    // 2027 has none
}

TEST(DateLabelCases, RefusalsOfferTheReadings) {
  const auto hint = [](const char* text) { return parse_date_text(text, MarkKind::kBestBefore, kToday).error(); };
  EXPECT_NE(hint("2570-03-15").next_step.find("2027"), std::string::npos);   // 78
  EXPECT_NE(hint("116.03.15").next_step.find("2027"), std::string::npos);    // 79
  EXPECT_NE(hint("R9.3.15").next_step.find("2027"), std::string::npos);      // 80
  EXPECT_NE(hint("15 JUI 2027").what.find("June or July"), std::string::npos);
  EXPECT_NE(hint("O3/2027").what.find("letter"), std::string::npos);
  EXPECT_EQ(hint("03/04/27").next_step, "write 2027-04-03 or 2027-03-04");
  EXPECT_NE(hint("15 lis 2027").what.find("October or November"), std::string::npos);  // CLDR: Polish and Croatian
  EXPECT_NE(hint("15 lip 2027").what.find("June or July"), std::string::npos);
}

// CLDR names of months as ICU gives them for French, German, Spanish, Italian, Portuguese, Dutch.
TEST(DateLabelCases, MonthsInSixMoreLanguages) {
  const char* const kShort[] = {"ene", "fév", "mrt", "avr", "mai", "giu", "lug", "ago", "set", "out", "nov", "dez"};
  const char* const kWhole[] = {"janvier", "februari", "März", "abril", "maggio", "Juni", "juillet", "augustus", "settembre", "Oktober", "novembre", "dicembre"};
  for (unsigned month = 1; month <= 12; ++month) {
    for (const char* name : {kShort[month - 1], kWhole[month - 1]}) {
      const auto mark = parse_date_text(std::string("15 ") + name + " 2027", MarkKind::kBestBefore, kToday);
      ASSERT_TRUE(mark) << name << ": " << mark.error().what;
      EXPECT_EQ(mark->day, resolve_day(2027, month, 15)) << name;
    }
  }
  for (const char* name : {"mei", "gen", "mag", "ott", "dic", "okt", "août", "MÄRZ"}) {
    EXPECT_TRUE(parse_date_text(std::string("15 ") + name + " 2027", MarkKind::kBestBefore, kToday)) << name;
  }
}

// Regulation (EC) 2295/2003 Annex I: the phrases; Canada: meilleur avant.
TEST(DateLabelCases, PhrasesInOtherLanguages) {
  const struct {
    const char* text;
    MarkKind kind;
  } cases[] = {{"à consommer de préférence avant le 15.03.2027", MarkKind::kBestBefore},
               {"À CONSOMMER DE PRÉFÉRENCE AVANT FIN 03/2027", MarkKind::kBestBefore},
               {"da consumarsi preferibilmente entro il 15 mar 2027", MarkKind::kBestBefore},
               {"ten minste houdbaar tot 15 mrt 2027", MarkKind::kBestBefore},
               {"THT 15-03-2027", MarkKind::kBestBefore},
               {"consúmase preferentemente antes del 15 de marzo de 2027", MarkKind::kBestBefore},
               {"bäst före 2027-03-15", MarkKind::kBestBefore},
               {"meilleur avant 27 MR 15", MarkKind::kBestBefore},
               {"emballé le 15.03.2026", MarkKind::kPackedOn},
               {"verpackt am 15.03.2026", MarkKind::kPackedOn},
               {"embalado 15.03.2026", MarkKind::kPackedOn}};
  for (const auto& each : cases) {
    const auto mark = parse_date_text(each.text, MarkKind::kNone, kToday);
    ASSERT_TRUE(mark) << each.text << ": " << mark.error().what;
    EXPECT_EQ(mark->kind, each.kind) << each.text;
    EXPECT_EQ(date::year_month_day(*mark->day).month(), date::month(3)) << each.text;
  }
}

// Packing codes are no dates for anyone but the packer (USDA FSIS, Food Product Dating): kept as they are. Forms from bakery and trade pages.
TEST(DateLabelCases, CodesAreKeptAndNeverReadAsDates) {
  for (const char* code : {"6074", "0746", "26074", "L6074", "040A4", "6123", "0195"}) {
    const auto refused = parse_date_text(code, MarkKind::kBestBefore, kToday);
    ASSERT_FALSE(refused) << code;
    const auto kept = parse_printed_mark(std::string("none code ") + code, MarkKind::kBestBefore, kToday);
    ASSERT_TRUE(kept) << code;
    EXPECT_EQ(kept->mark, DateMark{}) << code;
    EXPECT_EQ(kept->lot_code, code);
  }
  const auto both = parse_printed_mark("BBE 08 2027 LOT: L6074 A", MarkKind::kNone, kToday);
  ASSERT_TRUE(both);
  EXPECT_EQ(iso_day(*both->mark.day), "2027-08-31");
  EXPECT_EQ(both->lot_code, "L6074 A");
  EXPECT_EQ(both->mark.text, "BBE 08 2027");
  EXPECT_FALSE(parse_printed_mark("BBE 08 2027 lot", MarkKind::kNone, kToday));
}

TEST(DateLabelCases, FullWidthFiguresAreFigures) {
  EXPECT_EQ(iso_day(*parse_date_text("２０２７．０３．１５", MarkKind::kBestBefore, kToday)->day), "2027-03-15");
  EXPECT_EQ(iso_day(*parse_date_text("2027년 3월 15일 까지", MarkKind::kBestBefore, kToday)->day), "2027-03-15");
}

// With an order no other is ever tried.
TEST(DateLabelCases, AnOrderIsNeverGivenUp) {
  const auto read = [](const char* text, DateOrder order) {
    DateHow how;
    how.order = order;
    return parse_date_text(text, MarkKind::kBestBefore, kToday, how);
  };
  EXPECT_FALSE(read("04/13/27", kDmy));
  EXPECT_FALSE(read("13/04/27", kMdy));
  EXPECT_FALSE(read("20270315", kDmy));
  EXPECT_EQ(iso_day(*read("15032027", kDmy)->day), "2027-03-15");
  EXPECT_EQ(iso_day(*read("2027-03-15", kDmy)->day), "2027-03-15");  // four figures first: ISO always
  EXPECT_EQ(iso_day(*read("March 15, 2027", kDmy)->day), "2027-03-15");
  EXPECT_EQ(iso_day(*read("150327", kDmy)->day), "2027-03-15");
}

}  // namespace
}  // namespace larderloop
