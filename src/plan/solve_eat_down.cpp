// The exact eat-down planner: the careful greedy plan, then the integer program level by level,
// then the independent checker.
#include "larderloop/plan/check.h"
#include "larderloop/plan/planner.h"
#include "larderloop/plan/solve.h"
#include "plan/eat_model.h"
#include "plan/fefo.h"
#include "plan/lexicographic.h"
#include "plan/write_model.h"

#include <algorithm>
#include <chrono>
#include <limits>
#include <map>
#include <set>

namespace larderloop::plan {
namespace {

std::vector<std::int64_t> vector_of(const Verdict& verdict) {
  std::vector<std::int64_t> values;
  for (const Level& level : verdict.levels) values.push_back(level.value);
  return values;
}

// The best of the plans to start from: an earlier plan kept as far as it goes; what was shown kept;
// only what was asked for; all free.
EatDownPlan starting_plan(const EatDownProblem& problem, const EatDownPlan* before) {
  EatDownPlan best = plan_eat_down(problem);
  std::vector<std::int64_t> values = vector_of(check(problem, best));
  const auto consider = [&](const EatDownProblem& like) {
    EatDownPlan other = plan_eat_down(like);
    std::vector<std::int64_t> others = vector_of(check(problem, other));
    if (others >= values) return;
    best = std::move(other);
    values = std::move(others);
  };
  EatDownProblem like = problem;
  if (before != nullptr) {
    like.published = before->servings;
    like.published_until = std::numeric_limits<std::int64_t>::max();
    consider(like);
  }
  like.published.clear();
  if (!problem.published.empty() || before != nullptr) consider(like);
  like.wished.clear();
  if (!problem.wished.empty()) consider(like);
  return best;
}

class EatDownSolver {
 public:
  EatDownSolver(const EatDownProblem& problem, const Limits& limits,
                const Solution<EatDownPlan>* before, bool may_stand)
      : problem_(problem),
        limits_(limits),
        before_(before),
        may_stand_(may_stand && before != nullptr && hurried()),
        compiled_(problem) {}

  Solution<EatDownPlan> solve() {
    plan_ = starting_plan(problem_, before_ == nullptr ? nullptr : &before_->plan);
    const Verdict verdict = check(problem_, plan_);
    values_ = vector_of(verdict);
    for (const Level& level : verdict.levels) names_.push_back(level.name);
    if (verdict.allowed()) improve();
    Solution<EatDownPlan> solution;
    solution.levels = check(problem_, plan_).levels;
    for (std::size_t k = 0; k < solution.levels.size(); ++k) {
      // No level is ever negative.
      if (k < bounds_.size())
        solution.levels[k].bound = std::clamp<std::int64_t>(bounds_[k], 0, values_[k]);
      if (!solution.levels[k].proven()) solution.stopped = true;
    }
    solution.plan = std::move(plan_);
    return solution;
  }

 private:
  // Trial first: it finds good plans in no time, whatever the size. Blocks of meals give bounds and
  // show which servings matter; with these alone the exact model is small. It is made better a few
  // weeks at a time, then as a whole.
  void improve() {
    rearrange(kFirstWork);
    const EatModel blocks(problem_, compiled_, Grain::kWeeks);
    const std::size_t size = blocks.mip().columns.size();
    const bool few = size <= kMostForParts;
    settle_waste();
    const std::int64_t work = kWork * std::clamp<std::int64_t>(limits_.nodes, 1, kMostTimes);
    if (!allowed(blocks.mip(), blocks.point_of(plan_)) || size > kLargestBlocks) {
      rearrange(work);
      bounds_.assign(values_.size(), 0);  // of the levels themselves: none is negative
      know_waste();
      return finish(size);
    }
    const bool wide = size > kMostForDislike && hurried();
    const std::size_t levels = through(wide ? "donated" : "dislike");
    const auto know_bounds = [&] {
      bounds_ = relaxed_bounds(blocks.mip(), values_, levels);
      know_waste();
    };
    if (few || may_stand_) know_bounds();
    if (may_stand_ && goes_on_well()) return finish(size);
    if (!few || open_through("dislike")) {
      const std::vector<std::int64_t> then = values_;
      rearrange(work);
      if (left_out_ && !waste_is_known()) {
        const std::int64_t wasted = values_[settled_.size()];
        const EatDownProblem all = urgent_part(CompiledEat::kFar);
        settle_last(all, tried(all), kMostUrgentAfterwards);
        if (values_[settled_.size()] < wasted) rearrange(work);
      }
      // Bounds depend on the levels before them only.
      const auto last = then.begin() + static_cast<std::ptrdiff_t>(levels) - 1;
      if (bounds_.empty() || !std::equal(then.begin(), last, values_.begin())) know_bounds();
    }
    if (few || !hurried()) improve_part(blocks);
    finish(size);
  }

