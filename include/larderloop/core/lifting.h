// lifting.h - what somebody may be asked to lift, by the revised NIOSH lifting equation.
// Source:   NIOSH, Applications Manual for the Revised NIOSH Lifting Equation, 94-110 (1994),
// metric form. Limits:   healthy adults, two hands, a load that is not swinging, few lifts. It does
// not cover children, one-handed lifting, carrying over a
//           distance, stairs, or lifting by two people; that two people share a load evenly is
//           common practice, not part of the equation.
#pragma once

#include <cstdint>

namespace larderloop {

// `horizontal_cm`: from the ankles to the hands; `vertical_cm`: height of the hands where the lift
// begins; `travel_cm`: how far up; `turn_deg`: how far the body turns; `frequency`, `coupling`:
// multipliers of the manual's tables 5 and 7 (1 = now and then; good handles).
struct Lift {
  double horizontal_cm = 25;
  double vertical_cm = 75;
  double travel_cm = 25;
  double turn_deg = 0;
  double frequency = 1;
  double coupling = 1;
};

// A box from the floor to the edge of a car's boot, held at arm's bend by its handles or edges: the
// lift that a kit asks for. Common practice.
inline constexpr Lift kBoxIntoTheCar{40, 20, 80, 0, 1, 0.95};

// Recommended weight limit in kg; 0 outside the equation's range.
[[nodiscard]] double recommended_limit_kg(const Lift& lift);
// Load by limit: above 1 some people are at risk, above 3 nearly everyone. Pre: limit > 0.
[[nodiscard]] double lifting_index(double load_kg, double limit_kg);

}  // namespace larderloop
