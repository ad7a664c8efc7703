#include "plan/refill_steps.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace larderloop::plan {
namespace {

constexpr std::int64_t kMostDealt = 500;  // units of one group of lines; more are left as they lie

using Group = std::tuple<std::size_t, std::vector<std::size_t>, std::string, std::int64_t>;

}  // namespace

void spread_over_days(Shelf& shelf) {
  std::map<Group, std::vector<std::size_t>> groups;
  std::map<std::pair<std::vector<std::size_t>, int>, std::int64_t> energy;  // eaters and day
  const auto day_of = [&](std::size_t line) {
    return std::pair(shelf.lines()[line].eaters, shelf.lines()[line].source->day);
  };
  const auto kcal_of = [&](std::size_t source) {
    return std::clamp<std::int64_t>(shelf.sources()[source].product->kcal, 0, Shelf::kMost);
  };
  for (std::size_t line = 0; line < shelf.lines().size(); ++line) {
    const Shelf::Line& of = shelf.lines()[line];
    groups[{of.container, of.eaters, of.source->role, of.priority}].push_back(line);
    for (const auto& [source, units] : shelf.on_line(line))
      energy[day_of(line)] += units * kcal_of(source);
  }
  for (const auto& [group, lines] : groups) {
    if (lines.size() < 2) continue;
    std::map<std::size_t, std::int64_t> units;  // by source
    std::int64_t all = 0;
    for (const std::size_t line : lines) {
      for (const auto& [source, placed] : shelf.on_line(line)) {
        units[source] += placed;
        all += placed;
      }
    }
    if (all > kMostDealt) continue;
    for (const std::size_t line : lines) {
      const auto held = shelf.on_line(line);
      for (const auto& [source, placed] : held) {
        energy[day_of(line)] -= placed * kcal_of(source);
        shelf.put(source, line, -placed);
      }
    }
    std::vector<std::pair<std::int64_t, std::size_t>> richest;
    for (const auto& [source, placed] : units) richest.emplace_back(-kcal_of(source), source);
    std::sort(richest.begin(), richest.end());
    for (const auto& [by, source] : richest) {
      for (std::int64_t unit = 0; unit < units[source]; ++unit) {
        std::size_t poorest = lines.size();
        for (std::size_t at = 0; at < lines.size(); ++at) {
          if (shelf.unmet(lines[at]) == 0) continue;
          if (poorest == lines.size() || energy[day_of(lines[at])] < energy[day_of(lines[poorest])])
            poorest = at;
        }
        shelf.put(source, lines[poorest], 1);
        energy[day_of(lines[poorest])] += kcal_of(source);
      }
    }
  }
}

}  // namespace larderloop::plan
