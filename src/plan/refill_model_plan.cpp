// From a plan to a point of the model and back.
#include "plan/refill_model.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace larderloop::plan {
namespace {

std::int64_t& at(MipPoint& point, int column) {
  return point[static_cast<std::size_t>(column)];
}
std::int64_t at(const MipPoint& point, int column) {
  return point[static_cast<std::size_t>(column)];
}

std::int64_t packs_for(std::int64_t units, std::int64_t pack_units) {
  return units / pack_units + (units % pack_units > 0 ? 1 : 0);
}

// What follows from the other columns.
void complete(const RefillModel& model, MipPoint& point) {
  std::map<RefillModel::Repeat, std::int64_t> own;
  for (const RefillModel::Group& group : model.groups)
    if (group.unmet >= 0) at(point, group.unmet) = group.units;
  for (const auto& [key, column] : model.put) {
    const RefillModel::Group& group = model.groups[key.second];
    at(point, group.unmet) -= at(point, column);
    if (group.eaters.size() == 1)
      own[{group.kit, group.eaters.front(), key.first}] += at(point, column);
  }
  for (const auto& [key, column] : model.repeats)
    at(point, column) = std::max<std::int64_t>(0, own[key] - model.variety_cap);
  for (const RefillModel::Shortage& shortage : model.shortages) {
    if (shortage.column < 0) continue;
    std::int64_t missing = shortage.target;
    for (const auto& [key, column] : model.put) {
      const RefillModel::Group& group = model.groups[key.second];
      if (group.kit != shortage.kit) continue;
      missing -= std::min(shortage.target, model.share(key.first, group)) * at(point, column) *
                 std::count(group.eaters.begin(), group.eaters.end(), shortage.eater);
    }
    at(point, shortage.column) = std::max<std::int64_t>(0, missing);
  }
}

RefillModel::Way way_of(const RefillModel::Source& source, std::size_t container) {
  using Way = RefillModel::Way;
  if (source.offer != nullptr) return Way::kBought;
  if (!source.in_kit) return Way::kPantry;
  return source.container == container ? Way::kStays : Way::kMoved;
}

// Deals a point out to lines and lots.
class Dealer {
 public:
  Dealer(const RefillModel& model, const MipPoint& point) : m_(model), point_(point) {}

  RefillPlan deal() {
    for (std::size_t group = 0; group < m_.groups.size(); ++group) deal_group(group);
    deal_sources();
    RefillPlan plan;
    for (std::size_t source = 0; source < m_.sources.size(); ++source) add_packs(source, plan);
    std::sort(plan.packs.begin(), plan.packs.end(),
              [](const OfferPacks& a, const OfferPacks& b) { return a.offer < b.offer; });
    for (const auto& [key, units] : moves_) {
      const auto& [line, lot, offer] = key;
      plan.moves.push_back({lot, offer, line, units});
    }
    for (const auto& [line, units] : unmet_)
      if (units > 0) plan.unmet.push_back({line, units});
    return plan;
  }

 private:
  struct Placed {
    const RefillLine* line;
    std::int64_t units;
  };
  using Way = RefillModel::Way;
  using KitEaterDay = std::tuple<std::size_t, std::size_t, int>;

  void deal_group(std::size_t index) {
    const RefillModel::Group& group = m_.groups[index];
    std::vector<std::pair<std::int64_t, std::size_t>> richest;  // kcal downwards, product
    std::int64_t all = 0;
    for (auto put = group.accepted.begin(); put != group.accepted.end(); ++put) {
      const auto column = m_.put.find({*put, index});
      if (column == m_.put.end() || at(point_, column->second) == 0) continue;
      richest.emplace_back(-m_.products[*put]->kcal, *put);
      all += at(point_, column->second);
    }
    std::sort(richest.begin(), richest.end());
    std::vector<std::int64_t> room;
    for (const RefillLine* line : group.lines) room.push_back(line->units);
    for (const auto& [kcal, product] : richest) {
      std::int64_t left = at(point_, m_.put.at({product, index}));
      while (left > 0) {
        const std::size_t line = all > kMostDealt ? first(room) : poorest(group, room);
        const std::int64_t units = all > kMostDealt ? std::min(left, room[line]) : 1;
        room[line] -= units;
        left -= units;
        place(group, *group.lines[line], product, units);
      }
    }
    for (std::size_t line = 0; line < room.size(); ++line)
      unmet_[group.lines[line]->id] = room[line];
  }
  static std::size_t first(const std::vector<std::int64_t>& room) {
    return static_cast<std::size_t>(
        std::find_if(room.begin(), room.end(), [](std::int64_t units) { return units > 0; }) -
        room.begin());
  }
  std::size_t poorest(const RefillModel::Group& group, const std::vector<std::int64_t>& room) {
    std::size_t best = first(room);
    for (std::size_t line = best + 1; line < room.size(); ++line)
      if (room[line] > 0 && held(group, *group.lines[line]) < held(group, *group.lines[best]))
        best = line;
    return best;
  }
  std::int64_t held(const RefillModel::Group& group, const RefillLine& line) {
    std::int64_t sum = 0;
    for (const std::size_t eater : group.eaters) sum += energy_[{group.kit, eater, line.day}];
    return sum;
  }
  void place(const RefillModel::Group& group, const RefillLine& line, std::size_t product,
             std::int64_t units) {
    for (const std::size_t eater : group.eaters)
      energy_[{group.kit, eater, line.day}] +=
          units * std::min(kMostKcal, m_.share(product, group));
    auto& placed = placed_[{product, group.container}];
    if (placed.empty() || placed.back().line != &line) {
      placed.push_back({&line, units});
    } else {
      placed.back().units += units;
    }
  }

