#include <fmt/core.h>

#include "larderloop/app/entering.h"
#include "larderloop/core/words.h"
#include "larderloop/render/plan_text.h"
#include "larderloop/render/cautions.h"
#include "render/plain.h"

namespace larderloop {
namespace {

std::vector<std::string> allergens_in_words(const std::vector<std::string>& keys) {
  std::vector<std::string> words;
  for (const std::string& key : keys) words.push_back(allergen_words(key));
  return words;
}

// What the label has to be looked at for; empty when nobody concerned has an allergy or a diet.
std::vector<std::string> cautions(const BuyLine& line) {
  std::vector<std::string> lines;
  if (!line.must_not_say.empty()) {
    lines.push_back("label must not say: contains " + list_words(allergens_in_words(line.must_not_say)));
  }
  if (!line.nor_may_contain.empty()) {
    lines.push_back("nor: may contain " + list_words(allergens_in_words(line.nor_may_contain)));
  }
  if (!line.must_suit.empty()) {
    std::vector<std::string> diets;
    for (const Diet diet : line.must_suit) {
      std::string name(diet_name(diet));
      for (char& letter : name) letter = letter == '_' ? '-' : letter;
      diets.push_back(std::move(name));
    }
    lines.push_back("must be " + list_words(diets));
  }
  return lines;
}

std::string line_text(const Household& household, const BuyLine& line) {
  const Food& food = *find_food(household, line.food);
  std::string text;
  if (line.packs > 0) {
    text = fmt::format("  [ ] {} {} {}\n", line.packs,
                       line.pack.units == 1 ? plural(food.unit, line.packs) : plural("pack", line.packs) +
                           fmt::format(" of {} {}", line.pack.units, plural(food.unit, line.pack.units)),
                       food.name);
    text += fmt::format("      {} needed, {}\n", line.ml > 0 ? plain::litres(line.ml)
                                                             : fmt::format("{} {}", line.units, plural(food.unit, line.units)),
                        money_words(line.packs * line.pack.price_cents, household.settings.currency));
  } else {
    text = fmt::format("  [ ] {} {} {}\n      no pack and price known\n", line.units, plural(food.unit, line.units), food.name);
  }
  if (line.kits.empty()) {
    return text + "      for the pantry\n";
  }
  text += fmt::format("      good through {} at least\n", plain_day(line.good_through_at_least));
  text += fmt::format("      for {}{}\n", line.for_people.empty() ? "" : plain::people(household, line.for_people) + ", ",
                      plain::places(household, line.kits));
  for (const std::string& caution : cautions(line)) text += "      " + caution + "\n";
  return text;
}

}  // namespace

std::string render_shop_text(const Household& household, const ShopList& list) {
  std::string text = "To buy";
  if (list.shop_by) text += " by " + plain_day(*list.shop_by);
  text += "\n";
  if (list.groups.empty() && list.unmet.empty()) return "Nothing to buy: the kits are full.\n";
  if (!list.groups.empty()) text += render_cautions({Caution::kPurchase});
  for (const ShopGroup& group : list.groups) {
    text += "\n" + (group.shop.empty() ? std::string("Any shop") : group.shop);
    if (group.cost_cents > 0) text += ", about " + money_words(group.cost_cents, household.settings.currency);
    text += "\n";
    for (const BuyLine& line : group.lines) {
      text += line_text(household, line);
      if (const BuyNote* note = open_buy_note(household, line.food)) text += "      " + buy_note_words(household, *note) + "\n";
    }
  }
  if (!list.unmet.empty()) {
    text += "\nStill missing: nothing the book knows fits\n";
    for (const Unmet& each : list.unmet) {
      text += fmt::format("  {}: {}\n      {}\n", plain::place(household, each.place),
                          each.ml > 0 ? plain::litres(each.ml) + " of water" : plain::menu_line(household, each.line),
                          each.why);
    }
  }
  if (list.cost_cents > 0) text += fmt::format("\nTogether about {}\n", money_words(list.cost_cents, household.settings.currency));
  return text;
}

}  // namespace larderloop
