#include "larderloop/app/paper.h"

#include <fmt/core.h>

#include <algorithm>

#include "app/book_view.h"
#include "app/paper_parts.h"
#include "app/plain_names.h"
#include "larderloop/app/placing.h"
#include "larderloop/app/shop.h"
#include "larderloop/core/words.h"

namespace larderloop {
namespace paper {
namespace {

std::string leave_words(const SheetLine& line) {
  switch (line.reason) {
    case LeaveReason::kTooOld:
      return line.good_through ? "TAKE OUT: will not last" : "TAKE OUT: nobody knows how long it keeps";
    case LeaveReason::kPast:
      return "TAKE OUT: past its date";
    case LeaveReason::kRecalled:
      return "SET ASIDE, do not eat: recalled";
    case LeaveReason::kDoubtful:
      return "SET ASIDE, do not eat: doubtful";
    case LeaveReason::kDamaged:
      return "THROW OUT: damaged";
    case LeaveReason::kMissing:
      return "missing";
  }
  return {};
}

std::vector<PaperCell> sheet_row(const Household& household, const SheetLine& line, const PlaceKey& place, bool private_, Day today) {
  const Food& food = *find_food(household, line.food);
  const LotFacts facts = lot_facts(household, *find_lot(household, line.at.lot));
  std::string todo;
  if (line.leaves) todo = leave_words(line);
  const std::string refused = not_for(household, refusals_at(household, food, effective_label(facts), place, today), private_);
  if (!refused.empty()) todo += (todo.empty() ? "WARNING: " : "\nWARNING: ") + refused;
  if (!line.label_read && food.kind != FoodKind::kThing && food.kind != FoodKind::kWater) todo += todo.empty() ? "read the label" : "\nread the label";
  if (line.marked) todo += (todo.empty() ? "marked: " : "\nmarked: ") + std::string(mark_what_name(*line.marked));
  std::string what = units_words(food, line.amount) + " " + food.name;
  if (line.at.opened_on) what += "\nopened " + plain_day(*line.at.opened_on);
  return {{what, true},
          {std::to_string(line.at.lot.value())},
          {line.mark.text.empty() ? "no date printed" : line.mark.text},
          {line.good_through ? plain_day(*line.good_through) : "no date known"},
          {todo, false, !todo.empty()},
          {"", true},
          {"", true}};
}

}  // namespace

Result<PaperDocument> review_sheets(const Household& household, const PaperRequest& request, PaperDocument document, Day today) {
  auto kits = kits_of(household, request);
  if (!kits) return fail(kits.error());
  document.title = "Review sheet";
  for (const PlaceKey& kit : *kits) {
    auto sheet = review_sheet(household, kit, today);
    if (!sheet) return fail(sheet.error());
    if (sheet->places.empty()) continue;
    PaperPage page;
    page.title = "Walk through: " + place_words(household, kit);
    const ReviewSlot& slot = sheet->schedule.current ? *sheet->schedule.current : sheet->schedule.next;
    page.subtitle = "Review of " + plain_day(slot.day) + ". As of " + plain_day(today) + ". What stays must be good through " + plain_day(sheet->schedule.hold_until) + ".";
    page.blocks.emplace_back(PaperText{"Bag by bag: tick what is there and sound. Compare the printed date and read the label; correct on this sheet what differs, then write it into the book.", false});
    page.blocks.emplace_back(PaperText{std::string(caution_words(Caution::kContainers)) + " The label and your local food authority decide, not this sheet.", false});
    add_cautions({Caution::kSpoiled}, page);
    if (concerns_formula(household, kit, today)) add_cautions({Caution::kFormula}, page);
    for (const SheetPlace& place : sheet->places) {
      const std::vector<PersonKey> people = named_at(household, place.place);
      PaperTable table;
      table.title = place_words(household, place.place);
      if (!people.empty()) table.title += " (" + who(household, people) + ")";
      table.columns = {{"There", 24}, {"Lot", 5}, {"Printed", 12}, {"Good through", 13}, {"To do", 20}, {"Missing", 9}, {"Damaged", 10}};
      for (const SheetLine& line : place.lines) table.rows.push_back(sheet_row(household, line, place.place, request.private_, today));
      page.blocks.emplace_back(std::move(table));
    }
    page.blocks.emplace_back(PaperText{"Done on ____________________ by ____________________", false});
    document.pages.push_back(std::move(page));
  }
  if (document.pages.empty()) return fail(ErrorKind::kBadData, "there is nothing in the kits to walk through", "put something in: larderloop lot add FOOD --units N --at BAG");
  return document;
}

Result<PaperDocument> replacement_list(const Household& household, const PaperRequest& request, PaperDocument document, Day today) {
  if (request.plan == nullptr) return fail(ErrorKind::kDefect, "the replacement list needs the plan");
  const ShopList list = shop_list(household, *request.plan, request.pantry);
  const auto wanted = [&](const std::vector<PlaceKey>& kits) {
    return request.kits.empty() || std::any_of(kits.begin(), kits.end(), [&](const PlaceKey& kit) { return std::find(request.kits.begin(), request.kits.end(), kit) != request.kits.end(); });
  };
  PaperPage page;
  page.title = "To buy";
  page.subtitle = (list.shop_by ? "By " + plain_day(*list.shop_by) + ". " : std::string()) + "As of " + plain_day(document.as_of) + ".";
  page.blocks.emplace_back(PaperText{std::string(caution_words(Caution::kPurchase)), true});
  bool any = false;
  for (const ShopGroup& group : list.groups) {
    PaperTable table;
    table.title = group.shop.empty() ? "Any shop" : group.shop;
    table.columns = {{"Buy", 24}, {"Good through at least", 12}, {"For", 16}};
    table.columns.push_back({request.private_ ? "Label" : "The label must not say", 28});
    for (const BuyLine& line : group.lines) {
      if (!wanted(line.kits)) continue;
      const Food& food = *find_food(household, line.food);
      std::string buy = line.packs > 0 ? fmt::format("{} {} {}", line.packs, line.pack.units == 1 ? plural(food.unit, line.packs) : fmt::format("{} of {} {}", plural("pack", line.packs), line.pack.units, plural(food.unit, line.pack.units)), food.name)
                                       : fmt::format("{} {} {}\nno pack and price known", line.units, plural(food.unit, line.units), food.name);
      if (line.packs > 0) buy += "\n" + (line.ml > 0 ? litres(line.ml) : fmt::format("{} {}", line.units, plural(food.unit, line.units))) + " needed, " + money_words(line.packs * line.pack.price_cents, household.settings.currency);
      std::string caution;
      const auto add = [&](const std::string& text) { caution += (caution.empty() ? "" : "\n") + text; };
      if (!request.private_) {
        const auto words = [](const std::vector<std::string>& keys) {
          std::vector<std::string> all;
          for (const std::string& key : keys) all.push_back(allergen_words(key));
          return list_words(all);
        };
        if (!line.must_not_say.empty()) add("contains " + words(line.must_not_say));
        if (!line.nor_may_contain.empty()) add("may contain " + words(line.nor_may_contain));
        std::vector<std::string> diets;
        for (const Diet diet : line.must_suit) diets.push_back(diet_words(diet));
        if (!diets.empty()) add("It must be " + list_words(diets) + ".");
      } else if (!line.must_not_say.empty() || !line.must_suit.empty()) {
        add("not every label will do: compare with the book");
      }
      if (const std::string refused = not_for(household, refusals(household, line.for_people, food, food.label ? &*food.label : nullptr, today), request.private_);
          !refused.empty() && food.kind != FoodKind::kWater && food.kind != FoodKind::kThing) {
        add("WARNING: " + refused);
      }
      table.rows.push_back({{buy, true, true},
                            {line.kits.empty() ? "" : plain_day(line.good_through_at_least)},
                            {line.kits.empty() ? "the pantry" : line.for_people.empty() ? "the kit" : who(household, line.for_people)},
                            {caution}});
    }
    if (table.rows.empty()) continue;
    any = true;
    page.blocks.emplace_back(std::move(table));
  }
  if (list.cost_cents > 0 && request.kits.empty()) page.blocks.emplace_back(PaperText{"Together about " + money_words(list.cost_cents, household.settings.currency) + ".", true});
  for (const Unmet& each : list.unmet) {
    if (!wanted({kit_of(household, each.place)})) continue;
    any = true;
    page.blocks.emplace_back(PaperWarning{"Nothing known fits in " + place_words(household, each.place) + ": " + each.why});
  }
  if (!any) return fail(ErrorKind::kBadData, "there is nothing to buy: the kits are full", "see the plan: larderloop plan");
  document.title = "Replacement list";
  document.pages.push_back(std::move(page));
  return document;
}

Result<PaperDocument> household_page(const Household& household, const PaperRequest& request, PaperDocument document, Day today) {
  auto kits = kits_of(household, request);
  if (!kits) return fail(kits.error());
  if (household.people.empty()) return fail(ErrorKind::kBadData, "there are no people in the book", "add them first: larderloop person add NAME");
  PaperPage page;
  page.title = household.settings.name;
  page.subtitle = "The household and its kits on one page. As of " + plain_day(today) + ".";
  PaperTable people{"People and pets", {{"Who", 12}}, {}};
  if (!request.private_) people.columns.push_back({"Must not have", 28});
  people.columns.push_back({"Eats from", 24});
  for (const Person& person : household.people) {
    std::string places;
    for (const PlaceKey& kit : *kits) {
      for (const PlaceKey& place : walk(household, kit)) {
        const std::vector<PersonKey> named = named_at(household, place);
        if (std::find(named.begin(), named.end(), person.key) != named.end()) places += (places.empty() ? "" : ", ") + place_words(household, place);
      }
    }
    const std::string avoid = avoids(person);
    std::vector<PaperCell> row = {{person.is_human() ? person.name : person.name + " (" + person.species + ")", false, true}};
    if (!request.private_) row.push_back({avoid.empty() ? "nothing known" : avoid, false, !avoid.empty()});
    row.push_back({places});
    people.rows.push_back(std::move(row));
  }
  page.blocks.emplace_back(std::move(people));
  PaperTable boxes{"Kits", {{"Kit", 12}, {"Made of", 30}, {"Review", 12}, {"Contents last through", 12}}, {}};
  for (const PlaceKey& kit : *kits) {
    auto schedule = kit_schedule(household, kit, today);
    if (!schedule) return fail(schedule.error());
    std::string parts;
    for (const PlaceKey& place : walk(household, kit)) {
      if (find_place(household, place)->kind == PlaceKind::kBox) parts += (parts.empty() ? "" : ", ") + place_words(household, place);
    }
    boxes.rows.push_back({{place_words(household, kit), false, true}, {parts}, {plain_day(schedule->current ? schedule->current->day : schedule->next.day)}, {plain_day(schedule->hold_until)}});
  }
  page.blocks.emplace_back(std::move(boxes));
  add_emergency_cautions(household, {}, today, page);
  add_cautions({Caution::kFloodTins, Caution::kOutage}, page);
  if (!request.url.empty()) page.blocks.emplace_back(PaperCode{request.url, "The book: " + request.url, {}});
  document.title = "The household on one page";
  document.pages.push_back(std::move(page));
  return document;
}

}  // namespace paper

Result<PaperDocument> make_paper(const Household& household, const PaperRequest& request, Day today) {
  const Household named = paper::for_paper(household);
  PaperDocument document;
  document.what = request.what;
  document.household = named.settings.name;
  document.as_of = today;
  document.large = request.large;
  document.sheet = request.sheet;
  switch (request.what) {
    case PaperWhat::kLabels:
      return paper::labels(named, request, std::move(document), today);
    case PaperWhat::kBoxCard:
      return paper::box_cards(named, request, std::move(document), today);
    case PaperWhat::kReviewSheet:
      return paper::review_sheets(named, request, std::move(document), today);
    case PaperWhat::kMenuCard:
      return paper::menu_cards(named, request, std::move(document), today);
    case PaperWhat::kHousehold:
      return paper::household_page(named, request, std::move(document), today);
    case PaperWhat::kReplacementList:
      return paper::replacement_list(named, request, std::move(document), today);
  }
  return fail(ErrorKind::kDefect, "a paper of no kind");
}

std::string paper_words(const PaperDocument& document) {
  std::string text = document.title + "\n";
  const auto say = [&text](const std::string& line) { text += line + "\n"; };
  for (const PaperPage& page : document.pages) {
    say(page.title);
    say(page.subtitle);
    for (const PaperBlock& block : page.blocks) {
      if (const auto* heading = std::get_if<PaperHeading>(&block)) say(heading->text);
      if (const auto* plain = std::get_if<PaperText>(&block)) say(plain->text);
      if (const auto* warning = std::get_if<PaperWarning>(&block)) say("WARNING: " + warning->text);
      if (const auto* code = std::get_if<PaperCode>(&block)) say(code->caption);
      if (const auto* table = std::get_if<PaperTable>(&block)) {
        say(table->title);
        for (const auto& row : table->rows) {
          for (const PaperCell& cell : row) say(cell.text);
        }
      }
    }
  }
  for (const PaperLabel& label : document.labels) {
    say(label.title);
    for (const PaperCell& line : label.lines) say(line.text);
  }
  return text;
}

}  // namespace larderloop
