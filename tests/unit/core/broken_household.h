// broken_household.h - ways to break a valid household, and where validate() has to point then.
#pragma once

#include "larderloop/core/words.h"
#include "unit/core/core_household.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

namespace larderloop {

struct Broken {
  const char* name;
  std::function<void(Household&)> how;
  const char* where;
};

// After sorting the foods are: 0 canister, 1 cat-dinner, 2 formula, 3 lentil-stew, 4 opener;
// the people 0 ada, 1 ben, 2 minka; the places 0 ada-bag, 1 crate, 2 home-kit, 3 pantry, 4
// top-shelf.
inline void add_reading(Household& h, std::optional<LotState> state) {
  Reading reading;
  reading.id = ReadingId(static_cast<std::int64_t>(h.readings.size()) + 1);
  reading.lot = LotId(1);
  reading.on = day_at("2026-06-01");
  reading.by = "Ada";
  reading.state = state;
  h.readings.push_back(reading);
}

inline void add_review(Household& h, ReviewEventKind kind) {
  ReviewEvent event;
  event.id = ReviewEventId(static_cast<std::int64_t>(h.review_events.size()) + 1);
  event.kit = PlaceKey("home-kit");
  event.slot = day_at("2026-10-03");
  event.kind = kind;
  event.on = event.slot;
  h.review_events.push_back(event);
}

inline void add_mark(Household& h, MarkWhat what, std::int64_t halves) {
  ReviewMark mark;
  mark.id = MarkId(static_cast<std::int64_t>(h.review_marks.size()) + 1);
  mark.kit = PlaceKey("home-kit");
  mark.slot = day_at("2026-10-03");
  mark.at = h.entries[0].at;
  mark.what = what;
  mark.on = mark.slot;
  mark.amount = HalfServings(halves);
  h.review_marks.push_back(mark);
}

inline void add_line(Household& h, std::optional<Role> role, const char* food, bool everyone) {
  MenuLine line = h.menu[0];
  line.id = MenuLineId(static_cast<std::int64_t>(h.menu.size()) + 1);
  line.role = role;
  line.food = FoodKey(food);
  line.everyone = everyone;
  line.people.clear();
  h.menu.push_back(line);
}

inline void add_entry(Household& h, EntryKind kind, std::int64_t halves) {
  Entry entry = h.entries[0];
  entry.id = EntryId(static_cast<std::int64_t>(h.entries.size()) + 1);
  entry.kind = kind;
  entry.amount = HalfServings(halves);
  h.entries.push_back(entry);
}

template <std::size_t N>
void each_is_found(const Broken (&table)[N]) {
  for (const Broken& broken : table) {
    Household home = core_household();
    broken.how(home);
    const auto problems = validate(home);
    const auto found = std::find_if(problems.begin(), problems.end(), [&](const Problem& problem) {
      return problem.where == broken.where;
    });
    std::vector<std::string> places;
    for (const Problem& problem : problems) places.push_back(problem.where);
    ASSERT_NE(found, problems.end()) << broken.name << ": found only " << list_words(places);
    EXPECT_FALSE(found->what.empty()) << broken.name;
    EXPECT_FALSE(found->remedy.empty()) << broken.name;
  }
}

}  // namespace larderloop
