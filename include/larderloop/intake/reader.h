// reader.h - reads the members of one JSON object one by one, each with the type and form it must
// have. Whatever is wrong becomes a finding and reading goes on, so that one run reports
// everything; what could not be read keeps its default.
#pragma once

#include "larderloop/core/amount.h"
#include "larderloop/core/date.h"
#include "larderloop/core/id.h"
#include "larderloop/intake/findings.h"
#include "larderloop/intake/json_tree.h"

#include <limits>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace larderloop::intake {

// The names of an enumeration, for reading and for hints.
template <class E>
using Names = std::vector<std::pair<std::string, E>>;

enum class Need { kOptional, kRequired };

// Single values. Each returns nothing after a finding.
[[nodiscard]] std::optional<std::string> read_text(const JsonNode& node, const Path& path,
                                                   Findings& findings);
[[nodiscard]] std::optional<std::string> read_key(const JsonNode& node, const Path& path,
                                                  Findings& findings);
[[nodiscard]] std::optional<std::int64_t> read_whole(const JsonNode& node, const Path& path,
                                                     Findings& findings, std::int64_t least,
                                                     std::int64_t most);
[[nodiscard]] std::optional<bool> read_flag(const JsonNode& node, const Path& path,
                                            Findings& findings);
[[nodiscard]] std::optional<Day> read_day(const JsonNode& node, const Path& path,
                                          Findings& findings);
[[nodiscard]] std::optional<Instant> read_instant(const JsonNode& node, const Path& path,
                                                  Findings& findings);
// Servings written as 2, 1.0 or 0.5; nothing finer than halves, no exponent.
[[nodiscard]] std::optional<HalfServings> read_servings(const JsonNode& node, const Path& path,
                                                        Findings& findings);
// Index into `known` of a name.
[[nodiscard]] std::optional<std::size_t> read_name(const JsonNode& node, const Path& path,
                                                   Findings& findings,
                                                   const std::vector<std::string>& known);

template <class E>
[[nodiscard]] std::optional<E> read_enum(const JsonNode& node, const Path& path, Findings& findings,
                                         const Names<E>& names) {
  std::vector<std::string> known;
  known.reserve(names.size());
  for (const auto& [name, value] : names) known.push_back(name);
  const auto index = read_name(node, path, findings, known);
  if (!index) return std::nullopt;
  return names[*index].second;
}

// The members of one object. Every member asked for is known; finish() reports the others.
class Reader {
 public:
  // `thing`: what the object is, for findings ("a person"). A node that is not an object is a
  // finding.
  Reader(const JsonNode& node, const Path& path, Findings& findings, std::string_view thing);
  Reader(const Reader&) = delete;
  Reader& operator=(const Reader&) = delete;
  Reader(Reader&&) = delete;
  Reader& operator=(Reader&&) = delete;
  ~Reader() = default;

  // The member, or null when it is absent (with Need::kRequired a finding).
  const JsonNode* member(std::string_view name, Need need);
  // Knows the member without reading it; a finding when it is there.
  void forbid(std::string_view name, std::string_view why, std::string_view remedy);
  [[nodiscard]] bool has(std::string_view name) const { return node_.find(name) != nullptr; }
  [[nodiscard]] bool is_object() const { return node_.type == JsonType::kObject; }
  [[nodiscard]] Findings& findings() { return findings_; }
  [[nodiscard]] const Path& path() const { return path_; }
  void fault(std::string what, std::string remedy) {
    findings_.add(path_, nullptr, std::move(what), std::move(remedy));
  }
  // Reports the members nobody asked for, with the nearest known name.
  void finish();

  void text(std::string_view name, std::string& out, Need need = Need::kOptional);
  void flag(std::string_view name, bool& out);
  void day(std::string_view name, Day& out);  // required
  void day(std::string_view name, std::optional<Day>& out, Need need = Need::kOptional);
  void instant(std::string_view name, Instant& out);  // required
  void whole(std::string_view name, std::int64_t& out, Need need = Need::kOptional);
  void whole(std::string_view name, int& out, Need need = Need::kOptional);
  void whole(std::string_view name, std::optional<std::int64_t>& out);
  void whole(std::string_view name, std::optional<int>& out);
  void servings(std::string_view name, HalfServings& out);
  void servings(std::string_view name, std::optional<HalfServings>& out);

  template <class Tag>
  void key(std::string_view name, Key<Tag>& out, Need need = Need::kRequired) {
    if (const JsonNode* node = member(name, need)) {
      if (auto text = read_key(*node, Path(path_, name), findings_)) {
        out = Key<Tag>(std::move(*text));
      }
    }
  }
  template <class Tag>
  void key(std::string_view name, std::optional<Key<Tag>>& out) {
    Key<Tag> value;
    key(name, value, Need::kOptional);
    if (!value.empty()) out = std::move(value);
  }
  template <class Tag>
  void id(std::string_view name, Id<Tag>& out) {
    if (const JsonNode* node = member(name, Need::kRequired)) {
      if (const auto value = read_whole(*node, Path(path_, name), findings_, 1,
                                        std::numeric_limits<std::int64_t>::max())) {
        out = Id<Tag>(*value);
      }
    }
  }
  template <class E>
  void one_of(std::string_view name, E& out, const Names<E>& names, Need need = Need::kOptional) {
    if (const JsonNode* node = member(name, need)) {
      if (const auto value = read_enum(*node, Path(path_, name), findings_, names)) out = *value;
    }
  }
  template <class E>
  void one_of(std::string_view name, std::optional<E>& out, const Names<E>& names) {
    if (const JsonNode* node = member(name, Need::kOptional)) {
      out = read_enum(*node, Path(path_, name), findings_, names);
    }
  }
  template <class E>
  void set_of(std::string_view name, std::set<E>& out, const Names<E>& names) {
    each(name, Need::kOptional, [&](const JsonNode& node, const Path& path) {
      const auto value = read_enum(node, path, findings_, names);
      if (value && !out.insert(*value).second) repeated(node, path);
    });
  }
  template <class Tag>
  void keys(std::string_view name, std::vector<Key<Tag>>& out) {
    std::set<std::string> seen;
    each(name, Need::kOptional, [&](const JsonNode& node, const Path& path) {
      auto text = read_key(node, path, findings_);
      if (!text) return;
      if (!seen.insert(*text).second) repeated(node, path);
      out.emplace_back(std::move(*text));
    });
  }
  // Calls `read(node, path)` for each element of a list.
  template <class Function>
  void each(std::string_view name, Need need, Function read) {
    const JsonNode* list = member(name, need);
    if (list == nullptr) return;
    const Path path(path_, name);
    if (list->type != JsonType::kList) {
      not_a_list(*list, path);
      return;
    }
    for (std::size_t at = 0; at < list->items.size(); ++at) read(list->items[at], Path(path, at));
  }

 private:
  void not_a_list(const JsonNode& node, const Path& path);
  void repeated(const JsonNode& node, const Path& path);

  const JsonNode& node_;
  const Path& path_;
  Findings& findings_;
  std::string thing_;
  std::vector<std::string> known_;
};

}  // namespace larderloop::intake
