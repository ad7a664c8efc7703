#include "app/problem_file_parts.h"

#include "larderloop/core/validate.h"

#include <fmt/core.h>

#include <algorithm>

namespace larderloop::problem_file {
namespace {

// The member, or null where it is absent or says so.
const JsonNode* given(Reader& in, std::string_view name, Need need) {
  const JsonNode* node = in.member(name, need);
  if (node != nullptr && need == Need::kOptional && node->type == JsonType::kNull) return nullptr;
  return node;
}

std::optional<std::string> read_id(const JsonNode& node, const Path& path, Findings& findings) {
  auto text = intake::read_text(node, path, findings);
  if (!text) return text;
  if (text->empty()) {
    findings.add(path, &node, "the id is empty", "write a short word");
    return std::nullopt;
  }
  if (text->find('|') != std::string::npos) {
    findings.add(path, &node, fmt::format("the id '{}' holds the character '|'", shown_value(node)),
                 "write it with another one, for example '-'");
    return std::nullopt;
  }
  return text;
}

void told_twice(const JsonNode& node, const Path& path, Findings& findings) {
  findings.add(path, &node, fmt::format("'{}' stands there twice", shown_value(node)),
               "keep one of the two");
}

}  // namespace

void number(Reader& in, std::string_view name, std::int64_t& out, Range range, Need need) {
  if (const JsonNode* node = given(in, name, need)) {
    const auto value =
        intake::read_whole(*node, Path(in.path(), name), in.findings(), range.least, range.most);
    if (value) out = *value;
  }
}

void number(Reader& in, std::string_view name, std::optional<std::int64_t>& out, Range range) {
  if (const JsonNode* node = given(in, name, Need::kOptional)) {
    out = intake::read_whole(*node, Path(in.path(), name), in.findings(), range.least, range.most);
  }
}

void flag(Reader& in, std::string_view name, bool& out) {
  if (const JsonNode* node = given(in, name, Need::kOptional)) {
    if (const auto value = intake::read_flag(*node, Path(in.path(), name), in.findings()))
      out = *value;
  }
}

void own_id(Reader& in, std::string& out, Ids& taken) {
  const JsonNode* node = in.member("id", Need::kRequired);
  if (node == nullptr) return;
  const Path path(in.path(), "id");
  auto id = read_id(*node, path, in.findings());
  if (node->type == JsonType::kText && !taken.insert(node->text).second && id)
    told_twice(*node, path, in.findings());
  if (id) out = std::move(*id);
}

void any_id(Reader& in, std::string_view name, std::string& out) {
  if (const JsonNode* node = in.member(name, Need::kRequired)) {
    if (auto id = read_id(*node, Path(in.path(), name), in.findings())) out = std::move(*id);
  }
}

std::optional<std::string> read_reference(const JsonNode& node, const Path& path,
                                          Findings& findings, const Ids& known,
                                          std::string_view thing) {
  auto text = intake::read_text(node, path, findings);
  if (!text || known.count(*text) > 0) return text;
  const std::string near = nearest(*text, {known.begin(), known.end()});
  findings.add(path, &node, fmt::format("'{}' is not {} of this problem", shown_value(node), thing),
               near.empty() ? fmt::format("name {} that is listed, or list it", thing)
                            : fmt::format("did you mean '{}'?", near));
  return std::nullopt;
}

void reference(Reader& in, std::string_view name, std::string& out, const Ids& known,
               std::string_view thing, Need need) {
  if (const JsonNode* node = given(in, name, need)) {
    auto id = read_reference(*node, Path(in.path(), name), in.findings(), known, thing);
    if (id) out = std::move(*id);
  }
}

void references(Reader& in, std::string_view name, std::vector<std::string>& out, const Ids& known,
                std::string_view thing) {
  Ids seen;
  in.each(name, Need::kRequired, [&](const JsonNode& node, const Path& path) {
    auto id = read_reference(node, path, in.findings(), known, thing);
    if (!id) return;
    if (!seen.insert(*id).second) told_twice(node, path, in.findings());
  });
  out.assign(seen.begin(), seen.end());
}

void words(Reader& in, std::string_view name, std::set<std::string>& out) {
  in.each(name, Need::kOptional, [&](const JsonNode& node, const Path& path) {
    auto text = intake::read_text(node, path, in.findings());
    if (text && !out.insert(*text).second) told_twice(node, path, in.findings());
  });
}

void numbers_by_id(Reader& in, std::string_view name, plan::NumbersById& out,
                   const Ids& known, std::string_view thing, Range range) {
  const JsonNode* node = given(in, name, Need::kOptional);
  if (node == nullptr) return;
  const Path path(in.path(), name);
  if (node->type != JsonType::kObject) {
    in.findings().add(path, node, "an object is wanted here",
                      fmt::format("write {{\"id of {}\": number}}", thing));
    return;
  }
  for (std::size_t at = 0; at < node->names.size(); ++at) {
    const std::string& id = node->names[at];
    const Path member(path, id);
    JsonNode written;
    written.type = JsonType::kText;
    written.text = id;
    const auto found = read_reference(written, member, in.findings(), known, thing);
    const auto value =
        intake::read_whole(node->items[at], member, in.findings(), range.least, range.most);
    if (found && value) out[id] = *value;
  }
}

void tastes(Reader& in, plan::Eater& out, const Ids& products) {
  words(in, "avoid", out.avoid);
  plan::NumbersById ratings;
  numbers_by_id(in, "ratings", ratings, products, "a product", {-2, 2});
  for (const auto& [product, rating] : ratings) out.ratings[product] = static_cast<int>(rating);
}

}  // namespace larderloop::problem_file
