// A weekend lived from the kit: notes become ratings once, at the end, by the rule of
// docs/decisions/0013-trials.md. Today is Saturday 3 April 2027; see kit_household.h.
#include "larderloop/app/trial.h"

#include "kit_household.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

Trial weekend() {
  Trial trial;
  trial.kit = PlaceKey("kit");
  trial.from = day_at("2027-04-03");
  trial.through = day_at("2027-04-04");
  return trial;
}

Household begun(Household household, Trial trial = weekend()) {
  const auto started = start_trial(household, std::move(trial), kReviewDay);
  EXPECT_TRUE(started);
  return after(std::move(household), started->changes);
}

TrialNote said(const char* person, Verdict verdict, const char* food = "stew") {
  TrialNote note;
  note.trial = TrialId(1);
  note.food = FoodKey(food);
  note.person = PersonKey(person);
  note.verdict = verdict;
  note.on = kReviewDay.today;
  return note;
}

Household noted(Household household, const TrialNote& note) {
  const auto added = add_trial_note(household, note, kReviewDay);
  EXPECT_TRUE(added) << added.error().what;
  return after(std::move(household), added->changes);
}

int rating_after(Household household, const char* person) {
  const auto finished = finish_trial(household, TrialId(1), "", kReviewDay);
  EXPECT_TRUE(finished);
  household = after(std::move(household), finished->changes);
  const auto& ratings = find_person(household, PersonKey(person))->ratings;
  const auto found = ratings.find(FoodKey("stew"));
  return found == ratings.end() ? 0 : found->second;
}

Household rated(int rating) {
  Household household = kit_household();
  for (Person& person : household.people) {
    if (person.key == PersonKey("bo") && rating != 0) person.ratings[FoodKey("stew")] = rating;
  }
  return begun(std::move(household));
}

TEST(Trial, EachVerdictMovesARatingOneStepWithinItsBounds) {
  const struct {
    int before;
    Verdict verdict;
    int after;
  } cases[] = {{0, Verdict::kLiked, 1},       {1, Verdict::kLiked, 2},
               {2, Verdict::kLiked, 2},       {-1, Verdict::kLiked, 0},
               {0, Verdict::kTired, -1},      {-1, Verdict::kTired, -1},
               {2, Verdict::kTired, 1},       {-2, Verdict::kTired, -2},
               {0, Verdict::kHardToOpen, 0},  {1, Verdict::kNotEnough, 1},
               {0, Verdict::kNeededWater, 0}, {-1, Verdict::kHardToPrepare, -1}};
  for (const auto& each : cases) {
    EXPECT_EQ(rating_after(noted(rated(each.before), said("bo", each.verdict)), "bo"), each.after)
        << each.before << " " << verdict_name(each.verdict);
  }
}

TEST(Trial, ManyNotesAreOneStepAndOppositesCancel) {
  Household twice = noted(rated(0), said("bo", Verdict::kLiked));
  twice = noted(std::move(twice), said("bo", Verdict::kLiked));
  EXPECT_EQ(rating_after(twice, "bo"), 1);
  EXPECT_EQ(rating_after(twice, "ida"), 0);
  EXPECT_EQ(rating_after(noted(std::move(twice), said("bo", Verdict::kTired)), "bo"), 0);
}

TEST(Trial, NothingChangesBeforeTheEndAndAnEndIsOnce) {
  Household household = noted(rated(0), said("bo", Verdict::kLiked));
  EXPECT_TRUE(find_person(household, PersonKey("bo"))->ratings.empty());
  const auto finished = finish_trial(household, TrialId(1), "rain", kReviewDay);
  ASSERT_TRUE(finished);
  household = after(std::move(household), finished->changes);
  EXPECT_FALSE(finish_trial(household, TrialId(1), "", kReviewDay).has_value());
  const auto late = add_trial_note(household, said("bo", Verdict::kTired), kReviewDay);
  ASSERT_FALSE(late.has_value());
  EXPECT_FALSE(late.error().next_step.empty());
}

TEST(Trial, OnlyThoseWhoTakePartSaySomething) {
  Trial trial = weekend();
  trial.people = {PersonKey("ida"), PersonKey("ida")};
  const Household household = begun(kit_household(), trial);
  EXPECT_EQ(household.trials.front().people.size(), 1U);
  EXPECT_FALSE(add_trial_note(household, said("bo", Verdict::kLiked), kReviewDay).has_value());
  EXPECT_TRUE(add_trial_note(household, said("ida", Verdict::kLiked), kReviewDay).has_value());
  TrialNote tomorrow = said("ida", Verdict::kLiked);
  tomorrow.on = day_at("2027-04-04");
  EXPECT_FALSE(add_trial_note(household, tomorrow, kReviewDay).has_value());
}

TEST(Trial, OneAtATimeWithDaysInOrder) {
  Trial backwards = weekend();
  backwards.through = day_at("2027-04-02");
  EXPECT_FALSE(start_trial(kit_household(), backwards, kReviewDay).has_value());
  EXPECT_FALSE(start_trial(begun(kit_household()), weekend(), kReviewDay).has_value());
}

TEST(Trial, ATrialIsNamedByItsNumberOrIsTheLatest) {
  EXPECT_FALSE(named_trial(kit_household(), "").has_value());
  const Household household = begun(kit_household());
  EXPECT_EQ(*named_trial(household, ""), TrialId(1));
  EXPECT_EQ(*named_trial(household, "#1"), TrialId(1));
  for (const char* wrong : {"2", "#", "1x", "-1"})
    EXPECT_FALSE(named_trial(household, wrong).has_value()) << wrong;
}

TEST(Trial, WhatWasEatenFromTheKitOnItsDaysIsCounted) {
  Household household = begun(kit_household());
  const auto eat = [&](LotId lot, const char* at, const char* on) {
    Entry entry;
    entry.id = next_ids(household).entry;
    entry.kind = EntryKind::kEaten;
    entry.on = day_at(on);
    entry.written_at = midnight(entry.on);
    entry.at = {lot, PlaceKey(at), std::nullopt};
    entry.amount = HalfServings(2);
    household.entries.push_back(entry);
  };
  eat(LotId(3), "bag-bo", "2027-04-02");
  eat(LotId(3), "bag-bo", "2027-04-03");
  eat(LotId(4), "bag-ida", "2027-04-04");
  eat(LotId(1), "pantry", "2027-04-03");
  const TrialReport report = show_trial(household, TrialId(1));
  ASSERT_EQ(report.eaten.size(), 1U);
  EXPECT_EQ(report.eaten.front().amount, HalfServings(4));
}

}  // namespace
}  // namespace larderloop
