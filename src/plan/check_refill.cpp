// The checker of refill plans: every row and level of docs/planning.md, read off the plan as it
// stands.
#include "larderloop/plan/check.h"
#include "plan/by_id.h"
#include "plan/exact.h"

#include <algorithm>
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

class RefillCheck {
 public:
  RefillCheck(const RefillProblem& problem, const RefillPlan& plan)
      : problem_(problem), plan_(plan) {}

  Verdict verdict() {
    index();
    if (verdict_.violations.empty()) {
      read_packs();
      read_moves();
      read_unmet();
      check_lines();
      check_sources();
      check_containers();
      check_budget();
    }
    tell_levels();
    return std::move(verdict_);
  }

 private:
  // One line of the plan with everything it names found in the problem.
  struct Placed {
    const RefillProduct* product;
    const RefillLine* line;
    const RefillLot* lot;  // or
    const Offer* offer;
    Exact units;
  };

  void breaks(std::string sentence) { verdict_.violations.push_back(std::move(sentence)); }

  template <typename T>
  void index_by_id(const std::vector<T>& all, const char* what, ById<T>& by_id) {
    by_id = ById<T>(all);
    for (const Id id : by_id.twice()) breaks("the problem names " + named(what, id) + " twice");
  }

  void index() {
    index_by_id(problem_.eaters, "eater", eaters_);
    index_by_id(problem_.products, "product", products_);
    index_by_id(problem_.containers, "container", containers_);
    index_by_id(problem_.lines, "line", lines_);
    index_by_id(problem_.lots, "lot", lots_);
    index_by_id(problem_.offers, "offer", offers_);
    for (const RefillProduct& product : problem_.products) {
      if (product.kcal < 0 || product.mass < 0 || product.volume < 0) {
        breaks(named("product", product.id) + " has a negative energy, mass or volume");
      }
    }
    for (const RefillLine& line : problem_.lines) {
      if (containers_.count(line.container) == 0)
        breaks(named("line", line.id) + ": its container is not in the problem");
      for (const std::string& eater : line.eaters) {
        if (eaters_.count(eater) == 0)
          breaks(named("line", line.id) + ": " + named("eater", eater) + " is not in the problem");
      }
      if (line.units < 0) breaks(named("line", line.id) + " asks for a negative number of units");
    }
    for (const RefillLot& lot : problem_.lots) {
      if (products_.count(lot.product) == 0)
        breaks(named("lot", lot.id) + ": its product is not in the problem");
      if (lot.units < 0) breaks(named("lot", lot.id) + " holds a negative number of units");
    }
    for (const Offer& offer : problem_.offers) {
      if (products_.count(offer.product) == 0)
        breaks(named("offer", offer.id) + ": its product is not in the problem");
      if (offer.pack_units < 1 || offer.price < 0)
        breaks(named("offer", offer.id) + " has no units or a negative price");
    }
  }

  [[nodiscard]] static int rating(const Eater& eater, const std::string& product) {
    const auto found = eater.ratings.find(product);
    return found == eater.ratings.end() ? 0 : found->second;
  }
  [[nodiscard]] static bool will_eat(const RefillProduct& product, const Eater& eater) {
    for (const std::string& tag : product.contains) {
      if (eater.avoid.count(tag) > 0) return false;
    }
    return rating(eater, product.id) > -2;
  }

  void read_packs() {
    for (const OfferPacks& line : plan_.packs) {
      const auto offer = offers_.find(line.offer);
      if (offer == offers_.end()) {
        breaks("packs of " + named("offer", line.offer) + ": not in the problem");
        continue;
      }
      if (!packs_.emplace(line.offer, line.packs).second) {
        breaks("packs of " + named("offer", line.offer) + ": told twice");
        continue;
      }
      if (line.packs < 0) breaks("packs of " + named("offer", line.offer) + ": a negative number");
      if (offer->second->max_packs && line.packs > *offer->second->max_packs) {
        breaks("packs of " + named("offer", line.offer) + ": " + count(line.packs) + ", at most " +
               count(*offer->second->max_packs) + " are to be had");
      }
    }
  }

  void read_moves() {
    std::set<std::tuple<Id, Id, Id>> seen;
    for (const Move& move : plan_.moves) {
      const bool from_lot = !move.lot.empty();
      const auto what = [&] {
        return (from_lot ? named("lot", move.lot) : named("offer", move.offer)) + " to " +
               named("line", move.line);
      };
      if (from_lot == !move.offer.empty()) {
        breaks(what() + ": exactly one source must be named");
        continue;
      }
      Placed placed{nullptr, nullptr, nullptr, nullptr, move.units};
      const auto line = lines_.find(move.line);
      const auto lot = lots_.find(move.lot);
      const auto offer = offers_.find(move.offer);
      if (line == lines_.end() || (from_lot ? lot == lots_.end() : offer == offers_.end())) {
        breaks(what() + ": not in the problem");
        continue;
      }
      if (!seen.emplace(move.lot, move.offer, move.line).second) {
        breaks(what() + ": planned twice");
        continue;
      }
      placed.line = line->second;
      placed.lot = from_lot ? lot->second : nullptr;
      placed.offer = from_lot ? nullptr : offer->second;
      placed.product = products_.at(from_lot ? placed.lot->product : placed.offer->product);
      if (move.units < 0) breaks(what() + ": a negative number of units");
      placed_.push_back(placed);
      if (move.units != 0) check_move(placed, what);
    }
  }

