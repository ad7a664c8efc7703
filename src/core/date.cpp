#include "larderloop/core/date.h"

#include <array>

namespace larderloop {
namespace {

constexpr int kFirstYear = 1900;
constexpr int kLastYear = 2199;
constexpr std::array<std::string_view, 7> kWeekdays{"Monday", "Tuesday",  "Wednesday", "Thursday",
                                                    "Friday", "Saturday", "Sunday"};
constexpr std::array<std::string_view, 12> kMonths{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                   "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

// A number of exactly these digits; below zero when one of them is none. Every row of a book has some of these.
int digits(std::string_view text) {
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return -1;
    value = value * 10 + (c - '0');
  }
  return value;
}

std::string padded(int value, std::size_t width) {
  std::string text = std::to_string(value);
  return std::string(text.size() < width ? width - text.size() : 0, '0') + text;
}

date::year_month_day parts(Day day) {
  return date::year_month_day{day};
}

}  // namespace

std::optional<Day> parse_iso_day(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const int year = digits(text.substr(0, 4));
  const int month = digits(text.substr(5, 2));
  const int day = digits(text.substr(8, 2));
  if (month < 0 || day < 0 || year < kFirstYear || year > kLastYear) return std::nullopt;
  const date::year_month_day ymd{date::year{year}, date::month{static_cast<unsigned>(month)},
                                 date::day{static_cast<unsigned>(day)}};
  if (!ymd.ok()) return std::nullopt;
  return Day{ymd};
}

std::optional<Instant> parse_iso_instant(std::string_view text) {
  if (text.size() != 20 || text[10] != 'T' || text[13] != ':' || text[16] != ':' ||
      text[19] != 'Z') {
    return std::nullopt;
  }
  const auto day = parse_iso_day(text.substr(0, 10));
  const int hour = digits(text.substr(11, 2));
  const int minute = digits(text.substr(14, 2));
  const int second = digits(text.substr(17, 2));
  if (!day || hour < 0 || minute < 0 || second < 0 || hour > 23 || minute > 59 || second > 59)
    return std::nullopt;
  return midnight(*day) + std::chrono::hours(hour) + std::chrono::minutes(minute) +
         std::chrono::seconds(second);
}

std::string iso_day(Day day) {
  const auto ymd = parts(day);
  std::string text = "0000-00-00";
  const auto put = [&](std::size_t first, std::size_t end, unsigned number) {
    for (; end > first; number /= 10) text[--end] = static_cast<char>('0' + number % 10);
  };
  put(0, 4, static_cast<unsigned>(static_cast<int>(ymd.year())));
  put(5, 7, static_cast<unsigned>(ymd.month()));
  put(8, 10, static_cast<unsigned>(ymd.day()));
  return text;
}

std::string iso_instant(Instant at) {
  const Day day = day_of(at);
  const auto since = (at - midnight(day)).count();
  return iso_day(day) + "T" + padded(static_cast<int>(since / 3600), 2) + ":" +
         padded(static_cast<int>(since / 60 % 60), 2) + ":" +
         padded(static_cast<int>(since % 60), 2) + "Z";
}

std::string compact_day(Day day) {
  std::string text = iso_day(day);
  text.erase(7, 1);
  text.erase(4, 1);
  return text;
}

std::string short_day(Day day) {
  const auto ymd = parts(day);
  return std::string(weekday_name(weekday_of(day)).substr(0, 3)) + " " +
         std::to_string(static_cast<unsigned>(ymd.day())) + " " +
         std::string(kMonths[static_cast<unsigned>(ymd.month()) - 1]);
}

std::string plain_day(Day day) {
  return short_day(day) + " " + std::to_string(year_of(day));
}

Weekday weekday_of(Day day) {
  return static_cast<Weekday>(date::weekday{day}.iso_encoding() - 1);
}

std::string_view weekday_name(Weekday weekday) {
  return kWeekdays[static_cast<std::size_t>(weekday)];
}

std::optional<Weekday> parse_weekday(std::string_view text) {
  for (std::size_t index = 0; index < kWeekdays.size(); ++index) {
    const std::string_view name = kWeekdays[index];
    if (text.size() != name.size()) continue;
    bool same = true;
    for (std::size_t at = 0; at < name.size(); ++at)
      same = same && (text[at] | 0x20) == (name[at] | 0x20);
    if (same) return static_cast<Weekday>(index);
  }
  return std::nullopt;
}

Day add_months(Day day, int months) {
  const auto ymd = parts(day);
  const date::year_month target = date::year_month{ymd.year(), ymd.month()} + date::months{months};
  const date::year_month_day wanted = target / ymd.day();
  if (wanted.ok()) return Day{wanted};
  return Day{date::year_month_day{target / date::last}};
}

int days_between(Day from, Day to) {
  return static_cast<int>((to - from).count());
}

Day start_of_week(Day day, Weekday first) {
  const int offset = (static_cast<int>(weekday_of(day)) - static_cast<int>(first) + 7) % 7;
  return day - Days(offset);
}

int year_of(Day day) {
  return static_cast<int>(parts(day).year());
}

Day day_of(Instant at) {
  return Day{date::floor<Days>(at).time_since_epoch()};
}

Instant midnight(Day day) {
  return Instant{date::sys_days{day.time_since_epoch()}};
}

int age_years(Day born, Day day) {
  const auto from = parts(born);
  const auto to = parts(day);
  int years = static_cast<int>(to.year()) - static_cast<int>(from.year());
  if (date::month_day{to.month(), to.day()} < date::month_day{from.month(), from.day()}) years -= 1;
  return years;
}

}  // namespace larderloop
