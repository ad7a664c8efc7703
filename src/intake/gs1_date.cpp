#include "intake/gs1_date.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace larderloop::intake {
namespace {

std::optional<MarkKind> kind_of(std::string_view identifier) {
  if (identifier == "11") return MarkKind::kProducedOn;
  if (identifier == "13") return MarkKind::kPackedOn;
  if (identifier == "15") return MarkKind::kBestBefore;
  if (identifier == "16") return MarkKind::kSellBy;
  if (identifier == "17") return MarkKind::kUseBy;
  return std::nullopt;
}

tl::unexpected<Error> refused(const std::string& shown, const std::string& why) {
  return fail(ErrorKind::kBadData, fmt::format("cannot read the date '{}': {}", shown, why),
              "write one date element, for example (15)270831, or the date as 2027-08-31");
}

}  // namespace

bool looks_like_gs1(std::string_view text) {
  return !text.empty() && text.front() == '(';
}

Result<Gs1Date> read_gs1_date(std::string_view text, const std::string& shown, Day today) {
  constexpr std::size_t kDateDigits = 6;
  std::string dense(text);
  dense.erase(std::remove(dense.begin(), dense.end(), ' '), dense.end());
  const std::size_t close = dense.find(')');
  if (close == std::string::npos) return refused(shown, "the bracket is not closed");
  const std::string identifier = dense.substr(1, close - 1);
  const std::string digits = dense.substr(close + 1);
  const auto kind = kind_of(identifier);
  if (!kind) {
    return refused(
        shown, fmt::format("({}) is not a date of food; those are 11, 13, 15, 16, 17", identifier));
  }
  if (digits.size() != kDateDigits ||
      !std::all_of(digits.begin(), digits.end(), [](char c) { return c >= '0' && c <= '9'; })) {
    return refused(shown, "behind the bracket come six digits, year, month and day");
  }
  const int year = full_year(std::stoi(digits.substr(0, 2)), year_of(today));
  const auto month = static_cast<unsigned>(std::stoi(digits.substr(2, 2)));
  const auto day = static_cast<unsigned>(std::stoi(digits.substr(4, 2)));
  const auto resolved = day == 0 ? resolve_month(year, month) : resolve_day(year, month, day);
  if (!resolved) return refused(shown, fmt::format("there is no day {} of month {}", day, month));
  const ReadDate date{*resolved, day == 0 ? Precision::kMonth : Precision::kDay};
  if (const Status status = check_window(date, shown, today); !status) return fail(status.error());
  return Gs1Date{*kind, date};
}

}  // namespace larderloop::intake
