// household_gen.h - seeded random households that are valid: core's validate() finds nothing in
// them. The same seed and size give the same household on every machine (std::mt19937_64 and
// whole-number helpers only). The day the households are made for is 25 November 2026; their record
// runs from April to 20 November of that year. Names of foods are distinct, and none is the
// beginning or the end of another, so that a text can be searched for them. Everybody and
// everything in them is invented; the storage times are plausible, not published.
#pragma once

#include "larderloop/core/household.h"

#include <cstdint>

namespace larderloop {

// A household of 2 to 6 people and perhaps a pet, two kits, a pantry, 15 to 40 foods, and `size`
// lots (0 or more) of every kind of mark, label and state, placed by a record of its own.
[[nodiscard]] Household generate_household(std::uint64_t seed, int size);

}  // namespace larderloop
