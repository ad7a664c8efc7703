// plan_shown.h - the meals that the household was shown, and how a new plan differs from them.
#pragma once

#include <string>
#include <vector>

#include "app/book_view.h"
#include "larderloop/app/plan.h"

namespace larderloop {

// The meals of this week and the next, as they are kept.
[[nodiscard]] std::vector<ShownMeal> to_show(const Household& household, const EatDown& eat, Day today);
// One plain line a meal that was shown for today or later and is now different, with the reason as far as the book tells it.
[[nodiscard]] std::vector<std::string> differences(const BookView& view, const std::vector<ShownMeal>& shown, Day today);

}  // namespace larderloop
