#include "larderloop/app/entering.h"

#include "larderloop/app/lot_mistakes.h"
#include "larderloop/app/placing.h"
#include "larderloop/core/words.h"

#include <algorithm>

namespace larderloop {
namespace {

template <class T>
void append(std::vector<T>& to, const std::vector<T>& more) {
  to.insert(to.end(), more.begin(), more.end());
}

}  // namespace

void append_changes(Changes& changes, const Changes& more) {
  for (const Food& food : more.foods) {
    const auto known = std::find_if(changes.foods.begin(), changes.foods.end(), [&](const Food& each) { return each.key == food.key; });
    if (known == changes.foods.end()) changes.foods.push_back(food);
    else *known = food;
  }
  append(changes.lots, more.lots);
  append(changes.readings, more.readings);
  append(changes.entries, more.entries);
  append(changes.review_events, more.review_events);
  append(changes.review_marks, more.review_marks);
  append(changes.buy_notes, more.buy_notes);
}

Result<Outcome<LotsEntered>> enter_lots(const Household& household, const std::vector<LotToEnter>& lots, Asked asked) {
  Household after = household;
  Outcome<LotsEntered> outcome;
  std::vector<Problem> problems;
  for (const LotToEnter& each : lots) {
    auto added = add_lot(after, each.lot, asked);
    if (!added) {
      problems.push_back({each.where, "", added.error().what, added.error().next_step});
      continue;
    }
    apply_changes(after, added->changes);
    append_changes(outcome.changes, added->changes);
    outcome.report.lots.push_back(std::move(added->report));
  }
  if (!problems.empty()) {
    Error error = make_error(ErrorKind::kBadData, std::to_string(problems.size()) + " of " + std::to_string(lots.size()) + " cannot be entered; nothing was written",
                             "mend what is named above and enter all of it again");
    error.problems = std::move(problems);
    return fail(std::move(error));
  }
  return outcome;
}

std::vector<std::pair<PersonKey, std::vector<PlaceKey>>> bags_concerned(const Household& household, const LabelNews& news) {
  std::vector<std::pair<PersonKey, std::vector<PlaceKey>>> all;
  for (const PersonRefusal& each : news.must_not) {
    const bool told = std::any_of(all.begin(), all.end(), [&](const auto& known) { return known.first == each.person; });
    if (told) continue;
    std::vector<PlaceKey> places;
    for (const Place& place : household.places) {
      if (kit_of(household, place.key).empty() || place.kind == PlaceKind::kKit) continue;
      const auto eaters = eaters_at(household, place.key);
      if (std::find(eaters.begin(), eaters.end(), each.person) != eaters.end()) places.push_back(place.key);
    }
    all.emplace_back(each.person, std::move(places));
  }
  return all;
}

std::vector<std::string> concerned_words(const Household& household, const LabelNews& news) {
  std::vector<std::string> lines;
  for (const auto& [person, places] : bags_concerned(household, news)) {
    std::vector<PersonRefusal> of_person;
    std::copy_if(news.must_not.begin(), news.must_not.end(), std::back_inserter(of_person), [&, who = person](const PersonRefusal& each) { return each.person == who; });
    std::vector<std::string> names;
    names.reserve(places.size());
    for (const PlaceKey& place : places) names.push_back(find_place(household, place)->name);
    std::string line = must_not_words(household, of_person);
    if (!names.empty()) line += "; eats from " + list_words(names);
    lines.push_back(std::move(line));
  }
  return lines;
}

const BuyNote* open_buy_note(const Household& household, const FoodKey& food) {
  const BuyNote* last = nullptr;
  for (const BuyNote& note : household.buy_notes) {
    if (note.food == food) last = &note;
  }
  if (last == nullptr) return nullptr;
  const std::set<LotId> taken_back = lots_taken_back(household);
  const bool came = std::any_of(household.lots.begin(), household.lots.end(), [&](const Lot& lot) { return lot.food == food && lot.received >= last->on && taken_back.count(lot.id) == 0; });
  return came ? nullptr : last;
}

std::string buy_note_words(const Household& household, const BuyNote& note) {
  if (note.kind == BuyNoteKind::kNotAvailable) return "not to be had on " + plain_day(note.on);
  const Food* instead = find_food(household, note.instead);
  return "on " + plain_day(note.on) + " " + (instead == nullptr ? note.instead.str() : instead->name) + " was bought instead";
}

}  // namespace larderloop
