// fefo.h - the steps of plan_eat_down. Private to this room.
#pragma once

#include "plan/table.h"

#include <cstdint>
#include <tuple>
#include <vector>

namespace larderloop::plan {

// The eater with the fewest alternatives first, then who likes it best.
[[nodiscard]] Rank scarce_first(const CompiledEat& problem);
// Who likes it best first, then the eater with the fewest alternatives.
[[nodiscard]] Rank liked_first(const CompiledEat& problem);

// Serves what was shown again, as far as it is still possible: from open units, then from units of
// the soonest date.
void keep_published(Table& table, const EatDownProblem& problem, const Rank& rank);
// Serves what was opened before today, soonest date first, at the earliest meals. Afterwards no
// unit of such a product is opened before the open ones are eaten or past.
void serve_open_lots(Table& table, const Rank& rank);
// Soonest date first: what can only be eaten or wasted, whole units, then part units; then what
// could be donated, whole units.
void serve_by_date(Table& table, const Rank& rank);

// Fewer servings wasted, then fewer donated: makes room for a unit without a place by moving
// another one.
void make_room(Table& table, const Rank& rank, std::int64_t work_limit);
// Same waste: better liked, less late, sooner.
void settle(Table& table, const Rank& rank, std::int64_t work_limit);

// All of it at once, by trial. `work`: looks at a seat; ten million are about a tenth of a second.
void rearrange(Table& table, const EatDownProblem& problem, std::int64_t work);
// The plan, which is allowed, rearranged: most often better by a good deal, and what was shown or
// asked for stays where it is.
[[nodiscard]] EatDownPlan rearranged(const EatDownProblem& problem, const CompiledEat& compiled,
                                     const EatDownPlan& plan, std::int64_t work);

// Servings (wasted, donated), dislike points, late points of what is planned so far.
using Worth = std::tuple<std::int64_t, std::int64_t, std::int64_t, std::int64_t>;
[[nodiscard]] Worth worth(const Table& table, std::int64_t late_days);

}  // namespace larderloop::plan
