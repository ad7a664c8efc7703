#include "larderloop/render/why.h"
#include "render/json_parts.h"

namespace larderloop {
namespace {

using json::Json;

const char* way_name(OtherWay way) {
  switch (way) {
    case OtherWay::kAtThatMeal:
      return "at_that_meal";
    case OtherWay::kEatIt:
      return "eat_it";
    case OtherWay::kNotThen:
      return "not_then";
    case OtherWay::kWithoutLot:
      return "without_lot";
    case OtherWay::kWithoutFood:
      return "without_food";
  }
  return "";
}

Json no_meal_name(NoMeal why) {
  switch (why) {
    case NoMeal::kNone:
      break;
    case NoMeal::kPassed:
      return "passed";
    case NoMeal::kBeyond:
      return "beyond";
    case NoMeal::kRecorded:
      return "recorded";
    case NoMeal::kNobody:
      return "nobody";
    case NoMeal::kWish:
      return "wish";
    case NoMeal::kNothingLeft:
      return "nothing_left";
  }
  return nullptr;
}

Json time_of(const std::optional<MealTime>& when) {
  if (!when) return nullptr;
  return Json{{"day", iso_day(when->day)}, {"meal", std::string(meal_name(when->meal))}};
}

template <class Key>
Json key_or_null(const std::optional<Key>& key) {
  return key ? Json(key->str()) : Json(nullptr);
}

Json worse_of(const Worse& worse) {
  return Json{{"way", way_name(worse.way)},
              {"level", json::text_or_null(worse.level)},
              {"more", worse.more},
              {"food", json::text_or_null(worse.food.str())},
              {"proven", worse.proven}};
}

Json reason_of(const Household& household, const Reason& reason) {
  Json item;
  item["rule"] = std::string(why_rule_name(reason.rule));
  item["food"] = reason.food.empty() ? Json(nullptr) : Json(reason.food.str());
  item["lot"] = reason.lot ? Json(reason.lot->value()) : Json(nullptr);
  item["when"] = time_of(reason.when);
  item["person"] = key_or_null(reason.person);
  item["alone_at_table"] = reason.alone;
  item["refusal"] = reason.refusal && reason.person
                        ? json::refusal(household, {*reason.person, *reason.refusal})
                        : Json(nullptr);
  item["good_through"] = json::day(reason.good_through);
  item["until"] = json::day(reason.until);
  item["limit"] = reason.limit.halves() > 0 ? json::servings(reason.limit) : Json(nullptr);
  item["worse"] = reason.worse ? worse_of(*reason.worse) : Json(nullptr);
  return item;
}

Json part_of(const Household& household, const WhyPart& part) {
  Json item;
  item["fate"] = std::string(fate_name(part.fate));
  item["food"] = part.food.empty() ? Json(nullptr) : Json(part.food.str());
  item["at"] = part.at ? json::stock_key(*part.at) : Json(nullptr);
  item["amount"] = part.amount.halves() > 0 ? json::servings(part.amount) : Json(nullptr);
  item["good_through"] = json::day(part.good_through);
  item["when"] = time_of(part.when);
  item["people"] = json::keys(part.people);
  item["kit"] = key_or_null(part.kit);
  item["into"] = key_or_null(part.place);
  item["hold_until"] = json::day(part.hold_until);
  item["units_to_buy"] = part.buy ? Json(part.buy->units) : Json(nullptr);
  item["water_ml"] = part.buy && part.buy->ml > 0 ? Json(part.buy->ml) : Json(nullptr);
  Json reasons = Json::array();
  for (const Reason& reason : part.reasons) reasons.push_back(reason_of(household, reason));
  item["reasons"] = std::move(reasons);
  return item;
}

}  // namespace

std::string render_why_json(const Household& household, const WhyReport& report) {
  Json parts = Json::array();
  for (const WhyPart& part : report.parts) parts.push_back(part_of(household, part));
  std::string words = render_why_text(household, report);
  if (!words.empty()) words.pop_back();
  return json::document("why", report.as_of,
                        Json{{"lot", report.lot ? Json(report.lot->value()) : Json(nullptr)},
                             {"meal", time_of(report.meal)},
                             {"food", json::text_or_null(report.food.str())},
                             {"parts", std::move(parts)},
                             {"no_meal", no_meal_name(report.no_meal)},
                             {"words", words}});
}

}  // namespace larderloop
