// plan_json.h - plan, review, replacement list, nudge and feed as JSON documents and CSV: the machine interfaces.
// Form:     {"schema": "larderloop.plan/1", "as_of": "2027-04-03", "data": {...}} and a newline; docs/schema/ has a schema for each.
//           Days are "YYYY-MM-DD"; amounts {"value": "1.5", "unit": "serving"}; money in cents; what is not known is null.
#pragma once

#include <string>

#include "larderloop/app/feed.h"
#include "larderloop/app/nudge.h"
#include "larderloop/app/plan.h"
#include "larderloop/app/reviews.h"
#include "larderloop/app/shop.h"

namespace larderloop {

[[nodiscard]] std::string render_plan_json(const Household& household, const PlanReport& report);
[[nodiscard]] std::string render_shop_json(const Household& household, const ShopList& list);
// RFC 4180, CRLF, a header line; one line a thing to buy. Cells that a spreadsheet would take for a formula get a leading apostrophe.
[[nodiscard]] std::string render_shop_csv(const Household& household, const ShopList& list);
[[nodiscard]] std::string render_review_dates_json(const std::vector<ReviewSlot>& slots, Day as_of);
[[nodiscard]] std::string render_review_finished_json(const Household& household, const ReviewFinished& report, Day as_of);
[[nodiscard]] std::string render_review_sheet_json(const Household& household, const ReviewSheet& sheet, Day as_of);
[[nodiscard]] std::string render_nudge_json(const NudgeReport& report);
[[nodiscard]] std::string render_feed_json(const FeedReport& report, Day as_of);
// The calendar itself: RFC 5545 text.
[[nodiscard]] Result<std::string> render_feed_ics(const FeedReport& report);

}  // namespace larderloop
