#include "intake/names.h"
#include "intake/read_sections.h"

namespace larderloop::intake {

Place read_place(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a place");
  Place out;
  in.key("key", out.key);
  in.text("name", out.name, Need::kRequired);
  in.one_of("kind", out.kind, place_kind_names());
  in.key("parent", out.parent, Need::kOptional);
  in.whole("mass_limit_g", out.mass_limit_g);
  in.whole("volume_limit_ml", out.volume_limit_ml);
  in.flag("hot", out.hot);
  in.text("note", out.note);
  in.day("retired", out.retired);
  in.finish();
  return out;
}

ReviewRule read_review_rule(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a review rule");
  ReviewRule out;
  in.key("kit", out.kit);
  in.text("rule", out.rule, Need::kRequired);
  in.day("starts", out.starts);
  in.whole("slack_days", out.slack_days);
  in.finish();
  return out;
}

MenuLine read_menu_line(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a menu line");
  MenuLine out;
  in.id("id", out.id);
  in.key("place", out.place);
  in.flag("everyone", out.everyone);
  in.keys("people", out.people);
  in.whole("day", out.day);
  in.one_of("meal", out.meal, meal_names());
  in.one_of("role", out.role, role_names());
  in.key("food", out.food, Need::kOptional);
  in.whole("units", out.units);
  in.whole("ml", out.ml);
  in.whole("priority", out.priority);
  if (in.is_object() && out.ml != 0 && out.units != MenuLine{}.units) {
    in.fault("a line counts either 'units' or 'ml', not both",
             "keep ml for water, units for anything else");
  }
  in.finish();
  return out;
}

TableSeat read_seat(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a meal of the week");
  TableSeat out;
  in.one_of("weekday", out.weekday, weekday_names(), Need::kRequired);
  in.one_of("meal", out.meal, meal_names(), Need::kRequired);
  in.keys("people", out.people);
  in.finish();
  return out;
}

TableException read_exception(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "an exception");
  TableException out;
  in.day("from", out.from);
  in.day("through", out.through);
  in.set_of("meals", out.meals, meal_names());
  in.flag("nobody", out.nobody);
  in.keys("away", out.away);
  in.keys("guests", out.guests);
  in.text("note", out.note);
  in.finish();
  return out;
}

Wish read_wish(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a wish");
  Wish out;
  in.id("id", out.id);
  in.one_of("kind", out.kind, wish_kind_names(), Need::kRequired);
  in.key("food", out.food, Need::kOptional);
  in.day("from", out.from);
  in.day("through", out.through);
  in.one_of("meal", out.meal, meal_names());
  in.key("person", out.person);
  in.finish();
  return out;
}

}  // namespace larderloop::intake
