// The households that other tests are made from: valid, repeatable, and as varied as those tests
// suppose.
#include "support/household_gen.h"

#include "larderloop/core/stock.h"
#include "larderloop/core/validate.h"

#include <gtest/gtest.h>

#include <map>

namespace larderloop {
namespace {

TEST(HouseholdGen, IsValidForEverySeed) {
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    const Household household = generate_household(seed, static_cast<int>(seed % 90));
    const auto problems = validate(household);
    ASSERT_TRUE(problems.empty()) << "seed " << seed << " " << problems.front().where << " '"
                                  << problems.front().value << "': " << problems.front().what;
    Household sorted = household;
    sort_lists(sorted);
    ASSERT_EQ(sorted, household) << "seed " << seed;
    ASSERT_EQ(household.lots.size(), seed % 90);
    ASSERT_GE(household.foods.size(), 15U);
    ASSERT_LE(household.foods.size(), 40U);
  }
}

TEST(HouseholdGen, GivesTheSameHouseholdForTheSameSeedAndAnotherForAnother) {
  EXPECT_EQ(generate_household(7, 30), generate_household(7, 30));
  EXPECT_NE(generate_household(7, 30), generate_household(8, 30));
}

TEST(HouseholdGen, NamesNoFoodSoThatAnotherNameBeginsOrEndsWithIt) {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const Household household = generate_household(seed, 0);
    for (const Food& a : household.foods) {
      for (const Food& b : household.foods) {
        if (a.key == b.key) continue;
        const std::size_t shorter = std::min(a.name.size(), b.name.size());
        EXPECT_NE(a.name.substr(0, shorter), b.name.substr(0, shorter));
        EXPECT_NE(a.name.substr(a.name.size() - shorter), b.name.substr(b.name.size() - shorter));
      }
    }
  }
}

TEST(HouseholdGen, ShowsEveryCaseThatTheTestsAreAbout) {
  std::map<std::string, int> seen;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const Household household = generate_household(seed, 40);
    for (const Person& person : household.people) {
      if (!person.is_human()) ++seen["pet"];
      if (!person.diets.empty()) ++seen["diet"];
      if (person.appetite == HalfServings(1)) ++seen["half appetite"];
      for (const Avoid& avoid : person.avoid) {
        if (avoid.accept_may_contain) ++seen["accepts may contain"];
        if (avoid.key == "tree_nut") ++seen["group avoided"];
        if (avoid.key == "tree_nut:walnut") ++seen["single nut avoided"];
        if (avoid.key == "kiwi") ++seen["own allergen avoided"];
      }
      for (const auto& [food, rating] : person.ratings) ++seen["rating " + std::to_string(rating)];
    }
    for (const Food& food : household.foods)
      ++seen["food " + std::string(food_kind_name(food.kind))];
    for (const Lot& lot : household.lots) {
      ++seen["mark " + std::string(mark_kind_name(lot.mark.kind))];
      ++seen["precision " + std::string(precision_name(lot.mark.precision))];
      ++seen["state " + std::string(lot_state_name(lot.state))];
      const Food& food = *find_food(household, lot.food);
      ++seen[!lot.label ? "label unread"
             : food.label && food.label->declared == lot.label->declared
                 ? "label as the food's"
                 : "label unlike the food's"];
    }
    for (const Entry& entry : household.entries) {
      ++seen["entry " + std::string(entry_kind_name(entry.kind))];
      if (entry.amount.halves() % 2 == 1) ++seen["half a serving"];
    }
    for (const Reading& reading : household.readings)
      ++seen[reading.mark ? "reading mark" : reading.label ? "reading label" : "reading state"];
    const auto ledger = replay(household);
    ASSERT_TRUE(ledger);
    for (const auto& [at, amount] : ledger->stock())
      ++seen[kit_of(household, at.place).empty() ? "lies in the pantry" : "lies in a kit"];
  }
  for (const char* what : {"pet",
                           "diet",
                           "half appetite",
                           "accepts may contain",
                           "group avoided",
                           "single nut avoided",
                           "own allergen avoided",
                           "rating -2",
                           "rating -1",
                           "rating 1",
                           "rating 2",
                           "food food",
                           "food drink",
                           "food water",
                           "food pet_food",
                           "food thing",
                           "mark none",
                           "mark best_before",
                           "mark use_by",
                           "mark sell_by",
                           "mark packed_on",
                           "mark produced_on",
                           "precision day",
                           "precision month",
                           "precision year",
                           "state ok",
                           "state doubtful",
                           "state recalled",
                           "label unread",
                           "label as the food's",
                           "label unlike the food's",
                           "entry received",
                           "entry found",
                           "entry moved",
                           "entry opened",
                           "entry eaten",
                           "entry given_away",
                           "entry thrown_out",
                           "entry lost",
                           "entry counted",
                           "entry corrected",
                           "half a serving",
                           "reading mark",
                           "reading label",
                           "reading state",
                           "lies in the pantry",
                           "lies in a kit"}) {
    EXPECT_GT(seen[what], 3) << what;
  }
}

}  // namespace
}  // namespace larderloop
