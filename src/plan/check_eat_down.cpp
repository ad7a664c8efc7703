// The checker of eat-down plans: every row and level of docs/planning.md, read off the plan as it
// stands.
#include "larderloop/plan/check.h"
#include "plan/by_id.h"
#include "plan/exact.h"

#include <algorithm>
#include <deque>
#include <string_view>
#include <tuple>

namespace larderloop::plan {
namespace {

// Ids are of the problem and the plan, which outlive the check.
using Id = std::string_view;

std::string named(const char* what, Id id) {
  return std::string(what) + " '" + std::string(id) + "'";
}
std::string count(Exact number) {
  return number.fits() ? std::to_string(number.value()) : "more than 64 bits hold";
}

class EatDownCheck {
 public:
  EatDownCheck(const EatDownProblem& problem, const EatDownPlan& plan)
      : problem_(problem), plan_(plan), end_(Exact(problem.today) + problem.horizon_days) {}

  Verdict verdict() {
    index();
    if (verdict_.violations.empty()) {
      read_opened();
      read_servings();
      read_units(plan_.donated, "donated", donated_);
      read_units(plan_.wasted, "wasted", wasted_);
      check_donations();
      check_conservation();
      check_appetites();
      check_weeks();
      for (const auto& [id, product] : products_) check_open_units(*product);
    }
    tell_levels();
    return std::move(verdict_);
  }

 private:
  void breaks(std::string sentence) { verdict_.violations.push_back(std::move(sentence)); }

  template <typename T>
  void index_by_id(const std::vector<T>& all, const char* what, ById<T>& by_id) {
    by_id = ById<T>(all);
    for (const Id id : by_id.twice()) breaks("the problem names " + named(what, id) + " twice");
  }

  // The problem itself: without sound ids and counts no plan can be judged.
  void index() {
    index_by_id(problem_.eaters, "eater", eaters_);
    index_by_id(problem_.products, "product", products_);
    index_by_id(problem_.lots, "lot", lots_);
    index_by_id(problem_.meals, "meal", meals_);
    if (problem_.horizon_days < 0 || !end_.fits()) breaks("the horizon is not a number of days");
    for (const EatProduct& product : problem_.products) {
      if (product.servings < 1) breaks(named("product", product.id) + " has no servings in a unit");
      if (product.open_days < 0)
        breaks(named("product", product.id) + " keeps a negative number of days");
    }
    for (const EatLot& lot : problem_.lots) {
      if (products_.count(lot.product) == 0) {
        breaks(named("lot", lot.id) + " is of " + named("product", lot.product) +
               ", which is not in the problem");
      }
      if (lot.units < 0 || lot.open_servings < 0)
        breaks(named("lot", lot.id) + " holds a negative number");
    }
    for (const EatMeal& meal : problem_.meals) {
      for (const std::string& eater : meal.eaters) {
        if (eaters_.count(eater) == 0) {
          breaks(named("meal", meal.id) + " seats " + named("eater", eater) +
                 ", who is not in the problem");
        }
      }
    }
    calendar_.reserve(problem_.meals.size());
    for (const EatMeal& meal : problem_.meals) calendar_.push_back(&meal);
    const auto sooner = [](const EatMeal* a, const EatMeal* b) {
      return std::tie(a->day, a->kind, a->id) < std::tie(b->day, b->kind, b->id);
    };
    if (!std::is_sorted(calendar_.begin(), calendar_.end(), sooner)) std::sort(calendar_.begin(), calendar_.end(), sooner);
    rank_.resize(calendar_.size());
    for (std::size_t rank = 0; rank < calendar_.size(); ++rank) rank_[place_of(*calendar_[rank])] = rank;
  }

