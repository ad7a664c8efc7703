// Columns, rows and levels of the refill, as docs/planning.md states them.
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

  bool write() {
    add_packs();
    add_groups();
    add_sources();
    add_links();
    add_limits();
    add_energy();
    add_repeats();
    add_levels();
    return fits();
  }

 private:
  // Columns are ranked for a search that fixes some first: what is bought, what goes where, from
  // which source, what follows.
  enum Rank { kBought, kPut, kFrom, kFollows };

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

  void add_sources() {
    for (std::size_t at = 0; at < m_.sources.size(); ++at) {
      const RefillModel::Source& source = m_.sources[at];
      Terms placed;
      for (std::size_t container = 0; container < m_.containers.size(); ++container) {
        const auto needs = needs_.find({source.product, container});
        if (needs == needs_.end()) continue;
        const std::int64_t needed =
            std::min(most(needs->second), group_room(container, source.product));
        const std::int64_t units = std::min(needed, source.supply);
        const int column = m_.mip.add_column(
            name_("from", {source_name(source), m_.containers[container]->id}), 0, units, kFrom);
        m_.from[{at, container}] = column;
        feeds_[{source.product, container}].push_back({column, 1});
        placed.push_back({column, 1});
        // Without a pack nothing comes from it; by itself this would follow only for whole packs.
        if (source.offer != nullptr && units < source.pack_units)
          m_.mip.add_row(name_("pack", {source_name(source), m_.containers[container]->id}),
                         MipRow::kNone, 0, {{column, 1}, {source.bought, -units}});
      }
      if (placed.empty()) continue;
      if (source.offer != nullptr) {
        placed.push_back({source.bought, -source.pack_units});
        m_.mip.add_row(name_("offer", {source_name(source)}), MipRow::kNone, 0, std::move(placed));
      } else if (most(placed) > source.supply) {
        m_.mip.add_row(name_("lot", {source_name(source)}), MipRow::kNone, source.supply,
                       std::move(placed));
      }
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
      for (const MipTerm& fed : feeds_[key]) terms.push_back({fed.column, -1});
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
    for (std::size_t at = 0; at < m_.sources.size() && !bags.empty(); ++at) {
      const RefillModel::Source& source = m_.sources[at];
      if (source.offer == nullptr || source.product != key.product) continue;
      const std::int64_t units = std::min(m_.variety_cap, source.pack_units);
      Terms terms;
      for (const std::size_t bag : bags) terms.push_back({m_.from.at({at, bag}), 1});
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

  void add_levels() {
    add_level(unmet());
    if (problem_.keep_in_place) add_level(from_kit("displaced", 0));
    add_level(energy());
    add_level(repeats());
    add_level(cost());
    add_level(dislike());
    add_level(from_kit("handled", 1));
    add_level(dates());
  }
  struct Sum {
    const char* name;
    Exact constant = 0;
    Terms terms = {};

    void add(int column, std::int64_t factor) {
      if (factor != 0) terms.push_back({column, factor});
    }
  };
  void add_level(Sum sum) {
    fits_ = fits_ && sum.constant.fits();
    std::sort(sum.terms.begin(), sum.terms.end(),
              [](const MipTerm& a, const MipTerm& b) { return a.column < b.column; });
    m_.mip.levels.push_back({sum.name, sum.constant.value(), std::move(sum.terms)});
  }

  Sum unmet() const {
    Sum sum{"unmet"};
    for (const RefillModel::Group& group : m_.groups) {
      sum.constant += Exact(group.excess) * group.priority;
      if (group.unmet >= 0) sum.add(group.unmet, group.priority);
    }
    return sum;
  }
  // Units of the kit that do not stay, and `new_units` for each unit from elsewhere.
  Sum from_kit(const char* name, std::int64_t new_units) const {
    Sum sum{name, m_.kit_units};
    for (const auto& [key, column] : m_.from) {
      const RefillModel::Source& source = m_.sources[key.first];
      if (!source.in_kit) {
        sum.add(column, new_units);
      } else if (source.container == key.second) {
        sum.add(column, -1);
      }
    }
    return sum;
  }
  Sum energy() const {
    Sum sum{"energy"};
    for (const RefillModel::Shortage& shortage : m_.shortages) {
      if (shortage.column < 0) {
        sum.constant += shortage.target;
      } else {
        sum.add(shortage.column, 1);
      }
    }
    return sum;
  }
  Sum repeats() const {
    Sum sum{"repeats"};
    for (const auto& [key, column] : m_.repeats) sum.add(column, 1);
    return sum;
  }
  Sum cost() const {
    Sum sum{"cost"};
    for (std::size_t at = 0; at < m_.sources.size(); ++at) {
      const RefillModel::Source& source = m_.sources[at];
      if (source.offer == nullptr) continue;
      sum.add(source.bought, source.offer->price - source.credit * source.offer->pack_units);
      for (auto from = m_.from.lower_bound({at, 0});
           from != m_.from.end() && from->first.first == at; ++from)
        sum.add(from->second, source.credit);
    }
    return sum;
  }
  Sum dislike() const {
    Sum sum{"dislike"};
    for (const auto& [key, column] : m_.put) {
      std::int64_t points = 0;
      for (const std::size_t eater : m_.groups[key.second].eaters)
        points += 2 - m_.rating(key.first, eater);
      sum.add(column, points);
    }
    for (const RefillModel::Group& group : m_.groups) {
      const std::int64_t points = 4 * static_cast<std::int64_t>(group.eaters.size());
      sum.constant += Exact(group.excess) * points;
      if (group.unmet >= 0) sum.add(group.unmet, points);
    }
    return sum;
  }
  Sum dates() const {
    Sum sum{"dates"};
    for (const auto& [key, column] : m_.from) sum.add(column, m_.sources[key.first].date_points);
    return sum;
  }

  // No row and no level may ever come near what a solver's numbers hold exactly.
  bool fits() const {
    if (!fits_) return false;
    const auto small = [this](const Terms& terms, std::int64_t more) {
      Exact sum = more < 0 ? Exact(0) - more : Exact(more);
      for (const MipTerm& term : terms) {
        const Exact size = term.factor < 0 ? Exact(0) - term.factor : Exact(term.factor);
        sum += size * m_.mip.columns[static_cast<std::size_t>(term.column)].upper;
      }
      return sum.at_most(RefillModel::kMostSum);
    };
    return std::all_of(m_.mip.rows.begin(), m_.mip.rows.end(),
                       [&](const MipRow& row) { return small(row.terms, 0); }) &&
           std::all_of(m_.mip.levels.begin(), m_.mip.levels.end(),
                       [&](const MipLevel& level) { return small(level.terms, level.constant); });
  }

  const RefillProblem& problem_;
  RefillModel& m_;
  Names name_;
  std::map<RefillModel::Pair, Terms> needs_, feeds_;  // product, container
  bool fits_ = true;
};

}  // namespace

bool write_refill_mip(RefillModel& model, const RefillProblem& problem) {
  return Writer(problem, model).write();
}

}  // namespace larderloop::plan
