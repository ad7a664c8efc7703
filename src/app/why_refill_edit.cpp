#include "app/why_eat.h"
#include "app/why_refill.h"

#include <algorithm>
#include <map>

namespace larderloop::what_if {
namespace {

bool serves(const plan::RefillLine& line, const plan::RefillProduct& product) {
  return product.no_cook && product.roles.count(line.role) > 0;
}

// Packs as the moves need them, lists without empty entries.
void settle(const plan::RefillProblem& problem, plan::RefillPlan& plan) {
  std::map<std::string, std::int64_t> units;
  for (const plan::Move& move : plan.moves) {
    if (!move.offer.empty()) units[move.offer] += move.units;
  }
  plan.packs.clear();
  for (const plan::Offer& offer : problem.offers) {
    const auto needed = units.find(offer.id);
    if (needed == units.end() || needed->second == 0) continue;
    plan.packs.push_back({offer.id, (needed->second + offer.pack_units - 1) / offer.pack_units});
  }
  const auto none = [](const auto& each) { return each.units == 0; };
  plan.moves.erase(std::remove_if(plan.moves.begin(), plan.moves.end(), none), plan.moves.end());
  plan.unmet.erase(std::remove_if(plan.unmet.begin(), plan.unmet.end(), none), plan.unmet.end());
}

}  // namespace

const plan::RefillProduct* find_product(const plan::RefillProblem& problem, const std::string& id) {
  for (const plan::RefillProduct& each : problem.products) {
    if (each.id == id) return &each;
  }
  return nullptr;
}

std::vector<std::string> who_refuses(const plan::RefillProblem& problem,
                                     const plan::RefillLine& line,
                                     const plan::RefillProduct& product) {
  std::vector<std::string> refuse;
  if (!serves(line, product)) return refuse;
  for (const plan::Eater& eater : problem.eaters) {
    if (std::find(line.eaters.begin(), line.eaters.end(), eater.id) == line.eaters.end()) continue;
    const bool avoids =
        std::any_of(product.contains.begin(), product.contains.end(),
                    [&](const std::string& tag) { return eater.avoid.count(tag) > 0; });
    const auto rating = eater.ratings.find(product.id);
    if (avoids || (rating != eater.ratings.end() && rating->second <= -2))
      refuse.push_back(eater.id);
  }
  return refuse;
}

bool accepts(const plan::RefillProblem& problem, const plan::RefillLine& line,
             const plan::RefillProduct& product) {
  return serves(line, product) && who_refuses(problem, line, product).empty();
}

plan::RefillProblem let_have(const plan::RefillProblem& problem, const std::string& product,
                             const std::string& eater) {
  plan::RefillProblem freer = problem;
  for (plan::RefillProduct& each : freer.products) {
    if (each.id == product) each.contains.erase("not-for:" + eater);
  }
  for (plan::Eater& each : freer.eaters) {
    const auto rating = each.ratings.find(product);
    if (each.id == eater && rating != each.ratings.end() && rating->second <= -2)
      each.ratings.erase(rating);
  }
  return freer;
}

Borrowed borrow(const plan::RefillProblem& problem, const plan::RefillProblem& from,
                const plan::RefillLot& lot) {
  Borrowed borrowed{problem, lot.id + " as well"};
  plan::RefillLot more = lot;
  more.id = borrowed.lot;
  more.last_good_day = std::max(more.last_good_day, problem.hold_until);
  plan::RefillProduct product = *find_product(from, lot.product);
  product.id += " as well";
  more.product = product.id;
  for (plan::Eater& eater : borrowed.problem.eaters) {
    for (const plan::Eater& other : from.eaters) {
      const auto rating = other.ratings.find(lot.product);
      if (other.id == eater.id && rating != other.ratings.end())
        eater.ratings[product.id] = rating->second;
    }
  }
  const bool known = more.container.empty() ||
                     std::any_of(problem.containers.begin(), problem.containers.end(),
                                 [&](const auto& each) { return each.id == more.container; });
  if (!known) {
    for (const plan::Container& each : from.containers) {
      if (each.id == more.container) borrowed.problem.containers.push_back(each);
    }
  }
  borrowed.problem.products.push_back(std::move(product));
  borrowed.problem.lots.push_back(std::move(more));
  const auto by_id = [](const auto& a, const auto& b) { return a.id < b.id; };
  std::sort(borrowed.problem.products.begin(), borrowed.problem.products.end(), by_id);
  std::sort(borrowed.problem.lots.begin(), borrowed.problem.lots.end(), by_id);
  std::sort(borrowed.problem.containers.begin(), borrowed.problem.containers.end(), by_id);
  return borrowed;
}

RefillPlanned::RefillPlanned(const plan::RefillProblem& problem, const plan::RefillPlan& plan)
    : problem_(problem), plan_(plan), levels_(plan::check(problem, plan).levels) {}

std::int64_t RefillPlanned::used(const std::string& lot) const {
  std::int64_t units = 0;
  for (const plan::Move& move : plan_.moves) {
    if (move.lot == lot) units += move.units;
  }
  return units;
}

std::optional<plan::RefillPlan> RefillPlanned::with_lot(const plan::RefillProblem& changed,
                                                        const std::string& lot_id,
                                                        const std::set<std::string>& lines) const {
  const auto lot = std::find_if(changed.lots.begin(), changed.lots.end(),
                                [&](const plan::RefillLot& each) { return each.id == lot_id; });
  if (lot == changed.lots.end()) return std::nullopt;
  const plan::RefillProduct& product = *find_product(changed, lot->product);
  std::map<std::string, const plan::RefillLine*> takes;
  for (const plan::RefillLine& line : changed.lines) {
    const bool asked = lines.empty() || lines.count(line.id) > 0;
    if (asked && accepts(changed, line, product)) takes[line.id] = &line;
  }
  plan::RefillPlan best = plan_;
  plan::Verdict judged = plan::check(changed, best);
  // What the plan as it is comes to in the changed problem: it has to be beaten.
  std::vector<std::int64_t> values = values_of(judged);
  const std::vector<std::int64_t> before = values;
  std::int64_t left = lot->units - used(lot_id);
  const auto attempt = [&](const std::string& line, std::int64_t units, const auto& take_from) {
    if (units <= 0 || takes.count(line) == 0) return;
    plan::RefillPlan other = best;
    take_from(other, units);
    other.moves.push_back({lot_id, {}, line, units});
    settle(changed, other);
    const plan::Verdict verdict = plan::check(changed, other);
    if (!verdict.allowed() || !(values_of(verdict) < values)) return;
    best = std::move(other);
    values = values_of(verdict);
    left -= units;
  };
  for (const plan::LineUnits& unmet : plan_.unmet) {
    attempt(unmet.line, std::min(left, unmet.units),
            [&](plan::RefillPlan& other, std::int64_t units) {
              for (plan::LineUnits& each : other.unmet) {
                if (each.line == unmet.line) each.units -= units;
              }
            });
  }
  for (const bool bought : {true, false}) {
    for (const plan::Move& move : plan_.moves) {
      if (move.lot == lot_id || bought != move.lot.empty()) continue;
      attempt(move.line, std::min(left, move.units),
              [&](plan::RefillPlan& other, std::int64_t units) {
                for (plan::Move& each : other.moves) {
                  if (each.lot == move.lot && each.offer == move.offer && each.line == move.line &&
                      each.units >= units) {
                    each.units -= units;
                    return;
                  }
                }
              });
    }
  }
  if (!(values < before) || plan::check(problem_, best).allowed()) return std::nullopt;
  return best;
}

}  // namespace larderloop::what_if
