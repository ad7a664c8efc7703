#include "intake/date_readings.h"

#include "intake/date_words.h"

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
constexpr int kReiwaYears = 2018;
constexpr int kRepublicYears = 1911;
constexpr int kMostDaysWithoutYear = 92;  // Annex X 1(c): what keeps three months needs no year

constexpr std::array<std::string_view, kMonthsPerYear> kMonths{
    "January", "February", "March",     "April",   "May",      "June",
    "July",    "August",   "September", "October", "November", "December"};

enum class PieceKind { kNumber, kMonth };

struct Piece {
  PieceKind kind = PieceKind::kNumber;
  int value = 0;           // a number, or a month 1..12
  std::size_t digits = 0;  // of a number
  bool ordinal = false;    // "15th": a day and nothing else
  bool code = false;       // a month in the two letters that Canada prints behind the year
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

tl::unexpected<Error> not_a_date(const std::string& shown, const std::string& why) {
  return fail(ErrorKind::kBadData, fmt::format("cannot read the date '{}': {}", shown, why),
              "write it as year-month-day, for example 2027-03-15, or 2027-03 for a month");
}

tl::unexpected<Error> a_code(const std::string& shown) {
  return fail(ErrorKind::kBadData, fmt::format("'{}' may be a code and no date", shown),
              fmt::format("if nothing else is printed, write 'none code {}': it is kept as the lot code", shown));
}

// "R9.3.15", "116.03.15": a year counted from elsewhere, named and not taken.
tl::unexpected<Error> other_calendar(const std::string& shown, std::string_view date, int years, std::string_view of) {
  int number = 0;
  std::size_t at = 0;
  while (at < date.size() && is_digit(date[at]) && at < 3) number = number * 10 + (date[at++] - '0');
  return fail(ErrorKind::kBadData, fmt::format("cannot read the date '{}': no year of ours", shown),
              fmt::format("if the package counts years {}, its year is {}: write {}-MM-DD", of, number + years, number + years));
}

// "15 DE MARZO DE 2027": between names of other months "de" is no December.
bool is_filler(std::string_view text, std::string_view word) {
  if (word != "de" && word != "del") return false;
  std::string other;
  for (const char c : text) {
    if (is_letter(c)) {
      other += c;
      continue;
    }
    if (other != word && month_of(other)) return true;
    other.clear();
  }
  return other != word && month_of(other).has_value();
}

tl::unexpected<Error> no_month(const std::string& shown, std::string_view text, std::string_view word, std::size_t begin) {
  const std::size_t end = begin + word.size();
  const bool beside_digit = (begin > 0 && is_digit(text[begin - 1])) || (end < text.size() && is_digit(text[end]));
  if (beside_digit && word.size() == 1 && (word == "o" || word == "l" || word == "i")) {
    return fail(ErrorKind::kBadData, fmt::format("cannot read the date '{}': '{}' is a letter among figures", shown, word),
                word == "o" ? "write the figure 0 where it is one" : "write the figure 1 where it is one");
  }
  if (beside_digit && word == "r" && begin == 0) return other_calendar(shown, text.substr(end), kReiwaYears, "of the Reiwa era");
  const std::string could_be = months_it_could_be(word);
  if (!could_be.empty()) {
    return fail(ErrorKind::kBadData, fmt::format("'{}' could be {}", shown, could_be),
                "write the month as a number: 2027-06-15");
  }
  return not_a_date(shown, fmt::format("'{}' is no name of a month", word));
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
      if (is_filler(text, word)) continue;
      const auto month = month_of(word);
      if (!month) return no_month(shown, text, word, begin);
      pieces.push_back({PieceKind::kMonth, month->number, 0, false, month->canadian});
    } else if (std::string_view(" -/.,").find(text[at]) != std::string_view::npos) {
      ++at;
    } else {
      return not_a_date(shown, "it holds something that no date has");
    }
  }
  return pieces;
}

