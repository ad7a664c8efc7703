// numbers_by_id.h - a number for each of some ids: a sorted list, which takes one piece of memory
// where a tree would take one an id. There are thousands of these in a problem of half a year, of
// some ids each.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace larderloop::plan {

class NumbersById {
 public:
  using Entry = std::pair<std::string, std::int64_t>;
  NumbersById() = default;
  // Of an id that stands there twice the first number counts.
  NumbersById(std::initializer_list<Entry> entries) {
    for (const Entry& each : entries) add(each.first, each.second);
  }

  [[nodiscard]] auto begin() const { return entries_.begin(); }  // by id
  [[nodiscard]] auto end() const { return entries_.end(); }
  [[nodiscard]] std::size_t size() const { return entries_.size(); }
  [[nodiscard]] bool empty() const { return entries_.empty(); }
  void reserve(std::size_t ids) { entries_.reserve(ids); }
  void clear() { entries_.clear(); }

  // The number of this id, or `otherwise`.
  [[nodiscard]] std::int64_t of(std::string_view id, std::int64_t otherwise) const {
    const std::size_t at = place_of(id);
    return is_at(at, id) ? entries_[at].second : otherwise;
  }
  [[nodiscard]] std::size_t count(std::string_view id) const {
    return is_at(place_of(id), id) ? 1 : 0;
  }
  // Throws std::out_of_range for an id that is not there.
  [[nodiscard]] std::int64_t at(std::string_view id) const {
    if (count(id) == 0) throw std::out_of_range("no such id");
    return of(id, 0);
  }
  // The number of this id, which is made `fresh` when it is not there yet. Fastest in the order of
  // the ids.
  std::int64_t& add(std::string_view id, std::int64_t fresh) {
    const std::size_t at =
        entries_.empty() || entries_.back().first < id ? entries_.size() : place_of(id);
    if (!is_at(at, id))
      entries_.emplace(entries_.begin() + static_cast<std::ptrdiff_t>(at), id, fresh);
    return entries_[at].second;
  }
  std::int64_t& operator[](std::string_view id) { return add(id, 0); }

  friend bool operator==(const NumbersById&, const NumbersById&) = default;

 private:
  [[nodiscard]] std::size_t place_of(std::string_view id) const {
    const auto at = std::lower_bound(
        entries_.begin(), entries_.end(), id,
        [](const Entry& entry, std::string_view wanted) { return entry.first < wanted; });
    return static_cast<std::size_t>(at - entries_.begin());
  }
  [[nodiscard]] bool is_at(std::size_t at, std::string_view id) const {
    return at < entries_.size() && entries_[at].first == id;
  }
  std::vector<Entry> entries_;
};

}  // namespace larderloop::plan
