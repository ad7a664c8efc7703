// Reasons from the refill problem: what is packed, what is not, and what is bought.
#include "app/why_work.h"

#include <algorithm>

namespace larderloop::what_if {
namespace {

constexpr std::size_t kMostLots = 40;  // on hand, looked at beside something that is bought

// Ids in the refill problem of what lies at a position.
std::vector<std::string> lots_at(const RefillBuild& build, const StockKey& at) {
  std::vector<std::string> ids;
  for (const auto& [id, position] : build.lots) {
    if (position->at == at) ids.push_back(id);
  }
  return ids;
}

const plan::RefillLot* lot_of(const plan::RefillProblem& problem, const std::string& id) {
  for (const plan::RefillLot& each : problem.lots) {
    if (each.id == id) return &each;
  }
  return nullptr;
}

Reason reason_of(WhyRule rule, const Position& position) {
  Reason reason;
  reason.rule = rule;
  reason.food = position.food->key;
  reason.lot = position.at.lot;
  reason.good_through = position.good_through;
  return reason;
}

// The one person whose label or taste keeps the product from lines of the kit; `lines` as in
// RefillPlanned::with_lot.
std::optional<Reason> one_must_not(const Work& work, const KitWork& kit,
                                   const RefillPlanned& planned, const plan::RefillLot& lot,
                                   const Position& position, const std::set<std::string>& lines) {
  const plan::RefillProblem& problem = kit.build.problem;
  const plan::RefillProduct& product = *find_product(problem, lot.product);
  std::set<std::string> tried;
  for (const plan::RefillLine& line : problem.lines) {
    if (!lines.empty() && lines.count(line.id) == 0) continue;
    const std::vector<std::string> refuse = who_refuses(problem, line, product);
    if (refuse.size() != 1 || !tried.insert(refuse.front()).second) continue;
    const plan::RefillProblem freer = let_have(problem, product.id, refuse.front());
    if (!planned.with_lot(freer, lot.id, lines)) continue;
    Reason reason = reason_of(WhyRule::kMustNot, position);
    reason.person = PersonKey(refuse.front());
    reason.refusal = work.refusal(position, *reason.person);
    return reason;
  }
  return std::nullopt;
}

}  // namespace

void explain_not_packed(Work& work, const Position& position, WhyPart& part) {
  const KitWork* own = work.kit_of(position.at.place);
  for (const KitWork& kit : work.kits) {
    if (own != nullptr && own != &kit) continue;
    const auto other = work.if_good(kit, {position.at.lot});
    if (!other) continue;
    const RefillPlanned planned(kit.build.problem, kit.solved.plan);
    for (const std::string& id : lots_at((*other)->build, position.at)) {
      const Borrowed borrowed =
          borrow(kit.build.problem, (*other)->build.problem, *lot_of((*other)->build.problem, id));
      if (!planned.with_lot(borrowed.problem, borrowed.lot, {})) continue;
      Reason reason = reason_of(
          position.facts->state == LotState::kOk ? WhyRule::kDate : WhyRule::kSetAside, position);
      reason.until = kit.plan->schedule.hold_until;
      part.reasons.push_back(std::move(reason));
      return;
    }
  }
}

void explain_spare(Work& work, const KitWork& kit, const Position& position, WhyPart& part) {
  const RefillPlanned planned(kit.build.problem, kit.solved.plan);
  for (const std::string& id : lots_at(kit.build, position.at)) {
    const plan::RefillLot& lot = *lot_of(kit.build.problem, id);
    if (auto reason = one_must_not(work, kit, planned, lot, position, {})) {
      part.reasons.push_back(std::move(*reason));
      return;
    }
  }
}

void explain_packed(Work& work, const KitWork& kit, const Position& position, WhyPart& part) {
  plan::RefillProblem other = kit.build.problem;
  const std::vector<std::string> ids = lots_at(kit.build, position.at);
  other.lots.erase(std::remove_if(other.lots.begin(), other.lots.end(),
                                  [&](const plan::RefillLot& each) {
                                    return std::find(ids.begin(), ids.end(), each.id) != ids.end();
                                  }),
                   other.lots.end());
  Reason reason = reason_of(WhyRule::kWorse, position);
  reason.worse = work.price(OtherWay::kWithoutLot, kit, other);
  if (reason.worse) part.reasons.push_back(std::move(reason));
}

namespace {

// Everything on hand that might have been there in place of what is bought.
class InPlaceOfBuying {
 public:
  InPlaceOfBuying(Work& work, const KitWork& kit, const FoodKey& food)
      : work_(work), kit_(kit), planned_(kit.build.problem, kit.solved.plan) {
    for (const plan::Move& move : kit.solved.plan.moves) {
      if (!move.offer.empty() && kit.build.offers.at(move.offer).food->key == food)
        lines_.insert(move.line);
    }
  }

  void tell(WhyPart& part) {
    too_old(part);
    must_not(part);
    if (part.reasons.empty()) used(part);
  }

