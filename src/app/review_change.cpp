// One review skipped or moved to another day; the others stay where the rule puts them.
#include <algorithm>

#include "larderloop/app/reviews.h"

namespace larderloop {
namespace {

struct Chosen {
  std::vector<ReviewSlot> slots;
  std::size_t index = 0;
};

// The slot asked for, or the current one, or the next.
Result<Chosen> choose(const Household& household, const PlaceKey& kit, std::optional<Day> slot, Day today) {
  auto slots = review_slots(household, kit, today);
  if (!slots) return fail(slots.error());
  auto schedule = kit_schedule(household, kit, today);
  if (!schedule) return fail(schedule.error());
  const Day wanted = slot ? *slot : schedule->current ? schedule->current->slot : schedule->next.slot;
  const auto found = std::find_if(slots->begin(), slots->end(), [&](const ReviewSlot& each) {
    return each.slot == wanted || (slot && each.day == wanted);
  });
  if (found == slots->end()) {
    return fail(ErrorKind::kNotFound, "no review of '" + kit.str() + "' is on '" + iso_day(wanted) + "'",
                "see: larderloop review dates " + kit.str());
  }
  if (found->state == SlotState::kDone || found->state == SlotState::kMissed) {
    return fail(ErrorKind::kBadData,
                "the review of " + plain_day(found->day) + " is already " + std::string(slot_state_words(found->state)),
                "see: larderloop review dates " + kit.str());
  }
  const auto index = static_cast<std::size_t>(found - slots->begin());
  return Chosen{std::move(*slots), index};
}

Outcome<ReviewChanged> changed(const Household& household, const ReviewSlot& slot, ReviewEvent event, Asked asked) {
  Outcome<ReviewChanged> outcome;
  event.id = next_ids(household).review_event;
  event.kit = slot.kit;
  event.slot = slot.slot;
  event.on = asked.today;
  outcome.changes.review_events.push_back(event);
  outcome.report.before = slot;
  outcome.report.after = slot;
  if (event.moved_to) {
    outcome.report.after.day = *event.moved_to;
  } else {
    outcome.report.after.state = SlotState::kSkipped;
  }
  return outcome;
}

}  // namespace

Result<Outcome<ReviewChanged>> skip_review(const Household& household, const PlaceKey& kit, std::optional<Day> slot,
                                           Asked asked) {
  auto chosen = choose(household, kit, slot, asked.today);
  if (!chosen) return fail(chosen.error());
  const ReviewSlot& found = chosen->slots[chosen->index];
  if (found.state == SlotState::kSkipped) {
    return fail(ErrorKind::kBadData, "the review of " + plain_day(found.day) + " is already skipped",
                "see: larderloop review dates " + kit.str());
  }
  ReviewEvent event;
  event.kind = ReviewEventKind::kSkipped;
  return changed(household, found, event, asked);
}

Result<Outcome<ReviewChanged>> move_review(const Household& household, const PlaceKey& kit, std::optional<Day> slot,
                                           Day to, Asked asked) {
  auto chosen = choose(household, kit, slot, asked.today);
  if (!chosen) return fail(chosen.error());
  const auto& slots = chosen->slots;
  const std::size_t index = chosen->index;
  if (to < asked.today) {
    return fail(ErrorKind::kBadData, "'" + iso_day(to) + "' is over", "name today or a later day");
  }
  const bool before_previous = index > 0 && to <= slots[index - 1].day;
  const bool after_following = index + 1 < slots.size() && to >= slots[index + 1].day;
  if (before_previous || after_following) {
    const Day other = before_previous ? slots[index - 1].day : slots[index + 1].day;
    return fail(ErrorKind::kBadData,
                "'" + iso_day(to) + "' would pass the review on " + plain_day(other) + ": the two would change places",
                "choose a day " + std::string(before_previous ? "after" : "before") + " " + iso_day(other));
  }
  ReviewEvent event;
  event.kind = ReviewEventKind::kMoved;
  event.moved_to = to;
  return changed(household, slots[index], event, asked);
}

}  // namespace larderloop
