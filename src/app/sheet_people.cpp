// Rows of people: known by key or by name. What they must not have is never taken away by an empty cell, and never taken for nothing.
#include <algorithm>
#include <unordered_map>

#include "app/sheet_cells_of.h"
#include "app/sheet_work.h"
#include "larderloop/app/find.h"
#include "larderloop/app/things.h"

namespace larderloop {
namespace {

constexpr std::int64_t kAny = 1'000'000'000;  // ranges are the validator's

bool avoids(const Person& person, const std::string& key) {
  return std::any_of(person.avoid.begin(), person.avoid.end(), [&](const Avoid& each) { return each.key == key; });
}

// What they must not have and the diets they keep, as far as it differs: whole sentences.
std::vector<std::string> care_words(const Person& before, const Person& after) {
  std::vector<std::string> all;
  for (const Avoid& each : before.avoid) {
    if (!avoids(after, each.key)) all.push_back(after.name + " avoids " + allergen_words(each.key) + " no longer");
  }
  for (const Avoid& each : after.avoid) {
    if (!avoids(before, each.key)) {
      all.push_back(after.name + " avoids " + allergen_words(each.key) + " from now on" + (each.accept_may_contain ? ", and accepts 'may contain'" : ""));
      continue;
    }
    const auto old = std::find_if(before.avoid.begin(), before.avoid.end(), [&](const Avoid& one) { return one.key == each.key; });
    if (old->accept_may_contain == each.accept_may_contain) continue;
    all.push_back(after.name + (each.accept_may_contain ? " accepts" : " refuses") + " 'may contain' of " + allergen_words(each.key) + " from now on");
  }
  for (const Diet each : before.diets) {
    if (after.diets.count(each) == 0) all.push_back(after.name + " keeps the diet " + std::string(diet_name(each)) + " no longer");
  }
  for (const Diet each : after.diets) {
    if (before.diets.count(each) == 0) all.push_back(after.name + " keeps the diet " + std::string(diet_name(each)) + " from now on");
  }
  return all;
}

class PersonRows {
 public:
  explicit PersonRows(SheetWork& work) : work_(work), after_(work.household) {}

  void row() {
    const std::string key = lowered_cell(work_.cell(Col::kKey));
    const Person* known = key.empty() ? nullptr : find_person(work_.household, PersonKey(key));
    if (key.empty() && work_.says(Col::kName)) {
      if (auto named = named_person(work_.household, work_.cell(Col::kName))) known = *named;
      else if (named.error().kind == ErrorKind::kBadData) {
        work_.fault(Col::kName, named.error().what, named.error().next_step);
        return;
      }
    }
    Person person = known != nullptr ? *known : Person{};
    if (known == nullptr) person.key = PersonKey(key);
    apply(person);
    std::vector<std::string> own;
    avoid(known, person, own);
    if (person.name.empty()) work_.fault(Col::kName, "a person needs a name", "write what people call them");
    if (work_.row_is_sound()) keep(known, std::move(person), own);
  }

  void finish() {
    CameFrom from{"people", {}};
    for (const Person& each : after_.people) {
      const auto line = lines_.find(each.key.str());
      from.lines.push_back(line == lines_.end() ? 0 : line->second);
    }
    find_inconsistencies(work_, from);
  }

 private:
  void apply(Person& person) {
    work_.text(Col::kName, person.name);
    if (work_.says(Col::kSpecies)) person.species = lowered_cell(work_.cell(Col::kSpecies)) == kHuman ? std::string(kHuman) : std::string(work_.cell(Col::kSpecies));
    work_.day(Col::kBorn, person.born);
    work_.words(Col::kDiets, kAllDiets, diet_name, person.diets);
    if (work_.says(Col::kAppetite)) {
      if (const auto read = work_.value(Col::kAppetite, cell_servings(work_.cell(Col::kAppetite), work_.delimiter()))) person.appetite = *read;
    }
    if (says_none(work_.cell(Col::kTolerance))) person.tolerance.reset();
    else if (work_.says(Col::kTolerance)) {
      if (const auto read = work_.value(Col::kTolerance, cell_servings(work_.cell(Col::kTolerance), work_.delimiter()))) person.tolerance = *read;
    }
    work_.whole(Col::kEnergy, 0, kAny, person.energy_kcal);
    choose(Col::kSex, kAllSexes, sex_name, person.sex);
    work_.whole(Col::kHeight, 0, kAny, person.height_cm);
    work_.amount(Col::kBodyMass, "kg", person.mass_g);
    choose(Col::kActivity, kAllActivities, activity_name, person.activity);
    ratings(person);
    work_.text(Col::kNote, person.note);
    work_.day(Col::kRetired, person.retired);
  }

  template <class Value, class Names, class NameOf>
  void choose(Col col, const Names& names, NameOf name_of, std::optional<Value>& into) {
    if (says_none(work_.cell(col))) {
      into.reset();
      return;
    }
    if (!work_.says(col)) return;
    if (const auto read = work_.value(col, cell_word<Value>(work_.cell(col), names, name_of))) into = *read;
  }

