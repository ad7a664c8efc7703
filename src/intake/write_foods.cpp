#include "intake/write_sections.h"

namespace larderloop::intake {
namespace {

std::vector<JsonNode> pack_nodes(const std::vector<Pack>& packs) {
  const Pack usual;
  std::vector<JsonNode> nodes;
  for (const Pack& pack : packs) {
    ObjectWriter out;
    out.text("shop", pack.shop)
        .whole("units", pack.units, usual.units)
        .whole("price_cents", pack.price_cents, usual.price_cents);
    nodes.push_back(out.done());
  }
  return nodes;
}

// `opened_days` stands there even when it is 0: finish at that meal.
std::optional<JsonNode> storage_node(const Storage& storage) {
  if (storage == Storage{}) return std::nullopt;
  ObjectWriter out;
  out.maybe("months_short", storage.months_short)
      .maybe("months_long", storage.months_long)
      .add("opened_days", std::int64_t{storage.opened_days})
      .text("source", storage.source);
  return out.done();
}

}  // namespace

JsonNode food_node(const Food& food) {
  const Food usual;
  ObjectWriter out;
  out.add("key", food.key)
      .add("name", std::string_view(food.name))
      .one_of("kind", food.kind, food_kind_names(), usual.kind)
      .text("species", food.species)
      .text("gtin", food.gtin)
      .text("unit", food.unit, usual.unit)
      .whole("servings", food.servings, usual.servings)
      .maybe("mass_g", food.mass_g)
      .maybe("volume_ml", food.volume_ml)
      .maybe("energy_kcal", food.energy_kcal)
      .maybe("sodium_mg", food.sodium_mg)
      .object("label", statement_node(food.label))
      .flag("no_cook", food.no_cook, usual.no_cook)
      .flag("needs_hot_water", food.needs_hot_water)
      .whole("needs_water_ml", food.needs_water_ml, usual.needs_water_ml)
      .flag("needs_opener", food.needs_opener)
      .flag("needs_spoon", food.needs_spoon)
      .flag("refrigerate", food.refrigerate)
      .flag("choking_risk", food.choking_risk)
      .flag("honey", food.honey)
      .flag("is_opener", food.is_opener)
      .flag("is_cutlery", food.is_cutlery)
      .flag("infant_formula", food.infant_formula)
      .flag("home_canned", food.home_canned)
      .flag("self_filled", food.self_filled)
      .flag("staple", food.staple)
      .set_of("meals", food.meals, meal_names())
      .set_of("roles", food.roles, role_names())
      .list("packs", pack_nodes(food.packs))
      .object("storage", storage_node(food.storage))
      .one_of("rotate", food.rotate, rotate_names(), usual.rotate)
      .maybe("par_level", food.par_level)
      .text("note", food.note)
      .maybe("retired", food.retired);
  return out.done();
}

}  // namespace larderloop::intake
