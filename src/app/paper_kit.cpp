#include "app/paper_kit.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "app/paper_parts.h"
#include "larderloop/app/placing.h"

namespace larderloop::paper {
namespace {

std::string state_of(const Position& position, Day today) {
  if (position.facts->state == LotState::kRecalled) return "recalled: set it aside, do not eat it";
  if (position.facts->state == LotState::kDoubtful) return "doubtful: set it aside, do not eat it";
  if (position.good_through && *position.good_through < today) {
    if (position.facts->safety) return "past its use-by date: throw it out";
    return position.at.opened_on ? "open for too long: throw it out" : "past its best-before date: look, smell, decide";
  }
  if (position.at.opened_on) return "open since " + plain_day(*position.at.opened_on) + ": look, smell, decide";
  if (position.food->needs_hot_water) return "only with hot water";
  if (!position.food->no_cook) return "has to be cooked";
  return {};
}

bool fills(const Household& household, const Position& position, const LineNow& now, Day today) {
  const Food& food = *position.food;
  const MenuLine& line = *now.line;
  if (position.at.place != line.place || !state_of(position, today).empty()) return false;
  if (line.role ? food.roles.count(*line.role) == 0 : food.key != line.food) return false;
  return refusals(household, now.eaters, food, effective_label(*position.facts), today).empty();
}

// Deals units one by one; a unit in use moves to another line when that makes room (augmenting paths of a bipartite matching).
class Dealer {
 public:
  Dealer(const Household& household, std::vector<LineNow>& lines, const std::vector<const Position*>& stock, Day today)
      : lines_(lines), taken_(lines.size()) {
    for (const Position* position : stock) left_.push_back(position->amount.whole_units(position->food->servings));
    for (const LineNow& line : lines) {
      std::vector<std::size_t> able;
      for (std::size_t each = 0; each < stock.size(); ++each) {
        if (fills(household, *stock[each], line, today)) able.push_back(each);
      }
      able_.push_back(std::move(able));
    }
  }

  void deal(std::size_t line) {
    for (std::int64_t unit = 0; unit < lines_[line].line->units; ++unit) {
      seen_.assign(left_.size(), false);
      if (!place(line)) lines_[line].missing += 1;
    }
  }
  [[nodiscard]] const std::map<std::size_t, std::int64_t>& taken(std::size_t line) const { return taken_[line]; }
  [[nodiscard]] std::int64_t left(std::size_t position) const { return left_[position]; }

 private:
  bool place(std::size_t line) {
    for (const std::size_t position : able_[line]) {
      if (left_[position] > 0) {
        left_[position] -= 1;
        taken_[line][position] += 1;
        return true;
      }
    }
    for (const std::size_t position : able_[line]) {
      if (seen_[position]) continue;
      seen_[position] = true;
      for (std::size_t other = 0; other < lines_.size(); ++other) {
        const auto held = taken_[other].find(position);
        if (other == line || held == taken_[other].end()) continue;
        if (!place(other)) continue;
        held->second -= 1;
        if (held->second == 0) taken_[other].erase(held);
        taken_[line][position] += 1;
        return true;
      }
    }
    return false;
  }

  std::vector<LineNow>& lines_;
  std::vector<std::vector<std::size_t>> able_;
  std::vector<std::map<std::size_t, std::int64_t>> taken_;
  std::vector<std::int64_t> left_;
  std::vector<bool> seen_;
};

int priority_of(const MenuLine& line) { return line.priority > 0 ? line.priority : line.role == Role::kMain ? 10 : 3; }

}  // namespace

KitNow kit_now(const BookView& view, const PlaceKey& kit, Day today) {
  const Household& household = *view.household;
  KitNow now;
  for (const MenuLine& line : household.menu) {
    if (view.kit_of_place.at(line.place) != kit || wants_water(household, line)) continue;
    const Food* food = line.food.empty() ? nullptr : find_food(household, line.food);
    if (line.role == Role::kThing || (food != nullptr && food->kind == FoodKind::kThing)) continue;
    now.lines.push_back({&line, eaters_of(household, line), {}, 0});
  }
  std::stable_sort(now.lines.begin(), now.lines.end(), [](const LineNow& a, const LineNow& b) {
    const auto key = [](const LineNow& each) {
      return std::tuple(each.line->day == 0, each.line->day, !each.line->meal, each.line->meal, each.eaters.size(), each.eaters, each.line->id);
    };
    return key(a) < key(b);
  });
  std::vector<const Position*> stock;
  for (const PlaceKey& place : walk(household, kit)) {
    for (const Position& position : view.positions) {
      const FoodKind kind = position.food->kind;
      if (position.at.place == place && kind != FoodKind::kThing && kind != FoodKind::kWater) stock.push_back(&position);
    }
  }
  Dealer dealer(household, now.lines, stock, today);
  std::vector<std::size_t> order(now.lines.size());
  for (std::size_t each = 0; each < order.size(); ++each) order[each] = each;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return priority_of(*now.lines[a].line) > priority_of(*now.lines[b].line); });
  for (const std::size_t line : order) dealer.deal(line);
  for (std::size_t line = 0; line < now.lines.size(); ++line) {
    for (const auto& [position, units] : dealer.taken(line)) now.lines[line].dealt.push_back({stock[position], units});
  }
  for (std::size_t each = 0; each < stock.size(); ++each) {
    const Position& position = *stock[each];
    HalfServings amount = position.amount;
    const std::int64_t used = position.amount.whole_units(position.food->servings) - dealer.left(each);
    amount -= HalfServings::units(used, position.food->servings);
    if (amount.halves() == 0) continue;
    now.beside.push_back({&position, amount, refusals_at(household, *position.food, effective_label(*position.facts), position.at.place, today),
                          state_of(position, today)});
  }
  return now;
}

}  // namespace larderloop::paper
