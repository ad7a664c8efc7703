#include "household_gen.h"

#include "household_gen_foods.h"
#include "household_gen_parts.h"
#include "larderloop/core/validate.h"

#include <algorithm>
#include <string>
#include <utility>

namespace larderloop {
namespace {

using made::Cast;
using made::Chance;
using made::kFirst;
using made::kLast;
using made::kToday;
using made::made_day;
using made::settle;

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
    made::make_record(home_, cast_, chance_, size_);
    sort_lists(home_);
    wishes();
    trials();
    shopping();
    feeds();
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
    if (chance_.percent(30)) settings.date_order = kAllDateOrders[chance_.between(0, 3)];
    if (chance_.percent(20)) settings.variety_cap = chance_.between(1, 4);
    if (chance_.percent(20)) settings.tolerance = HalfServings(chance_.between(2, 20));
    if (chance_.percent(60))
      home_.own_allergens.push_back({std::string(kOwnKey), chance_.day(kFirst, kLast)});
    if (chance_.percent(60)) cast_.pet_species = chance_.percent(50) ? "cat" : "dog";
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
    if (eaten && chance_.percent(60)) food.sodium_mg = seed.kcal * 2;
    if (eaten && chance_.percent(4)) food.refrigerate = true;
    if (eaten && chance_.percent(8)) food.choking_risk = true;
    if (eaten && chance_.percent(5)) food.honey = true;
    for (const std::string& trait : words_of(seed.traits)) {
      if (trait == "hot") {
        food.needs_hot_water = true;
        food.no_cook = false;
      }
      if (trait == "opener") food.needs_opener = true;
      if (trait == "opens") food.is_opener = true;
      if (trait == "formula") food.infant_formula = true;
      if (trait == "filled") food.self_filled = true;
      if (trait == "home") food.home_canned = true;
      if (trait == "staple") food.staple = true;
      if (food.kind == FoodKind::kPetFood) food.species = trait;
    }
    for (const std::string& name : words_of(seed.roles)) food.roles.insert(*parse_role(name));
    if (eaten) food.needs_spoon = food.roles.count(Role::kMain) > 0 && chance_.percent(70);
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
      if (chance_.percent(60)) person.sex = chance_.percent(50) ? Sex::kFemale : Sex::kMale;
      if (chance_.percent(60)) person.height_cm = chance_.between(70, 195);
      if (chance_.percent(60)) person.mass_g = chance_.between(80, 950) * 100;
      if (chance_.percent(40)) person.activity = kAllActivities[chance_.between(0, 3)];
      if (chance_.percent(40))
        person.born = chance_.day(made_day(1950, 1, 1), made_day(2026, 6, 1));
      cast_.humans.push_back(person.key);
      home_.people.push_back(std::move(person));
    }
    if (cast_.pet_species.empty()) return;
    Person pet;
    pet.name = "Minka";
    pet.key = PersonKey("minka");
    pet.species = cast_.pet_species;
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
    return place.key;
  }

  void places() {
    const PlaceKey home = place("Home kit", PlaceKind::kKit);
    const PlaceKey box = place("Blue crate", PlaceKind::kBox, home);
    for (const PersonKey& person : cast_.humans)
      cast_.bags.push_back({place(person.str() + " bag", PlaceKind::kBag, box), person});
    cast_.shared.push_back(place("Shared sack", PlaceKind::kBag, home));
    const PlaceKey car = place("Car kit", PlaceKind::kKit);
    home_.places.back().hot = true;
    cast_.shared.push_back(place("Boot bag", PlaceKind::kBag, car));
    const PlaceKey pantry = place("Pantry", PlaceKind::kPantry);
    cast_.shelves.push_back(place("Top shelf", PlaceKind::kShelf, pantry));
    cast_.shelves.push_back(place("Low shelf", PlaceKind::kShelf, pantry));
    cast_.shelves.push_back(pantry);
    cast_.kits = {home, car};
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
      const bool for_whom = food.kind != FoodKind::kPetFood || food.species == cast_.pet_species;
      if (food.roles.count(role) > 0 && !food.needs_hot_water && !food.infant_formula && for_whom)
        fitting.push_back(food.key);
    }
    if (!fitting.empty() && chance_.percent(20))
      line.food = chance_.one_of(fitting);
    else
      line.role = role;
  }

  void menu() {
    for (const auto& [bag, person] : cast_.bags) {
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
    for (const PlaceKey& bag : cast_.shared) {
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
    if (!cast_.pet_species.empty()) {
      MenuLine& pet = line(cast_.shared.front(), 1, std::nullopt);
      pet.people = {PersonKey("minka")};
      wants(pet, Role::kPetMeal);
    }
    for (const Food& food : home_.foods) {
      if (!food.infant_formula || !chance_.percent(70)) continue;
      MenuLine& formula = line(cast_.shared.front(), 0, std::nullopt);
      formula.people = {cast_.humans.front()};
      formula.food = food.key;
    }
  }

  std::vector<PersonKey> some_humans() {
    std::vector<PersonKey> some;
    for (const PersonKey& person : cast_.humans) {
      if (chance_.percent(70)) some.push_back(person);
    }
    if (some.empty()) some.push_back(cast_.humans.front());
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
      if (!exception.nobody) exception.away = {chance_.one_of(cast_.humans)};
      if (!exception.nobody && chance_.percent(30)) {
        const PersonKey guest = chance_.one_of(cast_.humans);
        if (guest != exception.away.front()) exception.guests = {guest};
      }
      home_.exceptions.push_back(std::move(exception));
    }
  }

  // Weekends lived from a kit, finished or not.
  void trials() {
    std::vector<FoodKey> foods;
    for (const Food& food : home_.foods) {
      if (food.kind != FoodKind::kWater) foods.push_back(food.key);
    }
    for (int count = chance_.between(0, 2), number = 1; number <= count; ++number) {
      Trial trial;
      trial.id = TrialId(number * 2);
      trial.kit = chance_.one_of(cast_.kits);
      trial.from = chance_.day(kFirst, kToday);
      trial.through = trial.from + Days(chance_.between(0, 2));
      if (chance_.percent(50)) trial.people = some_humans();
      std::sort(trial.people.begin(), trial.people.end());
      for (int notes = chance_.between(0, 6); notes > 0; --notes) {
        TrialNote note;
        note.id = TrialNoteId(static_cast<std::int64_t>(home_.trial_notes.size()) + 1);
        note.trial = trial.id;
        note.food = chance_.one_of(foods);
        note.person = chance_.one_of(home_.people).key;
        note.verdict = kAllVerdicts[chance_.between(0, 5)];
        note.on = trial.through;
        home_.trial_notes.push_back(note);
      }
      if (chance_.percent(60)) home_.trial_ends.push_back({trial.id, trial.through, ""});
      home_.trials.push_back(std::move(trial));
    }
  }

  // What shopping found, and a spreadsheet's columns.
  void shopping() {
    for (int count = chance_.between(0, 3); count > 0; --count) {
      BuyNote note;
      note.id = BuyNoteId(static_cast<std::int64_t>(home_.buy_notes.size()) * 2 + 1);
      note.food = chance_.one_of(home_.foods).key;
      if (chance_.percent(60)) note.kit = chance_.one_of(cast_.kits);
      note.on = chance_.day(kFirst, kToday);
      if (chance_.percent(50)) {
        note.kind = BuyNoteKind::kBoughtInstead;
        note.instead = chance_.one_of(home_.foods).key;
      }
      home_.buy_notes.push_back(std::move(note));
    }
    if (chance_.percent(30))
      home_.mappings.push_back({"list", kAllSheetKinds[chance_.between(0, 3)], {{"Best before", "date"}}});
  }

  // What the family asks of the coming weeks, sensible or not.
  void wishes() {
    std::vector<FoodKey> foods;
    for (const Food& food : home_.foods) {
      if (food.kind != FoodKind::kWater && food.kind != FoodKind::kThing) foods.push_back(food.key);
    }
    for (int count = foods.empty() ? 0 : chance_.between(0, 6); count > 0; --count) {
      Wish wish;
      wish.id = WishId(static_cast<std::int64_t>(home_.wishes.size()) * 2 + 1);
      wish.kind = chance_.percent(60) ? WishKind::kWant : WishKind::kNot;
      const bool want = wish.kind == WishKind::kWant;
      const bool days = want || chance_.percent(50);
      if (!days || want || chance_.percent(70)) wish.food = chance_.one_of(foods);
      if (days) wish.from = chance_.day(kToday - Days(3), kToday + Days(20));
      if (days) wish.through = *wish.from + Days(want ? 0 : chance_.between(0, 9));
      if (want || chance_.percent(50)) wish.meal = kAllMeals[chance_.between(0, 3)];
      if (chance_.percent(50)) wish.person = chance_.one_of(home_.people).key;
      home_.wishes.push_back(wish);
    }
  }

  // The calendar: settings, addresses, what a server was sent.
  void feeds() {
    FeedSettings& feed = home_.settings.feed;
    if (chance_.percent(30)) feed.detail = FeedDetail::kPrivate;
    if (chance_.percent(20)) {
      feed.reviews = FeedReviews::kSeries;  // the same days by a rule that may stand in a series
      home_.review_rules[1].rule = "FREQ=YEARLY;BYMONTH=3,6,9,12;BYMONTHDAY=10";
    }
    for (const FeedKind kind : kAllFeedKinds) {
      if (feed.kinds.size() > 1 && chance_.percent(15)) feed.kinds.erase(kind);
      if (chance_.percent(25)) feed.alarm_days[kind] = chance_.between(1, 30);
    }
    for (int count = chance_.between(0, 3); count > 0; --count) {
      const auto made = static_cast<std::int64_t>(home_.feed_addresses.size());
      FeedAddress& address = home_.feed_addresses.emplace_back();
      address.id = FeedAddressId(made * 2 + 1);
      address.name = "Phone " + std::to_string(made);
      address.token_sha256 = std::string(64, "0123456789abcdef"[made]);
      if (chance_.percent(50)) address.person = chance_.one_of(home_.people).key;
      if (chance_.percent(50)) address.detail = FeedDetail::kPrivate;
      address.created_at = midnight(kToday);
      if (chance_.percent(30)) address.revoked_at = midnight(kToday + Days(1));
      home_.pushed.push_back({"https://cal.example/kit/", "item-" + std::to_string(made), "/kit/" + std::to_string(made) + ".ics",
                              chance_.percent(50) ? "\"1\"" : "", "BEGIN:VCALENDAR\r\n"});
      home_.tasks_done.push_back({"task-" + std::to_string(made), kToday, "Bought"});
    }
  }

  void reviews() {
    home_.review_rules.push_back(
        {cast_.kits[0], "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA", made_day(2026, 4, 4), std::nullopt});
    home_.review_rules.push_back({cast_.kits[1], "FREQ=MONTHLY;INTERVAL=3;BYMONTHDAY=10",
                                  made_day(2026, 3, 10), std::nullopt});
    if (chance_.percent(30)) home_.review_rules[0].slack_days = chance_.between(0, 60);
    if (!chance_.percent(50)) return;
    const Day slot = made_day(2026, 10, 3);
    home_.review_events.push_back(
        {ReviewEventId(1), cast_.kits[0], slot, ReviewEventKind::kStarted, slot, std::nullopt, ""});
    home_.review_events.push_back({ReviewEventId(2), cast_.kits[0], slot,
                                   ReviewEventKind::kFinished, slot + Days(1), std::nullopt, ""});
  }

  Chance chance_;
  int size_;
  Household home_;
  Cast cast_;
};

}  // namespace

Household generate_household(std::uint64_t seed, int size) {
  return Maker(seed, size).make();
}

}  // namespace larderloop
