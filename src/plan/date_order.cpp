// Plain first-expired-first-out, as by hand: for comparison, so it heeds dates, kinds of meal and
// appetites, and nothing else; or, with rules, also who may have what and how much of it in a week.
#include "larderloop/plan/planner.h"
#include "plan/compiled.h"

#include <algorithm>
#include <deque>
#include <map>

namespace larderloop::plan {
namespace {

class ByHand {
 public:
  ByHand(const EatDownProblem& problem, bool with_rules)
      : c_(problem),
        with_rules_(with_rules),
        open_(c_.products.size()),
        week_left_(c_.week_limit),
        product_left_(c_.product_limit) {
    for (const CompiledEat::Lot& lot : c_.lots) sealed_.push_back(lot.units);
    for (const CompiledEat::Lot& lot : c_.open_lots) {
      before_.push_back(lot.units);
      sources_.push_back({&lot, before_.size() - 1, true});
    }
    for (std::size_t lot = 0; lot < c_.lots.size(); ++lot)
      sources_.push_back({&c_.lots[lot], lot, false});
    std::stable_sort(sources_.begin(), sources_.end(),
                     [](const Source& a, const Source& b) { return a.lot->last < b.lot->last; });
  }

  EatDownPlan plan() {
    for (std::size_t meal = 0; meal < c_.meals.size(); ++meal) {
      if (c_.meals[meal].day >= c_.end) break;
      hold(meal);
    }
    EatDownPlan plan;
    plan.opened = std::move(opened_);
    plan.servings = std::move(servings_);
    for (std::size_t lot = 0; lot < c_.lots.size(); ++lot) {
      const EatLot& of = *c_.lots[lot].source;
      const std::int64_t left = of.units - (c_.lots[lot].units - sealed_[lot]);
      if (left > 0) (c_.lots[lot].donatable ? plan.donated : plan.wasted).push_back({of.id, left});
    }
    const auto by_id = [](const LotUnits& a, const LotUnits& b) { return a.lot < b.lot; };
    std::sort(plan.donated.begin(), plan.donated.end(), by_id);
    std::sort(plan.wasted.begin(), plan.wasted.end(), by_id);
    return plan;
  }

 private:
  struct Source {
    const CompiledEat::Lot* lot;
    std::size_t index;
    bool already_open;
  };
  struct Open {
    std::int64_t through, left;
  };

  void hold(std::size_t meal) {
    std::map<std::size_t, std::int64_t> opened;  // by lot
    for (std::size_t seat = c_.meals[meal].seats_begin; seat < c_.meals[meal].seats_end; ++seat) {
      std::map<std::size_t, std::int64_t> eaten;  // by product
      std::int64_t wanted = c_.seats[seat].appetite;
      for (const Source& source : sources_) {
        if (wanted == 0) break;
        const std::size_t product = source.lot->product;
        if (!c_.suits(product, meal)) continue;
        const std::int64_t most = std::min(wanted, allowed(seat, product));
        std::int64_t served = from_open(product, meal, most);
        if (!source.already_open) served += from_sealed(source, meal, most - served, opened);
        if (served > 0) eaten[product] += served;
        if (with_rules_) count(seat, product, served);
        wanted -= served;
      }
      for (const auto& [product, servings] : eaten) {
        servings_.push_back({c_.products[product].source->id, c_.meals[meal].source->id,
                             c_.eaters[c_.seats[seat].eater]->id, servings});
      }
    }
    std::map<std::string, std::int64_t> by_id;
    for (const auto& [lot, units] : opened) by_id[c_.lots[lot].source->id] = units;
    for (const auto& [lot, units] : by_id)
      opened_.push_back({lot, c_.meals[meal].source->id, units});
    for (const auto& [lot, units] : opened) {
      if (c_.products[c_.lots[lot].product].open_days == 0) open_[c_.lots[lot].product].clear();
    }
  }

  // What the rules still allow the seat of the product.
  [[nodiscard]] std::int64_t allowed(std::size_t seat, std::size_t product) const {
    const std::size_t eater = c_.seats[seat].eater;
    if (!with_rules_) return CompiledEat::kMost;
    if (!c_.will_eat(product, eater)) return 0;
    const std::int64_t left = std::min(week_left_[week_of(seat) * c_.eaters.size() + eater],
                                       product_left_[product_at(seat, product)]);
    return std::max<std::int64_t>(0, left);
  }
  void count(std::size_t seat, std::size_t product, std::int64_t served) {
    week_left_[week_of(seat) * c_.eaters.size() + c_.seats[seat].eater] -= served;
    product_left_[product_at(seat, product)] -= served;
  }
  [[nodiscard]] std::size_t week_of(std::size_t seat) const {
    return c_.meals[c_.seats[seat].meal].week;
  }
  [[nodiscard]] std::size_t product_at(std::size_t seat, std::size_t product) const {
    return (week_of(seat) * c_.products.size() + product) * c_.eaters.size() + c_.seats[seat].eater;
  }

  // What is open goes first: units open before, soonest date first, then the oldest opened.
  std::int64_t from_open(std::size_t product, std::size_t meal, std::int64_t wanted) {
    const std::int64_t day = c_.meals[meal].day;
    std::int64_t served = 0;
    for (const Source& source : sources_) {
      if (!source.already_open || source.lot->product != product) continue;
      if (day < source.lot->from || day > source.lot->last) continue;
      const std::int64_t servings = std::min(wanted - served, before_[source.index]);
      before_[source.index] -= servings;
      served += servings;
    }
    std::deque<Open>& open = open_[product];
    while (!open.empty() && (open.front().through < day || open.front().left == 0))
      open.pop_front();
    for (Open& unit : open) {
      const std::int64_t servings = std::min(wanted - served, unit.left);
      unit.left -= servings;
      served += servings;
    }
    return served;
  }

  std::int64_t from_sealed(const Source& source, std::size_t meal, std::int64_t wanted,
                           std::map<std::size_t, std::int64_t>& opened) {
    const std::int64_t day = c_.meals[meal].day;
    const CompiledEat::Product& product = c_.products[source.lot->product];
    std::int64_t& sealed = sealed_[source.index];
    if (wanted == 0 || sealed == 0 || day < source.lot->from || day > source.lot->last) return 0;
    const std::int64_t units = std::min(sealed, (wanted + product.servings - 1) / product.servings);
    const std::int64_t servings = std::min(wanted, units * product.servings);
    sealed -= units;
    opened[source.index] += units;
    open_[source.lot->product].push_back(
        {day + product.open_days, units * product.servings - servings});
    return servings;
  }

  CompiledEat c_;
  bool with_rules_;
  std::vector<Source> sources_;
  std::vector<std::int64_t> sealed_, before_;           // units, servings
  std::vector<std::deque<Open>> open_;                  // by product
  std::vector<std::int64_t> week_left_, product_left_;  // as in CompiledEat
  std::vector<Opened> opened_;
  std::vector<MealServing> servings_;
};

}  // namespace

EatDownPlan plain_date_order(const EatDownProblem& problem) {
  return ByHand(problem, false).plan();
}

EatDownPlan plain_date_order_with_rules(const EatDownProblem& problem) {
  return ByHand(problem, true).plan();
}

}  // namespace larderloop::plan
