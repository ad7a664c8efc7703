// date_readings.h - all that a printed date can mean: each plausible order of day, month and year
// is a reading. The date is taken only when one reading is left. Source:   policy of the project;
// the orders are those of Regulation (EU) 1169/2011 Annex X (day, month, year), of the United
// States
//           (month, day, year) and of ISO 8601 (year, month, day).
#pragma once

#include "larderloop/core/date_mark.h"
#include "larderloop/core/result.h"
#include "larderloop/intake/date_text.h"

#include <optional>
#include <string>
#include <string_view>

namespace larderloop::intake {

struct ReadDate {
  Day day{};
  Precision precision = Precision::kDay;
};

// Dates outside are taken for slips.
struct YearWindow {
  Day first{};
  Day last{};
};
[[nodiscard]] YearWindow plausible_days(Day today);  // today - 5 years .. today + 30 years

// The year of two digits nearest to the current one: 49 years back to 50 ahead (GS1 General
// Specifications 7.12).
[[nodiscard]] int full_year(int two_digits, int current_year);

// "3 April 2027", "April 2027", "2027": as in refusals.
[[nodiscard]] std::string reading_words(const ReadDate& date);
// "2027-04-03", "2027-04", "2027": as in hints.
[[nodiscard]] std::string reading_iso(const ReadDate& date);

// `order`: the household's; with it no other is tried. `end`: it stands behind "best before end", which is printed when there is no
// day. `received`: when the lot came, only behind a best-before phrase: then a day and month without a year may do.
struct ReadingRules {
  DateOrder order = DateOrder::kNone;
  bool end = false;
  std::optional<Day> received;
};

// `text`: the date alone, as folded_date() gives it. `shown`: what was typed, for messages.
[[nodiscard]] Result<ReadDate> read_date(std::string_view text, const std::string& shown, const ReadingRules& rules,
                                         Day today);

// Refuses a date outside the window.
[[nodiscard]] Status check_window(const ReadDate& date, const std::string& shown, Day today);

}  // namespace larderloop::intake
