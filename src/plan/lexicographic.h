// lexicographic.h - solves the levels of an integer program one after the other. Private to this
// room.
#pragma once

#include "larderloop/plan/solve.h"
#include "plan/mip.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace larderloop::plan {

// How far to go, by level: the first `branched` levels by branch and cut with at most `nodes`
// nodes, the first `searched_near` around the best plan known, from `dived_from` the first `dived`
// by diving, the first `relaxed` by the relaxation. Diving and searching end for all levels after
// `steps` of the simplex algorithm; what is left to branch on around a plan is left alone beyond
// `most_near` columns.
struct Effort {
  std::int64_t nodes = 0;
  std::size_t branched = SIZE_MAX;
  std::size_t searched_near = SIZE_MAX;
  std::size_t dived_from = 0;
  std::size_t dived = SIZE_MAX;
  std::size_t relaxed = SIZE_MAX;
  std::int64_t steps = INT64_MAX;
  std::size_t most_near = SIZE_MAX;
  std::optional<double> seconds;
};
[[nodiscard]] inline Effort effort_of(const Limits& limits) {
  Effort effort;
  effort.nodes = limits.nodes;
  effort.searched_near = 0;
  effort.seconds = limits.seconds;
  return effort;
}

struct MipOutcome {
  MipPoint point;                    // allowed, best found
  std::vector<std::int64_t> values;  // by level
  std::vector<std::int64_t> bounds;  // by level, given the values before
  bool stopped = false;
};

// Pre: `start` is allowed. `floors`: lower bounds of the levels known beforehand, each valid while
// no level before it is worse than in `start`.
[[nodiscard]] MipOutcome solve_levels(const Mip& mip, const MipPoint& start, const Effort& effort,
                                      const std::vector<std::int64_t>& floors = {});
// The columns that a relaxed point uses that has the first levels in mind, the earlier ones more: 1
// where it is above zero. Empty when there is none.
[[nodiscard]] MipPoint relaxed_use(const Mip& mip, std::size_t levels);
// Lower bounds of the levels from the relaxation alone (beyond the first `levels` from the bounds
// of the columns), each with the levels before it held
// at `values`.
[[nodiscard]] std::vector<std::int64_t> relaxed_bounds(const Mip& mip,
                                                       const std::vector<std::int64_t>& values,
                                                       std::size_t levels = SIZE_MAX);

}  // namespace larderloop::plan