  // What can be given away need not be wasted: the waste is that of the lots which are too near
  // their dates for it, whatever becomes of the others. They are few, of few weeks, so that this
  // level is settled by itself, beside what was shown or asked for. Often the first week or two of
  // them say all of it.
  void settle_waste() {
    const EatDownProblem all = urgent_part(CompiledEat::kFar);
    EatDownPlan plan = tried(all);
    const std::int64_t reached = vector_of(check(all, plan))[through("wasted") - 1];
    std::size_t before = all.lots.size();
    for (const std::int64_t days : {kWeek, 2 * kWeek, 3 * kWeek}) {
      const EatDownProblem urgent = urgent_part(days);
      if (urgent.lots.size() == before) continue;
      before = urgent.lots.size();
      plan = settled_waste(urgent, plan, reached - reached / 8, kMostUrgent);
      if (waste_is_known()) return;
    }
    settle_last(all, plan, kMostUrgent);
  }

  // `most`: columns of an exact model that is searched.
  void settle_last(const EatDownProblem& all, EatDownPlan plan, std::size_t most) {
    plan = settled_waste(all, plan, 0, most);
    if (!waste_is_known()) take(rearranged(problem_, compiled_, plan, kFirstWork));
  }

  [[nodiscard]] static EatDownPlan tried(const EatDownProblem& problem) {
    return rearranged(problem, CompiledEat(problem), starting_plan(problem, nullptr), kFirstWork);
  }

  // The plan of the urgent lots, from one of others; gives a bound of waste. Is less wasted than
  // `enough`, it will not say all, and no search is made.
  EatDownPlan settled_waste(const EatDownProblem& urgent, EatDownPlan plan, std::int64_t enough,
                            std::size_t most) {
    const std::size_t wasted = through("wasted") - 1;
    const CompiledEat compiled(urgent);
    plan = rearranged(urgent, compiled, plan, kFirstWork);
    const std::vector<std::int64_t> before = std::move(settled_);
    settled_ = vector_of(check(urgent, plan));
    std::vector<std::int64_t> bounds =
        relaxed_bounds(EatModel(urgent, compiled, Grain::kWeeks).mip(), settled_, wasted + 1);
    bounds.resize(wasted + 1);
    settled_.resize(wasted + 1);
    if (bounds != settled_ && settled_[wasted] >= enough) {
      const EatModel exact(urgent, compiled, Grain::kMeals);
      const MipPoint start = exact.point_of(plan);
      left_out_ = exact.mip().columns.size() > (hurried() ? most : kLargestBlocks);
      if (!left_out_ && allowed(exact.mip(), start)) {
        Effort effort = exact_effort();
        effort.relaxed = effort.branched = effort.dived = wasted + 1;
        effort.searched_near = wasted + 1;
        effort.most_near = kMostNear;
        MipOutcome outcome = solve_levels(exact.mip(), start, effort, bounds);
        plan = exact.plan_of(outcome.point);
        settled_ = std::move(outcome.values);
        bounds = std::move(outcome.bounds);
      }
    }
    settled_.resize(wasted);
    // A bound counts beside the levels before it: one of another part only where these are the
    // same.
    least_waste_ = settled_ == before ? std::max(least_waste_, bounds[wasted]) : bounds[wasted];
    return plan;
  }

