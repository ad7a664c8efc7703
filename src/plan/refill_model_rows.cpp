// Columns and rows of the refill, as docs/planning.md states them, with rows that make the
// relaxation tighter.
#include "plan/exact.h"
#include "plan/refill_model.h"

#include <algorithm>
#include <set>

namespace larderloop::plan {
namespace {

// Letters, digits and _ of an id, short enough for every file format, and never twice the same.
class Names {
 public:
  std::string operator()(const std::string& kind, std::initializer_list<std::string> ids) {
    std::string name = kind;
    for (const std::string& id : ids) name += "_" + plain(id);
    if (!used_.insert(name).second) {
      std::size_t number = 2;
      while (!used_.insert(name + "_" + std::to_string(number)).second) number += 1;
      name += "_" + std::to_string(number);
    }
    return name;
  }

 private:
  static std::string plain(const std::string& id) {
    constexpr std::size_t kMost = 40;
    std::string text;
    for (const char letter : id.substr(0, kMost)) {
      const bool keeps = (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') ||
                         (letter >= '0' && letter <= '9');
      text += keeps ? letter : '_';
    }
    return text;
  }

  std::set<std::string> used_;
};

using Terms = std::vector<MipTerm>;

class Writer {
 public:
  Writer(const RefillProblem& problem, RefillModel& model) : problem_(problem), m_(model) {}

  void write() {
    add_packs();
    add_groups();
    add_feeds();
    add_sources();
    add_links();
    add_limits();
    add_energy();
    add_repeats();
  }

 private:
  // Columns are ranked for a search that fixes some first: what is bought, what goes where, from
  // which source, what follows.
  enum Rank { kBought, kPut, kFrom, kUsed, kFollows };
  using Way = RefillModel::Way;

  std::string group_name(const RefillModel::Group& group) const { return group.lines.front()->id; }
  std::string source_name(const RefillModel::Source& source) const {
    return source.offer != nullptr ? source.offer->id : source.lots.front()->id;
  }

  void add_packs() {
    for (RefillModel::Source& source : m_.sources) {
      if (source.offer != nullptr)
        source.bought =
            m_.mip.add_column(name_("packs", {source.offer->id}), 0, source.packs, kBought);
    }
  }

  // Units of the product the group's container can hold at all.
  std::int64_t room(const RefillModel::Group& group, std::size_t product) const {
    const Container& in = *m_.containers[group.container];
    const RefillProduct& what = *m_.products[product];
    std::int64_t units = group.units;
    if (in.mass_limit && what.mass > 0) units = std::min(units, *in.mass_limit / what.mass);
    if (in.volume_limit && what.volume > 0) units = std::min(units, *in.volume_limit / what.volume);
    return units;
  }

  void add_groups() {
    std::vector<std::int64_t> supply(m_.products.size(), 0);
    for (const RefillModel::Source& source : m_.sources)
      supply[source.product] =
          std::min(RefillModel::kMostUnits, supply[source.product] + source.supply);
    for (std::size_t at = 0; at < m_.groups.size(); ++at) {
      RefillModel::Group& group = m_.groups[at];
      if (group.units == 0) continue;
      Terms filled;
      for (const std::size_t product : group.accepted) {
        const std::int64_t most = std::min(room(group, product), supply[product]);
        if (most == 0) continue;
        const int column = m_.mip.add_column(
            name_("put", {m_.products[product]->id, group_name(group)}), 0, most, kPut);
        m_.put[{product, at}] = column;
        filled.push_back({column, 1});
        needs_[{product, group.container}].push_back({column, 1});
      }
      group.unmet =
          m_.mip.add_column(name_("unmet", {group_name(group)}), 0, group.units, kFollows);
      filled.push_back({group.unmet, 1});
      m_.mip.add_row(name_("line", {group_name(group)}), group.units, group.units,
                     std::move(filled));
    }
  }

