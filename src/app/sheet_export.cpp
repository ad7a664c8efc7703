// The household as spreadsheets.
#include "app/sheet_cells_of.h"
#include "larderloop/app/sheets.h"
#include "larderloop/core/lot.h"
#include "larderloop/core/stock.h"
#include "larderloop/intake/csv.h"

#include <algorithm>

namespace larderloop {
namespace {

template <class Number>
std::string number(const std::optional<Number>& value) {
  return value ? std::to_string(*value) : std::string();
}
std::string day(const std::optional<Day>& value) { return value ? iso_day(*value) : std::string(); }
std::string yes(bool value) { return value ? "yes" : "no"; }
std::string halves(HalfServings amount) { return std::to_string(amount.halves() / 2) + (amount.halves() % 2 == 0 ? "" : ".5"); }

// Thousandths or hundredths with a point.
std::string decimal(std::int64_t value, std::int64_t scale) {
  std::string rest = std::to_string(scale + value % scale).substr(1);
  while (!rest.empty() && rest.back() == '0') rest.pop_back();
  return std::to_string(value / scale) + (rest.empty() ? "" : "." + rest);
}

template <class List, class Name>
std::string joined(const List& list, Name name) {
  std::string all;
  for (const auto& each : list) all += (all.empty() ? "" : "; ") + std::string(name(each));
  return all;
}

std::string or_none(std::string text) { return text.empty() ? "none" : text; }

std::string declared(const Statement& label, Declared wanted) {
  std::string all;
  for (const auto& [key, how] : label.declared) {
    if (how == wanted) all += (all.empty() ? "" : "; ") + key;
  }
  return or_none(all);
}

// contains, may_contain, suits, label_read_by, label_read_on
void add_label(std::vector<std::string>& cells, const std::optional<Statement>& label) {
  if (!label) {
    cells.insert(cells.end(), 5, "");
    return;
  }
  cells.push_back(declared(*label, Declared::kContains));
  cells.push_back(declared(*label, Declared::kMayContain));
  cells.push_back(or_none(joined(label->suits, diet_name)));
  cells.push_back(label->read_by);
  cells.push_back(iso_day(label->read_on));
}

std::string_view rotate_name(Rotate rotate) { return rotate == Rotate::kAuto ? "auto" : rotate == Rotate::kYes ? "yes" : "no"; }

template <class Wanted>
std::string avoided(const Person& person, Wanted wanted) {
  std::string all;
  for (const Avoid& each : person.avoid) {
    if (wanted(each)) all += (all.empty() ? "" : "; ") + each.key;
  }
  return or_none(all);
}

// Numbers and days, which a spreadsheet may know for what they are.
bool goes_as_it_is(Col col) {
  constexpr Col kPlain[] = {Col::kServings, Col::kMass, Col::kVolume, Col::kEnergy, Col::kSodium, Col::kReadOn, Col::kNeedsWater, Col::kKeepsFrom,
                            Col::kKeepsTo, Col::kOpenedDays, Col::kParLevel, Col::kRetired, Col::kLot, Col::kUnits, Col::kOpenedOn, Col::kServingsLeft,
                            Col::kDateDay, Col::kReceived, Col::kPaid, Col::kBorn, Col::kAppetite, Col::kTolerance, Col::kHeight, Col::kBodyMass,
                            Col::kLine, Col::kDay, Col::kPriority};
  return std::find(std::begin(kPlain), std::end(kPlain), col) != std::end(kPlain);
}

std::string line_of(SheetKind sheet, std::vector<std::string> cells) {
  const auto& columns = sheet_columns(sheet);
  for (std::size_t index = 0; index < cells.size(); ++index) {
    if (!goes_as_it_is(columns[index].col)) cells[index] = guarded(std::move(cells[index]));
  }
  return csv_line(cells);
}

std::string header_of(SheetKind sheet) {
  std::vector<std::string> names;
  for (const ColumnInfo& each : sheet_columns(sheet)) names.emplace_back(each.name);
  return csv_line(names);
}

std::string lot_line(const Household& household, const LotFacts& facts, const StockKey& at, HalfServings amount) {
  const Lot& lot = *find_lot(household, facts.id);
  const Food& food = *find_food(household, lot.food);
  const DateMark& mark = facts.mark;
  const bool dated = mark.kind != MarkKind::kNone;
  std::vector<std::string> cells = {
      std::to_string(lot.id.value()), lot.food.str(), at.place.str(),
      at.opened_on ? "" : std::to_string(amount.whole_units(food.servings)), day(at.opened_on), at.opened_on ? halves(amount) : "",
      dated ? mark.text : or_none(mark.text), std::string(mark_kind_name(mark.kind)), day(mark.day), dated ? std::string(precision_name(mark.precision)) : "",
      lot.lot_code, iso_day(lot.received)};
  add_label(cells, facts.label);
  cells.emplace_back(lot_state_name(facts.state));
  cells.emplace_back();  // what was paid was paid for all of it, not for what is left
  cells.push_back(lot.note);
  return line_of(SheetKind::kLots, std::move(cells));
}

}  // namespace

std::vector<std::string> cells_of(const Food& food) {
  std::vector<std::string> cells = {food.key.str(), food.name, std::string(food_kind_name(food.kind)), food.species, food.gtin, food.unit,
                                    std::to_string(food.servings), number(food.mass_g), number(food.volume_ml), number(food.energy_kcal), number(food.sodium_mg)};
  add_label(cells, food.label);
  for (const bool each : {!food.no_cook, food.needs_hot_water}) cells.push_back(yes(each));
  cells.push_back(std::to_string(food.needs_water_ml));
  for (const bool each : {food.needs_opener, food.needs_spoon, food.refrigerate, food.choking_risk, food.honey, food.is_opener, food.is_cutlery,
                          food.infant_formula, food.home_canned, food.self_filled, food.staple})
    cells.push_back(yes(each));
  cells.push_back(joined(food.meals, meal_name));
  cells.push_back(joined(food.roles, role_name));
  cells.push_back(joined(food.packs, [](const Pack& pack) { return pack.shop + ":" + std::to_string(pack.units) + ":" + decimal(pack.price_cents, 100); }));
  cells.push_back(number(food.storage.months_short));
  cells.push_back(number(food.storage.months_long));
  cells.push_back(std::to_string(food.storage.opened_days));
  cells.push_back(food.storage.source);
  cells.emplace_back(rotate_name(food.rotate));
  cells.push_back(number(food.par_level));
  cells.push_back(food.note);
  cells.push_back(day(food.retired));
  return cells;
}

std::vector<std::string> cells_of(const Person& person) {
  const auto is_own = [](const Avoid& each) { return !each.accept_may_contain && !is_known_allergen(each.key); };
  std::string ratings;
  for (const auto& [food, rating] : person.ratings) ratings += (ratings.empty() ? "" : "; ") + food.str() + ":" + std::to_string(rating);
  return {person.key.str(), person.name, person.species, day(person.born),
          avoided(person, [&](const Avoid& each) { return !each.accept_may_contain && !is_own(each); }),
          avoided(person, [](const Avoid& each) { return each.accept_may_contain; }), avoided(person, is_own),
          or_none(joined(person.diets, diet_name)), halves(person.appetite), person.tolerance ? halves(*person.tolerance) : "",
          number(person.energy_kcal), person.sex ? std::string(sex_name(*person.sex)) : "", number(person.height_cm),
          person.mass_g ? decimal(*person.mass_g, 1000) : "", person.activity ? std::string(activity_name(*person.activity)) : "", ratings, person.note,
          day(person.retired)};
}

std::vector<std::string> cells_of(const MenuLine& line) {
  const std::string people = joined(line.people, [](const PersonKey& key) { return key.str(); });
  return {line.id.empty() ? "" : std::to_string(line.id.value()), line.place.str(), line.everyone ? "everyone" : people.empty() ? "nobody" : people,
          line.day == 0 ? "any" : std::to_string(line.day), line.meal ? std::string(meal_name(*line.meal)) : "any",
          line.role ? std::string(role_name(*line.role)) : "", line.food.str(), line.ml > 0 ? "" : std::to_string(line.units),
          line.ml > 0 ? std::to_string(line.ml) : "", line.priority == 0 ? "" : std::to_string(line.priority)};
}

std::string sheet_template(SheetKind sheet) { return header_of(sheet); }

Result<std::string> export_sheet(const Household& household, SheetKind sheet) {
  std::string rows = header_of(sheet);
  switch (sheet) {
    case SheetKind::kFoods:
      for (const Food& each : household.foods) rows += line_of(sheet, cells_of(each));
      break;
    case SheetKind::kPeople:
      for (const Person& each : household.people) rows += line_of(sheet, cells_of(each));
      break;
    case SheetKind::kMenu:
      for (const MenuLine& each : household.menu) rows += line_of(sheet, cells_of(each));
      break;
    case SheetKind::kLots: {
      const auto ledger = replay(household);
      if (!ledger) return fail(ledger.error());
      const std::vector<LotFacts> all = all_lot_facts(household);
      for (const auto& [at, amount] : ledger->stock()) {
        const auto facts = std::lower_bound(all.begin(), all.end(), at.lot, [](const LotFacts& each, LotId id) { return each.id < id; });
        rows += lot_line(household, *facts, at, amount);
      }
      break;
    }
  }
  return csv_file(rows);
}

std::string_view row_did_name(RowDid did) {
  return did == RowDid::kAdded ? "added" : did == RowDid::kChanged ? "changed" : "counted";
}

}  // namespace larderloop
