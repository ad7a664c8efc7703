#include "larderloop/app/find.h"

#include "larderloop/core/lowered.h"
#include "larderloop/core/stock.h"
#include "larderloop/core/validate.h"
#include "larderloop/intake/gs1.h"

#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace larderloop {
namespace {

template <class Thing>
Result<const Thing*> named(const std::vector<Thing>& things, std::string_view text,
                           const std::string& kind) {
  const std::string wanted = lowered(text);
  std::vector<const Thing*> by_name;
  std::vector<std::string> known;
  for (const Thing& thing : things) {
    if (thing.key.str() == text) return &thing;
    if (lowered(thing.name) == wanted || thing.key.str() == wanted) by_name.push_back(&thing);
    known.push_back(thing.key.str());
    known.push_back(thing.name);
  }
  if (by_name.size() == 1) return by_name.front();
  const std::string subject = "'" + std::string(text) + "'";
  if (by_name.size() > 1) {
    std::string which;
    for (const Thing* thing : by_name) which += (which.empty() ? "" : ", ") + thing->key.str();
    return fail(ErrorKind::kBadData, "more than one " + kind + " is called " + subject,
                "name one by its key: " + which);
  }
  const std::string near = nearest(text, known);
  return fail(
      ErrorKind::kNotFound, "there is no " + kind + " " + subject,
      near.empty() ? "see them all: larderloop " + kind + " list" : "did you mean '" + near + "'?");
}

std::optional<std::int64_t> number_of(std::string_view text) {
  if (text.substr(0, 4) == "lot ") text.remove_prefix(4);
  if (text.substr(0, 1) == "#") text.remove_prefix(1);
  if (text.empty() || text.size() > 15) return std::nullopt;
  std::int64_t value = 0;
  for (const char each : text) {
    if (each < '0' || each > '9') return std::nullopt;
    value = value * 10 + (each - '0');
  }
  return value;
}

}  // namespace

Result<const Person*> named_person(const Household& household, std::string_view text) {
  return named(household.people, text, "person");
}

Result<const Food*> named_food(const Household& household, std::string_view text) {
  auto found = named(household.foods, text, "food");
  if (found || found.error().kind != ErrorKind::kNotFound) return found;
  // The digits under the bars, or the whole of a scan.
  const bool digits = text.find_first_not_of("0123456789 -") == std::string_view::npos && text.size() >= 8;
  if (!digits && !looks_like_scan(text)) return found;
  auto scan = read_scan(text, Day{}, {false, known_gtins(household), true});
  if (!scan) return fail(scan.error().error());
  return food_with_gtin(household, scan->item.gtin);
}

std::vector<std::string> known_gtins(const Household& household) {
  std::vector<std::string> known;
  for (const Food& food : household.foods) {
    if (!food.gtin.empty()) known.push_back(food.gtin);
  }
  return known;
}

Result<const Food*> food_with_gtin(const Household& household, std::string_view gtin) {
  std::vector<const Food*> found;
  for (const Food& food : household.foods) {
    if (food.gtin == gtin) found.push_back(&food);
  }
  const std::string shown(gtin);
  if (found.size() == 1) return found.front();
  if (found.empty()) {
    return fail(ErrorKind::kNotFound, "no food has the number " + shown,
                "add it: larderloop food add NAME --gtin " + shown + ", or give it to a food: larderloop food change FOOD --gtin " + shown);
  }
  std::string which;
  for (const Food* food : found) which += (which.empty() ? "" : ", ") + food->key.str();
  return fail(ErrorKind::kBadData, "more than one food has the number " + shown, "name one by its key: " + which);
}

Result<const Place*> named_place(const Household& household, std::string_view text) {
  return named(household.places, text, "place");
}

Result<const Lot*> named_lot(const Household& household, std::string_view text) {
  if (const auto number = number_of(text)) {
    if (const Lot* lot = find_lot(household, LotId(*number))) return lot;
    return fail(ErrorKind::kNotFound, "there is no lot " + std::to_string(*number),
                "see them all: larderloop lot list");
  }
  auto food = named_food(household, text);
  if (!food) {
    Error error = food.error();
    if (error.kind == ErrorKind::kNotFound)
      error.what = "there is no lot or food '" + std::string(text) + "'";
    if (error.next_step.rfind("see ", 0) == 0)
      error.next_step = "lots are named by number: larderloop lot list";
    return fail(std::move(error));
  }
  auto ledger = replay(household);
  if (!ledger) return fail(ledger.error());
  std::set<LotId> on_hand;
  for (const auto& [at, amount] : ledger->stock()) {
    const Lot* lot = find_lot(household, at.lot);
    if (lot != nullptr && lot->food == (*food)->key) on_hand.insert(at.lot);
  }
  if (on_hand.empty()) {
    return fail(ErrorKind::kNotFound, "nothing of '" + (*food)->name + "' is on hand",
                "see earlier lots: larderloop lot list --all --food " + (*food)->key.str());
  }
  if (on_hand.size() > 1) {
    std::string which;
    for (const LotId id : on_hand)
      which += (which.empty() ? "" : ", ") + std::to_string(id.value());
    return fail(ErrorKind::kBadData, "more than one lot of '" + (*food)->name + "' is on hand",
                "name one by its number: " + which + " (larderloop lot list --food " +
                    (*food)->key.str() + ")");
  }
  return find_lot(household, *on_hand.begin());
}

Result<EntryId> named_entry(const Household& household, std::string_view text) {
  const auto number = number_of(text);
  const bool exists =
      number && std::any_of(household.entries.begin(), household.entries.end(),
                            [&](const Entry& each) { return each.id.value() == *number; });
  if (!exists) {
    return fail(ErrorKind::kNotFound, "there is no entry '" + std::string(text) + "'",
                "see the last ones: larderloop record list");
  }
  return EntryId(*number);
}

}  // namespace larderloop
