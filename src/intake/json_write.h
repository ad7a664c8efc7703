// json_write.h - makes JSON objects member by member, leaving out what equals its default, and
// writes them in the canonical form of household documents (docs/household-document.md).
#pragma once

#include "intake/names.h"
#include "larderloop/core/amount.h"
#include "larderloop/core/date.h"
#include "larderloop/core/id.h"
#include "larderloop/intake/json_tree.h"

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace larderloop::intake {

inline constexpr std::size_t kMaxColumns =
    200;  // of a record on one line, indent included, comma not

[[nodiscard]] JsonNode text_node(std::string_view text);
[[nodiscard]] JsonNode whole_node(std::int64_t value);
[[nodiscard]] JsonNode flag_node(bool value);
[[nodiscard]] JsonNode servings_node(HalfServings amount);  // 2, 0.5

// One object in the making. add() writes always; the others leave out what is absent, empty or
// equal to `otherwise`.
class ObjectWriter {
 public:
  ObjectWriter& add(std::string_view name, JsonNode value);
  ObjectWriter& add(std::string_view name, std::string_view value) {
    return add(name, text_node(value));
  }
  ObjectWriter& add(std::string_view name, std::int64_t value) {
    return add(name, whole_node(value));
  }
  ObjectWriter& add(std::string_view name, Day day) { return add(name, iso_day(day)); }
  ObjectWriter& add(std::string_view name, Instant at) { return add(name, iso_instant(at)); }
  template <class Tag>
  ObjectWriter& add(std::string_view name, const Key<Tag>& key) {
    return add(name, std::string_view(key.str()));
  }
  template <class Tag>
  ObjectWriter& add(std::string_view name, Id<Tag> id) {
    return add(name, id.value());
  }

  ObjectWriter& text(std::string_view name, std::string_view value,
                     std::string_view otherwise = "");
  ObjectWriter& whole(std::string_view name, std::int64_t value, std::int64_t otherwise);
  ObjectWriter& flag(std::string_view name, bool value, bool otherwise = false);
  ObjectWriter& servings(std::string_view name, HalfServings value, HalfServings otherwise);
  ObjectWriter& object(std::string_view name, std::optional<JsonNode> value);
  ObjectWriter& list(std::string_view name, std::vector<JsonNode> items);
  template <class Tag>
  ObjectWriter& key(std::string_view name, const Key<Tag>& value) {
    return text(name, value.str());
  }
  template <class T>
  ObjectWriter& maybe(std::string_view name, const std::optional<T>& value) {
    return value ? add(name, *value) : *this;
  }
  template <class E>
  ObjectWriter& one_of(std::string_view name, E value, const Names<E>& names, E otherwise) {
    return value == otherwise ? *this : add(name, std::string_view(name_of(value, names)));
  }
  template <class E>
  ObjectWriter& maybe_one_of(std::string_view name, const std::optional<E>& value,
                             const Names<E>& names) {
    return value ? add(name, std::string_view(name_of(*value, names))) : *this;
  }
  template <class E>
  ObjectWriter& set_of(std::string_view name, const std::set<E>& values, const Names<E>& names) {
    std::set<std::string> sorted;
    for (const E value : values) sorted.insert(name_of(value, names));
    std::vector<JsonNode> items;
    for (const std::string& each : sorted) items.push_back(text_node(each));
    return list(name, std::move(items));
  }
  template <class Tag>
  ObjectWriter& keys(std::string_view name, const std::vector<Key<Tag>>& values) {
    std::vector<JsonNode> items;
    for (const Key<Tag>& value : values) items.push_back(text_node(value.str()));
    return list(name, std::move(items));
  }
  [[nodiscard]] JsonNode done() { return std::move(node_); }

 private:
  JsonNode node_ = [] {
    JsonNode node;
    node.type = JsonType::kObject;
    return node;
  }();
};

// The whole document: members of the household one a line, records of its lists one a line where
// they fit. Text that is not UTF-8 comes out with U+FFFD in place of the bad bytes.
[[nodiscard]] std::string write_canonical(const JsonNode& document);

}  // namespace larderloop::intake
