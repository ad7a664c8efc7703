#include "larderloop/calendar/rule.h"

#include "calendar/ical_handles.h"
#include "calendar/rule_parts.h"

#include <algorithm>
#include <string>

namespace larderloop {
namespace {

constexpr std::size_t kMostDates = 10'000;
constexpr int kMostSteps = 200'000;
// Dates of one year may come out of order, so reading goes on for a year behind the end.
constexpr Days kReadOn{366};

tl::unexpected<Error> never(std::string_view rule, Day starts) {
  return fail(ErrorKind::kBadData,
              "the rule '" + std::string(rule) + "' has no date from " + iso_day(starts) + " on",
              "write it like '" + std::string(kDefaultReviewRule) + "'");
}

}  // namespace

Result<std::vector<Day>> rule_dates(std::string_view rule, Day starts, Day begin, Day end) {
  const auto parts = read_rule(rule);
  if (!parts) return fail(parts.error());
  if (const std::string fault = engine_fault(*parts, starts); !fault.empty()) {
    return fail(ErrorKind::kBadData, "cannot use the rule '" + std::string(rule) + "': " + fault,
                "write it like '" + std::string(kDefaultReviewRule) + "'");
  }
  ical::prepare();
  const ical::Recurrence recurrence(rule_text(*parts));
  if (!recurrence.ok()) {
    return fail(ErrorKind::kBadData, "cannot read the rule '" + std::string(rule) + "'",
                "write it like '" + std::string(kDefaultReviewRule) + "'");
  }
  const ical::Iterator iterator(icalrecur_iterator_new(recurrence.value(), ical::day(starts)));
  if (!iterator) return never(rule, starts);

  std::vector<Day> dates;
  for (int step = 0; step < kMostSteps; ++step) {
    const auto day = ical::day(icalrecur_iterator_next(iterator.get()));
    if (!day && step == 0) return never(rule, starts);
    if (!day || *day >= end + kReadOn) break;
    if (*day >= begin && *day < end) dates.push_back(*day);
  }
  std::sort(dates.begin(), dates.end());
  dates.erase(std::unique(dates.begin(), dates.end()), dates.end());
  if (dates.size() > kMostDates) {
    return fail(
        ErrorKind::kBadData,
        "the rule '" + std::string(rule) + "' has more than 10000 dates before " + iso_day(end),
        "choose a rule with fewer dates, or a later start than " + iso_day(starts));
  }
  return dates;
}

}  // namespace larderloop
