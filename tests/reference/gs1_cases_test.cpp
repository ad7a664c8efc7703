// Numbers and scans against outside results. In the column `source`:
//   gs1hk, gs1india, gs1se   worked examples of check digits of GS1 Hong Kong, GS1 India, GS1 Sweden; gl_gtin: its documentation
//   printer    UPC-E table of a printer maker's manual; crystal: cristallight.com on UPC-E
//   E  GS1 Barcode Syntax Engine 1.4.1, the reference code of GS1     G  npm gtin 1.0.2     B  Python biip (June 2026)
//   P  npm gs1-barcode-parser-mod 1.2.1     D  npm digital-link.js 1.4.3     Z  zint 2.11.1     X  ZXingReader 1.4.0     M  dmtxread 0.7.6
//   policy     a choice of this project where no standard decides (docs/sources.md)
// The programs were run with these inputs; where several are named they agreed.
#include "larderloop/intake/gs1.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

const Day kToday = *parse_iso_day("2026-11-25");

struct NumberCase {
  const char* id;
  const char* text;
  const char* expected;  // 14 digits, or the fault
  bool upce;
  const char* source;
};

TEST(Gs1Cases, Numbers) {
  for (const NumberCase& each : {
           NumberCase{"K01", "6291041500213", "06291041500213", false, "gs1hk G B Z"},
           {"K02", "8904000210037", "08904000210037", false, "gs1india G B Z"},
           {"K03", "7300011000017", "07300011000017", false, "gs1se G B Z"},
           {"K04", "012345678905", "00012345678905", false, "gl_gtin G B"},
           {"K05", "95200002", "00000095200002", false, "G B Z E"},
           {"K06", "9520000000011", "09520000000011", false, "G B"},
           {"K07", "952 000-000 0011", "09520000000011", false, "policy"},
           {"K08", "9520000000012", "check_digit", false, "G B"},
           {"K09", "6291041500214", "check_digit", false, "G Z"},
           {"K10", "952000000001", "check_digit", false, "G B"},
           {"K11", "19520000000018", "19520000000018", false, "G B"},
           {"K12", "99520000000014", "99520000000014", false, "G B"},
           {"K13a", "9521600000012", "09521600000012", false, "G B Z"},
           {"K13b", "9526100000012", "09526100000012", false, "G B Z"},
           {"K14", "12345678905", "length", false, "G, policy"},
           {"K15", "00000000000000", "placeholder", false, "G, policy"},
           {"K16", "95200000000A1", "not_a_digit", false, "policy"},
           {"K17", "212345009994", "00212345009994", false, "B"},
           {"K18", "400000000015", "00400000000015", false, "G B"},
           {"K19", "2123450000003", "check_digit", false, "B"},
           {"K20", "9780306406157", "09780306406157", false, "G B Z"},
           {"K21", "02758314", "00027100005834", true, "printer G B Z"},
           {"K22", "04120229", "00041200002029", true, "printer G B Z"},
           {"K23", "08765438", "00087600000548", true, "printer G B Z"},
           {"K24", "07537743", "00075370000073", true, "printer G B Z"},
           {"K25", "05936631", "00059300000661", true, "crystal G B Z"},
           {"K26", "01245608", "00012000004568", true, "printer G B Z"},
           {"K27", "01245608", "ambiguous_8_digit", false, "G: valid both ways"},
           {"K28", "04252614", "00042100005264", false, "G B Z"},
           {"K29", "00012306", "00000000001236", true, "G B Z"},
           {"K30", "01278906", "check_digit", true, "G B Z"},
           {"K31", "120003", "upce", true, "Z error 271"},
           {"K32", "123004", "upce", true, "Z error 272"},
           {"K33", "123405", "upce", true, "Z error 273"},
           {"K34", "24252611", "upce", true, "B"},
           {"K35", "0425261", "length", false, "G against B Z"},
       }) {
    ScanHow how;
    how.upce = each.upce;
    const auto read = read_gtin(each.text, how);
    EXPECT_EQ(read ? read->gtin : std::string(scan_fault_name(read.error().fault)), each.expected) << each.id << " " << each.source;
    if (!read) {
      EXPECT_FALSE(read.error().error().next_step.empty()) << each.id;
    }
  }
}

