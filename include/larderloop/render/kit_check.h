// kit_check.h - the check of a kit as text and as JSON (docs/schema/kit_check-1.schema.json).
#pragma once

#include "larderloop/app/kit_check.h"

#include <string>
#include <vector>

namespace larderloop {

// `all`: also the energy of every day, every lot and every mass.
[[nodiscard]] std::string render_kit_check_text(const Household& household, const KitCheck& check,
                                                bool all, Day today);
[[nodiscard]] std::string render_kit_checks_json(const Household& household,
                                                 const std::vector<KitCheck>& checks, Day as_of);

}  // namespace larderloop
