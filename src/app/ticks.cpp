#include "larderloop/app/ticks.h"

#include "app/plain_names.h"
#include "larderloop/app/record.h"
#include "larderloop/calendar/rule.h"
#include "larderloop/core/words.h"

#include <algorithm>
#include <map>
#include <set>

namespace larderloop {
namespace {

// What was eaten that day at that meal by the record, which a tick must not record again: by lot
// and person, and by lot without a name.
class AlreadyEaten {
 public:
  AlreadyEaten(const Household& household, Day day, Meal meal) {
    std::set<EntryId> reversed;
    for (const Entry& each : household.entries) {
      if (each.kind == EntryKind::kCorrected) reversed.insert(each.corrects);
    }
    for (const Entry& each : household.entries) {
      if (each.kind != EntryKind::kEaten || each.on != day || reversed.count(each.id) > 0) continue;
      if (each.meal && *each.meal != meal) continue;
      eaten_[{each.at.lot, each.who.value_or(PersonKey())}] += each.amount;
    }
  }

  // How much of the serving is still to be recorded; what covers it is used up.
  HalfServings rest(const ShownServing& serving) {
    HalfServings left = serving.amount;
    for (const PersonKey& who : {serving.person, PersonKey()}) {
      HalfServings& there = eaten_[{serving.at.lot, who}];
      const HalfServings part = std::min(there, left);
      there -= part;
      left -= part;
    }
    return left;
  }

 private:
  std::map<std::pair<LotId, PersonKey>, HalfServings> eaten_;
};

class Taker {
 public:
  Taker(const Household& household, const PlanReport& plan, Asked asked)
      : household_(household), plan_(plan), asked_(asked) {}

  Status take(const Tick& tick, const TodoMeaning& meaning) {
    TickLine line;
    line.uid = tick.uid;
    line.summary = tick.summary;
    line.on = asked_.today;
    if (tick.done_at) {
      auto day = local_day(*tick.done_at, household_.settings.time_zone);
      if (!day) return fail(day.error());
      line.on = std::min(*day, asked_.today);
    }
    switch (meaning.kind) {
      case FeedKind::kEatSoon:
        eaten(tick, meaning, line);
        break;
      case FeedKind::kGiveAway:
        given_away(meaning, line);
        break;
      case FeedKind::kShopBy:
        line.words = "noted; nothing is received by it";
        line.next =
            "enter what came home, with its date and label: larderloop lot add FOOD --units N --at "
            "PLACE";
        break;
      case FeedKind::kReview:
        line.words = "noted; the review is not finished by it";
        line.next = "finish it at the box: larderloop review finish " + meaning.kit.str();
        break;
    }
    if (line.result != TickResult::kAsk) {
      Changes kept;
      kept.tasks_done.push_back({tick.uid, line.on, tick.summary});
      apply_changes(household_, kept);
      changes_.tasks_done.push_back(kept.tasks_done.front());
    }
    lines_.push_back(std::move(line));
    return {};
  }

  std::vector<TickLine> lines() { return std::move(lines_); }
  Changes changes() { return std::move(changes_); }

 private:
  void ask(TickLine& line, std::string words, std::string next) {
    line.result = TickResult::kAsk;
    line.words = std::move(words);
    line.next = std::move(next);
  }

  void eaten(const Tick& tick, const TodoMeaning& meaning, TickLine& line) {
    const auto meal = std::find_if(household_.shown_meals.begin(), household_.shown_meals.end(),
                                   [&](const ShownMeal& each) {
                                     return each.day == meaning.day && each.meal == *meaning.meal;
                                   });
    const std::string by_hand = "record what was eaten: larderloop record eaten LOT AMOUNT --on " +
                                iso_day(std::min(meaning.day, asked_.today)) + " --meal " +
                                std::string(meal_name(*meaning.meal));
    if (meal == household_.shown_meals.end()) {
      return ask(line, "the plan has nothing for this meal any more; nothing was recorded",
                 by_hand);
    }
    if (tick.mark != meal_mark(household_, *meal)) {
      return ask(line,
                 "the plan of this meal has changed since the to-do was sent; nothing was recorded",
                 by_hand);
    }
    line.on = std::min(meaning.day, asked_.today);
    AlreadyEaten already(household_, line.on, *meaning.meal);
    std::vector<RecordRequest> requests;
    for (const ShownServing& serving : meal->servings) {
      const HalfServings rest = already.rest(serving);
      if (rest == HalfServings()) continue;
      RecordRequest request;
      request.kind = EntryKind::kEaten;
      request.lot = serving.at.lot;
      request.amount = {AmountUnit::kHalfServings, rest.halves()};
      request.at = serving.at.place;
      request.who = serving.person;
      request.meal = meaning.meal;
      request.on = line.on;
      request.note = "ticked off in the calendar";
      requests.push_back(std::move(request));
    }
    record_all(requests, line, by_hand);
  }

