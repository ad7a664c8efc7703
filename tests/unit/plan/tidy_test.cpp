// What only costs is lowered as far as the rows let it; nothing else moves.
#include "plan/tidy.h"

#include "plan/refill_model.h"
#include "support/problem_maker.h"

#include <gtest/gtest.h>

namespace larderloop::plan {
namespace {

TEST(Tidy, LowersWhatOnlyCostsAsFarAsTheRowsLetIt) {
  Mip mip;
  const int eaten = mip.add_column("eaten", 0, 9);
  const int missing = mip.add_column("missing", 0, 9);
  const int packs = mip.add_column("packs", 1, 9);
  const int paid_back = mip.add_column("paid_back", 0, 9);
  const int bound_to = mip.add_column("bound_to", 0, 9);
  mip.add_column("in_no_level", 0, 9);
  mip.add_row("energy", 10, MipRow::kNone, {{eaten, 3}, {missing, 1}});
  mip.add_row("offer", MipRow::kNone, 0, {{eaten, 1}, {packs, -4}});
  mip.add_row("equal", 5, 5, {{bound_to, 1}, {eaten, 1}});
  mip.levels = {{"first", 0, {{missing, 1}, {bound_to, 1}, {paid_back, 1}}},
                {"second", 0, {{packs, 2}, {paid_back, -1}}}};
  MipPoint point = {2, 9, 9, 9, 3, 9};
  ASSERT_TRUE(allowed(mip, point));
  tidy(mip, point);
  EXPECT_EQ(point, (MipPoint{2, 4, 1, 9, 3, 9}));
  EXPECT_TRUE(allowed(mip, point));
}

// The point of a plan is tidy; raised shortages, repeats and packs come down to it again.
TEST(Tidy, FindsThePointOfAPlanAgain) {
  int raised = 0;
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const RefillProblem problem =
        test::make_refill_problem(seed, {3, 6, 3, 12, 10, 6, 3, seed % 2 == 0});
    const std::optional<RefillModel> model = make_refill_model(problem);
    ASSERT_TRUE(model);
    RefillPlan nothing;
    for (const RefillLine& line : problem.lines) nothing.unmet.push_back({line.id, line.units});
    const MipPoint point = point_of(*model, nothing);
    MipPoint high = point;
    const auto raise = [&](int column) {
      if (column < 0) return;
      const auto at = static_cast<std::size_t>(column);
      if (high[at] < model->mip.columns[at].upper) raised += 1;
      high[at] = model->mip.columns[at].upper;
    };
    for (const RefillModel::Shortage& each : model->shortages) raise(each.column);
    for (const auto& [key, column] : model->repeats) raise(column);
    ASSERT_TRUE(allowed(model->mip, high));
    tidy(model->mip, high);
    ASSERT_EQ(high, point);
  }
  EXPECT_GT(raised, 100);
}

}  // namespace
}  // namespace larderloop::plan
