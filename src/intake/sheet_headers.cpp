// Which header means which column.
#include "larderloop/core/validate.h"
#include "larderloop/intake/sheet_columns.h"

#include <algorithm>
#include <optional>

namespace larderloop {
namespace {

struct Alias {
  std::string_view words;
  Col col;
  HeaderHint hint{};
};

constexpr HeaderHint date_of(MarkKind kind) { return {{}, kind}; }
constexpr HeaderHint in(std::string_view unit) { return {unit, MarkKind::kNone}; }

// Other words for a column; the first that the sheet has counts.
constexpr Alias kAliases[] = {
    {"food", Col::kFood}, {"product", Col::kFood}, {"item", Col::kFood}, {"article", Col::kFood}, {"what", Col::kFood}, {"name", Col::kFood},
    {"food name", Col::kFood}, {"product name", Col::kFood}, {"description", Col::kFood}, {"gtin", Col::kFood}, {"barcode", Col::kFood},
    {"bar code", Col::kFood}, {"ean", Col::kFood}, {"artikel", Col::kFood}, {"lebensmittel", Col::kFood},
    {"food", Col::kName}, {"product", Col::kName}, {"item", Col::kName}, {"article", Col::kName}, {"person", Col::kName}, {"who", Col::kName},
    {"first name", Col::kName}, {"food name", Col::kName}, {"product name", Col::kName}, {"description", Col::kName}, {"nom", Col::kName},
    {"id", Col::kKey}, {"food key", Col::kKey}, {"person key", Col::kKey}, {"short name", Col::kKey},
    {"ean", Col::kGtin}, {"upc", Col::kGtin}, {"barcode", Col::kGtin}, {"bar code", Col::kGtin}, {"ean 13", Col::kGtin}, {"gtin 13", Col::kGtin},
    {"trade item number", Col::kGtin}, {"type", Col::kKind}, {"food kind", Col::kKind}, {"animal", Col::kSpecies},
    {"package", Col::kUnit}, {"packaging", Col::kUnit}, {"container", Col::kUnit}, {"portions", Col::kServings}, {"servings per unit", Col::kServings},
    {"weight", Col::kMass, in("?")}, {"mass", Col::kMass, in("?")}, {"net weight", Col::kMass, in("?")}, {"gewicht", Col::kMass, in("?")},
    {"mass g", Col::kMass, in("g")}, {"weight g", Col::kMass, in("g")}, {"weight in g", Col::kMass, in("g")}, {"grams", Col::kMass, in("g")},
    {"mass kg", Col::kMass, in("kg")}, {"weight kg", Col::kMass, in("kg")}, {"weight in kg", Col::kMass, in("kg")},
    {"volume", Col::kVolume, in("?")}, {"volume ml", Col::kVolume, in("ml")}, {"volume l", Col::kVolume, in("l")}, {"litres", Col::kVolume, in("l")},
    {"liters", Col::kVolume, in("l")}, {"ml", Col::kVolume, in("ml")}, {"water ml", Col::kVolume, in("ml")}, {"water l", Col::kVolume, in("l")},
    {"energy", Col::kEnergy}, {"kcal", Col::kEnergy}, {"calories", Col::kEnergy}, {"sodium", Col::kSodium},
    {"allergens", Col::kContains}, {"contains allergens", Col::kContains}, {"traces", Col::kMayContain}, {"may contain traces", Col::kMayContain},
    {"may contain traces of", Col::kMayContain}, {"suitable for", Col::kSuits}, {"diet", Col::kSuits}, {"diets", Col::kSuits},
    {"label read by", Col::kReadBy}, {"read by", Col::kReadBy}, {"label read on", Col::kReadOn}, {"read on", Col::kReadOn},
    {"needs can opener", Col::kNeedsOpener}, {"meal", Col::kMeals}, {"role", Col::kRoles}, {"price", Col::kPacks}, {"keeps months", Col::kKeepsFrom},
    {"par", Col::kParLevel}, {"minimum", Col::kParLevel}, {"minimum stock", Col::kParLevel},
    {"notes", Col::kNote}, {"remark", Col::kNote}, {"remarks", Col::kNote}, {"comment", Col::kNote}, {"comments", Col::kNote},
    {"lot number in the book", Col::kLot},
    {"where", Col::kPlace}, {"location", Col::kPlace}, {"stored in", Col::kPlace}, {"storage", Col::kPlace}, {"storage place", Col::kPlace},
    {"shelf", Col::kPlace}, {"bag", Col::kPlace}, {"box", Col::kPlace}, {"ort", Col::kPlace}, {"lagerort", Col::kPlace},
    {"qty", Col::kUnits}, {"quantity", Col::kUnits}, {"count", Col::kUnits}, {"pieces", Col::kUnits}, {"pcs", Col::kUnits}, {"how many", Col::kUnits},
    {"stock", Col::kUnits}, {"on hand", Col::kUnits}, {"amount", Col::kUnits}, {"packages", Col::kUnits}, {"menge", Col::kUnits}, {"anzahl", Col::kUnits},
    {"opened", Col::kOpenedOn}, {"open since", Col::kOpenedOn}, {"servings left", Col::kServingsLeft},
    {"date mark", Col::kDate}, {"printed date", Col::kDate}, {"date as printed", Col::kDate},
    {"best before", Col::kDate, date_of(MarkKind::kBestBefore)}, {"best before date", Col::kDate, date_of(MarkKind::kBestBefore)},
    {"best before end", Col::kDate, date_of(MarkKind::kBestBefore)}, {"best by", Col::kDate, date_of(MarkKind::kBestBefore)},
    {"bb", Col::kDate, date_of(MarkKind::kBestBefore)}, {"bbd", Col::kDate, date_of(MarkKind::kBestBefore)}, {"bbe", Col::kDate, date_of(MarkKind::kBestBefore)},
    {"mhd", Col::kDate, date_of(MarkKind::kBestBefore)}, {"tht", Col::kDate, date_of(MarkKind::kBestBefore)},
    {"use by", Col::kDate, date_of(MarkKind::kUseBy)}, {"use by date", Col::kDate, date_of(MarkKind::kUseBy)},
    {"expiry", Col::kDate, date_of(MarkKind::kUseBy)}, {"expiry date", Col::kDate, date_of(MarkKind::kUseBy)},
    {"expiration", Col::kDate, date_of(MarkKind::kUseBy)}, {"expiration date", Col::kDate, date_of(MarkKind::kUseBy)},
    {"expires", Col::kDate, date_of(MarkKind::kUseBy)}, {"exp", Col::kDate, date_of(MarkKind::kUseBy)},
    {"sell by", Col::kDate, date_of(MarkKind::kSellBy)}, {"packed on", Col::kDate, date_of(MarkKind::kPackedOn)},
    {"produced on", Col::kDate, date_of(MarkKind::kProducedOn)},
    {"kind of date", Col::kDateKind}, {"batch", Col::kLotCode}, {"batch code", Col::kLotCode}, {"batch number", Col::kLotCode}, {"code", Col::kLotCode},
    {"lot no", Col::kLotCode}, {"lot number", Col::kLotCode},
    {"bought", Col::kReceived}, {"bought on", Col::kReceived}, {"purchased", Col::kReceived}, {"purchase date", Col::kReceived},
    {"date received", Col::kReceived}, {"date bought", Col::kReceived}, {"received on", Col::kReceived}, {"gekauft", Col::kReceived},
    {"price", Col::kPaid}, {"price paid", Col::kPaid}, {"cost", Col::kPaid}, {"preis", Col::kPaid}, {"status", Col::kState},
    {"birthday", Col::kBorn}, {"date of birth", Col::kBorn}, {"birth date", Col::kBorn}, {"dob", Col::kBorn},
    {"allergies", Col::kAvoid}, {"allergy", Col::kAvoid}, {"allergens", Col::kAvoid}, {"must not have", Col::kAvoid}, {"intolerances", Col::kAvoid},
    {"diet", Col::kDiets}, {"height", Col::kHeight}, {"body mass", Col::kBodyMass, in("?")}, {"body weight", Col::kBodyMass, in("?")},
    {"weight", Col::kBodyMass, in("?")}, {"weight kg", Col::kBodyMass, in("kg")}, {"body mass g", Col::kBodyMass, in("g")},
    {"people", Col::kFor}, {"person", Col::kFor}, {"who", Col::kFor}, {"for whom", Col::kFor}, {"kit day", Col::kDay}, {"menu line", Col::kLine}};

// Small letters and digits with single blanks between.
std::string plain_header(std::string_view header) {
  std::string plain;
  for (char each : header) {
    if (each >= 'A' && each <= 'Z') each = static_cast<char>(each - 'A' + 'a');
    const bool word = (each >= 'a' && each <= 'z') || (each >= '0' && each <= '9') || static_cast<unsigned char>(each) >= 0x80;
    if (word) plain += each;
    else if (!plain.empty() && plain.back() != ' ') plain += ' ';
  }
  if (!plain.empty() && plain.back() == ' ') plain.pop_back();
  return plain;
}

std::optional<FileColumn> meaning_of(SheetKind sheet, const std::string& header) {
  const std::string plain = plain_header(header);
  for (const ColumnInfo& each : sheet_columns(sheet)) {
    if (plain_header(each.name) == plain) return FileColumn{header, each.col, {}};
  }
  for (const Alias& each : kAliases) {
    if (each.words == plain && !column_name(sheet, each.col).empty()) return FileColumn{header, each.col, each.hint};
  }
  return std::nullopt;
}

std::vector<std::string> names_of(SheetKind sheet) {
  std::vector<std::string> names;
  for (const ColumnInfo& each : sheet_columns(sheet)) names.emplace_back(each.name);
  return names;
}

const std::string* find_header(const std::map<std::string, std::string>& columns, const std::string& header) {
  const auto exact = columns.find(header);
  if (exact != columns.end()) return &exact->second;
  for (const auto& [name, column] : columns) {
    if (plain_header(name) == plain_header(header)) return &column;
  }
  return nullptr;
}

// As somebody said; nothing when nobody did.
std::optional<FileColumn> said_column(SheetKind sheet, const std::string& header, const HeaderHow& how, std::size_t line, std::vector<Problem>& problems) {
  const std::string* name = find_header(how.said, header);
  if (name == nullptr) name = find_header(how.kept, header);
  if (name == nullptr) return std::nullopt;
  if (name->empty()) return FileColumn{header, Col::kCount, {}};
  for (const ColumnInfo& each : sheet_columns(sheet)) {
    if (plain_header(each.name) != plain_header(*name)) continue;
    // The header goes on telling its unit and its kind of date.
    const auto own = meaning_of(sheet, header);
    return FileColumn{header, each.col, own && own->col == each.col ? own->hint : HeaderHint{}};
  }
  const std::string near = nearest(*name, names_of(sheet));
  problems.push_back({"line " + std::to_string(line), *name, "there is no column '" + *name + "' for '" + header + "'",
                      near.empty() ? "see the columns: larderloop template " + std::string(sheet_kind_name(sheet)) + " --explain" : "did you mean '" + near + "'?"});
  return FileColumn{header, Col::kCount, {}};
}

}  // namespace

Result<FileColumns> match_columns(SheetKind sheet, const std::vector<std::string>& headers, std::size_t line, const HeaderHow& how) {
  FileColumns all;
  all.at.fill(-1);
  std::vector<Problem> problems;
  const std::string where = "line " + std::to_string(line);
  for (const std::string& header : headers) {
    auto column = said_column(sheet, header, how, line, problems);
    if (!column && plain_header(header).empty()) column = FileColumn{header, Col::kCount, {}};
    if (!column) column = meaning_of(sheet, header);
    if (!column) {
      column = FileColumn{header, Col::kCount, {}};
      if (!how.pass_over) {
        const std::string near = nearest(plain_header(header), names_of(sheet));
        problems.push_back({where, header, "the column '" + header + "' means nothing here",
                            "say what it is: --column '" + header + "=" + (near.empty() ? "COLUMN" : near) + "', or pass over it: --column '" + header + "='"});
      }
    }
    if (column->col != Col::kCount) {
      int& at = all.at[static_cast<std::size_t>(column->col)];
      if (at >= 0) {
        problems.push_back({where, header, "'" + all.columns[static_cast<std::size_t>(at)].header + "' and '" + header + "' both mean " + std::string(column_name(sheet, column->col)),
                            "pass over one: --column '" + header + "='"});
      } else {
        at = static_cast<int>(all.columns.size());
      }
    }
    all.columns.push_back(std::move(*column));
  }
  for (const auto& [header, name] : how.said) {
    const bool there = std::any_of(headers.begin(), headers.end(), [&, wanted = plain_header(header)](const std::string& each) { return plain_header(each) == wanted; });
    if (!there) problems.push_back({where, header, "the file has no column '" + header + "'", "write it as it stands in the first row"});
  }
  if (problems.empty()) return all;
  Error error = make_error(ErrorKind::kBadData, "the first row does not say what all columns are; nothing was written",
                           "all columns of our own: larderloop template " + std::string(sheet_kind_name(sheet)) + " --explain; to pass over whatever means nothing: --pass-over");
  error.problems = std::move(problems);
  return fail(std::move(error));
}

std::map<std::string, std::string> columns_to_keep(SheetKind sheet, const FileColumns& columns) {
  std::map<std::string, std::string> keep;
  for (const FileColumn& each : columns.columns) {
    if (!plain_header(each.header).empty()) keep[each.header] = std::string(column_name(sheet, each.col));
  }
  return keep;
}

}  // namespace larderloop
