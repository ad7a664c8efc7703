// Which rules may stand in a repeating event. The list: shapes on which libical 3.0.16,
// ical.js 2.2, rrule 2.8, python-dateutil 2.8 and rrule-temporal 2.2 gave the same dates, checked
// again by tests/e2e/feed_series.py and tests/reference/series_rule_test.cpp.
#include "calendar/review_rule.h"
#include "calendar/rule_parts.h"
#include "larderloop/calendar/rule.h"

#include <algorithm>

namespace larderloop {
namespace {

constexpr int kMonths = 12;
constexpr int kInEveryMonth = 28;
constexpr int kMostOrdinal = 4;
constexpr const char* kWhy = "calendar programs are not known to agree on it";

bool is_numbered(const DayInSet& day) {
  return day.ordinal == -1 || (day.ordinal >= 1 && day.ordinal <= kMostOrdinal);
}

bool has_more(const RuleParts& parts) {
  return parts.count || parts.until || !parts.weeks.empty() || !parts.positions.empty() ||
         !parts.year_days.empty();
}

// Every so many months: on a numbered weekday, or on the last day.
bool is_safe_monthly(const RuleParts& parts) {
  if (!parts.months.empty()) return false;
  if (parts.month_days.empty()) return parts.days.size() == 1 && is_numbered(parts.days.front());
  return parts.days.empty() && parts.month_days == std::vector<int>{-1};
}

// In named months: on a numbered weekday, on a day that all of them have, or on the last day of one
// single month.
bool is_safe_yearly(const RuleParts& parts) {
  if (parts.interval != 1 || parts.months.empty()) return false;
  if (!parts.days.empty())
    return parts.month_days.empty() && parts.days.size() == 1 && is_numbered(parts.days.front());
  if (parts.month_days.empty()) return true;
  if (parts.month_days.size() != 1) return false;
  return parts.month_days.front() > 0 ||
         (parts.month_days.front() == -1 && parts.months.size() == 1);
}

bool is_safe(const RuleParts& parts) {
  if (has_more(parts)) return false;
  if (parts.frequency == Frequency::kMonthly) return is_safe_monthly(parts);
  return parts.frequency == Frequency::kYearly && is_safe_yearly(parts);
}

// Which weekday of the month, as the rule says or as its start is.
DayInSet weekday_like(const RuleParts& parts, Day starts) {
  constexpr int kWeek = 7;
  if (!parts.days.empty() && is_numbered(parts.days.front())) return parts.days.front();
  const auto day = static_cast<unsigned>(date::year_month_day{starts}.day());
  const int ordinal = (static_cast<int>(day) - 1) / kWeek + 1;
  return {ordinal > kMostOrdinal ? -1 : ordinal, weekday_of(starts)};
}

// As often as the rule, as nearly as whole months can be.
int months_between(const RuleParts& parts) {
  constexpr int kDaysOfMonth = 30;
  switch (parts.frequency) {
    case Frequency::kDaily:
      return std::max(1, (parts.interval + kDaysOfMonth / 2) / kDaysOfMonth);
    case Frequency::kWeekly:
      return std::max(1, (parts.interval * 7 + kDaysOfMonth / 2) / kDaysOfMonth);
    case Frequency::kMonthly:
      return parts.interval;
    case Frequency::kYearly:
      return parts.interval * kMonths;
  }
  return 1;
}

RuleParts nearest_safe(const RuleParts& parts, Day starts) {
  RuleParts better;
  const bool yearly = parts.frequency == Frequency::kYearly && parts.interval == 1;
  const bool monthly = parts.frequency == Frequency::kMonthly;
  if (yearly || (monthly && kMonths % parts.interval == 0)) {
    better.months = months_visited(parts, starts);
    const bool on_day = parts.days.empty() && parts.year_days.empty() && parts.weeks.empty();
    const int own = static_cast<int>(static_cast<unsigned>(date::year_month_day{starts}.day()));
    const int day = parts.month_days.empty() ? own : parts.month_days.front();
    if (on_day && day >= 1 && day <= kInEveryMonth) {
      better.month_days = {day};
    } else {
      better.days = {weekday_like(parts, starts)};
    }
    return better;
  }
  better.frequency = Frequency::kMonthly;
  better.interval = months_between(parts);
  better.days = {weekday_like(parts, starts)};
  return better;
}

}  // namespace

SeriesRule series_rule(std::string_view rule, Day starts) {
  SeriesRule series;
  auto parts = read_rule(rule);
  if (!parts) {
    series.objection = parts.error().what;
    series.instead = yearly_like(starts);
    return series;
  }
  parts->week_start.reset();  // counts for weeks only, which no rule on the list has
  if (is_safe(*parts)) {
    series.rule = rule_text(*parts);
    return series;
  }
  series.objection = kWhy;
  const RuleParts better = nearest_safe(*parts, starts);
  series.instead = is_safe(better) ? rule_text(better) : yearly_like(starts);
  return series;
}

}  // namespace larderloop
