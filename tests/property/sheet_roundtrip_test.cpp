// Any household, written as spreadsheets and read into its own book, is nothing new; read into an empty book with the same places and settings it
// is the same foods, people, menu and stock again.
#include "larderloop/app/sheets.h"
#include "larderloop/core/changes.h"
#include "larderloop/core/lot.h"
#include "larderloop/core/stock.h"
#include "larderloop/core/validate.h"
#include "larderloop/intake/csv.h"
#include "support/household_gen.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <map>
#include <tuple>

namespace larderloop {
namespace {

Asked generated_day() {
  const Day today = *parse_iso_day("2026-11-25");
  return {today, midnight(today)};
}

std::string first_problem(const Error& error) {
  if (error.problems.empty()) return error.what;
  const Problem& problem = error.problems.front();
  return problem.where + " [" + problem.value + "] " + problem.what;
}

Outcome<SheetReport> read_into(const Household& household, SheetKind sheet, std::string bytes) {
  SheetRequest request;
  request.sheet = sheet;
  request.bytes = std::move(bytes);
  auto outcome = import_sheet(household, request, generated_day());
  if (!outcome) RC_FAIL(std::string(sheet_kind_name(sheet)) + ": " + first_problem(outcome.error()));
  return std::move(*outcome);
}

std::string written(const Household& household, SheetKind sheet) {
  const auto text = export_sheet(household, sheet);
  if (!text) RC_FAIL(first_problem(text.error()));
  return *text;
}

Household generated() {
  const auto seed = *rc::gen::arbitrary<std::uint64_t>();
  return generate_household(seed, *rc::gen::inRange(0, 25));
}

// What lies where, told by everything but the number of its lot, which a book gives anew.
struct Lying {
  Lot lot;
  StockKey at;
  HalfServings amount;
};
std::vector<Lying> lying(const Household& household) {
  std::vector<Lying> all;
  const auto ledger = replay(household);
  if (!ledger) RC_FAIL(first_problem(ledger.error()));
  const std::vector<LotFacts> facts = all_lot_facts(household);
  for (const auto& [at, amount] : ledger->stock()) {
    const auto known = std::lower_bound(facts.begin(), facts.end(), at.lot, [](const LotFacts& each, LotId id) { return each.id < id; });
    Lying each{*find_lot(household, at.lot), at, amount};
    each.lot.mark = known->mark;
    each.lot.label = known->label;
    each.lot.state = known->state;
    all.push_back(std::move(each));
  }
  return all;
}

RC_GTEST_PROP(SheetRoundtrip, ReadIntoItsOwnBookItIsNothingNew, ()) {
  const Household household = generated();
  for (const SheetKind sheet : kAllSheetKinds) {
    const Outcome<SheetReport> outcome = read_into(household, sheet, written(household, sheet));
    const SheetReport& report = outcome.report;
    if (!report.news.empty()) RC_FAIL(std::string(sheet_kind_name(sheet)) + ": " + report.news.front().words);
    RC_ASSERT(report.known == report.rows);
    RC_ASSERT(outcome.changes.empty());
    RC_ASSERT(report.first.empty());
  }
}

RC_GTEST_PROP(SheetRoundtrip, ReadIntoAnEmptyBookItIsTheSameAgain, ()) {
  const Household household = generated();
  Household fresh;
  fresh.book_id = household.book_id;
  fresh.settings = household.settings;
  fresh.own_allergens = household.own_allergens;
  fresh.places = household.places;
  const auto take = [&](SheetKind sheet) {
    const Outcome<SheetReport> outcome = read_into(fresh, sheet, written(household, sheet));
    RC_ASSERT(outcome.report.added == outcome.report.rows);
    apply_changes(fresh, outcome.changes);
    const auto findings = validate(fresh);
    if (!findings.empty()) RC_FAIL(findings.front().where + " " + findings.front().what);
  };
  take(SheetKind::kFoods);
  RC_ASSERT(fresh.foods == household.foods);
  // Into pantries with the names of all places: generated lots lie also in bags where they must not be, and nothing new is put there.
  for (Place& each : fresh.places) {
    each.kind = PlaceKind::kPantry;
    each.parent = {};
  }
  take(SheetKind::kLots);
  const auto before = lying(household);
  const auto after = lying(fresh);
  RC_ASSERT(before.size() == after.size());
  std::map<LotId, LotId> renamed;
  for (std::size_t at = 0; at < before.size(); ++at) {
    RC_ASSERT(renamed.emplace(before[at].at.lot, after[at].at.lot).first->second == after[at].at.lot);
    RC_ASSERT(std::tuple(after[at].at.place, after[at].at.opened_on, after[at].amount) == std::tuple(before[at].at.place, before[at].at.opened_on, before[at].amount));
    Lot lot = after[at].lot;
    lot.id = before[at].lot.id;
    RC_ASSERT(lot.mark.text == before[at].lot.mark.text);
    RC_ASSERT(lot.lot_code == before[at].lot.lot_code);
    RC_ASSERT(lot.note == before[at].lot.note);
    RC_ASSERT(lot.label == before[at].lot.label);
    RC_ASSERT(lot == before[at].lot);
  }
  fresh.places = household.places;
  take(SheetKind::kPeople);
  RC_ASSERT(fresh.people == household.people);
  take(SheetKind::kMenu);
  RC_ASSERT(fresh.menu.size() == household.menu.size());
  for (std::size_t at = 0; at < fresh.menu.size(); ++at) {
    MenuLine line = fresh.menu[at];
    line.id = household.menu[at].id;
    RC_ASSERT(line == household.menu[at]);
  }
}

// The first property would be worth nothing if another amount, date or label went by unseen.
RC_GTEST_PROP(SheetRoundtrip, AChangedCellIsSeen, ()) {
  const Household household = generated();
  for (const auto& [sheet, column, value] : {std::tuple(SheetKind::kFoods, "note", "another note"), std::tuple(SheetKind::kPeople, "note", "another note"),
                                             std::tuple(SheetKind::kMenu, "priority", "97"), std::tuple(SheetKind::kLots, "units", "7777")}) {
    const auto csv = open_csv(written(household, sheet), ',');
    RC_ASSERT(csv.has_value());
    CsvReader reader(*csv);
    CsvRow row;
    RC_ASSERT(reader.next(row));
    const auto found = std::find(row.cells.begin(), row.cells.end(), column);
    RC_ASSERT(found != row.cells.end());
    const auto at = static_cast<std::size_t>(found - row.cells.begin());
    std::string text = csv_line({row.cells.begin(), row.cells.end()});
    bool changed = false;
    while (reader.next(row)) {
      std::vector<std::string> cells(row.cells.begin(), row.cells.end());
      if (!changed && !(sheet == SheetKind::kLots && cells[at].empty())) {
        cells[at] = value;
        changed = true;
      }
      for (std::string& each : cells) each = guarded(std::move(each));
      text += csv_line(cells);
    }
    if (!changed) continue;
    SheetRequest request;
    request.sheet = sheet;
    request.bytes = text;
    const auto outcome = import_sheet(household, request, generated_day());
    RC_ASSERT(!outcome || outcome->report.known + 1 == outcome->report.rows);
  }
}

}  // namespace
}  // namespace larderloop
