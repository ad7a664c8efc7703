// text_things.h - people, foods, places, lots and entries for people to read: tables, pages and the
// lines that say what was done. Width:    0 = not a terminal: nothing is cut.
#pragma once

#include "larderloop/app/look.h"
#include "larderloop/app/record.h"
#include "larderloop/app/things.h"
#include "larderloop/core/error.h"

#include <cstddef>
#include <string>
#include <vector>

namespace larderloop {

// "/lots/3/food: there is no food 'lentil'" with its remedy below; after `limit` findings only how
// many more there are. "" without findings.
[[nodiscard]] std::string render_findings(const std::vector<Problem>& findings, std::size_t limit);

[[nodiscard]] std::string render_people(const Household& household, std::size_t width);
[[nodiscard]] std::string render_foods(const Household& household, const std::vector<Food>& foods,
                                       std::size_t width);
[[nodiscard]] std::string render_places(const Household& household,
                                        const std::vector<Place>& places, std::size_t width);
[[nodiscard]] std::string render_lots(const Household& household, const std::vector<LotRow>& rows,
                                      Day today, std::size_t width);
[[nodiscard]] std::string render_entries(const Household& household,
                                         const std::vector<EntryRow>& rows, std::size_t width);

[[nodiscard]] std::string render_person(const Household& household, const PersonShow& show,
                                        Day today);
[[nodiscard]] std::string render_food(const Household& household, const FoodShow& show, Day today);
[[nodiscard]] std::string render_place(const Household& household, const PlaceShow& show);
[[nodiscard]] std::string render_lot(const Household& household, const LotShow& show, Day today);

// "best before end of August 2027: good through Tue 31 Aug 2027"
[[nodiscard]] std::string date_words(const LotFacts& facts);
// "eaten: 2 pouches of Lentil stew (lot 17, Pantry); entry 512; left there: 3 pouches; undo:
// larderloop record corrected 512"
[[nodiscard]] std::string recorded_line(const Household& household, const Recorded& report);
[[nodiscard]] std::string corrected_line(const Household& household, const Corrected& report);
// Whom a label that was just read concerns, a line each; says so when nobody.
[[nodiscard]] std::vector<std::string> label_lines(const Household& household,
                                                   const LabelNews& news);

}  // namespace larderloop
