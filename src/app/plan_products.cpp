#include <algorithm>

#include "app/plan_build.h"

namespace larderloop {

const std::string& Products::id_of(const Food& food, const Statement* label) {
  auto& known = by_food_[&food];
  for (const auto& [statement, id] : known) {
    const bool same = statement == nullptr || label == nullptr ? statement == label : *statement == *label;
    if (same) return id;
  }
  std::string id = food.key.str() + (label == nullptr ? "#unread" : "#" + std::to_string(known.size() + 1));
  products_[id] = {&food, label};
  known.emplace_back(label, std::move(id));
  return known.back().second;
}

const std::vector<std::pair<const Statement*, std::string>>& Products::of(const FoodKey& food) const {
  static const std::vector<std::pair<const Statement*, std::string>> none;
  const auto found = by_food_.find(find_food(*household_, food));
  return found == by_food_.end() ? none : found->second;
}

std::set<std::string> Products::tags_of(const std::string& id, const std::vector<const Person*>& eaters) const {
  std::set<std::string> tags;
  const Product& product = products_.at(id);
  for (const Person* person : eaters) {
    if (why_not(*household_, *person, *product.food, product.label, today_)) tags.insert("not-for:" + person->key.str());
  }
  return tags;
}

std::set<std::string> Products::avoid_of(const Person& person) const { return {"not-for:" + person.key.str()}; }

std::string padded(std::int64_t number) {
  constexpr std::size_t kWidth = 7;
  std::string text = std::to_string(number);
  return std::string(text.size() < kWidth ? kWidth - text.size() : 0, '0') + text;
}

std::int64_t day_number(Day day) { return day.time_since_epoch().count(); }
Day number_day(std::int64_t number) { return Day{Days{static_cast<int>(number)}}; }

plan::Eater make_eater(const Products& products, const Person& person) {
  plan::Eater eater;
  eater.id = person.key.str();
  eater.avoid = products.avoid_of(person);
  for (const auto& [food, rating] : person.ratings) {
    if (rating == 0) continue;
    for (const auto& [statement, id] : products.of(food)) eater.ratings[id] = rating;
  }
  eater.energy_target = person.energy_kcal.value_or(0);
  if (person.tolerance) eater.tolerance = person.tolerance->halves();
  return eater;
}

std::optional<Day> expected_day(const BookView& view, const Food& food, Day today) {
  if (const auto found = view.lives.find(food.key); found != view.lives.end()) {
    std::vector<int> lives = found->second;
    const auto middle = lives.begin() + static_cast<std::ptrdiff_t>((lives.size() - 1) / 2);
    std::nth_element(lives.begin(), middle, lives.end());
    return today + Days(*middle);
  }
  if (food.storage.months_short) return add_months(today, *food.storage.months_short);
  return std::nullopt;
}

}  // namespace larderloop
