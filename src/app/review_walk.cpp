// A review as it is done: started, marked position by position, finished in one go.
#include <algorithm>
#include <map>
#include <set>

#include "app/book_view.h"
#include "larderloop/app/reviews.h"
#include "larderloop/core/words.h"

namespace larderloop {
namespace {

// What the marks of one position come to, in the order they were made.
struct Findings {
  bool touched = false;
  HalfServings missing;
  HalfServings damaged;
  std::optional<DateMark> mark;
};

std::map<StockKey, Findings> findings_of(const Household& household, const PlaceKey& kit, Day slot) {
  std::map<StockKey, Findings> all;
  for (const ReviewMark& mark : household.review_marks) {
    if (mark.kit != kit || mark.slot != slot) continue;
    Findings& found = all[mark.at];
    found.touched = true;
    switch (mark.what) {
      case MarkWhat::kThere:
        found.missing = HalfServings();
        found.damaged = HalfServings();
        break;
      case MarkWhat::kMissing:
        found.missing = mark.amount;
        break;
      case MarkWhat::kDamaged:
        found.damaged = mark.amount;
        break;
      case MarkWhat::kRedated:
        found.mark = mark.mark;
        break;
    }
  }
  return all;
}

constexpr std::string_view kAfterUse = "after use";

// Was the review on this slot last begun after the kit was used in earnest?
bool begun_after_use(const Household& household, const PlaceKey& kit, Day slot) {
  bool after_use = false;
  for (const ReviewEvent& event : household.review_events) {
    if (event.kit == kit && event.slot == slot && event.kind == ReviewEventKind::kStarted) after_use = event.note == kAfterUse;
  }
  return after_use;
}

std::string kit_name(const Household& household, const PlaceKey& kit) {
  const Place* place = find_place(household, kit);
  return place == nullptr ? kit.str() : place->name;
}

tl::unexpected<Error> no_review_begun(const Household& household, const KitSchedule& schedule) {
  return fail(ErrorKind::kBadData, "no review of '" + kit_name(household, schedule.kit) + "' has been started",
              "start one: larderloop review start " + schedule.kit.str());
}

// The latest finished slot, when no later one is due: finishing it again is harmless.
std::optional<ReviewSlot> just_finished(const std::vector<ReviewSlot>& slots, Day today) {
  std::optional<ReviewSlot> found;
  for (const ReviewSlot& slot : slots) {
    if (slot.state == SlotState::kDone) found = slot;
    if (slot.state == SlotState::kDue && slot.day <= today) found.reset();
  }
  return found;
}

// Collects the entries of a finish while ids follow on.
class FinishWriter {
 public:
  FinishWriter(const Household& household, Asked asked) : ids_(next_ids(household)), asked_(asked) {}

  void entry(EntryKind kind, const StockKey& at, HalfServings amount, std::string note, PlaceKey to = {}) {
    Entry entry;
    entry.id = ids_.entry;
    ids_.entry = EntryId(ids_.entry.value() + 1);
    entry.kind = kind;
    entry.on = asked_.today;
    entry.written_at = asked_.now;
    entry.at = at;
    entry.to = std::move(to);
    entry.amount = amount;
    entry.note = std::move(note);
    changes.entries.push_back(std::move(entry));
  }
  void redate(LotId lot, const DateMark& mark) {
    Reading reading;
    reading.id = ids_.reading;
    ids_.reading = ReadingId(ids_.reading.value() + 1);
    reading.lot = lot;
    reading.on = asked_.today;
    reading.by = "review";
    reading.mark = mark;
    changes.readings.push_back(std::move(reading));
  }
  void finish(const PlaceKey& kit, Day slot) {
    ReviewEvent event;
    event.id = ids_.review_event;
    event.kit = kit;
    event.slot = slot;
    event.kind = ReviewEventKind::kFinished;
    event.on = asked_.today;
    changes.review_events.push_back(std::move(event));
  }
  Changes changes;

