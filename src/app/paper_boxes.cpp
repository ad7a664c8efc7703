// What is stuck on bags and boxes: labels and box cards.
#include <fmt/core.h>

#include <algorithm>

#include "app/book_view.h"
#include "app/paper_parts.h"
#include "app/plain_names.h"
#include "larderloop/core/words.h"

namespace larderloop::paper {
namespace {

std::vector<PlaceKey> inside_of_kind(const Household& household, const PlaceKey& place, PlaceKind kind) {
  std::vector<PlaceKey> found;
  for (const PlaceKey& each : walk(household, place)) {
    if (find_place(household, each)->kind == kind) found.push_back(each);
  }
  return found;
}

// Whom lines for food name here: drinking water is nobody's to avoid.
std::vector<PersonKey> fed_at(const Household& household, const PlaceKey& place) {
  std::vector<PersonKey> people;
  for (const MenuLine& line : household.menu) {
    if (line.place != place || wants_water(household, line)) continue;
    for (const PersonKey& person : eaters_of(household, line)) people.push_back(person);
  }
  std::sort(people.begin(), people.end());
  people.erase(std::unique(people.begin(), people.end()), people.end());
  return people;
}

Day review_day(const KitSchedule& schedule) { return schedule.current ? schedule.current->day : schedule.next.day; }

PaperLabel label_of(const Household& household, const PlaceKey& key, const KitSchedule& schedule, bool private_) {
  const Place& place = *find_place(household, key);
  PaperLabel label;
  label.title = place.name;
  const bool box = place.kind == PlaceKind::kBox;
  const std::vector<PersonKey> people = named_at(household, key);
  if (box) {
    std::vector<std::string> bags;
    for (const PlaceKey& bag : inside_of_kind(household, key, PlaceKind::kBag)) bags.push_back(place_words(household, bag));
    if (!bags.empty()) label.lines.push_back({"Holds: " + list_words(bags), false, true});
  }
  if (!people.empty()) {
    const std::string days = days_at(household, key);
    label.lines.push_back({"For: " + who(household, people) + (days.empty() ? "" : ", " + days), false, true});
  }
  const std::vector<std::string> avoid = avoid_lines(household, fed_at(household, key));
  label.instead = label.lines;
  if (private_) {
    if (!avoid.empty()) label.lines.push_back({"Only for those named. Ask before you share.", false, true});
  } else if (people.size() == 1 && !avoid.empty()) {
    label.lines.push_back({"Must not have: " + avoids(*find_person(household, people.front())), false, true});
  } else if (!avoid.empty()) {
    std::string text = "Keep out of here what one of them must not have: ";
    for (std::size_t each = 0; each < avoid.size(); ++each) text += (each == 0 ? "" : "; ") + avoid[each];
    label.lines.push_back({text, false, true});
  }
  const PaperCell foot{fmt::format("{}. Review {}. Read the label.", place_words(household, schedule.kit), plain_day(review_day(schedule)))};
  if (!private_ && !avoid.empty()) label.instead.push_back({"Allergies! They are on the box card.", false, true});
  label.lines.push_back(foot);
  label.instead.push_back(foot);
  return label;
}

PaperPage box_card(const Household& household, const PlaceKey& key, const KitSchedule& schedule, const PaperRequest& request, Day today) {
  const Place& place = *find_place(household, key);
  PaperPage page;
  page.title = place.name;
  page.subtitle = place_words(household, schedule.kit) + ". As of " + plain_day(today) + ".";
  PaperTable bags;
  bags.title = "What is whose";
  bags.columns = {{"Bag", 12}, {"Whose", 14}, {"Day", 8}};
  if (!request.private_) bags.columns.push_back({"Must not have", 24});
  for (const PlaceKey& each : walk(household, key)) {
    const std::vector<PersonKey> people = named_at(household, each);
    const bool itself = each == key;
    if (itself && people.empty()) continue;
    std::string avoid;
    const std::vector<PersonKey> fed = fed_at(household, each);
    for (const std::string& line : avoid_lines(household, fed)) avoid += (avoid.empty() ? "" : "\n") + line;
    std::vector<PaperCell> row = {{itself ? "loose in the box" : place_words(household, each), false, true},
                                  {people.empty() ? "nobody in particular" : who(household, people), false, true},
                                  {days_at(household, each)}};
    if (!request.private_) row.push_back({fed.empty() ? "" : avoid.empty() ? "nothing known" : avoid});
    bags.rows.push_back(std::move(row));
  }
  if (!bags.rows.empty()) page.blocks.emplace_back(std::move(bags));
  if (request.private_) page.blocks.emplace_back(PaperText{"Each bag is only for those named: ask before you share.", true});
  std::vector<std::string> things;
  for (const MenuLine& line : household.menu) {
    const Food* food = line.food.empty() ? nullptr : find_food(household, line.food);
    if (food != nullptr && food->kind == FoodKind::kThing && is_within(household, line.place, key)) {
      things.push_back(fmt::format("{} x {} ({})", line.units, food->name, line.place == key ? "loose" : place_words(household, line.place)));
    }
  }
  if (!things.empty()) page.blocks.emplace_back(PaperText{"Also meant to be in here: " + list_words(things) + ".", false});
  std::string dates = "Review: " + plain_day(review_day(schedule));
  if (schedule.current) dates += ", then " + plain_day(schedule.next.day);
  page.blocks.emplace_back(PaperText{dates + ". What stays must be good through " + plain_day(schedule.hold_until) + ".", true});
  add_emergency_cautions(household, schedule.kit, today, page);
  add_cautions({Caution::kLifting}, page);
  if (!request.url.empty()) page.blocks.emplace_back(PaperCode{request.url, "More of this kit: " + request.url, {}});
  return page;
}

}  // namespace

Result<PaperDocument> labels(const Household& household, const PaperRequest& request, PaperDocument document, Day today) {
  auto kits = kits_of(household, request);
  if (!kits) return fail(kits.error());
  document.title = "Labels for bags and boxes";
  document.grid = request.grid;
  document.start_at = request.start_at;
  document.outlines = request.outlines;
  for (const PlaceKey& kit : *kits) {
    auto schedule = kit_schedule(household, kit, today);
    if (!schedule) return fail(schedule.error());
    for (const PlaceKey& place : walk(household, kit)) {
      if (place != kit) document.labels.push_back(label_of(household, place, *schedule, request.private_));
    }
  }
  if (document.labels.empty()) {
    return fail(ErrorKind::kBadData, "there is no bag and no box to label", "say what the kit is made of: larderloop place add \"Box 1\" --kind box --in " + kits->front().str());
  }
  return document;
}

Result<PaperDocument> box_cards(const Household& household, const PaperRequest& request, PaperDocument document, Day today) {
  auto kits = kits_of(household, request);
  if (!kits) return fail(kits.error());
  document.title = "Box cards";
  for (const PlaceKey& kit : *kits) {
    auto schedule = kit_schedule(household, kit, today);
    if (!schedule) return fail(schedule.error());
    for (const PlaceKey& box : inside_of_kind(household, kit, PlaceKind::kBox)) document.pages.push_back(box_card(household, box, *schedule, request, today));
  }
  if (document.pages.empty()) {
    return fail(ErrorKind::kBadData, "there is no box to print a card for", "say what the kit is made of: larderloop place add \"Box 1\" --kind box --in " + kits->front().str());
  }
  return document;
}

}  // namespace larderloop::paper