  std::int64_t most(const Terms& columns) const {
    std::int64_t sum = 0;
    for (const MipTerm& term : columns)
      sum += m_.mip.columns[static_cast<std::size_t>(term.column)].upper;
    return sum;
  }

  // Units a container can be fed in this way: never more than lie in the places concerned.
  std::int64_t supply(const RefillModel::Feed& feed, std::size_t container) const {
    std::int64_t units = 0;
    for (const std::size_t at : feed.sources) {
      const RefillModel::Source& source = m_.sources[at];
      const bool here = source.container == container;
      if (feed.way == Way::kStays ? here : feed.way != Way::kMoved || !here) units += source.supply;
    }
    return units;
  }

  void add_feeds() {
    for (std::size_t at = 0; at < m_.feeds.size(); ++at) {
      const RefillModel::Feed& feed = m_.feeds[at];
      for (std::size_t container = 0; container < m_.containers.size(); ++container) {
        const auto needs = needs_.find({feed.product, container});
        if (needs == needs_.end()) continue;
        const std::int64_t units = std::min(
            {supply(feed, container), most(needs->second), group_room(container, feed.product)});
        if (units == 0) continue;
        const int column = m_.mip.add_column(
            name_(from_name(feed),
                  {source_name(m_.sources[feed.sources.front()]), m_.containers[container]->id}),
            0, units, kFrom);
        m_.from[{at, container}] = column;
        fed_[{feed.product, container}].push_back({column, 1});
        if (feed.way == Way::kBought) add_pack(m_.sources[feed.sources.front()], container, column);
      }
    }
  }
  static const char* from_name(const RefillModel::Feed& feed) {
    return feed.way == Way::kStays ? "stays" : (feed.way == Way::kMoved ? "moved" : "from");
  }
  // Without a pack nothing comes from it; by itself this would follow only for whole packs.
  void add_pack(const RefillModel::Source& source, std::size_t container, int column) {
    const std::int64_t units = m_.mip.columns[static_cast<std::size_t>(column)].upper;
    if (units < source.pack_units)
      m_.mip.add_row(name_("pack", {source.offer->id, m_.containers[container]->id}), MipRow::kNone,
                     0, {{column, 1}, {source.bought, -units}});
  }

  // Columns of the feed; of one container alone when it is given.
  Terms columns_of(std::size_t feed, std::int64_t factor,
                   std::optional<std::size_t> container = {}) const {
    Terms terms;
    for (auto from = m_.from.lower_bound({feed, 0});
         from != m_.from.end() && from->first.first == feed; ++from) {
      if (!container || *container == from->first.second) terms.push_back({from->second, factor});
    }
    return terms;
  }
  static void append(Terms& terms, const Terms& more) {
    terms.insert(terms.end(), more.begin(), more.end());
  }

