// The levels of the refill, as docs/planning.md states them.
#include "plan/exact.h"
#include "plan/refill_model.h"

#include <algorithm>
#include <utility>

namespace larderloop::plan {
namespace {

class Writer {
 public:
  Writer(const RefillProblem& problem, RefillModel& model) : problem_(problem), m_(model) {}

  bool write() {
    add_level(unmet());
    if (problem_.keep_in_place) add_level(from_kit("displaced", 0));
    add_level(energy());
    add_level(repeats());
    add_level(cost());
    add_level(dislike());
    add_level(from_kit("handled", 1));
    add_level(dates());
    return fits();
  }

 private:
  struct Sum {
    const char* name;
    Exact constant = 0;
    std::vector<MipTerm> terms = {};

    void add(int column, std::int64_t factor) {
      if (factor != 0) terms.push_back({column, factor});
    }
  };
  void add_level(Sum sum) {
    fits_ = fits_ && sum.constant.fits();
    std::sort(sum.terms.begin(), sum.terms.end(),
              [](const MipTerm& a, const MipTerm& b) { return a.column < b.column; });
    m_.mip.levels.push_back({sum.name, sum.constant.value(), std::move(sum.terms)});
  }

  Sum unmet() const {
    Sum sum{"unmet"};
    for (const RefillModel::Group& group : m_.groups) {
      sum.constant += Exact(group.excess) * group.priority;
      if (group.unmet >= 0) sum.add(group.unmet, group.priority);
    }
    return sum;
  }
  // Units of the kit that do not stay, and `new_units` for each unit from elsewhere.
  Sum from_kit(const char* name, std::int64_t new_units) const {
    Sum sum{name, m_.kit_units};
    for (const auto& [key, column] : m_.from) {
      const RefillModel::Way way = m_.feeds[key.first].way;
      if (way == RefillModel::Way::kStays) sum.add(column, -1);
      if (way == RefillModel::Way::kPantry || way == RefillModel::Way::kBought)
        sum.add(column, new_units);
    }
    return sum;
  }
  Sum energy() const {
    Sum sum{"energy"};
    for (const RefillModel::Shortage& shortage : m_.shortages) {
      if (shortage.column < 0) {
        sum.constant += shortage.target;
      } else {
        sum.add(shortage.column, 1);
      }
    }
    return sum;
  }
  Sum repeats() const {
    Sum sum{"repeats"};
    for (const auto& [key, column] : m_.repeats) sum.add(column, 1);
    return sum;
  }
  Sum cost() const {
    Sum sum{"cost"};
    for (const RefillModel::Source& source : m_.sources) {
      if (source.offer != nullptr)
        sum.add(source.bought, source.offer->price - source.credit * source.offer->pack_units);
    }
    for (const auto& [key, column] : m_.from) {
      const RefillModel::Feed& feed = m_.feeds[key.first];
      if (feed.way == RefillModel::Way::kBought)
        sum.add(column, m_.sources[feed.sources.front()].credit);
    }
    return sum;
  }
  Sum dislike() const {
    Sum sum{"dislike"};
    for (const auto& [key, column] : m_.put) {
      std::int64_t points = 0;
      for (const std::size_t eater : m_.groups[key.second].eaters)
        points += 2 - m_.rating(key.first, eater);
      sum.add(column, points);
    }
    for (const RefillModel::Group& group : m_.groups) {
      const std::int64_t points = 4 * static_cast<std::int64_t>(group.eaters.size());
      sum.constant += Exact(group.excess) * points;
      if (group.unmet >= 0) sum.add(group.unmet, points);
    }
    return sum;
  }
  Sum dates() const {
    Sum sum{"dates"};
    for (const RefillModel::Source& source : m_.sources)
      if (source.used >= 0) sum.add(source.used, source.date_points);
    for (const auto& [key, column] : m_.from) {
      const RefillModel::Source& first = m_.sources[m_.feeds[key.first].sources.front()];
      if (first.used < 0) sum.add(column, first.date_points);
    }
    return sum;
  }

  // No row and no level may ever come near what a solver's numbers hold exactly.
  bool fits() const {
    if (!fits_) return false;
    const auto small = [this](const std::vector<MipTerm>& terms, std::int64_t more) {
      Exact sum = more < 0 ? Exact(0) - more : Exact(more);
      for (const MipTerm& term : terms) {
        const Exact size = term.factor < 0 ? Exact(0) - term.factor : Exact(term.factor);
        sum += size * m_.mip.columns[static_cast<std::size_t>(term.column)].upper;
      }
      return sum.at_most(RefillModel::kMostSum);
    };
    return std::all_of(m_.mip.rows.begin(), m_.mip.rows.end(),
                       [&](const MipRow& row) { return small(row.terms, 0); }) &&
           std::all_of(m_.mip.levels.begin(), m_.mip.levels.end(),
                       [&](const MipLevel& level) { return small(level.terms, level.constant); });
  }

  const RefillProblem& problem_;
  RefillModel& m_;
  bool fits_ = true;
};

}  // namespace

bool write_refill_levels(RefillModel& model, const RefillProblem& problem) {
  return Writer(problem, model).write();
}

}  // namespace larderloop::plan
