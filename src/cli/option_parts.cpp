#include "cli/option_parts.h"

#include "cli/values.h"

namespace larderloop::cli {
namespace {

template <class Value, class Parse>
Result<std::set<Value>> read_set(const std::string& what, const std::vector<std::string>& words,
                                 Parse parse, const std::vector<std::string>& accepted) {
  std::set<Value> all;
  for (const std::string& word : words) {
    auto value = read_word<Value>(what, word, parse, accepted);
    if (!value) return fail(value.error());
    all.insert(*value);
  }
  return all;
}

}  // namespace

void add_label_options(CLI::App& app, LabelOptions& options, const std::string& read_by,
                       const std::string& same) {
  const std::string group = "What the label says";
  add_text(app, read_by, options.read_by, "NAME", "Who read the label of this very package")
      ->group(group);
  if (!same.empty())
    app.add_flag(same, options.same, "It says the same as the last label read of this food")
        ->group(group);
  add_list(app, "--contains", options.contains, "KEYS",
           "Allergens it declares, as milk,tree_nut:almond")
      ->group(group);
  add_list(app, "--may-contain", options.may_contain, "KEYS", "Allergens it warns of")
      ->group(group);
  add_list(app, "--suits", options.suits, "DIETS", "Diets it supports, as vegan,gluten-free")
      ->group(group);
}

Result<std::optional<LabelRead>> read_label(const LabelOptions& options, const std::string& read_by,
                                            const std::string& same) {
  const bool words =
      !options.contains.empty() || !options.may_contain.empty() || !options.suits.empty();
  if (!words && !options.same && options.read_by.empty()) return std::optional<LabelRead>();
  if (options.read_by.empty()) {
    return fail(ErrorKind::kUsage, "nobody is named who read the label",
                "say who read it: " + read_by + " NAME");
  }
  if (words && options.same) {
    return fail(ErrorKind::kUsage, "'" + same + "' and words of the label exclude each other",
                "give one of them");
  }
  auto suits = read_diets("--suits", options.suits);
  if (!suits) return fail(suits.error());
  LabelRead read;
  read.read_by = options.read_by;
  read.same_as_food = options.same;
  read.contains = {options.contains.begin(), options.contains.end()};
  read.may_contain = {options.may_contain.begin(), options.may_contain.end()};
  read.suits = *suits;
  return std::optional<LabelRead>(std::move(read));
}

std::string known_keys_sentence() {
  std::string keys, diets;
  for (const std::string& key : known_allergens()) keys += (keys.empty() ? "" : ", ") + key;
  for (const Diet diet : kAllDiets) diets += (diets.empty() ? "" : ", ") + dashed(diet_name(diet));
  return " Allergen keys: " + keys + ". Diets: " + diets + ".";
}

Result<std::set<Diet>> read_diets(const std::string& what, const std::vector<std::string>& words) {
  return read_set<Diet>(what, words, parse_diet, names_of(kAllDiets, diet_name));
}

Result<std::set<Meal>> read_meals(const std::string& what, const std::vector<std::string>& words) {
  return read_set<Meal>(what, words, parse_meal, names_of(kAllMeals, meal_name));
}

Result<std::set<Role>> read_roles(const std::string& what, const std::vector<std::string>& words) {
  return read_set<Role>(what, words, parse_role, names_of(kAllRoles, role_name));
}

Result<FoodKind> read_food_kind(const std::string& what, const std::string& word) {
  return read_word<FoodKind>(what, word, parse_food_kind, names_of(kAllFoodKinds, food_kind_name));
}

}  // namespace larderloop::cli
