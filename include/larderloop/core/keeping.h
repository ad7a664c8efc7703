// keeping.h - drinking water a household needs, and what heat does to how long food keeps.
// Sources:  CDC, Creating and Storing an Emergency Water Supply, 2017 (a gallon a day for each
// person and each pet, drinking and washing);
//           FEMA and American Red Cross, Food and Water in an Emergency, 2004 (two quarts a day of
//           it to drink; heat can double that). NIST Handbook 44, App. C: 1 US gallon
//           is 3.785411784 l.
#pragma once

#include "larderloop/core/household.h"

#include <cstdint>

namespace larderloop {

inline constexpr double kMlOfGallon = 3785.411784;
inline constexpr double kMlToDrink = kMlOfGallon / 2;  // a person and day: two quarts

// All in ml, whole kit.
struct WaterNeed {
  std::int64_t people_drink = 0;  // two quarts a person and day
  std::int64_t pets_drink = 0;    // a fluid ounce a pound of body and day (a county's advice);
                                  // unknown mass: as much as a person drinks
  std::int64_t all = 0;           // a gallon a day for each person and pet
};
[[nodiscard]] WaterNeed water_need(const Household& household, int days);
// Of one pet and day.
[[nodiscard]] std::int64_t pet_drinks_ml(const Person& pet);
// kg of water at 20 degrees C (CRC Handbook: 0.9982 kg/l).
[[nodiscard]] double water_kg(std::int64_t ml);

// life(to) = life(from) / q10 to the power of (to - from)/10. Degrees C. A rough guide, worse
// above 38.
[[nodiscard]] double life_at(double life, double from_celsius, double to_celsius, double q10);
// The day to plan with for what has lain in a hot place since `since`: the life left then is halved
// (30 instead of 20 degrees, Q10 = 2: common practice). Never later than `good_through`.
[[nodiscard]] Day good_through_in_heat(Day since, Day good_through);

}  // namespace larderloop
