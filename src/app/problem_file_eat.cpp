// The eat-down problem in JSON.
#include "app/problem_file_parts.h"

#include <fmt/core.h>

#include <algorithm>
#include <tuple>

namespace larderloop::problem_file {
namespace {

const intake::Names<plan::Kind>& kinds() {
  static const intake::Names<plan::Kind> names = {{"breakfast", plan::Kind::kBreakfast},
                                                  {"lunch", plan::Kind::kLunch},
                                                  {"dinner", plan::Kind::kDinner},
                                                  {"snack", plan::Kind::kSnack}};
  return names;
}

struct Known {
  Ids eaters, products, lots, meals;
};

void read_params(Reader& in, plan::EatDownProblem& out) {
  const JsonNode* node = in.member("params", Need::kOptional);
  if (node == nullptr) return;
  const Path path(in.path(), "params");
  Reader params(*node, path, in.findings(), "the params of an eat-down problem");
  number(params, "donate_days", out.donate_days, kAmount, Need::kOptional);
  number(params, "late_days", out.late_days, kAmount, Need::kOptional);
  number(params, "tolerance", out.tolerance, kAmount, Need::kOptional);
  number(params, "monotony", out.monotony, kAmount, Need::kOptional);
  params.finish();
}

plan::Eater read_eater(Reader& in, Known& known) {
  plan::Eater out;
  own_id(in, out.id, known.eaters);
  tastes(in, out, known.products);
  number(in, "tolerance", out.tolerance, kAmount);
  number(in, "monotony", out.monotony, kAmount);
  numbers_by_id(in, "eaten_this_week", out.eaten_this_week, known.products, "a product", kAmount);
  return out;
}

plan::EatProduct read_product(Reader& in, Known& known) {
  plan::EatProduct out;
  own_id(in, out.id, known.products);
  number(in, "servings", out.servings, kPositive);
  number(in, "open_days", out.open_days, kAmount, Need::kOptional);
  in.set_of("kinds", out.kinds, kinds());
  words(in, "contains", out.contains);
  return out;
}

plan::EatLot read_lot(Reader& in, Known& known) {
  plan::EatLot out;
  own_id(in, out.id, known.lots);
  reference(in, "product", out.product, known.products, "a product");
  number(in, "units", out.units, kAmount);
  number(in, "last_good_day", out.last_good_day, kDay);
  number(in, "available_from", out.available_from, kDay);
  flag(in, "already_open", out.already_open);
  if (out.already_open) {
    number(in, "open_servings", out.open_servings, kAmount);
    if (in.has("units") && out.units != 1) {
      in.fault(fmt::format("a lot that is open already is one unit, not {}", out.units),
               "write \"units\": 1");
    }
  } else {
    in.forbid("open_servings", "is only for a lot that is open already",
              "add \"already_open\": true, or leave it out");
  }
  flag(in, "may_donate", out.may_donate);
  return out;
}

plan::EatMeal read_meal(Reader& in, Known& known) {
  plan::EatMeal out;
  own_id(in, out.id, known.meals);
  number(in, "day", out.day, kDay);
  in.one_of("kind", out.kind, kinds(), Need::kRequired);
  references(in, "eaters", out.eaters, known.eaters, "an eater");
  numbers_by_id(in, "appetite", out.appetite, known.eaters, "an eater", kAmount);
  in.each("without", Need::kOptional, [&](const JsonNode& node, const Path& path) {
    if (auto id = read_reference(node, path, in.findings(), known.products, "a product"))
      out.without.insert(*id);
  });
  return out;
}

// Servings of a product for an eater at a meal, each such three once. The meal may be one that is
// no longer in the calendar.
void read_servings(Reader& in, std::string_view name, Need need,
                   std::vector<plan::MealServing>& out, const Known& known) {
  std::set<std::tuple<std::string, std::string, std::string>> seen;
  each_object(in, name, need, "a serving", [&](Reader& one) {
    plan::MealServing serving;
    reference(one, "product", serving.product, known.products, "a product");
    any_id(one, "meal", serving.meal);
    reference(one, "eater", serving.eater, known.eaters, "an eater");
    number(one, "servings", serving.servings, kAmount);
    const bool whole = !serving.product.empty() && !serving.meal.empty() && !serving.eater.empty();
    if (whole && !seen.insert({serving.product, serving.meal, serving.eater}).second) {
      one.fault(fmt::format("'{}' for '{}' at '{}' stands there twice", serving.product,
                            serving.eater, serving.meal),
                "keep one of the two, with the sum of servings");
    }
    out.push_back(std::move(serving));
  });
  std::sort(out.begin(), out.end());
}

void read_published(Reader& in, plan::EatDownProblem& out, const Known& known) {
  const JsonNode* node = in.member("published", Need::kOptional);
  if (node == nullptr || node->type == JsonType::kNull) return;
  const Path path(in.path(), "published");
  Reader published(*node, path, in.findings(), "what was published");
  number(published, "until", out.published_until, kDay);
  read_servings(published, "servings", Need::kRequired, out.published, known);
  published.finish();
}

}  // namespace

plan::EatDownProblem read_eat_down(Reader& in) {
  plan::EatDownProblem out;
  Known known;
  number(in, "today", out.today, kDay);
  number(in, "week_start", out.week_start, kDay);
  number(in, "horizon_days", out.horizon_days, kAmount);
  read_params(in, out);
  // Each list after those that it refers to.
  const auto list = [&](std::string_view name, std::string_view thing, auto& into, auto read) {
    each_object(in, name, Need::kRequired, thing,
                [&](Reader& one) { into.push_back(read(one, known)); });
    sort_by_id(into);
  };
  list("products", "a product", out.products, read_product);
  list("eaters", "an eater", out.eaters, read_eater);
  list("lots", "a lot", out.lots, read_lot);
  list("meals", "a meal", out.meals, read_meal);
  read_published(in, out, known);
  flag(in, "keep_published", out.keep_published);
  read_servings(in, "wished", Need::kOptional, out.wished, known);
  return out;
}

}  // namespace larderloop::problem_file
