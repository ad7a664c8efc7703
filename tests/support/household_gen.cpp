#include "household_gen.h"

#include "household_gen_foods.h"
#include "larderloop/core/stock.h"
#include "larderloop/core/validate.h"

#include <algorithm>
#include <random>
#include <string>
#include <utility>

namespace larderloop {
namespace {

Day made_day(int year, unsigned month, unsigned day) {
  return *resolve_day(year, month, day);
}

const Day kToday = made_day(2026, 11, 25);
const Day kFirst = made_day(2026, 4, 1);
const Day kLast = made_day(2026, 11, 20);
constexpr std::string_view kOwnKey = "kiwi";

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    words.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return words;
}

// Chance from whole numbers only; the slight bias of the remainder does not matter here.
class Chance {
 public:
  explicit Chance(std::uint64_t seed) : engine_(seed) {}
  int between(int low, int high) {  // both included
    return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
  }
  bool percent(int chance) { return between(0, 99) < chance; }
  template <class T>
  const T& one_of(const std::vector<T>& list) {
    return list[static_cast<std::size_t>(between(0, static_cast<int>(list.size()) - 1))];
  }
  template <class T>
  void shuffle(std::vector<T>& list) {
    for (std::size_t left = list.size(); left > 1; --left) {
      std::swap(list[left - 1],
                list[static_cast<std::size_t>(between(0, static_cast<int>(left) - 1))]);
    }
  }
  Day day(Day from, Day through) {
    return from + Days(between(0, std::max(0, days_between(from, through))));
  }

 private:
  std::mt19937_64 engine_;
};

class Maker {
 public:
  Maker(std::uint64_t seed, int size) : chance_(seed), size_(size) {}
  Household make() {
    settings();
    foods();
    people();
    places();
    menu();
    table();
    reviews();
    sort_lists(home_);
    lots();
    record();
    readings();
    shown();
    sort_lists(home_);
    return std::move(home_);
  }

 private:
  void settings() {
    std::string id = "00000000-0000-4000-8000-000000000000";
    for (std::size_t at = 24; at < id.size(); ++at)
      id[at] = "0123456789abcdef"[chance_.between(0, 15)];
    home_.book_id = id;
    Settings& settings = home_.settings;
    settings.name = "Generated household";
    settings.time_zone = "Europe/Berlin";
    settings.region = std::vector<Region>{
        Region::kOther, Region::kEu, Region::kUs}[static_cast<std::size_t>(chance_.between(0, 2))];
    if (chance_.percent(20)) settings.margin_days = chance_.between(1, 30);
    if (chance_.percent(20)) settings.variety_cap = chance_.between(1, 4);
    if (chance_.percent(20)) settings.tolerance = HalfServings(chance_.between(2, 20));
    if (chance_.percent(60))
      home_.own_allergens.push_back({std::string(kOwnKey), chance_.day(kFirst, kLast)});
    has_pet_ = chance_.percent(60);
    pet_species_ = chance_.percent(50) ? "cat" : "dog";
  }

  // Nobody claims a diet that the declared things rule out.
  void settle(Statement& statement) {
    for (const auto& [diet, key] : contradictions(statement)) statement.suits.erase(diet);
  }

  Statement statement_of(const made::FoodSeed& seed) {
    Statement statement;
    for (const std::string& key : words_of(seed.contains)) {
      if (key == kOwnKey && home_.own_allergens.empty()) continue;
      statement.declared[key] = Declared::kContains;
    }
    for (const std::string& name : words_of(seed.suits)) {
      if (chance_.percent(85)) statement.suits.insert(*parse_diet(name));
    }
    static const std::vector<std::string> kWarnings{
        "peanut", "tree_nut", "tree_nut:almond", "milk", "sesame", "wheat", "soy", "egg"};
    if (chance_.percent(35))
      statement.declared.emplace(chance_.one_of(kWarnings), Declared::kMayContain);
    statement.read_by = "Ada";
    statement.read_on = chance_.day(kFirst, kLast);
    settle(statement);
    return statement;
  }

