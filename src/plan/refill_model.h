// refill_model.h - the refill as an integer program, and the ways from a plan to a point of it and
// back. Private to this room. What is alike counts once: days of one person are alike, since energy
// counts over all days, so lines that differ only in the day are one group; lots of one product in
// one place with the same date points are one source; and whatever reaches a container in the same
// way (it stays, it comes from elsewhere in the kit, from the pantry, from one offer) is one feed,
// since which lot is used matters to the dates alone. Put columns say which product goes to which
// group, from columns which feed fills which container, used columns which source the feeds draw
// on. Nothing is lost: every point splits into a plan whose levels are no worse, and every plan is
// a point.
#pragma once

#include "larderloop/plan/problem.h"
#include "plan/mip.h"

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace larderloop::plan {

struct RefillModel {
  // Beyond these the model is left alone: a solver that counts in doubles could round away a unit.
  static constexpr std::int64_t kMostUnits = 1'000'000;        // of one column
  static constexpr std::int64_t kMostSum = 1'000'000'000'000;  // of one row or level

  struct Group {
    std::size_t container = 0, kit = 0;
    std::vector<std::size_t> eaters;
    std::vector<std::size_t> accepted;     // products, ascending
    std::vector<const RefillLine*> lines;  // by day, then id
    std::int64_t units = 0;                // that can be filled at all
    std::int64_t excess = 0;               // that can not: always unmet
    std::int64_t priority = 0;
    int unmet = -1;  // column
  };
  struct Source {
    std::size_t product = 0;
    std::vector<const RefillLot*> lots;  // by id; or
    const Offer* offer = nullptr;
    bool in_kit = false;
    std::size_t container = 0;               // where kit lots lie; containers.size() when elsewhere
    std::int64_t supply = 0;                 // units that can be of use
    std::int64_t pack_units = 1, packs = 0;  // of an offer: as many as can be of use
    std::int64_t credit = 0;                 // cents for a unit not placed
    std::int64_t date_points = 0;            // of a unit placed
    int used = -1;                           // column; -1: the only source of its feeds
    int bought = -1;                         // column
  };
  // A way for units of one product to reach containers.
  enum class Way { kStays, kMoved, kPantry, kBought };
  struct Feed {
    std::size_t product = 0;
    Way way = Way::kStays;
    std::vector<std::size_t> sources;
  };
  struct Shortage {
    std::size_t kit = 0, eater = 0;
    std::int64_t target = 0;  // kcal over all days
    int column = -1;          // -1: no line can help, always short
  };

  std::vector<const Eater*> eaters;  // by id, as all of these
  std::vector<const RefillProduct*> products;
  std::vector<const Container*> containers;
  std::vector<std::size_t> kit_of;  // by container
  std::vector<std::string> kits;
  std::vector<Group> groups;
  std::vector<Source> sources;
  std::vector<Feed> feeds;
  std::vector<Shortage> shortages;
  std::int64_t variety_cap = 0;
  std::int64_t kit_units = 0;  // of eligible kit lots

  using Pair = std::pair<std::size_t, std::size_t>;
  std::map<Pair, int> put;   // product, group -> column
  std::map<Pair, int> from;  // feed, container -> column
  struct Repeat {
    std::size_t kit, eater, product;
    friend auto operator<=>(const Repeat&, const Repeat&) = default;
  };
  std::map<Repeat, int> repeats;  // column

  Mip mip;

  [[nodiscard]] int rating(std::size_t product, std::size_t eater) const;
  [[nodiscard]] bool will_eat(std::size_t product, std::size_t eater) const;
  // kcal of a unit for each eater of the group; 0 when there is none.
  [[nodiscard]] std::int64_t share(std::size_t product, const Group& group) const;
};

// Empty for a problem that is not well formed (an id nobody knows, a negative quantity, a
// percentage that is none) or too large.
[[nodiscard]] std::optional<RefillModel> make_refill_model(const RefillProblem& problem);
// The columns and rows of a model that is otherwise complete.
void write_refill_rows(RefillModel& model, const RefillProblem& problem);
// The levels, after the columns; false when a number of the program is too large.
[[nodiscard]] bool write_refill_levels(RefillModel& model, const RefillProblem& problem);

// Pre: the plan is allowed.
[[nodiscard]] MipPoint point_of(const RefillModel& model, const RefillPlan& plan);
// Pre: the point is allowed. In each group the units richest in energy go first, each to the day
// that has the least; what is not needed is not bought.
[[nodiscard]] RefillPlan plan_of(const RefillModel& model, const MipPoint& point);

}  // namespace larderloop::plan
