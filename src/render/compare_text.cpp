#include "larderloop/core/words.h"
#include "larderloop/render/plan_text.h"
#include "larderloop/render/table.h"

#include <fmt/core.h>

#include <functional>

namespace larderloop {
namespace {

std::string servings(HalfServings amount) {
  return fmt::format("{}{}", amount.halves() / 2, amount.halves() % 2 == 0 ? "" : ".5");
}

std::string indented(const std::string& lines) {
  std::string text;
  bool start = true;
  for (const char each : lines) {
    if (start && each != '\n') text += "  ";
    text += each;
    start = each == '\n';
  }
  return text;
}

using Cell = std::function<std::string(const EatingTally&)>;

void row(Table& table, const Comparison& all, const std::string& name, const Cell& cell) {
  table.add({name, cell(all.plan), cell(all.allowed), cell(all.plain)});
}

void not_eaten_rows(Table& table, const Comparison& all, const std::string& name,
                    NotEaten EatingTally::*part) {
  const auto any = [&](HalfServings NotEaten::*missing) {
    return (all.plan.*part.*missing).halves() + (all.allowed.*part.*missing).halves() +
               (all.plain.*part.*missing).halves() >
           0;
  };
  row(table, all, name + ", servings",
      [&](const EatingTally& each) { return servings((each.*part).amount); });
  row(table, all, "  units never opened",
      [&](const EatingTally& each) { return std::to_string((each.*part).units); });
  row(table, all, "  worth",
      [&](const EatingTally& each) { return money_words((each.*part).cents, all.currency); });
  if (any(&NotEaten::without_price)) {
    row(table, all, "  servings without a price",
        [&](const EatingTally& each) { return servings((each.*part).without_price); });
  }
  row(table, all, "  energy, kcal",
      [&](const EatingTally& each) { return std::to_string((each.*part).kcal); });
  if (any(&NotEaten::without_energy)) {
    row(table, all, "  servings without a known energy",
        [&](const EatingTally& each) { return servings((each.*part).without_energy); });
  }
}

}  // namespace

std::string render_compare_text(const EatDown& eat) {
  if (!eat.comparison) return {};
  const Comparison& all = *eat.comparison;
  Table table({{"", Align::kLeft},
               {"this plan", Align::kRight},
               {"allowed only", Align::kRight},
               {"by date alone", Align::kRight}});
  row(table, all, "handed out, servings",
      [](const EatingTally& each) { return servings(each.handed_out); });
  row(table, all, "  to who must not have it",
      [](const EatingTally& each) { return servings(each.must_not); });
  row(table, all, "  to who will not eat it",
      [](const EatingTally& each) { return servings(each.will_not); });
  row(table, all, "  beyond two of a food a week",
      [](const EatingTally& each) { return servings(each.repeats); });
  row(table, all, "rules broken",
      [](const EatingTally& each) { return std::to_string(each.broken_rules); });
  not_eaten_rows(table, all, "thrown away", &EatingTally::thrown_away);
  not_eaten_rows(table, all, "given away", &EatingTally::given_away);
  std::string text =
      fmt::format("Beside plain date order, until {}\n", plain_day(eat.until - Days(1)));
  text +=
      "  By date alone: at each meal everyone is handed what has the soonest date, whoever they "
      "are.\n  Allowed only: the same, but only what each may have, and no more in a week than "
      "they take.\n\n";
  text += indented(table.text());
  Table kits({{"To fill the kits", Align::kLeft},
              {"this plan", Align::kRight},
              {"greedy refill", Align::kRight}});
  kits.add({"packs to buy", std::to_string(all.bought.packs), std::to_string(all.greedy.packs)});
  kits.add({"  for about", money_words(all.bought.cents, all.currency),
            money_words(all.greedy.cents, all.currency)});
  kits.add({"units that stay empty", std::to_string(all.bought.unmet),
            std::to_string(all.greedy.unmet)});
  text += "\n" + indented(kits.text());
  if (all.plan.broken_rules == 0) text += "\n  this plan breaks no rule (checked independently)\n";
  if (!all.examples.empty()) text += "  by date alone, for example:\n";
  for (const std::string& example : all.examples) text += "    " + example + "\n";
  return text;
}

}  // namespace larderloop
