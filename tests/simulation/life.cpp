#include "simulation/life.h"

#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"
#include "larderloop/plan/solve.h"

#include <algorithm>

namespace larderloop::simulation {
namespace {

struct Stock {
  std::size_t arrival = 0;
  std::size_t food = 0;
  std::int64_t units = 0;
  std::int64_t last = 0;
};
struct OpenUnit {
  std::string lot;
  std::size_t arrival = 0;
  std::size_t food = 0;
  std::int64_t left = 0;
  std::int64_t through = 0;
};
struct KitLot {
  std::size_t food = 0;
  std::size_t person = 0;
  std::int64_t units = 0;
  std::int64_t last = 0;
};

plan::Limits limits() {
  plan::Limits small;
  small.nodes = 2;
  small.largest_model = 0;
  return small;
}

class Life {
 public:
  Life(const World& world, Policy policy) : world_(world), policy_(policy) {}

  Outcome live(std::int64_t days) {
    for (std::int64_t step = 0; step * kStep < days; ++step) {
      const std::int64_t today = step * kStep;
      drop_past(today);
      if (step % kStepsToReview == 0) review(today, today + kStep * kStepsToReview + kSlack);
      live_by(meals_problem(today), today);
    }
    drop_past(days);
    for (const OpenUnit& unit : open_) out_.arrivals[unit.arrival].open_at_end += unit.left;
    return std::move(out_);
  }

 private:
  // ---- stock ----

  void fault(std::string what) { out_.faults.push_back(std::move(what)); }
  void bought(std::size_t food, std::int64_t packs) {
    out_.packs += packs;
    out_.cents += packs * world_.foods[food].price;
  }
  std::string next_id(const char* kind) {
    const std::string number = std::to_string(++ids_);
    return kind + std::string(7 - number.size(), '0') + number;
  }
  void arrive(std::size_t food, std::int64_t units, std::int64_t today, std::int64_t last) {
    if (units == 0) return;
    out_.arrivals.push_back({food, today, last, units * world_.foods[food].servings, 0, 0});
    pantry_[next_id("l")] = {out_.arrivals.size() - 1, food, units, last};
  }

  void drop_past(std::int64_t day) {
    for (auto lot = pantry_.begin(); lot != pantry_.end();) {
      if (lot->second.last < day)
        out_.thrown += lot->second.units * world_.foods[lot->second.food].servings;
      lot = lot->second.last < day || lot->second.units == 0 ? pantry_.erase(lot) : std::next(lot);
    }
    for (auto unit = open_.begin(); unit != open_.end();) {
      if (unit->through < day) out_.thrown += unit->left;
      unit = unit->through < day || unit->left == 0 ? open_.erase(unit) : std::next(unit);
    }
  }

  // ---- the kit ----

  plan::RefillProblem refill_problem(std::int64_t today, std::int64_t hold) const {
    plan::RefillProblem problem;
    problem.today = today;
    problem.hold_until = hold;
    problem.keep_in_place = true;
    for (const SimPerson& person : world_.people) {
      problem.eaters.push_back(eater(person));
      problem.containers.push_back({"bag-" + person.id, "kit", {}, {}});
    }
    for (const SimFood& food : world_.foods) {
      plan::RefillProduct product;
      product.id = food.id;
      product.roles = {food.role};
      product.contains = food.contains;
      product.kcal = food.kcal;
      problem.products.push_back(std::move(product));
      plan::Offer offer;
      offer.id = food.id;
      offer.product = food.id;
      offer.pack_units = food.pack_units;
      offer.price = food.price;
      offer.last_good_day = today + food.life_days;
      problem.offers.push_back(std::move(offer));
    }
    for (const SimLine& line : world_.menu) {
      const std::string& person = world_.people[line.person].id;
      problem.lines.push_back({line.id,
                               "bag-" + person,
                               {person},
                               1,
                               "dinner",
                               line.role,
                               line.units,
                               line.role == "main" ? 10 : 3});
    }
    for (const auto& [id, lot] : kit_)
      problem.lots.push_back({id, world_.foods[lot.food].id, lot.units, lot.last, true,
                              "bag-" + world_.people[lot.person].id});
    for (const auto& [id, lot] : pantry_)
      problem.lots.push_back({id, world_.foods[lot.food].id, lot.units, lot.last, false, ""});
    return problem;
  }

