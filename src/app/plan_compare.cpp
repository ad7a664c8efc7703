// The household's plan and plain date order side by side, in numbers that decide.
#include "app/plan_build.h"
#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>

namespace larderloop {
namespace {

constexpr std::int64_t kVaried =
    4;  // half servings of one food a person and week that repeat nothing

// The cheapest way to buy it: a price for so many units.
const Pack* cheapest(const Food& food) {
  const auto dearer = [](const Pack& a, const Pack& b) {
    return a.price_cents * b.units < b.price_cents * a.units;
  };
  const auto best = std::min_element(food.packs.begin(), food.packs.end(), dearer);
  return best == food.packs.end() ? nullptr : &*best;
}

std::int64_t nearest(std::int64_t numerator, std::int64_t denominator) {
  return (2 * numerator + denominator) / (2 * denominator);
}

void add(NotEaten& sum, const Food& food, std::int64_t halves) {
  if (halves <= 0) return;
  const std::int64_t unit = 2 * food.servings;
  sum.amount += HalfServings(halves);
  if (const Pack* pack = cheapest(food)) {
    sum.cents += nearest(halves * pack->price_cents, unit * pack->units);
  } else {
    sum.without_price += HalfServings(halves);
  }
  if (food.energy_kcal) {
    sum.kcal += nearest(halves * *food.energy_kcal, unit);
  } else {
    sum.without_energy += HalfServings(halves);
  }
}

class Comparer {
 public:
  Comparer(const BookView& view, const EatBuild& build) : view_(view), build_(build) {
    for (const plan::EatLot& lot : build.problem.lots) {
      lots_[lot.id] = &lot;
      of_product_.emplace(lot.product, build.lots.at(lot.id));
    }
    for (const plan::EatMeal& meal : build.problem.meals) meals_[meal.id] = &meal;
    for (const plan::Eater& eater : build.problem.eaters) eaters_[eater.id] = &eater;
    for (const plan::EatProduct& product : build.problem.products) products_[product.id] = &product;
  }

  [[nodiscard]] EatingTally tally(const plan::EatDownPlan& solved) const {
    EatingTally sum;
    std::map<std::string, std::int64_t>
        rest;  // half servings in scope that nobody was handed, by product
    for (const plan::EatLot& lot : build_.problem.lots) {
      if (lot.last_good_day < build_.problem.today + build_.problem.horizon_days)
        rest[lot.product] += lot.already_open ? lot.open_servings : lot.units * servings(lot);
    }
    for (const plan::MealServing& each : solved.servings) {
      sum.handed_out += HalfServings(each.servings);
      rest[each.product] -= each.servings;
      count_wrong(each, sum);
    }
    std::map<const Food*, std::int64_t> given, thrown;
    for (const plan::LotUnits& each : solved.donated) {
      const std::int64_t halves = each.units * servings(*lots_.at(each.lot));
      rest[lots_.at(each.lot)->product] -= halves;
      if (keeps(each.lot)) continue;
      sum.given_away.units += each.units;
      given[build_.lots.at(each.lot)->food] += halves;
    }
    for (const plan::LotUnits& each : solved.wasted) {
      if (keeps(each.lot)) {
        rest[lots_.at(each.lot)->product] -= each.units * servings(*lots_.at(each.lot));
      } else {
        sum.thrown_away.units += each.units;
      }
    }
    for (const auto& [product, halves] : rest) thrown[of_product_.at(product)->food] += halves;
    for (const auto& [food, halves] : given) add(sum.given_away, *food, halves);
    for (const auto& [food, halves] : thrown) add(sum.thrown_away, *food, halves);
    sum.repeats = repeats(solved);
    sum.broken_rules = plan::check(build_.problem, solved).violations.size();
    return sum;
  }

  [[nodiscard]] std::vector<std::string> examples(const plan::EatDownPlan& plain) const {
    std::vector<std::string> all;
    std::set<std::pair<std::string, std::string>> told;
    for (const plan::MealServing& serving : plain.servings) {
      const auto refusal = refusal_of(serving);
      if (!refusal || all.size() >= 5 || !told.insert({serving.eater, serving.product}).second)
        continue;
      const auto [day, meal] = sits_at(*find_meal(build_.problem, serving.meal));
      all.push_back(short_day(day) + ", " + std::string(meal_name(meal)) + ": " +
                    find_person(*view_.household, PersonKey(serving.eater))->name +
                    " would be handed " + of_product_.at(serving.product)->food->name + ", but " +
                    refusal_words(*refusal));
    }
    return all;
  }

 private:
  [[nodiscard]] std::int64_t servings(const plan::EatLot& lot) const {
    return products_.at(lot.product)->servings;
  }
  // A lot that is in the problem only because somebody asked for it: what is not opened of it stays
  // good.
  [[nodiscard]] bool keeps(const std::string& lot) const {
    return *build_.lots.at(lot)->good_through >= build_.until;
  }

