// The cautions: whole sentences, each with its row in docs/sources.md, and shown where they belong.
#include "larderloop/app/cautions.h"

#include "kit_household.h"
#include "larderloop/app/paper.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

namespace larderloop {
namespace {

std::string sources() {
  std::ifstream file(LARDERLOOP_SRC "/docs/sources.md");
  std::ostringstream text;
  text << file.rdbuf();
  const std::string all = text.str();
  return all.substr(all.find("## Cautions"));
}

std::size_t rows_of(const std::string& text) {
  std::size_t rows = 0;
  for (std::size_t at = text.find("\n| `"); at != std::string::npos;
       at = text.find("\n| `", at + 1))
    ++rows;
  return rows;
}

Household with_formula() {
  Household household = kit_household();
  Food formula;
  formula.key = FoodKey("formula");
  formula.name = "Infant formula";
  formula.infant_formula = true;
  household.foods.insert(household.foods.begin(), formula);
  Lot lot;
  lot.id = next_ids(household).lot;
  lot.food = formula.key;
  lot.mark = {"2028-01-31", MarkKind::kUseBy, Precision::kDay, parse_iso_day("2028-01-31")};
  lot.received = day_at("2027-02-01");
  Entry entry;
  entry.id = next_ids(household).entry;
  entry.on = lot.received;
  entry.written_at = midnight(entry.on);
  entry.at = {lot.id, PlaceKey("bag-bo"), std::nullopt};
  entry.amount = HalfServings(2);
  household.lots.push_back(lot);
  household.entries.push_back(entry);
  return household;
}

bool paper_says(const Household& household, PaperWhat what, Caution caution) {
  PaperRequest request;
  request.what = what;
  const auto made = make_paper(household, request, kReviewDay.today);
  EXPECT_TRUE(made) << paper_name(what);
  return made && paper_words(*made).find(caution_words(caution)) != std::string::npos;
}

TEST(Cautions, AreWholeSentencesWithASourceEach) {
  const std::string rows = sources();
  for (const Caution each : kAllCautions) {
    const std::string_view words = caution_words(each);
    ASSERT_FALSE(words.empty());
    EXPECT_EQ(words.back(), '.') << words;
    EXPECT_NE(rows.find("\n| `" + std::string(caution_name(each)) + "` |"), std::string::npos)
        << caution_name(each);
  }
  EXPECT_EQ(rows_of(rows), std::size(kAllCautions));
}

TEST(Cautions, StandOnEveryPaperTheyBelongTo) {
  const Household household = kit_household();
  for (const PaperWhat card : {PaperWhat::kMenuCard, PaperWhat::kBoxCard, PaperWhat::kHousehold}) {
    for (const Caution each : {Caution::kLabel, Caution::kOpened, Caution::kContainers,
                               Caution::kSpoiled, Caution::kFlood, Caution::kIll}) {
      EXPECT_TRUE(paper_says(household, card, each))
          << paper_name(card) << ": " << caution_name(each);
    }
    EXPECT_FALSE(paper_says(household, card, Caution::kFormula)) << paper_name(card);
  }
  EXPECT_TRUE(paper_says(household, PaperWhat::kReviewSheet, Caution::kContainers));
  EXPECT_TRUE(paper_says(household, PaperWhat::kReviewSheet, Caution::kSpoiled));
  EXPECT_TRUE(paper_says(household, PaperWhat::kBoxCard, Caution::kLifting));
  EXPECT_TRUE(paper_says(household, PaperWhat::kHousehold, Caution::kFloodTins));
  EXPECT_TRUE(paper_says(household, PaperWhat::kHousehold, Caution::kOutage));
}

TEST(Cautions, FormulaIsSaidWhereAKitHoldsIt) {
  const Household household = with_formula();
  for (const PaperWhat what :
       {PaperWhat::kMenuCard, PaperWhat::kBoxCard, PaperWhat::kHousehold, PaperWhat::kReviewSheet})
    EXPECT_TRUE(paper_says(household, what, Caution::kFormula)) << paper_name(what);
  EXPECT_TRUE(concerns_formula(household, PlaceKey("kit"), kReviewDay.today));
  EXPECT_FALSE(concerns_formula(kit_household(), PlaceKey("kit"), kReviewDay.today));
}

TEST(Cautions, FormulaIsSaidWhereAChildUnderTwoEats) {
  Household household = kit_household();
  for (Person& person : household.people) {
    if (person.key == PersonKey("bo")) person.born = day_at("2025-04-04");
  }
  EXPECT_TRUE(concerns_formula(household, PlaceKey("kit"), day_at("2027-04-03")));
  EXPECT_FALSE(concerns_formula(household, PlaceKey("kit"), day_at("2027-04-04")));
  EXPECT_FALSE(concerns_formula(household, PlaceKey("pantry"), day_at("2027-04-03")));
}

TEST(Cautions, WetFoodSpoilsOnceOpenedDryFoodAndThingsDoNot) {
  Food food;
  food.storage.opened_days = 3;
  EXPECT_TRUE(spoils_when_opened(food));
  food.storage.opened_days = 14;
  EXPECT_FALSE(spoils_when_opened(food));
  food.storage.opened_days = 0;
  food.kind = FoodKind::kThing;
  EXPECT_FALSE(spoils_when_opened(food));
}

}  // namespace
}  // namespace larderloop
