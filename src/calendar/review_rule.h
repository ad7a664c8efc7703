// review_rule.h - what speaks against a rule for reviews although it is legal, and the nearest
// spelling that works.
#pragma once

#include "calendar/rule_parts.h"

#include <string>

namespace larderloop {

struct Objection {
  std::string what;      // empty: nothing speaks against it
  std::string spelling;  // a rule that works
};

// Shapes that calendar programs compute differently, that libical computes wrongly, or that
// silently leave out months.
[[nodiscard]] Objection objection_to(const RuleParts& parts, Day starts);
// Once a year on the weekday of `day`, counted in its month: "FREQ=YEARLY;BYMONTH=5;BYDAY=3MO".
[[nodiscard]] std::string yearly_like(Day day);

// The months that a monthly or yearly rule comes to, ascending.
[[nodiscard]] std::vector<int> months_visited(const RuleParts& parts, Day starts);

}  // namespace larderloop
