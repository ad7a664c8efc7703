// Food that was planned again and again and that nobody ate.
#include "app/plan_build.h"
#include "app/plan_shown.h"

#include <algorithm>

namespace larderloop {
namespace {

struct Passed {
  int times = 0;
  std::set<PersonKey> people;
};

// Days on which somebody ate of a food; what was taken back does not count.
std::map<FoodKey, std::set<Day>> days_eaten(const BookView& view) {
  std::set<EntryId> taken_back;
  for (const Entry& entry : view.household->entries) {
    if (entry.kind == EntryKind::kCorrected) taken_back.insert(entry.corrects);
  }
  std::map<FoodKey, std::set<Day>> days;
  for (const Entry& entry : view.household->entries) {
    if (entry.kind != EntryKind::kEaten || taken_back.count(entry.id) > 0) continue;
    const auto facts = view.facts.find(entry.at.lot);
    if (facts != view.facts.end()) days[facts->second.food].insert(entry.on);
  }
  return days;
}

std::optional<Day> give_by(const BookView& view, const Position& position, Day today) {
  const Food& food = *position.food;
  if (position.at.opened_on || food.home_canned || food.infant_formula) return std::nullopt;
  const Day by = *position.good_through - Days(view.household->settings.donate_days);
  return by < today ? std::nullopt : std::optional<Day>(by);
}

}  // namespace

std::vector<Skipped> skipped(const BookView& view, Day today) {
  const Household& household = *view.household;
  std::map<FoodKey, std::set<Day>> eaten;
  std::map<LotId, Passed> passed;
  for (const ShownMeal& meal : household.shown_meals) {
    if (meal.day >= today || meal.day < today - Days(kShownDays)) continue;
    if (eaten.empty()) eaten = days_eaten(view);
    const std::vector<PersonKey> table = at_table(household, meal.day, meal.meal);
    std::map<LotId, std::set<PersonKey>> lots;
    for (const ShownServing& serving : meal.servings) {
      const Person* person = find_person(household, serving.person);
      // Whoever was away after all has skipped nothing.
      const bool there = person != nullptr &&
                         (!person->is_human() ||
                          std::find(table.begin(), table.end(), serving.person) != table.end());
      const auto facts = view.facts.find(serving.at.lot);
      if (!there || facts == view.facts.end()) continue;
      const std::set<Day>& days = eaten[facts->second.food];
      // Eaten that day or later: nothing was skipped, or no longer.
      if (days.empty() || *days.rbegin() < meal.day) lots[serving.at.lot].insert(serving.person);
    }
    for (const auto& [lot, people] : lots) {
      passed[lot].times += 1;
      passed[lot].people.insert(people.begin(), people.end());
    }
  }
  std::vector<Skipped> all;
  for (const Position& position : view.positions) {
    const auto found = passed.find(position.at.lot);
    if (found == passed.end() || found->second.times < kSkipsToTell) continue;
    if (position.facts->state != LotState::kOk || !position.good_through ||
        *position.good_through < today)
      continue;
    const std::optional<Day> by = give_by(view, position, today);
    if (!all.empty() && all.back().lot == position.at.lot) {
      if (by && (!all.back().give_by || *by < *all.back().give_by)) all.back().give_by = by;
      continue;
    }
    all.push_back({position.at.lot,
                   position.food->key,
                   found->second.times,
                   {found->second.people.begin(), found->second.people.end()},
                   by});
  }
  return all;
}

}  // namespace larderloop
