// shelf.h - a half-made refill: which units of which source lie on which menu line, with what that
// is worth so far. Private to this room. Sources are eligible lots and offers; every step keeps
// supplies, container limits and the budget.
#pragma once

#include "larderloop/plan/problem.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace larderloop::plan {

// Levels in the order of docs/planning.md: unmet, energy, repeats, cost, dislike, handled, dates.
using RefillWorth = std::array<std::int64_t, 7>;

class Shelf {
 public:
  static constexpr std::int64_t kMost =
      1'000'000;  // quantities beyond are cut, so that no sum leaves 64 bits

  struct Source {
    const RefillProduct* product;
    std::size_t product_index;
    const RefillLot* lot;  // or
    const Offer* offer;
    std::int64_t last;        // last good day
    std::int64_t supply;      // units of a lot; of an offer all packs to be had
    std::int64_t pack_units;  // 1 for a lot
    std::int64_t price, credit;
    std::size_t container;  // where a kit lot lies; containers() when elsewhere
  };
  struct Line {
    const RefillLine* source;
    std::size_t container;
    std::size_t kit;
    std::vector<std::size_t> eaters;
    std::int64_t units, priority;
  };

  explicit Shelf(const RefillProblem& problem);

  [[nodiscard]] const std::vector<Source>& sources() const { return sources_; }
  [[nodiscard]] const std::vector<Line>& lines() const { return lines_; }
  [[nodiscard]] bool accepts(std::size_t line, std::size_t source) const {
    return accepts_[line * product_count_ + sources_[source].product_index] != 0;
  }
  [[nodiscard]] std::int64_t unmet(std::size_t line) const { return unmet_[line]; }
  [[nodiscard]] std::int64_t placed(std::size_t source, std::size_t line) const;
  [[nodiscard]] const std::map<std::size_t, std::int64_t>& on_line(std::size_t line) const {
    return on_line_[line];
  }
  [[nodiscard]] const std::map<std::size_t, std::int64_t>& of_source(std::size_t source) const {
    return of_source_[source];
  }
  [[nodiscard]] bool stays(std::size_t source, std::size_t line) const {
    return sources_[source].container == lines_[line].container;
  }
  // Units that can still be had: of an offer also by further packs the budget allows.
  [[nodiscard]] std::int64_t available(std::size_t source) const;
  // Units bought with packs already needed, or already on hand.
  [[nodiscard]] std::int64_t without_buying(std::size_t source) const;
  // Units of the source the line's container can still hold.
  [[nodiscard]] std::int64_t room(std::size_t source, std::size_t line) const;
  [[nodiscard]] std::int64_t mass_left(std::size_t container) const {
    return mass_left_[container];
  }
  [[nodiscard]] std::int64_t volume_left(std::size_t container) const {
    return volume_left_[container];
  }

  // Puts units on a line, or takes them back when negative. No limit is checked.
  void put(std::size_t source, std::size_t line, std::int64_t units);
  // Are all container limits and the budget kept?
  [[nodiscard]] bool within_limits() const;
  [[nodiscard]] const RefillWorth& worth() const { return worth_; }
  [[nodiscard]] std::int64_t packs(std::size_t source) const;

 private:
  void compile_lines(const RefillProblem& problem);
  void compile_sources(const RefillProblem& problem);
  void count_energy(const Line& line, const Source& source, std::int64_t units);
  void count_repeats(const Line& line, const Source& source, std::int64_t units);

  static constexpr std::int64_t kNoLimit = std::int64_t{1} << 60;

  std::vector<const Eater*> eaters_;
  std::vector<const RefillProduct*> products_;
  std::vector<Source> sources_;
  std::vector<Line> lines_;
  std::size_t product_count_ = 0;
  std::size_t container_count_ = 0;
  std::vector<char> accepts_;
  std::vector<int> ratings_;  // product * eaters + eater
  std::int64_t variety_cap_ = 0;
  std::int64_t date_cap_ = 0;
  std::int64_t budget_left_ = kNoLimit;

  std::vector<std::int64_t> unmet_;
  std::vector<std::map<std::size_t, std::int64_t>> on_line_;    // source -> units
  std::vector<std::map<std::size_t, std::int64_t>> of_source_;  // line -> units
  std::vector<std::int64_t> used_;                              // by source
  std::vector<std::int64_t> mass_left_, volume_left_;           // by container
  std::vector<std::int64_t>
      energy_short_;  // kit * eaters + eater; below zero = more than the target
  std::vector<char> energy_counts_;
  std::map<std::pair<std::size_t, std::size_t>, std::int64_t>
      own_;  // (kit * eaters + eater, product)
  RefillWorth worth_{};
};

}  // namespace larderloop::plan
