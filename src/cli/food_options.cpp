#include "cli/food_options.h"

#include "cli/values.h"
#include "larderloop/core/amount.h"
#include "larderloop/core/validate.h"

#include <limits>

namespace larderloop::cli {
namespace {

constexpr std::int64_t kMostSodium = 100'000;
constexpr std::int64_t kMaxMonths = 600;
constexpr std::int64_t kMaxOpenedDays = 3650;

void add_switch(CLI::App& app, const std::string& name, std::optional<bool>& into,
                const std::string& description) {
  app.add_flag_callback(
         "--" + name, [&into] { into = true; }, description)
      ->group("Properties (each also as --no-...)");
  app.add_flag_callback(
         "--no-" + name, [&into] { into = false; }, "")
      ->group("");
}

template <class Value>
Status put(const std::string& text, Result<Value> (*read)(const std::string&, const std::string&),
           const std::string& what, std::optional<Value>& into) {
  if (text.empty()) return {};
  auto value = read(what, text);
  if (!value) return fail(value.error());
  into = *value;
  return {};
}

// What "none" takes away, and may be left out of a food.
template <class Value, class Put>
Status put_or_none(const std::string& text, std::optional<Value>& into, Put put) {
  if (text != "none") return put();
  into.reset();
  return {};
}

Status put_count(const std::string& text, const std::string& what, std::int64_t least,
                 std::int64_t most, std::optional<std::int64_t>& into) {
  if (text.empty()) return {};
  auto value = read_count(what, text, least, most);
  if (!value) return fail(value.error());
  into = *value;
  return {};
}

// "6-12": both ends of how many months it keeps; "6": the short end alone, nothing is known of the
// long one.
Status put_months(const std::string& text, Storage& storage) {
  if (text.empty()) return {};
  if (text == "none") {
    storage.months_short.reset();
    storage.months_long.reset();
    return {};
  }
  const std::size_t dash = text.find('-');
  std::optional<std::int64_t> first, last;
  if (Status read = put_count(text.substr(0, dash), "--keeps-months", 1, kMaxMonths, first); !read)
    return read;
  if (dash != std::string::npos) {
    if (Status read = put_count(text.substr(dash + 1), "--keeps-months", 1, kMaxMonths, last);
        !read)
      return read;
  }
  if (!first || (dash != std::string::npos && (!last || *last < *first))) {
    return fail(ErrorKind::kBadData, "cannot read --keeps-months '" + text + "'",
                "write both ends, as 12-18, or one number");
  }
  storage.months_short = static_cast<int>(*first);
  storage.months_long.reset();
  if (last) storage.months_long = static_cast<int>(*last);
  return {};
}

std::optional<Rotate> parse_rotate(std::string_view text) {
  if (text == "auto") return Rotate::kAuto;
  if (text == "yes") return Rotate::kYes;
  if (text == "no") return Rotate::kNo;
  return std::nullopt;
}

Status apply_numbers(const FoodOptions& given, Food& food) {
  std::optional<std::int64_t> servings, water, opened;
  for (const Status& each :
       {put_count(given.servings, "--servings", 1, kMaxServingsPerUnit, servings),
        put_or_none(given.mass, food.mass_g,
                    [&] { return put(given.mass, read_mass, "--mass", food.mass_g); }),
        put_or_none(given.volume, food.volume_ml,
                    [&] { return put(given.volume, read_volume, "--volume", food.volume_ml); }),
        put_or_none(given.energy, food.energy_kcal,
                    [&] { return put(given.energy, read_energy, "--energy", food.energy_kcal); }),
        put_or_none(
            given.sodium, food.sodium_mg,
            [&] { return put_count(given.sodium, "--sodium", 0, kMostSodium, food.sodium_mg); }),
        put(given.needs_water, read_volume, "--needs-water", water),
        put_count(given.opened_days, "--opened-days", 0, kMaxOpenedDays, opened),
        put_or_none(given.par, food.par_level,
                    [&] { return put_count(given.par, "--par", 0, kMaxUnits, food.par_level); }),
        put_months(given.months, food.storage)}) {
    if (!each) return each;
  }
  if (servings) food.servings = *servings;
  if (water) food.needs_water_ml = *water;
  if (opened) food.storage.opened_days = static_cast<int>(*opened);
  return {};
}

Status apply_words(const FoodOptions& given, Food& food) {
  if (!given.kind.empty()) {
    auto kind = read_food_kind("--kind", given.kind);
    if (!kind) return fail(kind.error());
    food.kind = *kind;
  }
  if (!given.rotate.empty()) {
    auto rotate = read_word<Rotate>("--rotate", given.rotate, parse_rotate, {"auto", "yes", "no"});
    if (!rotate) return fail(rotate.error());
    food.rotate = *rotate;
  }
  if (!given.meals.empty()) {
    auto meals = read_meals("--meal", given.meals);
    if (!meals) return fail(meals.error());
    food.meals = *meals;
  }
  if (!given.roles.empty()) {
    auto roles = read_roles("--role", given.roles);
    if (!roles) return fail(roles.error());
    food.roles = *roles;
  }
  if (given.gtin == "none") {
    food.gtin.clear();
  } else if (!given.gtin.empty()) {
    food.gtin = normal_gtin(given.gtin);
    if (food.gtin.empty()) {
      return fail(
          ErrorKind::kBadData,
          "'" + given.gtin +
              "' is no GTIN: the check digit is wrong, or there are not 8, 12, 13 or 14 digits",
          "type the digits below the barcode again");
    }
  }
  if (!given.packs.empty()) food.packs.clear();
  for (const std::string& text : given.packs) {
    if (text == "none") continue;
    auto pack = read_pack("--pack", text);
    if (!pack) return fail(pack.error());
    food.packs.push_back(*pack);
  }
  return {};
}

}  // namespace

void add_food_options(CLI::App& app, FoodOptions& given) {
  add_text(app, "--kind", given.kind, "KIND", "food if left out; drink, water, pet-food, thing");
  add_text(app, "--species", given.species, "WORD", "Pet food: whose");
  add_text(app, "--gtin", given.gtin, "DIGITS",
           "The trade item number (GTIN): the digits below the barcode");
  add_text(app, "--unit", given.unit, "WORD", "What one unit is called: pouch, can, bottle");
  add_text(app, "--servings", given.servings, "N", "Whole servings in a unit");
  add_text(app, "--mass", given.mass, "AMOUNT", "Of one unit as packed, as 250g");
  add_text(app, "--volume", given.volume, "AMOUNT", "Of one unit, as 330ml; for water its content");
  add_text(app, "--energy", given.energy, "KCAL", "Of one unit, as 310kcal");
  add_text(app, "--sodium", given.sodium, "MG",
           "Sodium of one unit in milligrams; salt is 2.5 times that");
  add_text(app, "--needs-water", given.needs_water, "AMOUNT",
           "Cold drinking water that a unit uses up, as 200ml");
  add_list(app, "--meal", given.meals, "MEALS",
           "Household meals it suits: breakfast, lunch, dinner, snack");
  add_list(
      app, "--role", given.roles, "ROLES",
      "What it can be in a kit: main, side, fruit, snack, drink, comfort, pet-meal, water, thing");
  app.add_option("--pack", given.packs,
                 "How a shop sells it, as 'Corner shop:6:8.40'; may be repeated")
      ->allow_extra_args(false)
      ->type_name("SHOP:UNITS:PRICE");
  add_text(app, "--keeps-months", given.months, "N-M",
           "Unopened from purchase, by a published table, as 12-18");
  add_text(app, "--opened-days", given.opened_days, "N", "Opened; 0 is finish at that meal");
  add_text(app, "--storage-source", given.storage_source, "TEXT", "The publication of these times");
  add_text(app, "--rotate", given.rotate, "WORD",
           "Work it into meals from the pantry: yes, no; auto: when some kit can use it");
  add_text(app, "--par", given.par, "N",
           "Par level: units meant to be on hand in the pantry; shop --pantry tops up to it");
  add_text(app, "--note", given.note, "TEXT", "A remark");
  add_switch(app, "needs-cooking", given.cooking, "Cannot be eaten as it is");
  add_switch(app, "needs-hot-water", given.hot_water, "Never counts as a meal of a kit");
  add_switch(app, "needs-opener", given.opener, "The kit needs an opener for it");
  add_switch(app, "needs-spoon", given.spoon, "Cannot be eaten without cutlery");
  add_switch(app, "refrigerate", given.refrigerate, "The package says to keep it refrigerated");
  add_switch(app, "choking-risk", given.choking, "Hard, round or sticky: not under four years");
  add_switch(app, "honey", given.honey, "Has honey in it: not under one year");
  add_switch(app, "is-opener", given.is_opener, "A thing that opens cans");
  add_switch(app, "is-cutlery", given.is_cutlery, "A thing to eat with");
  add_switch(app, "infant-formula", given.formula, "Its use-by date is a safety date");
  add_switch(app, "home-canned", given.home_canned, "Never given away");
  add_switch(app, "self-filled", given.self_filled, "Water filled at home: due after six months");
  add_switch(app, "staple", given.staple,
             "May be eaten every day: the rules for variety leave it out");
  add_label_options(app, given.label, "--label-read-by", "");
}

Status apply_food_options(const FoodOptions& given, Day today, Food& food) {
  if (Status words = apply_words(given, food); !words) return words;
  if (Status numbers = apply_numbers(given, food); !numbers) return numbers;
  if (!given.species.empty()) food.species = given.species;
  if (!given.unit.empty()) food.unit = given.unit;
  if (!given.storage_source.empty()) food.storage.source = given.storage_source;
  if (!given.note.empty()) food.note = given.note == "none" ? "" : given.note;
  if (given.cooking) food.no_cook = !*given.cooking;
  if (given.hot_water) food.needs_hot_water = *given.hot_water;
  if (given.opener) food.needs_opener = *given.opener;
  if (given.spoon) food.needs_spoon = *given.spoon;
  if (given.refrigerate) food.refrigerate = *given.refrigerate;
  if (given.choking) food.choking_risk = *given.choking;
  if (given.honey) food.honey = *given.honey;
  if (given.is_opener) food.is_opener = *given.is_opener;
  if (given.is_cutlery) food.is_cutlery = *given.is_cutlery;
  if (given.formula) food.infant_formula = *given.formula;
  if (given.home_canned) food.home_canned = *given.home_canned;
  if (given.self_filled) food.self_filled = *given.self_filled;
  if (given.staple) food.staple = *given.staple;
  auto label = read_label(given.label, "--label-read-by", "");
  if (!label) return fail(label.error());
  if (*label) {
    Statement statement;
    for (const std::string& key : (*label)->may_contain)
      statement.declared[key] = Declared::kMayContain;
    for (const std::string& key : (*label)->contains) statement.declared[key] = Declared::kContains;
    statement.suits = (*label)->suits;
    statement.read_by = (*label)->read_by;
    statement.read_on = today;
    food.label = statement;
  }
  return {};
}

}  // namespace larderloop::cli
