// Planning problems without the household's names.
#include "larderloop/app/planning_problem.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>

namespace larderloop {
namespace {

// Old name to new one. First all old ones are gathered, then they are numbered in their order, with
// as many digits as the largest number needs: so the new names sort as the old ones did.
class Names {
 public:
  explicit Names(std::string word) : word_(std::move(word)) {}
  void gather(const std::string& old) {
    if (!old.empty()) names_[old];
  }
  template <class List>
  void gather_ids(const List& list) {
    for (const auto& each : list) gather(each.id);
  }
  void number() {
    const std::size_t width = std::to_string(names_.size()).size();
    std::size_t count = 0;
    for (auto& [old, name] : names_) {
      const std::string digits = std::to_string(++count);
      name = word_ + "-" + std::string(width - digits.size(), '0') + digits;
    }
  }
  void rename(std::string& name) const {
    if (!name.empty()) name = names_.at(name);
  }
  void rename(std::vector<std::string>& names) const {
    for (std::string& name : names) rename(name);
  }
  void rename(std::set<std::string>& names) const {
    std::set<std::string> renamed;
    for (const std::string& name : names) renamed.insert(names_.at(name));
    names = std::move(renamed);
  }
  template <class Value>
  void rename(std::map<std::string, Value>& by_name) const {
    std::map<std::string, Value> renamed;
    for (const auto& [name, value] : by_name) renamed.emplace(names_.at(name), value);
    by_name = std::move(renamed);
  }
  void rename(plan::NumbersById& by_name) const {
    plan::NumbersById renamed;
    for (const auto& [name, value] : by_name) renamed[names_.at(name)] = value;
    by_name = std::move(renamed);
  }

 private:
  std::string word_;
  std::map<std::string, std::string> names_;
};

struct Common {
  Names eaters{"eater"}, products{"product"}, lots{"lot"}, tags{"tag"};

  template <class Problem>
  void gather(const Problem& problem) {
    eaters.gather_ids(problem.eaters);
    products.gather_ids(problem.products);
    lots.gather_ids(problem.lots);
    for (const auto& product : problem.products) gather_tags(product.contains);
    for (const plan::Eater& eater : problem.eaters) {
      gather_tags(eater.avoid);
      for (const auto& rating : eater.ratings) products.gather(rating.first);
      for (const auto& eaten : eater.eaten_this_week) products.gather(eaten.first);
    }
  }
  void gather_tags(const std::set<std::string>& set) {
    for (const std::string& tag : set) tags.gather(tag);
  }
  void number() {
    for (Names* names : {&eaters, &products, &lots, &tags}) names->number();
  }
  template <class Problem>
  void rename(Problem& problem) const {
    for (plan::Eater& eater : problem.eaters) {
      eaters.rename(eater.id);
      tags.rename(eater.avoid);
      products.rename(eater.ratings);
      products.rename(eater.eaten_this_week);
    }
    for (auto& product : problem.products) {
      products.rename(product.id);
      tags.rename(product.contains);
    }
    for (auto& lot : problem.lots) {
      lots.rename(lot.id);
      products.rename(lot.product);
    }
  }
};

void rename_problem(plan::EatDownProblem& problem) {
  Common common;
  Names meals("meal");
  common.gather(problem);
  meals.gather_ids(problem.meals);
  for (const auto* servings : {&problem.published, &problem.wished}) {
    for (const plan::MealServing& each : *servings) {
      common.eaters.gather(each.eater);
      common.products.gather(each.product);
      meals.gather(each.meal);
    }
  }
  common.number();
  meals.number();
  common.rename(problem);
  for (plan::EatMeal& meal : problem.meals) {
    meals.rename(meal.id);
    common.eaters.rename(meal.eaters);
    common.eaters.rename(meal.appetite);
    common.products.rename(meal.without);
  }
  for (auto* servings : {&problem.published, &problem.wished}) {
    for (plan::MealServing& each : *servings) {
      common.eaters.rename(each.eater);
      common.products.rename(each.product);
      meals.rename(each.meal);
    }
  }
}

// Roles are words of the trade, but one that names a food.
void gather_food(Names& foods, const std::string& role) {
  if (role.rfind("food:", 0) == 0) foods.gather(role);
}

void rename_problem(plan::RefillProblem& problem) {
  Common common;
  Names containers("container"), kits("kit"), lines("line"), offers("offer"), foods("food:item");
  common.gather(problem);
  containers.gather_ids(problem.containers);
  lines.gather_ids(problem.lines);
  offers.gather_ids(problem.offers);
  for (const plan::Container& each : problem.containers) kits.gather(each.kit);
  for (const plan::RefillProduct& each : problem.products) {
    for (const std::string& role : each.roles) gather_food(foods, role);
  }
  for (const plan::RefillLine& each : problem.lines) gather_food(foods, each.role);
  common.number();
  for (Names* names : {&containers, &kits, &lines, &offers, &foods}) names->number();
  common.rename(problem);
  const auto rename_role = [&](std::string& role) {
    if (role.rfind("food:", 0) == 0) foods.rename(role);
  };
  for (plan::RefillProduct& product : problem.products) {
    std::set<std::string> roles;
    for (std::string role : product.roles) {
      rename_role(role);
      roles.insert(std::move(role));
    }
    product.roles = std::move(roles);
  }
  for (plan::Container& container : problem.containers) {
    containers.rename(container.id);
    kits.rename(container.kit);
  }
  for (plan::RefillLine& line : problem.lines) {
    lines.rename(line.id);
    containers.rename(line.container);
    common.eaters.rename(line.eaters);
    rename_role(line.role);
  }
  for (plan::RefillLot& lot : problem.lots) containers.rename(lot.container);
  for (plan::Offer& offer : problem.offers) {
    offers.rename(offer.id);
    common.products.rename(offer.product);
  }
}

}  // namespace

PlanningProblem with_plain_names(const PlanningProblem& problem) {
  PlanningProblem renamed = problem;
  renamed.name = std::string(stage_of(problem));
  std::visit([](auto& each) { rename_problem(each); }, renamed.problem);
  return renamed;
}

}  // namespace larderloop
