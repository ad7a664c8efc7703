#include "larderloop/render/sheets.h"

#include "larderloop/render/table.h"
#include "render/json_common.h"

namespace larderloop {
namespace {

using json::Json;

std::string_view delimiter_name(char delimiter) {
  return delimiter == ',' ? "comma" : delimiter == ';' ? "semicolon" : delimiter == '\t' ? "tab" : "bar";
}

std::string counted(std::size_t count, const std::string& what) { return std::to_string(count) + " " + what; }

}  // namespace

std::string render_sheet_report(const SheetReport& report) {
  std::string text = counted(report.rows, report.rows == 1 ? "row" : "rows") + ": ";
  std::string parts;
  const auto part = [&](std::size_t count, const std::string& what) {
    if (count > 0) parts += (parts.empty() ? "" : ", ") + counted(count, what);
  };
  part(report.added, "new");
  part(report.changed, "changed");
  part(report.counted, "counted");
  part(report.known, "known already");
  text += (parts.empty() ? "nothing" : parts) + "\n";
  if (report.added + report.changed + report.counted == 0) text += "Nothing is to be changed.\n";
  for (const RowNews& each : report.news) text += "  line " + std::to_string(each.line) + ", " + std::string(each.did == RowDid::kAdded ? "new" : row_did_name(each.did)) + ": " + each.words + "\n";
  const std::size_t all = report.added + report.changed + report.counted;
  if (all > kMostRowNews) text += "  and " + std::to_string(all - kMostRowNews) + " more\n";
  std::string passed;
  for (const FileColumn& each : report.columns) {
    if (each.col == Col::kCount && !each.header.empty()) passed += (passed.empty() ? "" : ", ") + each.header;
  }
  if (!passed.empty()) text += "Passed over: " + passed + "\n";
  return text;
}

std::string render_sheet_report_json(const SheetReport& report, Day as_of) {
  Json data;
  data["sheet"] = sheet_kind_name(report.sheet);
  data["encoding"] = report.encoding;
  data["delimiter"] = delimiter_name(report.delimiter);
  Json columns = Json::array();
  for (const FileColumn& each : report.columns) {
    Json one;
    one["header"] = each.header;
    one["column"] = json::text_or_null(column_name(report.sheet, each.col));
    columns.push_back(std::move(one));
  }
  data["columns"] = std::move(columns);
  data["rows"] = report.rows;
  data["added"] = report.added;
  data["changed"] = report.changed;
  data["counted"] = report.counted;
  data["known"] = report.known;
  Json news = Json::array();
  for (const RowNews& each : report.news) {
    Json one;
    one["line"] = each.line;
    one["did"] = row_did_name(each.did);
    one["words"] = each.words;
    news.push_back(std::move(one));
  }
  data["news"] = std::move(news);
  data["first"] = report.first;
  data["notes"] = report.notes;
  data["saved_mapping"] = json::text_or_null(report.saved_mapping);
  return json::document("imported", as_of, std::move(data));
}

std::string render_sheet_columns(SheetKind sheet, std::size_t width) {
  Table table({{"COLUMN"}, {"WHAT IT SAYS"}, {"FOR EXAMPLE"}});
  for (const ColumnInfo& each : sheet_columns(sheet)) table.add({std::string(each.name), std::string(each.meaning), std::string(each.example)});
  return table.text(width);
}

std::string render_sheet_columns_json(SheetKind sheet, Day as_of) {
  Json columns = Json::array();
  for (const ColumnInfo& each : sheet_columns(sheet)) {
    Json one;
    one["column"] = each.name;
    one["meaning"] = each.meaning;
    one["example"] = json::text_or_null(each.example);
    columns.push_back(std::move(one));
  }
  Json data;
  data["sheet"] = sheet_kind_name(sheet);
  data["columns"] = std::move(columns);
  return json::document("template", as_of, std::move(data));
}

std::string render_mappings(const std::vector<ImportMapping>& mappings, std::size_t width) {
  Table table({{"MAPPING"}, {"FOR"}, {"HEADER"}, {"COLUMN"}});
  for (const ImportMapping& mapping : mappings) {
    for (const auto& [header, column] : mapping.columns) table.add({mapping.name, std::string(sheet_kind_name(mapping.sheet)), header, column.empty() ? "(passed over)" : column});
  }
  return table.text(width);
}

std::string render_mappings_json(const std::vector<ImportMapping>& mappings, Day as_of) {
  Json all = Json::array();
  for (const ImportMapping& mapping : mappings) {
    Json columns = Json::array();
    for (const auto& [header, column] : mapping.columns) {
      Json one;
      one["header"] = header;
      one["column"] = json::text_or_null(column);
      columns.push_back(std::move(one));
    }
    Json one;
    one["mapping"] = mapping.name;
    one["sheet"] = sheet_kind_name(mapping.sheet);
    one["columns"] = std::move(columns);
    all.push_back(std::move(one));
  }
  Json data;
  data["mappings"] = std::move(all);
  return json::document("mappings", as_of, std::move(data));
}

}  // namespace larderloop
