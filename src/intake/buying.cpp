// What shopping found, and column mappings, read and written.
#include "intake/names.h"
#include "intake/read_sections.h"
#include "intake/write_sections.h"

namespace larderloop::intake {

BuyNote read_buy_note(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a note of shopping");
  BuyNote out;
  in.id("id", out.id);
  in.key("food", out.food);
  in.key("kit", out.kit, Need::kOptional);
  in.day("on", out.on);
  in.one_of("kind", out.kind, buy_note_names(), Need::kRequired);
  in.key("instead", out.instead, Need::kOptional);
  in.text("note", out.note);
  in.finish();
  return out;
}

ImportMapping read_mapping(const JsonNode& node, const Path& path, Findings& findings) {
  Reader in(node, path, findings, "a mapping of columns");
  ImportMapping out;
  in.text("name", out.name, Need::kRequired);
  in.one_of("sheet", out.sheet, sheet_kind_names(), Need::kRequired);
  if (const JsonNode* columns = in.member("columns", Need::kRequired)) {
    const Path here(path, "columns");
    if (columns->type != JsonType::kObject) {
      findings.add(here, columns, "an object of headers and fields is wanted here",
                   "write it as {\"Best before\": \"date\"}");
    } else {
      for (std::size_t at = 0; at < columns->items.size(); ++at) {
        const auto field = read_text(columns->items[at], Path(here, columns->names[at]), findings);
        if (field) out.columns.emplace(columns->names[at], *field);
      }
    }
  }
  in.finish();
  return out;
}

JsonNode buy_note_node(const BuyNote& note) {
  ObjectWriter out;
  out.add("id", note.id)
      .add("food", note.food)
      .key("kit", note.kit)
      .add("on", note.on)
      .add("kind", std::string_view(name_of(note.kind, buy_note_names())))
      .key("instead", note.instead)
      .text("note", note.note);
  return out.done();
}

JsonNode mapping_node(const ImportMapping& mapping) {
  ObjectWriter columns;
  for (const auto& [header, field] : mapping.columns) columns.add(header, std::string_view(field));
  ObjectWriter out;
  out.add("name", std::string_view(mapping.name))
      .add("sheet", std::string_view(name_of(mapping.sheet, sheet_kind_names())))
      .add("columns", columns.done());
  return out.done();
}

}  // namespace larderloop::intake
