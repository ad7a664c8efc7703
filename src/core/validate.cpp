#include "larderloop/core/validate.h"

#include <algorithm>
#include <tuple>

#include "core/validate_parts.h"

namespace larderloop {
namespace {

template <class List>
std::vector<std::string> names_of(const List& list) {
  std::vector<std::string> names;
  for (const auto& each : list) names.push_back(each.key.str());
  return names;
}

constexpr int kDeepest = 16;

// Replaying needs foods, places, lots and entries that hold; whatever else is wrong hides nothing of the record.
bool can_be_replayed(const std::vector<Problem>& problems) {
  return std::none_of(problems.begin(), problems.end(), [](const Problem& problem) {
    const std::string list = problem.where.substr(0, problem.where.find('/', 1));
    return list == "/foods" || list == "/places" || list == "/lots" || list == "/entries";
  });
}

}  // namespace

std::string at(const std::string& list, std::size_t index) { return "/" + list + "/" + std::to_string(index); }

Findings::Findings(const Household& all) : household(all) {
  for (const Person& each : all.people) people_.emplace(each.key, &each);
  for (const Food& each : all.foods) foods_.emplace(each.key, &each);
  for (const Place& each : all.places) places_.emplace(each.key, &each);
  for (const Lot& each : all.lots) lots_.emplace(each.id, &each);
}

void Findings::add(std::string where, std::string value, std::string what, std::string remedy) {
  problems.push_back({std::move(where), std::move(value), std::move(what), std::move(remedy)});
}

void Findings::unknown(std::string where, const std::string& value, const std::string& kind,
                       const std::vector<std::string>& known) {
  const std::string near = nearest(value, known);
  add(std::move(where), value, "no such " + kind, near.empty() ? "name one that the household has" : "did you mean '" + near + "'?");
}

void Findings::check_person(const std::string& where, const PersonKey& key) {
  if (person(key) == nullptr) unknown(where, key.str(), "person", names_of(household.people));
}
void Findings::check_food(const std::string& where, const FoodKey& key) {
  if (food(key) == nullptr) unknown(where, key.str(), "food", names_of(household.foods));
}
void Findings::check_place(const std::string& where, const PlaceKey& key) {
  if (place(key) == nullptr) unknown(where, key.str(), "place", names_of(household.places));
}

void Findings::check_allergen(const std::string& where, const std::string& key) {
  if (is_known_allergen(key)) return;
  std::vector<std::string> known = known_allergens();
  for (const OwnAllergen& own : household.own_allergens) {
    if (own.key == key) return;
    known.push_back(own.key);
  }
  const std::string near = nearest(key, known);
  add(where, key, "no list knows this allergen",
      near.empty() ? "use a listed key, or name it under own_allergens with the day since when it matters"
                   : "did you mean '" + near + "'? A key of your own goes under own_allergens");
}

void Findings::check_statement(const std::string& where, const Statement& statement) {
  for (const auto& [key, declared] : statement.declared) {
    check_allergen(where + (declared == Declared::kContains ? "/contains" : "/may_contain"), key);
  }
  if (statement.read_by.empty()) add(where + "/read_by", "", "nobody is named as the reader of the label", "say who read it");
  for (const auto& [diet, key] : contradictions(statement)) {
    add(where + "/suits", std::string(diet_name(diet)), "the label cannot support this and contain " + allergen_words(key),
        "read the label again; leave out the one that is wrong");
  }
}

void Findings::check_mark(const std::string& where, const DateMark& mark) {
  if (mark.kind == MarkKind::kNone) {
    if (mark.day) add(where + "/day", iso_day(*mark.day), "a mark of kind none has no day", "leave the day out, or name the kind");
    return;
  }
  if (!mark.day) {
    add(where + "/day", "", "a date mark needs its day", "write the last day it stands for");
    return;
  }
  const date::year_month_day ymd{*mark.day};
  const auto last = mark.precision == Precision::kMonth
                        ? resolve_month(static_cast<int>(ymd.year()), static_cast<unsigned>(ymd.month()))
                    : mark.precision == Precision::kYear ? resolve_year(static_cast<int>(ymd.year()))
                                                         : mark.day;
  if (last != mark.day) {
    add(where + "/day", iso_day(*mark.day), "not the last day of the " + std::string(precision_name(mark.precision)),
        "write '" + iso_day(*last) + "'");
  }
}

const Place* Findings::kit_above(const PlaceKey& key) const {
  const Place* each = place(key);
  for (int depth = 0; each != nullptr && depth < kDeepest; ++depth) {
    if (each->kind == PlaceKind::kKit) return each;
    each = each->parent.empty() ? nullptr : place(each->parent);
  }
  return nullptr;
}

std::vector<Problem> validate(const Household& household) {
  Findings findings(household);
  validate_settings(findings);
  validate_people(findings);
  validate_foods(findings);
  validate_places(findings);
  validate_menu(findings);
  validate_table(findings);
  validate_wishes(findings);
  validate_lots(findings);
  if (can_be_replayed(findings.problems)) validate_record(findings);
  validate_reviews(findings);
  validate_trials(findings);
  validate_shopping(findings);
  validate_retired(findings);
  validate_shown(findings);
  validate_feed(findings);
  return std::move(findings.problems);
}

void sort_lists(Household& household) {
  const auto by_key = [](const auto& a, const auto& b) { return a.key < b.key; };
  const auto by_id = [](const auto& a, const auto& b) { return a.id < b.id; };
  std::stable_sort(household.own_allergens.begin(), household.own_allergens.end(), by_key);
  std::stable_sort(household.people.begin(), household.people.end(), by_key);
  for (Person& person : household.people) std::stable_sort(person.avoid.begin(), person.avoid.end(), by_key);
  std::stable_sort(household.foods.begin(), household.foods.end(), by_key);
  std::stable_sort(household.places.begin(), household.places.end(), by_key);
  std::stable_sort(household.review_rules.begin(), household.review_rules.end(),
                   [](const ReviewRule& a, const ReviewRule& b) { return a.kit < b.kit; });
  std::stable_sort(household.menu.begin(), household.menu.end(), by_id);
  for (MenuLine& line : household.menu) std::sort(line.people.begin(), line.people.end());
  std::stable_sort(household.table.begin(), household.table.end(), [](const TableSeat& a, const TableSeat& b) {
    return std::tie(a.weekday, a.meal) < std::tie(b.weekday, b.meal);
  });
  for (TableSeat& seat : household.table) std::sort(seat.people.begin(), seat.people.end());
  std::stable_sort(household.exceptions.begin(), household.exceptions.end(),
                   [](const TableException& a, const TableException& b) { return std::tie(a.from, a.through) < std::tie(b.from, b.through); });
  for (TableException& exception : household.exceptions) {
    std::sort(exception.away.begin(), exception.away.end());
    std::sort(exception.guests.begin(), exception.guests.end());
  }
  std::stable_sort(household.wishes.begin(), household.wishes.end(), by_id);
  std::stable_sort(household.lots.begin(), household.lots.end(), by_id);
  std::stable_sort(household.readings.begin(), household.readings.end(), by_id);
  std::stable_sort(household.entries.begin(), household.entries.end(), by_id);
  std::stable_sort(household.review_events.begin(), household.review_events.end(), by_id);
  std::stable_sort(household.review_marks.begin(), household.review_marks.end(), by_id);
  std::stable_sort(household.trials.begin(), household.trials.end(), by_id);
  for (Trial& trial : household.trials) std::sort(trial.people.begin(), trial.people.end());
  std::stable_sort(household.trial_notes.begin(), household.trial_notes.end(), by_id);
  std::stable_sort(household.trial_ends.begin(), household.trial_ends.end(),
                   [](const TrialEnd& a, const TrialEnd& b) { return a.trial < b.trial; });
  std::stable_sort(household.buy_notes.begin(), household.buy_notes.end(), by_id);
  std::stable_sort(household.mappings.begin(), household.mappings.end(),
                   [](const ImportMapping& a, const ImportMapping& b) { return a.name < b.name; });
  std::stable_sort(household.shown_meals.begin(), household.shown_meals.end(), [](const ShownMeal& a, const ShownMeal& b) {
    return std::tie(a.day, a.meal) < std::tie(b.day, b.meal);
  });
  for (ShownMeal& meal : household.shown_meals) std::sort(meal.servings.begin(), meal.servings.end());
  std::stable_sort(household.feed.begin(), household.feed.end(), [](const FeedStamp& a, const FeedStamp& b) {
    return std::tie(a.key, a.generation) < std::tie(b.key, b.generation);
  });
  std::stable_sort(household.kept_plans.begin(), household.kept_plans.end(),
                   [](const KeptPlan& a, const KeptPlan& b) { return a.name < b.name; });
  std::stable_sort(household.feed_addresses.begin(), household.feed_addresses.end(), by_id);
  std::stable_sort(household.pushed.begin(), household.pushed.end(), [](const PushedItem& a, const PushedItem& b) {
    return std::tie(a.collection, a.uid) < std::tie(b.collection, b.uid);
  });
  std::stable_sort(household.tasks_done.begin(), household.tasks_done.end(),
                   [](const TaskDone& a, const TaskDone& b) { return a.uid < b.uid; });
}

}  // namespace larderloop
