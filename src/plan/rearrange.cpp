// Makes a plan better by taking a few units out of neighbouring weeks and placing them anew, in
// another order, each at its best meal; what is not worse stays, and at first also what is a little
// worse, less and less so (simulated annealing, Kirkpatrick, Gelatt and Vecchi 1983, with a linear
// threshold in place of the exponential function, so that all is whole numbers). Thousands of such
// steps a second find what no single move finds: a unit that finds a place only when two others
// change theirs.
#include "plan/fefo.h"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace larderloop::plan {
namespace {

// The levels from waste on: wasted, donated, dislike, late, order.
using Cost = std::array<std::int64_t, 5>;
constexpr std::size_t kLate = 3;  // the first of the levels that only the last steps look at
// What a serving given away and a point of dislike count beside each other at first.
constexpr std::int64_t kDonated = 20;

void add(Cost& sum, const Cost& more) {
  for (std::size_t k = 0; k < sum.size(); ++k) sum[k] += more[k];
}

// A fixed sequence (splitmix64, Steele, Lea and Flood 2014), so that the same problem gives the
// same plan.
class Dice {
 public:
  std::size_t below(std::size_t sides) { return static_cast<std::size_t>(next() % sides); }

 private:
  std::uint64_t next() {
    state_ += 0x9e3779b97f4a7c15ULL;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebULL;
    return z ^ (z >> 31U);
  }
  std::uint64_t state_ = 1;
};

class Rearranger {
 public:
  Rearranger(Table& table, const EatDownProblem& problem, std::int64_t work)
      : table_(table),
        c_(table.problem()),
        late_days_(std::clamp<std::int64_t>(problem.late_days, 0, 10'000)),
        scarce_(scarce_first(c_)),
        liked_(liked_first(c_)),
        begin_(table.work()) {
    list_closed();
    for (const OpenedUnit& unit : table_.units) spans_.push_back(span(unit));
    for (std::size_t product = 0; product < c_.products.size(); ++product)
      least_dislike_.push_back(least_dislike(product));
    const auto units = static_cast<std::int64_t>(table_.units.size() + closed_.size());
    work_ = std::min(work, work / kUnits * units);
    trying_ = work_ / 10 * 8;
    start_ = table_.units;
  }

  void run() {
    for (; spent() < work_ && step(); steps_ += 1) {
      if (spent() < trying_) {
        quiet_ = 0;
      } else if (levels_ == kLate) {
        if (Cost{} < change_) start_again();
        levels_ = Cost{}.size();
      }
      if (quiet_ > patience()) break;
    }
    if (levels_ == kLate && Cost{} < change_) start_again();  // ended while still trying
    std::vector<OpenedUnit> live;
    for (OpenedUnit& unit : table_.units) {
      if (unit.live) live.push_back(std::move(unit));
    }
    table_.units = std::move(live);
  }

 private:
  [[nodiscard]] std::int64_t spent() const {
    return table_.work() - begin_ + kLooksForStep * steps_;
  }
  // Steps without anything better after which there is little to hope for.
  [[nodiscard]] std::size_t patience() const {
    return kPatience + kPatienceForUnit * (table_.units.size() + closed_.size());
  }

  // Of a unit, if everybody might have all of it that they can ever have at one meal.
  [[nodiscard]] std::int64_t least_dislike(std::size_t product) const {
    const std::size_t eaters = c_.eaters.size();
    std::vector<std::int64_t> most(eaters, 0);
    for (const CompiledEat::Seat& seat : c_.seats) {
      const std::size_t week = c_.meals[seat.meal].week;
      const std::int64_t here =
          std::min({seat.appetite, c_.week_limit[week * eaters + seat.eater],
                    c_.product_limit[(week * c_.products.size() + product) * eaters + seat.eater]});
      most[seat.eater] = std::max(most[seat.eater], here);
    }
    const bool keeps = c_.products[product].open_days > 0;
    std::int64_t left = c_.products[product].servings, dislike = 0;
    for (const std::size_t eater : liked_[product]) {
      const std::int64_t taken = keeps && most[eater] > 0 ? left : std::min(left, most[eater]);
      dislike += taken * (2 - c_.rating(product, eater));
      left -= taken;
    }
    return dislike;
  }

  [[nodiscard]] Cost closed(std::size_t lot) const {
    const std::int64_t servings = c_.products[c_.lots[lot].product].servings;
    return c_.lots[lot].donatable ? Cost{0, servings, 0, 0, 0} : Cost{servings, 0, 0, 0, 0};
  }
  [[nodiscard]] Cost opened(const OpenedUnit& unit) const {
    const CompiledEat::Lot& lot = c_.lots[unit.lot];
    const std::int64_t servings = c_.products[lot.product].servings, day = c_.meals[unit.meal].day;
    Cost cost{servings - unit.eaten, 0, 0, 0, 0};
    for (const auto& [seat, eaten] : unit.helpings)
      cost[2] += eaten * (2 - c_.rating(lot.product, c_.seats[seat].eater));
    cost[3] = servings * std::max<std::int64_t>(0, late_days_ - (lot.last - day));
    cost[4] = servings * (day - c_.today) * (1 + (c_.end - lot.last) / 7);
    return cost;
  }
  [[nodiscard]] bool before(const Cost& a, const Cost& b) const {
    const auto last = static_cast<std::ptrdiff_t>(levels_);
    return std::lexicographical_compare(a.begin(), a.begin() + last, b.begin(), b.begin() + last);
  }

  // Waste never grows.
  [[nodiscard]] bool refused(const Cost& was, const Cost& is) {
    const std::int64_t left = trying_ - spent();
    if (left <= 0) return before(was, is);
    if (is[0] != was[0]) return is[0] > was[0];
    const std::int64_t worse = (is[1] - was[1]) * kDonated + is[2] - was[2];
    const std::int64_t heat = kHeat * kFine * left / trying_;
    return worse * kFine >
           static_cast<std::int64_t>(dice_.below(static_cast<std::size_t>(heat) + 1));
  }

  // The weeks in which a unit is eaten from; none of one that is gone or stays where it is.
  struct Span {
    std::size_t first, last;
  };
  [[nodiscard]] Span span(const OpenedUnit& unit) const {
    Span span{SIZE_MAX, 0};
    if (!unit.live || unit.published) return span;
    for (const auto& [seat, servings] : unit.helpings) {
      const std::size_t week = c_.meals[c_.seats[seat].meal].week;
      span = {std::min(span.first, week), std::max(span.last, week)};
    }
    return span;
  }

  // False: there is nothing to rearrange.
  bool step() {
    if (c_.weeks() == 0 || (table_.units.empty() && closed_.empty())) return false;
    choose();
    if (lots_.empty()) {
      quiet_ += 1;
      return true;
    }
    Cost was{}, is{};
    for (const std::size_t index : out_) {
      OpenedUnit& unit = table_.units[index];
      add(was, opened(unit));
      table_.take_back(unit);
    }
    for (std::size_t n = out_.size(); n < lots_.size(); ++n) add(was, closed(lots_[n]));
    order();
    const Rank& rank = dice_.below(2) == 0 ? scarce_ : liked_;
    std::vector<OpenedUnit> placed;
    for (const std::size_t lot : lots_) {
      auto unit = best_place(lot, rank);
      add(is, unit ? opened(*unit) : closed(lot));
      if (unit) placed.push_back(std::move(*unit));
    }
    if (refused(was, is)) {
      for (OpenedUnit& unit : placed) table_.take_back(unit);
      for (const std::size_t index : out_) table_.put_back(table_.units[index]);
      quiet_ += 1;
      return true;
    }
    quiet_ = before(is, was) ? 0 : quiet_ + 1;
    for (std::size_t k = 0; k < is.size(); ++k) change_[k] += is[k] - was[k];
    keep(std::move(placed));
    return true;
  }

  // Some units of weeks that follow each other, and some that found no place yet.
  void choose() {
    out_.clear();
    lots_.clear();
    std::vector<std::size_t> in;
    for (std::size_t n = 0; n < kMostIn && !closed_.empty(); ++n) {
      const std::size_t lot = closed_[dice_.below(closed_.size())];
      if (table_.units_left[lot] > std::count(in.begin(), in.end(), lot)) in.push_back(lot);
    }
    const bool for_one = !in.empty() && dice_.below(kForOne) == 0;
    const std::size_t first = for_one ? some_week_of(in.front()) : dice_.below(c_.weeks());
    const std::size_t last = first + dice_.below(kMostWeeks);
    near_.clear();
    for (std::size_t index = 0; index < spans_.size(); ++index) {
      if (spans_[index].first <= last && spans_[index].last >= first) near_.push_back(index);
    }
    const std::size_t most = std::min(near_.size(), 2 + dice_.below(kMostOut));
    for (std::size_t n = 0; n < most; ++n) {
      std::swap(near_[n], near_[n + dice_.below(near_.size() - n)]);
      out_.push_back(near_[n]);
      lots_.push_back(table_.units[near_[n]].lot);
    }
    lots_.insert(lots_.end(), in.begin(), in.end());
  }

  // A week in which a unit of the lot could be opened, or any.
  std::size_t some_week_of(std::size_t lot) {
    const std::size_t begin = c_.first_meal(c_.lots[lot].from),
                      end = c_.first_meal(c_.lots[lot].last + 1);
    if (begin >= end) return dice_.below(c_.weeks());
    const std::size_t first = c_.meals[begin].week;
    return first + dice_.below(c_.meals[end - 1].week - first + 1);
  }

  void order() {
    switch (dice_.below(3)) {
      case 0:
        std::sort(lots_.begin(), lots_.end());  // soonest date first
        break;
      case 1:
        std::stable_sort(lots_.begin(), lots_.end(), [&](std::size_t a, std::size_t b) {
          return !c_.lots[a].donatable && c_.lots[b].donatable;
        });
        break;
      default:
        for (std::size_t n = lots_.size(); n > 1; --n)
          std::swap(lots_[n - 1], lots_[dice_.below(n)]);
    }
  }

  // Of all meals the one that is best for the unit alone; it is eaten there. Nothing where leaving
  // it closed is better.
  std::optional<OpenedUnit> best_place(std::size_t lot, const Rank& rank) {
    const CompiledEat::Lot& of = c_.lots[lot];
    std::optional<OpenedUnit> best;
    Cost least = closed(lot);
    std::size_t meal = std::max(c_.first_meal(of.from), table_.first_opening[of.product]);
    std::size_t checked_week = c_.weeks();
    OpenedUnit unit;
    for (; meal < c_.meals.size() && c_.meals[meal].day <= of.last; ++meal) {
      const std::size_t week = c_.meals[meal].week;
      if (week != checked_week) {
        checked_week = week;
        if (!table_.week_has_room(week, of.product)) {
          meal = c_.week_end(week) - 1;
          continue;
        }
      }
      if (!c_.suits(of.product, meal)) continue;
      unit.lot = lot;
      unit.meal = meal;
      unit.eaten = 0;
      unit.helpings.clear();
      table_.fill(unit, rank);
      if (unit.eaten == 0) continue;
      table_.take_back(unit);
      const Cost cost = opened(unit);
      if (!before(cost, least)) continue;
      least = cost;
      best = unit;
      // No meal is liked better, and later ones are later.
      if (cost[0] == 0 && cost[2] <= least_dislike_[of.product]) break;
    }
    if (best) table_.put_back(*best);
    return best;
  }

  // What was tried came to nothing.
  void start_again() {
    for (OpenedUnit& unit : table_.units) {
      if (!unit.live) continue;
      table_.take_back(unit);
      table_.units_left[unit.lot] += 1;
    }
    table_.units = std::move(start_);
    free_.clear();
    spans_.clear();
    for (OpenedUnit& unit : table_.units) {
      table_.put_back(unit);
      table_.units_left[unit.lot] -= 1;
      spans_.push_back(span(unit));
    }
    list_closed();
  }

  void list_closed() {
    closed_.clear();
    for (std::size_t lot = 0; lot < c_.lots.size(); ++lot) {
      if (table_.units_left[lot] > 0) closed_.push_back(lot);
    }
  }

  void keep(std::vector<OpenedUnit> placed) {
    for (const std::size_t index : out_) {
      table_.units_left[table_.units[index].lot] += 1;
      table_.units[index].live = false;
      spans_[index] = span(table_.units[index]);
      free_.push_back(index);
    }
    for (OpenedUnit& unit : placed) {
      table_.units_left[unit.lot] -= 1;
      if (free_.empty()) {
        spans_.push_back(span(unit));
        table_.units.push_back(std::move(unit));
      } else {
        spans_[free_.back()] = span(unit);
        table_.units[free_.back()] = std::move(unit);
        free_.pop_back();
      }
    }
    list_closed();
  }

  // Tried on generated households: fewer units out, or more of what has no place in, was no better;
  // more units out was worse.
  static constexpr std::size_t kMostOut = 4, kMostIn = 3, kMostWeeks = 5, kForOne = 3;
  static constexpr std::size_t kPatience = 200, kPatienceForUnit = 30;
  static constexpr std::int64_t kLooksForStep = 20;
  static constexpr std::int64_t kUnits = 500;  // smaller plans get less work
  // Points of dislike by which a step may be worse at the very beginning, counted this finely.
  static constexpr std::int64_t kHeat = 10, kFine = 16;

  Table& table_;
  const CompiledEat& c_;
  std::int64_t late_days_;
  Rank scarce_, liked_;
  std::int64_t begin_;
  std::int64_t work_ = 0, trying_ = 0;  // all of it; as long as a little worse is good enough
  std::int64_t steps_ = 0;
  Dice dice_;
  std::vector<std::size_t> closed_;          // lots with units that are not placed
  std::vector<std::size_t> out_;             // units taken out, and
  std::vector<std::size_t> lots_;            // their lots, then lots of closed units to be tried
  std::vector<std::size_t> free_;            // units that are gone: their place in the list
  std::vector<OpenedUnit> start_;            // as they were
  Cost change_{};                            // since then
  std::size_t levels_ = kLate;               // that count: lateness and order only in the end
  std::vector<std::int64_t> least_dislike_;  // by product
  std::vector<Span> spans_;                  // by unit of the table
  std::vector<std::size_t> near_;            // units of the weeks chosen
  std::size_t quiet_ = 0;                    // steps since something got better
};

}  // namespace

void rearrange(Table& table, const EatDownProblem& problem, std::int64_t work) {
  Rearranger(table, problem, work).run();
}

}  // namespace larderloop::plan
