// allergen.h - what a package says it contains, what a person must avoid, and how the two are matched.
// Keys:     lower-case words, a single kind after a colon: "milk", "tree_nut:almond", "gluten", "fish:cod".
// Source:   the keys cover the US list of nine (FALCPA 2004, FASTER Act 2021), Annex II of Regulation (EU) 1169/2011 and the
//           FAO/WHO priority list of 2021; data/tables/allergens.csv has one line a key with the lists it is on.
// Safety:   an absent statement is unknown, and unknown is unsafe. Absence of "may contain" proves nothing (advisory labels
//           are voluntary); the tool repeats what a person read and never says that a food is safe.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "larderloop/core/date.h"

namespace larderloop {

enum class Declared { kMayContain, kContains };

// Diets that a label may support and a person may keep.
enum class Diet { kVegan, kVegetarian, kPescatarian, kGlutenFree, kHalal, kKosher };
inline constexpr Diet kAllDiets[] = {Diet::kVegan,      Diet::kVegetarian, Diet::kPescatarian,
                                     Diet::kGlutenFree, Diet::kHalal,      Diet::kKosher};
[[nodiscard]] std::string_view diet_name(Diet diet);  // "gluten_free"
[[nodiscard]] std::optional<Diet> parse_diet(std::string_view name);

// What somebody read off one package (or, for a food, off the last package seen). Not in `declared` = not declared.
// `suits`: diets that the label supports by claim, mark or ingredient list, as the reader judged it.
struct Statement {
  std::map<std::string, Declared> declared;
  std::set<Diet> suits;
  std::string read_by;  // a person's name as they gave it; never empty
  Day read_on{};
  friend bool operator==(const Statement&, const Statement&) = default;
};

// One thing a person must not have. `accept_may_contain`: the person's own decision; the default refuses.
struct Avoid {
  std::string key;
  bool accept_may_contain = false;
  friend bool operator==(const Avoid&, const Avoid&) = default;
};

// A household's own avoid key that no list knows ("kiwi"). A label read before `since` was not read with it in mind, so it
// counts as unknown for whoever avoids it.
struct OwnAllergen {
  std::string key;
  Day since{};
  friend bool operator==(const OwnAllergen&, const OwnAllergen&) = default;
};

// True for every key of the published lists. The household's own keys come on top.
[[nodiscard]] bool is_known_allergen(std::string_view key);
[[nodiscard]] const std::vector<std::string>& known_allergens();  // sorted
// "tree_nut:almond" -> "almond", "gluten" -> "cereals with gluten": for people.
[[nodiscard]] std::string allergen_words(std::string_view key);
// Do a declared key and an avoided key speak of overlapping things? Equal; or one is the group of the other (a colon
// group, or gluten with wheat, rye, barley and oats). An unspecific declaration ("tree_nut") hits a specific avoid item and
// the other way round. Symmetric.
[[nodiscard]] bool overlaps(std::string_view a, std::string_view b);
// Diets implied by a claimed one: vegan -> vegetarian -> pescatarian (ISO 23662:2021; the last step common practice).
[[nodiscard]] bool supports(const std::set<Diet>& suits, Diet wanted);
// Contradictions in a statement, such as a vegan claim beside declared milk; empty when none. Pairs of diet and key.
[[nodiscard]] std::vector<std::pair<Diet, std::string>> contradictions(const Statement& statement);

}  // namespace larderloop