TEST(Gs1Cases, WhatNumbersSayBesides) {
  EXPECT_TRUE(read_gtin("19520000000018")->carton);
  EXPECT_FALSE(read_gtin("9520000000011")->carton);
  EXPECT_TRUE(read_gtin("99520000000014")->variable);
  EXPECT_TRUE(read_gtin("212345009994")->restricted);   // K17
  EXPECT_TRUE(read_gtin("400000000015")->restricted);   // K18
  EXPECT_TRUE(read_gtin("00012306", {true, {}, false})->restricted);  // K29
  EXPECT_FALSE(read_gtin("95200002")->restricted);
  EXPECT_EQ(read_gtin("9780306406157")->note, "the number of a book");  // K20
  EXPECT_NE(read_gtin("9520000000012").error().what.find("1 is expected"), std::string::npos);   // K08
  EXPECT_NE(read_gtin("6291041500214").error().what.find("3 is expected"), std::string::npos);   // K09
  EXPECT_NE(read_gtin("952000000001").error().what.find("2 is expected"), std::string::npos);    // K10
  EXPECT_NE(read_gtin("2123450000003").error().what.find("5 is expected"), std::string::npos);   // K19
  EXPECT_NE(read_gtin("01278906", {true, {}, false}).error().what.find("7 is expected"), std::string::npos);  // K30
  EXPECT_NE(read_gtin("12345678905").error().next_step.find("012345678905"), std::string::npos);  // K14
  EXPECT_EQ(read_gtin("95200000000A1").error().position, 12U);                                    // K16
  // K35: G reads 004252000061, B and Z 042100005264.
  EXPECT_NE(read_gtin("0425261").error().next_step.find("042100005264"), std::string::npos);
}

TEST(Gs1Cases, AnAmbiguousEightIsSettledByWhatTheHouseholdKnows) {
  EXPECT_EQ(read_gtin("01245608", {false, {"00012000004568"}, false})->gtin, "00012000004568");
  EXPECT_EQ(read_gtin("01245608", {false, {"00000001245608"}, false})->gtin, "00000001245608");
  EXPECT_EQ(read_gtin("01245608", {false, {"00000001245608", "00012000004568"}, false}).error().fault, ScanFault::kAmbiguousEight);
}

// What a scan came to, in one line: GTIN, then what else it says.
std::string told(std::string_view text, Day today = kToday) {
  const auto scan = read_scan(text, today);
  if (!scan) return std::string(scan_fault_name(scan.error().fault)) + (scan.error().ai.empty() ? "" : " " + scan.error().ai);
  std::string line = scan->item.gtin;
  for (const DateMark& mark : scan->dates) {
    line += " " + std::string(mark_kind_name(mark.kind)) + "=" + iso_day(*mark.day) + (mark.precision == Precision::kMonth ? " month" : "");
  }
  if (!scan->expiry_time.empty()) line += " time=" + scan->expiry_time;
  if (!scan->lot_code.empty()) line += " lot=" + scan->lot_code;
  if (!scan->serial.empty()) line += " serial=" + scan->serial;
  if (scan->units) line += " units=" + std::to_string(*scan->units);
  if (!scan->net_weight.empty()) line += " weight=" + scan->net_weight;
  if (!scan->price.empty()) line += " price=" + scan->price;
  if (!scan->warnings.empty()) line += " warned";
  return line;
}

struct ScanCase {
  const char* id;
  std::string text;
  const char* expected;
  const char* source;
};

// The start of most cases: symbology identifier of GS1 DataMatrix and one item.
const std::string kItem = "]d20109521234543213";
const std::string kGs = "\x1D";

