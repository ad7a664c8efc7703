#include "larderloop/render/paper_html.h"

#include <fmt/core.h>

#include <algorithm>

#include "render/html_text.h"
#include "render/json_common.h"

namespace larderloop {
namespace {

std::string escaped(std::string_view text) { return html_text(text); }

constexpr std::string_view kStyles = R"(:root{color-scheme:light dark}
*{box-sizing:border-box}
body{font-family:"DejaVu Sans","Noto Sans",sans-serif;line-height:1.35;margin:0 auto;padding:.6em;max-width:62em;overflow-wrap:break-word}
body.large{font-size:145%}
h1{font-size:1.6em;margin:.2em 0}
h1,h2{break-after:avoid}
p{margin:.45em 0;orphans:2;widows:2}
.page+.page{break-before:page;margin-top:2em}
.warning{border:.2em solid;padding:.4em .6em;margin:.5em 0;font-weight:bold;break-inside:avoid}
table{border-collapse:collapse;width:100%;margin:1em 0}
th,td{text-align:left;vertical-align:top;padding:.25em .8em .25em 0;border-bottom:1px solid}
th.title{font-size:1.2em;border:0}
thead tr:last-child th{border-bottom:2px solid;font-size:.85em}
tr{break-inside:avoid}
tbody tr:first-child{break-before:avoid}
.tick{display:inline-block;width:.95em;height:.95em;border:.12em solid;margin-right:.4em;vertical-align:-.1em}
svg{width:38mm;height:38mm;background:#fff;display:block}
.foot{font-size:.8em;border-top:1px solid;margin-top:1em;padding-top:.3em}
@media screen and (max-width:38em){
thead tr:last-child:not(:first-child){position:absolute;clip-path:inset(50%);height:1px;overflow:hidden}
table,thead,tbody,tr,td,th{display:block}
tr{border-bottom:2px solid;padding:.3em 0}
td{border:0;padding:.1em 0}
td:empty{display:none}
td[data-of]::before{content:attr(data-of) ": ";font-size:.85em}
}
@media print{:root{color-scheme:light}body{color:#000;background:#fff;max-width:none;padding:0;font-size:10.5pt}body.large{font-size:15pt}thead{display:table-header-group}}
)";

std::string cell_html(const PaperCell& cell) {
  const std::string text = escaped(cell.text);
  return (cell.tick ? "<span class=\"tick\" role=\"img\" aria-label=\"to tick\"></span>" : "") + (cell.strong && !text.empty() ? "<b>" + text + "</b>" : text);
}

std::string code_html(const PaperCode& code) {
  int side = 0;
  while (static_cast<std::size_t>((side + 1) * (side + 1)) <= code.modules.size()) ++side;
  std::string path;
  for (int y = 0; y < side; ++y) {
    for (int x = 0; x < side; ++x) {
      if (code.modules[static_cast<std::size_t>(y * side + x)] == '1') path += fmt::format("M{} {}h1v1h-1z", x + 4, y + 4);
    }
  }
  return fmt::format("<svg viewBox=\"0 0 {0} {0}\" shape-rendering=\"crispEdges\" role=\"img\" aria-label=\"code\"><path fill=\"#000\" d=\"{1}\"/></svg><p>{2}</p>\n", side + 8,
                     path, escaped(code.caption));
}

std::string table_html(const PaperTable& table) {
  std::string html = fmt::format("<table><thead><tr><th class=\"title\" colspan=\"{}\">{}</th></tr><tr>", table.columns.size(), escaped(table.title));
  int shares = 0;
  for (const PaperColumn& column : table.columns) shares += column.share;
  for (const PaperColumn& column : table.columns) html += fmt::format("<th scope=\"col\" style=\"width:{}%\">{}</th>", 100 * column.share / shares, escaped(column.heading));
  html += "</tr></thead><tbody>\n";
  for (const auto& row : table.rows) {
    html += "<tr>";
    for (std::size_t each = 0; each < row.size(); ++each) {
      html += fmt::format("<td data-of=\"{}\">{}</td>", escaped(table.columns[each].heading), cell_html(row[each]));
    }
    html += "</tr>\n";
  }
  return html + "</tbody></table>\n";
}

std::string block_html(const PaperBlock& block) {
  if (const auto* heading = std::get_if<PaperHeading>(&block)) return "<h2>" + escaped(heading->text) + "</h2>\n";
  if (const auto* warning = std::get_if<PaperWarning>(&block)) return "<p class=\"warning\">WARNING: " + escaped(warning->text) + "</p>\n";
  if (const auto* table = std::get_if<PaperTable>(&block)) return table_html(*table);
  if (const auto* code = std::get_if<PaperCode>(&block)) return code_html(*code);
  const auto& text = std::get<PaperText>(block);
  return text.strong ? "<p><b>" + escaped(text.text) + "</b></p>\n" : "<p>" + escaped(text.text) + "</p>\n";
}

// ---- labels ----

constexpr double kPad = 2.5, kLeast = 7.0, kPoint = 25.4 / 72;

std::size_t letters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char each) { return (static_cast<unsigned char>(each) & 0xc0U) != 0x80U; }));
}

