// quick_line.h - a day's shopping as people note it, one lot a line: "6 lentil pouch 250g bb 2027-08 @pantry same =8.40".
// Rules:    [UNITS] FOOD [DATE] [lot CODE] [@PLACE] [same] [=PRICE], where UNITS may be left out for one, FOOD is a key, a name, the digits
//           under the bars, a scan, or beginnings of words that only one food has; DATE as date_text.h reads it, best before when it has no
//           words. "@PLACE" alone is the place, "read by NAME" alone the reader of labels of the lines that follow. Blank lines and
//           lines that begin with # are passed over. Nothing is guessed: what fits two foods, and what nearly fits one, is said.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "larderloop/core/household.h"
#include "larderloop/core/result.h"
#include "larderloop/intake/date_text.h"

namespace larderloop {

// `line`: counted from 1. `same`: somebody read the label and it says the same as the last one of this food; `read_by`: who. `warnings`: of
// a scan.
struct QuickLot {
  std::size_t line = 0;
  std::int64_t units = 1;
  FoodKey food;
  PrintedMark printed;
  PlaceKey at;
  bool same = false;
  std::string read_by;
  std::optional<std::int64_t> paid_cents;
  std::vector<std::string> warnings;
};

// `at`, `read_by`: what counts until a line says otherwise.
struct QuickHow {
  PlaceKey at;
  std::string read_by;
  DateOrder order = DateOrder::kNone;
};

struct QuickList {
  std::vector<QuickLot> lots;
  std::vector<Problem> problems;  // where: "line 3"; then nothing is to be written
};
[[nodiscard]] QuickList read_quick_lines(const Household& household, std::string_view text, const QuickHow& how, Day today);

// Foods of which every word begins a word: of the key, the name, the unit, or is the mass or volume ("250g", "1.5l"). A key or a whole name
// is that food alone. Words that begin with a digit are amounts and stand as a whole. In key order.
[[nodiscard]] std::vector<const Food*> foods_of_words(const Household& household, const std::vector<std::string>& words);
[[nodiscard]] std::vector<const Place*> places_of_words(const Household& household, const std::vector<std::string>& words);

}  // namespace larderloop
