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
// nodes, the first `searched_near` around the best plan known, the first `dived` by diving, the
// first `relaxed` by the relaxation.
struct Effort {
  std::int64_t nodes = 0;
  std::size_t branched = SIZE_MAX;
  std::size_t searched_near = SIZE_MAX;
  std::size_t dived = SIZE_MAX;
  std::size_t relaxed = SIZE_MAX;
  std::optional<double> seconds;
};
[[nodiscard]] inline Effort effort_of(const Limits& limits) {
  return {limits.nodes, SIZE_MAX, 0, SIZE_MAX, SIZE_MAX, limits.seconds};
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
// Lower bounds of the levels from the relaxation alone, each with the levels before it held at
// `values`.
[[nodiscard]] std::vector<std::int64_t> relaxed_bounds(const Mip& mip,
                                                       const std::vector<std::int64_t>& values);

}  // namespace larderloop::plan
