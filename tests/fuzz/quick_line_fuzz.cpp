// Any bytes as a list of quick lines: each line is a lot of a known food in a known place, a setting, or a problem that says its line.
#include "larderloop/core/validate.h"
#include "larderloop/intake/quick_line.h"
#include "require.h"

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace {

larderloop::Household household() {
  using namespace larderloop;
  Household home;
  for (const char* name : {"Lentil stew", "Lentil soup", "Oat bar", "Plum jam"}) {
    Food food;
    food.name = name;
    food.key = FoodKey(key_from_name(name, "food"));
    food.mass_g = 250;
    food.unit = "pouch";
    home.foods.push_back(food);
  }
  home.foods.front().gtin = "09520000000110";
  home.foods.back().kind = FoodKind::kThing;
  for (const char* name : {"Pantry", "Upper shelf", "Bag of Mira"}) {
    Place place;
    place.name = name;
    place.key = PlaceKey(key_from_name(name, "place"));
    home.places.push_back(place);
  }
  sort_lists(home);
  return home;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace larderloop;
  static const Household home = household();
  const Day today = *parse_iso_day("2026-11-25");
  const QuickList list = read_quick_lines(home, {reinterpret_cast<const char*>(data), size}, {}, today);
  std::size_t last = 0;
  for (const QuickLot& lot : list.lots) {
    require(lot.line > last, "lines go on");
    last = lot.line;
    require(find_food(home, lot.food) != nullptr && find_place(home, lot.at) != nullptr, "food and place are known");
    require(lot.units >= 1 && lot.units <= kMaxUnits, "units are in range");
    require(!lot.same || !lot.read_by.empty(), "a label has its reader");
    require(lot.printed.mark.kind == MarkKind::kNone || lot.printed.mark.day.has_value(), "a mark has its day");
    require(!lot.paid_cents || *lot.paid_cents >= 0, "a price is not negative");
  }
  for (const Problem& problem : list.problems) {
    require(problem.where.rfind("line ", 0) == 0 && !problem.what.empty() && !problem.remedy.empty(), "a problem says where, what and what next");
  }
  return 0;
}
