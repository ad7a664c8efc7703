#include "app/advice_lots.h"

#include <algorithm>
#include <set>

namespace larderloop {
namespace {

// Of several days, found or counted up: not to be traced back to one purchase.
class StoryMaker {
 public:
  StoryMaker(const Household& household, const Lot& lot, std::optional<int> year)
      : household_(household), year_(year) {
    story_.lot = &lot;
    story_.facts = lot_facts(household, lot);
  }

  void see(const ValuedEntry& valued) {
    const Entry& entry = *valued.entry;
    const std::int64_t halves = entry.amount.halves();
    const PlaceKey kit = kit_of(household_, entry.at.place);
    switch (entry.kind) {
      case EntryKind::kReceived:
        days_.insert(entry.on);
        story_.bought += halves;
        arrive(kit, entry.on, halves);
        story_.change[entry.on] += halves;
        break;
      case EntryKind::kFound:
        sound_ = false;
        break;
      case EntryKind::kCounted:
        if (entry.change > 0) sound_ = false;
        story_.change[entry.on] += entry.change;
        if (!kit.empty()) story_.kit_change[entry.on] += entry.change;
        break;
      case EntryKind::kMoved:
        move(entry, kit);
        break;
      case EntryKind::kThrownOut:
        if (!entry.at.opened_on) throw_out(valued);
        leave(kit, entry.on, halves);
        if (!kit.empty()) story_.leaves.push_back({entry.on, kit});
        break;
      case EntryKind::kEaten:
      case EntryKind::kGivenAway:
      case EntryKind::kLost:
        leave(kit, entry.on, halves);
        break;
      case EntryKind::kOpened:
      case EntryKind::kCorrected:
        break;
    }
  }

  [[nodiscard]] bool sound() const { return sound_ && days_.size() == 1; }
  [[nodiscard]] LotStory take() {
    story_.kits.assign(kits_.begin(), kits_.end());
    return std::move(story_);
  }

 private:
  void arrive(const PlaceKey& kit, Day on, std::int64_t halves) {
    if (kit.empty()) return;
    kits_.insert(kit);
    story_.in_kits += halves;
    story_.kit_change[on] += halves;
  }
  void leave(const PlaceKey& kit, Day on, std::int64_t halves) {
    story_.change[on] -= halves;
    if (!kit.empty()) story_.kit_change[on] -= halves;
  }
  void move(const Entry& entry, const PlaceKey& from) {
    const PlaceKey to = kit_of(household_, entry.to);
    if (from == to) return;
    if (!from.empty()) {
      story_.kit_change[entry.on] -= entry.amount.halves();
      story_.leaves.push_back({entry.on, from});
    }
    arrive(to, entry.on, entry.amount.halves());
  }
  void throw_out(const ValuedEntry& valued) {
    const Entry& entry = *valued.entry;
    if (year_ && year_of(entry.on) != *year_) return;
    const std::int64_t halves = entry.amount.halves();
    story_.thrown.push_back({entry.on, halves});
    story_.asked += halves;
    story_.asked_cents += valued.worth.cents;
    if (story_.facts.good_through && entry.on > *story_.facts.good_through) story_.past += halves;
  }

  const Household& household_;
  std::optional<int> year_;
  LotStory story_;
  std::set<Day> days_;
  std::set<PlaceKey> kits_;
  bool sound_ = true;
};

}  // namespace

std::int64_t through(const std::map<Day, std::int64_t>& change, Day last) {
  std::int64_t sum = 0;
  for (const auto& [day, by] : change) {
    if (day > last) break;
    sum += by;
  }
  return sum;
}

std::vector<LotStory> AdviceWork::stories(const FoodKey& food, std::optional<int> year) const {
  std::map<LotId, StoryMaker> makers;
  for (const ValuedEntry& valued : entries) {
    if (valued.food->key != food) continue;
    makers.try_emplace(valued.lot->id, household, *valued.lot, year).first->second.see(valued);
  }
  std::vector<LotStory> all;
  for (auto& [id, maker] : makers) {
    if (!maker.sound()) continue;
    all.push_back(maker.take());
    std::sort(all.back().thrown.begin(), all.back().thrown.end(),
              [](const Thrown& a, const Thrown& b) { return a.on < b.on; });
  }
  // A received entry may be of a later day than the lot's own.
  const auto came = [](const LotStory& lot) { return lot.change.begin()->first; };
  std::stable_sort(all.begin(), all.end(),
                   [&](const LotStory& a, const LotStory& b) { return came(a) < came(b); });
  return all;
}

bool better(const Remedy& a, const Remedy& b) {
  return a.cents != b.cents ? a.cents > b.cents : a.avoided > b.avoided;
}

}  // namespace larderloop
