#include <fmt/core.h>

#include <algorithm>

#include "larderloop/core/words.h"
#include "larderloop/render/plan_text.h"
#include "larderloop/render/cautions.h"
#include "render/plain.h"

namespace larderloop {
namespace {

std::string mark_words_of(const std::optional<MarkWhat>& mark) {
  if (!mark) return {};
  return " [" + std::string(mark_what_name(*mark)) + "]";
}

}  // namespace

std::string render_review_dates_text(const Household& household, const std::vector<ReviewSlot>& slots, Day today) {
  std::string text;
  PlaceKey kit;
  for (const ReviewSlot& slot : slots) {
    if (slot.kit != kit) {
      kit = slot.kit;
      text += (text.empty() ? "" : "\n") + plain::place(household, kit) + "\n";
    }
    std::string state(slot_state_words(slot.state));
    if (slot.finished_on) state += " on " + plain_day(*slot.finished_on);
    else if (slot.state == SlotState::kDue && slot.day < today) state += fmt::format(", {} days ago", days_between(slot.day, today));
    else if (slot.state == SlotState::kComing) state += fmt::format(", in {} days", days_between(today, slot.day));
    if (slot.day != slot.slot) state += ", moved from " + plain_day(slot.slot);
    text += fmt::format("  {:<16} {}\n", plain_day(slot.day), state);
  }
  return text.empty() ? "There is no kit.\n" : text;
}

std::string render_review_finished_text(const Household& household, const ReviewFinished& report) {
  const std::string kit = plain::place(household, report.schedule.kit);
  if (report.already_done) {
    return fmt::format("The review of {} for the {} was already finished; nothing was changed.\n",
                       plain_day(report.schedule.current->day), kit);
  }
  std::string text = fmt::format("Review of the {} finished. What stayed is good through {}.\n\n", kit,
                                 plain_day(report.schedule.hold_until));
  plain::Section missing(report.after_use ? "Written down as used" : "Written down as lost");
  plain::Section damaged("Written down as thrown out");
  plain::Section pulled("Taken out, now in " + plain::place(household, report.pulled_to));
  for (const Leaving& each : report.left) {
    const std::string line = fmt::format("{} ({}, {}{})", plain::amount_of(household, each.food, each.amount),
                                         plain::lot(each.at), plain::good_through(each.good_through),
                                         each.reason == LeaveReason::kMissing || each.reason == LeaveReason::kTooOld
                                             ? ""
                                             : "; " + plain::reason(each.reason, each.good_through));
    plain::Section& section = each.reason == LeaveReason::kMissing   ? missing
                              : each.reason == LeaveReason::kDamaged ? damaged
                                                                     : pulled;
    section.line("from " + plain::place(household, each.at.place), line);
  }
  text += missing.text() + damaged.text() + pulled.text();
  if (report.left.empty()) text += "  Everything was there, sound, and will last.\n\n";
  if (report.unmarked > 0) {
    std::vector<std::string> places;
    for (const PlaceKey& place : report.not_walked_places) places.push_back(plain::place(household, place));
    text += fmt::format("{} {} had no mark and {} taken as there{}.\n\n", report.unmarked,
                        plural("thing", report.unmarked), report.unmarked == 1 ? "was" : "were",
                        places.empty() ? "" : " (nobody looked into: " + list_words(places) + ")");
  }
  return text + "Now: larderloop plan shows what goes in, larderloop shop what to buy.\n";
}

std::string render_review_sheet_text(const Household& household, const ReviewSheet& sheet, Day today) {
  std::string text = fmt::format("Walk through the {}\n", plain::place(household, sheet.schedule.kit));
  if (sheet.schedule.current) text += fmt::format("Review of {}\n", plain_day(sheet.schedule.current->day));
  text += fmt::format("What stays must be good through {}\n", plain_day(sheet.schedule.hold_until));
  text += render_cautions({Caution::kContainers, Caution::kSpoiled}) + "The label and your local food authority decide, not this list.\n";
  if (concerns_formula(household, sheet.schedule.kit, today)) text += render_cautions({Caution::kFormula});
  text += "\n";
  for (const SheetPlace& page : sheet.places) {
    text += plain::place(household, page.place) + "\n";
    for (const SheetLine& line : page.lines) {
      const std::string printed = line.mark.text.empty() ? "no date printed" : "printed: " + line.mark.text;
      text += fmt::format("  [ ] {}{}\n", plain::amount_of(household, line.food, line.amount), mark_words_of(line.marked));
      text += fmt::format("      {}, {}, {}\n", plain::lot(line.at), printed, plain::good_through(line.good_through));
      if (line.leaves) text += "      TAKE OUT: " + plain::reason(line.reason, line.good_through) + "\n";
      const FoodKind kind = find_food(household, line.food)->kind;
      if (!line.label_read && kind != FoodKind::kThing && kind != FoodKind::kWater) text += "      read the label\n";
    }
    text += "\n";
  }
  if (sheet.places.empty()) text += "The kit is empty by the book.\n";
  return text;
}

}  // namespace larderloop
