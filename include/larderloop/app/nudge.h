// nudge.h - the weekly message: this week in at most twelve lines.
#pragma once

#include <string>
#include <vector>

#include "larderloop/app/asked.h"
#include "larderloop/app/plan.h"

namespace larderloop {

inline constexpr std::size_t kNudgeLines = 12;

enum class NudgeKind { kEat, kReview, kShop, kGiveAway, kLook, kLabel };
struct NudgeItem {
  NudgeKind kind = NudgeKind::kEat;
  Day day{};
  std::string text;  // one line, dates as short_day
};
// `items`: what is due on [today, today + 7), most urgent day first; `more`: how many did not fit into the lines.
struct NudgeReport {
  Day from{};
  Day through{};
  std::vector<NudgeItem> items;
  std::size_t more = 0;
  [[nodiscard]] bool due() const { return !items.empty(); }
};
[[nodiscard]] NudgeReport make_nudge(const Household& household, const PlanReport& plan, Asked asked);

}  // namespace larderloop
