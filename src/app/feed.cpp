#include "larderloop/app/feed.h"
#include "larderloop/app/cautions.h"

#include <algorithm>
#include <map>

#include "app/feed_stamps.h"
#include "app/plain_names.h"
#include "larderloop/app/meal_items.h"
#include "larderloop/app/shop.h"
#include "larderloop/calendar/rule.h"
#include "larderloop/core/words.h"

namespace larderloop {
namespace {

constexpr int kReviewsAheadDays = 731;

std::string counted(std::size_t count, const std::string& word) {
  return std::to_string(count) + " " + plural(word, static_cast<std::int64_t>(count));
}

std::string shortened(std::string text, std::size_t most) {
  if (text.size() <= most) return text;
  std::size_t cut = text.rfind(',', most - 12);
  if (cut == std::string::npos) cut = text.rfind(' ', most - 12);
  if (cut == std::string::npos) return text;
  return text.substr(0, cut) + " and more";
}

class Writer {
 public:
  Writer(const Household& household, const PlanReport& plan) : household_(household), plan_(plan) {}

  Result<std::vector<FeedEvent>> events() {
    for (const KitPlan& kit : plan_.kits) {
      reviews(kit, kit.schedule.slots);
      if (household_.settings.feed.reviews == FeedReviews::kSeries) series(kit, kit.schedule.slots);
      shopping(kit, kit.schedule.slots);
    }
    meals();
    give_aways();
    if (events_.empty()) {
      add("empty", FeedKind::kReview, Day{date::local_days{date::year{2000} / 1 / 1}}, "Nothing planned",
          "This household has no kit to review and nothing to eat soon.");
      events_.back().cancelled = true;
    }
    return std::move(events_);
  }

 private:
  void add(std::string key, FeedKind kind, Day day, std::string summary, std::string description) {
    FeedEvent event;
    event.key = std::move(key);
    event.kind = kind;
    event.begin = day;
    event.end = day + Days(1);
    event.summary = std::move(summary);
    event.description = std::move(description);
    events_.push_back(std::move(event));
  }

  void reviews(const KitPlan& kit, const std::vector<ReviewSlot>& slots) {
    const std::string name = place_words(household_, kit.schedule.kit);
    const int slack = kit.schedule.slack_days;
    const ReviewSlot* previous = nullptr;
    for (const ReviewSlot& slot : slots) {
      if (!is_wanted(slot)) continue;
      if (previous != nullptr) tell_review(*previous, name, slot.day + Days(slack));
      previous = &slot;
      if (days_between(plan_.as_of, slot.slot) > kReviewsAheadDays) break;
    }
  }

  void tell_review(const ReviewSlot& slot, const std::string& name, Day hold_until) {
    if (days_between(plan_.as_of, slot.slot) > kReviewsAheadDays) return;
    add("review|" + slot.kit.str() + "|" + iso_day(slot.slot), FeedKind::kReview, slot.day, "Review the " + name,
        "Walk through it bag by bag: is it there, is it sound, what does the label say?\n"
        "What stays must be good through " +
            plain_day(hold_until) +
            ".\n" + std::string(caution_words(Caution::kContainers)) +
            "\nBegin with: larderloop review start " +
            slot.kit.str());
  }

  bool is_wanted(const ReviewSlot& slot) const {
    const bool open = slot.state == SlotState::kOpen || slot.state == SlotState::kDue || slot.state == SlotState::kComing;
    return open && slot.day >= plan_.as_of;
  }

  // All reviews of a kit from the first one that is still to come: one event that repeats. A kit whose rule is not for that keeps
  // its dated events; such a rule comes in only past the commands.
  void series(const KitPlan& kit, const std::vector<ReviewSlot>& slots) {
    const auto first = std::find_if(slots.begin(), slots.end(), [&](const ReviewSlot& each) { return is_wanted(each); });
    if (first == slots.end()) return;
    const ReviewRule rule = review_rule_of(household_, kit.schedule.kit);
    std::string written = series_rule(rule.rule, first->slot).rule;
    if (written.empty()) return;
    const std::string key = "series|" + kit.schedule.kit.str() + "|" + written + "|" + (rule.starts == Day{} ? std::string() : iso_day(rule.starts));
    for (FeedEvent& event : events_) {
      if (event.key.rfind("review|" + kit.schedule.kit.str() + "|", 0) == 0) event.series = key;
    }
    const int slack = kit.schedule.slack_days;
    add(key, FeedKind::kReview, first->slot, "Review the " + place_words(household_, kit.schedule.kit),
        "Walk through it bag by bag: is it there, is it sound, what does the label say?\nWhat stays must be good through the next review" +
            (slack == 0 ? std::string() : " and " + counted(static_cast<std::size_t>(slack), "day") + " more") + ".\n" +
            std::string(caution_words(Caution::kContainers)) + "\nBegin with: larderloop review start " + kit.schedule.kit.str());
    FeedEvent& event = events_.back();
    event.rule = std::move(written);
    for (auto slot = first; slot != slots.end(); ++slot) {
      if (!is_wanted(*slot)) {
        event.without.push_back(slot->slot);
      } else if (slot->day != slot->slot) {
        event.moved.push_back({slot->slot, slot->day, {}});
      }
    }
  }

