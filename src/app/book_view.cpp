#include "app/book_view.h"

#include <utility>

#include "larderloop/app/lot_mistakes.h"

namespace larderloop {

Result<BookView> view_book(const Household& household, Day today) {
  auto ledger = replay(household);
  if (!ledger) return fail(ledger.error());
  BookView view;
  view.household = &household;
  view.today = today;
  view.taken_back = lots_taken_back(household);
  for (LotFacts& facts : all_lot_facts(household)) {
    if (facts.good_through && facts.basis == DayBasis::kPrinted && view.taken_back.count(facts.id) == 0)
      view.lives[facts.food].push_back(days_between(facts.received, *facts.good_through));
    view.facts.emplace_hint(view.facts.end(), facts.id, std::move(facts));
  }
  for (const Place& place : household.places) view.kit_of_place[place.key] = kit_of(household, place.key);
  view.positions.reserve(ledger->stock().size());
  for (const auto& [at, amount] : ledger->stock()) {
    const LotFacts& facts = view.facts.at(at.lot);
    const Food* food = find_food(household, facts.food);
    view.positions.push_back({at, amount, food, &facts, good_through_at(*food, facts, at.opened_on), &view.kit_of_place.at(at.place)});
  }
  return view;
}

const Statement* effective_label(const LotFacts& facts) { return facts.label ? &*facts.label : nullptr; }

bool lasts(const Position& position, Day hold_until) {
  if (position.food->kind == FoodKind::kWater) return true;  // has its own due rule
  if (position.facts->state != LotState::kOk) return false;
  if (!position.good_through) return position.food->kind == FoodKind::kThing;
  return *position.good_through >= hold_until;
}

LeaveReason why_leave(const Position& position, Day today) {
  if (position.facts->state == LotState::kRecalled) return LeaveReason::kRecalled;
  if (position.facts->state == LotState::kDoubtful) return LeaveReason::kDoubtful;
  const bool past = position.good_through && *position.good_through < today;
  return past ? LeaveReason::kPast : LeaveReason::kTooOld;
}

bool wants_water(const Household& household, const MenuLine& line) {
  if (line.role == Role::kWater) return true;
  const Food* food = line.food.empty() ? nullptr : find_food(household, line.food);
  return food != nullptr && food->kind == FoodKind::kWater;
}

}  // namespace larderloop
