// check.h - everything that can be wrong with a household, beyond the file it lies in.
#pragma once

#include "larderloop/core/error.h"
#include "larderloop/core/household.h"

#include <vector>

namespace larderloop {

// The findings of validate() (core/validate.h), of replaying the record, and of the review rules
// ("/review_rules/N/rule"). Empty = sound.
[[nodiscard]] std::vector<Problem> check_household(const Household& household);

}  // namespace larderloop
