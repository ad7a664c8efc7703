// Can it be carried, does it lie where it keeps, and how does every lot stand?
#include "app/kit_check_work.h"
#include "larderloop/core/lifting.h"
#include "larderloop/core/words.h"

#include <fmt/format.h>

#include <algorithm>

namespace larderloop {
namespace {

constexpr int kGrownUp = 18;
constexpr double kNearlyEveryone = 3;  // lifting index above which nearly everyone is at risk

// Sums of packages are no finer than a tenth.
std::string kilograms(std::int64_t grams) {
  return fmt::format("{:.1f} kg", static_cast<double>(grams) / 1000);
}

std::int64_t units_of(const Position& position) {
  const std::int64_t whole = position.amount.whole_units(position.food->servings);
  return position.at.opened_on ? std::max<std::int64_t>(whole, 1) : whole;
}

void weigh(KitCheckWork& work) {
  for (const Place& place : work.household.places) {
    if ((place.kind != PlaceKind::kBox && place.kind != PlaceKind::kBag) ||
        kit_of(work.household, place.key) != work.kit)
      continue;
    Carried carried;
    carried.place = place.key;
    for (const Position* position : work.inside) {
      if (!is_within(work.household, position->at.place, place.key)) continue;
      const std::int64_t units = units_of(*position);
      const Food& food = *position->food;
      if (!food.mass_g) carried.unweighed += units;
      const std::int64_t mass =
          units *
          food.mass_g.value_or(food.kind == FoodKind::kWater ? food.volume_ml.value_or(0) : 0);
      if (food.kind == FoodKind::kWater) {
        carried.water_g += mass;
        continue;
      }
      carried.mass_g += mass;
      if (!food.volume_ml) carried.unmeasured += units;
      carried.volume_ml += units * food.volume_ml.value_or(0);
    }
    work.check.carried.push_back(carried);
  }
}

void check_loads(KitCheckWork& work) {
  KitCheck& check = work.check;
  check.lift_limit_kg = recommended_limit_kg(kBoxIntoTheCar);
  for (const Person& person : work.household.people) {
    if (!person.retired && person.is_human() && person.born && years_on(*person.born, work.today) >= kGrownUp)
      ++check.adults;
  }
  for (const Carried& each : check.carried) {
    const Place& place = *find_place(work.household, each.place);
    const std::string weighs =
        fmt::format("{} weighs {} with what is in it", place.name, kilograms(each.mass_g)) +
        (each.unweighed > 0 ? " (some of it was never weighed)" : "");
    if (place.mass_limit_g && each.mass_g > *place.mass_limit_g) {
      work.add(Gravity::kMust, Topic::kMass, each.place,
               weighs + ", more than its limit of " + kilograms(*place.mass_limit_g),
               "take something out, or share it over two");
    }
    if (place.volume_limit_ml && each.volume_ml > *place.volume_limit_ml) {
      work.add(Gravity::kMust, Topic::kVolume, each.place,
               fmt::format("{} holds {:.1f} l of packages, more than its {:.1f} l", place.name,
                           static_cast<double>(each.volume_ml) / 1000,
                           static_cast<double>(*place.volume_limit_ml) / 1000),
               "take something out, or pack what is bulky elsewhere");
    }
    if (place.kind != PlaceKind::kBox) continue;
    const double index =
        lifting_index(static_cast<double>(each.mass_g) / 1000, check.lift_limit_kg);
    const std::string limit = fmt::format(
        "; one adult should lift about {:.0f} kg from the floor into a car (NIOSH 94-110)",
        check.lift_limit_kg);
    if (index > 2 * kNearlyEveryone || (check.adults < 2 && index > kNearlyEveryone)) {
      work.add(Gravity::kMust, Topic::kMass, each.place, weighs + limit,
               "pack it as two boxes; this would hurt nearly everyone");
    } else if (index > 2 || (check.adults < 2 && index > 1)) {
      work.add(Gravity::kShould, Topic::kMass, each.place, weighs + limit,
               "pack it as two boxes, or carry the bags one by one");
    } else if (index > 1) {
      work.add(Gravity::kNote, Topic::kMass, each.place, weighs + limit,
               "lift it by two, or carry the bags one by one");
    }
    if (each.water_g > 0) {
      work.add(Gravity::kNote, Topic::kMass, each.place,
               fmt::format("the water here weighs {} apart from the rest", kilograms(each.water_g)),
               "carry it bottle by bottle");
    }
  }
}

bool is_hot(const Household& household, PlaceKey key) {
  for (const Place* place = find_place(household, key); place != nullptr;
       place = place->parent.empty() ? nullptr : find_place(household, place->parent)) {
    if (place->hot) return true;
  }
  return false;
}

// The latest day something of it was put there.
std::map<StockKey, Day> put_there(const Household& household) {
  std::map<StockKey, Day> since;
  for (const Entry& entry : household.entries) {
    StockKey at = entry.at;
    if (entry.kind == EntryKind::kMoved) at.place = entry.to;
    const bool comes = entry.kind == EntryKind::kMoved || entry.kind == EntryKind::kReceived ||
                       entry.kind == EntryKind::kFound;
    // The first time counts: the oldest unit there has been in the heat the longest.
    if (comes) since.emplace(at, entry.on);
  }
  return since;
}

Stand stand_on(const Position& position, const std::optional<Day>& through, Day day) {
  if (position.facts->state == LotState::kRecalled) return Stand::kRecalled;
  if (position.facts->state == LotState::kDoubtful) return Stand::kDoubtful;
  if (!through)
    return position.food->kind == FoodKind::kThing || position.food->kind == FoodKind::kWater
               ? Stand::kGood
               : Stand::kUnknown;
  if (day <= *through) return Stand::kGood;
  return position.facts->safety ? Stand::kUnsafe : Stand::kPast;
}

void check_lots(KitCheckWork& work) {
  const auto since = put_there(work.household);
  std::map<PlaceKey, std::vector<std::string>> shortened;
  for (const Position* position : work.inside) {
    LotStands row;
    row.at = position->at;
    row.food = position->food->key;
    row.amount = position->amount;
    row.good_through = position->good_through;
    row.basis = position->facts->basis;
    std::optional<Day> through = position->good_through;
    if (through && is_eaten(*position->food) && is_hot(work.household, position->at.place)) {
      const auto came = since.find({position->at.lot, position->at.place, std::nullopt});
      row.plan_through = good_through_in_heat(
          came == since.end() ? position->facts->received : came->second, *through);
      through = row.plan_through;
      if (position->facts->state == LotState::kOk &&
          lasts(*position, work.check.schedule.hold_until) &&
          *through < work.check.schedule.hold_until)
        shortened[position->at.place].push_back(lot_words(*position));
    }
    row.today = stand_on(*position, through, work.today);
    row.at_review = stand_on(*position, through, work.check.schedule.next.day);
    row.at_hold = stand_on(*position, through, work.check.schedule.hold_until);
    work.check.lots.push_back(std::move(row));
  }
  std::stable_sort(work.check.lots.begin(), work.check.lots.end(),
                   [](const LotStands& a, const LotStands& b) {
                     return std::tie(a.at.place, a.food, a.at) < std::tie(b.at.place, b.food, b.at);
                   });
  for (const auto& [place, all] : shortened) {
    constexpr std::size_t kNamed = 3;
    std::vector<std::string> lots(
        all.begin(), all.begin() + static_cast<std::ptrdiff_t>(std::min(kNamed, all.size())));
    if (all.size() > kNamed) lots.push_back(std::to_string(all.size() - kNamed) + " more");
    work.add(Gravity::kShould, Topic::kHeat, place,
             work.name(place) +
                 " is hot at times: if heat halves the life that is left (common practice), " +
                 list_words(lots) + (lots.size() == 1 ? " does" : " do") + " not last through " +
                 plain_day(work.check.schedule.hold_until),
             "look at them sooner than the next review, or keep them somewhere cool; heat never "
             "lengthens a date");
  }
}

}  // namespace

void check_carry(KitCheckWork& work) {
  weigh(work);
  check_loads(work);
  check_lots(work);
}

}  // namespace larderloop
