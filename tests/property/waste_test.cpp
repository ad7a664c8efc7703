// The sums of money, energy and days equal the record: made here once more, lot by lot, from the
// entries alone.
#include "larderloop/app/waste.h"

#include "larderloop/app/advice.h"
#include "larderloop/core/lot.h"
#include "support/household_gen.h"
#include "support/raw_predicate.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <set>

namespace larderloop {
namespace {

Worth thrown_and_all(const WasteRow& row) {
  Worth sum = row.eaten;
  sum.add(row.given_away);
  sum.add(row.thrown_out);
  sum.add(row.lost);
  return sum;
}

RC_GTEST_PROP(Waste, SumsEqualTheRecord, ()) {
  const auto seed = *rc::gen::arbitrary<std::uint64_t>();
  const Household home = generate_household(seed, *rc::gen::inRange(0, 40));
  std::set<EntryId> corrected;
  for (const Entry& entry : home.entries) {
    if (entry.kind == EntryKind::kCorrected) corrected.insert(entry.corrects);
  }
  std::int64_t bought = 0, left = 0, paid = 0, days = 0, dated = 0;
  double cents = 0, kcal = 0;
  std::int64_t no_price = 0, no_energy = 0, lots_left = 0;
  for (const Lot& lot : home.lots) {
    const Food& food = *find_food(home, lot.food);
    const LotFacts facts = lot_facts(home, lot);
    std::int64_t lot_paid = 0, paid_for = 0, lot_left = 0;
    for (const Entry& entry : home.entries) {
      if (entry.at.lot != lot.id || corrected.count(entry.id) > 0) continue;
      const std::int64_t halves = entry.amount.halves();
      if (entry.kind == EntryKind::kReceived) {
        bought += halves;
        if (entry.paid_cents) {
          lot_paid += *entry.paid_cents;
          paid_for += halves;
        }
      }
      if (entry.kind == EntryKind::kEaten || entry.kind == EntryKind::kGivenAway ||
          entry.kind == EntryKind::kThrownOut || entry.kind == EntryKind::kLost) {
        lot_left += halves;
        if (facts.good_through) {
          days += halves * days_between(entry.on, *facts.good_through);
          dated += halves;
        }
      }
    }
    paid += lot_paid;
    left += lot_left;
    if (lot_left > 0) ++lots_left;
    double price = -1;
    for (const Pack& pack : food.packs) {
      const double each = static_cast<double>(pack.price_cents) /
                          static_cast<double>(pack.units * 2 * food.servings);
      if (price < 0 || each < price) price = each;
    }
    if (paid_for > 0) price = static_cast<double>(lot_paid) / static_cast<double>(paid_for);
    if (price < 0)
      no_price += lot_left;
    else
      cents += price * static_cast<double>(lot_left);
    if (food.energy_kcal) {
      kcal += static_cast<double>(*food.energy_kcal * lot_left) /
              static_cast<double>(2 * food.servings);
    } else if (food.kind != FoodKind::kWater && food.kind != FoodKind::kThing) {
      no_energy += lot_left;
    }
  }
  const auto report = make_waste(home, std::nullopt, std::nullopt);
  RC_ASSERT(report.has_value());
  const Worth all = thrown_and_all(report->total);
  RC_ASSERT(report->total.bought.amount == bought);
  RC_ASSERT(all.amount == left);
  RC_ASSERT(all.without_price == no_price);
  RC_ASSERT(all.without_energy == no_energy);
  RC_ASSERT(all.dated == dated);
  RC_ASSERT(all.days_left == days);
  RC_ASSERT(report->total.bought.cents >= paid);
  // Half a cent and half a kcal a lot: each lot's parts sum up to the rounded whole.
  RC_ASSERT(std::abs(static_cast<double>(all.cents) - cents) <=
            0.5 * static_cast<double>(lots_left) + 1e-6);
  RC_ASSERT(std::abs(static_cast<double>(all.kcal) - kcal) <=
            0.5 * static_cast<double>(lots_left) + 1e-6);

  // Rows, years and the parts asked for by themselves say the same.
  WasteRow by_row, by_year;
  for (const WasteRow& row : report->rows) {
    by_row.add(row);
    const auto one = make_waste(home, row.year, row.food);
    RC_ASSERT(one.has_value());
    RC_ASSERT(one->total.thrown_out == row.thrown_out);
    RC_ASSERT(one->total.eaten == row.eaten);
  }
  for (const WasteRow& row : report->years) by_year.add(row);
  RC_ASSERT(thrown_and_all(by_row) == all);
  RC_ASSERT(thrown_and_all(by_year) == all);
  RC_ASSERT(by_row.bought == report->total.bought);
}

// No change avoids more than was thrown out, and no other food is named for somebody who must not
// have it.
RC_GTEST_PROP(Waste, NoMoreIsAvoidedThanWasWasted, ()) {
  const auto seed = *rc::gen::arbitrary<std::uint64_t>();
  Household home = generate_household(seed, *rc::gen::inRange(0, 60));
  // Generated households eat more than they throw out: what was lost is thrown out here.
  for (Entry& entry : home.entries) {
    if (entry.kind == EntryKind::kLost || entry.kind == EntryKind::kGivenAway)
      entry.kind = EntryKind::kThrownOut;
  }
  const Day today = parse_iso_day("2026-11-25").value();
  const auto waste = make_waste(home, std::nullopt, std::nullopt);
  RC_ASSERT(waste.has_value());
  const auto advice = make_advice(home, std::nullopt, std::nullopt, today);
  RC_ASSERT(advice.has_value());
  RC_ASSERT(advice->size() <= kMostAdvised);
  std::int64_t remedies = 0;
  for (const Advice& each : *advice) {
    Worth thrown;
    for (const WasteRow& row : waste->rows) {
      if (row.food == each.food) thrown.add(row.thrown_out);
    }
    RC_ASSERT(each.wasted == thrown);
    if (!each.best) continue;
    ++remedies;
    RC_ASSERT(each.best->avoided > 0);
    RC_ASSERT(each.best->avoided <= thrown.amount);
    RC_ASSERT(each.best->cents >= 0);
    RC_ASSERT(each.best->cents <= thrown.cents);
    if (each.best->kind != RemedyKind::kFood) continue;
    for (const PersonKey& person : each.best->people) {
      RC_ASSERT(raw::forbidden_pack(home, person, each.best->food, today).empty());
    }
  }
  RC_CLASSIFY(remedies > 0, "some change helps");
}

}  // namespace
}  // namespace larderloop
