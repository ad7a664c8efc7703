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

constexpr double kAhead = 0.01;  // what a level counts beside the one before it
constexpr double kUsed = 1e-6;
constexpr std::int64_t kMostSteps = 1'000'000;

class Levels {
 public:
  Levels(const Mip& mip, const MipPoint& start, const Effort& effort,
         const std::vector<std::int64_t>& floors)
      : mip_(mip),
        effort_(effort),
        floors_(floors),
        relaxation_(mip),
        best_(start),
        begun_(std::chrono::steady_clock::now()) {
    if (effort_.seconds) {
      const std::chrono::duration<double> all(*effort_.seconds);
      relaxation_.stop_at(begun_ + std::chrono::duration_cast<Relaxation::Clock::duration>(all));
    }
  }

  MipOutcome run() {
    MipOutcome outcome;
    for (std::size_t k = 0; k < mip_.levels.size(); ++k) {
      const std::int64_t bound = solve(k);
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
    const std::int64_t floor = k < floors_.size() ? std::max(trivial, floors_[k]) : trivial;
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
    if (floor >= value(k) || k >= effort_.relaxed) return floor;
    if (!relaxation_.solve(kMostIterations)) return floor;
    std::int64_t bound = std::max(floor, relaxation_.bound().value_or(floor));
    if (bound >= value(k)) {
      fix_by_reduced_costs(k);
      return bound;
    }
    const std::int64_t steps = std::min(dive_iterations(), steps_left());
    if (k >= effort_.dived_from && k < effort_.dived && steps > 0)
      take(dive(mip_, relaxation_, value(k) - 1, steps), k);
    if (k < effort_.searched_near) search_near(k, bound);
    if (bound < value(k) && k < effort_.branched && effort_.nodes > 0 && !out_of_time()) {
      while (bound < value(k)) {
        const Branched branched =
            branch_and_cut(mip_, relaxation_, level, value(k) - 1, effort_.nodes, seconds_left());
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

  // Between the relaxation and the best point: what both agree on is held, the rest is small enough
  // to branch on.
  void search_near(std::size_t k, std::int64_t bound) {
    std::vector<std::pair<std::int64_t, std::int64_t>> before;
    for (std::size_t j = 0; j < mip_.columns.size(); ++j)
      before.emplace_back(relaxation_.lower(static_cast<int>(j)),
                          relaxation_.upper(static_cast<int>(j)));
    for (int round = 0;
         round < kNearRounds && bound < value(k) && !out_of_time() && steps_left() > 0; ++round) {
      if (!relaxation_.solve(kMostIterations)) break;
      const double* values = relaxation_.values();
      std::vector<std::size_t> agreed;
      for (std::size_t j = 0; j < mip_.columns.size(); ++j) {
        if (std::abs(values[j] - static_cast<double>(best_[j])) < kSame) agreed.push_back(j);
      }
      if (mip_.columns.size() - agreed.size() > effort_.most_near) break;
      for (const std::size_t j : agreed) relaxation_.fix(static_cast<int>(j), best_[j], best_[j]);
      const Branched found = branch_and_cut(mip_, relaxation_, mip_.levels[k], value(k) - 1,
                                            kNearNodes, seconds_left());
      for (std::size_t j = 0; j < before.size(); ++j)
        relaxation_.fix(static_cast<int>(j), before[j].first, before[j].second);
      if (!take(found.point, k)) break;
    }
    (void)relaxation_.solve(kMostIterations);
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

  [[nodiscard]] std::int64_t dive_iterations() const {
    return 3 * static_cast<std::int64_t>(mip_.columns.size() + mip_.rows.size());
  }
  [[nodiscard]] std::int64_t steps_left() const { return effort_.steps - relaxation_.iterations(); }
  [[nodiscard]] std::optional<double> seconds_left() const {
    if (!effort_.seconds) return std::nullopt;
    const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - begun_;
    return std::max(0.0, *effort_.seconds - spent.count());
  }
  [[nodiscard]] bool out_of_time() const {
    const auto left = seconds_left();
    return left && *left <= 0;
  }

  static constexpr std::int64_t kMostIterations = 1'000'000;
  static constexpr int kNearRounds = 3;
  static constexpr std::int64_t kNearNodes = 10;
  static constexpr double kSame = 1e-6;
  static constexpr double kFixing = 1e-4;

  const Mip& mip_;
  const Effort& effort_;
  const std::vector<std::int64_t>& floors_;
  Relaxation relaxation_;
  MipPoint best_;
  std::vector<std::int64_t> held_;
  std::chrono::steady_clock::time_point begun_;
};

}  // namespace

MipOutcome solve_levels(const Mip& mip, const MipPoint& start, const Effort& effort,
                        const std::vector<std::int64_t>& floors) {
  return Levels(mip, start, effort, floors).run();
}

MipPoint relaxed_use(const Mip& mip, std::size_t levels) {
  Relaxation relaxation(mip);
  double weight = 1;
  for (std::size_t k = 0; k < std::min(levels, mip.levels.size()); ++k) {
    relaxation.minimise_too(mip.levels[k], weight);
    weight *= kAhead;
  }
  if (!relaxation.solve(kMostSteps)) return {};
  MipPoint use;
  for (std::size_t j = 0; j < mip.columns.size(); ++j)
    use.push_back(relaxation.values()[j] > kUsed ? 1 : 0);
  return use;
}

std::vector<std::int64_t> relaxed_bounds(const Mip& mip, const std::vector<std::int64_t>& values,
                                         std::size_t levels) {
  Relaxation relaxation(mip);
  std::vector<std::int64_t> bounds;
  for (std::size_t k = 0; k < mip.levels.size(); ++k) {
    const MipLevel& level = mip.levels[k];
    std::int64_t bound = level.constant;
    for (const MipTerm& term : level.terms)
      bound += term.factor *
               (term.factor > 0 ? relaxation.lower(term.column) : relaxation.upper(term.column));
    relaxation.minimise(level);
    if (k < levels && bound < values[k] && relaxation.solve(1'000'000))
      bound = std::max(bound, relaxation.bound().value_or(bound));
    bounds.push_back(std::min(bound, values[k]));
    relaxation.hold(level, values[k]);
  }
  return bounds;
}

Limits household_limits() {
  return {20, 1'500, std::nullopt};
}

Limits without_limits() {
  return {std::numeric_limits<int>::max(), std::numeric_limits<std::int64_t>::max(), std::nullopt};
}

}  // namespace larderloop::plan
