#include "intake/names.h"
#include "intake/read_sections.h"

namespace larderloop::intake {

ReviewEvent read_review_event(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a review event");
  ReviewEvent out;
  in.id("id", out.id);
  in.key("kit", out.kit);
  in.day("slot", out.slot);
  in.one_of("kind", out.kind, review_event_names(), Need::kRequired);
  in.day("on", out.on);
  in.day("moved_to", out.moved_to);
  in.text("note", out.note);
  in.finish();
  return out;
}

ReviewMark read_review_mark(const JsonNode& node, const Path& path, Findings& findings,
                            const UnitSizes& sizes) {
  Reader in(node, path, findings, "a review mark");
  ReviewMark out;
  in.id("id", out.id);
  in.key("kit", out.kit);
  in.day("slot", out.slot);
  read_stock_key(in, out.at);
  in.one_of("what", out.what, mark_what_names(), Need::kRequired);
  in.day("on", out.on);
  read_amount(in, sizes, out.at.lot, Need::kOptional, out.amount);
  out.mark = read_mark(in, "mark", Need::kOptional);
  in.finish();
  return out;
}

namespace {

ShownServing read_shown_serving(const JsonNode& node, const Path& path, Findings& findings,
                                const UnitSizes& sizes) {
  Reader in(node, path, findings, "a serving");
  ShownServing out;
  read_stock_key(in, out.at);
  in.key("person", out.person);
  read_amount(in, sizes, out.at.lot, Need::kRequired, out.amount);
  in.finish();
  return out;
}

}  // namespace

ShownMeal read_shown_meal(const JsonNode& node, const Path& path, Findings& findings,
                          const UnitSizes& sizes) {
  Reader in(node, path, findings, "a shown meal");
  ShownMeal out;
  in.day("day", out.day);
  in.one_of("meal", out.meal, meal_names(), Need::kRequired);
  in.each("servings", Need::kOptional, [&](const JsonNode& item, const Path& here) {
    out.servings.push_back(read_shown_serving(item, here, findings, sizes));
  });
  in.finish();
  return out;
}

FeedStamp read_feed_stamp(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "an event of the feed");
  FeedStamp out;
  in.text("key", out.key, Need::kRequired);
  in.whole("generation", out.generation);
  in.flag("in_feed", out.in_feed);
  in.whole("sequence", out.sequence);
  in.instant("changed_at", out.changed_at);
  in.text("content", out.content);
  in.finish();
  return out;
}

KeptPlan read_kept_plan(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a kept plan");
  KeptPlan out;
  in.text("name", out.name, Need::kRequired);
  in.text("problem", out.problem, Need::kRequired);
  in.text("plan", out.plan, Need::kRequired);
  in.finish();
  return out;
}

}  // namespace larderloop::intake