// Lines that a text takes, a letter being 0.72 of the type's size wide, which few are.
double lines_of(std::string_view text, double points, double width) {
  const auto a_line = std::max(1.0, width / (points * kPoint * 0.72));
  return static_cast<double>(static_cast<std::size_t>(static_cast<double>(letters(text)) / a_line) + 1);
}

double label_points(const PaperDocument& document, const std::string& title, const std::vector<PaperCell>& lines) {
  const double width = document.grid.width - 2 * kPad, height = document.grid.height - 2 * kPad;
  for (double points = document.large ? 20.0 : 14.0; points >= kLeast; points -= 0.5) {
    double tall = lines_of(title, points * 1.45, width) * points * 1.45;
    for (const PaperCell& line : lines) tall += lines_of(line.text, points, width) * points;
    if (tall * kPoint * 1.2 <= height) return points;
  }
  return 0;
}

void labels_html(const PaperDocument& document, PaperHtml& made) {
  int sheet = -1;
  for (std::size_t each = 0; each < document.labels.size(); ++each) {
    const PaperLabel& label = document.labels[each];
    const LabelPlace place = place_of_label(document.grid, document.start_at, static_cast<int>(each));
    while (sheet < place.sheet) {
      made.text += sheet < 0 ? "<div class=\"sheet\">\n" : "</div>\n<div class=\"sheet\">\n";
      ++sheet;
    }
    const std::vector<PaperCell>* lines = &label.lines;
    double points = label_points(document, label.title, *lines);
    if (points == 0) {
      made.too_long.push_back(label.title);
      lines = &label.instead;
      points = std::max(kLeast, label_points(document, label.title, *lines));
    }
    made.text += fmt::format("<div class=\"label\" style=\"left:{:.2f}mm;top:{:.2f}mm;width:{:.2f}mm;height:{:.2f}mm;font-size:{:.1f}pt\"><div class=\"name\">{}</div>", place.x,
                             place.y, document.grid.width, document.grid.height, points, escaped(label.title));
    for (const PaperCell& line : *lines) made.text += "<div>" + cell_html(line) + "</div>";
    made.text += "</div>\n";
  }
  made.text += "</div>\n";
}

}  // namespace

PaperHtml render_paper_html(const PaperDocument& document) {
  PaperHtml made;
  const bool labels = document.what == PaperWhat::kLabels;
  const char* page = document.sheet.size == PaperSize::kA4 ? "A4" : "letter";
  made.text = "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"><meta name=\"robots\" "
              "content=\"noindex\">\n<title>" + escaped(document.title + ", " + document.household) + "</title>\n<style>\n";
  made.text += kStyles;
  made.text += fmt::format("@page{{size:{};margin:{}}}\n", page, labels ? "0" : "13mm");
  if (labels) {
    made.text += fmt::format("body{{padding:0;margin:0;max-width:none}}.sheet{{position:relative;width:{}mm;height:{}mm;overflow:hidden;break-after:page;background:#fff;color:#000}}"
                             ".sheet:last-child{{break-after:auto}}.label{{position:absolute;overflow:hidden;padding:{}mm;line-height:1.2{}}}.name{{font-size:1.45em;font-weight:bold}}"
                             "@media print{{.label{{outline-offset:0}}}}\n"
                             "@media screen and (max-width:38em){{.sheet{{width:auto;height:auto}}.label{{position:static;width:auto!important;height:auto!important;"
                             "border-bottom:1px solid}}}}\n",
                             document.sheet.width_mm(), document.sheet.height_mm(), kPad, document.outlines ? ";outline:.1mm solid" : "");
  }
  made.text += std::string("</style></head>\n<body") + (document.large ? " class=\"large\"" : "") + ">\n";
  if (labels) labels_html(document, made);
  for (const PaperPage& each : document.pages) {
    made.text += "<section class=\"page\"><h1>" + escaped(each.title) + "</h1>\n<p>" + escaped(each.subtitle) + "</p>\n";
    for (const PaperBlock& block : each.blocks) made.text += block_html(block);
    made.text += "<p class=\"foot\">" + escaped(document.household) + ". As of " + plain_day(document.as_of) + ".</p></section>\n";
  }
  made.text += "</body></html>\n";
  return made;
}

std::string render_printed_json(const Printed& printed, Day as_of) {
  json::Json data;
  data["what"] = paper_name(printed.what);
  data["format"] = printed.format;
  data["file"] = json::text_or_null(printed.file);
  data["sheet"] = paper_size_name(printed.sheet.size);
  data["sheets"] = printed.sheets > 0 ? json::Json(printed.sheets) : json::Json(nullptr);
  data["pages"] = printed.pages;
  data["labels"] = printed.labels;
  data["warnings"] = json::Json::array();
  for (const std::string& warning : printed.warnings) data["warnings"].push_back(warning);
  return json::document("printed", as_of, std::move(data));
}

}  // namespace larderloop
