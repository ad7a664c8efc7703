#include "larderloop/app/look.h"

#include "larderloop/app/placing.h"
#include "larderloop/core/stock.h"

#include <algorithm>
#include <tuple>

namespace larderloop {
namespace {

const Statement* label_of(const LotFacts& facts) {
  return facts.label ? &*facts.label : nullptr;
}

// Days in order, none last.
bool sooner(const std::optional<Day>& a, const std::optional<Day>& b) {
  if (a.has_value() != b.has_value()) return a.has_value();
  return a && *a < *b;
}

Lying lying_of(const Household& household, const LotFacts& facts, const StockKey& at,
               HalfServings amount, Day today) {
  const Food& food = *find_food(household, facts.food);
  return {at, food.key, amount, good_through_at(food, facts, at.opened_on),
          refusals_at(household, food, label_of(facts), at.place, today)};
}

// That people eat no pet food, and pets no people's food, goes without saying.
std::vector<PersonRefusal> everyone_refused(const Household& household, const Food& food,
                                            const Statement* label, Day today) {
  if (food.kind == FoodKind::kWater || food.kind == FoodKind::kThing) return {};
  std::vector<PersonKey> everyone;
  for (const Person& person : household.people) {
    if (!person.retired) everyone.push_back(person.key);
  }
  std::vector<PersonRefusal> found = refusals(household, everyone, food, label, today);
  const auto other = [](const PersonRefusal& each) {
    return each.reason.refusal == Refusal::kWrongSpecies;
  };
  found.erase(std::remove_if(found.begin(), found.end(), other), found.end());
  return found;
}

std::vector<LotRow> rows_of(const Household& household, const Ledger& ledger,
                            const LotFilter& filter, Day today) {
  std::vector<LotRow> rows;
  for (LotFacts& facts : all_lot_facts(household)) {
    const Food& food = *find_food(household, facts.food);
    if (filter.food && facts.food != *filter.food) continue;
    if (filter.kind && food.kind != *filter.kind) continue;
    LotRow row;
    for (auto each = ledger.stock().lower_bound(StockKey{facts.id, PlaceKey(), std::nullopt});
         each != ledger.stock().end() && each->first.lot == facts.id; ++each) {
      if (filter.at && !is_within(household, each->first.place, *filter.at)) continue;
      row.lies.push_back(lying_of(household, facts, each->first, each->second, today));
      row.on_hand += each->second;
      if (sooner(row.lies.back().good_through, row.good_through))
        row.good_through = row.lies.back().good_through;
    }
    if (row.lies.empty() && (!filter.all || filter.at)) continue;
    if (row.lies.empty()) row.good_through = facts.good_through;
    row.facts = std::move(facts);
    rows.push_back(std::move(row));
  }
  std::stable_sort(rows.begin(), rows.end(), [](const LotRow& a, const LotRow& b) {
    return sooner(a.good_through, b.good_through);
  });
  return rows;
}

std::vector<Lying> all_lying(const Household& household, const Ledger& ledger, Day today) {
  std::vector<Lying> all;
  for (const auto& [at, amount] : ledger.stock()) {
    all.push_back(
        lying_of(household, lot_facts(household, *find_lot(household, at.lot)), at, amount,
                            today));
  }
  return all;
}

template <class Thing>
tl::unexpected<Error> missing(const std::string& kind, const Thing& name) {
  return fail(ErrorKind::kNotFound, "there is no " + kind + " '" + name + "'",
              "see them all: larderloop " + kind + " list");
}

}  // namespace

Result<std::vector<LotRow>> list_lots(const Household& household, const LotFilter& filter, Day today) {
  auto ledger = replay(household);
  if (!ledger) return fail(ledger.error());
  return rows_of(household, *ledger, filter, today);
}

Result<LotShow> show_lot(const Household& household, LotId id, Day today) {
  const Lot* lot = find_lot(household, id);
  if (lot == nullptr) return missing("lot", std::to_string(id.value()));
  LotFilter filter;
  filter.food = lot->food;
  filter.all = true;
  auto rows = list_lots(household, filter, today);
  if (!rows) return fail(rows.error());
  LotShow show;
  show.lot = *lot;
  show.row = *std::find_if(rows->begin(), rows->end(),
                           [&](const LotRow& each) { return each.facts.id == id; });
  for (const Reading& reading : household.readings) {
    if (reading.lot == id) show.readings.push_back(reading);
  }
  EntryFilter entries;
  entries.lot = id;
  show.entries = list_entries(household, entries);
  std::reverse(show.entries.begin(), show.entries.end());
  show.must_not =
      everyone_refused(household, *find_food(household, lot->food), label_of(show.row.facts), today);
  return show;
}

Result<FoodShow> show_food(const Household& household, const FoodKey& key, Day today) {
  const Food* food = find_food(household, key);
  if (food == nullptr) return missing("food", key.str());
  LotFilter filter;
  filter.food = key;
  auto rows = list_lots(household, filter, today);
  if (!rows) return fail(rows.error());
  return FoodShow{*food, std::move(*rows),
                  everyone_refused(household, *food, food->label ? &*food->label : nullptr, today)};
}

Result<PlaceShow> show_place(const Household& household, const PlaceKey& key, Day today) {
  const Place* place = find_place(household, key);
  if (place == nullptr) return missing("place", key.str());
  auto ledger = replay(household);
  if (!ledger) return fail(ledger.error());
  PlaceShow show;
  show.place = *place;
  for (const Place& each : household.places) {
    if (each.parent == key) show.inside.push_back(each.key);
  }
  show.eaters = eaters_at(household, key);
  for (Lying& each : all_lying(household, *ledger, today)) {
    if (!is_within(household, each.at.place, key)) continue;
    const Food& food = *find_food(household, each.food);
    const std::int64_t unit = 2 * food.servings;
    const std::int64_t units = (each.amount.halves() + unit - 1) / unit;
    if (food.mass_g)
      show.mass_g += units * *food.mass_g;
    else
      show.unweighed += units;
    show.lies.push_back(std::move(each));
  }
  std::stable_sort(show.lies.begin(), show.lies.end(), [](const Lying& a, const Lying& b) {
    return std::tie(a.at.place, a.food, a.at.lot) < std::tie(b.at.place, b.food, b.at.lot);
  });
  return show;
}

Result<PersonShow> show_person(const Household& household, const PersonKey& key, Day today) {
  const Person* person = find_person(household, key);
  if (person == nullptr) return missing("person", key.str());
  auto ledger = replay(household);
  if (!ledger) return fail(ledger.error());
  PersonShow show;
  show.person = *person;
  for (const Place& place : household.places) {
    const bool named =
        std::any_of(household.menu.begin(), household.menu.end(), [&](const MenuLine& line) {
          const auto eaters = eaters_of(household, line);
          return line.place == place.key &&
                 std::find(eaters.begin(), eaters.end(), key) != eaters.end();
        });
    if (named) show.eats_from.push_back(place.key);
  }
  for (const Food& food : household.foods) {
    if (food.retired || food.kind == FoodKind::kWater || food.kind == FoodKind::kThing) continue;
    const auto reason = why_not(household, *person, food, food.label ? &*food.label : nullptr, today);
    if (reason && reason->refusal != Refusal::kWrongSpecies)
      show.must_not.emplace_back(food.key, *reason);
  }
  for (Lying& each : all_lying(household, *ledger, today)) {
    const bool refused = std::any_of(each.must_not.begin(), each.must_not.end(),
                                     [&](const PersonRefusal& one) { return one.person == key; });
    if (refused) show.wrong.push_back(std::move(each));
  }
  return show;
}

}  // namespace larderloop