 private:
  NextIds ids_;
  Asked asked_;
};

}  // namespace

Result<PlaceKey> pantry_place(const Household& household) {
  const auto pantries = places_of_kind(household, PlaceKind::kPantry);
  if (pantries.empty()) {
    return fail(ErrorKind::kBadData, "the household has no pantry to take what leaves a kit",
                "add one: larderloop place add \"Pantry\" --kind pantry");
  }
  for (const PlaceKey& shelf : places_of_kind(household, PlaceKind::kShelf)) {
    if (is_within(household, shelf, pantries.front())) return shelf;
  }
  return pantries.front();
}

namespace {

// The review that a walk after use is: the one that is due, else the last one done, opened again, else the first one, moved to today.
ReviewSlot slot_after_use(const std::vector<ReviewSlot>& slots, const KitSchedule& schedule) {
  if (schedule.current) return *schedule.current;
  const ReviewSlot* last = nullptr;
  for (const ReviewSlot& slot : slots) {
    if (slot.state == SlotState::kDone) last = &slot;
  }
  return last == nullptr ? schedule.next : *last;
}

// Everything that lies in the kit is marked as missing; what an earlier walk marked there no longer counts.
void mark_all_missing(const Household& household, const BookView& view, const PlaceKey& kit, Day slot, Day today, Changes& changes) {
  MarkId id = next_ids(household).mark;
  for (const Position& position : view.positions) {
    if (*position.kit != kit) continue;
    for (const MarkWhat what : {MarkWhat::kThere, MarkWhat::kMissing}) {
      ReviewMark mark;
      mark.id = id;
      mark.kit = kit;
      mark.slot = slot;
      mark.at = position.at;
      mark.what = what;
      mark.on = today;
      if (what == MarkWhat::kMissing) mark.amount = position.amount;
      changes.review_marks.push_back(std::move(mark));
      id = MarkId(id.value() + 1);
    }
  }
}

Result<Outcome<ReviewStarted>> start_after_use(const Household& household, KitSchedule schedule, const BookView& view, Asked asked) {
  auto slots = review_slots(household, schedule.kit, asked.today);
  if (!slots) return fail(slots.error());
  const ReviewSlot slot = slot_after_use(*slots, schedule);
  Outcome<ReviewStarted> outcome;
  ReviewEventId id = next_ids(household).review_event;
  const auto event = [&](ReviewEventKind kind, std::string note) -> ReviewEvent& {
    ReviewEvent added;
    added.id = id;
    id = ReviewEventId(id.value() + 1);
    added.kit = schedule.kit;
    added.slot = slot.slot;
    added.kind = kind;
    added.on = asked.today;
    added.note = std::move(note);
    return outcome.changes.review_events.emplace_back(std::move(added));
  };
  if (slot.day > asked.today && !schedule.current) event(ReviewEventKind::kMoved, "the kit was used").moved_to = asked.today;
  event(ReviewEventKind::kStarted, std::string(kAfterUse));
  mark_all_missing(household, view, schedule.kit, slot.slot, asked.today, outcome.changes);
  Household begun = household;
  apply_changes(begun, outcome.changes);
  auto after = kit_schedule(begun, schedule.kit, asked.today);
  if (!after) return fail(after.error());
  outcome.report.schedule = *after;
  outcome.report.after_use = true;
  outcome.report.positions = static_cast<int>(outcome.changes.review_marks.size() / 2);
  return outcome;
}

}  // namespace

Result<Outcome<ReviewStarted>> start_review(const Household& household, const PlaceKey& kit, Asked asked, bool after_use) {
  auto schedule = kit_schedule(household, kit, asked.today);
  if (!schedule) return fail(schedule.error());
  if (after_use) {
    auto seen = view_book(household, asked.today);
    if (!seen) return fail(seen.error());
    return start_after_use(household, *schedule, *seen, asked);
  }
  if (!schedule->current) {
    return fail(ErrorKind::kBadData,
                "no review of '" + kit_name(household, kit) + "' is due: the next one is on " +
                    plain_day(schedule->next.day),
                "it can be started from " + plain_day(schedule->next.day - Days(kEarlyDays)) +
                    ", or moved: larderloop review move " + kit.str() + " --to " + iso_day(asked.today));
  }
  auto view = view_book(household, asked.today);
  if (!view) return fail(view.error());
  Outcome<ReviewStarted> outcome;
  outcome.report.already_open = schedule->current->state == SlotState::kOpen;
  outcome.report.positions = static_cast<int>(
      std::count_if(view->positions.begin(), view->positions.end(),
                    [&](const Position& position) { return *position.kit == kit; }));
  if (!outcome.report.already_open) {
    ReviewEvent event;
    event.id = next_ids(household).review_event;
    event.kit = kit;
    event.slot = schedule->current->slot;
    event.kind = ReviewEventKind::kStarted;
    event.on = asked.today;
    outcome.changes.review_events.push_back(event);
    schedule->current->state = SlotState::kOpen;
    schedule->current->started_on = asked.today;
  }
  outcome.report.schedule = *schedule;
  return outcome;
}

Result<Outcome<MarkDone>> mark_review(const Household& household, const MarkRequest& request, Asked asked) {
  auto schedule = kit_schedule(household, request.kit, asked.today);
  if (!schedule) return fail(schedule.error());
  if (!schedule->current || schedule->current->state != SlotState::kOpen) return no_review_begun(household, *schedule);
  auto view = view_book(household, asked.today);
  if (!view) return fail(view.error());
  const auto position = std::find_if(view->positions.begin(), view->positions.end(),
                                     [&](const Position& each) { return each.at == request.at; });
  const std::string lot = "lot " + std::to_string(request.at.lot.value());
  if (position == view->positions.end() || view->kit_of_place.at(request.at.place) != request.kit) {
    return fail(ErrorKind::kBadData, lot + " is not in '" + kit_name(household, request.kit) + "' by the book",
                "if it is there, record it: larderloop record found " + std::to_string(request.at.lot.value()) +
                    " 1 --at " + request.at.place.str());
  }
  HalfServings amount = position->amount;
  if (request.units) {
    amount = HalfServings::units(*request.units, position->food->servings);
    if (*request.units < 1 || amount > position->amount) {
      return fail(ErrorKind::kBadData,
                  lot + " has " + units_words(*position->food, position->amount) + " there, not " +
                      std::to_string(*request.units),
                  "name a number from 1 to " +
                      std::to_string(position->amount.whole_units(position->food->servings)));
    }
  }
  if ((request.what == MarkWhat::kRedated) != request.mark.has_value()) {
    return fail(ErrorKind::kUsage, "a date belongs to a package whose date reads otherwise, and only to that",
                "write: larderloop review mark " + request.kit.str() + " LOT redated --date 2027-08");
  }
  Outcome<MarkDone> outcome;
  ReviewMark mark;
  mark.id = next_ids(household).mark;
  mark.kit = request.kit;
  mark.slot = schedule->current->slot;
  mark.at = request.at;
  mark.what = request.what;
  mark.on = asked.today;
  if (request.what == MarkWhat::kMissing || request.what == MarkWhat::kDamaged) mark.amount = amount;
  mark.mark = request.mark;
  outcome.report = {mark, position->amount};
  outcome.changes.review_marks.push_back(std::move(mark));
  return outcome;
}

Result<Outcome<ReviewFinished>> finish_review(const Household& household, const PlaceKey& kit, Asked asked) {
  auto schedule = kit_schedule(household, kit, asked.today);
  if (!schedule) return fail(schedule.error());
  auto pantry = pantry_place(household);
  if (!pantry) return fail(pantry.error());
  Outcome<ReviewFinished> outcome;
  ReviewFinished& report = outcome.report;
  report.schedule = *schedule;
  report.pulled_to = *pantry;
  if (!schedule->current || schedule->current->state != SlotState::kOpen) {
    auto slots = review_slots(household, kit, asked.today);
    if (!slots) return fail(slots.error());
    const auto finished = just_finished(*slots, asked.today);
    if (!finished) return no_review_begun(household, *schedule);
    report.already_done = true;
    report.schedule.current = *finished;
    return outcome;
  }

  report.after_use = begun_after_use(household, kit, schedule->current->slot);
  const auto findings = findings_of(household, kit, schedule->current->slot);
  FinishWriter writer(household, asked);
  // Dates that read otherwise come first, since they decide what will last.
  Household redated;
  const Household* seen = &household;
  for (const auto& [at, found] : findings) {
    // A walk after use may follow one whose dates were written down already.
    const Lot* lot = find_lot(household, at.lot);
    if (found.mark && lot_facts(household, *lot).mark != *found.mark) writer.redate(at.lot, *found.mark);
  }
  if (!writer.changes.readings.empty()) {
    redated = household;
    apply_changes(redated, writer.changes);
    seen = &redated;
  }
  auto view = view_book(*seen, asked.today);
  if (!view) return fail(view.error());

  std::vector<Leaving> missing, damaged, pulled;
  std::set<PlaceKey> unwalked, walked;
  for (const Position& position : view->positions) {
    if (*position.kit != kit) continue;
    const auto found = findings.find(position.at);
    HalfServings left = position.amount;
    Leaving leaving{position.at, position.food->key, {}, position.good_through, LeaveReason::kTooOld};
    if (found == findings.end() || !found->second.touched) {
      report.unmarked += 1;
      unwalked.insert(position.at.place);
    } else {
      walked.insert(position.at.place);
      leaving.amount = std::min(found->second.missing, left);
      if (leaving.amount > HalfServings()) {
        leaving.reason = LeaveReason::kMissing;
        if (report.after_use && position.food->kind != FoodKind::kThing)
          writer.entry(EntryKind::kEaten, position.at, leaving.amount, "used in earnest");
        else
          writer.entry(EntryKind::kLost, position.at, leaving.amount, "missing at the review");
        missing.push_back(leaving);
        left -= leaving.amount;
      }
      leaving.amount = std::min(found->second.damaged, left);
      if (leaving.amount > HalfServings()) {
        leaving.reason = LeaveReason::kDamaged;
        writer.entry(EntryKind::kThrownOut, position.at, leaving.amount, "damaged, thrown out at the review");
        damaged.push_back(leaving);
        left -= leaving.amount;
      }
    }
    if (left == HalfServings() || lasts(position, schedule->hold_until)) continue;
    leaving.amount = left;
    leaving.reason = why_leave(position, asked.today);
    if (leaving.reason == LeaveReason::kPast && position.facts->safety) {
      writer.entry(EntryKind::kThrownOut, position.at, left, "past its safety date, thrown out at the review");
    } else {
      writer.entry(EntryKind::kMoved, position.at, left, "pulled at the review", *pantry);
    }
    pulled.push_back(leaving);
  }
  writer.finish(kit, schedule->current->slot);
  for (const PlaceKey& place : unwalked) {
    if (walked.count(place) == 0) report.not_walked_places.push_back(place);
  }
  std::stable_sort(pulled.begin(), pulled.end(), [](const Leaving& a, const Leaving& b) {
    return a.at.place != b.at.place ? a.at.place < b.at.place : a.food < b.food;
  });
  report.left = std::move(missing);
  report.left.insert(report.left.end(), damaged.begin(), damaged.end());
  report.left.insert(report.left.end(), pulled.begin(), pulled.end());
  outcome.changes = std::move(writer.changes);
  return outcome;
}

}  // namespace larderloop
