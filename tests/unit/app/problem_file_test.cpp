// Planning problems in JSON: each kind of fault once, with its place, and what is right read
// rightly.
#include "larderloop/app/planning_problem.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace larderloop {
namespace {

const std::string kEat =
    R"({"stage": "eat-down", "name": "small", "today": 0, "week_start": -2, "horizon_days": 28,
 "params": {"donate_days": 10, "late_days": 3, "tolerance": 6, "monotony": 5},
 "eaters": [{"id": "ben", "avoid": ["nut"], "ratings": {"bar": -1}, "tolerance": 3, "monotony": 2, "eaten_this_week": {"bar": 1}}, {"id": "ana"}],
 "products": [{"id": "jam", "servings": 6, "open_days": 20, "kinds": ["breakfast", "snack"], "contains": ["nut"]}, {"id": "bar", "servings": 1}],
 "lots": [{"id": "l2", "product": "jam", "units": 1, "last_good_day": 9, "already_open": true, "open_servings": 4, "may_donate": false},
          {"id": "l1", "product": "bar", "units": 3, "last_good_day": 9, "available_from": 2}],
 "meals": [{"id": "m1", "day": 3, "kind": "snack", "eaters": ["ben", "ana"], "appetite": {"ben": 2}, "without": ["jam"]}],
 "published": {"until": 11, "servings": [{"product": "bar", "meal": "gone", "eater": "ana", "servings": 1}]},
 "keep_published": true, "wished": [{"product": "bar", "meal": "m1", "eater": "ben", "servings": 1}]})";

const std::string kRefill = R"({"stage": "refill", "today": 0, "hold_until": 200, "budget": 900,
 "params": {"variety_cap": 1, "surplus_credit_percent": 25, "date_cap_days": 400},
 "eaters": [{"id": "ana", "energy_target": 1800}],
 "products": [{"id": "bar", "roles": ["snack"], "contains": [], "kcal": 190, "mass": 42, "volume": 40, "no_cook": true, "staple": true}],
 "containers": [{"id": "bag", "kit": "home", "mass_limit": 900, "volume_limit": null}],
 "lines": [{"id": "l1", "container": "bag", "eaters": ["ana"], "day": 1, "kind": "snack", "role": "snack", "units": 2, "priority": 3}],
 "lots": [{"id": "k", "product": "bar", "units": 1, "last_good_day": 300, "place": "kit", "container": "bag"},
          {"id": "p", "product": "bar", "units": 4, "last_good_day": 300, "place": "pantry"}],
 "offers": [{"id": "o", "product": "bar", "pack_units": 6, "price": 390, "last_good_day": 500, "max_packs": 2}], "keep_in_place": true})";

// The text with its first `from` replaced by `to`.
std::string with(const std::string& text, const std::string& from, const std::string& to) {
  std::string changed = text;
  const std::size_t at = changed.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return changed.replace(at, from.size(), to);
}

