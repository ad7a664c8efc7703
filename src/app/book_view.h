// book_view.h - a household seen on one day: stock replayed, lots resolved, once for all tasks of a command.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <vector>

#include "larderloop/app/reviews.h"
#include "larderloop/core/household.h"
#include "larderloop/core/lot.h"
#include "larderloop/core/result.h"
#include "larderloop/core/stock.h"

namespace larderloop {

// What lies at one place: sealed or opened on a day. Pointers live as long as the view and its household.
struct Position {
  StockKey at;
  HalfServings amount;
  const Food* food = nullptr;
  const LotFacts* facts = nullptr;
  std::optional<Day> good_through;  // for opened units the opened-life rule has been applied
  const PlaceKey* kit = nullptr;    // the kit it lies in; the empty key: in none
};

struct BookView {
  const Household* household = nullptr;
  Day today{};  // on which people's ages are looked at
  std::map<LotId, LotFacts> facts;
  std::set<LotId> taken_back;  // lots that never were, see lot_mistakes.h
  std::map<FoodKey, std::vector<int>> lives;  // days from receipt to the printed date of a food's lots, the mistaken ones left out
  std::vector<Position> positions;         // by lot, place, opened_on
  std::map<PlaceKey, PlaceKey> kit_of_place;  // empty key: not in a kit
};

// The household must outlive the view. Fails when the record cannot be replayed.
[[nodiscard]] Result<BookView> view_book(const Household& household, Day today);

// The statement that decides about a lot: its own when its label was read, else unknown (null).
[[nodiscard]] const Statement* effective_label(const LotFacts& facts);

// Must this leave a kit whose contents have to last through `hold_until`? Water and things without a date never do.
[[nodiscard]] bool lasts(const Position& position, Day hold_until);
// Why it must leave, in the order of gravity: recalled, doubtful, past, will not last. Pre: it does not last.
[[nodiscard]] LeaveReason why_leave(const Position& position, Day today);
// Does a menu line ask for drinking water, by role or by food?
[[nodiscard]] bool wants_water(const Household& household, const MenuLine& line);

}  // namespace larderloop
