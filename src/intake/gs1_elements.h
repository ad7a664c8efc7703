// gs1_elements.h - the application identifiers of food, and element strings cut into elements.
// Source:   GS1 Barcode Syntax Dictionary of July 2026 (titles, formats); lengths that need no separator: GS1 General Specifications 7.8.5.
#pragma once

#include "larderloop/intake/gs1.h"

#include <string>
#include <string_view>
#include <vector>

namespace larderloop::intake {

enum class AiData { kGtin, kSscc, kDate, kDigits, kText, kExpiryTime, kMoment };
// `key`: with 'n' for the figure that counts decimals. `most` characters of value, at least `least`. `predefined`: needs no separator.
struct AiRow {
  std::string_view key;
  AiData data;
  std::size_t least;
  std::size_t most;
  bool predefined;
};
// The row of an identifier ("3103" for "310n"); null when it is not known here.
[[nodiscard]] const AiRow* ai_row(std::string_view ai);

[[nodiscard]] tl::unexpected<ScanError> scan_fault(ScanFault fault, std::size_t position, std::string ai, std::string what,
                                                   std::string next_step);

// `text` without symbology identifier, separators as byte 1D; `offset`: characters of the whole before it; `lead`: may one separator
// stand before it?
[[nodiscard]] ScanResult<std::vector<ScanElement>> split_elements(std::string_view text, std::size_t offset, bool lead);
[[nodiscard]] ScanResult<std::vector<ScanElement>> split_brackets(std::string_view text);
[[nodiscard]] ScanResult<std::vector<ScanElement>> split_link(std::string_view text);
// Length, characters, check digits of one element.
[[nodiscard]] tl::expected<void, ScanError> check_element(const ScanElement& element);
// All elements together: conflicts, pairs, dates, and where each value goes.
[[nodiscard]] ScanResult<Scan> gather_scan(std::vector<ScanElement> elements, Day today, bool any_day);

}  // namespace larderloop::intake
