// entry_parts.h - what the commands that enter lots share: the text off the package, and saying
// what was added.
#pragma once

#include "larderloop/app/entering.h"
#include "larderloop/cli/runtime.h"
#include "larderloop/intake/date_text.h"

#include <string>

namespace larderloop::cli {

// The date as printed, with a lot code behind it, or a scan of the package (then of `food`, if one
// is given). In the household's order of day and month. `warnings` of a scan are added to it.
[[nodiscard]] Result<PrintedMark> read_printed(const Household& household, const Food* food,
                                               const std::string& text, MarkKind kind, Day today,
                                               Day received,
                                               std::vector<std::string>* warnings = nullptr);
[[nodiscard]] DateOrder household_order(const Household& household);

// "6 pouches of Lentil stew, best before 31 August 2027, lot L6074, into Pantry; label read, the
// same as last time; 8.40 EUR"
[[nodiscard]] std::string new_lot_words(const Household& household, const NewLot& lot);
// Notes and warnings about a lot that was added; `household` after it.
void tell_added(Runtime& runtime, const LotAdded& added);

}  // namespace larderloop::cli