  Food food_of(const made::FoodSeed& seed, std::size_t number) {
    Food food;
    food.name = std::string(seed.name);
    food.key = FoodKey(key_from_name(food.name, "food"));
    food.kind = seed.kind;
    food.unit = std::string(seed.unit);
    food.servings = seed.servings;
    const bool eaten = food.kind != FoodKind::kWater && food.kind != FoodKind::kThing;
    if (eaten && chance_.percent(30)) food.servings = chance_.between(1, 6);
    if (food.kind == FoodKind::kDrink || food.kind == FoodKind::kWater) food.volume_ml = seed.size;
    if (food.kind == FoodKind::kWater || chance_.percent(80)) food.mass_g = seed.size;
    if (eaten && chance_.percent(85)) food.energy_kcal = seed.kcal;
    for (const std::string& trait : words_of(seed.traits)) {
      if (trait == "hot") {
        food.needs_hot_water = true;
        food.no_cook = false;
      }
      if (trait == "opener") food.needs_opener = true;
      if (trait == "formula") food.infant_formula = true;
      if (trait == "filled") food.self_filled = true;
      if (trait == "home") food.home_canned = true;
      if (trait == "staple") food.staple = true;
      if (food.kind == FoodKind::kPetFood) food.species = trait;
    }
    for (const std::string& name : words_of(seed.roles)) food.roles.insert(*parse_role(name));
    for (const std::string& name : words_of(seed.meals)) food.meals.insert(*parse_meal(name));
    if (seed.months_short > 0) {
      food.storage = {seed.months_short, seed.months_long, seed.opened_days, "common practice"};
    } else {
      food.storage.opened_days = seed.opened_days;
    }
    if (eaten && chance_.percent(85)) food.label = statement_of(seed);
    const int packs = food.self_filled ? 0 : chance_.between(0, 2);
    for (int pack = 0; pack < packs; ++pack) {
      food.packs.push_back({pack == 0 ? "Corner shop" : "Market hall",
                            pack == 0 ? 1 : chance_.between(2, 6),
                            chance_.between(60, 900) * (pack + 1)});
    }
    if (chance_.percent(40)) {
      const std::string body = "9520000" + std::to_string(10000 + number);
      food.gtin = normal_gtin(body + gtin_check_digit(body));
    }
    if (eaten && chance_.percent(20)) food.par_level = chance_.between(1, 6);
    if (chance_.percent(20)) food.rotate = chance_.percent(50) ? Rotate::kYes : Rotate::kNo;
    return food;
  }

  void foods() {
    std::vector<std::size_t> chosen;
    std::vector<std::size_t> others;
    for (std::size_t index = 0; index < std::size(made::kFoodSeeds); ++index) {
      (index < made::kAlways ? chosen : others).push_back(index);
    }
    chance_.shuffle(others);
    const auto count = static_cast<std::size_t>(chance_.between(15, 40));
    others.resize(std::min(others.size(), count - made::kAlways));
    chosen.insert(chosen.end(), others.begin(), others.end());
    for (const std::size_t index : chosen)
      home_.foods.push_back(food_of(made::kFoodSeeds[index], index));
  }

  void people() {
    std::vector<std::string> names{"Ada", "Ben", "Cleo", "Dov", "Elif", "Femi", "Greta", "Hugo"};
    chance_.shuffle(names);
    const int count = chance_.between(2, 6);
    static const std::vector<std::string> kAvoided{"milk",
                                                   "egg",
                                                   "fish",
                                                   "crustacean",
                                                   "peanut",
                                                   "tree_nut",
                                                   "tree_nut:walnut",
                                                   "tree_nut:almond",
                                                   "soy",
                                                   "gluten",
                                                   "wheat",
                                                   "sesame",
                                                   "celery",
                                                   "mustard"};
    for (int number = 0; number < count; ++number) {
      Person person;
      person.name = names[static_cast<std::size_t>(number)];
      person.key = PersonKey(key_from_name(person.name, "person"));
      std::set<std::string> avoided;
      for (int avoid = chance_.percent(55) ? chance_.between(1, 3) : 0; avoid > 0; --avoid)
        avoided.insert(chance_.one_of(kAvoided));
      if (!home_.own_allergens.empty() && chance_.percent(25)) avoided.insert(std::string(kOwnKey));
      for (const std::string& key : avoided) person.avoid.push_back({key, chance_.percent(30)});
      if (chance_.percent(25)) person.diets.insert(kAllDiets[chance_.between(0, 5)]);
      for (const Food& food : home_.foods) {
        const int rating = chance_.percent(25) ? chance_.between(-2, 2) : 0;
        if (rating != 0) person.ratings[food.key] = rating;
      }
      if (chance_.percent(30)) person.appetite = HalfServings(chance_.percent(60) ? 1 : 3);
      if (chance_.percent(20)) person.tolerance = HalfServings(chance_.between(2, 14));
      if (chance_.percent(30)) person.energy_kcal = chance_.between(9, 24) * 100;
      if (chance_.percent(40))
        person.born = chance_.day(made_day(1950, 1, 1), made_day(2026, 6, 1));
      humans_.push_back(person.key);
      home_.people.push_back(std::move(person));
    }
    if (!has_pet_) return;
    Person pet;
    pet.name = "Minka";
    pet.key = PersonKey("minka");
    pet.species = pet_species_;
    home_.people.push_back(std::move(pet));
  }

