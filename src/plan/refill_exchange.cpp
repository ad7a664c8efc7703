#include "plan/refill_steps.h"

#include <algorithm>
#include <deque>
#include <optional>

namespace larderloop::plan {
namespace {

constexpr std::int64_t kMostLightenings = 60'000;  // exchanges tried
constexpr std::size_t kNone = static_cast<std::size_t>(-1);

// Breadth-first search from one unmet line over lines and sources.
class Exchange {
 public:
  Exchange(Shelf& shelf, std::size_t start)
      : shelf_(shelf),
        start_(start),
        taken_from_(shelf.lines().size(), kNone),
        through_(shelf.lines().size(), kNone) {}

  bool run() {
    std::vector<char> line_seen(shelf_.lines().size(), 0), source_seen(shelf_.sources().size(), 0);
    std::deque<std::size_t> open{start_};
    line_seen[start_] = 1;
    std::optional<std::size_t> cheapest;  // a line of lower priority that could go without
    while (!open.empty()) {
      const std::size_t line = open.front();
      open.pop_front();
      for (std::size_t source = 0; source < shelf_.sources().size(); ++source) {
        if (!shelf_.accepts(line, source)) continue;
        if (shelf_.available(source) > 0 && apply(line, source)) return true;
        if (source_seen[source] != 0) continue;
        source_seen[source] = 1;
        for (const auto& [other, units] : shelf_.of_source(source)) {
          if (line_seen[other] != 0) continue;
          line_seen[other] = 1;
          taken_from_[other] = line;
          through_[other] = source;
          open.push_back(other);
          if (shelf_.lines()[other].priority < shelf_.lines()[cheapest.value_or(start_)].priority)
            cheapest = other;
        }
      }
    }
    return cheapest && apply(*cheapest, kNone);
  }

 private:
  // The line at the end takes `last` (nothing: goes without) and hands what it had to the one
  // before, back to the start.
  bool apply(std::size_t end, std::size_t last) {
    std::int64_t units = shelf_.unmet(start_);
    if (last != kNone) units = std::min(units, shelf_.available(last));
    for (std::size_t line = end; line != start_; line = taken_from_[line]) {
      units = std::min(units, shelf_.placed(through_[line], line));
    }
    while (units > 0) {
      shift(end, last, units);
      if (shelf_.within_limits()) return true;
      shift(end, last, -units);
      units = units > 1 ? 1 : 0;
    }
    return false;
  }

  void shift(std::size_t end, std::size_t last, std::int64_t units) {
    if (last != kNone) shelf_.put(last, end, units);
    for (std::size_t line = end; line != start_; line = taken_from_[line]) {
      shelf_.put(through_[line], line, -units);
      shelf_.put(through_[line], taken_from_[line], units);
    }
  }

  Shelf& shelf_;
  std::size_t start_;
  std::vector<std::size_t> taken_from_,
      through_;  // of a line reached: which line takes, which source
};

// Makes room for one unit of the source on the line by exchanging one unit elsewhere in the
// container.
bool lighten(Shelf& shelf, std::size_t source, std::size_t line, std::int64_t& tries) {
  for (std::size_t other = 0; other < shelf.lines().size(); ++other) {
    if (shelf.lines()[other].container != shelf.lines()[line].container) continue;
    const auto held = shelf.on_line(other);
    for (const auto& [heavy, units] : held) {
      for (std::size_t light = 0; light < shelf.sources().size(); ++light) {
        if (light == heavy || !shelf.accepts(other, light) || shelf.available(light) <= 0) continue;
        if (light == source && shelf.available(light) < 2) continue;
        const RefillProduct& now = *shelf.sources()[heavy].product;
        const RefillProduct& then = *shelf.sources()[light].product;
        if (then.mass >= now.mass && then.volume >= now.volume) continue;
        const RefillProduct& added = *shelf.sources()[source].product;
        const std::size_t in = shelf.lines()[line].container;
        if (shelf.mass_left(in) + now.mass - then.mass < added.mass) continue;
        if (shelf.volume_left(in) + now.volume - then.volume < added.volume) continue;
        if (--tries < 0) return false;
        shelf.put(heavy, other, -1);
        shelf.put(light, other, 1);
        shelf.put(source, line, 1);
        if (shelf.within_limits()) return true;
        shelf.put(source, line, -1);
        shelf.put(light, other, -1);
        shelf.put(heavy, other, 1);
      }
    }
  }
  return false;
}

}  // namespace

void fill_by_exchange(Shelf& shelf, const std::vector<std::size_t>& order) {
  for (const std::size_t line : order) {
    while (shelf.unmet(line) > 0 && Exchange(shelf, line).run()) {
    }
  }
  // A line that went without for a more important one may still find something.
  for (const std::size_t line : order) {
    while (shelf.unmet(line) > 0 && Exchange(shelf, line).run()) {
    }
  }
}

void fill_by_lightening(Shelf& shelf, const std::vector<std::size_t>& order) {
  std::int64_t tries = kMostLightenings;
  for (const std::size_t line : order) {
    for (std::size_t source = 0; source < shelf.sources().size() && shelf.unmet(line) > 0;
         ++source) {
      if (!shelf.accepts(line, source)) continue;
      while (shelf.unmet(line) > 0 && shelf.available(source) > 0 &&
             lighten(shelf, source, line, tries)) {
      }
    }
  }
}

}  // namespace larderloop::plan
