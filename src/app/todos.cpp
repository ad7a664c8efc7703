#include "larderloop/app/todos.h"

#include "app/plain_names.h"
#include "larderloop/app/meal_items.h"
#include "larderloop/calendar/ics.h"

#include <algorithm>
#include <charconv>

namespace larderloop {
namespace {

bool is_done(const Household& household, const std::string& uid) {
  const auto found = std::lower_bound(
      household.tasks_done.begin(), household.tasks_done.end(), uid,
      [](const TaskDone& each, const std::string& wanted) { return each.uid < wanted; });
  return found != household.tasks_done.end() && found->uid == uid;
}

std::string plain_uid(const std::string& event_uid) {
  return uuid_v5(event_uid, "todo");
}

// A meal that was ticked off and is planned anew is a new to-do: `round` counts.
std::string meal_uid(const std::string& event_uid, Meal meal, int round) {
  return uuid_v5(event_uid, "todo|" + std::string(meal_name(meal)) + "|" + std::to_string(round));
}

// The meal as the household was shown it; null when it never was.
const ShownMeal* shown_meal(const Household& household, Day day, Meal meal) {
  for (const ShownMeal& each : household.shown_meals) {
    if (each.day == day && each.meal == meal) return &each;
  }
  return nullptr;
}

std::string small(std::string text) {
  if (!text.empty() && text.front() >= 'A' && text.front() <= 'Z')
    text.front() = static_cast<char>(text.front() - 'A' + 'a');
  return text;
}

class Writer {
 public:
  Writer(const Household& household, const PlanReport& plan) : household_(household), plan_(plan) {}

  void add(const FeedEvent& event) {
    if (!event.rule.empty()) return;  // its reviews are there one by one as well
    if (event.kind == FeedKind::kEatSoon) {
      for (const PlannedMeal& meal : plan_.eat_down.meals) {
        if (meal.day == event.begin) add_meal(event, meal);
      }
      return;
    }
    Todo todo = of(event);
    todo.uid = plain_uid(event.uid);
    todo.summary = event.summary;
    todo.description = event.description;
    todo.cancelled = event.cancelled;
    if (!is_done(household_, todo.uid)) todos_.push_back(std::move(todo));
  }

  std::vector<Todo> todos() { return std::move(todos_); }

 private:
  static Todo of(const FeedEvent& event) {
    Todo todo;
    todo.kind = event.kind;
    todo.due = event.begin;
    todo.related_to = event.series_uid.empty() ? event.uid : event.series_uid;
    todo.changed_at = event.changed_at;
    todo.sequence = event.sequence;
    return todo;
  }

  void add_meal(const FeedEvent& event, const PlannedMeal& meal) {
    Todo todo = of(event);
    todo.meal = meal.meal;
    int round = 1;
    do {
      todo.uid = meal_uid(event.uid, meal.meal, round);
      round += 1;
    } while (is_done(household_, todo.uid));
    if (const ShownMeal* shown = shown_meal(household_, meal.day, meal.meal))
      todo.mark = meal_mark(household_, *shown);
    const std::string when = small(meal_words(meal.meal));
    if (household_.settings.feed.detail == FeedDetail::kPrivate) {
      todo.summary = "Eat soon: " + when;
      todo.description = "What it is: larderloop nudge\nTick it off when it was eaten.";
    } else {
      std::vector<std::string> foods;
      for (const MealItem& item : meal_items(meal)) {
        std::string food = food_words(household_, item.food);
        todo.description += "- " + item_words(household_, item) + ", from " +
                            place_words(household_, item.at.place);
        if (item.good_through)
          todo.description += ", good through " + plain_day(*item.good_through);
        todo.description += "\n";
        if (std::find(foods.begin(), foods.end(), food) == foods.end())
          foods.push_back(std::move(food));
      }
      todo.summary = "Eat at " + when + ": " + foods.front();
      if (foods.size() > 1) todo.summary += " and " + std::to_string(foods.size() - 1) + " more";
      todo.description +=
          "Look, smell, and read the label before you serve it. Tick it off when all of it was "
          "eaten.";
    }
    todos_.push_back(std::move(todo));
  }

