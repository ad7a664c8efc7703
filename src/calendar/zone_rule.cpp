// The rule at the end of a zone's file.
#include "calendar/zone_file.h"

namespace larderloop {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

constexpr int kMostHours = 167;  // RFC 8536, section 3.3.1
constexpr seconds kTwoOClock = hours(2);

bool is_digit(char each) {
  return each >= '0' && each <= '9';
}

// What is left to read; every part says whether it was there.
class Text {
 public:
  explicit Text(std::string_view text) : text_(text) {}
  [[nodiscard]] bool at_end() const { return text_.empty(); }

  bool take(char wanted) {
    if (text_.empty() || text_.front() != wanted) return false;
    text_.remove_prefix(1);
    return true;
  }
  // "CET" or "<+03>".
  bool name() {
    const bool quoted = take('<');
    std::size_t length = 0;
    while (length < text_.size() && (quoted ? text_[length] != '>' : is_letter(text_[length])))
      ++length;
    text_.remove_prefix(length);
    return length >= 3 && (!quoted || take('>'));
  }
  std::optional<int> number(int least, int most) {
    std::size_t length = 0;
    int value = 0;
    while (length < text_.size() && is_digit(text_[length]) && value <= most)
      value = value * 10 + (text_[length++] - '0');
    if (length == 0 || value < least || value > most) return std::nullopt;
    text_.remove_prefix(length);
    return value;
  }
  // "2", "-1:30", "+26:00:00".
  std::optional<seconds> time() {
    const bool minus = take('-');
    if (!minus) take('+');
    const auto hour = number(0, kMostHours);
    if (!hour) return std::nullopt;
    seconds value = hours(*hour);
    if (take(':')) {
      const auto minute = number(0, 59);
      if (!minute) return std::nullopt;
      value += minutes(*minute);
      if (take(':')) {
        const auto second = number(0, 59);
        if (!second) return std::nullopt;
        value += seconds(*second);
      }
    }
    return minus ? -value : value;
  }

 private:
  static bool is_letter(char each) {
    return (each >= 'a' && each <= 'z') || (each >= 'A' && each <= 'Z');
  }
  std::string_view text_;
};

// The day of a year on which the clocks change.
struct ChangeDay {
  enum class Form { kWeekday, kWithoutLeapDay, kFromZero } form = Form::kFromZero;
  int month = 0, week = 0, weekday = 0;  // week 5 is the last, weekday 0 is Sunday
  int day = 0;                           // of the year
  seconds time = kTwoOClock;

  // As local time that is not yet changed.
  [[nodiscard]] Instant in(int year) const {
    const date::year of{year};
    if (form == Form::kWeekday) {
      const date::year_month month_of = of / month;
      const date::weekday wanted{static_cast<unsigned>(weekday)};
      const date::sys_days day_of =
          week == 5 ? date::sys_days(month_of / date::weekday_last(wanted))
                    : date::sys_days(month_of / wanted[static_cast<unsigned>(week)]);
      return Instant(day_of) + time;
    }
    const date::sys_days first(of / 1 / 1);
    int behind = day;
    if (form == Form::kWithoutLeapDay) behind = day - 1 + (of.is_leap() && day >= 60 ? 1 : 0);
    return Instant(first + Days(behind)) + time;
  }
};

// "M3.5.0/3", "J60", "59/-1".
std::optional<ChangeDay> read_day(Text& text) {
  ChangeDay change;
  if (text.take('M')) {
    change.form = ChangeDay::Form::kWeekday;
    const auto month = text.number(1, 12);
    if (!month || !text.take('.')) return std::nullopt;
    const auto week = text.number(1, 5);
    if (!week || !text.take('.')) return std::nullopt;
    const auto weekday = text.number(0, 6);
    if (!weekday) return std::nullopt;
    change.month = *month;
    change.week = *week;
    change.weekday = *weekday;
  } else {
    const bool without = text.take('J');
    if (without) change.form = ChangeDay::Form::kWithoutLeapDay;
    const auto day = text.number(without ? 1 : 0, 365);
    if (!day) return std::nullopt;
    change.day = *day;
  }
  if (text.take('/')) {
    const auto time = text.time();
    if (!time) return std::nullopt;
    change.time = *time;
  }
  return change;
}

}  // namespace

std::optional<UtcOffset> offset_by_rule(std::string_view rule, Instant at) {
  Text text(rule);
  if (!text.name()) return std::nullopt;
  const auto west = text.time();  // the rule counts from the zone to universal time
  if (!west) return std::nullopt;
  const UtcOffset standard = -*west;
  if (text.at_end()) return standard;

  if (!text.name()) return std::nullopt;
  UtcOffset summer = standard + hours(1);
  if (!text.take(',')) {
    const auto summer_west = text.time();
    if (!summer_west || !text.take(',')) return std::nullopt;
    summer = -*summer_west;
  }
  const auto from = read_day(text);
  if (!from || !text.take(',')) return std::nullopt;
  const auto to = read_day(text);
  if (!to || !text.at_end()) return std::nullopt;

  const int year = year_of(day_of(at + standard));
  const Instant begins = from->in(year)-standard;
  const Instant ends = to->in(year)-summer;
  const bool is_summer = begins < ends ? at >= begins && at < ends : at >= begins || at < ends;
  return is_summer ? summer : standard;
}

}  // namespace larderloop
