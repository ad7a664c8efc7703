// dive.h - a whole point near the optimum of a relaxation. Private to this room.
#pragma once

#include "plan/relaxation.h"

#include <optional>

namespace larderloop::plan {

// Fixes columns near a whole number in batches, smaller rank first, and solves again, until all are
// whole. A batch that leaves no point is taken back and fixed one by one. The relaxation is left
// with its bounds as they were. Gives up after `iterations`, or when the bound passes `cutoff`.
[[nodiscard]] std::optional<MipPoint> dive(const Mip& mip, Relaxation& relaxation,
                                           std::int64_t cutoff, std::int64_t iterations);

}  // namespace larderloop::plan
