// Lots, readings and the record.
#include <set>

#include "core/validate_parts.h"
#include "larderloop/core/stock.h"

namespace larderloop {
namespace {

constexpr std::int64_t kMostPaidCents = 1'000'000'000;  // for all units at once
constexpr std::int64_t kMostHalves = 2'000'000'000;     // of anything, see amount.h

void check_amount(Findings& findings, const std::string& where, HalfServings amount, std::int64_t least) {
  if (amount.halves() >= least && amount.halves() <= kMostHalves) return;
  findings.add(where, std::to_string(amount.halves()), least > 0 ? "not an amount of something" : "out of range",
               "write an amount " + std::string(least > 0 ? "above zero" : "from zero"));
}

template <class List>
void check_ids(Findings& findings, const std::string& name, const List& list) {
  std::int64_t last = 0;
  for (std::size_t index = 0; index < list.size(); ++index) {
    const std::int64_t id = list[index].id.value();
    if (id <= last) {
      findings.add(at(name, index) + "/id", std::to_string(id), "numbers have to grow from one to the next",
                   "write a number above " + std::to_string(last));
    }
    last = std::max(last, id);
  }
}

void check_position(Findings& findings, const std::string& where, const StockKey& position) {
  if (findings.lot(position.lot) == nullptr) {
    findings.add(where + "/lot", std::to_string(position.lot.value()), "no such lot", "name a lot of the household");
  }
  findings.check_place(where + "/place", position.place);
}

void check_entry(Findings& findings, const std::string& where, const Entry& entry) {
  const bool corrected = entry.kind == EntryKind::kCorrected;
  if (corrected == entry.corrects.empty()) {
    findings.add(where + "/corrects", std::to_string(entry.corrects.value()),
                 "a corrected entry, and only that, names the one it takes back", "add or leave out corrects");
  }
  if ((entry.kind == EntryKind::kMoved) == entry.to.empty()) {
    findings.add(where + "/to", entry.to.str(), "a moved entry, and only that, says where to", "add or leave out the place");
  }
  if (entry.kind != EntryKind::kCounted && entry.change != 0) {
    findings.add(where + "/change_half_servings", std::to_string(entry.change), "only a count has a change", "leave it out");
  }
  if (corrected) {  // replaying judges what it corrects
    const bool bare = entry.at == StockKey{} && entry.amount == HalfServings() && !entry.who && !entry.meal && !entry.paid_cents;
    if (!bare) findings.add(where, "", "a corrected entry has nothing of its own", "leave out lot, place, amount, who, meal and price");
    return;
  }
  check_position(findings, where, entry.at);
  if (entry.kind == EntryKind::kMoved) findings.check_place(where + "/to", entry.to);
  if (entry.who) findings.check_person(where + "/who", *entry.who);
  if (entry.who && entry.kind != EntryKind::kEaten) {
    findings.add(where + "/who", entry.who->str(), "only what was eaten says who had it", "leave it out, or write it in the note");
  }
  if (entry.meal && entry.kind != EntryKind::kEaten) {
    findings.add(where + "/meal", std::string(meal_name(*entry.meal)), "only what was eaten says at which meal", "leave it out");
  }
  if (entry.paid_cents && entry.kind != EntryKind::kReceived) {
    findings.add(where + "/paid_cents", std::to_string(*entry.paid_cents), "only what was received says what it cost", "leave it out");
  } else if (entry.paid_cents && (*entry.paid_cents < 0 || *entry.paid_cents > kMostPaidCents)) {
    findings.add(where + "/paid_cents", std::to_string(*entry.paid_cents), "out of range",
                 "write what was paid, from 0 to " + std::to_string(kMostPaidCents) + ", or leave it out");
  }
}

}  // namespace

void validate_lots(Findings& findings) {
  const Household& household = findings.household;
  check_ids(findings, "lots", household.lots);
  for (std::size_t index = 0; index < household.lots.size(); ++index) {
    const Lot& lot = household.lots[index];
    findings.check_food(at("lots", index) + "/food", lot.food);
    findings.check_mark(at("lots", index) + "/mark", lot.mark);
    if (lot.label) findings.check_statement(at("lots", index) + "/label", *lot.label);
  }
  check_ids(findings, "readings", household.readings);
  for (std::size_t index = 0; index < household.readings.size(); ++index) {
    const Reading& reading = household.readings[index];
    const std::string where = at("readings", index);
    if (findings.lot(reading.lot) == nullptr) {
      findings.add(where + "/lot", std::to_string(reading.lot.value()), "no such lot", "name a lot of the household");
    }
    if (!reading.mark && !reading.label && !reading.state) {
      findings.add(where, "", "the reading says nothing", "give it a mark, a label or a state");
    }
    if (reading.mark) findings.check_mark(where + "/mark", *reading.mark);
    if (reading.label) findings.check_statement(where + "/label", *reading.label);
  }
  check_ids(findings, "entries", household.entries);
  for (std::size_t index = 0; index < household.entries.size(); ++index) {
    check_entry(findings, at("entries", index), household.entries[index]);
  }
}

void validate_record(Findings& findings) {
  Household sorted = findings.household;  // a ledger looks lots and foods up by key; entries keep their order
  sort_lists(sorted);
  const auto ledger = replay(sorted);
  if (ledger) return;
  for (const Problem& problem : ledger.error().problems) findings.problems.push_back(problem);
}

void validate_reviews(Findings& findings) {
  const Household& household = findings.household;
  const auto check_kit = [&](const std::string& where, const PlaceKey& kit) {
    const Place* place = findings.place(kit);
    if (place == nullptr) findings.check_place(where, kit);
    else if (place->kind != PlaceKind::kKit) findings.add(where, kit.str(), "not a kit", "name a place of kind kit");
  };
  std::set<PlaceKey> ruled;
  for (std::size_t index = 0; index < household.review_rules.size(); ++index) {
    const ReviewRule& rule = household.review_rules[index];
    const std::string where = at("review_rules", index);
    check_kit(where + "/kit", rule.kit);
    if (!ruled.insert(rule.kit).second) findings.add(where + "/kit", rule.kit.str(), "this kit has two rules", "leave one out");
    if (rule.rule.empty()) findings.add(where + "/rule", "", "the rule is empty", "for example FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA");
    if (rule.slack_days && (*rule.slack_days < 0 || *rule.slack_days > 365)) {
      findings.add(where + "/slack_days", std::to_string(*rule.slack_days), "out of range", "write a number from 0 to 365");
    }
  }
  check_ids(findings, "review_events", household.review_events);
  std::set<std::pair<PlaceKey, Day>> started;
  for (std::size_t index = 0; index < household.review_events.size(); ++index) {
    const ReviewEvent& event = household.review_events[index];
    const std::string where = at("review_events", index);
    check_kit(where + "/kit", event.kit);
    if (event.kind == ReviewEventKind::kStarted) started.insert({event.kit, event.slot});
    if (event.kind == ReviewEventKind::kFinished && started.count({event.kit, event.slot}) == 0) {
      findings.add(where + "/slot", iso_day(event.slot), "finished without having been started", "add its start before it");
    }
    if ((event.kind == ReviewEventKind::kMoved) != event.moved_to.has_value()) {
      findings.add(where + "/moved_to", "", "a moved review, and only that, has a new day", "add or leave out moved_to");
    }
  }
  check_ids(findings, "review_marks", household.review_marks);
  for (std::size_t index = 0; index < household.review_marks.size(); ++index) {
    const ReviewMark& mark = household.review_marks[index];
    const std::string where = at("review_marks", index);
    check_kit(where + "/kit", mark.kit);
    check_position(findings, where, mark.at);
    if (started.count({mark.kit, mark.slot}) == 0) {
      findings.add(where + "/slot", iso_day(mark.slot), "no review was started for this date", "name the slot of a review");
    }
    const bool amount = mark.what == MarkWhat::kMissing || mark.what == MarkWhat::kDamaged;
    if (amount && mark.amount.halves() <= 0) findings.add(where, "", "nothing is missing or damaged", "say how much");
    else check_amount(findings, where, mark.amount, 0);
    if ((mark.what == MarkWhat::kRedated) != mark.mark.has_value()) {
      findings.add(where + "/mark", "", "a date that reads otherwise, and only that, has a mark", "add or leave out the mark");
    }
    if (mark.mark) findings.check_mark(where + "/mark", *mark.mark);
  }
}

void validate_shown(Findings& findings) {
  const Household& household = findings.household;
  std::set<std::pair<Day, Meal>> meals;
  for (std::size_t index = 0; index < household.shown_meals.size(); ++index) {
    const std::string where = at("shown_meals", index);
    const ShownMeal& meal = household.shown_meals[index];
    if (!meals.insert({meal.day, meal.meal}).second) {
      findings.add(where, iso_day(meal.day) + " " + std::string(meal_name(meal.meal)), "this meal is there twice", "put its servings together");
    }
    for (std::size_t each = 0; each < household.shown_meals[index].servings.size(); ++each) {
      const ShownServing& serving = household.shown_meals[index].servings[each];
      const std::string place = where + "/servings/" + std::to_string(each);
      check_position(findings, place, serving.at);
      findings.check_person(place + "/person", serving.person);
      check_amount(findings, place, serving.amount, 1);
    }
  }
  std::set<std::string> plans;
  for (std::size_t index = 0; index < household.kept_plans.size(); ++index) {
    const KeptPlan& plan = household.kept_plans[index];
    const std::string where = at("kept_plans", index);
    if (plan.name.empty() || plan.problem.empty() || plan.plan.empty()) {
      findings.add(where, plan.name, "a kept plan has a name, a problem and a plan", "leave the whole kept plan out: it is worked out anew");
    } else if (!plans.insert(plan.name).second) {
      findings.add(where + "/name", plan.name, "this plan is kept twice", "leave one out: it is worked out anew");
    }
  }
  std::set<std::pair<std::string, int>> seen;
  for (std::size_t index = 0; index < household.feed.size(); ++index) {
    const FeedStamp& stamp = household.feed[index];
    if (stamp.key.empty() || stamp.generation < 1 || stamp.sequence < 0 || !seen.insert({stamp.key, stamp.generation}).second) {
      findings.add(at("feed", index), stamp.key, "not a stamp of its own", "leave the feed as larderloop wrote it");
    }
  }
}

}  // namespace larderloop
