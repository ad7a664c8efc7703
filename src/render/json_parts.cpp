#include "render/json_parts.h"

namespace larderloop::json_parts {
namespace {

const char* leave_reason_name(LeaveReason reason) {
  switch (reason) {
    case LeaveReason::kTooOld:
      return "will_not_last";
    case LeaveReason::kPast:
      return "past";
    case LeaveReason::kRecalled:
      return "recalled";
    case LeaveReason::kDoubtful:
      return "doubtful";
    case LeaveReason::kDamaged:
      return "damaged";
    case LeaveReason::kMissing:
      return "missing";
  }
  return "";
}

}  // namespace

void put_position(Json& into, const StockKey& at) {
  into["lot"] = at.lot.value();
  into["place"] = at.place.str();
  into["opened_on"] = json::day(at.opened_on);
}

void put_food(Json& into, const Household& household, const FoodKey& key) {
  const Food* food = find_food(household, key);
  into["food"] = key.str();
  into["name"] = food == nullptr ? key.str() : food->name;
}

Json slot(const ReviewSlot& slot) {
  return Json{{"kit", slot.kit.str()},
              {"slot", iso_day(slot.slot)},
              {"day", iso_day(slot.day)},
              {"state", std::string(slot_state_words(slot.state))},
              {"started_on", json::day(slot.started_on)},
              {"finished_on", json::day(slot.finished_on)}};
}

Json schedule(const KitSchedule& schedule) {
  return Json{{"kit", schedule.kit.str()},
              {"current", schedule.current ? slot(*schedule.current) : Json(nullptr)},
              {"next", slot(schedule.next)},
              {"slack_days", schedule.slack_days},
              {"hold_until", iso_day(schedule.hold_until)}};
}

Json leaving(const Household& household, const std::vector<Leaving>& list) {
  Json all = Json::array();
  for (const Leaving& each : list) {
    Json item;
    put_position(item, each.at);
    put_food(item, household, each.food);
    item["amount"] = json::servings(each.amount);
    item["good_through"] = json::day(each.good_through);
    item["reason"] = leave_reason_name(each.reason);
    all.push_back(std::move(item));
  }
  return all;
}

}  // namespace larderloop::json_parts
