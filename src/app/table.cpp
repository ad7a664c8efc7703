// Who is at the household's table, and which foods eat themselves down there.
#include <algorithm>

#include "app/plan_build.h"

namespace larderloop {

std::vector<PersonKey> at_table(const Household& household, Day day, Meal meal) {
  std::vector<PersonKey> people;
  const Weekday weekday = weekday_of(day);
  for (const TableSeat& seat : household.table) {
    if (seat.weekday == weekday && seat.meal == meal) people = seat.people;
  }
  for (const TableException& exception : household.exceptions) {
    if (day < exception.from || day > exception.through) continue;
    if (!exception.meals.empty() && exception.meals.count(meal) == 0) continue;
    if (exception.nobody) return {};
    for (const PersonKey& away : exception.away) {
      people.erase(std::remove(people.begin(), people.end(), away), people.end());
    }
  }
  return people;
}

bool rotates(const Household& household, const Food& food) {
  switch (food.rotate) {
    case Rotate::kYes:
      return true;
    case Rotate::kNo:
      return false;
    case Rotate::kAuto:
      break;
  }
  if (food.needs_hot_water || !food.no_cook) return false;
  for (const MenuLine& line : household.menu) {
    if (line.food == food.key) return true;
    if (line.role && food.roles.count(*line.role) > 0) return true;
  }
  return false;
}

}  // namespace larderloop
