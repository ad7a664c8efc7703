// From the problem to groups of lines and sources of units that are alike.
#include "plan/refill_model.h"

#include "plan/exact.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace larderloop::plan {
namespace {

template <typename T>
std::vector<const T*> by_id(const std::vector<T>& all) {
  std::vector<const T*> sorted;
  for (const T& each : all) sorted.push_back(&each);
  std::sort(sorted.begin(), sorted.end(), [](const T* a, const T* b) { return a->id < b->id; });
  return sorted;
}

// Position of the id in the list; its size when unknown.
template <typename T>
std::size_t position(const std::vector<const T*>& sorted, const std::string& id) {
  const auto found =
      std::lower_bound(sorted.begin(), sorted.end(), id,
                       [](const T* each, const std::string& wanted) { return each->id < wanted; });
  return found != sorted.end() && (*found)->id == id
             ? static_cast<std::size_t>(found - sorted.begin())
             : sorted.size();
}

template <typename T>
bool unique(const std::vector<const T*>& sorted) {
  return std::adjacent_find(sorted.begin(), sorted.end(),
                            [](const T* a, const T* b) { return a->id == b->id; }) == sorted.end();
}

std::int64_t ceil_div(std::int64_t a, std::int64_t b) {
  return a / b + (a % b > 0 ? 1 : 0);
}

class Builder {
 public:
  Builder(const RefillProblem& problem, RefillModel& model) : problem_(problem), m_(model) {}

  bool build() {
    m_.eaters = by_id(problem_.eaters);
    m_.products = by_id(problem_.products);
    m_.containers = by_id(problem_.containers);
    m_.variety_cap = problem_.variety_cap;
    if (!well_formed()) return false;
    place_kits();
    if (!group_lines()) return false;
    measure_supply();
    if (!fill_groups()) return false;
    pool_lots();
    take_offers();
    name_feeds();
    return fits_ && count_shortages();
  }

 private:
  bool well_formed() const {
    if (!unique(m_.eaters) || !unique(m_.products) || !unique(m_.containers) ||
        !unique(by_id(problem_.lines)) || !unique(by_id(problem_.lots)) ||
        !unique(by_id(problem_.offers)))
      return false;
    if (problem_.variety_cap < 0 || problem_.surplus_credit_percent < 0 ||
        problem_.surplus_credit_percent > 100)
      return false;
    return std::all_of(problem_.products.begin(), problem_.products.end(),
                       [](const RefillProduct& each) {
                         return each.kcal >= 0 && each.mass >= 0 && each.volume >= 0;
                       }) &&
           std::all_of(problem_.lots.begin(), problem_.lots.end(),
                       [this](const RefillLot& each) {
                         return each.units >= 0 && knows_product(each.product);
                       }) &&
           std::all_of(problem_.offers.begin(), problem_.offers.end(), [this](const Offer& each) {
             return each.pack_units >= 1 && each.price >= 0 && knows_product(each.product);
           });
  }
  bool knows_product(const std::string& id) const {
    return position(m_.products, id) < m_.products.size();
  }

  void place_kits() {
    std::set<std::string> names;
    for (const Container* container : m_.containers) names.insert(container->kit);
    m_.kits.assign(names.begin(), names.end());
    for (const Container* container : m_.containers) {
      m_.kit_of.push_back(static_cast<std::size_t>(
          std::lower_bound(m_.kits.begin(), m_.kits.end(), container->kit) - m_.kits.begin()));
    }
  }

  bool accepts(const RefillLine& line, const std::vector<std::size_t>& eaters,
               std::size_t product) const {
    const RefillProduct& what = *m_.products[product];
    return what.no_cook && what.roles.count(line.role) > 0 &&
           std::all_of(eaters.begin(), eaters.end(),
                       [&](std::size_t eater) { return m_.will_eat(product, eater); });
  }
  // Can one unit lie in the container by itself?
  bool holds(std::size_t container, std::size_t product) const {
    const Container& in = *m_.containers[container];
    return m_.products[product]->mass <= in.mass_limit.value_or(INT64_MAX) &&
           m_.products[product]->volume <= in.volume_limit.value_or(INT64_MAX);
  }

