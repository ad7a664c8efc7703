#include "larderloop/intake/date_text.h"

#include "intake/date_readings.h"
#include "intake/gs1_date.h"

#include <fmt/format.h>

#include <array>

namespace larderloop {
namespace {

struct Phrase {
  std::string_view words;
  MarkKind kind;
  bool end;  // says that no day follows
};

// Longer ones first where one begins another.
constexpr std::array kPhrases{
    Phrase{"best before end of", MarkKind::kBestBefore, true},
    Phrase{"best before end", MarkKind::kBestBefore, true},
    Phrase{"best before", MarkKind::kBestBefore, false},
    Phrase{"best if used before", MarkKind::kBestBefore, false},
    Phrase{"best if used by", MarkKind::kBestBefore, false},
    Phrase{"best by", MarkKind::kBestBefore, false},
    Phrase{"bbe", MarkKind::kBestBefore, true},
    Phrase{"bb", MarkKind::kBestBefore, false},
    Phrase{"use by", MarkKind::kUseBy, false},
    Phrase{"sell by", MarkKind::kSellBy, false},
    Phrase{"packed on", MarkKind::kPackedOn, false},
    Phrase{"packed", MarkKind::kPackedOn, false},
    Phrase{"pkd", MarkKind::kPackedOn, false},
    Phrase{"produced on", MarkKind::kProducedOn, false},
    Phrase{"produced", MarkKind::kProducedOn, false},
};

constexpr std::size_t kMostCharacters = 100;

bool begins(std::string_view text, std::string_view with) {
  return text.substr(0, with.size()) == with;
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlanks = " \t\r\n";
  const std::size_t begin = text.find_first_not_of(kBlanks);
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(kBlanks) - begin + 1);
}

// Lower case, every dash a hyphen, every run of blanks one blank. Other characters stay and are
// refused later.
std::string folded(std::string_view text) {
  constexpr std::array<std::string_view, 6> kDashes{"\xE2\x80\x90", "\xE2\x80\x91", "\xE2\x80\x92",
                                                    "\xE2\x80\x93", "\xE2\x80\x94", "\xE2\x88\x92"};
  constexpr std::string_view kNoBreakSpace = "\xC2\xA0";
  std::string out;
  while (!text.empty()) {
    char c = text.front();
    std::size_t length = 1;
    for (const std::string_view dash : kDashes) {
      if (begins(text, dash)) {
        c = '-';
        length = dash.size();
      }
    }
    if (begins(text, kNoBreakSpace)) {
      c = ' ';
      length = kNoBreakSpace.size();
    }
    if (c == '\t') c = ' ';
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c != ' ' || out.empty() || out.back() != ' ') out += c;
    text.remove_prefix(length);
  }
  return out;
}

bool is_letter(char c) {
  return c >= 'a' && c <= 'z';
}
bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// Takes a phrase and the colon or point behind it off the front.
const Phrase* take_phrase(std::string_view& text) {
  for (const Phrase& phrase : kPhrases) {
    if (!begins(text, phrase.words)) continue;
    std::string_view rest = text.substr(phrase.words.size());
    if (!rest.empty() && is_letter(rest.front())) continue;
    rest = trimmed(rest);
    if (!rest.empty() && (rest.front() == ':' || rest.front() == '.')) {
      rest = trimmed(rest.substr(1));
    }
    text = rest;
    return &phrase;
  }
  return nullptr;
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

Result<DateMark> parse_date_text(std::string_view text, MarkKind kind, Day today) {
  const std::string shown(trimmed(text));
  if (shown.empty()) {
    return fail(ErrorKind::kBadData, "the date is empty",
                "write it as 2027-03-15, or 'none' when the package has no date");
  }
  if (shown.size() > kMostCharacters) {
    return fail(ErrorKind::kBadData, "the date is too long", "write the date alone");
  }
  const std::string all = folded(shown);
  if (all == "none") return DateMark{};
  if (intake::looks_like_gs1(all)) {
    const auto element = intake::read_gs1_date(all, shown, today);
    if (!element) return fail(element.error());
    return mark_of(shown, element->kind, element->date);
  }
  std::string_view rest = all;
  const Phrase* phrase = take_phrase(rest);
  const auto date =
      intake::read_date(without_time(rest), shown, phrase != nullptr && phrase->end, today);
  if (!date) return fail(date.error());
  if (phrase == nullptr && kind == MarkKind::kNone) {
    const std::string iso = intake::reading_iso(*date);
    return fail(ErrorKind::kBadData,
                fmt::format("'{}' does not say what kind of date it is", shown),
                fmt::format("write 'best before {0}' or 'use by {0}', as the package has it", iso));
  }
  return mark_of(shown, phrase == nullptr ? kind : phrase->kind, *date);
}

}  // namespace larderloop
