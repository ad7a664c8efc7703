// household.h - everything a book holds, as plain values. Rooms exchange this; none of it knows how it is stored or shown.
// Amounts:  stock in half servings (amount.h); mass in g, volume and water in ml, energy in kcal, money in cents.
// Order:    every list is kept sorted by its key or id; functions that build one keep it so.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "larderloop/core/allergen.h"
#include "larderloop/core/amount.h"
#include "larderloop/core/date.h"
#include "larderloop/core/date_mark.h"
#include "larderloop/core/feeds.h"
#include "larderloop/core/id.h"
#include "larderloop/core/sheet.h"

namespace larderloop {

// Retired people, foods and places stay for the record and are offered nowhere. They hold no stock and stand in no menu, at no
// table and in no wish; whoever is meant again is brought back.

// ---- people ----------------------------------------------------------------------------------------------------------

inline constexpr std::string_view kHuman = "human";

// `appetite`: servings of kit food at one meal, in half servings (2 = one serving, 1 = a child's half).
// `tolerance`: servings of kit food in one week, in half servings; absent = the household's setting.
// `ratings`: -2 refuses (hard), -1 dislikes, 0 neutral (not stored), +1, +2 likes.
// `sex`, `height_cm`, `mass_g`, `activity`: what estimates of need and of what can be carried rest on; absent = no estimate.
// A pet is a person of another species: it eats pet food of its species and nothing else.
enum class Sex { kFemale, kMale };
// How much somebody moves on an ordinary day, in the words of the equations of need (core/energy_need.h).
enum class Activity { kInactive, kLowActive, kActive, kVeryActive };
inline constexpr Sex kAllSexes[] = {Sex::kFemale, Sex::kMale};
inline constexpr Activity kAllActivities[] = {Activity::kInactive, Activity::kLowActive, Activity::kActive, Activity::kVeryActive};
[[nodiscard]] std::string_view sex_name(Sex sex);  // "female"
[[nodiscard]] std::optional<Sex> parse_sex(std::string_view name);
[[nodiscard]] std::string_view activity_name(Activity activity);  // "low_active"
[[nodiscard]] std::optional<Activity> parse_activity(std::string_view name);

struct Person {
  PersonKey key;
  std::string name;
  std::string species{kHuman};
  std::optional<Day> born;
  HalfServings appetite{2};
  std::optional<HalfServings> tolerance;
  std::optional<std::int64_t> energy_kcal;  // wanted a day from the kit; absent = no target
  std::optional<Sex> sex;
  std::optional<std::int64_t> height_cm;
  std::optional<std::int64_t> mass_g;       // of the body
  std::optional<Activity> activity;
  std::vector<Avoid> avoid;                 // sorted by key
  std::set<Diet> diets;
  std::map<FoodKey, int> ratings;
  std::string note;
  std::optional<Day> retired;  // since when it belongs to the household no more
  [[nodiscard]] bool is_human() const { return species == kHuman; }
  friend bool operator==(const Person&, const Person&) = default;
};

// ---- foods -----------------------------------------------------------------------------------------------------------

enum class FoodKind { kFood, kDrink, kWater, kPetFood, kThing };
enum class Meal { kBreakfast, kLunch, kDinner, kSnack };  // in the order of a day
enum class Role { kMain, kSide, kFruit, kSnack, kDrink, kComfort, kPetMeal, kWater, kThing };

inline constexpr FoodKind kAllFoodKinds[] = {FoodKind::kFood, FoodKind::kDrink, FoodKind::kWater, FoodKind::kPetFood,
                                             FoodKind::kThing};
inline constexpr Meal kAllMeals[] = {Meal::kBreakfast, Meal::kLunch, Meal::kDinner, Meal::kSnack};
inline constexpr Role kAllRoles[] = {Role::kMain,    Role::kSide,    Role::kFruit, Role::kSnack, Role::kDrink,
                                     Role::kComfort, Role::kPetMeal, Role::kWater, Role::kThing};
[[nodiscard]] std::string_view food_kind_name(FoodKind kind);  // "pet_food"
[[nodiscard]] std::optional<FoodKind> parse_food_kind(std::string_view name);
[[nodiscard]] std::string_view meal_name(Meal meal);  // "breakfast"
[[nodiscard]] std::optional<Meal> parse_meal(std::string_view name);
[[nodiscard]] std::string_view role_name(Role role);  // "pet_meal"
[[nodiscard]] std::optional<Role> parse_role(std::string_view name);

// How a shop sells it: `units` at once for `price_cents`.
struct Pack {
  std::string shop;
  std::int64_t units = 1;
  std::int64_t price_cents = 0;
  friend bool operator==(const Pack&, const Pack&) = default;
};

// How long it keeps unopened from purchase, in months, both ends of the published range; and opened, in days (0 = finish at
// that meal). `source`: the publication, shown with every estimate.
struct Storage {
  std::optional<int> months_short;
  std::optional<int> months_long;
  int opened_days = 0;
  std::string source;
  friend bool operator==(const Storage&, const Storage&) = default;
};

enum class Rotate { kAuto, kYes, kNo };  // kAuto: when some kit menu can use it

struct Food {
  FoodKey key;
  std::string name;
  FoodKind kind = FoodKind::kFood;
  std::string species;                // pet food: whose; else empty
  std::string gtin;                   // 14 digits or empty (GS1 General Specifications)
  std::string unit = "pack";          // what one unit is called: "pouch", "can", "bottle"
  std::int64_t servings = 1;          // whole servings in a unit; 1 for water and things
  std::optional<std::int64_t> mass_g;    // of one unit as packed
  std::optional<std::int64_t> volume_ml; // of one unit; for water: its content
  std::optional<std::int64_t> energy_kcal;  // of one unit
  std::optional<std::int64_t> sodium_mg;    // of one unit
  std::optional<Statement> label;     // as last read off any package; absent = never read
  bool no_cook = true;                // can be eaten as it is
  bool needs_hot_water = false;       // a conditional item: never fills a menu line
  std::int64_t needs_water_ml = 0;    // cold drinking water a unit uses up
  bool needs_opener = false;
  bool needs_spoon = false;           // cannot be eaten without cutlery
  bool refrigerate = false;           // the package says to keep it refrigerated: never in a kit
  bool choking_risk = false;          // hard, round or sticky: not for a child under four (CDC, AAP)
  bool honey = false;                 // has honey in it: not for a child under one (CDC, AAP)
  bool is_opener = false;             // a thing that opens cans
  bool is_cutlery = false;            // a thing to eat with
  bool infant_formula = false;        // its use-by date is a safety date everywhere (21 CFR 107.20)
  bool home_canned = false;           // never given away
  bool self_filled = false;           // water filled at home: due six months after filling (CDC; Ready.gov)
  bool staple = false;                // no variety rule (water, milk)
  std::set<Meal> meals;               // household meals it suits
  std::set<Role> roles;               // kit menu roles it can fill
  std::vector<Pack> packs;
  Storage storage;
  Rotate rotate = Rotate::kAuto;
  std::optional<std::int64_t> par_level;  // units meant to be on hand in the pantry
  std::string note;
  std::optional<Day> retired;  // since when it is kept no more
  friend bool operator==(const Food&, const Food&) = default;
};

// ---- places ----------------------------------------------------------------------------------------------------------

enum class PlaceKind { kKit, kBox, kBag, kPantry, kShelf };
inline constexpr PlaceKind kAllPlaceKinds[] = {PlaceKind::kKit, PlaceKind::kBox, PlaceKind::kBag, PlaceKind::kPantry,
                                               PlaceKind::kShelf};
[[nodiscard]] std::string_view place_kind_name(PlaceKind kind);
[[nodiscard]] std::optional<PlaceKind> parse_place_kind(std::string_view name);

struct Place {
  PlaceKey key;
  std::string name;
  PlaceKind kind = PlaceKind::kShelf;
  PlaceKey parent;  // empty at the top; kit > box > bag, pantry > shelf
  std::optional<std::int64_t> mass_limit_g;
  std::optional<std::int64_t> volume_limit_ml;
  bool hot = false;  // 30 C or more at times: car, attic
  std::string note;
  std::optional<Day> retired;  // since when nothing is kept there any more
  friend bool operator==(const Place&, const Place&) = default;
};

// When a kit is reviewed. `rule`: an RFC 5545 recurrence rule over dates; `starts`: its DTSTART, a date the rule hits.
struct ReviewRule {
  PlaceKey kit;
  std::string rule;
  Day starts{};
  std::optional<int> slack_days;  // absent = the household's setting
  friend bool operator==(const ReviewRule&, const ReviewRule&) = default;
};

// ---- lots and the record ---------------------------------------------------------------------------------------------

enum class LotState { kOk, kDoubtful, kRecalled };
[[nodiscard]] std::string_view lot_state_name(LotState state);
[[nodiscard]] std::optional<LotState> parse_lot_state(std::string_view name);

// As it was when first entered; later findings are readings. See effective_lot in lot.h.
struct Lot {
  LotId id;
  FoodKey food;
  DateMark mark;
  std::string lot_code;
  Day received{};
  std::optional<Statement> label;  // of this very lot, absent = not read
  LotState state = LotState::kOk;
  std::string note;
  friend bool operator==(const Lot&, const Lot&) = default;
};

// Something learnt of a lot after it was entered; append-only. At least one of the three is present; the latest one of each
// counts.
struct Reading {
  ReadingId id;
  LotId lot;
  Day on{};
  std::string by;
  std::optional<DateMark> mark;
  std::optional<Statement> label;
  std::optional<LotState> state;
  std::string note;
  friend bool operator==(const Reading&, const Reading&) = default;
};

// Where stock lies: sealed, or opened on a day.
struct StockKey {
  LotId lot;
  PlaceKey place;
  std::optional<Day> opened_on;
  friend auto operator<=>(const StockKey&, const StockKey&) = default;
  friend bool operator==(const StockKey&, const StockKey&) = default;
};

enum class EntryKind { kReceived, kFound, kMoved, kOpened, kEaten, kGivenAway, kThrownOut, kLost, kCounted, kCorrected };
inline constexpr EntryKind kAllEntryKinds[] = {EntryKind::kReceived, EntryKind::kFound,     EntryKind::kMoved,
                                               EntryKind::kOpened,   EntryKind::kEaten,     EntryKind::kGivenAway,
                                               EntryKind::kThrownOut, EntryKind::kLost,     EntryKind::kCounted,
                                               EntryKind::kCorrected};
[[nodiscard]] std::string_view entry_kind_name(EntryKind kind);  // "given_away"
[[nodiscard]] std::optional<EntryKind> parse_entry_kind(std::string_view name);

// One line of the append-only record.
//   received, found              amount comes to `at` (sealed)
//   moved                        amount goes from `at` to `to`, staying sealed or opened as it is
//   opened                       `amount` = one unit leaves sealed stock at `at.place` and lies there opened on `on`
//   eaten, given_away, thrown_out, lost   amount leaves `at`
//   counted                      `at` holds `amount` now; the record keeps the difference in `change`
//   corrected                    reverses entry `corrects`; a corrected entry cannot be corrected again
// `change` is only for counted (may be negative). `on`: the household's day it happened; `written_at`: when it was entered.
struct Entry {
  EntryId id;
  EntryKind kind = EntryKind::kReceived;
  Day on{};
  Instant written_at{};
  StockKey at;
  PlaceKey to;
  HalfServings amount;
  std::int64_t change = 0;
  EntryId corrects;
  std::optional<PersonKey> who;   // eaten: by whom, when known
  std::optional<Meal> meal;       // eaten: at which meal, when known
  std::optional<std::int64_t> paid_cents;  // received: what these cost
  std::string note;
  friend bool operator==(const Entry&, const Entry&) = default;
};

// ---- kit menus, the household's week, reviews ------------------------------------------------------------------------

// One line of a kit menu: these people, on this day of the kit, at this meal, have `units` of a role or of one food, kept
// in `place` (a bag, box or the kit). `everyone`: every human, whoever that is on the day of asking.
// Water lines count `ml` instead of units. Things have no people, day 0 and no meal.
struct MenuLine {
  MenuLineId id;
  PlaceKey place;
  bool everyone = false;
  std::vector<PersonKey> people;  // sorted; empty only with everyone or for a thing
  int day = 0;                    // 1.. for a day, 0 = any
  std::optional<Meal> meal;
  std::optional<Role> role;       // exactly one of role and food
  FoodKey food;
  std::int64_t units = 1;
  std::int64_t ml = 0;
  int priority = 0;               // 0 = by role: main 10, others 3
  friend bool operator==(const MenuLine&, const MenuLine&) = default;
};

// Who is usually at the table: kit food may be eaten at this meal by these people.
struct TableSeat {
  Weekday weekday = Weekday::kMonday;
  Meal meal = Meal::kDinner;
  std::vector<PersonKey> people;  // sorted
  friend bool operator==(const TableSeat&, const TableSeat&) = default;
};

// From `from` through `through`, at these meals (none named = all): these people are away, or nobody eats at home; or these people
// of the book, guests, are at the table beside those who usually are.
struct TableException {
  Day from{};
  Day through{};
  std::set<Meal> meals;
  bool nobody = false;
  std::vector<PersonKey> away;  // sorted
  std::vector<PersonKey> guests;  // sorted
  std::string note;
  friend bool operator==(const TableException&, const TableException&) = default;
};

// What the family asks of the week's meals. It is no rule of safety: a want is never stronger than the predicate, a date or a limit.
//   want  this food at the meal of one day (from = through): for one person, or for everyone at the table
//   not   this food not from `from` through `through` (no days = always), at `meal` (none = all), for `person` (none = everyone);
//         without a food: nothing of the kit is planned then, and the days are needed
// The id of a wish that was taken back may be given again.
enum class WishKind { kWant, kNot };
inline constexpr WishKind kAllWishKinds[] = {WishKind::kWant, WishKind::kNot};
[[nodiscard]] std::string_view wish_kind_name(WishKind kind);  // "want"
[[nodiscard]] std::optional<WishKind> parse_wish_kind(std::string_view name);

struct Wish {
  WishId id;
  WishKind kind = WishKind::kWant;
  FoodKey food;  // empty: any
  std::optional<Day> from;
  std::optional<Day> through;  // both or neither
  std::optional<Meal> meal;
  std::optional<PersonKey> person;
  // Does it speak of this meal?
  [[nodiscard]] bool covers(Day day, Meal at) const {
    return (!from || (*from <= day && day <= *through)) && (!meal || *meal == at);
  }
  friend bool operator==(const Wish&, const Wish&) = default;
};

// Living from a kit for some days to see whether it feeds these people: what was begun, what was said of a food, that it ended.
// All three are append-only. `through`: the last day that was planned. `people`: who lived from it; empty = everyone.
struct Trial {
  TrialId id;
  PlaceKey kit;
  Day from{};
  Day through{};
  std::vector<PersonKey> people;  // sorted
  std::string note;
  friend bool operator==(const Trial&, const Trial&) = default;
};

enum class Verdict { kLiked, kTired, kHardToOpen, kHardToPrepare, kNeededWater, kNotEnough };
inline constexpr Verdict kAllVerdicts[] = {Verdict::kLiked,         Verdict::kTired,       Verdict::kHardToOpen,
                                           Verdict::kHardToPrepare, Verdict::kNeededWater, Verdict::kNotEnough};
[[nodiscard]] std::string_view verdict_name(Verdict verdict);  // "hard_to_open"
[[nodiscard]] std::optional<Verdict> parse_verdict(std::string_view name);

// What one person said of one food during a trial. Several verdicts on one food are several notes.
struct TrialNote {
  TrialNoteId id;
  TrialId trial;
  FoodKey food;
  PersonKey person;
  Verdict verdict = Verdict::kLiked;
  Day on{};
  std::string note;
  friend bool operator==(const TrialNote&, const TrialNote&) = default;
};

// A trial ends once.
struct TrialEnd {
  TrialId trial;
  Day on{};
  std::string note;
  friend bool operator==(const TrialEnd&, const TrialEnd&) = default;
};

enum class ReviewEventKind { kStarted, kFinished, kSkipped, kMoved };
[[nodiscard]] std::string_view review_event_name(ReviewEventKind kind);
[[nodiscard]] std::optional<ReviewEventKind> parse_review_event(std::string_view name);

// What was done about the review that the rule puts on `slot` (the original date, its identity). Append-only.
struct ReviewEvent {
  ReviewEventId id;
  PlaceKey kit;
  Day slot{};
  ReviewEventKind kind = ReviewEventKind::kStarted;
  Day on{};
  std::optional<Day> moved_to;  // kMoved
  std::string note;
  friend bool operator==(const ReviewEvent&, const ReviewEvent&) = default;
};

enum class MarkWhat { kThere, kMissing, kDamaged, kRedated };
[[nodiscard]] std::string_view mark_what_name(MarkWhat what);
[[nodiscard]] std::optional<MarkWhat> parse_mark_what(std::string_view name);

// What was found at one stock position during a review that was started. Append-only; the latest for the same review,
// position and kind of finding counts. `amount`: how much of it (missing, damaged); `mark`: the date that is really printed.
struct ReviewMark {
  MarkId id;
  PlaceKey kit;
  Day slot{};
  StockKey at;
  MarkWhat what = MarkWhat::kThere;
  Day on{};
  HalfServings amount;
  std::optional<DateMark> mark;
  friend bool operator==(const ReviewMark&, const ReviewMark&) = default;
};

// ---- what was shown, and the household itself ------------------------------------------------------------------------

// One serving line of a meal that the household was shown.
struct ShownServing {
  StockKey at;
  PersonKey person;
  HalfServings amount;
  friend auto operator<=>(const ShownServing&, const ShownServing&) = default;
  friend bool operator==(const ShownServing&, const ShownServing&) = default;
};

struct ShownMeal {
  Day day{};
  Meal meal = Meal::kDinner;
  std::vector<ShownServing> servings;  // sorted
  friend bool operator==(const ShownMeal&, const ShownMeal&) = default;
};

// A plan as it was last worked out, so that an unchanged problem is not solved again. `name`: "eat-down" or "refill <kit>"; `problem`: the
// fingerprint of the planning problem; `plan`: text of app/plan_kept_text.cpp. Can be worked out again at any time.
struct KeptPlan {
  std::string name;
  std::string problem;
  std::string plan;
  friend bool operator==(const KeptPlan&, const KeptPlan&) = default;
};

enum class Region { kOther, kEu, kUs };
[[nodiscard]] std::string_view region_name(Region region);
[[nodiscard]] std::optional<Region> parse_region(std::string_view name);

// How the household means all-number dates such as 03/04/2027; kNone: such a date is refused and both readings are shown.
enum class DateOrder { kNone, kDmy, kMdy, kYmd };
inline constexpr DateOrder kAllDateOrders[] = {DateOrder::kNone, DateOrder::kDmy, DateOrder::kMdy, DateOrder::kYmd};
[[nodiscard]] std::string_view date_order_name(DateOrder order);  // "dmy"
[[nodiscard]] std::optional<DateOrder> parse_date_order(std::string_view name);

struct Settings {
  std::string name = "Our household";
  std::string time_zone;           // IANA name; empty = the system's
  Region region = Region::kOther;  // EU: use-by is a safety date for every food
  std::string currency = "EUR";    // shown behind amounts of money
  int margin_days = 0;
  int slack_days = 14;
  int donate_days = 30;
  int late_days = 7;
  HalfServings tolerance{8};  // a person and week
  HalfServings monotony{4};   // of one food, a person and week
  int variety_cap = 2;        // units of one food for one person in one kit
  Weekday week_starts = Weekday::kMonday;
  Weekday shopping_day = Weekday::kSaturday;
  DateOrder date_order = DateOrder::kNone;
  FeedSettings feed{};
  friend bool operator==(const Settings&, const Settings&) = default;
};

struct Household {
  std::string book_id;  // a UUID, made once; the name space of the feed's identities
  Settings settings;
  std::vector<OwnAllergen> own_allergens;
  std::vector<Person> people;
  std::vector<Food> foods;
  std::vector<Place> places;
  std::vector<ReviewRule> review_rules;
  std::vector<MenuLine> menu;
  std::vector<TableSeat> table;  // sorted by weekday, meal
  std::vector<TableException> exceptions;
  std::vector<Wish> wishes;  // sorted by id
  std::vector<Lot> lots;
  std::vector<Reading> readings;
  std::vector<Entry> entries;
  std::vector<ReviewEvent> review_events;
  std::vector<ReviewMark> review_marks;
  std::vector<Trial> trials;          // sorted by id
  std::vector<TrialNote> trial_notes;  // sorted by id
  std::vector<TrialEnd> trial_ends;    // sorted by trial
  std::vector<BuyNote> buy_notes;      // sorted by id
  std::vector<ImportMapping> mappings;  // sorted by name
  std::vector<ShownMeal> shown_meals;  // sorted by day, meal; also of the weeks before, see plan_shown.h
  std::vector<FeedStamp> feed;         // sorted by key, generation
  std::vector<KeptPlan> kept_plans;    // sorted by name
  std::vector<FeedAddress> feed_addresses;  // sorted by id
  std::vector<PushedItem> pushed;           // sorted by collection, uid
  std::vector<TaskDone> tasks_done;         // sorted by uid
  friend bool operator==(const Household&, const Household&) = default;
};

// Lookups; null when there is none. Cost O(log n); the lists must be sorted.
[[nodiscard]] const Person* find_person(const Household& household, const PersonKey& key);
[[nodiscard]] const Food* find_food(const Household& household, const FoodKey& key);
[[nodiscard]] const Place* find_place(const Household& household, const PlaceKey& key);
[[nodiscard]] const Lot* find_lot(const Household& household, LotId id);
// The kit above (or at) a place; empty when it is not in a kit.
[[nodiscard]] PlaceKey kit_of(const Household& household, const PlaceKey& place);
// Is `place` inside `outer`, or the same?
[[nodiscard]] bool is_within(const Household& household, const PlaceKey& place, const PlaceKey& outer);
// "Home kit > Box 1 > Mira's bag"
[[nodiscard]] std::string place_path(const Household& household, const PlaceKey& place);
// Places of a kind that are in use, in key order.
[[nodiscard]] std::vector<PlaceKey> places_of_kind(const Household& household, PlaceKind kind);

}  // namespace larderloop
