#include "larderloop/app/why.h"

#include "app/plan_wishes.h"
#include "app/why_work.h"

#include <algorithm>
#include <map>

namespace larderloop {

std::string_view fate_name(Fate fate) {
  switch (fate) {
    case Fate::kStays:
      return "stays";
    case Fate::kMovesIn:
      return "moves_in";
    case Fate::kSpare:
      return "spare";
    case Fate::kEaten:
      return "eaten";
    case Fate::kGivenAway:
      return "given_away";
    case Fate::kLeftOver:
      return "left_over";
    case Fate::kPast:
      return "past";
    case Fate::kSetAside:
      return "set_aside";
    case Fate::kKept:
      return "kept";
    case Fate::kGone:
      return "gone";
    case Fate::kBought:
      return "bought";
    case Fate::kAtMeal:
      return "at_meal";
    case Fate::kNothingThen:
      return "nothing_then";
  }
  return "";
}

std::string_view why_rule_name(WhyRule rule) {
  switch (rule) {
    case WhyRule::kDate:
      return "date";
    case WhyRule::kSetAside:
      return "set_aside";
    case WhyRule::kMustNot:
      return "must_not";
    case WhyRule::kNotWished:
      return "not_wished";
    case WhyRule::kNotForThatMeal:
      return "not_for_that_meal";
    case WhyRule::kStillInKit:
      return "still_in_kit";
    case WhyRule::kAppetite:
      return "appetite";
    case WhyRule::kWeekLimit:
      return "week_limit";
    case WhyRule::kSameFoodLimit:
      return "same_food_limit";
    case WhyRule::kTooLateToGive:
      return "too_late_to_give";
    case WhyRule::kNeverGiven:
      return "never_given";
    case WhyRule::kShown:
      return "shown";
    case WhyRule::kAllUsed:
      return "all_used";
    case WhyRule::kWorse:
      return "worse";
  }
  return "";
}

namespace what_if {
namespace {

// What becomes of one lot, position by position; positions with the same fate are told as one.
class LotTeller {
 public:
  LotTeller(Work& work, LotId lot, WhyReport& report) : work_(work), lot_(lot), report_(report) {}

  void tell() {
    for (const Position& position : work_.view.positions) {
      if (position.at.lot == lot_) place(position);
    }
    if (report_.parts.empty()) {
      WhyPart part;
      part.food = report_.food;
      report_.parts.push_back(std::move(part));
    }
  }

 private:
  // True when this is the first of its kind, so that its reasons are still to be found.
  bool part(Fate fate, const Position& position, HalfServings amount) {
    for (WhyPart& each : report_.parts) {
      if (each.fate != fate) continue;
      each.amount += amount;
      return false;
    }
    WhyPart part;
    part.fate = fate;
    part.food = position.food->key;
    part.at = position.at;
    part.amount = amount;
    part.good_through = position.good_through;
    if (const KitWork* kit = work_.kit_of(position.at.place)) {
      part.kit = kit->plan->schedule.kit;
      part.hold_until = kit->plan->schedule.hold_until;
    }
    report_.parts.push_back(std::move(part));
    return true;
  }

  void place(const Position& position) {
    if (position.facts->state != LotState::kOk) {
      if (part(Fate::kSetAside, position, position.amount))
        explain_not_packed(work_, position, report_.parts.back());
      return;
    }
    if (position.good_through && *position.good_through < work_.today) {
      part(Fate::kPast, position, position.amount);
      return;
    }
    const std::int64_t packed = packs(position);
    const bool in_meals = meals(position);
    if (in_meals) return;
    const HalfServings rest =
        position.amount - HalfServings::units(packed, position.food->servings);
    if (rest.halves() <= 0) return;
    const KitWork* kit = work_.kit_of(position.at.place);
    const bool spare =
        kit != nullptr && std::any_of(kit->plan->surplus.begin(), kit->plan->surplus.end(),
                                      [&](const Leaving& each) { return each.at == position.at; });
    if (!part(spare ? Fate::kSpare : Fate::kKept, position, rest)) return;
    if (spare) explain_spare(work_, *kit, position, report_.parts.back());
  }

