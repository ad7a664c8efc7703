// record eaten, given-away, thrown-out, lost, moved, opened, received, found, counted.
#include "cli/amount_text.h"
#include "cli/command.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/cautions.h"
#include "larderloop/app/find.h"
#include "larderloop/app/placing.h"
#include "larderloop/app/record.h"
#include "larderloop/render/json_things.h"
#include "larderloop/render/text_things.h"

#include <memory>

namespace larderloop::cli {
namespace {

struct RecordOptions {
  std::string lot, at, to, who, meal, on, paid, note;
  std::vector<std::string> amount;
  bool opened = false, sealed = false;
};

Result<RecordRequest> request_of(const Household& household, const RecordOptions& given,
                                 EntryKind kind, Asked asked) {
  RecordRequest request;
  request.kind = kind;
  auto lot = named_lot(household, given.lot);
  if (!lot) return fail(lot.error());
  request.lot = (*lot)->id;
  auto amount = read_amount(given.amount.empty() ? std::vector<std::string>{"1"} : given.amount,
                            kind == EntryKind::kCounted ? 0 : 1);
  if (!amount) return fail(amount.error());
  request.amount = *amount;
  for (const auto& [text, into] :
       {std::pair(&given.at, &request.at), std::pair(&given.to, &request.to)}) {
    if (text->empty()) continue;
    auto place = named_place(household, *text);
    if (!place) return fail(place.error());
    *into = (*place)->key;
  }
  if (given.opened && given.sealed)
    return fail(ErrorKind::kUsage, "'--opened' and '--sealed' exclude each other",
                "give one of them");
  if (given.opened) request.which = Which::kOpened;
  if (given.sealed) request.which = Which::kSealed;
  if (!given.who.empty()) {
    auto person = named_person(household, given.who);
    if (!person) return fail(person.error());
    request.who = (*person)->key;
  }
  if (!given.meal.empty()) {
    auto meal = read_word<Meal>("--meal", given.meal, parse_meal, names_of(kAllMeals, meal_name));
    if (!meal) return fail(meal.error());
    request.meal = *meal;
  }
  if (!given.on.empty()) {
    auto day = read_day("--on", given.on, asked.today);
    if (!day) return fail(day.error());
    request.on = *day;
  }
  if (!given.paid.empty()) {
    auto paid = read_money("--paid", given.paid);
    if (!paid) return fail(paid.error());
    request.paid_cents = *paid;
  }
  request.note = given.note;
  return request;
}

// What people should do about food that reached somebody it is not for.
void caution_eater(const Recorded& report, const PersonRefusal& refusal, Runtime& runtime) {
  const std::string words = must_not_words(runtime.household(), {refusal});
  switch (refusal.reason.refusal) {
    case Refusal::kContains:
    case Refusal::kMayContain:
      runtime.warn(words + "; if it was eaten, do as the doctor or the emergency service says");
      return;
    case Refusal::kLabelUnknown:
      runtime.warn(words + "; read it now: larderloop lot label " +
                   std::to_string(report.lot.value()) + " --read-by NAME --contains KEYS");
      return;
    case Refusal::kChoking:
    case Refusal::kHoney:
      runtime.warn(words + "; watch the child, and ask a doctor or the emergency service if anything seems wrong");
      return;
    case Refusal::kDiet:
    case Refusal::kRefuses:
    case Refusal::kWrongSpecies:
    case Refusal::kInfantFormula:
    case Refusal::kNotFood:
      runtime.note(words);
      return;
  }
}

// Likewise for food that lies where it must not.
void caution(const Recorded& report, EntryKind kind, Runtime& runtime) {
  if (report.must_not.empty()) return;
  const Household& household = runtime.household();
  if (kind == EntryKind::kEaten) {
    for (const PersonRefusal& each : report.must_not) caution_eater(report, each, runtime);
  } else {
    const std::string words = must_not_words(household, report.must_not);
    runtime.warn("it must leave " + find_place(household, report.place)->name + ": " + words +
                 "; next: larderloop record moved " + std::to_string(report.lot.value()) +
                 " all --at " + report.place.str() + " --to PLACE");
  }
}

// What was opened and is not eaten at once.
void caution_opened(const Recorded& report, EntryKind kind, Runtime& runtime) {
  const bool stands_open = kind == EntryKind::kOpened || (kind == EntryKind::kEaten && report.opened_units > 0 && report.left_there > HalfServings());
  const Food& food = *find_food(runtime.household(), report.food);
  if (!stands_open || food.kind == FoodKind::kThing || food.kind == FoodKind::kWater) return;
  const auto say = [&](Caution caution) { runtime.note(std::string(caution_words(caution))); };
  if (food.infant_formula)
    say(Caution::kFormula);
  else if (spoils_when_opened(food))
    say(Caution::kOpened);
  if (kind == EntryKind::kOpened) say(Caution::kSpoiled);
}

Result<int> run(const RecordOptions& given, EntryKind kind, Runtime& runtime) {
  auto done =
      runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<Recorded>> {
        auto request = request_of(household, given, kind, asked);
        if (!request) return fail(request.error());
        return record(household, *request, asked);
      });
  if (!done) return fail(done.error());
  if (runtime.options.json)
    runtime.print_bytes(render_recorded_json(runtime.household(), *done, runtime.asked().today));
  runtime.note(recorded_line(runtime.household(), *done));
  caution(*done, kind, runtime);
  caution_opened(*done, kind, runtime);
  return 0;
}

using Given = std::shared_ptr<RecordOptions>;

Given add_common(CLI::App& app, bool amount_required) {
  auto given = std::make_shared<RecordOptions>();
  app.add_option("LOT", given->lot, "Number, or a food of which just one lot is on hand")
      ->required();
  app.add_option("AMOUNT", given->amount,
                 "Units as 2, servings as '1.5 servings' or 'half serving', or all")
      ->required(amount_required);
  add_text(app, "--on", given->on, "DATE", "The day it happened (today if left out)");
  add_text(app, "--note", given->note, "TEXT", "A remark");
  return given;
}

void add_which(CLI::App& app, const Given& given) {
  app.add_flag("--opened", given->opened, "Only from what is open");
  app.add_flag("--sealed", given->sealed, "Only from what is sealed");
}

// What leaves stock: eaten, given away, thrown out, lost.
template <EntryKind kKind>
Action add_leaving(CLI::App& app, Runtime& runtime, const std::string& examples) {
  const Given given = add_common(app, true);
  add_text(app, "--at", given->at, "PLACE",
           "From where; needed when the lot lies in several places");
  add_which(app, given);
  if constexpr (kKind == EntryKind::kEaten) {
    add_text(app, "--who", given->who, "PERSON", "Who ate it");
    add_text(app, "--meal", given->meal, "MEAL", "breakfast, lunch, dinner or snack");
  }
  set_help(app, {examples,
                 "A bare number is sealed units. Servings come from what is open first; part of a "
                 "sealed unit opens it, and both "
                 "entries are written together.",
                 {}});
  return [given, &runtime] { return run(*given, kKind, runtime); };
}

template <EntryKind kKind>
Action add_coming(CLI::App& app, Runtime& runtime, const std::string& examples,
                  const std::string& details) {
  const Given given = add_common(app, true);
  add_text(app, "--at", given->at, "PLACE", "Where")->required();
  if constexpr (kKind == EntryKind::kReceived)
    add_text(app, "--paid", given->paid, "MONEY", "What these units cost together, as 4.50");
  if constexpr (kKind == EntryKind::kCounted)
    app.add_flag("--opened", given->opened, "What is open, in servings");
  set_help(app, {examples, details, {}});
  return [given, &runtime] { return run(*given, kKind, runtime); };
}

}  // namespace