  [[nodiscard]] std::optional<RefusalReason> refusal_of(const plan::MealServing& serving) const {
    const Position& position = *of_product_.at(serving.product);
    const Person& person = *find_person(*view_.household, PersonKey(serving.eater));
    return why_not(*view_.household, person, *position.food, effective_label(*position.facts), view_.today);
  }

  void count_wrong(const plan::MealServing& serving, EatingTally& sum) const {
    const auto refusal = refusal_of(serving);
    const std::set<std::string>& avoid = eaters_.at(serving.eater)->avoid;
    const std::set<std::string>& tags = products_.at(serving.product)->contains;
    const bool avoided = std::any_of(tags.begin(), tags.end(),
                                     [&](const std::string& tag) { return avoid.count(tag) > 0; });
    if (refusal && refusal->refusal != Refusal::kRefuses) {
      sum.must_not += HalfServings(serving.servings);
    } else if (refusal || avoided) {
      sum.will_not += HalfServings(serving.servings);
    }
  }

  // Foods, not products: another label makes no change from lentil stew.
  [[nodiscard]] HalfServings repeats(const plan::EatDownPlan& solved) const {
    std::map<std::tuple<std::string, std::int64_t, const Food*>, std::int64_t> eaten, before;
    for (const plan::MealServing& each : solved.servings) {
      if (!find_person(*view_.household, PersonKey(each.eater))->is_human()) continue;
      const std::int64_t week = (meals_.at(each.meal)->day - build_.problem.week_start) / 7;
      eaten[{each.eater, week, of_product_.at(each.product)->food}] += each.servings;
    }
    for (const plan::Eater& eater : build_.problem.eaters) {
      for (const auto& [product, halves] : eater.eaten_this_week) {
        const auto found = of_product_.find(product);
        if (found != of_product_.end()) before[{eater.id, 0, found->second->food}] += halves;
      }
    }
    std::int64_t sum = 0;
    for (const auto& [key, halves] : eaten) {
      const auto found = before.find(key);
      const std::int64_t had = found == before.end() ? 0 : found->second;
      sum += std::max<std::int64_t>(0, halves - std::max<std::int64_t>(0, kVaried - had));
    }
    return HalfServings(sum);
  }

  const BookView& view_;
  const EatBuild& build_;
  std::map<std::string, const plan::EatLot*> lots_;
  std::map<std::string, const plan::EatMeal*> meals_;
  std::map<std::string, const plan::Eater*> eaters_;
  std::map<std::string, const plan::EatProduct*> products_;
  std::map<std::string, const Position*> of_product_;
};

PurchaseTally bought_for(const KitPlan& kit) {
  PurchaseTally sum;
  for (const BuyLine& line : kit.buy) {
    if (line.ml > 0) continue;
    sum.packs += line.packs;
    sum.cents += line.packs * line.pack.price_cents;
  }
  for (const Unmet& unmet : kit.unmet) {
    if (unmet.ml == 0) sum.unmet += unmet.units;
  }
  return sum;
}

// An offer without a known pack is a need, not a purchase, here as there.
PurchaseTally greedy_for(const RefillBuild& build) {
  const plan::RefillPlan plan = plan::plan_refill(build.problem);
  PurchaseTally sum;
  for (const plan::OfferPacks& each : plan.packs) {
    const Pack* pack = build.offers.at(each.offer).pack;
    if (pack == nullptr) continue;
    sum.packs += each.packs;
    sum.cents += each.packs * pack->price_cents;
  }
  for (const plan::LineUnits& each : plan.unmet) sum.unmet += each.units;
  return sum;
}

void add(PurchaseTally& sum, const PurchaseTally& more) {
  sum.packs += more.packs;
  sum.cents += more.cents;
  sum.unmet += more.unmet;
}

}  // namespace

Comparison compare_with_plain(const BookView& view, const EatBuild& build,
                              const plan::EatDownPlan& solved, const std::vector<KitPlan>& kits,
                              Day today) {
  const Comparer comparer(view, build);
  const plan::EatDownPlan plain = plan::plain_date_order(build.problem);
  Comparison comparison;
  comparison.plan = comparer.tally(solved);
  comparison.allowed = comparer.tally(plan::plain_date_order_with_rules(build.problem));
  comparison.plain = comparer.tally(plain);
  comparison.examples = comparer.examples(plain);
  comparison.currency = view.household->settings.currency;
  // Each kit by itself: both refills start from what the plan left for it.
  Reserved reserved;
  for (const KitPlan& kit : kits) {
    add(comparison.bought, bought_for(kit));
    add(comparison.greedy, greedy_for(build_refill(view, kit.schedule, reserved, today)));
    for (const Fill& fill : kit.fills) {
      if (fill.from == FillFrom::kPantry) reserved[fill.at] += fill.units;
    }
  }
  return comparison;
}

}  // namespace larderloop
