// trial.h - a trial as text and as JSON (docs/schema/trial-1.schema.json).
#pragma once

#include "larderloop/app/trial.h"

#include <string>

namespace larderloop {

[[nodiscard]] std::string render_trial_text(const Household& household, const TrialReport& report);
[[nodiscard]] std::string render_trial_json(const Household& household, const TrialReport& report,
                                            Day as_of);

}  // namespace larderloop
