#include "app/plain_names.h"

#include "larderloop/core/words.h"

namespace larderloop {

std::string first_name(const Household& household, const PersonKey& key) {
  const Person* person = find_person(household, key);
  if (person == nullptr) return key.str();
  return person->name.substr(0, person->name.find(' '));
}

std::string first_names(const Household& household, const std::vector<PersonKey>& people) {
  std::vector<std::string> names;
  for (const PersonKey& person : people) names.push_back(first_name(household, person));
  return list_words(names);
}

std::string food_words(const Household& household, const FoodKey& key) {
  const Food* food = find_food(household, key);
  return food == nullptr ? key.str() : food->name;
}

std::string place_words(const Household& household, const PlaceKey& key) {
  const Place* place = find_place(household, key);
  return place == nullptr ? key.str() : place->name;
}

std::string meal_words(Meal meal) {
  std::string name(meal_name(meal));
  name.front() = static_cast<char>(name.front() - 'a' + 'A');
  return name;
}

}  // namespace larderloop
