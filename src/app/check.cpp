#include "larderloop/app/check.h"

#include "larderloop/app/review_series.h"
#include "larderloop/calendar/rule.h"
#include "larderloop/core/stock.h"
#include "larderloop/core/validate.h"

#include <algorithm>
#include <string>
#include <utility>

namespace larderloop {

std::vector<Problem> check_household(const Household& household) {
  std::vector<Problem> found = validate(household);
  for (std::size_t index = 0; index < household.review_rules.size(); ++index) {
    const ReviewRule& rule = household.review_rules[index];
    if (const Status fit = check_review_rule(rule.rule, rule.starts); !fit) {
      found.push_back({"/review_rules/" + std::to_string(index) + "/rule", rule.rule,
                       fit.error().what, fit.error().next_step});
    } else if (household.settings.feed.reviews == FeedReviews::kSeries) {
      if (const Status series = check_series_of(household, rule); !series) {
        found.push_back({"/review_rules/" + std::to_string(index) + "/rule", rule.rule,
                         series.error().what, series.error().next_step});
      }
    }
  }
  if (const auto ledger = replay(household); !ledger) {
    for (const Problem& problem : ledger.error().problems) {
      const bool known = std::any_of(found.begin(), found.end(), [&](const Problem& each) {
        return each.where == problem.where && each.what == problem.what;
      });
      if (!known) found.push_back(problem);
    }
    if (ledger.error().problems.empty())
      found.push_back({"/entries", "", ledger.error().what, ledger.error().next_step});
  }
  return found;
}

}  // namespace larderloop
