#include "larderloop/core/changes.h"

#include <algorithm>
#include <tuple>

namespace larderloop {
namespace {

// Puts each of `from` into the sorted list `into`, in place of the one with the same key.
template <class T, class KeyOf>
void put(std::vector<T>& into, const std::vector<T>& from, KeyOf key_of) {
  for (const T& each : from) {
    const auto at = std::lower_bound(into.begin(), into.end(), each,
                                     [&](const T& a, const T& b) { return key_of(a) < key_of(b); });
    if (at != into.end() && key_of(*at) == key_of(each)) *at = each;
    else into.insert(at, each);
  }
}

// Takes out whatever has one of these keys.
template <class T, class Key, class KeyOf>
void take_out(std::vector<T>& from, const std::vector<Key>& keys, KeyOf key_of) {
  if (keys.empty()) return;
  from.erase(std::remove_if(from.begin(), from.end(),
                            [&](const T& each) { return std::find(keys.begin(), keys.end(), key_of(each)) != keys.end(); }),
             from.end());
}

template <class T>
void append(std::vector<T>& into, const std::vector<T>& from) {
  into.insert(into.end(), from.begin(), from.end());
}

template <class List>
std::int64_t next_of(const List& list) {
  std::int64_t largest = 0;
  for (const auto& each : list) largest = std::max(largest, each.id.value());
  return largest + 1;
}

}  // namespace

bool Changes::empty() const {
  return !settings && own_allergens.empty() && people.empty() && foods.empty() && places.empty() &&
         review_rules.empty() && menu.empty() && menu_back.empty() && review_rules_back.empty() && !table && !exceptions && buy_notes.empty() && mappings.empty() && mappings_back.empty() && wishes.empty() && wishes_back.empty() && lots.empty() && readings.empty() && entries.empty() &&
         review_events.empty() && review_marks.empty() && trials.empty() && trial_notes.empty() && trial_ends.empty() && !shown_meals && !kept_plans && feed.empty() &&
         feed_addresses.empty() && !pushed && tasks_done.empty();
}

void apply_changes(Household& household, const Changes& changes) {
  if (changes.settings) household.settings = *changes.settings;
  put(household.own_allergens, changes.own_allergens, [](const OwnAllergen& each) { return each.key; });
  put(household.people, changes.people, [](const Person& each) { return each.key; });
  put(household.foods, changes.foods, [](const Food& each) { return each.key; });
  put(household.places, changes.places, [](const Place& each) { return each.key; });
  put(household.review_rules, changes.review_rules, [](const ReviewRule& each) { return each.kit; });
  put(household.menu, changes.menu, [](const MenuLine& each) { return each.id; });
  take_out(household.menu, changes.menu_back, [](const MenuLine& each) { return each.id; });
  take_out(household.review_rules, changes.review_rules_back, [](const ReviewRule& each) { return each.kit; });
  if (changes.table) household.table = *changes.table;
  if (changes.exceptions) household.exceptions = *changes.exceptions;
  put(household.wishes, changes.wishes, [](const Wish& each) { return each.id; });
  take_out(household.wishes, changes.wishes_back, [](const Wish& each) { return each.id; });
  append(household.lots, changes.lots);
  append(household.readings, changes.readings);
  append(household.entries, changes.entries);
  append(household.review_events, changes.review_events);
  append(household.review_marks, changes.review_marks);
  append(household.trials, changes.trials);
  append(household.trial_notes, changes.trial_notes);
  put(household.trial_ends, changes.trial_ends, [](const TrialEnd& each) { return each.trial; });
  append(household.buy_notes, changes.buy_notes);
  put(household.mappings, changes.mappings, [](const ImportMapping& each) { return each.name; });
  take_out(household.mappings, changes.mappings_back, [](const ImportMapping& each) { return each.name; });
  if (changes.shown_meals) household.shown_meals = *changes.shown_meals;
  if (changes.kept_plans) household.kept_plans = *changes.kept_plans;
  put(household.feed, changes.feed, [](const FeedStamp& each) { return std::make_tuple(each.key, each.generation); });
  put(household.feed_addresses, changes.feed_addresses, [](const FeedAddress& each) { return each.id; });
  if (changes.pushed) household.pushed = *changes.pushed;
  put(household.tasks_done, changes.tasks_done, [](const TaskDone& each) { return each.uid; });
}

NextIds next_ids(const Household& household) {
  NextIds ids;
  ids.lot = LotId(next_of(household.lots));
  ids.reading = ReadingId(next_of(household.readings));
  ids.entry = EntryId(next_of(household.entries));
  ids.review_event = ReviewEventId(next_of(household.review_events));
  ids.mark = MarkId(next_of(household.review_marks));
  ids.menu_line = MenuLineId(next_of(household.menu));
  ids.wish = WishId(next_of(household.wishes));
  ids.trial = TrialId(next_of(household.trials));
  ids.trial_note = TrialNoteId(next_of(household.trial_notes));
  ids.buy_note = BuyNoteId(next_of(household.buy_notes));
  ids.feed_address = FeedAddressId(next_of(household.feed_addresses));
  return ids;
}

}  // namespace larderloop