  [[nodiscard]] std::size_t place_of(const EatMeal& meal) const {
    return static_cast<std::size_t>(&meal - problem_.meals.data());
  }
  [[nodiscard]] bool in_scope(const EatLot& lot) const { return lot.last_good_day < end_.value(); }
  [[nodiscard]] std::int64_t first_day(const EatLot& lot) const {
    return std::max(problem_.today, lot.available_from.value_or(problem_.today));
  }
  [[nodiscard]] static int rating(const Eater& eater, const std::string& product) {
    const auto found = eater.ratings.find(product);
    return found == eater.ratings.end() ? 0 : found->second;
  }
  [[nodiscard]] static bool will_eat(const EatProduct& product, const Eater& eater) {
    for (const std::string& tag : product.contains) {
      if (eater.avoid.count(tag) > 0) return false;
    }
    return rating(eater, product.id) > -2;
  }
  [[nodiscard]] static bool seated(const EatMeal& meal, const std::string& eater) {
    return std::find(meal.eaters.begin(), meal.eaters.end(), eater) != meal.eaters.end();
  }
  [[nodiscard]] std::int64_t week(std::int64_t day) const {
    return (Exact(day) - problem_.week_start).floor_div(7).value();
  }

  void read_opened() {
    for (const Opened& line : plan_.opened) {
      const auto breaks_it = [&](const char* how) {
        breaks("opening " + named("lot", line.lot) + " at " + named("meal", line.meal) + how);
      };
      const auto lot = lots_.find(line.lot);
      const auto meal = meals_.find(line.meal);
      if (lot == lots_.end() || meal == meals_.end()) {
        breaks_it(": not in the problem");
        continue;
      }
      if (!opened_.emplace(std::pair(Id(line.lot), Id(line.meal)), line.units).second) {
        breaks_it(": planned twice");
        continue;
      }
      if (line.units < 0) breaks_it(": a negative number of units");
      if (line.units == 0) continue;
      const EatLot& from = *lot->second;
      const EatMeal& at = *meal->second;
      const EatProduct& product = *products_.at(from.product);
      if (from.already_open) breaks_it(": it is open already");
      if (!in_scope(from)) breaks_it(": it is good beyond the horizon and kept");
      if (at.day < first_day(from)) breaks_it(": before it is available");
      if (at.day > from.last_good_day) breaks_it(": after its last good day");
      if (product.kinds.count(at.kind) == 0) breaks_it(": it does not suit this kind of meal");
      if (at.without.count(product.id) > 0) breaks_it(": it is not wanted at this meal");
      const bool anyone = std::any_of(
          at.eaters.begin(), at.eaters.end(),
          [&](const std::string& eater) { return will_eat(product, *eaters_.at(eater)); });
      if (!anyone) breaks_it(": nobody at the meal will eat it");
      at_meal_[from.product][rank_[place_of(at)]].opened += line.units;
    }
  }

  void read_servings() {
    for (const MealServing& line : plan_.servings) {
      const auto breaks_it = [&](const char* how) {
        breaks(named("product", line.product) + " for " + named("eater", line.eater) + " at " +
               named("meal", line.meal) + how);
      };
      const auto product = products_.find(line.product);
      const auto meal = meals_.find(line.meal);
      const auto eater = eaters_.find(line.eater);
      if (product == products_.end() || meal == meals_.end() || eater == eaters_.end()) {
        breaks_it(": not in the problem");
        continue;
      }
      if (!served_
               .emplace(std::tuple(Id(line.product), Id(line.meal), Id(line.eater)), line.servings)
               .second) {
        breaks_it(": planned twice");
        continue;
      }
      if (line.servings < 0) breaks_it(": a negative number of servings");
      if (line.servings == 0) continue;
      if (!seated(*meal->second, line.eater)) breaks_it(": not at this meal");
      if (product->second->kinds.count(meal->second->kind) == 0) {
        breaks_it(": it does not suit this kind of meal");
      }
      if (meal->second->without.count(line.product) > 0)
        breaks_it(": it is not wanted at this meal");
      if (!will_eat(*product->second, *eater->second)) breaks_it(": must not or will not eat it");
      at_meal_[line.product][rank_[place_of(*meal->second)]].eaten += line.servings;
    }
  }

