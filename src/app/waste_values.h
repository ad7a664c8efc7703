// waste_values.h - what each entry of the record was worth, for everything that sums it up.
#pragma once

#include "larderloop/app/waste.h"

#include <vector>

namespace larderloop {

// An entry that counts, with its lot and its worth (empty for moves, openings and counts).
struct ValuedEntry {
  const Entry* entry = nullptr;
  const Lot* lot = nullptr;
  const Food* food = nullptr;
  std::optional<Day> good_through;  // of the unopened lot
  Worth worth;
};

// In the order of the record; corrected entries and corrections left out. The household must
// outlive it. Pre: the record can be replayed.
[[nodiscard]] std::vector<ValuedEntry> value_entries(const Household& household);

}  // namespace larderloop
