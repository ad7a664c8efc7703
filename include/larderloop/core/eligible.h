// eligible.h - the one predicate that decides who may be given what. Every plan, list, feed and page asks it.
// Safety:   fails closed. Unknown label and a person with any allergy or diet: no.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "larderloop/core/household.h"

namespace larderloop {

enum class Refusal {
  kContains,         // the label states it
  kMayContain,       // the label warns of it and the person does not accept that
  kLabelUnknown,     // nobody read the label of this lot, or not since the avoid item came up
  kDiet,             // the label does not support the person's diet
  kRefuses,          // rated -2
  kWrongSpecies,     // pet food for people, people's food for a pet
  kNotFood,          // things and water are not served
  kInfantFormula,    // only for whom a menu line names it
  kChoking,          // hard, round or sticky, and the child is under four
  kHoney,            // has honey in it, and the child is under one
};

// Ages in years under which a food is refused (CDC, AAP; docs/sources.md). Nobody whose birth date is not in the book is a small child.
inline constexpr int kChokingUnder = 4;
inline constexpr int kHoneyUnder = 1;

// `detail`: the allergen or diet key; empty where there is none.
struct RefusalReason {
  Refusal refusal = Refusal::kNotFood;
  std::string detail;
  friend bool operator==(const RefusalReason&, const RefusalReason&) = default;
};

// May this person be given this food under this statement? No value = yes. `label`: the effective statement of the very lot;
// null = unknown. `on`: the day on which the person's age is looked at; what is planned is judged on the day of planning, when a child is
// youngest, so that no plan relies on a birthday to come. Whether the food keeps is not its business. Drinks, snacks and conditional
// items are judged like any food.
[[nodiscard]] std::optional<RefusalReason> why_not(const Household& household, const Person& person, const Food& food,
                                                   const Statement* label, Day on);
// People who would be refused, each with the first reason; in key order.
struct PersonRefusal {
  PersonKey person;
  RefusalReason reason;
};
[[nodiscard]] std::vector<PersonRefusal> refusals(const Household& household, const std::vector<PersonKey>& people,
                                                  const Food& food, const Statement* label, Day on);
// "the label says it contains sesame": one plain clause.
[[nodiscard]] std::string refusal_words(const RefusalReason& reason);
// The people a menu line is for: the named ones, or every human. Key order.
[[nodiscard]] std::vector<PersonKey> eaters_of(const Household& household, const MenuLine& line);
// Has the person any avoid item or diet, so that an unread label is a no?
[[nodiscard]] bool needs_label(const Person& person);

}  // namespace larderloop