TEST(ProblemFile, ReadsEveryMemberOfAnEatDownProblem) {
  const auto read = read_problem(kEat);
  ASSERT_TRUE(read) << read.error().problems.front().what;
  EXPECT_EQ(read->name, "small");
  EXPECT_EQ(stage_of(*read), "eat-down");
  const auto& problem = std::get<plan::EatDownProblem>(read->problem);
  EXPECT_EQ(problem.week_start, -2);
  EXPECT_EQ(problem.horizon_days, 28);
  EXPECT_EQ(problem.donate_days, 10);
  EXPECT_EQ(problem.late_days, 3);
  EXPECT_EQ(problem.tolerance, 6);
  EXPECT_EQ(problem.monotony, 5);
  ASSERT_EQ(problem.eaters.size(), 2U);
  EXPECT_EQ(problem.eaters[0].id, "ana");  // sorted
  const plan::Eater& ben = problem.eaters[1];
  EXPECT_EQ(ben.avoid, (std::set<std::string>{"nut"}));
  EXPECT_EQ(ben.ratings, (std::map<std::string, int>{{"bar", -1}}));
  EXPECT_EQ(ben.tolerance, 3);
  EXPECT_EQ(ben.monotony, 2);
  EXPECT_EQ(ben.eaten_this_week, (plan::NumbersById{{"bar", 1}}));
  const plan::EatProduct& jam = problem.products[1];
  EXPECT_EQ(jam.servings, 6);
  EXPECT_EQ(jam.open_days, 20);
  EXPECT_EQ(jam.kinds, (std::set<plan::Kind>{plan::Kind::kBreakfast, plan::Kind::kSnack}));
  EXPECT_EQ(jam.contains, (std::set<std::string>{"nut"}));
  EXPECT_EQ(problem.lots[0].available_from, 2);
  EXPECT_TRUE(problem.lots[0].may_donate);
  EXPECT_TRUE(problem.lots[1].already_open);
  EXPECT_EQ(problem.lots[1].open_servings, 4);
  EXPECT_FALSE(problem.lots[1].may_donate);
  const plan::EatMeal& meal = problem.meals[0];
  EXPECT_EQ(meal.day, 3);
  EXPECT_EQ(meal.kind, plan::Kind::kSnack);
  EXPECT_EQ(meal.eaters, (std::vector<std::string>{"ana", "ben"}));
  EXPECT_EQ(meal.appetite, (plan::NumbersById{{"ben", 2}}));
  EXPECT_EQ(meal.without, (std::set<std::string>{"jam"}));
  EXPECT_EQ(problem.published_until, 11);
  EXPECT_EQ(problem.published, (std::vector<plan::MealServing>{{"bar", "gone", "ana", 1}}));
  EXPECT_TRUE(problem.keep_published);
  EXPECT_EQ(problem.wished, (std::vector<plan::MealServing>{{"bar", "m1", "ben", 1}}));
}

TEST(ProblemFile, ReadsEveryMemberOfARefillProblem) {
  const auto read = read_problem(kRefill);
  ASSERT_TRUE(read) << read.error().problems.front().what;
  EXPECT_EQ(stage_of(*read), "refill");
  const auto& problem = std::get<plan::RefillProblem>(read->problem);
  EXPECT_EQ(problem.hold_until, 200);
  EXPECT_EQ(problem.budget, 900);
  EXPECT_EQ(problem.variety_cap, 1);
  EXPECT_EQ(problem.surplus_credit_percent, 25);
  EXPECT_EQ(problem.date_cap_days, 400);
  EXPECT_TRUE(problem.keep_in_place);
  EXPECT_EQ(problem.eaters[0].energy_target, 1800);
  const plan::RefillProduct& bar = problem.products[0];
  EXPECT_EQ(bar.roles, (std::set<std::string>{"snack"}));
  EXPECT_EQ(bar.kcal, 190);
  EXPECT_EQ(bar.mass, 42);
  EXPECT_EQ(bar.volume, 40);
  EXPECT_TRUE(bar.no_cook);
  EXPECT_TRUE(bar.staple);
  EXPECT_EQ(problem.containers[0].kit, "home");
  EXPECT_EQ(problem.containers[0].mass_limit, 900);
  EXPECT_FALSE(problem.containers[0].volume_limit);  // null
  const plan::RefillLine& line = problem.lines[0];
  EXPECT_EQ(line.container, "bag");
  EXPECT_EQ(line.eaters, (std::vector<std::string>{"ana"}));
  EXPECT_EQ(line.day, 1);
  EXPECT_EQ(line.kind, "snack");
  EXPECT_EQ(line.role, "snack");
  EXPECT_EQ(line.units, 2);
  EXPECT_EQ(line.priority, 3);
  EXPECT_TRUE(problem.lots[0].in_kit);
  EXPECT_EQ(problem.lots[0].container, "bag");
  EXPECT_FALSE(problem.lots[1].in_kit);
  EXPECT_EQ(problem.offers[0].pack_units, 6);
  EXPECT_EQ(problem.offers[0].price, 390);
  EXPECT_EQ(problem.offers[0].max_packs, 2);
}

TEST(ProblemFile, ReadsTheInstanceOfACaseFile) {
  const auto read =
      read_problem("{\"about\": \"a case\", \"instance\": " + kRefill + ", \"expected\": {}}");
  ASSERT_TRUE(read);
  EXPECT_EQ(stage_of(*read), "refill");
  const auto wrong =
      read_problem("{\"instance\": " + with(kRefill, "\"units\": 2", "\"units\": -2") + "}");
  ASSERT_FALSE(wrong);
  EXPECT_EQ(wrong.error().problems.front().where, "/instance/lines/0/units");
}

