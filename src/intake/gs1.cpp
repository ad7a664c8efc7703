#include "larderloop/intake/gs1.h"

#include "intake/gs1_elements.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <vector>

namespace larderloop {
namespace {

constexpr char kSeparator = '\x1D';

bool begins(std::string_view text, std::string_view with) {
  return text.substr(0, with.size()) == with;
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlanks = " \t\r\n";
  const std::size_t begin = text.find_first_not_of(kBlanks);
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(kBlanks) - begin + 1);
}

// What was given without blanks around it, and where each of its characters stood, counted from 1.
struct Given {
  std::string text;
  std::vector<std::size_t> places;
  std::size_t size = 0;
  [[nodiscard]] std::size_t place(std::size_t position) const { return position == 0 ? 0 : position <= places.size() ? places[position - 1] : size + 1; }
};

// Also with the visible stand-ins for the group separator, as people paste them.
Given with_separators(std::string_view given) {
  constexpr std::array<std::string_view, 4> kStandIns{"\xE2\x90\x9D", "<GS>", "{GS}", "^]"};
  Given out;
  out.size = given.size();
  std::string_view text = trimmed(given);
  std::size_t at = text.empty() ? 0 : static_cast<std::size_t>(text.data() - given.data());
  while (!text.empty()) {
    const auto* const found = std::find_if(kStandIns.begin(), kStandIns.end(), [&](std::string_view each) { return begins(text, each); });
    const std::size_t length = found != kStandIns.end() ? found->size() : 1;
    out.text += found != kStandIns.end() ? kSeparator : text.front();
    out.places.push_back(at + 1);
    text.remove_prefix(length);
    at += length;
  }
  return out;
}

bool is_link(std::string_view text) {
  std::string head(text.substr(0, 8));
  std::transform(head.begin(), head.end(), head.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return begins(head, "https://") || begins(head, "http://");
}

bool all_digits(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
}

// Longer than any GTIN and beginning like an element.
bool is_element_string(std::string_view text) {
  if (text.find(kSeparator) != std::string_view::npos) return true;
  if (text.size() < 16) return false;
  return begins(text, "01") || begins(text, "02") || begins(text, "00") || (text[0] == '1' && text[1] >= '0' && text[1] <= '7');
}

ScanResult<Scan> elements_scan(ScanResult<std::vector<ScanElement>> elements, Day today, const ScanHow& how) {
  if (!elements) return tl::unexpected<ScanError>(elements.error());
  return intake::gather_scan(std::move(*elements), today, how.any_day);
}

ScanResult<Scan> number_scan(std::string_view text, const ScanHow& how) {
  auto gtin = read_gtin(text, how);
  if (!gtin) return tl::unexpected<ScanError>(gtin.error());
  Scan scan;
  scan.item = *gtin;
  return scan;
}

ScanResult<Scan> read_whole(std::string_view all, Day today, const ScanHow& how) {
  if (all.empty()) {
    return intake::scan_fault(ScanFault::kEmpty, 0, {}, "nothing was scanned", "scan the bar code, or type the digits under it");
  }
  if (is_link(all)) return elements_scan(intake::split_link(all), today, how);
  if (all.front() == '(') return elements_scan(intake::split_brackets(all), today, how);
  constexpr std::size_t kIdentifier = 3;
  if (all.front() == ']' && all.size() > kIdentifier) {
    const std::string_view identifier = all.substr(0, kIdentifier);
    const std::string_view rest = all.substr(kIdentifier);
    if (identifier == "]C1" || identifier == "]e0" || identifier == "]d2" || identifier == "]Q3" || identifier == "]J1") {
      return elements_scan(intake::split_elements(rest, kIdentifier, false), today, how);
    }
    const bool thirteen = identifier == "]E0";
    if (thirteen || identifier == "]E4" || identifier == "]I1") {
      const std::size_t digits = thirteen ? 13 : identifier == "]E4" ? 8 : 14;
      // Some readers leave out the leading zero of a UPC-A; the check digit is the same without it.
      const bool upc_a = thirteen && rest.size() == 12;
      if (rest.size() != digits && !upc_a) {
        return intake::scan_fault(ScanFault::kLength, kIdentifier + 1, {}, fmt::format("behind {} come {} digits", identifier, digits),
                                  "scan it again");
      }
      // The identifier says which number it is.
      const std::size_t zeros = 14 - rest.size();
      auto scan = number_scan(std::string(zeros, '0') + std::string(rest), {});
      if (!scan && scan.error().position > 0) scan.error().position = std::max(scan.error().position, zeros + 1) - zeros + kIdentifier;
      return scan;
    }
    if ((identifier == "]d1" || identifier == "]Q1") && is_link(rest)) return elements_scan(intake::split_link(rest), today, how);
    return intake::scan_fault(ScanFault::kNotGs1, 1, {}, fmt::format("what was scanned ({}) holds no item number", identifier),
                              "scan the bar code with the digits under it");
  }
  if (is_element_string(all)) return elements_scan(intake::split_elements(all, 0, true), today, how);
  return number_scan(all, how);
}

}  // namespace

std::string_view scan_fault_name(ScanFault fault) {
  constexpr std::array<std::string_view, 23> kNames{
      "empty",      "not_a_digit", "length",     "check_digit", "placeholder", "upce",        "ambiguous_8_digit", "no_gtin",
      "ai_unknown", "ai_length",   "ai_empty",   "ai_charset",  "date_month",  "date_day",    "time",              "implausible",
      "conflict",   "pairing",     "separator",  "not_gs1",     "no_key",      "link_order",  "link_query"};
  return kNames[static_cast<std::size_t>(fault)];
}

Error ScanError::error() const {
  return make_error(ErrorKind::kBadData, position == 0 ? what : fmt::format("{} (character {})", what, position), next_step);
}

DateMark Scan::mark() const {
  const DateMark* best = nullptr;
  for (const DateMark& each : dates) {
    if (best == nullptr) {
      best = &each;
      continue;
    }
    const bool tells = gives_good_through(each.kind);
    const bool told = gives_good_through(best->kind);
    if (tells != told ? tells : *each.day < *best->day) best = &each;
  }
  return best == nullptr ? DateMark{} : *best;
}

bool looks_like_scan(std::string_view text) {
  const std::string whole = with_separators(text).text;
  if (whole.size() > 2 && whole.front() == ']') return true;
  if (is_link(whole) || whole.find(kSeparator) != std::string::npos) return true;
  if (begins(whole, "(01)") || begins(whole, "(02)")) return true;
  // Twelve digits and more are no date; eight may be one.
  return all_digits(whole) && whole.size() >= 12;
}

ScanResult<Scan> read_scan(std::string_view text, Day today, const ScanHow& how) {
  const Given given = with_separators(text);
  auto scan = read_whole(given.text, today, how);
  if (!scan) {
    scan.error().position = given.place(scan.error().position);
  } else {
    for (ScanElement& each : scan->elements) each.position = given.place(each.position);
  }
  return scan;
}

}  // namespace larderloop
