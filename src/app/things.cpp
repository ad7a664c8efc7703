#include "larderloop/app/things.h"

#include "larderloop/app/placing.h"
#include "larderloop/core/stock.h"
#include "larderloop/core/validate.h"

#include <set>
#include <algorithm>
#include <utility>

namespace larderloop {
namespace {

// The key of a new thing, made from its name when none was given.
template <class KeyType, class Find>
Result<KeyType> new_key(const KeyType& given, const std::string& name, const std::string& kind,
                        Find find) {
  if (name.empty())
    return fail(ErrorKind::kBadData, "a " + kind + " needs a name",
                "larderloop " + kind + " add NAME");
  const KeyType key = given.empty() ? KeyType(key_from_name(name, kind)) : given;
  if (!is_key(key.str())) {
    return fail(ErrorKind::kBadData, "'" + key.str() + "' is no key",
                "use a-z, 0-9 and single '-' between, at most 48, as 'lentil-pouch'");
  }
  if (find(key) != nullptr) {
    return fail(ErrorKind::kBadData, "there is a " + kind + " '" + key.str() + "' already",
                "name another key with --key, or change that one: larderloop " + kind + " change " +
                    key.str());
  }
  return key;
}

// Keys that no list and no household knows, and diets that the declared keys contradict.
Status check_words(const Household& household, const Statement& statement) {
  for (const auto& [key, declared] : statement.declared) {
    const bool own =
        std::any_of(household.own_allergens.begin(), household.own_allergens.end(),
                    [&, name = key](const OwnAllergen& each) { return each.key == name; });
    if (is_known_allergen(key) || own) continue;
    const std::string near = nearest(key, known_allergens());
    return fail(
        ErrorKind::kBadData, "no allergen is called '" + key + "'",
        near.empty() ? "the known keys: larderloop help food add" : "did you mean '" + near + "'?");
  }
  if (const auto wrong = contradictions(statement); !wrong.empty()) {
    return fail(ErrorKind::kBadData,
                "the label cannot support " + std::string(diet_name(wrong.front().first)) +
                    " and contain " + allergen_words(wrong.front().second),
                "read it again; leave out what is not on it");
  }
  return {};
}

// A label as read today.
Result<Statement> statement_of(const Household& household, const Food& food, const LabelRead& read,
                               Day today) {
  if (read.read_by.empty()) {
    return fail(ErrorKind::kBadData, "nobody is named who read the label",
                "say who read it: --read-by NAME");
  }
  Statement statement;
  if (read.same_as_food) {
    if (!food.label) {
      return fail(
          ErrorKind::kBadData,
          "no label of '" + food.name + "' was read before, so there is none to be the same as",
          "say what it says: --contains, --may-contain, --suits");
    }
    statement = *food.label;
  }
  for (const std::string& key : read.may_contain) statement.declared[key] = Declared::kMayContain;
  for (const std::string& key : read.contains) statement.declared[key] = Declared::kContains;
  if (!read.same_as_food) statement.suits = read.suits;
  statement.read_by = read.read_by;
  statement.read_on = today;
  if (Status right = check_words(household, statement); !right) return fail(right.error());
  return statement;
}

// Whom the words of a label concern. An unread label, a taste or another species is no news of a
// label.
std::vector<PersonRefusal> concerned(const Household& household, const Food& food,
                                     const Statement& label, Day today) {
  std::vector<PersonKey> everyone;
  for (const Person& person : household.people) {
    if (!person.retired) everyone.push_back(person.key);
  }
  std::vector<PersonRefusal> found = refusals(household, everyone, food, &label, today);
  found.erase(std::remove_if(found.begin(), found.end(),
                             [](const PersonRefusal& each) {
                               return each.reason.refusal != Refusal::kContains &&
                                      each.reason.refusal != Refusal::kMayContain &&
                                      each.reason.refusal != Refusal::kDiet;
                             }),
              found.end());
  return found;
}

LabelNews news_of(const Household& household, const Food& food, const Statement& label, Day today) {
  LabelNews news;
  news.label = label;
  news.differs =
      !food.label || food.label->declared != label.declared || food.label->suits != label.suits;
  news.must_not = concerned(household, food, label, today);
  return news;
}

// The food with this label as its last read one; nothing when a later one is known.
std::vector<Food> food_with(const Food& food, const Statement& label) {
  if (food.label && food.label->read_on > label.read_on) return {};
  Food changed = food;
  changed.label = label;
  return {changed};
}

Result<std::vector<std::string>> own_keys(const Household& household, Person& person,
                                          const std::vector<std::string>& own) {
  std::vector<std::string> fresh;
  for (const std::string& key : own) {
    if (is_known_allergen(key)) continue;
    const bool known = std::any_of(household.own_allergens.begin(), household.own_allergens.end(),
                                   [&](const OwnAllergen& each) { return each.key == key; });
    if (!known) fresh.push_back(key);
  }
  std::sort(person.avoid.begin(), person.avoid.end(),
            [](const Avoid& a, const Avoid& b) { return a.key < b.key; });
  for (std::size_t index = 0; index < person.avoid.size(); ++index) {
    const std::string& key = person.avoid[index].key;
    if (index > 0 && person.avoid[index - 1].key == key) {
      return fail(ErrorKind::kBadData, "'" + key + "' is named twice",
                  "name it once: with --avoid or with --avoid-accepting-may-contain");
    }
    const bool listed = is_known_allergen(key) ||
                        std::find(fresh.begin(), fresh.end(), key) != fresh.end() ||
                        std::any_of(household.own_allergens.begin(), household.own_allergens.end(),
                                    [&](const OwnAllergen& each) { return each.key == key; });
    if (listed) continue;
    const std::string near = nearest(key, known_allergens());
    return fail(ErrorKind::kBadData, "no allergen is called '" + key + "'",
                near.empty() ? "if no list knows it, name it with --avoid-own " + key
                             : "did you mean '" + near + "'? Otherwise: --avoid-own " + key);
  }
  return fresh;
}

Result<Outcome<PersonSaved>> saved(const Household& household, Person person,
                                   const std::vector<std::string>& own, Asked asked) {
  auto fresh = own_keys(household, person, own);
  if (!fresh) return fail(fresh.error());
  if (person.born && *person.born > asked.today) {
    return fail(ErrorKind::kBadData, "'" + iso_day(*person.born) + "' is still to come",
                "give the day of birth, or leave it away");
  }
  Outcome<PersonSaved> outcome;
  for (const std::string& key : *fresh) outcome.changes.own_allergens.push_back({key, asked.today});
  outcome.changes.people = {person};
  outcome.report.own_allergens = *fresh;
  outcome.report.person = person;
  Household after = household;
  apply_changes(after, outcome.changes);
  auto ledger = replay(after);
  if (!ledger) return fail(ledger.error());
  std::set<LotId> wrong;
  for (const auto& [at, amount] : ledger->stock()) {
    const Lot& lot = *find_lot(after, at.lot);
    const LotFacts facts = lot_facts(after, lot);
    const auto found = refusals_at(after, *find_food(after, lot.food),
                                   facts.label ? &*facts.label : nullptr, at.place, asked.today);
    if (std::any_of(found.begin(), found.end(),
                    [&](const PersonRefusal& each) { return each.person == person.key; }))
      wrong.insert(at.lot);
  }
  outcome.report.now_wrong.assign(wrong.begin(), wrong.end());
  return outcome;
}

Result<Outcome<FoodSaved>> saved(const Household& household, Food food, Day today) {
  if (food.label) {
    if (Status right = check_words(household, *food.label); !right) return fail(right.error());
  }
  Outcome<FoodSaved> outcome;
  if (food.label) outcome.report.must_not = concerned(household, food, *food.label, today);
  outcome.changes.foods = {food};
  outcome.report.food = std::move(food);
  return outcome;
}

}  // namespace

Result<Outcome<PersonSaved>> add_person(const Household& household, Person person,
                                        const std::vector<std::string>& own, Asked asked) {
  auto key = new_key(person.key, person.name, "person",
                     [&](const PersonKey& each) { return find_person(household, each); });
  if (!key) return fail(key.error());
  person.key = *key;
  return saved(household, std::move(person), own, asked);
}

Result<Outcome<PersonSaved>> change_person(const Household& household, Person person,
                                           const std::vector<std::string>& own, Asked asked) {
  return saved(household, std::move(person), own, asked);
}

Result<Outcome<FoodSaved>> add_food(const Household& household, Food food, Asked asked) {
  auto key = new_key(food.key, food.name, "food",
                     [&](const FoodKey& each) { return find_food(household, each); });
  if (!key) return fail(key.error());
  food.key = *key;
  return saved(household, std::move(food), asked.today);
}

Result<Outcome<FoodSaved>> change_food(const Household& household, Food food, Asked asked) {
  return saved(household, std::move(food), asked.today);
}

Result<Outcome<PlaceSaved>> add_place(const Household& household, Place place, Asked) {
  auto key = new_key(place.key, place.name, "place",
                     [&](const PlaceKey& each) { return find_place(household, each); });
  if (!key) return fail(key.error());
  place.key = *key;
  Outcome<PlaceSaved> outcome;
  outcome.changes.places = {place};
  outcome.report.place = std::move(place);
  return outcome;
}

Result<Outcome<PlaceSaved>> change_place(const Household&, Place place, Asked) {
  Outcome<PlaceSaved> outcome;
  outcome.changes.places = {place};
  outcome.report.place = std::move(place);
  return outcome;
}

Result<Outcome<LotAdded>> add_lot(const Household& household, const NewLot& request, Asked asked) {
  const Food* food = find_food(household, request.food);
  if (food == nullptr || find_place(household, request.at) == nullptr) {
    return fail(ErrorKind::kNotFound, "there is no such food or place",
                "see them: larderloop food list, larderloop place list");
  }
  if (request.units < 1 || request.units > kMaxUnits) {
    return fail(ErrorKind::kBadData,
                "'" + std::to_string(request.units) + "' units cannot be right",
                "from 1 to " + std::to_string(kMaxUnits));
  }
  const Day received = request.received.value_or(asked.today);
  if (received > asked.today) {
    return fail(ErrorKind::kBadData, "'" + iso_day(received) + "' has not come yet",
                "leave --received away for today");
  }
  const NextIds next = next_ids(household);
  Outcome<LotAdded> outcome;
  LotAdded& added = outcome.report;
  added.lot = {next.lot, food->key,    request.mark,  request.lot_code,
               received, std::nullopt, LotState::kOk, request.note};
  if (request.label) {
    auto label = statement_of(household, *food, *request.label, asked.today);
    if (!label) return fail(label.error());
    added.lot.label = *label;
    added.label = news_of(household, *food, *label, asked.today);
    outcome.changes.foods = food_with(*food, *label);
  }
  outcome.changes.lots = {added.lot};
  Household after = household;
  apply_changes(after, outcome.changes);
  added.facts = lot_facts(after, added.lot);
  std::int64_t here = request.units;
  std::set<PlaceKey> places{request.at};
  for (const auto& [place, units] : request.elsewhere) {
    here -= units;
    if (find_place(household, place) == nullptr || units < 1 || here < 1 || !places.insert(place).second) {
      return fail(ErrorKind::kBadData, "the units are not shared out right",
                  "name each place once, with at least one unit for each");
    }
  }
  Status allowed = may_put(after, added.facts, request.at, asked.today);
  for (const auto& each : request.elsewhere) {
    if (allowed) allowed = may_put(after, added.facts, each.first, asked.today);
  }
  if (!allowed) {
    Error error = allowed.error();
    // The lot does not exist, so nothing can be done to it yet.
    if (!request.label && error.next_step.rfind("read the label", 0) == 0) {
      error.next_step =
          "read the label and say so: --label-read-by NAME with --label-same-as-food, or with what "
          "it says: --contains, --may-contain, --suits";
    }
    return fail(std::move(error));
  }
  Entry& entry = added.received;
  entry.id = next.entry;
  entry.kind = EntryKind::kReceived;
  entry.on = received;
  entry.written_at = asked.now;
  entry.at = {added.lot.id, request.at, std::nullopt};
  entry.amount = HalfServings::units(here, food->servings);
  entry.paid_cents = request.paid_cents;
  for (const auto& [place, units] : request.elsewhere) {
    Entry more = entry;
    more.id = EntryId(next.entry.value() + 1 + static_cast<std::int64_t>(added.also.size()));
    more.at.place = place;
    more.amount = HalfServings::units(units, food->servings);
    if (request.paid_cents) {
      more.paid_cents = *request.paid_cents * units / request.units;
      *entry.paid_cents -= *more.paid_cents;
    }
    added.also.push_back(std::move(more));
  }
  outcome.changes.entries = {entry};
  outcome.changes.entries.insert(outcome.changes.entries.end(), added.also.begin(), added.also.end());
  return outcome;
}

Result<Outcome<LotRead>> read_lot(const Household& household, const LotLearnt& request,
                                  Asked asked) {
  const Lot* lot = find_lot(household, request.lot);
  if (lot == nullptr) {
    return fail(ErrorKind::kNotFound, "there is no lot " + std::to_string(request.lot.value()),
                "see them all: larderloop lot list");
  }
  const Food& food = *find_food(household, lot->food);
  Outcome<LotRead> outcome;
  LotRead& report = outcome.report;
  report.before = lot_facts(household, *lot);
  Reading& reading = report.reading;
  reading.id = next_ids(household).reading;
  reading.lot = lot->id;
  reading.on = asked.today;
  reading.by = request.by;
  reading.mark = request.mark;
  reading.state = request.state;
  reading.note = request.note;
  if (request.label) {
    auto label = statement_of(household, food, *request.label, asked.today);
    if (!label) return fail(label.error());
    reading.label = *label;
    report.label = news_of(household, food, *label, asked.today);
    outcome.changes.foods = food_with(food, *label);
  }
  outcome.changes.readings = {reading};
  Household after = household;
  apply_changes(after, outcome.changes);
  report.after = lot_facts(after, *find_lot(after, lot->id));
  auto ledger = replay(after);
  if (!ledger) return fail(ledger.error());
  for (const auto& [at, amount] : ledger->stock()) {
    if (at.lot != lot->id) continue;
    auto wrong =
        refusals_at(after, food, report.after.label ? &*report.after.label : nullptr, at.place, asked.today);
    if (!wrong.empty()) report.now_wrong.emplace_back(at.place, std::move(wrong));
  }
  return outcome;
}

}  // namespace larderloop
