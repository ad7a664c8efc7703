// by_id.h - the things of a problem found by their ids. A sorted list: the lists of a problem come in the order of their ids, so it is
// filled without a comparison too many and takes one piece of memory, where a tree would take one a thing.
#pragma once

#include <algorithm>
#include <stdexcept>
#include <string_view>
#include <utility>
#include <vector>

namespace larderloop::plan {

// The ids belong to the things, which outlive this.
template <typename T>
class ById {
 public:
  using Entry = std::pair<std::string_view, const T*>;
  ById() = default;
  explicit ById(const std::vector<T>& all) {
    entries_.reserve(all.size());
    for (const T& each : all) entries_.emplace_back(each.id, &each);
    const auto before = [](const Entry& a, const Entry& b) { return a.first < b.first; };
    if (!std::is_sorted(entries_.begin(), entries_.end(), before)) std::stable_sort(entries_.begin(), entries_.end(), before);
    const auto same = [](const Entry& a, const Entry& b) { return a.first == b.first; };
    for (auto at = std::adjacent_find(entries_.begin(), entries_.end(), same); at != entries_.end();
         at = std::adjacent_find(at + 1, entries_.end(), same)) {
      twice_.push_back(at->first);
    }
    if (!twice_.empty()) entries_.erase(std::unique(entries_.begin(), entries_.end(), same), entries_.end());
  }

  [[nodiscard]] auto begin() const { return entries_.begin(); }
  [[nodiscard]] auto end() const { return entries_.end(); }
  [[nodiscard]] auto find(std::string_view id) const {
    // Most of a few ids differ in their lengths already.
    if (entries_.size() <= kFew) return std::find_if(entries_.begin(), entries_.end(), [&](const Entry& entry) { return entry.first == id; });
    const auto at = std::lower_bound(entries_.begin(), entries_.end(), id,
                                     [](const Entry& entry, std::string_view wanted) { return entry.first < wanted; });
    return at != entries_.end() && at->first == id ? at : entries_.end();
  }
  [[nodiscard]] std::size_t count(std::string_view id) const { return find(id) == end() ? 0 : 1; }
  // Throws std::out_of_range for an id that is not there.
  [[nodiscard]] const T* at(std::string_view id) const {
    const auto found = find(id);
    if (found == end()) throw std::out_of_range("no such id");
    return found->second;
  }
  // Ids that more than one thing has; the first of these is the one that is found.
  [[nodiscard]] const std::vector<std::string_view>& twice() const { return twice_; }

 private:
  static constexpr std::size_t kFew = 8;
  std::vector<Entry> entries_;
  std::vector<std::string_view> twice_;
};

}  // namespace larderloop::plan
