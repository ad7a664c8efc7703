// date_words.h - the words around and in a printed date: phrases, names of months, characters that look alike.
// Source:   phrases: Regulation (EU) 1169/2011 Annex X, Regulation (EC) 2295/2003 Annex I (languages), Canada's Food and Drug Regulations
//           B.01.007 (BB/MA, two letters for a month), USDA FSIS Food Product Dating (best by, sell by). Months: Unicode CLDR 43.
#pragma once

#include "larderloop/core/date_mark.h"

#include <optional>
#include <string>
#include <string_view>

namespace larderloop::intake {

// Lower case, accents off, every dash a hyphen, full-width characters plain, year, month and day signs of East Asia as hyphens,
// every run of blanks one blank. Other characters stay and are refused later.
[[nodiscard]] std::string folded_date(std::string_view text);

struct DatePhrase {
  std::string_view words;
  MarkKind kind;
  bool end;  // says that no day follows
};
// Takes a phrase and the colon or point behind it off the front of folded text; null when there is none.
[[nodiscard]] const DatePhrase* take_phrase(std::string_view& text);

// `canadian`: two letters, which stand behind the year.
struct MonthWord {
  int number = 0;
  bool canadian = false;
};
[[nodiscard]] std::optional<MonthWord> month_of(std::string_view word);
// "June or July" for a short form that languages read differently; else empty.
[[nodiscard]] std::string months_it_could_be(std::string_view word);

}  // namespace larderloop::intake
