// label_figures.h - amounts as a US label rounds them, so that sums are not shown finer than labels
// are. Source:   21 CFR 101.9(c)(1), (2), (4). The label of the package itself is what counts.
#pragma once

#include <cstdint>

namespace larderloop {

[[nodiscard]] std::int64_t label_kcal(double kcal);     // below 5: 0; up to 50: to 5; above: to 10
[[nodiscard]] std::int64_t label_sodium_mg(double mg);  // below 5: 0; up to 140: to 5; above: to 10
[[nodiscard]] double label_fat_g(double g);  // below 0.5: 0; below 5: to 0.5; above: to 1
// Energy in kJ of kcal: 4.184 exactly.
[[nodiscard]] double kilojoules(double kcal);
// 4 kcal/g protein and carbohydrate, 9 fat, 7 alcohol (21 CFR 101.9(c)(1)(i)).
[[nodiscard]] double energy_of_grams(double protein, double carbohydrate, double fat,
                                     double alcohol);

}  // namespace larderloop
