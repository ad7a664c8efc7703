#include "app/why_work.h"

#include "larderloop/core/changes.h"
#include "larderloop/plan/check.h"

#include <algorithm>
#include <map>

namespace larderloop::what_if {
namespace {

const plan::Level* level_of(const std::vector<plan::Level>& levels, const std::string& name) {
  for (const plan::Level& each : levels) {
    if (each.name == name) return &each;
  }
  return nullptr;
}

// The first level that differs, from `first` on: how much more the other plan has there.
struct Difference {
  std::string level;
  std::int64_t more = 0;
};
Difference first_difference(const std::vector<plan::Level>& now,
                            const std::vector<plan::Level>& other) {
  for (const plan::Level& each : now) {
    const plan::Level* there = level_of(other, each.name);
    if (there != nullptr && there->value != each.value)
      return {each.name, there->value - each.value};
  }
  return {};
}

bool proven_through(const std::vector<plan::Level>& levels, const std::string& name) {
  for (const plan::Level& each : levels) {
    if (!each.proven()) return false;
    if (each.name == name) return true;
  }
  return true;
}

// Servings of each product that are not eaten: wasted, or with `given` given away.
std::map<std::string, std::int64_t> not_eaten(const plan::EatDownProblem& problem,
                                              const plan::EatDownPlan& plan, bool given) {
  std::map<std::string, std::int64_t> left, unit;
  std::map<std::string, std::string> product_of;
  for (const plan::EatProduct& each : problem.products) unit[each.id] = each.servings;
  for (const plan::EatLot& lot : problem.lots) product_of[lot.id] = lot.product;
  const auto count = [&](const auto& list) {
    for (const auto& each : list)
      left[product_of.at(each.lot)] += each.units * unit.at(product_of.at(each.lot));
  };
  if (given) {
    count(plan.donated);
    return left;
  }
  count(plan.wasted);
  count(plan.opened);
  for (const plan::EatLot& lot : problem.lots) {
    if (lot.already_open) left[lot.product] += lot.open_servings;
  }
  for (const plan::MealServing& each : plan.servings) left[each.product] -= each.servings;
  return left;
}

// The key with the largest increase.
std::string grown_most(const std::map<std::string, std::int64_t>& now,
                       const std::map<std::string, std::int64_t>& other) {
  std::string most;
  std::int64_t by = 0;
  for (const auto& [key, value] : other) {
    const auto before = now.find(key);
    const std::int64_t more = value - (before == now.end() ? 0 : before->second);
    if (more > by) {
      by = more;
      most = key;
    }
  }
  return most;
}

std::map<std::string, std::int64_t> bought(const plan::RefillPlan& plan) {
  std::map<std::string, std::int64_t> packs;
  for (const plan::OfferPacks& each : plan.packs) packs[each.offer] += each.packs;
  return packs;
}

}  // namespace

Result<std::unique_ptr<Work>> Work::make(const Household& household, Asked asked) {
  auto work = std::make_unique<Work>();
  work->household = &household;
  work->today = asked.today;
  auto view = view_book(household, asked.today);
  if (!view) return fail(view.error());
  work->view = std::move(*view);
  auto planned = make_plan(household, asked);
  if (!planned) return fail(planned.error());
  work->planned = std::move(*planned);
  // The very plans that make_plan() has just told of.
  const std::vector<KeptPlan>& plans =
      work->planned.changes.kept_plans ? *work->planned.changes.kept_plans : household.kept_plans;
  KeptPlans kept(plans, std::nullopt);
  Reserved reserved;
  for (const KitPlan& plan : work->planned.report.kits) {
    KitWork kit;
    kit.plan = &plan;
    kit.reserved = reserved;
    kit.build = build_refill(work->view, plan.schedule, reserved, work->today);
    auto solved = kept.refill(plan.schedule.kit.str(), kit.build.problem);
    if (!solved) return fail(solved.error());
    kit.solved = std::move(*solved);
    for (const Fill& fill : plan.fills) {
      if (fill.from == FillFrom::kPantry) reserved[fill.at] += fill.units;
    }
    work->kits.push_back(std::move(kit));
  }
  work->eat = build_eat_down(work->view, work->planned.report.kits, reserved, household.shown_meals,
                             work->today);
  auto eaten = kept.eat_down(work->eat.problem);
  if (!eaten) return fail(eaten.error());
  work->eaten = std::move(*eaten);
  work->eat_plan = std::make_unique<EatPlan>(work->eat.problem, work->eaten.plan);
  return work;
}

std::optional<Worse> Work::price(OtherWay way, const plan::EatDownProblem& other) {
  if (solves >= kMostSolves) return std::nullopt;
  solves += 1;
  const auto solution = plan::solve(other, plan::household_limits());
  const std::vector<plan::Level> levels = plan::check(other, solution.plan).levels;
  const plan::Level* asked = level_of(levels, "wishes");
  const plan::Level* asked_now = level_of(eat_plan->levels(), "wishes");
  if ((asked == nullptr ? 0 : asked->value) > (asked_now == nullptr ? 0 : asked_now->value))
    return std::nullopt;
  const Difference difference = first_difference(eat_plan->levels(), levels);
  if (difference.more < 0) return std::nullopt;
  Worse worse;
  worse.way = way;
  worse.level = difference.level;
  worse.more = difference.more;
  worse.proven =
      proven_through(eaten.levels, worse.level) && proven_through(solution.levels, worse.level);
  if (worse.level == "wasted" || worse.level == "donated") {
    const bool given = worse.level == "donated";
    const std::string product = grown_most(not_eaten(eat_plan->problem(), eat_plan->plan(), given),
                                           not_eaten(other, solution.plan, given));
    if (!product.empty()) worse.food = food_of(product);
  }
  return worse;
}

std::optional<Worse> Work::price(OtherWay way, const KitWork& kit,
                                 const plan::RefillProblem& other) {
  if (solves >= kMostSolves) return std::nullopt;
  solves += 1;
  const auto solution = plan::solve(other, plan::household_limits());
  const Difference difference = first_difference(kit.solved.levels, solution.levels);
  if (difference.more < 0) return std::nullopt;
  Worse worse;
  worse.way = way;
  worse.level = difference.level;
  worse.more = difference.more;
  worse.proven = proven_through(kit.solved.levels, worse.level) &&
                 proven_through(solution.levels, worse.level);
  const std::string offer = grown_most(bought(kit.solved.plan), bought(solution.plan));
  if (!offer.empty()) worse.food = kit.build.offers.at(offer).food->key;
  return worse;
}

Result<std::unique_ptr<Work::IfGood>> Work::if_good(const KitWork& kit,
                                                    const std::set<LotId>& lots) const {
  auto other = std::make_unique<IfGood>();
  other->household = *household;
  const Day day = kit.plan->schedule.hold_until + Days(household->settings.margin_days);
  for (const LotId lot : lots) {
    const LotFacts& facts = view.facts.at(lot);
    Reading reading;
    reading.id = next_ids(other->household).reading;
    reading.lot = lot;
    reading.on = today;
    // One thing at a time: what is set aside is only made sound.
    if (facts.state != LotState::kOk) {
      reading.state = LotState::kOk;
    } else {
      reading.mark = DateMark{iso_day(day), MarkKind::kBestBefore, Precision::kDay, day};
    }
    other->household.readings.push_back(std::move(reading));
  }
  auto seen = view_book(other->household, today);
  if (!seen) return fail(seen.error());
  other->view = std::move(*seen);
  other->build = build_refill(other->view, kit.plan->schedule, kit.reserved, today);
  return other;
}

const KitWork* Work::kit_of(const PlaceKey& place) const {
  const PlaceKey& key = view.kit_of_place.at(place);
  for (const KitWork& kit : kits) {
    if (kit.plan->schedule.kit == key) return &kit;
  }
  return nullptr;
}

FoodKey Work::food_of(const std::string& product) const {
  return FoodKey(product.substr(0, product.find('#')));
}

MealTime Work::time_of(const plan::EatMeal& meal) const {
  const auto [day, at] = sits_at(meal);
  return {day, at};
}

std::optional<RefusalReason> Work::refusal(const Position& position, const PersonKey& key) const {
  const Person* person = find_person(*household, key);
  if (person == nullptr) return std::nullopt;
  return why_not(*household, *person, *position.food, effective_label(*position.facts), today);
}

}  // namespace larderloop::what_if
