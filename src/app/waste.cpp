#include "larderloop/app/waste.h"

#include "app/waste_values.h"
#include "larderloop/core/stock.h"

#include <map>
#include <utility>

namespace larderloop {
namespace {

Worth* part_of(WasteRow& row, EntryKind kind) {
  switch (kind) {
    case EntryKind::kReceived:
      return &row.bought;
    case EntryKind::kEaten:
      return &row.eaten;
    case EntryKind::kGivenAway:
      return &row.given_away;
    case EntryKind::kThrownOut:
      return &row.thrown_out;
    case EntryKind::kLost:
      return &row.lost;
    case EntryKind::kFound:
    case EntryKind::kMoved:
    case EntryKind::kOpened:
    case EntryKind::kCounted:
    case EntryKind::kCorrected:
      break;
  }
  return nullptr;
}

}  // namespace

std::optional<std::int64_t> Worth::average_tenths() const {
  if (dated == 0) return std::nullopt;
  const std::int64_t size = days_left < 0 ? -days_left : days_left;
  const std::int64_t tenths = (20 * size + dated) / (2 * dated);
  return days_left < 0 ? -tenths : tenths;
}

void Worth::add(const Worth& other) {
  amount += other.amount;
  cents += other.cents;
  pack_cents += other.pack_cents;
  without_price += other.without_price;
  kcal += other.kcal;
  without_energy += other.without_energy;
  dated += other.dated;
  days_left += other.days_left;
}

void WasteRow::add(const WasteRow& other) {
  bought.add(other.bought);
  eaten.add(other.eaten);
  given_away.add(other.given_away);
  thrown_out.add(other.thrown_out);
  lost.add(other.lost);
}

Result<WasteReport> make_waste(const Household& household, std::optional<int> year,
                               const std::optional<FoodKey>& food) {
  if (const auto ledger = replay(household); !ledger) return fail(ledger.error());
  std::map<std::pair<FoodKey, int>, WasteRow> rows;
  for (const ValuedEntry& valued : value_entries(household)) {
    const int entry_year = year_of(valued.entry->on);
    if ((food && valued.food->key != *food) || (year && entry_year != *year)) continue;
    WasteRow ignored;
    if (part_of(ignored, valued.entry->kind) == nullptr) continue;
    WasteRow& row = rows[{valued.food->key, entry_year}];
    row.food = valued.food->key;
    row.year = entry_year;
    part_of(row, valued.entry->kind)->add(valued.worth);
  }
  WasteReport report;
  std::map<int, WasteRow> years;
  for (const auto& [key, row] : rows) {
    WasteRow& sum = years[row.year];
    sum.year = row.year;
    sum.add(row);
    report.total.add(row);
    report.rows.push_back(row);
  }
  for (const auto& [each, row] : years) report.years.push_back(row);
  return report;
}

}  // namespace larderloop
