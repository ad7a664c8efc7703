#include "calendar/review_rule.h"
#include "calendar/rule_parts.h"
#include "larderloop/calendar/rule.h"

#include <algorithm>
#include <array>
#include <string>

namespace larderloop {
namespace {

constexpr int kLookAheadMonths = 20 * 12;
constexpr int kLongestGapMonths = 24;

// "write 'RULE'", with the start that the rule needs when it is another one.
std::string advice(const std::string& spelling, Day starts) {
  const auto dates = rule_dates(spelling, starts, starts, add_months(starts, kLookAheadMonths));
  std::string hint = "write '" + spelling + "'";
  if (dates && !dates->empty() && dates->front() != starts)
    hint += " and start on " + iso_day(dates->front());
  return hint;
}

Status refuse(std::string_view rule, const std::string& why, std::string hint) {
  return fail(ErrorKind::kBadData, "cannot use the rule '" + std::string(rule) + "': " + why,
              std::move(hint));
}

Status off_start(std::string_view rule, Day starts, Day first) {
  return refuse(
      rule, "its start " + iso_day(starts) + " is no day of it; the first one is " + iso_day(first),
      "start on " + iso_day(first));
}

// The first day from `starts` on that a weekly rule may have; `starts` itself for every other rule.
Day first_weekday(const RuleParts& parts, Day starts) {
  if (parts.frequency != Frequency::kWeekly || parts.days.empty()) return starts;
  Day day = starts;
  while (std::none_of(parts.days.begin(), parts.days.end(),
                      [&](const DayInSet& each) { return each.weekday == weekday_of(day); })) {
    day += Days(1);
  }
  return day;
}

Status check_gaps(std::string_view rule, const std::vector<Day>& dates, Day horizon) {
  for (std::size_t i = 0; i < dates.size(); ++i) {
    const Day next = i + 1 < dates.size() ? dates[i + 1] : horizon;
    if (next <= add_months(dates[i], kLongestGapMonths)) continue;
    return refuse(rule, "no review for more than two years after " + iso_day(dates[i]),
                  advice(yearly_like(dates.front()), dates.front()));
  }
  return {};
}

}  // namespace

Status check_review_rule(std::string_view rule, Day starts) {
  const auto parts = read_rule(rule);
  if (!parts) return fail(parts.error());
  if (parts->count || parts->until) {
    RuleParts endless = *parts;
    endless.count.reset();
    endless.until.reset();
    return refuse(rule,
                  std::string("it ends (") + (parts->count ? "COUNT" : "UNTIL") +
                      "), but a kit always has a next review",
                  advice(rule_text(endless), starts));
  }
  if (const Objection found = objection_to(*parts, starts); !found.what.empty()) {
    return refuse(rule, found.what, advice(found.spelling, starts));
  }
  if (const Day first = first_weekday(*parts, starts); first != starts)
    return off_start(rule, starts, first);
  const Day horizon = add_months(starts, kLookAheadMonths);
  const auto dates = rule_dates(rule, starts, starts, horizon);
  if (!dates) return fail(dates.error());
  if (dates->empty()) {
    return refuse(rule, "it has no date within twenty years of " + iso_day(starts),
                  advice(yearly_like(starts), starts));
  }
  if (dates->front() != starts) return off_start(rule, starts, dates->front());
  return check_gaps(rule, *dates, horizon);
}

Day first_default_review(Day from) {
  for (date::year year = date::year_month_day{from}.year();; ++year) {
    for (const date::month month : {date::April, date::October}) {
      const Day day{year / month / date::Saturday[1]};
      if (day >= from) return day;
    }
  }
}

}  // namespace larderloop
