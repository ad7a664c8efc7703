#include "larderloop/app/nudge.h"

#include <algorithm>
#include <map>

#include "app/plain_names.h"
#include "larderloop/app/meal_items.h"
#include "larderloop/app/shop.h"
#include "larderloop/core/words.h"

namespace larderloop {
namespace {

constexpr std::size_t kNamesInALine = 4;

// "Rice cakes, Oat bars and 3 more"
std::string some_of(std::vector<std::string> names) {
  std::vector<std::string> unique;
  for (std::string& name : names) {
    if (std::find(unique.begin(), unique.end(), name) == unique.end()) unique.push_back(std::move(name));
  }
  if (unique.size() > kNamesInALine) {
    const std::size_t more = unique.size() - (kNamesInALine - 1);
    unique.resize(kNamesInALine - 1);
    unique.push_back(std::to_string(more) + " more");
  }
  return list_words(unique);
}

class Collector {
 public:
  Collector(const Household& household, const PlanReport& plan, Day from)
      : household_(household), plan_(plan), from_(from), through_(from + Days(6)) {}

  std::vector<NudgeItem> items() {
    past();
    for (const KitPlan& kit : plan_.kits) of_kit(kit);
    shopping();
    meals();
    give_aways();
    skipped();
    std::stable_sort(items_.begin(), items_.end(),
                     [](const NudgeItem& a, const NudgeItem& b) { return a.day < b.day; });
    return std::move(items_);
  }

 private:
  void add(NudgeKind kind, Day day, std::string text) { items_.push_back({kind, std::max(day, from_), std::move(text)}); }

  void past() {
    std::vector<std::string> unsafe, look;
    for (const PastDate& each : plan_.eat_down.past) {
      (each.safety ? unsafe : look).push_back(food_words(household_, each.food));
    }
    if (!unsafe.empty()) add(NudgeKind::kLook, from_, "Throw out, past the use-by date: " + some_of(unsafe));
    if (!look.empty()) add(NudgeKind::kLook, from_, "Past its date, look and smell before you decide: " + some_of(look));
    std::vector<std::string> waiting;
    for (const Waiting& each : plan_.eat_down.waiting) waiting.push_back(food_words(household_, each.food));
    if (!waiting.empty()) add(NudgeKind::kLook, from_, "Set aside, do not eat until settled: " + some_of(waiting));
  }

  void of_kit(const KitPlan& kit) {
    const std::string name = place_words(household_, kit.schedule.kit);
    if (kit.schedule.current && kit.schedule.current->day <= through_) {
      const ReviewSlot& slot = *kit.schedule.current;
      std::string text = "Review the " + name;
      if (slot.state == SlotState::kOpen) text += ": begun, not finished";
      else if (slot.day < from_) text += ": due since " + short_day(slot.day);
      add(NudgeKind::kReview, slot.day, text);
    }
    std::vector<std::string> unread, wrong;
    for (const Leaving& each : kit.label_needed) unread.push_back(food_words(household_, each.food));
    for (const Leaving& each : kit.wrong_bag) {
      wrong.push_back(food_words(household_, each.food) + " from " + place_words(household_, each.at.place));
    }
    if (!wrong.empty()) add(NudgeKind::kLabel, from_, "Take out, not for who it is packed for: " + some_of(wrong));
    if (!unread.empty()) add(NudgeKind::kLabel, from_, "Read the label in the " + name + ": " + some_of(unread));
    if (!kit.water.to_refill.empty()) add(NudgeKind::kLook, from_, "Pour out and refill the water of the " + name);
    if (kit.buy.empty()) return;
    const Day need = kit.schedule.current ? kit.schedule.current->day : from_;
    const Day by = shop_by_day(household_.settings, need, from_);
    if (by > through_) return;
    std::vector<std::string>& foods = shopping_[by];
    for (const BuyLine& line : kit.buy) foods.push_back(food_words(household_, line.food));
  }

  // One line a shopping day, whichever kit it is for.
  void shopping() {
    for (auto& [by, foods] : shopping_) add(NudgeKind::kShop, by, "Buy " + some_of(foods) + " (larderloop shop)");
  }

  void meals() {
    std::map<Day, std::string> days;
    for (const PlannedMeal& meal : plan_.eat_down.meals) {
      if (meal.day > through_) continue;
      std::string& line = days[meal.day];
      line += (line.empty() ? "" : "; ") + meal_line(household_, meal);
    }
    for (auto& [day, line] : days) add(NudgeKind::kEat, day, "Eat at " + line);
  }

  void give_aways() {
    std::map<Day, std::vector<std::string>> days;
    for (const GiveAway& each : plan_.eat_down.give_away) {
      if (each.by <= through_) days[each.by].push_back(food_words(household_, each.food));
    }
    for (auto& [day, foods] : days) add(NudgeKind::kGiveAway, day, "Give away: " + some_of(foods));
  }

  void skipped() {
    for (const Skipped& each : plan_.eat_down.skipped) {
      add(NudgeKind::kLook, from_,
          "Skipped " + std::to_string(each.times) + " times: " + food_words(household_, each.food) +
              (each.give_by ? "; give it away by " + short_day(*each.give_by) + ", or rate it lower" : "; rate it lower"));
    }
  }

  const Household& household_;
  const PlanReport& plan_;
  Day from_;
  Day through_;
  std::vector<NudgeItem> items_;
  std::map<Day, std::vector<std::string>> shopping_;
};

}  // namespace

NudgeReport make_nudge(const Household& household, const PlanReport& plan, Asked asked) {
  NudgeReport report;
  report.from = asked.today;
  report.through = asked.today + Days(6);
  report.items = Collector(household, plan, asked.today).items();
  const std::size_t room = kNudgeLines - 1;  // a line says which week it is
  if (report.items.size() > room) {
    report.more = report.items.size() - (room - 1);  // and one how much more there is
    report.items.resize(room - 1);
  }
  return report;
}

}  // namespace larderloop
