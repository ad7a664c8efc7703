// The numbers under the bars: GTIN-8, -12, -13, -14, and UPC-E, which is a UPC-A with zeros left out.
#include "intake/gs1_elements.h"
#include "larderloop/core/validate.h"
#include "larderloop/intake/gs1.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace larderloop {
namespace {

using intake::scan_fault;

// `places`: where each digit stands in the text, counted from 1.
ScanResult<std::string> digits_of(std::string_view text, std::vector<std::size_t>& places) {
  std::string digits;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char c = text[at];
    if (c == ' ' || c == '-') continue;
    if (c < '0' || c > '9') {
      return scan_fault(ScanFault::kNotADigit, at + 1, {}, fmt::format("'{}' is no digit", c), "type only the digits under the bars");
    }
    digits += c;
    places.push_back(at + 1);
  }
  if (digits.empty()) return scan_fault(ScanFault::kEmpty, 0, {}, "there are no digits", "type the digits under the bars");
  return digits;
}

tl::unexpected<ScanError> wrong_check(const std::string& digits) {
  const char right = gtin_check_digit(std::string_view(digits).substr(0, digits.size() - 1));
  return scan_fault(ScanFault::kCheckDigit, digits.size(), {},
                    fmt::format("the check digit of '{}' does not fit: {} is expected", digits, right),
                    "scan it again, or read the digits once more; one of them is wrong");
}

// What the issuer's prefix tells (GS1 General Specifications 1.4.2). It never tells a country of origin.
void describe(ScannedGtin& found) {
  const std::string& gtin = found.gtin;
  found.variable = gtin[0] == '9';
  found.carton = gtin[0] >= '1' && gtin[0] <= '8';
  if (gtin.compare(0, 6, "000000") == 0) {  // a GTIN-8
    found.restricted = gtin[6] == '0' || gtin[6] == '2';
    return;
  }
  const int prefix = (gtin[1] - '0') * 100 + (gtin[2] - '0') * 10 + (gtin[3] - '0');
  found.restricted = (prefix >= 20 && prefix <= 29) || (prefix >= 40 && prefix <= 49) || (prefix >= 200 && prefix <= 299);
  if (prefix == 977) found.note = "the number of a magazine";
  if (prefix == 978 || prefix == 979) found.note = "the number of a book";
  if (prefix == 980 || (prefix >= 981 && prefix <= 983) || prefix >= 990) found.note = "the number of a coupon or refund slip";
}

ScanResult<ScannedGtin> described(std::string gtin) {
  if (gtin.find_first_not_of('0') == std::string::npos) {
    return scan_fault(ScanFault::kPlaceholder, 0, {}, "a number of zeros only stands for no item", "leave the number out");
  }
  ScannedGtin found;
  found.gtin = std::move(gtin);
  describe(found);
  return found;
}

bool knows(const ScanHow& how, const std::string& gtin) {
  return std::find(how.known.begin(), how.known.end(), gtin) != how.known.end();
}

ScanResult<ScannedGtin> eight_digits(const std::string& digits, const ScanHow& how) {
  const std::string as_eight = normal_gtin(digits);
  if (!how.upce && digits[0] > '1') return as_eight.empty() ? ScanResult<ScannedGtin>(wrong_check(digits)) : described(as_eight);
  const auto upc = expand_upce(digits);
  if (how.upce) {
    if (!upc) return tl::unexpected<ScanError>(upc.error());
    return described("00" + *upc);
  }
  if (as_eight.empty()) {
    if (upc) return described("00" + *upc);
    return tl::unexpected<ScanError>(upc.error());
  }
  if (!upc) return described(as_eight);
  const std::string as_upc = "00" + *upc;
  if (knows(how, as_eight) != knows(how, as_upc)) return described(knows(how, as_eight) ? as_eight : as_upc);
  return scan_fault(ScanFault::kAmbiguousEight, 0, {},
                    fmt::format("'{}' is a GTIN-8, or a UPC-E that stands for {}", digits, *upc),
                    fmt::format("type {} for the first, {} for the second", as_eight, *upc));
}

