#include "right_kit.h"

#include "larderloop/app/plan.h"
#include "larderloop/app/reviews.h"
#include "larderloop/core/changes.h"
#include "larderloop/core/lot.h"
#include "larderloop/core/stock.h"
#include "larderloop/core/validate.h"
#include "larderloop/intake/document.h"

#include <fstream>
#include <set>
#include <sstream>
#include <stdexcept>
#include <string>

namespace larderloop::made {
namespace {

template <class T>
T need(Result<T> result) {
  if (!result) throw std::runtime_error(result.error().what);
  return std::move(*result);
}

DateMark far_mark() {
  const Day day = *parse_iso_day("2029-12-31");
  return {"31.12.2029", MarkKind::kBestBefore, Precision::kDay, day};
}

// Adds a lot of a food at a place, its label read as the food's last one.
void put_new(Household& home, const Food& food, std::int64_t units, const PlaceKey& place,
             Day today) {
  Changes changes;
  Lot lot;
  lot.id = next_ids(home).lot;
  lot.food = food.key;
  lot.received = today;
  if (!food.self_filled) lot.mark = far_mark();
  lot.label = food.label;
  if (lot.label) lot.label->read_on = today;
  Entry entry;
  entry.id = next_ids(home).entry;
  entry.kind = EntryKind::kReceived;
  entry.on = today;
  entry.at = {lot.id, place, std::nullopt};
  entry.amount = HalfServings::units(units, food.servings);
  changes.lots = {lot};
  changes.entries = {entry};
  apply_changes(home, changes);
}

void take_out(Household& home, const StockKey& at, HalfServings amount, Day today) {
  Changes changes;
  Entry entry;
  entry.id = next_ids(home).entry;
  entry.kind = EntryKind::kMoved;
  entry.on = today;
  entry.at = at;
  entry.to = need(pantry_place(home));
  entry.amount = amount;
  changes.entries = {entry};
  apply_changes(home, changes);
}

// The record anew: what lies where, received there. Nothing of the past.
void forget_the_past(Household& home) {
  const Ledger ledger = need(replay(home));
  std::set<LotId> there;
  std::vector<Entry> entries;
  std::int64_t id = 0;
  for (const auto& [at, amount] : ledger.stock()) {
    if (at.opened_on) continue;
    Entry entry;
    entry.id = EntryId(++id);
    entry.kind = EntryKind::kReceived;
    entry.on = find_lot(home, at.lot)->received;
    entry.at = at;
    entry.amount = amount;
    there.insert(at.lot);
    entries.push_back(entry);
  }
  home.entries = std::move(entries);
  const auto gone = [&](LotId lot) { return there.count(lot) == 0; };
  home.lots.erase(std::remove_if(home.lots.begin(), home.lots.end(),
                                 [&](const Lot& each) { return gone(each.id); }),
                  home.lots.end());
  home.readings.erase(std::remove_if(home.readings.begin(), home.readings.end(),
                                     [&](const Reading& each) { return gone(each.lot); }),
                      home.readings.end());
  home.review_marks.clear();
  home.shown_meals.clear();
  home.kept_plans.clear();
  home.feed.clear();
}

}  // namespace

Household demo_household() {
  std::ifstream file(std::string(LARDERLOOP_SRC) + "/data/demo/household.json");
  std::stringstream text;
  text << file.rdbuf();
  return need(parse_document(text.str()));
}

Household right_kit(Household home, const PlaceKey& kit, Day today) {
  const Asked asked{today, midnight(today)};
  apply_changes(home, need(start_review(home, kit, asked)).changes);
  apply_changes(home, need(finish_review(home, kit, asked)).changes);
  // Every label in the kit and the pantry is read again.
  const Stock stock = need(replay(home)).stock();
  for (const auto& [at, amount] : stock) {
    const Food& food = *find_food(home, find_lot(home, at.lot)->food);
    if (!food.label) continue;
    Reading reading;
    reading.id = next_ids(home).reading;
    reading.lot = at.lot;
    reading.on = today;
    reading.by = "Ansa";
    reading.label = food.label;
    reading.label->read_on = today;
    Changes changes;
    changes.readings = {reading};
    apply_changes(home, changes);
  }
  // A line for one food that does not suit its people asks for its role instead.
  for (MenuLine& line : home.menu) {
    if (line.food.empty() || kit_of(home, line.place) != kit) continue;
    const Food& food = *find_food(home, line.food);
    const std::vector<PersonKey> people = eaters_of(home, line);
    if (people.empty() || food.kind == FoodKind::kWater || food.roles.empty()) continue;
    if (refusals(home, people, food, food.label ? &*food.label : nullptr, today).empty()) continue;
    line.food = FoodKey();
    line.role = *food.roles.begin();
  }
  const KitPlan plan = need(plan_kit(home, kit, today));
  for (const auto* list : {&plan.leaves, &plan.wrong_bag}) {
    for (const Leaving& each : *list) {
      const HalfServings there = need(replay(home)).on_hand(each.at);
      if (there > HalfServings()) take_out(home, each.at, there, today);
    }
  }
  // Self-filled water is filled afresh at every review.
  const Stock water = need(replay(home)).stock();
  for (const auto& [at, amount] : water) {
    const Food& food = *find_food(home, find_lot(home, at.lot)->food);
    if (!food.self_filled || kit_of(home, at.place) != kit) continue;
    take_out(home, at, amount, today);
    put_new(home, food, amount.whole_units(1), at.place, today);
  }
  for (const Leaving& each : plan.water.past_date) {
    take_out(home, each.at, each.amount, today);
    put_new(home, *find_food(home, each.food), each.amount.whole_units(1), each.at.place, today);
  }
  for (const Fill& fill : plan.fills) {
    const Food& food = *find_food(home, fill.food);
    if (fill.from == FillFrom::kBuy) {
      put_new(home, food, fill.units, fill.place, today);
    } else if (fill.from != FillFrom::kStays) {
      Changes changes;
      Entry entry;
      entry.id = next_ids(home).entry;
      entry.kind = EntryKind::kMoved;
      entry.on = today;
      entry.at = fill.at;
      entry.to = fill.place;
      entry.amount = HalfServings::units(fill.units, food.servings);
      changes.entries = {entry};
      apply_changes(home, changes);
    }
  }
  for (const BuyLine& line : plan.buy) {
    if (line.ml > 0)
      put_new(home, *find_food(home, line.food), line.units, line.places.front(), today);
  }
  forget_the_past(home);
  return home;
}

}  // namespace larderloop::made
