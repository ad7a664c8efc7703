#include "support/problem_maker.h"

#include <algorithm>
#include <cstdlib>
#include <string>

namespace larderloop::test {
namespace {

std::string id_of(const char* prefix, std::int64_t number) {
  std::string digits = std::to_string(number);
  return prefix + std::string(digits.size() < 4 ? 4 - digits.size() : 0, '0') + digits;
}

plan::Eater make_eater(Dice& dice, std::int64_t number, std::int64_t products) {
  plan::Eater eater;
  eater.id = id_of("e", number);
  if (dice.one_in(3)) eater.avoid.insert(id_of("tag", dice.between(0, 2)));
  for (std::int64_t product = 0; product < products; ++product) {
    if (dice.one_in(3)) eater.ratings[id_of("p", product)] = static_cast<int>(dice.between(-2, 2));
  }
  return eater;
}

}  // namespace

Dice::Dice(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15U + 0x1234567U) {
  if (state_ == 0) state_ = 1;
  for (int i = 0; i < 4; ++i) (void)between(0, 1);
}

std::int64_t Dice::between(std::int64_t low, std::int64_t high) {
  state_ ^= state_ >> 12U;
  state_ ^= state_ << 25U;
  state_ ^= state_ >> 27U;
  const std::uint64_t drawn = (state_ * 0x2545F4914F6CDD1DU) >> 11U;
  return low + static_cast<std::int64_t>(drawn % static_cast<std::uint64_t>(high - low + 1));
}

plan::EatDownProblem make_eat_problem(std::uint64_t seed, const EatSize& size) {
  Dice dice(seed);
  plan::EatDownProblem problem;
  problem.today = dice.between(-3, 20);
  problem.week_start = problem.today - dice.between(0, 6);
  problem.horizon_days = 7 * size.weeks;
  problem.donate_days = dice.between(5, size.weeks < 6 ? 12 : 30);
  problem.late_days = dice.between(0, 7);
  problem.tolerance = dice.between(1, 8);
  problem.monotony = dice.between(1, 4);
  for (std::int64_t e = 0; e < size.eaters; ++e) {
    plan::Eater eater = make_eater(dice, e, size.products);
    if (dice.one_in(4)) eater.tolerance = dice.between(0, 6);
    if (dice.one_in(4)) eater.monotony = dice.between(0, 3);
    if (dice.one_in(4))
      eater.eaten_this_week[id_of("p", dice.between(0, size.products - 1))] = dice.between(1, 2);
    problem.eaters.push_back(eater);
  }
  for (std::int64_t p = 0; p < size.products; ++p) {
    plan::EatProduct product;
    product.id = id_of("p", p);
    product.servings = dice.between(1, size.most_servings);
    product.open_days = dice.one_in(2) ? 0 : dice.between(1, 10);
    for (const plan::Kind kind :
         {plan::Kind::kBreakfast, plan::Kind::kLunch, plan::Kind::kDinner, plan::Kind::kSnack}) {
      if (dice.one_in(2)) product.kinds.insert(kind);
    }
    if (dice.one_in(3)) product.contains.insert(id_of("tag", dice.between(0, 2)));
    problem.products.push_back(product);
  }
  for (std::int64_t l = 0; l < size.lots; ++l) {
    plan::EatLot lot;
    lot.id = id_of("l", l);
    lot.product = id_of("p", dice.between(0, size.products - 1));
    lot.units = dice.between(0, size.most_units);
    lot.last_good_day = problem.today + dice.between(-1, problem.horizon_days + 2);
    if (dice.one_in(5)) lot.available_from = problem.today + dice.between(-2, 10);
    lot.may_donate = !dice.one_in(4);
    if (size.open_lots && dice.one_in(8)) {
      lot.already_open = true;
      lot.units = 1;
      lot.open_servings = dice.between(0, size.most_servings);
      lot.may_donate = dice.one_in(2);
    }
    problem.lots.push_back(lot);
  }
  for (std::int64_t m = 0; m < size.weeks * size.meals_a_week; ++m) {
    plan::EatMeal meal;
    meal.id = id_of("m", m);
    meal.day = problem.today + dice.between(0, problem.horizon_days - 1);
    meal.kind = static_cast<plan::Kind>(dice.between(0, 3));
    for (const plan::Eater& eater : problem.eaters) {
      if (dice.one_in(4)) continue;
      meal.eaters.push_back(eater.id);
      if (dice.one_in(2)) meal.appetite[eater.id] = dice.between(0, 2);
    }
    problem.meals.push_back(meal);
  }
  if (size.published) {
    problem.published_until = problem.today + dice.between(0, 13);
    for (const plan::EatMeal& meal : problem.meals) {
      if (meal.eaters.empty() || !dice.one_in(3)) continue;
      const std::int64_t at = dice.between(0, static_cast<std::int64_t>(meal.eaters.size()) - 1);
      problem.published.push_back({id_of("p", dice.between(0, size.products - 1)), meal.id,
                                   meal.eaters[static_cast<std::size_t>(at)], dice.between(1, 2)});
    }
  }
  return problem;
}

plan::RefillProblem make_refill_problem(std::uint64_t seed, const RefillSize& size) {
  Dice dice(seed);
  const char* const roles[] = {"main", "snack"};
  plan::RefillProblem problem;
  problem.today = dice.between(0, 100);
  problem.hold_until = problem.today + 200;
  problem.variety_cap = dice.between(0, 3);
  problem.surplus_credit_percent = dice.between(0, 100);
  problem.date_cap_days = dice.between(0, 400);
  if (size.limits && dice.one_in(3)) problem.budget = dice.between(0, 5000);
  for (std::int64_t e = 0; e < size.eaters; ++e) {
    problem.eaters.push_back(make_eater(dice, e, size.products));
    if (dice.one_in(2)) problem.eaters.back().energy_target = dice.between(100, 800);
  }
  for (std::int64_t p = 0; p < size.products; ++p) {
    plan::RefillProduct product;
    product.id = id_of("p", p);
    for (const char* role : roles) {
      if (!dice.one_in(3)) product.roles.insert(role);
    }
    product.roles.insert("food:" + product.id);
    if (dice.one_in(3)) product.contains.insert(id_of("tag", dice.between(0, 2)));
    product.kcal = dice.between(0, 400);
    product.mass = dice.between(0, 300);
    product.volume = dice.between(0, 300);
    product.no_cook = !dice.one_in(8);
    product.staple = dice.one_in(8);
    problem.products.push_back(product);
  }
  for (std::int64_t c = 0; c < size.containers; ++c) {
    plan::Container container{id_of("c", c), id_of("kit", dice.between(0, 1)), {}, {}};
    if (size.limits && dice.one_in(3)) container.mass_limit = dice.between(0, 3000);
    if (size.limits && dice.one_in(3)) container.volume_limit = dice.between(0, 3000);
    problem.containers.push_back(container);
  }
  for (std::int64_t j = 0; j < size.lines; ++j) {
    plan::RefillLine line;
    line.id = id_of("j", j);
    line.container = id_of("c", dice.between(0, size.containers - 1));
    for (const plan::Eater& eater : problem.eaters) {
      if (dice.one_in(3)) line.eaters.push_back(eater.id);
    }
    line.day = static_cast<int>(dice.between(1, 3));
    line.role = dice.one_in(4) ? "food:" + id_of("p", dice.between(0, size.products - 1))
                               : roles[dice.between(0, 1)];
    line.units = dice.between(0, size.most_units);
    line.priority = dice.between(1, 4);
    problem.lines.push_back(line);
  }
  for (std::int64_t l = 0; l < size.lots; ++l) {
    plan::RefillLot lot;
    lot.id = id_of("l", l);
    lot.product = id_of("p", dice.between(0, size.products - 1));
    lot.units = dice.between(0, size.most_units);
    lot.last_good_day = problem.hold_until + dice.between(-20, 500);
    lot.in_kit = dice.one_in(2);
    if (lot.in_kit) lot.container = id_of("c", dice.between(0, size.containers - 1));
    problem.lots.push_back(lot);
  }
  for (std::int64_t k = 0; k < size.offers; ++k) {
    plan::Offer offer;
    offer.id = id_of("k", k);
    offer.product = id_of("p", dice.between(0, size.products - 1));
    offer.pack_units = dice.between(1, 6);
    offer.price = dice.between(0, 600);
    offer.last_good_day = problem.hold_until + dice.between(-20, 500);
    if (dice.one_in(2)) offer.max_packs = dice.between(0, 2);
    problem.offers.push_back(offer);
  }
  return problem;
}

std::uint64_t test_scale() {
  const char* const text = std::getenv("LARDERLOOP_TEST_SCALE");
  if (text == nullptr) return 1;
  return std::max<std::uint64_t>(1, std::strtoull(text, nullptr, 10));
}

}  // namespace larderloop::test
