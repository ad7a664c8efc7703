// problem.h - the two planning problems as plain data: refill a kit, and eat down what is ageing. No book, no clock, no I/O.
// Meaning:  docs/planning.md states sets, variables, rows and objective levels; this file and the checker follow it by name.
// Units:    days as whole numbers (days since 1970-01-01 when built from a book); servings are whatever whole unit the builder
//           counts in (half servings when built from a book); energy kcal, mass g, volume ml, money cents.
// Ids:      text without '|'; every list sorted by id, which also breaks ties, so that the same input gives the same plan.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "larderloop/plan/numbers_by_id.h"

namespace larderloop::plan {

enum class Kind { kBreakfast, kLunch, kDinner, kSnack };

// An eater avoids tags (hard); rating -2 refuses (hard). `tolerance`: servings in one week.
struct Eater {
  std::string id;
  std::set<std::string> avoid;
  std::map<std::string, int> ratings;  // by product
  std::optional<std::int64_t> tolerance;
  std::optional<std::int64_t> monotony;           // of one product in one week; absent = the problem's
  NumbersById eaten_this_week;  // by product, before today in week 0: counts towards both limits
  std::int64_t energy_target = 0;  // kcal a day; 0 = none (refill only)
};

// ---- eat-down ----

struct EatProduct {
  std::string id;
  std::int64_t servings = 1;   // in a unit
  std::int64_t open_days = 0;  // an opened unit keeps so many days; 0 = finish at that meal
  std::set<Kind> kinds;
  std::set<std::string> contains;
};

// `already_open`: one unit that was opened before today, with `open_servings` left, good through last_good_day; it may be eaten from at
// any meal through that day, and what is left then is wasted.
struct EatLot {
  std::string id;
  std::string product;
  std::int64_t units = 0;
  std::int64_t last_good_day = 0;
  std::optional<std::int64_t> available_from;
  bool already_open = false;
  std::int64_t open_servings = 0;
  bool may_donate = true;
};

struct EatMeal {
  std::string id;
  std::int64_t day = 0;
  Kind kind = Kind::kDinner;
  std::vector<std::string> eaters;  // sorted
  NumbersById appetite;             // servings by eater; default 1
  std::set<std::string> without;    // products not wanted at this meal
};

struct MealServing {
  std::string product;
  std::string meal;
  std::string eater;
  std::int64_t servings = 0;
  friend auto operator<=>(const MealServing&, const MealServing&) = default;
  friend bool operator==(const MealServing&, const MealServing&) = default;
};

struct EatDownProblem {
  std::int64_t today = 0;
  std::int64_t week_start = 0;
  std::int64_t horizon_days = 182;
  std::int64_t donate_days = 30;
  std::int64_t late_days = 7;
  std::int64_t tolerance = 4;  // default for eaters
  std::int64_t monotony = 2;   // of one product, an eater and week
  std::vector<Eater> eaters;
  std::vector<EatProduct> products;
  std::vector<EatLot> lots;
  std::vector<EatMeal> meals;
  std::vector<MealServing> published;  // what was shown
  std::int64_t published_until = -1;   // its last day
  // What the household was told stays before anything else counts: a level "dropped" comes first, the published servings
  // (today to published_until, meals still in the calendar) that are not served.
  bool keep_published = false;
  std::vector<MealServing> wished;  // asked for by the family: a level "wishes" comes before all others, wished servings not served
};

struct Opened {
  std::string lot;
  std::string meal;
  std::int64_t units = 0;
};
struct LotUnits {
  std::string lot;
  std::int64_t units = 0;
};

// Lots kept (last_good_day at or past the horizon's end) appear in none of the lists.
struct EatDownPlan {
  std::vector<Opened> opened;          // by meal in calendar order, then lot id
  std::vector<MealServing> servings;   // by meal in calendar order, then eater, then product
  std::vector<LotUnits> donated;       // by lot id
  std::vector<LotUnits> wasted;        // whole units, by lot id; leftovers of opened units follow from the rest
};

// ---- refill ----

struct RefillProduct {
  std::string id;
  std::set<std::string> roles;  // role names; a line may also name "food:<key>"
  std::set<std::string> contains;
  std::int64_t kcal = 0;
  std::int64_t mass = 0;
  std::int64_t volume = 0;
  bool no_cook = true;
  bool staple = false;
};

struct Container {
  std::string id;
  std::string kit;
  std::optional<std::int64_t> mass_limit;
  std::optional<std::int64_t> volume_limit;
};

struct RefillLine {
  std::string id;
  std::string container;
  std::vector<std::string> eaters;  // sorted
  int day = 0;
  std::string kind;  // meal, may be empty
  std::string role;
  std::int64_t units = 1;
  std::int64_t priority = 3;
};

struct RefillLot {
  std::string id;
  std::string product;
  std::int64_t units = 0;
  std::int64_t last_good_day = 0;
  bool in_kit = false;
  std::string container;  // where it lies when in the kit
};

struct Offer {
  std::string id;
  std::string product;
  std::int64_t pack_units = 1;
  std::int64_t price = 0;
  std::int64_t last_good_day = 0;
  std::optional<std::int64_t> max_packs;
};

struct RefillProblem {
  std::int64_t today = 0;
  std::int64_t hold_until = 0;
  std::optional<std::int64_t> budget;
  std::int64_t variety_cap = 2;
  std::int64_t surplus_credit_percent = 50;
  std::int64_t date_cap_days = 1095;
  // Good units stay where they lie: a level "displaced" comes right after "unmet", units of eligible kit lots that do not stay in their
  // container.
  bool keep_in_place = false;
  std::vector<Eater> eaters;
  std::vector<RefillProduct> products;
  std::vector<Container> containers;
  std::vector<RefillLine> lines;
  std::vector<RefillLot> lots;
  std::vector<Offer> offers;
};

struct OfferPacks {
  std::string offer;
  std::int64_t packs = 0;
};
// Units of a source (lot or offer, exactly one is named) put on a line.
struct Move {
  std::string lot;
  std::string offer;
  std::string line;
  std::int64_t units = 0;
};
struct LineUnits {
  std::string line;
  std::int64_t units = 0;
};

struct RefillPlan {
  std::vector<OfferPacks> packs;
  std::vector<Move> moves;
  std::vector<LineUnits> unmet;
};

// One objective level of a plan: what it is called and what it comes to. `bound`: proven lower bound, where one is known.
struct Level {
  std::string name;
  std::int64_t value = 0;
  std::optional<std::int64_t> bound;
  [[nodiscard]] bool proven() const { return bound.has_value() && *bound >= value; }
};

}  // namespace larderloop::plan
