// why.h - reasons of the plan as sentences and as a JSON document (docs/schema/why-1.schema.json).
#pragma once

#include "larderloop/app/why.h"

#include <string>

namespace larderloop {

// One to four sentences for each thing that becomes of it, ending in a newline.
[[nodiscard]] std::string render_why_text(const Household& household, const WhyReport& report);
[[nodiscard]] std::string render_why_json(const Household& household, const WhyReport& report);

}  // namespace larderloop
