// Any bytes as a typed date: a refusal that says what to do, or a mark whose day is plausible and
// reads back from its ISO form.
#include "larderloop/intake/date_text.h"
#include "require.h"

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace {

void try_date(std::string_view text, larderloop::Day today, const larderloop::DateHow& how) {
  using namespace larderloop;
  const auto mark = parse_date_text(text, MarkKind::kUseBy, today, how);
  if (!mark) {
    require(mark.error().kind == ErrorKind::kBadData, "a refusal blames the input");
    require(!mark.error().what.empty() && !mark.error().next_step.empty(),
            "a refusal says what and what next");
    return;
  }
  if (mark->kind == MarkKind::kNone) {
    require(*mark == DateMark{}, "no mark is empty");
    return;
  }
  require(mark->day.has_value(), "a mark has its day");
  require(*mark->day >= add_months(today, -5 * 12) && *mark->day <= add_months(today, 30 * 12),
          "the day is plausible");
  const auto again = parse_date_text(iso_day(*mark->day), mark->kind, today, how);
  require(again.has_value() && again->day == mark->day, "the ISO form reads back");
  if (mark->precision != Precision::kDay) {
    require(iso_day(*mark->day + Days(1)).substr(8) == "01", "a month ends with its last day");
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace larderloop;
  const Day today = *parse_iso_day("2026-11-25");
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  for (const DateOrder order : kAllDateOrders) {
    try_date(text, today, {order, std::nullopt});
    try_date(text, today, {order, today});
  }
  const auto printed = parse_printed_mark(text, MarkKind::kUseBy, today, {DateOrder::kNone, today});
  require(printed.has_value() || !printed.error().next_step.empty(), "a refusal says what next");
  if (printed && printed->lot_code.empty()) {
    const auto mark = parse_date_text(text, MarkKind::kUseBy, today, {DateOrder::kNone, today});
    require(mark.has_value() && *mark == printed->mark, "without a code it is the date alone");
  }
  return 0;
}
