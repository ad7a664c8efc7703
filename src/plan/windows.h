// windows.h - makes a whole point better part by part: the columns of a few weeks are free, all
// others stay as they are, and the small program that is left is solved. Private to this room.
#pragma once

#include "plan/mip.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace larderloop::plan {

// Where a column belongs. `part`: kFollows = it follows from the other columns of its family, and
// is free where one of these is.
struct Belongs {
  static constexpr std::size_t kFollows = SIZE_MAX;
  std::size_t part = kFollows;
  std::size_t family = 0;
};
using Parts = std::vector<Belongs>;  // by column

struct WindowEffort {
  std::size_t first_level = 0;  // those before it are held
  std::size_t levels = 2;       // that are sought at once
  std::size_t width = 2;        // parts in a window; the next begins half a window later
  std::int64_t nodes = 10;      // of branch and bound, a window
  std::optional<double> seconds;
};

// Pre: `point` is allowed. The point returned is allowed, and as good or better by the levels in
// their order. One pass over all windows.
[[nodiscard]] MipPoint improve_by_windows(const Mip& mip, MipPoint point, const Parts& parts,
                                          const WindowEffort& effort);

}  // namespace larderloop::plan
