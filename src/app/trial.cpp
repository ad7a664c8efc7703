#include "larderloop/app/trial.h"

#include "larderloop/core/stock.h"

#include <algorithm>
#include <charconv>
#include <map>
#include <set>

namespace larderloop {
namespace {

constexpr int kMostLiked = 2;
constexpr int kLeastByTrial = -1;  // a refusal is said by the person, not concluded

const Trial& trial_of(const Household& household, TrialId id) {
  return *std::find_if(household.trials.begin(), household.trials.end(),
                       [&](const Trial& each) { return each.id == id; });
}

bool takes_part(const Trial& trial, const PersonKey& person) {
  return trial.people.empty() ||
         std::find(trial.people.begin(), trial.people.end(), person) != trial.people.end();
}

std::string name_of_food(const Household& household, const FoodKey& key) {
  return find_food(household, key)->name;
}

// One step for each food and person, however often it was said; liked and tired of cancel out.
std::vector<RatingChange> rating_changes(const Household& household,
                                         const std::vector<TrialNote>& notes) {
  std::map<std::pair<PersonKey, FoodKey>, std::set<Verdict>> said;
  for (const TrialNote& note : notes) said[{note.person, note.food}].insert(note.verdict);
  std::vector<RatingChange> all;
  for (const auto& [who, verdicts] : said) {
    const bool liked = verdicts.count(Verdict::kLiked) > 0;
    const bool tired = verdicts.count(Verdict::kTired) > 0;
    if (liked == tired) continue;
    const Person& person = *find_person(household, who.first);
    const auto rated = person.ratings.find(who.second);
    RatingChange change;
    change.person = who.first;
    change.food = who.second;
    change.before = rated == person.ratings.end() ? 0 : rated->second;
    change.after = liked ? std::min(change.before + 1, kMostLiked)
                         : std::max(change.before - 1, std::min(kLeastByTrial, change.before));
    if (change.after == change.before) continue;
    change.why = person.name + (liked ? " liked " : " got tired of ") +
                 name_of_food(household, who.second) + " in the trial";
    all.push_back(std::move(change));
  }
  return all;
}

std::vector<std::string> advice_of(const Household& household,
                                   const std::vector<TrialNote>& notes) {
  std::map<std::pair<FoodKey, Verdict>, std::set<std::string>> said;
  for (const TrialNote& note : notes)
    said[{note.food, note.verdict}].insert(find_person(household, note.person)->name);
  std::vector<std::string> all;
  for (const auto& [what, people] : said) {
    const Food& food = *find_food(household, what.first);
    std::string who;
    for (const std::string& name : people) who += (who.empty() ? "" : ", ") + name;
    const std::string change = "larderloop food change " + food.key.str();
    switch (what.second) {
      case Verdict::kLiked:
      case Verdict::kTired:
        break;
      case Verdict::kHardToOpen:
        all.push_back(food.name + " was hard to open (" + who + "): " +
                      (food.needs_opener
                           ? std::string("try the opener of that bag, or buy it with a pull ring")
                           : "if it takes an opener, say so: " + change + " --needs-opener"));
        break;
      case Verdict::kHardToPrepare:
        all.push_back(food.name + " was hard to prepare (" + who +
                      "): put in something that is eaten as it is" +
                      (food.no_cook
                           ? ", or if it has to be cooked, say so: " + change + " --needs-cooking"
                           : ""));
        break;
      case Verdict::kNeededWater:
        all.push_back(food.name + " needed water (" + who + "): " +
                      (food.needs_water_ml > 0
                           ? "the book allows " + std::to_string(food.needs_water_ml) + " ml a " +
                                 food.unit + " for it; is that enough?"
                           : "say how much, and the check of the kit counts it: " + change +
                                 " --needs-water 150ml"));
        break;
      case Verdict::kNotEnough:
        all.push_back(food.name + " was not enough (" + who +
                      "): ask for one more on that line of the kit menu, or see the energy of the "
                      "day: larderloop kit check");
        break;
    }
  }
  return all;
}

std::vector<EatenInTrial> eaten_in(const Household& household, const Trial& trial,
                                   const std::optional<TrialEnd>& end) {
  std::set<EntryId> corrected;
  for (const Entry& entry : household.entries) {
    if (entry.kind == EntryKind::kCorrected) corrected.insert(entry.corrects);
  }
  std::map<FoodKey, HalfServings> sums;
  const Day last = end ? std::max(end->on, trial.through) : trial.through;
  for (const Entry& entry : household.entries) {
    const bool counts = entry.kind == EntryKind::kEaten && trial.from <= entry.on &&
                        entry.on <= last && corrected.count(entry.id) == 0 &&
                        kit_of(household, entry.at.place) == trial.kit &&
                        (!entry.who || takes_part(trial, *entry.who));
    if (counts) sums[find_lot(household, entry.at.lot)->food] += entry.amount;
  }
  std::vector<EatenInTrial> all;
  for (const auto& [food, amount] : sums) all.push_back({food, amount});
  return all;
}

}  // namespace

TrialReport show_trial(const Household& household, TrialId id) {
  TrialReport report;
  report.trial = trial_of(household, id);
  for (const TrialEnd& end : household.trial_ends) {
    if (end.trial == id) report.end = end;
  }
  for (const TrialNote& note : household.trial_notes) {
    if (note.trial == id) report.notes.push_back(note);
  }
  report.eaten = eaten_in(household, report.trial, report.end);
  // After the end the ratings have changed already; then only the advice is left to say.
  if (!report.end) report.ratings = rating_changes(household, report.notes);
  report.advice = advice_of(household, report.notes);
  return report;
}

Result<TrialId> named_trial(const Household& household, std::string_view text) {
  if (text.empty()) {
    if (!household.trials.empty()) return household.trials.back().id;
    return fail(ErrorKind::kNotFound, "there is no trial", "begin one: larderloop trial start");
  }
  std::string_view digits = text;
  if (digits.front() == '#') digits.remove_prefix(1);
  std::int64_t number = 0;
  const auto [end, wrong] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
  const bool whole = wrong == std::errc() && end == digits.data() + digits.size();
  const bool there =
      whole && std::any_of(household.trials.begin(), household.trials.end(),
                           [&](const Trial& each) { return each.id.value() == number; });
  if (!there)
    return fail(ErrorKind::kNotFound, "there is no trial '" + std::string(text) + "'",
                "the latest one is shown by: larderloop trial show");
  return TrialId(number);
}

Result<Outcome<TrialReport>> start_trial(const Household& household, Trial trial, Asked asked) {
  if (trial.through < trial.from)
    return fail(ErrorKind::kBadData, "the days end before they begin",
                "give --through a day from " + iso_day(trial.from));
  for (const Trial& each : household.trials) {
    const bool ended = std::any_of(household.trial_ends.begin(), household.trial_ends.end(),
                                   [&](const TrialEnd& end) { return end.trial == each.id; });
    if (each.kit == trial.kit && !ended)
      return fail(ErrorKind::kBadData,
                  "trial " + std::to_string(each.id.value()) + " of this kit is not ended",
                  "end it: larderloop trial finish " + std::to_string(each.id.value()));
  }
  static_cast<void>(asked);
  std::sort(trial.people.begin(), trial.people.end());
  trial.people.erase(std::unique(trial.people.begin(), trial.people.end()), trial.people.end());
  trial.id = next_ids(household).trial;
  Outcome<TrialReport> outcome;
  outcome.report.trial = trial;
  outcome.changes.trials = {std::move(trial)};
  return outcome;
}

Result<Outcome<TrialReport>> add_trial_note(const Household& household, TrialNote note,
                                            Asked asked) {
  TrialReport report = show_trial(household, note.trial);
  if (report.end)
    return fail(
        ErrorKind::kBadData,
        "trial " + std::to_string(note.trial.value()) + " ended on " + plain_day(report.end->on),
        "begin another: larderloop trial start, or rate the food: larderloop person change " +
            note.person.str() + " --rate " + note.food.str() + ":1");
  if (!takes_part(report.trial, note.person))
    return fail(
        ErrorKind::kBadData,
        find_person(household, note.person)->name + " does not take part in trial " +
            std::to_string(note.trial.value()),
        "name one of its people: larderloop trial show " + std::to_string(note.trial.value()));
  if (note.on > asked.today)
    return fail(ErrorKind::kBadData, "that day is still to come: " + plain_day(note.on),
                "name a day up to today");
  note.id = next_ids(household).trial_note;
  Outcome<TrialReport> outcome;
  report.notes.push_back(note);
  report.ratings = rating_changes(household, report.notes);
  report.advice = advice_of(household, report.notes);
  outcome.report = std::move(report);
  outcome.changes.trial_notes = {std::move(note)};
  return outcome;
}

Result<Outcome<TrialReport>> finish_trial(const Household& household, TrialId id,
                                          const std::string& note, Asked asked) {
  Outcome<TrialReport> outcome;
  outcome.report = show_trial(household, id);
  if (outcome.report.end)
    return fail(ErrorKind::kBadData,
                "trial " + std::to_string(id.value()) + " ended on " +
                    plain_day(outcome.report.end->on) + " already",
                "see what it came to: larderloop trial show " + std::to_string(id.value()));
  const TrialEnd end{id, asked.today, note};
  outcome.report.end = end;
  outcome.changes.trial_ends = {end};
  std::map<PersonKey, Person> changed;
  for (const RatingChange& change : outcome.report.ratings) {
    Person& person =
        changed.try_emplace(change.person, *find_person(household, change.person)).first->second;
    if (change.after == 0)
      person.ratings.erase(change.food);
    else
      person.ratings[change.food] = change.after;
  }
  for (auto& [key, person] : changed) outcome.changes.people.push_back(std::move(person));
  return outcome;
}

}  // namespace larderloop
