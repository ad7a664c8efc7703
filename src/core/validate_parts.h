// validate_parts.h - what the validators share: the household by key, and where findings go.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "larderloop/core/validate.h"

namespace larderloop {

class Findings {
 public:
  explicit Findings(const Household& household);
  void add(std::string where, std::string value, std::string what, std::string remedy = {});
  // A reference to nothing, with the nearest known name.
  void unknown(std::string where, const std::string& value, const std::string& kind, const std::vector<std::string>& known);

  [[nodiscard]] const Person* person(const PersonKey& key) const { return find(people_, key); }
  [[nodiscard]] const Food* food(const FoodKey& key) const { return find(foods_, key); }
  [[nodiscard]] const Place* place(const PlaceKey& key) const { return find(places_, key); }
  [[nodiscard]] const Lot* lot(LotId id) const { return find(lots_, id); }
  void check_person(const std::string& where, const PersonKey& key);
  void check_food(const std::string& where, const FoodKey& key);
  void check_place(const std::string& where, const PlaceKey& key);
  void check_allergen(const std::string& where, const std::string& key);
  void check_statement(const std::string& where, const Statement& statement);
  void check_mark(const std::string& where, const DateMark& mark);
  // The kit above a place; null when there is none.
  [[nodiscard]] const Place* kit_above(const PlaceKey& key) const;

  const Household& household;
  std::vector<Problem> problems;

 private:
  template <class Map, class Key>
  static typename Map::mapped_type find(const Map& map, const Key& key) {
    const auto found = map.find(key);
    return found == map.end() ? nullptr : found->second;
  }
  std::map<PersonKey, const Person*> people_;
  std::map<FoodKey, const Food*> foods_;
  std::map<PlaceKey, const Place*> places_;
  std::map<LotId, const Lot*> lots_;
};

[[nodiscard]] std::string at(const std::string& list, std::size_t index);  // "/lots/3"

void validate_settings(Findings& findings);
void validate_people(Findings& findings);
void validate_foods(Findings& findings);
void validate_places(Findings& findings);
void validate_lots(Findings& findings);
void validate_record(Findings& findings);
void validate_menu(Findings& findings);
void validate_table(Findings& findings);
void validate_wishes(Findings& findings);
void validate_reviews(Findings& findings);
void validate_trials(Findings& findings);
void validate_shopping(Findings& findings);
void validate_retired(Findings& findings);
void validate_shown(Findings& findings);
void validate_feed(Findings& findings);

}  // namespace larderloop
