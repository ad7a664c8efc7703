#include "larderloop/core/keeping.h"

#include <algorithm>
#include <cmath>

namespace larderloop {
namespace {

constexpr double kGramsOfPound = 453.59237;
constexpr double kMlOfFluidOunce = 29.5735295625;
constexpr double kUsualCelsius = 20;
constexpr double kHotCelsius = 30;
constexpr double kHouseholdQ10 = 2;

std::int64_t rounded(double value) {
  return static_cast<std::int64_t>(std::llround(value));
}

}  // namespace

std::int64_t pet_drinks_ml(const Person& pet) {
  if (!pet.mass_g) return rounded(kMlToDrink);
  return rounded(static_cast<double>(*pet.mass_g) / kGramsOfPound * kMlOfFluidOunce);
}

WaterNeed water_need(const Household& household, int days) {
  WaterNeed need;
  double heads = 0;
  double people = 0;
  for (const Person& person : household.people) {
    if (person.retired) continue;
    heads += 1;
    if (person.is_human())
      people += 1;
    else
      need.pets_drink += days * pet_drinks_ml(person);
  }
  need.people_drink = rounded(people * days * kMlToDrink);
  need.all = rounded(heads * days * kMlOfGallon);
  return need;
}

double water_kg(std::int64_t ml) {
  return static_cast<double>(ml) / 1000 * 0.9982;
}

double life_at(double life, double from_celsius, double to_celsius, double q10) {
  return life * std::pow(q10, (from_celsius - to_celsius) / 10);
}

Day good_through_in_heat(Day since, Day good_through) {
  if (good_through <= since) return good_through;
  const double left = life_at(static_cast<double>(days_between(since, good_through)), kUsualCelsius,
                              kHotCelsius, kHouseholdQ10);
  return std::min(good_through, since + Days(static_cast<int>(std::floor(left))));
}

}  // namespace larderloop
