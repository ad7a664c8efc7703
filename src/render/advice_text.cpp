#include "larderloop/core/words.h"
#include "larderloop/render/history.h"
#include "render/plain.h"

#include <fmt/core.h>

namespace larderloop {
namespace {

std::string amount(const Household& household, const FoodKey& food, std::int64_t halves) {
  return units_words(*find_food(household, food), HalfServings(halves));
}

std::string cost(const Household& household, std::int64_t cents, bool known) {
  return known ? ", " + money_words(cents, household.settings.currency) : ", price not known";
}

std::string change_words(const Household& household, const FoodKey& key, const Remedy& remedy) {
  const Food& food = *find_food(household, key);
  switch (remedy.kind) {
    case RemedyKind::kPack: {
      std::string text =
          remedy.units == 1
              ? fmt::format("buy it singly, not {} at once", *remedy.units_before)
              : fmt::format("buy packs of {}, not of {}", remedy.units, *remedy.units_before);
      if (!remedy.known) text += "; the book knows no such pack, so look whether a shop has one";
      return text;
    }
    case RemedyKind::kPar:
      if (remedy.units == 0) return "keep none of it in the pantry";
      return fmt::format(
          "keep at most {} {} in the pantry ({}): larderloop food change {} --par {}", remedy.units,
          plural(food.unit, remedy.units),
          remedy.units_before ? fmt::format("the par level is {} now", *remedy.units_before)
                              : "there is no par level now",
          key.str(), remedy.units);
    case RemedyKind::kFood:
      return fmt::format(
          "take {} in its place: {} may have it, going by the label last read; "
          "read the label of every package",
          plain::food(household, remedy.food), plain::people(household, remedy.people));
    case RemedyKind::kReview:
      return fmt::format("review {} {} {} earlier: larderloop review rule {}",
                         plain::place(household, remedy.kit), remedy.weeks,
                         plural("week", remedy.weeks), remedy.kit.str());
  }
  return "";
}

}  // namespace

std::string render_advice_text(const Household& household, const std::vector<Advice>& advice) {
  if (advice.empty()) return "Nothing was thrown out.\n";
  std::string text = "Thrown out most, and the one change that would have avoided the most of it\n";
  for (const Advice& each : advice) {
    const bool priced = each.wasted.without_price < each.wasted.amount;
    text += fmt::format("\n{}\n  thrown out: {}{}\n", plain::food(household, each.food),
                        amount(household, each.food, each.wasted.amount),
                        cost(household, each.wasted.cents, priced));
    if (!each.best) {
      text += "  No single change of pack, par level, food or review date would have helped.\n";
      continue;
    }
    text += fmt::format("  change:     {}\n", change_words(household, each.food, *each.best));
    text += fmt::format("  avoided:    {}{}\n", amount(household, each.food, each.best->avoided),
                        cost(household, each.best->cents, priced));
  }
  text +=
      "\nThis replays the record as if everybody had eaten as they did; it says what would have\n"
      "been, not what will be. What is assumed is in docs/history.md.\n";
  return text;
}

}  // namespace larderloop
