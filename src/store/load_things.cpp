// Foods, people, places, kit menus and the household's week.
#include "store/load.h"
#include "store/names.h"

#include <algorithm>
#include <tuple>

namespace larderloop::store {
namespace {

constexpr const char* kFoods =
    "SELECT key, name, kind, species, gtin, unit, servings, mass_g, volume_ml, energy_kcal, label, "
    "no_cook,"
    "  needs_hot_water, needs_water_ml, needs_opener, infant_formula, home_canned, self_filled, "
    "staple,"
    "  storage_months_short, storage_months_long, opened_days, storage_source, rotate, par_level, "
    "note, sodium_mg, needs_spoon, refrigerate, choking_risk, honey, is_opener, "
    "is_cutlery, retired "
    "FROM food ORDER BY key";
constexpr const char* kFoodMeals = "SELECT food, meal FROM food_meal ORDER BY food";
constexpr const char* kFoodRoles = "SELECT food, role FROM food_role ORDER BY food";
constexpr const char* kPacks =
    "SELECT food, shop, units, price_cents FROM pack ORDER BY food, number";
constexpr const char* kPeople =
    "SELECT key, name, species, born, appetite_half_servings, tolerance_half_servings, "
    "energy_kcal, note, sex, height_cm, mass_g, activity, retired "
    "FROM person ORDER BY key";
constexpr const char* kAvoids =
    "SELECT person, allergen, accept_may_contain FROM person_avoid ORDER BY person, allergen";
constexpr const char* kPersonDiets = "SELECT person, diet FROM person_diet ORDER BY person";
constexpr const char* kRatings = "SELECT person, food, rating FROM rating ORDER BY person";
constexpr const char* kPlaces =
    "SELECT key, name, kind, parent, mass_limit_g, volume_limit_ml, hot, note, retired FROM place ORDER BY "
    "key";
constexpr const char* kReviewRules =
    "SELECT kit, rule, starts, slack_days FROM review_rule ORDER BY kit";
constexpr const char* kMenuLines =
    "SELECT id, place, everyone, day, meal, role, food, units, ml, priority FROM menu_line ORDER "
    "BY id";
constexpr const char* kMenuPeople =
    "SELECT menu_line, person FROM menu_line_person ORDER BY menu_line, person";
constexpr const char* kSeats = "SELECT weekday, meal FROM table_seat";
constexpr const char* kSeatPeople =
    "SELECT weekday, meal, person FROM table_seat_person ORDER BY weekday, meal, person";
constexpr const char* kExceptions =
    "SELECT id, from_day, through_day, nobody, note FROM table_exception ORDER BY id";
constexpr const char* kExceptionMeals =
    "SELECT exception, meal FROM table_exception_meal ORDER BY exception";
constexpr const char* kExceptionPeople =
    "SELECT exception, person FROM table_exception_person ORDER BY exception, person";

constexpr const char* kExceptionGuests =
    "SELECT exception, person FROM table_exception_guest ORDER BY exception, person";

struct KeyOf {
  template <class Thing>
  const auto& operator()(const Thing& thing) const {
    return thing.key;
  }
};
struct IdOf {
  MenuLineId operator()(const MenuLine& line) const { return line.id; }
};

Food food_at(const Query& row, const Labels& labels) {
  Food food;
  food.key = row.key<FoodKey>(0);
  food.name = row.text(1);
  food.kind = row.named(2, parse_food_kind);
  food.species = row.text(3);
  food.gtin = row.text(4);
  food.unit = row.text(5);
  food.servings = row.integer(6);
  food.mass_g = row.maybe_integer(7);
  food.volume_ml = row.maybe_integer(8);
  food.energy_kcal = row.maybe_integer(9);
  food.label = labels.at(row, 10);
  food.no_cook = row.flag(11);
  food.needs_hot_water = row.flag(12);
  food.needs_water_ml = row.integer(13);
  food.needs_opener = row.flag(14);
  food.infant_formula = row.flag(15);
  food.home_canned = row.flag(16);
  food.self_filled = row.flag(17);
  food.staple = row.flag(18);
  food.storage.months_short = row.maybe_small(19);
  food.storage.months_long = row.maybe_small(20);
  food.storage.opened_days = row.small(21);
  food.storage.source = row.text(22);
  food.rotate = row.named(23, parse_rotate);
  food.par_level = row.maybe_integer(24);
  food.note = row.text(25);
  food.sodium_mg = row.maybe_integer(26);
  food.needs_spoon = row.flag(27);
  food.refrigerate = row.flag(28);
  food.choking_risk = row.flag(29);
  food.honey = row.flag(30);
  food.is_opener = row.flag(31);
  food.is_cutlery = row.flag(32);
  food.retired = row.maybe_day(33);
  return food;
}

// A number of an exception is its place in the list, from 1.
TableException& exception_at(Household& household, const Query& row, const char* table) {
  const std::int64_t number = row.integer(0);
  if (number < 1 || number > static_cast<std::int64_t>(household.exceptions.size()))
    no_owner(table);
  return household.exceptions[static_cast<std::size_t>(number - 1)];
}

}  // namespace

void load_foods(const Connection& connection, const Labels& labels, Household& household) {
  Query foods(connection, kFoods);
  while (foods.step()) household.foods.push_back(food_at(foods, labels));
  std::size_t cursor = 0;
  Query meals(connection, kFoodMeals);
  while (meals.step()) {
    owner_of(household.foods, cursor, meals.key<FoodKey>(0), KeyOf{}, "food_meal")
        .meals.insert(meals.named(1, parse_meal));
  }
  cursor = 0;
  Query roles(connection, kFoodRoles);
  while (roles.step()) {
    owner_of(household.foods, cursor, roles.key<FoodKey>(0), KeyOf{}, "food_role")
        .roles.insert(roles.named(1, parse_role));
  }
  cursor = 0;
  Query packs(connection, kPacks);
  while (packs.step()) {
    owner_of(household.foods, cursor, packs.key<FoodKey>(0), KeyOf{}, "pack")
        .packs.push_back({packs.text(1), packs.integer(2), packs.integer(3)});
  }
}

void load_people(const Connection& connection, Household& household) {
  Query people(connection, kPeople);
  while (people.step()) {
    Person person;
    person.key = people.key<PersonKey>(0);
    person.name = people.text(1);
    person.species = people.text(2);
    person.born = people.maybe_day(3);
    person.appetite = people.amount(4);
    if (!people.is_null(5)) person.tolerance = people.amount(5);
    person.energy_kcal = people.maybe_integer(6);
    person.note = people.text(7);
    person.sex = people.maybe_named(8, parse_sex);
    person.height_cm = people.maybe_integer(9);
    person.mass_g = people.maybe_integer(10);
    person.activity = people.maybe_named(11, parse_activity);
    person.retired = people.maybe_day(12);
    household.people.push_back(std::move(person));
  }
  std::size_t cursor = 0;
  Query avoids(connection, kAvoids);
  while (avoids.step()) {
    owner_of(household.people, cursor, avoids.key<PersonKey>(0), KeyOf{}, "person_avoid")
        .avoid.push_back({avoids.text(1), avoids.flag(2)});
  }
  cursor = 0;
  Query diets(connection, kPersonDiets);
  while (diets.step()) {
    owner_of(household.people, cursor, diets.key<PersonKey>(0), KeyOf{}, "person_diet")
        .diets.insert(diets.named(1, parse_diet));
  }
  cursor = 0;
  Query ratings(connection, kRatings);
  while (ratings.step()) {
    owner_of(household.people, cursor, ratings.key<PersonKey>(0), KeyOf{}, "rating")
        .ratings.emplace(ratings.key<FoodKey>(1), ratings.small(2));
  }
}

void load_places(const Connection& connection, Household& household) {
  Query places(connection, kPlaces);
  while (places.step()) {
    Place place;
    place.key = places.key<PlaceKey>(0);
    place.name = places.text(1);
    place.kind = places.named(2, parse_place_kind);
    place.parent = places.key<PlaceKey>(3);
    place.mass_limit_g = places.maybe_integer(4);
    place.volume_limit_ml = places.maybe_integer(5);
    place.hot = places.flag(6);
    place.note = places.text(7);
    place.retired = places.maybe_day(8);
    household.places.push_back(std::move(place));
  }
  Query rules(connection, kReviewRules);
  while (rules.step()) {
    household.review_rules.push_back(
        {rules.key<PlaceKey>(0), rules.text(1), rules.day(2), rules.maybe_small(3)});
  }
  Query lines(connection, kMenuLines);
  while (lines.step()) {
    MenuLine line;
    line.id = lines.id<MenuLineId>(0);
    line.place = lines.key<PlaceKey>(1);
    line.everyone = lines.flag(2);
    line.day = lines.small(3);
    line.meal = lines.maybe_named(4, parse_meal);
    line.role = lines.maybe_named(5, parse_role);
    line.food = lines.key<FoodKey>(6);
    line.units = lines.integer(7);
    line.ml = lines.integer(8);
    line.priority = lines.small(9);
    household.menu.push_back(std::move(line));
  }
  std::size_t cursor = 0;
  Query people(connection, kMenuPeople);
  while (people.step()) {
    owner_of(household.menu, cursor, people.id<MenuLineId>(0), IdOf{}, "menu_line_person")
        .people.push_back(people.key<PersonKey>(1));
  }
}

void load_table(const Connection& connection, Household& household) {
  Query seats(connection, kSeats);
  while (seats.step()) {
    TableSeat seat;
    seat.weekday = seats.named(0, parse_weekday_word);
    seat.meal = seats.named(1, parse_meal);
    household.table.push_back(std::move(seat));
  }
  std::sort(household.table.begin(), household.table.end(),
            [](const TableSeat& a, const TableSeat& b) {
              return std::tie(a.weekday, a.meal) < std::tie(b.weekday, b.meal);
            });
  Query seated(connection, kSeatPeople);
  while (seated.step()) {
    const Weekday weekday = seated.named(0, parse_weekday_word);
    const Meal meal = seated.named(1, parse_meal);
    const auto seat = std::find_if(
        household.table.begin(), household.table.end(),
        [&](const TableSeat& each) { return each.weekday == weekday && each.meal == meal; });
    if (seat == household.table.end()) no_owner("table_seat_person");
    seat->people.push_back(seated.key<PersonKey>(2));
  }
  Query exceptions(connection, kExceptions);
  while (exceptions.step()) {
    TableException exception;
    exception.from = exceptions.day(1);
    exception.through = exceptions.day(2);
    exception.nobody = exceptions.flag(3);
    exception.note = exceptions.text(4);
    household.exceptions.push_back(std::move(exception));
    if (exceptions.integer(0) != static_cast<std::int64_t>(household.exceptions.size()))
      no_owner("table_exception");
  }
  Query meals(connection, kExceptionMeals);
  while (meals.step())
    exception_at(household, meals, "table_exception_meal").meals.insert(meals.named(1, parse_meal));
  Query people(connection, kExceptionPeople);
  while (people.step()) {
    exception_at(household, people, "table_exception_person")
        .away.push_back(people.key<PersonKey>(1));
  }
  Query guests(connection, kExceptionGuests);
  while (guests.step()) {
    exception_at(household, guests, "table_exception_guest")
        .guests.push_back(guests.key<PersonKey>(1));
  }
}

}  // namespace larderloop::store
