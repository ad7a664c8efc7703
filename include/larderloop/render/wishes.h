// wishes.h - the family's wishes as text and as a JSON document (docs/schema/wishes-1.schema.json).
// Width:    0 = not a terminal: nothing is cut.
#pragma once

#include "larderloop/core/household.h"

#include <cstddef>
#include <string>
#include <vector>

namespace larderloop {

// "Lentil stew for Ned at dinner on Fri 27 Nov 2026", "no Lentil stew for Mira", "no kit food at
// lunch from Fri 27 Nov 2026 through Sun 29 Nov 2026".
[[nodiscard]] std::string wish_words(const Household& household, const Wish& wish);
[[nodiscard]] std::string render_wishes(const Household& household, const std::vector<Wish>& wishes,
                                        Day today, std::size_t width);
[[nodiscard]] std::string render_wishes_json(const Household& household,
                                             const std::vector<Wish>& wishes, Day as_of);

}  // namespace larderloop