struct Fault {
  const char* name;
  bool refill;
  const char *from, *to;
  const char* where;
  const char* value;  // as the finding shows it
  const char* says;   // part of what is wrong or of what to do
};

const std::vector<Fault> kFaults = {
    {"no_stage", false, "\"stage\": \"eat-down\", ", "", "", "", "needs the member 'stage'"},
    {"unknown_stage", false, "eat-down", "eatdown", "/stage", "eatdown",
     "did you mean 'eat-down'?"},
    {"no_today", false, "\"today\": 0, ", "", "", "", "add \"today\""},
    {"day_as_text", false, "\"today\": 0", "\"today\": \"2027-03-01\"", "/today", "2027-03-01",
     "whole number"},
    {"day_with_point", false, "\"today\": 0", "\"today\": 0.5", "/today", "0.5", "digits only"},
    {"unknown_member", false, "\"week_start\"", "\"budget\": 1, \"week_start\"", "/budget", "1",
     "no member 'budget'"},
    {"unknown_param", false, "\"donate_days\"", "\"donate_day\"", "/params/donate_day", "10",
     "did you mean 'donate_days'?"},
    {"member_of_the_other_stage", false, "{\"id\": \"ana\"}",
     "{\"id\": \"ana\", \"energy_target\": 1}", "/eaters/1/energy_target", "1", "no member"},
    {"negative_horizon", false, "\"horizon_days\": 28", "\"horizon_days\": -1", "/horizon_days",
     "-1", "from 0"},
    {"too_large", false, "\"units\": 3", "\"units\": 1000000000000001", "/lots/1/units",
     "1000000000000001", "to 1000000000000000"},
    {"beyond_64_bits", false, "\"units\": 3", "\"units\": 99999999999999999999", "/lots/1/units",
     "99999999999999999999", "whole number"},
    {"too_early", false, "\"today\": 0", "\"today\": -1000000000000001", "/today",
     "-1000000000000001", "from -1000000000000000"},
    {"bar_in_id", false, "\"id\": \"ana\"", "\"id\": \"an|a\"", "/eaters/1/id", "an|a", "'|'"},
    {"empty_id", false, "\"id\": \"l1\"", "\"id\": \"\"", "/lots/1/id", "", "empty"},
    {"repeated_id", false, "\"id\": \"l1\"", "\"id\": \"l2\"", "/lots/1/id", "l2", "twice"},
    {"number_as_id", false, "\"id\": \"l1\"", "\"id\": 1", "/lots/1/id", "1", "a text"},
    {"lot_of_nothing", false, "\"product\": \"bar\", \"units\": 3",
     "\"product\": \"baz\", \"units\": 3", "/lots/1/product", "baz", "did you mean 'bar'?"},
    {"nobody_seated", false, "\"eaters\": [\"ben\", \"ana\"]", "\"eaters\": [\"ben\", \"zoe\"]",
     "/meals/0/eaters/1", "zoe", "is not an eater"},
    {"seated_twice", false, "\"eaters\": [\"ben\", \"ana\"]", "\"eaters\": [\"ben\", \"ben\"]",
     "/meals/0/eaters/1", "ben", "twice"},
    {"nobody_with_appetite", false, "\"appetite\": {\"ben\"", "\"appetite\": {\"zoe\"",
     "/meals/0/appetite/zoe", "zoe", "is not an eater"},
    {"rated_nothing", false, "\"ratings\": {\"bar\"", "\"ratings\": {\"soup\"",
     "/eaters/0/ratings/soup", "soup", "is not a product"},
    {"rated_too_well", false, "\"bar\": -1", "\"bar\": 3", "/eaters/0/ratings/bar", "3",
     "from -2 to 2"},
    {"ratings_in_a_list", false, "\"ratings\": {\"bar\": -1}", "\"ratings\": [1]",
     "/eaters/0/ratings", "[...]", "an object"},
    {"unknown_kind", false, "\"kind\": \"snack\"", "\"kind\": \"tea\"", "/meals/0/kind", "tea",
     "breakfast, lunch, dinner, snack"},
    {"no_servings", false, "\"servings\": 6", "\"servings\": 0", "/products/0/servings", "0",
     "from 1"},
    {"tag_twice", false, "\"contains\": [\"nut\"]", "\"contains\": [\"nut\", \"nut\"]",
     "/products/0/contains/1", "nut", "twice"},
    {"open_servings_of_a_sealed_lot", false, "\"available_from\": 2", "\"open_servings\": 2",
     "/lots/1/open_servings", "2", "open already"},
    {"two_units_open", false, "\"product\": \"jam\", \"units\": 1",
     "\"product\": \"jam\", \"units\": 2", "/lots/0", "", "one unit"},
    {"flag_as_number", false, "\"may_donate\": false", "\"may_donate\": 0", "/lots/0/may_donate",
     "0", "true or false"},
    {"wish_for_nobody", false, "\"eater\": \"ben\"", "\"eater\": \"zoe\"", "/wished/0/eater", "zoe",
     "is not an eater"},
    {"published_without_day", false, "\"until\": 11, ", "", "/published", "", "add \"until\""},
    {"published_twice", false, "\"servings\": [{",
     "\"servings\": [{\"product\": \"bar\", \"meal\": \"gone\", \"eater\": \"ana\", \"servings\": "
     "2}, {",
     "/published/servings/1", "", "twice"},
    {"no_lots", true, "\"lots\"", "\"lost\"", "/lost", "[...]", "did you mean 'lots'?"},
    {"list_as_object", true, "\"eaters\": [{\"id\": \"ana\", \"energy_target\": 1800}]",
     "\"eaters\": {}", "/eaters", "{}", "a list"},
    {"no_container", true, "\"container\": \"bag\", \"eaters\"",
     "\"container\": \"sack\", \"eaters\"", "/lines/0/container", "sack", "is not a container"},
    {"kit_lot_lies_nowhere", true, "\"place\": \"kit\", \"container\": \"bag\"",
     "\"place\": \"kit\"", "/lots/0", "", "'container'"},
    {"unknown_place", true, "\"place\": \"pantry\"", "\"place\": \"cellar\"", "/lots/1/place",
     "cellar", "kit, pantry"},
    {"no_units_in_a_pack", true, "\"pack_units\": 6", "\"pack_units\": 0", "/offers/0/pack_units",
     "0", "from 1"},
    {"negative_price", true, "\"price\": 390", "\"price\": -1", "/offers/0/price", "-1", "from 0"},
    {"negative_mass", true, "\"mass\": 42", "\"mass\": -42", "/products/0/mass", "-42", "from 0"},
    {"no_priority", true, "\"priority\": 3", "\"priority\": 0", "/lines/0/priority", "0", "from 1"},
    {"more_than_all", true, "\"surplus_credit_percent\": 25", "\"surplus_credit_percent\": 101",
     "/params/surplus_credit_percent", "101", "from 0 to 100"},
    {"null_for_what_must_be", true, "\"kcal\": 190", "\"kcal\": null", "/products/0/kcal", "null",
     "whole number"},
    {"offer_of_nothing", true, "\"id\": \"o\", \"product\": \"bar\"",
     "\"id\": \"o\", \"product\": \"\"", "/offers/0/product", "", "is not a product"},
};

