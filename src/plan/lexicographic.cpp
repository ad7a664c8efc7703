#include "plan/lexicographic.h"

#include "plan/branch.h"
#include "plan/dive.h"
#include "plan/tidy.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <limits>
#include <utility>

namespace larderloop::plan {
namespace {

class Levels {
 public:
  Levels(const Mip& mip, const MipPoint& start, const Limits& limits)
      : mip_(mip),
        limits_(limits),
        relaxation_(mip),
        best_(start),
        begun_(std::chrono::steady_clock::now()) {}

  MipOutcome run(std::size_t first) {
    MipOutcome outcome;
    for (std::size_t k = 0; k < mip_.levels.size(); ++k) {
      std::int64_t bound = value(k);
      if (k >= first) bound = solve(k);
      outcome.bounds.push_back(std::min(bound, value(k)));
      if (outcome.bounds.back() < value(k)) outcome.stopped = true;
      relaxation_.hold(mip_.levels[k], value(k));
      held_.push_back(value(k));
    }
    outcome.point = best_;
    for (const MipLevel& level : mip_.levels) outcome.values.push_back(value_of(level, best_));
    return outcome;
  }

 private:
  [[nodiscard]] std::int64_t value(std::size_t k) const { return value_of(mip_.levels[k], best_); }

  // What the bounds of the columns alone say.
  [[nodiscard]] std::int64_t trivial_bound(const MipLevel& level) const {
    std::int64_t sum = level.constant;
    for (const MipTerm& term : level.terms) {
      sum += term.factor *
             (term.factor > 0 ? relaxation_.lower(term.column) : relaxation_.upper(term.column));
    }
    return sum;
  }

  std::int64_t solve(std::size_t k) {
    const MipLevel& level = mip_.levels[k];
    const std::int64_t trivial = trivial_bound(level);
    if (trivial >= value(k)) {
      for (const MipTerm& term :
           level.terms) {  // the level stays as it is only with all of them at their best
        const std::int64_t at =
            term.factor > 0 ? relaxation_.lower(term.column) : relaxation_.upper(term.column);
        if (term.factor != 0) relaxation_.fix(term.column, at, at);
      }
      return trivial;
    }
    relaxation_.minimise(level);
    if (!relaxation_.solve(kMostIterations)) return trivial;
    std::int64_t bound = std::max(trivial, relaxation_.bound().value_or(trivial));
    if (bound >= value(k)) {
      fix_by_reduced_costs(k);
      return bound;
    }
    take(dive(mip_, relaxation_, value(k) - 1, kMostIterations), k);
    if (bound < value(k) && limits_.nodes > 0 && !out_of_time()) {
      while (bound < value(k)) {
        const Branched branched =
            branch_and_cut(mip_, relaxation_, level, value(k) - 1, limits_.nodes, seconds_left());
        const bool better = branched.point && take(branched.point, k);
        if (branched.finished) {
          if (better || !branched.point) bound = value(k);
          break;
        }
        // A bound above a plan that exists is none.
        if (branched.bound && *branched.bound <= value(k)) bound = std::max(bound, *branched.bound);
        break;
      }
    }
    if (!relaxation_.solve(kMostIterations)) return bound;
    fix_by_reduced_costs(k);
    return bound;
  }

  // Takes a point that is allowed, holds the levels before, and is better here.
  bool take(const std::optional<MipPoint>& point, std::size_t k) {
    if (!point || !allowed(mip_, *point)) return false;
    MipPoint found = *point;
    tidy(mip_, found);
    for (std::size_t before = 0; before < k; ++before) {
      if (value_of(mip_.levels[before], found) > held_[before]) return false;
    }
    if (value_of(mip_.levels[k], found) >= value(k)) return false;
    best_ = std::move(found);
    return true;
  }

  // Columns that no point with the value reached can move away from their bound.
  void fix_by_reduced_costs(std::size_t k) {
    const double gap = static_cast<double>(value(k)) - relaxation_.bound_value();
    const double* reduced = relaxation_.reduced_costs();
    for (std::size_t j = 0; j < mip_.columns.size(); ++j) {
      const int column = static_cast<int>(j);
      const std::int64_t lower = relaxation_.lower(column), upper = relaxation_.upper(column);
      if (lower == upper || std::abs(reduced[j]) <= gap + kFixing) continue;
      const std::int64_t at = reduced[j] > 0 ? lower : upper;
      if (best_[j] == at) relaxation_.fix(column, at, at);
    }
  }

  [[nodiscard]] std::optional<double> seconds_left() const {
    if (!limits_.seconds) return std::nullopt;
    const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - begun_;
    return std::max(0.0, *limits_.seconds - spent.count());
  }
  [[nodiscard]] bool out_of_time() const {
    const auto left = seconds_left();
    return left && *left <= 0;
  }

  static constexpr std::int64_t kMostIterations = 1'000'000;
  static constexpr double kFixing = 1e-4;

  const Mip& mip_;
  const Limits& limits_;
  Relaxation relaxation_;
  MipPoint best_;
  std::vector<std::int64_t> held_;
  std::chrono::steady_clock::time_point begun_;
};

}  // namespace

MipOutcome solve_levels(const Mip& mip, const MipPoint& start, const Limits& limits,
                        std::size_t first) {
  return Levels(mip, start, limits).run(first);
}

Limits without_limits() {
  return {std::numeric_limits<int>::max(), std::nullopt};
}

}  // namespace larderloop::plan
