// cautions.h - cautions as text for a terminal.
#pragma once

#include "larderloop/app/cautions.h"

#include <string>
#include <vector>

namespace larderloop {

// Each begins a line and is broken at blanks before 79 letters.
[[nodiscard]] std::string render_cautions(const std::vector<Caution>& cautions);

}  // namespace larderloop
