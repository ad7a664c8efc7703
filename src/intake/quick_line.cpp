#include "larderloop/intake/quick_line.h"

#include "larderloop/intake/sheet_cells.h"

#include "larderloop/core/validate.h"
#include "larderloop/intake/gs1.h"

#include <algorithm>
#include <charconv>

namespace larderloop {
namespace {

constexpr std::size_t kLongestLine = 1000;
constexpr std::size_t kMostWords = 60;
constexpr std::size_t kMostLines = 2000;
constexpr std::int64_t kMostMoney = 100'000'000;  // cents, as everywhere else

std::vector<std::string> words_of(std::string_view line) {
  std::vector<std::string> words;
  std::string word;
  for (const char c : line) {
    if (c == ' ' || c == '\t' || c == '\r') {
      if (!word.empty()) words.push_back(word);
      word.clear();
    } else {
      word += c;
    }
  }
  if (!word.empty()) words.push_back(word);
  return words;
}

std::string joined(const std::vector<std::string>& words, std::size_t from, std::size_t to) {
  std::string all;
  for (std::size_t at = from; at < to; ++at) all += (all.empty() ? "" : " ") + words[at];
  return all;
}

// "6", "6x", "x6"; not the eight and more digits of an item number.
std::optional<std::int64_t> units_of(std::string word) {
  constexpr std::size_t kMostDigits = 6;
  if (!word.empty() && (word.back() == 'x' || word.back() == 'X')) word.pop_back();
  else if (!word.empty() && (word.front() == 'x' || word.front() == 'X')) word.erase(0, 1);
  if (word.empty() || word.size() > kMostDigits || word.find_first_not_of("0123456789") != std::string::npos) return std::nullopt;
  return std::stoll(word);
}

// "8.40", "8", "8.4" is refused: cents have two digits.
std::optional<std::int64_t> cents_of(std::string_view text) {
  const std::size_t point = text.find('.');
  const std::string_view whole = text.substr(0, point);
  const std::string_view cents = point == std::string_view::npos ? std::string_view("00") : text.substr(point + 1);
  const auto digits = [](std::string_view part) { return !part.empty() && part.find_first_not_of("0123456789") == std::string_view::npos; };
  if (!digits(whole) || !digits(cents) || cents.size() != 2 || whole.size() > 7) return std::nullopt;
  const std::int64_t value = std::stoll(std::string(whole)) * 100 + std::stoll(std::string(cents));
  return value > kMostMoney ? std::nullopt : std::optional<std::int64_t>(value);
}

template <class Thing>
std::string names_of(const std::vector<const Thing*>& things) {
  constexpr std::size_t kShown = 6;
  std::string all;
  for (std::size_t at = 0; at < things.size() && at < kShown; ++at) all += (at == 0 ? "" : ", ") + things[at]->key.str();
  if (things.size() > kShown) all += " and more";
  return all;
}

template <class Thing>
std::string near_of(const std::vector<Thing>& things, const std::string& text) {
  std::vector<std::string> known;
  for (const Thing& each : things) {
    known.push_back(each.key.str());
    known.push_back(each.name);
  }
  return nearest(text, known);
}

// One line on its way to a lot.
class Line {
 public:
  Line(const Household& household, const QuickHow& how, Day today, std::string_view text)
      : household_(household), how_(how), today_(today), text_(text), words_(words_of(text)) {}

  // "@pantry" or "read by Mira" alone.
  bool is_setting(QuickHow& into) {
    if (words_.size() > kMostWords) return false;
    if (words_.front().front() == '@') {
      const std::size_t end = take_place(0);
      if (problem) return true;
      if (end == words_.size()) {
        into.at = lot.at;
        return true;
      }
      return false;
    }
    if (words_.size() > 2 && words_[0] == "read" && words_[1] == "by") {
      into.read_by = joined(words_, 2, words_.size());
      return true;
    }
    return false;
  }

