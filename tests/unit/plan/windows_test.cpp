// Window by window a point gets better, never worse, and stays allowed.
#include "plan/windows.h"

#include "larderloop/plan/planner.h"
#include "plan/eat_model.h"
#include "support/problem_maker.h"

#include <gtest/gtest.h>

namespace larderloop::plan {
namespace {

// Two parts; waste of each may be avoided only inside the part, `follows` is their sum.
Mip two_parts() {
  Mip mip;
  const int a = mip.add_column("a", 0, 3), b = mip.add_column("b", 0, 3);
  const int follows = mip.add_column("follows", 0, 6);
  mip.add_row("sum", 0, 0, {{follows, 1}, {a, -1}, {b, -1}});
  mip.levels = {{"waste", 6, {{a, -1}, {b, -1}}}, {"cost", 0, {{a, 1}, {b, 2}, {follows, 1}}}};
  return mip;
}
const Parts kTwoParts = {{0, 0}, {1, 0}, {Belongs::kFollows, 0}};

TEST(Windows, EachPartIsSolvedAndWhatFollowsGoesWithIt) {
  const Mip mip = two_parts();
  WindowEffort effort;
  effort.width = 1;
  EXPECT_EQ(improve_by_windows(mip, {0, 0, 0}, kTwoParts, effort), (MipPoint{3, 3, 6}));
}

TEST(Windows, LevelsBeforeTheFirstAreHeld) {
  const Mip mip = two_parts();
  WindowEffort effort;
  effort.first_level = 1;
  effort.levels = 1;
  effort.width = 2;
  // Cheaper with the same waste: a in place of b.
  EXPECT_EQ(improve_by_windows(mip, {0, 2, 2}, kTwoParts, effort), (MipPoint{2, 0, 2}));
}

TEST(Windows, AWindowWithoutColumnsOfALevelIsLeftAlone) {
  Mip mip = two_parts();
  mip.levels = {{"waste", 3, {{0, -1}}}};
  WindowEffort effort;
  effort.width = 1;
  EXPECT_EQ(improve_by_windows(mip, {0, 1, 1}, kTwoParts, effort), (MipPoint{3, 1, 4}));
}

TEST(Windows, PlansOfHouseholdsGetBetterAndStayAllowed) {
  int better = 0;
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const EatDownProblem problem =
        test::make_eat_problem(seed, {4, 20, 60, 8, 6, 3, 6, seed % 2 == 0, seed % 3 == 0});
    const CompiledEat compiled(problem);
    const EatModel model(problem, compiled, Grain::kMeals);
    const MipPoint start = model.point_of(plan_eat_down(problem));
    ASSERT_TRUE(allowed(model.mip(), start));
    const MipPoint point =
        improve_by_windows(model.mip(), start, model.weeks_of_columns(), WindowEffort{});
    ASSERT_TRUE(allowed(model.mip(), point));
    for (const MipLevel& level : model.mip().levels) {
      const std::int64_t now = value_of(level, point), before = value_of(level, start);
      if (now < before) better += 1;
      if (now != before) {
        EXPECT_LT(now, before) << level.name;
        break;
      }
    }
  }
  EXPECT_GT(better, 0);
}

}  // namespace
}  // namespace larderloop::plan
