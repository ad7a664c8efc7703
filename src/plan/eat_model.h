// eat_model.h - the eat-down problem as an integer program, exactly as docs/planning.md states it.
// Private to this room. Sets:     pools are lots alike in product, last good day, first day and
// whether they may be given away. Columns:  x units of a pool opened at a meal; z servings of a
// product eaten by a seat; y servings from a unit opened before
//           today; c servings carried on in open units after a meal; further ones where levels or
//           rules ask for them.
#pragma once

#include "plan/compiled.h"
#include "plan/mip.h"

#include <cstddef>
#include <map>
#include <utility>
#include <vector>

namespace larderloop::plan {

class EatModel {
 public:
  explicit EatModel(const EatDownProblem& problem);

  [[nodiscard]] const Mip& mip() const { return mip_; }
  // Pre: the plan is allowed. The point may still break the model's rows where a limit on sizes cut
  // the problem; ask allowed().
  [[nodiscard]] MipPoint point_of(const EatDownPlan& plan) const;
  // Lots of a pool are dealt out by id.
  [[nodiscard]] EatDownPlan plan_of(const MipPoint& point) const;

 private:
  struct Pool {
    std::size_t product;
    std::int64_t from, last, units;
    bool donatable;
    std::vector<std::size_t> lots;  // of the compiled problem, by id
  };
  struct Opening {
    std::size_t pool, meal;
    int column;
  };
  struct Serving {
    std::size_t product, meal, seat;
    int column;
  };
  struct FromOpen {
    std::size_t lot, meal;  // of the open lots
    int column;
  };
  // What is opened and eaten of one product at one meal, meals in calendar order.
  struct Slot {
    std::size_t meal = 0;
    std::vector<std::size_t> openings, servings, from_open;  // indexes of the lists below
    int so_far = -1;                                         // units opened up to here
    int carried = -1;                                        // servings carried on to the next slot
    int fresh = -1;         // 1 when something is eaten here from units the plan opens
    std::int64_t most = 0;  // servings all seats together can take
  };

  void make_pools();
  void make_slots(std::size_t product);
  void add_pool_rows();
  void add_people_rows();
  void add_unit_rows(std::size_t product);
  void add_carrying_rows(std::size_t product);
  void add_open_lot_rows(std::size_t product);
  void add_levels();
  void add_not_served(const char* name, const std::vector<MealServing>& servings, bool published);
  [[nodiscard]] int short_of(std::size_t product, std::size_t seat, std::int64_t wanted);
  void fill_in(std::size_t product, std::vector<std::int64_t>& before, MipPoint& point) const;
  [[nodiscard]] std::vector<MipTerm> fresh(const Slot& slot) const;
  [[nodiscard]] std::vector<MipTerm> opened(const Slot& slot) const;
  void add_changed();
  [[nodiscard]] std::map<std::pair<std::size_t, std::size_t>, std::int64_t> listed(
      const std::vector<MealServing>& servings, bool published, std::int64_t& impossible) const;
  [[nodiscard]] std::int64_t most_at(std::size_t product, std::size_t seat) const;
  [[nodiscard]] std::int64_t window_most(std::size_t product, std::size_t first_slot) const;

  const EatDownProblem& problem_;
  CompiledEat c_;
  Mip mip_;
  std::vector<Pool> pools_;
  std::vector<std::vector<std::size_t>> pools_of_;  // by product
  std::vector<std::vector<Slot>> slots_;            // by product
  std::vector<Opening> openings_;
  std::vector<Serving> servings_;
  std::vector<FromOpen> from_open_;
  std::map<std::pair<std::size_t, std::size_t>, int> served_;  // (product, seat) -> column
  struct Short {
    int column;
    int serving;  // its column
    std::int64_t wanted;
  };
  std::vector<Short> shorts_;  // max(0, wanted - served)
};

}  // namespace larderloop::plan
