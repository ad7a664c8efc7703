// mip.h - an integer program with an ordered list of objectives, as plain data. Private to this
// room. All numbers are whole.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace larderloop::plan {

struct MipTerm {
  int column = 0;
  std::int64_t factor = 0;
};

struct MipColumn {
  std::string name;  // letters, digits, _ only; unique
  std::int64_t lower = 0;
  std::int64_t upper = 0;
  bool continuous = false;  // whole in every solution that matters, whatever the solver thinks
  int rank = 0;             // a dive fixes the smaller first
};

// lower <= sum of terms <= upper; kNone: no limit on that side.
struct MipRow {
  static constexpr std::int64_t kNone = INT64_MAX;
  std::string name;
  std::int64_t lower = kNone;
  std::int64_t upper = kNone;
  std::vector<MipTerm> terms;
};

struct MipLevel {
  std::string name;
  std::int64_t constant = 0;
  std::vector<MipTerm> terms;  // to be minimised
};

using MipPoint = std::vector<std::int64_t>;  // by column

struct Mip {
  std::vector<MipColumn> columns;
  std::vector<MipRow> rows;
  std::vector<MipLevel> levels;

  int add_column(std::string name, std::int64_t lower, std::int64_t upper, int rank = 0) {
    columns.push_back({std::move(name), lower, upper, false, rank});
    return static_cast<int>(columns.size()) - 1;
  }
  void add_row(std::string name, std::int64_t lower, std::int64_t upper,
               std::vector<MipTerm> terms) {
    rows.push_back({std::move(name), lower, upper, std::move(terms)});
  }
};

// Does the point keep every bound and row, in 64-bit integers?
[[nodiscard]] bool allowed(const Mip& mip, const MipPoint& point);
[[nodiscard]] std::int64_t value_of(const MipLevel& level, const MipPoint& point);

}  // namespace larderloop::plan
