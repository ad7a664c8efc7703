// date_text.h - a typed date mark to a DateMark, or a refusal that offers the readings. Nothing is guessed.
// Source:   order of day, month and year: Regulation (EU) 1169/2011 Annex X (day first), US practice (month first), ISO 8601 (year first);
//           GS1 General Specifications 3.4 (day 00) and 7.12 (two-digit years).
#pragma once

#include <optional>
#include <string_view>

#include "larderloop/core/date_mark.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

namespace larderloop {

// `order`: with one, no other is ever tried for numbers that could be several things. `received`: when the lot came; with it "best
// before 23 Jan" is the first such day within about three months (Regulation (EU) 1169/2011 Annex X 1(c)).
struct DateHow {
  DateOrder order = DateOrder::kNone;
  std::optional<Day> received;
};

// Reads, in any case of letters, with any dash, full-width figures and accents or none:
//   2027-08-15, 2027/8/15, 2027年8月15日   year first with four digits is year, month, day always
//   2027-08, 08/2027, Aug 2027   a month (its last day)
//   2027   a year, only behind "best before end" or "bbe" (31 December)
//   15 Aug 2027, 15AUG27, August 15, 2027, 15th August 2027   months by name or its short form in English, French, German, Spanish,
//          Italian, Portuguese and Dutch; a short form that two months share (jui) is refused
//   27 JN 05, 2027JN05   the two letters of Canada, behind the year always
//   13/08/2027, 20270815   all numbers, when only one order of day, month and year gives a plausible date, or the household has an
//          order; six figures only with an order
//   (15)270800   one GS1 date element: AI 11 produced, 13 packed, 15 best before, 16 sell by, 17 use by; YYMMDD, day 00 = the month
//   none   nothing is printed
// with an optional phrase before it ("best before", "best before end", "bbe", "best by", "use by", "exp", "sell by", "packed on",
// "produced on" and the like, also MHD, THT, BB/MA and their languages) and a time of day after it, which is dropped. `kind`: what the
// date is where the phrase is missing; with kNone a date without a phrase is refused.
// Refused, with what it could be: two plausible readings (03/04/2027), a day that its month does not have (a typing error, never
// taken for another order), dates outside today - 5 years .. today + 30 years, a day and month without a year, codes (6074, L6074).
// `text` of the result is what was typed, without blanks around it.
[[nodiscard]] Result<DateMark> parse_date_text(std::string_view text, MarkKind kind, Day today, const DateHow& how = {});

// What a package prints beside each other: the date and the code of the lot.
struct PrintedMark {
  DateMark mark;
  std::string lot_code;
};
// As parse_date_text, and behind the date "lot CODE" or "code CODE": "BBE 08 2027 lot L6074", "none code 6074". Codes are kept as
// they are and never read as dates.
[[nodiscard]] Result<PrintedMark> parse_printed_mark(std::string_view text, MarkKind kind, Day today, const DateHow& how = {});

}  // namespace larderloop
