#include "plan/dive.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <vector>

namespace larderloop::plan {
namespace {

constexpr double kWhole = 1e-6;
constexpr std::size_t kBatch = 6;  // the part of the fractional columns fixed at once

class Dive {
 public:
  Dive(const Mip& mip, Relaxation& relaxation, std::int64_t cutoff, std::int64_t iterations)
      : mip_(mip), relaxation_(relaxation), cutoff_(cutoff), iterations_left_(iterations) {}

  std::optional<MipPoint> run() {
    for (std::size_t j = 0; j < mip_.columns.size(); ++j) {
      const int column = static_cast<int>(j);
      bounds_.emplace_back(relaxation_.lower(column), relaxation_.upper(column));
    }
    std::optional<MipPoint> found = descend();
    for (std::size_t j = 0; j < bounds_.size(); ++j)
      relaxation_.fix(static_cast<int>(j), bounds_[j].first, bounds_[j].second);
    return found;
  }

 private:
  struct Fractional {
    int rank;
    double off;
    int column;
    std::int64_t nearest, other;
  };

  std::vector<Fractional> fractional() const {
    std::vector<Fractional> list;
    const double* values = relaxation_.values();
    for (std::size_t j = 0; j < mip_.columns.size(); ++j) {
      const double nearest = std::round(values[j]);
      const double off = values[j] - nearest;
      if (mip_.columns[j].continuous || std::abs(off) <= kWhole) continue;
      const auto whole = static_cast<std::int64_t>(nearest);
      list.push_back({mip_.columns[j].rank, std::abs(off), static_cast<int>(j), whole,
                      off > 0 ? whole + 1 : whole - 1});
    }
    std::sort(list.begin(), list.end(), [](const Fractional& a, const Fractional& b) {
      return std::tie(a.rank, a.off, a.column) < std::tie(b.rank, b.off, b.column);
    });
    return list;
  }

  bool resolve() {
    const std::int64_t before = relaxation_.iterations();
    const bool solved = relaxation_.solve(iterations_left_);
    iterations_left_ -= relaxation_.iterations() - before;
    if (!solved || iterations_left_ <= 0) return false;
    const auto bound = relaxation_.bound();
    return !bound || *bound <= cutoff_;
  }

  bool try_fixing(const std::vector<Fractional>& batch) {
    std::vector<std::pair<std::int64_t, std::int64_t>> before;
    for (const Fractional& each : batch) {
      before.emplace_back(relaxation_.lower(each.column), relaxation_.upper(each.column));
      relaxation_.fix(each.column, each.nearest, each.nearest);
    }
    if (resolve()) return true;
    for (std::size_t i = 0; i < batch.size(); ++i)
      relaxation_.fix(batch[i].column, before[i].first, before[i].second);
    return false;
  }

  std::optional<MipPoint> descend() {
    while (true) {
      std::vector<Fractional> list = fractional();
      if (list.empty()) break;
      std::size_t of_rank = 1;
      while (of_rank < list.size() && list[of_rank].rank == list.front().rank) ++of_rank;
      list.resize((of_rank + kBatch - 1) / kBatch);
      if (try_fixing(list)) continue;
      if (iterations_left_ <= 0) return std::nullopt;
      list.resize(1);
      if (try_fixing(list)) continue;
      std::swap(list.front().nearest, list.front().other);
      if (!try_fixing(list)) return std::nullopt;
    }
    MipPoint point;
    const double* values = relaxation_.values();
    for (std::size_t j = 0; j < mip_.columns.size(); ++j) point.push_back(std::llround(values[j]));
    return point;
  }

  const Mip& mip_;
  Relaxation& relaxation_;
  std::int64_t cutoff_;
  std::int64_t iterations_left_;
  std::vector<std::pair<std::int64_t, std::int64_t>> bounds_;
};

}  // namespace

std::optional<MipPoint> dive(const Mip& mip, Relaxation& relaxation, std::int64_t cutoff,
                             std::int64_t iterations) {
  return Dive(mip, relaxation, cutoff, iterations).run();
}

}  // namespace larderloop::plan
