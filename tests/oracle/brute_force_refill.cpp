#include "oracle/brute_force.h"

#include <algorithm>
#include <map>
#include <set>

namespace larderloop::test {
namespace {

using namespace plan;  // NOLINT: the twin speaks of nothing else

class RefillTwin {
 public:
  RefillTwin(const RefillProblem& problem, std::int64_t most,
             const std::function<void(const RefillPlan&, const Vector&)>& visit)
      : p_(problem), most_(most), visit_(visit) {
    for (const RefillLot& lot : p_.lots) {
      if (lot.last_good_day >= p_.hold_until)
        sources_.push_back({&lot, nullptr, lot.product, lot.last_good_day, lot.units});
    }
    for (const Offer& offer : p_.offers) {
      const std::int64_t units = offer.max_packs ? *offer.max_packs * offer.pack_units : 1000;
      if (offer.last_good_day >= p_.hold_until)
        sources_.push_back({nullptr, &offer, offer.product, offer.last_good_day, units});
    }
  }

  bool run() {
    place(0, 0, p_.lines.empty() ? 0 : p_.lines[0].units);
    return !gave_up_;
  }

 private:
  struct Source {
    const RefillLot* lot;
    const Offer* offer;
    std::string product;
    std::int64_t good;
    std::int64_t left;
  };
  struct Placed {
    std::size_t source, line;
    std::int64_t units;
  };

  const RefillProduct& product(const std::string& id) const {
    return *std::find_if(p_.products.begin(), p_.products.end(),
                         [&](const RefillProduct& each) { return each.id == id; });
  }
  const Eater& eater(const std::string& id) const {
    return *std::find_if(p_.eaters.begin(), p_.eaters.end(),
                         [&](const Eater& each) { return each.id == id; });
  }
  const Container& container(const std::string& id) const {
    return *std::find_if(p_.containers.begin(), p_.containers.end(),
                         [&](const Container& each) { return each.id == id; });
  }
  static int rating(const Eater& who, const std::string& what) {
    return who.ratings.count(what) == 0 ? 0 : who.ratings.at(what);
  }
  static bool may_eat(const RefillProduct& what, const Eater& who) {
    std::vector<std::string> common;
    std::set_intersection(what.contains.begin(), what.contains.end(), who.avoid.begin(),
                          who.avoid.end(), std::back_inserter(common));
    return common.empty() && rating(who, what.id) != -2;
  }
  bool accepted(const RefillLine& line, const RefillProduct& what) const {
    bool all = what.no_cook && what.roles.count(line.role) == 1;
    for (const std::string& who : line.eaters) all = all && may_eat(what, eater(who));
    return all;
  }

  void place(std::size_t line, std::size_t source, std::int64_t missing) {
    if (gave_up_) return;
    if (line == p_.lines.size()) {
      finish();
      return;
    }
    if (source == sources_.size()) {
      missing_.push_back(missing);
      place(line + 1, 0, line + 1 < p_.lines.size() ? p_.lines[line + 1].units : 0);
      missing_.pop_back();
      return;
    }
    place(line, source + 1, missing);
    Source& from = sources_[source];
    if (!accepted(p_.lines[line], product(from.product))) return;
    const std::int64_t had = from.left;
    for (std::int64_t units = 1; units <= std::min(missing, had); ++units) {
      from.left = had - units;
      placed_.push_back({source, line, units});
      place(line, source + 1, missing - units);
      placed_.pop_back();
    }
    from.left = had;
  }

