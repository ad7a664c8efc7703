#include "intake/names.h"

namespace larderloop::intake {
namespace {

// Calls core's name function for each value, so that the two never differ.
template <class E, class Values, class NameFunction>
Names<E> named(const Values& values, NameFunction name) {
  Names<E> out;
  for (const E value : values) out.emplace_back(std::string(name(value)), value);
  return out;
}

}  // namespace

const Names<Diet>& diet_names() {
  static const Names<Diet> names = named<Diet>(kAllDiets, diet_name);
  return names;
}

const Names<FoodKind>& food_kind_names() {
  static const Names<FoodKind> names = named<FoodKind>(kAllFoodKinds, food_kind_name);
  return names;
}

const Names<Meal>& meal_names() {
  static const Names<Meal> names = named<Meal>(kAllMeals, meal_name);
  return names;
}

const Names<Role>& role_names() {
  static const Names<Role> names = named<Role>(kAllRoles, role_name);
  return names;
}

const Names<Rotate>& rotate_names() {
  static const Names<Rotate> names{
      {"auto", Rotate::kAuto}, {"yes", Rotate::kYes}, {"no", Rotate::kNo}};
  return names;
}

const Names<PlaceKind>& place_kind_names() {
  static const Names<PlaceKind> names = named<PlaceKind>(kAllPlaceKinds, place_kind_name);
  return names;
}

const Names<WishKind>& wish_kind_names() {
  static const Names<WishKind> names = named<WishKind>(kAllWishKinds, wish_kind_name);
  return names;
}

const Names<Sex>& sex_names() {
  static const Names<Sex> names = named<Sex>(kAllSexes, sex_name);
  return names;
}

const Names<Activity>& activity_names() {
  static const Names<Activity> names = named<Activity>(kAllActivities, activity_name);
  return names;
}

const Names<Verdict>& verdict_names() {
  static const Names<Verdict> names = named<Verdict>(kAllVerdicts, verdict_name);
  return names;
}

const Names<BuyNoteKind>& buy_note_names() {
  static const Names<BuyNoteKind> names = named<BuyNoteKind>(kAllBuyNoteKinds, buy_note_name);
  return names;
}

const Names<SheetKind>& sheet_kind_names() {
  static const Names<SheetKind> names = named<SheetKind>(kAllSheetKinds, sheet_kind_name);
  return names;
}

const Names<DateOrder>& date_order_names() {
  static const Names<DateOrder> names = named<DateOrder>(kAllDateOrders, date_order_name);
  return names;
}

const Names<FeedKind>& feed_kind_names() {
  static const Names<FeedKind> names = named<FeedKind>(kAllFeedKinds, feed_kind_name);
  return names;
}

const Names<FeedReviews>& feed_reviews_names() {
  static const Names<FeedReviews> names = named<FeedReviews>(kAllFeedReviews, feed_reviews_name);
  return names;
}

const Names<FeedDetail>& feed_detail_names() {
  static const Names<FeedDetail> names = named<FeedDetail>(kAllFeedDetails, feed_detail_name);
  return names;
}

const Names<LotState>& lot_state_names() {
  constexpr LotState kAll[] = {LotState::kOk, LotState::kDoubtful, LotState::kRecalled};
  static const Names<LotState> names = named<LotState>(kAll, lot_state_name);
  return names;
}

const Names<MarkKind>& mark_kind_names() {
  static const Names<MarkKind> names = named<MarkKind>(kAllMarkKinds, mark_kind_name);
  return names;
}

const Names<Precision>& precision_names() {
  constexpr Precision kAll[] = {Precision::kDay, Precision::kMonth, Precision::kYear};
  static const Names<Precision> names = named<Precision>(kAll, precision_name);
  return names;
}

const Names<EntryKind>& entry_kind_names() {
  static const Names<EntryKind> names = named<EntryKind>(kAllEntryKinds, entry_kind_name);
  return names;
}

const Names<ReviewEventKind>& review_event_names() {
  constexpr ReviewEventKind kAll[] = {ReviewEventKind::kStarted, ReviewEventKind::kFinished,
                                      ReviewEventKind::kSkipped, ReviewEventKind::kMoved};
  static const Names<ReviewEventKind> names = named<ReviewEventKind>(kAll, review_event_name);
  return names;
}

const Names<MarkWhat>& mark_what_names() {
  constexpr MarkWhat kAll[] = {MarkWhat::kThere, MarkWhat::kMissing, MarkWhat::kDamaged,
                               MarkWhat::kRedated};
  static const Names<MarkWhat> names = named<MarkWhat>(kAll, mark_what_name);
  return names;
}

const Names<Region>& region_names() {
  constexpr Region kAll[] = {Region::kOther, Region::kEu, Region::kUs};
  static const Names<Region> names = named<Region>(kAll, region_name);
  return names;
}

const Names<Weekday>& weekday_names() {
  constexpr Weekday kAll[] = {Weekday::kMonday,   Weekday::kTuesday, Weekday::kWednesday,
                              Weekday::kThursday, Weekday::kFriday,  Weekday::kSaturday,
                              Weekday::kSunday};
  static const Names<Weekday> names = [&] {
    Names<Weekday> out = named<Weekday>(kAll, weekday_name);
    for (auto& [name, value] : out) {
      for (char& c : name) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
      }
    }
    return out;
  }();
  return names;
}

}  // namespace larderloop::intake
