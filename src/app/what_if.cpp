#include "larderloop/app/what_if.h"

#include "app/book_view.h"
#include "larderloop/core/validate.h"
#include "larderloop/core/words.h"

#include <algorithm>
#include <tuple>

namespace larderloop {
namespace {

// The household as it would be, and what would be written to make it so.
struct Assumption {
  Household after;
  Changes changes;
  std::vector<std::string> words;
  std::string not_written;
};

void take(Assumption& assumption, const Changes& changes) {
  apply_changes(assumption.after, changes);
  const auto append = [](auto& into, const auto& from) {
    into.insert(into.end(), from.begin(), from.end());
  };
  append(assumption.changes.own_allergens, changes.own_allergens);
  append(assumption.changes.people, changes.people);
  append(assumption.changes.foods, changes.foods);
  append(assumption.changes.places, changes.places);
  append(assumption.changes.readings, changes.readings);
}

Status assume_person(Assumption& assumption, const WhatIf& assumed, Asked asked) {
  if (!assumed.person) return {};
  Person person = *find_person(assumption.after, *assumed.person);
  std::vector<std::string> own, words;
  for (const Avoid& avoid : assumed.avoid) {
    if (!is_known_allergen(avoid.key)) own.push_back(avoid.key);
    const auto same = std::find_if(person.avoid.begin(), person.avoid.end(),
                                   [&](const Avoid& each) { return each.key == avoid.key; });
    if (same == person.avoid.end())
      person.avoid.push_back(avoid);
    else
      *same = avoid;
    words.push_back("must not have " + allergen_words(avoid.key));
  }
  for (const Diet diet : assumed.diets) {
    person.diets.insert(diet);
    std::string name(diet_name(diet));
    std::replace(name.begin(), name.end(), '_', '-');
    words.push_back("eats " + name);
  }
  assumption.words.push_back(person.name + " " + list_words(words));
  auto changed = change_person(assumption.after, person, own, asked);
  if (!changed) return fail(changed.error());
  take(assumption, changed->changes);
  return {};
}

Status assume_coming_and_going(Assumption& assumption, const WhatIf& assumed, Asked asked) {
  if (assumed.joins) {
    std::vector<std::string> own;
    for (const Avoid& avoid : assumed.joins->avoid) {
      if (!is_known_allergen(avoid.key)) own.push_back(avoid.key);
    }
    auto added = add_person(assumption.after, *assumed.joins, own, asked);
    if (!added) return fail(added.error());
    assumption.words.push_back(added->report.person.name + " joins");
    take(assumption, added->changes);
  }
  if (assumed.older) {
    Household& after = assumption.after;
    for (Person& person : after.people) {
      if (person.key != *assumed.older) continue;
      if (!person.born)
        return fail(ErrorKind::kBadData, "nobody knows when " + person.name + " was born",
                    "write it down: larderloop person change " + person.key.str() + " --born DATE");
      constexpr int kYear = 12;
      person.born = add_months(*person.born, -kYear);
      assumption.words.push_back(person.name + " is a year older");
      assumption.not_written = "a birthday comes by itself: it follows from the day of birth";
    }
  }
  if (assumed.leaves) {
    Household& after = assumption.after;
    const PersonKey& gone = *assumed.leaves;
    assumption.words.push_back(find_person(after, gone)->name + " leaves");
    for (MenuLine& line : after.menu)
      line.people.erase(std::remove(line.people.begin(), line.people.end(), gone),
                        line.people.end());
    after.menu.erase(std::remove_if(after.menu.begin(), after.menu.end(),
                                    [&](const MenuLine& line) {
                                      const Food* food =
                                          line.food.empty() ? nullptr : find_food(after, line.food);
                                      const bool thing =
                                          line.role == Role::kThing ||
                                          (food != nullptr && food->kind == FoodKind::kThing);
                                      return !line.everyone && !thing && line.people.empty();
                                    }),
                     after.menu.end());
    for (TableSeat& seat : after.table)
      seat.people.erase(std::remove(seat.people.begin(), seat.people.end(), gone),
                        seat.people.end());
    after.people.erase(std::remove_if(after.people.begin(), after.people.end(),
                                      [&](const Person& each) { return each.key == gone; }),
                       after.people.end());
    assumption.not_written =
        "the lines of the kit menu and the seats at the table that name them have to go first; "
        "then: larderloop person retire";
  }
  return {};
}

Status assume_recall(Assumption& assumption, const WhatIf& assumed, Asked asked) {
  if (assumed.gtin.empty() && assumed.lot_code.empty()) return {};
  const std::string gtin = assumed.gtin.empty() ? "" : normal_gtin(assumed.gtin);
  if (!assumed.gtin.empty() && gtin.empty())
    return fail(
        ErrorKind::kBadData,
        "'" + assumed.gtin +
            "' is no GTIN: the check digit is wrong, or there are not 8, 12, 13 or 14 digits",
        "type the digits below the barcode again");
  auto view = view_book(assumption.after, asked.today);
  if (!view) return fail(view.error());
  std::set<LotId> lots;
  for (const Position& position : view->positions) {
    const Lot& lot = *find_lot(assumption.after, position.at.lot);
    const bool hit = (gtin.empty() || position.food->gtin == gtin) &&
                     (assumed.lot_code.empty() || lot.lot_code == assumed.lot_code);
    if (hit && position.facts->state != LotState::kRecalled) lots.insert(lot.id);
  }
  Changes changes;
  ReadingId id = next_ids(assumption.after).reading;
  for (const LotId lot : lots) {
    Reading reading;
    reading.id = id;
    id = ReadingId(id.value() + 1);
    reading.lot = lot;
    reading.on = asked.today;
    reading.by = "recall notice";
    reading.state = LotState::kRecalled;
    changes.readings.push_back(std::move(reading));
  }
  std::string what = gtin.empty() ? "" : "GTIN " + gtin;
  if (!assumed.lot_code.empty())
    what += (what.empty() ? "" : ", ") + ("lot code " + assumed.lot_code);
  assumption.words.push_back(what + " is recalled: " + std::to_string(lots.size()) + " " +
                             plural("lot", static_cast<std::int64_t>(lots.size())) + " on hand");
  take(assumption, changes);
  return {};
}

Status assume_label(Assumption& assumption, const WhatIf& assumed, Asked asked) {
  if (!assumed.lot || !assumed.label) return {};
  LotLearnt learnt;
  learnt.lot = *assumed.lot;
  learnt.by = assumed.label->read_by;
  learnt.label = assumed.label;
  auto read = read_lot(assumption.after, learnt, asked);
  if (!read) return fail(read.error());
  assumption.words.push_back("the label of lot " + std::to_string(assumed.lot->value()) +
                             " reads otherwise");
  take(assumption, read->changes);
  return {};
}

Status assume_heat(Assumption& assumption, const WhatIf& assumed, Asked asked) {
  if (!assumed.hot) return {};
  Place place = *find_place(assumption.after, *assumed.hot);
  place.hot = true;
  auto changed = change_place(assumption.after, place, asked);
  if (!changed) return fail(changed.error());
  assumption.words.push_back(place.name + " is hot at times");
  take(assumption, changed->changes);
  return {};
}

// The same finding, although a number in it may have changed.
bool same(const KitFinding& a, const KitFinding& b) {
  const auto identity = [](const KitFinding& each) {
    return std::tie(each.gravity, each.topic, each.place, each.person, each.day, each.meal,
                    each.line, each.lot, each.food);
  };
  const bool is_number = a.topic == Topic::kEnergy || a.topic == Topic::kSodium ||
                         a.topic == Topic::kMass || a.topic == Topic::kWater;
  return identity(a) == identity(b) && (is_number || a.what == b.what);
}

std::vector<KitFinding> without(const std::vector<KitFinding>& all,
                                const std::vector<KitFinding>& those) {
  std::vector<KitFinding> left;
  for (const KitFinding& each : all) {
    const bool there = std::any_of(those.begin(), those.end(),
                                   [&](const KitFinding& other) { return same(each, other); });
    if (!there) left.push_back(each);
  }
  return left;
}

Result<KitWhatIf> compare_kit(const Household& before, const Household& after, const PlaceKey& kit,
                              Day today) {
  auto was = check_kit(before, kit, today);
  if (!was) return fail(was.error());
  auto is = check_kit(after, kit, today);
  if (!is) return fail(is.error());
  auto plan_was = plan_kit(before, kit, today);
  if (!plan_was) return fail(plan_was.error());
  auto plan_is = plan_kit(after, kit, today);
  if (!plan_is) return fail(plan_is.error());
  KitWhatIf report;
  report.kit = kit;
  report.ready_before = was->ready();
  report.ready_after = is->ready();
  report.wrong = without(is->findings, was->findings);
  report.solved = without(was->findings, is->findings);
  for (const BuyLine& line : plan_is->buy) {
    std::int64_t units = line.units;
    for (const BuyLine& other : plan_was->buy) {
      if (other.food == line.food) units -= other.units;
    }
    if (units <= 0) continue;
    report.buy.push_back(line);
    report.buy.back().units = std::min(units, line.units);
  }
  for (const Unmet& line : plan_is->unmet) {
    const bool known = std::any_of(
        plan_was->unmet.begin(), plan_was->unmet.end(),
        [&](const Unmet& other) { return other.line == line.line && other.units >= line.units; });
    if (!known) report.unmet.push_back(line);
  }
  report.cost_before = plan_was->cost_cents;
  report.cost_after = plan_is->cost_cents;
  return report;
}

// Helpings of the shown plan that would be given to somebody who must not have them.
Result<std::vector<WrongMeal>> wrong_meals(const Household& after, Day today) {
  auto view = view_book(after, today);
  if (!view) return fail(view.error());
  std::vector<WrongMeal> all;
  for (const ShownMeal& meal : after.shown_meals) {
    if (meal.day < today) continue;
    for (const ShownServing& serving : meal.servings) {
      const LotFacts& facts = view->facts.at(serving.at.lot);
      const Food& food = *find_food(after, facts.food);
      const Person* person = find_person(after, serving.person);
      WrongMeal wrong{meal.day, meal.meal, serving.person, food.key, serving.at.lot, {}};
      if (person == nullptr) {
        wrong.why = "not at home any more";
      } else if (facts.state != LotState::kOk) {
        wrong.why = "it is " + std::string(lot_state_name(facts.state));
      } else if (const auto reason = why_not(after, *person, food, effective_label(facts), today)) {
        wrong.why = refusal_words(*reason);
      } else {
        continue;
      }
      all.push_back(std::move(wrong));
    }
  }
  return all;
}

}  // namespace

Result<Outcome<WhatIfReport>> what_if(const Household& household, const WhatIf& assumed,
                                      Asked asked) {
  Assumption assumption;
  assumption.after = household;
  for (const auto part :
       {assume_person, assume_coming_and_going, assume_recall, assume_label, assume_heat}) {
    if (Status done = part(assumption, assumed, asked); !done) return fail(done.error());
  }
  if (assumption.words.empty())
    return fail(ErrorKind::kUsage, "nothing is assumed",
                "say what, for example: larderloop what-if --person mira --avoid milk");
  Outcome<WhatIfReport> outcome;
  outcome.report.assumed = std::move(assumption.words);
  outcome.report.not_written = std::move(assumption.not_written);
  for (const PlaceKey& kit : places_of_kind(household, PlaceKind::kKit)) {
    auto compared = compare_kit(household, assumption.after, kit, asked.today);
    if (!compared) return fail(compared.error());
    outcome.report.kits.push_back(std::move(*compared));
  }
  auto meals = wrong_meals(assumption.after, asked.today);
  if (!meals) return fail(meals.error());
  outcome.report.meals = std::move(*meals);
  if (outcome.report.not_written.empty()) outcome.changes = std::move(assumption.changes);
  return outcome;
}

}  // namespace larderloop
