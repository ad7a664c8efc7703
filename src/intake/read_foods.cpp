#include "intake/names.h"
#include "intake/read_sections.h"

namespace larderloop::intake {
namespace {

Pack read_pack(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a pack");
  Pack out;
  in.text("shop", out.shop);
  in.whole("units", out.units);
  in.whole("price_cents", out.price_cents);
  in.finish();
  return out;
}

Storage read_storage(Reader& food) {
  const JsonNode* node = food.member("storage", Need::kOptional);
  if (node == nullptr) return {};
  const Path path(food.path(), "storage");
  Reader in(*node, path, food.findings(), "storage");
  Storage out;
  in.whole("months_short", out.months_short);
  in.whole("months_long", out.months_long);
  in.whole("opened_days", out.opened_days);
  in.text("source", out.source);
  in.finish();
  return out;
}

}  // namespace

Food read_food(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a food");
  Food out;
  in.key("key", out.key);
  in.text("name", out.name, Need::kRequired);
  in.one_of("kind", out.kind, food_kind_names());
  in.text("species", out.species);
  in.text("gtin", out.gtin);
  in.text("unit", out.unit);
  in.whole("servings", out.servings);
  in.whole("mass_g", out.mass_g);
  in.whole("volume_ml", out.volume_ml);
  in.whole("energy_kcal", out.energy_kcal);
  in.whole("sodium_mg", out.sodium_mg);
  out.label = read_statement(in, "label");
  in.flag("no_cook", out.no_cook);
  in.flag("needs_hot_water", out.needs_hot_water);
  in.whole("needs_water_ml", out.needs_water_ml);
  in.flag("needs_opener", out.needs_opener);
  in.flag("needs_spoon", out.needs_spoon);
  in.flag("refrigerate", out.refrigerate);
  in.flag("choking_risk", out.choking_risk);
  in.flag("honey", out.honey);
  in.flag("is_opener", out.is_opener);
  in.flag("is_cutlery", out.is_cutlery);
  in.flag("infant_formula", out.infant_formula);
  in.flag("home_canned", out.home_canned);
  in.flag("self_filled", out.self_filled);
  in.flag("staple", out.staple);
  in.set_of("meals", out.meals, meal_names());
  in.set_of("roles", out.roles, role_names());
  in.each("packs", Need::kOptional, [&](const JsonNode& item, const Path& here) {
    out.packs.push_back(read_pack(item, here, findings));
  });
  out.storage = read_storage(in);
  in.one_of("rotate", out.rotate, rotate_names());
  in.whole("par_level", out.par_level);
  in.text("note", out.note);
  in.day("retired", out.retired);
  in.finish();
  return out;
}

}  // namespace larderloop::intake