  PlaceKey place(const std::string& name, PlaceKind kind, const PlaceKey& parent = {}) {
    Place place;
    place.name = name;
    place.key = PlaceKey(key_from_name(name, "place"));
    place.kind = kind;
    place.parent = parent;
    if (kind == PlaceKind::kBag && chance_.percent(40))
      place.mass_limit_g = chance_.between(20, 90) * 100;
    if (kind == PlaceKind::kBox && chance_.percent(20))
      place.volume_limit_ml = chance_.between(20, 60) * 1000;
    home_.places.push_back(place);
    all_places_.push_back(place.key);
    return place.key;
  }

  void places() {
    const PlaceKey home = place("Home kit", PlaceKind::kKit);
    const PlaceKey box = place("Blue crate", PlaceKind::kBox, home);
    for (const PersonKey& person : humans_)
      bags_.push_back({place(person.str() + " bag", PlaceKind::kBag, box), person});
    shared_.push_back(place("Shared sack", PlaceKind::kBag, home));
    const PlaceKey car = place("Car kit", PlaceKind::kKit);
    home_.places.back().hot = true;
    shared_.push_back(place("Boot bag", PlaceKind::kBag, car));
    const PlaceKey pantry = place("Pantry", PlaceKind::kPantry);
    shelves_.push_back(place("Top shelf", PlaceKind::kShelf, pantry));
    shelves_.push_back(place("Low shelf", PlaceKind::kShelf, pantry));
    shelves_.push_back(pantry);
    kits_ = {home, car};
  }

  MenuLine& line(const PlaceKey& place, int day, std::optional<Meal> meal) {
    MenuLine line;
    line.id = MenuLineId(static_cast<std::int64_t>(home_.menu.size()) + 1);
    line.place = place;
    line.day = day;
    line.meal = meal;
    if (chance_.percent(10)) line.priority = chance_.between(1, 20);
    home_.menu.push_back(std::move(line));
    return home_.menu.back();
  }

  // A role, or now and then a food of this household that has it.
  void wants(MenuLine& line, Role role) {
    std::vector<FoodKey> fitting;
    for (const Food& food : home_.foods) {
      const bool for_whom = food.kind != FoodKind::kPetFood || food.species == pet_species_;
      if (food.roles.count(role) > 0 && !food.needs_hot_water && !food.infant_formula && for_whom)
        fitting.push_back(food.key);
    }
    if (!fitting.empty() && chance_.percent(20))
      line.food = chance_.one_of(fitting);
    else
      line.role = role;
  }

