#include "calendar/rule_parts.h"

#include "larderloop/calendar/rule.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <set>
#include <utility>

namespace larderloop {
namespace {

constexpr std::array<std::string_view, 4> kFrequencies{"DAILY", "WEEKLY", "MONTHLY", "YEARLY"};
constexpr std::array<std::string_view, 7> kWeekdays{"MO", "TU", "WE", "TH", "FR", "SA", "SU"};
constexpr int kLongestInterval = 9999;
constexpr int kHighestCount = 10'000;
constexpr std::size_t kLongestRule = 2000;

struct ListPart {
  std::string_view name;
  int high;
  bool from_the_end;  // may be negative: counted from the end
  std::vector<int> RuleParts::*list;
  std::string_view meaning;
};
// Ranges of RFC 5545 section 3.3.10.
constexpr std::array<ListPart, 5> kLists{{
    {"BYMONTH", 12, false, &RuleParts::months, "a month, 1 to 12"},
    {"BYMONTHDAY", 31, true, &RuleParts::month_days, "a day of the month, 1 to 31 or -31 to -1"},
    {"BYYEARDAY", 366, true, &RuleParts::year_days, "a day of the year, 1 to 366 or -366 to -1"},
    {"BYWEEKNO", 53, true, &RuleParts::weeks, "a week of the year, 1 to 53 or -53 to -1"},
    {"BYSETPOS", 366, true, &RuleParts::positions, "a place in the set, 1 to 366 or -366 to -1"},
}};

std::string capitals(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return result;
}

std::vector<std::string_view> split(std::string_view text, char at) {
  std::vector<std::string_view> pieces;
  for (;;) {
    const std::size_t end = text.find(at);
    pieces.push_back(text.substr(0, end));
    if (end == std::string_view::npos) return pieces;
    text.remove_prefix(end + 1);
  }
}

std::optional<int> whole_number(std::string_view text) {
  if (text.empty() || text.size() > 5) return std::nullopt;
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

std::optional<int> signed_number(std::string_view text) {
  int sign = 1;
  if (!text.empty() && (text.front() == '-' || text.front() == '+')) {
    sign = text.front() == '-' ? -1 : 1;
    text.remove_prefix(1);
  }
  const auto value = whole_number(text);
  if (!value) return std::nullopt;
  return sign * *value;
}

std::optional<Weekday> two_letters(std::string_view text) {
  const auto found = std::find(kWeekdays.begin(), kWeekdays.end(), text);
  if (found == kWeekdays.end()) return std::nullopt;
  return static_cast<Weekday>(found - kWeekdays.begin());
}

std::optional<DayInSet> day_in_set(std::string_view text) {
  constexpr int kWeeksOfYear = 53;
  if (text.size() < 2) return std::nullopt;
  const auto weekday = two_letters(text.substr(text.size() - 2));
  if (!weekday) return std::nullopt;
  text.remove_suffix(2);
  if (text.empty()) return DayInSet{0, *weekday};
  const auto ordinal = signed_number(text);
  if (!ordinal || *ordinal == 0 || std::abs(*ordinal) > kWeeksOfYear) return std::nullopt;
  return DayInSet{*ordinal, *weekday};
}

std::optional<Day> compact(std::string_view text) {
  if (text.size() != 8) return std::nullopt;
  const std::string iso = std::string(text.substr(0, 4)) + "-" + std::string(text.substr(4, 2)) +
                          "-" + std::string(text.substr(6, 2));
  return parse_iso_day(iso);
}

std::string usual() {
  return "write it like '" + std::string(kDefaultReviewRule) + "'";
}

class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  Result<RuleParts> read() {
    if (text_.size() > kLongestRule)
      return fail(ErrorKind::kBadData, "the recurrence rule is too long", usual());
    if (text_.empty()) return fail(ErrorKind::kBadData, "the recurrence rule is empty", usual());
    const std::string rule = capitals(text_);
    if (rule.rfind("RRULE", 0) == 0) return refuse("it begins with 'RRULE'", "leave out 'RRULE:'");
    for (const std::string_view piece : split(rule, ';')) {
      const std::size_t equals = piece.find('=');
      if (equals == std::string_view::npos || equals == 0 || equals + 1 == piece.size()) {
        return refuse("'" + std::string(piece) + "' is not a part with a value", usual());
      }
      const std::string_view name = piece.substr(0, equals);
      if (!seen_.insert(std::string(name)).second)
        return refuse(std::string(name) + " stands twice", usual());
      if (Status done = part(name, piece.substr(equals + 1)); !done) return fail(done.error());
    }
    if (Status fits = together(); !fits) return fail(fits.error());
    return std::move(parts_);
  }

 private:
  tl::unexpected<Error> refuse(const std::string& why, std::string hint = {}) const {
    return fail(ErrorKind::kBadData, "cannot use the rule '" + std::string(text_) + "': " + why,
                hint.empty() ? usual() : std::move(hint));
  }

  tl::unexpected<Error> bad(std::string_view name, std::string_view value,
                            std::string_view meaning) const {
    return refuse(std::string(name) + " has '" + std::string(value) + "', which is not " +
                  std::string(meaning));
  }

  Status part(std::string_view name, std::string_view value) {
    for (const ListPart& each : kLists) {
      if (name == each.name) return list(each, value);
    }
    if (name == "FREQ") return frequency(value);
    if (name == "BYDAY") return days(value);
    if (name == "INTERVAL" || name == "COUNT") return amount(name, value);
    if (name == "UNTIL") {
      parts_.until = compact(value);
      if (!parts_.until) return bad(name, value, "a real day like 20270403, without a time");
      return {};
    }
    if (name == "WKST") {
      parts_.week_start = two_letters(value);
      if (!parts_.week_start) return bad(name, value, "one of MO, TU, WE, TH, FR, SA, SU");
      return {};
    }
    if (name == "BYHOUR" || name == "BYMINUTE" || name == "BYSECOND") {
      return refuse("it has " + std::string(name) + ", but a review is on a whole day",
                    without_clock());
    }
    if (name == "RSCALE" || name == "SKIP") {
      return refuse("it has " + std::string(name) + ", which few calendar programs understand",
                    "for the last day of a month write 'FREQ=MONTHLY;BYMONTHDAY=-1'");
    }
    return refuse("'" + std::string(name) + "' is not a part of a rule");
  }

  std::string without_clock() const {
    std::string kept;
    const std::string rule = capitals(text_);
    for (const std::string_view piece : split(rule, ';')) {
      const std::string_view name = piece.substr(0, piece.find('='));
      if (name == "BYHOUR" || name == "BYMINUTE" || name == "BYSECOND") continue;
      kept += (kept.empty() ? "" : ";") + std::string(piece);
    }
    return "write '" + kept + "'";
  }

  Status list(const ListPart& which, std::string_view value) {
    for (const std::string_view item : split(value, ',')) {
      const auto number = which.from_the_end ? signed_number(item) : whole_number(item);
      if (!number || *number == 0 || std::abs(*number) > which.high)
        return bad(which.name, item, which.meaning);
      (parts_.*which.list).push_back(*number);
    }
    auto& list = parts_.*which.list;
    std::sort(list.begin(), list.end());
    list.erase(std::unique(list.begin(), list.end()), list.end());
    return {};
  }

  Status frequency(std::string_view value) {
    const auto found = std::find(kFrequencies.begin(), kFrequencies.end(), value);
    if (found != kFrequencies.end()) {
      parts_.frequency = static_cast<Frequency>(found - kFrequencies.begin());
      return {};
    }
    if (value == "HOURLY" || value == "MINUTELY" || value == "SECONDLY") {
      return refuse("a review is on a whole day, and FREQ=" + std::string(value) + " is finer");
    }
    return bad("FREQ", value, "one of DAILY, WEEKLY, MONTHLY, YEARLY");
  }

  Status days(std::string_view value) {
    for (const std::string_view item : split(value, ',')) {
      const auto day = day_in_set(item);
      if (!day) return bad("BYDAY", item, "a weekday like SA, 1SA or -1SA");
      const bool known =
          std::any_of(parts_.days.begin(), parts_.days.end(), [&](const DayInSet& each) {
            return each.ordinal == day->ordinal && each.weekday == day->weekday;
          });
      if (!known) parts_.days.push_back(*day);
    }
    return {};
  }

  Status amount(std::string_view name, std::string_view value) {
    const auto number = whole_number(value);
    const int high = name == "COUNT" ? kHighestCount : kLongestInterval;
    if (!number || *number == 0 || *number > high) {
      return bad(name, value, "a whole number from 1 to " + std::to_string(high));
    }
    if (name == "COUNT") {
      parts_.count = number;
    } else {
      parts_.interval = *number;
    }
    return {};
  }

  // What RFC 5545 section 3.3.10 says about parts side by side.
  Status together() const {
    constexpr int kWeeksOfMonth = 5;
    const bool yearly = parts_.frequency == Frequency::kYearly;
    const bool monthly = parts_.frequency == Frequency::kMonthly;
    if (seen_.count("FREQ") == 0) return refuse("FREQ is missing");
    if (parts_.count && parts_.until) return refuse("COUNT and UNTIL exclude each other");
    if (!parts_.weeks.empty() && !yearly) return refuse("BYWEEKNO goes with FREQ=YEARLY only");
    if (!parts_.year_days.empty() && !yearly) return refuse("BYYEARDAY goes with FREQ=YEARLY only");
    if (!parts_.month_days.empty() && parts_.frequency == Frequency::kWeekly) {
      return refuse("BYMONTHDAY does not go with FREQ=WEEKLY");
    }
    for (const DayInSet& each : parts_.days) {
      if (each.ordinal == 0) continue;
      if (!yearly && !monthly)
        return refuse("a numbered BYDAY goes with FREQ=MONTHLY and FREQ=YEARLY only");
      if (!parts_.weeks.empty()) return refuse("a numbered BYDAY does not go with BYWEEKNO");
      const bool in_month = monthly || !parts_.months.empty();
      if (in_month && std::abs(each.ordinal) > kWeeksOfMonth)
        return refuse("no month has six of one weekday");
    }
    const bool chosen = !parts_.months.empty() || !parts_.month_days.empty() ||
                        !parts_.year_days.empty() || !parts_.weeks.empty() || !parts_.days.empty();
    if (!parts_.positions.empty() && !chosen)
      return refuse("BYSETPOS needs another BY part to choose from");
    return {};
  }

  std::string_view text_;
  RuleParts parts_;
  std::set<std::string> seen_;
};

}  // namespace

Result<RuleParts> read_rule(std::string_view text) {
  return Reader(text).read();
}

std::string rule_text(const RuleParts& parts) {
  std::string text =
      "FREQ=" + std::string(kFrequencies.at(static_cast<std::size_t>(parts.frequency)));
  if (parts.interval != 1) text += ";INTERVAL=" + std::to_string(parts.interval);
  if (parts.count) text += ";COUNT=" + std::to_string(*parts.count);
  if (parts.until) text += ";UNTIL=" + compact_day(*parts.until);
  for (const ListPart& each : kLists) {
    std::string list;
    for (const int number : parts.*each.list)
      list += (list.empty() ? "" : ",") + std::to_string(number);
    if (!list.empty()) text += ";" + std::string(each.name) + "=" + list;
  }
  std::string days;
  for (const DayInSet& each : parts.days) {
    days += days.empty() ? "" : ",";
    if (each.ordinal != 0) days += std::to_string(each.ordinal);
    days += kWeekdays.at(static_cast<std::size_t>(each.weekday));
  }
  if (!days.empty()) text += ";BYDAY=" + days;
  if (parts.week_start)
    text += ";WKST=" + std::string(kWeekdays.at(static_cast<std::size_t>(*parts.week_start)));
  return text;
}

std::string engine_fault(const RuleParts& parts, Day starts) {
  const auto negative = [](const std::vector<int>& numbers) {
    return std::any_of(numbers.begin(), numbers.end(), [](int each) { return each < 0; });
  };
  const bool yearly = parts.frequency == Frequency::kYearly;
  const bool fine = parts.frequency == Frequency::kDaily || parts.frequency == Frequency::kWeekly;
  if (!parts.positions.empty() && fine) {
    return "BYSETPOS is not computed rightly under FREQ=DAILY and FREQ=WEEKLY";
  }
  if (negative(parts.month_days) && parts.frequency == Frequency::kDaily) {
    return "a negative BYMONTHDAY is not computed rightly under FREQ=DAILY";
  }
  if (negative(parts.month_days) && !parts.positions.empty()) {
    return "BYSETPOS is not computed rightly with a negative BYMONTHDAY";
  }
  const bool off_its_days =
      !parts.days.empty() &&
      std::none_of(parts.days.begin(), parts.days.end(),
                   [&](const DayInSet& each) { return each.weekday == weekday_of(starts); });
  if (parts.frequency == Frequency::kWeekly && parts.interval > 1 && off_its_days) {
    return "every few weeks is computed rightly only from a start on one of its weekdays";
  }
  if (!parts.weeks.empty()) {
    const bool alone = parts.months.empty() && parts.month_days.empty() &&
                       parts.year_days.empty() && parts.positions.empty();
    const bool from_monday = parts.week_start.value_or(Weekday::kMonday) == Weekday::kMonday;
    if (!alone || parts.days.empty() || negative(parts.weeks) || !from_monday) {
      return "BYWEEKNO is computed rightly only with BYDAY alone, weeks from Monday, counted from "
             "the "
             "year's beginning";
    }
  }
  if (!parts.year_days.empty() &&
      !(parts.months.empty() && parts.month_days.empty() && parts.days.empty())) {
    return "BYYEARDAY is not computed rightly beside other parts";
  }
  if (yearly && !parts.month_days.empty() && parts.months.empty()) {
    return "BYMONTHDAY under FREQ=YEARLY is computed rightly only with BYMONTH";
  }
  return {};
}

}  // namespace larderloop