  template <typename What>
  void check_move(const Placed& placed, const What& what) {
    const std::int64_t good =
        placed.lot != nullptr ? placed.lot->last_good_day : placed.offer->last_good_day;
    if (good < problem_.hold_until) breaks(what() + ": it does not last until the hold-until date");
    if (!placed.product->no_cook)
      breaks(what() + ": " + named("product", placed.product->id) + " needs cooking");
    if (placed.product->roles.count(placed.line->role) == 0) {
      breaks(what() + ": " + named("product", placed.product->id) + " does not serve as '" +
             placed.line->role + "'");
    }
    for (const std::string& eater : placed.line->eaters) {
      if (!will_eat(*placed.product, *eaters_.at(eater))) {
        breaks(what() + ": " + named("eater", eater) + " must not or will not eat " +
               named("product", placed.product->id));
      }
    }
  }

  void read_unmet() {
    for (const LineUnits& line : plan_.unmet) {
      if (lines_.count(line.line) == 0) {
        breaks("unmet " + named("line", line.line) + ": not in the problem");
        continue;
      }
      if (!unmet_.emplace(line.line, line.units).second)
        breaks("unmet " + named("line", line.line) + ": told twice");
      if (line.units < 0)
        breaks("unmet " + named("line", line.line) + ": a negative number of units");
    }
  }

  [[nodiscard]] Exact unmet_of(Id line) const {
    const auto found = unmet_.find(line);
    return found == unmet_.end() ? 0 : found->second;
  }
  [[nodiscard]] Exact packs_of(Id offer) const {
    const auto found = packs_.find(offer);
    return found == packs_.end() ? 0 : found->second;
  }

  void check_lines() {
    std::map<Id, Exact> filled;
    for (const Placed& each : placed_) filled[each.line->id] += each.units;
    for (const auto& [id, line] : lines_) {
      const Exact sum = filled[id] + unmet_of(id);
      if (!sum.is(line->units)) {
        breaks(named("line", id) + ": " + count(sum) + " units placed or unmet of " +
               count(line->units));
      }
    }
  }

  void check_sources() {
    std::map<Id, Exact> of_lot, of_offer;
    for (const Placed& each : placed_) {
      (each.lot != nullptr ? of_lot[each.lot->id] : of_offer[each.offer->id]) += each.units;
    }
    for (const auto& [id, sum] : of_lot) {
      if (!sum.at_most(lots_.at(id)->units)) {
        breaks(named("lot", id) + ": " + count(sum) + " units placed of " +
               count(lots_.at(id)->units));
      }
    }
    for (const auto& [id, sum] : of_offer) {
      const Exact bought = packs_of(id) * offers_.at(id)->pack_units;
      if (!sum.at_most(bought))
        breaks(named("offer", id) + ": " + count(sum) + " units placed of " + count(bought) +
               " bought");
    }
  }

  void check_containers() {
    std::map<Id, Exact> mass, volume;
    for (const Placed& each : placed_) {
      mass[each.line->container] += each.units * each.product->mass;
      volume[each.line->container] += each.units * each.product->volume;
    }
    for (const auto& [id, container] : containers_) {
      if (container->mass_limit && mass.count(id) > 0 &&
          !mass[id].at_most(*container->mass_limit)) {
        breaks(named("container", id) + ": " + count(mass[id]) + " g, at most " +
               count(*container->mass_limit));
      }
      if (container->volume_limit && volume.count(id) > 0 &&
          !volume[id].at_most(*container->volume_limit)) {
        breaks(named("container", id) + ": " + count(volume[id]) + " ml, at most " +
               count(*container->volume_limit));
      }
    }
  }

  void check_budget() {
    if (!problem_.budget) return;
    Exact spent = 0;
    for (const auto& [id, packs] : packs_) spent += Exact(packs) * offers_.at(id)->price;
    if (!spent.at_most(*problem_.budget) && spent.value() != 0) {
      breaks("the packs cost " + count(spent) + ", the budget is " + count(*problem_.budget));
    }
  }

  void tell_levels() {
    tell("unmet", unmet());
    if (problem_.keep_in_place) tell("displaced", displaced());
    tell("energy", energy());
    tell("repeats", repeats());
    tell("cost", cost());
    tell("dislike", dislike());
    tell("handled", handled());
    tell("dates", dates());
  }

  void tell(const char* name, Exact value) {
    if (!value.fits()) breaks(std::string("the level '") + name + "' is too large to count");
    verdict_.levels.push_back({name, value.value(), std::nullopt});
  }

