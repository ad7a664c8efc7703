// names.h - the enumerations of a household by the names that a document uses. They are core's
// names; weekdays are in lower case.
#pragma once

#include "larderloop/core/household.h"
#include "larderloop/intake/reader.h"

#include <string>

namespace larderloop::intake {

[[nodiscard]] const Names<Diet>& diet_names();
[[nodiscard]] const Names<FoodKind>& food_kind_names();
[[nodiscard]] const Names<Meal>& meal_names();
[[nodiscard]] const Names<Role>& role_names();
[[nodiscard]] const Names<Rotate>& rotate_names();
[[nodiscard]] const Names<PlaceKind>& place_kind_names();
[[nodiscard]] const Names<LotState>& lot_state_names();
[[nodiscard]] const Names<MarkKind>& mark_kind_names();
[[nodiscard]] const Names<Precision>& precision_names();
[[nodiscard]] const Names<EntryKind>& entry_kind_names();
[[nodiscard]] const Names<ReviewEventKind>& review_event_names();
[[nodiscard]] const Names<MarkWhat>& mark_what_names();
[[nodiscard]] const Names<Region>& region_names();
[[nodiscard]] const Names<Weekday>& weekday_names();
[[nodiscard]] const Names<WishKind>& wish_kind_names();
[[nodiscard]] const Names<Sex>& sex_names();
[[nodiscard]] const Names<Activity>& activity_names();
[[nodiscard]] const Names<BuyNoteKind>& buy_note_names();
[[nodiscard]] const Names<SheetKind>& sheet_kind_names();
[[nodiscard]] const Names<DateOrder>& date_order_names();
[[nodiscard]] const Names<Verdict>& verdict_names();
[[nodiscard]] const Names<FeedKind>& feed_kind_names();
[[nodiscard]] const Names<FeedDetail>& feed_detail_names();
[[nodiscard]] const Names<FeedReviews>& feed_reviews_names();

// The name of a value. Pre: it is among the names.
template <class E>
[[nodiscard]] const std::string& name_of(E value, const Names<E>& names) {
  std::size_t at = 0;
  while (names[at].second != value) ++at;
  return names[at].first;
}

}  // namespace larderloop::intake
