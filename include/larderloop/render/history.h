// history.h - what became of the food, as text and as JSON (docs/schema/history-1.schema.json).
#pragma once

#include "larderloop/app/advice.h"
#include "larderloop/app/history.h"
#include "larderloop/app/waste.h"

#include <string>
#include <vector>

namespace larderloop {

[[nodiscard]] std::string render_history_text(const Household& household,
                                              const HistoryReport& report);
// What it was worth, year by year, and what was thrown out of each food; empty where nothing is
// recorded.
[[nodiscard]] std::string render_waste_text(const Household& household, const WasteReport& report);
// The foods thrown out most, each with the one change; says what is assumed.
[[nodiscard]] std::string render_advice_text(const Household& household,
                                             const std::vector<Advice>& advice);
// `advice`: null where it was not asked for.
[[nodiscard]] std::string render_history_json(const Household& household,
                                              const HistoryReport& history,
                                              const WasteReport& waste,
                                              const std::vector<Advice>* advice, Day as_of);

}  // namespace larderloop