  bool group_lines() {
    using Key =
        std::tuple<std::size_t, std::vector<std::size_t>, std::int64_t, std::vector<std::size_t>>;
    std::map<Key, RefillModel::Group> groups;
    for (const RefillLine* line : by_id(problem_.lines)) {
      RefillModel::Group group;
      group.container = position(m_.containers, line->container);
      if (group.container == m_.containers.size() || line->units < 0) return false;
      group.kit = m_.kit_of[group.container];
      for (const std::string& id : line->eaters) {
        group.eaters.push_back(position(m_.eaters, id));
        if (group.eaters.back() == m_.eaters.size()) return false;
        days_[{group.kit, group.eaters.back()}].insert(line->day);
      }
      group.priority = line->priority;
      if (line->units == 0) continue;
      for (std::size_t product = 0; product < m_.products.size(); ++product) {
        if (accepts(*line, group.eaters, product) && holds(group.container, product))
          group.accepted.push_back(product);
      }
      const Key key{group.container, group.eaters, group.priority, group.accepted};
      groups.emplace(key, std::move(group)).first->second.lines.push_back(line);
    }
    for (auto& [key, group] : groups) {
      std::stable_sort(group.lines.begin(), group.lines.end(),
                       [](const RefillLine* a, const RefillLine* b) { return a->day < b->day; });
      m_.groups.push_back(std::move(group));
    }
    return true;
  }

  // Units to be had of each product; more than kMostUnits counts as one more than that.
  void measure_supply() {
    supply_.assign(m_.products.size(), 0);
    const auto add = [this](const std::string& product, Exact units) {
      std::int64_t& sum = supply_[position(m_.products, product)];
      const Exact total = units + sum;
      sum = total.at_most(kTooMany) ? total.value() : kTooMany;
    };
    for (const RefillLot& lot : problem_.lots) {
      if (lot.last_good_day >= problem_.hold_until) add(lot.product, lot.units);
    }
    for (const Offer& offer : problem_.offers) {
      if (offer.last_good_day >= problem_.hold_until)
        add(offer.product, Exact(packs_to_be_had(offer)) * offer.pack_units);
    }
  }
  std::int64_t packs_to_be_had(const Offer& offer) const {
    std::int64_t packs = std::max<std::int64_t>(0, offer.max_packs.value_or(kTooMany));
    if (problem_.budget && offer.price > 0)
      packs = std::min(packs, std::max<std::int64_t>(0, *problem_.budget) / offer.price);
    return std::min(packs, kTooMany);
  }

  bool fill_groups() {
    needed_.assign(m_.products.size(), 0);
    for (RefillModel::Group& group : m_.groups) {
      Exact wanted = 0;
      for (const RefillLine* line : group.lines) wanted += line->units;
      std::int64_t most = 0;
      auto& accepted = group.accepted;
      accepted.erase(std::remove_if(accepted.begin(), accepted.end(),
                                    [&](std::size_t product) { return supply_[product] == 0; }),
                     accepted.end());
      for (const std::size_t product : accepted) most = std::min(kTooMany, most + supply_[product]);
      if (!wanted.fits()) return false;
      group.units = std::min(most, wanted.value());
      group.excess = wanted.value() - group.units;
      if (group.units > RefillModel::kMostUnits) return false;
      for (const std::size_t product : accepted)
        needed_[product] += std::min(group.units, supply_[product]);
    }
    return std::all_of(needed_.begin(), needed_.end(),
                       [](std::int64_t units) { return units <= RefillModel::kMostUnits; });
  }

  std::int64_t date_points(std::int64_t last_good_day) {
    const Exact cap = Exact(problem_.hold_until) + problem_.date_cap_days;
    const Exact points = (cap - last_good_day).or_zero();
    fits_ = fits_ && points.at_most(RefillModel::kMostSum);
    return points.value();
  }

  void pool_lots() {
    using Key = std::tuple<std::size_t, bool, std::size_t, std::int64_t>;
    std::map<Key, RefillModel::Source> pools;
    Exact kit_units = 0;
    for (const RefillLot* lot : by_id(problem_.lots)) {
      if (lot->last_good_day < problem_.hold_until) continue;
      if (lot->in_kit) kit_units += lot->units;
      const std::size_t product = position(m_.products, lot->product);
      if (needed_[product] == 0 || lot->units == 0) continue;
      const std::size_t lies =
          lot->in_kit ? position(m_.containers, lot->container) : m_.containers.size();
      const std::int64_t points = date_points(lot->last_good_day);
      RefillModel::Source& pool = pools[{product, lot->in_kit, lies, points}];
      pool.product = product;
      pool.in_kit = lot->in_kit;
      pool.container = lies;
      pool.date_points = points;
      pool.lots.push_back(lot);
      pool.supply =
          std::min(needed_[product], pool.supply + std::min(needed_[product], lot->units));
    }
    for (auto& [key, pool] : pools) m_.sources.push_back(std::move(pool));
    fits_ = fits_ && kit_units.at_most(RefillModel::kMostSum);
    m_.kit_units = kit_units.value();
  }