  void read_units(const std::vector<LotUnits>& lines, const char* verb, std::map<Id, Exact>& into) {
    for (const LotUnits& line : lines) {
      const auto breaks_it = [&](const char* how) {
        breaks(named("lot", line.lot) + " " + verb + how);
      };
      const auto lot = lots_.find(line.lot);
      if (lot == lots_.end()) {
        breaks_it(": not in the problem");
        continue;
      }
      if (!into.emplace(line.lot, line.units).second) {
        breaks_it(": told twice");
        continue;
      }
      if (line.units < 0) breaks_it(": a negative number of units");
      if (line.units == 0) continue;
      if (!in_scope(*lot->second)) breaks_it(": it is good beyond the horizon and kept");
      if (lot->second->already_open)
        breaks_it(": it is open already, what is left of it follows from the meals");
    }
  }

  void check_donations() {
    for (const auto& [id, units] : donated_) {
      const EatLot& lot = *lots_.at(id);
      if (units.value() == 0) continue;
      if (!lot.may_donate) breaks(named("lot", id) + " donated: it may not be given away");
      if (!Exact(problem_.donate_days).at_most(Exact(lot.last_good_day) - problem_.today)) {
        breaks(named("lot", id) + " donated: too near its last good day");
      }
    }
  }

  void check_conservation() {
    std::map<Id, Exact> used;
    for (const auto& [key, units] : opened_) used[key.first] += units;
    for (const auto& [id, units] : donated_) used[id] += units;
    for (const auto& [id, units] : wasted_) used[id] += units;
    for (const auto& [id, lot] : lots_) {
      if (lot->already_open || !in_scope(*lot)) continue;
      const auto found = used.find(id);
      const Exact sum = found == used.end() ? Exact(0) : found->second;
      if (!sum.is(lot->units)) {
        breaks(named("lot", id) + ": " + count(sum) + " units opened, donated or wasted of " +
               count(lot->units));
      }
    }
  }

  void check_appetites() {
    std::map<std::pair<Id, Id>, Exact> eaten;
    for (const auto& [key, servings] : served_)
      eaten[{std::get<1>(key), std::get<2>(key)}] += servings;
    for (const auto& [key, servings] : eaten) {
      const EatMeal& meal = *meals_.at(key.first);
      const std::int64_t appetite = std::max<std::int64_t>(0, meal.appetite.of(key.second, 1));
      if (!servings.at_most(appetite)) {
        breaks(named("eater", key.second) + " at " + named("meal", key.first) + ": " +
               count(servings) + " servings, appetite " + count(appetite));
      }
    }
  }

  void check_weeks() {
    std::map<std::pair<Id, std::int64_t>, Exact> weekly;
    std::map<std::tuple<Id, std::int64_t, Id>, Exact> of_product;
    for (const auto& [key, servings] : served_) {
      if (servings <= 0) continue;
      const auto& [product, meal, eater] = key;
      const std::int64_t in = week(meals_.at(meal)->day);
      weekly[{eater, in}] += servings;
      of_product[{eater, in, product}] += servings;
    }
    for (auto& [key, servings] : weekly) {
      const Eater& eater = *eaters_.at(key.first);
      if (key.second == 0) {
        for (const auto& [product, before] : eater.eaten_this_week) servings += before;
      }
      const std::int64_t limit =
          std::max<std::int64_t>(0, eater.tolerance.value_or(problem_.tolerance));
      if (!servings.at_most(limit)) {
        breaks(named("eater", key.first) + " in week " + std::to_string(key.second) + ": " +
               count(servings) + " servings, tolerance " + count(limit));
      }
    }
    for (auto& [key, servings] : of_product) {
      const auto& [id, in, product] = key;
      const Eater& eater = *eaters_.at(id);
      if (in == 0) servings += eater.eaten_this_week.of(product, 0);
      const std::int64_t limit =
          std::max<std::int64_t>(0, eater.monotony.value_or(problem_.monotony));
      if (!servings.at_most(limit)) {
        breaks(named("eater", id) + " in week " + std::to_string(in) + ": " + count(servings) +
               " servings of " + named("product", product) + ", at most " + count(limit));
      }
    }
  }

