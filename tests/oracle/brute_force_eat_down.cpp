#include "oracle/brute_force.h"

#include <algorithm>
#include <map>

namespace larderloop::test {
namespace {

using namespace plan;  // NOLINT: the twin speaks of nothing else

std::int64_t floor_week(std::int64_t days) {
  return days >= 0 ? days / 7 : -((-days + 6) / 7);
}

class EatTwin {
 public:
  EatTwin(const EatDownProblem& problem, std::int64_t most,
          const std::function<void(const EatDownPlan&, const Vector&)>& visit)
      : p_(problem),
        most_(most),
        visit_(visit),
        end_(problem.today + problem.horizon_days),
        meals_(problem.meals) {
    std::stable_sort(meals_.begin(), meals_.end(), [](const EatMeal& a, const EatMeal& b) {
      if (a.day != b.day) return a.day < b.day;
      if (a.kind != b.kind) return a.kind < b.kind;
      return a.id < b.id;
    });
    for (const EatLot& lot : p_.lots) left_.push_back(lot.last_good_day < end_ ? lot.units : 0);
  }

  bool run() {
    meal(0);
    return !gave_up_;
  }

 private:
  const EatProduct& product(const std::string& id) const {
    return *std::find_if(p_.products.begin(), p_.products.end(),
                         [&](const EatProduct& each) { return each.id == id; });
  }
  const Eater& eater(const std::string& id) const {
    return *std::find_if(p_.eaters.begin(), p_.eaters.end(),
                         [&](const Eater& each) { return each.id == id; });
  }
  static int rating(const Eater& who, const std::string& what) {
    return who.ratings.count(what) == 0 ? 0 : who.ratings.at(what);
  }
  static bool may_serve(const EatProduct& what, const Eater& who) {
    std::vector<std::string> common;
    std::set_intersection(what.contains.begin(), what.contains.end(), who.avoid.begin(),
                          who.avoid.end(), std::back_inserter(common));
    return common.empty() && rating(who, what.id) != -2;
  }

  void meal(std::size_t index) {
    if (gave_up_) return;
    if (index == meals_.size()) {
      finish();
      return;
    }
    open_lot(index, 0);
  }

  // Every number of units of every lot opened at this meal ...
  void open_lot(std::size_t index, std::size_t lot) {
    if (gave_up_) return;
    if (lot == p_.lots.size()) {
      serve(index, 0, 0);
      return;
    }
    open_lot(index, lot + 1);
    const EatLot& of = p_.lots[lot];
    const EatMeal& at = meals_[index];
    if (at.day < p_.today || at.day > of.last_good_day) return;
    if (of.available_from && at.day < *of.available_from) return;
    if (product(of.product).kinds.count(at.kind) == 0 || at.without.count(of.product) > 0) return;
    const std::int64_t had = left_[lot];
    for (std::int64_t units = 1; units <= had; ++units) {
      left_[lot] = had - units;
      opened_.push_back({lot, index, units});
      open_lot(index, lot + 1);
      opened_.pop_back();
    }
    left_[lot] = had;
  }

  // ... with every way to serve it: one decision a product and eater.
  void serve(std::size_t index, std::size_t which, std::size_t seat) {
    if (gave_up_) return;
    const EatMeal& at = meals_[index];
    if (which == p_.products.size()) {
      if (sound(index)) meal(index + 1);
      return;
    }
    if (seat == at.eaters.size()) {
      serve(index, which + 1, 0);
      return;
    }
    serve(index, which, seat + 1);
    const EatProduct& what = p_.products[which];
    const Eater& who = eater(at.eaters[seat]);
    if (what.kinds.count(at.kind) == 0 || at.without.count(what.id) > 0) return;
    if (!may_serve(what, who)) return;
    const std::int64_t most = at.appetite.count(who.id) == 0 ? 1 : at.appetite.at(who.id);
    for (std::int64_t servings = 1; servings <= most; ++servings) {
      served_.push_back({which, index, who.id, servings});
      if (within_limits(who, what, index)) serve(index, which, seat + 1);
      served_.pop_back();
    }
  }

  bool within_limits(const Eater& who, const EatProduct& what, std::size_t index) const {
    const std::int64_t week = floor_week(meals_[index].day - p_.week_start);
    std::int64_t at_meal = 0, in_week = 0, of_product = 0;
    if (week == 0) {
      for (const auto& [id, servings] : who.eaten_this_week) {
        in_week += servings;
        if (id == what.id) of_product += servings;
      }
    }
    for (const Serving& each : served_) {
      if (each.who != who.id) continue;
      if (each.meal == index) at_meal += each.servings;
      if (floor_week(meals_[each.meal].day - p_.week_start) != week) continue;
      in_week += each.servings;
      if (p_.products[each.product].id == what.id) of_product += each.servings;
    }
    const std::int64_t appetite =
        meals_[index].appetite.count(who.id) == 0 ? 1 : meals_[index].appetite.at(who.id);
    return at_meal <= appetite && in_week <= who.tolerance.value_or(p_.tolerance) &&
           of_product <= who.monotony.value_or(p_.monotony);
  }

