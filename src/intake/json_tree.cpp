#include "larderloop/intake/json_tree.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <limits>
#include <unordered_set>
#include <utility>

namespace larderloop::intake {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr std::size_t kManyMembers = 16;  // from here on names are looked up in a set
constexpr std::size_t kShownBytes = 80;

bool continues_character(char byte) {
  return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

Error one_problem(std::string_view thing, std::string where, std::string value, std::string what,
                  std::string remedy) {
  Error error =
      make_error(ErrorKind::kBadData, fmt::format("{} cannot be read: {}", thing, what), remedy);
  if (!where.empty()) error.what += " at " + where;
  error.problems.push_back(
      {std::move(where), std::move(value), std::move(what), std::move(remedy)});
  return error;
}

std::string line_and_column(std::string_view text, std::size_t offset) {
  offset = std::min(offset, text.size());
  std::size_t line = 1;
  std::size_t column = 1;
  for (std::size_t at = 0; at < offset; ++at) {
    if (text[at] == '\n') {
      ++line;
      column = 1;
    } else if (!continues_character(text[at])) {
      ++column;
    }
  }
  return fmt::format("line {}, column {}", line, column);
}

// "[json.exception.parse_error.101] parse error at line 1, column 2: syntax error while parsing
// value - unexpected end of input" without what is only for programmers.
std::string plain_reason(std::string_view message) {
  const std::size_t colon = message.find(": ");
  if (colon != std::string_view::npos) message.remove_prefix(colon + 2);
  return std::string(message);
}

// Builds the tree from the parser's events; stops at the first repeated name or at too deep
// nesting.
class TreeBuilder {
 public:
  TreeBuilder(std::string_view text, std::string_view thing) : text_(text), thing_(thing) {}

  bool null() { return add({}); }
  bool boolean(bool value) {
    JsonNode node;
    node.type = JsonType::kBool;
    node.flag = value;
    return add(std::move(node));
  }
  bool number_integer(std::int64_t value) {
    JsonNode node;
    node.type = JsonType::kInteger;
    node.integer = value;
    return add(std::move(node));
  }
  bool number_unsigned(std::uint64_t value) {
    if (value <= static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max())) {
      return number_integer(static_cast<std::int64_t>(value));
    }
    return number(std::to_string(value));
  }
  bool number_float(double /*value*/, const std::string& written) { return number(written); }
  bool string(std::string& value) {
    JsonNode node;
    node.type = JsonType::kText;
    node.text = std::move(value);
    return add(std::move(node));
  }
  bool binary(nlohmann::json::binary_t& /*value*/) { return false; }  // not in JSON text
  bool start_object(std::size_t /*count*/) { return open(JsonType::kObject); }
  bool start_array(std::size_t /*count*/) { return open(JsonType::kList); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool key(std::string& name) {
    Level& level = open_.back();
    const std::vector<std::string>& names = level.node->names;
    bool repeated = false;
    if (names.size() < kManyMembers) {
      repeated = std::find(names.begin(), names.end(), name) != names.end();
    } else {
      if (level.seen.empty()) level.seen.insert(names.begin(), names.end());
      repeated = !level.seen.insert(name).second;
    }
    if (repeated) {
      error_ = one_problem(thing_, pointer() + "/" + pointer_part(name), name,
                           fmt::format("the member '{}' stands there twice", name),
                           "keep one of the two");
      return false;
    }
    level.node->names.push_back(std::move(name));
    return true;
  }
  bool parse_error(std::size_t position, const std::string& /*token*/,
                   const nlohmann::json::exception& exception) {
    error_ = one_problem(thing_, line_and_column(text_, position == 0 ? 0 : position - 1), "",
                         plain_reason(exception.what()), "write it as JSON (RFC 8259) in UTF-8");
    return false;
  }

  [[nodiscard]] JsonNode& root() { return root_; }
  [[nodiscard]] Error& error() { return error_; }

 private:
  struct Level {
    JsonNode* node;
    std::unordered_set<std::string> seen;
  };

  bool number(std::string written) {
    JsonNode node;
    node.type = JsonType::kNumber;
    node.text = std::move(written);
    return add(std::move(node));
  }
  JsonNode* place(JsonNode node) {
    if (open_.empty()) {
      root_ = std::move(node);
      return &root_;
    }
    std::vector<JsonNode>& items = open_.back().node->items;
    items.push_back(std::move(node));
    return &items.back();
  }
  bool add(JsonNode node) {
    place(std::move(node));
    return true;
  }
  bool open(JsonType type) {
    if (open_.size() >= kMaxNesting) {
      error_ = one_problem(thing_, pointer(), "",
                           fmt::format("it is nested deeper than {} levels", kMaxNesting),
                           fmt::format("{} needs six at most", thing_));
      return false;
    }
    JsonNode node;
    node.type = type;
    open_.push_back({place(std::move(node)), {}});
    return true;
  }
  bool close() {
    open_.pop_back();
    return true;
  }
  // Where the open level is.
  [[nodiscard]] std::string pointer() const {
    std::string out;
    for (std::size_t depth = 0; depth + 1 < open_.size(); ++depth) {
      const JsonNode& node = *open_[depth].node;
      out += '/';
      out += node.type == JsonType::kObject ? pointer_part(node.names.back())
                                            : std::to_string(node.items.size() - 1);
    }
    return out;
  }

  std::string_view text_;
  std::string_view thing_;
  JsonNode root_;
  std::vector<Level> open_;
  Error error_;
};

}  // namespace

const JsonNode* JsonNode::find(std::string_view name) const {
  for (std::size_t at = 0; at < names.size(); ++at) {
    if (names[at] == name) return &items[at];
  }
  return nullptr;
}

Result<JsonNode> parse_json(std::string_view text, std::string_view thing) {
  if (text.size() > kMaxBytes) {
    return fail(one_problem(thing, "", fmt::format("{} bytes", text.size()),
                            fmt::format("it is larger than {} MB", kMaxBytes / (1024 * 1024)),
                            "check that it is the right file"));
  }
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) {
    text.remove_prefix(kByteOrderMark.size());
    // The parser would pass over a second one.
    if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) {
      return fail(one_problem(thing, "line 1, column 1", "", "a second byte-order mark",
                              "keep at most one at the beginning"));
    }
  }
  TreeBuilder builder(text, thing);
  if (!nlohmann::json::sax_parse(text.begin(), text.end(), &builder)) {
    return fail(std::move(builder.error()));
  }
  return std::move(builder.root());
}

std::string pointer_part(std::string_view name) {
  std::string out;
  for (const char c : name) {
    if (c == '~') {
      out += "~0";
    } else if (c == '/') {
      out += "~1";
    } else {
      out += c;
    }
  }
  return out;
}

std::string shown_value(const JsonNode& node) {
  switch (node.type) {
    case JsonType::kNull:
      return "null";
    case JsonType::kBool:
      return node.flag ? "true" : "false";
    case JsonType::kInteger:
      return std::to_string(node.integer);
    case JsonType::kList:
      return node.items.empty() ? "[]" : "[...]";
    case JsonType::kObject:
      return node.items.empty() ? "{}" : "{...}";
    case JsonType::kNumber:
    case JsonType::kText:
      break;
  }
  if (node.text.size() <= kShownBytes) return node.text;
  std::size_t end = kShownBytes;
  while (end > 0 && continues_character(node.text[end])) --end;
  return node.text.substr(0, end) + "...";
}

}  // namespace larderloop::intake