  // Units that fill menu lines.
  std::int64_t packs(const Position& position) {
    std::int64_t units = 0;
    for (const KitWork& kit : work_.kits) {
      for (const Fill& fill : kit.plan->fills) {
        if (fill.from == FillFrom::kBuy || fill.at != position.at) continue;
        units += fill.units;
        const Fate fate = fill.from == FillFrom::kStays ? Fate::kStays : Fate::kMovesIn;
        if (!part(fate, position, HalfServings::units(fill.units, position.food->servings)))
          continue;
        report_.parts.back().kit = kit.plan->schedule.kit;
        report_.parts.back().hold_until = kit.plan->schedule.hold_until;
        report_.parts.back().place = fill.place;
        explain_packed(work_, kit, position, report_.parts.back());
      }
    }
    return units;
  }

  // Is it for the meals of the household? Tells what becomes of it there.
  bool meals(const Position& position) {
    bool any = false;
    for (const plan::EatLot& lot : work_.eat.problem.lots) {
      if (work_.eat.lots.at(lot.id) != &position) continue;
      const bool kept =
          lot.last_good_day >= work_.eat.problem.today + work_.eat.problem.horizon_days;
      if (kept) continue;
      any = eaten(position, lot) || any;
      any = rest(position, lot, work_.eaten.plan.donated, Fate::kGivenAway) || any;
      any = rest(position, lot, work_.eaten.plan.wasted, Fate::kLeftOver) || any;
    }
    return any;
  }

  bool eaten(const Position& position, const plan::EatLot& lot) {
    HalfServings amount;
    std::set<PersonKey> people;
    for (const plan::Dealt& each : work_.eat_plan->dealt()) {
      if (each.lot != lot.id) continue;
      amount += HalfServings(each.servings);
      people.insert(PersonKey(each.eater));
    }
    if (amount.halves() == 0) return false;
    const std::size_t first = work_.eat_plan->meals_of(lot.id).front();
    const MealTime when = work_.time_of(*in_order(work_.eat_plan->problem())[first]);
    if (!part(Fate::kEaten, position, amount)) {
      for (WhyPart& each : report_.parts) {
        if (each.fate == Fate::kEaten) each.when = std::min(*each.when, when);
      }
      return true;
    }
    WhyPart& told = report_.parts.back();
    told.when = when;
    told.people.assign(people.begin(), people.end());
    explain_not_packed(work_, position, told);
    explain_not_sooner(work_, lot.id, told);
    return true;
  }

  bool rest(const Position& position, const plan::EatLot& lot,
            const std::vector<plan::LotUnits>& list, Fate fate) {
    std::int64_t units = 0;
    for (const plan::LotUnits& each : list) {
      if (each.lot == lot.id) units += each.units;
    }
    if (units == 0) return false;
    if (!part(fate, position, HalfServings::units(units, position.food->servings))) return true;
    explain_not_eaten(work_, lot.id, report_.parts.back());
    if (fate == Fate::kLeftOver) explain_not_given(work_, lot.id, report_.parts.back());
    return true;
  }

  Work& work_;
  LotId lot_;
  WhyReport& report_;
};

}  // namespace

void why_lot(Work& work, LotId lot, WhyReport& report) {
  report.lot = lot;
  report.food = find_lot(*work.household, lot)->food;
  LotTeller(work, lot, report).tell();
}

}  // namespace what_if

Result<Outcome<WhyReport>> why(const Household& household, const WhyAbout& about, Asked asked) {
  if (const LotId* lot = std::get_if<LotId>(&about)) {
    if (find_lot(household, *lot) == nullptr) {
      return fail(ErrorKind::kNotFound, "there is no lot " + std::to_string(lot->value()),
                  "see them all: larderloop lot list");
    }
  }
  auto work = what_if::Work::make(household, asked);
  if (!work) return fail(work.error());
  Outcome<WhyReport> outcome;
  outcome.report.as_of = asked.today;
  outcome.report.plan_end = (*work)->eat.until;
  if (const LotId* lot = std::get_if<LotId>(&about)) {
    what_if::why_lot(**work, *lot, outcome.report);
  } else if (const MealTime* when = std::get_if<MealTime>(&about)) {
    what_if::why_meal(**work, *when, outcome.report);
  } else if (Status done = what_if::why_food(**work, std::get<FoodKey>(about), outcome.report);
             !done) {
    return fail(done.error());
  }
  outcome.report.solves = (*work)->solves;
  outcome.changes = std::move((*work)->planned.changes);
  return outcome;
}

}  // namespace larderloop
