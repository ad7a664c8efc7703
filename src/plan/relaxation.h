// relaxation.h - the linear relaxation of an integer program, solved by Clp. Private to this room;
// no other file knows Clp.
#pragma once

#include "plan/mip.h"

#include <chrono>
#include <cstdint>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

class ClpSimplex;

namespace larderloop::plan {

class Relaxation {
 public:
  explicit Relaxation(const Mip& mip);
  ~Relaxation();
  Relaxation(const Relaxation&) = delete;
  Relaxation& operator=(const Relaxation&) = delete;

  using Clock = std::chrono::steady_clock;
  void stop_at(Clock::time_point deadline) { deadline_ = deadline; }
  void minimise(const MipLevel& level);
  // As well: the level counts this much. Bounds then say nothing of a single level.
  void minimise_too(const MipLevel& level, double weight);
  // False: no point keeps all rows, or the solver gave up. `iterations`: at most so many.
  [[nodiscard]] bool solve(std::int64_t iterations);
  [[nodiscard]] bool solve_from_other_side(std::int64_t iterations);
  [[nodiscard]] const double* values() const;
  [[nodiscard]] const double* reduced_costs() const;
  // A lower bound of the level over all whole points that keep the rows and column bounds as they
  // are now, worked out from the row prices alone: valid whatever the solver did. Nothing when it
  // says nothing.
  [[nodiscard]] std::optional<std::int64_t> bound() const;
  [[nodiscard]] double bound_value() const;  // before rounding up

  void hold(const MipLevel& level, std::int64_t value);  // from now on: level <= value
  void fix(int column, std::int64_t lower, std::int64_t upper);
  [[nodiscard]] std::int64_t lower(int column) const;
  [[nodiscard]] std::int64_t upper(int column) const;
  [[nodiscard]] std::int64_t iterations() const { return iterations_; }
  [[nodiscard]] ClpSimplex& clp() { return *clp_; }

 private:
  const Mip& mip_;
  std::unique_ptr<ClpSimplex> clp_;
  double constant_ = 0;
  std::int64_t iterations_ = 0;
  std::optional<Clock::time_point> deadline_;
};

}  // namespace larderloop::plan