// Eleven digits: a leading zero or the check digit was lost on the way.
tl::unexpected<ScanError> wrong_length(const std::string& digits) {
  std::string hint = "scan it again, or type all the digits under the bars";
  if (digits.size() == 11) {
    const std::string with_zero = "0" + digits;
    const std::string with_check = digits + gtin_check_digit(digits);
    hint = normal_gtin(with_zero).empty() ? fmt::format("if its check digit was left off: {}", with_check)
                                          : fmt::format("if a leading zero was lost: {}; if the check digit was left off: {}", with_zero, with_check);
  }
  if (digits.size() == 7) {
    const auto six = expand_upce(digits.substr(1));
    const auto checked = expand_upce("0" + digits);
    hint = "type all eight digits under the bars";
    if (six && checked) hint += fmt::format("; it could be {} or {}", *checked, *six);
  }
  return scan_fault(ScanFault::kLength, 0, {}, fmt::format("'{}' has {} digits; an item number has 8, 12, 13 or 14", digits, digits.size()), hint);
}

// Positions of faults are those among the digits.
ScanResult<ScannedGtin> number_of(const std::string& digits, const ScanHow& how) {
  if (digits.size() == 6) {
    const auto upc = expand_upce(digits);
    if (!upc) return tl::unexpected<ScanError>(upc.error());
    if (how.upce) return described("00" + *upc);
    return scan_fault(ScanFault::kLength, 0, {}, fmt::format("'{}' has six digits only", digits),
                      fmt::format("if it is the middle of a UPC-E, type {}", *upc));
  }
  if (digits.size() == 8) return eight_digits(digits, how);
  if (digits.size() < 12 || digits.size() > 14) return wrong_length(digits);
  const std::string gtin = normal_gtin(digits);
  if (gtin.empty()) return wrong_check(digits);
  return described(gtin);
}

}  // namespace

ScanResult<std::string> expand_upce(std::string_view digits) {
  if ((digits.size() != 6 && digits.size() != 8) || digits.find_first_not_of("0123456789") != std::string_view::npos) {
    return scan_fault(ScanFault::kUpcE, 0, {}, fmt::format("'{}' is no UPC-E: it has six or eight digits", digits), "type all the digits under the bars");
  }
  const char system = digits.size() == 8 ? digits.front() : '0';
  if (system > '1') {
    return scan_fault(ScanFault::kUpcE, 1, {}, fmt::format("'{}' is no UPC-E: those begin with 0 or 1", digits), "type all the digits under the bars");
  }
  const std::string d(digits.size() == 8 ? digits.substr(1, 6) : digits);
  const char last = d[5];
  const bool well_formed = (last != '3' || d[2] >= '3') && (last != '4' || d[3] != '0') && (last < '5' || d[4] != '0');
  if (!well_formed) {
    return scan_fault(ScanFault::kUpcE, 0, {}, fmt::format("'{}' is no UPC-E: no number shortens to it", digits), "read the digits under the bars again");
  }
  std::string upc(1, system);
  if (last <= '2') upc += d.substr(0, 2) + last + "0000" + d.substr(2, 3);
  else if (last == '3') upc += d.substr(0, 3) + "00000" + d.substr(3, 2);
  else if (last == '4') upc += d.substr(0, 4) + "00000" + d.substr(4, 1);
  else upc += d.substr(0, 5) + "0000" + last;
  upc += gtin_check_digit(upc);
  if (digits.size() == 8 && upc.back() != digits.back()) {
    return scan_fault(ScanFault::kCheckDigit, 8, {}, fmt::format("the check digit of '{}' does not fit: {} is expected", digits, upc.back()),
                      "scan it again, or read the digits once more; one of them is wrong");
  }
  return upc;
}

ScanResult<ScannedGtin> read_gtin(std::string_view text, const ScanHow& how) {
  std::vector<std::size_t> places;
  const auto digits = digits_of(text, places);
  if (!digits) return tl::unexpected<ScanError>(digits.error());
  auto found = number_of(*digits, how);
  if (!found && found.error().position > 0) found.error().position = places[found.error().position - 1];
  return found;
}

}  // namespace larderloop
