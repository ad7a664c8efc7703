// amount_text.h - an amount as people type it after a lot.
#pragma once

#include "larderloop/app/record.h"
#include "larderloop/core/result.h"

#include <string>
#include <vector>

namespace larderloop::cli {

// "2", "2 units", "1.5 servings", "half serving", "half a serving", "a serving", "all". `least`: 0
// for counts, else 1. kBadData with the accepted spellings.
[[nodiscard]] Result<AmountAsked> read_amount(const std::vector<std::string>& words,
                                              std::int64_t least);

}  // namespace larderloop::cli