  // Is the plan's waste the least, beside the levels before it?
  [[nodiscard]] bool waste_is_known() const {
    return least_waste_ >= values_[settled_.size()] &&
           std::equal(settled_.begin(), settled_.end(), values_.begin());
  }

  // The lots with so many days left at most, without those that can be given away. Of products that
  // were shown or asked for these stay, to be opened until the last day of that: what a plan opens
  // later, it may as well give away.
  [[nodiscard]] EatDownProblem urgent_part(std::int64_t days) const {
    std::map<std::string, bool> donatable;
    for (const CompiledEat::Lot& lot : compiled_.lots) donatable[lot.source->id] = lot.donatable;
    std::set<std::string> promised;
    for (const MealServing& each : problem_.published) promised.insert(each.product);
    for (const MealServing& each : problem_.wished) promised.insert(each.product);
    EatDownProblem urgent = problem_;
    urgent.donate_days = 0;
    urgent.lots.clear();
    for (EatLot lot : problem_.lots) {
      const auto known = donatable.find(lot.id);
      const bool others = known != donatable.end() && known->second;
      const bool soon = lot.last_good_day - compiled_.today < days;
      if ((others || !soon) && promised.count(lot.product) == 0 && known != donatable.end())
        continue;
      lot.may_donate = others;
      if (others) lot.last_good_day = std::min(lot.last_good_day, last_promised());
      urgent.lots.push_back(std::move(lot));
    }
    return urgent;
  }

  // The last day of what was shown or asked for.
  [[nodiscard]] std::int64_t last_promised() const {
    std::int64_t last = problem_.published.empty() ? compiled_.today : problem_.published_until;
    for (const MealServing& each : problem_.wished) {
      const std::size_t meal = compiled_.meal_of(each.meal);
      if (meal < compiled_.meals.size()) last = std::max(last, compiled_.meals[meal].day);
    }
    return last;
  }

  // A bound beside the values before it, so only where these are the same.
  void know_waste() {
    const std::size_t wasted = settled_.size();
    if (!std::equal(settled_.begin(), settled_.end(), values_.begin())) return;
    bounds_[wasted] = std::min(values_[wasted], std::max(bounds_[wasted], least_waste_));
  }

  void improve_part(const EatModel& blocks) {
    const std::size_t size = blocks.mip().columns.size();
    Support support;
    const MipPoint use =
        relaxed_use(blocks.mip(), size <= kMostAhead ? SIZE_MAX : through("donated"));
    if (!use.empty()) blocks.mark(use, support);
    mark_plan(support);
    const EatModel part(problem_, compiled_, Grain::kMeals, &support);
    MipPoint point = part.point_of(plan_);
    if (allowed(part.mip(), point)) {
      point = by_windows(part, std::move(point), true);
      if (small(part)) {
        if (size <= kMostForLevels || !hurried())
          point = solve_levels(part.mip(), point, part_effort(part), bounds_).point;
        point = by_windows(part, std::move(point), false);
      }
      take(part, point);
    }
    bounds_ = relaxed_bounds(blocks.mip(), values_, small(part) ? SIZE_MAX : through("dislike"));
    know_waste();
  }

  void rearrange(std::int64_t work) {
    while (work > 0 && seconds_left().value_or(1) > 0) {
      const std::int64_t now = limits_.seconds ? std::min(work, kSlice) : work;
      take(rearranged(problem_, compiled_, plan_, now));
      work -= now;
    }
  }

