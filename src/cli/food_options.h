// food_options.h - everything that can be said of a food on the command line.
#pragma once

#include "cli/option_parts.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <optional>
#include <string>
#include <vector>

namespace larderloop::cli {

// Texts as they were given, empty when they were not; switches unset when not named.
struct FoodOptions {
  std::string name, key, rename, kind, species, gtin, unit, servings, mass, volume, energy, sodium,
      needs_water, months, opened_days, storage_source, rotate, par, note;
  std::vector<std::string> meals, roles, packs;
  std::optional<bool> cooking, hot_water, opener, spoon, refrigerate, choking, honey, is_opener,
      is_cutlery, formula, home_canned, self_filled, staple;
  LabelOptions label;
};

void add_food_options(CLI::App& app, FoodOptions& given);
// What was given, put into `food`. kBadData names the option.
[[nodiscard]] Status apply_food_options(const FoodOptions& given, Day today, Food& food);

}  // namespace larderloop::cli
