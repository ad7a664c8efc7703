#include "app/sheet_work.h"

#include <algorithm>
#include <cctype>

#include "larderloop/core/validate.h"

namespace larderloop {
namespace {

// "/foods/3/mass_g" -> "foods", 3, "mass_g"
struct Pointed {
  std::string list;
  std::size_t index = 0;
  std::string rest;
};
std::optional<Pointed> pointed(const std::string& pointer) {
  const std::size_t first = pointer.find('/', 1);
  if (pointer.empty() || first == std::string::npos) return std::nullopt;
  const std::size_t second = pointer.find('/', first + 1);
  const std::string digits = pointer.substr(first + 1, second == std::string::npos ? second : second - first - 1);
  if (digits.empty() || digits.size() > 9 || digits.find_first_not_of("0123456789") != std::string::npos) return std::nullopt;
  return Pointed{pointer.substr(1, first - 1), static_cast<std::size_t>(std::stoul(digits)), second == std::string::npos ? "" : pointer.substr(second + 1)};
}

// The column that a member of the household document is told in.
Col column_of_member(const std::string& member) {
  static const std::map<std::string, Col> known = {
      {"key", Col::kKey}, {"name", Col::kName}, {"species", Col::kSpecies}, {"gtin", Col::kGtin}, {"unit", Col::kUnit}, {"servings", Col::kServings},
      {"mass_g", Col::kMass}, {"volume_ml", Col::kVolume}, {"energy_kcal", Col::kEnergy}, {"sodium_mg", Col::kSodium}, {"label", Col::kContains},
      {"needs_water_ml", Col::kNeedsWater}, {"is_opener", Col::kIsOpener}, {"is_cutlery", Col::kIsCutlery}, {"roles", Col::kRoles}, {"packs", Col::kPacks},
      {"storage", Col::kKeepsFrom}, {"par_level", Col::kParLevel}, {"retired", Col::kRetired}, {"appetite", Col::kAppetite}, {"tolerance", Col::kTolerance},
      {"height_cm", Col::kHeight}, {"avoid", Col::kAvoid}, {"ratings", Col::kRatings}, {"place", Col::kPlace}, {"people", Col::kFor},
      {"everyone", Col::kFor}, {"food", Col::kFood}, {"day", Col::kDay}, {"meal", Col::kMeal}, {"units", Col::kUnits}, {"ml", Col::kVolume},
      {"priority", Col::kPriority}};
  const auto found = known.find(member.substr(0, member.find('/')));
  return found == known.end() ? Col::kCount : found->second;
}

}  // namespace

std::string settled_text(std::string_view text) {
  std::string all;
  for (const char each : trimmed_cell(text)) {
    if (each != '\r') all += each;
  }
  return all;
}

std::string_view SheetWork::cell(Col col) const {
  const int at = columns_.at[static_cast<std::size_t>(col)];
  if (at < 0 || static_cast<std::size_t>(at) >= row_->cells.size()) return {};
  return trimmed_cell(row_->cells[static_cast<std::size_t>(at)]);
}

std::string SheetWork::where(std::size_t line, Col col) const {
  std::string text = "line " + std::to_string(line);
  if (col == Col::kCount) return text;
  return text + ", " + (has(col) ? columns_.file_column(col).header : std::string(column_name(how.sheet, col)));
}

void SheetWork::fault_at(std::size_t line, Col col, std::string value, std::string what, std::string remedy) {
  problems.push_back({where(line, col), std::move(value), std::move(what), std::move(remedy)});
}

void SheetWork::news(std::size_t line, RowDid did, std::string words) {
  if (report.news.size() < kMostRowNews) report.news.push_back({line, did, std::move(words)});
}

void SheetWork::text(Col col, std::string& into) {
  if (!says(col)) return;
  if (settled_text(cell(col)) != settled_text(into)) into = std::string(cell(col));
}

void SheetWork::whole(Col col, std::int64_t least, std::int64_t most, std::int64_t& into) {
  if (!says(col)) return;
  if (const auto read = value(col, cell_whole(cell(col), delimiter_, least, most))) into = *read;
}

void SheetWork::whole(Col col, std::int64_t least, std::int64_t most, std::optional<std::int64_t>& into) {
  if (!says(col)) return;
  if (says_none(cell(col))) into.reset();
  else if (const auto read = value(col, cell_whole(cell(col), delimiter_, least, most))) into = *read;
}

void SheetWork::amount(Col col, std::string_view unit, std::int64_t& into) {
  if (!says(col)) return;
  if (const auto read = value(col, cell_amount(cell(col), delimiter_, unit, hint(col)))) into = *read;
}

void SheetWork::amount(Col col, std::string_view unit, std::optional<std::int64_t>& into) {
  if (!says(col)) return;
  if (says_none(cell(col))) into.reset();
  else if (const auto read = value(col, cell_amount(cell(col), delimiter_, unit, hint(col)))) into = *read;
}

void SheetWork::yes(Col col, bool& into) {
  if (!says(col)) return;
  if (const auto read = value(col, cell_yes(cell(col)))) into = *read;
}

void SheetWork::day(Col col, std::optional<Day>& into) {
  if (!says(col)) return;
  if (says_none(cell(col))) {
    into.reset();
    return;
  }
  const auto read = value(col, cell_day(cell(col), household.settings.date_order));
  if (!read) return;
  if (*read > when.today && into != *read) fault(col, "'" + iso_day(*read) + "' has not come yet", "write the day it was, or leave the cell empty");
  else into = *read;
}

std::set<std::string> SheetWork::allergens(Col col) {
  std::set<std::string> keys;
  for (const std::string& each : cell_list(cell(col))) {
    if (const auto key = value(col, cell_allergen(each, household.own_allergens))) keys.insert(*key);
  }
  return keys;
}

std::optional<Statement> SheetWork::label(const Statement* known) {
  const bool contains = says(Col::kContains);
  const bool may_contain = says(Col::kMayContain);
  if (!contains && !may_contain) {
    for (const Col each : {Col::kSuits, Col::kReadBy, Col::kReadOn}) {
      if (says(each)) {
        fault(each, "nothing is said of the allergens on the label", "write what it declares and what it warns of, or none in both; or leave this cell empty: not read");
        return std::nullopt;
      }
    }
    return std::nullopt;
  }
  if (!contains || !may_contain) {
    const Col missing = contains ? Col::kMayContain : Col::kContains;
    fault(missing, std::string("an empty cell is unknown: only one half of the label is told"), contains ? "write what the label warns of, or none" : "write what the label declares, or none");
    return std::nullopt;
  }
  const std::size_t before = problems.size();
  Statement label;
  for (const std::string& key : allergens(Col::kMayContain)) label.declared[key] = Declared::kMayContain;
  for (const std::string& key : allergens(Col::kContains)) label.declared[key] = Declared::kContains;
  words(Col::kSuits, kAllDiets, diet_name, label.suits);
  label.read_by = says(Col::kReadBy) ? std::string(cell(Col::kReadBy)) : how.read_by;
  if (label.read_by.empty()) fault(Col::kReadBy, "nobody is named who read the label", "write who read it, or for all rows: --read-by NAME");
  std::optional<Day> on;
  if (known != nullptr && says(Col::kReadOn)) on = known->read_on;
  day(Col::kReadOn, on);
  const bool same = known != nullptr && known->declared == label.declared && known->suits == label.suits && known->read_by == label.read_by;
  if (on) label.read_on = *on;
  else if (same) label.read_on = known->read_on;
  else if (!says(Col::kReadBy)) label.read_on = when.today;
  else if (problems.size() == before) fault(Col::kReadOn, "nothing says when the label was read", "write the day, as 2026-10-03");
  for (const auto& [diet, key] : contradictions(label)) {
    fault(Col::kSuits, "the label cannot support " + std::string(diet_name(diet)) + " and contain " + allergen_words(key), "read it again; leave out what is not on it");
  }
  if (problems.size() != before) return std::nullopt;
  return label;
}

std::string differences(SheetKind sheet, const std::vector<std::string>& before, const std::vector<std::string>& after) {
  std::string words;
  const auto& columns = sheet_columns(sheet);
  for (std::size_t index = 0; index < columns.size(); ++index) {
    if (before[index] == after[index]) continue;
    words += (words.empty() ? "" : ", ") + std::string(columns[index].name) + " '" + before[index] + "' becomes '" + after[index] + "'";
  }
  return words;
}

void find_inconsistencies(SheetWork& work, const CameFrom& from) {
  if (work.changes.empty()) return;
  Household after = work.household;
  apply_changes(after, work.changes);
  for (Problem& each : validate(after)) {
    const auto at = pointed(each.where);
    const std::size_t line = at && at->list == from.list && at->index < from.lines.size() ? from.lines[at->index] : 0;
    if (line != 0) {
      Col col = column_of_member(at->rest);
      if (column_name(work.how.sheet, col).empty()) col = Col::kCount;
      each.where = work.where(line, col);
    }
    work.problems.push_back(std::move(each));
  }
}

}  // namespace larderloop
