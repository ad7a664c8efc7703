// What lies in the kit, position by position: may it be there, can it be used, will it last?
#include "app/kit_check_work.h"
#include "larderloop/core/words.h"

#include <algorithm>

namespace larderloop {
namespace {

constexpr int kDryDays =
    14;  // what keeps longer once opened is not wet food (USDA FSIS storage-time data, opened)

std::string id_of(const Position& position) {
  return std::to_string(position.at.lot.value());
}

void check_people(KitCheckWork& work, const Position& position) {
  const auto eaters = work.eaters.find(position.at.place);
  if (eaters == work.eaters.end()) return;
  for (const PersonRefusal& each :
       refusals(work.household, eaters->second, *position.food, effective_label(*position.facts), work.today)) {
    const std::string who = work.name(each.person);
    switch (each.reason.refusal) {
      case Refusal::kContains:
      case Refusal::kMayContain:
      case Refusal::kDiet:
        work.add(Gravity::kMust, Topic::kAllergen, position,
                 lot_words(position) + " is not for " + who +
                     ", who eats from here: " + refusal_words(each.reason),
                 "take it out: larderloop record moved " + id_of(position) + " all --at " +
                     position.at.place.str() + " --to SHELF")
            .person = each.person;
        break;
      case Refusal::kLabelUnknown:
        work.add(
                Gravity::kMust, Topic::kLabel, position,
                lot_words(position) + " lies where " + who + " eats: " + refusal_words(each.reason),
                "read it and write it down: larderloop lot label " + id_of(position))
            .person = each.person;
        break;
      case Refusal::kChoking:
      case Refusal::kHoney:
        work.add(Gravity::kMust, Topic::kChild, position,
                 lot_words(position) + " lies where " + who + " eats: " + refusal_words(each.reason),
                 "put it in a bag of somebody older; a doctor or the child's clinic knows more (from "
                 "memory of CDC and AAP advice)")
            .person = each.person;
        break;
      case Refusal::kRefuses:
      case Refusal::kWrongSpecies:
      case Refusal::kNotFood:
      case Refusal::kInfantFormula:
        break;  // then it fills no line for them, and the menu says what is missing
    }
  }
}

// Is there a thing of this kind in the very same place?
bool has_thing(const KitCheckWork& work, const PlaceKey& place, bool Food::*is_such) {
  return std::any_of(work.inside.begin(), work.inside.end(), [&](const Position* each) {
    return each->at.place == place && each->food->*is_such && each->facts->state == LotState::kOk;
  });
}

std::string where_is(const KitCheckWork& work, bool Food::*is_such, const PlaceKey& to) {
  for (const Position* each : work.inside) {
    if (!(each->food->*is_such)) continue;
    return "put one in here, for example from " + work.name(each->at.place) +
           ": larderloop record moved " + std::to_string(each->at.lot.value()) + " 1 --at " +
           each->at.place.str() + " --to " + to.str();
  }
  return "put one in here";
}

void check_tools(KitCheckWork& work) {
  std::set<PlaceKey> opener, cutlery;
  for (const Position* position : work.inside) {
    const PlaceKey& place = position->at.place;
    if (position->food->needs_opener && !has_thing(work, place, &Food::is_opener) &&
        opener.insert(place).second) {
      work.add(Gravity::kMust, Topic::kUse, *position,
               position->food->name + " needs an opener, and there is none in " + work.name(place),
               where_is(work, &Food::is_opener, place));
    }
    if (position->food->needs_spoon && !has_thing(work, place, &Food::is_cutlery) &&
        cutlery.insert(place).second) {
      work.add(Gravity::kMust, Topic::kUse, *position,
               position->food->name + " cannot be eaten without cutlery, and there is none in " +
                   work.name(place),
               where_is(work, &Food::is_cutlery, place));
    }
  }
}

void check_use(KitCheckWork& work, const Position& position) {
  const Food& food = *position.food;
  const std::string out = "take it out: larderloop record moved " + id_of(position) + " all --at " +
                          position.at.place.str() + " --to SHELF";
  if (food.refrigerate)
    work.add(Gravity::kMust, Topic::kUse, position,
             lot_words(position) + " has to be kept refrigerated", out);
  else if (!food.no_cook)
    work.add(food.needs_hot_water ? Gravity::kNote : Gravity::kMust, Topic::kUse, position,
             lot_words(position) + " has to be cooked: it never counts as a meal", out);
  else if (food.needs_hot_water)
    work.add(Gravity::kNote, Topic::kUse, position,
             lot_words(position) + " helps only if hot water turns up: it never counts as a meal",
             "keep it as an extra, or take it out");
  if (food.home_canned)
    work.add(Gravity::kMust, Topic::kUse, position,
             lot_words(position) + " is home-canned: not for a kit without a stove", out);
}

void check_opened(KitCheckWork& work, const Position& position) {
  if (!position.at.opened_on || !is_eaten(*position.food)) return;
  work.add(Gravity::kMust, Topic::kOpened, position,
           lot_words(position) + " was opened on " + plain_day(*position.at.opened_on),
           "eat it or take it out; without a fridge, opened wet food is finished at that meal, "
           "within two hours, within one in heat above "
           "32 degrees (USDA)");
}

// Wet food in packs larger than the people of its line eat at once.
void check_sittings(KitCheckWork& work) {
  for (const MenuLine* line : work.lines) {
    std::int64_t eaten = 0;
    for (const PersonKey& person : eaters_of(work.household, *line))
      eaten += find_person(work.household, person)->appetite.halves();
    if (eaten == 0) continue;
    std::set<FoodKey> told;
    for (const Filled& each : work.filled[line->id]) {
      const Food& food = *each.position->food;
      const bool wet =
          food.kind == FoodKind::kFood && food.needs_spoon && food.storage.opened_days < kDryDays;
      if (!wet || 2 * food.servings <= std::max<std::int64_t>(eaten, 2) ||
          !told.insert(food.key).second)
        continue;
      KitFinding& found =
          work.add(Gravity::kShould, Topic::kOpened, *each.position,
                   "a " + food.unit + " of " + food.name + " is more than one sitting of " +
                       line_words(work, *line),
                   "what is left spoils without a fridge: put in a smaller pack, or share it");
      found.line = line->id;
      found.day = line->day;
      found.meal = line->meal;
    }
  }
}

void check_state(KitCheckWork& work, const Position& position) {
  if (position.facts->state == LotState::kRecalled) {
    work.add(Gravity::kMust, Topic::kState, position, lot_words(position) + " is recalled",
             "take it out, do not eat it, follow the notice: larderloop record thrown-out " +
                 id_of(position));
  } else if (position.facts->state == LotState::kDoubtful) {
    work.add(Gravity::kMust, Topic::kState, position, lot_words(position) + " is doubtful",
             "take it out and look at it; swollen, leaking, rusted or badly dented goes out "
             "whatever its date says");
  }
}

void check_date(KitCheckWork& work, const Position& position) {
  if (position.facts->state != LotState::kOk || lasts(position, work.check.schedule.hold_until))
    return;
  if (!position.good_through) {
    work.add(Gravity::kMust, Topic::kDate, position, lot_words(position) + " has no date to go by",
             "read the date off the package: larderloop lot date " + id_of(position));
    return;
  }
  const std::string estimated =
      position.facts->basis == DayBasis::kEstimated ? " by the storage table" : "";
  const std::string review =
      work.check.schedule.current
          ? "; the review takes it out: larderloop review start " + work.kit.str()
          : "; the plan says what takes its place: larderloop plan";
  if (*position.good_through < work.today) {
    const bool unsafe = position.facts->safety;
    work.add(Gravity::kMust, Topic::kDate, position,
             lot_words(position) + (unsafe ? " is past its safety date, " : " is past its date, ") +
                 plain_day(*position.good_through) + estimated,
             unsafe ? "throw it out: larderloop record thrown-out " + id_of(position)
                    : "look, smell, decide: past a quality date is not unsafe in itself" + review);
    return;
  }
  work.add(Gravity::kMust, Topic::kDate, position,
           lot_words(position) + " is good through " + plain_day(*position.good_through) +
               estimated + ", not through " + plain_day(work.check.schedule.hold_until),
           "eat it soon and put in a newer one" + review);
}

// What one bag holds and the owner of another bag in the same box must not have.
void check_near(KitCheckWork& work) {
  std::map<std::tuple<PlaceKey, PersonKey, std::string>, std::set<PlaceKey>>
      found;  // box, person, allergen: the bags it lies in
  for (const Position* position : work.inside) {
    const Place& bag = *find_place(work.household, position->at.place);
    if (bag.kind != PlaceKind::kBag || !is_eaten(*position->food) || !position->facts->label)
      continue;
    for (const auto& [key, declared] : position->facts->label->declared) {
      if (declared != Declared::kContains) continue;
      for (const auto& [place, people] : work.eaters) {
        if (place == bag.key || find_place(work.household, place)->parent != bag.parent) continue;
        for (const PersonKey& who : people) {
          const Person& person = *find_person(work.household, who);
          for (const Avoid& avoid : person.avoid) {
            if (overlaps(avoid.key, key)) found[{bag.parent, who, avoid.key}].insert(bag.key);
          }
        }
      }
    }
  }
  for (const auto& [what, bags] : found) {
    std::vector<std::string> names;
    for (const PlaceKey& bag : bags) names.push_back(work.name(bag));
    work.add(
            Gravity::kNote, Topic::kNear, std::get<0>(what),
            list_words(names) + (names.size() == 1 ? " holds " : " hold ") +
                allergen_words(std::get<2>(what)) + ", which " + work.name(std::get<1>(what)) +
                " must not have, in the same box",
            "keep the bags closed; open and eat that food away from the other bags, and wash hands")
        .person = std::get<1>(what);
  }
}

}  // namespace

void check_foods(KitCheckWork& work) {
  for (const Position* position : work.inside) {
    if (is_eaten(*position->food)) {
      check_people(work, *position);
      check_use(work, *position);
      check_opened(work, *position);
    }
    check_state(work, *position);
    check_date(work, *position);
  }
  check_tools(work);
  check_sittings(work);
  check_near(work);
}

}  // namespace larderloop
