#include "larderloop/core/eligible.h"

#include <algorithm>

namespace larderloop {
namespace {

constexpr int kRefusalRating = -2;

std::optional<RefusalReason> wrong_kind(const Person& person, const Food& food) {
  if (food.kind == FoodKind::kThing || food.kind == FoodKind::kWater)
    return RefusalReason{Refusal::kNotFood, {}};
  const bool for_pets = food.kind == FoodKind::kPetFood;
  if (person.is_human() == for_pets || (for_pets && food.species != person.species)) {
    return RefusalReason{Refusal::kWrongSpecies, {}};
  }
  return std::nullopt;
}

// Infant formula is a meal of its own for whoever a kit menu line names it for, and for nobody
// else.
bool formula_is_for(const Household& household, const Person& person, const Food& food) {
  return std::any_of(household.menu.begin(), household.menu.end(), [&](const MenuLine& line) {
    return line.food == food.key &&
           std::find(line.people.begin(), line.people.end(), person.key) != line.people.end();
  });
}

// Food that is a danger to a small child, whatever its label says.
std::optional<RefusalReason> too_young(const Person& person, const Food& food, Day on) {
  if (!person.is_human() || !person.born) return std::nullopt;
  const int years = age_years(*person.born, on);
  if (food.honey && years < kHoneyUnder) return RefusalReason{Refusal::kHoney, {}};
  if (food.choking_risk && years < kChokingUnder) return RefusalReason{Refusal::kChoking, {}};
  return std::nullopt;
}

// Was the label read before the household began to look for this key?
bool read_too_early(const Household& household, const Avoid& avoid, const Statement& label) {
  return std::any_of(household.own_allergens.begin(), household.own_allergens.end(),
                     [&](const OwnAllergen& own) {
                       return label.read_on < own.since && overlaps(own.key, avoid.key);
                     });
}

std::optional<RefusalReason> declared_against(const Household& household, const Person& person,
                                              const Statement& label) {
  for (const Avoid& avoid : person.avoid) {
    if (read_too_early(household, avoid, label))
      return RefusalReason{Refusal::kLabelUnknown, avoid.key};
  }
  for (const Avoid& avoid : person.avoid) {
    for (const auto& [key, declared] : label.declared) {
      if (declared == Declared::kContains && overlaps(key, avoid.key))
        return RefusalReason{Refusal::kContains, key};
    }
  }
  for (const Avoid& avoid : person.avoid) {
    if (avoid.accept_may_contain) continue;
    for (const auto& [key, declared] : label.declared) {
      if (declared == Declared::kMayContain && overlaps(key, avoid.key))
        return RefusalReason{Refusal::kMayContain, key};
    }
  }
  return std::nullopt;
}

std::optional<RefusalReason> against_diet(const Person& person, const Statement& label) {
  for (const Diet diet : person.diets) {
    if (!supports(label.suits, diet) || !contradictions(label).empty())
      return RefusalReason{Refusal::kDiet, std::string(diet_name(diet))};
  }
  return std::nullopt;
}

}  // namespace

bool needs_label(const Person& person) {
  return !person.avoid.empty() || !person.diets.empty();
}

std::optional<RefusalReason> why_not(const Household& household, const Person& person,
                                     const Food& food, const Statement* label, Day on) {
  if (auto reason = wrong_kind(person, food)) return reason;
  if (food.infant_formula && !formula_is_for(household, person, food))
    return RefusalReason{Refusal::kInfantFormula, {}};
  if (needs_label(person)) {
    if (label == nullptr) return RefusalReason{Refusal::kLabelUnknown, {}};
    if (auto reason = declared_against(household, person, *label)) return reason;
    if (auto reason = against_diet(person, *label)) return reason;
  }
  if (auto reason = too_young(person, food, on)) return reason;
  const auto rating = person.ratings.find(food.key);
  if (rating != person.ratings.end() && rating->second <= kRefusalRating)
    return RefusalReason{Refusal::kRefuses, {}};
  return std::nullopt;
}

std::vector<PersonRefusal> refusals(const Household& household,
                                    const std::vector<PersonKey>& people, const Food& food,
                                    const Statement* label, Day on) {
  std::vector<PersonRefusal> all;
  for (const PersonKey& key : people) {
    const Person* person = find_person(household, key);
    if (person == nullptr) continue;
    if (auto reason = why_not(household, *person, food, label, on))
      all.push_back({key, std::move(*reason)});
  }
  std::sort(all.begin(), all.end(),
            [](const PersonRefusal& a, const PersonRefusal& b) { return a.person < b.person; });
  return all;
}

std::string refusal_words(const RefusalReason& reason) {
  switch (reason.refusal) {
    case Refusal::kContains:
      return "the label says it contains " + allergen_words(reason.detail);
    case Refusal::kMayContain:
      return "the label says it may contain " + allergen_words(reason.detail);
    case Refusal::kLabelUnknown:
      return reason.detail.empty()
                 ? "nobody has read the label of this lot"
                 : "the label was not read with " + allergen_words(reason.detail) + " in mind";
    case Refusal::kDiet: {
      std::string diet = reason.detail;
      std::replace(diet.begin(), diet.end(), '_', '-');
      return "the label does not say it is " + diet;
    }
    case Refusal::kRefuses:
      return "it was refused before";
    case Refusal::kWrongSpecies:
      return "it is not food for them";
    case Refusal::kNotFood:
      return "it is not served at meals";
    case Refusal::kInfantFormula:
      return "it is infant formula, and no menu line names it for them";
    case Refusal::kChoking:
      return "it can choke a child under four";
    case Refusal::kHoney:
      return "it has honey in it, which can make a child under one ill";
  }
  return {};
}

std::vector<PersonKey> eaters_of(const Household& household, const MenuLine& line) {
  if (!line.everyone) return line.people;
  std::vector<PersonKey> people;
  for (const Person& person : household.people) {
    if (person.is_human() && !person.retired) people.push_back(person.key);
  }
  return people;
}

}  // namespace larderloop
