#include "larderloop/core/energy_need.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace larderloop {
namespace {

constexpr int kAdult = 19;
constexpr int kLeastYears = 3;
constexpr int kLeastInTable = 2;
constexpr double kStep = 50;

struct Coefficients {
  double constant, years, height, mass;
};
using ByActivity = std::array<Coefficients, 4>;
// NASEM 2023; height in cm, mass in kg.
constexpr ByActivity kMen{{{753.07, -10.83, 6.50, 14.10},
                           {581.47, -10.83, 8.30, 14.94},
                           {1004.82, -10.83, 6.52, 15.91},
                           {-517.88, -10.83, 15.61, 19.11}}};
constexpr ByActivity kWomen{{{584.90, -7.01, 5.72, 11.71},
                             {575.77, -7.01, 6.60, 12.14},
                             {710.25, -7.01, 6.54, 12.34},
                             {511.83, -7.01, 9.07, 12.56}}};
constexpr ByActivity kBoys{{{-447.51, 3.68, 13.01, 13.15},
                            {19.12, 3.68, 8.62, 20.28},
                            {-388.19, 3.68, 12.66, 20.46},
                            {-671.75, 3.68, 15.38, 23.25}}};
constexpr ByActivity kGirls{{{55.59, -22.25, 8.43, 17.07},
                             {-297.54, -22.25, 12.77, 14.73},
                             {-189.55, -22.25, 11.74, 18.34},
                             {-709.59, -22.25, 18.22, 14.25}}};

// What growing takes, by the first year of age it holds for.
double growth_2023(Sex sex, double years) {
  const bool male = sex == Sex::kMale;
  if (years < 4) return male ? 20 : 15;
  if (years < 9) return 15;
  if (years < 14) return male ? 25 : 30;
  return 20;
}

std::size_t index_of(Activity activity) {
  return static_cast<std::size_t>(activity);
}

struct Band {
  int first;  // year of age
  std::array<std::int64_t, 3> male, female;
};
// Dietary Guidelines for Americans, table A2-2: sedentary, moderately active, active.
constexpr Band kBands[] = {
    {2, {1000, 1000, 1000}, {1000, 1000, 1000}},  {3, {1000, 1400, 1400}, {1000, 1200, 1400}},
    {4, {1200, 1400, 1600}, {1200, 1400, 1400}},  {5, {1200, 1400, 1600}, {1200, 1400, 1600}},
    {6, {1400, 1600, 1800}, {1200, 1400, 1600}},  {7, {1400, 1600, 1800}, {1200, 1600, 1800}},
    {8, {1400, 1600, 2000}, {1400, 1600, 1800}},  {9, {1600, 1800, 2000}, {1400, 1600, 1800}},
    {10, {1600, 1800, 2200}, {1400, 1800, 2000}}, {11, {1800, 2000, 2200}, {1600, 1800, 2000}},
    {12, {1800, 2200, 2400}, {1600, 2000, 2200}}, {13, {2000, 2200, 2600}, {1600, 2000, 2200}},
    {14, {2000, 2400, 2800}, {1800, 2000, 2400}}, {15, {2200, 2600, 3000}, {1800, 2000, 2400}},
    {16, {2400, 2800, 3200}, {1800, 2000, 2400}}, {19, {2600, 2800, 3000}, {2000, 2200, 2400}},
    {21, {2400, 2800, 3000}, {2000, 2200, 2400}}, {26, {2400, 2600, 3000}, {1800, 2000, 2400}},
    {31, {2400, 2600, 3000}, {1800, 2000, 2200}}, {36, {2400, 2600, 2800}, {1800, 2000, 2200}},
    {41, {2200, 2600, 2800}, {1800, 2000, 2200}}, {46, {2200, 2400, 2800}, {1800, 2000, 2200}},
    {51, {2200, 2400, 2800}, {1600, 1800, 2200}}, {56, {2200, 2400, 2600}, {1600, 1800, 2200}},
    {61, {2000, 2400, 2600}, {1600, 1800, 2000}}, {66, {2000, 2200, 2600}, {1600, 1800, 2000}},
    {76, {2000, 2200, 2400}, {1600, 1800, 2000}},
};

std::string words_of_inputs(const Person& person, int years) {
  std::string words = std::to_string(years) + " years";
  if (person.sex) words += ", " + std::string(sex_name(*person.sex));
  if (person.height_cm) words += ", " + std::to_string(*person.height_cm) + " cm";
  if (person.mass_g) words += ", " + std::to_string((*person.mass_g + 500) / 1000) + " kg";
  if (person.activity) {
    std::string activity(activity_name(*person.activity));
    std::replace(activity.begin(), activity.end(), '_', ' ');
    words += ", " + activity;
  } else {
    words += ", inactive to active";
  }
  return words;
}

}  // namespace

