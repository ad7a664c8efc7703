// Years of invented households, week by week: meals are skipped, people are away, snack, forget to
// give away and buy too much. Both policies live through the same chances. What is checked: nobody
// is ever handed or packed what they must not have, no place of a kit stays empty that something
// could fill, every plan is allowed, and nobody beats the bound of the known future. The table goes
// to standard output.
#include "simulation/life.h"
#include "support/problem_maker.h"

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace larderloop::simulation {
namespace {

struct Span {
  std::uint64_t households;
  std::int64_t days;
};
// Ten years always; more households with LARDERLOOP_TEST_SCALE.
Span span() {
  return {4 * test::test_scale(), 10 * 13 * kStep};
}

void row(const std::string& name, const World& world, const Outcome& plan, const Outcome& by_date,
         std::int64_t bound, std::int64_t bound_by_date) {
  fmt::print("| {} | {} | {} / {} | {} / {} | {} / {} | {} / {} | {} / {} | {:.0f} / {:.0f} |\n",
             name, world.people.size(), plan.eaten, by_date.eaten, plan.thrown, by_date.thrown,
             plan.given, by_date.given, bound, bound_by_date, plan.packs, by_date.packs,
             static_cast<double>(plan.cents) / 100, static_cast<double>(by_date.cents) / 100);
}

void no_faults(const Outcome& outcome) {
  EXPECT_TRUE(outcome.faults.empty()) << outcome.faults.size() << ": " << outcome.faults.front();
}

TEST(Simulation, YearsOfInventedHouseholds) {
  const Span span = simulation::span();
  fmt::print("{} households, {} weeks; each cell: plan / by date\n", span.households,
             span.days / 7);
  fmt::print("| household | people | eaten | thrown | given | bound | packs | spent |\n");
  fmt::print("|---|---|---|---|---|---|---|---|\n");
  std::int64_t plan_thrown = 0, date_thrown = 0;
  for (std::uint64_t number = 1; number <= span.households; ++number) {
    SCOPED_TRACE("household " + std::to_string(number));
    const World world(number);
    const Outcome plan = live(world, Policy::kPlan, span.days);
    const Outcome by_date = live(world, Policy::kByDate, span.days);
    no_faults(plan);
    no_faults(by_date);
    const std::int64_t bound = known_future_bound(world, plan, span.days);
    const std::int64_t bound_by_date = known_future_bound(world, by_date, span.days);
    EXPECT_LE(bound, plan.thrown + plan.given);
    EXPECT_LE(bound_by_date, by_date.thrown + by_date.given);
    EXPECT_GT(plan.eaten, 0);
    row(std::to_string(number), world, plan, by_date, bound, bound_by_date);
    plan_thrown += plan.thrown;
    date_thrown += by_date.thrown;
  }
  EXPECT_LE(plan_thrown, date_thrown) << "looking ahead throws away more than not looking";
}

TEST(Simulation, TheSameDiceGiveTheSameLife) {
  const World world(1);
  const Outcome once = live(world, Policy::kByDate, 13 * kStep);
  const Outcome again = live(World(1), Policy::kByDate, 13 * kStep);
  EXPECT_EQ(once.eaten, again.eaten);
  EXPECT_EQ(once.thrown, again.thrown);
  EXPECT_EQ(once.cents, again.cents);
  const Outcome other = live(World(2), Policy::kByDate, 13 * kStep);
  EXPECT_NE(once.cents, other.cents);
}

TEST(Simulation, WhoLivesCarelesslyIsFoundOut) {
  const auto seen = [](const Outcome& outcome, const char* words) {
    return std::any_of(outcome.faults.begin(), outcome.faults.end(), [&](const std::string& each) {
      return each.find(words) != std::string::npos;
    });
  };
  const Outcome careless = live(World(1), Policy::kCareless, 13 * kStep);
  EXPECT_TRUE(seen(careless, "was handed"));
  EXPECT_TRUE(seen(careless, "an empty place of"));
}

// One person, one food of one serving: of ten servings that arrive on the first day and are good
// for a week, two may be eaten in that week.
TEST(Simulation, TheBoundOfOneWeekIsCountedByHand) {
  World world(1);
  world.people.resize(1);
  world.people[0].avoid.clear();
  world.people[0].ratings.assign(world.foods.size(), 0);
  world.people[0].appetite = 3;
  SimFood& food = world.foods[0];
  food.servings = 1;
  food.kinds = {plan::Kind::kLunch, plan::Kind::kDinner};
  Outcome outcome;
  outcome.arrivals.push_back({0, 0, 6, 10, 0, 0});
  const std::vector<SimMeal> meals = World::meals(0, 7);
  const bool anyone = std::any_of(meals.begin(), meals.end(), [&](const SimMeal& meal) {
    return world.meal_held(meal.day) && world.at_table(0, meal.day);
  });
  EXPECT_EQ(known_future_bound(world, outcome, 28), anyone ? 8 : 10);
  world.people[0].ratings[0] = -2;
  EXPECT_EQ(known_future_bound(world, outcome, 28), 10);
}

}  // namespace
}  // namespace larderloop::simulation
