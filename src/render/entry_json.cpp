#include "larderloop/render/entry_json.h"

#include "render/json_common.h"

namespace larderloop {

std::string render_scans_json(const std::vector<std::pair<const Scan*, const Food*>>& scans, Day as_of) {
  using json::Json;
  Json all = Json::array();
  for (const auto& [scan, food] : scans) {
    Json dates = Json::array();
    for (const DateMark& mark : scan->dates) {
      Json date;
      date["kind"] = mark_kind_name(mark.kind);
      date["precision"] = precision_name(mark.precision);
      date["day"] = json::day(mark.day);
      dates.push_back(std::move(date));
    }
    Json one;
    one["gtin"] = scan->item.gtin;
    one["food"] = food == nullptr ? Json(nullptr) : Json(food->key.str());
    one["restricted"] = scan->item.restricted;
    one["carton"] = scan->item.carton;
    one["variable"] = scan->item.variable;
    one["no_food"] = json::text_or_null(scan->item.note);
    one["dates"] = std::move(dates);
    one["expiry_time"] = json::text_or_null(scan->expiry_time);
    one["lot_code"] = json::text_or_null(scan->lot_code);
    one["serial"] = json::text_or_null(scan->serial);
    one["units"] = scan->units ? Json(*scan->units) : Json(nullptr);
    one["net_weight"] = json::text_or_null(scan->net_weight);
    one["net_volume"] = json::text_or_null(scan->net_volume);
    one["price"] = json::text_or_null(scan->price);
    one["warnings"] = scan->warnings;
    all.push_back(std::move(one));
  }
  Json data;
  data["scans"] = std::move(all);
  return json::document("scan", as_of, std::move(data));
}

}  // namespace larderloop
