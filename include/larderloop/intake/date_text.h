// date_text.h - a typed date mark to a DateMark, or a refusal that offers the readings. Nothing is guessed.
#pragma once

#include <optional>
#include <string_view>

#include "larderloop/core/date_mark.h"
#include "larderloop/core/result.h"

namespace larderloop {

// Reads "2027-08-15", "2027-08" (month), "2027" (year, only as best before end), an optional phrase before it ("best before", "best before end",
// "bbe", "use by", "sell by", "packed on", "produced on"), day and month in words ("15 Aug 2027", "Aug 2027", "August 15, 2027"), or one GS1 date element in brackets
// ("(15)270800": AI 11, 13, 15, 16, 17; YYMMDD, day 00 = last day of the month, GS1 General Specifications sections 3.4 and 7.12) or "none".
// All-number dates in another order are refused with both readings. `kind`: when the phrase is missing. Years outside today - 5 .. today + 30 are refused.
[[nodiscard]] Result<DateMark> parse_date_text(std::string_view text, MarkKind kind, Day today);

}  // namespace larderloop
