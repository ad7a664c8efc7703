#include "render/json_parts.h"

namespace larderloop::json_parts {
namespace {

Json not_eaten(const NotEaten& part) {
  return Json{{"units", part.units},      {"amount", json::servings(part.amount)},
              {"cents", part.cents},      {"without_price", json::servings(part.without_price)},
              {"energy_kcal", part.kcal}, {"without_energy", json::servings(part.without_energy)}};
}

Json eating(const EatingTally& tally) {
  return Json{{"handed_out", json::servings(tally.handed_out)},
              {"must_not_have", json::servings(tally.must_not)},
              {"will_not_eat", json::servings(tally.will_not)},
              {"repeats", json::servings(tally.repeats)},
              {"broken_rules", tally.broken_rules},
              {"thrown_away", not_eaten(tally.thrown_away)},
              {"given_away", not_eaten(tally.given_away)}};
}

Json purchases(const PurchaseTally& tally) {
  return Json{{"packs", tally.packs}, {"cents", tally.cents}, {"unmet_units", tally.unmet}};
}

}  // namespace

Json comparison(const Comparison& all) {
  return Json{{"plan", eating(all.plan)},
              {"date_order_allowed", eating(all.allowed)},
              {"date_order", eating(all.plain)},
              {"purchases",
               Json{{"plan", purchases(all.bought)}, {"greedy_refill", purchases(all.greedy)}}}};
}

}  // namespace larderloop::json_parts
