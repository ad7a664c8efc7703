#include "larderloop/app/shop.h"

#include <algorithm>
#include <map>

#include "app/book_view.h"

namespace larderloop {
namespace {

// What is missing to the par level in the pantry after the kits were served, from the pack that is cheapest a unit.
std::vector<BuyLine> pantry_lines(const Household& household, const PlanReport& plan) {
  std::vector<BuyLine> lines;
  const auto view = view_book(household, plan.as_of);
  if (!view) return lines;  // make_plan has replayed the same record
  std::map<FoodKey, std::int64_t> on_hand;
  for (const Position& position : view->positions) {
    const bool counts = !position.at.opened_on && position.kit->empty() &&
                        position.facts->state == LotState::kOk &&
                        (!position.good_through || *position.good_through >= plan.as_of);
    if (counts) on_hand[position.food->key] += position.amount.whole_units(position.food->servings);
  }
  for (const KitPlan& kit : plan.kits) {
    for (const Fill& fill : kit.fills) {
      if (fill.from == FillFrom::kPantry) on_hand[fill.food] -= fill.units;
    }
  }
  for (const Food& food : household.foods) {
    if (food.retired || !food.par_level || on_hand[food.key] >= *food.par_level) continue;
    BuyLine line;
    line.food = food.key;
    line.units = *food.par_level - on_hand[food.key];
    line.good_through_at_least = plan.as_of;
    const Pack* best = nullptr;
    for (const Pack& pack : food.packs) {
      if (best == nullptr || pack.price_cents * best->units < best->price_cents * pack.units) best = &pack;
    }
    if (best != nullptr) {
      line.pack = *best;
      line.packs = (line.units + best->units - 1) / best->units;
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

template <class T>
void merge(std::vector<T>& into, const std::vector<T>& from) {
  into.insert(into.end(), from.begin(), from.end());
  std::sort(into.begin(), into.end());
  into.erase(std::unique(into.begin(), into.end()), into.end());
}

// Two kits that want the same pack share it, with the later date and everybody's cautions.
void add_line(std::vector<BuyLine>& lines, BuyLine line) {
  const auto same = std::find_if(lines.begin(), lines.end(), [&](const BuyLine& each) {
    return each.food == line.food && each.pack == line.pack && each.kits.empty() == line.kits.empty();
  });
  if (same == lines.end()) {
    lines.push_back(std::move(line));
    return;
  }
  same->units += line.units;
  same->ml += line.ml;
  if (same->packs > 0) same->packs = (same->units + same->pack.units - 1) / same->pack.units;
  same->good_through_at_least = std::max(same->good_through_at_least, line.good_through_at_least);
  merge(same->kits, line.kits);
  merge(same->places, line.places);
  merge(same->for_people, line.for_people);
  merge(same->must_not_say, line.must_not_say);
  merge(same->nor_may_contain, line.nor_may_contain);
  merge(same->must_suit, line.must_suit);
}

}  // namespace

Day shop_by_day(const Settings& settings, Day need, Day today) {
  const Day last = start_of_week(need, settings.shopping_day);
  if (last >= today) return last;
  const Day this_week = start_of_week(today, settings.shopping_day);
  return this_week == today ? today : this_week + Days(7);
}

ShopList shop_list(const Household& household, const PlanReport& plan, bool pantry) {
  ShopList list;
  list.as_of = plan.as_of;
  std::vector<BuyLine> lines;
  for (const KitPlan& kit : plan.kits) {
    lines.insert(lines.end(), kit.buy.begin(), kit.buy.end());
    list.unmet.insert(list.unmet.end(), kit.unmet.begin(), kit.unmet.end());
    if (kit.buy.empty()) continue;
    // Between reviews the kit is short now, not at the next one.
    const Day need = kit.schedule.current ? kit.schedule.current->day : plan.as_of;
    const Day by = shop_by_day(household.settings, need, plan.as_of);
    list.shop_by = list.shop_by ? std::min(*list.shop_by, by) : by;
  }
  if (pantry) {
    for (BuyLine& line : pantry_lines(household, plan)) lines.push_back(std::move(line));
  }
  std::map<std::string, ShopGroup> groups;
  for (BuyLine& line : lines) {
    ShopGroup& group = groups[line.packs > 0 ? line.pack.shop : std::string()];
    group.shop = line.packs > 0 ? line.pack.shop : std::string();
    add_line(group.lines, std::move(line));
  }
  for (auto& [shop, group] : groups) {
    for (const BuyLine& line : group.lines) group.cost_cents += line.packs * line.pack.price_cents;
    std::stable_sort(group.lines.begin(), group.lines.end(),
                     [](const BuyLine& a, const BuyLine& b) { return a.food < b.food; });
    list.cost_cents += group.cost_cents;
    list.groups.push_back(std::move(group));
  }
  // Shops by name; what no shop is known for comes last.
  std::stable_sort(list.groups.begin(), list.groups.end(),
                   [](const ShopGroup& a, const ShopGroup& b) { return a.shop.empty() < b.shop.empty(); });
  return list;
}

}  // namespace larderloop
