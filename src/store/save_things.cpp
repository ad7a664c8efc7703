// Foods, people, places, kit menus and the household's week.
#include "store/names.h"
#include "store/save.h"

namespace larderloop::store {
namespace {

constexpr const char* kSaveFood =
    "INSERT INTO food (key, name, kind, species, gtin, unit, servings, mass_g, volume_ml, "
    "energy_kcal, label, no_cook,"
    "  needs_hot_water, needs_water_ml, needs_opener, infant_formula, home_canned, self_filled, "
    "staple,"
    "  storage_months_short, storage_months_long, opened_days, storage_source, rotate, par_level, "
    "note, sodium_mg, needs_spoon, refrigerate, choking_risk, honey, "
    "is_opener, is_cutlery, retired) "
    "VALUES (:key, :name, :kind, :species, :gtin, :unit, :servings, :mass_g, :volume_ml, "
    ":energy_kcal, :label, :no_cook,"
    "  :needs_hot_water, :needs_water_ml, :needs_opener, :infant_formula, :home_canned, "
    ":self_filled, :staple,"
    "  :storage_months_short, :storage_months_long, :opened_days, :storage_source, :rotate, "
    ":par_level, :note, :sodium_mg, :needs_spoon, :refrigerate, :choking_risk, :honey, "
    ":is_opener, :is_cutlery, :retired) "
    "ON CONFLICT (key) DO UPDATE SET name = excluded.name, kind = excluded.kind, species = "
    "excluded.species,"
    "  gtin = excluded.gtin, unit = excluded.unit, servings = excluded.servings, mass_g = "
    "excluded.mass_g,"
    "  volume_ml = excluded.volume_ml, energy_kcal = excluded.energy_kcal, label = excluded.label,"
    "  no_cook = excluded.no_cook, needs_hot_water = excluded.needs_hot_water,"
    "  needs_water_ml = excluded.needs_water_ml, needs_opener = excluded.needs_opener,"
    "  infant_formula = excluded.infant_formula, home_canned = excluded.home_canned,"
    "  self_filled = excluded.self_filled, staple = excluded.staple,"
    "  storage_months_short = excluded.storage_months_short, storage_months_long = "
    "excluded.storage_months_long,"
    "  opened_days = excluded.opened_days, storage_source = excluded.storage_source, rotate = "
    "excluded.rotate,"
    "  par_level = excluded.par_level, note = excluded.note, sodium_mg = excluded.sodium_mg,"
    "  needs_spoon = excluded.needs_spoon, refrigerate = excluded.refrigerate,"
    "  choking_risk = excluded.choking_risk, honey = excluded.honey,"
    "  is_opener = excluded.is_opener, is_cutlery = excluded.is_cutlery,"
    "  retired = excluded.retired";
constexpr const char* kLabelOfFood = "SELECT label FROM food WHERE key = :key";
constexpr const char* kDropFoodMeals = "DELETE FROM food_meal WHERE food = :key";
constexpr const char* kDropFoodRoles = "DELETE FROM food_role WHERE food = :key";
constexpr const char* kDropPacks = "DELETE FROM pack WHERE food = :key";
constexpr const char* kInsertFoodMeal = "INSERT INTO food_meal (food, meal) VALUES (:key, :meal)";
constexpr const char* kInsertFoodRole = "INSERT INTO food_role (food, role) VALUES (:key, :role)";
constexpr const char* kInsertPack =
    "INSERT INTO pack (food, number, shop, units, price_cents) VALUES (:key, :number, :shop, "
    ":units, :price_cents)";

constexpr const char* kSavePerson =
    "INSERT INTO person (key, name, species, born, appetite_half_servings, "
    "tolerance_half_servings, energy_kcal, note, sex, height_cm, mass_g, activity, retired) "
    "VALUES (:key, :name, :species, :born, :appetite, :tolerance, :energy_kcal, :note,"
    "  :sex, :height_cm, :mass_g, :activity, :retired) "
    "ON CONFLICT (key) DO UPDATE SET name = excluded.name, species = excluded.species, born = "
    "excluded.born,"
    "  appetite_half_servings = excluded.appetite_half_servings,"
    "  tolerance_half_servings = excluded.tolerance_half_servings, energy_kcal = "
    "excluded.energy_kcal,"
    "  note = excluded.note, sex = excluded.sex, height_cm = excluded.height_cm,"
    "  mass_g = excluded.mass_g, activity = excluded.activity,"
    "  retired = excluded.retired";
constexpr const char* kDropAvoids = "DELETE FROM person_avoid WHERE person = :key";
constexpr const char* kDropPersonDiets = "DELETE FROM person_diet WHERE person = :key";
constexpr const char* kDropRatings = "DELETE FROM rating WHERE person = :key";
constexpr const char* kInsertAvoid =
    "INSERT INTO person_avoid (person, allergen, accept_may_contain) VALUES (:key, :allergen, "
    ":accept_may_contain)";
constexpr const char* kInsertPersonDiet =
    "INSERT INTO person_diet (person, diet) VALUES (:key, :diet)";
constexpr const char* kInsertRating =
    "INSERT INTO rating (person, food, rating) VALUES (:key, :food, :rating)";

constexpr const char* kSavePlace =
    "INSERT INTO place (key, name, kind, parent, mass_limit_g, volume_limit_ml, hot, note, retired) "
    "VALUES (:key, :name, :kind, :parent, :mass_limit_g, :volume_limit_ml, :hot, :note, :retired) "
    "ON CONFLICT (key) DO UPDATE SET name = excluded.name, kind = excluded.kind, parent = "
    "excluded.parent,"
    "  mass_limit_g = excluded.mass_limit_g, volume_limit_ml = excluded.volume_limit_ml, hot = "
    "excluded.hot,"
    "  note = excluded.note, retired = excluded.retired";
constexpr const char* kSaveReviewRule =
    "INSERT INTO review_rule (kit, rule, starts, slack_days) VALUES (:kit, :rule, :starts, "
    ":slack_days) "
    "ON CONFLICT (kit) DO UPDATE SET rule = excluded.rule, starts = excluded.starts, slack_days = "
    "excluded.slack_days";
constexpr const char* kSaveMenuLine =
    "INSERT INTO menu_line (id, place, everyone, day, meal, role, food, units, ml, priority) "
    "VALUES (:id, :place, :everyone, :day, :meal, :role, :food, :units, :ml, :priority) "
    "ON CONFLICT (id) DO UPDATE SET place = excluded.place, everyone = excluded.everyone, day = "
    "excluded.day,"
    "  meal = excluded.meal, role = excluded.role, food = excluded.food, units = excluded.units, "
    "ml = excluded.ml,"
    "  priority = excluded.priority";
constexpr const char* kDropMenuPeople = "DELETE FROM menu_line_person WHERE menu_line = :id";
constexpr const char* kInsertMenuPerson =
    "INSERT INTO menu_line_person (menu_line, person) VALUES (:id, :person)";

constexpr const char* kDropMenuLine = "DELETE FROM menu_line WHERE id = :id";
constexpr const char* kDropReviewRule = "DELETE FROM review_rule WHERE kit = :kit";
constexpr const char* kDropSeats = "DELETE FROM table_seat_person; DELETE FROM table_seat";
constexpr const char* kDropExceptions =
    "DELETE FROM table_exception_guest; DELETE FROM table_exception_person; "
    "DELETE FROM table_exception_meal; DELETE FROM table_exception";
constexpr const char* kInsertExceptionGuest =
    "INSERT INTO table_exception_guest (exception, person) VALUES (:id, :person)";
constexpr const char* kInsertSeat =
    "INSERT INTO table_seat (weekday, meal) VALUES (:weekday, :meal)";
constexpr const char* kInsertSeatPerson =
    "INSERT INTO table_seat_person (weekday, meal, person) VALUES (:weekday, :meal, :person)";
constexpr const char* kInsertException =
    "INSERT INTO table_exception (id, from_day, through_day, nobody, note) VALUES (:id, :from, "
    ":through, :nobody, :note)";
constexpr const char* kInsertExceptionMeal =
    "INSERT INTO table_exception_meal (exception, meal) VALUES (:id, :meal)";
constexpr const char* kInsertExceptionPerson =
    "INSERT INTO table_exception_person (exception, person) VALUES (:id, :person)";

void set_food(Query& save, const Food& food) {
  save.set(":key", food.key)
      .set(":name", food.name)
      .set(":kind", food_kind_name(food.kind))
      .set(":species", food.species)
      .set(":gtin", food.gtin)
      .set(":unit", food.unit)
      .set(":servings", food.servings)
      .set(":mass_g", food.mass_g)
      .set(":volume_ml", food.volume_ml)
      .set(":energy_kcal", food.energy_kcal)
      .set(":no_cook", food.no_cook)
      .set(":needs_hot_water", food.needs_hot_water)
      .set(":needs_water_ml", food.needs_water_ml)
      .set(":needs_opener", food.needs_opener)
      .set(":infant_formula", food.infant_formula)
      .set(":home_canned", food.home_canned)
      .set(":sodium_mg", food.sodium_mg)
      .set(":needs_spoon", food.needs_spoon)
      .set(":refrigerate", food.refrigerate)
      .set(":choking_risk", food.choking_risk)
      .set(":honey", food.honey)
      .set(":is_opener", food.is_opener)
      .set(":is_cutlery", food.is_cutlery)
      .set(":self_filled", food.self_filled)
      .set(":staple", food.staple)
      .set(":storage_months_short", food.storage.months_short)
      .set(":storage_months_long", food.storage.months_long)
      .set(":opened_days", food.storage.opened_days)
      .set(":storage_source", food.storage.source)
      .set(":rotate", rotate_word(food.rotate))
      .set(":par_level", food.par_level)
      .set(":note", food.note)
      .set(":retired", food.retired);
}

}  // namespace

void save_foods(const Connection& connection, const std::vector<Food>& foods) {
  LabelWriter labels(connection);
  Query label_of(connection, kLabelOfFood);
  Query save(connection, kSaveFood);
  Query drop_meals(connection, kDropFoodMeals);
  Query drop_roles(connection, kDropFoodRoles);
  Query drop_packs(connection, kDropPacks);
  Query meal(connection, kInsertFoodMeal);
  Query role(connection, kInsertFoodRole);
  Query pack(connection, kInsertPack);
  for (const Food& food : foods) {
    std::optional<std::int64_t> old_label;
    label_of.set(":key", food.key);
    if (label_of.step()) old_label = label_of.maybe_integer(0);
    label_of.run();
    set_food(save, food);
    save.set(":label", labels.add(food.label)).run();
    if (old_label) labels.remove(*old_label);
    drop_meals.set(":key", food.key).run();
    drop_roles.set(":key", food.key).run();
    drop_packs.set(":key", food.key).run();
    for (const Meal each : food.meals)
      meal.set(":key", food.key).set(":meal", meal_name(each)).run();
    for (const Role each : food.roles)
      role.set(":key", food.key).set(":role", role_name(each)).run();
    std::int64_t number = 0;
    for (const Pack& each : food.packs) {
      pack.set(":key", food.key)
          .set(":number", ++number)
          .set(":shop", each.shop)
          .set(":units", each.units)
          .set(":price_cents", each.price_cents)
          .run();
    }
  }
}

void save_people(const Connection& connection, const std::vector<Person>& people) {
  Query save(connection, kSavePerson);
  Query drop_avoids(connection, kDropAvoids);
  Query drop_diets(connection, kDropPersonDiets);
  Query drop_ratings(connection, kDropRatings);
  Query avoid(connection, kInsertAvoid);
  Query diet(connection, kInsertPersonDiet);
  Query rating(connection, kInsertRating);
  for (const Person& person : people) {
    person.sex ? save.set(":sex", sex_name(*person.sex)) : save.set_null(":sex");
    person.activity ? save.set(":activity", activity_name(*person.activity))
                    : save.set_null(":activity");
    save.set(":key", person.key)
        .set(":name", person.name)
        .set(":species", person.species)
        .set(":born", person.born)
        .set(":appetite", person.appetite)
        .set(":tolerance", person.tolerance)
        .set(":energy_kcal", person.energy_kcal)
        .set(":height_cm", person.height_cm)
        .set(":mass_g", person.mass_g)
        .set(":note", person.note)
        .set(":retired", person.retired)
        .run();
    drop_avoids.set(":key", person.key).run();
    drop_diets.set(":key", person.key).run();
    drop_ratings.set(":key", person.key).run();
    for (const Avoid& each : person.avoid) {
      avoid.set(":key", person.key)
          .set(":allergen", each.key)
          .set(":accept_may_contain", each.accept_may_contain)
          .run();
    }
    for (const Diet each : person.diets)
      diet.set(":key", person.key).set(":diet", diet_name(each)).run();
    for (const auto& [food, value] : person.ratings) {
      rating.set(":key", person.key).set(":food", food).set(":rating", value).run();
    }
  }
}

void save_places(const Connection& connection, const std::vector<Place>& places) {
  Query save(connection, kSavePlace);
  for (const Place& place : places) {
    save.set(":key", place.key)
        .set(":name", place.name)
        .set(":kind", place_kind_name(place.kind))
        .set(":parent", place.parent)
        .set(":mass_limit_g", place.mass_limit_g)
        .set(":volume_limit_ml", place.volume_limit_ml)
        .set(":hot", place.hot)
        .set(":note", place.note)
        .set(":retired", place.retired)
        .run();
  }
}

void save_review_rules(const Connection& connection, const std::vector<ReviewRule>& rules) {
  Query save(connection, kSaveReviewRule);
  for (const ReviewRule& rule : rules) {
    save.set(":kit", rule.kit)
        .set(":rule", rule.rule)
        .set(":starts", rule.starts)
        .set(":slack_days", rule.slack_days)
        .run();
  }
}

void save_menu(const Connection& connection, const std::vector<MenuLine>& menu) {
  Query save(connection, kSaveMenuLine);
  Query drop_people(connection, kDropMenuPeople);
  Query person(connection, kInsertMenuPerson);
  for (const MenuLine& line : menu) {
    save.set(":id", line.id)
        .set(":place", line.place)
        .set(":everyone", line.everyone)
        .set(":day", line.day)
        .set(":units", line.units)
        .set(":ml", line.ml)
        .set(":priority", line.priority)
        .set(":food", line.food);
    line.meal ? save.set(":meal", meal_name(*line.meal)) : save.set_null(":meal");
    line.role ? save.set(":role", role_name(*line.role)) : save.set_null(":role");
    save.run();
    drop_people.set(":id", line.id).run();
    for (const PersonKey& each : line.people) person.set(":id", line.id).set(":person", each).run();
  }
}

void drop_menu(const Connection& connection, const std::vector<MenuLineId>& ids) {
  Query drop_people(connection, kDropMenuPeople);
  Query drop(connection, kDropMenuLine);
  for (const MenuLineId id : ids) {
    drop_people.set(":id", id).run();
    drop.set(":id", id).run();
  }
}

void drop_review_rules(const Connection& connection, const std::vector<PlaceKey>& kits) {
  Query drop(connection, kDropReviewRule);
  for (const PlaceKey& kit : kits) drop.set(":kit", kit).run();
}

void insert_table(const Connection& connection, const Household& household) {
  insert_seats(connection, household.table);
  insert_exceptions(connection, household.exceptions);
}

void replace_seats(const Connection& connection, const std::vector<TableSeat>& table) {
  connection.run(kDropSeats);
  insert_seats(connection, table);
}

void replace_exceptions(const Connection& connection, const std::vector<TableException>& exceptions) {
  connection.run(kDropExceptions);
  insert_exceptions(connection, exceptions);
}

void insert_seats(const Connection& connection, const std::vector<TableSeat>& table) {
  Query insert_seat(connection, kInsertSeat);
  Query seat_person(connection, kInsertSeatPerson);
  for (const TableSeat& seat : table) {
    insert_seat.set(":weekday", weekday_word(seat.weekday))
        .set(":meal", meal_name(seat.meal))
        .run();
    for (const PersonKey& person : seat.people) {
      seat_person.set(":weekday", weekday_word(seat.weekday))
          .set(":meal", meal_name(seat.meal))
          .set(":person", person)
          .run();
    }
  }
}

void insert_exceptions(const Connection& connection, const std::vector<TableException>& exceptions) {
  Query insert_exception(connection, kInsertException);
  Query exception_meal(connection, kInsertExceptionMeal);
  Query exception_person(connection, kInsertExceptionPerson);
  Query exception_guest(connection, kInsertExceptionGuest);
  std::int64_t number = 0;
  for (const TableException& exception : exceptions) {
    ++number;
    insert_exception.set(":id", number)
        .set(":from", exception.from)
        .set(":through", exception.through)
        .set(":nobody", exception.nobody)
        .set(":note", exception.note)
        .run();
    for (const Meal meal : exception.meals)
      exception_meal.set(":id", number).set(":meal", meal_name(meal)).run();
    for (const PersonKey& person : exception.away)
      exception_person.set(":id", number).set(":person", person).run();
    for (const PersonKey& person : exception.guests)
      exception_guest.set(":id", number).set(":person", person).run();
  }
}

}  // namespace larderloop::store
