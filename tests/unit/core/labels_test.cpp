// Allergen keys, statements, and the one predicate that decides who may be given what.
#include "larderloop/core/eligible.h"
#include "unit/core/core_household.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace larderloop {
namespace {

constexpr Declared kContains = Declared::kContains;
constexpr Declared kMay = Declared::kMayContain;

TEST(AllergenKeys, KnowTheListsAndSpeciesOfFish) {
  for (const char* key : {"milk", "tree_nut", "tree_nut:almond", "gluten", "wheat", "coconut",
                          "fish:cod", "crustacean:crab", "mollusc:blue_mussel"}) {
    EXPECT_TRUE(is_known_allergen(key)) << key;
  }
  for (const char* key : {"", "Milk", "milk ", "kiwi", "tree_nut:", "tree_nut:kola",
                          "fish:", "fish:Cod", "fish:a b", "milk:cow", "fish:cod:x"}) {
    EXPECT_FALSE(is_known_allergen(key)) << key;
  }
  EXPECT_TRUE(std::is_sorted(known_allergens().begin(), known_allergens().end()));
  EXPECT_EQ(std::adjacent_find(known_allergens().begin(), known_allergens().end()),
            known_allergens().end());
  for (const std::string& key : known_allergens()) {
    EXPECT_TRUE(is_known_allergen(key));
    EXPECT_FALSE(allergen_words(key).empty()) << key;
  }
}

TEST(AllergenWords, AreForPeople) {
  EXPECT_EQ(allergen_words("tree_nut:almond"), "almond");
  EXPECT_EQ(allergen_words("gluten"), "cereals with gluten");
  EXPECT_EQ(allergen_words("fish:blue_whiting"), "blue whiting");
  EXPECT_EQ(allergen_words("star_fruit"), "star fruit");
}

TEST(Overlaps, HitsTheGroupBothWaysAndNoNeighbour) {
  for (const auto& [a, b] :
       std::vector<std::pair<const char*, const char*>>{{"milk", "milk"},
                                                        {"tree_nut", "tree_nut:almond"},
                                                        {"gluten", "wheat"},
                                                        {"gluten", "rye"},
                                                        {"gluten", "barley"},
                                                        {"gluten", "oats"},
                                                        {"fish", "fish:cod"},
                                                        {"kiwi", "kiwi:gold"}}) {
    EXPECT_TRUE(overlaps(a, b)) << a << " " << b;
    EXPECT_TRUE(overlaps(b, a)) << b << " " << a;
  }
  for (const auto& [a, b] :
       std::vector<std::pair<const char*, const char*>>{{"tree_nut:almond", "tree_nut:walnut"},
                                                        {"peanut", "tree_nut"},
                                                        {"wheat", "rye"},
                                                        {"fish:cod", "fish:hake"},
                                                        {"coconut", "tree_nut"},
                                                        {"chestnut", "tree_nut"},
                                                        {"fish", "fishy"},
                                                        {"milk", "mil"},
                                                        {"crustacean", "mollusc"},
                                                        {"", "milk"}}) {
    EXPECT_FALSE(overlaps(a, b)) << a << " " << b;
    EXPECT_FALSE(overlaps(b, a)) << b << " " << a;
  }
}

TEST(Supports, FollowsVeganToVegetarianToPescatarianAndNoFurther) {
  EXPECT_TRUE(supports({Diet::kVegan}, Diet::kVegetarian));
  EXPECT_TRUE(supports({Diet::kVegan}, Diet::kPescatarian));
  EXPECT_TRUE(supports({Diet::kVegetarian}, Diet::kPescatarian));
  EXPECT_FALSE(supports({Diet::kVegetarian}, Diet::kVegan));
  EXPECT_FALSE(supports({Diet::kPescatarian}, Diet::kVegetarian));
  EXPECT_FALSE(supports({Diet::kVegan}, Diet::kKosher));
  EXPECT_FALSE(supports({Diet::kVegan}, Diet::kHalal));
  EXPECT_FALSE(supports({Diet::kVegan, Diet::kHalal}, Diet::kGlutenFree));
  for (const Diet diet : kAllDiets) {
    EXPECT_TRUE(supports({diet}, diet));
    EXPECT_FALSE(supports({}, diet));
    EXPECT_EQ(parse_diet(diet_name(diet)), diet);
  }
  EXPECT_FALSE(parse_diet("gluten-free"));
}

TEST(Contradictions, FindAClaimBesideWhatItRulesOut) {
  const struct {
    Diet claim;
    const char* key;
    Declared declared;
    bool contradicts;
  } cases[] = {{Diet::kVegan, "milk", kContains, true},
               {Diet::kVegan, "egg", kContains, true},
               {Diet::kVegan, "fish:cod", kContains, true},
               {Diet::kVegan, "milk", kMay, false},
               {Diet::kVegan, "wheat", kContains, false},
               {Diet::kVegetarian, "milk", kContains, false},
               {Diet::kVegetarian, "fish", kContains, true},
               {Diet::kVegetarian, "crustacean:crab", kContains, true},
               {Diet::kPescatarian, "fish", kContains, false},
               {Diet::kGlutenFree, "wheat", kContains, true},
               {Diet::kGlutenFree, "gluten", kContains, true},
               {Diet::kGlutenFree, "rye", kContains, true},
               {Diet::kGlutenFree, "oats", kContains, false},
               {Diet::kKosher, "mollusc", kContains, true},
               {Diet::kHalal, "milk", kContains, false}};
  for (const auto& each : cases) {
    const auto found = contradictions(label_read({{each.key, each.declared}}, {each.claim}));
    EXPECT_EQ(!found.empty(), each.contradicts) << diet_name(each.claim) << " beside " << each.key;
    if (each.contradicts) {
      ASSERT_EQ(found.size(), 1U);
      EXPECT_EQ(found[0], (std::pair<Diet, std::string>(each.claim, each.key)));
    }
  }
  EXPECT_TRUE(contradictions(Statement{}).empty());
}

class WhyNot : public ::testing::Test {
 protected:
  std::optional<RefusalReason> ask(const char* person, const char* food, const Statement* label) {
    return why_not(home, *find_person(home, PersonKey(person)), *find_food(home, FoodKey(food)),
                   label, on);
  }
  Person& person(const char* key) {
    return *std::find_if(home.people.begin(), home.people.end(),
                         [&](const Person& each) { return each.key.str() == key; });
  }
  Household home = core_household();
  Day on = *parse_iso_day("2027-03-01");
};

TEST_F(WhyNot, SaysYesWhereNothingStandsAgainstIt) {
  const Statement label = label_read({{"milk", kContains}});
  EXPECT_EQ(ask("ada", "lentil-stew", &label), std::nullopt);
  EXPECT_EQ(ask("ben", "lentil-stew", nullptr), std::nullopt);  // nothing to avoid, no diet
  EXPECT_EQ(ask("minka", "cat-dinner", nullptr), std::nullopt);
}

TEST_F(WhyNot, RefusesWhatTheLabelDeclares) {
  const Statement contains = label_read({{"peanut", kContains}});
  const Statement may = label_read({{"peanut", kMay}});
  EXPECT_EQ(ask("ada", "lentil-stew", &contains), (RefusalReason{Refusal::kContains, "peanut"}));
  EXPECT_EQ(ask("ada", "lentil-stew", &may), (RefusalReason{Refusal::kMayContain, "peanut"}));
  person("ada").avoid[0].accept_may_contain = true;
  EXPECT_EQ(ask("ada", "lentil-stew", &may), std::nullopt);
  EXPECT_EQ(ask("ada", "lentil-stew", &contains), (RefusalReason{Refusal::kContains, "peanut"}));
}

TEST_F(WhyNot, RefusesSingleNutsForTheGroupAndTheGroupForASingleNut) {
  person("ada").avoid = {{"tree_nut:walnut", false}};
  const Statement group = label_read({{"tree_nut", kContains}});
  const Statement almond = label_read({{"tree_nut:almond", kContains}});
  EXPECT_EQ(ask("ada", "lentil-stew", &group), (RefusalReason{Refusal::kContains, "tree_nut"}));
  EXPECT_EQ(ask("ada", "lentil-stew", &almond), std::nullopt);
  person("ada").avoid = {{"tree_nut", false}};
  EXPECT_EQ(ask("ada", "lentil-stew", &almond),
            (RefusalReason{Refusal::kContains, "tree_nut:almond"}));
}

TEST_F(WhyNot, RefusesAnUnreadLabelForAnybodyWithAvoidOrDiet) {
  EXPECT_EQ(ask("ada", "lentil-stew", nullptr), (RefusalReason{Refusal::kLabelUnknown, ""}));
  person("ben").diets = {Diet::kHalal};
  EXPECT_EQ(ask("ben", "lentil-stew", nullptr), (RefusalReason{Refusal::kLabelUnknown, ""}));
  EXPECT_TRUE(needs_label(person("ada")));
  EXPECT_TRUE(needs_label(person("ben")));
  person("ben").diets.clear();
  EXPECT_FALSE(needs_label(person("ben")));
  person("ada").avoid[0].accept_may_contain =
      true;  // accepting warnings is not accepting the unknown
  EXPECT_TRUE(needs_label(person("ada")));
  EXPECT_EQ(ask("ada", "lentil-stew", nullptr), (RefusalReason{Refusal::kLabelUnknown, ""}));
}

TEST_F(WhyNot, TakesALabelReadBeforeAnOwnAllergenCameUpAsUnread) {
  home.own_allergens = {{"kiwi", day_at("2026-06-01")}};
  person("ada").avoid = {{"kiwi", false}};
  Statement label = label_read();
  label.read_on = day_at("2026-05-31");
  EXPECT_EQ(ask("ada", "lentil-stew", &label), (RefusalReason{Refusal::kLabelUnknown, "kiwi"}));
  label.read_on = day_at("2026-06-01");
  EXPECT_EQ(ask("ada", "lentil-stew", &label), std::nullopt);
  label.declared = {{"kiwi", kContains}};
  EXPECT_EQ(ask("ada", "lentil-stew", &label), (RefusalReason{Refusal::kContains, "kiwi"}));
  label.read_on = day_at("2026-05-31");
  EXPECT_NE(ask("ada", "lentil-stew", &label), std::nullopt);
  EXPECT_EQ(ask("ben", "lentil-stew", &label), std::nullopt);
}

TEST_F(WhyNot, TakesTheGroupAndTheKindsOfAnOwnAllergenAsUnreadToo) {
  home.own_allergens = {{"kiwi:gold", day_at("2026-06-01")}};
  Statement label = label_read();
  label.read_on = day_at("2026-05-31");
  for (const char* avoided : {"kiwi", "kiwi:gold"}) {
    person("ada").avoid = {{avoided, false}};
    EXPECT_EQ(ask("ada", "lentil-stew", &label), (RefusalReason{Refusal::kLabelUnknown, avoided}));
  }
  person("ada").avoid = {{"kiwi:green", false}};
  EXPECT_EQ(ask("ada", "lentil-stew", &label), std::nullopt) << "a neighbour is another thing";
}

TEST_F(WhyNot, NamesAnUnreadLabelBeforeWhatItDeclares) {
  home.own_allergens = {{"kiwi", day_at("2026-06-01")}};
  person("ada").avoid = {{"egg", false}, {"kiwi", false}};
  Statement label = label_read({{"egg", kContains}});
  label.read_on = day_at("2026-05-31");
  EXPECT_EQ(ask("ada", "lentil-stew", &label), (RefusalReason{Refusal::kLabelUnknown, "kiwi"}));
}

TEST_F(WhyNot, RefusesWhatTheLabelDoesNotSupportAsADiet) {
  person("ben").diets = {Diet::kVegetarian};
  const Statement silent = label_read();
  const Statement vegan = label_read({}, {Diet::kVegan});
  const Statement absurd = label_read({{"milk", kContains}}, {Diet::kVegan});
  EXPECT_EQ(ask("ben", "lentil-stew", &silent), (RefusalReason{Refusal::kDiet, "vegetarian"}));
  EXPECT_EQ(ask("ben", "lentil-stew", &vegan), std::nullopt);
  EXPECT_EQ(ask("ben", "lentil-stew", &absurd), (RefusalReason{Refusal::kDiet, "vegetarian"}));
}

TEST_F(WhyNot, KeepsRefusalsSpeciesAndThingsOut) {
  person("ben").ratings[FoodKey("lentil-stew")] = -2;
  EXPECT_EQ(ask("ben", "lentil-stew", nullptr), (RefusalReason{Refusal::kRefuses, ""}));
  person("ben").ratings[FoodKey("lentil-stew")] = -1;
  EXPECT_EQ(ask("ben", "lentil-stew", nullptr), std::nullopt);
  EXPECT_EQ(ask("ben", "cat-dinner", nullptr), (RefusalReason{Refusal::kWrongSpecies, ""}));
  EXPECT_EQ(ask("minka", "lentil-stew", nullptr), (RefusalReason{Refusal::kWrongSpecies, ""}));
  person("minka").species = "dog";
  EXPECT_EQ(ask("minka", "cat-dinner", nullptr), (RefusalReason{Refusal::kWrongSpecies, ""}));
  EXPECT_EQ(ask("ben", "opener", nullptr), (RefusalReason{Refusal::kNotFood, ""}));
  EXPECT_EQ(ask("ben", "canister", nullptr), (RefusalReason{Refusal::kNotFood, ""}));
  EXPECT_EQ(ask("minka", "canister", nullptr), (RefusalReason{Refusal::kNotFood, ""}));
}

TEST_F(WhyNot, GivesInfantFormulaOnlyToWhomAMenuLineNamesIt) {
  EXPECT_EQ(ask("ben", "formula", nullptr), (RefusalReason{Refusal::kInfantFormula, ""}));
  MenuLine line;
  line.id = MenuLineId(2);
  line.place = PlaceKey("ada-bag");
  line.food = FoodKey("formula");
  line.everyone = true;
  home.menu.push_back(line);
  EXPECT_EQ(ask("ben", "formula", nullptr), (RefusalReason{Refusal::kInfantFormula, ""}))
      << "everyone names nobody";
  home.menu.back().everyone = false;
  home.menu.back().people = {PersonKey("ben")};
  EXPECT_EQ(ask("ben", "formula", nullptr), std::nullopt);
  EXPECT_EQ(ask("ada", "formula", nullptr), (RefusalReason{Refusal::kInfantFormula, ""}));
}

TEST_F(WhyNot, NamesTheGravestReasonFirst) {
  Person& ada = person("ada");
  ada.avoid = {{"milk", false}, {"peanut", false}};
  ada.diets = {Diet::kVegan};
  ada.ratings[FoodKey("lentil-stew")] = -2;
  const Statement both = label_read({{"milk", kMay}, {"peanut", kContains}});
  EXPECT_EQ(ask("ada", "lentil-stew", &both), (RefusalReason{Refusal::kContains, "peanut"}));
  const Statement may = label_read({{"milk", kMay}});
  EXPECT_EQ(ask("ada", "lentil-stew", &may), (RefusalReason{Refusal::kMayContain, "milk"}));
  const Statement silent = label_read();
  EXPECT_EQ(ask("ada", "lentil-stew", &silent), (RefusalReason{Refusal::kDiet, "vegan"}));
  const Statement fine = label_read({}, {Diet::kVegan});
  EXPECT_EQ(ask("ada", "lentil-stew", &fine), (RefusalReason{Refusal::kRefuses, ""}));
  EXPECT_EQ(ask("ada", "cat-dinner", &both), (RefusalReason{Refusal::kWrongSpecies, ""}));
}

// CDC, "Choking Hazards" (firm, round, sticky food: not before four) and "Foods and Drinks to Avoid or Limit" (no honey before 12
// months): the ages, from memory of these pages.
TEST_F(WhyNot, KnowsWhatASmallChildMustNotHave) {
  const Statement label = label_read({});
  Food& food = *std::find_if(home.foods.begin(), home.foods.end(), [](const Food& each) { return each.key.str() == "lentil-stew"; });
  food.choking_risk = true;
  person("ben").avoid.clear();
  person("ben").diets.clear();
  const auto born = [&](const char* day) {
    person("ben").born = parse_iso_day(day);
    return ask("ben", "lentil-stew", &label);
  };
  EXPECT_EQ(born("2023-03-02"), (RefusalReason{Refusal::kChoking, ""}));  // four tomorrow
  EXPECT_EQ(born("2023-03-01"), std::nullopt);                            // four today
  EXPECT_EQ(born("2027-03-02"), (RefusalReason{Refusal::kChoking, ""}));  // not born yet
  food.choking_risk = false;
  food.honey = true;
  EXPECT_EQ(born("2026-03-02"), (RefusalReason{Refusal::kHoney, ""}));
  EXPECT_EQ(born("2026-03-01"), std::nullopt);
  person("ben").born.reset();
  food.choking_risk = true;
  EXPECT_EQ(ask("ben", "lentil-stew", &label), std::nullopt);  // no birth date: grown up
}

TEST_F(WhyNot, ListsTheRefusedInKeyOrder) {
  person("ben").ratings[FoodKey("lentil-stew")] = -2;
  const auto all = refusals(home, {PersonKey("ben"), PersonKey("nobody"), PersonKey("ada")},
                            *find_food(home, FoodKey("lentil-stew")), nullptr, on);
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].person, PersonKey("ada"));
  EXPECT_EQ(all[0].reason.refusal, Refusal::kLabelUnknown);
  EXPECT_EQ(all[1].person, PersonKey("ben"));
  EXPECT_EQ(all[1].reason.refusal, Refusal::kRefuses);
}

