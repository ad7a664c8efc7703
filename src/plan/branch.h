// branch.h - branch and cut by COIN-OR CBC. Private to this room; no other file knows Cbc.
#pragma once

#include "larderloop/plan/solve.h"
#include "plan/relaxation.h"

#include <optional>

namespace larderloop::plan {

// `point`: a whole point below the cutoff, not yet checked. `bound`: no point of the relaxation as
// it stands is below it. `finished`: there is nothing better than what was found (or, without a
// point, nothing at or below the cutoff).
struct Branched {
  std::optional<MipPoint> point;
  std::optional<std::int64_t> bound;
  bool finished = false;
};

// Looks for a point of the level with a value of at most `cutoff`, within the bounds and rows of
// the relaxation.
[[nodiscard]] Branched branch_and_cut(const Mip& mip, Relaxation& relaxation, const MipLevel& level,
                                      std::int64_t cutoff, std::int64_t nodes,
                                      std::optional<double> seconds);

}  // namespace larderloop::plan
