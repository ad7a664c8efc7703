// date_mark.h - the date on a package: what was printed, what kind it is, and the day it comes to.
// Rules:    month alone = its last day, year alone = 31 December ("best before end", Regulation (EU) 1169/2011 Annex X 1(a);
//           GS1 General Specifications: day 00 of an expiry date is the last day of the month). The day itself still counts.
//           Sell-by, packed-on and produced-on give no day to be good through (Codex CXS 1-1985 section 2).
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "larderloop/core/date.h"

namespace larderloop {

enum class MarkKind { kNone, kBestBefore, kUseBy, kSellBy, kPackedOn, kProducedOn };
enum class Precision { kDay, kMonth, kYear };

inline constexpr MarkKind kAllMarkKinds[] = {MarkKind::kNone,   MarkKind::kBestBefore, MarkKind::kUseBy,
                                             MarkKind::kSellBy, MarkKind::kPackedOn,   MarkKind::kProducedOn};
[[nodiscard]] std::string_view mark_kind_name(MarkKind kind);  // "best_before"
[[nodiscard]] std::optional<MarkKind> parse_mark_kind(std::string_view name);
[[nodiscard]] std::string_view mark_kind_words(MarkKind kind);  // "best before"
[[nodiscard]] std::string_view precision_name(Precision precision);  // "month"
[[nodiscard]] std::optional<Precision> parse_precision(std::string_view name);

// `text`: as printed, for people. `day`: the resolved day; absent exactly when kind is kNone.
struct DateMark {
  std::string text;
  MarkKind kind = MarkKind::kNone;
  Precision precision = Precision::kDay;
  std::optional<Day> day;
  friend bool operator==(const DateMark&, const DateMark&) = default;
};

// The last day that year, month and day of the given precision stand for. Absent when there is no such day. Years 1 to
// 9999: whether a year is plausible on a package is for the reader of the text to say.
[[nodiscard]] std::optional<Day> resolve_day(int year, unsigned month, unsigned day);  // day precision
[[nodiscard]] std::optional<Day> resolve_month(int year, unsigned month);
[[nodiscard]] std::optional<Day> resolve_year(int year);
// Does this kind tell until when the food counts as good?
[[nodiscard]] bool gives_good_through(MarkKind kind);

}  // namespace larderloop
