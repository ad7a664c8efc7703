// kit_check.h - would this kit feed these people safely? A verdict, and everything that speaks
// against it with what to do. Meaning:  docs/kit-check.md says what is looked at, by which source,
// and what decides the verdict. Safety:   who may be given what is why_not()'s answer
// (core/eligible.h); unknown labels are unsafe. No finding does not mean that a food is safe.
#pragma once

#include "larderloop/app/reviews.h"
#include "larderloop/core/eligible.h"
#include "larderloop/core/energy_need.h"
#include "larderloop/core/household.h"
#include "larderloop/core/keeping.h"
#include "larderloop/core/lot.h"
#include "larderloop/core/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

// kMust: the kit is not ready until it is put right. kShould: it would feed them, but not well.
// kNote: to know.
enum class Gravity { kMust, kShould, kNote };
enum class Topic {
  kMenu,      // a line that nothing in its place fills, a meal or a person that the menu forgets
  kAllergen,  // somebody who eats from there must not have it
  kLabel,     // to be read
  kNear,      // in a box with the bag of somebody who must not have it
  kChild,     // choking, honey
  kUse,       // needs cooking, a fridge, an opener, cutlery
  kOpened,    // opened, or more than one sitting
  kState,     // recalled, doubtful
  kDate,      // past, or will not last through the hold-until date
  kHeat,
  kWater,
  kEnergy,
  kSodium,
  kVariety,
  kMass,
  kVolume
};
[[nodiscard]] std::string_view gravity_name(Gravity gravity);  // "must"
[[nodiscard]] std::string_view topic_name(Topic topic);        // "menu"

// `what`: one plain sentence without full stop. `todo`: what to do about it. What does not apply is
// empty, 0 or absent.
struct KitFinding {
  Gravity gravity = Gravity::kMust;
  Topic topic = Topic::kMenu;
  PlaceKey place;
  std::optional<PersonKey> person;
  int day = 0;
  std::optional<Meal> meal;
  MenuLineId line;
  LotId lot;
  FoodKey food;
  std::string what;
  std::string todo;
};

// What one person has on one day of the kit if everything meant for that day is eaten.
// `unknown_units`: of foods without energy, so the sum is at least this much. `need`: absent for
// pets, for whom no birth date is known, and under two years.
struct DayFood {
  PersonKey person;
  int day = 0;
  std::int64_t kcal = 0;
  std::int64_t sodium_mg = 0;
  std::int64_t unknown_energy = 0;  // units
  std::int64_t unknown_sodium = 0;
};
struct PersonNeed {
  PersonKey person;
  std::optional<EnergyNeed> need;
  std::string why_not;  // when there is no estimate
};

struct Carried {
  PlaceKey place;
  std::int64_t mass_g = 0;  // with everything nested, drinking water apart
  std::int64_t water_g = 0;
  std::int64_t unweighed = 0;   // units without a mass
  std::int64_t volume_ml = 0;   // of contents, drinking water apart
  std::int64_t unmeasured = 0;  // units without a volume
};

enum class Stand { kGood, kPast, kUnsafe, kUnknown, kRecalled, kDoubtful };
[[nodiscard]] std::string_view stand_name(Stand stand);  // "good", "past", ...
// How a lot stands on three days: today, the next review, the hold-until date. `plan_through`:
// earlier than good_through in a hot place.
struct LotStands {
  StockKey at;
  FoodKey food;
  HalfServings amount;
  std::optional<Day> good_through;
  DayBasis basis = DayBasis::kNone;
  std::optional<Day> plan_through;
  Stand today = Stand::kGood;
  Stand at_review = Stand::kGood;
  Stand at_hold = Stand::kGood;
};

struct KitWater {
  WaterNeed need;
  std::int64_t food_ml = 0;  // that the food on the menu needs
  std::int64_t menu_ml = 0;  // that the menu asks for
  std::int64_t have_ml = 0;  // that counts today
};

struct KitCheck {
  KitSchedule schedule;
  int days = 0;                      // that the menu is for
  std::vector<KitFinding> findings;  // by gravity, place, day, meal
  std::vector<PersonNeed> needs;     // by person
  std::vector<DayFood> eaten;        // by person, day
  std::vector<Carried> carried;      // boxes and bags in packing order
  std::vector<LotStands> lots;       // by place, food, lot
  KitWater water;
  double lift_limit_kg = 0;  // of one adult, for a box from the floor into a car
  int adults = 0;
  [[nodiscard]] std::size_t count(Gravity gravity) const;
  [[nodiscard]] bool ready() const { return count(Gravity::kMust) == 0; }
};

// kNotFound: no such kit. Pure but for what it is given.
[[nodiscard]] Result<KitCheck> check_kit(const Household& household, const PlaceKey& kit,
                                         Day today);

}  // namespace larderloop
