// Any bytes as a typed date: a refusal that says what to do, or a mark whose day is plausible and
// reads back from its ISO form.
#include "larderloop/intake/date_text.h"
#include "require.h"

#include <cstddef>
#include <cstdint>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace larderloop;
  const Day today = *parse_iso_day("2026-11-25");
  const auto mark =
      parse_date_text({reinterpret_cast<const char*>(data), size}, MarkKind::kUseBy, today);
  if (!mark) {
    require(mark.error().kind == ErrorKind::kBadData, "a refusal blames the input");
    require(!mark.error().what.empty() && !mark.error().next_step.empty(),
            "a refusal says what and what next");
    return 0;
  }
  if (mark->kind == MarkKind::kNone) {
    require(*mark == DateMark{}, "no mark is empty");
    return 0;
  }
  require(mark->day.has_value(), "a mark has its day");
  require(*mark->day >= add_months(today, -5 * 12) && *mark->day <= add_months(today, 30 * 12),
          "the day is plausible");
  const auto again = parse_date_text(iso_day(*mark->day), mark->kind, today);
  require(again.has_value() && again->day == mark->day, "the ISO form reads back");
  if (mark->precision != Precision::kDay) {
    require(iso_day(*mark->day + Days(1)).substr(8) == "01", "a month ends with its last day");
  }
  return 0;
}
