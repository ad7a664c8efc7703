// history.h - what became of the food, as text and as JSON (docs/schema/history-1.schema.json).
#pragma once

#include "larderloop/app/history.h"
#include "larderloop/app/waste.h"

#include <string>

namespace larderloop {

[[nodiscard]] std::string render_history_text(const Household& household,
                                              const HistoryReport& report);
// What it was worth, year by year, and what was thrown out of each food; empty where nothing is
// recorded.
[[nodiscard]] std::string render_waste_text(const Household& household, const WasteReport& report);
[[nodiscard]] std::string render_history_json(const Household& household,
                                              const HistoryReport& history,
                                              const WasteReport& waste, Day as_of);

}  // namespace larderloop