TEST_F(WhyNot, WordsEveryReasonWithoutCallingAnythingSafe) {
  EXPECT_EQ(refusal_words({Refusal::kContains, "sesame"}), "the label says it contains sesame");
  EXPECT_EQ(refusal_words({Refusal::kMayContain, "tree_nut:almond"}),
            "the label says it may contain almond");
  EXPECT_EQ(refusal_words({Refusal::kLabelUnknown, ""}), "nobody has read the label of this lot");
  EXPECT_EQ(refusal_words({Refusal::kLabelUnknown, "kiwi"}),
            "the label was not read with kiwi in mind");
  EXPECT_EQ(refusal_words({Refusal::kDiet, "gluten_free"}),
            "the label does not say it is gluten-free");
  for (const Refusal refusal :
       {Refusal::kContains, Refusal::kMayContain, Refusal::kLabelUnknown, Refusal::kDiet,
        Refusal::kRefuses, Refusal::kWrongSpecies, Refusal::kNotFood, Refusal::kInfantFormula}) {
    const std::string words = refusal_words({refusal, "milk"});
    EXPECT_FALSE(words.empty());
    EXPECT_EQ(words.find("safe"), std::string::npos) << words;
  }
}

TEST_F(WhyNot, KnowsWhomAMenuLineIsFor) {
  EXPECT_EQ(eaters_of(home, home.menu[0]), (std::vector<PersonKey>{PersonKey("ada")}));
  MenuLine line;
  line.everyone = true;
  EXPECT_EQ(eaters_of(home, line), (std::vector<PersonKey>{PersonKey("ada"), PersonKey("ben")}))
      << "a pet is not everyone";
  line.everyone = false;
  EXPECT_TRUE(eaters_of(home, line).empty());
}

}  // namespace
}  // namespace larderloop
