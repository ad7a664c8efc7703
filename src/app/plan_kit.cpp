// The refill part of the plan: a solved problem told in the household's words.
#include <algorithm>

#include "app/plan_build.h"
#include "larderloop/core/words.h"
#include "larderloop/plan/planner.h"

namespace larderloop {
namespace {

Leaving leaving_of(const Position& position, HalfServings amount, LeaveReason reason) {
  return {position.at, position.food->key, amount, position.good_through, reason};
}

// Who eats from a place: everybody on a menu line kept there.
std::map<PlaceKey, std::vector<PersonKey>> eaters_by_place(const Household& household) {
  std::map<PlaceKey, std::set<PersonKey>> sets;
  for (const MenuLine& line : household.menu) {
    for (const PersonKey& person : eaters_of(household, line)) sets[line.place].insert(person);
  }
  std::map<PlaceKey, std::vector<PersonKey>> lists;
  for (const auto& [place, people] : sets) lists[place].assign(people.begin(), people.end());
  return lists;
}

// Food that lies in a bag of somebody who must not have it, or whose label nobody has read.
void check_bags(const BookView& view, const PlaceKey& kit, KitPlan& plan) {
  const auto eaters = eaters_by_place(*view.household);
  for (const Position& position : view.positions) {
    const FoodKind kind = position.food->kind;
    if (*position.kit != kit || kind == FoodKind::kThing || kind == FoodKind::kWater) continue;
    const auto found = eaters.find(position.at.place);
    if (found == eaters.end()) continue;
    bool wrong = false, unread = false;
    for (const PersonRefusal& refusal :
         refusals(*view.household, found->second, *position.food, effective_label(*position.facts), view.today)) {
      switch (refusal.reason.refusal) {
        case Refusal::kLabelUnknown:
          unread = true;
          break;
        case Refusal::kContains:
        case Refusal::kMayContain:
        case Refusal::kDiet:
        case Refusal::kChoking:
        case Refusal::kHoney:
          wrong = true;
          break;
        case Refusal::kRefuses:
        case Refusal::kWrongSpecies:  // people's and pets' food may share a bag; lines keep them apart
        case Refusal::kNotFood:
        case Refusal::kInfantFormula:
          break;
      }
    }
    if (wrong) plan.wrong_bag.push_back(leaving_of(position, position.amount, LeaveReason::kTooOld));
    if (unread && !wrong) plan.label_needed.push_back(leaving_of(position, position.amount, LeaveReason::kTooOld));
  }
}

void add_cautions(const Household& household, BuyLine& line) {
  std::set<std::string> contains, may_contain;
  std::set<Diet> diets;
  for (const PersonKey& key : line.for_people) {
    const Person& person = *find_person(household, key);
    for (const Avoid& avoid : person.avoid) {
      contains.insert(avoid.key);
      if (!avoid.accept_may_contain) may_contain.insert(avoid.key);
    }
    diets.insert(person.diets.begin(), person.diets.end());
  }
  line.must_not_say.assign(contains.begin(), contains.end());
  line.nor_may_contain.assign(may_contain.begin(), may_contain.end());
  line.must_suit.assign(diets.begin(), diets.end());
}

void tell_purchases(const BookView& view, const RefillBuild& build, const plan::RefillPlan& solved, const PlaceKey& kit,
                    Day hold_until, KitPlan& plan) {
  for (const plan::OfferPacks& packs : solved.packs) {
    if (packs.packs == 0) continue;
    const RefillBuild::OfferOf& offer = build.offers.at(packs.offer);
    BuyLine line;
    line.food = offer.food->key;
    line.kits = {kit};
    line.good_through_at_least = hold_until;
    if (offer.pack != nullptr) {
      line.pack = *offer.pack;
      line.packs = packs.packs;
    }
    std::set<PersonKey> people;
    std::set<PlaceKey> places;
    for (const plan::Move& move : solved.moves) {
      if (move.offer != packs.offer) continue;
      const MenuLine& menu_line = *build.lines.at(move.line);
      line.units += move.units;
      places.insert(menu_line.place);
      for (const PersonKey& person : eaters_of(*view.household, menu_line)) people.insert(person);
    }
    line.for_people.assign(people.begin(), people.end());
    line.places.assign(places.begin(), places.end());
    add_cautions(*view.household, line);
    plan.cost_cents += line.packs * line.pack.price_cents;
    plan.buy.push_back(std::move(line));
  }
}

std::string why_unmet(const BookView& view, const MenuLine& line, Day hold_until) {
  const Household& household = *view.household;
  const std::vector<PersonKey> eaters = eaters_of(household, line);
  std::size_t known = 0, fitting = 0;
  for (const Food& food : household.foods) {
    const bool asked = line.role ? food.roles.count(*line.role) > 0 : food.key == line.food;
    if (!asked || food.retired) continue;
    known += 1;
    if (food.needs_hot_water || (!food.no_cook && food.kind != FoodKind::kThing)) continue;
    if (!line.food.empty() && eaters.empty()) fitting += 1;
    else if (refusals(household, eaters, food, food.label ? &*food.label : nullptr, view.today).empty()) fitting += 1;
  }
  if (known == 0) return "the book knows no food for it";
  if (fitting == 0) {
    return known == 1 ? "the one food known for it does not suit who it is for"
                      : "none of the " + std::to_string(known) + " foods known for it suits who it is for";
  }
  return "what would suit is not on hand, and no pack of it is known to last through " + plain_day(hold_until);
}

void tell_fills(const RefillBuild& build, const plan::RefillPlan& solved, KitPlan& plan) {
  std::map<std::string, std::int64_t> used;
  for (const plan::Move& move : solved.moves) {
    const MenuLine& line = *build.lines.at(move.line);
    Fill fill;
    fill.units = move.units;
    fill.place = line.place;
    fill.line = line.id;
    if (move.lot.empty()) {
      fill.from = FillFrom::kBuy;
      fill.food = build.offers.at(move.offer).food->key;
    } else {
      const Position& position = *build.lots.at(move.lot);
      used[move.lot] += move.units;
      const bool in_kit = !position.kit->empty();
      fill.from = !in_kit                            ? FillFrom::kPantry
                  : position.at.place == line.place ? FillFrom::kStays
                                                     : FillFrom::kOtherBag;
      fill.at = position.at;
      fill.food = position.food->key;
      fill.good_through = position.good_through;
    }
    plan.fills.push_back(std::move(fill));
  }
  std::stable_sort(plan.fills.begin(), plan.fills.end(), [](const Fill& a, const Fill& b) {
    if (a.place != b.place) return a.place < b.place;
    if (a.line != b.line) return a.line < b.line;
    return a.at < b.at;
  });
  for (const plan::RefillLot& lot : build.problem.lots) {
    if (!lot.in_kit || used[lot.id] >= lot.units) continue;
    const Position& position = *build.lots.at(lot.id);
    if (position.food->needs_hot_water) continue;  // conditional items lie beside the menu
    plan.surplus.push_back(leaving_of(
        position, HalfServings::units(lot.units - used[lot.id], position.food->servings), LeaveReason::kTooOld));
  }
}

}  // namespace

Result<KitPlan> plan_kit_in(const BookView& view, const KitSchedule& schedule, const Reserved& reserved, Day today, KeptPlans& kept) {
  const PlaceKey& kit = schedule.kit;
  KitPlan plan;
  plan.schedule = schedule;
  for (const Position& position : view.positions) {
    if (*position.kit != kit || lasts(position, schedule.hold_until)) continue;
    plan.leaves.push_back(leaving_of(position, position.amount, why_leave(position, today)));
  }
  std::stable_sort(plan.leaves.begin(), plan.leaves.end(), [](const Leaving& a, const Leaving& b) {
    return a.at.place != b.at.place ? a.at.place < b.at.place : a.food < b.food;
  });
  const RefillBuild build = build_refill(view, schedule, reserved, today);
  const auto solution = kept.refill(kit.str(), build.problem);
  if (!solution) return fail(solution.error());
  const plan::RefillPlan& solved = solution->plan;
  plan.levels = solution->levels;
  tell_fills(build, solved, plan);
  tell_purchases(view, build, solved, kit, schedule.hold_until, plan);
  for (const plan::LineUnits& unmet : solved.unmet) {
    if (unmet.units == 0) continue;
    const MenuLine& line = *build.lines.at(unmet.line);
    plan.unmet.push_back({line.id, line.place, unmet.units, 0, why_unmet(view, line, schedule.hold_until)});
  }
  check_bags(view, kit, plan);
  plan.water = plan_water(view, schedule, reserved, today, plan);
  for (const BuyLine& line : plan.buy) {
    if (line.ml > 0) plan.cost_cents += line.packs * line.pack.price_cents;
  }
  return plan;
}

Result<KitPlan> plan_kit(const Household& household, const PlaceKey& kit, Day today) {
  auto view = view_book(household, today);
  if (!view) return fail(view.error());
  auto schedule = kit_schedule(household, kit, today);
  if (!schedule) return fail(schedule.error());
  KeptPlans kept(household.kept_plans, std::nullopt);
  return plan_kit_in(*view, *schedule, {}, today, kept);
}

}  // namespace larderloop
