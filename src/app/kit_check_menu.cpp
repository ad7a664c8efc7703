// Does the kit hold what its menu says, for every person, day and meal?
#include "app/kit_check_work.h"
#include "larderloop/core/words.h"

#include <algorithm>

namespace larderloop {
namespace {

constexpr int kWholeKitDays = 3;

bool asked_by(const MenuLine& line, const Food& food) {
  return line.role ? food.roles.count(*line.role) > 0 : food.key == line.food;
}

// How well a position can stand for a line: not at all, once something else is put right (a date, a
// label), or as it is.
enum class Fit { kNo, kLater, kNow };

Fit fit_of(const KitCheckWork& work, const Position& position, const MenuLine& line) {
  const Food& food = *position.food;
  if (position.at.place != line.place || position.at.opened_on || !asked_by(line, food))
    return Fit::kNo;
  if (!usable_in_kit(food) || position.facts->state != LotState::kOk) return Fit::kNo;
  bool later = !lasts(position, work.check.schedule.hold_until);
  if (later && position.good_through && *position.good_through < work.today) return Fit::kNo;
  if (is_eaten(food)) {
    for (const PersonRefusal& each : refusals(work.household, eaters_of(work.household, line), food,
                                              effective_label(*position.facts), work.today)) {
      if (each.reason.refusal != Refusal::kLabelUnknown) return Fit::kNo;
      later = true;
    }
  }
  return later ? Fit::kLater : Fit::kNow;
}

// Units to lines, as many as can be: augmenting paths, unit by unit. What stands as it is comes
// first and is never given up for the other.
class Filler {
 public:
  explicit Filler(KitCheckWork& work) : work_(work) {
    for (const MenuLine* line : work.lines) {
      if (wants_water(work.household, *line)) continue;
      lines_.push_back(line);
    }
    for (const Position* position : work.inside) {
      if (position->food->kind != FoodKind::kWater) positions_.push_back(position);
    }
    for (const Position* position : positions_)
      left_.push_back(position->amount.whole_units(position->food->servings));
    given_.assign(positions_.size(), std::vector<std::int64_t>(lines_.size(), 0));
    fit_.assign(positions_.size(), std::vector<Fit>(lines_.size(), Fit::kNo));
    for (std::size_t p = 0; p < positions_.size(); ++p) {
      for (std::size_t l = 0; l < lines_.size(); ++l)
        fit_[p][l] = fit_of(work, *positions_[p], *lines_[l]);
    }
  }

  void fill() {
    std::vector<std::int64_t> missing;
    for (const MenuLine* line : lines_) missing.push_back(line->units);
    for (const Fit least : {Fit::kNow, Fit::kLater}) {
      for (std::size_t l = 0; l < lines_.size(); ++l) {
        while (missing[l] > 0) {
          std::vector<bool> seen(lines_.size(), false);
          if (!reach(l, least, seen)) break;
          --missing[l];
        }
      }
    }
    tell_filled();
    for (std::size_t l = 0; l < lines_.size(); ++l) {
      if (missing[l] > 0) tell_missing(*lines_[l], missing[l]);
    }
  }

 private:
  // One more unit for line `l`, if need be by giving another line another unit.
  bool reach(std::size_t l, Fit least, std::vector<bool>& seen) {
    seen[l] = true;
    for (std::size_t p = 0; p < positions_.size(); ++p) {
      if (fit_[p][l] < least || left_[p] == 0) continue;
      --left_[p];
      ++given_[p][l];
      return true;
    }
    for (std::size_t p = 0; p < positions_.size(); ++p) {
      if (fit_[p][l] < least) continue;
      for (std::size_t other = 0; other < lines_.size(); ++other) {
        if (seen[other] || given_[p][other] == 0) continue;
        if (!reach(other, least, seen)) continue;
        --given_[p][other];
        ++given_[p][l];
        return true;
      }
    }
    return false;
  }

  void tell_filled() {
    for (std::size_t l = 0; l < lines_.size(); ++l) {
      for (std::size_t p = 0; p < positions_.size(); ++p) {
        if (given_[p][l] > 0) work_.filled[lines_[l]->id].push_back({positions_[p], given_[p][l]});
      }
    }
  }

  void tell_missing(const MenuLine& line, std::int64_t units) {
    const bool thing =
        line.role == Role::kThing ||
        (!line.food.empty() && find_food(work_.household, line.food)->kind == FoodKind::kThing);
    MenuLine one = line;
    one.units = 1;
    const std::string lacks = line.units == 1 ? "missing: 1 "
                                              : std::to_string(units) + " of " +
                                                    std::to_string(line.units) + " missing: ";
    KitFinding& found =
        work_.add(Gravity::kMust, Topic::kMenu, line.place,
                  lacks + line_words(work_, one) + (thing ? " (equipment)" : ""), elsewhere(line));
    found.line = line.id;
    found.day = line.day;
    found.meal = line.meal;
    found.food = line.food;
    if (line.people.size() == 1) found.person = line.people.front();
  }

