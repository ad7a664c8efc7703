#include <fmt/core.h>

#include "larderloop/core/words.h"
#include "larderloop/render/plan_text.h"
#include "render/html_text.h"

namespace larderloop {

std::string render_nudge_text(const Household& household, const NudgeReport& report) {
  if (!report.due()) return fmt::format("{}: nothing is due until {}.\n", household.settings.name, plain_day(report.through));
  std::string text = fmt::format("{}, {} to {}\n", household.settings.name, short_day(report.from), plain_day(report.through));
  for (const NudgeItem& item : report.items) text += short_day(item.day) + ": " + item.text + "\n";
  if (report.more > 0) text += fmt::format("and {} more: larderloop plan\n", report.more);
  return text;
}

std::string render_nudge_html(const Household& household, const NudgeReport& report) {
  const std::string title = report.due() ? fmt::format("{}, {} to {}", household.settings.name, short_day(report.from), plain_day(report.through))
                                         : fmt::format("{}: nothing is due until {}.", household.settings.name, plain_day(report.through));
  std::string html = fmt::format("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width\">\n"
                                 "<title>{0}</title>\n</head>\n<body>\n<h1 style=\"font-size:1.1em\">{0}</h1>\n",
                                 html_text(title));
  if (report.due()) {
    html += "<ul>\n";
    for (const NudgeItem& item : report.items) html += "<li><b>" + html_text(short_day(item.day)) + "</b>: " + html_text(item.text) + "</li>\n";
    html += "</ul>\n";
  }
  if (report.more > 0) html += fmt::format("<p>and {} more: larderloop plan</p>\n", report.more);
  return html + "</body>\n</html>\n";
}

}  // namespace larderloop
