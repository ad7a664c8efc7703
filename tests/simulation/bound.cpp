// The bound with the future known: a largest flow of servings from what arrived to people in weeks.
#include "simulation/life.h"

#include <algorithm>
#include <limits>
#include <map>
#include <tuple>

namespace larderloop::simulation {
namespace {

// Dinic's largest flow, on paths that may be as long as they are.
class Flow {
 public:
  explicit Flow(std::size_t nodes) : edges_of_(nodes) {}
  void edge(std::size_t from, std::size_t to, std::int64_t capacity) {
    edges_of_[from].push_back(edges_.size());
    edges_.push_back({to, capacity});
    edges_of_[to].push_back(edges_.size());
    edges_.push_back({from, 0});
  }
  std::int64_t largest(std::size_t source, std::size_t sink) {
    std::int64_t sum = 0;
    while (layer(source, sink)) {
      next_.assign(edges_of_.size(), 0);
      while (const std::int64_t pushed =
                 push(source, sink, std::numeric_limits<std::int64_t>::max()))
        sum += pushed;
    }
    return sum;
  }

 private:
  struct Edge {
    std::size_t to;
    std::int64_t left;
  };
  bool layer(std::size_t source, std::size_t sink) {
    depth_.assign(edges_of_.size(), -1);
    depth_[source] = 0;
    std::vector<std::size_t> queue{source};
    for (std::size_t at = 0; at < queue.size(); ++at) {
      for (const std::size_t each : edges_of_[queue[at]]) {
        if (edges_[each].left == 0 || depth_[edges_[each].to] >= 0) continue;
        depth_[edges_[each].to] = depth_[queue[at]] + 1;
        queue.push_back(edges_[each].to);
      }
    }
    return depth_[sink] >= 0;
  }
  std::int64_t push(std::size_t node, std::size_t sink, std::int64_t most) {
    if (node == sink) return most;
    for (; next_[node] < edges_of_[node].size(); ++next_[node]) {
      const std::size_t each = edges_of_[node][next_[node]];
      if (edges_[each].left == 0 || depth_[edges_[each].to] != depth_[node] + 1) continue;
      const std::int64_t pushed = push(edges_[each].to, sink, std::min(most, edges_[each].left));
      if (pushed == 0) continue;
      edges_[each].left -= pushed;
      edges_[each ^ 1U].left += pushed;
      return pushed;
    }
    return 0;
  }

  std::vector<Edge> edges_;
  std::vector<std::vector<std::size_t>> edges_of_;
  std::vector<int> depth_;
  std::vector<std::size_t> next_;
};

// Servings of one unit that may be eaten at all: those at the table while it is open, by appetite
// and variety.
std::int64_t most_of_a_unit(const World& world, std::size_t food) {
  const SimFood& what = world.foods[food];
  const std::int64_t days = what.servings > 1 ? what.open_days + 1 : 1;
  const std::int64_t weeks = (days + 6) / 7;  // three meals in any seven days
  const std::int64_t meals = days == 1 ? 1 : 3 * weeks;
  const std::int64_t touched = days == 1 ? 1 : weeks + 1;
  std::int64_t sum = 0;
  for (std::size_t person = 0; person < world.people.size(); ++person) {
    if (world.may_eat(person, food))
      sum += std::min(meals * world.people[person].appetite, touched * kMonotony);
  }
  return std::min(what.servings, sum);
}

}  // namespace

std::int64_t known_future_bound(const World& world, const Outcome& outcome, std::int64_t days) {
  // Meals that were held, with who was there.
  std::map<std::pair<std::size_t, std::int64_t>, std::int64_t> room;  // (person, week): servings
  std::vector<std::tuple<SimMeal, std::size_t>> seats;
  for (const SimMeal& meal : World::meals(0, days)) {
    if (!world.meal_held(meal.day)) continue;
    for (std::size_t person = 0; person < world.people.size(); ++person) {
      if (!world.at_table(person, meal.day)) continue;
      seats.emplace_back(meal, person);
      room[{person, meal.day / 7}] += world.people[person].appetite;
    }
  }
  std::map<std::tuple<std::size_t, std::int64_t, std::size_t>, std::size_t> of_food;
  std::map<std::pair<std::size_t, std::int64_t>, std::size_t> of_week;
  std::vector<std::tuple<std::size_t, std::size_t, std::int64_t>> edges;
  std::size_t nodes = 2;  // 0: source, 1: sink
  std::int64_t supply = 0;
  for (const Arrival& lot : outcome.arrivals) {
    const std::int64_t servings = lot.servings - lot.taken - lot.open_at_end;
    if (lot.last >= days || servings <= 0) continue;
    supply += servings;
    const std::size_t from = nodes++;
    const SimFood& food = world.foods[lot.food];
    const std::int64_t units = (lot.servings + food.servings - 1) / food.servings;
    edges.emplace_back(0, from, std::min(servings, units * most_of_a_unit(world, lot.food)));
    const std::int64_t until = lot.last + (food.servings > 1 ? food.open_days : 0);
    std::map<std::size_t, bool> reached;
    const auto first = std::lower_bound(
        seats.begin(), seats.end(), lot.from,
        [](const auto& seat, std::int64_t day) { return std::get<0>(seat).day < day; });
    for (auto seat = first; seat != seats.end() && std::get<0>(*seat).day <= until; ++seat) {
      const auto& [meal, person] = *seat;
      if (food.kinds.count(meal.kind) == 0 || !world.may_eat(person, lot.food)) continue;
      const std::int64_t week = meal.day / 7;
      const auto [at, fresh] = of_food.emplace(std::tuple(person, week, lot.food), nodes);
      if (fresh) {
        ++nodes;
        const auto [to, newer] = of_week.emplace(std::pair(person, week), nodes);
        if (newer) {
          ++nodes;
          edges.emplace_back(to->second, 1, std::min(kTolerance, room.at({person, week})));
        }
        edges.emplace_back(at->second, to->second, kMonotony);
      }
      if (reached.emplace(at->second, true).second) edges.emplace_back(from, at->second, servings);
    }
  }
  Flow flow(nodes);
  for (const auto& [from, to, capacity] : edges) flow.edge(from, to, capacity);
  return supply - flow.largest(0, 1);
}

}  // namespace larderloop::simulation
