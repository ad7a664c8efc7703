// review_series.h - the reviews of a kit as one repeating event: only by rules that calendar
// programs are known to work out alike.
#pragma once

#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

namespace larderloop {

// May the reviews by this rule be one repeating event? kBadData names the kit and says which rule
// would do.
[[nodiscard]] Status check_series_of(const Household& household, const ReviewRule& rule);
// The same for every kit, when `settings` ask for series.
[[nodiscard]] Status check_review_series(const Household& household, const Settings& settings);

}  // namespace larderloop
