#include <fmt/core.h>

#include "larderloop/core/words.h"
#include "larderloop/render/plan_text.h"

namespace larderloop {

std::string render_nudge_text(const Household& household, const NudgeReport& report) {
  if (!report.due()) return fmt::format("{}: nothing is due until {}.\n", household.settings.name, plain_day(report.through));
  std::string text = fmt::format("{}, {} to {}\n", household.settings.name, short_day(report.from), plain_day(report.through));
  for (const NudgeItem& item : report.items) text += short_day(item.day) + ": " + item.text + "\n";
  if (report.more > 0) text += fmt::format("and {} more: larderloop plan\n", report.more);
  return text;
}

}  // namespace larderloop
