#include "larderloop/render/kit_check.h"
#include "render/json_common.h"

namespace larderloop {
namespace {

using json::Json;

template <class List, class One>
Json array_of(const List& list, One one) {
  Json all = Json::array();
  for (const auto& each : list) all.push_back(one(each));
  return all;
}

Json finding_of(const KitFinding& each) {
  return {{"gravity", gravity_name(each.gravity)},
          {"topic", topic_name(each.topic)},
          {"place", each.place.str()},
          {"person", each.person ? Json(each.person->str()) : Json(nullptr)},
          {"day", each.day > 0 ? Json(each.day) : Json(nullptr)},
          {"meal", each.meal ? Json(meal_name(*each.meal)) : Json(nullptr)},
          {"line", each.line.empty() ? Json(nullptr) : Json(each.line.value())},
          {"lot", each.lot.empty() ? Json(nullptr) : Json(each.lot.value())},
          {"food", json::text_or_null(each.food.str())},
          {"what", each.what},
          {"todo", each.todo}};
}

Json need_of(const PersonNeed& each) {
  Json all;
  all["person"] = each.person.str();
  all["low"] = each.need ? json::quantity(each.need->low_kcal, "kcal") : Json(nullptr);
  all["high"] = each.need ? json::quantity(each.need->high_kcal, "kcal") : Json(nullptr);
  all["inputs"] = each.need ? Json(each.need->inputs) : Json(nullptr);
  all["sources"] = each.need ? Json(each.need->sources) : Json::array();
  all["why_not"] = json::text_or_null(each.why_not);
  return all;
}

Json lot_of(const LotStands& each) {
  Json all = json::stock_key(each.at);
  all["food"] = each.food.str();
  all["amount"] = json::servings(each.amount);
  all["good_through"] = json::day(each.good_through);
  all["plan_through"] = json::day(each.plan_through);
  all["today"] = stand_name(each.today);
  all["at_review"] = stand_name(each.at_review);
  all["at_hold"] = stand_name(each.at_hold);
  return all;
}

Json kit_of_check(const KitCheck& check) {
  Json all;
  all["kit"] = check.schedule.kit.str();
  all["ready"] = check.ready();
  all["days"] = check.days;
  all["next_review"] = json::day(check.schedule.next.day);
  all["hold_until"] = json::day(check.schedule.hold_until);
  all["findings"] = array_of(check.findings, finding_of);
  all["needs"] = array_of(check.needs, need_of);
  all["eaten"] = array_of(check.eaten, [](const DayFood& each) {
    return Json{{"person", each.person.str()},
                {"day", each.day},
                {"energy", json::quantity(each.kcal, "kcal")},
                {"sodium", json::quantity(each.sodium_mg, "mg")},
                {"units_without_energy", each.unknown_energy},
                {"units_without_sodium", each.unknown_sodium}};
  });
  all["water"] = {{"people_drink", json::quantity(check.water.need.people_drink, "ml")},
                  {"pets_drink", json::quantity(check.water.need.pets_drink, "ml")},
                  {"food_needs", json::quantity(check.water.food_ml, "ml")},
                  {"with_washing", json::quantity(check.water.need.all, "ml")},
                  {"menu_asks", json::quantity(check.water.menu_ml, "ml")},
                  {"here", json::quantity(check.water.have_ml, "ml")}};
  all["carried"] = array_of(check.carried, [](const Carried& each) {
    return Json{{"place", each.place.str()},
                {"mass", json::quantity(each.mass_g, "g")},
                {"water", json::quantity(each.water_g, "g")},
                {"volume", json::quantity(each.volume_ml, "ml")},
                {"unweighed_units", each.unweighed},
                {"unmeasured_units", each.unmeasured}};
  });
  all["adults"] = check.adults;
  all["lift_limit"] =
      json::quantity(static_cast<std::int64_t>(check.lift_limit_kg * 1000 + 0.5), "g");
  all["lots"] = array_of(check.lots, lot_of);
  return all;
}

}  // namespace

std::string render_kit_checks_json(const Household&, const std::vector<KitCheck>& checks,
                                   Day as_of) {
  return json::document("kit_check", as_of, {{"kits", array_of(checks, kit_of_check)}});
}

}  // namespace larderloop