// "L6074", "6074", "040A4": figures with at most one letter, and neither a year nor six or eight of them. Packing codes, Julian ones too, are
// closed to everyone but the packer (USDA FSIS, Food Product Dating).
bool looks_like_code(std::string_view text) {
  std::size_t digits = 0;
  std::size_t letters = 0;
  for (const char c : text) {
    if (is_digit(c)) ++digits;
    else if (is_letter(c)) ++letters;
    else return false;
  }
  if (letters == 0) return digits == 3 || digits == 5 || digits == 7;
  return letters == 1 && digits >= 3;
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

Piece number_piece(int value, std::size_t digits) {
  return Piece{PieceKind::kNumber, value, digits, false, false};
}

// Three numbers, in the household's order or in every order.
void in_order(Readings& readings, DateOrder order, const Piece& a, const Piece& b, const Piece& c) {
  if (order == DateOrder::kNone || order == DateOrder::kYmd) readings.day(a, b, c);
  if (order == DateOrder::kNone || order == DateOrder::kDmy) readings.day(c, b, a);
  if (order == DateOrder::kNone || order == DateOrder::kMdy) readings.day(c, a, b);
}

// 20270315, 15032027: eight digits cut into three numbers; four of them are the year.
void eight_digits(int value, DateOrder order, Readings& readings) {
  const Piece first = number_piece(value / 1000000, 2);
  const Piece second = number_piece(value / 10000 % 100, 2);
  const Piece year = number_piece(value % 10000, 4);
  if (order == DateOrder::kNone || order == DateOrder::kYmd) {
    readings.day(number_piece(value / 10000, 4), number_piece(value / 100 % 100, 2), number_piece(value % 100, 2));
  }
  if (order == DateOrder::kNone || order == DateOrder::kDmy) readings.day(year, second, first);
  if (order == DateOrder::kNone || order == DateOrder::kMdy) readings.day(year, first, second);
}

Result<ReadDate> one_number(const Piece& piece, const std::string& shown, const ReadingRules& rules, Day today) {
  Readings readings(today);
  if (piece.digits == 8) {
    eight_digits(piece.value, rules.order, readings);
    return readings.decide(shown);
  }
  if (piece.digits == 6 && rules.order != DateOrder::kNone) {
    in_order(readings, rules.order, number_piece(piece.value / 10000, 2), number_piece(piece.value / 100 % 100, 2),
             number_piece(piece.value % 100, 2));
    return readings.decide(shown);
  }
  if (!piece.is_year4()) return a_code(shown);
  if (!rules.end) {
    return fail(ErrorKind::kBadData,
                fmt::format("'{}' is a year only behind 'best before end'", shown),
                fmt::format("write 'best before end {0}', or {0}-03 for a month; a code is kept with 'none code {0}'", piece.value));
  }
  readings.year(piece);
  return readings.decide(shown);
}

// "best before 23 Jan" of what was bought in November: the first such day, when it is not more than about three months off
// and no month of a year can be meant (Regulation (EU) 1169/2011 Annex X 1(c)).
Result<ReadDate> without_year(const Piece& day, const Piece& month, const std::string& shown, Day received, Day today) {
  const int year = year_of(received);
  const auto as_month = resolve_month(full_year(day.value, year_of(today)), static_cast<unsigned>(month.value));
  if (day.digits == 2 && !day.ordinal && as_month && *as_month >= received && *as_month <= plausible_days(today).last) {
    return no_year(shown);
  }
  for (const int each : {year, year + 1}) {
    const auto found = resolve_day(each, static_cast<unsigned>(month.value), static_cast<unsigned>(day.value));
    if (!found || *found < received) continue;
    if (days_between(received, *found) > kMostDaysWithoutYear) break;
    return ReadDate{*found, Precision::kDay};
  }
  return fail(ErrorKind::kBadData, fmt::format("'{}' has no year, and such a day does not come within three months of {}", shown, iso_day(received)),
              "write it with its year, as 2027-03-15");
}

// A month and a year, unless it may as well be a day and a month. Behind "best before end" there is
// no day.
Result<ReadDate> two_pieces(const Piece& a, const Piece& b, const std::string& shown, const ReadingRules& rules,
                            Day today) {
  Readings readings(today);
  if (a.is_year4()) {
    readings.month(a, b);
    return readings.decide(shown);
  }
  const auto may_be_day = [](const Piece& piece) {
    return piece.is_short() && piece.value >= 1 && piece.value <= kLastDayOfAnyMonth;
  };
  if (rules.received && !rules.end) {
    if (a.kind == PieceKind::kMonth && may_be_day(b)) return without_year(b, a, shown, *rules.received, today);
    if (b.kind == PieceKind::kMonth && may_be_day(a)) return without_year(a, b, shown, *rules.received, today);
  }
  if (b.kind == PieceKind::kMonth || (may_be_day(b) && !rules.end) || b.ordinal || a.code) return no_year(shown);
  readings.month(b, a);
  return readings.decide(shown);
}

// A name among the three tells the month, and four digits the year; two numbers that are left are told apart by the household's
// order. Canada prints its two letters behind the year (Food and Drug Regulations B.01.007).
Result<ReadDate> three_pieces(const std::vector<Piece>& pieces, const std::string& shown, DateOrder order,
                              Day today) {
  const Piece& a = pieces[0];
  const Piece& b = pieces[1];
  const Piece& c = pieces[2];
  if (a.kind == PieceKind::kNumber && a.digits == 3 && b.is_short() && c.is_short()) {
    return other_calendar(shown, shown.substr(shown.find_first_of("0123456789")), kRepublicYears, "of the Republic");
  }
  const bool named = a.kind == PieceKind::kMonth || b.kind == PieceKind::kMonth || c.kind == PieceKind::kMonth;
  const bool year4 = a.is_year4() || b.is_year4() || c.is_year4();
  Readings readings(today);
  if (a.is_year4() || (b.code && !year4)) {
    readings.day(a, b, c);
  } else if (named && year4) {
    in_order(readings, DateOrder::kNone, a, b, c);
  } else if (b.kind == PieceKind::kMonth && order == DateOrder::kMdy) {
    readings.day(c, b, a);  // no order of the household starts so; a year does not stand first in it
  } else if (a.kind == PieceKind::kMonth) {
    readings.day(c, a, b);
  } else {
    in_order(readings, order, a, b, c);
  }
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

Result<ReadDate> read_date(std::string_view text, const std::string& shown, const ReadingRules& rules,
                           Day today) {
  if (looks_like_code(text)) return a_code(shown);
  const auto pieces = split(text, shown);
  if (!pieces) return fail(pieces.error());
  switch (pieces->size()) {
    case 1:
      if (pieces->front().kind == PieceKind::kMonth) return no_year(shown);
      return one_number(pieces->front(), shown, rules, today);
    case 2:
      return two_pieces((*pieces)[0], (*pieces)[1], shown, rules, today);
    case 3:
      return three_pieces(*pieces, shown, rules.order, today);
    default:
      return not_a_date(shown, "a date has a year, a month and a day");
  }
}

}  // namespace larderloop::intake
