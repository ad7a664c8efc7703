// refill_steps.h - the later steps of plan_refill. Private to this room.
#pragma once

#include "plan/shelf.h"

#include <vector>

namespace larderloop::plan {

// Augmenting paths: an unmet line takes a unit from another line, which takes one from a third ...,
// until a line finds a free unit or one of lower priority goes without. Without container limits
// and budget the unmet level is then the least possible.
void fill_by_exchange(Shelf& shelf, const std::vector<std::size_t>& order);
// Where only a mass or volume limit keeps a line empty: lighter or smaller food elsewhere in the
// container.
void fill_by_lightening(Shelf& shelf, const std::vector<std::size_t>& order);
// Exchanges single units newly put in while the levels get better in their order. Units that stay
// in place stay.
void improve_new(Shelf& shelf);
// Among lines alike but for the day: the units richest in energy first, each to the poorest day. No
// level changes.
void spread_over_days(Shelf& shelf);

}  // namespace larderloop::plan
