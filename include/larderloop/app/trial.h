// trial.h - a weekend lived from a kit: begun, rated food by food, ended. What is said steers the
// ratings of people, and so refills and meals. Rule:     docs/decisions/0013-trials.md. At the end
// a food that somebody liked is rated one higher (to +2 at most), one that somebody got tired of
// one
//           lower (to -1 at least: a refusal is a person's own word). The other verdicts change
//           nothing by themselves; they become advice.
#pragma once

#include "larderloop/app/asked.h"
#include "larderloop/core/household.h"
#include "larderloop/core/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace larderloop {

// What a trial means for one rating. `why`: one plain clause.
struct RatingChange {
  PersonKey person;
  FoodKey food;
  int before = 0;
  int after = 0;
  std::string why;
};
struct EatenInTrial {
  FoodKey food;
  HalfServings amount;
};
struct TrialReport {
  Trial trial;
  std::optional<TrialEnd> end;
  std::vector<TrialNote> notes;       // by id
  std::vector<EatenInTrial> eaten;    // from the kit on its days, by food
  std::vector<RatingChange> ratings;  // that follow, or followed, from the notes; by person, food
  std::vector<std::string> advice;    // plain sentences, by food
};

// kBadData: another trial of this kit is not ended, days out of order, an unknown person.
[[nodiscard]] Result<Outcome<TrialReport>> start_trial(const Household& household, Trial trial,
                                                       Asked asked);
// "3", "#3", or nothing for the latest one. kNotFound.
[[nodiscard]] Result<TrialId> named_trial(const Household& household, std::string_view text);
// kBadData: the trial is ended, or the person does not take part.
[[nodiscard]] Result<Outcome<TrialReport>> add_trial_note(const Household& household,
                                                          TrialNote note, Asked asked);
// Ends it and changes the ratings. kBadData: it is ended already.
[[nodiscard]] Result<Outcome<TrialReport>> finish_trial(const Household& household, TrialId trial,
                                                        const std::string& note, Asked asked);
// Pre: there is such a trial. After its end `ratings` says what the notes came to, with `before`
// and `after` as they are now.
[[nodiscard]] TrialReport show_trial(const Household& household, TrialId trial);

}  // namespace larderloop
