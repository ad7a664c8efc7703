// json_things.h - people, foods, places, lots, entries and findings as JSON documents
// (docs/schema/). Form:     the envelope and the small values of plan_json.h.
#pragma once

#include "larderloop/app/look.h"
#include "larderloop/app/record.h"
#include "larderloop/app/things.h"
#include "larderloop/core/error.h"

#include <string>
#include <vector>

namespace larderloop {

[[nodiscard]] std::string render_findings_json(const std::vector<Problem>& findings,
                                               Day as_of);                               // findings
[[nodiscard]] std::string render_people_json(const Household& household, Day as_of);     // people
[[nodiscard]] std::string render_foods_json(const std::vector<Food>& foods, Day as_of);  // foods
[[nodiscard]] std::string render_places_json(const Household& household,
                                             const std::vector<Place>& places,
                                             Day as_of);  // places
[[nodiscard]] std::string render_lots_json(const Household& household,
                                           const std::vector<LotRow>& rows, Day as_of);  // lots
[[nodiscard]] std::string render_entries_json(const std::vector<EntryRow>& rows,
                                              Day as_of);  // entries

[[nodiscard]] std::string render_person_json(const Household& household, const PersonShow& show,
                                             Day as_of);  // person
[[nodiscard]] std::string render_food_json(const Household& household, const FoodShow& show,
                                           Day as_of);  // food
[[nodiscard]] std::string render_place_json(const Household& household, const PlaceShow& show,
                                            Day as_of);  // place
[[nodiscard]] std::string render_lot_json(const Household& household, const LotShow& show,
                                          Day as_of);  // lot

[[nodiscard]] std::string render_recorded_json(const Household& household, const Recorded& report,
                                               Day as_of);                            // recorded
[[nodiscard]] std::string render_corrected_json(const Corrected& report, Day as_of);  // corrected
[[nodiscard]] std::string render_person_saved_json(const PersonSaved& report,
                                                   Day as_of);  // person_saved
[[nodiscard]] std::string render_food_saved_json(const Household& household,
                                                 const FoodSaved& report, Day as_of);  // food_saved
[[nodiscard]] std::string render_place_saved_json(const Household& household,
                                                  const PlaceSaved& report,
                                                  Day as_of);  // place_saved
[[nodiscard]] std::string render_lot_added_json(const Household& household, const LotAdded& report,
                                                Day as_of);  // lot_added
[[nodiscard]] std::string render_lots_entered_json(const Household& household, const std::vector<LotAdded>& lots, Day as_of);  // lots_entered
[[nodiscard]] std::string render_lot_read_json(const Household& household, const LotRead& report,
                                               Day as_of);  // lot_read

}  // namespace larderloop
