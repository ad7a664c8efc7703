// The columns of the spreadsheets. The other words for them are collected here in general use, none of them is anybody's format.
#include "larderloop/intake/sheet_columns.h"

namespace larderloop {

const std::vector<ColumnInfo>& sheet_columns(SheetKind sheet) {
  static const std::vector<ColumnInfo> foods = {
      {Col::kKey, "key", "Short name for commands; made from the name when it is empty", "lentil-stew"},
      {Col::kName, "name", "What people call it", "Lentil stew"},
      {Col::kKind, "kind", "food, drink, water, pet_food or thing", "food"},
      {Col::kSpecies, "species", "Pet food: whose", "cat"},
      {Col::kGtin, "gtin", "The digits under the barcode", "09520000000110"},
      {Col::kUnit, "unit", "What one is called: pouch, can, jar", "pouch"},
      {Col::kServings, "servings", "Whole servings in one", "1"},
      {Col::kMass, "mass_g", "Mass of one as packed, in grams", "250"},
      {Col::kVolume, "volume_ml", "Volume of one in millilitres; for water its content", ""},
      {Col::kEnergy, "energy_kcal", "Energy of one in kilocalories", "310"},
      {Col::kSodium, "sodium_mg", "Sodium of one in milligrams", "900"},
      {Col::kContains, "contains", "Allergens the label declares: keys with ; between, or none; empty: nobody read it", "mustard"},
      {Col::kMayContain, "may_contain", "Allergens the label warns of, or none; empty: nobody read it", "none"},
      {Col::kSuits, "suits", "Diets the label supports", "vegan; gluten_free"},
      {Col::kReadBy, "label_read_by", "Who read the label", "Mira"},
      {Col::kReadOn, "label_read_on", "When it was read", "2026-10-03"},
      {Col::kNeedsCooking, "needs_cooking", "yes: cannot be eaten as it is", "no"},
      {Col::kNeedsHotWater, "needs_hot_water", "yes: never counts as a meal of a kit", "no"},
      {Col::kNeedsWater, "needs_water_ml", "Cold drinking water one uses up, in millilitres", "0"},
      {Col::kNeedsOpener, "needs_opener", "yes: the kit needs an opener for it", "no"},
      {Col::kNeedsSpoon, "needs_spoon", "yes: cannot be eaten without cutlery", "yes"},
      {Col::kRefrigerate, "refrigerate", "yes: the package says to keep it refrigerated", "no"},
      {Col::kChokingRisk, "choking_risk", "yes: hard, round or sticky; not under four years", "no"},
      {Col::kHoney, "honey", "yes: has honey in it; not under one year", "no"},
      {Col::kIsOpener, "is_opener", "yes: a thing that opens cans", "no"},
      {Col::kIsCutlery, "is_cutlery", "yes: a thing to eat with", "no"},
      {Col::kInfantFormula, "infant_formula", "yes: its use-by date is a safety date", "no"},
      {Col::kHomeCanned, "home_canned", "yes: never given away", "no"},
      {Col::kSelfFilled, "self_filled", "yes: water filled at home", "no"},
      {Col::kStaple, "staple", "yes: may be eaten every day", "no"},
      {Col::kMeals, "meals", "Household meals it suits: breakfast, lunch, dinner, snack", "lunch; dinner"},
      {Col::kRoles, "roles", "What it can be in a kit: main, side, fruit, snack, drink, comfort, pet_meal, water, thing", "main"},
      {Col::kPacks, "packs", "How shops sell it: shop:units:price, with ; between", "Corner shop:6:8.40"},
      {Col::kKeepsFrom, "keeps_months_from", "Months it keeps unopened, the shorter end", "12"},
      {Col::kKeepsTo, "keeps_months_to", "The longer end", "18"},
      {Col::kOpenedDays, "opened_days", "Days it keeps once opened; 0: finish at that meal", "2"},
      {Col::kStorageSource, "storage_source", "The publication of these times", ""},
      {Col::kRotate, "rotate", "Work it into meals from the pantry: auto, yes, no", "auto"},
      {Col::kParLevel, "par_level", "Units meant to be on hand in the pantry", "6"},
      {Col::kNote, "note", "A remark", ""},
      {Col::kRetired, "retired", "The day since when it is kept no more", ""}};
  static const std::vector<ColumnInfo> lots = {
      {Col::kLot, "lot", "Number of a lot that the book has; empty: a new one", ""},
      {Col::kFood, "food", "Key, name or barcode digits of the food", "lentil-stew"},
      {Col::kPlace, "place", "Key or name of the place it lies in", "pantry"},
      {Col::kUnits, "units", "How many sealed units lie there", "6"},
      {Col::kOpenedOn, "opened_on", "For what is open: the day it was opened", ""},
      {Col::kServingsLeft, "servings_left", "For what is open: servings left in it", ""},
      {Col::kDate, "date", "The date as printed, or none", "best before end 08 2027"},
      {Col::kDateKind, "date_kind", "best_before, use_by, sell_by, packed_on, produced_on; when the date has no words", "best_before"},
      {Col::kDateDay, "date_day", "The day it comes to; may be left empty", "2027-08-31"},
      {Col::kDatePrecision, "date_precision", "day, month or year; may be left empty", "month"},
      {Col::kLotCode, "lot_code", "The code printed beside the date", "L6074"},
      {Col::kReceived, "received", "The day it came", "2026-10-03"},
      {Col::kContains, "contains", "Allergens this very label declares, or none, or same: as last time; empty: nobody read it", "mustard"},
      {Col::kMayContain, "may_contain", "Allergens it warns of, or none; empty: nobody read it", "none"},
      {Col::kSuits, "suits", "Diets it supports", "vegan"},
      {Col::kReadBy, "label_read_by", "Who read the label", "Mira"},
      {Col::kReadOn, "label_read_on", "When it was read", "2026-10-03"},
      {Col::kState, "state", "ok, doubtful or recalled", "ok"},
      {Col::kPaid, "paid", "What these units cost together", "8.40"},
      {Col::kNote, "note", "A remark", ""}};
  static const std::vector<ColumnInfo> people = {
      {Col::kKey, "key", "Short name for commands; made from the name when it is empty", "mira"},
      {Col::kName, "name", "What people call them", "Mira"},
      {Col::kSpecies, "species", "human; for a pet cat, dog, ...", "human"},
      {Col::kBorn, "born", "Day of birth", "1988-04-02"},
      {Col::kAvoid, "avoid", "What they must not have, 'may contain' included: keys with ; between, or none", "sesame; tree_nut:almond"},
      {Col::kAvoidAccepting, "avoid_accepting_may_contain", "Likewise, where they accept 'may contain'", "none"},
      {Col::kAvoidOwn, "avoid_own", "Likewise, things that no list knows", "kiwi"},
      {Col::kDiets, "diets", "Diets they keep", "vegetarian"},
      {Col::kAppetite, "appetite", "Servings at one meal, in halves", "1"},
      {Col::kTolerance, "tolerance", "Servings of kit food in one week at most", ""},
      {Col::kEnergy, "energy_kcal", "Energy wanted a day from a kit, in kilocalories", ""},
      {Col::kSex, "sex", "female or male, for estimates of need", ""},
      {Col::kHeight, "height_cm", "Height in centimetres, for the same", ""},
      {Col::kBodyMass, "body_mass_kg", "Mass of the body in kilograms, for the same", ""},
      {Col::kActivity, "activity", "inactive, low_active, active, very_active", ""},
      {Col::kRatings, "ratings", "food:number from -2 (refuses) to 2, with ; between", "lentil-stew:2"},
      {Col::kNote, "note", "A remark", ""},
      {Col::kRetired, "retired", "The day since when they belong to the household no more", ""}};
  static const std::vector<ColumnInfo> menu = {
      {Col::kLine, "line", "Number of a line that the book has; empty: a new one", ""},
      {Col::kPlace, "place", "Key or name of the bag, box or kit", "bag-mira"},
      {Col::kFor, "for", "People with ; between, everyone, or nobody (for a thing)", "mira"},
      {Col::kDay, "day", "Day of the kit from 1; any for any", "1"},
      {Col::kMeal, "meal", "breakfast, lunch, dinner, snack; any for any", "dinner"},
      {Col::kRole, "role", "main, side, fruit, snack, drink, comfort, pet_meal, water or thing", "main"},
      {Col::kFood, "food", "This very food instead of a role", ""},
      {Col::kUnits, "units", "How many packages", "1"},
      {Col::kVolume, "volume_ml", "For water: how much, in millilitres", ""},
      {Col::kPriority, "priority", "1 to 100: what is filled first; empty: by role", ""}};
  switch (sheet) {
    case SheetKind::kFoods:
      return foods;
    case SheetKind::kLots:
      return lots;
    case SheetKind::kPeople:
      return people;
    case SheetKind::kMenu:
      break;
  }
  return menu;
}

std::string_view column_name(SheetKind sheet, Col col) {
  for (const ColumnInfo& each : sheet_columns(sheet)) {
    if (each.col == col) return each.name;
  }
  return {};
}

}  // namespace larderloop
