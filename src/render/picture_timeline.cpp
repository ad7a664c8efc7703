#include "larderloop/core/words.h"
#include "larderloop/render/picture.h"
#include "render/plain.h"
#include "render/svg.h"

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <tuple>

namespace larderloop {
namespace {

using svg::Anchor;
using svg::Fill;
using svg::Picture;
using svg::Stroke;

// A row: what, its date, its bar in the plot on the right.
constexpr double kRow = 15, kBar = 8, kLine = 15;
constexpr double kLeft = svg::kEdge, kDates = 268, kPlot = 276, kRight = svg::kWidth - svg::kEdge;
constexpr std::size_t kNameCells = 25;
constexpr int kMostDaysBack = 180, kMostDaysAhead = 2 * 365;

// Units of one food with one date and one state.
struct Row {
  FoodKey food;
  HalfServings amount;
  std::optional<Day> good_through;
  bool leaves = false;
  LeaveReason reason = LeaveReason::kTooOld;
};

std::vector<Row> rows_of(const ReviewSheet& sheet) {
  // Soonest first, what has no date last.
  std::map<std::tuple<Day, FoodKey, bool, LeaveReason>, Row> rows;
  for (const SheetPlace& place : sheet.places) {
    for (const SheetLine& line : place.lines) {
      const LeaveReason reason = line.leaves ? line.reason : LeaveReason::kTooOld;
      Row& row = rows[{line.good_through.value_or(Day::max()), line.food, line.leaves, reason}];
      row.food = line.food;
      row.amount += line.amount;
      row.good_through = line.good_through;
      row.leaves = line.leaves;
      row.reason = reason;
    }
  }
  std::vector<Row> all;
  for (const auto& [key, row] : rows) all.push_back(row);
  return all;
}

// Days along the width.
class Scale {
 public:
  Scale(Day first, Day last) : first_(first), last_(last) {}
  [[nodiscard]] Day first() const { return first_; }
  [[nodiscard]] Day last() const { return last_; }
  [[nodiscard]] bool holds(Day day) const { return first_ <= day && day <= last_; }
  [[nodiscard]] double at(Day day) const {
    const Day inside = std::clamp(day, first_, last_);
    return kPlot + (kRight - kPlot) * days_between(first_, inside) /
                       std::max(1, days_between(first_, last_));
  }

