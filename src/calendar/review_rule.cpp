#include "calendar/review_rule.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <set>

namespace larderloop {
namespace {

constexpr int kMonths = 12;
constexpr int kSurelyInEveryMonth = 28;

int month_of(Day day) {
  return static_cast<int>(static_cast<unsigned>(date::year_month_day{day}.month()));
}
int day_of_month(Day day) {
  return static_cast<int>(static_cast<unsigned>(date::year_month_day{day}.day()));
}

// In a year without 29 February.
int shortest(int month) {
  constexpr std::array<int, 12> kDays{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return kDays.at(static_cast<std::size_t>(month - 1));
}

RuleParts of(Frequency frequency) {
  RuleParts parts;
  parts.frequency = frequency;
  return parts;
}

// Months apart when they are spread evenly over the year, else 0: {3, 9} -> 6.
int even_step(const std::vector<int>& months) {
  if (months.empty()) return 0;
  const int count = static_cast<int>(months.size());
  if (kMonths % count != 0) return 0;
  const int step = kMonths / count;
  for (std::size_t i = 1; i < months.size(); ++i) {
    if (months[i] - months[i - 1] != step) return 0;
  }
  return step;
}

std::vector<DayInSet> numbered(const std::vector<DayInSet>& days, int ordinal) {
  std::vector<DayInSet> result;
  for (const DayInSet& each : days)
    result.push_back({each.ordinal == 0 ? ordinal : each.ordinal, each.weekday});
  return result;
}

// The rule's months with their last day, or with the last such weekday.
std::string at_month_end(const RuleParts& parts, Day starts) {
  const std::vector<int> months = months_visited(parts, starts);
  const bool weekdays = !parts.days.empty();
  const int step = even_step(months);
  const bool each_year = parts.frequency == Frequency::kMonthly || parts.interval == 1;
  const bool from_here = std::find(months.begin(), months.end(), month_of(starts)) != months.end();
  RuleParts better = of(Frequency::kYearly);
  if (!weekdays && months.size() > 1 && step != 0 && each_year && from_here) {
    better = of(Frequency::kMonthly);
    better.interval = step;
    better.month_days = {-1};
    return rule_text(better);
  }
  better.months = months;
  if (weekdays) {
    for (const DayInSet& each : parts.days) better.days.push_back({-1, each.weekday});
  } else if (months.size() == 1) {
    better.month_days = {-1};
  } else {
    better.month_days = {kSurelyInEveryMonth};
  }
  return rule_text(better);
}

// Several weekdays keep the first only: "the first of Monday to Friday" is near "the first Monday".
std::string without_positions(const RuleParts& parts, Day starts) {
  if (parts.frequency == Frequency::kDaily || parts.frequency == Frequency::kWeekly) {
    RuleParts better = of(Frequency::kWeekly);
    better.interval = parts.frequency == Frequency::kWeekly ? parts.interval : 1;
    better.days = {{0, parts.days.empty() ? weekday_of(starts) : parts.days.front().weekday}};
    return rule_text(better);
  }
  if (parts.days.empty()) return at_month_end(parts, starts);
  RuleParts better = of(Frequency::kYearly);
  better.months = months_visited(parts, starts);
  better.days = numbered({parts.days.front()}, parts.positions.front() < 0 ? -1 : 1);
  return rule_text(better);
}

bool has_negative(const std::vector<int>& numbers) {
  return std::any_of(numbers.begin(), numbers.end(), [](int each) { return each < 0; });
}

// The days of the month that the rule asks for, the start's own when it names none.
std::vector<int> month_days_of(const RuleParts& parts, Day starts) {
  if (!parts.month_days.empty()) return parts.month_days;
  const bool own = parts.days.empty() && parts.year_days.empty() && parts.weeks.empty();
  return own ? std::vector<int>{day_of_month(starts)} : std::vector<int>{};
}

Objection month_days_objection(const RuleParts& parts, Day starts) {
  const std::vector<int> days = month_days_of(parts, starts);
  const std::vector<int> months = months_visited(parts, starts);
  const bool yearly = parts.frequency == Frequency::kYearly;
  if (yearly && has_negative(days) && (months.size() != 1 || !parts.days.empty())) {
    return {
        "calendar programs do not agree on days counted from the end of several months of a year",
        at_month_end(parts, starts)};
  }
  for (const int month : months) {
    const auto fits = [&](int day) {
      return day < 0 ? -day <= shortest(month) : day <= shortest(month);
    };
    const bool lost = yearly ? !std::all_of(days.begin(), days.end(), fits)
                             : !days.empty() && std::none_of(days.begin(), days.end(), fits);
    if (lost) return {"it leaves out months that are too short", at_month_end(parts, starts)};
  }
  if (yearly && !parts.month_days.empty() && parts.months.empty()) {
    RuleParts better = of(Frequency::kMonthly);
    better.month_days = parts.month_days;
    better.days = parts.days;
    const bool same = parts.interval == 1 && parts.year_days.empty();
    return {engine_fault(parts, starts), same ? rule_text(better) : yearly_like(starts)};
  }
  return {};
}

Objection weekday_objection(const RuleParts& parts, Day starts) {
  const bool numbered_days = std::any_of(parts.days.begin(), parts.days.end(),
                                         [](const DayInSet& each) { return each.ordinal != 0; });
  if (numbered_days && parts.frequency == Frequency::kYearly && parts.months.empty()) {
    return {"calendar programs do not agree on weekdays counted through the whole year",
            yearly_like(starts)};
  }
  const bool fifths = !parts.days.empty() &&
                      std::all_of(parts.days.begin(), parts.days.end(), [](const DayInSet& each) {
                        return each.ordinal == 5 || each.ordinal == -5;
                      });
  if (fifths)
    return {"it leaves out months without a fifth such weekday", at_month_end(parts, starts)};
  return {};
}

}  // namespace

std::vector<int> months_visited(const RuleParts& parts, Day starts) {
  std::set<int> visited;
  if (parts.frequency == Frequency::kMonthly) {
    int month = month_of(starts);
    for (int step = 0; step < kMonths; ++step) {
      visited.insert(month);
      month = (month - 1 + parts.interval) % kMonths + 1;
    }
  } else if (!parts.months.empty()) {
    visited.insert(parts.months.begin(), parts.months.end());
  } else if (parts.month_days.empty() && parts.days.empty()) {
    visited.insert(month_of(starts));
  } else {
    for (int month = 1; month <= kMonths; ++month) visited.insert(month);
  }
  std::vector<int> months;
  for (const int month : visited) {
    const bool kept = parts.months.empty() || std::find(parts.months.begin(), parts.months.end(),
                                                        month) != parts.months.end();
    if (kept) months.push_back(month);
  }
  return months;
}

std::string yearly_like(Day day) {
  constexpr int kWeek = 7;
  const int ordinal = (day_of_month(day) - 1) / kWeek + 1;
  RuleParts parts = of(Frequency::kYearly);
  parts.months = {month_of(day)};
  parts.days = {{ordinal == 5 ? -1 : ordinal, weekday_of(day)}};
  return rule_text(parts);
}

Objection objection_to(const RuleParts& parts, Day starts) {
  const bool monthly = parts.frequency == Frequency::kMonthly;
  if (parts.frequency == Frequency::kDaily && has_negative(parts.month_days)) {
    RuleParts better = of(Frequency::kMonthly);
    better.month_days = {-1};
    return {engine_fault(parts, starts), rule_text(better)};
  }
  if (!parts.positions.empty() && !(monthly && !parts.days.empty() && parts.month_days.empty())) {
    return {"BYSETPOS picks from the whole " +
                std::string(monthly                                 ? "month"
                            : parts.frequency == Frequency::kYearly ? "year"
                                                                    : "week") +
                ", and calendar programs do not agree on it here",
            without_positions(parts, starts)};
  }
  if (!parts.weeks.empty()) {
    return {"calendar programs do not agree on BYWEEKNO", yearly_like(starts)};
  }
  if (parts.frequency == Frequency::kWeekly && !parts.months.empty()) {
    RuleParts better = of(Frequency::kYearly);
    better.months = parts.months;
    better.days = parts.days.empty() ? std::vector<DayInSet>{{0, weekday_of(starts)}} : parts.days;
    return {"calendar programs do not agree on FREQ=WEEKLY with BYMONTH", rule_text(better)};
  }
  if (!monthly && parts.frequency != Frequency::kYearly) return {};
  if (!parts.year_days.empty() && !engine_fault(parts, starts).empty()) {
    return {engine_fault(parts, starts), yearly_like(starts)};
  }
  if (Objection found = weekday_objection(parts, starts); !found.what.empty()) return found;
  return month_days_objection(parts, starts);
}

}  // namespace larderloop
