#include "larderloop/render/history.h"
#include "render/json_common.h"

#include <fmt/core.h>

namespace larderloop {
namespace {

using json::Json;

Json food_or_null(const FoodKey& food) {
  return food.empty() ? Json(nullptr) : Json(food.str());
}

Json history_row(const HistoryRow& row) {
  const LotTotals& totals = row.totals;
  return Json{{"food", food_or_null(row.food)},
              {"year", row.year},
              {"received", json::servings(HalfServings(totals.received))},
              {"found", json::servings(HalfServings(totals.found))},
              {"counted_half_servings", totals.counted},
              {"eaten", json::servings(HalfServings(totals.eaten))},
              {"given_away", json::servings(HalfServings(totals.given_away))},
              {"thrown_out", json::servings(HalfServings(totals.thrown_out))},
              {"lost", json::servings(HalfServings(totals.lost))},
              {"waste_permille", row.waste_permille ? Json(*row.waste_permille) : Json(nullptr)},
              {"paid_cents", row.paid_cents}};
}

Json worth(const Worth& value) {
  Json average = nullptr;
  if (const auto tenths = value.average_tenths()) {
    const std::int64_t size = *tenths < 0 ? -*tenths : *tenths;
    average = Json{{"value", fmt::format("{}{}.{}", *tenths < 0 ? "-" : "", size / 10, size % 10)},
                   {"unit", "day"}};
  }
  return Json{{"amount", json::servings(HalfServings(value.amount))},
              {"cents", value.cents},
              {"pack_price_cents", value.pack_cents},
              {"without_price", json::servings(HalfServings(value.without_price))},
              {"energy_kcal", value.kcal},
              {"without_energy", json::servings(HalfServings(value.without_energy))},
              {"with_date", json::servings(HalfServings(value.dated))},
              {"average_days_left", std::move(average)}};
}

Json waste_row(const WasteRow& row) {
  return Json{{"food", food_or_null(row.food)},
              {"year", row.year == 0 ? Json(nullptr) : Json(row.year)},
              {"bought", worth(row.bought)},
              {"eaten", worth(row.eaten)},
              {"given_away", worth(row.given_away)},
              {"thrown_out", worth(row.thrown_out)},
              {"lost", worth(row.lost)}};
}

Json remedy(const Remedy& value) {
  const bool units = value.kind == RemedyKind::kPack || value.kind == RemedyKind::kPar;
  const bool food = value.kind == RemedyKind::kFood, review = value.kind == RemedyKind::kReview;
  return Json{{"change", std::string(remedy_kind_name(value.kind))},
              {"avoided", json::servings(HalfServings(value.avoided))},
              {"avoided_cents", value.cents},
              {"units", units ? Json(value.units) : Json(nullptr)},
              {"units_before", json::number(value.units_before)},
              {"pack_known", value.kind == RemedyKind::kPack ? Json(value.known) : Json(nullptr)},
              {"food", food ? Json(value.food.str()) : Json(nullptr)},
              {"people", json::keys(value.people)},
              {"kit", review ? Json(value.kit.str()) : Json(nullptr)},
              {"weeks_earlier", review ? Json(value.weeks) : Json(nullptr)}};
}

Json advised(const std::vector<Advice>& advice) {
  Json all = Json::array();
  for (const Advice& each : advice) {
    all.push_back(Json{{"food", each.food.str()},
                       {"thrown_out", worth(each.wasted)},
                       {"best", each.best ? remedy(*each.best) : Json(nullptr)}});
  }
  return all;
}

template <class Row>
Json list(const std::vector<Row>& rows, Json (*make)(const Row&)) {
  Json all = Json::array();
  for (const Row& row : rows) all.push_back(make(row));
  return all;
}

}  // namespace

std::string render_history_json(const Household& household, const HistoryReport& history,
                                const WasteReport& waste, const std::vector<Advice>* advice,
                                Day as_of) {
  return json::document("history", as_of,
                        Json{{"rows", list(history.rows, history_row)},
                             {"years", list(history.years, history_row)},
                             {"worth", Json{{"currency", household.settings.currency},
                                            {"rows", list(waste.rows, waste_row)},
                                            {"years", list(waste.years, waste_row)},
                                            {"total", waste_row(waste.total)}}},
                             {"advice", advice != nullptr ? advised(*advice) : Json(nullptr)}});
}

}  // namespace larderloop