 private:
  Day first_, last_;
};

Scale scale_of(const std::vector<Row>& rows, Day hold_until, Day today) {
  Day first = today, last = std::max(hold_until, today);
  for (const Row& row : rows) {
    if (!row.good_through) continue;
    first = std::min(first, *row.good_through);
    last = std::max(last, *row.good_through);
  }
  return {std::max(first, today - Days(kMostDaysBack)),
          std::min(last, std::max(hold_until, today + Days(kMostDaysAhead)))};
}

// A line down the picture with its words; each has a row of its own at the top.
struct Marker {
  Day day{};
  std::string words;
  Stroke stroke = Stroke::kSolid;
  std::string kind;
};

std::vector<Marker> markers_of(const ReviewSheet& sheet, const std::vector<ReviewSlot>& slots,
                               const Scale& scale, Day today) {
  std::vector<Marker> all{{today, "today, " + plain_day(today), Stroke::kSolid, "today"}};
  for (const ReviewSlot& slot : slots) {
    if (!scale.holds(slot.day)) continue;
    all.push_back({slot.day,
                   fmt::format("review {}, {}", slot_state_words(slot.state), plain_day(slot.day)),
                   Stroke::kDashed, "review"});
  }
  const Day hold = sheet.schedule.hold_until;
  all.push_back({hold, "hold-until date, " + plain_day(hold), Stroke::kDotted, "hold-until"});
  std::stable_sort(all.begin(), all.end(),
                   [](const Marker& a, const Marker& b) { return a.day < b.day; });
  return all;
}

// All lines before all words, so that no line crosses any.
void draw_markers(Picture& picture, const std::vector<Marker>& markers, const Scale& scale,
                  double top, double bottom) {
  double y = top;
  for (const Marker& marker : markers) {
    picture.line(scale.at(marker.day), y + 12, scale.at(marker.day), bottom, marker.stroke);
    y += kLine;
  }
  y = top;
  for (const Marker& marker : markers) {
    const double x = scale.at(marker.day);
    const bool right = x > kPlot + 10;
    picture.open(marker.kind, {{"day", iso_day(marker.day)}});
    picture.over(right ? std::min(x + 4, kRight) : x + 4, y + 11, marker.words,
                 right ? Anchor::kEnd : Anchor::kStart);
    picture.close();
    y += kLine;
  }
}

enum class State { kLasts, kWater, kTooOld, kNotGood };

// `hold_until`: water stays in a kit whatever its date, which is then a note or a task to fill it
// again.
State state_of(const Row& row, Day hold_until) {
  if (row.leaves) return row.reason == LeaveReason::kTooOld ? State::kTooOld : State::kNotGood;
  return row.good_through && *row.good_through < hold_until ? State::kWater : State::kLasts;
}

std::string_view state_words(const Row& row, Day hold_until, Day today) {
  if (!row.leaves) {
    if (state_of(row, hold_until) == State::kLasts) return "";
    return *row.good_through < today ? "past its date" : "due by then";
  }
  switch (row.reason) {
    case LeaveReason::kTooOld:
      return "will not last";
    case LeaveReason::kPast:
      return "past its date";
    case LeaveReason::kRecalled:
      return "recalled";
    case LeaveReason::kDoubtful:
      return "doubtful";
    case LeaveReason::kDamaged:
      return "damaged";
    case LeaveReason::kMissing:
      return "missing";
  }
  return "";
}

Fill fill_of(State state) {
  switch (state) {
    case State::kLasts:
      return Fill::kPlain;
    case State::kWater:
      return Fill::kDotted;
    case State::kTooOld:
      return Fill::kHatched;
    case State::kNotGood:
      return Fill::kCrossed;
  }
  return Fill::kPlain;
}

void draw_row(Picture& picture, const Household& household, const Row& row, const Scale& scale,
              Day hold_until, Day today, double y) {
  const Food& food = *find_food(household, row.food);
  const std::string_view words = state_words(row, hold_until, today);
  picture.open("lot", {{"food", row.food.str()},
                       {"half-servings", std::to_string(row.amount.halves())},
                       {"day", row.good_through ? iso_day(*row.good_through) : ""},
                       {"state", words.empty() ? "lasts" : std::string(words)}});
  const std::int64_t units = row.amount.whole_units(food.servings);
  const bool whole = HalfServings::units(units, food.servings) == row.amount;
  const std::string amount = whole ? fmt::format("{} \u00d7 ", units)
                                   : fmt::format("{}{} servings ", row.amount.halves() / 2,
                                                 row.amount.halves() % 2 == 0 ? "" : ".5");
  const std::size_t room = kNameCells - std::min<std::size_t>(amount.size() - (whole ? 1 : 0), 20);
  picture.text(kLeft, y + 11, amount + svg::name(food.name, room));
  std::string date = "no date";
  if (row.good_through)
    date = fmt::format("{} {}", short_day(*row.good_through).substr(4), year_of(*row.good_through));
  picture.text(kDates, y + 11, date, Anchor::kEnd);
  double end = kPlot;
  if (row.good_through) {
    const double from = scale.at(std::min(today, *row.good_through));
    const double to = scale.at(std::max(today, *row.good_through));
    end = from + std::max(1.0, to - from);
    picture.box(from, y + 4, end - from, kBar, fill_of(state_of(row, hold_until)));
  }
  const bool longer = row.good_through && *row.good_through > scale.last();
  const std::string_view beside = !words.empty() ? words : longer ? "and longer" : "";
  if (!beside.empty()) {
    const bool fits = end + 4 + svg::kLetter * static_cast<double>(beside.size()) <= kRight;
    picture.over(fits ? end + 4 : kRight - 4, y + 12, beside, fits ? Anchor::kStart : Anchor::kEnd);
  }
  picture.close();
}

void draw_axis(Picture& picture, const Scale& scale, double y) {
  picture.line(kPlot, y, kRight, y);
  const bool short_span = days_between(scale.first(), scale.last()) < 400;
  double free_from = 0;
  for (int year = year_of(scale.first()); year <= year_of(scale.last()); ++year) {
    const Day new_year = *parse_iso_day(fmt::format("{}-01-01", year));
    for (int month = 0; month < 12; month += 3) {
      const Day tick = add_months(new_year, month);
      if (!scale.holds(tick)) continue;
      const double x = scale.at(tick);
      picture.line(x, y, x, y + (month == 0 ? 7 : 4));
      if (month != 0 && !short_span) continue;
      const std::string words = month == 0                           ? fmt::format("1 Jan {}", year)
                                : iso_day(tick).substr(5, 2) == "04" ? "1 Apr"
                                : iso_day(tick).substr(5, 2) == "07" ? "1 Jul"
                                                                     : "1 Oct";
      const double width = 7.0 * static_cast<double>(words.size());
      const bool at_end = x + width > kRight;
      if ((at_end ? x - width : x) < free_from) continue;
      picture.text(x, y + 19, words, at_end ? Anchor::kEnd : Anchor::kStart);
      free_from = x + width + 4;
    }
  }
}

}  // namespace

std::string render_timeline_svg(const Household& household, const ReviewSheet& sheet,
                                const std::vector<ReviewSlot>& slots, Day today) {
  const std::vector<Row> rows = rows_of(sheet);
  const std::string kit = plain::place(household, sheet.schedule.kit);
  const auto leave =
      std::count_if(rows.begin(), rows.end(), [](const Row& row) { return row.leaves; });
  Picture picture(
      fmt::format("{}: what lies in it by good-through date, {}", kit, plain_day(today)),
      fmt::format(
          "{} bars, soonest date first, each from today to the last good day; {} of them will "
          "not stay at the next review. Hold-until date: {}.",
          rows.size(), leave, plain_day(sheet.schedule.hold_until)));
  const Day hold_until = sheet.schedule.hold_until;
  const Scale scale = scale_of(rows, sheet.schedule.hold_until, today);
  const std::vector<Marker> markers = markers_of(sheet, slots, scale, today);
  picture.text(kLeft, 20, svg::name(kit, 40) + ": by good-through date", Anchor::kStart, true);
  const double top = 28, first = top + kLine * static_cast<double>(markers.size()) + 8;
  const double axis = first + kRow * static_cast<double>(rows.size()) + 6;
  draw_markers(picture, markers, scale, top, axis);
  double y = first;
  for (const Row& row : rows) {
    draw_row(picture, household, row, scale, hold_until, today, y);
    y += kRow;
  }
  if (rows.empty()) picture.text(kLeft, first + 4, "Nothing lies in it.");
  draw_axis(picture, scale, axis);
  const double key = axis + 32;
  const std::pair<Fill, const char*> keys[] = {
      {Fill::kPlain, "lasts to the hold-until date"},
      {Fill::kDotted, "water that is due by then, or past its date"},
      {Fill::kHatched, "will not last"},
      {Fill::kCrossed, "past its date, recalled or doubtful"}};
  y = key;
  for (const auto& [fill, words] : keys) {
    picture.box(kLeft, y, 24, 9, fill);
    picture.text(kLeft + 30, y + 9, words);
    y += kLine;
  }
  return picture.finish(y + 6);
}

}  // namespace larderloop
