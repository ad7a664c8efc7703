// Elements of a scan put where they belong.
#include "intake/date_readings.h"
#include "intake/gs1_elements.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <map>

namespace larderloop::intake {
namespace {

std::optional<MarkKind> kind_of(std::string_view ai) {
  if (ai == "11") return MarkKind::kProducedOn;
  if (ai == "13") return MarkKind::kPackedOn;
  if (ai == "15") return MarkKind::kBestBefore;
  if (ai == "16") return MarkKind::kSellBy;
  if (ai == "17" || ai == "7003") return MarkKind::kUseBy;
  return std::nullopt;
}

int two_digits(std::string_view text, std::size_t at) {
  return (text[at] - '0') * 10 + (text[at + 1] - '0');
}

// YYMMDD. `zero`: may the day be 00, the last of the month?
ScanResult<ReadDate> date_of(const ScanElement& element, bool zero, Day today) {
  const int year = full_year(two_digits(element.value, 0), year_of(today));
  const auto month = static_cast<unsigned>(two_digits(element.value, 2));
  const auto day = static_cast<unsigned>(two_digits(element.value, 4));
  const auto last = resolve_month(year, month);
  if (!last) {
    return scan_fault(ScanFault::kDateMonth, element.position + 2, element.ai,
                      fmt::format("({}){} has no month {:02}", element.ai, element.value, month), "scan it again, or type the date as printed");
  }
  if (day == 0 && zero) return ReadDate{*last, Precision::kMonth};
  const auto whole = resolve_day(year, month, day);
  if (!whole) {
    return scan_fault(ScanFault::kDateDay, element.position + 4, element.ai,
                      fmt::format("({}){} has no day {:02} in {}-{:02}", element.ai, element.value, day, year, month),
                      "scan it again, or type the date as printed");
  }
  return ReadDate{*whole, Precision::kDay};
}

tl::expected<void, ScanError> check_clock(const ScanElement& element, std::size_t from) {
  constexpr int kMost[] = {23, 59, 59};
  for (std::size_t at = from, part = 0; at + 1 < element.value.size() && part < 3; at += 2, ++part) {
    if (two_digits(element.value, at) <= kMost[part]) continue;
    return scan_fault(ScanFault::kTime, element.position + at, element.ai,
                      fmt::format("({}){} has no such time of day", element.ai, element.value), "scan it again");
  }
  return {};
}

// "001250" with 3 decimals: "1.250".
std::string with_decimals(std::string_view digits, std::size_t decimals) {
  std::string text(digits);
  if (text.size() <= decimals) text.insert(0, decimals + 1 - text.size(), '0');
  std::string whole = text.substr(0, text.size() - decimals);
  whole.erase(0, std::min(whole.find_first_not_of('0'), whole.size() - 1));
  return decimals == 0 ? whole : whole + "." + text.substr(text.size() - decimals);
}

std::int64_t number_of(std::string_view digits) {
  std::int64_t value = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

std::int64_t grams_of(std::string_view digits, std::size_t decimals) {
  std::int64_t value = number_of(digits) * 1000;
  for (std::size_t at = 0; at < decimals; ++at) value = (at + 1 == decimals ? value + 5 : value) / 10;
  return value;
}

class Gathering {
 public:
  Gathering(Day today, bool any_day) : today_(today), any_day_(any_day) {}

  tl::expected<void, ScanError> take(const ScanElement& element) {
    const std::string& ai = element.ai;
    const AiRow& row = *ai_row(ai);
    const std::size_t decimals = row.key.back() == 'n' ? static_cast<std::size_t>(ai.back() - '0') : 0;
    if (row.data == AiData::kDate || row.data == AiData::kExpiryTime) return take_date(element, row);
    if (row.data == AiData::kMoment) return check_moment(element);
    if (ai == "01" || ai == "02") return take_gtin(element);
    if (ai == "10") scan.lot_code = element.value;
    if (ai == "21") scan.serial = element.value;
    if (ai == "30" || ai == "37") scan.units = number_of(element.value);
    if (row.key == "310n") {
      scan.net_weight = with_decimals(element.value, decimals) + " kg";
      scan.net_grams = grams_of(element.value, decimals);
    }
    if (row.key == "320n") scan.net_weight = with_decimals(element.value, decimals) + " lb";
    if (row.key == "315n") scan.net_volume = with_decimals(element.value, decimals) + " l";
    if (row.key == "360n") scan.net_volume = with_decimals(element.value, decimals) + " qt";
    if (row.key == "392n") scan.price = with_decimals(element.value, decimals);
    if (row.key == "393n") scan.price = with_decimals(std::string_view(element.value).substr(3), decimals) + " (currency " + element.value.substr(0, 3) + ")";
    if (ai == "10") warn_of_lost_separator(element);
    return {};
  }

  Scan scan;

 private:
  tl::expected<void, ScanError> take_gtin(const ScanElement& element) {
    auto read = read_gtin(element.value);
    if (!read) {
      ScanError error = read.error();
      error.ai = element.ai;
      error.position = element.position;
      return tl::unexpected<ScanError>(std::move(error));
    }
    scan.item = *read;
    return {};
  }

  tl::expected<void, ScanError> take_date(const ScanElement& element, const AiRow& row) {
    const bool with_time = row.data == AiData::kExpiryTime;
    auto read = date_of(element, !with_time, today_);
    if (!read) return tl::unexpected<ScanError>(read.error());
    if (with_time) {
      if (auto clock = check_clock(element, 6); !clock) return clock;
      scan.expiry_time = element.value.substr(6, 2) + ":" + element.value.substr(8, 2);
    }
    const auto kind = kind_of(element.ai);
    if (!kind) return {};  // a day of payment
    const YearWindow window = plausible_days(today_);
    if (!any_day_ && (read->day < window.first || read->day > window.last)) {
      return scan_fault(ScanFault::kImplausible, element.position, element.ai,
                        fmt::format("({}){} is {}, and not between {} and {}", element.ai, element.value, iso_day(read->day), iso_day(window.first),
                                    iso_day(window.last)),
                        "check the year on the package and type the date");
    }
    const auto known = std::find_if(scan.dates.begin(), scan.dates.end(), [&](const DateMark& each) { return each.kind == *kind; });
    DateMark mark{fmt::format("({}){}", element.ai, element.value), *kind, read->precision, read->day};
    if (known == scan.dates.end()) scan.dates.push_back(std::move(mark));
    else if (read->day < *known->day) *known = std::move(mark);
    return {};
  }

  tl::expected<void, ScanError> check_moment(const ScanElement& element) {
    if (element.value.size() % 2 != 0) {
      return scan_fault(ScanFault::kAiLength, element.position, element.ai,
                        fmt::format("({}) has an odd number of digits", element.ai), "scan it again");
    }
    auto read = date_of(element, false, today_);
    if (!read) return tl::unexpected<ScanError>(read.error());
    return element.ai == "8008" ? check_clock(element, 6) : tl::expected<void, ScanError>();
  }

  // "ABC17270228": a lot code that ends like a date element.
  void warn_of_lost_separator(const ScanElement& element) {
    const std::string& value = element.value;
    if (value.size() <= 8) return;
    const std::string tail = value.substr(value.size() - 8);
    if (tail.find_first_not_of("0123456789") != std::string::npos || !kind_of(tail.substr(0, 2))) return;
    if (!date_of({tail.substr(0, 2), tail.substr(2), 1}, true, today_)) return;
    scan.warnings.push_back(fmt::format(
        "the lot code '{0}' ends like a date: if the separator was lost, the lot is '{1}' and the date ({2}){3}; type (10){1}({2}){3} then",
        value, value.substr(0, value.size() - 8), tail.substr(0, 2), tail.substr(2)));
  }

  Day today_;
  bool any_day_;
};

tl::expected<void, ScanError> check_pairs(const std::map<std::string, const ScanElement*>& by_ai) {
  const auto has = [&](const char* ai) { return by_ai.count(ai) != 0; };
  const auto begins = [&](const char* with) {
    return std::any_of(by_ai.begin(), by_ai.end(), [&](const auto& each) { return each.first.rfind(with, 0) == 0; });
  };
  const auto pairing = [&](const char* ai, std::string what) {
    return scan_fault(ScanFault::kPairing, by_ai.at(ai)->position, ai, std::move(what), "scan the code on the single package");
  };
  if (has("02") && has("01")) return pairing("02", "the item (01) and the content of a case (02) exclude each other");
  if (has("02") && !has("37")) return pairing("02", "the content of a case (02) comes without its count (37)");
  if (has("37") && !has("02")) return pairing("37", "a count of a case (37) comes without its content (02)");
  if (has("02") && !has("00")) return pairing("02", "the content of a case (02) comes without the number of the case (00)");
  if (has("12") && !has("8020")) return pairing("12", "a day of payment (12) comes without its reference (8020)");
  for (const auto& [ai, element] : by_ai) {
    const bool price = ai.rfind("392", 0) == 0 || ai.rfind("393", 0) == 0;
    if (price && !has("30") && !begins("31") && !begins("32") && !begins("36")) return pairing(ai.c_str(), "a price comes without count or measure");
  }
  if (!has("01") && !has("02")) {
    return scan_fault(ScanFault::kNoGtin, 0, {}, "the code names no item: there is no (01) in it",
                      "scan the bar code of the item, or name the food");
  }
  return {};
}

}  // namespace

ScanResult<Scan> gather_scan(std::vector<ScanElement> elements, Day today, bool any_day) {
  std::map<std::string, const ScanElement*> by_ai;
  Gathering gathering(today, any_day);
  for (const ScanElement& element : elements) {
    const auto [known, fresh] = by_ai.emplace(element.ai, &element);
    if (!fresh && known->second->value != element.value) {
      return scan_fault(ScanFault::kConflict, element.position, element.ai,
                        fmt::format("({}) stands twice with two values: '{}' and '{}'", element.ai, known->second->value, element.value),
                        "scan it again");
    }
    if (!fresh) continue;
    if (auto taken = gathering.take(element); !taken) return tl::unexpected<ScanError>(taken.error());
  }
  if (auto right = check_pairs(by_ai); !right) return tl::unexpected<ScanError>(right.error());
  gathering.scan.elements = std::move(elements);
  return std::move(gathering.scan);
}

}  // namespace larderloop::intake
