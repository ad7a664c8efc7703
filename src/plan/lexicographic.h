// lexicographic.h - solves the levels of an integer program one after the other. Private to this
// room.
#pragma once

#include "larderloop/plan/solve.h"
#include "plan/mip.h"

#include <functional>
#include <optional>
#include <vector>

namespace larderloop::plan {

struct MipOutcome {
  MipPoint point;                    // allowed, best found
  std::vector<std::int64_t> values;  // by level
  std::vector<std::int64_t> bounds;  // by level, given the values before
  bool stopped = false;
};

// Pre: `start` is allowed. Levels from `first` on are solved; those before are held at the values
// of `start`.
[[nodiscard]] MipOutcome solve_levels(const Mip& mip, const MipPoint& start, const Limits& limits,
                                      std::size_t first = 0);

}  // namespace larderloop::plan