  void menu() {
    for (const auto& [bag, person] : bags_) {
      for (int day = 1; day <= 3; ++day) {
        for (const auto& [meal, role] :
             {std::pair{Meal::kBreakfast, Role::kFruit}, std::pair{Meal::kLunch, Role::kSide},
              std::pair{Meal::kDinner, Role::kMain}, std::pair{Meal::kSnack, Role::kSnack}}) {
          if (!chance_.percent(60)) continue;
          MenuLine& asked = line(bag, day, meal);
          asked.people = {person};
          wants(asked, role);
        }
      }
    }
    for (const PlaceKey& bag : shared_) {
      for (int day = 1; day <= 3; ++day) {
        for (const Role role : {Role::kMain, Role::kSide, Role::kDrink, Role::kComfort}) {
          if (!chance_.percent(35)) continue;
          MenuLine& asked = line(bag, day, role == Role::kMain ? Meal::kDinner : Meal::kLunch);
          asked.everyone = chance_.percent(80);
          if (!asked.everyone) asked.people = some_humans();
          asked.units = chance_.between(1, 2);
          wants(asked, role);
        }
      }
      MenuLine& water = line(bag, 0, std::nullopt);
      water.everyone = true;
      water.role = Role::kWater;
      water.ml = chance_.between(2, 20) * 1000;
      MenuLine& thing = line(bag, 0, std::nullopt);
      wants(thing, Role::kThing);
    }
    if (has_pet_) {
      MenuLine& pet = line(shared_.front(), 1, std::nullopt);
      pet.people = {PersonKey("minka")};
      wants(pet, Role::kPetMeal);
    }
    for (const Food& food : home_.foods) {
      if (!food.infant_formula || !chance_.percent(70)) continue;
      MenuLine& formula = line(shared_.front(), 0, std::nullopt);
      formula.people = {humans_.front()};
      formula.food = food.key;
    }
  }

  std::vector<PersonKey> some_humans() {
    std::vector<PersonKey> some;
    for (const PersonKey& person : humans_) {
      if (chance_.percent(70)) some.push_back(person);
    }
    if (some.empty()) some.push_back(humans_.front());
    return some;
  }

  void table() {
    for (int weekday = 0; weekday < 7; ++weekday) {
      for (const Meal meal : kAllMeals) {
        if (chance_.percent(meal == Meal::kSnack ? 40 : 80))
          home_.table.push_back({static_cast<Weekday>(weekday), meal, some_humans()});
      }
    }
    for (int count = chance_.between(0, 2); count > 0; --count) {
      TableException exception;
      exception.from = chance_.day(kToday, kToday + Days(60));
      exception.through = exception.from + Days(chance_.between(0, 14));
      if (chance_.percent(30)) exception.meals = {Meal::kDinner};
      exception.nobody = chance_.percent(50);
      if (!exception.nobody) exception.away = {chance_.one_of(humans_)};
      home_.exceptions.push_back(std::move(exception));
    }
  }

  void reviews() {
    home_.review_rules.push_back(
        {kits_[0], "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA", made_day(2026, 4, 4), std::nullopt});
    home_.review_rules.push_back(
        {kits_[1], "FREQ=MONTHLY;INTERVAL=3;BYMONTHDAY=10", made_day(2026, 3, 10), std::nullopt});
    if (chance_.percent(30)) home_.review_rules[0].slack_days = chance_.between(0, 60);
    if (!chance_.percent(50)) return;
    const Day slot = made_day(2026, 10, 3);
    home_.review_events.push_back(
        {ReviewEventId(1), kits_[0], slot, ReviewEventKind::kStarted, slot, std::nullopt, ""});
    home_.review_events.push_back({ReviewEventId(2), kits_[0], slot, ReviewEventKind::kFinished,
                                   slot + Days(1), std::nullopt, ""});
  }

  DateMark mark_for(const Food& food, Day received) {
    DateMark mark;
    if (food.kind == FoodKind::kThing || food.self_filled || chance_.percent(8)) return mark;
    mark.kind = MarkKind::kBestBefore;
    if (food.infant_formula || chance_.percent(20))
      mark.kind = MarkKind::kUseBy;
    else if (chance_.percent(10))
      mark.kind = MarkKind::kSellBy;
    Day day = kToday + Days(chance_.between(-100, 900));
    if (!food.infant_formula && chance_.percent(10)) {
      mark.kind = chance_.percent(50) ? MarkKind::kPackedOn : MarkKind::kProducedOn;
      day = received - Days(chance_.between(0, 60));
    }
    const date::year_month_day ymd{day};
    const int year = year_of(day);
    const int precision = chance_.between(0, 9);
    if (precision >= 9) {
      mark.precision = Precision::kYear;
      day = *resolve_year(year);
      mark.text = std::to_string(year);
    } else if (precision >= 6) {
      mark.precision = Precision::kMonth;
      const auto month = static_cast<unsigned>(ymd.month());
      day = *resolve_month(year, month);
      mark.text = (month < 10 ? "0" : "") + std::to_string(month) + "/" + std::to_string(year);
    } else {
      mark.text = iso_day(day);
    }
    mark.day = day;
    return mark;
  }