TEST(ProblemFile, NamesEachFaultWithItsPlaceItsValueAndWhatToDo) {
  for (const Fault& fault : kFaults) {
    SCOPED_TRACE(fault.name);
    const auto read = read_problem(with(fault.refill ? kRefill : kEat, fault.from, fault.to));
    ASSERT_FALSE(read);
    const Error& error = read.error();
    EXPECT_EQ(error.kind, ErrorKind::kBadData);
    EXPECT_EQ(error.what.rfind("the planning problem has ", 0), 0U) << error.what;
    bool found = false;
    for (const Problem& problem : error.problems) {
      EXPECT_FALSE(problem.remedy.empty()) << problem.what;
      found =
          found || (problem.where == fault.where && problem.value == fault.value &&
                    (problem.what + ": " + problem.remedy).find(fault.says) != std::string::npos);
    }
    EXPECT_TRUE(found) << error.problems.front().where << " '" << error.problems.front().value
                       << "': " << error.problems.front().what << ": "
                       << error.problems.front().remedy;
  }
}

TEST(ProblemFile, TellsAllFaultsInOneGoInTheOrderOfTheFile) {
  std::string text = with(kRefill, "\"hold_until\": 200", "\"hold_until\": \"soon\"");
  text = with(with(text, "\"kcal\": 190", "\"kcal\": -1"), "\"max_packs\": 2", "\"max_pack\": 2");
  const auto read = read_problem(text);
  ASSERT_FALSE(read);
  ASSERT_EQ(read.error().problems.size(), 3U);
  EXPECT_EQ(read.error().problems[0].where, "/hold_until");
  EXPECT_EQ(read.error().problems[1].where, "/products/0/kcal");
  EXPECT_EQ(read.error().problems[2].where, "/offers/0/max_pack");
}

