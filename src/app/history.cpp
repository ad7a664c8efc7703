#include "larderloop/app/history.h"

#include <algorithm>
#include <map>
#include <set>

namespace larderloop {
namespace {

void add(LotTotals& totals, const Entry& entry) {
  const std::int64_t amount = entry.amount.halves();
  switch (entry.kind) {
    case EntryKind::kReceived:
      totals.received += amount;
      break;
    case EntryKind::kFound:
      totals.found += amount;
      break;
    case EntryKind::kCounted:
      totals.counted += entry.change;
      break;
    case EntryKind::kEaten:
      totals.eaten += amount;
      break;
    case EntryKind::kGivenAway:
      totals.given_away += amount;
      break;
    case EntryKind::kThrownOut:
      totals.thrown_out += amount;
      break;
    case EntryKind::kLost:
      totals.lost += amount;
      break;
    case EntryKind::kMoved:
    case EntryKind::kOpened:
    case EntryKind::kCorrected:
      break;
  }
}

void add(LotTotals& sum, const LotTotals& other) {
  sum.received += other.received;
  sum.found += other.found;
  sum.counted += other.counted;
  sum.eaten += other.eaten;
  sum.given_away += other.given_away;
  sum.thrown_out += other.thrown_out;
  sum.lost += other.lost;
}

// Thrown out per thousand of what left stock and is known to have; lost is nobody's guess.
std::optional<int> waste_of(const LotTotals& totals) {
  const std::int64_t left = totals.eaten + totals.given_away + totals.thrown_out;
  if (left <= 0) return std::nullopt;
  return static_cast<int>((1000 * totals.thrown_out + left / 2) / left);
}

}  // namespace

Result<HistoryReport> make_history(const Household& household, std::optional<int> year, std::optional<FoodKey> food) {
  const auto ledger = replay(household);
  if (!ledger) return fail(ledger.error());
  std::map<LotId, FoodKey> food_of;
  for (const Lot& lot : household.lots) food_of[lot.id] = lot.food;
  std::set<EntryId> corrected;
  for (const Entry& entry : household.entries) {
    if (entry.kind == EntryKind::kCorrected) corrected.insert(entry.corrects);
  }

  std::map<std::pair<FoodKey, int>, HistoryRow> rows;
  for (const Entry& entry : household.entries) {
    if (entry.kind == EntryKind::kCorrected || corrected.count(entry.id) > 0) continue;
    const FoodKey& key = food_of.at(entry.at.lot);
    const int entry_year = year_of(entry.on);
    if ((food && key != *food) || (year && entry_year != *year)) continue;
    HistoryRow& row = rows[{key, entry_year}];
    row.food = key;
    row.year = entry_year;
    add(row.totals, entry);
    row.paid_cents += entry.paid_cents.value_or(0);
  }

  HistoryReport report;
  std::map<int, HistoryRow> years;
  for (auto& [key, row] : rows) {
    if (row.totals == LotTotals{} && row.paid_cents == 0) continue;  // only moved or opened that year
    HistoryRow& sum = years[row.year];
    sum.year = row.year;
    add(sum.totals, row.totals);
    sum.paid_cents += row.paid_cents;
    row.waste_permille = waste_of(row.totals);
    report.rows.push_back(row);
  }
  for (auto& [each, row] : years) {
    row.waste_permille = waste_of(row.totals);
    report.years.push_back(row);
  }
  return report;
}

}  // namespace larderloop