double energy_2023(const Body& body, Activity activity) {
  const bool male = body.sex == Sex::kMale;
  const bool adult = body.years >= kAdult;
  const ByActivity& table = adult ? (male ? kMen : kWomen) : (male ? kBoys : kGirls);
  const Coefficients& each = table.at(index_of(activity));
  const double need = each.constant + each.years * body.years + each.height * body.height_cm +
                      each.mass * body.mass_kg;
  return adult ? need : need + growth_2023(body.sex, body.years);
}

double energy_2005(const Body& body, Activity activity) {
  const bool male = body.sex == Sex::kMale;
  const double metres = body.height_cm / 100;
  const std::size_t at = index_of(activity);
  if (body.years >= kAdult) {
    constexpr std::array<double, 4> kMale{1.00, 1.11, 1.25, 1.48};
    constexpr std::array<double, 4> kFemale{1.00, 1.12, 1.27, 1.45};
    return male ? 662 - 9.53 * body.years + kMale.at(at) * (15.91 * body.mass_kg + 539.6 * metres)
                : 354 - 6.91 * body.years + kFemale.at(at) * (9.36 * body.mass_kg + 726 * metres);
  }
  constexpr std::array<double, 4> kMale{1.00, 1.13, 1.26, 1.42};
  constexpr std::array<double, 4> kFemale{1.00, 1.16, 1.31, 1.56};
  const double growing = body.years < 9 ? 20 : 25;
  return growing +
         (male ? 88.5 - 61.9 * body.years + kMale.at(at) * (26.7 * body.mass_kg + 903 * metres)
               : 135.3 - 30.8 * body.years + kFemale.at(at) * (10.0 * body.mass_kg + 934 * metres));
}

double energy_2005_infant(int months, double mass_kg) {
  const double growing = months <= 3 ? 175 : months <= 6 ? 56 : months <= 12 ? 22 : 20;
  return 89 * mass_kg - 100 + growing;
}

std::optional<std::int64_t> energy_of_guidelines(Sex sex, int years, Activity activity) {
  if (years < kLeastInTable) return std::nullopt;
  const Band* found = kBands;
  for (const Band& band : kBands) {
    if (band.first <= years) found = &band;
  }
  const std::size_t column = std::min<std::size_t>(index_of(activity), 2);
  return (sex == Sex::kMale ? found->male : found->female).at(column);
}

double energy_at_rest(const Body& body) {
  return 10 * body.mass_kg + 6.25 * body.height_cm - 5 * body.years +
         (body.sex == Sex::kMale ? 5 : -161);
}

int months_on(Day born, Day day) {
  const date::year_month_day from{born};
  const date::year_month_day to{day};
  int months = (static_cast<int>(to.year()) - static_cast<int>(from.year())) * 12 +
               static_cast<int>(static_cast<unsigned>(to.month())) -
               static_cast<int>(static_cast<unsigned>(from.month()));
  if (static_cast<unsigned>(to.day()) < static_cast<unsigned>(from.day())) --months;
  return months;
}

int years_on(Day born, Day day) {
  const int months = months_on(born, day);
  return months < 0 ? -1 : months / 12;
}

std::optional<EnergyNeed> energy_need(const Person& person, Day today) {
  if (!person.is_human() || !person.born) return std::nullopt;
  const int years = years_on(*person.born, today);
  if (years < kLeastInTable) return std::nullopt;
  const std::vector<Sex> sexes =
      person.sex ? std::vector<Sex>{*person.sex} : std::vector<Sex>{Sex::kFemale, Sex::kMale};
  const std::vector<Activity> activities =
      person.activity ? std::vector<Activity>{*person.activity}
                      : std::vector<Activity>{Activity::kInactive, Activity::kActive};
  const bool measured = person.height_cm && person.mass_g && years >= kLeastYears;
  std::vector<double> all;
  for (const Sex sex : sexes) {
    for (const Activity activity : activities) {
      all.push_back(static_cast<double>(*energy_of_guidelines(sex, years, activity)));
      if (!measured) continue;
      const Body body{sex, static_cast<double>(years), static_cast<double>(*person.height_cm),
                      static_cast<double>(*person.mass_g) / 1000};
      all.push_back(energy_2023(body, activity));
      all.push_back(energy_2005(body, activity));
    }
  }
  EnergyNeed need;
  need.years = years;
  need.low_kcal = static_cast<std::int64_t>(
      std::floor(*std::min_element(all.begin(), all.end()) / kStep) * kStep);
  need.high_kcal = static_cast<std::int64_t>(
      std::ceil(*std::max_element(all.begin(), all.end()) / kStep) * kStep);
  need.inputs = words_of_inputs(person, years);
  if (measured)
    need.sources = {"NASEM, Dietary Reference Intakes for Energy, 2023",
                    "IOM, Dietary Reference Intakes for Energy, 2005"};
  need.sources.emplace_back("Dietary Guidelines for Americans 2020-2025, table A2-2");
  return need;
}

}  // namespace larderloop