  // For each product up to this meal: as many openings as servings, and servings in hand. Units are
  // kept one by one.
  bool sound(std::size_t index) const {
    for (std::size_t which = 0; which < p_.products.size(); ++which) {
      const EatProduct& what = p_.products[which];
      std::vector<std::pair<std::int64_t, std::int64_t>> units;  // day of opening, servings left
      for (std::size_t at = 0; at <= index; ++at) {
        const std::size_t before = units.size();
        for (const Opening& each : opened_) {
          if (each.meal != at || p_.lots[each.lot].product != what.id) continue;
          for (std::int64_t n = 0; n < each.units; ++n)
            units.emplace_back(meals_[at].day, what.servings);
        }
        std::int64_t wanted = 0;
        for (const Serving& each : served_) {
          if (each.meal == at && each.product == which) wanted += each.servings;
        }
        if (static_cast<std::int64_t>(units.size() - before) > wanted) return false;
        for (std::size_t unit = 0; unit < units.size(); ++unit) {
          const bool keeps =
              what.open_days > 0 && meals_[at].day <= units[unit].first + what.open_days;
          if (unit < before && !keeps) continue;
          const std::int64_t taken = std::min(wanted, units[unit].second);
          units[unit].second -= taken;
          wanted -= taken;
        }
        if (wanted > 0) return false;
      }
    }
    return true;
  }

  void finish() {
    if (++plans_ > most_) {
      gave_up_ = true;
      return;
    }
    EatDownPlan plan;
    Vector levels(6, 0);
    for (const Opening& each : opened_) {
      const EatLot& lot = p_.lots[each.lot];
      const std::int64_t day = meals_[each.meal].day,
                         servings = each.units * product(lot.product).servings;
      plan.opened.push_back({lot.id, meals_[each.meal].id, each.units});
      levels[0] += servings;
      levels[3] += servings * std::max<std::int64_t>(0, p_.late_days - (lot.last_good_day - day));
      levels[5] += servings * (day - p_.today) * (1 + floor_week(end_ - lot.last_good_day));
    }
    std::map<std::string, std::int64_t> changed;
    const auto shown = [&](const EatMeal& at) {
      return at.day >= p_.today && at.day <= p_.published_until;
    };
    for (const Serving& each : served_) {
      const std::string& what = p_.products[each.product].id;
      plan.servings.push_back({what, meals_[each.meal].id, each.who, each.servings});
      levels[0] -= each.servings;
      levels[2] += each.servings * (2 - rating(eater(each.who), what));
      if (shown(meals_[each.meal]))
        changed[what + "|" + meals_[each.meal].id + "|" + each.who] += each.servings;
    }
    for (const MealServing& each : p_.published) {
      for (const EatMeal& at : meals_) {
        if (at.id == each.meal && shown(at))
          changed[each.product + "|" + each.meal + "|" + each.eater] -= each.servings;
      }
    }
    for (const auto& [key, by] : changed) levels[4] += by < 0 ? -by : by;
    for (std::size_t lot = 0; lot < p_.lots.size(); ++lot) {
      const EatLot& of = p_.lots[lot];
      if (left_[lot] == 0) continue;
      const bool donate = of.may_donate && of.last_good_day - p_.today >= p_.donate_days;
      (donate ? plan.donated : plan.wasted).push_back({of.id, left_[lot]});
      levels[donate ? 1 : 0] += left_[lot] * product(of.product).servings;
    }
    if (p_.keep_published) levels.insert(levels.begin(), missed(p_.published, true));
    if (!p_.wished.empty()) levels.insert(levels.begin(), missed(p_.wished, false));
    visit_(plan, levels);
  }

  // Servings asked for that are not served, serving by serving.
  std::int64_t missed(const std::vector<MealServing>& asked, bool published) const {
    std::map<std::string, std::int64_t> open;
    for (const MealServing& each : asked) {
      for (const EatMeal& at : meals_) {
        if (at.id != each.meal || at.day < p_.today) continue;
        if (!published || at.day <= p_.published_until)
          open[each.product + "|" + each.meal + "|" + each.eater] += each.servings;
      }
    }
    std::int64_t sum = 0;
    for (auto& [key, servings] : open) {
      for (const Serving& each : served_) {
        if (p_.products[each.product].id + "|" + meals_[each.meal].id + "|" + each.who == key)
          servings -= each.servings;
      }
      sum += std::max<std::int64_t>(0, servings);
    }
    return sum;
  }

  struct Opening {
    std::size_t lot, meal;
    std::int64_t units;
  };
  struct Serving {
    std::size_t product, meal;
    std::string who;
    std::int64_t servings;
  };

  const EatDownProblem& p_;
  std::int64_t most_;
  const std::function<void(const EatDownPlan&, const Vector&)>& visit_;
  std::int64_t end_;
  std::vector<EatMeal> meals_;
  std::vector<std::int64_t> left_;
  std::vector<Opening> opened_;
  std::vector<Serving> served_;
  std::int64_t plans_ = 0;
  bool gave_up_ = false;
};

}  // namespace

bool every_eat_down_plan(const EatDownProblem& problem, std::int64_t most,
                         const std::function<void(const EatDownPlan&, const Vector&)>& visit) {
  return EatTwin(problem, most, visit).run();
}

}  // namespace larderloop::test
