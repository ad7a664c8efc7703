#include "larderloop/core/lot.h"

#include <algorithm>
#include <map>

namespace larderloop {
namespace {

constexpr int kSelfFilledMonths = 6;  // CDC, Creating and Storing an Emergency Water Supply, 2017

void learn(LotFacts& facts, const Reading& reading) {
  if (reading.mark) facts.mark = *reading.mark;
  if (reading.label) facts.label = reading.label;
  if (reading.state) facts.state = *reading.state;
}

void resolve(const Settings& settings, const Food& food, LotFacts& facts) {
  std::optional<Day> day;
  if (gives_good_through(facts.mark.kind) && facts.mark.day) {
    day = facts.mark.day;
    facts.basis = DayBasis::kPrinted;
  } else if (food.storage.months_short && !(food.kind == FoodKind::kWater && food.self_filled)) {
    day = add_months(facts.received, *food.storage.months_short);
    facts.basis = DayBasis::kEstimated;
  }
  // What is printed on a bottle that was filled again is about its first content: it can only shorten the six months.
  if (food.kind == FoodKind::kWater && food.self_filled) {
    const Day filled_until = add_months(facts.received, kSelfFilledMonths);
    if (!day || filled_until < *day) {
      day = filled_until;
      facts.basis = DayBasis::kFilled;
    }
  }
  if (!day) return;
  facts.good_through = *day - Days(settings.margin_days);
  // Fails closed: of formula even an estimated day is held as strictly as a printed one.
  facts.safety = food.infant_formula || (facts.mark.kind == MarkKind::kUseBy && settings.region == Region::kEu);
}

LotFacts start(const Lot& lot) {
  LotFacts facts;
  facts.id = lot.id;
  facts.food = lot.food;
  facts.mark = lot.mark;
  facts.label = lot.label;
  facts.state = lot.state;
  facts.received = lot.received;
  return facts;
}

}  // namespace

LotFacts lot_facts(const Household& household, const Lot& lot) {
  LotFacts facts = start(lot);
  for (const Reading& reading : household.readings) {
    if (reading.lot == lot.id) learn(facts, reading);
  }
  resolve(household.settings, *find_food(household, lot.food), facts);
  return facts;
}

std::vector<LotFacts> all_lot_facts(const Household& household) {
  std::vector<LotFacts> all;
  all.reserve(household.lots.size());
  for (const Lot& lot : household.lots) all.push_back(start(lot));
  for (const Reading& reading : household.readings) {
    const auto facts = std::lower_bound(all.begin(), all.end(), reading.lot,
                                        [](const LotFacts& each, LotId id) { return each.id < id; });
    if (facts != all.end() && facts->id == reading.lot) learn(*facts, reading);
  }
  for (LotFacts& facts : all) resolve(household.settings, *find_food(household, facts.food), facts);
  return all;
}

std::optional<Day> good_through_at(const Food& food, const LotFacts& facts, std::optional<Day> opened_on) {
  if (!opened_on || food.kind == FoodKind::kThing) return facts.good_through;
  const Day opened_until = *opened_on + Days(food.storage.opened_days);
  return facts.good_through ? std::min(*facts.good_through, opened_until) : opened_until;
}

}  // namespace larderloop