Action add_record_eaten(CLI::App& app, Runtime& runtime) {
  return add_leaving<EntryKind::kEaten>(app, runtime,
                                        "larderloop record eaten 17 2 --who mira --meal dinner\n"
                                        "larderloop record eaten 17 half serving --on yesterday\n"
                                        "larderloop record eaten lentil-stew all\n");
}

Action add_record_given_away(CLI::App& app, Runtime& runtime) {
  return add_leaving<EntryKind::kGivenAway>(
      app, runtime, "larderloop record given-away 17 4 --note 'food bank'\n");
}

Action add_record_thrown_out(CLI::App& app, Runtime& runtime) {
  return add_leaving<EntryKind::kThrownOut>(
      app, runtime, "larderloop record thrown-out 17 1 --note 'lid was swollen'\n");
}

Action add_record_lost(CLI::App& app, Runtime& runtime) {
  return add_leaving<EntryKind::kLost>(app, runtime, "larderloop record lost 17 1 --at bag-mira\n");
}

Action add_record_moved(CLI::App& app, Runtime& runtime) {
  const Given given = add_common(app, true);
  add_text(app, "--at", given->at, "PLACE",
           "From where; needed when the lot lies in several places");
  add_text(app, "--to", given->to, "PLACE", "Where to")->required();
  add_which(app, given);
  set_help(
      app,
      {"larderloop record moved 17 2 --to bag-mira\nlarderloop record moved 17 all --at bag-mira "
       "--to pantry\n",
       "Nothing is moved to where somebody eats who must not have it; the answer says who and why.",
       {}});
  return [given, &runtime] { return run(*given, EntryKind::kMoved, runtime); };
}

Action add_record_opened(CLI::App& app, Runtime& runtime) {
  const Given given = add_common(app, false);
  add_text(app, "--at", given->at, "PLACE", "Where; needed when the lot lies in several places");
  set_help(app, {"larderloop record opened 17\n", "Without an amount one unit is opened.", {}});
  return [given, &runtime] { return run(*given, EntryKind::kOpened, runtime); };
}

Action add_record_received(CLI::App& app, Runtime& runtime) {
  return add_coming<EntryKind::kReceived>(
      app, runtime, "larderloop record received 17 6 --at pantry --paid 8.40\n",
      "For more of the very same lot: same date, same label. Anything else is a lot of its own: "
      "larderloop lot add.");
}

Action add_record_found(CLI::App& app, Runtime& runtime) {
  return add_coming<EntryKind::kFound>(app, runtime, "larderloop record found 17 1 --at box-1\n",
                                       "For units that turned up and are in no entry.");
}

Action add_record_counted(CLI::App& app, Runtime& runtime) {
  return add_coming<EntryKind::kCounted>(
      app, runtime,
      "larderloop record counted 17 3 --at pantry\nlarderloop record counted 17 '1.5 servings' "
      "--at pantry --opened\n",
      "Says what is really there; the record keeps the difference.");
}

}  // namespace larderloop::cli