  void review(std::int64_t today, std::int64_t hold) {
    for (auto lot = kit_.begin(); lot != kit_.end();) {
      const bool leaves = lot->second.last < hold;
      if (leaves) arrive(lot->second.food, lot->second.units, today, lot->second.last);
      lot = leaves ? kit_.erase(lot) : std::next(lot);
    }
    const plan::RefillProblem problem = refill_problem(today, hold);
    plan::RefillPlan refill =
        policy_ == Policy::kPlan ? plan::solve(problem, limits()).plan : plan::plan_refill(problem);
    if (policy_ == Policy::kCareless && !refill.moves.empty()) refill.moves.pop_back();
    for (const std::string& each : plan::check(problem, refill).violations) fault(each);

    std::map<std::string, std::int64_t> packed;  // units bought and packed, by food
    std::map<std::string, KitLot> kit;
    for (const plan::Move& move : refill.moves) {
      const SimLine& line = world_.menu[World::index_of(move.line)];
      const bool buys = move.lot.empty();
      const auto from = kit_.find(move.lot);
      KitLot placed;
      placed.person = line.person;
      placed.units = move.units;
      if (buys) {
        placed.food = World::index_of(move.offer);
        placed.last = today + world_.foods[placed.food].life_days;
        packed[move.offer] += move.units;
      } else if (from != kit_.end()) {
        placed.food = from->second.food;
        placed.last = from->second.last;
        from->second.units -= move.units;
      } else {
        Stock& lot = pantry_.at(move.lot);
        placed.food = lot.food;
        placed.last = lot.last;
        lot.units -= move.units;
        out_.arrivals[lot.arrival].taken += move.units * world_.foods[lot.food].servings;
      }
      if (!world_.may_eat(line.person, placed.food))
        fault("packed " + world_.foods[placed.food].id + " for " + world_.people[line.person].id);
      if (placed.last < hold)
        fault("packed " + world_.foods[placed.food].id + " that will not last");
      if (world_.foods[placed.food].role != line.role) fault("packed for the wrong line");
      kit[next_id("k")] = placed;
    }
    for (const auto& [id, lot] : kit_) arrive(lot.food, lot.units, today, lot.last);
    kit_ = std::move(kit);
    for (const plan::OfferPacks& packs : refill.packs) {
      const std::size_t food = World::index_of(packs.offer);
      bought(food, packs.packs);
      arrive(food, packs.packs * world_.foods[food].pack_units - packed[packs.offer], today,
             today + world_.foods[food].life_days);
    }
    judge_menu(today, hold);
  }

  // Counted from the bags as they are: is a place empty that something could fill?
  void judge_menu(std::int64_t today, std::int64_t hold) {
    for (const SimLine& line : world_.menu) {
      std::int64_t missing = line.units;
      for (const auto& [id, lot] : kit_) {
        if (lot.person == line.person && world_.foods[lot.food].role == line.role)
          missing -= lot.units;
      }
      if (missing <= 0) continue;
      out_.kit_short += missing;
      for (std::size_t food = 0; food < world_.foods.size(); ++food) {
        if (world_.foods[food].role != line.role || !world_.may_eat(line.person, food)) continue;
        const bool in_pantry = std::any_of(pantry_.begin(), pantry_.end(), [&](const auto& each) {
          return each.second.food == food && each.second.units > 0 && each.second.last >= hold;
        });
        if (in_pantry || today + world_.foods[food].life_days >= hold)
          fault("an empty place of " + world_.people[line.person].id + " that " +
                world_.foods[food].id + " fills");
      }
    }
  }

  // ---- meals ----

  plan::Eater eater(const SimPerson& person) const {
    plan::Eater eater;
    eater.id = person.id;
    eater.avoid = person.avoid;
    for (std::size_t food = 0; food < world_.foods.size(); ++food) {
      if (person.ratings[food] != 0) eater.ratings[world_.foods[food].id] = person.ratings[food];
    }
    return eater;
  }

  plan::EatDownProblem meals_problem(std::int64_t today) {
    plan::EatDownProblem problem;
    problem.today = problem.week_start = today;
    problem.horizon_days = kHorizon;
    problem.donate_days = kDonateDays;
    problem.tolerance = kTolerance;
    problem.monotony = kMonotony;
    for (const SimPerson& person : world_.people) problem.eaters.push_back(eater(person));
    for (const SimFood& food : world_.foods)
      problem.products.push_back(
          {food.id, food.servings, food.open_days, food.kinds, food.contains});
    for (const auto& [id, lot] : pantry_) {
      plan::EatLot each;
      each.id = id;
      each.product = world_.foods[lot.food].id;
      each.units = lot.units;
      each.last_good_day = lot.last;
      problem.lots.push_back(std::move(each));
    }
    opened_before_.clear();
    for (std::size_t at = 0; at < open_.size(); ++at) {
      plan::EatLot each;
      each.id = "open " + next_id("o");
      each.product = world_.foods[open_[at].food].id;
      each.units = 1;
      each.last_good_day = open_[at].through;
      each.already_open = true;
      each.open_servings = open_[at].left;
      each.may_donate = false;
      opened_before_[each.id] = open_[at].lot;
      problem.lots.push_back(std::move(each));
    }
    for (const SimMeal& meal : World::meals(today, today + kHorizon)) {
      plan::EatMeal each;
      each.id = meal.id;
      each.day = meal.day;
      each.kind = meal.kind;
      for (const SimPerson& person : world_.people) {
        each.eaters.push_back(person.id);
        each.appetite[person.id] = person.appetite;
      }
      problem.meals.push_back(std::move(each));
    }
    return problem;
  }

  [[nodiscard]] plan::EatDownPlan meals_plan(const plan::EatDownProblem& problem) const {
    switch (policy_) {
      case Policy::kPlan:
        return plan::solve(problem, limits()).plan;
      case Policy::kByDate:
        return plan::plain_date_order_with_rules(problem);
      case Policy::kCareless:
        break;
    }
    return plan::plain_date_order(problem);
  }

