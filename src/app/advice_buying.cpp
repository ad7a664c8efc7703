// Smaller packs, and a par level: what need not have been bought.
#include "app/advice_lots.h"

#include <algorithm>

namespace larderloop {
namespace {

std::int64_t unit_of(const Food& food) {
  return HalfServings::units(1, food.servings).halves();
}

// Whole units that were thrown out and never lay in a kit, whichever of the lot they were.
std::int64_t spare_units(const Food& food, const LotStory& lot) {
  return std::max<std::int64_t>(0, lot.asked - lot.in_kits) / unit_of(food);
}

// The largest pack in the book that divides a purchase; 0 = none does.
std::int64_t pack_of(const Food& food, std::int64_t units) {
  std::int64_t largest = 0;
  for (const Pack& pack : food.packs) {
    if (pack.units > 0 && units % pack.units == 0) largest = std::max(largest, pack.units);
  }
  return largest;
}

bool knows_pack(const Food& food, std::int64_t units) {
  return std::any_of(food.packs.begin(), food.packs.end(),
                     [&](const Pack& pack) { return pack.units == units; });
}

void avoid(Remedy& remedy, const Food& food, const LotStory& lot, std::int64_t units) {
  const std::int64_t halves = units * unit_of(food);
  remedy.avoided += halves;
  remedy.cents += lot.cents_of(halves);
}

// Packs of `smaller` in the place of every larger one.
Remedy with_packs(const Food& food, const std::vector<LotStory>& lots, std::int64_t smaller) {
  Remedy remedy;
  remedy.units = smaller;
  remedy.known = knows_pack(food, smaller);
  for (const LotStory& lot : lots) {
    const std::int64_t units = lot.bought / unit_of(food);
    const std::int64_t pack = pack_of(food, units);
    if (pack <= smaller) continue;
    const std::int64_t wanted = std::max(units - spare_units(food, lot), units - pack + 1);
    const std::int64_t bought = (wanted + smaller - 1) / smaller * smaller;
    if (bought >= units) continue;
    avoid(remedy, food, lot, units - bought);
    remedy.units_before = std::max(remedy.units_before.value_or(0), pack);
  }
  return remedy;
}

// Units of a lot that a par level leaves unbought, taken from those thrown out first.
struct Unbought {
  const LotStory* lot = nullptr;
  std::int64_t units = 0;
};

std::int64_t still_missing(const Food& food, const Unbought& each, Day evening) {
  std::int64_t gone = 0;
  for (const Thrown& thrown : each.lot->thrown) {
    if (thrown.on <= evening) gone += thrown.halves;
  }
  return std::max<std::int64_t>(0, each.units - gone / unit_of(food));
}

// The replay under one level; absent: somebody would have gone without.
std::optional<Remedy> with_par(const Food& food, const std::vector<const LotStory*>& lots,
                               std::int64_t level) {
  Remedy remedy;
  remedy.kind = RemedyKind::kPar;
  remedy.units = level;
  remedy.units_before = food.par_level;
  std::vector<Unbought> unbought;
  for (std::size_t index = 0; index < lots.size(); ++index) {
    const LotStory& lot = *lots[index];
    const Day day = lot.change.begin()->first;
    const Day evening = day - Days(1);
    std::int64_t halves = 0, on_hand = 0;
    for (std::size_t other = 0; other < lots.size(); ++other) {
      halves += through(lots[other]->change, evening);
      if (other < index && lots[other]->change.begin()->first == day)
        on_hand += lots[other]->bought / unit_of(food);
    }
    on_hand += halves / unit_of(food);
    for (const Unbought& each : unbought) on_hand -= still_missing(food, each, evening);
    const std::int64_t units = lot.bought / unit_of(food);
    const std::int64_t over = std::max<std::int64_t>(0, std::min(units, on_hand + units - level));
    if (over > spare_units(food, lot)) return std::nullopt;
    if (over == 0) continue;
    unbought.push_back({&lot, over});
    avoid(remedy, food, lot, over);
  }
  return remedy;
}

}  // namespace

std::optional<Remedy> best_pack(const Food& food, const std::vector<LotStory>& lots) {
  std::int64_t largest = 0;
  for (const Pack& pack : food.packs) largest = std::max(largest, pack.units);
  std::optional<Remedy> best;
  for (std::int64_t smaller = std::min<std::int64_t>(largest, 200) - 1; smaller >= 1; --smaller) {
    const Remedy remedy = with_packs(food, lots, smaller);
    if (remedy.avoided == 0) continue;
    const bool as_good = best && !better(remedy, *best) && !better(*best, remedy);
    if (!best || better(remedy, *best) || (as_good && remedy.known && !best->known)) best = remedy;
  }
  return best;
}

std::optional<Remedy> best_par(const Food& food, const std::vector<LotStory>& lots) {
  std::vector<const LotStory*> pantry;
  std::int64_t most = 0;
  for (const LotStory& lot : lots) {
    if (lot.in_kits > 0) continue;
    pantry.push_back(&lot);
    most += lot.bought / unit_of(food);
  }
  // A higher level is bought to more often, so it avoids less: the first one that is not possible
  // ends the search.
  std::optional<Remedy> best;
  for (std::int64_t level = std::min<std::int64_t>(most, 2000); level >= 0; --level) {
    const auto remedy = with_par(food, pantry, level);
    if (!remedy) break;
    if (remedy->avoided > 0 && (!best || better(*remedy, *best))) best = remedy;
  }
  // Whoever bought beyond a level that is there would have done so beyond another.
  if (best && food.par_level && *food.par_level <= best->units) return std::nullopt;
  return best;
}

}  // namespace larderloop
