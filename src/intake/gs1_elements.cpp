#include "intake/gs1_elements.h"

#include "larderloop/core/validate.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace larderloop::intake {
namespace {

constexpr char kSeparator = '\x1D';
constexpr std::size_t kLongestKey = 4;

// Measures 31nn to 36nn share one row each where only the text is kept.
constexpr std::array kRows{
    AiRow{"00", AiData::kSscc, 18, 18, true},        AiRow{"01", AiData::kGtin, 14, 14, true},
    AiRow{"02", AiData::kGtin, 14, 14, true},        AiRow{"10", AiData::kText, 1, 20, false},
    AiRow{"11", AiData::kDate, 6, 6, true},          AiRow{"12", AiData::kDate, 6, 6, true},
    AiRow{"13", AiData::kDate, 6, 6, true},          AiRow{"15", AiData::kDate, 6, 6, true},
    AiRow{"16", AiData::kDate, 6, 6, true},          AiRow{"17", AiData::kDate, 6, 6, true},
    AiRow{"20", AiData::kDigits, 2, 2, true},        AiRow{"21", AiData::kText, 1, 20, false},
    AiRow{"22", AiData::kText, 1, 20, false},        AiRow{"30", AiData::kDigits, 1, 8, false},
    AiRow{"37", AiData::kDigits, 1, 8, false},       AiRow{"310n", AiData::kDigits, 6, 6, true},
    AiRow{"320n", AiData::kDigits, 6, 6, true},      AiRow{"315n", AiData::kDigits, 6, 6, true},
    AiRow{"360n", AiData::kDigits, 6, 6, true},      AiRow{"392n", AiData::kDigits, 1, 15, false},
    AiRow{"393n", AiData::kDigits, 4, 18, false},    AiRow{"395n", AiData::kDigits, 6, 6, false},
    AiRow{"422", AiData::kDigits, 3, 3, false},      AiRow{"7003", AiData::kExpiryTime, 10, 10, false},
    AiRow{"7006", AiData::kMoment, 6, 6, false},     AiRow{"7007", AiData::kMoment, 6, 12, false},
    AiRow{"8005", AiData::kDigits, 6, 6, false},     AiRow{"8008", AiData::kMoment, 8, 12, false},
    AiRow{"8020", AiData::kText, 1, 25, false},      AiRow{"90", AiData::kText, 1, 30, false},
    AiRow{"91", AiData::kText, 1, 90, false},        AiRow{"92", AiData::kText, 1, 90, false},
    AiRow{"93", AiData::kText, 1, 90, false},        AiRow{"94", AiData::kText, 1, 90, false},
    AiRow{"95", AiData::kText, 1, 90, false},        AiRow{"96", AiData::kText, 1, 90, false},
    AiRow{"97", AiData::kText, 1, 90, false},        AiRow{"98", AiData::kText, 1, 90, false},
    AiRow{"99", AiData::kText, 1, 90, false}};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// Character set 82 of the General Specifications.
bool is_in_set_82(char c) {
  if (is_digit(c) || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z')) return true;
  return c != '\0' && std::string_view("!\"%&'()*+,-./:;<=>?_").find(c) != std::string_view::npos;
}

std::string shown(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == kSeparator) out += "<GS>";
    else out += c;
  }
  return out;
}

const AiRow* row_at(std::string_view text, std::size_t& length) {
  for (length = 2; length <= kLongestKey && length <= text.size(); ++length) {
    if (const AiRow* row = ai_row(text.substr(0, length))) return row;
  }
  return nullptr;
}

tl::unexpected<ScanError> unknown_ai(std::string_view text, std::size_t position) {
  const std::string ai(text.substr(0, std::min<std::size_t>(text.size(), 4)));
  return scan_fault(ScanFault::kAiUnknown, position, ai, fmt::format("no element of food begins with '{}'", shown(ai)),
                    "scan it again; if a separator was lost, type the values in brackets: (01)...(17)...(10)...");
}

tl::unexpected<ScanError> wrong_length(const ScanElement& element, const AiRow& row) {
  return scan_fault(ScanFault::kAiLength, element.position, element.ai,
                    fmt::format("({}) has {} characters, '{}', where {} belong", element.ai, element.value.size(), shown(element.value),
                                row.least == row.most ? std::to_string(row.most) : fmt::format("{} to {}", row.least, row.most)),
                    "scan it again; a separator may be missing behind it");
}

}  // namespace

