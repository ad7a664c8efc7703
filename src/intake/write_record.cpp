#include "intake/write_sections.h"

namespace larderloop::intake {
namespace {

std::optional<JsonNode> maybe_mark(const std::optional<DateMark>& mark) {
  if (!mark) return std::nullopt;
  return mark_node(*mark);
}

}  // namespace

JsonNode lot_node(const Lot& lot) {
  ObjectWriter out;
  out.add("id", lot.id)
      .add("food", lot.food)
      .add("mark", mark_node(lot.mark))
      .text("lot_code", lot.lot_code)
      .add("received", lot.received)
      .object("label", statement_node(lot.label))
      .one_of("state", lot.state, lot_state_names(), LotState::kOk)
      .text("note", lot.note);
  return out.done();
}

JsonNode reading_node(const Reading& reading) {
  ObjectWriter out;
  out.add("id", reading.id)
      .add("lot", reading.lot)
      .add("on", reading.on)
      .text("by", reading.by)
      .object("mark", maybe_mark(reading.mark))
      .object("label", statement_node(reading.label))
      .maybe_one_of("state", reading.state, lot_state_names())
      .text("note", reading.note);
  return out.done();
}

JsonNode entry_node(const Entry& entry, const UnitSizes& sizes) {
  ObjectWriter out;
  out.add("id", entry.id)
      .add("kind", std::string_view(name_of(entry.kind, entry_kind_names())))
      .add("on", entry.on)
      .add("written_at", entry.written_at);
  if (entry.kind == EntryKind::kCorrected) {
    out.add("corrects", entry.corrects);
  } else {
    write_stock_key(out, entry.at);
    out.key("to", entry.to);
    write_amount(out, sizes, entry.at.lot, entry.amount);
    if (entry.kind == EntryKind::kCounted) out.add("change_half_servings", entry.change);
    out.maybe("who", entry.who)
        .maybe_one_of("meal", entry.meal, meal_names())
        .maybe("paid_cents", entry.paid_cents);
  }
  out.text("note", entry.note);
  return out.done();
}

JsonNode review_event_node(const ReviewEvent& event) {
  ObjectWriter out;
  out.add("id", event.id)
      .add("kit", event.kit)
      .add("slot", event.slot)
      .add("kind", std::string_view(name_of(event.kind, review_event_names())))
      .add("on", event.on)
      .maybe("moved_to", event.moved_to)
      .text("note", event.note);
  return out.done();
}

JsonNode review_mark_node(const ReviewMark& mark, const UnitSizes& sizes) {
  ObjectWriter out;
  out.add("id", mark.id).add("kit", mark.kit).add("slot", mark.slot);
  write_stock_key(out, mark.at);
  out.add("what", std::string_view(name_of(mark.what, mark_what_names()))).add("on", mark.on);
  if (mark.amount != HalfServings{}) write_amount(out, sizes, mark.at.lot, mark.amount);
  out.object("mark", maybe_mark(mark.mark));
  return out.done();
}

JsonNode shown_meal_node(const ShownMeal& meal, const UnitSizes& sizes) {
  std::vector<JsonNode> servings;
  for (const ShownServing& serving : meal.servings) {
    ObjectWriter out;
    write_stock_key(out, serving.at);
    out.add("person", serving.person);
    write_amount(out, sizes, serving.at.lot, serving.amount);
    servings.push_back(out.done());
  }
  ObjectWriter out;
  out.add("day", meal.day)
      .add("meal", std::string_view(name_of(meal.meal, meal_names())))
      .list("servings", std::move(servings));
  return out.done();
}

JsonNode feed_stamp_node(const FeedStamp& stamp) {
  const FeedStamp usual;
  ObjectWriter out;
  out.add("key", std::string_view(stamp.key))
      .whole("generation", stamp.generation, usual.generation)
      .flag("in_feed", stamp.in_feed, usual.in_feed)
      .whole("sequence", stamp.sequence, usual.sequence)
      .add("changed_at", stamp.changed_at)
      .text("content", stamp.content);
  return out.done();
}

JsonNode kept_plan_node(const KeptPlan& plan) {
  ObjectWriter out;
  out.add("name", std::string_view(plan.name))
      .add("problem", std::string_view(plan.problem))
      .add("plan", std::string_view(plan.plan));
  return out.done();
}

}  // namespace larderloop::intake
