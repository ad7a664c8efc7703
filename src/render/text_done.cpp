// The lines that say what was done, and how to undo it.
#include "larderloop/app/placing.h"
#include "larderloop/core/lowered.h"
#include "larderloop/core/words.h"
#include "larderloop/render/text_things.h"
#include "render/plain.h"

#include <fmt/core.h>

#include <algorithm>

namespace larderloop {
namespace {

std::string spaced(std::string_view name) {
  std::string words(name);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

// "entry 512", "entries 512 and 513"
std::string entry_words(const std::vector<Entry>& entries) {
  std::vector<std::string> numbers;
  for (const Entry& each : entries) numbers.push_back(std::to_string(each.id.value()));
  return (entries.size() == 1 ? "entry " : "entries ") + list_words(numbers);
}

std::string undo_words(const std::vector<Entry>& entries) {
  std::string command = "larderloop record corrected";
  for (auto each = entries.rbegin(); each != entries.rend(); ++each)
    command += fmt::format(" {}", each->id.value());
  return command;
}

std::string basis_words(const LotFacts& facts) {
  switch (facts.basis) {
    case DayBasis::kPrinted:
      return "";
    case DayBasis::kEstimated:
      return " (an estimate from the storage time)";
    case DayBasis::kFilled:
      return " (six months after filling)";
    case DayBasis::kNone:
      return "";
  }
  return "";
}

std::string precise_words(const DateMark& mark) {
  if (!mark.day) return std::string(mark_kind_words(mark.kind));
  const std::string day = plain_day(*mark.day);
  const std::string kind(mark_kind_words(mark.kind));
  constexpr std::string_view kMonths[] = {"January",   "February", "March",    "April",
                                          "May",       "June",     "July",     "August",
                                          "September", "October",  "November", "December"};
  const date::year_month_day parts(*mark.day);
  switch (mark.precision) {
    case Precision::kDay:
      return kind + " " + day;
    case Precision::kMonth:
      return fmt::format("{} end of {} {}", kind, kMonths[static_cast<unsigned>(parts.month()) - 1],
                         static_cast<int>(parts.year()));
    case Precision::kYear:
      return fmt::format("{} end of {}", kind, static_cast<int>(parts.year()));
  }
  return kind + " " + day;
}

// Labels of the EU print "use by" in words, so what says EXP comes from elsewhere; nobody here knows whether it means quality or safety.
std::string expiry_words(const LotFacts& facts) {
  const bool expiry = facts.mark.kind == MarkKind::kUseBy && lowered(facts.mark.text).rfind("exp", 0) == 0;
  return facts.safety && expiry ? ", because EXP is taken for 'use by'" : "";
}

}  // namespace

std::string date_words(const LotFacts& facts) {
  const std::string mark =
      facts.mark.kind == MarkKind::kNone ? "no date mark" : precise_words(facts.mark);
  if (!facts.good_through) return mark + ": nobody knows how long it keeps";
  return mark + ": good through " + plain_day(*facts.good_through) + basis_words(facts) +
         (facts.safety ? ", a safety date" : "") + expiry_words(facts);
}

std::string recorded_line(const Household& household, const Recorded& report) {
  const Food& food = *find_food(household, report.food);
  const Entry& last = report.entries.back();
  HalfServings amount;
  for (const Entry& each : report.entries) {
    if (each.kind == last.kind) amount += each.amount;
  }
  std::string line = fmt::format("{}: {} of {} (lot {}", spaced(entry_kind_name(last.kind)),
                                 units_words(food, amount), food.name, report.lot.value());
  line += last.kind == EntryKind::kMoved ? ", from " + plain::place(household, report.place) +
                                               " to " + plain::place(household, last.to)
                                         : ", " + plain::place(household, report.place);
  line += ")";
  if (last.kind != EntryKind::kOpened && report.opened_units > 0) {
    line += fmt::format("; opened {}",
                        units_words(food, HalfServings::units(report.opened_units, food.servings)));
  }
  line += "; left there: " +
          (report.left_there == HalfServings() ? "nothing" : units_words(food, report.left_there));
  if (report.left != report.left_there) line += ", everywhere: " + units_words(food, report.left);
  return line + "; " + entry_words(report.entries) + "; undo: " + undo_words(report.entries);
}

std::string corrected_line(const Household& household, const Corrected& report) {
  std::string line = "corrected: ";
  for (std::size_t index = 0; index < report.reversed.size(); ++index) {
    const Entry& old = report.reversed[index];
    const Lot* lot = find_lot(household, old.at.lot);
    const Food* food = lot == nullptr ? nullptr : find_food(household, lot->food);
    line += fmt::format(
        "{}entry {} ({}{})", index == 0 ? "" : ", ", old.id.value(),
        spaced(entry_kind_name(old.kind)),
        food == nullptr ? "" : " " + units_words(*food, old.amount) + " of " + food->name);
  }
  return line + " no longer count" + (report.reversed.size() == 1 ? "s" : "") + "; " +
         entry_words(report.entries) + "; see: larderloop record list";
}

std::vector<std::string> label_lines(const Household& household, const LabelNews& news) {
  std::vector<std::string> lines;
  if (!news.differs)
    lines.emplace_back("the label is the same as the last one read of this food");
  else
    lines.emplace_back("this label is new, or differs from the last one read of this food");
  for (const PersonRefusal& each : news.must_not)
    lines.push_back(must_not_words(household, {each}));
  if (news.must_not.empty())
    lines.emplace_back(
        "by what was read, it concerns nobody of the household; the package decides");
  return lines;
}

}  // namespace larderloop