  // Is it in another bag of the kit, or has it to come from outside?
  [[nodiscard]] std::string elsewhere(const MenuLine& line) const {
    for (std::size_t p = 0; p < positions_.size(); ++p) {
      const Position& position = *positions_[p];
      if (left_[p] == 0 || position.at.place == line.place) continue;
      MenuLine there = line;
      there.place = position.at.place;
      if (fit_of(work_, position, there) != Fit::kNow) continue;
      return "move 1 of " + lot_words(position) + " here: larderloop record moved " +
             std::to_string(position.at.lot.value()) + " 1 --at " + position.at.place.str() +
             " --to " + line.place.str();
    }
    return "put it in; the plan says from where: larderloop plan";
  }

  KitCheckWork& work_;
  std::vector<const MenuLine*> lines_;
  std::vector<const Position*> positions_;
  std::vector<std::int64_t> left_;
  std::vector<std::vector<std::int64_t>> given_;  // position by line
  std::vector<std::vector<Fit>> fit_;
};

bool is_meal_of(const KitCheckWork& work, const MenuLine& line) {
  if (line.role) {
    return *line.role != Role::kDrink && *line.role != Role::kWater && *line.role != Role::kThing &&
           *line.role != Role::kPetMeal;
  }
  const Food& food = *find_food(work.household, line.food);
  return (food.kind == FoodKind::kFood || food.infant_formula) && usable_in_kit(food);
}

void check_people(KitCheckWork& work) {
  std::map<PersonKey, std::set<std::pair<int, Meal>>> has;
  std::set<std::pair<int, Meal>> wanted;
  std::map<PersonKey, std::set<int>> fed;
  for (const MenuLine* line : work.lines) {
    for (const PersonKey& person : eaters_of(work.household, *line)) {
      const bool human = find_person(work.household, person)->is_human();
      if (human && line->day > 0 && line->meal && is_meal_of(work, *line)) {
        has[person].insert({line->day, *line->meal});
        if (*line->meal != Meal::kSnack) wanted.insert({line->day, *line->meal});
      }
      const bool pet_meal = line->role == Role::kPetMeal ||
                            (!line->food.empty() &&
                             find_food(work.household, line->food)->kind == FoodKind::kPetFood);
      if (!human && pet_meal) fed[person].insert(line->day);
    }
  }
  if (work.check.days >= kWholeKitDays) {
    for (int day = 1; day <= work.check.days; ++day) {
      for (const Meal meal : {Meal::kBreakfast, Meal::kLunch, Meal::kDinner})
        wanted.insert({day, meal});
    }
  }
  for (const Person& person : work.household.people) {
    if (person.retired) continue;
    if (!person.is_human()) {
      for (int day = 1; day <= work.check.days && work.check.days >= kWholeKitDays; ++day) {
        if (fed[person.key].count(day) > 0) continue;
        KitFinding& found =
            work.add(Gravity::kMust, Topic::kMenu, work.kit,
                     person.name + " has no food on day " + std::to_string(day),
                     "add a line with a pet meal for " + person.name + " to the kit menu");
        found.person = person.key;
        found.day = day;
      }
      continue;
    }
    const auto& meals = has[person.key];
    const bool none = std::none_of(wanted.begin(), wanted.end(),
                                   [&](const auto& each) { return meals.count(each) > 0; });
    if (none && !wanted.empty()) {
      work.add(Gravity::kMust, Topic::kMenu, work.kit, "the menu has no meal for " + person.name,
               "make lines for " + person.name + ": larderloop kit propose --person " +
                   person.key.str())
          .person = person.key;
      continue;
    }
    for (const auto& [day, meal] : wanted) {
      if (meals.count({day, meal}) > 0) continue;
      KitFinding& found =
          work.add(Gravity::kMust, Topic::kMenu, work.kit,
                   "the menu has no " + std::string(meal_name(meal)) + " for " + person.name +
                       " on day " + std::to_string(day),
                   "add a line to the kit menu, or make one: larderloop kit propose --person " +
                       person.key.str());
      found.person = person.key;
      found.day = day;
      found.meal = meal;
    }
  }
}

// How often one food comes again for one person.
void check_variety(KitCheckWork& work) {
  std::map<std::pair<PersonKey, FoodKey>, std::int64_t> times;
  for (const MenuLine* line : work.lines) {
    const std::vector<PersonKey> people = eaters_of(work.household, *line);
    if (people.size() != 1) continue;  // a shared line does not say who has what
    for (const Filled& each : work.filled[line->id]) {
      const Food& food = *each.position->food;
      if (!food.staple && food.kind != FoodKind::kThing && food.kind != FoodKind::kPetFood)
        times[{people.front(), food.key}] += each.units;
    }
  }
  for (const auto& [who, count] : times) {
    if (count <= work.household.settings.variety_cap) continue;
    KitFinding& found =
        work.add(Gravity::kNote, Topic::kVariety, work.kit,
                 work.name(who.first) + " has " + find_food(work.household, who.second)->name +
                     " " + std::to_string(count) + " times",
                 "put in something else at the next refill, if it is liked");
    found.person = who.first;
    found.food = who.second;
  }
}

}  // namespace

void check_menu(KitCheckWork& work) {
  if (work.lines.empty()) {
    work.add(Gravity::kMust, Topic::kMenu, work.kit, "the kit has no menu",
             "make one: larderloop kit propose " + work.kit.str());
    return;
  }
  Filler(work).fill();
  check_people(work);
  check_variety(work);
}

}  // namespace larderloop
