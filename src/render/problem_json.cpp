#include "larderloop/render/problem_json.h"

#include "render/json_common.h"

namespace larderloop {
namespace {

using json::Json;

std::string kind_name(plan::Kind kind) {
  switch (kind) {
    case plan::Kind::kBreakfast:
      return "breakfast";
    case plan::Kind::kLunch:
      return "lunch";
    case plan::Kind::kDinner:
      return "dinner";
    case plan::Kind::kSnack:
      return "snack";
  }
  return "snack";
}

template <class List, class Write>
Json list_of(const List& list, Write write) {
  Json all = Json::array();
  for (const auto& each : list) all.push_back(write(each));
  return all;
}

template <class Map>
void put_map(Json& into, const char* name, const Map& map) {
  if (map.empty()) return;
  Json object = Json::object();
  for (const auto& [id, value] : map) object[id] = value;
  into[name] = std::move(object);
}

template <class Set>
void put_list(Json& into, const char* name, const Set& set) {
  if (!set.empty()) into[name] = set;
}

void put(Json& into, const char* name, const std::optional<std::int64_t>& value) {
  if (value) into[name] = *value;
}

void put_tastes(Json& into, const plan::Eater& eater) {
  into["id"] = eater.id;
  put_list(into, "avoid", eater.avoid);
  put_map(into, "ratings", eater.ratings);
}

Json serving(const plan::MealServing& each) {
  return {{"product", each.product},
          {"meal", each.meal},
          {"eater", each.eater},
          {"servings", each.servings}};
}

Json eater_of_meals(const plan::Eater& eater) {
  Json item;
  put_tastes(item, eater);
  put(item, "tolerance", eater.tolerance);
  put(item, "monotony", eater.monotony);
  put_map(item, "eaten_this_week", eater.eaten_this_week);
  return item;
}

Json product(const plan::EatProduct& each) {
  return {{"id", each.id},
          {"servings", each.servings},
          {"open_days", each.open_days},
          {"kinds", list_of(each.kinds, kind_name)},
          {"contains", each.contains}};
}

Json lot(const plan::EatLot& each) {
  Json item{{"id", each.id},
            {"product", each.product},
            {"units", each.units},
            {"last_good_day", each.last_good_day}};
  put(item, "available_from", each.available_from);
  if (each.already_open) {
    item["already_open"] = true;
    item["open_servings"] = each.open_servings;
  }
  if (!each.may_donate) item["may_donate"] = false;
  return item;
}

Json meal(const plan::EatMeal& each) {
  Json item{
      {"id", each.id}, {"day", each.day}, {"kind", kind_name(each.kind)}, {"eaters", each.eaters}};
  put_map(item, "appetite", each.appetite);
  put_list(item, "without", each.without);
  return item;
}

void put_problem(Json& all, const plan::EatDownProblem& problem) {
  all["today"] = problem.today;
  all["week_start"] = problem.week_start;
  all["horizon_days"] = problem.horizon_days;
  all["params"] = Json{{"donate_days", problem.donate_days},
                       {"late_days", problem.late_days},
                       {"tolerance", problem.tolerance},
                       {"monotony", problem.monotony}};
  all["eaters"] = list_of(problem.eaters, eater_of_meals);
  all["products"] = list_of(problem.products, product);
  all["lots"] = list_of(problem.lots, lot);
  all["meals"] = list_of(problem.meals, meal);
  if (!problem.published.empty() ||
      problem.published_until != plan::EatDownProblem{}.published_until) {
    all["published"] =
        Json{{"until", problem.published_until}, {"servings", list_of(problem.published, serving)}};
  }
  if (problem.keep_published) all["keep_published"] = true;
  if (!problem.wished.empty()) all["wished"] = list_of(problem.wished, serving);
}

Json eater_of_kit(const plan::Eater& eater) {
  Json item;
  put_tastes(item, eater);
  if (eater.energy_target != 0) item["energy_target"] = eater.energy_target;
  return item;
}

Json product_of_kit(const plan::RefillProduct& each) {
  Json item{{"id", each.id},     {"roles", each.roles}, {"contains", each.contains},
            {"kcal", each.kcal}, {"mass", each.mass},   {"volume", each.volume}};
  if (!each.no_cook) item["no_cook"] = false;
  if (each.staple) item["staple"] = true;
  return item;
}

Json container(const plan::Container& each) {
  Json item{{"id", each.id}};
  if (!each.kit.empty()) item["kit"] = each.kit;
  put(item, "mass_limit", each.mass_limit);
  put(item, "volume_limit", each.volume_limit);
  return item;
}

Json line(const plan::RefillLine& each) {
  return {{"id", each.id},       {"container", each.container}, {"eaters", each.eaters},
          {"day", each.day},     {"kind", each.kind},           {"role", each.role},
          {"units", each.units}, {"priority", each.priority}};
}

Json lot_for_kit(const plan::RefillLot& each) {
  Json item{{"id", each.id},
            {"product", each.product},
            {"units", each.units},
            {"last_good_day", each.last_good_day},
            {"place", each.in_kit ? "kit" : "pantry"}};
  if (!each.container.empty()) item["container"] = each.container;
  return item;
}

Json offer(const plan::Offer& each) {
  Json item{{"id", each.id},
            {"product", each.product},
            {"pack_units", each.pack_units},
            {"price", each.price},
            {"last_good_day", each.last_good_day}};
  put(item, "max_packs", each.max_packs);
  return item;
}

void put_problem(Json& all, const plan::RefillProblem& problem) {
  all["today"] = problem.today;
  all["hold_until"] = problem.hold_until;
  put(all, "budget", problem.budget);
  all["params"] = Json{{"variety_cap", problem.variety_cap},
                       {"surplus_credit_percent", problem.surplus_credit_percent},
                       {"date_cap_days", problem.date_cap_days}};
  all["eaters"] = list_of(problem.eaters, eater_of_kit);
  all["products"] = list_of(problem.products, product_of_kit);
  all["containers"] = list_of(problem.containers, container);
  all["lines"] = list_of(problem.lines, line);
  all["lots"] = list_of(problem.lots, lot_for_kit);
  all["offers"] = list_of(problem.offers, offer);
  if (problem.keep_in_place) all["keep_in_place"] = true;
}

Json lot_units(const plan::LotUnits& each) {
  return {{"lot", each.lot}, {"units", each.units}};
}

Json plan_json(const plan::EatDownPlan& plan) {
  return {{"opened",
           list_of(plan.opened,
                   [](const plan::Opened& each) {
                     return Json{{"lot", each.lot}, {"meal", each.meal}, {"units", each.units}};
                   })},
          {"servings", list_of(plan.servings, serving)},
          {"donated", list_of(plan.donated, lot_units)},
          {"wasted", list_of(plan.wasted, lot_units)}};
}

Json move(const plan::Move& each) {
  Json item;
  if (each.lot.empty()) {
    item["offer"] = each.offer;
  } else {
    item["lot"] = each.lot;
  }
  item["line"] = each.line;
  item["units"] = each.units;
  return item;
}

Json plan_json(const plan::RefillPlan& plan) {
  return {{"packs", list_of(plan.packs,
                            [](const plan::OfferPacks& each) {
                              return Json{{"offer", each.offer}, {"packs", each.packs}};
                            })},
          {"moves", list_of(plan.moves, move)},
          {"unmet", list_of(plan.unmet, [](const plan::LineUnits& each) {
             return Json{{"line", each.line}, {"units", each.units}};
           })}};
}

}  // namespace

std::string render_problem_json(const PlanningProblem& problem) {
  Json all{{"stage", std::string(stage_of(problem))}, {"name", problem.name}};
  std::visit([&](const auto& each) { put_problem(all, each); }, problem.problem);
  return json::text_of(all);
}

std::string render_solution_json(const PlanningProblem& problem, const ProblemSolution& solution) {
  Json data;
  data["stage"] = std::string(stage_of(problem));
  data["levels"] =
      list_of(solution.levels(), [](const plan::Level& level) { return Json(level.name); });
  data["vector"] =
      list_of(solution.levels(), [](const plan::Level& level) { return Json(level.value); });
  data["bounds"] = list_of(solution.levels(),
                           [](const plan::Level& level) { return json::number(level.bound); });
  data["proven"] = solution.proven();
  data["plan"] =
      std::visit([](const auto& each) { return plan_json(each.plan); }, solution.solution);
  Json all;
  all["schema"] = "larderloop.solution/1";
  all["as_of"] = today_of(problem);
  all["data"] = std::move(data);
  return json::text_of(all);
}

}  // namespace larderloop
