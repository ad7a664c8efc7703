#include "larderloop/intake/findings.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <utility>

namespace larderloop::intake {
namespace {

// The index of the child that a part of a pointer names; past the end when there is none.
std::size_t child_index(const JsonNode& node, std::string_view part) {
  if (node.type == JsonType::kList) {
    std::size_t index = 0;
    const auto [end, error] = std::from_chars(part.data(), part.data() + part.size(), index);
    if (error == std::errc() && end == part.data() + part.size() && index < node.items.size()) {
      return index;
    }
    return node.items.size();
  }
  std::size_t index = 0;
  while (index < node.names.size() && pointer_part(node.names[index]) != part) ++index;
  return index;
}

// Positions from the root down; two of them compare as their places stand in the text.
std::vector<std::size_t> position(const JsonNode& document, std::string_view pointer) {
  std::vector<std::size_t> out;
  const JsonNode* node = &document;
  while (!pointer.empty() && node != nullptr) {
    pointer.remove_prefix(1);
    const std::string_view part = pointer.substr(0, pointer.find('/'));
    pointer.remove_prefix(part.size());
    const std::size_t index = child_index(*node, part);
    out.push_back(index);
    node = index < node->items.size() ? &node->items[index] : nullptr;
  }
  return out;
}

}  // namespace

std::string Path::pointer() const {
  if (parent_ == nullptr) return {};
  return parent_->pointer() + "/" + (is_index_ ? std::to_string(index_) : pointer_part(name_));
}

void Findings::add(const Path& path, const JsonNode* value, std::string what, std::string remedy) {
  if (problems_.size() >= kMaxGathered) return;
  problems_.push_back({path.pointer(), value == nullptr ? "" : shown_value(*value), std::move(what),
                       std::move(remedy)});
}

void Findings::add(std::vector<Problem> problems) {
  for (Problem& problem : problems) {
    if (problems_.size() >= kMaxGathered) return;
    problems_.push_back(std::move(problem));
  }
}

Error Findings::as_error(const JsonNode& document, std::string_view thing) const {
  std::vector<std::pair<std::vector<std::size_t>, const Problem*>> order;
  order.reserve(problems_.size());
  for (const Problem& problem : problems_) {
    order.emplace_back(position(document, problem.where), &problem);
  }
  std::stable_sort(order.begin(), order.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  Error error = make_error(ErrorKind::kBadData,
                           problems_.size() == 1 ? fmt::format("{} has 1 fault", thing)
                           : problems_.size() <= kMaxFindings
                               ? fmt::format("{} has {} faults", thing, problems_.size())
                               : fmt::format("{} has {}{} faults, here are the first {}", thing,
                                             problems_.size() < kMaxGathered ? "" : "at least ",
                                             problems_.size(), kMaxFindings),
                           "mend what is listed and read it again; nothing was changed");
  for (std::size_t at = 0; at < order.size() && at < kMaxFindings; ++at) {
    error.problems.push_back(*order[at].second);
  }
  return error;
}

}  // namespace larderloop::intake