  void add_sources() {
    for (std::size_t at = 0; at < m_.feeds.size(); ++at) {
      const RefillModel::Feed& feed = m_.feeds[at];
      if (feed.way == Way::kStays) continue;  // with what is moved
      Terms drawn = columns_of(at, 1);
      const bool also_stays = feed.way == Way::kMoved && at > 0 &&
                              m_.feeds[at - 1].way == Way::kStays &&
                              m_.feeds[at - 1].product == feed.product;
      if (also_stays) append(drawn, columns_of(at - 1, 1));
      if (drawn.empty()) continue;
      RefillModel::Source& first = m_.sources[feed.sources.front()];
      if (feed.way == Way::kBought) {
        drawn.push_back({first.bought, -first.pack_units});
        m_.mip.add_row(name_("offer", {first.offer->id}), MipRow::kNone, 0, std::move(drawn));
      } else if (feed.sources.size() == 1) {
        if (most(drawn) > first.supply)
          m_.mip.add_row(name_("lot", {source_name(first)}), MipRow::kNone, first.supply,
                         std::move(drawn));
      } else {
        draw_on_sources(feed, std::move(drawn));
        if (also_stays) let_stay_from_here(at - 1);
      }
    }
  }
  // What the feeds draw is used up somewhere.
  void draw_on_sources(const RefillModel::Feed& feed, Terms drawn) {
    for (const std::size_t at : feed.sources) {
      RefillModel::Source& source = m_.sources[at];
      source.used =
          m_.mip.add_column(name_("used", {source_name(source)}), 0, source.supply, kUsed);
      drawn.push_back({source.used, -1});
    }
    m_.mip.add_row(
        name_("lots", {m_.products[feed.product]->id, feed.way == Way::kMoved ? "kit" : "pantry"}),
        0, 0, std::move(drawn));
  }
  // Only units used from the lots that lie in a container can stay there.
  void let_stay_from_here(std::size_t at) {
    for (std::size_t container = 0; container < m_.containers.size(); ++container) {
      Terms terms = columns_of(at, 1, container);
      if (terms.empty()) continue;
      for (const std::size_t source : m_.feeds[at].sources) {
        if (m_.sources[source].container == container)
          terms.push_back({m_.sources[source].used, -1});
      }
      m_.mip.add_row(
          name_("here", {m_.products[m_.feeds[at].product]->id, m_.containers[container]->id}),
          MipRow::kNone, 0, std::move(terms));
    }
  }
  // Units of the product the container can hold at all.
  std::int64_t group_room(std::size_t container, std::size_t product) const {
    RefillModel::Group any;
    any.container = container;
    any.units = RefillModel::kMostUnits;
    return room(any, product);
  }

  void add_links() {
    for (const auto& [key, needs] : needs_) {
      Terms terms = needs;
      for (const MipTerm& fed : fed_[key]) terms.push_back({fed.column, -1});
      m_.mip.add_row(name_("link", {m_.products[key.first]->id, m_.containers[key.second]->id}), 0,
                     0, std::move(terms));
    }
  }

  void add_limits() {
    for (std::size_t container = 0; container < m_.containers.size(); ++container) {
      const Container& in = *m_.containers[container];
      add_limit("mass", in, container, in.mass_limit, &RefillProduct::mass);
      add_limit("volume", in, container, in.volume_limit, &RefillProduct::volume);
    }
    if (!problem_.budget) return;
    Terms spent;
    for (const RefillModel::Source& source : m_.sources) {
      if (source.offer != nullptr && source.offer->price > 0)
        spent.push_back({source.bought, source.offer->price});
    }
    add_if_needed("budget", std::max<std::int64_t>(0, *problem_.budget), std::move(spent));
  }
  void add_limit(const char* what, const Container& in, std::size_t container,
                 const std::optional<std::int64_t>& limit, std::int64_t RefillProduct::*measure) {
    if (!limit) return;
    Terms terms;
    for (const auto& [key, column] : m_.put) {
      const std::int64_t each = m_.products[key.first]->*measure;
      if (m_.groups[key.second].container == container && each > 0) terms.push_back({column, each});
    }
    add_if_needed(name_(what, {in.id}), *limit, std::move(terms));
  }
  // A limit that all columns at their most keep is no row.
  void add_if_needed(std::string name, std::int64_t limit, Terms terms) {
    Exact sum = 0;
    for (const MipTerm& term : terms)
      sum += Exact(term.factor) * m_.mip.columns[static_cast<std::size_t>(term.column)].upper;
    if (!terms.empty() && !sum.at_most(limit))
      m_.mip.add_row(std::move(name), MipRow::kNone, limit, std::move(terms));
  }

  static bool is_for(const RefillModel::Group& group, std::size_t kit, std::size_t eater) {
    return group.kit == kit &&
           std::find(group.eaters.begin(), group.eaters.end(), eater) != group.eaters.end();
  }

