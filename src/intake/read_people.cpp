#include "intake/names.h"
#include "intake/read_sections.h"

namespace larderloop::intake {

Settings read_settings(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "settings");
  Settings out;
  in.text("name", out.name);
  in.text("time_zone", out.time_zone);
  in.one_of("region", out.region, region_names());
  in.text("currency", out.currency);
  in.whole("margin_days", out.margin_days);
  in.whole("slack_days", out.slack_days);
  in.whole("donate_days", out.donate_days);
  in.whole("late_days", out.late_days);
  in.servings("tolerance", out.tolerance);
  in.servings("monotony", out.monotony);
  in.whole("variety_cap", out.variety_cap);
  in.one_of("week_starts", out.week_starts, weekday_names());
  in.one_of("shopping_day", out.shopping_day, weekday_names());
  in.one_of("date_order", out.date_order, date_order_names());
  if (const JsonNode* feed = in.member("feed", Need::kOptional))
    out.feed = read_feed_settings(*feed, Path(path, "feed"), findings);
  in.finish();
  return out;
}

OwnAllergen read_own_allergen(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "an allergen of one's own");
  OwnAllergen out;
  in.text("key", out.key, Need::kRequired);
  in.day("since", out.since);
  in.finish();
  return out;
}

namespace {

Avoid read_avoid(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "an avoid item");
  Avoid out;
  in.text("key", out.key, Need::kRequired);
  in.flag("accept_may_contain", out.accept_may_contain);
  in.finish();
  return out;
}

void read_ratings(Reader& in, std::map<FoodKey, int>& out) {
  constexpr int kMostLiked = 2;
  const JsonNode* node = in.member("ratings", Need::kOptional);
  if (node == nullptr) return;
  const Path path(in.path(), "ratings");
  if (node->type != JsonType::kObject) {
    in.findings().add(path, node, "an object of food keys and ratings is wanted here",
                      "write it as {\"lentil-pouch\": 2}");
    return;
  }
  for (std::size_t at = 0; at < node->items.size(); ++at) {
    const Path here(path, node->names[at]);
    const auto rating = read_whole(node->items[at], here, in.findings(), -kMostLiked, kMostLiked);
    if (!is_key(node->names[at])) {
      in.findings().add(here, &node->items[at], "'" + node->names[at] + "' is not a food key",
                        "write the key of a food");
    } else if (rating && *rating != 0) {  // neutral is not kept
      out.emplace(FoodKey(node->names[at]), static_cast<int>(*rating));
    }
  }
}

}  // namespace

Person read_person(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a person");
  Person out;
  in.key("key", out.key);
  in.text("name", out.name, Need::kRequired);
  in.text("species", out.species);
  in.day("born", out.born);
  in.servings("appetite", out.appetite);
  in.servings("tolerance", out.tolerance);
  in.whole("energy_kcal", out.energy_kcal);
  in.one_of("sex", out.sex, sex_names());
  in.whole("height_cm", out.height_cm);
  in.whole("mass_g", out.mass_g);
  in.one_of("activity", out.activity, activity_names());
  in.each("avoid", Need::kOptional, [&](const JsonNode& item, const Path& here) {
    out.avoid.push_back(read_avoid(item, here, findings));
  });
  in.set_of("diets", out.diets, diet_names());
  read_ratings(in, out.ratings);
  in.text("note", out.note);
  in.day("retired", out.retired);
  in.finish();
  return out;
}

}  // namespace larderloop::intake
