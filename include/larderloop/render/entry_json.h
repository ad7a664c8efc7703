// entry_json.h - scans as JSON. Schemas: docs/schema.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "larderloop/core/household.h"
#include "larderloop/intake/gs1.h"

namespace larderloop {

// scan: each with the food that has its number, null for none.
[[nodiscard]] std::string render_scans_json(const std::vector<std::pair<const Scan*, const Food*>>& scans, Day as_of);

}  // namespace larderloop
