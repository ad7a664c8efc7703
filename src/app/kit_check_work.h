// kit_check_work.h - what the parts of the check of a kit share. Private to this room.
#pragma once

#include "app/book_view.h"
#include "larderloop/app/kit_check.h"

#include <functional>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace larderloop {

// Units of a position that stand for a menu line.
struct Filled {
  const Position* position = nullptr;
  std::int64_t units = 0;
};

struct KitCheckWork {
  KitCheckWork(const BookView& seen, Day day, KitCheck& into)
      : view(seen), household(*seen.household), today(day), check(into) {}
  const BookView& view;
  const Household& household;
  Day today;
  KitCheck& check;
  PlaceKey kit;
  std::vector<const Position*> inside;                // of this kit
  std::vector<const MenuLine*> lines;                 // of this kit
  std::map<PlaceKey, std::vector<PersonKey>> eaters;  // by place: everybody on a line kept there
  std::map<MenuLineId, std::vector<Filled>> filled;   // see fill_lines

  KitFinding& add(Gravity gravity, Topic topic, const PlaceKey& place, std::string what,
                  std::string todo) {
    KitFinding found;
    found.gravity = gravity;
    found.topic = topic;
    found.place = place;
    found.what = std::move(what);
    found.todo = std::move(todo);
    check.findings.push_back(std::move(found));
    return check.findings.back();
  }
  KitFinding& add(Gravity gravity, Topic topic, const Position& position, std::string what,
                  std::string todo) {
    KitFinding& found = add(gravity, topic, position.at.place, std::move(what), std::move(todo));
    found.lot = position.at.lot;
    found.food = position.food->key;
    return found;
  }
  [[nodiscard]] std::string name(const PersonKey& key) const {
    return find_person(household, key)->name;
  }
  [[nodiscard]] std::string name(const PlaceKey& key) const {
    return find_place(household, key)->name;
  }
};

[[nodiscard]] std::string lot_words(const Position& position);  // "lot 12, Oat bar"
[[nodiscard]] bool is_eaten(const Food& food);                  // food, drink or pet food
// Can it be used in a kit at all, whatever its date: as it is, at room temperature, without hot
// water?
[[nodiscard]] bool usable_in_kit(const Food& food);
// "3 units of main for Mira, day 2, lunch"
[[nodiscard]] std::string line_words(const KitCheckWork& work, const MenuLine& line);

// The parts, in this order.
void check_menu(KitCheckWork& work);   // fills the lines; completeness, pets, equipment, variety
void check_foods(KitCheckWork& work);  // labels, allergens, children, use, opened, dates, states
void check_needs(KitCheckWork& work);  // energy, sodium, water
void check_carry(KitCheckWork& work);  // mass, volume, heat, how every lot stands

}  // namespace larderloop
