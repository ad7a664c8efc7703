// changes.h - what a task wants to write, as values: computed without the book, applied in one transaction or not at all.
#pragma once

#include <optional>
#include <vector>

#include "larderloop/core/household.h"

namespace larderloop {

// New things and replacements of things (by key), additions to the append-only lists (ids follow on from the largest one, see
// next_ids), and the kept plan and feed stamps. Replacing is only for what people describe, never for what happened.
struct Changes {
  std::optional<Settings> settings;
  std::vector<OwnAllergen> own_allergens;
  std::vector<Person> people;
  std::vector<Food> foods;
  std::vector<Place> places;
  std::vector<ReviewRule> review_rules;
  std::vector<MenuLine> menu;
  std::vector<MenuLineId> menu_back;       // taken out
  std::vector<PlaceKey> review_rules_back;  // of these kits, taken out
  std::optional<std::vector<TableSeat>> table;            // replaces the usual week
  std::optional<std::vector<TableException>> exceptions;  // replaces all of them
  std::vector<Wish> wishes;
  std::vector<WishId> wishes_back;       // taken back
  std::vector<Lot> lots;                 // new ones only
  std::vector<Reading> readings;         // appended
  std::vector<Entry> entries;            // appended
  std::vector<ReviewEvent> review_events;  // appended
  std::vector<ReviewMark> review_marks;    // appended
  std::vector<Trial> trials;               // appended
  std::vector<TrialNote> trial_notes;      // appended
  std::vector<TrialEnd> trial_ends;        // appended
  std::vector<BuyNote> buy_notes;          // appended
  std::vector<ImportMapping> mappings;     // new or replaced by name
  std::vector<std::string> mappings_back;  // taken out
  std::optional<std::vector<ShownMeal>> shown_meals;  // replaces what was shown
  std::optional<std::vector<KeptPlan>> kept_plans;    // replaces all of them
  std::vector<FeedStamp> feed;             // new or replaced by (key, generation)
  std::vector<FeedAddress> feed_addresses; // new, or revoked ones
  std::optional<std::vector<PushedItem>> pushed;  // replaces all of them
  std::vector<TaskDone> tasks_done;        // added; none that is there already
  [[nodiscard]] bool empty() const;
};

// The household after the changes; lists stay sorted. Pure. Pre: the changes fit (ids follow on, references exist).
void apply_changes(Household& household, const Changes& changes);

// The first free id of each append-only list.
struct NextIds {
  LotId lot;
  ReadingId reading;
  EntryId entry;
  ReviewEventId review_event;
  MarkId mark;
  MenuLineId menu_line;
  WishId wish;
  TrialId trial;
  TrialNoteId trial_note;
  BuyNoteId buy_note;
  FeedAddressId feed_address;
};
[[nodiscard]] NextIds next_ids(const Household& household);

}  // namespace larderloop