 private:
  // What does not last or is set aside, the longest-dated that would help.
  void too_old(WhyPart& part) {
    std::set<LotId> lots;
    std::vector<const Position*> candidates;
    for (const Position& position : work_.view.positions) {
      const PlaceKey& kit = *position.kit;
      if (!kit.empty() && kit != kit_.plan->schedule.kit) continue;
      if (!lots_at(kit_.build, position.at).empty() || position.at.opened_on) continue;
      if (!serves(*position.food) || position.food->kind == FoodKind::kWater) continue;
      candidates.push_back(&position);
    }
    std::stable_sort(candidates.begin(), candidates.end(),
                     [](const Position* a, const Position* b) {
                       const bool sound = a->facts->state == LotState::kOk;
                       if (sound != (b->facts->state == LotState::kOk)) return sound;
                       return a->good_through > b->good_through;
                     });
    if (candidates.size() > kMostLots) candidates.resize(kMostLots);
    for (const Position* each : candidates) lots.insert(each->at.lot);
    if (lots.empty()) return;
    const auto other = work_.if_good(kit_, lots);
    if (!other) return;
    std::set<WhyRule> told;
    for (const Position* each : candidates) {
      const WhyRule rule =
          each->facts->state == LotState::kOk ? WhyRule::kDate : WhyRule::kSetAside;
      if (told.count(rule) > 0) continue;
      for (const std::string& id : lots_at((*other)->build, each->at)) {
        const Borrowed borrowed = borrow(kit_.build.problem, (*other)->build.problem,
                                         *lot_of((*other)->build.problem, id));
        if (!planned_.with_lot(borrowed.problem, borrowed.lot, lines_)) continue;
        told.insert(rule);
        Reason reason = reason_of(rule, *each);
        reason.until = kit_.plan->schedule.hold_until;
        part.reasons.push_back(std::move(reason));
        break;
      }
    }
  }

  // What would last, but somebody it is bought for must not have it.
  void must_not(WhyPart& part) {
    for (const plan::RefillLot& lot : kit_.build.problem.lots) {
      if (planned_.used(lot.id) >= lot.units) continue;
      const Position& position = *kit_.build.lots.at(lot.id);
      if (auto reason = one_must_not(work_, kit_, planned_, lot, position, lines_)) {
        part.reasons.push_back(std::move(*reason));
        return;
      }
    }
  }

  // What would do, but all of it is wanted elsewhere.
  void used(WhyPart& part) {
    for (const plan::RefillLot& lot : kit_.build.problem.lots) {
      if (planned_.used(lot.id) < lot.units) continue;
      plan::RefillProblem freer = kit_.build.problem;
      for (plan::RefillLot& each : freer.lots) {
        if (each.id == lot.id) each.units += 1;
      }
      if (!planned_.with_lot(freer, lot.id, lines_)) continue;
      part.reasons.push_back(reason_of(WhyRule::kAllUsed, *kit_.build.lots.at(lot.id)));
      return;
    }
  }

  // Does the food serve on one of the lines?
  [[nodiscard]] bool serves(const Food& food) const {
    return std::any_of(lines_.begin(), lines_.end(), [&](const std::string& id) {
      const MenuLine& line = *kit_.build.lines.at(id);
      return line.role ? food.roles.count(*line.role) > 0 : food.key == line.food;
    });
  }

  Work& work_;
  const KitWork& kit_;
  RefillPlanned planned_;
  std::set<std::string> lines_;
};

// Nothing else that could be bought, or put together otherwise, is as good.
void explain_choice(Work& work, const KitWork& kit, const FoodKey& food, WhyPart& part) {
  plan::RefillProblem other = kit.build.problem;
  other.offers.erase(std::remove_if(other.offers.begin(), other.offers.end(),
                                    [&](const plan::Offer& each) {
                                      return kit.build.offers.at(each.id).food->key == food;
                                    }),
                     other.offers.end());
  Reason reason;
  reason.food = food;
  reason.worse = work.price(OtherWay::kWithoutFood, kit, other);
  if (reason.worse) part.reasons.push_back(std::move(reason));
}

}  // namespace

Status why_food(Work& work, const FoodKey& food, WhyReport& report) {
  report.food = food;
  for (const KitWork& kit : work.kits) {
    for (const BuyLine& line : kit.plan->buy) {
      if (line.food != food) continue;
      WhyPart part;
      part.fate = Fate::kBought;
      part.food = food;
      part.kit = kit.plan->schedule.kit;
      part.hold_until = kit.plan->schedule.hold_until;
      part.people = line.for_people;
      part.buy = line;
      if (line.ml == 0) {
        InPlaceOfBuying(work, kit, food).tell(part);
        explain_choice(work, kit, food, part);
      }
      report.parts.push_back(std::move(part));
    }
  }
  if (!report.parts.empty()) return {};
  const Food* known = find_food(*work.household, food);
  return fail(
      ErrorKind::kNotFound,
      "'" + (known == nullptr ? food.str() : known->name) + "' is not on the replacement list",
      "see the list: larderloop shop; of what is there ask by lot: larderloop lot list --food " +
          food.str());
}

}  // namespace larderloop::what_if
