// entering.h - several lots at once, all or none: a day's shopping, a heap of scans, a replacement list that was bought.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "larderloop/app/things.h"

namespace larderloop {

// `where`: names it in problems ("line 3").
struct LotToEnter {
  std::string where;
  NewLot lot;
};
struct LotsEntered {
  std::vector<LotAdded> lots;  // in the given order
};
// Each as add_lot() would, one after another, so that a label read with the first counts for the next. kBadData with one problem for each
// that is refused; then nothing is to be written.
[[nodiscard]] Result<Outcome<LotsEntered>> enter_lots(const Household& household, const std::vector<LotToEnter>& lots, Asked asked);

// Adds `more` behind `changes`; what is replaced by key is replaced. Both are of one household, `more` of it after `changes`. Only for what
// entering writes: foods, lots, readings, entries, review marks and events.
void append_changes(Changes& changes, const Changes& more);

// The places whose eaters a label concerns: for each person named in `news` the bags and boxes of kits they eat from, in key order.
[[nodiscard]] std::vector<std::pair<PersonKey, std::vector<PlaceKey>>> bags_concerned(const Household& household, const LabelNews& news);
// "Mira (Mira's bag, Box 1): the label says it contains sesame"
[[nodiscard]] std::vector<std::string> concerned_words(const Household& household, const LabelNews& news);

// What shopping last found of a food that is still wanted: not available, or another bought instead. Nothing when there is no such note, or
// when the food was received on that day or later.
[[nodiscard]] const BuyNote* open_buy_note(const Household& household, const FoodKey& food);
// "not to be had on 25 November 2026", "on 25 November 2026 Bean chilli was bought instead"
[[nodiscard]] std::string buy_note_words(const Household& household, const BuyNote& note);

}  // namespace larderloop
