// picture.h - the kit as pictures: SVG 1.1, black on white, every amount and date written beside
// its bar, patterns in the place of colours. Every function is a view of result structs of app/.
// Text stays text; names are cut with "…" where there is no room, and keep their own writing
// direction. A picture is 480 wide and as high as it must be (viewBox), so that it fits a phone and
// a sheet of paper. Reading:  role="img", <title> and <desc>; each bar is a group of a class and
// data- attributes with the numbers it stands for.
#pragma once

#include "larderloop/app/history.h"
#include "larderloop/app/reviews.h"
#include "larderloop/app/waste.h"

#include <string>
#include <vector>

namespace larderloop {

// What lies in a kit by good-through day: a bar from today to the day, soonest first; reviews and
// the hold-until date as lines. Units of one food, date and state are one bar; what has no date
// stands at the end without one.
[[nodiscard]] std::string render_timeline_svg(const Household& household, const ReviewSheet& sheet,
                                              const std::vector<ReviewSlot>& slots, Day today);
// How many servings lie in each place of the kits and how many of them last; water in litres and
// things beside them. A sheet each kit.
[[nodiscard]] std::string render_stock_svg(const Household& household,
                                           const std::vector<ReviewSheet>& sheets, Day today);
// Servings eaten, given away and thrown out in each year, with the money thrown out.
[[nodiscard]] std::string render_history_svg(const Household& household,
                                             const HistoryReport& history, const WasteReport& waste,
                                             Day today);

// What was drawn (docs/schema/picture-1.schema.json). `file`: as asked for. `bars`: groups with
// numbers in the picture.
struct Drawn {
  std::string what;
  std::vector<PlaceKey> kits;
  std::string file;
  int bars = 0;
};
[[nodiscard]] std::string render_drawn_json(const Drawn& drawn, Day as_of);

}  // namespace larderloop
