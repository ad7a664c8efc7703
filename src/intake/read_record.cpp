#include "intake/names.h"
#include "intake/read_sections.h"

namespace larderloop::intake {

Lot read_lot(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a lot");
  Lot out;
  in.id("id", out.id);
  in.key("food", out.food);
  out.mark = read_mark(in, "mark", Need::kRequired).value_or(DateMark{});
  in.text("lot_code", out.lot_code);
  in.day("received", out.received);
  out.label = read_statement(in, "label");
  in.one_of("state", out.state, lot_state_names());
  in.text("note", out.note);
  in.finish();
  return out;
}

Reading read_reading(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a reading");
  Reading out;
  in.id("id", out.id);
  in.id("lot", out.lot);
  in.day("on", out.on);
  in.text("by", out.by);
  out.mark = read_mark(in, "mark", Need::kOptional);
  out.label = read_statement(in, "label");
  in.one_of("state", out.state, lot_state_names());
  in.text("note", out.note);
  in.finish();
  return out;
}

namespace {

constexpr const char* kHappeningMembers[] = {
    "lot", "place", "opened_on", "to", "units", "half_servings", "change_half_servings",
    "who", "meal",  "paid_cents"};

// A correction says only what it takes back.
void read_correction(Reader& in, Entry& out) {
  in.id("corrects", out.corrects);
  for (const char* name : kHappeningMembers) {
    in.forbid(name, "does not belong to a correction",
              "leave it out; the corrected entry already says it");
  }
}

void read_happening(Reader& in, Entry& out, const UnitSizes& sizes) {
  read_stock_key(in, out.at);
  if (out.kind == EntryKind::kMoved) {
    in.key("to", out.to);
  } else {
    in.forbid("to", "belongs to moved only", "leave it out, or write an entry of the kind moved");
  }
  read_amount(in, sizes, out.at.lot, Need::kRequired, out.amount);
  if (out.kind == EntryKind::kCounted) {
    in.whole("change_half_servings", out.change, Need::kRequired);
  } else {
    in.forbid("change_half_servings", "belongs to counted only", "leave it out");
  }
  in.forbid("corrects", "belongs to corrected only", "leave it out");
  in.key("who", out.who);
  in.one_of("meal", out.meal, meal_names());
  in.whole("paid_cents", out.paid_cents);
}

}  // namespace

Entry read_entry(const JsonNode& node, const Path& path, Findings& findings,
                 const UnitSizes& sizes) {
  Reader in(node, path, findings, "an entry");
  Entry out;
  in.id("id", out.id);
  std::optional<EntryKind> kind;
  if (in.has("kind")) {
    in.one_of("kind", kind, entry_kind_names());
  } else {
    static_cast<void>(in.member("kind", Need::kRequired));
  }
  in.day("on", out.on);
  in.instant("written_at", out.written_at);
  in.text("note", out.note);
  if (!kind) {  // nothing can be said about the other members
    static_cast<void>(in.member("corrects", Need::kOptional));
    for (const char* name : kHappeningMembers) static_cast<void>(in.member(name, Need::kOptional));
    in.finish();
    return out;
  }
  out.kind = *kind;
  if (out.kind == EntryKind::kCorrected) {
    read_correction(in, out);
  } else {
    read_happening(in, out, sizes);
  }
  in.finish();
  return out;
}

}  // namespace larderloop::intake
