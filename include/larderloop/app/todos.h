// todos.h - what people have to do, as to-dos of a calendar: the events of the feed (feed.h) seen
// as tasks, an eat-soon day meal by meal. Identity: a to-do keeps its UID while what it says
// changes; its UID is never that of an event, and RELATED-TO names its event. Privacy:  as the
// feed, at the household's level of detail.
#pragma once

#include "larderloop/app/feed.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace larderloop {

// `mark`: an eat-soon meal: what exactly is eaten, by whom, as a fingerprint; the book knows by it
// whether a tick means what is planned.
struct Todo {
  std::string uid;
  FeedKind kind = FeedKind::kReview;
  Day due{};
  std::optional<Meal> meal;
  std::string summary;
  std::string description;
  std::string related_to;
  std::string mark;
  Instant changed_at{};
  int sequence = 0;
  bool cancelled = false;  // only the last one of an otherwise empty list
};
struct TodoReport {
  std::string name;
  std::vector<Todo> todos;  // by due, uid
};
// `household`: with the meals of `plan` among those shown. `feed`: of the same household, plan and
// day. What was ticked off is not in it.
[[nodiscard]] TodoReport make_todos(const Household& household, const PlanReport& plan,
                                    const FeedReport& feed);

// What a UID stands for, also long after its to-do is gone.
struct TodoMeaning {
  FeedKind kind = FeedKind::kReview;
  PlaceKey kit;  // review, shopping
  LotId lot;     // giving away
  Day day{};     // eat-soon: the day; review, shopping: the date of the review
  std::optional<Meal> meal;
};
[[nodiscard]] std::map<std::string, TodoMeaning> todo_meanings(const Household& household);

// The fingerprint of what is eaten at a meal.
[[nodiscard]] std::string meal_mark(const Household& household, const ShownMeal& meal);

}  // namespace larderloop
