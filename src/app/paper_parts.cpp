#include "app/paper_parts.h"

#include <fmt/core.h>

#include <algorithm>
#include <functional>
#include <set>

#include "app/plain_names.h"
#include "larderloop/core/words.h"

namespace larderloop::paper {
namespace {

// The next code point of a text that is UTF-8 (the book holds no other); its length in `bytes`.
std::uint32_t code_point(std::string_view text, std::size_t at, std::size_t& bytes) {
  const auto lead = static_cast<unsigned char>(text[at]);
  bytes = lead < 0x80 ? 1 : lead < 0xe0 ? 2 : lead < 0xf0 ? 3 : 4;
  if (bytes == 1 || at + bytes > text.size()) {
    bytes = 1;
    return lead;
  }
  std::uint32_t value = lead & (0xffU >> (bytes + 1));
  for (std::size_t next = 1; next < bytes; ++next) value = value << 6U | (static_cast<unsigned char>(text[at + next]) & 0x3fU);
  return value;
}

// Blocks of right-to-left scripts (Unicode 15.0, derived bidirectional class R and AL).
bool right_to_left(std::uint32_t point) {
  return (point >= 0x0590 && point <= 0x08ff) || (point >= 0xfb1d && point <= 0xfdff) || (point >= 0xfe70 && point <= 0xfeff) ||
         (point >= 0x10800 && point <= 0x10fff) || (point >= 0x1e800 && point <= 0x1efff);
}

bool reorders(std::uint32_t point) {
  return point == 0x061c || point == 0x200e || point == 0x200f || (point >= 0x202a && point <= 0x202e) || (point >= 0x2066 && point <= 0x2069);
}

bool control(std::uint32_t point) { return point < 0x20 || (point >= 0x7f && point < 0xa0) || point == 0x2028 || point == 0x2029; }

}  // namespace

std::string name_on_paper(std::string_view name) {
  std::string clean;
  bool isolate = false;
  for (std::size_t at = 0, bytes = 0; at < name.size(); at += bytes) {
    const std::uint32_t point = code_point(name, at, bytes);
    if (control(point)) {
      clean += ' ';
    } else if (!reorders(point)) {
      clean += name.substr(at, bytes);
      isolate = isolate || right_to_left(point);
    }
  }
  return isolate ? "\u2068" + clean + "\u2069" : clean;
}

Household for_paper(Household household) {
  const auto clean = [](std::string& name) { name = name_on_paper(name); };
  clean(household.settings.name);
  clean(household.settings.currency);
  for (Person& person : household.people) clean(person.name);
  for (Place& place : household.places) clean(place.name);
  for (Food& food : household.foods) {
    clean(food.name);
    clean(food.unit);
    for (Pack& pack : food.packs) clean(pack.shop);
  }
  for (Lot& lot : household.lots) clean(lot.mark.text);
  for (Reading& reading : household.readings) {
    if (reading.mark) clean(reading.mark->text);
  }
  return household;
}

std::vector<PlaceKey> walk(const Household& household, const PlaceKey& kit) {
  std::vector<PlaceKey> order;
  const std::function<void(const PlaceKey&)> visit = [&](const PlaceKey& place) {
    order.push_back(place);
    for (const Place& child : household.places) {
      if (child.parent == place) visit(child.key);
    }
  };
  visit(kit);
  return order;
}

Result<std::vector<PlaceKey>> kits_of(const Household& household, const PaperRequest& request) {
  std::vector<PlaceKey> kits = request.kits.empty() ? places_of_kind(household, PlaceKind::kKit) : request.kits;
  if (kits.empty()) {
    return fail(ErrorKind::kBadData, "there is no kit to print anything of", "make one first: larderloop place add \"Home kit\" --kind kit");
  }
  return kits;
}

std::string diet_words(Diet diet) {
  std::string words(diet_name(diet));
  std::replace(words.begin(), words.end(), '_', '-');
  return words;
}

std::string avoids(const Person& person) {
  std::string text;
  for (const Avoid& avoid : person.avoid) {
    text += (text.empty() ? "" : ", ") + allergen_words(avoid.key) + (avoid.accept_may_contain ? " (traces are accepted)" : "");
  }
  std::vector<std::string> diets;
  for (const Diet diet : person.diets) diets.push_back(diet_words(diet));
  if (!diets.empty()) text += (text.empty() ? "anything but " : "; eats only ") + list_words(diets) + " food";
  return text;
}

std::vector<std::string> avoid_lines(const Household& household, const std::vector<PersonKey>& people) {
  std::vector<std::string> lines;
  for (const PersonKey& key : people) {
    const Person& person = *find_person(household, key);
    if (const std::string text = avoids(person); !text.empty()) lines.push_back(person.name + ": " + text);
  }
  return lines;
}

std::vector<PersonKey> named_at(const Household& household, const PlaceKey& place) {
  std::set<PersonKey> people;
  for (const MenuLine& line : household.menu) {
    if (line.place != place) continue;
    for (const PersonKey& person : eaters_of(household, line)) people.insert(person);
  }
  return {people.begin(), people.end()};
}

std::string days_at(const Household& household, const PlaceKey& place) {
  std::set<int> days;
  for (const MenuLine& line : household.menu) {
    if (line.place == place && line.day > 0) days.insert(line.day);
  }
  if (days.empty()) return {};
  const int first = *days.begin(), last = *days.rbegin();
  if (days.size() == 1) return fmt::format("day {}", first);
  if (last - first + 1 == static_cast<int>(days.size())) return fmt::format("days {} to {}", first, last);
  std::vector<std::string> each;
  for (const int day : days) each.push_back(std::to_string(day));
  return "days " + list_words(each);
}

std::string who(const Household& household, const std::vector<PersonKey>& people) {
  const auto humans = std::count_if(household.people.begin(), household.people.end(), [](const Person& person) { return person.is_human(); });
  const bool all_human = std::all_of(people.begin(), people.end(), [&](const PersonKey& key) { return find_person(household, key)->is_human(); });
  if (humans > 1 && all_human && static_cast<std::ptrdiff_t>(people.size()) == humans) return "everyone";
  std::vector<std::string> names;
  for (const PersonKey& key : people) names.push_back(find_person(household, key)->name);
  return list_words(names);
}

std::string litres(std::int64_t ml) {
  std::string text = fmt::format("{}.{:03}", ml / 1000, ml % 1000);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text + " l";
}

std::string not_for(const Household& household, const std::vector<PersonRefusal>& refusals, bool private_) {
  std::vector<std::pair<std::string, std::vector<std::string>>> groups;  // reason, names
  for (const PersonRefusal& each : refusals) {
    if (each.reason.refusal == Refusal::kRefuses) continue;
    const std::string reason = private_ ? "" : refusal_words(each.reason);
    auto group = std::find_if(groups.begin(), groups.end(), [&](const auto& known) { return known.first == reason; });
    if (group == groups.end()) group = groups.insert(groups.end(), {reason, {}});
    group->second.push_back(find_person(household, each.person)->name);
  }
  std::string text;
  for (const auto& [reason, names] : groups) {
    text += (text.empty() ? "NOT for " : "; NOT for ") + list_words(names) + (reason.empty() ? "" : ": " + reason);
  }
  return text;
}

std::string who_refuses(const Household& household, const std::vector<PersonRefusal>& refusals) {
  std::vector<std::string> names;
  for (const PersonRefusal& each : refusals) {
    if (each.reason.refusal == Refusal::kRefuses) names.push_back(find_person(household, each.person)->name);
  }
  return names.empty() ? "" : "not eaten by " + list_words(names);
}

void add_cautions(const std::vector<Caution>& cautions, PaperPage& page) {
  for (const Caution each : cautions) page.blocks.emplace_back(PaperText{std::string(caution_words(each)), false});
}

void add_emergency_cautions(const Household& household, const PlaceKey& kit, Day today, PaperPage& page) {
  add_cautions({Caution::kLabel, Caution::kOpened, Caution::kContainers, Caution::kSpoiled, Caution::kFlood}, page);
  if (concerns_formula(household, kit, today)) add_cautions({Caution::kFormula}, page);
  add_cautions({Caution::kIll}, page);
}

}  // namespace larderloop::paper

namespace larderloop {

std::string_view paper_name(PaperWhat what) {
  switch (what) {
    case PaperWhat::kLabels:
      return "labels";
    case PaperWhat::kBoxCard:
      return "box_card";
    case PaperWhat::kReviewSheet:
      return "review_sheet";
    case PaperWhat::kMenuCard:
      return "menu_card";
    case PaperWhat::kHousehold:
      return "household";
    case PaperWhat::kReplacementList:
      return "replacement_list";
  }
  return {};
}

std::optional<PaperWhat> parse_paper(std::string_view name) {
  for (const PaperWhat what : kAllPapers) {
    if (paper_name(what) == name) return what;
  }
  return std::nullopt;
}

}  // namespace larderloop
