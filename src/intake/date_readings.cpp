#include "intake/date_readings.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

namespace larderloop::intake {
namespace {

constexpr int kYearsBack = 5;
constexpr int kYearsAhead = 30;
constexpr int kMonthsPerYear = 12;
constexpr int kLastDayOfAnyMonth = 31;
constexpr int kBuddhistYears = 543;

constexpr std::array<std::string_view, kMonthsPerYear> kMonths{
    "January", "February", "March",     "April",   "May",      "June",
    "July",    "August",   "September", "October", "November", "December"};

enum class PieceKind { kNumber, kMonth };

struct Piece {
  PieceKind kind = PieceKind::kNumber;
  int value = 0;           // a number, or a month 1..12
  std::size_t digits = 0;  // of a number
  bool ordinal = false;    // "15th": a day and nothing else
  [[nodiscard]] bool is_year4() const { return kind == PieceKind::kNumber && digits == 4; }
  [[nodiscard]] bool is_short() const { return kind == PieceKind::kNumber && digits <= 2; }
  [[nodiscard]] bool may_be_year() const {
    return is_year4() || (kind == PieceKind::kNumber && digits == 2 && !ordinal);
  }
};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  return c >= 'a' && c <= 'z';
}

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::optional<int> month_number(std::string_view word) {
  constexpr std::size_t kShort = 3;
  for (std::size_t at = 0; at < kMonths.size(); ++at) {
    std::string full(kMonths[at]);
    std::transform(full.begin(), full.end(), full.begin(), lower);
    if (word == full || word == full.substr(0, kShort) || (word == "sept" && full == "september")) {
      return static_cast<int>(at) + 1;
    }
  }
  return std::nullopt;
}

tl::unexpected<Error> not_a_date(const std::string& shown, const std::string& why) {
  return fail(ErrorKind::kBadData, fmt::format("cannot read the date '{}': {}", shown, why),
              "write it as year-month-day, for example 2027-03-15, or 2027-03 for a month");
}

Result<std::vector<Piece>> split(std::string_view text, const std::string& shown) {
  constexpr std::size_t kMostDigits = 8;
  std::vector<Piece> pieces;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t begin = at;
    if (is_digit(text[at])) {
      Piece piece;
      while (at < text.size() && is_digit(text[at])) {
        if (++piece.digits > kMostDigits) return not_a_date(shown, "the number is too long");
        piece.value = piece.value * 10 + (text[at++] - '0');
      }
      pieces.push_back(piece);
    } else if (is_letter(text[at])) {
      while (at < text.size() && is_letter(text[at])) ++at;
      const std::string_view word = text.substr(begin, at - begin);
      const bool ends_number = begin > 0 && is_digit(text[begin - 1]);
      if (ends_number && (word == "st" || word == "nd" || word == "rd" || word == "th")) {
        pieces.back().ordinal = true;
        continue;
      }
      const auto month = month_number(word);
      if (!month) {
        return not_a_date(shown, fmt::format("'{}' is not the English name of a month", word));
      }
      pieces.push_back({PieceKind::kMonth, *month, 0, false});
    } else if (std::string_view(" -/.,").find(text[at]) != std::string_view::npos) {
      ++at;
    } else {
      return not_a_date(shown, "it holds something that no date has");
    }
  }
  return pieces;
}

// Readings gathered from the orders tried.
class Readings {
 public:
  explicit Readings(Day today) : today_(today), window_(plausible_days(today)) {}

  void day(const Piece& year, const Piece& month, const Piece& day) {
    if (!year.may_be_year() || !could_be_month(month) || !day.is_short()) return;
    if (day.value < 1 || day.value > kLastDayOfAnyMonth) return;
    const int full = year_of_piece(year);
    const auto resolved =
        resolve_day(full, static_cast<unsigned>(month.value), static_cast<unsigned>(day.value));
    if (resolved) {
      keep({*resolved, Precision::kDay});
    } else if (const auto last = resolve_month(full, static_cast<unsigned>(month.value));
               last && inside(*last)) {
      too_short_ = fmt::format("{} {} has no day {}", month_name(month), full, day.value);
    }
  }
  void month(const Piece& year, const Piece& month) {
    if (!year.may_be_year() || !could_be_month(month)) return;
    const auto resolved = resolve_month(year_of_piece(year), static_cast<unsigned>(month.value));
    if (resolved) keep({*resolved, Precision::kMonth});
  }
  void year(const Piece& year) {
    if (const auto resolved = resolve_year(year.value)) keep({*resolved, Precision::kYear});
  }

