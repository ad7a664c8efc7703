// Is there enough: energy, salt, water.
#include "app/kit_check_work.h"
#include "larderloop/core/label_figures.h"
#include "larderloop/core/words.h"

#include <algorithm>

namespace larderloop {
namespace {

constexpr std::int64_t kSodiumOfADay = 2300;  // 21 CFR 101.9(c)(9), from memory
constexpr int kGrownUp = 18;

std::string litres(std::int64_t ml) {
  const std::int64_t tenths = (ml + 50) / 100;
  return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " l";
}

// What each person has on each day. Shared lines are dealt evenly; lines of no day over all days.
void sum_up(KitCheckWork& work) {
  struct Sum {
    double kcal = 0, sodium = 0, no_kcal = 0, no_sodium = 0;
  };
  std::map<std::pair<PersonKey, int>, Sum> sums;
  for (const MenuLine* line : work.lines) {
    const std::vector<PersonKey> people = eaters_of(work.household, *line);
    for (const Filled& each : work.filled[line->id]) {
      const Food& food = *each.position->food;
      if (!is_eaten(food) || people.empty()) continue;
      const int first = line->day > 0 ? line->day : 1;
      const int last = line->day > 0 ? line->day : work.check.days;
      const double part =
          static_cast<double>(each.units) / static_cast<double>(people.size()) / (last - first + 1);
      for (const PersonKey& person : people) {
        for (int day = first; day <= last; ++day) {
          Sum& sum = sums[{person, day}];
          (food.energy_kcal ? sum.kcal : sum.no_kcal) +=
              part * static_cast<double>(food.energy_kcal.value_or(1));
          (food.sodium_mg ? sum.sodium : sum.no_sodium) +=
              part * static_cast<double>(food.sodium_mg.value_or(1));
        }
      }
    }
  }
  for (const auto& [who, sum] : sums) {
    work.check.eaten.push_back({who.first, who.second, static_cast<std::int64_t>(sum.kcal + 0.5),
                                static_cast<std::int64_t>(sum.sodium + 0.5),
                                static_cast<std::int64_t>(sum.no_kcal + 0.999),
                                static_cast<std::int64_t>(sum.no_sodium + 0.999)});
  }
}

void estimate(KitCheckWork& work) {
  for (const Person& person : work.household.people) {
    if (person.retired) continue;
    PersonNeed need{person.key, energy_need(person, work.today), {}};
    if (!need.need) {
      need.why_not =
          !person.is_human() ? "a pet: by its package, or ask a vet"
          : !person.born
              ? "no birth date: larderloop person change " + person.key.str() + " --born DATE"
              : "under two years: follow infant feeding advice, ask a professional";
    }
    work.check.needs.push_back(std::move(need));
  }
}

void check_energy(KitCheckWork& work) {
  for (const DayFood& day : work.check.eaten) {
    const auto known =
        std::find_if(work.check.needs.begin(), work.check.needs.end(),
                     [&](const PersonNeed& each) { return each.person == day.person; });
    if (!known->need || work.check.days < 2) continue;  // a kit for some hours need not feed a day
    const EnergyNeed& need = *known->need;
    if (day.kcal >= need.low_kcal) continue;
    // Half of the usual food does for a healthy grown-up for a while, not for children (FEMA and
    // Red Cross advice).
    const bool half = day.kcal * 2 >= need.low_kcal;
    const bool little = !half && day.unknown_energy == 0;
    KitFinding& found = work.add(
        little ? Gravity::kMust : Gravity::kShould, Topic::kEnergy, work.kit,
        work.name(day.person) + " has about " +
            std::to_string(label_kcal(static_cast<double>(day.kcal))) + " kcal on day " +
            std::to_string(day.day) +
            (day.unknown_energy > 0 ? " (not counting food without energy in the book)" : "") +
            "; the estimated need is " + std::to_string(need.low_kcal) + " to " +
            std::to_string(need.high_kcal),
        little
            ? "add food to this day: less than half of the need does not do, even for a short while"
        : need.years < kGrownUp ? "add food to this day: children should not go short"
                                : "add food to this day if there is room; a healthy adult can live "
                                  "a while on half of the usual food");
    found.person = day.person;
    found.day = day.day;
  }
}

void check_sodium(KitCheckWork& work) {
  for (const DayFood& day : work.check.eaten) {
    if (day.sodium_mg <= kSodiumOfADay) continue;
    KitFinding& found =
        work.add(Gravity::kNote, Topic::kSodium, work.kit,
                 work.name(day.person) + " has about " +
                     std::to_string(label_sodium_mg(static_cast<double>(day.sodium_mg))) +
                     " mg of sodium on day " + std::to_string(day.day) +
                     ", more than the 2,300 mg a day on US labels (from memory)",
                 "salty food makes people drink more: allow more water, or put in less salty food");
    found.person = day.person;
    found.day = day.day;
  }
}

bool is_water(const Position& position) {
  return position.food->kind == FoodKind::kWater;
}

void check_bottles(KitCheckWork& work) {
  for (const Position* position : work.inside) {
    if (!is_water(*position) || position->facts->state != LotState::kOk) continue;
    const std::optional<Day>& through = position->good_through;
    const std::string lot = std::to_string(position->at.lot.value());
    if (position->at.opened_on) {
      work.add(Gravity::kMust, Topic::kWater, *position, lot_words(*position) + " was opened",
               "drink it or use it to wash, and put in a sealed one");
    } else if (!through) {
      if (position->food->self_filled)
        work.add(Gravity::kMust, Topic::kWater, *position,
                 lot_words(*position) + " has no fill date",
                 "fill it afresh and write the day on it");
    } else if (position->food->self_filled && *through < work.today) {
      work.add(Gravity::kMust, Topic::kWater, *position,
               lot_words(*position) + " was filled more than six months ago",
               "pour it out and fill it afresh: larderloop record thrown-out " + lot +
                   ", then larderloop lot add");
    } else if (position->food->self_filled && *through < work.check.schedule.next.day) {
      work.add(
          Gravity::kShould, Topic::kWater, *position,
          lot_words(*position) + " is due on " + plain_day(*through) + ", before the next review",
          "fill it afresh by then");
    } else if (!position->food->self_filled && *through < work.today) {
      work.add(
          Gravity::kNote, Topic::kWater, *position,
          lot_words(*position) + " is past its printed date, " + plain_day(*through),
          "no law sets a limit for bottled water; the taste may change: drink it and put in newer");
    }
  }
}

void check_water(KitCheckWork& work) {
  KitWater& water = work.check.water;
  const int days = std::max(work.check.days, 1);
  water.need = water_need(work.household, days);
  PlaceKey kept = work.kit;
  for (const MenuLine* line : work.lines) {
    if (wants_water(work.household, *line)) {
      water.menu_ml += line->ml;
      kept = line->place;
    }
    for (const Filled& each : work.filled[line->id])
      water.food_ml += each.units * each.position->food->needs_water_ml;
  }
  for (const Position* position : work.inside) {
    const bool counts = is_water(*position) && position->facts->state == LotState::kOk &&
                        !position->at.opened_on &&
                        !(position->food->self_filled &&
                          (!position->good_through || *position->good_through < work.today));
    if (counts)
      water.have_ml += position->food->volume_ml.value_or(0) * position->amount.whole_units(1);
  }
  const std::int64_t least = water.need.people_drink + water.need.pets_drink + water.food_ml;
  const std::string over = std::to_string(days) + (days == 1 ? " day" : " days");
  if (water.have_ml < least) {
    work.add(Gravity::kMust, Topic::kWater, kept,
             "there are " + litres(water.have_ml) +
                 " of drinking water; to drink and for the food it takes at least " +
                 litres(least) + " for " + over,
             "put in " + litres(least - water.have_ml) +
                 " more; heat, illness and nursing need more still");
  } else if (water.have_ml < water.menu_ml) {
    work.add(Gravity::kMust, Topic::kWater, kept,
             "there are " + litres(water.have_ml) + " of drinking water; the menu asks for " +
                 litres(water.menu_ml),
             "put in " + litres(water.menu_ml - water.have_ml) +
                 " more; the plan says from where: larderloop plan");
  }
  if (water.have_ml >= least && water.have_ml < water.need.all) {
    work.add(
        Gravity::kNote, Topic::kWater, kept,
        "enough to drink, but a gallon a day for each person and pet, washing included, would be " +
            litres(water.need.all) + " for " + over,
        "keep more beside the kit if you can (CDC, 2017)");
  }
  check_bottles(work);
}

}  // namespace

void check_needs(KitCheckWork& work) {
  sum_up(work);
  estimate(work);
  check_energy(work);
  check_sodium(work);
  check_water(work);
}

}  // namespace larderloop
