// Rows of foods: known by key, by the number under the bars, or by name.
#include <unordered_map>

#include "app/sheet_cells_of.h"
#include "app/sheet_work.h"
#include "larderloop/app/things.h"

namespace larderloop {
namespace {

constexpr std::int64_t kAny = 1'000'000'000;  // ranges are the validator's

class FoodRows {
 public:
  explicit FoodRows(SheetWork& work) : work_(work) {
    for (const Food& each : work.household.foods) {
      by_name_.emplace(lowered_cell(each.name), &each);
      if (!each.gtin.empty()) by_gtin_.emplace(each.gtin, &each);
    }
  }

  void row() {
    std::string gtin;
    if (work_.says(Col::kGtin) && !says_none(work_.cell(Col::kGtin))) {
      const auto read = work_.value(Col::kGtin, cell_gtin(work_.cell(Col::kGtin)));
      if (!read) return;
      gtin = *read;
    }
    const Food* known = nullptr;
    if (!find(gtin, known)) return;
    Food food = known != nullptr ? *known : Food{};
    if (known == nullptr) food.key = FoodKey(std::string(work_.cell(Col::kKey)));
    if (!gtin.empty()) food.gtin = gtin;
    else if (work_.says(Col::kGtin)) food.gtin.clear();
    apply(food);
    if (food.name.empty()) work_.fault(Col::kName, "a food needs a name", "write what people call it");
    if (!work_.row_is_sound()) return;
    keep(known, std::move(food));
  }

  void finish() {
    CameFrom from{"foods", {}};
    Household after = work_.household;
    apply_changes(after, work_.changes);
    for (const Food& each : after.foods) {
      const auto line = lines_.find(each.key.str());
      from.lines.push_back(line == lines_.end() ? 0 : line->second);
    }
    find_inconsistencies(work_, from);
  }

 private:
  // False after a fault.
  bool find(const std::string& gtin, const Food*& known) {
    const std::string key = lowered_cell(work_.cell(Col::kKey));
    if (!key.empty()) {
      known = find_food(work_.household, FoodKey(key));
      const auto other = gtin.empty() ? by_gtin_.end() : by_gtin_.find(gtin);
      if (other != by_gtin_.end() && other->second != known) {
        work_.fault(Col::kGtin, "this number is that of '" + other->second->name + "' (" + other->second->key.str() + ")", "write its key, or the number of this food");
        return false;
      }
      return true;
    }
    if (const auto found = by_gtin_.find(gtin); found != by_gtin_.end()) {
      known = found->second;
      return true;
    }
    const std::string name = lowered_cell(work_.cell(Col::kName));
    if (by_name_.count(name) > 1) {
      work_.fault(Col::kName, "more than one food is called so", "write the key of the one that is meant in a column key");
      return false;
    }
    if (const auto found = by_name_.find(name); found != by_name_.end()) {
      if (!gtin.empty() && !found->second->gtin.empty()) {
        work_.fault(Col::kGtin, "'" + found->second->name + "' has the number " + found->second->gtin, "give the new food another name, or write the key of this one: " + found->second->key.str());
        return false;
      }
      known = found->second;
    }
    return true;
  }