  void read() {
    if (words_.size() > kMostWords) return fault("the line is too long", "write one lot a line");
    lot.at = how_.at;
    lot.read_by = how_.read_by;
    std::vector<std::string> rest;
    for (std::size_t at = 0; at < words_.size();) {
      const std::string& word = words_[at];
      if (word.front() == '@') {
        at = take_place(at);
        if (problem) return;
      } else if (word.front() == '=' && word.size() > 1) {
        lot.paid_cents = cents_of(std::string_view(word).substr(1));
        if (!lot.paid_cents) return fault("cannot read the price '" + word.substr(1) + "'", "write it as =8.40");
        ++at;
      } else if (word == "same") {
        lot.same = true;
        ++at;
      } else {
        rest.push_back(word);
        ++at;
      }
    }
    words_ = std::move(rest);
    std::size_t from = 0;
    if (!words_.empty()) {
      if (const auto units = units_of(words_.front()); units && words_.size() > 1) {
        lot.units = *units;
        from = 1;
      }
    }
    if (lot.units < 1 || lot.units > kMaxUnits) return fault("'" + words_.front() + "' units cannot be right", "from 1 to " + std::to_string(kMaxUnits));
    take_food_and_date(from);
    if (problem) return;
    if (lot.at.empty()) return fault("no place is named", "write @PLACE in the line, or once in a line before");
    if (lot.same && lot.read_by.empty()) {
      return fault("'same' says that the label was read, but not by whom", "write 'read by NAME' in a line before, or use --read-by NAME");
    }
  }

  QuickLot lot;
  std::optional<Problem> problem;

 private:
  void fault(std::string what, std::string remedy) {
    if (!problem) problem = Problem{"", std::string(text_), std::move(what), std::move(remedy)};
  }

  // The place behind an '@', as many words of it as name one; the index behind it.
  std::size_t take_place(std::size_t at) {
    std::vector<std::string> words(words_.begin() + static_cast<std::ptrdiff_t>(at), words_.end());
    words.front().erase(0, 1);
    std::vector<const Place*> first;
    for (std::size_t count = words.size(); count > 0; --count) {
      words.resize(count);
      const auto found = places_of_words(household_, words);
      if (found.size() == 1) {
        lot.at = found.front()->key;
        return at + count;
      }
      first = found;
    }
    const std::string word = words_[at].substr(1);
    if (first.size() > 1) {
      fault("'@" + word + "' could be more than one place", "write one of " + names_of(first));
    } else {
      const std::string near = near_of(household_.places, word);
      fault("there is no place '" + word + "'", near.empty() ? "see them all: larderloop place list" : "did you mean '@" + near + "'?");
    }
    return words_.size();
  }

  // The longest beginning that names a food, with a date behind it that can be read.
  void take_food_and_date(std::size_t from) {
    if (from >= words_.size()) return fault("no food is named", "write it as: 6 lentil 2027-08 @pantry");
    if (take_scan(from)) return;
    std::vector<const Food*> several;
    std::optional<Problem> first;
    for (std::size_t end = words_.size(); end > from; --end) {
      const std::vector<std::string> words(words_.begin() + static_cast<std::ptrdiff_t>(from), words_.begin() + static_cast<std::ptrdiff_t>(end));
      const auto found = foods_of_words(household_, words);
      if (found.size() > 1) several = found;
      if (found.size() != 1) continue;
      lot.food = found.front()->key;
      take_date(joined(words_, end, words_.size()), found.front()->kind == FoodKind::kThing);
      if (!problem) {
        if (!is_whole_name(*found.front(), from, end)) refuse_other_dates(from, end);
        return;
      }
      if (!first) first = problem;
      problem.reset();
    }
    if (first) {
      problem = first;
      return;
    }
    const std::string typed = joined(words_, from, words_.size());
    if (!several.empty()) return fault("'" + typed + "' could be more than one food", "write more of it: " + names_of(several));
    std::string near;
    for (std::size_t end = words_.size(); end > from && near.empty(); --end) near = near_of(household_.foods, joined(words_, from, end));
    fault("there is no food '" + typed + "'", near.empty() ? "see them all: larderloop food list; add it: larderloop food add NAME" : "did you mean '" + near + "'?");
  }

