// The allergen keys against the published lists, written down here from the lists themselves.
// US:    FALCPA 2004 (Pub. L. 108-282) and FASTER Act 2021 (Pub. L. 117-11), the nine as in FDA's
// questions and answers of 2025;
//        tree nuts: FDA guidance on food allergen labelling, Edition 5, January 2025
// EU:    Regulation (EU) No 1169/2011, Annex II
// Codex: FAO/WHO expert consultation on risk assessment of food allergens, part 1, 2021
#include "core/embedded.h"
#include "larderloop/core/allergen.h"

#include <gtest/gtest.h>

#include <map>
#include <set>
#include <sstream>

namespace larderloop {
namespace {

using Keys = std::set<std::string>;

// The keys with a 1 in this column of the table (3 = us9, 4 = eu14, 5 = codex8).
Keys listed(std::size_t column) {
  Keys keys;
  std::istringstream table{std::string(embedded_table("allergens"))};
  for (std::string line; std::getline(table, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::istringstream cells(line);
    std::vector<std::string> row;
    for (std::string cell; std::getline(cells, cell, ',');) row.push_back(cell);
    EXPECT_GT(row.size(), 5U) << line;
    EXPECT_TRUE(row[column] == "0" || row[column] == "1") << line;
    if (row[column] == "1") keys.insert(row[0]);
  }
  return keys;
}

TEST(AllergenLists, TheUsNineWithTheTreeNutsOfJanuary2025) {
  // Twelve kinds in the guidance: black, California and English walnut and heartnut are all walnuts
  // here.
  EXPECT_EQ(listed(3),
            (Keys{"milk", "egg", "fish", "crustacean", "tree_nut", "wheat", "peanut", "soy",
                  "sesame", "tree_nut:almond", "tree_nut:brazil", "tree_nut:cashew",
                  "tree_nut:hazelnut", "tree_nut:macadamia", "tree_nut:pecan", "tree_nut:pine_nut",
                  "tree_nut:pistachio", "tree_nut:walnut"}));
}

TEST(AllergenLists, TheFourteenOfTheEu) {
  EXPECT_EQ(listed(4), (Keys{"gluten",
                             "wheat",
                             "rye",
                             "barley",
                             "oats",
                             "crustacean",
                             "egg",
                             "fish",
                             "peanut",
                             "soy",
                             "milk",
                             "tree_nut",
                             "tree_nut:almond",
                             "tree_nut:hazelnut",
                             "tree_nut:walnut",
                             "tree_nut:cashew",
                             "tree_nut:pecan",
                             "tree_nut:brazil",
                             "tree_nut:pistachio",
                             "tree_nut:macadamia",
                             "celery",
                             "mustard",
                             "sesame",
                             "sulphite",
                             "lupin",
                             "mollusc"}));
}

TEST(AllergenLists, ThePriorityListOfFaoAndWho) {
  EXPECT_EQ(listed(5),
            (Keys{"gluten", "wheat", "rye", "barley", "crustacean", "egg", "fish", "milk", "peanut",
                  "sesame", "tree_nut", "tree_nut:almond", "tree_nut:cashew", "tree_nut:hazelnut",
                  "tree_nut:pecan", "tree_nut:pistachio", "tree_nut:walnut"}));
}

// Annex II point 1: cereals containing gluten are wheat, rye, barley, oats; the word alone may mean
// any of them.
TEST(AllergenLists, GlutenIsEachOfItsCereals) {
  for (const char* grain : {"wheat", "rye", "barley", "oats"})
    EXPECT_TRUE(overlaps("gluten", grain)) << grain;
  EXPECT_FALSE(overlaps("wheat", "rye"));
  EXPECT_FALSE(overlaps("gluten", "soy"));
}

// FDA guidance, Edition 5, January 2025: coconut and chestnut among others are no longer tree nuts.
TEST(AllergenLists, CoconutAndChestnutAreNoTreeNutsButCanBeAvoided) {
  for (const char* key : {"coconut", "chestnut"}) {
    EXPECT_FALSE(overlaps("tree_nut", key)) << key;
    EXPECT_TRUE(is_known_allergen(key)) << key;
    EXPECT_TRUE(overlaps(key, key)) << key;
  }
}

// The peanut is a legume: FALCPA names it beside tree nuts; Annex II has it in point 5, nuts in
// point 8.
TEST(AllergenLists, PeanutAndTreeNutStayApart) {
  EXPECT_FALSE(overlaps("peanut", "tree_nut"));
}

TEST(AllergenLists, EveryTreeNutOfALawIsHitByTheGroup) {
  for (const std::size_t list : {3U, 4U, 5U}) {
    int nuts = 0;
    for (const std::string& key : listed(list)) {
      if (key.rfind("tree_nut:", 0) != 0) continue;
      EXPECT_TRUE(overlaps("tree_nut", key)) << key;
      ++nuts;
    }
    EXPECT_GE(nuts, 6);
  }
}

// Regulation (EU) No 828/2014 and 21 CFR 101.91: gluten-free oats exist; wheat, rye and barley are
// ruled out by the claim.
TEST(AllergenLists, AGlutenFreeClaimStandsBesideOatsAndNotBesideWheatRyeOrBarley) {
  const auto contradicts = [](const char* key) {
    return !contradictions({{{key, Declared::kContains}}, {Diet::kGlutenFree}, "Ada", Day{}})
                .empty();
  };
  EXPECT_FALSE(contradicts("oats"));
  for (const char* key : {"wheat", "rye", "barley", "gluten"}) EXPECT_TRUE(contradicts(key)) << key;
}

// ISO 23662:2021, foods suitable for vegetarians or vegans: a vegan food has no ingredient of
// animal origin, a vegetarian one may have milk and egg; vegan food suits vegetarians.
TEST(AllergenLists, VeganAndVegetarianClaimsMeanWhatTheStandardSays) {
  const auto contradicts = [](Diet diet, const char* key) {
    return !contradictions({{{key, Declared::kContains}}, {diet}, "Ada", Day{}}).empty();
  };
  for (const char* key : {"milk", "egg", "fish", "crustacean", "mollusc"})
    EXPECT_TRUE(contradicts(Diet::kVegan, key)) << key;
  for (const char* key : {"fish", "crustacean", "mollusc"})
    EXPECT_TRUE(contradicts(Diet::kVegetarian, key)) << key;
  for (const char* key : {"milk", "egg"}) EXPECT_FALSE(contradicts(Diet::kVegetarian, key)) << key;
  EXPECT_TRUE(supports({Diet::kVegan}, Diet::kVegetarian));
}

}  // namespace
}  // namespace larderloop
