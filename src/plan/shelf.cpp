#include "plan/shelf.h"

#include <algorithm>
#include <set>
#include <utility>

namespace larderloop::plan {
namespace {

template <typename T>
std::vector<const T*> by_id(const std::vector<T>& all) {
  std::vector<const T*> sorted;
  for (const T& each : all) sorted.push_back(&each);
  std::sort(sorted.begin(), sorted.end(), [](const T* a, const T* b) { return a->id < b->id; });
  return sorted;
}

template <typename T>
std::map<std::string, std::size_t> positions(const std::vector<const T*>& sorted) {
  std::map<std::string, std::size_t> at;
  for (std::size_t index = 0; index < sorted.size(); ++index) at.emplace(sorted[index]->id, index);
  return at;
}

bool wants(const RefillProduct& product, const Eater& eater, int rating) {
  return rating > -2 &&
         std::none_of(product.contains.begin(), product.contains.end(),
                      [&](const std::string& tag) { return eater.avoid.count(tag) > 0; });
}

std::int64_t above_zero(std::int64_t value) {
  return std::max<std::int64_t>(0, value);
}
std::int64_t quantity(std::int64_t value) {
  return std::clamp<std::int64_t>(value, 0, Shelf::kMost);
}

}  // namespace

Shelf::Shelf(const RefillProblem& problem)
    : eaters_(by_id(problem.eaters)),
      products_(by_id(problem.products)),
      product_count_(products_.size()),
      variety_cap_(problem.variety_cap),
      date_cap_(problem.hold_until + problem.date_cap_days) {
  for (const RefillProduct* product : products_) {
    for (const Eater* eater : eaters_) {
      const auto rated = eater->ratings.find(product->id);
      ratings_.push_back(rated == eater->ratings.end() ? 0 : rated->second);
    }
  }
  if (problem.budget) budget_left_ = std::clamp<std::int64_t>(*problem.budget, 0, kNoLimit);
  compile_lines(problem);
  compile_sources(problem);
}

void Shelf::compile_lines(const RefillProblem& problem) {
  const auto eater_at = positions(eaters_);
  std::map<std::string, std::size_t> container_at, kit_at;
  std::vector<std::size_t> kits;
  for (const Container* container : by_id(problem.containers)) {
    container_at.emplace(container->id, container_count_++);
    kits.push_back(kit_at.emplace(container->kit, kit_at.size()).first->second);
    mass_left_.push_back(container->mass_limit.value_or(kNoLimit));
    volume_left_.push_back(container->volume_limit.value_or(kNoLimit));
  }
  std::map<std::size_t, std::set<int>> days;  // kit * eaters + eater
  for (const RefillLine* source : by_id(problem.lines)) {
    const std::size_t container = container_at.at(source->container);
    Line line{source,
              container,
              kits[container],
              {},
              quantity(source->units),
              std::clamp(source->priority, -kMost, kMost)};
    for (const std::string& eater : source->eaters) {
      line.eaters.push_back(eater_at.at(eater));
      days[line.kit * eaters_.size() + line.eaters.back()].insert(source->day);
    }
    for (const RefillProduct* product : products_) {
      const auto row = static_cast<std::size_t>(accepts_.size() % product_count_) * eaters_.size();
      accepts_.push_back(
          product->no_cook && product->roles.count(source->role) > 0 &&
          std::all_of(line.eaters.begin(), line.eaters.end(), [&](std::size_t eater) {
            return wants(*product, *eaters_[eater], ratings_[row + eater]);
          }));
    }
    worth_[0] += line.units * line.priority;
    worth_[4] += line.units * 4 * static_cast<std::int64_t>(line.eaters.size());
    unmet_.push_back(line.units);
    lines_.push_back(std::move(line));
  }
  on_line_.resize(lines_.size());
  energy_short_.resize(kit_at.size() * eaters_.size(), 0);
  energy_counts_.resize(energy_short_.size(), 0);
  for (const auto& [key, on] : days) {
    const std::int64_t target = quantity(eaters_[key % eaters_.size()]->energy_target);
    if (target == 0) continue;
    energy_counts_[key] = 1;
    energy_short_[key] = target * static_cast<std::int64_t>(on.size());
    worth_[1] += energy_short_[key];
  }
}

void Shelf::compile_sources(const RefillProblem& problem) {
  const auto product_at = positions(products_);
  std::map<std::string, std::size_t> container_at;
  for (const Container* container : by_id(problem.containers))
    container_at.emplace(container->id, container_at.size());
  for (const RefillLot* lot : by_id(problem.lots)) {
    if (lot->last_good_day < problem.hold_until) continue;
    const std::size_t product = product_at.at(lot->product);
    std::size_t container = container_count_;
    const auto lies = container_at.find(lot->container);
    if (lot->in_kit && lies != container_at.end()) container = lies->second;
    sources_.push_back({products_[product], product, lot, nullptr, lot->last_good_day,
                        quantity(lot->units), 1, 0, 0, container});
    if (lot->in_kit) worth_[5] += quantity(lot->units);
  }
  for (const Offer* offer : by_id(problem.offers)) {
    if (offer->last_good_day < problem.hold_until) continue;
    const std::size_t product = product_at.at(offer->product);
    const std::int64_t pack = std::clamp<std::int64_t>(offer->pack_units, 1, kMost);
    bool anyone = false;
    for (std::size_t eater = 0; eater < eaters_.size(); ++eater) {
      anyone = anyone || wants(*products_[product], *eaters_[eater],
                               ratings_[product * eaters_.size() + eater]);
    }
    const std::int64_t price = std::clamp<std::int64_t>(offer->price, 0, kMost * 100);
    const std::int64_t credit = anyone ? price * problem.surplus_credit_percent / (100 * pack) : 0;
    const std::int64_t packs = offer->max_packs ? quantity(*offer->max_packs) : kMost;
    sources_.push_back({products_[product], product, nullptr, offer, offer->last_good_day,
                        packs * pack, pack, price, credit, container_count_});
  }
  of_source_.resize(sources_.size());
  used_.resize(sources_.size(), 0);
}

std::int64_t Shelf::placed(std::size_t source, std::size_t line) const {
  const auto found = on_line_[line].find(source);
  return found == on_line_[line].end() ? 0 : found->second;
}

std::int64_t Shelf::packs(std::size_t source) const {
  return (used_[source] + sources_[source].pack_units - 1) / sources_[source].pack_units;
}

std::int64_t Shelf::without_buying(std::size_t source) const {
  const Source& of = sources_[source];
  return (of.offer != nullptr ? packs(source) * of.pack_units : of.supply) - used_[source];
}

std::int64_t Shelf::available(std::size_t source) const {
  const Source& of = sources_[source];
  std::int64_t units = of.supply - used_[source];
  if (of.offer == nullptr || of.price == 0) return units;
  const std::int64_t affordable = above_zero(budget_left_) / of.price;
  if (affordable < kMost)
    units = std::min(units, without_buying(source) + affordable * of.pack_units);
  return units;
}

std::int64_t Shelf::room(std::size_t source, std::size_t line) const {
  const RefillProduct& product = *sources_[source].product;
  const std::size_t container = lines_[line].container;
  std::int64_t units = kMost;
  if (product.mass > 0) units = std::min(units, above_zero(mass_left_[container]) / product.mass);
  if (product.volume > 0)
    units = std::min(units, above_zero(volume_left_[container]) / product.volume);
  return units;
}

void Shelf::count_energy(const Line& line, const Source& source, std::int64_t units) {
  const std::int64_t share =
      quantity(source.product->kcal) / static_cast<std::int64_t>(line.eaters.size());
  for (const std::size_t eater : line.eaters) {
    const std::size_t key = line.kit * eaters_.size() + eater;
    if (energy_counts_[key] == 0) continue;
    worth_[1] -= above_zero(energy_short_[key]);
    energy_short_[key] -= units * share;
    worth_[1] += above_zero(energy_short_[key]);
  }
}

void Shelf::count_repeats(const Line& line, const Source& source, std::int64_t units) {
  if (line.eaters.size() != 1 || source.product->staple) return;
  std::int64_t& own = own_[{line.kit * eaters_.size() + line.eaters.front(), source.product_index}];
  worth_[2] -= above_zero(own - variety_cap_);
  own += units;
  worth_[2] += above_zero(own - variety_cap_);
}

void Shelf::put(std::size_t source, std::size_t line, std::int64_t units) {
  const Source& from = sources_[source];
  const Line& to = lines_[line];
  const std::int64_t sharers = static_cast<std::int64_t>(to.eaters.size());
  unmet_[line] -= units;
  worth_[0] -= units * to.priority;
  if (sharers > 0) count_energy(to, from, units);
  count_repeats(to, from, units);
  if (from.offer != nullptr) {
    const std::int64_t before = packs(source);
    used_[source] += units;
    const std::int64_t bought = packs(source) - before;
    budget_left_ -= bought * from.price;
    worth_[3] += bought * from.price - from.credit * (bought * from.pack_units - units);
  } else {
    used_[source] += units;
  }
  worth_[4] -= units * 4 * sharers;
  for (const std::size_t eater : to.eaters) {
    worth_[4] += units * (2 - ratings_[from.product_index * eaters_.size() + eater]);
  }
  if (from.lot == nullptr || !from.lot->in_kit) worth_[5] += units;
  if (stays(source, line)) worth_[5] -= units;
  worth_[6] += units * above_zero(date_cap_ - from.last);
  mass_left_[to.container] -= units * from.product->mass;
  volume_left_[to.container] -= units * from.product->volume;
  if ((on_line_[line][source] += units) == 0) on_line_[line].erase(source);
  if ((of_source_[source][line] += units) == 0) of_source_[source].erase(line);
}

bool Shelf::within_limits() const {
  const auto kept = [](std::int64_t left) { return left >= 0; };
  return budget_left_ >= 0 && std::all_of(mass_left_.begin(), mass_left_.end(), kept) &&
         std::all_of(volume_left_.begin(), volume_left_.end(), kept);
}

}  // namespace larderloop::plan