  void apply(Food& food) {
    work_.text(Col::kName, food.name);
    work_.word(Col::kKind, kAllFoodKinds, food_kind_name, food.kind);
    work_.text(Col::kSpecies, food.species);
    work_.text(Col::kUnit, food.unit);
    work_.whole(Col::kServings, 1, kMaxServingsPerUnit, food.servings);
    work_.amount(Col::kMass, "g", food.mass_g);
    work_.amount(Col::kVolume, "ml", food.volume_ml);
    work_.whole(Col::kEnergy, 0, kAny, food.energy_kcal);
    work_.whole(Col::kSodium, 0, kAny, food.sodium_mg);
    if (const auto label = work_.label(food.label ? &*food.label : nullptr)) food.label = *label;
    bool cooking = !food.no_cook;
    work_.yes(Col::kNeedsCooking, cooking);
    food.no_cook = !cooking;
    work_.yes(Col::kNeedsHotWater, food.needs_hot_water);
    work_.amount(Col::kNeedsWater, "ml", food.needs_water_ml);
    work_.yes(Col::kNeedsOpener, food.needs_opener);
    work_.yes(Col::kNeedsSpoon, food.needs_spoon);
    work_.yes(Col::kRefrigerate, food.refrigerate);
    work_.yes(Col::kChokingRisk, food.choking_risk);
    work_.yes(Col::kHoney, food.honey);
    work_.yes(Col::kIsOpener, food.is_opener);
    work_.yes(Col::kIsCutlery, food.is_cutlery);
    work_.yes(Col::kInfantFormula, food.infant_formula);
    work_.yes(Col::kHomeCanned, food.home_canned);
    work_.yes(Col::kSelfFilled, food.self_filled);
    work_.yes(Col::kStaple, food.staple);
    work_.words(Col::kMeals, kAllMeals, meal_name, food.meals);
    work_.words(Col::kRoles, kAllRoles, role_name, food.roles);
    if (work_.says(Col::kPacks)) {
      if (auto packs = work_.value(Col::kPacks, cell_packs(work_.cell(Col::kPacks), work_.delimiter()))) food.packs = *packs;
    }
    months(Col::kKeepsFrom, food.storage.months_short);
    months(Col::kKeepsTo, food.storage.months_long);
    std::int64_t opened = food.storage.opened_days;
    work_.whole(Col::kOpenedDays, 0, 3650, opened);
    food.storage.opened_days = static_cast<int>(opened);
    work_.text(Col::kStorageSource, food.storage.source);
    constexpr Rotate kRotates[] = {Rotate::kAuto, Rotate::kYes, Rotate::kNo};
    work_.word(Col::kRotate, kRotates, [](Rotate each) { return std::string_view(each == Rotate::kAuto ? "auto" : each == Rotate::kYes ? "yes" : "no"); }, food.rotate);
    work_.whole(Col::kParLevel, 0, kMaxUnits, food.par_level);
    work_.text(Col::kNote, food.note);
    work_.day(Col::kRetired, food.retired);
  }

  void months(Col col, std::optional<int>& into) {
    std::optional<std::int64_t> value;
    if (into) value = *into;
    work_.whole(col, 0, 600, value);
    into.reset();
    if (value) into = static_cast<int>(*value);
  }

  void keep(const Food* known, Food food) {
    if (known != nullptr && food == *known) {
      first_of(food.key.str());
      ++work_.report.known;
      return;
    }
    auto saved = known != nullptr ? change_food(work_.household, food, work_.when) : add_food(work_.household, food, work_.when);
    if (!saved) {
      work_.fault(known != nullptr || work_.says(Col::kKey) ? Col::kKey : Col::kName, saved.error().what, saved.error().next_step);
      return;
    }
    const Food& kept = saved->report.food;
    if (!first_of(kept.key.str())) return;
    work_.changes.foods.push_back(kept);
    if (known != nullptr) {
      ++work_.report.changed;
      work_.news(work_.line(), RowDid::kChanged, kept.name + ": " + differences(SheetKind::kFoods, cells_of(*known), cells_of(kept)));
    } else {
      ++work_.report.added;
      work_.news(work_.line(), RowDid::kAdded, "food " + kept.name + " (" + kept.key.str() + ")" + (kept.label ? "" : "; label not read"));
    }
  }

  // Remembers the line of a food; a fault when it has one already.
  bool first_of(const std::string& key) {
    const auto [line, fresh] = lines_.emplace(key, work_.line());
    if (!fresh) work_.fault(work_.has(Col::kKey) ? Col::kKey : Col::kName, "the food '" + key + "' stands in line " + std::to_string(line->second) + " already", "leave one of the two rows out, or give the other food a key of its own");
    return fresh;
  }

  SheetWork& work_;
  std::unordered_multimap<std::string, const Food*> by_name_;
  std::unordered_map<std::string, const Food*> by_gtin_;
  std::unordered_map<std::string, std::size_t> lines_;
};

}  // namespace

void import_foods(SheetWork& work, CsvReader& reader) {
  FoodRows rows(work);
  each_row(work, reader, work.report.columns.size(), [&] { rows.row(); });
  rows.finish();
}

}  // namespace larderloop
