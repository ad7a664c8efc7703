// Another food in the place of the one that was thrown out.
#include "app/advice_lots.h"
#include "larderloop/core/eligible.h"

#include <algorithm>
#include <set>

namespace larderloop {
namespace {

bool shares(const Food& a, const Food& b) {
  const auto meets = [](const auto& one, const auto& other) {
    return std::any_of(one.begin(), one.end(),
                       [&](const auto& each) { return other.count(each) > 0; });
  };
  if (!a.roles.empty() || !b.roles.empty()) return meets(a.roles, b.roles);
  return meets(a.meals, b.meals);
}

// Does `other` ask for no more than `food`?
bool as_ready(const Food& food, const Food& other) {
  const auto no_more = [](bool one, bool another) { return one || !another; };
  return no_more(!food.no_cook, !other.no_cook) &&
         no_more(food.needs_hot_water, other.needs_hot_water) &&
         no_more(food.needs_opener, other.needs_opener) &&
         no_more(food.needs_spoon, other.needs_spoon) &&
         no_more(food.refrigerate, other.refrigerate) &&
         no_more(food.infant_formula, other.infant_formula) &&
         other.needs_water_ml <= food.needs_water_ml;
}

const Statement* label_of(const Food& food) {
  return food.label ? &*food.label : nullptr;
}

// Whoever may have the food or was written down as having eaten it; empty when one of them must not
// have the other.
std::vector<PersonKey> people_for(const AdviceWork& work, const Food& food, const Food& other) {
  std::set<PersonKey> ate;
  for (const ValuedEntry& valued : work.entries) {
    if (valued.food->key == food.key && valued.entry->kind == EntryKind::kEaten &&
        valued.entry->who) {
      ate.insert(*valued.entry->who);
    }
  }
  std::vector<PersonKey> people;
  for (const Person& person : work.household.people) {
    if (person.retired) continue;
    if (ate.count(person.key) == 0 &&
        why_not(work.household, person, food, label_of(food), work.today)) {
      continue;
    }
    if (why_not(work.household, person, other, label_of(other), work.today)) return {};
    people.push_back(person.key);
  }
  return people;
}

// The shortest life at receipt, in days.
std::optional<int> life_of(const AdviceWork& work, const Food& food) {
  std::optional<int> shortest;
  for (const LotFacts& facts : all_lot_facts(work.household)) {
    if (facts.food != food.key || !facts.good_through || facts.basis != DayBasis::kPrinted)
      continue;
    const int days = days_between(facts.received, *facts.good_through);
    shortest = shortest ? std::min(*shortest, days) : days;
  }
  return shortest;
}

Day keeps_until(const Food& food, std::optional<int> life, Day from) {
  if (life) return from + Days(*life);
  return food.storage.months_short ? add_months(from, *food.storage.months_short) : from;
}

// Helpings of the other food out of one lot of it, by day.
struct Eaten {
  Day came{};
  std::map<Day, std::int64_t> halves;
};

std::optional<Remedy> with_food(const AdviceWork& work, const Food& food,
                                const std::vector<LotStory>& lots, const Food& other) {
  Remedy remedy;
  remedy.kind = RemedyKind::kFood;
  remedy.food = other.key;
  remedy.people = people_for(work, food, other);
  if (remedy.people.empty()) return std::nullopt;
  const std::optional<int> life = life_of(work, other);
  std::vector<Eaten> later;
  for (const LotStory& lot : work.stories(other.key, std::nullopt)) {
    Eaten eaten{lot.change.begin()->first, {}};
    for (const ValuedEntry& valued : work.entries) {
      if (valued.lot->id == lot.lot->id && valued.entry->kind == EntryKind::kEaten)
        eaten.halves[valued.entry->on] += valued.worth.amount;
    }
    later.push_back(std::move(eaten));
  }
  const std::int64_t unit = HalfServings::units(1, food.servings).halves();
  const std::int64_t other_unit = HalfServings::units(1, other.servings).halves();
  for (const LotStory& lot : lots) {
    if (lot.past == 0) continue;
    const Day from = lot.thrown.back().on;
    const Day until = keeps_until(other, life, lot.change.begin()->first);
    std::int64_t rest = lot.past, matched = 0;
    for (Eaten& eaten : later) {
      if (eaten.came <= from) continue;
      std::int64_t there = 0;
      for (const auto& [day, halves] : eaten.halves) {
        if (day <= until) there += halves;
      }
      // Whole units are bought or not.
      std::int64_t take = std::min(there, rest) / other_unit * other_unit;
      rest -= take;
      matched += take;
      for (auto& [day, halves] : eaten.halves) {
        const std::int64_t part = day <= until ? std::min(halves, take) : 0;
        halves -= part;
        take -= part;
      }
    }
    matched = matched / unit * unit;
    remedy.avoided += matched;
    remedy.cents += lot.cents_of(matched);
  }
  if (remedy.avoided == 0) return std::nullopt;
  return remedy;
}

}  // namespace

std::optional<Remedy> best_food(const AdviceWork& work, const Food& food,
                                const std::vector<LotStory>& lots) {
  std::optional<Remedy> best;
  if (food.kind == FoodKind::kThing || food.kind == FoodKind::kWater) return best;
  for (const Food& other : work.household.foods) {
    if (other.key == food.key || other.retired || other.kind != food.kind) continue;
    if (food.kind != FoodKind::kPetFood && !shares(food, other)) continue;
    if (!as_ready(food, other)) continue;
    const auto remedy = with_food(work, food, lots, other);
    if (remedy && (!best || better(*remedy, *best))) best = remedy;
  }
  return best;
}

}  // namespace larderloop