  // The one reading left, or why there is none.
  [[nodiscard]] Result<ReadDate> decide(const std::string& shown) const {
    if (!too_short_.empty()) return not_a_date(shown, too_short_);
    if (good_.size() == 1) return good_.front();
    if (good_.size() > 1) return ambiguous(shown);
    if (!outside_.empty()) {
      const Status status = check_window(outside_.front(), shown, today_);
      if (!status) return fail(status.error());
    }
    return not_a_date(shown, "there is no such date");
  }

 private:
  static bool could_be_month(const Piece& piece) {
    return piece.kind == PieceKind::kMonth || (piece.is_short() && !piece.ordinal &&
                                               piece.value >= 1 && piece.value <= kMonthsPerYear);
  }
  static std::string_view month_name(const Piece& month) {
    return kMonths[static_cast<std::size_t>(month.value - 1)];
  }
  [[nodiscard]] int year_of_piece(const Piece& piece) const {
    return piece.is_year4() ? piece.value : full_year(piece.value, year_of(today_));
  }
  [[nodiscard]] bool inside(Day day) const { return day >= window_.first && day <= window_.last; }
  void keep(ReadDate date) {
    std::vector<ReadDate>& list = inside(date.day) ? good_ : outside_;
    for (const ReadDate& known : list) {
      if (known.day == date.day && known.precision == date.precision) return;
    }
    list.push_back(date);
  }
  [[nodiscard]] tl::unexpected<Error> ambiguous(const std::string& shown) const {
    bool one_year = true;
    for (const ReadDate& date : good_) {
      one_year = one_year && date.precision == Precision::kDay &&
                 year_of(date.day) == year_of(good_.front().day);
    }
    std::string words;
    std::string hint;
    for (std::size_t at = 0; at < good_.size(); ++at) {
      if (at > 0) {
        words += " or ";
        hint += " or ";
      }
      std::string reading = reading_words(good_[at]);
      const bool last = at + 1 == good_.size();
      if (one_year && !last) reading.resize(reading.rfind(' '));
      words += reading;
      hint += reading_iso(good_[at]);
    }
    return fail(ErrorKind::kBadData, fmt::format("'{}' could be {}", shown, words),
                "write " + hint);
  }

  Day today_;
  YearWindow window_;
  std::vector<ReadDate> good_;
  std::vector<ReadDate> outside_;
  std::string too_short_;
};

tl::unexpected<Error> no_year(const std::string& shown) {
  return fail(ErrorKind::kBadData, fmt::format("'{}' may be a day and month without a year", shown),
              "write the day with its year as 2027-03-15, or the month with its year as 2027-03");
}

// 20270315, 15032027: eight digits cut into three numbers.
void eight_digits(int value, Readings& readings) {
  const auto number = [](int n, std::size_t digits) {
    return Piece{PieceKind::kNumber, n, digits, false};
  };
  readings.day(number(value / 10000, 4), number(value / 100 % 100, 2), number(value % 100, 2));
  const Piece first = number(value / 1000000, 2);
  const Piece second = number(value / 10000 % 100, 2);
  const Piece year = number(value % 10000, 4);
  readings.day(year, second, first);
  readings.day(year, first, second);
}

Result<ReadDate> one_number(const Piece& piece, const std::string& shown, bool end, Day today) {
  Readings readings(today);
  if (piece.digits == 8) {
    eight_digits(piece.value, readings);
    return readings.decide(shown);
  }
  if (!piece.is_year4()) return not_a_date(shown, "a number alone may be a code");
  if (!end) {
    return fail(ErrorKind::kBadData,
                fmt::format("'{}' is a year only behind 'best before end'", shown),
                fmt::format("write 'best before end {0}', or {0}-03 for a month", piece.value));
  }
  readings.year(piece);
  return readings.decide(shown);
}

