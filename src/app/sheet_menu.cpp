// Rows of kit menus: a line the book has word for word is known; one with its number is changed; anything else is new.
#include <algorithm>
#include <map>
#include <set>

#include "app/sheet_cells_of.h"
#include "app/sheet_work.h"
#include "larderloop/app/find.h"

namespace larderloop {
namespace {

class MenuRows {
 public:
  explicit MenuRows(SheetWork& work) : work_(work), next_(next_ids(work.household).menu_line.value()) {}

  void row() {
    const MenuLine* numbered = nullptr;
    if (work_.says(Col::kLine)) {
      const auto number = work_.value(Col::kLine, cell_whole(work_.cell(Col::kLine), work_.delimiter(), 1, 1'000'000'000));
      if (!number) return;
      for (const MenuLine& each : work_.household.menu) {
        if (each.id.value() == *number) numbered = &each;
      }
    }
    MenuLine line = numbered != nullptr ? *numbered : MenuLine{};
    apply(line, numbered == nullptr);
    if (!work_.row_is_sound()) return;
    if (const MenuLine* same = same_line(line, numbered)) {
      taken_.insert(same->id);
      ++work_.report.known;
      return;
    }
    if (numbered == nullptr) line.id = MenuLineId(next_++);
    if (!taken_.insert(line.id).second) {
      work_.fault(Col::kLine, "line " + std::to_string(line.id.value()) + " of the menu stands here twice", "leave one of the two rows out");
      return;
    }
    lines_[line.id] = work_.line();
    work_.changes.menu.push_back(line);
    if (numbered != nullptr) {
      ++work_.report.changed;
      work_.news(work_.line(), RowDid::kChanged, "menu line " + std::to_string(line.id.value()) + ": " + differences(SheetKind::kMenu, cells_of(*numbered), cells_of(line)));
    } else {
      ++work_.report.added;
      const Food* food = find_food(work_.household, line.food);
      work_.news(work_.line(), RowDid::kAdded, "menu line " + std::to_string(line.id.value()) + " of " + find_place(work_.household, line.place)->name + ": " +
                                                   (line.role ? std::string(role_name(*line.role)) : food != nullptr ? food->name : line.food.str()));
    }
  }

  void finish() {
    CameFrom from{"menu", {}};
    Household after = work_.household;
    apply_changes(after, work_.changes);
    for (const MenuLine& each : after.menu) {
      const auto line = lines_.find(each.id);
      from.lines.push_back(line == lines_.end() ? 0 : line->second);
    }
    find_inconsistencies(work_, from);
  }

 private:
  // The line of the book that says just this and is not taken by another row; of a numbered row only that one.
  const MenuLine* same_line(const MenuLine& line, const MenuLine* numbered) const {
    const auto same = [&](const MenuLine& each) {
      MenuLine other = line;
      other.id = each.id;
      return taken_.count(each.id) == 0 && other == each;
    };
    if (numbered != nullptr) return same(*numbered) ? numbered : nullptr;
    const auto found = std::find_if(work_.household.menu.begin(), work_.household.menu.end(), same);
    return found == work_.household.menu.end() ? nullptr : &*found;
  }

  void apply(MenuLine& line, bool fresh) {
    if (work_.says(Col::kPlace)) {
      auto place = named_place(work_.household, work_.cell(Col::kPlace));
      if (!place) work_.fault(Col::kPlace, place.error().what, place.error().next_step);
      else line.place = (*place)->key;
    } else if (fresh) {
      work_.fault(Col::kPlace, "the place is missing", "write the bag, box or kit where it is kept");
    }
    people(line, fresh);
    if (work_.says(Col::kDay)) {
      std::int64_t day = 0;
      if (lowered_cell(work_.cell(Col::kDay)) != "any") work_.whole(Col::kDay, 0, 31, day);
      line.day = static_cast<int>(day);
    }
    if (lowered_cell(work_.cell(Col::kMeal)) == "any") line.meal.reset();
    else if (work_.says(Col::kMeal)) {
      if (const auto meal = work_.value(Col::kMeal, cell_word<Meal>(work_.cell(Col::kMeal), kAllMeals, meal_name))) line.meal = *meal;
    }
    what(line, fresh);
    if (work_.says(Col::kUnits)) {
      work_.whole(Col::kUnits, 1, 1000, line.units);
      if (!work_.says(Col::kVolume)) line.ml = 0;
    }
    if (work_.says(Col::kVolume)) {
      work_.amount(Col::kVolume, "ml", line.ml);
      if (!work_.says(Col::kUnits)) line.units = MenuLine{}.units;
    }
    std::int64_t priority = line.priority;
    work_.whole(Col::kPriority, 0, 100, priority);
    line.priority = static_cast<int>(priority);
  }

  void people(MenuLine& line, bool fresh) {
    if (!work_.says(Col::kFor)) {
      if (fresh) work_.fault(Col::kFor, "nothing says for whom it is", "write people, everyone, or nobody for a thing");
      return;
    }
    const std::string word = lowered_cell(work_.cell(Col::kFor));
    line.everyone = word == "everyone";
    line.people.clear();
    if (line.everyone || word == "nobody") return;
    for (const std::string& each : cell_list(work_.cell(Col::kFor))) {
      auto person = named_person(work_.household, each);
      if (!person) work_.fault(Col::kFor, person.error().what, person.error().next_step);
      else line.people.push_back((*person)->key);
    }
    std::sort(line.people.begin(), line.people.end());
  }

  void what(MenuLine& line, bool fresh) {
    if (work_.says(Col::kRole) && work_.says(Col::kFood)) {
      work_.fault(Col::kFood, "a menu line names a role or a food, one of the two", "leave one of the two cells empty");
    } else if (work_.says(Col::kRole)) {
      if (const auto role = work_.value(Col::kRole, cell_word<Role>(work_.cell(Col::kRole), kAllRoles, role_name))) line.role = *role;
      line.food = FoodKey();
    } else if (work_.says(Col::kFood)) {
      auto food = named_food(work_.household, work_.cell(Col::kFood));
      if (!food) work_.fault(Col::kFood, food.error().what, food.error().next_step);
      else line.food = (*food)->key;
      line.role.reset();
    } else if (fresh) {
      work_.fault(Col::kRole, "nothing says what it is", "write a role, or a food");
    }
  }

  SheetWork& work_;
  std::int64_t next_;
  std::set<MenuLineId> taken_;
  std::map<MenuLineId, std::size_t> lines_;
};

}  // namespace

void import_menu(SheetWork& work, CsvReader& reader) {
  MenuRows rows(work);
  each_row(work, reader, work.report.columns.size(), [&] { rows.row(); });
  rows.finish();
}

}  // namespace larderloop
