// Calendar arithmetic against another implementation: Python's datetime and calendar modules
// (proleptic Gregorian calendar).
#include "larderloop/core/date.h"
#include "larderloop/core/date_mark.h"

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <memory>
#include <sstream>

namespace larderloop {
namespace {

// Every thirteenth day from 1900 through 2199, and around each end of February: the day, its ISO
// weekday, the day in 1, 6, 18 and -11 months, the last day of its month, and the days since 1
// January 1970.
constexpr const char* kProgram = R"(
import calendar, datetime
def plus(day, months):
    at = day.year * 12 + day.month - 1 + months
    year, month = at // 12, at % 12 + 1
    return datetime.date(year, month, min(day.day, calendar.monthrange(year, month)[1]))
first, last = datetime.date(1900, 1, 1), datetime.date(2199, 12, 31)
days = {first + datetime.timedelta(n) for n in range(0, (last - first).days + 1, 13)} | {last}
for year in range(1900, 2200):
    end = datetime.date(year, 3, 1)
    days |= {end, end - datetime.timedelta(1), datetime.date(year, 12, 31)}
for day in sorted(days):
    end = datetime.date(day.year, day.month, calendar.monthrange(day.year, day.month)[1])
    print(day.isoformat(), day.isoweekday(), *(plus(day, m).isoformat() for m in (1, 6, 18, -11)), end.isoformat(),
          (day - datetime.date(1970, 1, 1)).days)
)";

std::string output_of_python() {
  const std::string command = std::string("/usr/bin/python3 -I -c '") + kProgram + "'";
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
  std::string text;
  std::array<char, 65536> part{};
  while (pipe != nullptr) {
    const std::size_t got = std::fread(part.data(), 1, part.size(), pipe.get());
    if (got == 0) break;
    text.append(part.data(), got);
  }
  return text;
}

TEST(PythonDays, AgreeOnEveryThirteenthDayOfThreeHundredYears) {
  std::istringstream lines(output_of_python());
  int days = 0;
  for (std::string line; std::getline(lines, line);) {
    std::istringstream words(line);
    std::string text, month1, month6, month18, month_before, month_end;
    int weekday = 0;
    int since = 0;
    words >> text >> weekday >> month1 >> month6 >> month18 >> month_before >> month_end >> since;
    ASSERT_FALSE(words.fail()) << line;
    const auto day = parse_iso_day(text);
    ASSERT_TRUE(day) << line;
    EXPECT_EQ(iso_day(*day), text);
    EXPECT_EQ(static_cast<int>(weekday_of(*day)) + 1, weekday) << text;
    EXPECT_EQ(iso_day(add_months(*day, 1)), month1) << text;
    EXPECT_EQ(iso_day(add_months(*day, 6)), month6) << text;
    EXPECT_EQ(iso_day(add_months(*day, 18)), month18) << text;
    EXPECT_EQ(iso_day(add_months(*day, -11)), month_before) << text;
    const date::year_month_day ymd{*day};
    EXPECT_EQ(resolve_month(year_of(*day), static_cast<unsigned>(ymd.month())).value(),
              *parse_iso_day(month_end))
        << text;
    EXPECT_EQ(days_between(*parse_iso_day("1970-01-01"), *day), since) << text;
    ++days;
  }
  EXPECT_GT(days, 300 * 365 / 13) << "python3 gave too little";
}

}  // namespace
}  // namespace larderloop
