#include "larderloop/app/advice.h"

#include "app/advice_lots.h"

#include <algorithm>

namespace larderloop {

std::string_view remedy_kind_name(RemedyKind kind) {
  switch (kind) {
    case RemedyKind::kPack:
      return "pack";
    case RemedyKind::kPar:
      return "par_level";
    case RemedyKind::kFood:
      return "food";
    case RemedyKind::kReview:
      return "review";
  }
  return "";
}

Result<std::vector<Advice>> make_advice(const Household& household, std::optional<int> year,
                                        const std::optional<FoodKey>& food, Day today) {
  const auto waste = make_waste(household, year, food);
  if (!waste) return fail(waste.error());
  std::map<FoodKey, Worth> wasted;
  for (const WasteRow& row : waste->rows) {
    if (row.thrown_out.amount > 0) wasted[row.food].add(row.thrown_out);
  }
  std::vector<Advice> all;
  for (const auto& [key, worth] : wasted) all.push_back({key, worth, std::nullopt});
  std::stable_sort(all.begin(), all.end(), [](const Advice& a, const Advice& b) {
    if (a.wasted.cents != b.wasted.cents) return a.wasted.cents > b.wasted.cents;
    return a.wasted.amount > b.wasted.amount;
  });
  if (all.size() > kMostAdvised) all.resize(kMostAdvised);

  const AdviceWork work{household, today, value_entries(household)};
  for (Advice& advice : all) {
    const Food& each = *find_food(household, advice.food);
    const std::vector<LotStory> lots = work.stories(each.key, year);
    for (const auto& remedy : {best_pack(each, lots), best_par(each, lots),
                               best_food(work, each, lots), best_review(work, each, lots)}) {
      if (remedy && (!advice.best || better(*remedy, *advice.best))) advice.best = remedy;
    }
  }
  return all;
}

}  // namespace larderloop
