// plan_text.h - plan, review, replacement list and nudge as text for a narrow screen: one thing a line, dates in words.
// Every function is a view of the result structs of app/ and returns the whole text, ending in a newline.
#pragma once

#include <string>

#include "larderloop/app/nudge.h"
#include "larderloop/app/plan.h"
#include "larderloop/app/reviews.h"
#include "larderloop/app/shop.h"

namespace larderloop {

// `all_meals`: not only this week and the next.
[[nodiscard]] std::string render_plan_text(const Household& household, const PlanReport& report, bool all_meals);
[[nodiscard]] std::string render_kit_plan_text(const Household& household, const KitPlan& plan);
// The plan beside plain date order, as a table; empty where it was not compared.
[[nodiscard]] std::string render_compare_text(const EatDown& eat);
[[nodiscard]] std::string render_shop_text(const Household& household, const ShopList& list);
[[nodiscard]] std::string render_review_dates_text(const Household& household, const std::vector<ReviewSlot>& slots, Day today);
[[nodiscard]] std::string render_review_finished_text(const Household& household, const ReviewFinished& report);
[[nodiscard]] std::string render_review_sheet_text(const Household& household, const ReviewSheet& sheet, Day today);
[[nodiscard]] std::string render_nudge_text(const Household& household, const NudgeReport& report);
// The same facts as a page of HTML, for the other half of a mail: no pictures, no scripts, nothing from elsewhere.
[[nodiscard]] std::string render_nudge_html(const Household& household, const NudgeReport& report);

}  // namespace larderloop
