// eat_blocks.h - meals put together in blocks, so that a smaller model gives bounds. Private to
// this room. Meaning:  a block of one meal is that meal. A block of several meals of one week and
// kind is served as if they were one meal
//           of all their seats: whatever is allowed meal by meal is allowed block by block, never
//           the other way round, so that the best of the smaller model is a bound for the exact
//           one.
#pragma once

#include "plan/compiled.h"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace larderloop::plan {

enum class Grain { kMeals, kWeeks };

struct EatBlock {
  std::vector<std::size_t> meals;  // of the compiled problem, in calendar order
  std::size_t week = 0;
  std::size_t group = 0;  // blocks of several meals of one week interleave and share it
};

// One eater at a block.
struct BlockSeat {
  std::size_t block = 0;
  std::size_t eater = 0;
  std::int64_t appetite = 0;  // of all meals together
};

struct EatBlocks {
  EatBlocks(const CompiledEat& c, const EatDownProblem& problem, Grain grain);

  std::vector<EatBlock> blocks;         // by first meal
  std::vector<std::size_t> block_of;    // by meal
  std::vector<BlockSeat> seats;         // by block, then eater
  std::vector<std::size_t> seat_block;  // by seat of the compiled problem: index in `seats`
  [[nodiscard]] bool single(std::size_t block) const { return blocks[block].meals.size() == 1; }
};

}  // namespace larderloop::plan
