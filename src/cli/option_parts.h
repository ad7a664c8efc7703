// option_parts.h - options that several commands share.
#pragma once

#include "larderloop/app/things.h"
#include "larderloop/core/result.h"

#include <CLI/CLI.hpp>

#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace larderloop::cli {

// A list: repeated, or with commas between. It never swallows the words that follow.
inline CLI::Option* add_list(CLI::App& app, const std::string& name, std::vector<std::string>& into,
                             const std::string& type, const std::string& description) {
  return app.add_option(name, into, description)
      ->delimiter(',')
      ->allow_extra_args(false)
      ->type_name(type);
}

inline CLI::Option* add_text(CLI::App& app, const std::string& name, std::string& into,
                             const std::string& type, const std::string& description) {
  return app.add_option(name, into, description)->type_name(type);
}

// What the label of a package says, and who read it.
struct LabelOptions {
  std::string read_by;
  bool same = false;
  std::vector<std::string> contains, may_contain, suits;
};
// `read_by` and `same` are the names of those two options; an empty `same` leaves it out.
void add_label_options(CLI::App& app, LabelOptions& options, const std::string& read_by,
                       const std::string& same);
// Nothing when no option of the label was given. kBadData: words of a label without its reader,
// unknown diets, both "same" and words.
[[nodiscard]] Result<std::optional<LabelRead>> read_label(const LabelOptions& options,
                                                          const std::string& read_by,
                                                          const std::string& same);

// "Allergen keys: almond, ...; diets: vegan, ...": a sentence for the help of commands that take
// them.
[[nodiscard]] std::string known_keys_sentence();

[[nodiscard]] Result<std::set<Diet>> read_diets(const std::string& what,
                                                const std::vector<std::string>& words);
[[nodiscard]] Result<std::set<Meal>> read_meals(const std::string& what,
                                                const std::vector<std::string>& words);
[[nodiscard]] Result<std::set<Role>> read_roles(const std::string& what,
                                                const std::vector<std::string>& words);
[[nodiscard]] Result<FoodKind> read_food_kind(const std::string& what, const std::string& word);

}  // namespace larderloop::cli