  // An earlier day's plan that goes on as near to its bounds as it was, or nearly proven, is not
  // searched for again: the household was told it.
  [[nodiscard]] bool goes_on_well() const {
    for (std::size_t k = 0; k < std::min(through("dislike"), values_.size()); ++k) {
      const std::int64_t gap = values_[k] - bounds_[k];
      std::int64_t then = 0;
      for (const Level& level : before_->levels) {
        if (level.name == names_[k] && level.bound) then = level.value - *level.bound;
      }
      const bool near = k >= through("wasted") && gap * 100 <= values_[k] * kNearPercent;
      if (gap > 0 && gap > then && !near) return false;
    }
    return true;
  }

  // Is a level through the named one not proven?
  [[nodiscard]] bool open_through(const std::string& name) const {
    for (std::size_t k = 0; k < std::min(through(name), values_.size()); ++k) {
      if (k >= bounds_.size() || bounds_[k] < values_[k]) return true;
    }
    return false;
  }

  // Waste together with what is given away, narrow windows and wide ones; the other levels one by
  // one.
  MipPoint by_windows(const EatModel& part, MipPoint point, bool for_waste) {
    const Parts weeks = part.weeks_of_columns();
    for (std::size_t k = 0; k < names_.size(); ++k) {
      const bool waste = names_[k] == "wasted";
      if (for_waste != (k < through("wasted"))) continue;
      if (k >= through("dislike") && hurried()) continue;  // trial has seen to these
      for (const std::size_t width : {kNarrow, kWide}) {
        if (!waste && width == kWide) continue;
        const auto value = [&](std::size_t at) { return value_of(part.mip().levels[at], point); };
        const auto open = [&](std::size_t at) {
          return at >= bounds_.size() || bounds_[at] < value(at);
        };
        if (!open(k) && !(waste && open(k + 1))) continue;
        WindowEffort effort;
        effort.first_level = k;
        effort.levels = waste ? 2 : 1;
        effort.width = width;
        effort.seconds = seconds_left();
        point = improve_by_windows(part.mip(), std::move(point), weeks, effort);
      }
    }
    return point;
  }

  [[nodiscard]] bool hurried() const { return limits_.nodes <= household_limits().nodes; }
  // Levels up to the named one.
  [[nodiscard]] std::size_t through(const std::string& name) const {
    std::size_t count = 0;
    while (count < names_.size() && names_[count] != name) ++count;
    return count + 1;
  }
  // Beyond this the levels after dislike are left as they come.
  [[nodiscard]] static bool small(const EatModel& model) {
    return model.mip().columns.size() <= kMostForAll;
  }
  [[nodiscard]] Effort part_effort(const EatModel& part) const {
    Effort effort;
    effort.branched = 0;
    effort.dived_from = through("donated");
    effort.searched_near = through(kNear);
    effort.steps = kSteps / static_cast<std::int64_t>(part.mip().columns.size() + 1);
    effort.most_near = kMostNear;
    effort.seconds = seconds_left();
    return effort;
  }

  [[nodiscard]] Effort exact_effort() const {
    Effort effort = effort_of(limits_);
    effort.seconds = seconds_left();
    return effort;
  }
  [[nodiscard]] std::optional<double> seconds_left() const {
    if (!limits_.seconds) return std::nullopt;
    const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - begun_;
    return std::max(0.0, *limits_.seconds - spent.count());
  }

  // The whole exact model, where it is small enough or no limit forbids it. `at_least`: columns
  // that it has, or more.
  void finish(std::size_t at_least) {
    if (bounds_ == values_ || seconds_left() == 0.0) return;
    if (static_cast<std::int64_t>(at_least) > limits_.largest_model) return;
    const EatModel exact(problem_, compiled_, Grain::kMeals);
    if (static_cast<std::int64_t>(exact.mip().columns.size()) > limits_.largest_model) return;
    const MipPoint start = exact.point_of(plan_);
    if (!allowed(exact.mip(), start)) return;
    const MipOutcome outcome = solve_levels(exact.mip(), start, exact_effort(), bounds_);
    take(exact, outcome.point);
    std::vector<std::int64_t> bounds;
    for (std::size_t k = 0; k < outcome.bounds.size(); ++k) {
      bounds.push_back(outcome.bounds[k]);
      if (values_[k] > outcome.values[k]) break;
    }
    bounds_ = bounds;
  }

