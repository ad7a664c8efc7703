#include "support/case_reader.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <stdexcept>

namespace larderloop::test {
namespace {

using nlohmann::json;

std::set<std::string> text_set(const json& from, const char* key) {
  return from.value(key, std::set<std::string>());
}

template <typename T>
std::optional<T> maybe(const json& from, const char* key) {
  if (!from.contains(key) || from.at(key).is_null()) return std::nullopt;
  return from.at(key).get<T>();
}

plan::Kind kind_of(const std::string& name) {
  if (name == "breakfast") return plan::Kind::kBreakfast;
  if (name == "lunch") return plan::Kind::kLunch;
  if (name == "dinner") return plan::Kind::kDinner;
  if (name == "snack") return plan::Kind::kSnack;
  throw std::runtime_error("unknown kind of meal: " + name);
}

plan::Eater read_eater(const json& from) {
  plan::Eater eater;
  eater.id = from.at("id");
  eater.avoid = text_set(from, "avoid");
  eater.ratings = from.value("ratings", std::map<std::string, int>());
  eater.tolerance = maybe<std::int64_t>(from, "tolerance");
  eater.energy_target = from.value("energy_target", std::int64_t{0});
  return eater;
}

plan::MealServing read_serving(const json& from) {
  return {from.at("product"), from.at("meal"), from.at("eater"), from.at("servings")};
}

plan::EatDownProblem read_eat_problem(const json& from) {
  plan::EatDownProblem problem;
  problem.today = from.at("today");
  problem.week_start = from.at("week_start");
  problem.horizon_days = from.at("horizon_days");
  const json& params = from.at("params");
  problem.donate_days = params.at("donate_days");
  problem.late_days = params.at("late_days");
  problem.tolerance = params.at("tolerance");
  problem.monotony = params.at("monotony");
  for (const json& each : from.at("eaters")) problem.eaters.push_back(read_eater(each));
  for (const json& each : from.at("products")) {
    plan::EatProduct product{
        each.at("id"), each.at("servings"), each.at("open_days"), {}, text_set(each, "contains")};
    for (const json& kind : each.at("kinds")) product.kinds.insert(kind_of(kind));
    problem.products.push_back(product);
  }
  for (const json& each : from.at("lots")) {
    plan::EatLot lot;
    lot.id = each.at("id");
    lot.product = each.at("product");
    lot.units = each.at("units");
    lot.last_good_day = each.at("last_good_day");
    lot.available_from = maybe<std::int64_t>(each, "available_from");
    problem.lots.push_back(lot);
  }
  for (const json& each : from.at("meals")) {
    plan::EatMeal meal;
    meal.id = each.at("id");
    meal.day = each.at("day");
    meal.kind = kind_of(each.at("kind"));
    meal.eaters = each.at("eaters");
    for (const auto& [eater, servings] : each.value("appetite", std::map<std::string, std::int64_t>())) meal.appetite[eater] = servings;
    problem.meals.push_back(meal);
  }
  if (from.contains("published")) {
    problem.published_until = from.at("published").at("until");
    for (const json& each : from.at("published").at("servings"))
      problem.published.push_back(read_serving(each));
  }
  return problem;
}

plan::EatDownPlan read_eat_plan(const json& from) {
  plan::EatDownPlan plan;
  for (const json& each : from.at("opened"))
    plan.opened.push_back({each.at("lot"), each.at("meal"), each.at("units")});
  for (const json& each : from.at("servings")) plan.servings.push_back(read_serving(each));
  for (const json& each : from.at("donated"))
    plan.donated.push_back({each.at("lot"), each.at("units")});
  for (const json& each : from.at("wasted"))
    plan.wasted.push_back({each.at("lot"), each.at("units")});
  return plan;
}

plan::RefillProblem read_refill_problem(const json& from) {
  plan::RefillProblem problem;
  problem.today = from.at("today");
  problem.hold_until = from.at("hold_until");
  problem.budget = maybe<std::int64_t>(from, "budget");
  const json& params = from.at("params");
  problem.variety_cap = params.at("variety_cap");
  problem.surplus_credit_percent = params.at("surplus_credit_percent");
  problem.date_cap_days = params.at("date_cap_days");
  for (const json& each : from.at("eaters")) problem.eaters.push_back(read_eater(each));
  for (const json& each : from.at("products")) {
    problem.products.push_back({each.at("id"), text_set(each, "roles"), text_set(each, "contains"),
                                each.at("kcal"), each.at("mass"), each.at("volume"),
                                each.value("no_cook", true), each.value("staple", false)});
  }
  for (const json& each : from.at("containers")) {
    problem.containers.push_back({each.at("id"), each.value("kit", std::string()),
                                  maybe<std::int64_t>(each, "mass_limit"),
                                  maybe<std::int64_t>(each, "volume_limit")});
  }
  for (const json& each : from.at("lines")) {
    problem.lines.push_back({each.at("id"), each.at("container"), each.at("eaters"), each.at("day"),
                             each.at("kind"), each.at("role"), each.at("units"),
                             each.at("priority")});
  }
  for (const json& each : from.at("lots")) {
    problem.lots.push_back({each.at("id"), each.at("product"), each.at("units"),
                            each.at("last_good_day"), each.at("place") == "kit",
                            each.value("container", std::string())});
  }
  for (const json& each : from.at("offers")) {
    problem.offers.push_back({each.at("id"), each.at("product"), each.at("pack_units"),
                              each.at("price"), each.at("last_good_day"),
                              maybe<std::int64_t>(each, "max_packs")});
  }
  return problem;
}

plan::RefillPlan read_refill_plan(const json& from) {
  plan::RefillPlan plan;
  for (const json& each : from.at("packs"))
    plan.packs.push_back({each.at("offer"), each.at("packs")});
  for (const json& each : from.at("moves")) {
    plan.moves.push_back({each.value("lot", std::string()), each.value("offer", std::string()),
                          each.at("line"), each.at("units")});
  }
  for (const json& each : from.at("unmet"))
    plan.unmet.push_back({each.at("line"), each.at("units")});
  return plan;
}

PlanCase read_case(const std::filesystem::path& path) {
  std::ifstream file(path);
  const json whole = json::parse(file);
  const json& instance = whole.at("instance");
  const json& expected = whole.at("expected");
  PlanCase read;
  read.name = path.stem().string();
  read.refill = instance.at("stage") == "refill";
  read.has_plan = expected.contains("plan");
  if (read.refill) {
    read.refill_problem = read_refill_problem(instance);
    if (read.has_plan) read.refill_plan = read_refill_plan(expected.at("plan"));
  } else {
    read.eat_problem = read_eat_problem(instance);
    if (read.has_plan) read.eat_plan = read_eat_plan(expected.at("plan"));
  }
  if (expected.at("proven") != true)
    throw std::runtime_error(read.name + ": the optimum is not proven");
  read.levels = expected.at("levels").get<std::vector<std::string>>();
  read.optimum = expected.at("vector").get<std::vector<std::int64_t>>();
  return read;
}

}  // namespace

std::vector<PlanCase> read_plan_cases(const std::string& folder) {
  std::vector<PlanCase> cases;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".json") cases.push_back(read_case(entry.path()));
  }
  std::sort(cases.begin(), cases.end(),
            [](const PlanCase& a, const PlanCase& b) { return a.name < b.name; });
  return cases;
}

}  // namespace larderloop::test
