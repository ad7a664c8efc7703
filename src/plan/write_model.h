// write_model.h - an integer program as text that common solvers read. Private to this room.
#pragma once

#include "larderloop/plan/solve.h"
#include "plan/mip.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace larderloop::plan {

// The program that minimises one level, the levels before it held at `values` (none of them worse).
// A column `constant`, fixed at 1, carries the level's constant, so that the optimum is the value
// of the level. Rows with two different sides become two rows. Pre: level < mip.levels.size();
// values.size() >= level.
[[nodiscard]] std::string write_model(const Mip& mip, std::size_t level,
                                      const std::vector<std::int64_t>& values, ModelFormat format);

}  // namespace larderloop::plan
