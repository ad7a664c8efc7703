// When the reviews of a kit are, and which of them is being done today.
#include <algorithm>
#include <map>

#include "larderloop/app/reviews.h"
#include "larderloop/calendar/rule.h"

namespace larderloop {
namespace {

constexpr int kAheadDays = 3 * 366;  // rules have a date in every two years, so there is always a next one

// The first day the record knows: nothing before it can have been missed.
Day first_day(const Household& household, Day today) {
  Day first = today;
  for (const Entry& entry : household.entries) first = std::min(first, entry.on);
  return first;
}

void apply_events(const Household& household, const PlaceKey& kit, std::map<Day, ReviewSlot>& slots) {
  for (const ReviewEvent& event : household.review_events) {
    if (event.kit != kit) continue;
    const auto found = slots.find(event.slot);
    if (found == slots.end()) continue;  // of an earlier rule
    ReviewSlot& slot = found->second;
    switch (event.kind) {
      case ReviewEventKind::kStarted:
        slot.started_on = event.on;
        slot.state = SlotState::kOpen;
        break;
      case ReviewEventKind::kFinished:
        slot.finished_on = event.on;
        slot.state = SlotState::kDone;
        break;
      case ReviewEventKind::kSkipped:
        slot.state = SlotState::kSkipped;
        break;
      case ReviewEventKind::kMoved:
        if (event.moved_to) slot.day = *event.moved_to;
        break;
    }
  }
}

bool settled(const ReviewSlot& slot) {
  return slot.state == SlotState::kDone || slot.state == SlotState::kSkipped;
}

// The latest slot that is due counts; what was not done before it is missed.
void settle_past(std::vector<ReviewSlot>& slots, Day today) {
  bool later_one_counts = false;
  for (auto slot = slots.rbegin(); slot != slots.rend(); ++slot) {
    if (slot->state == SlotState::kDone) later_one_counts = true;
    if (settled(*slot) || slot->day > today) continue;
    if (later_one_counts) {
      slot->state = SlotState::kMissed;
    } else {
      if (slot->state != SlotState::kOpen) slot->state = SlotState::kDue;
      later_one_counts = true;
    }
  }
}

}  // namespace

std::string_view slot_state_words(SlotState state) {
  switch (state) {
    case SlotState::kDone:
      return "done";
    case SlotState::kMissed:
      return "missed";
    case SlotState::kSkipped:
      return "skipped";
    case SlotState::kOpen:
      return "begun";
    case SlotState::kDue:
      return "due";
    case SlotState::kComing:
      return "coming";
  }
  return "";
}

ReviewRule review_rule_of(const Household& household, const PlaceKey& kit) {
  for (const ReviewRule& rule : household.review_rules) {
    if (rule.kit == kit) return rule;
  }
  ReviewRule rule;
  rule.kit = kit;
  rule.rule = std::string(kDefaultReviewRule);
  return rule;
}

Result<std::vector<ReviewSlot>> review_slots(const Household& household, const PlaceKey& kit, Day today) {
  const Place* place = find_place(household, kit);
  if (place == nullptr || place->kind != PlaceKind::kKit) {
    return fail(ErrorKind::kNotFound, "'" + kit.str() + "' is not a kit", "see: larderloop place list");
  }
  ReviewRule rule = review_rule_of(household, kit);
  if (rule.starts == Day{}) rule.starts = first_default_review(first_day(household, today));
  auto dates = rule_dates(rule.rule, rule.starts, rule.starts, std::max(today, rule.starts) + Days(kAheadDays));
  if (!dates) return fail(dates.error());
  std::map<Day, ReviewSlot> by_day;
  for (const Day day : *dates) {
    ReviewSlot slot;
    slot.kit = kit;
    slot.slot = day;
    slot.day = day;
    by_day.emplace(day, slot);
  }
  apply_events(household, kit, by_day);
  std::vector<ReviewSlot> slots;
  for (auto& [day, slot] : by_day) slots.push_back(slot);
  settle_past(slots, today);
  return slots;
}

Result<KitSchedule> kit_schedule(const Household& household, const PlaceKey& kit, Day today) {
  auto slots = review_slots(household, kit, today);
  if (!slots) return fail(slots.error());
  KitSchedule schedule;
  schedule.kit = kit;
  const ReviewRule rule = review_rule_of(household, kit);
  schedule.slack_days = rule.slack_days.value_or(household.settings.slack_days);

  const ReviewSlot* due = nullptr;
  const ReviewSlot* coming = nullptr;
  for (const ReviewSlot& slot : *slots) {
    if (slot.state == SlotState::kOpen || slot.state == SlotState::kDue) due = &slot;
    if (coming == nullptr && slot.state == SlotState::kComing && slot.day > today) coming = &slot;
  }
  // A walk done now counts for whichever is nearer: the one that is due, or one that comes within 30 days.
  if (coming != nullptr && days_between(today, coming->day) <= kEarlyDays) {
    const bool due_is_nearer =
        due != nullptr && days_between(due->day, today) <= days_between(today, coming->day);
    if (due == nullptr || (due->state != SlotState::kOpen && !due_is_nearer)) due = coming;
  }
  if (due != nullptr) schedule.current = *due;
  const ReviewSlot* next = nullptr;
  for (const ReviewSlot& slot : *slots) {
    if (next != nullptr || settled(slot) || slot.state == SlotState::kMissed) continue;
    if (schedule.current ? slot.slot > schedule.current->slot : slot.day > today) next = &slot;
  }
  if (next == nullptr) {
    return fail(ErrorKind::kBadData, "the reviews of '" + kit.str() + "' end: there is no next one",
                "give the kit a rule without an end, for example " + std::string(kDefaultReviewRule));
  }
  schedule.next = *next;
  schedule.hold_until = schedule.next.day + Days(schedule.slack_days);
  schedule.slots = std::move(*slots);
  return schedule;
}

}  // namespace larderloop
