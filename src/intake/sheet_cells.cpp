#include "larderloop/intake/sheet_cells.h"

#include "larderloop/core/lowered.h"
#include "larderloop/core/validate.h"

#include <algorithm>
#include <array>

namespace larderloop {
namespace {

constexpr std::size_t kMostDigits = 12;

bool is_digit(char each) { return each >= '0' && each <= '9'; }
bool all_digits(std::string_view text) { return !text.empty() && std::all_of(text.begin(), text.end(), is_digit); }

std::int64_t number_of(std::string_view digits) {
  std::int64_t value = 0;
  for (const char each : digits) value = value * 10 + (each - '0');
  return value;
}

std::string quoted(std::string_view cell) { return "'" + std::string(cell) + "'"; }

CellFault no_number(std::string_view cell) { return {"cannot read " + quoted(cell) + " as a number", "write digits alone, or with one decimal sign, as 6 or 0.5"}; }

// Is this sign between digits surely the decimal one? `three`: three digits stand behind it, so that it might part thousands.
bool is_decimal_sign(char sign, char delimiter, bool three, std::string_view before) {
  if (!three || before == "0") return true;
  return sign == '.' ? delimiter == ',' : delimiter == ';';
}

}  // namespace

std::string_view trimmed_cell(std::string_view cell) {
  constexpr std::string_view kBlanks = " \t\r\n";
  const std::size_t begin = cell.find_first_not_of(kBlanks);
  if (begin == std::string_view::npos) return {};
  return cell.substr(begin, cell.find_last_not_of(kBlanks) - begin + 1);
}

std::string lowered_cell(std::string_view cell) { return lowered(cell); }

Cell<std::int64_t> cell_decimal(std::string_view cell, char delimiter, std::int64_t scale) {
  const std::size_t sign = cell.find_first_of(".,");
  const std::string_view whole = cell.substr(0, sign);
  if (!all_digits(whole) || whole.size() > kMostDigits) return tl::unexpected<CellFault>(no_number(cell));
  std::int64_t value = number_of(whole) * scale;
  if (sign == std::string_view::npos) return value;
  const std::string_view decimals = cell.substr(sign + 1);
  if (!all_digits(decimals)) return tl::unexpected<CellFault>(no_number(cell));
  if (!is_decimal_sign(cell[sign], delimiter, decimals.size() == 3, whole)) {
    return bad_cell(quoted(cell) + " could be " + std::string(whole) + std::string(decimals) + " or " + std::string(whole) + "." + std::string(decimals),
                    "write thousands without a sign, and decimals with another number of digits");
  }
  std::int64_t place = scale;
  for (const char each : decimals) {
    if (place == 1 && each != '0') return bad_cell(quoted(cell) + " is finer than can be kept", scale == 1 ? "write a whole number" : "write fewer digits behind the decimal sign");
    if (place == 1) continue;
    place /= 10;
    value += (each - '0') * place;
  }
  return value;
}

Cell<std::int64_t> cell_whole(std::string_view cell, char delimiter, std::int64_t least, std::int64_t most) {
  auto value = cell_decimal(cell, delimiter, 1);
  if (!value) return value;
  if (*value < least || *value > most) return bad_cell(quoted(cell) + " is out of range", "write a whole number from " + std::to_string(least) + " to " + std::to_string(most));
  return value;
}

Cell<std::int64_t> cell_amount(std::string_view cell, char delimiter, std::string_view own, const HeaderHint& hint) {
  const std::size_t end = cell.find_last_of("0123456789");
  if (end == std::string_view::npos) return tl::unexpected<CellFault>(no_number(cell));
  const std::string written = lowered_cell(trimmed_cell(cell.substr(end + 1)));
  const std::string_view unit = !written.empty() ? std::string_view(written) : !hint.unit.empty() ? hint.unit : own;
  const bool mass = own.back() == 'g';
  const std::array<std::string_view, 2> units = mass ? std::array<std::string_view, 2>{"g", "kg"} : std::array<std::string_view, 2>{"ml", "l"};
  if (unit == "?") return bad_cell("the unit of " + quoted(cell) + " is missing", mass ? "write it behind the number: 250 g or 0.25 kg" : "write it behind the number: 330 ml or 1.5 l");
  if (unit != units[0] && unit != units[1]) return bad_cell("cannot read the unit of " + quoted(cell), "write " + std::string(units[0]) + " or " + std::string(units[1]));
  return cell_decimal(cell.substr(0, end + 1), delimiter, unit == units[0] ? 1 : 1000);
}

Cell<std::int64_t> cell_money(std::string_view cell, char delimiter, std::string_view currency) {
  constexpr std::string_view kDigits = "0123456789";
  const std::size_t begin = cell.find_first_of(kDigits);
  const std::size_t end = cell.find_last_of(kDigits);
  if (begin == std::string_view::npos) return tl::unexpected<CellFault>(no_number(cell));
  for (const std::string_view around : {trimmed_cell(cell.substr(0, begin)), trimmed_cell(cell.substr(end + 1))}) {
    const bool known = around.empty() || around == currency || around == "$" || around == "\xE2\x82\xAC" || around == "\xC2\xA3";
    if (!known) return bad_cell("cannot read " + quoted(cell) + " as money", "write an amount as 8.40; the currency is that of the household, " + std::string(currency));
  }
  return cell_decimal(cell.substr(begin, end - begin + 1), delimiter, 100);
}

Cell<HalfServings> cell_servings(std::string_view cell, char delimiter) {
  const auto tenths = cell_decimal(cell, delimiter, 10);
  if (!tenths) return tl::unexpected<CellFault>(tenths.error());
  if (*tenths % 5 != 0 || *tenths > 10 * kMaxServingsPerUnit * kMaxUnits) return bad_cell("cannot read " + quoted(cell) + " as servings", "write servings in halves, as 0.5, 1 or 1.5");
  return HalfServings(*tenths / 5);
}

Cell<bool> cell_yes(std::string_view cell) {
  constexpr std::array<std::string_view, 7> kYes = {"yes", "y", "true", "1", "x", "ja", "oui"};
  constexpr std::array<std::string_view, 6> kNo = {"no", "n", "false", "0", "nein", "non"};
  const std::string word = lowered_cell(cell);
  if (std::find(kYes.begin(), kYes.end(), word) != kYes.end()) return true;
  if (std::find(kNo.begin(), kNo.end(), word) != kNo.end()) return false;
  return bad_cell("cannot read " + quoted(cell) + " as yes or no", "write yes or no");
}

Cell<Day> cell_day(std::string_view cell, DateOrder order) {
  if (const auto day = parse_iso_day(cell)) return *day;
  std::array<std::string_view, 3> parts;
  std::size_t count = 0;
  std::string_view rest = cell;
  for (bool more = true; more && count < 3; ++count) {
    const std::size_t end = count == 2 ? std::string_view::npos : rest.find_first_of("./-");
    parts.at(count) = rest.substr(0, end);
    more = end != std::string_view::npos;
    if (more) rest.remove_prefix(end + 1);
  }
  const CellFault fault{"cannot read " + quoted(cell) + " as a day", "write year, month and day, as 2026-10-03"};
  for (const std::string_view part : parts) {
    if (count != 3 || !all_digits(part) || part.size() > 4) return tl::unexpected<CellFault>(fault);
  }
  const auto day_of_parts = [](std::string_view year, std::string_view month, std::string_view day) {
    return resolve_day(static_cast<int>(number_of(year)), static_cast<unsigned>(number_of(month)), static_cast<unsigned>(number_of(day)));
  };
  std::optional<Day> found;
  if (parts[0].size() == 4) {
    found = day_of_parts(parts[0], parts[1], parts[2]);
  } else if (parts[2].size() == 4) {
    const auto day_first = day_of_parts(parts[2], parts[1], parts[0]);
    const auto month_first = day_of_parts(parts[2], parts[0], parts[1]);
    if (order == DateOrder::kDmy) found = day_first;
    else if (order == DateOrder::kMdy) found = month_first;
    else if (day_first && month_first && day_first != month_first)
      return bad_cell(quoted(cell) + " could be " + plain_day(*day_first) + " or " + plain_day(*month_first),
                      "write " + iso_day(*day_first) + " or " + iso_day(*month_first) + "; or say once how such days are meant: larderloop settings set date-order dmy (or mdy)");
    else found = day_first ? day_first : month_first;
  }
  if (!found || year_of(*found) < 1900 || year_of(*found) > 2199) return tl::unexpected<CellFault>(fault);
  return *found;
}

Cell<std::string> cell_gtin(std::string_view cell) {
  std::string digits;
  for (const char each : cell) {
    if (is_digit(each)) digits += each;
    else if (each != ' ' && each != '-') {
      return bad_cell(quoted(cell) + " is no GTIN", cell.find_first_of("eE") == std::string_view::npos
                                                          ? "write the digits under the barcode"
                                                          : "the spreadsheet shortened the number: make the column text, and write the digits under the barcode");
    }
  }
  constexpr std::size_t kWhole = 14;
  constexpr std::size_t kFewest = 5;  // below that it is surely no number of a package
  if (digits.size() >= kFewest && digits.size() < kWhole) digits.insert(0, kWhole - digits.size(), '0');
  std::string whole = digits.size() == kWhole ? normal_gtin(digits) : std::string();
  if (whole.empty()) return bad_cell(quoted(cell) + " is no GTIN: the check digit is wrong, or there are too many digits or too few", "read the digits under the barcode again");
  return whole;
}

bool says_none(std::string_view cell) { return lowered_cell(cell) == "none"; }

std::vector<std::string> cell_list(std::string_view cell) {
  std::vector<std::string> words;
  if (says_none(cell)) return words;
  while (!cell.empty()) {
    const std::size_t end = cell.find_first_of(";,/\n");
    const std::string_view word = trimmed_cell(cell.substr(0, end));
    if (!word.empty()) words.emplace_back(word);
    cell.remove_prefix(end == std::string_view::npos ? cell.size() : end + 1);
  }
  return words;
}

Cell<std::vector<Pack>> cell_packs(std::string_view cell, char delimiter) {
  std::vector<Pack> packs;
  if (says_none(cell)) return packs;
  const auto pack_of = [&](std::string_view text) -> std::optional<Pack> {
    const std::size_t price = text.rfind(':');
    const std::size_t units = price == std::string_view::npos || price == 0 ? price : text.rfind(':', price - 1);
    if (price == std::string_view::npos || units == std::string_view::npos) return std::nullopt;
    const auto count = cell_whole(trimmed_cell(text.substr(units + 1, price - units - 1)), delimiter, 1, kMaxUnits);
    const auto cents = cell_decimal(trimmed_cell(text.substr(price + 1)), delimiter, 100);
    if (!count || !cents) return std::nullopt;
    return Pack{std::string(trimmed_cell(text.substr(0, units))), *count, *cents};
  };
  // The name of a shop may have a semicolon in it: a pack ends where its units and price stand.
  std::string_view rest = cell;
  std::size_t from = 0;
  while (!trimmed_cell(rest).empty()) {
    const std::size_t end = rest.find_first_of(";\n", from);
    const auto pack = pack_of(trimmed_cell(rest.substr(0, end)));
    if (!pack && end != std::string_view::npos) {
      from = end + 1;
      continue;
    }
    if (!pack) return bad_cell("cannot read " + quoted(trimmed_cell(rest)) + " as a pack", "write shop, units and price as Corner shop:6:8.40");
    packs.push_back(*pack);
    rest.remove_prefix(end == std::string_view::npos ? rest.size() : end + 1);
    from = 0;
  }
  return packs;
}

Cell<std::string> cell_allergen(std::string_view word, const std::vector<OwnAllergen>& own) {
  std::string wanted = lowered_cell(trimmed_cell(word));
  if (is_known_allergen(wanted)) return wanted;
  const auto is_own = [&](const OwnAllergen& each) { return each.key == wanted; };
  if (std::any_of(own.begin(), own.end(), is_own)) return wanted;
  std::vector<std::string> known;
  for (const std::string& key : known_allergens()) {
    if (allergen_words(key) == wanted) return key;
    known.push_back(key);
  }
  for (const OwnAllergen& each : own) known.push_back(each.key);
  const std::string near = nearest(wanted, known);
  return bad_cell("no allergen is called " + quoted(word), near.empty() ? "the known keys: larderloop help food add" : "did you mean '" + near + "'?");
}

CellFault unknown_cell_word(std::string_view cell, const std::vector<std::string>& accepted) {
  const std::string near = nearest(lowered_cell(cell), accepted);
  std::string words;
  for (const std::string& each : accepted) words += (words.empty() ? "" : ", ") + each;
  return {"cannot read " + quoted(cell), near.empty() ? "one of " + words : "did you mean '" + near + "'?"};
}

}  // namespace larderloop