  [[nodiscard]] Exact unmet() const {
    Exact sum = 0;
    for (const auto& [id, units] : unmet_) sum += units * lines_.at(id)->priority;
    return sum;
  }

  [[nodiscard]] Id kit_of(const RefillLine& line) const {
    const auto found = containers_.find(line.container);
    return found == containers_.end() ? Id() : Id(found->second->kit);
  }

  [[nodiscard]] Exact energy() const {
    using KitPerson = std::pair<Id, Id>;
    std::map<KitPerson, std::set<int>> days;
    for (const RefillLine& line : problem_.lines) {
      for (const std::string& eater : line.eaters) days[{kit_of(line), eater}].insert(line.day);
    }
    std::map<KitPerson, Exact> held;
    for (const Placed& each : placed_) {
      const auto sharers = static_cast<std::int64_t>(each.line->eaters.size());
      for (const std::string& eater : each.line->eaters) {
        held[{kit_of(*each.line), eater}] +=
            each.units * Exact(each.product->kcal).floor_div(sharers);
      }
    }
    Exact sum = 0;
    for (const auto& [key, on] : days) {
      const auto eater = eaters_.find(key.second);
      if (eater == eaters_.end() || eater->second->energy_target <= 0) continue;
      const Exact target =
          Exact(eater->second->energy_target) * static_cast<std::int64_t>(on.size());
      sum += (target - held[key]).or_zero();
    }
    return sum;
  }

  [[nodiscard]] Exact repeats() const {
    std::map<std::tuple<Id, Id, Id>, Exact> own;
    for (const Placed& each : placed_) {
      if (each.line->eaters.size() != 1 || each.product->staple) continue;
      own[{kit_of(*each.line), each.line->eaters.front(), each.product->id}] += each.units;
    }
    Exact sum = 0;
    for (const auto& [key, units] : own) sum += (units - problem_.variety_cap).or_zero();
    return sum;
  }

  [[nodiscard]] Exact cost() const {
    std::map<Id, Exact> used;
    for (const Placed& each : placed_) {
      if (each.offer != nullptr) used[each.offer->id] += each.units;
    }
    Exact sum = 0;
    for (const auto& [id, packs] : packs_) {
      const Offer& offer = *offers_.at(id);
      const RefillProduct& product = *products_.at(offer.product);
      const bool anyone = std::any_of(problem_.eaters.begin(), problem_.eaters.end(),
                                      [&](const Eater& eater) { return will_eat(product, eater); });
      Exact credit = 0;
      if (anyone) {
        credit = (Exact(offer.price) * problem_.surplus_credit_percent)
                     .floor_div(100)
                     .floor_div(offer.pack_units);
      }
      sum += Exact(packs) * offer.price - credit * (Exact(packs) * offer.pack_units - used[id]);
    }
    return sum;
  }

  [[nodiscard]] Exact dislike() const {
    Exact sum = 0;
    for (const Placed& each : placed_) {
      for (const std::string& eater : each.line->eaters) {
        sum += each.units * (2 - rating(*eaters_.at(eater), each.product->id));
      }
    }
    for (const auto& [id, units] : unmet_) {
      sum += units * 4 * static_cast<std::int64_t>(lines_.at(id)->eaters.size());
    }
    return sum;
  }

  // Good units of the kit that do not stay in their container.
  [[nodiscard]] Exact displaced() const {
    Exact sum = 0;
    for (const RefillLot& lot : problem_.lots) {
      if (lot.in_kit && lot.last_good_day >= problem_.hold_until) sum += lot.units;
    }
    for (const Placed& each : placed_) {
      const bool stays =
          each.lot != nullptr && each.lot->in_kit && each.lot->container == each.line->container;
      if (stays) sum -= each.units;
    }
    return sum;
  }

  [[nodiscard]] Exact handled() const {
    Exact sum = displaced();
    for (const Placed& each : placed_) {
      if (each.lot == nullptr || !each.lot->in_kit) sum += each.units;
    }
    return sum;
  }

  [[nodiscard]] Exact dates() const {
    const Exact cap = Exact(problem_.hold_until) + problem_.date_cap_days;
    Exact sum = 0;
    for (const Placed& each : placed_) {
      const std::int64_t good =
          each.lot != nullptr ? each.lot->last_good_day : each.offer->last_good_day;
      sum += each.units * (cap - good).or_zero();
    }
    return sum;
  }

  const RefillProblem& problem_;
  const RefillPlan& plan_;
  Verdict verdict_;
  ById<Eater> eaters_;
  ById<RefillProduct> products_;
  ById<Container> containers_;
  ById<RefillLine> lines_;
  ById<RefillLot> lots_;
  ById<Offer> offers_;
  std::map<Id, std::int64_t> packs_;
  std::map<Id, Exact> unmet_;
  std::vector<Placed> placed_;
};

}  // namespace

Verdict check(const RefillProblem& problem, const RefillPlan& plan) {
  return RefillCheck(problem, plan).verdict();
}

}  // namespace larderloop::plan
