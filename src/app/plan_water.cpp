// Drinking water of a kit, in ml: kept apart, never planned into meals, with a date rule of its own.
// Source:   CDC, Creating and Storing an Emergency Water Supply, 2017: shop-bought by its printed date, self-filled six months.
#include <algorithm>

#include "app/plan_build.h"

namespace larderloop {
namespace {

std::int64_t content_ml(const Position& position) {
  return position.food->volume_ml.value_or(0) * position.amount.whole_units(position.food->servings);
}

// What is still missing goes first from the pantry's shop-bought water, longest date first, then to the list.
class WaterFiller {
 public:
  WaterFiller(const BookView& view, const KitSchedule& schedule, const Reserved& reserved, KitPlan& plan)
      : view_(view), schedule_(schedule), reserved_(reserved), plan_(plan) {}

  void fill(std::int64_t missing_ml, const MenuLine& line) {
    missing_ml = from_pantry(missing_ml, line);
    if (missing_ml > 0) buy(missing_ml, line);
  }

 private:
  std::int64_t from_pantry(std::int64_t missing_ml, const MenuLine& line) {
    std::vector<const Position*> bottles;
    for (const Position& position : view_.positions) {
      const bool usable = position.food->kind == FoodKind::kWater && !position.food->self_filled &&
                          position.facts->state == LotState::kOk && !position.at.opened_on && position.kit->empty() &&
                          (!position.good_through || *position.good_through >= schedule_.hold_until) &&
                          content_ml(position) > 0;
      if (usable) bottles.push_back(&position);
    }
    std::stable_sort(bottles.begin(), bottles.end(), [](const Position* a, const Position* b) {
      return a->good_through.value_or(Day::max()) > b->good_through.value_or(Day::max());
    });
    for (const Position* bottle : bottles) {
      if (missing_ml <= 0) break;
      const std::int64_t unit_ml = *bottle->food->volume_ml;
      const auto promised = reserved_.find(bottle->at);
      const std::int64_t free = bottle->amount.whole_units(bottle->food->servings) -
                                (promised == reserved_.end() ? 0 : promised->second);
      const std::int64_t units = std::min(free, (missing_ml + unit_ml - 1) / unit_ml);
      if (units <= 0) continue;
      plan_.fills.push_back({FillFrom::kPantry, bottle->at, bottle->food->key, units, line.place, line.id,
                             bottle->good_through});
      missing_ml -= units * unit_ml;
    }
    return missing_ml;
  }

  void buy(std::int64_t missing_ml, const MenuLine& line) {
    const Food* best = nullptr;
    const Pack* best_pack = nullptr;
    std::int64_t best_cost = 0, best_packs = 0;
    for (const Food& food : view_.household->foods) {
      if (food.kind != FoodKind::kWater || food.self_filled || !food.volume_ml) continue;
      for (const Pack& pack : food.packs) {
        const std::int64_t pack_ml = pack.units * *food.volume_ml;
        if (pack_ml <= 0) continue;
        const std::int64_t packs = (missing_ml + pack_ml - 1) / pack_ml;
        if (best == nullptr || packs * pack.price_cents < best_cost) {
          best = &food;
          best_pack = &pack;
          best_packs = packs;
          best_cost = packs * pack.price_cents;
        }
      }
    }
    if (best == nullptr) {
      plan_.unmet.push_back({line.id, line.place, 0, missing_ml, "the book knows no drinking water that a shop sells"});
      return;
    }
    BuyLine bought;
    bought.food = best->key;
    bought.kits = {schedule_.kit};
    bought.units = (missing_ml + *best->volume_ml - 1) / *best->volume_ml;
    bought.packs = best_packs;
    bought.pack = *best_pack;
    bought.good_through_at_least = schedule_.hold_until;
    bought.places = {line.place};
    bought.for_people = eaters_of(*view_.household, line);
    bought.ml = missing_ml;
    plan_.buy.push_back(std::move(bought));
  }

  const BookView& view_;
  const KitSchedule& schedule_;
  const Reserved& reserved_;
  KitPlan& plan_;
};

}  // namespace

WaterState plan_water(const BookView& view, const KitSchedule& schedule, const Reserved& reserved, Day today,
                      KitPlan& plan) {
  WaterState state;
  const MenuLine* line_to_fill = nullptr;
  for (const MenuLine& line : view.household->menu) {
    if (view.kit_of_place.at(line.place) != schedule.kit || !wants_water(*view.household, line)) continue;
    state.need_ml += line.ml;
    if (line_to_fill == nullptr) line_to_fill = &line;
  }
  // At a review self-filled water is poured out and filled afresh when it is due before the next one; in between, when it is due.
  const Day refill_by = schedule.current ? schedule.next.day : today;
  for (const Position& position : view.positions) {
    if (position.food->kind != FoodKind::kWater || *position.kit != schedule.kit) continue;
    Leaving note{position.at, position.food->key, position.amount, position.good_through, LeaveReason::kTooOld};
    if (position.facts->state != LotState::kOk) {
      note.reason =
          position.facts->state == LotState::kRecalled ? LeaveReason::kRecalled : LeaveReason::kDoubtful;
      plan.leaves.push_back(note);
      continue;
    }
    state.have_ml += content_ml(position);
    if (!position.good_through) continue;
    if (position.food->self_filled && *position.good_through < refill_by) {
      if (*position.good_through < today) note.reason = LeaveReason::kPast;
      state.to_refill.push_back(note);
    } else if (!position.food->self_filled && *position.good_through < today) {
      note.reason = LeaveReason::kPast;
      state.past_date.push_back(note);
    }
  }
  if (state.have_ml < state.need_ml && line_to_fill != nullptr) {
    WaterFiller(view, schedule, reserved, plan).fill(state.need_ml - state.have_ml, *line_to_fill);
  }
  return state;
}

}  // namespace larderloop
