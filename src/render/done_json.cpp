#include "larderloop/render/done_json.h"

#include "render/json_common.h"

namespace larderloop {
namespace {

json::Json slot(const ReviewSlot& each) {
  json::Json item;
  item["slot"] = iso_day(each.slot);
  item["day"] = iso_day(each.day);
  item["state"] = slot_state_words(each.state);
  return item;
}

}  // namespace

std::string render_book_made_json(const std::string& file, const Household& household, Day as_of) {
  json::Json data;
  data["file"] = file;
  data["people"] = household.people.size();
  data["foods"] = household.foods.size();
  data["places"] = household.places.size();
  data["lots"] = household.lots.size();
  data["entries"] = household.entries.size();
  return json::document("book_made", as_of, std::move(data));
}

std::string render_book_copied_json(const std::string& from, const std::string& file, Day as_of) {
  json::Json data;
  data["from"] = from;
  data["file"] = file;
  return json::document("book_copied", as_of, std::move(data));
}

std::string render_review_marked_json(const MarkDone& report, Day as_of) {
  json::Json data;
  data["mark"] = report.mark.id.value();
  data["kit"] = report.mark.kit.str();
  data["slot"] = iso_day(report.mark.slot);
  data["at"] = json::stock_key(report.mark.at);
  data["what"] = mark_what_name(report.mark.what);
  const bool counted =
      report.mark.what == MarkWhat::kMissing || report.mark.what == MarkWhat::kDamaged;
  data["amount"] = counted ? json::servings(report.mark.amount) : json::Json();
  data["on_hand"] = json::servings(report.on_hand);
  data["date"] = report.mark.mark ? json::mark(*report.mark.mark) : json::Json();
  return json::document("review_marked", as_of, std::move(data));
}

std::string render_review_changed_json(const ReviewChanged& report, Day as_of) {
  json::Json data;
  data["kit"] = report.before.kit.str();
  data["before"] = slot(report.before);
  data["after"] = slot(report.after);
  return json::document("review_changed", as_of, std::move(data));
}

}  // namespace larderloop
