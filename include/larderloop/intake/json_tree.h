// json_tree.h - JSON text to a tree that keeps what a document check needs: the order of members,
// numbers as written, and nothing silently dropped. Source:   RFC 8259. Repeated member names are
// refused (RFC 8785 3.1 asks for unique ones; parsers differ in which they keep). Limits:
// kMaxNesting levels, kMaxBytes bytes; one byte-order mark at the beginning is passed over.
#pragma once

#include "larderloop/core/result.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop::intake {

inline constexpr std::size_t kMaxNesting = 32;
inline constexpr std::size_t kMaxBytes = std::size_t{256} * 1024 * 1024;

enum class JsonType { kNull, kBool, kInteger, kNumber, kText, kList, kObject };

// kInteger: a whole number that fits 64 bits, written without point and exponent. kNumber: any
// other, `text` as written. Objects: `names[i]` is the name of `items[i]`.
struct JsonNode {
  JsonType type = JsonType::kNull;
  bool flag = false;
  std::int64_t integer = 0;
  std::string text;
  std::vector<std::string> names;
  std::vector<JsonNode> items;

  [[nodiscard]] const JsonNode* find(std::string_view name) const;  // null when there is none
};

inline constexpr std::string_view kHouseholdDocument = "the household document";

// `thing`: what the text should be, for messages. Fails with one Problem: `where` is "line 3,
// column 7" for text that is not JSON (columns count characters), the JSON pointer of the member
// for a repeated name.
[[nodiscard]] Result<JsonNode> parse_json(std::string_view text,
                                          std::string_view thing = kHouseholdDocument);

// A name as a part of a JSON pointer (RFC 6901 section 3): '~' as "~0", '/' as "~1".
[[nodiscard]] std::string pointer_part(std::string_view name);

// What a finding shows of a value: texts and numbers as written, "true", "null", "[...]", "{...}";
// long ones cut at 80 bytes.
[[nodiscard]] std::string shown_value(const JsonNode& node);

}  // namespace larderloop::intake
