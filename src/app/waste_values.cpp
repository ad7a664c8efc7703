#include "app/waste_values.h"

#include "larderloop/core/lot.h"

#include <algorithm>
#include <map>
#include <set>

namespace larderloop {
namespace {

// So many cents or kcal for so many half servings.
struct Rate {
  std::int64_t value = 0;
  std::int64_t halves = 1;
  [[nodiscard]] std::int64_t of(std::int64_t amount) const {
    return (2 * value * amount + halves) / (2 * halves);
  }
  // The part of an amount that begins where `before` ended.
  [[nodiscard]] std::int64_t part(std::int64_t before, std::int64_t amount) const {
    return of(before + amount) - of(before);
  }
};

// A lot on its way through the record: its rates, and how much of it came and left so far.
struct LotValue {
  const Lot* lot = nullptr;
  const Food* food = nullptr;
  std::optional<Day> good_through;
  std::optional<Rate> price;
  bool by_pack = false;
  std::optional<Rate> energy;
  std::int64_t paid = 0, paid_for = 0;
  std::int64_t came = 0, left = 0;
};

bool has_energy(const Food& food) {
  return food.kind != FoodKind::kWater && food.kind != FoodKind::kThing;
}

void settle_rates(LotValue& lot) {
  const std::int64_t unit = HalfServings::units(1, lot.food->servings).halves();
  if (lot.paid_for > 0) {
    lot.price = Rate{lot.paid, lot.paid_for};
  } else if (!lot.food->packs.empty()) {
    const auto dearer = [](const Pack& a, const Pack& b) {
      return a.price_cents * b.units < b.price_cents * a.units;
    };
    const Pack& pack = *std::min_element(lot.food->packs.begin(), lot.food->packs.end(), dearer);
    lot.price = Rate{pack.price_cents, pack.units * unit};
    lot.by_pack = true;
  }
  if (lot.food->energy_kcal) lot.energy = Rate{*lot.food->energy_kcal, unit};
}

// What an amount is worth that came or left after `before` of the lot had.
Worth worth_of(const LotValue& lot, std::int64_t before, const Entry& entry) {
  Worth worth;
  worth.amount = entry.amount.halves();
  if (entry.kind == EntryKind::kReceived && entry.paid_cents) {
    worth.cents = *entry.paid_cents;
  } else if (lot.price) {
    worth.cents = lot.price->part(before, worth.amount);
    if (lot.by_pack) worth.pack_cents = worth.cents;
  } else {
    worth.without_price = worth.amount;
  }
  if (lot.energy) {
    worth.kcal = lot.energy->part(before, worth.amount);
  } else if (has_energy(*lot.food)) {
    worth.without_energy = worth.amount;
  }
  if (lot.good_through) {
    worth.dated = worth.amount;
    worth.days_left = worth.amount * days_between(entry.on, *lot.good_through);
  }
  return worth;
}

}  // namespace

std::vector<ValuedEntry> value_entries(const Household& household) {
  std::set<EntryId> corrected;
  for (const Entry& entry : household.entries) {
    if (entry.kind == EntryKind::kCorrected) corrected.insert(entry.corrects);
  }
  const auto counts = [&](const Entry& entry) {
    return entry.kind != EntryKind::kCorrected && corrected.count(entry.id) == 0;
  };
  std::map<LotId, LotValue> lots;
  const std::vector<LotFacts> facts = all_lot_facts(household);
  for (std::size_t index = 0; index < household.lots.size(); ++index) {
    const Lot& lot = household.lots[index];
    LotValue& value = lots[lot.id];
    value.lot = &lot;
    value.food = find_food(household, lot.food);
    value.good_through = facts[index].good_through;
  }
  for (const Entry& entry : household.entries) {
    if (!counts(entry) || entry.kind != EntryKind::kReceived || !entry.paid_cents) continue;
    LotValue& lot = lots.at(entry.at.lot);
    lot.paid += *entry.paid_cents;
    lot.paid_for += entry.amount.halves();
  }
  for (auto& [id, lot] : lots) settle_rates(lot);

  std::vector<ValuedEntry> all;
  for (const Entry& entry : household.entries) {
    if (!counts(entry)) continue;
    LotValue& lot = lots.at(entry.at.lot);
    ValuedEntry valued{&entry, lot.lot, lot.food, lot.good_through, {}};
    switch (entry.kind) {
      case EntryKind::kReceived:
        valued.worth = worth_of(lot, lot.came, entry);
        lot.came += entry.amount.halves();
        break;
      case EntryKind::kEaten:
      case EntryKind::kGivenAway:
      case EntryKind::kThrownOut:
      case EntryKind::kLost:
        valued.worth = worth_of(lot, lot.left, entry);
        lot.left += entry.amount.halves();
        break;
      case EntryKind::kFound:
      case EntryKind::kMoved:
      case EntryKind::kOpened:
      case EntryKind::kCounted:
      case EntryKind::kCorrected:
        break;
    }
    all.push_back(valued);
  }
  return all;
}

}  // namespace larderloop
