// Trials of a kit: into their tables and out of them.
#include "store/load.h"
#include "store/names.h"
#include "store/save.h"

namespace larderloop::store {
namespace {

constexpr const char* kTrials =
    "SELECT id, kit, from_day, through_day, note FROM trial ORDER BY id";
constexpr const char* kPeople = "SELECT trial, person FROM trial_person ORDER BY trial, person";
constexpr const char* kNotes =
    "SELECT id, trial, food, person, verdict, day, note FROM trial_note ORDER BY id";
constexpr const char* kEnds = "SELECT trial, day, note FROM trial_end ORDER BY trial";
constexpr const char* kAddTrial =
    "INSERT INTO trial (id, kit, from_day, through_day, note) VALUES (:id, :kit, :from, :through, "
    ":note)";
constexpr const char* kAddPerson =
    "INSERT INTO trial_person (trial, person) VALUES (:trial, :person)";
constexpr const char* kAddNote =
    "INSERT INTO trial_note (id, trial, food, person, verdict, day, note) "
    "VALUES (:id, :trial, :food, :person, :verdict, :day, :note)";
constexpr const char* kAddEnd =
    "INSERT INTO trial_end (trial, day, note) VALUES (:trial, :day, :note)";

}  // namespace

void load_trials(const Connection& connection, Household& household) {
  Query trials(connection, kTrials);
  while (trials.step()) {
    Trial& trial = household.trials.emplace_back();
    trial.id = trials.id<TrialId>(0);
    trial.kit = trials.key<PlaceKey>(1);
    trial.from = trials.day(2);
    trial.through = trials.day(3);
    trial.note = trials.text(4);
  }
  std::size_t cursor = 0;
  Query people(connection, kPeople);
  while (people.step()) {
    owner_of(
        household.trials, cursor, people.id<TrialId>(0), [](const Trial& each) { return each.id; },
        "trial_person")
        .people.push_back(people.key<PersonKey>(1));
  }
  Query notes(connection, kNotes);
  while (notes.step()) {
    TrialNote& note = household.trial_notes.emplace_back();
    note.id = notes.id<TrialNoteId>(0);
    note.trial = notes.id<TrialId>(1);
    note.food = notes.key<FoodKey>(2);
    note.person = notes.key<PersonKey>(3);
    note.verdict = notes.named(4, parse_verdict);
    note.on = notes.day(5);
    note.note = notes.text(6);
  }
  Query ends(connection, kEnds);
  while (ends.step())
    household.trial_ends.push_back({ends.id<TrialId>(0), ends.day(1), ends.text(2)});
}

void add_trials(const Connection& connection, const std::vector<Trial>& trials,
                const std::vector<TrialNote>& notes, const std::vector<TrialEnd>& ends) {
  Query add(connection, kAddTrial);
  Query person(connection, kAddPerson);
  for (const Trial& trial : trials) {
    add.set(":id", trial.id)
        .set(":kit", trial.kit)
        .set(":from", trial.from)
        .set(":through", trial.through)
        .set(":note", trial.note)
        .run();
    for (const PersonKey& each : trial.people)
      person.set(":trial", trial.id).set(":person", each).run();
  }
  Query add_note(connection, kAddNote);
  for (const TrialNote& note : notes) {
    add_note.set(":id", note.id)
        .set(":trial", note.trial)
        .set(":food", note.food)
        .set(":person", note.person)
        .set(":verdict", verdict_name(note.verdict))
        .set(":day", note.on)
        .set(":note", note.note)
        .run();
  }
  Query add_end(connection, kAddEnd);
  for (const TrialEnd& end : ends)
    add_end.set(":trial", end.trial).set(":day", end.on).set(":note", end.note).run();
}

}  // namespace larderloop::store
