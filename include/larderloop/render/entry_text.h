// entry_text.h - scans and what is entered by them, for people.
#pragma once

#include <string>

#include "larderloop/core/household.h"
#include "larderloop/intake/gs1.h"

namespace larderloop {

// The food or the number, and below it what the code says, one fact a line. `food`: null when no food has the number.
[[nodiscard]] std::string render_scan_text(const Household& household, const Scan& scan, const Food* food);

}  // namespace larderloop
