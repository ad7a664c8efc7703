// Who is at the household's table, and which foods eat themselves down there.
#include <algorithm>

#include "app/plan_build.h"

namespace larderloop {

std::vector<PersonKey> at_table(const Household& household, Day day, Meal meal) {
  const std::pair<Weekday, Meal> wanted(weekday_of(day), meal);
  const auto seat = std::lower_bound(
      household.table.begin(), household.table.end(), wanted,
      [](const TableSeat& each, const auto& key) { return std::make_pair(each.weekday, each.meal) < key; });
  std::vector<PersonKey> people;
  if (seat != household.table.end() && std::make_pair(seat->weekday, seat->meal) == wanted) people = seat->people;
  for (const TableException& exception : household.exceptions) {
    if (day < exception.from || day > exception.through) continue;
    if (!exception.meals.empty() && exception.meals.count(meal) == 0) continue;
    if (exception.nobody) return {};
    for (const PersonKey& away : exception.away) {
      people.erase(std::remove(people.begin(), people.end(), away), people.end());
    }
    for (const PersonKey& guest : exception.guests) {
      if (std::find(people.begin(), people.end(), guest) == people.end()) people.push_back(guest);
    }
  }
  if (!std::is_sorted(people.begin(), people.end())) std::sort(people.begin(), people.end());  // guests
  return people;
}

bool is_usual_day(const Household& household, Day day) {
  return std::none_of(household.exceptions.begin(), household.exceptions.end(),
                      [&](const TableException& each) { return each.from <= day && day <= each.through; });
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