  void ratings(Person& person) {
    if (!work_.says(Col::kRatings)) return;
    std::map<FoodKey, int> all;
    for (const std::string& each : cell_list(work_.cell(Col::kRatings))) {
      const std::size_t colon = each.rfind(':');
      const std::string number = colon == std::string::npos ? "" : std::string(trimmed_cell(std::string_view(each).substr(colon + 1)));
      const bool minus = !number.empty() && number.front() == '-';
      const auto value = cell_whole(std::string_view(number).substr(minus ? 1 : 0), work_.delimiter(), 0, 2);
      if (!value) {
        work_.fault(Col::kRatings, "cannot read '" + each + "' as a rating", "write a food and a number from -2 to 2, as lentil-stew:2");
        continue;
      }
      auto food = named_food(work_.household, trimmed_cell(std::string_view(each).substr(0, colon)));
      if (!food) work_.fault(Col::kRatings, food.error().what, food.error().next_step);
      else if (*value != 0) all[(*food)->key] = static_cast<int>(minus ? -*value : *value);
    }
    person.ratings = std::move(all);
  }

  // Each of the three cells replaces its own part, and only when it says something.
  void avoid(const Person* known, Person& person, std::vector<std::string>& own) {
    const bool said = work_.says(Col::kAvoid);
    const bool accepting_said = work_.says(Col::kAvoidAccepting);
    const bool own_said = work_.says(Col::kAvoidOwn);
    if (known == nullptr && !said && !accepting_said && !own_said) {
      work_.fault(Col::kAvoid, "nothing says what a new person must not have: an empty cell is unknown", "write the allergens, or none");
      return;
    }
    std::vector<Avoid> all;
    for (const Avoid& each : person.avoid) {
      const bool replaced = each.accept_may_contain ? accepting_said : is_known_allergen(each.key) ? said : own_said;
      if (!replaced) all.push_back(each);
    }
    const auto add = [&](const std::string& key, bool accepts, Col col) {
      const auto same = std::find_if(all.begin(), all.end(), [&](const Avoid& each) { return each.key == key; });
      if (same == all.end()) all.push_back({key, accepts});
      else if (same->accept_may_contain != accepts) work_.fault(col, "'" + key + "' is told in two columns", "leave it in one of avoid and avoid_accepting_may_contain; write none in a column that is empty then");
    };
    if (said) {
      for (const std::string& key : work_.allergens(Col::kAvoid)) add(key, false, Col::kAvoid);
    }
    if (accepting_said) {
      for (const std::string& key : work_.allergens(Col::kAvoidAccepting)) add(key, true, Col::kAvoidAccepting);
    }
    for (const std::string& each : cell_list(work_.cell(Col::kAvoidOwn))) {
      const std::string key = lowered_cell(each);
      own.push_back(key);
      add(key, false, Col::kAvoidOwn);
    }
    std::sort(all.begin(), all.end(), [](const Avoid& a, const Avoid& b) { return a.key < b.key; });
    person.avoid = std::move(all);
  }

  void keep(const Person* known, Person person, const std::vector<std::string>& own) {
    if (known != nullptr && person == *known) {
      if (first_of(known->key.str())) ++work_.report.known;
      return;
    }
    auto saved = known != nullptr ? change_person(after_, person, own, work_.when) : add_person(after_, person, own, work_.when);
    if (!saved) {
      work_.fault(work_.says(Col::kKey) ? Col::kKey : Col::kName, saved.error().what, saved.error().next_step);
      return;
    }
    const Person& kept = saved->report.person;
    if (!first_of(kept.key.str())) return;
    apply_changes(after_, saved->changes);
    work_.changes.people.push_back(kept);
    for (const OwnAllergen& each : saved->changes.own_allergens) {
      work_.changes.own_allergens.push_back(each);
      work_.report.notes.push_back("'" + each.key + "' is on no list: labels read before today count as unread for " + kept.name);
    }
    for (std::string& each : care_words(known != nullptr ? *known : Person{}, kept)) work_.report.first.push_back(std::move(each));
    for (const LotId lot : saved->report.now_wrong)
      work_.report.first.push_back("lot " + std::to_string(lot.value()) + " lies where " + kept.name + " eats and is not for " + kept.name);
    if (known != nullptr) {
      ++work_.report.changed;
      work_.news(work_.line(), RowDid::kChanged, kept.name + ": " + differences(SheetKind::kPeople, cells_of(*known), cells_of(kept)));
    } else {
      ++work_.report.added;
      work_.news(work_.line(), RowDid::kAdded, "person " + kept.name + " (" + kept.key.str() + ")");
    }
  }

  bool first_of(const std::string& key) {
    const auto [line, fresh] = lines_.emplace(key, work_.line());
    if (!fresh) work_.fault(work_.has(Col::kKey) ? Col::kKey : Col::kName, "the person '" + key + "' stands in line " + std::to_string(line->second) + " already", "leave one of the two rows out");
    return fresh;
  }

  SheetWork& work_;
  Household after_;
  std::unordered_map<std::string, std::size_t> lines_;
};

}  // namespace

void import_people(SheetWork& work, CsvReader& reader) {
  PersonRows rows(work);
  each_row(work, reader, work.report.columns.size(), [&] { rows.row(); });
  rows.finish();
}

}  // namespace larderloop