  // One event for what a kit still needs, named by the review that found it missing.
  void shopping(const KitPlan& kit, const std::vector<ReviewSlot>& slots) {
    if (kit.buy.empty()) return;
    Day slot = kit.schedule.next.slot;
    Day need = plan_.as_of;
    if (kit.schedule.current) {
      slot = kit.schedule.current->slot;
      need = kit.schedule.current->day;
    } else {
      for (const ReviewSlot& each : slots) {
        if (each.state == SlotState::kDone) slot = each.slot;
      }
    }
    std::string text;
    for (const BuyLine& line : kit.buy) {
      const Food& food = *find_food(household_, line.food);
      text += std::to_string(line.units) + " " + plural(food.unit, line.units) + " " + food.name;
      if (!line.pack.shop.empty()) text += " (" + line.pack.shop + ")";
      text += "\n";
    }
    text += "Good through " + plain_day(kit.schedule.hold_until) +
            " at least. " + std::string(caution_words(Caution::kPurchase)) + "\nThe whole list: larderloop shop";
    add("shop|" + kit.schedule.kit.str() + "|" + iso_day(slot), FeedKind::kShopBy,
        shop_by_day(household_.settings, need, plan_.as_of),
        "Shop for the " + place_words(household_, kit.schedule.kit) + ": " + counted(kit.buy.size(), "thing"), text);
    events_.back().related = "review|" + kit.schedule.kit.str() + "|" + iso_day(slot);
  }

  // One event a day of this week and the next on which something is to be eaten up.
  void meals() {
    const Day end = start_of_week(plan_.as_of, household_.settings.week_starts) + Days(14);
    std::map<Day, std::vector<const PlannedMeal*>> days;
    for (const PlannedMeal& meal : plan_.eat_down.meals) {
      if (meal.day < end) days[meal.day].push_back(&meal);
    }
    for (const auto& [day, meals] : days) {
      FeedPart all = meal_day(meals, nullptr);
      add("eat|" + iso_day(day), FeedKind::kEatSoon, day, std::move(all.summary), std::move(all.description));
      for (const PlannedMeal* meal : meals) {
        for (const MealItem& item : meal_items(*meal)) {
          for (const PersonKey& person : item.people) {
            if (events_.back().parts.count(person) == 0) events_.back().parts.emplace(person, meal_day(meals, &person));
          }
        }
      }
    }
  }

  // What a day's meals ask for: of everyone, or of one person.
  FeedPart meal_day(const std::vector<const PlannedMeal*>& meals, const PersonKey* only) const {
    std::vector<std::string> foods;
    FeedPart told;
    for (const PlannedMeal* meal : meals) {
      std::string lines;
      for (MealItem& item : meal_items(*meal)) {
        if (only != nullptr) {
          if (std::find(item.people.begin(), item.people.end(), *only) == item.people.end()) continue;
          item.people = {*only};
        }
        std::string name = food_words(household_, item.food);
        lines += "- " + item_words(household_, item) + ", from " + place_words(household_, item.at.place);
        if (item.good_through) lines += ", good through " + plain_day(*item.good_through);
        lines += "\n";
        if (std::find(foods.begin(), foods.end(), name) == foods.end()) foods.push_back(std::move(name));
      }
      if (!lines.empty()) told.description += meal_words(meal->meal) + "\n" + lines;
    }
    told.description += "Look, smell, and read the label before you serve it.";
    std::string title = "Eat soon: ";
    for (std::size_t index = 0; index < foods.size(); ++index) title += (index == 0 ? "" : ", ") + foods[index];
    told.summary = shortened(std::move(title), 60);
    return told;
  }

  void give_aways() {
    std::map<LotId, GiveAway> lots;
    for (const GiveAway& each : plan_.eat_down.give_away) {
      const auto [lot, fresh] = lots.emplace(each.at.lot, each);
      if (!fresh) lot->second.amount += each.amount;
    }
    for (const auto& [id, each] : lots) {
      const Food& food = *find_food(household_, each.food);
      add("give|" + std::to_string(id.value()), FeedKind::kGiveAway, each.by, "Give away: " + food.name,
          units_words(food, each.amount) + " of " + food.name + ", from " + place_words(household_, each.at.place) +
              ".\nGood through " + plain_day(*each.good_through) +
              "; nobody here will have eaten it by then. Give it away while a food bank still takes it.");
    }
  }

  const Household& household_;
  const PlanReport& plan_;
  std::vector<FeedEvent> events_;
};

}  // namespace

std::string_view feed_kind_words(FeedKind kind) {
  switch (kind) {
    case FeedKind::kReview:
      return "Review";
    case FeedKind::kEatSoon:
      return "Eat soon";
    case FeedKind::kShopBy:
      return "Shop";
    case FeedKind::kGiveAway:
      return "Give away";
  }
  return "";
}

Result<Outcome<FeedReport>> make_feed(const Household& household, const PlanReport& plan, Asked asked) {
  auto events = Writer(household, plan).events();
  if (!events) return fail(events.error());
  Outcome<FeedReport> outcome;
  outcome.report.name = household.settings.name;
  stamp_feed(household, asked.now, *events, outcome.changes.feed);
  std::sort(events->begin(), events->end(), [](const FeedEvent& a, const FeedEvent& b) {
    return a.begin != b.begin ? a.begin < b.begin : a.uid < b.uid;
  });
  outcome.report.events = std::move(*events);
  return outcome;
}

}  // namespace larderloop
