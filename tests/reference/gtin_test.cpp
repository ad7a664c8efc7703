// Check digits of trade item numbers against worked examples printed by GS1 member organisations
// and others. Rule: GS1 General Specifications, section 7.9 (weights 3, 1, 3, ... from the right).
#include "larderloop/core/validate.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

struct Example {
  const char* source;
  const char* body;
  char check;
};

constexpr Example kExamples[] = {
    {"GS1 Hong Kong, check digit calculator, worked example", "629104150021", '3'},
    {"GS1 India, check digit, worked example", "890400021003", '7'},
    {"GS1 Sweden, check digit, worked example", "730001100001", '7'},
    {"encyclopedia text on check digits, UPC-A example", "01010101010", '5'},
    {"GS1 Syntax Engine, sample data", "952123454321", '3'},
    {"barcode writer in PostScript, SSCC-18 sample (same rule)", "10614141123456789", '7'},
    {"printer maker's UPC-E table, expanded", "01200000456", '8'},
    {"printer maker's UPC-E table, expanded", "02710000583", '4'},
    {"printer maker's UPC-E table, expanded", "04120000202", '9'},
    {"printer maker's UPC-E table, expanded", "08760000054", '8'},
    {"printer maker's UPC-E table, expanded", "07537000007", '3'},
    {"printer maker's UPC-E table, expanded", "02137500006", '8'},
    {"printer maker's UPC-E table, expanded", "05170100009", '7'},
};

TEST(GtinReference, CheckDigitsAreThePrintedOnes) {
  for (const Example& example : kExamples)
    EXPECT_EQ(gtin_check_digit(example.body), example.check) << example.source;
}

// GTIN-8, -12, -13 and -14 are written in fourteen digits with zeros in front (GS1 General
// Specifications, section 3.3.2).
TEST(GtinReference, NumbersArePaddedToFourteen) {
  for (const Example& example : kExamples) {
    const std::string whole = std::string(example.body) + example.check;
    if (whole.size() > 14) continue;
    EXPECT_EQ(normal_gtin(whole), std::string(14 - whole.size(), '0') + whole) << example.source;
  }
}

// The check digit finds every single wrong digit (GS1 General Specifications, section 7.9).
TEST(GtinReference, EverySingleWrongDigitIsFound) {
  int tried = 0;
  for (const Example& example : kExamples) {
    const std::string whole = std::string(example.body) + example.check;
    if (whole.size() > 14) continue;
    for (std::size_t at = 0; at < whole.size(); ++at) {
      for (char digit = '0'; digit <= '9'; ++digit) {
        if (digit == whole[at]) continue;
        std::string wrong = whole;
        wrong[at] = digit;
        EXPECT_EQ(normal_gtin(wrong), "") << wrong;
        ++tried;
      }
    }
  }
  EXPECT_GT(tried, 1000);
}

// What it cannot find: neighbours swapped that differ by five (arithmetic on the rule; both numbers
// are in the range 952 that GS1 keeps for examples). So a number that is right is shown with the
// name of the food.
TEST(GtinReference, NeighboursThatDifferByFiveMaySwapUnseen) {
  EXPECT_NE(normal_gtin("9521600000012"), "");
  EXPECT_NE(normal_gtin("9526100000012"), "");
}

}  // namespace
}  // namespace larderloop