  // Of this very package: as the food's, or with something more or less declared.
  std::optional<Statement> label_for(const Food& food, Day received) {
    const bool eaten = food.kind != FoodKind::kWater && food.kind != FoodKind::kThing;
    if (!eaten || chance_.percent(25)) return std::nullopt;
    Statement label = food.label.value_or(Statement{});
    label.read_by = humans_.front().str();
    label.read_on = chance_.day(received, kLast);
    if (chance_.percent(25)) {
      static const std::vector<std::string> kNew{"milk",    "peanut", "tree_nut", "tree_nut:walnut",
                                                 "soy",     "wheat",  "sesame",   "egg",
                                                 "fish:cod"};
      if (chance_.percent(70))
        label.declared[chance_.one_of(kNew)] =
            chance_.percent(60) ? Declared::kContains : Declared::kMayContain;
      else if (!label.declared.empty())
        label.declared.erase(label.declared.begin());
    }
    settle(label);
    return label;
  }

  LotState state() {
    return chance_.percent(90)   ? LotState::kOk
           : chance_.percent(50) ? LotState::kDoubtful
                                 : LotState::kRecalled;
  }

  void lots() {
    for (int number = 1; number <= size_; ++number) {
      const Food& food = chance_.one_of(home_.foods);
      Lot lot;
      lot.id = LotId(number);
      lot.food = food.key;
      lot.received = chance_.day(kFirst, kLast);
      lot.mark = mark_for(food, lot.received);
      lot.label = label_for(food, lot.received);
      lot.state = state();
      if (chance_.percent(50)) lot.lot_code = "L" + std::to_string(chance_.between(1000, 9999));
      home_.lots.push_back(std::move(lot));
    }
  }

  Entry& note(std::vector<Entry>& plan, EntryKind kind, Day on, const StockKey& at,
              HalfServings amount) {
    Entry entry;
    entry.kind = kind;
    entry.on = on;
    entry.written_at = midnight(on) + std::chrono::hours(chance_.between(6, 20));
    entry.at = at;
    entry.amount = amount;
    plan.push_back(std::move(entry));
    return plan.back();
  }

  PlaceKey kit_place() {
    const int which = chance_.between(0, static_cast<int>(bags_.size() + shared_.size()) - 1);
    const auto at = static_cast<std::size_t>(which);
    return at < bags_.size() ? bags_[at].first : shared_[at - bags_.size()];
  }

  // What happened to one lot, day after day, never more than there is.
  void life_of(const Lot& lot, std::vector<Entry>& plan) {
    const Food& food = *find_food(home_, lot.food);
    const std::int64_t unit = HalfServings::units(1, food.servings).halves();
    std::int64_t units = chance_.between(1, 6);
    StockKey at{lot.id, chance_.percent(70) ? chance_.one_of(shelves_) : kit_place(), std::nullopt};
    Day on = lot.received;
    Entry& first = note(plan, chance_.percent(90) ? EntryKind::kReceived : EntryKind::kFound, on,
                        at, HalfServings(units * unit));
    if (first.kind == EntryKind::kReceived && chance_.percent(50))
      first.paid_cents = chance_.between(50, 2000);
    if (chance_.percent(50)) {
      on = chance_.day(on, kLast);
      const PlaceKey to = kit_place();
      const std::int64_t moved = chance_.between(1, static_cast<int>(units));
      if (to != at.place) {
        note(plan, EntryKind::kMoved, on, at, HalfServings(moved * unit)).to = to;
        units = chance_.percent(50) ? moved : units - moved;
        if (units == moved) at.place = to;
        if (units == 0) return;
      }
    }
    if (food.kind != FoodKind::kThing && chance_.percent(25)) {
      on = chance_.day(on, kLast);
      note(plan, EntryKind::kOpened, on, at, HalfServings(unit));
      units -= 1;
      const StockKey opened{lot.id, at.place, on};
      if (chance_.percent(70)) {
        Entry& eaten = note(plan, EntryKind::kEaten, chance_.day(on, kLast), opened,
                            HalfServings(chance_.between(1, static_cast<int>(unit))));
        if (food.kind != FoodKind::kPetFood && food.kind != FoodKind::kWater)
          eaten.who = chance_.one_of(humans_);
        if (eaten.who) eaten.meal = kAllMeals[chance_.between(0, 3)];
      }
    }
    if (units > 0 && chance_.percent(25)) {
      static const std::vector<EntryKind> kGone{EntryKind::kEaten, EntryKind::kGivenAway,
                                                EntryKind::kThrownOut, EntryKind::kLost};
      note(plan, chance_.one_of(kGone), chance_.day(on, kLast), at,
           HalfServings(chance_.between(1, static_cast<int>(units)) * unit));
    }
  }

