#include "larderloop/render/plan_json.h"

#include "larderloop/app/meal_items.h"
#include "render/json_parts.h"

namespace larderloop {
namespace {

using json_parts::Json;

const char* fill_from_name(FillFrom from) {
  switch (from) {
    case FillFrom::kStays:
      return "stays";
    case FillFrom::kOtherBag:
      return "other_bag";
    case FillFrom::kPantry:
      return "pantry";
    case FillFrom::kBuy:
      return "buy";
  }
  return "";
}

Json strings(const std::vector<std::string>& list) {
  Json all = Json::array();
  for (const std::string& each : list) all.push_back(each);
  return all;
}

Json buy_line(const Household& household, const BuyLine& line) {
  Json item;
  json_parts::put_food(item, household, line.food);
  item["kits"] = json::keys(line.kits);
  item["units"] = line.units;
  item["packs"] = line.packs;
  item["pack_units"] = line.pack.units;
  item["shop"] = line.pack.shop.empty() ? Json(nullptr) : Json(line.pack.shop);
  item["price_cents"] = line.packs > 0 ? Json(line.pack.price_cents) : Json(nullptr);
  item["good_through_at_least"] = line.kits.empty() ? Json(nullptr) : Json(iso_day(line.good_through_at_least));
  item["places"] = json::keys(line.places);
  item["for"] = json::keys(line.for_people);
  item["must_not_contain"] = strings(line.must_not_say);
  item["must_not_warn_of"] = strings(line.nor_may_contain);
  Json diets = Json::array();
  for (const Diet diet : line.must_suit) diets.push_back(std::string(diet_name(diet)));
  item["must_suit"] = std::move(diets);
  item["water_ml"] = line.ml > 0 ? Json(line.ml) : Json(nullptr);
  item["read_the_label"] = true;
  return item;
}

Json unmet_list(const std::vector<Unmet>& list) {
  Json all = Json::array();
  for (const Unmet& each : list) {
    all.push_back(Json{{"menu_line", each.line.value()},
                       {"place", each.place.str()},
                       {"units", each.units},
                       {"water_ml", each.ml > 0 ? Json(each.ml) : Json(nullptr)},
                       {"why", each.why}});
  }
  return all;
}

Json level_list(const std::vector<plan::Level>& levels) {
  Json all = Json::array();
  for (const plan::Level& level : levels) {
    all.push_back(Json{{"name", level.name},
                       {"value", level.value},
                       {"bound", level.bound ? Json(*level.bound) : Json(nullptr)},
                       {"proven", level.proven()}});
  }
  return all;
}

Json kit_plan(const Household& household, const KitPlan& plan) {
  Json kit = json_parts::schedule(plan.schedule);
  kit["full"] = plan.full();
  kit["take_out"] = json_parts::leaving(household, plan.leaves);
  kit["wrong_bag"] = json_parts::leaving(household, plan.wrong_bag);
  kit["read_label"] = json_parts::leaving(household, plan.label_needed);
  kit["not_needed"] = json_parts::leaving(household, plan.surplus);
  Json fills = Json::array();
  for (const Fill& fill : plan.fills) {
    Json item{{"from", fill_from_name(fill.from)}, {"menu_line", fill.line.value()}, {"into", fill.place.str()}};
    if (fill.from == FillFrom::kBuy) {
      item["lot"] = nullptr;
      item["place"] = nullptr;
    } else {
      item["lot"] = fill.at.lot.value();
      item["place"] = fill.at.place.str();
    }
    json_parts::put_food(item, household, fill.food);
    item["units"] = fill.units;
    item["good_through"] = json::day(fill.good_through);
    fills.push_back(std::move(item));
  }
  kit["fills"] = std::move(fills);
  Json buy = Json::array();
  for (const BuyLine& line : plan.buy) buy.push_back(buy_line(household, line));
  kit["buy"] = std::move(buy);
  kit["unmet"] = unmet_list(plan.unmet);
  kit["water"] = Json{{"need_ml", plan.water.need_ml},
                      {"have_ml", plan.water.have_ml},
                      {"to_refill", json_parts::leaving(household, plan.water.to_refill)},
                      {"past_date", json_parts::leaving(household, plan.water.past_date)}};
  kit["cost_cents"] = plan.cost_cents;
  kit["levels"] = level_list(plan.levels);
  return kit;
}

Json meal_list(const Household& household, const std::vector<PlannedMeal>& meals) {
  Json all = Json::array();
  for (const PlannedMeal& meal : meals) {
    Json helpings = Json::array();
    for (const Helping& helping : meal.helpings) {
      Json item;
      json_parts::put_position(item, helping.at);
      json_parts::put_food(item, household, helping.food);
      item["person"] = helping.person.str();
      item["amount"] = json::servings(helping.amount);
      item["units_opened"] = helping.opened_units;
      item["good_through"] = json::day(helping.good_through);
      helpings.push_back(std::move(item));
    }
    all.push_back(Json{{"day", iso_day(meal.day)},
                       {"meal", std::string(meal_name(meal.meal))},
                       {"helpings", std::move(helpings)}});
  }
  return all;
}

Json eat_down(const Household& household, const EatDown& eat) {
  Json part;
  part["until"] = iso_day(eat.until);
  part["meals"] = meal_list(household, eat.meals);
  Json give = Json::array();
  for (const GiveAway& each : eat.give_away) {
    Json item{{"by", iso_day(each.by)}};
    json_parts::put_position(item, each.at);
    json_parts::put_food(item, household, each.food);
    item["amount"] = json::servings(each.amount);
    item["good_through"] = json::day(each.good_through);
    give.push_back(std::move(item));
  }
  part["give_away"] = std::move(give);
  Json left = Json::array();
  for (const LeftOver& each : eat.left_over) {
    Json item;
    json_parts::put_position(item, each.at);
    json_parts::put_food(item, household, each.food);
    item["amount"] = json::servings(each.amount);
    item["good_through"] = json::day(each.good_through);
    left.push_back(std::move(item));
  }
  part["left_over"] = std::move(left);
  Json past = Json::array();
  for (const PastDate& each : eat.past) {
    Json item;
    json_parts::put_position(item, each.at);
    json_parts::put_food(item, household, each.food);
    item["amount"] = json::servings(each.amount);
    item["good_through"] = iso_day(each.good_through);
    item["safety_date"] = each.safety;
    past.push_back(std::move(item));
  }
  part["past"] = std::move(past);
  Json waiting = Json::array();
  for (const Waiting& each : eat.waiting) {
    Json item;
    json_parts::put_position(item, each.at);
    json_parts::put_food(item, household, each.food);
    item["state"] = std::string(lot_state_name(each.state));
    waiting.push_back(std::move(item));
  }
  part["waiting"] = std::move(waiting);
  Json wishes = Json::array();
  for (const WishTold& each : eat.wishes) {
    Json item{{"wish", each.wish.value()}, {"day", iso_day(each.day)}, {"meal", std::string(meal_name(each.meal))}};
    json_parts::put_food(item, household, each.food);
    item["person"] = json::text_or_null(each.person.str());
    item["met"] = each.met();
    item["why_not"] = json::text_or_null(each.why);
    wishes.push_back(std::move(item));
  }
  part["wishes"] = std::move(wishes);
  Json skipped = Json::array();
  for (const Skipped& each : eat.skipped) {
    Json item{{"lot", each.lot.value()}};
    json_parts::put_food(item, household, each.food);
    item["times"] = each.times;
    item["people"] = json::keys(each.people);
    item["give_away_by"] = json::day(each.give_by);
    skipped.push_back(std::move(item));
  }
  part["skipped"] = std::move(skipped);
  part["changed"] = strings(eat.changed);
  part["levels"] = level_list(eat.levels);
  // Beside the comparison since the first version: readers may know it.
  const Comparison none;
  const Comparison& beside = eat.comparison ? *eat.comparison : none;
  part["plain_date_order"] =
      Json{{"broken_rules", beside.plain.broken_rules}, {"examples", strings(beside.examples)}};
  part["comparison"] = eat.comparison ? json_parts::comparison(beside) : Json(nullptr);
  return part;
}

}  // namespace

std::string render_plan_json(const Household& household, const PlanReport& report) {
  Json kits = Json::array();
  for (const KitPlan& kit : report.kits) kits.push_back(kit_plan(household, kit));
  return json::document("plan", report.as_of,
                              Json{{"kits", std::move(kits)}, {"eat_down", eat_down(household, report.eat_down)}});
}

std::string render_shop_json(const Household& household, const ShopList& list) {
  Json groups = Json::array();
  for (const ShopGroup& group : list.groups) {
    Json lines = Json::array();
    for (const BuyLine& line : group.lines) lines.push_back(buy_line(household, line));
    groups.push_back(Json{{"shop", group.shop.empty() ? Json(nullptr) : Json(group.shop)},
                          {"cost_cents", group.cost_cents},
                          {"lines", std::move(lines)}});
  }
  return json::document("shop", list.as_of,
                              Json{{"shop_by", json::day(list.shop_by)},
                                   {"currency", household.settings.currency},
                                   {"cost_cents", list.cost_cents},
                                   {"shops", std::move(groups)},
                                   {"unmet", unmet_list(list.unmet)}});
}

}  // namespace larderloop
