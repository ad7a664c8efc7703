#include "larderloop/core/words.h"
#include "larderloop/render/history.h"
#include "render/plain.h"

#include <fmt/core.h>

#include <algorithm>

namespace larderloop {
namespace {

std::string servings(std::int64_t halves) {
  return fmt::format("{}{} serving{}", halves / 2, halves % 2 == 0 ? "" : ".5",
                     halves == 2 ? "" : "s");
}

// "12.40 EUR (3.00 of it by pack prices; price of 2 servings not known)"
std::string money(const Worth& worth, const std::string& currency) {
  if (worth.amount > 0 && worth.without_price == worth.amount) return "price not known";
  std::string text = money_words(worth.cents, currency);
  std::string notes;
  if (worth.pack_cents > 0) {
    notes = worth.pack_cents == worth.cents
                ? "by pack prices"
                : fmt::format("{} of it by pack prices", money_words(worth.pack_cents, currency));
  }
  if (worth.without_price > 0) {
    notes += fmt::format("{}price of {} not known", notes.empty() ? "" : "; ",
                         servings(worth.without_price));
  }
  return notes.empty() ? text : text + " (" + notes + ")";
}

// "5400 kcal", and what the book does not know.
std::string energy(const Worth& worth) {
  const std::string kcal = fmt::format("{} kcal", worth.kcal);
  if (worth.without_energy == 0) return kcal;
  const std::string unknown = fmt::format("energy of {} not known", servings(worth.without_energy));
  return worth.kcal == 0 ? unknown : kcal + " (" + unknown + ")";
}

std::string days(const Worth& worth) {
  const auto tenths = worth.average_tenths();
  if (!tenths) return "no date known";
  const std::int64_t size = *tenths < 0 ? -*tenths : *tenths;
  return fmt::format("on average {}.{} days {} its date", size / 10, size % 10,
                     *tenths < 0 ? "past" : "before");
}

void line(std::string& text, const char* what, const Worth& worth, const std::string& currency) {
  if (worth.amount == 0) return;
  text += fmt::format("  {:<12} {}, {}\n", what, servings(worth.amount), money(worth, currency));
  text += fmt::format("  {:<12} {}, {}\n", "", energy(worth), days(worth));
}

std::string block(const std::string& title, const WasteRow& row, const std::string& currency) {
  std::string text = title + "\n";
  line(text, "came in", row.bought, currency);
  line(text, "eaten", row.eaten, currency);
  line(text, "given away", row.given_away, currency);
  line(text, "thrown out", row.thrown_out, currency);
  line(text, "lost", row.lost, currency);
  return text;
}

}  // namespace

std::string render_waste_text(const Household& household, const WasteReport& report) {
  if (report.rows.empty()) return "";
  const std::string& currency = household.settings.currency;
  std::string text = "What it was worth\n\n";
  for (const WasteRow& row : report.years) text += block(std::to_string(row.year), row, currency);
  if (report.years.size() > 1) text += block("All years", report.total, currency);
  std::vector<const WasteRow*> thrown;
  for (const WasteRow& row : report.rows) {
    if (row.thrown_out.amount > 0) thrown.push_back(&row);
  }
  if (thrown.empty()) return text;
  // The dearest first, then the most.
  std::stable_sort(thrown.begin(), thrown.end(), [](const WasteRow* a, const WasteRow* b) {
    if (a->thrown_out.cents != b->thrown_out.cents)
      return a->thrown_out.cents > b->thrown_out.cents;
    return a->thrown_out.amount > b->thrown_out.amount;
  });
  text += "\nThrown out, the dearest first\n";
  for (const WasteRow* row : thrown) {
    text += fmt::format("  {} {}: {}, {}\n", row->year, plain::food(household, row->food),
                        servings(row->thrown_out.amount), money(row->thrown_out, currency));
  }

  text += "\nwhat would have avoided it: larderloop history --advice\n";
  return text;
}

}  // namespace larderloop