TEST(ProblemFile, RefusesWhatIsNoJsonObject) {
  for (const char* text : {"", "{", "[]", "7", "{\"instance\": 7}",
                           "{\"stage\": \"refill\", \"stage\": \"refill\"}"}) {
    const auto read = read_problem(text);
    ASSERT_FALSE(read) << text;
    EXPECT_EQ(read.error().kind, ErrorKind::kBadData);
    EXPECT_NE(read.error().what.find("the planning problem"), std::string::npos)
        << read.error().what;
    EXPECT_FALSE(read.error().problems.empty());
  }
}

TEST(PlainNames, KeepTheOrderOfIdsAndWhatTheyBelongTo) {
  const auto read = read_problem(kEat);
  ASSERT_TRUE(read);
  const PlanningProblem renamed = with_plain_names(*read);
  EXPECT_EQ(renamed.name, "eat-down");
  const auto& plain = std::get<plan::EatDownProblem>(renamed.problem);
  EXPECT_EQ(plain.eaters[0].id, "eater-1");
  EXPECT_EQ(plain.eaters[1].id, "eater-2");
  EXPECT_EQ(plain.eaters[1].avoid, plain.products[1].contains);  // one tag
  EXPECT_EQ(plain.eaters[1].ratings, (std::map<std::string, int>{{"product-1", -1}}));
  EXPECT_EQ(plain.eaters[1].eaten_this_week.count("product-1"), 1U);
  EXPECT_EQ(plain.lots[0].id, "lot-1");
  EXPECT_EQ(plain.lots[1].product, "product-2");
  EXPECT_EQ(plain.meals[0].eaters, (std::vector<std::string>{"eater-1", "eater-2"}));
  EXPECT_EQ(plain.meals[0].appetite.count("eater-2"), 1U);
  EXPECT_EQ(plain.meals[0].without, (std::set<std::string>{"product-2"}));
  EXPECT_EQ(plain.wished[0].meal, plain.meals[0].id);
  EXPECT_NE(plain.published[0].meal, plain.meals[0].id);
}

TEST(PlainNames, HaveAsManyDigitsAsTheLargestNumberNeeds) {
  PlanningProblem problem;
  plan::EatDownProblem eat;
  for (char letter = 'a'; letter <= 'l'; ++letter) {
    plan::Eater eater;
    eater.id = std::string(1, letter);
    eat.eaters.push_back(eater);
  }
  problem.problem = eat;
  const PlanningProblem renamed = with_plain_names(problem);
  const auto& eaters = std::get<plan::EatDownProblem>(renamed.problem).eaters;
  EXPECT_EQ(eaters[1].id, "eater-02");
  EXPECT_EQ(eaters[11].id, "eater-12");
}

TEST(PlainNames, HideFoodsThatAreNamedAsRoles) {
  const auto read = read_problem(
      with(with(kRefill, "\"roles\": [\"snack\"]", "\"roles\": [\"food:plum-jam\", \"snack\"]"),
           "\"role\": \"snack\"", "\"role\": \"food:plum-jam\""));
  ASSERT_TRUE(read);
  const PlanningProblem renamed = with_plain_names(*read);
  const auto& plain = std::get<plan::RefillProblem>(renamed.problem);
  EXPECT_EQ(plain.lines[0].role, "food:item-1");
  EXPECT_EQ(plain.products[0].roles, (std::set<std::string>{"food:item-1", "snack"}));
  EXPECT_EQ(plain.lines[0].container, plain.containers[0].id);
  EXPECT_EQ(plain.lots[0].container, "container-1");
  EXPECT_EQ(plain.containers[0].kit, "kit-1");
  EXPECT_EQ(plain.offers[0].id, "offer-1");
  EXPECT_EQ(plain.offers[0].product, "product-1");
}

}  // namespace
}  // namespace larderloop