  const Household& household_;
  const PlanReport& plan_;
  std::vector<Todo> todos_;
};

// "review|home-kit|2027-04-03" to its parts.
std::vector<std::string> parts_of(const std::string& key) {
  std::vector<std::string> parts;
  std::size_t from = 0;
  while (true) {
    const std::size_t bar = key.find('|', from);
    parts.push_back(key.substr(from, bar == std::string::npos ? bar : bar - from));
    if (bar == std::string::npos) return parts;
    from = bar + 1;
  }
}

std::optional<TodoMeaning> meaning_of(const std::string& key) {
  const std::vector<std::string> parts = parts_of(key);
  TodoMeaning meaning;
  if (parts.size() == 3 && (parts[0] == "review" || parts[0] == "shop")) {
    const auto day = parse_iso_day(parts[2]);
    if (!day) return std::nullopt;
    meaning.kind = parts[0] == "review" ? FeedKind::kReview : FeedKind::kShopBy;
    meaning.kit = PlaceKey(parts[1]);
    meaning.day = *day;
    return meaning;
  }
  if (parts.size() != 2) return std::nullopt;
  if (parts[0] == "eat") {
    const auto day = parse_iso_day(parts[1]);
    if (!day) return std::nullopt;
    meaning.kind = FeedKind::kEatSoon;
    meaning.day = *day;
    return meaning;
  }
  std::int64_t lot = 0;
  const char* end = parts[1].data() + parts[1].size();
  const auto read = std::from_chars(parts[1].data(), end, lot);
  if (parts[0] != "give" || read.ec != std::errc() || read.ptr != end) return std::nullopt;
  meaning.kind = FeedKind::kGiveAway;
  meaning.lot = LotId(lot);
  return meaning;
}

}  // namespace

TodoReport make_todos(const Household& household, const PlanReport& plan, const FeedReport& feed) {
  TodoReport report;
  report.name = household.settings.name + " to do";
  Writer writer(household, plan);
  const FeedEvent* first = nullptr;
  for (const FeedEvent& event : feed.events) {
    writer.add(event);
    if (first == nullptr) first = &event;
  }
  report.todos = writer.todos();
  if (report.todos.empty()) {
    Todo nothing;
    nothing.uid = uuid_v5(household.book_id, "todo|empty");
    nothing.due = Day{date::local_days{date::year{2000} / 1 / 1}};
    nothing.summary = "Nothing to do";
    nothing.changed_at = first == nullptr ? midnight(nothing.due) : first->changed_at;
    nothing.cancelled = true;
    report.todos.push_back(std::move(nothing));
  }
  std::sort(report.todos.begin(), report.todos.end(), [](const Todo& a, const Todo& b) {
    return a.due != b.due ? a.due < b.due : a.uid < b.uid;
  });
  return report;
}

std::map<std::string, TodoMeaning> todo_meanings(const Household& household) {
  std::map<std::string, TodoMeaning> meanings;
  for (const FeedStamp& stamp : household.feed) {
    const auto meaning = meaning_of(stamp.key);
    if (!meaning) continue;
    const std::string event =
        uuid_v5(household.book_id, stamp.key + "|" + std::to_string(stamp.generation));
    if (meaning->kind != FeedKind::kEatSoon) {
      meanings.emplace(plain_uid(event), *meaning);
      continue;
    }
    for (const Meal meal : kAllMeals) {
      TodoMeaning of_meal = *meaning;
      of_meal.meal = meal;
      for (int round = 1;; ++round) {
        const std::string uid = meal_uid(event, meal, round);
        meanings.emplace(uid, of_meal);
        if (!is_done(household, uid)) break;
      }
    }
  }
  return meanings;
}

std::string meal_mark(const Household& household, const ShownMeal& meal) {
  std::vector<ShownServing> servings = meal.servings;
  std::sort(servings.begin(), servings.end());
  std::string text;
  for (const ShownServing& each : servings) {
    text += std::to_string(each.at.lot.value()) + "|" + each.at.place.str() + "|" +
            (each.at.opened_on ? iso_day(*each.at.opened_on) : "") + "|" + each.person.str() + "|" +
            std::to_string(each.amount.halves()) + "\n";
  }
  return uuid_v5(household.book_id, "meal|" + text);
}

}  // namespace larderloop