  void record() {
    std::vector<Entry> plan;
    for (const Lot& lot : home_.lots) life_of(lot, plan);
    std::stable_sort(plan.begin(), plan.end(),
                     [](const Entry& a, const Entry& b) { return a.on < b.on; });
    Ledger ledger(home_);
    const auto keep = [&](Entry entry) {
      entry.id = EntryId(static_cast<std::int64_t>(home_.entries.size()) + 1);
      if (ledger.apply(entry)) home_.entries.push_back(std::move(entry));
    };
    for (Entry& entry : plan) keep(std::move(entry));
    const std::vector<Entry> kept = home_.entries;
    for (const Entry& entry : kept) {
      if (entry.kind != EntryKind::kEaten || !chance_.percent(5)) continue;
      Entry undo;
      undo.kind = EntryKind::kCorrected;
      undo.on = kLast;
      undo.written_at = midnight(kLast) + std::chrono::hours(21);
      undo.corrects = entry.id;
      keep(std::move(undo));
    }
    if (ledger.stock().empty() || !chance_.percent(50)) return;
    Entry count;  // somebody counted one place and found one unit more
    count.kind = EntryKind::kCounted;
    count.on = kLast;
    count.written_at = midnight(kLast) + std::chrono::hours(22);
    const auto& [at, there] = *ledger.stock().begin();
    count.at = at;
    count.amount =
        there + HalfServings::units(1, find_food(home_, find_lot(home_, at.lot)->food)->servings);
    count.change = ledger.counted_change(count.at, count.amount);
    keep(std::move(count));
  }

  void readings() {
    for (const Lot& lot : home_.lots) {
      if (!chance_.percent(15)) continue;
      Reading reading;
      reading.id = ReadingId(static_cast<std::int64_t>(home_.readings.size()) + 1);
      reading.lot = lot.id;
      reading.on = chance_.day(lot.received, kLast);
      reading.by = humans_.front().str();
      const Food& food = *find_food(home_, lot.food);
      const int what = chance_.between(0, 2);
      if (what == 0) reading.mark = mark_for(food, lot.received);
      if (what == 1) reading.label = label_for(food, lot.received);
      if (what == 2 || (!reading.mark && !reading.label)) reading.state = state();
      home_.readings.push_back(std::move(reading));
    }
  }

  // A plan that was shown when nobody had looked closely: it may well name what somebody must not
  // have.
  void shown() {
    if (home_.lots.empty() || !chance_.percent(40)) return;
    for (int day = 0; day < 4; ++day) {
      ShownMeal meal;
      meal.day = kToday + Days(2 * day);
      meal.meal = Meal::kDinner;
      std::set<ShownServing> servings;
      for (int each = 0; each < 2; ++each) {
        servings.insert({{chance_.one_of(home_.lots).id, chance_.one_of(shelves_), std::nullopt},
                         chance_.one_of(humans_),
                         HalfServings(2)});
      }
      meal.servings.assign(servings.begin(), servings.end());
      home_.shown_meals.push_back(std::move(meal));
    }
  }

  Chance chance_;
  int size_;
  Household home_;
  bool has_pet_ = false;
  std::string pet_species_;
  std::vector<PersonKey> humans_;
  std::vector<std::pair<PlaceKey, PersonKey>> bags_;
  std::vector<PlaceKey> shared_;
  std::vector<PlaceKey> shelves_;
  std::vector<PlaceKey> all_places_;
  std::vector<PlaceKey> kits_;
};

}  // namespace

Household generate_household(std::uint64_t seed, int size) {
  return Maker(seed, size).make();
}

}  // namespace larderloop