  void live_by(const plan::EatDownProblem& problem, std::int64_t today) {
    const plan::EatDownPlan plan = meals_plan(problem);
    for (const std::string& each : plan::check(problem, plan).violations) fault(each);
    give_away(plan, today);
    std::map<std::string, std::vector<plan::Dealt>> dealt;
    for (plan::Dealt& each : plan::deal(problem, plan)) dealt[each.meal].push_back(std::move(each));
    const std::vector<SimMeal> meals = World::meals(today, today + kStep);
    auto meal = meals.begin();
    for (std::int64_t day = today; day < today + kStep; ++day) {
      drop_past(day);
      shop(day);
      snack(day);
      for (; meal != meals.end() && meal->day == day; ++meal) {
        if (!world_.meal_held(day)) continue;
        for (const plan::Dealt& each : dealt[meal->id]) hand(each, *meal);
        for (OpenUnit& unit : open_) {
          const SimFood& food = world_.foods[unit.food];
          if (food.servings > 1 && food.open_days > 0) continue;
          out_.thrown += unit.left;  // finished at its meal, or gone
          unit.left = 0;
        }
      }
    }
  }

  // What the plan gives away goes when the next plan would be too late for it.
  void give_away(const plan::EatDownPlan& plan, std::int64_t today) {
    if (!world_.gives_away(today)) return;
    for (const plan::LotUnits& each : plan.donated) {
      Stock& lot = pantry_.at(each.lot);
      if (lot.last - kDonateDays >= today + kStep) continue;
      lot.units -= each.units;
      out_.given += each.units * world_.foods[lot.food].servings;
    }
  }

  void hand(const plan::Dealt& dealt, const SimMeal& meal) {
    const std::size_t person = World::index_of(dealt.eater);
    if (!world_.at_table(person, meal.day)) return;
    const auto before = opened_before_.find(dealt.lot);
    const std::string lot = before == opened_before_.end() ? dealt.lot : before->second;
    for (std::int64_t serving = 0; serving < dealt.servings; ++serving) {
      OpenUnit* unit = opened(lot, meal.day, before == opened_before_.end());
      if (unit == nullptr) return;
      eat(*unit, person, meal.day);
      if (world_.foods[unit->food].kinds.count(meal.kind) == 0) fault("not at such a meal");
      out_.eaten += 1;
    }
  }

  OpenUnit* opened(const std::string& lot, std::int64_t day, bool may_open) {
    for (OpenUnit& unit : open_) {
      if (unit.lot == lot && unit.left > 0 && unit.through >= day) return &unit;
    }
    const auto sealed = pantry_.find(lot);
    if (!may_open || sealed == pantry_.end() || sealed->second.units == 0 ||
        sealed->second.last < day)
      return nullptr;
    sealed->second.units -= 1;
    const SimFood& food = world_.foods[sealed->second.food];
    const std::int64_t keeps = food.servings > 1 ? food.open_days : 0;
    open_.push_back({lot, sealed->second.arrival, sealed->second.food, food.servings, day + keeps});
    return &open_.back();
  }

  // The one place where somebody eats; judged by the world, not by the problem or the plan.
  void eat(OpenUnit& unit, std::size_t person, std::int64_t day) {
    if (!world_.may_eat(person, unit.food))
      fault("day " + std::to_string(day) + ": " + world_.people[person].id + " was handed " +
            world_.foods[unit.food].id);
    if (unit.through < day || unit.left <= 0) fault("eaten past its life");
    unit.left -= 1;
  }

  // What nobody planned to buy; the next plan knows of it.
  void shop(std::int64_t day) {
    std::size_t food = 0;
    if (!world_.buys_too_much(day, food)) return;
    bought(food, 1);
    arrive(food, world_.foods[food].pack_units, day, day + world_.foods[food].life_days);
  }

  void snack(std::int64_t day) {
    std::size_t person = 0;
    std::uint64_t pick = 0;
    if (!world_.snacks(day, person, pick)) return;
    std::vector<std::string> allowed;
    for (const auto& [id, lot] : pantry_) {
      const bool bite = world_.foods[lot.food].servings == 1;  // nobody opens a jar between meals
      if (bite && lot.units > 0 && lot.last >= day && world_.may_eat(person, lot.food))
        allowed.push_back(id);
    }
    if (allowed.empty()) return;
    OpenUnit* unit = opened(allowed[pick % allowed.size()], day, true);
    eat(*unit, person, day);
    out_.arrivals[unit->arrival].taken += 1;
  }

  const World& world_;
  Policy policy_;
  Outcome out_;
  std::int64_t ids_ = 0;
  std::map<std::string, Stock> pantry_;
  std::map<std::string, KitLot> kit_;
  std::vector<OpenUnit> open_;
  std::map<std::string, std::string> opened_before_;  // id in the problem -> lot
};

}  // namespace

Outcome live(const World& world, Policy policy, std::int64_t days) {
  return Life(world, policy).live(days);
}

}  // namespace larderloop::simulation