  void take(const EatModel& model, const MipPoint& point) { take(model.plan_of(point)); }
  void take(EatDownPlan found) {
    const Verdict verdict = check(problem_, found);
    std::vector<std::int64_t> values = vector_of(verdict);
    if (!verdict.allowed() || values > values_) return;
    plan_ = std::move(found);
    values_ = std::move(values);
  }

  void mark_plan(Support& support) const {
    support.resize(compiled_.products.size() * compiled_.seats.size(), 0);
    for (const MealServing& each : plan_.servings) {
      const std::size_t meal = compiled_.meal_of(each.meal);
      const std::size_t eater = compiled_.eater_of(each.eater);
      if (meal == compiled_.meals.size() || eater == compiled_.eaters.size()) continue;
      const std::size_t seat = compiled_.seat_of(meal, eater);
      if (seat < compiled_.seats.size())
        support[compiled_.product_of(each.product) * compiled_.seats.size() + seat] = 1;
    }
  }

  static constexpr std::size_t kLargestBlocks = 40'000;  // columns; beyond, the greedy plan stands
  static constexpr std::size_t kMostForParts =
      3'000;  // columns of the blocks; beyond, only when asked
  static constexpr std::size_t kMostForLevels = 3'000;
  static constexpr std::size_t kMostForDislike =
      12'000;  // columns of the blocks; beyond, a bound of dislike only when asked
  static constexpr std::size_t kMostUrgent =
      4'500;  // columns of what is near its date; beyond, first other ways are tried,
  static constexpr std::size_t kMostUrgentAfterwards = 5'000;  // and beyond this only when asked
  static constexpr std::size_t kMostAhead = 10'000;  // columns; beyond, waste alone is relaxed
  static constexpr std::int64_t kWeek = 7, kNearPercent = 2;
  static constexpr const char* kNear = "late";
  static constexpr std::int64_t kSteps = 24'000'000;  // of the simplex algorithm, times columns
  // Of rearranging: at first, for each node allowed, at most so many times, and between two looks
  // at the clock.
  static constexpr std::int64_t kFirstWork = 4'000'000, kWork = 6'000'000, kMostTimes = 200,
                                kSlice = 4'000'000;
  static constexpr std::size_t kMostNear = 600;
  static constexpr std::size_t kMostForAll = 4'000;     // columns
  static constexpr std::size_t kNarrow = 2, kWide = 4;  // weeks

  const EatDownProblem& problem_;
  const Limits& limits_;
  const Solution<EatDownPlan>* before_;
  bool may_stand_;
  std::chrono::steady_clock::time_point begun_ = std::chrono::steady_clock::now();
  CompiledEat compiled_;
  EatDownPlan plan_;
  std::vector<std::string> names_;
  std::vector<std::int64_t> values_;
  std::vector<std::int64_t> bounds_;
  std::vector<std::int64_t> settled_;  // the levels before waste, when that was settled
  std::int64_t least_waste_ = 0;
  bool left_out_ = false;  // the exact model of the urgent lots was too large
};

}  // namespace

Solution<EatDownPlan> solve(const EatDownProblem& problem, const Limits& limits,
                            const Solution<EatDownPlan>* before, bool may_stand) {
  return EatDownSolver(problem, limits, before, may_stand).solve();
}

std::string export_model(const EatDownProblem& problem, const std::string& level,
                         const std::vector<std::int64_t>& values, ModelFormat format) {
  const CompiledEat compiled(problem);
  const EatModel model(problem, compiled, Grain::kMeals);
  const std::vector<MipLevel>& levels = model.mip().levels;
  for (std::size_t at = 0; at < levels.size(); ++at) {
    if (levels[at].name == level && values.size() >= at)
      return write_model(model.mip(), at, values, format);
  }
  return {};
}

}  // namespace larderloop::plan
