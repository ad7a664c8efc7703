// plan_shown.h - the meals that the household was shown, and how a new plan differs from them.
#pragma once

#include <string>
#include <vector>

#include "app/book_view.h"
#include "larderloop/app/plan.h"

namespace larderloop {

inline constexpr int kShownDays = 56;     // meals that passed are kept so long, to see what is skipped
inline constexpr int kSkipsToTell = 3;

// The meals of this week and the next, as they are kept, behind those shown for the last weeks.
[[nodiscard]] std::vector<ShownMeal> to_show(const Household& household, const EatDown& eat, Day today);
// One plain line a meal that was shown for today or later and is now different, with the reason as far as the book tells it.
[[nodiscard]] std::vector<std::string> differences(const BookView& view, const std::vector<ShownMeal>& shown, Day today);

// What was shown for meals that passed three times or more and not eaten since. By lot.
[[nodiscard]] std::vector<Skipped> skipped(const BookView& view, Day today);

}  // namespace larderloop
