// what_if.h - what a change would make wrong, as text and as JSON
// (docs/schema/what_if-1.schema.json).
#pragma once

#include "larderloop/app/what_if.h"

#include <string>

namespace larderloop {

// `written`: it was written down.
[[nodiscard]] std::string render_what_if_text(const Household& household,
                                              const WhatIfReport& report, bool written);
[[nodiscard]] std::string render_what_if_json(const Household& household,
                                              const WhatIfReport& report, bool written, Day as_of);

}  // namespace larderloop
