// life.h - a simulated household that lives by one policy, week after week.
#pragma once

#include "simulation/world.h"

#include <map>
#include <string>
#include <vector>

namespace larderloop::simulation {

// kPlan: plan::solve for kits and meals. kByDate: the greedy refill, and soonest date first among
// those who may have it. kCareless: soonest date first to anyone, and the last thing is never
// packed; it shows that the faults are seen.
enum class Policy { kPlan, kByDate, kCareless };

// What came into the pantry at one time. `taken`: servings that went elsewhere than to planned
// meals: into a kit, or between meals.
struct Arrival {
  std::size_t food = 0;
  std::int64_t from = 0;
  std::int64_t last = 0;
  std::int64_t servings = 0;
  std::int64_t taken = 0;
  std::int64_t open_at_end = 0;
};

struct Outcome {
  std::int64_t eaten = 0;   // servings at planned meals
  std::int64_t thrown = 0;  // servings
  std::int64_t given = 0;
  std::int64_t packs = 0;
  std::int64_t cents = 0;
  std::int64_t kit_short = 0;  // units of the menu that stayed empty, all reviews
  std::vector<std::string>
      faults;  // unsafe servings, avoidable empty places, plans that break a rule
  std::vector<Arrival> arrivals;
};

[[nodiscard]] Outcome live(const World& world, Policy policy, std::int64_t days);

// Servings of what came into the pantry, dates before the last day, that could not have been eaten
// even by somebody who knew all of it on the first day: who is at which meal, what comes when. A
// lower bound of thrown + given: it shares servings out as if units could be taken apart, and heeds
// of an opened unit only how many at most may eat of it while it keeps.
[[nodiscard]] std::int64_t known_future_bound(const World& world, const Outcome& outcome,
                                              std::int64_t days);

}  // namespace larderloop::simulation