  // Where each serving comes from: units that were open before, soonest date first; then units
  // opened by the plan, oldest first.
  void check_open_units(const EatProduct& product) {
    struct Open {
      std::int64_t from, through;
      Exact left;
    };
    std::vector<Open> before;
    std::vector<const EatLot*> open_lots;
    for (const auto& [id, lot] : lots_) {
      if (lot->product == product.id && lot->already_open && in_scope(*lot))
        open_lots.push_back(lot);
    }
    std::stable_sort(open_lots.begin(), open_lots.end(), [](const EatLot* a, const EatLot* b) {
      return a->last_good_day < b->last_good_day;
    });
    for (const EatLot* lot : open_lots)
      before.push_back({first_day(*lot), lot->last_good_day, lot->open_servings});

    const bool keeps = product.servings > 1 && product.open_days > 0;
    std::deque<Open> planned;
    const auto take = [](Open& open, Exact& wanted) {
      const Exact taken = std::min(open.left.value(), wanted.value());
      open.left -= taken;
      wanted -= taken;
      return taken;
    };
    for (const auto& [rank, here] : at_meal_[product.id]) {
      const EatMeal* meal = calendar_[rank];
      Exact wanted = here.eaten;
      const Exact opening = here.opened;
      const auto breaks_it = [&](const std::string& how) {
        breaks(named("product", product.id) + " at " + named("meal", meal->id) + how);
      };
      for (Open& open : before) {
        if (open.from <= meal->day && meal->day <= open.through) take(open, wanted);
      }
      if (!opening.at_most(wanted)) {
        breaks_it(": " + count(opening) + " units opened for " + count(wanted) + " servings");
      }
      while (!planned.empty() && planned.front().through < meal->day) planned.pop_front();
      const Exact through = keeps ? Exact(meal->day) + product.open_days : Exact(meal->day);
      const Exact fresh = opening * product.servings;
      if (!through.fits() || !fresh.fits() || !wanted.fits()) {
        breaks_it(": too many to count");
        return;
      }
      if (opening.value() > 0) planned.push_back({meal->day, through.value(), fresh});
      for (Open& open : planned) take(open, wanted);
      if (wanted.value() > 0)
        breaks_it(": " + count(wanted) + " servings without an open unit to take them from");
      if (!keeps) planned.clear();
    }
  }

  void tell_levels() {
    if (!problem_.wished.empty()) tell("wishes", not_served(problem_.wished, false));
    if (problem_.keep_published) tell("dropped", not_served(problem_.published, true));
    tell("wasted", wasted());
    tell("donated", donated());
    tell("dislike", dislike());
    tell("late", late());
    tell("changed", changed());
    tell("order", order());
  }

  void tell(const char* name, Exact value) {
    if (!value.fits()) breaks(std::string("the level '") + name + "' is too large to count");
    verdict_.levels.push_back({name, value.value(), std::nullopt});
  }

  [[nodiscard]] bool in_calendar(Id meal) const {
    const auto found = meals_.find(meal);
    return found != meals_.end() && problem_.today <= found->second->day;
  }
  [[nodiscard]] bool counts_as_published(Id meal) const {
    return in_calendar(meal) && meals_.at(meal)->day <= problem_.published_until;
  }

  // Of the servings listed, those that the plan does not serve; meals that are over or gone do not
  // count.
  [[nodiscard]] Exact not_served(const std::vector<MealServing>& listed, bool published) const {
    std::map<std::tuple<Id, Id, Id>, Exact> wanted;
    for (const MealServing& line : listed) {
      if (published ? !counts_as_published(line.meal) : !in_calendar(line.meal)) continue;
      wanted[{line.product, line.meal, line.eater}] += line.servings;
    }
    Exact sum = 0;
    for (auto& [key, servings] : wanted) {
      const auto found = served_.find(key);
      if (found != served_.end()) servings -= found->second;
      sum += servings.or_zero();
    }
    return sum;
  }

