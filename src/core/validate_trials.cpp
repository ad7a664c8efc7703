// Living from a kit: the trials, what was said, that they ended.
#include "core/validate_parts.h"

#include <algorithm>
#include <set>

namespace larderloop {
namespace {

template <class List>
void check_ids(Findings& findings, const std::string& name, const List& list) {
  std::int64_t last = 0;
  for (std::size_t index = 0; index < list.size(); ++index) {
    const std::int64_t id = list[index].id.value();
    if (id <= last) {
      findings.add(at(name, index) + "/id", std::to_string(id),
                   "numbers have to grow from one to the next",
                   "write a number above " + std::to_string(last));
    }
    last = std::max(last, id);
  }
}

void check_trial(Findings& findings, const std::string& where, const Trial& trial) {
  const Place* place = findings.place(trial.kit);
  if (place == nullptr) {
    findings.check_place(where + "/kit", trial.kit);
  } else if (place->kind != PlaceKind::kKit) {
    findings.add(where + "/kit", trial.kit.str(), "it is no kit", "name a kit");
  }
  if (trial.through < trial.from) {
    findings.add(where + "/through", iso_day(trial.through), "ends before it begins",
                 "write a day from " + iso_day(trial.from));
  }
  std::set<PersonKey> seen;
  for (std::size_t each = 0; each < trial.people.size(); ++each) {
    const std::string here = where + "/people/" + std::to_string(each);
    findings.check_person(here, trial.people[each]);
    if (!seen.insert(trial.people[each]).second)
      findings.add(here, trial.people[each].str(), "named twice", "leave one out");
  }
}

}  // namespace

void validate_trials(Findings& findings) {
  const Household& household = findings.household;
  std::set<TrialId> trials;
  check_ids(findings, "trials", household.trials);
  for (std::size_t index = 0; index < household.trials.size(); ++index) {
    trials.insert(household.trials[index].id);
    check_trial(findings, at("trials", index), household.trials[index]);
  }
  const auto check_known = [&](const std::string& where, TrialId trial) {
    if (trials.count(trial) == 0) {
      findings.add(where + "/trial", std::to_string(trial.value()), "no such trial",
                   "name a trial of the household");
    }
  };
  check_ids(findings, "trial_notes", household.trial_notes);
  for (std::size_t index = 0; index < household.trial_notes.size(); ++index) {
    const TrialNote& note = household.trial_notes[index];
    const std::string where = at("trial_notes", index);
    check_known(where, note.trial);
    findings.check_food(where + "/food", note.food);
    findings.check_person(where + "/person", note.person);
  }
  std::set<TrialId> ended;
  for (std::size_t index = 0; index < household.trial_ends.size(); ++index) {
    const TrialEnd& end = household.trial_ends[index];
    const std::string where = at("trial_ends", index);
    check_known(where, end.trial);
    if (!ended.insert(end.trial).second) {
      findings.add(where + "/trial", std::to_string(end.trial.value()), "a trial ends once",
                   "leave one out");
    }
  }
}

}  // namespace larderloop
