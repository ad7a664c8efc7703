#include <fmt/core.h>

#include "larderloop/core/words.h"
#include "larderloop/render/history.h"
#include "render/plain.h"

namespace larderloop {
namespace {

// Half servings as servings: "12", "12.5".
std::string servings(std::int64_t halves) {
  const std::int64_t size = halves < 0 ? -halves : halves;
  return fmt::format("{}{}{}", halves < 0 ? "-" : "", size / 2, size % 2 == 0 ? "" : ".5");
}

std::string row_text(const std::string& name, const HistoryRow& row) {
  const LotTotals& totals = row.totals;
  const std::string waste =
      row.waste_permille ? fmt::format("{}.{} %", *row.waste_permille / 10, *row.waste_permille % 10) : "-";
  return fmt::format("{:<32}{:>6}{:>10}{:>10}{:>10}{:>10}{:>8}{:>9}\n", name, row.year,
                     servings(totals.received + totals.found + totals.counted), servings(totals.eaten),
                     servings(totals.given_away), servings(totals.thrown_out), servings(totals.lost), waste);
}

}  // namespace

std::string render_history_text(const Household& household, const HistoryReport& report) {
  if (report.rows.empty()) return "Nothing is recorded.\n";
  std::string text = "Servings by food and year; waste = thrown out of what was eaten, given away or thrown out\n\n";
  text += fmt::format("{:<32}{:>6}{:>10}{:>10}{:>10}{:>10}{:>8}{:>9}\n", "food", "year", "came in", "eaten", "given", "thrown",
                      "lost", "waste");
  for (const HistoryRow& row : report.rows) {
    std::string name = plain::food(household, row.food);
    if (name.size() > 31) name = name.substr(0, name.rfind(' ', 28)) + "...";
    text += row_text(name, row);
  }
  text += "\n";
  for (const HistoryRow& row : report.years) {
    text += row_text("all foods", row);
    text += fmt::format("{:<32}{:>6} paid {}\n", "", "", money_words(row.paid_cents, household.settings.currency));
  }
  return text;
}

}  // namespace larderloop