  [[nodiscard]] std::int64_t servings_in(Id lot) const {
    const auto found = lots_.find(lot);
    const auto product =
        found == lots_.end() ? products_.end() : products_.find(found->second->product);
    return product == products_.end() ? 1 : product->second->servings;
  }

  // Whole units thrown away, and what was opened, before or by the plan, and is not eaten.
  [[nodiscard]] Exact wasted() const {
    Exact sum = 0;
    for (const auto& [id, units] : wasted_) sum += units * servings_in(id);
    for (const auto& [key, units] : opened_) sum += Exact(units) * servings_in(key.first);
    for (const auto& [id, lot] : lots_) {
      if (lot->already_open && in_scope(*lot)) sum += lot->open_servings;
    }
    for (const auto& [key, servings] : served_) sum -= servings;
    return sum;
  }
  [[nodiscard]] Exact donated() const {
    Exact sum = 0;
    for (const auto& [id, units] : donated_) sum += units * servings_in(id);
    return sum;
  }
  [[nodiscard]] Exact dislike() const {
    Exact sum = 0;
    for (const auto& [key, servings] : served_) {
      const Eater& eater = *eaters_.at(std::get<2>(key));
      sum += Exact(servings) * (2 - rating(eater, std::string(std::get<0>(key))));
    }
    return sum;
  }
  [[nodiscard]] Exact late() const {
    Exact sum = 0;
    for (const auto& [key, units] : opened_) {
      const Exact ahead = Exact(lots_.at(key.first)->last_good_day) - meals_.at(key.second)->day;
      sum += Exact(units) * servings_in(key.first) * (Exact(problem_.late_days) - ahead).or_zero();
    }
    return sum;
  }
  [[nodiscard]] Exact changed() const {
    std::map<std::tuple<Id, Id, Id>, Exact> difference;
    for (const auto& [key, servings] : served_) {
      if (counts_as_published(std::get<1>(key))) difference[key] += servings;
    }
    for (const MealServing& line : problem_.published) {
      if (counts_as_published(line.meal))
        difference[{line.product, line.meal, line.eater}] -= line.servings;
    }
    Exact sum = 0;
    for (const auto& [key, by] : difference) sum += by.value() < 0 ? Exact(0) - by : by;
    return sum;
  }
  [[nodiscard]] Exact order() const {
    Exact sum = 0;
    for (const auto& [key, units] : opened_) {
      const Exact weeks = (end_ - lots_.at(key.first)->last_good_day).floor_div(7) + 1;
      sum += Exact(units) * servings_in(key.first) *
             (Exact(meals_.at(key.second)->day) - problem_.today) * weeks;
    }
    return sum;
  }

  const EatDownProblem& problem_;
  const EatDownPlan& plan_;
  Exact end_;
  Verdict verdict_;
  ById<Eater> eaters_;
  ById<EatProduct> products_;
  ById<EatLot> lots_;
  ById<EatMeal> meals_;
  std::vector<const EatMeal*> calendar_;
  std::map<std::pair<Id, Id>, std::int64_t> opened_;       // lot, meal
  std::map<std::tuple<Id, Id, Id>, std::int64_t> served_;  // product, meal, eater
  std::map<Id, Exact> donated_, wasted_;                   // by lot
  // What is opened and eaten of a product at a meal, by the meal's place in the calendar.
  struct AtMeal {
    Exact opened = 0, eaten = 0;
  };
  std::map<Id, std::map<std::size_t, AtMeal>> at_meal_;
  std::vector<std::size_t> rank_;  // by the meal's place in the problem
};

}  // namespace

Verdict check(const EatDownProblem& problem, const EatDownPlan& plan) {
  return EatDownCheck(problem, plan).verdict();
}

}  // namespace larderloop::plan
