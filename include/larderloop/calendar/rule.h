// rule.h - recurrence rules over calendar days (RFC 5545 section 3.3.10), computed by libical.
// Limits:   docs/limits.md lists what libical 3.0.16 gets wrong and what is therefore refused.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "larderloop/core/date.h"
#include "larderloop/core/result.h"

namespace larderloop {

// Dates of a rule inside [begin, end), ascending, without doubles. `starts` is DTSTART. At most 10'000 dates.
// Errors: kBadData when the rule cannot be read or yields nothing it should (see check_review_rule for the reviews' demands).
[[nodiscard]] Result<std::vector<Day>> rule_dates(std::string_view rule, Day starts, Day begin, Day end);

// Is the rule fit for the reviews of a kit? Refused: unreadable rules, parts of a day (BYHOUR and the like), COUNT and UNTIL (a
// kit always has a next review), parts that this engine is known to get wrong, a start that the rule does not hit, and rules with a
// stretch of two years without a date. The hint names the nearest spelling that works.
[[nodiscard]] Status check_review_rule(std::string_view rule, Day starts);

// A rule as it may stand in a repeating event, which other programs have to work out: its shape is on the short list that all engines
// that were tried agree on (docs/limits.md), without an end. `rule`: so written; empty when it is not on the list, then `objection` says
// why and `instead` is the nearest rule that is. Pre: check_review_rule() allows it.
struct SeriesRule {
  std::string rule;
  std::string objection;
  std::string instead;
};
[[nodiscard]] SeriesRule series_rule(std::string_view rule, Day starts);

// The default: first Saturday of April and October, and the first such day on or after `from`.
inline constexpr std::string_view kDefaultReviewRule = "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA";
[[nodiscard]] Day first_default_review(Day from);

// Today's date in a zone ("Pacific/Auckland"; empty = the system's). kConfig for an unknown zone.
[[nodiscard]] Result<Day> local_day(Instant at, std::string_view zone);

}  // namespace larderloop
