// reviews.h - the dated walks through a kit: when they are, what was marked, what finishing one means.
// Rules:    docs/decisions/0004-reviews.md. A slot is the date the rule gives; it names the review for ever, also when moved.
//           A review done settles the latest slot that is due; earlier undone ones count as missed; up to 30 days early counts as
//           the coming one. What stays in a kit must be good through the hold-until date: next review after this one + slack.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "larderloop/app/asked.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

namespace larderloop {

inline constexpr int kEarlyDays = 30;

enum class SlotState { kDone, kMissed, kSkipped, kOpen, kDue, kComing };
[[nodiscard]] std::string_view slot_state_words(SlotState state);  // "done", "missed", ...

// One review. `day`: when it is (moved_to or slot). kOpen: started and not finished. kDue: day reached, not done.
struct ReviewSlot {
  PlaceKey kit;
  Day slot{};
  Day day{};
  SlotState state = SlotState::kComing;
  std::optional<Day> started_on;
  std::optional<Day> finished_on;
};

// The rule of a kit, or the default one.
[[nodiscard]] ReviewRule review_rule_of(const Household& household, const PlaceKey& kit);
// Slots from a year before the first thing the kit's record knows (or `asked.today` - 2 years) through two years ahead, by slot.
[[nodiscard]] Result<std::vector<ReviewSlot>> review_slots(const Household& household, const PlaceKey& kit, Day today);

// Where a kit stands. `current`: the review that is being done or would be done today (open, else due, else coming within 30
// days), if any. `next`: the first review after that one. `hold_until`: next.day + slack; what stays must be good through it.
struct KitSchedule {
  PlaceKey kit;
  std::optional<ReviewSlot> current;
  ReviewSlot next;
  int slack_days = 14;
  Day hold_until{};
  std::vector<ReviewSlot> slots;  // what review_slots() says, which these were taken from
};
[[nodiscard]] Result<KitSchedule> kit_schedule(const Household& household, const PlaceKey& kit, Day today);

// ---- doing one ----

struct ReviewStarted {
  KitSchedule schedule;
  bool already_open = false;  // started before; marks so far are kept
  int positions = 0;          // stock positions to walk
  bool after_use = false;     // everything counts as used until it is marked as there
};
// kBadData when there is nothing due or coming within 30 days: says when the next one is.
// `after_use`: the kit was used in earnest. Everything in it is marked as missing, to be marked as there again as far as it came home; what is still
// missing at the end is written down as eaten (things: as lost). It needs no review that is due: else the last one that was done is opened again, or
// the first one is moved to today.
[[nodiscard]] Result<Outcome<ReviewStarted>> start_review(const Household& household, const PlaceKey& kit, Asked asked, bool after_use = false);

// The kit that is meant when none is named. kUsage when there are several.
[[nodiscard]] Result<PlaceKey> only_kit(const Household& household);
// Where a lot lies in a kit. kUsage when in several places and `at` names none of them.
[[nodiscard]] Result<StockKey> position_in_kit(const Household& household, const PlaceKey& kit, LotId lot,
                                               const std::optional<PlaceKey>& at, Day today);

struct MarkRequest {
  PlaceKey kit;
  StockKey at;
  MarkWhat what = MarkWhat::kThere;
  std::optional<std::int64_t> units;  // missing, damaged: how many; absent = all of it
  std::optional<DateMark> mark;       // redated
};
struct MarkDone {
  ReviewMark mark;
  HalfServings on_hand;
};
// kBadData: no review of the kit is open, more than there is, a lot that is not in the kit.
[[nodiscard]] Result<Outcome<MarkDone>> mark_review(const Household& household, const MarkRequest& request, Asked asked);

// Something the review takes out of the kit. `why`: what is wrong, in plain words.
enum class LeaveReason { kTooOld, kPast, kRecalled, kDoubtful, kDamaged, kMissing };
struct Leaving {
  StockKey at;
  FoodKey food;
  HalfServings amount;
  std::optional<Day> good_through;
  LeaveReason reason = LeaveReason::kTooOld;
};
struct ReviewFinished {
  KitSchedule schedule;        // as it was when finishing
  bool already_done = false;   // finished before: nothing was changed
  bool after_use = false;      // missing is what was used
  std::vector<Leaving> left;   // missing, damaged, pulled: in that order, by lot
  PlaceKey pulled_to;          // where pulled units were put: the pantry
  std::vector<PlaceKey> not_walked_places;  // places of the kit with positions that nobody marked
  int unmarked = 0;            // positions without any mark; taken as there
};
// Writes lost (missing), thrown out (damaged), readings (redated) and moves to the pantry (what will not last to the hold-until
// date) as entries, and the finish. Marks apply to the stock as it is now: an amount that has shrunk meanwhile is cut to what is
// left. Finishing again the same slot changes nothing.
[[nodiscard]] Result<Outcome<ReviewFinished>> finish_review(const Household& household, const PlaceKey& kit, Asked asked);

struct ReviewChanged {
  ReviewSlot before;
  ReviewSlot after;
};
[[nodiscard]] Result<Outcome<ReviewChanged>> skip_review(const Household& household, const PlaceKey& kit,
                                                         std::optional<Day> slot, Asked asked);
[[nodiscard]] Result<Outcome<ReviewChanged>> move_review(const Household& household, const PlaceKey& kit,
                                                         std::optional<Day> slot, Day to, Asked asked);

// The walk on paper: places of the kit in packing order with what should lie there.
struct SheetLine {
  StockKey at;
  FoodKey food;
  HalfServings amount;
  DateMark mark;
  std::optional<Day> good_through;
  bool label_read = false;
  bool leaves = false;  // will not last to the hold-until date, or must not stay
  LeaveReason reason = LeaveReason::kTooOld;
  std::optional<MarkWhat> marked;
};
struct SheetPlace {
  PlaceKey place;
  std::vector<SheetLine> lines;
};
struct ReviewSheet {
  KitSchedule schedule;
  std::vector<SheetPlace> places;
};
[[nodiscard]] Result<ReviewSheet> review_sheet(const Household& household, const PlaceKey& kit, Day today);

// The pantry place that pulled units go to: the first shelf of the first pantry, else the pantry. kBadData when there is none.
[[nodiscard]] Result<PlaceKey> pantry_place(const Household& household);

}  // namespace larderloop