const AiRow* ai_row(std::string_view ai) {
  for (const AiRow& row : kRows) {
    if (row.key == ai) return &row;
    const bool decimals = row.key.back() == 'n' && ai.size() == row.key.size() && ai.substr(0, 3) == row.key.substr(0, 3);
    // Weights and volumes have up to five decimals, amounts of money up to nine (here as many as their digits can bear).
    const char most = row.key[1] == '9' ? '9' : '5';
    if (decimals && ai.back() >= '0' && ai.back() <= most) return &row;
  }
  return nullptr;
}

tl::unexpected<ScanError> scan_fault(ScanFault fault, std::size_t position, std::string ai, std::string what, std::string next_step) {
  return tl::unexpected<ScanError>(ScanError{fault, position, std::move(ai), std::move(what), std::move(next_step)});
}

tl::expected<void, ScanError> check_element(const ScanElement& element) {
  const AiRow& row = *ai_row(element.ai);
  if (element.value.empty()) {
    return scan_fault(ScanFault::kAiEmpty, element.position, element.ai, fmt::format("({}) is empty", element.ai), "scan it again");
  }
  if (element.value.size() < row.least || element.value.size() > row.most) return wrong_length(element, row);
  for (std::size_t at = 0; at < element.value.size(); ++at) {
    const char c = element.value[at];
    if (row.data == AiData::kText ? is_in_set_82(c) : is_digit(c)) continue;
    return scan_fault(ScanFault::kAiCharset, element.position + at, element.ai,
                      fmt::format("({}) holds '{}' at place {}, which it cannot", element.ai, shown(std::string_view(&c, 1)), at + 1),
                      "scan it again; codes have letters, digits and no blanks");
  }
  if (row.data == AiData::kGtin || row.data == AiData::kSscc) {
    const char right = gtin_check_digit(std::string_view(element.value).substr(0, element.value.size() - 1));
    if (right != element.value.back()) {
      return scan_fault(ScanFault::kCheckDigit, element.position + element.value.size() - 1, element.ai,
                        fmt::format("the check digit of '{}' does not fit: {} is expected", element.value, right),
                        "scan it again, or type the digits under the bars");
    }
  }
  return {};
}

ScanResult<std::vector<ScanElement>> split_elements(std::string_view text, std::size_t offset, bool lead) {
  std::vector<ScanElement> elements;
  std::size_t at = 0;
  if (lead && !text.empty() && text.front() == kSeparator) at = 1;
  while (at < text.size()) {
    if (text[at] == kSeparator) {
      return scan_fault(ScanFault::kSeparator, offset + at + 1, {}, "there is a separator where an element should begin", "scan it again");
    }
    std::size_t length = 0;
    const AiRow* row = row_at(text.substr(at), length);
    if (row == nullptr) return unknown_ai(text.substr(at), offset + at + 1);
    ScanElement element;
    element.ai = std::string(text.substr(at, length));
    at += length;
    element.position = offset + at + 1;
    const std::size_t separator = std::min(text.find(kSeparator, at), text.size());
    const std::size_t end = row->predefined ? std::min(separator, at + row->most) : separator;
    element.value = std::string(text.substr(at, end - at));
    if (auto right = check_element(element); !right) return tl::unexpected<ScanError>(right.error());
    elements.push_back(std::move(element));
    at = end;
    if (at < text.size() && text[at] == kSeparator) ++at;
  }
  return elements;
}

ScanResult<std::vector<ScanElement>> split_brackets(std::string_view text) {
  std::vector<ScanElement> elements;
  std::size_t at = 0;
  while (at < text.size()) {
    if (text[at] == ' ') {
      ++at;
      continue;
    }
    const std::size_t close = text.find(')', at);
    if (text[at] != '(' || close == std::string_view::npos) {
      return scan_fault(ScanFault::kAiUnknown, at + 1, {}, "a value stands outside of '(AI)value'",
                        "write (01)...(17)...(10)...; a bracket inside a value is written \\( or \\)");
    }
    ScanElement element;
    element.ai = std::string(text.substr(at + 1, close - at - 1));
    if (ai_row(element.ai) == nullptr) return unknown_ai(element.ai, at + 2);
    at = close + 1;
    element.position = at + 1;
    while (at < text.size() && text[at] != '(') {
      if (text[at] == '\\' && at + 1 < text.size() && (text[at + 1] == '(' || text[at + 1] == ')')) ++at;
      element.value += text[at++];
    }
    while (!element.value.empty() && element.value.back() == ' ') element.value.pop_back();
    if (auto right = check_element(element); !right) return tl::unexpected<ScanError>(right.error());
    elements.push_back(std::move(element));
  }
  return elements;
}

}  // namespace larderloop::intake
