#include "cli/values.h"

#include "larderloop/core/validate.h"

#include <algorithm>
#include <charconv>
#include <optional>

namespace larderloop::cli {
namespace {

constexpr std::int64_t kMaxCents = 100'000'000;
constexpr std::int64_t kMaxGrams = 1'000'000;
constexpr std::int64_t kMaxMillilitres = 1'000'000;
constexpr std::int64_t kMaxKilocalories = 1'000'000;
constexpr int kMaxDaysAway = 40'000;

Error unreadable(const std::string& what, const std::string& text, std::string hint) {
  return make_error(ErrorKind::kBadData, "cannot read " + what + " '" + text + "'",
                    std::move(hint));
}

std::optional<std::int64_t> digits(std::string_view text) {
  if (text.empty() || text.size() > 12) return std::nullopt;
  std::int64_t value = 0;
  for (const char each : text) {
    if (each < '0' || each > '9') return std::nullopt;
    value = value * 10 + (each - '0');
  }
  return value;
}

// A decimal number times `scale` (a power of ten), exactly: no sign, no exponent, at most as many
// decimals as the scale has.
std::optional<std::int64_t> scaled(std::string_view text, std::int64_t scale) {
  const std::size_t point = text.find('.');
  const auto whole = digits(text.substr(0, point));
  if (!whole) return std::nullopt;
  if (point == std::string_view::npos) return *whole * scale;
  const std::string_view decimals = text.substr(point + 1);
  std::int64_t part = 0;
  std::int64_t place = scale;
  if (decimals.empty()) return std::nullopt;
  for (const char each : decimals) {
    if (each < '0' || each > '9' || (place == 1 && each != '0')) return std::nullopt;
    if (place == 1) continue;
    place /= 10;
    part += (each - '0') * place;
  }
  return *whole * scale + part;
}

struct UnitOf {
  std::string_view suffix;
  std::int64_t scale;
};

Result<std::int64_t> read_quantity(const std::string& what, const std::string& text,
                                   const std::vector<UnitOf>& units, std::int64_t most,
                                   const std::string& hint) {
  for (const UnitOf& unit : units) {
    if (text.size() <= unit.suffix.size() ||
        text.substr(text.size() - unit.suffix.size()) != unit.suffix)
      continue;
    std::string_view number(text.data(), text.size() - unit.suffix.size());
    while (!number.empty() && number.back() == ' ') number.remove_suffix(1);
    const auto value = scaled(number, unit.scale);
    if (!value) continue;
    if (*value < 1 || *value > most)
      return fail(unreadable(
          what, text,
          "from 1 to " + std::to_string(most) + " " + std::string(units.front().suffix)));
    return *value;
  }
  return fail(unreadable(what, text, hint));
}

}  // namespace

Result<Day> read_day(const std::string& what, const std::string& text, Day today) {
  if (text == "today") return today;
  if (text == "yesterday") return today - Days(1);
  if (text == "tomorrow") return today + Days(1);
  if (text.size() >= 3 && (text.front() == '+' || text.front() == '-') &&
      (text.back() == 'd' || text.back() == 'w')) {
    const auto number = digits(std::string_view(text).substr(1, text.size() - 2));
    const std::int64_t days = number ? *number * (text.back() == 'w' ? 7 : 1) : kMaxDaysAway + 1;
    if (days <= kMaxDaysAway)
      return today + Days(static_cast<int>(text.front() == '-' ? -days : days));
  }
  if (const auto day = parse_iso_day(text)) return *day;
  return fail(unreadable(
      what, text, "write a real day as 2027-03-15, or today, yesterday, tomorrow, +3d, -2w"));
}

Result<std::int64_t> read_count(const std::string& what, const std::string& text,
                                std::int64_t least, std::int64_t most) {
  const auto value = digits(text);
  if (!value || *value < least || *value > most) {
    return fail(
        unreadable(what, text,
                   "a whole number from " + std::to_string(least) + " to " + std::to_string(most)));
  }
  return *value;
}

Result<std::int64_t> read_money(const std::string& what, const std::string& text) {
  const auto cents = scaled(text, 100);
  if (!cents || *cents > kMaxCents) {
    return fail(unreadable(what, text, "write an amount of money with a point, for example 4.50"));
  }
  return *cents;
}

Result<HalfServings> read_servings(const std::string& what, const std::string& text) {
  if (text == "half") return HalfServings(1);
  const auto tenths = scaled(text, 10);
  if (!tenths || *tenths % 5 != 0 || *tenths < 5 || *tenths > 10 * kMaxServingsPerUnit) {
    return fail(unreadable(what, text, "servings in halves, for example 0.5, 1 or 1.5"));
  }
  return HalfServings(*tenths / 5);
}

Result<HalfServings> read_share(const std::string& what, const std::string& text) {
  if (text == "0") return HalfServings(0);
  return read_servings(what, text);
}

Result<std::int64_t> read_mass(const std::string& what, const std::string& text) {
  return read_quantity(what, text, {{"g", 1}, {"kg", 1000}}, kMaxGrams,
                       "write the unit, for example 500g or 1.5kg");
}

Result<std::int64_t> read_volume(const std::string& what, const std::string& text) {
  return read_quantity(what, text, {{"ml", 1}, {"l", 1000}}, kMaxMillilitres,
                       "write the unit, for example 330ml or 1.5l");
}

Result<std::int64_t> read_energy(const std::string& what, const std::string& text) {
  return read_quantity(what, text, {{"kcal", 1}, {"", 1}}, kMaxKilocalories,
                       "write kilocalories, for example 250kcal (1 kcal is 4.184 kJ)");
}

Result<Pack> read_pack(const std::string& what, const std::string& text) {
  const std::size_t second = text.rfind(':');
  const std::size_t first =
      second == std::string::npos || second == 0 ? std::string::npos : text.rfind(':', second - 1);
  if (first == std::string::npos || first == 0) {
    return fail(
        unreadable(what, text, "write shop, units and price, for example 'Corner shop:6:8.40'"));
  }
  auto units =
      read_count(what + " units", text.substr(first + 1, second - first - 1), 1, kMaxUnits);
  if (!units) return fail(units.error());
  auto price = read_money(what + " price", text.substr(second + 1));
  if (!price) return fail(price.error());
  return Pack{text.substr(0, first), *units, *price};
}

std::string underscored(std::string_view text) {
  std::string all(text);
  std::replace(all.begin(), all.end(), '-', '_');
  return all;
}

std::string dashed(std::string_view text) {
  std::string all(text);
  std::replace(all.begin(), all.end(), '_', '-');
  return all;
}

Error unknown_word(const std::string& what, const std::string& text,
                   const std::vector<std::string>& accepted) {
  const std::string near = nearest(dashed(text), accepted);
  std::string hint;
  if (!near.empty()) {
    hint = "did you mean '" + near + "'?";
  } else {
    for (const std::string& each : accepted) hint += (hint.empty() ? "one of " : ", ") + each;
  }
  return make_error(ErrorKind::kBadData, "cannot read " + what + " '" + text + "'", hint);
}

std::string joined_words(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) all += (all.empty() ? "" : " ") + word;
  return all;
}

}  // namespace larderloop::cli
