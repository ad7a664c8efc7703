// findings.h - what is wrong with a document, gathered in one go and put into the order of the
// document.
#pragma once

#include "larderloop/core/error.h"
#include "larderloop/intake/json_tree.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop::intake {

inline constexpr std::size_t kMaxFindings = 200;  // reported
inline constexpr std::size_t kMaxGathered =
    100'000;  // kept while reading; a document with more is beyond listing

// A place in the document; lives on the stack of the readers, its pointer is written out only for
// findings.
class Path {
 public:
  Path() = default;
  Path(const Path& parent, std::string_view name) : parent_(&parent), name_(name) {}
  Path(const Path& parent, std::size_t index) : parent_(&parent), index_(index), is_index_(true) {}
  [[nodiscard]] std::string pointer() const;

 private:
  const Path* parent_ = nullptr;
  std::string_view name_;
  std::size_t index_ = 0;
  bool is_index_ = false;
};

class Findings {
 public:
  void add(const Path& path, const JsonNode* value, std::string what, std::string remedy);
  void add(std::vector<Problem> problems);
  [[nodiscard]] bool empty() const { return problems_.empty(); }
  // All of them as one error, in the order in which their pointers stand in `document`, at most
  // kMaxFindings. `thing`: what the document is.
  [[nodiscard]] Error as_error(const JsonNode& document,
                               std::string_view thing = kHouseholdDocument) const;

 private:
  std::vector<Problem> problems_;
};

}  // namespace larderloop::intake
