// why.h - why the plan is as it is: of a lot, of a meal, of a food on the replacement list.
// Rule:     nothing is said that the planning problem does not bear out. One rule of the problem is
//           changed and the problem worked out again: the rule is named only when a plan comes out
//           that is better and that the rule forbids; another way is named with the first level on
//           which the best plan that goes it is worse. The independent checker judges both.
// Safety:   reasons about people say no more than plan and replacement list say: refusal_words().
// Cost:     at most kMostSolves problems are solved; everything else is small changes of one plan.
#pragma once

#include "larderloop/app/plan.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace larderloop {

inline constexpr int kMostSolves = 3;

struct MealTime {
  Day day{};
  Meal meal = Meal::kDinner;
  friend auto operator<=>(const MealTime&, const MealTime&) = default;
  friend bool operator==(const MealTime&, const MealTime&) = default;
};

// What becomes of it.
enum class Fate {
  kStays,       // in the kit
  kMovesIn,     // from the pantry, or from another bag of the kit, to where the menu wants it
  kSpare,       // good, in the kit, and no line of the menu needs it
  kEaten,       // at a meal of the household
  kGivenAway,
  kLeftOver,    // nobody can eat it in time, and it is too late to give it away
  kPast,        // past its date: not planned
  kSetAside,    // recalled or doubtful: not planned
  kKept,        // good beyond the plan, or not a food that is eaten down: nothing is planned
  kGone,        // nothing is left of it
  kBought,
  kAtMeal,      // planned at the meal that was asked about
  kNothingThen  // nothing of the kit is planned at that meal
};
[[nodiscard]] std::string_view fate_name(Fate fate);  // "given_away"

enum class WhyRule {
  kDate,            // it is good only through `good_through`, not to `until`
  kSetAside,        // it is recalled or doubtful
  kMustNot,         // `person` must not have it: `refusal`
  kNotWished,       // a wish keeps it from `person`
  kNotForThatMeal,  // it is no food for such a meal
  kStillInKit,      // it comes out of the kit on `until`
  kAppetite,        // `person` (none: everyone) has no more appetite at that meal: `limit`
  kWeekLimit,       // `person` (none: everyone) has no more kit food in a week: `limit`
  kSameFoodLimit,   // `person` (none: everyone) has no more of one food in a week: `limit`
  kTooLateToGive,   // less than the days are left that giving away needs
  kNeverGiven,      // opened, home-canned, infant formula
  kShown,           // the household was told so
  kAllUsed,         // every unit of `lot` is wanted elsewhere
  kWorse            // the other way is worse: `worse`
};
[[nodiscard]] std::string_view why_rule_name(WhyRule rule);  // "must_not"
inline constexpr WhyRule kAllWhyRules[] = {
    WhyRule::kDate,        WhyRule::kSetAside,      WhyRule::kMustNot,
    WhyRule::kNotWished,   WhyRule::kNotForThatMeal, WhyRule::kStillInKit,
    WhyRule::kAppetite,    WhyRule::kWeekLimit,     WhyRule::kSameFoodLimit,
    WhyRule::kTooLateToGive, WhyRule::kNeverGiven,  WhyRule::kShown,
    WhyRule::kAllUsed,     WhyRule::kWorse};

// The other way that was priced.
enum class OtherWay { kAtThatMeal, kEatIt, kNotThen, kWithoutLot, kWithoutFood };

// `level`: of docs/planning.md. `more`: by how much, in the unit of the level (half servings, cents, units times priority, ...). `food`: the
// food that is wasted, given away or bought in its place, where there is one. `proven`: both plans are proven best on that level.
struct Worse {
  OtherWay way = OtherWay::kAtThatMeal;
  std::string level;
  std::int64_t more = 0;
  FoodKey food;
  bool proven = false;
};

// Which members count is said at the rules.
struct Reason {
  WhyRule rule = WhyRule::kWorse;
  std::optional<MealTime> when;  // a meal at which it might have been
  FoodKey food;
  std::optional<LotId> lot;
  std::optional<PersonKey> person;
  bool alone = false;            // nobody else is at the table then
  std::optional<RefusalReason> refusal;
  std::optional<Day> good_through;
  std::optional<Day> until;
  HalfServings limit;
  std::optional<Worse> worse;
};

struct WhyPart {
  Fate fate = Fate::kGone;
  FoodKey food;
  std::optional<StockKey> at;
  HalfServings amount;
  std::optional<Day> good_through;
  std::optional<MealTime> when;      // kEaten: the first meal
  std::vector<PersonKey> people;     // who has it, or whom it is bought for
  std::optional<PlaceKey> kit;
  std::optional<PlaceKey> place;     // where the menu wants it
  std::optional<Day> hold_until;
  std::optional<BuyLine> buy;
  bool own_kit_menu = true;
  std::vector<Reason> reasons;       // in the order of telling
};

// kNothingThen without reasons of the model: why there is no such meal.
enum class NoMeal { kNone, kPassed, kBeyond, kRecorded, kNobody, kWish, kNothingLeft };

struct WhyReport {
  Day as_of{};
  std::optional<LotId> lot;
  std::optional<MealTime> meal;
  FoodKey food;                // of the lot, or asked about; empty for a meal
  std::vector<WhyPart> parts;  // at least one
  NoMeal no_meal = NoMeal::kNone;
  std::optional<Day> plan_end;  // planned before this day
  int solves = 0;
};

// A lot, a meal, or a food of the replacement list.
using WhyAbout = std::variant<LotId, MealTime, FoodKey>;

// Changes as of make_plan(). kNotFound: no such lot; a food that is not on the replacement list.
[[nodiscard]] Result<Outcome<WhyReport>> why(const Household& household, const WhyAbout& about, Asked asked);

}  // namespace larderloop
