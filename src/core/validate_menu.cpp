// Kit menus and the household's week.
#include <set>

#include "core/validate_parts.h"

namespace larderloop {
namespace {

bool asks_for(Findings& findings, const MenuLine& line, Role role, FoodKind kind) {
  if (line.role) return *line.role == role;
  const Food* food = findings.food(line.food);
  return food != nullptr && food->kind == kind;
}

void check_people(Findings& findings, const std::string& where, const MenuLine& line, bool thing) {
  std::set<PersonKey> named;
  for (const PersonKey& person : line.people) {
    findings.check_person(where + "/people", person);
    if (!named.insert(person).second) findings.add(where + "/people", person.str(), "named twice", "leave one out");
  }
  if (line.everyone && !line.people.empty()) {
    findings.add(where + "/people", line.people.front().str(), "the line is for everyone already", "leave one of the two out");
  }
  const bool nobody = !line.everyone && line.people.empty();
  if (thing && !nobody) findings.add(where + "/people", "", "a thing is for nobody in particular", "leave the people out");
  if (!thing && nobody) findings.add(where + "/people", "", "nobody is named", "name people, or write \"everyone\": true");
  const bool pet_meal = asks_for(findings, line, Role::kPetMeal, FoodKind::kPetFood);
  const bool water = asks_for(findings, line, Role::kWater, FoodKind::kWater);
  if (pet_meal && line.everyone) findings.add(where + "/everyone", "true", "everyone means people, not pets", "name the pets");
  for (const PersonKey& key : line.people) {
    const Person* person = findings.person(key);
    if (person == nullptr || water) continue;
    if (person->is_human() == pet_meal) {
      findings.add(where + "/people", key.str(), pet_meal ? "a pet meal is not for people" : "people's food is not for a pet",
                   pet_meal ? "name a pet" : "give the pet a line of role pet_meal");
      continue;
    }
    const Food* food = line.role ? nullptr : findings.food(line.food);
    if (pet_meal && food != nullptr && food->species != person->species) {
      findings.add(where + "/people", key.str(), "food for a " + food->species + " is not for a " + person->species,
                   "name a pet of that species, or other food");
    }
  }
}

}  // namespace

void validate_menu(Findings& findings) {
  std::int64_t last = 0;
  for (std::size_t index = 0; index < findings.household.menu.size(); ++index) {
    const MenuLine& line = findings.household.menu[index];
    const std::string where = at("menu", index);
    if (line.id.value() <= last) {
      findings.add(where + "/id", std::to_string(line.id.value()), "numbers have to grow from one to the next",
                   "write a number above " + std::to_string(last));
    }
    last = std::max(last, line.id.value());
    if (findings.place(line.place) == nullptr) findings.check_place(where + "/place", line.place);
    else if (findings.kit_above(line.place) == nullptr) findings.add(where + "/place", line.place.str(), "not in a kit", "name a bag, box or kit");
    if (line.role.has_value() == !line.food.empty()) {
      findings.add(where, "", "a menu line names a role or a food, one of the two", "add or leave out one");
      continue;
    }
    if (!line.food.empty()) {
      const Food* food = findings.food(line.food);
      if (food == nullptr) findings.check_food(where + "/food", line.food);
      else if (food->needs_hot_water) {
        findings.add(where + "/food", line.food.str(), "it helps only if hot water turns up, so it never counts as part of the menu",
                     "leave the line out; it can lie in the bag all the same");
      }
    }
    const bool thing = asks_for(findings, line, Role::kThing, FoodKind::kThing);
    const bool water = asks_for(findings, line, Role::kWater, FoodKind::kWater);
    check_people(findings, where, line, thing);
    if (thing && (line.day != 0 || line.meal)) {
      findings.add(where + (line.day != 0 ? "/day" : "/meal"),
                   line.day != 0 ? std::to_string(line.day) : std::string(meal_name(*line.meal)), "a thing is for no day and no meal",
                   "leave day and meal out");
    }
    if (water != (line.ml > 0)) {
      findings.add(where + "/ml", std::to_string(line.ml), water ? "water is wanted in ml" : "only water is wanted in ml",
                   water ? "write how many ml" : "write units instead");
    }
    if (line.ml < 0 || line.ml > 1'000'000) findings.add(where + "/ml", std::to_string(line.ml), "out of range", "at most 1000000");
    if (line.units < 1 || line.units > 1000) findings.add(where + "/units", std::to_string(line.units), "out of range", "from 1 to 1000");
    if (line.day < 0 || line.day > 31) findings.add(where + "/day", std::to_string(line.day), "out of range", "0 for any day, or from 1");
    if (line.priority < 0 || line.priority > 100) {
      findings.add(where + "/priority", std::to_string(line.priority), "out of range", "from 1 to 100, or leave it out");
    }
  }
}

void validate_table(Findings& findings) {
  std::set<std::pair<Weekday, Meal>> seen;
  const auto check_human = [&](const std::string& where, const PersonKey& key) {
    const Person* person = findings.person(key);
    if (person == nullptr) findings.check_person(where, key);
    else if (!person->is_human()) findings.add(where, key.str(), "pets do not sit at the table", "leave them out");
  };
  for (std::size_t index = 0; index < findings.household.table.size(); ++index) {
    const TableSeat& seat = findings.household.table[index];
    const std::string where = at("table", index);
    if (!seen.insert({seat.weekday, seat.meal}).second) {
      findings.add(where, std::string(weekday_name(seat.weekday)) + " " + std::string(meal_name(seat.meal)), "this meal is there twice",
                   "put all people on one line");
    }
    std::set<PersonKey> people;
    for (const PersonKey& person : seat.people) {
      check_human(where + "/people", person);
      if (!people.insert(person).second) findings.add(where + "/people", person.str(), "named twice", "leave one out");
    }
  }
  for (std::size_t index = 0; index < findings.household.exceptions.size(); ++index) {
    const TableException& exception = findings.household.exceptions[index];
    const std::string where = at("exceptions", index);
    if (exception.through < exception.from) {
      findings.add(where + "/through", iso_day(exception.through), "ends before it begins", "write a day from " + iso_day(exception.from));
    }
    if (!exception.nobody && exception.away.empty() && exception.guests.empty()) {
      findings.add(where, "", "the exception changes nothing", "name who is away or a guest, or write \"nobody\": true");
    }
    if (exception.nobody && !exception.guests.empty()) {
      findings.add(where + "/guests", exception.guests.front().str(), "nobody eats at home, so no guest does", "leave one of the two out");
    }
    std::set<PersonKey> away;
    for (const PersonKey& person : exception.away) {
      check_human(where + "/away", person);
      if (!away.insert(person).second) findings.add(where + "/away", person.str(), "named twice", "leave one out");
    }
    for (const PersonKey& person : exception.guests) {
      check_human(where + "/guests", person);
      if (!away.insert(person).second) findings.add(where + "/guests", person.str(), "named twice", "leave one out");
    }
  }
}

}  // namespace larderloop
