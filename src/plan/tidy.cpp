#include "plan/tidy.h"

#include <algorithm>
#include <cstddef>

namespace larderloop::plan {
namespace {

std::size_t at(int column) {
  return static_cast<std::size_t>(column);
}

// Columns that cost in some level and pay in none.
std::vector<char> only_costs(const Mip& mip) {
  std::vector<char> costs(mip.columns.size(), 0), pays(mip.columns.size(), 0);
  for (const MipLevel& level : mip.levels) {
    for (const MipTerm& term : level.terms) {
      if (term.factor > 0) costs[at(term.column)] = 1;
      if (term.factor < 0) pays[at(term.column)] = 1;
    }
  }
  for (std::size_t column = 0; column < costs.size(); ++column)
    if (pays[column] != 0) costs[column] = 0;
  return costs;
}

}  // namespace

void tidy(const Mip& mip, MipPoint& point) {
  struct Entry {
    std::size_t row;
    std::int64_t factor;
  };
  const std::vector<char> costs = only_costs(mip);
  std::vector<std::vector<Entry>> rows_of(mip.columns.size());
  std::vector<std::int64_t> sums(mip.rows.size(), 0);
  for (std::size_t row = 0; row < mip.rows.size(); ++row) {
    for (const MipTerm& term : mip.rows[row].terms) {
      sums[row] += term.factor * point[at(term.column)];
      if (costs[at(term.column)] != 0) rows_of[at(term.column)].push_back({row, term.factor});
    }
  }
  for (std::size_t column = 0; column < point.size(); ++column) {
    if (costs[column] == 0) continue;
    std::int64_t down = point[column] - mip.columns[column].lower;
    for (const Entry& entry : rows_of[column]) {
      const MipRow& row = mip.rows[entry.row];
      if (entry.factor > 0 && row.lower != MipRow::kNone)
        down = std::min(down, (sums[entry.row] - row.lower) / entry.factor);
      if (entry.factor < 0 && row.upper != MipRow::kNone)
        down = std::min(down, (row.upper - sums[entry.row]) / -entry.factor);
    }
    if (down <= 0) continue;
    point[column] -= down;
    for (const Entry& entry : rows_of[column]) sums[entry.row] -= entry.factor * down;
  }
}

}  // namespace larderloop::plan
