// The names of enumerations, as documents, commands and the book write them. One table each, read
// both ways.
#include "larderloop/core/household.h"

#include <array>
#include <utility>

namespace larderloop {
namespace {

template <class Enum, std::size_t N>
using Names = std::array<std::pair<Enum, std::string_view>, N>;

constexpr Names<FoodKind, 5> kFoodKinds{{{FoodKind::kFood, "food"},
                                         {FoodKind::kDrink, "drink"},
                                         {FoodKind::kWater, "water"},
                                         {FoodKind::kPetFood, "pet_food"},
                                         {FoodKind::kThing, "thing"}}};
constexpr Names<Meal, 4> kMeals{{{Meal::kBreakfast, "breakfast"},
                                 {Meal::kLunch, "lunch"},
                                 {Meal::kDinner, "dinner"},
                                 {Meal::kSnack, "snack"}}};
constexpr Names<Role, 9> kRoles{{{Role::kMain, "main"},
                                 {Role::kSide, "side"},
                                 {Role::kFruit, "fruit"},
                                 {Role::kSnack, "snack"},
                                 {Role::kDrink, "drink"},
                                 {Role::kComfort, "comfort"},
                                 {Role::kPetMeal, "pet_meal"},
                                 {Role::kWater, "water"},
                                 {Role::kThing, "thing"}}};
constexpr Names<PlaceKind, 5> kPlaceKinds{{{PlaceKind::kKit, "kit"},
                                           {PlaceKind::kBox, "box"},
                                           {PlaceKind::kBag, "bag"},
                                           {PlaceKind::kPantry, "pantry"},
                                           {PlaceKind::kShelf, "shelf"}}};
constexpr Names<LotState, 3> kLotStates{
    {{LotState::kOk, "ok"}, {LotState::kDoubtful, "doubtful"}, {LotState::kRecalled, "recalled"}}};
constexpr Names<EntryKind, 10> kEntryKinds{{{EntryKind::kReceived, "received"},
                                            {EntryKind::kFound, "found"},
                                            {EntryKind::kMoved, "moved"},
                                            {EntryKind::kOpened, "opened"},
                                            {EntryKind::kEaten, "eaten"},
                                            {EntryKind::kGivenAway, "given_away"},
                                            {EntryKind::kThrownOut, "thrown_out"},
                                            {EntryKind::kLost, "lost"},
                                            {EntryKind::kCounted, "counted"},
                                            {EntryKind::kCorrected, "corrected"}}};
constexpr Names<WishKind, 2> kWishKinds{{{WishKind::kWant, "want"}, {WishKind::kNot, "not"}}};
constexpr Names<Sex, 2> kSexes{{{Sex::kFemale, "female"}, {Sex::kMale, "male"}}};
constexpr Names<Activity, 4> kActivities{{{Activity::kInactive, "inactive"},
                                          {Activity::kLowActive, "low_active"},
                                          {Activity::kActive, "active"},
                                          {Activity::kVeryActive, "very_active"}}};
constexpr Names<Verdict, 6> kVerdicts{{{Verdict::kLiked, "liked"},
                                       {Verdict::kTired, "tired"},
                                       {Verdict::kHardToOpen, "hard_to_open"},
                                       {Verdict::kHardToPrepare, "hard_to_prepare"},
                                       {Verdict::kNeededWater, "needed_water"},
                                       {Verdict::kNotEnough, "not_enough"}}};
constexpr Names<FeedKind, 4> kFeedKinds{{{FeedKind::kReview, "review"},
                                         {FeedKind::kEatSoon, "eat_soon"},
                                         {FeedKind::kShopBy, "shop"},
                                         {FeedKind::kGiveAway, "give_away"}}};
constexpr Names<FeedDetail, 2> kFeedDetails{
    {{FeedDetail::kFull, "full"}, {FeedDetail::kPrivate, "private"}}};
constexpr Names<FeedReviews, 2> kFeedReviews{
    {{FeedReviews::kDated, "dated"}, {FeedReviews::kSeries, "series"}}};
constexpr Names<ReviewEventKind, 4> kReviewEvents{{{ReviewEventKind::kStarted, "started"},
                                                   {ReviewEventKind::kFinished, "finished"},
                                                   {ReviewEventKind::kSkipped, "skipped"},
                                                   {ReviewEventKind::kMoved, "moved"}}};
constexpr Names<MarkWhat, 4> kMarks{{{MarkWhat::kThere, "there"},
                                     {MarkWhat::kMissing, "missing"},
                                     {MarkWhat::kDamaged, "damaged"},
                                     {MarkWhat::kRedated, "redated"}}};
constexpr Names<Region, 3> kRegions{
    {{Region::kOther, "other"}, {Region::kEu, "eu"}, {Region::kUs, "us"}}};

constexpr Names<BuyNoteKind, 2> kBuyNotes{
    {{BuyNoteKind::kNotAvailable, "not_available"}, {BuyNoteKind::kBoughtInstead, "bought_instead"}}};
constexpr Names<SheetKind, 4> kSheets{{{SheetKind::kFoods, "foods"},
                                       {SheetKind::kLots, "lots"},
                                       {SheetKind::kPeople, "people"},
                                       {SheetKind::kMenu, "menu"}}};
constexpr Names<DateOrder, 4> kDateOrders{{{DateOrder::kNone, "none"},
                                           {DateOrder::kDmy, "dmy"},
                                           {DateOrder::kMdy, "mdy"},
                                           {DateOrder::kYmd, "ymd"}}};

template <class Table, class Enum>
std::string_view name_in(const Table& table, Enum value) {
  for (const auto& [each, name] : table) {
    if (each == value) return name;
  }
  return "";
}

template <class Enum, std::size_t N>
std::optional<Enum> value_in(const Names<Enum, N>& table, std::string_view text) {
  for (const auto& [value, name] : table) {
    if (name == text) return value;
  }
  return std::nullopt;
}

}  // namespace

std::string_view food_kind_name(FoodKind kind) {
  return name_in(kFoodKinds, kind);
}
std::optional<FoodKind> parse_food_kind(std::string_view name) {
  return value_in(kFoodKinds, name);
}
std::string_view meal_name(Meal meal) {
  return name_in(kMeals, meal);
}
std::optional<Meal> parse_meal(std::string_view name) {
  return value_in(kMeals, name);
}
std::string_view role_name(Role role) {
  return name_in(kRoles, role);
}
std::optional<Role> parse_role(std::string_view name) {
  return value_in(kRoles, name);
}
std::string_view place_kind_name(PlaceKind kind) {
  return name_in(kPlaceKinds, kind);
}
std::optional<PlaceKind> parse_place_kind(std::string_view name) {
  return value_in(kPlaceKinds, name);
}
std::string_view lot_state_name(LotState state) {
  return name_in(kLotStates, state);
}
std::optional<LotState> parse_lot_state(std::string_view name) {
  return value_in(kLotStates, name);
}
std::string_view entry_kind_name(EntryKind kind) {
  return name_in(kEntryKinds, kind);
}
std::optional<EntryKind> parse_entry_kind(std::string_view name) {
  return value_in(kEntryKinds, name);
}
std::string_view wish_kind_name(WishKind kind) {
  return name_in(kWishKinds, kind);
}
std::optional<WishKind> parse_wish_kind(std::string_view name) {
  return value_in(kWishKinds, name);
}

std::string_view sex_name(Sex sex) {
  return name_in(kSexes, sex);
}
std::optional<Sex> parse_sex(std::string_view name) {
  return value_in(kSexes, name);
}
std::string_view activity_name(Activity activity) {
  return name_in(kActivities, activity);
}
std::optional<Activity> parse_activity(std::string_view name) {
  return value_in(kActivities, name);
}
std::string_view verdict_name(Verdict verdict) {
  return name_in(kVerdicts, verdict);
}
std::optional<Verdict> parse_verdict(std::string_view name) {
  return value_in(kVerdicts, name);
}
std::string_view feed_kind_name(FeedKind kind) {
  return name_in(kFeedKinds, kind);
}
std::optional<FeedKind> parse_feed_kind(std::string_view name) {
  return value_in(kFeedKinds, name);
}
std::string_view feed_detail_name(FeedDetail detail) {
  return name_in(kFeedDetails, detail);
}
std::optional<FeedDetail> parse_feed_detail(std::string_view name) {
  return value_in(kFeedDetails, name);
}
std::string_view feed_reviews_name(FeedReviews reviews) {
  return name_in(kFeedReviews, reviews);
}
std::optional<FeedReviews> parse_feed_reviews(std::string_view name) {
  return value_in(kFeedReviews, name);
}

std::string_view review_event_name(ReviewEventKind kind) {
  return name_in(kReviewEvents, kind);
}
std::optional<ReviewEventKind> parse_review_event(std::string_view name) {
  return value_in(kReviewEvents, name);
}
std::string_view mark_what_name(MarkWhat what) {
  return name_in(kMarks, what);
}
std::optional<MarkWhat> parse_mark_what(std::string_view name) {
  return value_in(kMarks, name);
}
std::string_view buy_note_name(BuyNoteKind kind) {
  return name_in(kBuyNotes, kind);
}
std::optional<BuyNoteKind> parse_buy_note(std::string_view name) {
  return value_in(kBuyNotes, name);
}
std::string_view sheet_kind_name(SheetKind kind) {
  return name_in(kSheets, kind);
}
std::optional<SheetKind> parse_sheet_kind(std::string_view name) {
  return value_in(kSheets, name);
}
std::string_view date_order_name(DateOrder order) {
  return name_in(kDateOrders, order);
}
std::optional<DateOrder> parse_date_order(std::string_view name) {
  return value_in(kDateOrders, name);
}
std::string_view region_name(Region region) {
  return name_in(kRegions, region);
}
std::optional<Region> parse_region(std::string_view name) {
  return value_in(kRegions, name);
}

}  // namespace larderloop
