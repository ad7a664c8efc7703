// The reviews of a kit some weeks earlier.
#include "app/advice_lots.h"
#include "larderloop/app/reviews.h"
#include "larderloop/core/eligible.h"

#include <algorithm>

namespace larderloop {
namespace {

// What left a kit at one finished review and was thrown out past its date. `before`: the review
// before it; `hold_until`: of it.
struct Group {
  Day on{};
  std::optional<Day> before;
  Day hold_until{};
  std::vector<const LotStory*> lots;
};

// The only kit and day that the whole lot left a kit by; absent where there is no such.
std::optional<KitLeave> only_leave(const LotStory& lot) {
  if (lot.past == 0 || lot.kits.size() != 1 || lot.leaves.empty()) return std::nullopt;
  if (lot.in_kits != lot.bought) return std::nullopt;
  const KitLeave& first = lot.leaves.front();
  for (const KitLeave& leave : lot.leaves) {
    if (leave.on != first.on || leave.kit != first.kit) return std::nullopt;
  }
  return first;
}

Result<std::vector<Group>> groups_of(const AdviceWork& work, const PlaceKey& kit,
                                     const std::vector<LotStory>& lots) {
  auto slots = review_slots(work.household, kit, work.today);
  if (!slots) return fail(slots.error());
  const int slack =
      review_rule_of(work.household, kit).slack_days.value_or(work.household.settings.slack_days);
  std::vector<Group> groups;
  std::optional<Day> before;
  for (std::size_t index = 0; index < slots->size(); ++index) {
    const ReviewSlot& slot = (*slots)[index];
    if (!slot.finished_on) continue;
    Group group{*slot.finished_on, before, {}, {}};
    before = group.on;
    if (index + 1 == slots->size()) continue;
    group.hold_until = (*slots)[index + 1].day + Days(slack);
    for (const LotStory& lot : lots) {
      const auto leave = only_leave(lot);
      if (leave && leave->kit == kit && leave->on == group.on) group.lots.push_back(&lot);
    }
    if (!group.lots.empty()) groups.push_back(std::move(group));
  }
  return groups;
}

class Replay {
 public:
  Replay(const AdviceWork& work, const Food& food) : work_(work), food_(food) {
    for (const ValuedEntry& valued : work.entries) {
      if (valued.entry->kind == EntryKind::kEaten) eaten_.push_back(&valued);
    }
    std::stable_sort(eaten_.begin(), eaten_.end(), [](const ValuedEntry* a, const ValuedEntry* b) {
      return a->entry->on < b->entry->on;
    });
  }

  void count(const Group& group, int weeks, Remedy& remedy) const {
    const Day day = group.on - Days(7 * weeks);
    if (group.before && day <= *group.before) return;
    std::vector<const LotStory*> out;
    std::int64_t rest = 0, eaten = 0;
    int window = 0;
    for (const LotStory* lot : group.lots) {
      const Day good_through = *lot->facts.good_through;
      if (good_through < day || good_through >= group.hold_until - Days(7 * weeks)) continue;
      if (through(lot->kit_change, day) < lot->bought) continue;
      out.push_back(lot);
      rest += lot->past;
      eaten += eaten_of(*lot, group.on, good_through);
      window = std::max(window, days_between(group.on, good_through) + 1);
    }
    if (out.empty()) return;
    std::int64_t room = 0;
    for (int week = 1; week <= weeks; ++week) {
      const Day from = group.on - Days(7 * week);
      // A lot that was past its date at the review had not even all of the last weeks.
      if (std::all_of(out.begin(), out.end(), [&](const LotStory* lot) {
            return *lot->facts.good_through >= from + Days(6);
          })) {
        room += room_in(from, out, day);
      }
    }
    rest = std::min(rest, room);
    if (window >= 7) rest = std::min(rest, eaten * 7 * weeks / window);
    const std::int64_t unit = HalfServings::units(1, food_.servings).halves();
    for (const LotStory* lot : out) {
      const std::int64_t part = std::min(rest, lot->past) / unit * unit;
      rest -= part;
      remedy.avoided += part;
      remedy.cents += lot->cents_of(part);
    }
  }

 private:
  // What was eaten from one day through another.
  template <class See>
  void for_eaten(Day from, Day last, See see) const {
    auto at = std::lower_bound(
        eaten_.begin(), eaten_.end(), from,
        [](const ValuedEntry* valued, Day day) { return valued->entry->on < day; });
    for (; at != eaten_.end() && (*at)->entry->on <= last; ++at) see(**at);
  }

  std::int64_t eaten_of(const LotStory& lot, Day from, Day last) const {
    std::int64_t sum = 0;
    for_eaten(from, last, [&](const ValuedEntry& valued) {
      if (valued.lot->id == lot.lot->id) sum += valued.worth.amount;
    });
    return sum;
  }

  // What the seven days from `from` leave, in half servings.
  std::int64_t room_in(Day from, const std::vector<const LotStory*>& lots, Day day) const {
    std::map<PersonKey, std::int64_t> all, same;
    std::int64_t nobody = 0;
    for_eaten(from, from + Days(6), [&](const ValuedEntry& valued) {
      if (valued.food->kind == FoodKind::kWater) return;
      if (!valued.entry->who) {
        nobody += valued.worth.amount;
        return;
      }
      all[*valued.entry->who] += valued.worth.amount;
      if (valued.food->key == food_.key) same[*valued.entry->who] += valued.worth.amount;
    });
    const Settings& settings = work_.household.settings;
    std::int64_t room = 0;
    for (const Person& person : work_.household.people) {
      if (person.retired || !may_have(person, lots, day)) continue;
      std::int64_t limit = person.tolerance.value_or(settings.tolerance).halves() - all[person.key];
      std::int64_t of_food = settings.monotony.halves() - same[person.key];
      if (!person.is_human()) limit = of_food = 14 * person.appetite.halves() - all[person.key];
      room += std::max<std::int64_t>(0, food_.staple ? limit : std::min(limit, of_food));
    }
    return std::max<std::int64_t>(0, room - nobody);
  }

  bool may_have(const Person& person, const std::vector<const LotStory*>& lots, Day day) const {
    return std::all_of(lots.begin(), lots.end(), [&](const LotStory* lot) {
      const Statement* label = lot->facts.label ? &*lot->facts.label : nullptr;
      return lot->facts.state == LotState::kOk &&
             !why_not(work_.household, person, food_, label, day);
    });
  }

  const AdviceWork& work_;
  const Food& food_;
  std::vector<const ValuedEntry*> eaten_;  // by day
};

}  // namespace

std::optional<Remedy> best_review(const AdviceWork& work, const Food& food,
                                  const std::vector<LotStory>& lots) {
  std::optional<Remedy> best;
  if (food.kind == FoodKind::kThing || food.kind == FoodKind::kWater) return best;
  const Replay replay(work, food);
  for (const PlaceKey& kit : places_of_kind(work.household, PlaceKind::kKit)) {
    const auto groups = groups_of(work, kit, lots);
    if (!groups) continue;  // a rule that gives no dates: nothing is claimed of it
    for (int weeks = 1; weeks <= kMostWeeksEarlier; ++weeks) {
      Remedy remedy;
      remedy.kind = RemedyKind::kReview;
      remedy.kit = kit;
      remedy.weeks = weeks;
      for (const Group& group : *groups) replay.count(group, weeks, remedy);
      if (remedy.avoided > 0 && (!best || better(remedy, *best))) best = remedy;
    }
  }
  return best;
}

}  // namespace larderloop
