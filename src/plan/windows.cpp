#include "plan/windows.h"

#include "plan/branch.h"
#include "plan/relaxation.h"
#include "plan/tidy.h"

#include <algorithm>
#include <chrono>
#include <cstdlib>

namespace larderloop::plan {
namespace {

constexpr std::int64_t kMostIterations = 200'000;
// A level counts more than this much of the next one; what a window can gain is far less.
constexpr std::int64_t kFairRange = 400;

// The program of the free columns, everything else held where it is.
class Window {
 public:
  Window(const Mip& mip, const MipPoint& point, const std::vector<char>& free,
         const WindowEffort& effort)
      : mip_(mip), point_(point), number_(mip.columns.size(), -1) {
    for (std::size_t j = 0; j < mip.columns.size(); ++j) {
      if (free[j] == 0) continue;
      number_[j] = static_cast<int>(columns_.size());
      columns_.push_back(j);
      small_.columns.push_back(mip.columns[j]);
    }
    for (const MipRow& row : mip.rows) add_row(row.name, row.lower, row.upper, row.terms);
    weigh_levels(effort.first_level, effort.levels);
    for (std::size_t k = 0; k < std::min(effort.first_level, mip.levels.size()); ++k) {
      const MipLevel& level = mip.levels[k];
      add_row("held" + std::to_string(k), MipRow::kNone, value_of(level, point) - level.constant,
              level.terms);
    }
  }

  [[nodiscard]] bool empty() const { return small_.levels.front().terms.empty(); }

  // A better point, if one is found.
  [[nodiscard]] std::optional<MipPoint> solve(std::int64_t nodes,
                                              std::optional<double> seconds) const {
    const MipLevel& level = small_.levels.front();
    MipPoint now;
    for (const std::size_t column : columns_) now.push_back(point_[column]);
    const std::int64_t value = value_of(level, now);
    Relaxation relaxation(small_);
    relaxation.minimise(level);
    if (!relaxation.solve(kMostIterations)) return std::nullopt;
    const auto bound = relaxation.bound();
    if (bound && *bound >= value) return std::nullopt;
    const Branched found = branch_and_cut(small_, relaxation, level, value - 1, nodes, seconds);
    if (!found.point) return std::nullopt;
    MipPoint whole = point_;
    for (std::size_t k = 0; k < columns_.size(); ++k) whole[columns_[k]] = (*found.point)[k];
    return whole;
  }

 private:
  [[nodiscard]] int number(const MipTerm& term) const {
    return number_[static_cast<std::size_t>(term.column)];
  }

  void add_row(const std::string& name, std::int64_t lower, std::int64_t upper,
               const std::vector<MipTerm>& all) {
    std::vector<MipTerm> terms;
    std::int64_t held = 0;
    for (const MipTerm& term : all) {
      if (number(term) >= 0) {
        terms.push_back({number(term), term.factor});
      } else {
        held += term.factor * point_[static_cast<std::size_t>(term.column)];
      }
    }
    if (terms.empty()) return;
    const auto less = [&](std::int64_t side) { return side == MipRow::kNone ? side : side - held; };
    small_.add_row(name, less(lower), less(upper), std::move(terms));
  }

  // The levels in one sum.
  void weigh_levels(std::size_t first, std::size_t count) {
    std::vector<std::int64_t> factors(columns_.size(), 0);
    std::int64_t weight = 1;
    for (std::size_t k = std::min(first + count, mip_.levels.size()); k-- > first;) {
      for (const MipTerm& term : mip_.levels[k].terms) {
        if (number(term) >= 0)
          factors[static_cast<std::size_t>(number(term))] += weight * term.factor;
      }
      weight *= kFairRange;
    }
    MipLevel sum{"sum", 0, {}};
    for (std::size_t j = 0; j < factors.size(); ++j) {
      if (factors[j] != 0) sum.terms.push_back({static_cast<int>(j), factors[j]});
    }
    small_.levels = {std::move(sum)};
  }

  const Mip& mip_;
  const MipPoint& point_;
  std::vector<int> number_;           // by column of the whole: its number here, or -1
  std::vector<std::size_t> columns_;  // by column here: of the whole
  Mip small_;
};

// The columns of the parts [first, end), and what follows from them.
std::vector<char> free_columns(const Parts& parts, std::size_t families, std::size_t first,
                               std::size_t end) {
  std::vector<char> free(parts.size(), 0), touched(families, 0);
  for (std::size_t j = 0; j < parts.size(); ++j) {
    if (parts[j].part == Belongs::kFollows || parts[j].part < first || parts[j].part >= end)
      continue;
    free[j] = 1;
    touched[parts[j].family] = 1;
  }
  for (std::size_t j = 0; j < parts.size(); ++j) {
    if (parts[j].part == Belongs::kFollows) free[j] = touched[parts[j].family];
  }
  return free;
}

bool better(const Mip& mip, const MipPoint& point, const MipPoint& than) {
  for (const MipLevel& level : mip.levels) {
    const std::int64_t value = value_of(level, point), other = value_of(level, than);
    if (value != other) return value < other;
  }
  return false;
}

}  // namespace

MipPoint improve_by_windows(const Mip& mip, MipPoint point, const Parts& parts,
                            const WindowEffort& effort) {
  const auto begun = std::chrono::steady_clock::now();
  const auto seconds_left = [&]() -> std::optional<double> {
    if (!effort.seconds) return std::nullopt;
    const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - begun;
    return std::max(0.0, *effort.seconds - spent.count());
  };
  std::size_t end = 0, families = 0;
  for (const Belongs& each : parts) {
    families = std::max(families, each.family + 1);
    if (each.part != Belongs::kFollows) end = std::max(end, each.part + 1);
  }
  const std::size_t step = std::max<std::size_t>(1, effort.width / 2);
  for (std::size_t first = 0; first < end; first += step) {
    if (seconds_left() == 0.0) return point;
    const Window window(mip, point, free_columns(parts, families, first, first + effort.width),
                        effort);
    if (!window.empty()) {
      auto found = window.solve(effort.nodes, seconds_left());
      if (found && allowed(mip, *found)) {
        tidy(mip, *found);
        if (better(mip, *found, point)) point = std::move(*found);
      }
    }
    if (first + effort.width >= end) break;
  }
  return point;
}

}  // namespace larderloop::plan
