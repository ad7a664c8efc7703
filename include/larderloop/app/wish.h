// wish.h - the family's wishes for the week's meals: making them and taking them back. Whether a
// want can be is for the plan to say, with its reason (app/plan.h).
#pragma once

#include "larderloop/app/asked.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

// A new wish; its id is given here. kBadData: what a wish of its kind needs is missing or is too
// much, its days have passed or end before they begin, the food is not served at meals, or the very
// same wish is there.
[[nodiscard]] Result<Outcome<Wish>> add_wish(const Household& household, Wish wish, Asked asked);

// "3" or "#3". kNotFound: there is no such wish.
[[nodiscard]] Result<WishId> named_wish(const Household& household, std::string_view text);

// Takes wishes back; reports them. kNotFound, kBadData: one named twice.
[[nodiscard]] Result<Outcome<std::vector<Wish>>> remove_wishes(const Household& household,
                                                               const std::vector<WishId>& which);

}  // namespace larderloop
