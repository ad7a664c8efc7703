// rule_parts.h - the parts of a recurrence rule, read strictly (RFC 5545 section 3.3.10) before
// libical sees it: libical 3.0.16 takes BYMONTH=13, 30 February as UNTIL and parts that do not go
// together.
#pragma once

#include "larderloop/core/date.h"
#include "larderloop/core/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

enum class Frequency { kDaily, kWeekly, kMonthly, kYearly };

struct DayInSet {
  int ordinal = 0;  // 0: every such day; 1: the first; -1: the last
  Weekday weekday = Weekday::kMonday;
};

struct RuleParts {
  Frequency frequency = Frequency::kYearly;
  int interval = 1;
  std::optional<int> count;
  std::optional<Day> until;
  std::vector<int> months;
  std::vector<int> month_days;
  std::vector<int> year_days;
  std::vector<int> weeks;
  std::vector<int> positions;
  std::vector<DayInSet> days;
  std::optional<Weekday> week_start;
};

// kBadData names the part. Names and values may be in small letters. Refused: what the standard
// forbids with a start that is a whole day, and RSCALE and SKIP (RFC 7529), which few programs
// know.
[[nodiscard]] Result<RuleParts> read_rule(std::string_view text);
// In capitals and in one fixed order, lists without doubles.
[[nodiscard]] std::string rule_text(const RuleParts& parts);
// Empty, or why libical 3.0.16 gives wrong dates for the rule (docs/limits.md).
[[nodiscard]] std::string engine_fault(const RuleParts& parts, Day starts);

}  // namespace larderloop
