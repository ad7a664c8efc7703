// The refill planner: keep good units where they lie, move in from the rest of the kit and the
// pantry, then buy; then fill what a clever exchange can still fill, and improve what was newly put
// in. Good units in place are not displaced for taste.
#include "larderloop/plan/planner.h"
#include "plan/refill_steps.h"

#include <algorithm>
#include <numeric>
#include <optional>
#include <tuple>
#include <vector>

namespace larderloop::plan {
namespace {

// Lines that matter most first, then those with the fewest sources, then by id.
std::vector<std::size_t> order_of(const Shelf& shelf) {
  std::vector<std::tuple<std::int64_t, std::size_t, std::size_t>> keyed;
  for (std::size_t line = 0; line < shelf.lines().size(); ++line) {
    std::size_t sources = 0;
    for (std::size_t source = 0; source < shelf.sources().size(); ++source)
      if (shelf.accepts(line, source)) sources += 1;
    keyed.emplace_back(-shelf.lines()[line].priority, sources, line);
  }
  std::sort(keyed.begin(), keyed.end());
  std::vector<std::size_t> order;
  for (const auto& each : keyed) order.push_back(std::get<2>(each));
  return order;
}

void keep_in_place(Shelf& shelf, const std::vector<std::size_t>& order) {
  std::vector<std::size_t> kit;
  for (std::size_t source = 0; source < shelf.sources().size(); ++source) {
    if (shelf.sources()[source].lot != nullptr && shelf.sources()[source].lot->in_kit)
      kit.push_back(source);
  }
  std::stable_sort(kit.begin(), kit.end(), [&](std::size_t a, std::size_t b) {
    return shelf.sources()[a].last > shelf.sources()[b].last;
  });
  for (const std::size_t line : order) {
    for (const std::size_t source : kit) {
      if (!shelf.stays(source, line) || !shelf.accepts(line, source)) continue;
      const std::int64_t units =
          std::min({shelf.unmet(line), shelf.available(source), shelf.room(source, line)});
      if (units > 0) shelf.put(source, line, units);
    }
  }
}

// Of an offer: cents for one needed unit when bought for all who could use it, as a fraction.
struct PricePerUnit {
  std::int64_t cents = 0, units = 1;
  [[nodiscard]] int compare(const PricePerUnit& other) const {
    const std::int64_t a = cents * other.units, b = other.cents * units;
    return a < b ? -1 : (a > b ? 1 : 0);
  }
};

class Filler {
 public:
  explicit Filler(Shelf& shelf) : shelf_(shelf) {}

  void fill(std::size_t line) {
    while (shelf_.unmet(line) > 0) {
      std::optional<Choice> best;
      for (std::size_t source = 0; source < shelf_.sources().size(); ++source) {
        if (!shelf_.accepts(line, source) ||
            std::min(shelf_.available(source), shelf_.room(source, line)) <= 0)
          continue;
        const Choice choice = weigh(source, line);
        if (!best || better(choice, *best)) best = choice;
      }
      if (!best) return;
      shelf_.put(best->source, line, best->units);
    }
  }

 private:
  struct Choice {
    std::size_t source;
    std::int64_t units;
    std::int64_t repeats;
    PricePerUnit price;
    std::int64_t dislike, handled, dates;
  };

  static bool better(const Choice& a, const Choice& b) {
    if (a.repeats != b.repeats) return a.repeats < b.repeats;
    if (const int by_price = a.price.compare(b.price); by_price != 0) return by_price < 0;
    return std::tie(a.dislike, a.handled, a.dates, a.source) <
           std::tie(b.dislike, b.handled, b.dates, b.source);
  }

  Choice weigh(std::size_t source, std::size_t line) {
    const RefillWorth before = shelf_.worth();
    shelf_.put(source, line, 1);
    const RefillWorth after = shelf_.worth();
    const std::int64_t most = std::min(
        {shelf_.unmet(line) + 1, shelf_.available(source) + 1, shelf_.room(source, line) + 1});
    // As many as repeat no more than the first one does; the variety cap is met again at each turn.
    std::int64_t units = 1;
    if (most > 1) {
      shelf_.put(source, line, most - 1);
      const bool alike = shelf_.worth()[2] - before[2] == most * (after[2] - before[2]);
      units = alike ? most : 1;
      shelf_.put(source, line, -(most - 1));
    }
    shelf_.put(source, line, -1);
    return {source,
            units,
            after[2] - before[2],
            price(source),
            after[4] - before[4],
            after[5] - before[5],
            after[6] - before[6]};
  }

  PricePerUnit price(std::size_t source) const {
    const Shelf::Source& of = shelf_.sources()[source];
    if (of.offer == nullptr) return {};
    if (shelf_.without_buying(source) > 0) return {of.credit, 1};
    std::int64_t wanted = 0;
    for (std::size_t line = 0; line < shelf_.lines().size(); ++line) {
      if (shelf_.accepts(line, source)) wanted += shelf_.unmet(line);
    }
    const std::int64_t needed = std::clamp<std::int64_t>(wanted, 1, of.pack_units);
    return {of.price - of.credit * (of.pack_units - needed), needed};
  }

  Shelf& shelf_;
};

RefillPlan write_plan(const Shelf& shelf) {
  RefillPlan plan;
  for (std::size_t source = 0; source < shelf.sources().size(); ++source) {
    const Shelf::Source& of = shelf.sources()[source];
    if (of.offer != nullptr && shelf.packs(source) > 0)
      plan.packs.push_back({of.offer->id, shelf.packs(source)});
  }
  for (std::size_t line = 0; line < shelf.lines().size(); ++line) {
    const std::string& id = shelf.lines()[line].source->id;
    std::int64_t unmet = shelf.lines()[line].source->units;
    for (const auto& [source, units] : shelf.on_line(line)) {
      const Shelf::Source& of = shelf.sources()[source];
      plan.moves.push_back({of.lot != nullptr ? of.lot->id : "",
                            of.offer != nullptr ? of.offer->id : "", id, units});
      unmet -= units;
    }
    if (unmet > 0) plan.unmet.push_back({id, unmet});
  }
  std::sort(plan.moves.begin(), plan.moves.end(), [](const Move& a, const Move& b) {
    return std::tie(a.line, a.lot, a.offer) < std::tie(b.line, b.lot, b.offer);
  });
  return plan;
}

}  // namespace

RefillPlan plan_refill(const RefillProblem& problem) {
  Shelf shelf(problem);
  const std::vector<std::size_t> order = order_of(shelf);
  keep_in_place(shelf, order);
  Filler filler(shelf);
  for (const std::size_t line : order) filler.fill(line);
  fill_by_exchange(shelf, order);
  fill_by_lightening(shelf, order);
  improve_new(shelf);
  spread_over_days(shelf);
  return write_plan(shelf);
}

}  // namespace larderloop::plan
