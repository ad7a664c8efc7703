// energy_need.h - how much energy a person is estimated to need a day. Estimates, never advice: for
// infants, pregnancy and illness a professional decides. Sources:  NASEM, Dietary Reference Intakes
// for Energy, 2023 (equations by sex, age, activity); IOM, Dietary Reference Intakes for Energy,
//           2002/2005, chapter 5; Dietary Guidelines for Americans 2020-2025, table A2-2 (by sex,
//           age and activity alone); Mifflin et al., Am J Clin Nutr 51:241, 1990 (at rest).
// Units:    kcal a day; years of age, with fractions where they are known; cm; kg.
#pragma once

#include "larderloop/core/household.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace larderloop {

struct Body {
  Sex sex = Sex::kFemale;
  double years = 0;
  double height_cm = 0;
  double mass_kg = 0;
};

// From three years on, whole years of age as the tables of the reports have it. Pre: years >= 3.
[[nodiscard]] double energy_2023(const Body& body, Activity activity);
[[nodiscard]] double energy_2005(const Body& body, Activity activity);
// Under three years, by mass alone. Pre: months in [0, 35].
[[nodiscard]] double energy_2005_infant(int months, double mass_kg);
// Table A2-2, rounded to 200 there. Its "sedentary" is kInactive, "moderately active" kLowActive,
// "active" both others. Nothing under two.
[[nodiscard]] std::optional<std::int64_t> energy_of_guidelines(Sex sex, int years,
                                                               Activity activity);
// Needed at rest.
[[nodiscard]] double energy_at_rest(const Body& body);

// A range of all the estimates that what is known of a person allows, rounded outwards to 50 kcal.
// `inputs`: what it rests on, in words; `sources`: the publications used. `years`: whole years on
// the day.
struct EnergyNeed {
  std::int64_t low_kcal = 0;
  std::int64_t high_kcal = 0;
  int years = 0;
  std::string inputs;
  std::vector<std::string> sources;
};
// Nothing when the person is a pet, was born on no known day, is not born yet, or is under two
// years old (infant feeding advice decides).
[[nodiscard]] std::optional<EnergyNeed> energy_need(const Person& person, Day today);

// Whole years and whole months of age on a day.
[[nodiscard]] int years_on(Day born, Day day);
[[nodiscard]] int months_on(Day born, Day day);

}  // namespace larderloop
