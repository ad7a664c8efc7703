#include "larderloop/intake/reader.h"

#include "larderloop/core/validate.h"

#include <fmt/format.h>

#include <algorithm>

namespace larderloop::intake {
namespace {

constexpr std::int64_t kMaxHalves = 2'000'000'000;  // amount.h

std::string joined(const std::vector<std::string>& names) {
  std::string out;
  for (const std::string& name : names) {
    if (!out.empty()) out += ", ";
    out += name;
  }
  return out;
}

const char* kind_of(const JsonNode& node) {
  switch (node.type) {
    case JsonType::kNull:
      return "null";
    case JsonType::kBool:
      return "true or false";
    case JsonType::kInteger:
    case JsonType::kNumber:
      return "a number";
    case JsonType::kText:
      return "a text";
    case JsonType::kList:
      return "a list";
    case JsonType::kObject:
      return "an object";
  }
  return "something else";
}

void wrong_type(const JsonNode& node, const Path& path, Findings& findings, std::string_view wanted,
                std::string remedy) {
  findings.add(path, &node, fmt::format("{} is wanted here, not {}", wanted, kind_of(node)),
               std::move(remedy));
}

}  // namespace

std::optional<std::string> read_text(const JsonNode& node, const Path& path, Findings& findings) {
  if (node.type != JsonType::kText) {
    wrong_type(node, path, findings, "a text", "write it in double quotes");
    return std::nullopt;
  }
  if (node.text.find('\0') != std::string::npos) {
    findings.add(path, &node, "the text holds the character U+0000", "leave that character out");
    return std::nullopt;
  }
  return node.text;
}

std::optional<std::string> read_key(const JsonNode& node, const Path& path, Findings& findings) {
  auto text = read_text(node, path, findings);
  if (text && !is_key(*text)) {
    findings.add(path, &node, fmt::format("'{}' is not a key", shown_value(node)),
                 fmt::format("write lower-case letters, digits and single hyphens, for example {}",
                             key_from_name(*text, "home-kit")));
    return std::nullopt;
  }
  return text;
}

std::optional<std::int64_t> read_whole(const JsonNode& node, const Path& path, Findings& findings,
                                       std::int64_t least, std::int64_t most) {
  if (node.type == JsonType::kNumber) {
    findings.add(
        path, &node,
        fmt::format("'{}' is not a whole number from {} to {}", shown_value(node), least, most),
        "write digits only, without point or exponent");
    return std::nullopt;
  }
  if (node.type != JsonType::kInteger) {
    wrong_type(node, path, findings, "a whole number", "write digits only, without quotes");
    return std::nullopt;
  }
  if (node.integer < least || node.integer > most) {
    findings.add(path, &node, fmt::format("'{}' is out of range", node.integer),
                 fmt::format("write a whole number from {} to {}", least, most));
    return std::nullopt;
  }
  return node.integer;
}

std::optional<bool> read_flag(const JsonNode& node, const Path& path, Findings& findings) {
  if (node.type == JsonType::kBool) return node.flag;
  wrong_type(node, path, findings, "true or false", "write true or false without quotes");
  return std::nullopt;
}

std::optional<Day> read_day(const JsonNode& node, const Path& path, Findings& findings) {
  constexpr const char* kRemedy =
      "write a real day as year-month-day, for example 2027-03-15, from 1900 to 2199";
  if (node.type != JsonType::kText) {
    wrong_type(node, path, findings, "a date", kRemedy);
    return std::nullopt;
  }
  const auto day = parse_iso_day(node.text);
  if (!day) {
    findings.add(path, &node, fmt::format("'{}' is not a date", shown_value(node)), kRemedy);
  }
  return day;
}

std::optional<Instant> read_instant(const JsonNode& node, const Path& path, Findings& findings) {
  constexpr const char* kRemedy = "write UTC to the second, for example 2026-11-25T18:30:00Z";
  if (node.type != JsonType::kText) {
    wrong_type(node, path, findings, "a time", kRemedy);
    return std::nullopt;
  }
  const auto at = parse_iso_instant(node.text);
  if (!at) findings.add(path, &node, fmt::format("'{}' is not a time", shown_value(node)), kRemedy);
  return at;
}

std::optional<HalfServings> read_servings(const JsonNode& node, const Path& path,
                                          Findings& findings) {
  constexpr const char* kRemedy = "write servings in steps of a half, for example 0.5 or 2";
  if (node.type == JsonType::kInteger) {
    if (node.integer >= 0 && node.integer <= kMaxHalves / 2) {
      return HalfServings::servings(node.integer);
    }
    findings.add(path, &node, fmt::format("'{}' is out of range", node.integer), kRemedy);
    return std::nullopt;
  }
  if (node.type != JsonType::kNumber) {
    wrong_type(node, path, findings, "a number of servings", kRemedy);
    return std::nullopt;
  }
  // digits, a point, and 0 or 5
  const std::string& text = node.text;
  const std::size_t point = text.find('.');
  const bool halves = point != std::string::npos && point > 0 && point <= 9 &&
                      point + 2 == text.size() && (text.back() == '0' || text.back() == '5') &&
                      std::all_of(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(point),
                                  [](char c) { return c >= '0' && c <= '9'; });
  if (!halves) {
    findings.add(
        path, &node,
        fmt::format("'{}' is not a number of servings in steps of a half", shown_value(node)),
        kRemedy);
    return std::nullopt;
  }
  return HalfServings(2 * std::stoll(text.substr(0, point)) + (text.back() == '5' ? 1 : 0));
}

std::optional<std::size_t> read_name(const JsonNode& node, const Path& path, Findings& findings,
                                     const std::vector<std::string>& known) {
  if (node.type == JsonType::kText) {
    const auto at = std::find(known.begin(), known.end(), node.text);
    if (at != known.end()) return static_cast<std::size_t>(at - known.begin());
    const std::string near = nearest(node.text, known);
    findings.add(
        path, &node, fmt::format("'{}' is not known here", shown_value(node)),
        near.empty() ? "write one of " + joined(known) : fmt::format("did you mean '{}'?", near));
    return std::nullopt;
  }
  wrong_type(node, path, findings, "a name", "write one of " + joined(known));
  return std::nullopt;
}

Reader::Reader(const JsonNode& node, const Path& path, Findings& findings, std::string_view thing)
    : node_(node), path_(path), findings_(findings), thing_(thing) {
  if (!is_object()) {
    wrong_type(node, path, findings, fmt::format("an object that describes {}", thing),
               "write it in braces");
  }
}

const JsonNode* Reader::member(std::string_view name, Need need) {
  if (!is_object()) return nullptr;
  known_.emplace_back(name);
  const JsonNode* found = node_.find(name);
  if (found == nullptr && need == Need::kRequired) {
    findings_.add(path_, nullptr, fmt::format("{} needs the member '{}'", thing_, name),
                  fmt::format("add \"{}\"", name));
  }
  return found;
}

void Reader::forbid(std::string_view name, std::string_view why, std::string_view remedy) {
  known_.emplace_back(name);
  if (const JsonNode* found = node_.find(name)) {
    findings_.add(Path(path_, name), found, fmt::format("'{}' {}", name, why), std::string(remedy));
  }
}

void Reader::finish() {
  if (!is_object()) return;
  for (std::size_t at = 0; at < node_.names.size(); ++at) {
    const std::string& name = node_.names[at];
    if (std::find(known_.begin(), known_.end(), name) != known_.end()) continue;
    const std::string near = nearest(name, known_);
    findings_.add(Path(path_, name), &node_.items[at],
                  fmt::format("{} has no member '{}'", thing_, name),
                  near.empty() ? "members here are " + joined(known_)
                               : fmt::format("did you mean '{}'?", near));
  }
}

void Reader::text(std::string_view name, std::string& out, Need need) {
  if (const JsonNode* node = member(name, need)) {
    if (auto value = read_text(*node, Path(path_, name), findings_)) out = std::move(*value);
  }
}

void Reader::flag(std::string_view name, bool& out) {
  if (const JsonNode* node = member(name, Need::kOptional)) {
    if (const auto value = read_flag(*node, Path(path_, name), findings_)) out = *value;
  }
}

void Reader::day(std::string_view name, Day& out) {
  if (const JsonNode* node = member(name, Need::kRequired)) {
    if (const auto value = read_day(*node, Path(path_, name), findings_)) out = *value;
  }
}

void Reader::day(std::string_view name, std::optional<Day>& out, Need need) {
  if (const JsonNode* node = member(name, need))
    out = read_day(*node, Path(path_, name), findings_);
}

void Reader::instant(std::string_view name, Instant& out) {
  if (const JsonNode* node = member(name, Need::kRequired)) {
    if (const auto value = read_instant(*node, Path(path_, name), findings_)) out = *value;
  }
}

void Reader::whole(std::string_view name, std::int64_t& out, Need need) {
  if (const JsonNode* node = member(name, need)) {
    using Limits = std::numeric_limits<std::int64_t>;
    if (const auto value =
            read_whole(*node, Path(path_, name), findings_, Limits::min(), Limits::max())) {
      out = *value;
    }
  }
}

void Reader::whole(std::string_view name, int& out, Need need) {
  if (const JsonNode* node = member(name, need)) {
    using Limits = std::numeric_limits<int>;
    if (const auto value =
            read_whole(*node, Path(path_, name), findings_, Limits::min(), Limits::max())) {
      out = static_cast<int>(*value);
    }
  }
}

void Reader::whole(std::string_view name, std::optional<std::int64_t>& out) {
  std::int64_t value = 0;
  if (!has(name)) {
    known_.emplace_back(name);
    return;
  }
  whole(name, value);
  out = value;
}

void Reader::whole(std::string_view name, std::optional<int>& out) {
  int value = 0;
  if (!has(name)) {
    known_.emplace_back(name);
    return;
  }
  whole(name, value);
  out = value;
}

void Reader::servings(std::string_view name, HalfServings& out) {
  if (const JsonNode* node = member(name, Need::kOptional)) {
    if (const auto value = read_servings(*node, Path(path_, name), findings_)) out = *value;
  }
}

void Reader::servings(std::string_view name, std::optional<HalfServings>& out) {
  if (const JsonNode* node = member(name, Need::kOptional)) {
    out = read_servings(*node, Path(path_, name), findings_);
  }
}

void Reader::not_a_list(const JsonNode& node, const Path& path) {
  wrong_type(node, path, findings_, "a list", "write it in square brackets");
}

void Reader::repeated(const JsonNode& node, const Path& path) {
  findings_.add(path, &node, fmt::format("'{}' stands there twice", shown_value(node)),
                "keep one of the two");
}

}  // namespace larderloop::intake
