// The cells of a lot's row.
#include "app/sheet_lots.h"
#include "larderloop/app/find.h"
#include "larderloop/core/validate.h"
#include "larderloop/intake/date_text.h"

namespace larderloop {
namespace {

constexpr LotState kStates[] = {LotState::kOk, LotState::kDoubtful, LotState::kRecalled};
constexpr Precision kPrecisions[] = {Precision::kDay, Precision::kMonth, Precision::kYear};
constexpr std::int64_t kMostNumber = 1'000'000'000'000;
constexpr std::int64_t kMostCents = 1'000'000'000;  // for all units at once, as validate_record.cpp

// Keys first, then whatever a command takes, and digits whose zeros a spreadsheet dropped.
Result<const Food*> food_of(const Household& household, std::string_view cell) {
  if (const Food* food = find_food(household, FoodKey(std::string(cell)))) return food;
  if (cell.find_first_not_of("0123456789 -") == std::string_view::npos) {
    if (const auto gtin = cell_gtin(cell)) return food_with_gtin(household, *gtin);
  }
  return named_food(household, cell);
}

Result<const Place*> place_of(const Household& household, std::string_view cell) { return named_place(household, cell); }

// Looks up what was looked up before; the first time a fault tells what is wrong, later ones repeat it.
template <class Thing, class Find>
const Thing* looked_up(SheetWork& work, std::unordered_map<std::string, const Thing*>& known, Col col, const char* missing, const char* remedy, Find find) {
  const std::string_view cell = work.cell(col);
  if (cell.empty()) {
    work.fault(col, missing, remedy);
    return nullptr;
  }
  const auto [entry, fresh] = known.try_emplace(std::string(cell), nullptr);
  if (!fresh && entry->second != nullptr) return entry->second;
  auto found = find(work.household, cell);
  if (found) entry->second = *found;
  else work.fault(col, found.error().what, found.error().next_step);
  return entry->second;
}

}  // namespace

std::string lot_identity(const FoodKey& food, const DateMark& mark, const std::string& lot_code) {
  std::string all = food.str();
  all += '|';
  all += mark_kind_name(mark.kind);
  all += '|';
  if (mark.day) all += std::to_string(mark.day->time_since_epoch().count());
  all += '|';
  all += settled_text(lot_code);
  return all;
}

LotReader::LotReader(SheetWork& work) : work_(work) {}

std::optional<SheetLot> LotReader::read() {
  SheetLot row;
  row.line = work_.line();
  if (work_.says(Col::kLot)) {
    const auto number = cell_whole(work_.cell(Col::kLot), work_.delimiter(), 1, kMostNumber);
    if (number) row.number = *number;
    else work_.fault(Col::kLot, "'" + std::string(work_.cell(Col::kLot)) + "' is no number of a lot in the book", "leave it empty for a new lot; if it is the code on the package: --column '" + (work_.has(Col::kLot) ? work_.where(0, Col::kLot).substr(8) : std::string()) + "=lot_code'");
  }
  row.food = looked_up(work_, foods_, Col::kFood, "the food is missing", "write its key, its name or the digits under the barcode", food_of);
  row.place = looked_up(work_, places_, Col::kPlace, "the place is missing", "write where it lies, as pantry", place_of);
  std::optional<Day> received;
  work_.day(Col::kReceived, received);
  row.received_said = received.has_value();
  row.received = received.value_or(work_.when.today);
  if (row.food != nullptr) {
    read_amount(row);
    read_label(row);
  }
  row.lot_code = std::string(work_.cell(Col::kLotCode));
  read_mark(row);
  if (work_.says(Col::kState)) {
    if (const auto state = work_.value(Col::kState, cell_word<LotState>(work_.cell(Col::kState), kStates, lot_state_name))) row.state = *state;
  }
  if (work_.says(Col::kPaid) && !says_none(work_.cell(Col::kPaid))) {
    const auto paid = work_.value(Col::kPaid, cell_money(work_.cell(Col::kPaid), work_.delimiter(), work_.household.settings.currency));
    if (paid && *paid > kMostCents) work_.fault(Col::kPaid, "'" + std::string(work_.cell(Col::kPaid)) + "' is out of range", "write what these units cost together");
    else if (paid) row.paid_cents = *paid;
  }
  row.note = std::string(work_.cell(Col::kNote));
  if (!work_.row_is_sound()) return std::nullopt;
  return row;
}

void LotReader::read_amount(SheetLot& row) {
  work_.day(Col::kOpenedOn, row.opened_on);
  const Food& food = *row.food;
  if (!row.opened_on) {
    if (work_.says(Col::kServingsLeft)) work_.fault(Col::kServingsLeft, "servings are left in what is open, and nothing says since when it is", "write the day in opened_on, or leave this cell empty and write units");
    if (!work_.says(Col::kUnits)) {
      if (!work_.says(Col::kServingsLeft)) work_.fault(Col::kUnits, "the number of units is missing", "write how many lie there");
      return;
    }
    if (const auto units = work_.value(Col::kUnits, cell_whole(work_.cell(Col::kUnits), work_.delimiter(), 1, kMaxUnits))) row.amount = HalfServings::units(*units, food.servings);
    return;
  }
  if (work_.says(Col::kUnits)) work_.fault(Col::kUnits, "what is open is not counted in units", "leave this cell empty and write servings_left; sealed units have a row of their own");
  if (!work_.says(Col::kServingsLeft)) {
    work_.fault(Col::kServingsLeft, "nothing says how much is left", "write the servings left in it, in halves");
    return;
  }
  const auto left = work_.value(Col::kServingsLeft, cell_servings(work_.cell(Col::kServingsLeft), work_.delimiter()));
  if (left && *left == HalfServings()) work_.fault(Col::kServingsLeft, "nothing is left", "leave the row out");
  else if (left) row.amount = *left;
  if (food.kind == FoodKind::kThing) work_.fault(Col::kOpenedOn, "a thing is nothing to open", "leave this cell empty");
}

void LotReader::read_mark(SheetLot& row) {
  const HeaderHint hint = work_.hint(Col::kDate);
  MarkKind kind = hint.mark == MarkKind::kNone ? MarkKind::kBestBefore : hint.mark;
  const bool kind_said = work_.says(Col::kDateKind) || hint.mark != MarkKind::kNone;
  if (work_.says(Col::kDateKind)) {
    const auto read = work_.value(Col::kDateKind, cell_word<MarkKind>(work_.cell(Col::kDateKind), kAllMarkKinds, mark_kind_name));
    if (!read) return;
    kind = *read;
  }
  if (work_.says(Col::kDateDay) || (work_.says(Col::kDateKind) && kind == MarkKind::kNone)) {
    if (auto mark = told_mark(kind, kind_said)) row.mark = std::move(*mark);
    row.day_told = true;
    return;
  }
  if (!work_.says(Col::kDate)) {
    work_.fault(Col::kDate, "the date is missing", "write it as it is printed, or none");
    return;
  }
  if (auto mark = printed_mark(row, kind)) row.mark = std::move(*mark);
}

// The day is told beside the printed text.
std::optional<DateMark> LotReader::told_mark(MarkKind kind, bool kind_said) {
  DateMark mark;
  mark.text = std::string(work_.cell(Col::kDate));
  mark.kind = kind;
  if (kind == MarkKind::kNone) {
    if (work_.says(Col::kDateDay)) work_.fault(Col::kDateDay, "a lot without a date has no day", "leave it empty, or write what kind of date it is");
    if (says_none(mark.text)) mark.text.clear();  // as a command keeps it
    return mark;
  }
  const auto day = work_.value(Col::kDateDay, cell_day(work_.cell(Col::kDateDay), work_.household.settings.date_order));
  if (!day) return std::nullopt;
  mark.day = *day;
  if (!kind_said && !work_.says(Col::kDate)) mark.kind = MarkKind::kBestBefore;
  work_.word(Col::kDatePrecision, kPrecisions, precision_name, mark.precision);
  const date::year_month_day ymd{*day};
  const int year = static_cast<int>(ymd.year());
  const auto last = mark.precision == Precision::kMonth ? resolve_month(year, static_cast<unsigned>(ymd.month())) : mark.precision == Precision::kYear ? resolve_year(year) : day;
  if (last != mark.day) work_.fault(Col::kDateDay, "not the last day of the " + std::string(precision_name(mark.precision)), "write " + iso_day(*last));
  return mark;
}

std::optional<DateMark> LotReader::printed_mark(SheetLot& row, MarkKind kind) {
  const std::string_view cell = work_.cell(Col::kDate);
  std::string key(cell);
  key += '|';
  key += mark_kind_name(kind);
  auto found = marks_.find(key);
  if (found == marks_.end()) {
    DateHow how{work_.household.settings.date_order, std::nullopt};
    auto printed = parse_printed_mark(cell, kind, work_.when.today, how);
    // A day and month alone are read by the day they came; that is not worth remembering.
    const bool by_received = !printed && row.received_said;
    if (by_received) {
      how.received = row.received;
      printed = parse_printed_mark(cell, kind, work_.when.today, how);
    }
    if (!printed) {
      work_.fault(Col::kDate, printed.error().what, printed.error().next_step);
      return std::nullopt;
    }
    if (by_received) {
      if (row.lot_code.empty()) row.lot_code = printed->lot_code;
      return printed->mark;
    }
    found = marks_.emplace(std::move(key), Mark{std::move(printed->mark), std::move(printed->lot_code)}).first;
  }
  if (row.lot_code.empty()) row.lot_code = found->second.lot_code;
  return found->second.mark;
}

int LotReader::last_label(const Food& food) {
  const auto [entry, fresh] = last_.try_emplace(food.key, -1);
  if (fresh && food.label) {
    labels_.push_back(*food.label);
    entry->second = static_cast<int>(labels_.size()) - 1;
  }
  return entry->second;
}

void LotReader::read_label(SheetLot& row) {
  std::string key;
  for (const Col each : {Col::kContains, Col::kMayContain, Col::kSuits, Col::kReadBy, Col::kReadOn}) {
    key += work_.cell(each);
    key += '\x1f';
  }
  constexpr std::size_t kSeparators = 5;
  if (key.size() == kSeparators) return;
  const auto known = label_cells_.find(key);
  if (known != label_cells_.end()) {
    row.label = known->second;
    return;
  }
  if (lowered_cell(work_.cell(Col::kContains)) == "same") {
    const int last = last_label(*row.food);
    if (last < 0) {
      work_.fault(Col::kContains, "no label of '" + row.food->name + "' was read before, so there is none to be the same as", "write what it declares, or none");
      return;
    }
    for (const Col each : {Col::kMayContain, Col::kSuits}) {
      if (work_.says(each)) work_.fault(each, "the label is the same as last time, so nothing else is said of it", "leave this cell empty, or write out the whole label");
    }
    Statement label = labels_[static_cast<std::size_t>(last)];
    label.read_by = work_.says(Col::kReadBy) ? std::string(work_.cell(Col::kReadBy)) : work_.how.read_by;
    if (label.read_by.empty()) work_.fault(Col::kReadBy, "nobody is named who read the label", "write who read it, or for all rows: --read-by NAME");
    std::optional<Day> on;
    work_.day(Col::kReadOn, on);
    if (!on && work_.says(Col::kReadBy)) work_.fault(Col::kReadOn, "nothing says when the label was read", "write the day, as 2026-10-03");
    label.read_on = on.value_or(work_.when.today);
    if (!work_.row_is_sound()) return;
    // Not remembered by its cells: the next food has another last label. The last one of the list may serve again.
    if (labels_.back() != label) labels_.push_back(std::move(label));
    row.label = static_cast<int>(labels_.size()) - 1;
    return;
  }
  auto label = work_.label(nullptr);
  if (!label) return;
  labels_.push_back(std::move(*label));
  row.label = static_cast<int>(labels_.size()) - 1;
  label_cells_.emplace(std::move(key), row.label);
}

bool LotReader::learn(const FoodKey& food, int label) {
  const int last = last_label(*find_food(work_.household, food));
  const Statement& now = labels_[static_cast<std::size_t>(label)];
  const Statement* before = this->label(last);
  const bool differs = before == nullptr || before->declared != now.declared || before->suits != now.suits;
  if (before != nullptr && before->read_on > now.read_on) return differs;
  last_[food] = label;
  learnt_.insert(food);
  return differs;
}

std::vector<Food> LotReader::foods_with_labels() const {
  std::vector<Food> foods;
  for (const FoodKey& key : learnt_) {
    Food food = *find_food(work_.household, key);
    const Statement& label = labels_[static_cast<std::size_t>(last_.at(key))];
    if (food.label == label) continue;
    food.label = label;
    foods.push_back(std::move(food));
  }
  return foods;
}

}  // namespace larderloop
