#include "intake/write_sections.h"

namespace larderloop::intake {

JsonNode settings_node(const Settings& settings) {
  const Settings usual;
  ObjectWriter out;
  out.text("name", settings.name, usual.name)
      .text("time_zone", settings.time_zone)
      .one_of("region", settings.region, region_names(), usual.region)
      .text("currency", settings.currency, usual.currency)
      .whole("margin_days", settings.margin_days, usual.margin_days)
      .whole("slack_days", settings.slack_days, usual.slack_days)
      .whole("donate_days", settings.donate_days, usual.donate_days)
      .whole("late_days", settings.late_days, usual.late_days)
      .servings("tolerance", settings.tolerance, usual.tolerance)
      .servings("monotony", settings.monotony, usual.monotony)
      .whole("variety_cap", settings.variety_cap, usual.variety_cap)
      .one_of("week_starts", settings.week_starts, weekday_names(), usual.week_starts)
      .one_of("shopping_day", settings.shopping_day, weekday_names(), usual.shopping_day)
      .one_of("date_order", settings.date_order, date_order_names(), usual.date_order)
      .object("feed", feed_settings_node(settings.feed));
  return out.done();
}

JsonNode own_allergen_node(const OwnAllergen& own) {
  ObjectWriter out;
  out.add("key", std::string_view(own.key)).add("since", own.since);
  return out.done();
}

namespace {

std::vector<JsonNode> avoid_nodes(const std::vector<Avoid>& avoid) {
  std::vector<JsonNode> nodes;
  for (const Avoid& item : avoid) {
    ObjectWriter out;
    out.add("key", std::string_view(item.key)).flag("accept_may_contain", item.accept_may_contain);
    nodes.push_back(out.done());
  }
  return nodes;
}

std::optional<JsonNode> ratings_node(const std::map<FoodKey, int>& ratings) {
  if (ratings.empty()) return std::nullopt;
  ObjectWriter out;
  for (const auto& [food, rating] : ratings) out.add(food.str(), std::int64_t{rating});
  return out.done();
}

}  // namespace

JsonNode person_node(const Person& person) {
  const Person usual;
  ObjectWriter out;
  out.add("key", person.key)
      .add("name", std::string_view(person.name))
      .text("species", person.species, usual.species)
      .maybe("born", person.born)
      .servings("appetite", person.appetite, usual.appetite);
  if (person.tolerance) out.add("tolerance", servings_node(*person.tolerance));
  out.maybe("energy_kcal", person.energy_kcal)
      .maybe_one_of("sex", person.sex, sex_names())
      .maybe("height_cm", person.height_cm)
      .maybe("mass_g", person.mass_g)
      .maybe_one_of("activity", person.activity, activity_names())
      .list("avoid", avoid_nodes(person.avoid))
      .set_of("diets", person.diets, diet_names())
      .object("ratings", ratings_node(person.ratings))
      .text("note", person.note)
      .maybe("retired", person.retired);
  return out.done();
}

}  // namespace larderloop::intake
