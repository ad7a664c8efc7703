#include "larderloop/intake/date_text.h"

#include "intake/date_readings.h"
#include "intake/date_words.h"
#include "intake/gs1_date.h"

#include <fmt/format.h>

namespace larderloop {
namespace {

constexpr std::size_t kMostCharacters = 100;

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlanks = " \t\r\n";
  const std::size_t begin = text.find_first_not_of(kBlanks);
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(kBlanks) - begin + 1);
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// Drops " 14:32" at the end.
std::string_view without_time(std::string_view text) {
  const std::size_t blank = text.rfind(' ');
  if (blank == std::string_view::npos) return text;
  const std::string_view time = text.substr(blank + 1);
  const bool is_time = time.size() == 5 && is_digit(time[0]) && is_digit(time[1]) &&
                       time[2] == ':' && is_digit(time[3]) && is_digit(time[4]) &&
                       time.substr(0, 2) < "24" && time.substr(3) < "60";
  return is_time ? trimmed(text.substr(0, blank)) : text;
}

DateMark mark_of(std::string text, MarkKind kind, const intake::ReadDate& date) {
  DateMark mark;
  mark.text = std::move(text);
  mark.kind = kind;
  mark.precision = date.precision;
  mark.day = date.day;
  return mark;
}

}  // namespace

Result<DateMark> parse_date_text(std::string_view text, MarkKind kind, Day today, const DateHow& how) {
  const std::string shown(trimmed(text));
  if (shown.empty()) {
    return fail(ErrorKind::kBadData, "the date is empty",
                "write it as 2027-03-15, or 'none' when the package has no date");
  }
  if (shown.size() > kMostCharacters) {
    return fail(ErrorKind::kBadData, "the date is too long", "write the date alone");
  }
  const std::string all = intake::folded_date(shown);
  if (all == "none") return DateMark{};
  if (intake::looks_like_gs1(all)) {
    const auto element = intake::read_gs1_date(all, shown, today);
    if (!element) return fail(element.error());
    return mark_of(shown, element->kind, element->date);
  }
  std::string_view rest = all;
  const intake::DatePhrase* phrase = intake::take_phrase(rest);
  intake::ReadingRules rules;
  rules.order = how.order;
  rules.end = phrase != nullptr && phrase->end;
  if (phrase != nullptr && phrase->kind == MarkKind::kBestBefore) rules.received = how.received;
  const auto date = intake::read_date(without_time(rest), shown, rules, today);
  if (!date) return fail(date.error());
  if (phrase == nullptr && kind == MarkKind::kNone) {
    const std::string iso = intake::reading_iso(*date);
    return fail(ErrorKind::kBadData,
                fmt::format("'{}' does not say what kind of date it is", shown),
                fmt::format("write 'best before {0}' or 'use by {0}', as the package has it", iso));
  }
  return mark_of(shown, phrase == nullptr ? kind : phrase->kind, *date);
}

Result<PrintedMark> parse_printed_mark(std::string_view text, MarkKind kind, Day today, const DateHow& how) {
  PrintedMark printed;
  std::string_view date = trimmed(text);
  for (const std::string_view word : {"lot", "code"}) {
    for (std::size_t at = date.size(); at-- > 0;) {
      if (at + word.size() >= date.size() || (at > 0 && date[at - 1] != ' ')) continue;
      if (intake::folded_date(date.substr(at, word.size())) != word) continue;
      const char behind = date[at + word.size()];
      if (behind != ' ' && behind != ':') continue;
      std::string_view code = date.substr(at + word.size());
      while (!code.empty() && (code.front() == ' ' || code.front() == ':')) code.remove_prefix(1);
      if (code.empty()) continue;
      printed.lot_code = std::string(code);
      date = trimmed(date.substr(0, at));
      if (date.empty()) return printed;  // a code and no date
      auto mark = parse_date_text(date, kind, today, how);
      if (!mark) return fail(mark.error());
      printed.mark = *mark;
      return printed;
    }
  }
  auto mark = parse_date_text(date, kind, today, how);
  if (!mark) return fail(mark.error());
  printed.mark = *mark;
  return printed;
}

}  // namespace larderloop
