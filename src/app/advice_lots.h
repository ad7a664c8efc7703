// advice_lots.h - the lots of one food as the replay looks at them.
#pragma once

#include "app/waste_values.h"
#include "larderloop/app/advice.h"
#include "larderloop/core/lot.h"

#include <map>
#include <vector>

namespace larderloop {

// Units of a lot thrown out unopened on one day.
struct Thrown {
  Day on{};
  std::int64_t halves = 0;
};

// What left a kit on a day, to be kept elsewhere or thrown out there and then.
struct KitLeave {
  Day on{};
  PlaceKey kit;
};

// A lot that came in on one day and was never found or counted up. Amounts in half servings.
// `asked`: of what was thrown out, unopened, in the year that is asked for; `asked_cents`: what
// that cost.
struct LotStory {
  const Lot* lot = nullptr;
  LotFacts facts;
  std::int64_t bought = 0;
  std::int64_t in_kits = 0;  // ever put into a kit, summed up
  std::vector<KitLeave> leaves;
  std::vector<PlaceKey> kits;              // it ever lay in, sorted
  std::map<Day, std::int64_t> change;      // of what is on hand, by day
  std::map<Day, std::int64_t> kit_change;  // of what lies in kits, by day
  std::vector<Thrown> thrown;              // unopened, in the year that is asked for
  std::int64_t asked = 0;
  std::int64_t asked_cents = 0;
  std::int64_t past = 0;  // of `asked`: thrown out after its good-through day
  // The cents of a part of `asked`, rounded down.
  [[nodiscard]] std::int64_t cents_of(std::int64_t halves) const {
    return asked == 0 ? 0 : asked_cents * halves / asked;
  }
};

// All that the replay knows.
struct AdviceWork {
  const Household& household;
  Day today{};
  std::vector<ValuedEntry> entries;
  // The stories of a food, in the order of purchase.
  [[nodiscard]] std::vector<LotStory> stories(const FoodKey& food, std::optional<int> year) const;
};

[[nodiscard]] std::int64_t through(const std::map<Day, std::int64_t>& change, Day last);

// The best change of each kind, absent where none avoids anything.
[[nodiscard]] std::optional<Remedy> best_pack(const Food& food, const std::vector<LotStory>& lots);
[[nodiscard]] std::optional<Remedy> best_par(const Food& food, const std::vector<LotStory>& lots);
[[nodiscard]] std::optional<Remedy> best_food(const AdviceWork& work, const Food& food,
                                              const std::vector<LotStory>& lots);
[[nodiscard]] std::optional<Remedy> best_review(const AdviceWork& work, const Food& food,
                                                const std::vector<LotStory>& lots);
[[nodiscard]] bool better(const Remedy& a, const Remedy& b);

}  // namespace larderloop
