#include "larderloop/core/lifting.h"

#include <algorithm>
#include <cmath>

namespace larderloop {

double recommended_limit_kg(const Lift& lift) {
  constexpr double kLoadConstant = 23;
  constexpr double kNearest = 25;
  constexpr double kFarthest = 63;
  constexpr double kHighest = 175;
  constexpr double kMostTurn = 135;
  if (lift.horizontal_cm > kFarthest || lift.vertical_cm > kHighest || lift.vertical_cm < 0 ||
      lift.travel_cm > kHighest || lift.turn_deg > kMostTurn)
    return 0;
  const double horizontal = kNearest / std::max(lift.horizontal_cm, kNearest);
  const double vertical = 1 - 0.003 * std::abs(lift.vertical_cm - 75);
  const double distance = 0.82 + 4.5 / std::max(lift.travel_cm, kNearest);
  const double turn = 1 - 0.0032 * lift.turn_deg;
  return kLoadConstant * horizontal * vertical * distance * turn * lift.frequency * lift.coupling;
}

double lifting_index(double load_kg, double limit_kg) {
  return load_kg / limit_kg;
}

}  // namespace larderloop
