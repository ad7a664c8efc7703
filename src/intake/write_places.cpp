#include "intake/write_sections.h"

namespace larderloop::intake {

JsonNode place_node(const Place& place) {
  const Place usual;
  ObjectWriter out;
  out.add("key", place.key)
      .add("name", std::string_view(place.name))
      .one_of("kind", place.kind, place_kind_names(), usual.kind)
      .key("parent", place.parent)
      .maybe("mass_limit_g", place.mass_limit_g)
      .maybe("volume_limit_ml", place.volume_limit_ml)
      .flag("hot", place.hot)
      .text("note", place.note)
      .maybe("retired", place.retired);
  return out.done();
}

JsonNode review_rule_node(const ReviewRule& rule) {
  ObjectWriter out;
  out.add("kit", rule.kit)
      .add("rule", std::string_view(rule.rule))
      .add("starts", rule.starts)
      .maybe("slack_days", rule.slack_days);
  return out.done();
}

JsonNode menu_line_node(const MenuLine& line) {
  const MenuLine usual;
  ObjectWriter out;
  out.add("id", line.id)
      .add("place", line.place)
      .flag("everyone", line.everyone)
      .keys("people", line.people)
      .whole("day", line.day, usual.day)
      .maybe_one_of("meal", line.meal, meal_names())
      .maybe_one_of("role", line.role, role_names())
      .key("food", line.food)
      .whole("units", line.units, usual.units)
      .whole("ml", line.ml, usual.ml)
      .whole("priority", line.priority, usual.priority);
  return out.done();
}

JsonNode seat_node(const TableSeat& seat) {
  ObjectWriter out;
  out.add("weekday", std::string_view(name_of(seat.weekday, weekday_names())))
      .add("meal", std::string_view(name_of(seat.meal, meal_names())))
      .keys("people", seat.people);
  return out.done();
}

JsonNode exception_node(const TableException& exception) {
  ObjectWriter out;
  out.add("from", exception.from)
      .add("through", exception.through)
      .set_of("meals", exception.meals, meal_names())
      .flag("nobody", exception.nobody)
      .keys("away", exception.away)
      .keys("guests", exception.guests)
      .text("note", exception.note);
  return out.done();
}

JsonNode wish_node(const Wish& wish) {
  ObjectWriter out;
  out.add("id", wish.id)
      .add("kind", std::string_view(name_of(wish.kind, wish_kind_names())))
      .key("food", wish.food)
      .maybe("from", wish.from)
      .maybe("through", wish.through)
      .maybe_one_of("meal", wish.meal, meal_names())
      .maybe("person", wish.person);
  return out.done();
}

}  // namespace larderloop::intake
