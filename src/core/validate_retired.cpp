// What shopping found, kept column mappings, and things that are retired.
#include "core/validate_parts.h"
#include "larderloop/core/stock.h"

#include <algorithm>
#include <set>

namespace larderloop {
namespace {

// The three answers to "may this still be used here?"; the remedy is the same everywhere.
class Gone {
 public:
  explicit Gone(Findings& findings) : findings_(findings) {}
  void person(const std::string& where, const PersonKey& key) {
    check(where, findings_.person(key), "person");
  }
  void food(const std::string& where, const FoodKey& key) {
    check(where, findings_.food(key), "food");
  }
  void place(const std::string& where, const PlaceKey& key) {
    check(where, findings_.place(key), "place");
  }

 private:
  template <class Thing>
  void check(const std::string& where, const Thing* thing, const std::string& kind) {
    if (thing == nullptr || !thing->retired) return;
    findings_.add(where, thing->key.str(),
                  "this " + kind + " is retired since " + iso_day(*thing->retired),
                  "name another one or take it out here; or bring it back: larderloop " + kind +
                      " retire " + thing->key.str() + " --back");
  }
  Findings& findings_;
};

}  // namespace

void validate_shopping(Findings& findings) {
  std::int64_t last = 0;
  const Household& household = findings.household;
  for (std::size_t index = 0; index < household.buy_notes.size(); ++index) {
    const BuyNote& note = household.buy_notes[index];
    const std::string where = at("buy_notes", index);
    if (note.id.value() <= last) {
      findings.add(where + "/id", std::to_string(note.id.value()),
                   "numbers have to grow from one to the next",
                   "write a number above " + std::to_string(last));
    }
    last = std::max(last, note.id.value());
    findings.check_food(where + "/food", note.food);
    if (!note.kit.empty()) {
      const Place* kit = findings.place(note.kit);
      if (kit == nullptr)
        findings.check_place(where + "/kit", note.kit);
      else if (kit->kind != PlaceKind::kKit)
        findings.add(where + "/kit", note.kit.str(), "it is no kit", "name a kit");
    }
    const bool instead = note.kind == BuyNoteKind::kBoughtInstead;
    if (instead == note.instead.empty()) {
      findings.add(where + "/instead", note.instead.str(),
                   "what was bought instead, and only that, names a food",
                   "add or leave out instead");
    } else if (instead) {
      findings.check_food(where + "/instead", note.instead);
    }
  }
  std::set<std::string> names;
  for (std::size_t index = 0; index < household.mappings.size(); ++index) {
    const ImportMapping& mapping = household.mappings[index];
    const std::string where = at("mappings", index);
    if (mapping.name.empty())
      findings.add(where + "/name", "", "the name is empty", "write what you call it");
    if (!names.insert(mapping.name).second)
      findings.add(where + "/name", mapping.name, "this name is there twice", "leave one out");
    if (mapping.columns.empty())
      findings.add(where + "/columns", "", "no column is named", "leave the whole mapping out");
  }
}

void validate_retired(Findings& findings) {
  const Household& household = findings.household;
  const auto any = [](const auto& list) {
    return std::any_of(list.begin(), list.end(),
                       [](const auto& each) { return each.retired.has_value(); });
  };
  if (!any(household.people) && !any(household.foods) && !any(household.places)) return;
  Gone gone(findings);
  for (std::size_t index = 0; index < household.places.size(); ++index) {
    const Place& place = household.places[index];
    if (!place.retired && !place.parent.empty())
      gone.place(at("places", index) + "/parent", place.parent);
  }
  for (std::size_t index = 0; index < household.review_rules.size(); ++index) {
    gone.place(at("review_rules", index) + "/kit", household.review_rules[index].kit);
  }
  for (std::size_t index = 0; index < household.menu.size(); ++index) {
    const MenuLine& line = household.menu[index];
    gone.place(at("menu", index) + "/place", line.place);
    if (!line.food.empty()) gone.food(at("menu", index) + "/food", line.food);
    for (const PersonKey& person : line.people) gone.person(at("menu", index) + "/people", person);
  }
  for (std::size_t index = 0; index < household.table.size(); ++index) {
    for (const PersonKey& person : household.table[index].people)
      gone.person(at("table", index) + "/people", person);
  }
  for (std::size_t index = 0; index < household.exceptions.size(); ++index) {
    for (const PersonKey& person : household.exceptions[index].guests)
      gone.person(at("exceptions", index) + "/guests", person);
  }
  for (std::size_t index = 0; index < household.wishes.size(); ++index) {
    const Wish& wish = household.wishes[index];
    if (!wish.food.empty()) gone.food(at("wishes", index) + "/food", wish.food);
    if (wish.person) gone.person(at("wishes", index) + "/person", *wish.person);
  }
  // Nothing may lie where nobody looks, and nothing may lie about that nobody is offered.
  const auto ledger = replay(household);
  if (!ledger) return;  // told by the validation of the record
  const auto index_of = [](const auto& list, const auto& key) {
    return static_cast<std::size_t>(
        std::find_if(list.begin(), list.end(), [&](const auto& each) { return each.key == key; }) -
        list.begin());
  };
  std::set<std::string> told;
  const auto tell = [&](const std::string& where, const std::string& key, const std::string& what,
                        const std::string& remedy) {
    if (told.insert(where).second) findings.add(where + "/retired", key, what, remedy);
  };
  for (const auto& [position, amount] : ledger->stock()) {
    const Place* place = findings.place(position.place);
    const Food* food = findings.food(findings.lot(position.lot)->food);
    const std::string lot = "lot " + std::to_string(position.lot.value());
    if (place->retired) {
      tell(at("places", index_of(household.places, place->key)), place->key.str(),
           lot + " still lies there",
           "move it first: larderloop record moved " + std::to_string(position.lot.value()) +
               " all --at " + place->key.str() + " --to PLACE");
    }
    if (food->retired) {
      tell(at("foods", index_of(household.foods, food->key)), food->key.str(),
           lot + " of it is still on hand",
           "say first what becomes of it: larderloop record eaten, given-away or thrown-out");
    }
  }
}

}  // namespace larderloop