  void given_away(const TodoMeaning& meaning, TickLine& line) {
    std::vector<RecordRequest> requests;
    for (const GiveAway& each : plan_.eat_down.give_away) {
      if (each.at.lot != meaning.lot) continue;
      RecordRequest request;
      request.kind = EntryKind::kGivenAway;
      request.lot = each.at.lot;
      request.amount = {AmountUnit::kHalfServings, each.amount.halves()};
      request.at = each.at.place;
      request.which = each.at.opened_on ? Which::kOpened : Which::kSealed;
      request.on = line.on;
      request.note = "ticked off in the calendar";
      requests.push_back(std::move(request));
    }
    const std::string by_hand = "record it: larderloop record given-away " +
                                std::to_string(meaning.lot.value()) + " AMOUNT";
    if (requests.empty())
      return ask(line, "the plan gives nothing of it away any more; nothing was recorded", by_hand);
    record_all(requests, line, by_hand);
  }

  // All of the requests or none.
  void record_all(const std::vector<RecordRequest>& requests, TickLine& line,
                  const std::string& by_hand) {
    if (requests.empty()) {
      line.result = TickResult::kAlready;
      line.words = "it was in the record already";
      return;
    }
    Household after = household_;
    Changes made;
    std::set<PersonKey> must_not;
    for (const RecordRequest& request : requests) {
      auto recorded = record(after, request, asked_);
      if (!recorded) {
        return ask(line, "nothing was recorded: " + recorded.error().what,
                   recorded.error().next_step.empty() ? by_hand : recorded.error().next_step);
      }
      for (const PersonRefusal& each : recorded->report.must_not) must_not.insert(each.person);
      apply_changes(after, recorded->changes);
      made.entries.insert(made.entries.end(), recorded->changes.entries.begin(),
                          recorded->changes.entries.end());
    }
    household_ = std::move(after);
    changes_.entries.insert(changes_.entries.end(), made.entries.begin(), made.entries.end());
    line.result = TickResult::kRecorded;
    line.entries = std::move(made.entries);
    HalfServings sum;
    std::size_t opened = 0;
    for (const Entry& each : line.entries) {
      if (each.kind == EntryKind::kOpened)
        opened += 1;
      else
        sum += each.amount;
    }
    line.words =
        std::string(line.entries.back().kind == EntryKind::kEaten ? "recorded as eaten"
                                                                  : "recorded as given away") +
        " on " + plain_day(line.on) + ": " + std::to_string(sum.halves() / 2) +
        (sum.halves() % 2 == 0 ? "" : ".5") + " " + (sum.halves() == 2 ? "serving" : "servings") +
        (opened == 0 ? "" : ", " + std::to_string(opened) + " opened for it");
    std::string numbers;
    for (const Entry& each : line.entries)
      numbers = " " + std::to_string(each.id.value()) + numbers;
    line.next = "if that is wrong: larderloop record corrected" + numbers;
    if (must_not.empty()) return;
    line.words += "; must not have it by the label: " +
                  first_names(household_, {must_not.begin(), must_not.end()});
    line.next = "see why, and ask a doctor when in doubt: larderloop lot show " +
                std::to_string(line.entries.front().at.lot.value());
  }

  Household household_;
  const PlanReport& plan_;
  Asked asked_;
  std::vector<TickLine> lines_;
  Changes changes_;
};

}  // namespace

std::string_view tick_result_name(TickResult result) {
  switch (result) {
    case TickResult::kRecorded:
      return "recorded";
    case TickResult::kAlready:
      return "already";
    case TickResult::kNoted:
      return "noted";
    case TickResult::kAsk:
      return "ask";
  }
  return "";
}

Result<Outcome<TickReport>> take_ticks(const Household& household, const PlanReport& plan,
                                       const std::vector<Tick>& ticks, Asked asked) {
  const auto meanings = todo_meanings(household);
  std::set<std::string> done;
  for (const TaskDone& each : household.tasks_done) done.insert(each.uid);
  Outcome<TickReport> outcome;
  Taker taker(household, plan, asked);
  for (const Tick& tick : ticks) {
    const auto meaning = meanings.find(tick.uid);
    if (meaning == meanings.end()) {
      outcome.report.others += 1;
    } else if (!done.insert(tick.uid).second) {
      outcome.report.before += 1;
    } else if (Status taken = taker.take(tick, meaning->second); !taken) {
      return fail(taken.error());
    }
  }
  outcome.report.lines = taker.lines();
  outcome.changes = taker.changes();
  return outcome;
}

}  // namespace larderloop
