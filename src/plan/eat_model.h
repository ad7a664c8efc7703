// eat_model.h - the eat-down problem as an integer program, as docs/planning.md states it. Private
// to this room. Sets:     pools are lots alike in product, last good day, first day and whether
// they may be given away; blocks are meals, or several
//           put together (eat_blocks.h) in the smaller model that gives bounds.
// Columns:  x units of a pool opened at a block; z servings of a product eaten by a seat; y
// servings from a unit opened before
//           today; o units of a product opened so far; c servings carried on in open units; further
//           ones where levels or rules ask for them.
#pragma once

#include "plan/compiled.h"
#include "plan/eat_blocks.h"
#include "plan/mip.h"
#include "plan/windows.h"

#include <cstddef>
#include <map>
#include <utility>
#include <vector>

namespace larderloop::plan {

// Servings a model is to consider: product * seats + seat of the compiled problem.
using Support = std::vector<char>;

class EatModel {
 public:
  // `only`: absent = everything that is possible. A model of meals without `only` is exact.
  EatModel(const EatDownProblem& problem, const CompiledEat& compiled, Grain grain,
           const Support* only = nullptr);

  [[nodiscard]] const Mip& mip() const { return mip_; }
  // Pre: the plan is allowed. The point may still break the model's rows where sizes were cut; ask
  // allowed().
  [[nodiscard]] MipPoint point_of(const EatDownPlan& plan) const;
  // Pre: the model is one of meals. Lots of a pool are dealt out by id.
  [[nodiscard]] EatDownPlan plan_of(const MipPoint& point) const;
  // Marks what a point serves, by product, week and eater, at every meal of the week.
  void mark(const MipPoint& point, Support& support) const;
  // By column: its week and product.
  [[nodiscard]] Parts weeks_of_columns() const;

 private:
  struct Pool {
    std::size_t product;
    std::int64_t from, last, units;
    bool donatable;
    std::vector<std::size_t> lots;  // of the compiled problem, by id
  };
  struct Opening {
    std::size_t pool, block;
    std::int64_t first_day;  // the earliest day in the block on which it can be opened
    int column;
  };
  struct Serving {
    std::size_t product, seat;  // of the blocks
    std::int64_t at_once;       // the most at one meal
    int column;
  };
  struct FromOpen {
    std::size_t lot, block;  // of the open lots
    int column;
  };
  // What is opened and eaten of one product at one block, or, of a product that keeps, in all
  // blocks that interleave.
  struct Slot {
    std::size_t block = 0;  // the first one
    bool single = true;     // one meal
    std::int64_t first_day = 0, last_day = 0;
    std::vector<std::size_t> openings, servings, from_open;  // indexes of the lists below
    int so_far = -1;                                         // units opened up to here
    int carried = -1;                                        // servings carried on to the next slot
    int fresh = -1;            // 1 when something is eaten here from units the plan opens
    std::int64_t most = 0;     // servings all seats together can take
    std::int64_t at_once = 0;  // at one meal
  };
  class SlotMaker;

  void make_pools();
  void make_slots(std::size_t product, const Support* only);
  void add_pool_rows();
  void add_people_rows();
  void add_unit_rows(std::size_t product);
  void add_carrying_rows(std::size_t product);
  void add_open_lot_rows(std::size_t product);
  void add_levels();
  void add_not_served(const char* name, const std::vector<MealServing>& servings, bool published);
  void add_changed();
  [[nodiscard]] int short_of(int served, std::int64_t wanted);
  // By column.
  [[nodiscard]] std::map<int, std::int64_t> listed(const std::vector<MealServing>& servings,
                                                   bool published, std::int64_t& impossible) const;
  void fill_in(std::size_t product, MipPoint& point) const;
  void take_from_open_lots(const EatDownPlan& plan, MipPoint& point) const;
  [[nodiscard]] std::vector<MipTerm> fresh(const Slot& slot) const;
  [[nodiscard]] std::vector<MipTerm> opened(const Slot& slot) const;
  [[nodiscard]] std::int64_t most_at(std::size_t product, std::size_t seat) const;
  [[nodiscard]] std::int64_t window_most(std::size_t product, std::size_t first_slot) const;
  [[nodiscard]] std::int64_t upper(int column) const {
    return mip_.columns[static_cast<std::size_t>(column)].upper;
  }

  const EatDownProblem& problem_;
  const CompiledEat& c_;
  EatBlocks blocks_;
  Mip mip_;
  std::vector<Pool> pools_;
  std::vector<std::vector<std::size_t>> pools_of_;  // by product
  std::vector<std::vector<Slot>> slots_;            // by product
  std::vector<Opening> openings_;
  std::vector<Serving> servings_;
  std::vector<FromOpen> from_open_;
  std::map<std::pair<std::size_t, std::size_t>, int>
      served_;  // (product, seat of the blocks) -> column
  struct Short {
    int column;
    int serving;  // its column
    std::int64_t wanted;
  };
  std::vector<Short> shorts_;  // max(0, wanted - served)
};

}  // namespace larderloop::plan
