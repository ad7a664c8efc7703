// The card for whoever opens the box in an emergency and does not know the program.
#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <set>

#include "app/paper_kit.h"
#include "app/paper_parts.h"
#include "app/plain_names.h"
#include "larderloop/core/words.h"

namespace larderloop::paper {
namespace {

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += (text.empty() ? "" : "\n") + line;
  return text;
}

std::string use_note(const Food& food) {
  std::string text;
  if (food.needs_opener) text += ", needs a can opener";
  if (food.needs_water_ml > 0) text += fmt::format(", add {} ml of drinking water a {}", food.needs_water_ml, food.unit);
  return text;
}

std::string what_of(const Household& household, const LineNow& now) {
  std::vector<std::string> lines;
  for (const Dealt& dealt : now.dealt) {
    const Food& food = *dealt.position->food;
    std::string line = fmt::format("{} {} {}{}", dealt.units, plural(food.unit, dealt.units), food.name, use_note(food));
    if (dealt.position->facts->label == std::nullopt) line += "\nWARNING: nobody has read this label, read it first";
    lines.push_back(std::move(line));
  }
  if (now.missing > 0) {
    const std::string wanted = now.line->role ? std::string(role_name(*now.line->role)) : food_words(household, now.line->food);
    lines.push_back(fmt::format("NOT IN THE BAG: {} x {}", now.missing, wanted == "pet_meal" ? "pet meal" : wanted));
  }
  return joined(lines);
}

std::string through_of(const LineNow& now) {
  std::optional<Day> soonest;
  for (const Dealt& dealt : now.dealt) {
    if (dealt.position->good_through && (!soonest || *dealt.position->good_through < *soonest)) soonest = dealt.position->good_through;
  }
  return soonest ? plain_day(*soonest) : std::string();
}

// Lines of one day, meal, place and people share a row.
PaperTable day_table(const Household& household, const KitNow& now, int day) {
  PaperTable table;
  table.title = day == 0 ? "Any day" : fmt::format("Day {}", day);
  table.columns = {{"Meal", 8}, {"Who", 9}, {"What", 26}, {"From", 11}, {"Good through", 13}};
  const LineNow* last = nullptr;
  for (const LineNow& each : now.lines) {
    if (each.line->day != day) continue;
    const std::string what = what_of(household, each);
    const std::string place = place_words(household, each.line->place);
    const bool same = last != nullptr && last->line->meal == each.line->meal && last->eaters == each.eaters && last->line->place == each.line->place;
    if (same) {
      std::vector<PaperCell>& row = table.rows.back();
      row[2].text += "\n" + what;
      continue;
    }
    table.rows.push_back({{each.line->meal ? meal_words(*each.line->meal) : "any meal", false, true}, {who(household, each.eaters), false, true}, {what}, {place}, {through_of(each)}});
    last = &each;
  }
  return table;
}

// The soonest date of a row is that of all its lines.
void fill_dates(const KitNow& now, int day, PaperTable& table) {
  std::size_t row = 0;
  const LineNow* last = nullptr;
  std::set<Day> good_through;  // of what stands in the row
  for (const LineNow& each : now.lines) {
    if (each.line->day != day) continue;
    const bool same = last != nullptr && last->line->meal == each.line->meal && last->eaters == each.eaters && last->line->place == each.line->place;
    if (!same) {
      if (last != nullptr) row += 1;
      good_through.clear();
      last = &each;
    }
    for (const Dealt& dealt : each.dealt) {
      if (dealt.position->good_through) good_through.insert(*dealt.position->good_through);
    }
    table.rows[row][4].text = good_through.empty() ? "" : plain_day(*good_through.begin());
  }
}

PaperTable people_table(const Household& household, const PlaceKey& kit, bool private_) {
  std::map<PersonKey, std::pair<std::set<std::string>, std::int64_t>> found;  // bags, water
  for (const MenuLine& line : household.menu) {
    if (kit_of(household, line.place) != kit) continue;
    const std::vector<PersonKey> eaters = eaters_of(household, line);
    const bool water = wants_water(household, line);
    for (const PersonKey& person : eaters) {
      if (!water) found[person].first.insert(place_words(household, line.place));
      if (water && !line.everyone && eaters.size() == 1) found[person].second += line.ml;
      if (water && (line.everyone || eaters.size() != 1)) found[person];
    }
  }
  PaperTable table;
  table.title = "Who is who, and who eats from what";
  table.columns = private_ ? std::vector<PaperColumn>{{"Who", 10}, {"Eats from", 30}, {"Drinking water", 10}}
                           : std::vector<PaperColumn>{{"Who", 10}, {"Must not have", 25}, {"Eats from", 18}, {"Drinking water", 13}};
  for (const auto& [key, about] : found) {
    const Person& person = *find_person(household, key);
    const std::string name = person.is_human() ? person.name : person.name + " (" + person.species + ")";
    const std::string bags = joined({about.first.begin(), about.first.end()});
    const std::string water = about.second > 0 ? litres(about.second) + " in all" : "from what is there";
    const std::string avoid = avoids(person);
    if (private_) {
      table.rows.push_back({{name, false, true}, {bags}, {water}});
    } else {
      table.rows.push_back({{name, false, true}, {avoid.empty() ? "nothing known" : avoid, false, !avoid.empty()}, {bags}, {water}});
    }
  }
  return table;
}

std::string water_words(const BookView& view, const PlaceKey& kit) {
  const Household& household = *view.household;
  std::map<PlaceKey, std::int64_t> lies;
  std::int64_t wanted = 0;
  for (const Position& position : view.positions) {
    if (position.food->kind != FoodKind::kWater || *position.kit != kit) continue;
    lies[position.at.place] += position.amount.whole_units(position.food->servings) * position.food->volume_ml.value_or(0);
  }
  for (const MenuLine& line : household.menu) {
    if (kit_of(household, line.place) == kit && wants_water(household, line)) wanted += line.ml;
  }
  std::string text = "Drinking water: ";
  if (lies.empty()) {
    text += wanted > 0 ? "NONE IN THE KIT" : "none is kept in this kit";
  } else {
    std::vector<std::string> each;
    for (const auto& [place, ml] : lies) each.push_back(litres(ml) + " in " + place_words(household, place));
    text += list_words(each);
  }
  if (wanted > 0) text += "; " + litres(wanted) + " are meant for everybody and all days";
  return text + (lies.empty() ? "." : ". Food that needs water takes it from there.");
}

Result<PaperPage> card(const BookView& view, const PlaceKey& kit, bool private_, Day today) {
  const Household& household = *view.household;
  const KitNow now = kit_now(view, kit, today);
  PaperPage page;
  page.title = "Menu card: " + place_words(household, kit);
  page.subtitle = "What to eat from this kit when you had to leave home. As of " + plain_day(today) + ".";
  // What whoever eats has to know now; the rest stands at the end of the card.
  add_cautions({Caution::kLabel, Caution::kOpened, Caution::kContainers}, page);
  if (private_) page.blocks.emplace_back(PaperText{"Not everything here is for everyone: each eats what stands beside their name. What anybody must not have is not on this card; ask first.", true});
  page.blocks.emplace_back(PaperText{water_words(view, kit), true});
  page.blocks.emplace_back(people_table(household, kit, private_));
  for (const Beside& each : now.beside) {
    if (!each.warned()) continue;
    const Position& position = *each.position;
    std::string text = fmt::format("{}, {}, lot {}", place_words(household, position.at.place), units_words(*position.food, each.amount) + " " + position.food->name,
                                   position.at.lot.value());
    if (!each.state.empty()) text += "; " + each.state;
    if (const std::string refused = not_for(household, each.refusals, private_); !refused.empty()) text += "; " + refused;
    page.blocks.emplace_back(PaperWarning{text});
  }
  std::set<int> days;
  for (const LineNow& line : now.lines) days.insert(line.line->day);
  const auto add_day = [&](int day) {
    PaperTable table = day_table(household, now, day);
    fill_dates(now, day, table);
    page.blocks.emplace_back(std::move(table));
  };
  for (const int day : days) {
    if (day > 0) add_day(day);
  }
  if (days.count(0) > 0) add_day(0);
  PaperTable more{"Also in the kit, on no menu", {{"From", 13}, {"What", 26}, {"For", 20}}, {}};
  for (const Beside& each : now.beside) {
    if (each.warned()) continue;
    const Position& position = *each.position;
    const std::vector<PersonKey> named = named_at(household, position.at.place);
    const std::string refused = who_refuses(household, each.refusals);
    more.rows.push_back({{place_words(household, position.at.place)},
                         {units_words(*position.food, each.amount) + " " + position.food->name + use_note(*position.food)},
                         {"who eats from there: " + (named.empty() ? "everyone" : who(household, named)) + (refused.empty() ? "" : "\n" + refused)}});
  }
  if (!more.rows.empty()) page.blocks.emplace_back(std::move(more));
  page.blocks.emplace_back(PaperHeading{"Take care"});
  if (concerns_formula(household, kit, today)) add_cautions({Caution::kFormula}, page);
  add_cautions({Caution::kSpoiled, Caution::kFlood, Caution::kIll}, page);
  return page;
}

}  // namespace

Result<PaperDocument> menu_cards(const Household& household, const PaperRequest& request, PaperDocument document, Day today) {
  auto kits = kits_of(household, request);
  if (!kits) return fail(kits.error());
  auto view = view_book(household, today);
  if (!view) return fail(view.error());
  for (const PlaceKey& kit : *kits) {
    const bool menu = std::any_of(household.menu.begin(), household.menu.end(), [&](const MenuLine& line) { return kit_of(household, line.place) == kit; });
    if (!menu) continue;
    auto page = card(*view, kit, request.private_, today);
    if (!page) return fail(page.error());
    document.pages.push_back(std::move(*page));
  }
  if (document.pages.empty()) {
    return fail(ErrorKind::kBadData, "there is no kit menu to print", "write the menu into the household document (\"menu\"): larderloop export -o household.json");
  }
  document.title = "Menu card";
  return document;
}

}  // namespace larderloop::paper
