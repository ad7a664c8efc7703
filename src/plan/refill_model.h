// refill_model.h - the refill as an integer program, and the ways from a plan to a point of it and
// back. Private to this room. Days of one person are alike, since energy counts over all days, so
// lines that differ only in the day are one group; lots of one product that lie in one place and
// count the same for their date are one source. Put columns say which product goes to which group,
// from columns which source feeds which container; both meet per product and container. Nothing is
// lost: every point splits into a plan with the same levels, and every plan is a point.
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
    int bought = -1;                         // column
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
  std::vector<Shortage> shortages;
  std::int64_t variety_cap = 0;
  std::int64_t kit_units = 0;  // of eligible kit lots

  using Pair = std::pair<std::size_t, std::size_t>;
  std::map<Pair, int> put;   // product, group -> column
  std::map<Pair, int> from;  // source, container -> column
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
// The columns, rows and levels of a model that is otherwise complete; false when a number is too
// large.
[[nodiscard]] bool write_refill_mip(RefillModel& model, const RefillProblem& problem);

// Pre: the plan is allowed.
[[nodiscard]] MipPoint point_of(const RefillModel& model, const RefillPlan& plan);
// Pre: the point is allowed. In each group the units richest in energy go first, each to the day
// that has the least; what is not needed is not bought.
[[nodiscard]] RefillPlan plan_of(const RefillModel& model, const MipPoint& point);

}  // namespace larderloop::plan
