// lot_mistakes.h - lots that were entered by mistake, or with what a reading cannot mend. A lot is
// never changed or deleted: its entries are corrected by further ones, so that nothing of it is
// left, and where it is only wrong in part it is entered again under another number.
#pragma once

#include "larderloop/app/asked.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <set>
#include <string>
#include <vector>

namespace larderloop {

// `reversed`: what its entries were, newest first; `entries`: the corrections, in the same order.
// `used`: some of it was eaten, given away, thrown out or lost by the record, which is taken back
// with the rest.
struct LotTakenBack {
  LotId lot;
  std::vector<Entry> reversed;
  std::vector<Entry> entries;
  bool used = false;
};
// Corrects everything that was recorded of the lot and still counts. kBadData when nothing does.
[[nodiscard]] Result<Outcome<LotTakenBack>> take_lot_back(const Household& household, LotId lot,
                                                          const std::string& note, Asked asked);

// `lot`: the new one. `entries`: those of the old one, of the same days and amounts, for the new.
struct LotEnteredAgain {
  LotTakenBack back;
  Lot lot;
  std::vector<Entry> entries;
};
// The lot with another code, as it is known now: date, label and state are those that were read
// last. The old one is taken back. kBadData when the code is the same, or nothing of the lot counts
// any more.
[[nodiscard]] Result<Outcome<LotEnteredAgain>> enter_lot_with_code(const Household& household,
                                                                   LotId lot,
                                                                   const std::string& code,
                                                                   Asked asked);

// Lots of which something was recorded and all of it taken back: they never were, and tell nothing
// of how long a food keeps or that it came.
[[nodiscard]] std::set<LotId> lots_taken_back(const Household& household);

}  // namespace larderloop
