// Any bytes as a scan: a refusal that says what to do, or an item number with a right check digit, plausible dates, and the form with
// brackets of the same elements reads back to the same.
#include "larderloop/core/validate.h"
#include "larderloop/intake/gs1.h"
#include "require.h"

#include <cstddef>
#include <cstdint>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace larderloop;
  const Day today = *parse_iso_day("2026-11-25");
  const std::string text(reinterpret_cast<const char*>(data), size);
  const auto scan = read_scan(text, today);
  if (!scan) {
    const Error error = scan.error().error();
    require(error.kind == ErrorKind::kBadData, "a refusal blames the input");
    require(!error.what.empty() && !error.next_step.empty(), "a refusal says what and what next");
    require(scan.error().position <= size + 1, "a position is one of the input");
    return 0;
  }
  require(scan->item.gtin.size() == 14 && normal_gtin(scan->item.gtin) == scan->item.gtin, "the item is a whole GTIN");
  for (const DateMark& mark : scan->dates) {
    require(mark.day && *mark.day >= add_months(today, -5 * 12) && *mark.day <= add_months(today, 30 * 12), "the day is plausible");
  }
  if (scan->elements.empty()) return 0;
  std::string brackets;
  for (const ScanElement& element : scan->elements) {
    brackets += "(" + element.ai + ")";
    for (const char c : element.value) {
      if (c == '(' || c == ')') brackets += '\\';
      brackets += c;
    }
  }
  // A stand-in for the separator that is part of a value would be one in brackets, too.
  if (brackets.find("<GS>") != std::string::npos) return 0;
  const auto again = read_scan(brackets, today);
  require(again.has_value(), "the form with brackets reads");
  require(again->item.gtin == scan->item.gtin && again->lot_code == scan->lot_code && again->mark().day == scan->mark().day, "and says the same");
  return 0;
}
