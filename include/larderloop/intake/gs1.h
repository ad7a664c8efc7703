// gs1.h - what a scanner sends or a person types from under a bar code: GTINs, GS1 element strings, Digital Links.
// Source:   GS1 General Specifications (check digits 7.9, element strings 3 and 7.8, dates 3.4, years 7.12), GS1 Barcode Syntax Dictionary
//           (titles, lengths, character set 82, which elements go together), GS1 Digital Link URI syntax. docs/sources.md has the cases.
// Rules:    no digit is ever repaired, no link is ever opened. What could be two things is refused with both named.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "larderloop/core/date_mark.h"
#include "larderloop/core/result.h"

namespace larderloop {

enum class ScanFault {
  kEmpty, kNotADigit, kLength, kCheckDigit, kPlaceholder, kUpcE, kAmbiguousEight,                     // numbers
  kNoGtin, kAiUnknown, kAiLength, kAiEmpty, kAiCharset, kDateMonth, kDateDay, kTime, kImplausible,  // element strings
  kConflict, kPairing, kSeparator, kNotGs1,
  kNoKey, kLinkOrder, kLinkQuery  // Digital Links
};
[[nodiscard]] std::string_view scan_fault_name(ScanFault fault);  // "check_digit"

// `position`: of the first wrong character in what was given, counted from 1; 0 when it is about the whole. `ai`: of the element, if any.
struct ScanError {
  ScanFault fault = ScanFault::kEmpty;
  std::size_t position = 0;
  std::string ai;
  std::string what;
  std::string next_step;
  [[nodiscard]] Error error() const;  // kBadData
};

// One element: "17" with "270228". Position as in ScanError.
struct ScanElement {
  std::string ai;
  std::string value;
  std::size_t position = 0;
};

// A GTIN by itself. `gtin`: 14 digits, zeros in front. `restricted`: given out in one shop, company or household; means nothing
// elsewhere. `variable`: weighed goods (first of 14 digits is 9). `carton`: a case of the item (first of 14 digits is 1 to 8), another
// thing than the item. `note`: what else it is, as "a book"; else empty.
struct ScannedGtin {
  std::string gtin;
  bool restricted = false;
  bool variable = false;
  bool carton = false;
  std::string note;
};

// Everything a scan says. `units`: how many of the item are in it (AI 30, or 37 of a case with AI 02, whose item stands in `item`).
// `dates`: produced, packed, best before, sell by, use by, each with its kind, at most one of a kind. `net_weight`, `net_volume`, `price`:
// plain text with its unit or currency, "1.250 kg". `warnings`: whole sentences. `more`: elements that are only kept as text.
struct Scan {
  ScannedGtin item;
  std::optional<std::int64_t> units;
  std::string lot_code;
  std::string serial;
  std::vector<DateMark> dates;
  std::string expiry_time;  // "14:30" of AI 7003
  std::string net_weight;
  std::optional<std::int64_t> net_grams;
  std::string net_volume;
  std::string price;
  std::vector<ScanElement> elements;
  std::vector<std::string> warnings;
  // The date that tells how long the lot is good: best before and use by, the earlier one when both are there; else any other; else none.
  [[nodiscard]] DateMark mark() const;
};

// `upce`: eight digits are a UPC-E, not a GTIN-8. `known`: GTINs of the household (14 digits), which decide when just one reading is known.
// `any_day`: dates need not be plausible, because only the item is asked for.
struct ScanHow {
  bool upce = false;
  std::vector<std::string> known;
  bool any_day = false;
};

template <class Value>
using ScanResult = tl::expected<Value, ScanError>;

// Eight, twelve, thirteen or fourteen digits, blanks and hyphens between them passed over.
[[nodiscard]] ScanResult<ScannedGtin> read_gtin(std::string_view text, const ScanHow& how = {});
// Six (with number system 0) or eight digits of a UPC-E to the twelve of its UPC-A.
[[nodiscard]] ScanResult<std::string> expand_upce(std::string_view digits);
// Any of: a GTIN; an element string with or without symbology identifier, group separators as byte 1D or as the stand-ins U+241D, <GS>,
// {GS}, ^]; the form with brackets; a Digital Link.
[[nodiscard]] ScanResult<Scan> read_scan(std::string_view text, Day today, const ScanHow& how = {});
// Could it be a scan rather than words? Never true for a date as people write it.
[[nodiscard]] bool looks_like_scan(std::string_view text);

}  // namespace larderloop
