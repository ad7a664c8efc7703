#include "render/plain.h"

#include <fmt/core.h>

#include <algorithm>

#include "larderloop/core/eligible.h"
#include "larderloop/core/words.h"

namespace larderloop::plain {

std::string food(const Household& household, const FoodKey& key) {
  const Food* found = find_food(household, key);
  return found == nullptr ? key.str() : found->name;
}

std::string place(const Household& household, const PlaceKey& key) {
  const Place* found = find_place(household, key);
  return found == nullptr ? key.str() : found->name;
}

std::string places(const Household& household, const std::vector<PlaceKey>& keys) {
  std::vector<std::string> names;
  for (const PlaceKey& key : keys) names.push_back(place(household, key));
  return list_words(names);
}

std::string people(const Household& household, const std::vector<PersonKey>& keys) {
  std::vector<std::string> names;
  for (const PersonKey& key : keys) {
    const Person* person = find_person(household, key);
    names.push_back(person == nullptr ? key.str() : person->name);
  }
  return list_words(names);
}

std::string lot(const StockKey& at) {
  std::string text = fmt::format("lot {}", at.lot.value());
  if (at.opened_on) text += ", opened " + plain_day(*at.opened_on);
  return text;
}

std::string good_through(const std::optional<Day>& day) {
  return day ? "good through " + plain_day(*day) : "no date known";
}

std::string litres(std::int64_t ml) {
  std::string text = fmt::format("{}.{:03}", ml / 1000, ml % 1000);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text + " l";
}

std::string reason(LeaveReason reason, const std::optional<Day>& good_through) {
  switch (reason) {
    case LeaveReason::kTooOld:
      return good_through ? "will not last" : "nobody knows how long it keeps";
    case LeaveReason::kPast:
      return "past its date";
    case LeaveReason::kRecalled:
      return "recalled: set aside, do not eat";
    case LeaveReason::kDoubtful:
      return "doubtful: set aside, do not eat";
    case LeaveReason::kDamaged:
      return "damaged: throw out";
    case LeaveReason::kMissing:
      return "missing";
  }
  return {};
}

std::string amount_of(const Household& household, const FoodKey& key, HalfServings amount) {
  const Food* found = find_food(household, key);
  return found == nullptr ? key.str() : units_words(*found, amount) + " " + found->name;
}

std::string menu_line(const Household& household, MenuLineId id) {
  const auto line = std::find_if(household.menu.begin(), household.menu.end(),
                                 [&](const MenuLine& each) { return each.id == id; });
  if (line == household.menu.end()) return {};
  std::string text;
  if (line->day > 0) text += fmt::format("day {}, ", line->day);
  if (line->meal) text += std::string(meal_name(*line->meal)) + ", ";
  std::string what = line->role ? std::string(role_name(*line->role)) : food(household, line->food);
  std::replace(what.begin(), what.end(), '_', ' ');
  text += what;
  if (line->everyone) return text + " for everyone";
  return line->people.empty() ? text : text + " for " + people(household, line->people);
}

void Section::line(const std::string& group, std::string text) {
  if (groups_.find(group) == groups_.end()) order_.push_back(group);
  groups_[group].push_back(std::move(text));
}

std::string Section::text() const {
  if (groups_.empty()) return {};
  std::string all = heading_ + "\n";
  const auto plain_lines = groups_.find(std::string());
  if (plain_lines != groups_.end()) {
    for (const std::string& each : plain_lines->second) all += "  " + each + "\n";
  }
  for (const std::string& group : order_) {
    all += "  " + group + "\n";
    for (const std::string& each : groups_.at(group)) all += "    " + each + "\n";
  }
  return all + "\n";
}

}  // namespace larderloop::plain