  // Digits under the bars, or a whole scan, as the first word.
  bool take_scan(std::size_t from) {
    const std::string& word = words_[from];
    const bool eight = word.size() == 8 && word.find_first_not_of("0123456789") == std::string::npos;
    if (!eight && !looks_like_scan(word)) return false;
    std::vector<std::string> known;
    for (const Food& food : household_.foods) {
      if (!food.gtin.empty()) known.push_back(food.gtin);
    }
    const auto scan = read_scan(word, today_, {false, known, false});
    if (!scan) {
      fault(scan.error().what, scan.error().next_step);
      return true;
    }
    const auto food = std::find_if(household_.foods.begin(), household_.foods.end(), [&](const Food& each) { return each.gtin == scan->item.gtin; });
    if (food == household_.foods.end()) {
      fault("no food has the number " + scan->item.gtin, "add it: larderloop food add NAME --gtin " + scan->item.gtin);
      return true;
    }
    lot.food = food->key;
    lot.warnings = scan->warnings;
    const std::string date = joined(words_, from + 1, words_.size());
    if (date.empty() && scan->mark().day) {
      lot.printed = {scan->mark(), scan->lot_code};
      return true;
    }
    take_date(date, food->kind == FoodKind::kThing);
    if (!problem && lot.printed.lot_code.empty()) lot.printed.lot_code = scan->lot_code;
    return true;
  }

  [[nodiscard]] bool is_whole_name(const Food& food, std::size_t from, std::size_t end) const {
    const std::string typed = lowered_cell(joined(words_, from, end));
    return typed == food.key.str() || typed == lowered_cell(food.name);
  }

  // Where words could belong to the food as well as to the date ("orange mar 5 2028", of orange marmalade), nothing is guessed.
  void refuse_other_dates(std::size_t from, std::size_t end) {
    const PrintedMark taken = lot.printed;
    for (std::size_t less = end - 1; less > from; --less) {
      const std::vector<std::string> words(words_.begin() + static_cast<std::ptrdiff_t>(from), words_.begin() + static_cast<std::ptrdiff_t>(less));
      const auto foods = foods_of_words(household_, words);
      if (foods.empty()) continue;
      const std::string other = joined(words_, less, words_.size());
      const auto printed = parse_printed_mark(other, MarkKind::kBestBefore, today_, {how_.order, today_});
      if (!printed || (printed->mark.day == taken.mark.day && printed->mark.kind == taken.mark.kind)) continue;
      if (foods.size() == 1 && is_whole_name(*foods.front(), from, less)) {
        lot.food = foods.front()->key;
        lot.printed = *printed;
        return;
      }
      return fault("the date could be '" + other + "' or '" + joined(words_, end, words_.size()) + "'",
                   "write the date in digits, as 2028-05, or the whole name of the food");
    }
  }

  void take_date(const std::string& text, bool thing) {
    if (text.empty() && thing) {
      lot.printed = {};
      return;
    }
    if (text.empty()) return fault("the date is missing", "write it as printed behind the food, or 'none' when the package has none");
    auto printed = parse_printed_mark(text, MarkKind::kBestBefore, today_, {how_.order, today_});
    if (!printed) return fault(printed.error().what, printed.error().next_step);
    lot.printed = *printed;
  }

  const Household& household_;
  const QuickHow& how_;
  Day today_;
  std::string_view text_;
  std::vector<std::string> words_;
};

}  // namespace

QuickList read_quick_lines(const Household& household, std::string_view text, const QuickHow& how, Day today) {
  QuickList list;
  QuickHow now = how;
  std::size_t number = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    const std::string where = "line " + std::to_string(++number);
    if (number > kMostLines) {
      list.problems.push_back({where, "", "there are more than " + std::to_string(kMostLines) + " lines", "cut the list in two"});
      break;
    }
    const std::size_t begin = line.find_first_not_of(" \t\r");
    if (begin == std::string_view::npos || line[begin] == '#') continue;
    if (line.size() > kLongestLine) {
      list.problems.push_back({where, "", "the line is too long", "write one lot a line"});
      continue;
    }
    Line one(household, now, today, line.substr(begin));
    if (!one.is_setting(now)) one.read();
    else if (!one.problem) continue;
    if (one.problem) {
      one.problem->where = where;
      list.problems.push_back(*one.problem);
      continue;
    }
    one.lot.line = number;
    list.lots.push_back(std::move(one.lot));
  }
  return list;
}

}  // namespace larderloop