  void add_energy() {
    for (RefillModel::Shortage& shortage : m_.shortages) {
      Terms terms;
      for (const auto& [key, column] : m_.put) {
        const RefillModel::Group& group = m_.groups[key.second];
        if (!is_for(group, shortage.kit, shortage.eater)) continue;
        // More than all that is wanted counts as all that is wanted.
        const std::int64_t kcal =
            std::min(shortage.target, m_.share(key.first, group)) *
            std::count(group.eaters.begin(), group.eaters.end(), shortage.eater);
        if (kcal > 0) terms.push_back({column, kcal});
      }
      if (terms.empty()) continue;
      const std::string &kit = m_.kits[shortage.kit], &eater = m_.eaters[shortage.eater]->id;
      shortage.column =
          m_.mip.add_column(name_("short", {kit, eater}), 0, shortage.target, kFollows);
      terms.push_back({shortage.column, 1});
      m_.mip.add_row(name_("energy", {kit, eater}), shortage.target, MipRow::kNone,
                     std::move(terms));
    }
  }

  void add_repeats() {
    std::map<RefillModel::Repeat, Terms> own;
    for (const auto& [key, column] : m_.put) {
      const RefillModel::Group& group = m_.groups[key.second];
      if (group.eaters.size() != 1 || m_.products[key.first]->staple) continue;
      own[{group.kit, group.eaters.front(), key.first}].push_back({column, 1});
    }
    for (auto& [key, terms] : own) {
      const std::int64_t beyond = most(terms) - m_.variety_cap;
      if (beyond <= 0) continue;
      const std::string name = m_.products[key.product]->id;
      const int column =
          m_.mip.add_column(name_("repeats", {m_.kits[key.kit], m_.eaters[key.eater]->id, name}), 0,
                            beyond, kFollows);
      m_.repeats[key] = column;
      terms.push_back({column, -1});
      m_.mip.add_row(name_("variety", {m_.kits[key.kit], m_.eaters[key.eater]->id, name}),
                     MipRow::kNone, m_.variety_cap, std::move(terms));
      add_variety_of_packs(key, column);
    }
  }
  // From an offer a person takes at most the variety cap, but for repeats; nothing without a pack.
  void add_variety_of_packs(const RefillModel::Repeat& key, int repeats) {
    const std::vector<std::size_t> bags = own_containers(key);
    for (std::size_t at = 0; at < m_.feeds.size(); ++at) {
      const RefillModel::Feed& feed = m_.feeds[at];
      if (feed.way != Way::kBought || feed.product != key.product) continue;
      const RefillModel::Source& source = m_.sources[feed.sources.front()];
      const std::int64_t units = std::min(m_.variety_cap, source.pack_units);
      Terms terms;
      for (const std::size_t bag : bags) append(terms, columns_of(at, 1, bag));
      if (terms.empty()) continue;
      terms.push_back({source.bought, -units});
      terms.push_back({repeats, -1});
      m_.mip.add_row(
          name_("taste", {source_name(source), m_.kits[key.kit], m_.eaters[key.eater]->id}),
          MipRow::kNone, 0, std::move(terms));
    }
  }
  // Containers where nobody but this person on lines of their own is given the product.
  std::vector<std::size_t> own_containers(const RefillModel::Repeat& key) const {
    std::set<std::size_t> theirs, others;
    for (auto at = m_.put.lower_bound({key.product, 0});
         at != m_.put.end() && at->first.first == key.product; ++at) {
      const RefillModel::Group& group = m_.groups[at->first.second];
      const bool own = group.kit == key.kit && group.eaters == std::vector<std::size_t>{key.eater};
      (own ? theirs : others).insert(group.container);
    }
    std::vector<std::size_t> bags;
    std::set_difference(theirs.begin(), theirs.end(), others.begin(), others.end(),
                        std::back_inserter(bags));
    return bags;
  }

  const RefillProblem& problem_;
  RefillModel& m_;
  Names name_;
  std::map<RefillModel::Pair, Terms> needs_, fed_;  // product, container
};

}  // namespace

void write_refill_rows(RefillModel& model, const RefillProblem& problem) {
  Writer(problem, model).write();
}

}  // namespace larderloop::plan
