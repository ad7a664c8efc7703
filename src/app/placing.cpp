#include "larderloop/app/placing.h"

#include <algorithm>
#include <set>
#include <string>

namespace larderloop {

std::vector<PersonKey> eaters_at(const Household& household, const PlaceKey& place) {
  std::set<PersonKey> people;
  for (const MenuLine& line : household.menu) {
    if (line.place != place) continue;
    for (const PersonKey& person : eaters_of(household, line)) people.insert(person);
  }
  if (people.empty() && !kit_of(household, place).empty()) {
    for (const Person& person : household.people) {
      if (person.is_human() && !person.retired) people.insert(person.key);
    }
  }
  return {people.begin(), people.end()};
}

std::vector<PersonRefusal> refusals_at(const Household& household, const Food& food,
                                       const Statement* label, const PlaceKey& place, Day today) {
  if (food.kind == FoodKind::kWater || food.kind == FoodKind::kThing) return {};
  const std::vector<PersonKey> eaters = eaters_at(household, place);
  std::vector<PersonRefusal> found = refusals(household, eaters, food, label, today);
  const auto of_species = [](const PersonRefusal& each) {
    return each.reason.refusal == Refusal::kWrongSpecies;
  };
  const auto others =
      static_cast<std::size_t>(std::count_if(found.begin(), found.end(), of_species));
  if (others < eaters.size())
    found.erase(std::remove_if(found.begin(), found.end(), of_species), found.end());
  return found;
}

std::string must_not_words(const Household& household, const std::vector<PersonRefusal>& refusals) {
  std::string words;
  for (const PersonRefusal& each : refusals) {
    const Person* person = find_person(household, each.person);
    words += (words.empty() ? "" : "; ") + (person == nullptr ? each.person.str() : person->name) +
             " must not have it: " + refusal_words(each.reason);
  }
  return words;
}

Status may_put(const Household& household, const LotFacts& facts, const PlaceKey& place,
               Day today) {
  const Food* food = find_food(household, facts.food);
  const Place* to = find_place(household, place);
  const std::string lot = std::to_string(facts.id.value());
  const bool fresh = facts.id.empty();  // it has no number yet
  const std::string subject = "'" + food->name + "' must not go to '" + to->name + "': ";
  if (!kit_of(household, place).empty()) {
    if (facts.state != LotState::kOk) {
      return fail(ErrorKind::kBadData,
                  subject + (fresh ? "this lot" : "lot " + lot) + " is " +
                      std::string(lot_state_name(facts.state)),
                  fresh
                      ? "keep it apart, outside every kit, until that is settled"
                      : "keep it apart until that is settled: larderloop lot state " + lot + " ok");
    }
    if (facts.safety && facts.good_through && *facts.good_through < today) {
      return fail(
          ErrorKind::kBadData, subject + "its safety date was " + plain_day(*facts.good_through),
          fresh ? "throw it out" : "throw it out: larderloop record thrown-out " + lot + " all");
    }
  }
  const std::vector<PersonRefusal> found =
      refusals_at(household, *food, facts.label ? &*facts.label : nullptr, place, today);
  if (found.empty()) return {};
  const bool unread = std::any_of(found.begin(), found.end(), [](const PersonRefusal& each) {
    return each.reason.refusal == Refusal::kLabelUnknown;
  });
  std::string hint = "put it where only others eat from: larderloop place list";
  if (unread) {
    hint = facts.id.empty() ? "read the label and say so: --label-read-by NAME with --contains, "
                              "--may-contain and --suits"
                            : "read the label and say so: larderloop lot label " + lot +
                                  " --read-by NAME (--same, or --contains ...)";
  }
  return fail(ErrorKind::kBadData, subject + must_not_words(household, found), hint);
}

}  // namespace larderloop
