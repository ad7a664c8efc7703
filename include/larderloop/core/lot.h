// lot.h - what is known of a lot today: its date mark, its label and its state after all readings.
#pragma once

#include <optional>
#include <string>

#include "larderloop/core/household.h"

namespace larderloop {

enum class DayBasis {
  kPrinted,    // a best-before or use-by date
  kEstimated,  // no such date: received day + short end of the storage table
  kFilled,     // self-filled water: received day + six months (CDC, Creating and Storing an Emergency Water Supply, 2017)
  kNone,       // nothing to go by: things without a date, foods without storage time
};

// A lot with its latest readings applied. `good_through`: the last day it counts as good, less the household's margin;
// absent when nothing tells. `safety`: the day is a safety date (infant formula; use-by where the region is EU), so past it
// nothing is planned, given away or kept. `label`: of this very lot; absent = unknown.
struct LotFacts {
  LotId id;
  FoodKey food;
  DateMark mark;
  std::optional<Statement> label;
  LotState state = LotState::kOk;
  std::optional<Day> good_through;
  DayBasis basis = DayBasis::kNone;
  bool safety = false;
  Day received{};
};

// Pre: the lot and its food are in the household.
[[nodiscard]] LotFacts lot_facts(const Household& household, const Lot& lot);
// The last good day of what lies at a stock position: the lot's own, or for an opened unit the earlier of it and opening
// day + opened life (0 days = the day of opening).
[[nodiscard]] std::optional<Day> good_through_at(const Food& food, const LotFacts& facts, std::optional<Day> opened_on);

// All lots at once, in id order. Cost O(lots + readings).
[[nodiscard]] std::vector<LotFacts> all_lot_facts(const Household& household);

}  // namespace larderloop