  // Which units of which source fill a container with a product: what stays first, then the rest of
  // the kit, the pantry, offers.
  using Draws = std::vector<std::pair<std::size_t, std::int64_t>>;  // source, units
  std::map<RefillModel::Pair, Draws> draw() const {
    std::vector<std::int64_t> left;
    for (const RefillModel::Source& source : m_.sources)
      left.push_back(source.used >= 0 ? at(point_, source.used) : source.supply);
    std::map<RefillModel::Pair, Draws> draws;
    for (const Way way : {Way::kStays, Way::kMoved, Way::kPantry, Way::kBought}) {
      for (const auto& [key, column] : m_.from) {
        const RefillModel::Feed& feed = m_.feeds[key.first];
        std::int64_t units = at(point_, column);
        // Only what comes from elsewhere is moved; should there be nothing elsewhere, so much the
        // better.
        for (const bool here : {way == Way::kStays, way != Way::kStays}) {
          for (const std::size_t source : feed.sources) {
            const std::int64_t taken = std::min(units, left[source]);
            if (feed.way != way || taken == 0 ||
                (m_.sources[source].container == key.second) != here)
              continue;
            draws[{feed.product, key.second}].emplace_back(source, taken);
            left[source] -= taken;
            units -= taken;
          }
        }
      }
    }
    return draws;
  }

  void deal_sources() {
    std::map<RefillModel::Pair, Draws> draws = draw();
    for (auto& [key, sources] : draws) {
      auto& placed = placed_[key];
      std::stable_sort(placed.begin(), placed.end(), [](const Placed& a, const Placed& b) {
        return std::tie(a.line->day, a.line->id) < std::tie(b.line->day, b.line->id);
      });
      auto line = placed.begin();
      for (auto& [source, left] : sources) {
        while (left > 0 && line != placed.end()) {
          const std::int64_t units = std::min(left, line->units);
          take(source, *line->line, units);
          left -= units;
          line->units -= units;
          if (line->units == 0) ++line;
        }
      }
    }
  }
  // Units of the source to the line, lot by lot.
  void take(std::size_t index, const RefillLine& line, std::int64_t units) {
    const RefillModel::Source& source = m_.sources[index];
    std::int64_t& used = used_[index];
    if (source.offer != nullptr) {
      moves_[{line.id, "", source.offer->id}] += units;
      used += units;
      return;
    }
    std::int64_t before = 0;  // units in the lots passed
    for (const RefillLot* lot : source.lots) {
      const std::int64_t held = std::min(lot->units, source.supply);
      const std::int64_t taken = std::min(units, before + held - used);
      if (taken > 0) {
        moves_[{line.id, lot->id, ""}] += taken;
        used += taken;
        units -= taken;
      }
      if (units == 0) return;
      before += held;
    }
  }
  void add_packs(std::size_t index, RefillPlan& plan) const {
    const RefillModel::Source& source = m_.sources[index];
    const auto used = used_.find(index);
    if (source.offer == nullptr || used == used_.end() || used->second == 0) return;
    plan.packs.push_back({source.offer->id, packs_for(used->second, source.offer->pack_units)});
  }

  static constexpr std::int64_t kMostDealt = 5'000;     // units of a group dealt one by one
  static constexpr std::int64_t kMostKcal = 1'000'000;  // of a unit, when days are compared

  const RefillModel& m_;
  const MipPoint& point_;
  std::map<KitEaterDay, std::int64_t> energy_;
  std::map<RefillModel::Pair, std::vector<Placed>> placed_;  // product, container
  std::map<std::tuple<std::string, std::string, std::string>, std::int64_t>
      moves_;  // line, lot, offer
  std::map<std::string, std::int64_t> unmet_;
  std::map<std::size_t, std::int64_t> used_;
};

}  // namespace

MipPoint point_of(const RefillModel& model, const RefillPlan& plan) {
  MipPoint point(model.mip.columns.size(), 0);
  std::map<std::string, std::size_t> group_of, source_of_lot, source_of_offer;
  for (std::size_t group = 0; group < model.groups.size(); ++group)
    for (const RefillLine* line : model.groups[group].lines) group_of[line->id] = group;
  for (std::size_t source = 0; source < model.sources.size(); ++source) {
    for (const RefillLot* lot : model.sources[source].lots) source_of_lot[lot->id] = source;
    if (model.sources[source].offer != nullptr)
      source_of_offer[model.sources[source].offer->id] = source;
  }
  std::map<std::pair<std::size_t, RefillModel::Way>, std::size_t> feed_of;  // source
  for (std::size_t feed = 0; feed < model.feeds.size(); ++feed)
    for (const std::size_t source : model.feeds[feed].sources)
      feed_of[{source, model.feeds[feed].way}] = feed;
  std::vector<std::int64_t> used(model.sources.size(), 0);
  for (const Move& move : plan.moves) {
    if (move.units == 0) continue;
    const std::size_t group = group_of.at(move.line);
    const std::size_t source =
        move.lot.empty() ? source_of_offer.at(move.offer) : source_of_lot.at(move.lot);
    const RefillModel::Source& of = model.sources[source];
    const std::size_t container = model.groups[group].container;
    at(point, model.put.at({of.product, group})) += move.units;
    at(point, model.from.at({feed_of.at({source, way_of(of, container)}), container})) +=
        move.units;
    if (of.used >= 0) at(point, of.used) += move.units;
    used[source] += move.units;
  }
  for (std::size_t source = 0; source < model.sources.size(); ++source) {
    if (model.sources[source].offer != nullptr)
      at(point, model.sources[source].bought) =
          packs_for(used[source], model.sources[source].pack_units);
  }
  complete(model, point);
  return point;
}

RefillPlan plan_of(const RefillModel& model, const MipPoint& point) {
  return Dealer(model, point).deal();
}

}  // namespace larderloop::plan
