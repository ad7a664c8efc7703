// GS1 Digital Link: https://host/any/path/01/GTIN[/22/..][/10/..][/21/..][?17=..]. It is read, never opened.
#include "intake/gs1_elements.h"
#include "larderloop/core/validate.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace larderloop::intake {
namespace {

int hex(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

std::string percent_decoded(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] == '%' && at + 2 < text.size() && hex(text[at + 1]) >= 0 && hex(text[at + 2]) >= 0) {
      out += static_cast<char>(hex(text[at + 1]) * 16 + hex(text[at + 2]));
      at += 2;
    } else {
      out += text[at];
    }
  }
  return out;
}

struct Part {
  std::string_view text;
  std::size_t position = 0;
};

std::vector<Part> cut(std::string_view text, char at_each, std::size_t offset) {
  std::vector<Part> parts;
  std::size_t begin = 0;
  while (begin <= text.size()) {
    const std::size_t end = std::min(text.find(at_each, begin), text.size());
    parts.push_back({text.substr(begin, end - begin), offset + begin + 1});
    begin = end + 1;
  }
  return parts;
}

constexpr std::array<std::string_view, 3> kQualifiers{"22", "10", "21"};

tl::expected<void, ScanError> add_checked(std::vector<ScanElement>& elements, ScanElement element) {
  if (auto right = check_element(element); !right) return right;
  elements.push_back(std::move(element));
  return {};
}

tl::unexpected<ScanError> no_key() {
  return scan_fault(ScanFault::kNoKey, 0, {}, "the link has no '/01/' with the number of an item behind it",
                    "type the number under the bars; shortened links and such with words (/gtin/) are not read");
}

}  // namespace

ScanResult<std::vector<ScanElement>> split_link(std::string_view text) {
  std::string_view whole = text.substr(0, text.find('#'));
  const std::size_t question = std::min(whole.find('?'), whole.size());
  const std::size_t host = whole.find("//") + 2;
  std::vector<Part> path = cut(whole.substr(0, question).substr(std::min(host, question)), '/', std::min(host, question));
  if (!path.empty()) path.erase(path.begin());  // the host
  while (!path.empty() && path.back().text.empty()) path.pop_back();
  const auto key = std::find_if(path.begin(), path.end(), [](const Part& part) { return part.text == "01"; });
  if (key == path.end() || key + 1 == path.end()) return no_key();
  std::vector<ScanElement> elements;
  ScanElement item{"01", percent_decoded((key + 1)->text), (key + 1)->position};
  // Fourteen digits are asked for; shorter GTINs are written out in full.
  if (const std::string full = normal_gtin(item.value); !full.empty()) item.value = full;
  if (auto added = add_checked(elements, std::move(item)); !added) return tl::unexpected<ScanError>(added.error());
  std::size_t next = 0;
  for (auto part = key + 2; part != path.end(); part += 2) {
    const auto found = std::find(kQualifiers.begin() + static_cast<std::ptrdiff_t>(next), kQualifiers.end(), part->text);
    if (found == kQualifiers.end() || part + 1 == path.end()) {
      return scan_fault(ScanFault::kLinkOrder, part->position, std::string(part->text),
                        fmt::format("'{}' cannot stand there in the link", part->text),
                        "behind the item come variant (22), lot (10) and serial number (21), in this order; dates stand behind '?'");
    }
    next = static_cast<std::size_t>(found - kQualifiers.begin()) + 1;
    ScanElement element{std::string(part->text), percent_decoded((part + 1)->text), (part + 1)->position};
    if (auto added = add_checked(elements, std::move(element)); !added) return tl::unexpected<ScanError>(added.error());
  }
  if (question >= whole.size()) return elements;
  for (const Part& pair : cut(whole.substr(question + 1), '&', question + 1)) {
    const std::size_t equals = pair.text.find('=');
    const std::string_view name = pair.text.substr(0, equals);
    if (equals == std::string_view::npos || ai_row(name) == nullptr) continue;  // not of GS1
    if (name == "01" || std::find(kQualifiers.begin(), kQualifiers.end(), name) != kQualifiers.end()) {
      return scan_fault(ScanFault::kLinkQuery, pair.position, std::string(name),
                        fmt::format("({}) stands behind '?' in the link, where it cannot", name), "type its values in brackets: (01)...(10)...");
    }
    ScanElement element{std::string(name), percent_decoded(pair.text.substr(equals + 1)), pair.position + equals + 1};
    if (auto added = add_checked(elements, std::move(element)); !added) return tl::unexpected<ScanError>(added.error());
  }
  return elements;
}

}  // namespace larderloop::intake
