#include "larderloop/core/label_figures.h"

#include <cmath>

namespace larderloop {
namespace {

double to_nearest(double value, double step) {
  return std::round(value / step) * step;
}

}  // namespace

std::int64_t label_kcal(double kcal) {
  if (kcal < 5) return 0;
  return static_cast<std::int64_t>(to_nearest(kcal, kcal <= 50 ? 5 : 10));
}

std::int64_t label_sodium_mg(double mg) {
  if (mg < 5) return 0;
  return static_cast<std::int64_t>(to_nearest(mg, mg <= 140 ? 5 : 10));
}

double label_fat_g(double g) {
  if (g < 0.5) return 0;
  return to_nearest(g, g < 5 ? 0.5 : 1);
}

double kilojoules(double kcal) {
  return kcal * 4.184;
}

double energy_of_grams(double protein, double carbohydrate, double fat, double alcohol) {
  return 4 * protein + 4 * carbohydrate + 9 * fat + 7 * alcohol;
}

}  // namespace larderloop