  void finish() {
    RefillPlan plan;
    Vector levels(7, 0);
    std::map<std::string, std::int64_t> mass, volume, taken, energy, own;
    std::int64_t in_place = 0;
    for (const RefillLot& lot : p_.lots) {
      if (lot.in_kit && lot.last_good_day >= p_.hold_until) levels[5] += lot.units;
    }
    for (const Placed& each : placed_) {
      const Source& from = sources_[each.source];
      const RefillLine& line = p_.lines[each.line];
      const RefillProduct& what = product(from.product);
      plan.moves.push_back({from.lot != nullptr ? from.lot->id : "",
                            from.offer != nullptr ? from.offer->id : "", line.id, each.units});
      mass[line.container] += each.units * what.mass;
      volume[line.container] += each.units * what.volume;
      if (from.offer != nullptr) taken[from.offer->id] += each.units;
      const std::string kit = container(line.container).kit;
      for (const std::string& who : line.eaters) {
        energy[kit + "|" + who] +=
            each.units * (what.kcal / static_cast<std::int64_t>(line.eaters.size()));
        levels[4] += each.units * (2 - rating(eater(who), what.id));
      }
      if (line.eaters.size() == 1 && !what.staple)
        own[kit + "|" + line.eaters[0] + "|" + what.id] += each.units;
      if (from.lot == nullptr || !from.lot->in_kit) levels[5] += each.units;
      if (from.lot != nullptr && from.lot->in_kit && from.lot->container == line.container) {
        levels[5] -= each.units;
        in_place += each.units;
      }
      const std::int64_t cap = p_.hold_until + p_.date_cap_days;
      levels[6] += each.units * (cap - std::min(from.good, cap));
    }
    for (const Container& each : p_.containers) {
      if (each.mass_limit && mass[each.id] > *each.mass_limit) return;
      if (each.volume_limit && volume[each.id] > *each.volume_limit) return;
    }
    std::int64_t spent = 0;
    for (const Offer& offer : p_.offers) {
      const std::int64_t packs = (taken[offer.id] + offer.pack_units - 1) / offer.pack_units;
      if (packs == 0) continue;
      plan.packs.push_back({offer.id, packs});
      spent += packs * offer.price;
      bool anyone = false;
      for (const Eater& who : p_.eaters) anyone = anyone || may_eat(product(offer.product), who);
      const std::int64_t credit =
          anyone ? offer.price * p_.surplus_credit_percent / (100 * offer.pack_units) : 0;
      levels[3] += packs * offer.price - credit * (packs * offer.pack_units - taken[offer.id]);
    }
    if (p_.budget && spent > *p_.budget) return;
    std::map<std::string, std::set<int>> days;
    for (std::size_t line = 0; line < p_.lines.size(); ++line) {
      const RefillLine& of = p_.lines[line];
      levels[0] += missing_[line] * of.priority;
      levels[4] += missing_[line] * 4 * static_cast<std::int64_t>(of.eaters.size());
      if (missing_[line] > 0) plan.unmet.push_back({of.id, missing_[line]});
      for (const std::string& who : of.eaters)
        days[container(of.container).kit + "|" + who].insert(of.day);
    }
    for (const auto& [key, on] : days) {
      const std::int64_t target =
          eater(key.substr(key.find('|') + 1)).energy_target * static_cast<std::int64_t>(on.size());
      levels[1] += std::max<std::int64_t>(0, target - energy[key]);
    }
    for (const auto& [key, units] : own)
      levels[2] += std::max<std::int64_t>(0, units - p_.variety_cap);
    if (p_.keep_in_place) {
      std::int64_t good = 0;
      for (const Source& each : sources_)
        if (each.lot != nullptr && each.lot->in_kit) good += each.lot->units;
      levels.insert(levels.begin() + 1, good - in_place);
    }
    if (++plans_ > most_) {
      gave_up_ = true;
      return;
    }
    visit_(plan, levels);
  }

  const RefillProblem& p_;
  std::int64_t most_;
  const std::function<void(const RefillPlan&, const Vector&)>& visit_;
  std::vector<Source> sources_;
  std::vector<Placed> placed_;
  std::vector<std::int64_t> missing_;
  std::int64_t plans_ = 0;
  bool gave_up_ = false;
};

}  // namespace

bool every_refill_plan(const RefillProblem& problem, std::int64_t most,
                       const std::function<void(const RefillPlan&, const Vector&)>& visit) {
  return RefillTwin(problem, most, visit).run();
}

}  // namespace larderloop::test
