#include "larderloop/render/plan_json.h"
#include "render/json_parts.h"

namespace larderloop {
namespace {

using json_parts::Json;

const char* nudge_kind_name(NudgeKind kind) {
  switch (kind) {
    case NudgeKind::kEat:
      return "eat";
    case NudgeKind::kReview:
      return "review";
    case NudgeKind::kShop:
      return "shop";
    case NudgeKind::kGiveAway:
      return "give_away";
    case NudgeKind::kLook:
      return "look";
    case NudgeKind::kLabel:
      return "label";
  }
  return "";
}

}  // namespace

std::string render_review_dates_json(const std::vector<ReviewSlot>& slots, Day as_of) {
  Json all = Json::array();
  for (const ReviewSlot& slot : slots) all.push_back(json_parts::slot(slot));
  return json::document("review-dates", as_of, Json{{"reviews", std::move(all)}});
}

std::string render_review_finished_json(const Household& household, const ReviewFinished& report, Day as_of) {
  return json::document("review-finished", as_of,
                              Json{{"schedule", json_parts::schedule(report.schedule)},
                                   {"already_done", report.already_done},
                                   {"left", json_parts::leaving(household, report.left)},
                                   {"pulled_to", report.pulled_to.str()},
                                   {"unmarked", report.unmarked},
                                   {"not_walked", json::keys(report.not_walked_places)}});
}

std::string render_review_sheet_json(const Household& household, const ReviewSheet& sheet, Day as_of) {
  Json places = Json::array();
  for (const SheetPlace& page : sheet.places) {
    Json lines = Json::array();
    for (const SheetLine& line : page.lines) {
      Json item;
      json_parts::put_position(item, line.at);
      json_parts::put_food(item, household, line.food);
      item["amount"] = json::servings(line.amount);
      item["printed"] = line.mark.text;
      item["good_through"] = json::day(line.good_through);
      item["label_read"] = line.label_read;
      item["leaves"] = line.leaves;
      item["marked"] = line.marked ? Json(std::string(mark_what_name(*line.marked))) : Json(nullptr);
      lines.push_back(std::move(item));
    }
    places.push_back(Json{{"place", page.place.str()}, {"lines", std::move(lines)}});
  }
  return json::document(
      "review-sheet", as_of,
      Json{{"schedule", json_parts::schedule(sheet.schedule)}, {"places", std::move(places)}});
}

std::string render_nudge_json(const NudgeReport& report) {
  Json items = Json::array();
  for (const NudgeItem& item : report.items) {
    items.push_back(Json{{"kind", nudge_kind_name(item.kind)}, {"day", iso_day(item.day)}, {"text", item.text}});
  }
  return json::document("nudge", report.from,
                              Json{{"from", iso_day(report.from)},
                                   {"through", iso_day(report.through)},
                                   {"items", std::move(items)},
                                   {"more", report.more}});
}

std::string render_feed_json(const FeedReport& report, Day as_of) {
  Json events = Json::array();
  for (const FeedEvent& event : report.events) {
    Json repeats;
    if (!event.rule.empty()) {
      Json without = Json::array();
      Json moved = Json::array();
      for (const Day day : event.without) without.push_back(iso_day(day));
      for (const FeedMoved& each : event.moved)
        moved.push_back(Json{{"from", iso_day(each.from)}, {"to", iso_day(each.to)}});
      repeats = Json{{"rule", event.rule}, {"without", std::move(without)}, {"moved", std::move(moved)}};
    }
    events.push_back(Json{{"uid", event.uid},
                          {"kind", std::string(feed_kind_words(event.kind))},
                          {"begin", iso_day(event.begin)},
                          {"end", iso_day(event.end)},
                          {"summary", event.summary},
                          {"description", event.description},
                          {"changed_at", iso_instant(event.changed_at)},
                          {"sequence", event.sequence},
                          {"cancelled", event.cancelled},
                          {"repeats", std::move(repeats)}});
  }
  return json::document("feed", as_of, Json{{"name", report.name}, {"events", std::move(events)}});
}

}  // namespace larderloop