TEST(Gs1Cases, Scans) {
  for (const ScanCase& each : {
           ScanCase{"K36", "]E00012345000065", "00012345000065", "E"},
           {"K37", "]E401234565", "00000001234565", "E"},
           {"K38", "]E495200003", "check_digit", "E"},
           {"K39", "]I119521234543210", "19521234543210", "Z to X"},
           {"K40", "]C0ABC", "not_gs1", "E, policy"},
           {"K41", kItem + "1727022810LOT-7A" + kGs + "21K3", "09521234543213 use_by=2027-02-28 lot=LOT-7A serial=K3", "Z to X, E"},
           {"K42", "]C1010952123454321317270228", "09521234543213 use_by=2027-02-28", "E P"},
           {"K43", "]Q3010952123454321310ABC" + kGs + "17270200", "09521234543213 use_by=2027-02-28 month lot=ABC", "E P"},
           {"K44", "]e0010952123454321317270228", "09521234543213 use_by=2027-02-28", "E P"},
           {"K45", "010952123454321310ABC" + kGs + "17270228", "09521234543213 use_by=2027-02-28 lot=ABC", "P, policy"},
           {"K46", kGs + "010952123454321317270228", "09521234543213 use_by=2027-02-28", "M emits it, policy"},
           {"K47", "]d2" + kGs + "010952123454321317270228", "separator", "E"},
           {"K48", kItem + kGs + "17261231", "09521234543213 use_by=2026-12-31", "E P"},
           {"K49", kItem + "10ABC" + kGs, "09521234543213 lot=ABC", "E P"},
           {"K50", kItem + "10ABC" + kGs + kGs + "17270228", "separator", "E"},
           {"K51", kItem + "10" + kGs + "17270228", "ai_empty 10", "E"},
           {"K52", kItem + "10ABCDEFGHIJKLMNOPQRST" + kGs + "17270228", "09521234543213 use_by=2027-02-28 lot=ABCDEFGHIJKLMNOPQRST", "E Z"},
           {"K53", kItem + "10ABCDEFGHIJKLMNOPQRSTU" + kGs + "17270228", "ai_length 10", "E Z"},
           {"K54a", kItem + "10AB C", "ai_charset 10", "E Z"},
           {"K54b", kItem + "10AB#C", "ai_charset 10", "E Z"},
           {"K55", kItem + "10AB/C", "09521234543213 lot=AB/C", "E"},
           {"K56", kItem + "10ABC17270228", "09521234543213 lot=ABC17270228 warned", "E, policy"},
           {"K57", "]d2010952123454321417270228", "check_digit 01", "E Z"},
           {"K58", kItem + "17270229", "date_day 17", "E B Z"},
           {"K59", kItem + "17280229", "09521234543213 use_by=2028-02-29", "E B P"},
           {"K60", kItem + "17271331", "date_month 17", "E B Z"},
           {"K61", kItem + "17270431", "date_day 17", "E B"},
           {"K62", kItem + "17270000", "date_month 17", "E B"},
           {"K63", kItem + "17280200", "09521234543213 use_by=2028-02-29 month", "B P"},
           {"K65", kItem + "15000229", "implausible 15", "B P: 2000-02-29"},
           {"K66a", kItem + "15760101", "implausible 15", "B P: 2076-01-01"},
           {"K66b", kItem + "15770101", "implausible 15", "B P: 1977-01-01"},
           {"K67a", kItem + "15500101", "09521234543213 best_before=2050-01-01", "B P"},
           {"K67b", kItem + "15510101", "09521234543213 best_before=2051-01-01", "B P"},
           {"K68", kItem + "18270228", "ai_unknown 1827", "E Z"},
           {"K69", kItem + "310300125010A", "09521234543213 lot=A weight=1.250 kg", "E P"},
           {"K70", kItem + "3109001250", "ai_unknown 3109", "E"},
           {"K71", kItem + "3202000550", "09521234543213 weight=5.50 lb", "E"},
           {"K72", kItem + "310300125039221999", "09521234543213 weight=1.250 kg price=19.99", "E P"},
           {"K73", kItem + "302" + kGs + "3920299", "09521234543213 units=2 price=299", "E"},
           {"K74", kItem + "70032702281430", "09521234543213 use_by=2027-02-28 time=14:30", "E"},
           {"K75", kItem + "70032702001430", "date_day 7003", "E"},
           {"K76", kItem + "70032702282400", "time 7003", "E"},
           {"K77", kItem + "1527030117270331", "09521234543213 best_before=2027-03-01 use_by=2027-03-31", "E"},
           {"K78", kItem + "1727022817270228", "09521234543213 use_by=2027-02-28", "E"},
           {"K79", kItem + "1727022817270301", "conflict 17", "E"},
           {"K80", "]d217270228", "no_gtin", "E"},
           {"K81", "]d202095212345432133706" + kGs + "00395212345000000019", "09521234543213 units=6", "E"},
           {"K82", kItem + "02095212345432133706", "pairing 02", "E"},
           {"K83", "]d2010000009520000217270228", "00000095200002 use_by=2027-02-28", "E"},
           {"K84", kItem + "1727022", "ai_length 17", "E"},
           {"K85", kItem + "80050001991727022810A", "ai_length 8005", "E"},
           {"K86", "(01)09521234543213(17)270228(10)A1", "09521234543213 use_by=2027-02-28 lot=A1", "E"},
           {"K87", "(17)270228(01)09521234543213", "09521234543213 use_by=2027-02-28", "E"},
           {"K88", "(01)9521234543213", "ai_length 01", "E"},
           {"K89a", "(01)09521234543213(10)A(B)C", "ai_unknown B", "E"},
           {"K89b", "(01)09521234543213(10)A\\(B\\)C", "09521234543213 lot=A(B)C", "E"},
           {"K90", "https://example.com/01/09521234543213/10/ABC?17=270228", "09521234543213 use_by=2027-02-28 lot=ABC", "E D B"},
           {"K91", "HTTPS://example.com/some/path/01/09521234543213/10/A%2FB?15=270200&x=y#z",
            "09521234543213 best_before=2027-02-28 month lot=A/B", "E"},
           {"K92", "https://example.com/01/09521234543213/21/S/10/L", "link_order 10", "E D"},
           {"K93", "https://example.com/01/09521234543213?10=ABC", "link_query 10", "E"},
           {"K94", "https://example.com/01/09521234543213?17=270229", "date_day 17", "E"},
           {"K95", "https://example.com/gtin/09521234543213/lot/ABC", "no_key", "E D"},
       }) {
    EXPECT_EQ(told(each.text), each.expected) << each.id << " " << each.source;
  }
}