// A month and a year, unless it may as well be a day and a month. Behind "best before end" there is
// no day.
Result<ReadDate> two_pieces(const Piece& a, const Piece& b, const std::string& shown, bool end,
                            Day today) {
  Readings readings(today);
  if (a.is_year4()) {
    readings.month(a, b);
    return readings.decide(shown);
  }
  const bool b_may_be_day = b.is_short() && b.value >= 1 && b.value <= kLastDayOfAnyMonth;
  if (b.kind == PieceKind::kMonth || (b_may_be_day && !end) || b.ordinal) return no_year(shown);
  readings.month(b, a);
  return readings.decide(shown);
}

Result<ReadDate> three_pieces(const std::vector<Piece>& pieces, const std::string& shown,
                              Day today) {
  const Piece& a = pieces[0];
  const Piece& b = pieces[1];
  const Piece& c = pieces[2];
  Readings readings(today);
  readings.day(a, b, c);  // year, month, day; four digits are neither day nor month
  readings.day(c, b, a);
  readings.day(c, a, b);
  return readings.decide(shown);
}

}  // namespace

YearWindow plausible_days(Day today) {
  return {add_months(today, -kYearsBack * kMonthsPerYear),
          add_months(today, kYearsAhead * kMonthsPerYear)};
}

int full_year(int two_digits, int current_year) {
  constexpr int kCentury = 100;
  constexpr int kMostAhead = 50;
  const int distance = two_digits - current_year % kCentury;
  const int century = current_year - current_year % kCentury;
  if (distance > kMostAhead) return century - kCentury + two_digits;
  if (distance <= -kMostAhead) return century + kCentury + two_digits;
  return century + two_digits;
}

std::string reading_words(const ReadDate& date) {
  const date::year_month_day ymd{date.day};
  const int year = static_cast<int>(ymd.year());
  if (date.precision == Precision::kYear) return std::to_string(year);
  const std::string_view month = kMonths[static_cast<unsigned>(ymd.month()) - 1];
  if (date.precision == Precision::kMonth) return fmt::format("{} {}", month, year);
  return fmt::format("{} {} {}", static_cast<unsigned>(ymd.day()), month, year);
}

std::string reading_iso(const ReadDate& date) {
  constexpr std::size_t kYear = 4;
  constexpr std::size_t kYearMonth = 7;
  const std::string full = iso_day(date.day);
  if (date.precision == Precision::kYear) return full.substr(0, kYear);
  if (date.precision == Precision::kMonth) return full.substr(0, kYearMonth);
  return full;
}

Status check_window(const ReadDate& date, const std::string& shown, Day today) {
  const YearWindow window = plausible_days(today);
  if (date.day >= window.first && date.day <= window.last) return {};
  std::string hint = "check the year on the package";
  const date::year_month_day ymd{date.day};
  const auto earlier =
      resolve_day(static_cast<int>(ymd.year()) - kBuddhistYears, static_cast<unsigned>(ymd.month()),
                  static_cast<unsigned>(ymd.day()));
  if (earlier && *earlier >= window.first && *earlier <= window.last) {
    hint = "if the package counts years of the Buddhist calendar, write " +
           reading_iso({*earlier, date.precision});
  }
  return fail(ErrorKind::kBadData,
              fmt::format("'{}' is not between {} and {}", shown, iso_day(window.first),
                          iso_day(window.last)),
              hint);
}

Result<ReadDate> read_date(std::string_view text, const std::string& shown, bool end, Day today) {
  const auto pieces = split(text, shown);
  if (!pieces) return fail(pieces.error());
  switch (pieces->size()) {
    case 1:
      if (pieces->front().kind == PieceKind::kMonth) return no_year(shown);
      return one_number(pieces->front(), shown, end, today);
    case 2:
      return two_pieces((*pieces)[0], (*pieces)[1], shown, end, today);
    case 3:
      return three_pieces(*pieces, shown, today);
    default:
      return not_a_date(shown, "a date has a year, a month and a day");
  }
}

}  // namespace larderloop::intake
