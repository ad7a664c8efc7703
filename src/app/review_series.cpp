#include "larderloop/app/review_series.h"

#include "app/plain_names.h"
#include "larderloop/calendar/rule.h"

namespace larderloop {

Status check_series_of(const Household& household, const ReviewRule& rule) {
  const SeriesRule series = series_rule(rule.rule, rule.starts);
  if (series.objection.empty()) return {};
  return fail(ErrorKind::kBadData,
              "the reviews of the " + place_words(household, rule.kit) +
                  " cannot be one repeating event by the rule '" + rule.rule +
                  "': " + series.objection,
              "larderloop review rule " + rule.kit.str() + " '" + series.instead +
                  "', or leave each review an event by itself: larderloop settings set "
                  "feed-reviews dated");
}

Status check_review_series(const Household& household, const Settings& settings) {
  if (settings.feed.reviews != FeedReviews::kSeries) return {};
  for (const ReviewRule& rule : household.review_rules) {
    if (Status fit = check_series_of(household, rule); !fit) return fit;
  }
  return {};
}

}  // namespace larderloop