// K64: GS1 General Specifications as quoted by the library python-stdnum (pull request 294), and B; on a day when they are plausible.
TEST(Gs1Cases, DayZeroIsTheLastOfTheMonth) {
  const Day then = *parse_iso_day("2012-06-01");
  EXPECT_EQ(told(kItem + "15130200", then), "09521234543213 best_before=2013-02-28 month");
  EXPECT_EQ(told(kItem + "15160200", then), "09521234543213 best_before=2016-02-29 month");
}

// Stand-ins for the separator that people can see and paste (policy), each read like K41.
TEST(Gs1Cases, StandInsForTheSeparator) {
  for (const char* gs : {"\xE2\x90\x9D", "<GS>", "{GS}", "^]"}) {
    EXPECT_EQ(told(kItem + "10LOT-7A" + gs + "21K3"), "09521234543213 lot=LOT-7A serial=K3") << gs;
  }
}

TEST(Gs1Cases, PositionsAreThoseOfTheText) {
  const auto blank = read_scan(kItem + "10AB C", kToday);
  ASSERT_FALSE(blank);
  EXPECT_EQ(blank.error().position, kItem.size() + 2 + 3);
  const auto lost = read_scan(kItem + "10ABC17270228", kToday);
  EXPECT_NE(lost->warnings.front().find("(17)270228"), std::string::npos);
  const auto unknown = read_scan(kItem + "18270228", kToday);
  EXPECT_EQ(unknown.error().position, kItem.size() + 1);
}

// Also where what was given is longer than what is read: an identifier before the number, blanks and hyphens in it, stand-ins. The first was
// found by fuzzing.
TEST(Gs1Cases, PositionsAreThoseOfTheTextAsItWasGiven) {
  const auto position = [](std::string_view text) {
    const auto scan = read_scan(text, kToday);
    return scan ? std::size_t{0} : scan.error().position;
  };
  EXPECT_EQ(position("]E402222023"), 11U);        // the check digit
  EXPECT_EQ(position("]E40222x023"), 8U);         // no digit
  EXPECT_EQ(position("]E06291041500214"), 16U);   // K09 behind its identifier
  EXPECT_EQ(position("  6291041500214"), 15U);
  EXPECT_EQ(position("6 291041-500214"), 15U);
  EXPECT_EQ(position(kItem + "10LOT<GS>17271345"), kItem.size() + 5 + 4 + 2 + 3);  // month 13
  const auto scan = read_scan(kItem + "10LOT<GS>21K3", kToday);
  ASSERT_TRUE(scan);
  EXPECT_EQ(scan->elements.back().position, kItem.size() + 5 + 4 + 2 + 1);
}

TEST(Gs1Cases, TheDateOfTheLotIsTheEarlierOfThoseThatTell) {
  EXPECT_EQ(iso_day(*read_scan(kItem + "1527030117270331", kToday)->mark().day), "2027-03-01");
  EXPECT_EQ(read_scan(kItem + "1126010117270331", kToday)->mark().kind, MarkKind::kUseBy);
  EXPECT_EQ(read_scan(kItem + "11260101", kToday)->mark().kind, MarkKind::kProducedOn);
  EXPECT_EQ(read_scan(kItem, kToday)->mark(), DateMark{});
}

TEST(Gs1Cases, DatesAsPeopleWriteThemAreNoScans) {
  for (const char* text : {"2027-03-15", "20270315", "BBE 08 2027", "(15)270800", "15 MAR 2027", "none", ""}) EXPECT_FALSE(looks_like_scan(text)) << text;
  for (const std::string& text : {kItem, std::string("9520000000011"), std::string("(01)09521234543213"), std::string("https://example.com/01/09521234543213")}) {
    EXPECT_TRUE(looks_like_scan(text)) << text;
  }
}

}  // namespace
}  // namespace larderloop
