// date.h - calendar days of the household. A Day has no zone and no time; an Instant is a UTC second.
// Source:   days and months by date.h (Howard Hinnant, 3.0.1), proleptic Gregorian calendar, as ISO 8601 and RFC 3339.
// Range:    years 1900 to 2199; anything else is refused on input.
#pragma once

#include <date/date.h>

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace larderloop {

using Day = date::local_days;
using Days = date::days;
using Instant = date::sys_seconds;

enum class Weekday : std::uint8_t { kMonday = 0, kTuesday, kWednesday, kThursday, kFriday, kSaturday, kSunday };

// "2027-03-15" strictly (RFC 3339 full-date), real days only. Nothing else is read.
[[nodiscard]] std::optional<Day> parse_iso_day(std::string_view text);
// "2027-03-15T08:30:00Z" strictly (RFC 3339 date-time in UTC), whole seconds.
[[nodiscard]] std::optional<Instant> parse_iso_instant(std::string_view text);
[[nodiscard]] std::string iso_day(Day day);
[[nodiscard]] std::string iso_instant(Instant at);
// "20270315" as iCalendar (RFC 5545 3.3.4) and GS1 write it.
[[nodiscard]] std::string compact_day(Day day);
// "Sat 3 Oct 2026": for people; English, independent of the locale.
[[nodiscard]] std::string plain_day(Day day);
// "Sat 3 Oct": where the year is clear from the context.
[[nodiscard]] std::string short_day(Day day);
[[nodiscard]] Weekday weekday_of(Day day);
[[nodiscard]] std::string_view weekday_name(Weekday weekday);  // "Monday"
[[nodiscard]] std::optional<Weekday> parse_weekday(std::string_view text);
// The day of the same number in a later (earlier) month; where that month is too short, its last day
// (ISO 8601 calendar arithmetic, common practice): 31 August + 6 months = 28 or 29 February.
[[nodiscard]] Day add_months(Day day, int months);
[[nodiscard]] int days_between(Day from, Day to);  // to - from
[[nodiscard]] Day start_of_week(Day day, Weekday first);
[[nodiscard]] int year_of(Day day);
[[nodiscard]] Day day_of(Instant at);  // the UTC day
[[nodiscard]] Instant midnight(Day day);  // 00:00:00Z of that day
// Whole years lived on `day` (29 February birthdays count from 1 March in common years). Negative when not yet born.
[[nodiscard]] int age_years(Day born, Day day);

}  // namespace larderloop
