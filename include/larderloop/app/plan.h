// plan.h - the household's plan today: what leaves each kit, what moves in, what must be bought, and who eats the rest when.
// Every list here has been through why_not() (eligible.h) and the independent checker (plan/check.h) before it is returned.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "larderloop/app/asked.h"
#include "larderloop/app/reviews.h"
#include "larderloop/core/eligible.h"
#include "larderloop/core/household.h"
#include "larderloop/core/lot.h"
#include "larderloop/core/result.h"
#include "larderloop/plan/problem.h"
#include "larderloop/plan/solve.h"

namespace larderloop {

// Units that fill a menu line. From the kit itself (stays or changes its bag), from the pantry, or from a pack to buy.
enum class FillFrom { kStays, kOtherBag, kPantry, kBuy };
struct Fill {
  FillFrom from = FillFrom::kStays;
  StockKey at;       // not for kBuy
  FoodKey food;
  std::int64_t units = 0;
  PlaceKey place;    // where the menu wants it
  MenuLineId line;
  std::optional<Day> good_through;
};

// One thing to buy. `units`: needed; `packs` of `pack_units` at `shop` for `price_cents` each (packs 0: no pack known). `good_through_at_least`:
// the earliest date to accept. `for_people`: who eats it, key order (all humans for a communal line). `must_not_say`: allergen keys that
// the label must not state for them; `nor_may_contain`: nor warn of; `must_suit`: diets it must support.
struct BuyLine {
  FoodKey food;
  std::vector<PlaceKey> kits;  // which it is for; none: for the pantry
  std::int64_t units = 0;
  std::int64_t packs = 0;
  Pack pack;
  Day good_through_at_least{};
  std::vector<PlaceKey> places;
  std::vector<PersonKey> for_people;
  std::vector<std::string> must_not_say;
  std::vector<std::string> nor_may_contain;
  std::vector<Diet> must_suit;
  std::int64_t ml = 0;  // water: how much of it is needed; units cover it
};

// A menu line that nothing known can fill. `why`: one plain clause.
struct Unmet {
  MenuLineId line;
  PlaceKey place;
  std::int64_t units = 0;
  std::int64_t ml = 0;
  std::string why;
};

// Drinking water of a kit in ml: the menu's need, what counts today, and what will last to the hold-until date.
struct WaterState {
  std::int64_t need_ml = 0;
  std::int64_t have_ml = 0;
  std::vector<Leaving> to_refill;  // self-filled and due by the hold-until date
  std::vector<Leaving> past_date;  // shop-bought past its printed date: a note, not a task
};

struct KitPlan {
  KitSchedule schedule;
  std::vector<Leaving> leaves;       // must leave now: will not last, past, recalled, doubtful
  std::vector<Leaving> surplus;      // good, but no menu line needs it
  std::vector<Leaving> label_needed;  // in a bag of somebody with an allergy or diet, and the label of this lot was not read
  std::vector<Leaving> wrong_bag;     // must not be where it is: somebody who eats from there must not have it
  std::vector<Fill> fills;           // by place, line, lot
  std::vector<BuyLine> buy;
  std::vector<Unmet> unmet;
  WaterState water;
  std::int64_t cost_cents = 0;
  std::vector<plan::Level> levels;
  [[nodiscard]] bool full() const { return buy.empty() && unmet.empty(); }
};

// One person's part of a meal.
struct Helping {
  StockKey at;
  FoodKey food;
  PersonKey person;
  HalfServings amount;
  std::int64_t opened_units = 0;  // sealed units opened at this meal, told on the first helping from them
  std::optional<Day> good_through;
};
struct PlannedMeal {
  Day day{};
  Meal meal = Meal::kDinner;
  std::vector<Helping> helpings;  // by food, lot, person
};

struct GiveAway {
  StockKey at;
  FoodKey food;
  HalfServings amount;
  Day by{};  // the last sensible day: donate_days before good through
  std::optional<Day> good_through;
};
// Nobody may or can eat it in time, and it is too late to give away.
struct LeftOver {
  StockKey at;
  FoodKey food;
  HalfServings amount;
  std::optional<Day> good_through;
};
// Past its quality date: look, smell, decide. Not planned. `safety`: a safety date has passed: throw it out.
struct PastDate {
  StockKey at;
  FoodKey food;
  HalfServings amount;
  Day good_through{};
  bool safety = false;
  DayBasis basis = DayBasis::kPrinted;
};
// Waits for somebody: label to be read, doubtful, recalled.
struct Waiting {
  StockKey at;
  FoodKey food;
  HalfServings amount;
  LotState state = LotState::kOk;
};

// A want of the family for one person (empty: nobody is at the table) and what became of it. `why`: one plain clause; empty = it is planned.
struct WishTold {
  WishId wish;
  FoodKey food;
  Day day{};
  Meal meal = Meal::kDinner;
  PersonKey person;
  HalfServings amount;
  std::string why;
  [[nodiscard]] bool met() const { return why.empty(); }
};

// Was planned for meals that passed without anybody eating it, since it was last eaten. `give_by`: the last sensible day to give it away;
// absent: it is too late for that, or it must not be given away.
struct Skipped {
  LotId lot;
  FoodKey food;
  int times = 0;
  std::vector<PersonKey> people;  // whose meals those were, key order
  std::optional<Day> give_by;
};

// Food that nobody eats before its date. `units`: never opened; `amount`: these and what is left in opened ones. Money is that of the food's
// cheapest pack, energy that of the food; the parts of `amount` that have none stand apart.
struct NotEaten {
  std::int64_t units = 0;
  HalfServings amount;
  std::int64_t cents = 0;
  HalfServings without_price;
  std::int64_t kcal = 0;
  HalfServings without_energy;
  friend bool operator==(const NotEaten&, const NotEaten&) = default;
};

// What one way of sharing out the ageing food comes to. `handed_out`: to whoever; `must_not`, `will_not`: the parts of it handed to somebody who
// must not have it (label, diet, species) or does not eat it (refuses, does not want it), so not waste but broken rules. `repeats`: beyond
// two servings of one food for one person in one week, counted with what was eaten this week before; not for pets.
struct EatingTally {
  HalfServings handed_out;
  NotEaten thrown_away;
  NotEaten given_away;
  HalfServings repeats;
  std::size_t broken_rules = 0;  // as the independent checker counts them
  HalfServings must_not;
  HalfServings will_not;
  friend bool operator==(const EatingTally&, const EatingTally&) = default;
};

// What filling the kits takes from the shops, water apart. `unmet`: units of menu lines that stay empty.
struct PurchaseTally {
  std::int64_t packs = 0;
  std::int64_t cents = 0;
  std::int64_t unmet = 0;
  friend bool operator==(const PurchaseTally&, const PurchaseTally&) = default;
};

// The plan beside plain date order, on the same book. `allowed`: soonest date first to whoever at the table may have it, within appetite, weekly
// tolerance and variety; `plain`: without regard to people. Nobody refills a kit by dates alone, so the purchases stand beside the greedy refill
// (plan::plan_refill). `examples`: at most five things that `plain` hands to the wrong person, in plain words.
struct Comparison {
  EatingTally plan;
  EatingTally allowed;
  EatingTally plain;
  PurchaseTally bought;
  PurchaseTally greedy;
  std::vector<std::string> examples;
  std::string currency;
};

struct EatDown {
  Day until{};  // planned before this day
  std::vector<PlannedMeal> meals;
  std::vector<GiveAway> give_away;
  std::vector<LeftOver> left_over;
  std::vector<PastDate> past;
  std::vector<Waiting> waiting;
  std::vector<WishTold> wishes;    // by day, meal, wish, person
  std::vector<Skipped> skipped;    // three times or more, by lot
  std::vector<std::string> changed;  // what differs from the plan last shown for this week and the next, and why
  std::vector<plan::Level> levels;
  std::optional<Comparison> comparison;  // only where it was asked for
};

struct PlanReport {
  Day as_of{};
  std::vector<KitPlan> kits;
  EatDown eat_down;
};

// `with_plain`: also compare with plain date order. `limits`: how hard to try; absent: as a household's plan is
// worked out, which a book keeps.
struct PlanEffort {
  bool with_plain = false;
  std::optional<plan::Limits> limits;
};

// The whole plan. Changes hold the shown meals (this week and the next) when they differ from the kept ones, and the plans to keep. kDefect
// when a plan fails the independent checker: nothing unchecked is ever returned.
[[nodiscard]] Result<Outcome<PlanReport>> make_plan(const Household& household, Asked asked, const PlanEffort& effort = {});

// The parts alone.
[[nodiscard]] Result<KitPlan> plan_kit(const Household& household, const PlaceKey& kit, Day today);

}  // namespace larderloop
