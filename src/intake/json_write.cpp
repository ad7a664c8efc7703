#include "intake/json_write.h"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace larderloop::intake {
namespace {

constexpr std::size_t kIndent = 2;

std::string quoted(const std::string& text) {
  constexpr int kOneLine = -1;
  return nlohmann::json(text).dump(kOneLine, ' ', false, nlohmann::json::error_handler_t::replace);
}

std::size_t columns(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
  }));
}

void write_compact(const JsonNode& node, std::string& out) {
  switch (node.type) {
    case JsonType::kNull:
      out += "null";
      return;
    case JsonType::kBool:
      out += node.flag ? "true" : "false";
      return;
    case JsonType::kInteger:
      out += std::to_string(node.integer);
      return;
    case JsonType::kNumber:
      out += node.text;
      return;
    case JsonType::kText:
      out += quoted(node.text);
      return;
    case JsonType::kList:
    case JsonType::kObject:
      break;
  }
  const bool object = node.type == JsonType::kObject;
  out += object ? '{' : '[';
  for (std::size_t at = 0; at < node.items.size(); ++at) {
    if (at > 0) out += ", ";
    if (object) out += quoted(node.names[at]) + ": ";
    write_compact(node.items[at], out);
  }
  out += object ? '}' : ']';
}

std::string compact(const JsonNode& node) {
  std::string out;
  write_compact(node, out);
  return out;
}

// An object with one member a line, its braces standing at `indent`.
void write_expanded(const JsonNode& object, std::size_t indent, std::string& out) {
  out += "{\n";
  for (std::size_t at = 0; at < object.items.size(); ++at) {
    out.append(indent + kIndent, ' ');
    out += quoted(object.names[at]) + ": " + compact(object.items[at]);
    out += at + 1 < object.items.size() ? ",\n" : "\n";
  }
  out.append(indent, ' ');
  out += '}';
}

void write_records(const JsonNode& list, std::string& out) {
  constexpr std::size_t indent = 2 * kIndent;
  out += "[\n";
  for (std::size_t at = 0; at < list.items.size(); ++at) {
    out.append(indent, ' ');
    const std::string line = compact(list.items[at]);
    if (indent + columns(line) <= kMaxColumns || list.items[at].items.empty()) {
      out += line;
    } else {
      write_expanded(list.items[at], indent, out);
    }
    out += at + 1 < list.items.size() ? ",\n" : "\n";
  }
  out.append(kIndent, ' ');
  out += ']';
}

}  // namespace

JsonNode text_node(std::string_view text) {
  JsonNode node;
  node.type = JsonType::kText;
  node.text = text;
  return node;
}

JsonNode whole_node(std::int64_t value) {
  JsonNode node;
  node.type = JsonType::kInteger;
  node.integer = value;
  return node;
}

JsonNode flag_node(bool value) {
  JsonNode node;
  node.type = JsonType::kBool;
  node.flag = value;
  return node;
}

JsonNode servings_node(HalfServings amount) {
  if (amount.halves() % 2 == 0) return whole_node(amount.halves() / 2);
  JsonNode node;
  node.type = JsonType::kNumber;
  node.text = std::to_string(amount.halves() / 2) + ".5";
  return node;
}

ObjectWriter& ObjectWriter::add(std::string_view name, JsonNode value) {
  node_.names.emplace_back(name);
  node_.items.push_back(std::move(value));
  return *this;
}

ObjectWriter& ObjectWriter::text(std::string_view name, std::string_view value,
                                 std::string_view otherwise) {
  return value == otherwise ? *this : add(name, value);
}

ObjectWriter& ObjectWriter::whole(std::string_view name, std::int64_t value,
                                  std::int64_t otherwise) {
  return value == otherwise ? *this : add(name, value);
}

ObjectWriter& ObjectWriter::flag(std::string_view name, bool value, bool otherwise) {
  return value == otherwise ? *this : add(name, flag_node(value));
}

ObjectWriter& ObjectWriter::servings(std::string_view name, HalfServings value,
                                     HalfServings otherwise) {
  return value == otherwise ? *this : add(name, servings_node(value));
}

ObjectWriter& ObjectWriter::object(std::string_view name, std::optional<JsonNode> value) {
  return value ? add(name, std::move(*value)) : *this;
}

ObjectWriter& ObjectWriter::list(std::string_view name, std::vector<JsonNode> items) {
  if (items.empty()) return *this;
  JsonNode node;
  node.type = JsonType::kList;
  node.items = std::move(items);
  return add(name, std::move(node));
}

std::string write_canonical(const JsonNode& document) {
  std::string out = "{\n";
  for (std::size_t at = 0; at < document.items.size(); ++at) {
    const JsonNode& item = document.items[at];
    out.append(kIndent, ' ');
    out += quoted(document.names[at]) + ": ";
    if (item.type == JsonType::kList) {
      write_records(item, out);
    } else if (item.type == JsonType::kObject) {
      write_expanded(item, kIndent, out);
    } else {
      write_compact(item, out);
    }
    out += at + 1 < document.items.size() ? ",\n" : "\n";
  }
  out += "}\n";
  return out;
}

}  // namespace larderloop::intake