  void take_offers() {
    for (const Offer* offer : by_id(problem_.offers)) {
      if (offer->last_good_day < problem_.hold_until) continue;
      RefillModel::Source source;
      source.product = position(m_.products, offer->product);
      const std::int64_t needed = needed_[source.product];
      source.offer = offer;
      source.container = m_.containers.size();
      // One pack with more units than could ever be of use is as good as one with just so many.
      source.pack_units = std::min(offer->pack_units, needed);
      if (source.pack_units == 0) continue;
      source.packs = std::min(packs_to_be_had(*offer), ceil_div(needed, source.pack_units));
      if (source.packs == 0) continue;
      source.supply = std::min(needed, source.packs * source.pack_units);
      source.date_points = date_points(offer->last_good_day);
      bool anyone = false;
      for (std::size_t eater = 0; eater < m_.eaters.size(); ++eater)
        anyone = anyone || m_.will_eat(source.product, eater);
      const Exact credit = (Exact(offer->price) * problem_.surplus_credit_percent)
                               .floor_div(100)
                               .floor_div(offer->pack_units);
      fits_ = fits_ && credit.fits();
      source.credit = anyone ? credit.value() : 0;
      m_.sources.push_back(std::move(source));
    }
  }

  void name_feeds() {
    using Way = RefillModel::Way;
    std::map<std::pair<std::size_t, Way>, RefillModel::Feed> feeds;
    const auto add = [&feeds](std::size_t product, Way way, std::size_t source) {
      RefillModel::Feed& feed = feeds[{product, way}];
      feed.product = product;
      feed.way = way;
      feed.sources.push_back(source);
    };
    for (std::size_t at = 0; at < m_.sources.size(); ++at) {
      const RefillModel::Source& source = m_.sources[at];
      if (source.offer != nullptr) continue;
      if (source.in_kit && source.container < m_.containers.size())
        add(source.product, Way::kStays, at);
      add(source.product, source.in_kit ? Way::kMoved : Way::kPantry, at);
    }
    for (auto& [key, feed] : feeds) m_.feeds.push_back(std::move(feed));
    for (std::size_t at = 0; at < m_.sources.size(); ++at) {
      if (m_.sources[at].offer != nullptr)
        m_.feeds.push_back({m_.sources[at].product, Way::kBought, {at}});
    }
  }

  bool count_shortages() {
    for (const auto& [key, days] : days_) {
      const std::int64_t a_day = m_.eaters[key.second]->energy_target;
      if (a_day <= 0) continue;
      const Exact target = Exact(a_day) * static_cast<std::int64_t>(days.size());
      if (!target.at_most(RefillModel::kMostSum)) return false;
      m_.shortages.push_back({key.first, key.second, target.value(), -1});
    }
    return true;
  }

  static constexpr std::int64_t kTooMany = RefillModel::kMostUnits + 1;

  const RefillProblem& problem_;
  RefillModel& m_;
  std::map<RefillModel::Pair, std::set<int>> days_;  // kit, eater
  std::vector<std::int64_t> supply_;                 // by product
  std::vector<std::int64_t> needed_;  // by product: units that could be placed at most
  bool fits_ = true;
};

}  // namespace

int RefillModel::rating(std::size_t product, std::size_t eater) const {
  const auto& ratings = eaters[eater]->ratings;
  const auto found = ratings.find(products[product]->id);
  return found == ratings.end() ? 0 : found->second;
}

bool RefillModel::will_eat(std::size_t product, std::size_t eater) const {
  const auto& avoid = eaters[eater]->avoid;
  const auto& contains = products[product]->contains;
  return rating(product, eater) > -2 &&
         std::none_of(contains.begin(), contains.end(),
                      [&](const std::string& tag) { return avoid.count(tag) > 0; });
}

std::int64_t RefillModel::share(std::size_t product, const Group& group) const {
  const auto sharers = static_cast<std::int64_t>(group.eaters.size());
  return sharers == 0 ? 0 : products[product]->kcal / sharers;
}

std::optional<RefillModel> make_refill_model(const RefillProblem& problem) {
  std::optional<RefillModel> model(std::in_place);
  if (!Builder(problem, *model).build()) return std::nullopt;
  write_refill_rows(*model, problem);
  if (!write_refill_levels(*model, problem)) return std::nullopt;
  return model;
}

}  // namespace larderloop::plan
