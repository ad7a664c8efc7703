// Soonest date first with regard to people: a careful greedy plan, then bounded local improvement.
// Work is counted in steps, never in time, so that the same problem gives the same plan.
#include "plan/fefo.h"

#include "larderloop/plan/planner.h"
#include "plan/write_plan.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

namespace larderloop::plan {
namespace {

constexpr std::int64_t kMakeRoomWork = 400'000;
constexpr std::int64_t kSettleWork = 250'000;

Rank rank_of(const CompiledEat& problem, bool liking_first) {
  // What each eater could eat of everything in scope, in servings.
  std::vector<std::int64_t> choice(problem.eaters.size(), 0);
  for (const CompiledEat::Lot& lot : problem.lots) {
    const std::int64_t servings =
        std::min(CompiledEat::kMost,
                 lot.units * std::min<std::int64_t>(problem.products[lot.product].servings, 1000));
    for (std::size_t eater = 0; eater < problem.eaters.size(); ++eater) {
      if (problem.will_eat(lot.product, eater))
        choice[eater] = std::min(CompiledEat::kMost, choice[eater] + servings);
    }
  }
  Rank rank(problem.products.size());
  for (std::size_t product = 0; product < problem.products.size(); ++product) {
    std::vector<std::pair<std::int64_t, std::size_t>> order;
    for (std::size_t eater = 0; eater < problem.eaters.size(); ++eater) {
      if (!problem.will_eat(product, eater)) continue;
      const std::int64_t dislike = 2 - std::clamp(problem.rating(product, eater), -2, 2);
      order.emplace_back(liking_first ? dislike * 2 * CompiledEat::kMost + choice[eater]
                                      : choice[eater] * 8 + dislike,
                         eater);
    }
    std::sort(order.begin(), order.end());
    for (const auto& [by, eater] : order) rank[product].push_back(eater);
  }
  return rank;
}

}  // namespace

Rank scarce_first(const CompiledEat& problem) {
  return rank_of(problem, false);
}
Rank liked_first(const CompiledEat& problem) {
  return rank_of(problem, true);
}

void serve_open_lots(Table& table, const Rank& rank) {
  const CompiledEat& c = table.problem();
  for (std::size_t lot = 0; lot < c.open_lots.size(); ++lot) {
    const CompiledEat::Lot& of = c.open_lots[lot];
    std::int64_t left = of.units;
    for (const auto& [seat, servings] : table.from_open[lot]) left -= servings;
    std::size_t meal = c.first_meal(of.from);
    for (; meal < c.meals.size() && c.meals[meal].day <= of.last && left > 0; ++meal) {
      if (c.suits(of.product, meal))
        left -= table.serve(meal, of.product, left, rank, table.from_open[lot]);
    }
    std::size_t& opening = table.first_opening[of.product];
    for (const auto& [seat, servings] : table.from_open[lot])
      opening = std::max(opening, c.seats[seat].meal + 1);
    if (left > 0) opening = std::max(opening, meal);
  }
}

void serve_by_date(Table& table, const Rank& rank) {
  const CompiledEat& c = table.problem();
  const auto serve = [&](bool donatable, bool whole_only) {
    for (std::size_t lot = 0; lot < c.lots.size(); ++lot) {
      if (c.lots[lot].donatable != donatable) continue;
      while (table.units_left[lot] > 0 && table.units.size() < Table::kMostUnits) {
        auto unit = table.place(lot, whole_only, rank);
        if (!unit) break;
        table.units_left[lot] -= 1;
        table.units.push_back(std::move(*unit));
      }
    }
  };
  serve(false, true);
  serve(false, false);
  serve(true, true);
}

Worth worth(const Table& table, std::int64_t late_days) {
  const CompiledEat& c = table.problem();
  std::int64_t wasted = 0, donated = 0, dislike = 0, late = 0;
  for (std::size_t lot = 0; lot < c.lots.size(); ++lot) {
    (c.lots[lot].donatable ? donated : wasted) +=
        table.units_left[lot] * c.products[c.lots[lot].product].servings;
  }
  for (const OpenedUnit& unit : table.units) {
    if (!unit.live) continue;
    const CompiledEat::Lot& lot = c.lots[unit.lot];
    const std::int64_t servings = c.products[lot.product].servings;
    wasted += servings - unit.eaten;
    const std::int64_t ahead = lot.last - c.meals[unit.meal].day;
    late += servings *
            std::max<std::int64_t>(0, std::clamp<std::int64_t>(late_days, 0, 10'000) - ahead);
    for (const auto& [seat, eaten] : unit.helpings)
      dislike += eaten * (2 - c.rating(lot.product, c.seats[seat].eater));
  }
  for (std::size_t lot = 0; lot < c.open_lots.size(); ++lot) {
    wasted += c.open_lots[lot].units;
    for (const auto& [seat, eaten] : table.from_open[lot]) wasted -= eaten;
  }
  return {wasted, donated, dislike, late};
}

EatDownPlan plan_eat_down(const EatDownProblem& problem) {
  const CompiledEat compiled(problem);
  const Rank ranks[] = {scarce_first(compiled), liked_first(compiled)};
  std::optional<Table> best;
  for (const Rank& rank : ranks) {
    Table table(compiled);
    keep_published(table, problem, rank);
    serve_open_lots(table, rank);
    serve_by_date(table, rank);
    if (!best || worth(table, problem.late_days) < worth(*best, problem.late_days))
      best.emplace(std::move(table));
  }
  make_room(*best, ranks[0], kMakeRoomWork);
  settle(*best, ranks[1], kSettleWork);
  return write_plan(*best, problem);
}

}  // namespace larderloop::plan
