#include "larderloop/core/date_mark.h"

namespace larderloop {
namespace {

// date.h keeps years in 16 bits, months and days in 8: a larger number would come round to a real
// day.
constexpr int kFirstYear = 1;
constexpr int kLastYear = 9999;  // as far as four digits go
constexpr unsigned kMonthsOfAYear = 12;
constexpr unsigned kLongestMonth = 31;

bool are_numbers_of_a_date(int year, unsigned month, unsigned day) {
  return year >= kFirstYear && year <= kLastYear && month >= 1 && month <= kMonthsOfAYear &&
         day >= 1 && day <= kLongestMonth;
}

}  // namespace

std::string_view mark_kind_name(MarkKind kind) {
  switch (kind) {
    case MarkKind::kNone:
      return "none";
    case MarkKind::kBestBefore:
      return "best_before";
    case MarkKind::kUseBy:
      return "use_by";
    case MarkKind::kSellBy:
      return "sell_by";
    case MarkKind::kPackedOn:
      return "packed_on";
    case MarkKind::kProducedOn:
      return "produced_on";
  }
  return "";
}

std::optional<MarkKind> parse_mark_kind(std::string_view name) {
  for (const MarkKind kind : kAllMarkKinds) {
    if (mark_kind_name(kind) == name) return kind;
  }
  return std::nullopt;
}

std::string_view mark_kind_words(MarkKind kind) {
  switch (kind) {
    case MarkKind::kNone:
      return "no date";
    case MarkKind::kBestBefore:
      return "best before";
    case MarkKind::kUseBy:
      return "use by";
    case MarkKind::kSellBy:
      return "sell by";
    case MarkKind::kPackedOn:
      return "packed on";
    case MarkKind::kProducedOn:
      return "produced on";
  }
  return "";
}

std::string_view precision_name(Precision precision) {
  switch (precision) {
    case Precision::kDay:
      return "day";
    case Precision::kMonth:
      return "month";
    case Precision::kYear:
      return "year";
  }
  return "";
}

std::optional<Precision> parse_precision(std::string_view name) {
  for (const Precision precision : {Precision::kDay, Precision::kMonth, Precision::kYear}) {
    if (precision_name(precision) == name) return precision;
  }
  return std::nullopt;
}

std::optional<Day> resolve_day(int year, unsigned month, unsigned day) {
  if (!are_numbers_of_a_date(year, month, day)) return std::nullopt;
  const date::year_month_day ymd{date::year{year}, date::month{month}, date::day{day}};
  if (!ymd.ok()) return std::nullopt;
  return Day{ymd};
}

std::optional<Day> resolve_month(int year, unsigned month) {
  if (!are_numbers_of_a_date(year, month, 1)) return std::nullopt;
  const date::year_month_day_last last{date::year{year}, date::month_day_last{date::month{month}}};
  if (!last.ok()) return std::nullopt;
  return Day{date::year_month_day{last}};
}

std::optional<Day> resolve_year(int year) {
  return resolve_day(year, 12, 31);
}

bool gives_good_through(MarkKind kind) {
  return kind == MarkKind::kBestBefore || kind == MarkKind::kUseBy;
}

}  // namespace larderloop
