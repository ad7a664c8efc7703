#include "plan/mip.h"

#include "plan/exact.h"

namespace larderloop::plan {
namespace {

Exact sum_of(const std::vector<MipTerm>& terms, const MipPoint& point) {
  Exact sum = 0;
  for (const MipTerm& term : terms) {
    sum += Exact(term.factor) * point[static_cast<std::size_t>(term.column)];
  }
  return sum;
}

}  // namespace

bool allowed(const Mip& mip, const MipPoint& point) {
  if (point.size() != mip.columns.size()) return false;
  for (std::size_t j = 0; j < point.size(); ++j) {
    if (point[j] < mip.columns[j].lower || point[j] > mip.columns[j].upper) return false;
  }
  for (const MipRow& row : mip.rows) {
    const Exact sum = sum_of(row.terms, point);
    if (row.upper != MipRow::kNone && !sum.at_most(row.upper)) return false;
    if (row.lower != MipRow::kNone && !Exact(row.lower).at_most(sum)) return false;
  }
  return true;
}

std::int64_t value_of(const MipLevel& level, const MipPoint& point) {
  return (sum_of(level.terms, point) + level.constant).value();
}

}  // namespace larderloop::plan
