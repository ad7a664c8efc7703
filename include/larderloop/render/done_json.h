// done_json.h - what a command did, as JSON documents (docs/schema/), for commands whose text is
// one line on standard error.
#pragma once

#include "larderloop/app/reviews.h"
#include "larderloop/core/household.h"

#include <string>

namespace larderloop {

// A book that was made, or copied: its file and how much is in it.
[[nodiscard]] std::string render_book_made_json(const std::string& file, const Household& household,
                                                Day as_of);
[[nodiscard]] std::string render_book_copied_json(const std::string& from, const std::string& file,
                                                  Day as_of);
// A mark of a review; what the position holds by the record.
[[nodiscard]] std::string render_review_marked_json(const MarkDone& report, Day as_of);
// A review that was skipped or moved, before and after.
[[nodiscard]] std::string render_review_changed_json(const ReviewChanged& report, Day as_of);

}  // namespace larderloop
