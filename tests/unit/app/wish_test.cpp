// Wishes: made and taken back, what the planning problem gets of them, and what is said of those
// that cannot be. Today is Saturday 3 April 2027; see kit_household.h.
#include "larderloop/app/wish.h"

#include "kit_household.h"
#include "larderloop/app/plan.h"
#include "larderloop/app/planning_problem.h"

#include <gtest/gtest.h>

#include <functional>

namespace larderloop {
namespace {

Wish want(const char* food, const char* on, Meal meal, const char* person = "") {
  Wish wish{WishId(), WishKind::kWant, FoodKey(food), day_at(on), day_at(on), meal, {}};
  if (*person != '\0') wish.person = PersonKey(person);
  return wish;
}

Wish no(const char* food, const char* person = "") {
  Wish wish{WishId(), WishKind::kNot, FoodKey(food), {}, {}, {}, {}};
  if (*person != '\0') wish.person = PersonKey(person);
  return wish;
}

Wish no(const char* food, const char* from, const char* through, std::optional<Meal> meal,
        const char* person = "") {
  Wish wish = no(food, person);
  wish.from = day_at(from);
  wish.through = day_at(through);
  wish.meal = meal;
  return wish;
}

Household with(Household household, std::vector<Wish> wishes, Asked asked = kReviewDay) {
  for (Wish& wish : wishes) {
    auto added = add_wish(household, wish, asked);
    EXPECT_TRUE(added) << added.error().what;
    if (added) household = after(std::move(household), added->changes);
  }
  return household;
}

std::vector<WishTold> told(const Household& household, Asked asked = kReviewDay) {
  const auto plan = make_plan(household, asked);
  EXPECT_TRUE(plan) << plan.error().what;
  return plan ? plan->report.eat_down.wishes : std::vector<WishTold>{};
}

plan::EatDownProblem problem_of(const Household& household, Asked asked = kReviewDay) {
  auto problem = eat_down_problem(household, asked);
  EXPECT_TRUE(problem) << problem.error().what;
  return problem ? *problem : plan::EatDownProblem{};
}

const plan::EatMeal* meal_of(const plan::EatDownProblem& problem, const std::string& id) {
  for (const plan::EatMeal& meal : problem.meals) {
    if (meal.id == id) return &meal;
  }
  return nullptr;
}

const std::string kSunday = "2027-04-04 2 dinner";

TEST(Wishes, AreAddedUnderANumberAndTakenBack) {
  Household household = with(
      kit_household(), {want("stew", "2027-04-04", Meal::kDinner), no("stew", "ida"), no("jam")});
  ASSERT_EQ(household.wishes.size(), 3U);
  EXPECT_EQ(household.wishes[1].id, WishId(2));
  EXPECT_EQ(*named_wish(household, "#2"), WishId(2));
  for (const char* unknown : {"4", "two", "", "2x"}) EXPECT_FALSE(named_wish(household, unknown));
  const auto removed = remove_wishes(household, {WishId(3), WishId(1)});
  ASSERT_TRUE(removed);
  EXPECT_EQ(removed->report.front().food, FoodKey("jam"));
  household = after(household, removed->changes);
  ASSERT_EQ(household.wishes.size(), 1U);
  EXPECT_EQ(household.wishes.front().id, WishId(2));
  EXPECT_FALSE(remove_wishes(household, {WishId(2), WishId(2)}));
  EXPECT_FALSE(remove_wishes(household, {WishId(1)}));
}

TEST(Wishes, ThatMakeNoSenseAreRefused) {
  const Household household = with(kit_household(), {no("stew", "ida")});
  const std::pair<const char*, std::function<void(Wish&)>> cases[] = {
      {"for what", [](Wish& w) { w.food = FoodKey(); }},
      {"on one day", [](Wish& w) { w.from.reset(), w.through.reset(); }},
      {"on one day", [](Wish& w) { *w.through += Days(1); }},
      {"at a meal", [](Wish& w) { w.meal.reset(); }},
      {"has passed", [](Wish& w) { w.from = w.through = day_at("2027-04-02"); }},
      {"before they begin", [](Wish& w) { *w.from += Days(1); }},
      {"or neither", [](Wish& w) { w.through.reset(); }},
      {"no food 'soup'", [](Wish& w) { w.food = FoodKey("soup"); }},
      {"no person 'zoe'", [](Wish& w) { w.person = PersonKey("zoe"); }},
      {"what is not wanted, or when", [](Wish& w) { w = no("", "ida"); }},
      {"there already: 1", [](Wish& w) { w = no("stew", "ida"); }},
  };
  for (const auto& [words, change] : cases) {
    Wish wish = want("stew", "2027-04-04", Meal::kDinner);
    change(wish);
    const auto added = add_wish(household, wish, kReviewDay);
    ASSERT_FALSE(added) << words;
    EXPECT_NE(added.error().what.find(words), std::string::npos) << added.error().what;
    EXPECT_FALSE(added.error().next_step.empty()) << words;
  }
  Household things = household;
  for (Food& food : things.foods) {
    if (food.key == FoodKey("jam")) food.kind = FoodKind::kThing;
  }
  EXPECT_FALSE(add_wish(things, no("jam"), kReviewDay));
}

TEST(Wants, GoIntoTheProblemForEveryoneWhoMayAndAreServed) {
  const plan::EatDownProblem problem =
      problem_of(with(kit_household(), {want("stew", "2027-04-04", Meal::kDinner)}));
  ASSERT_EQ(problem.wished.size(), 2U);
  EXPECT_EQ(problem.wished[0], (plan::MealServing{"stew#1", kSunday, "bo", 2}));
  EXPECT_EQ(problem.wished[1], (plan::MealServing{"stew#1", kSunday, "ida", 2}));
  const auto solved = plan::solve(problem, plan::without_limits());
  ASSERT_FALSE(solved.levels.empty());
  EXPECT_EQ(solved.levels.front().name, "wishes");
  EXPECT_EQ(solved.levels.front().value, 0);
}

TEST(Wants, TakeUnitsOfWhatKeepsBeyondTheHorizon) {
  Household household = kit_household();
  household.lots[2].state = LotState::kDoubtful;  // the pouches that leave the kit
  const plan::EatDownProblem before = problem_of(household);
  const plan::EatDownProblem problem =
      problem_of(with(household, {want("stew", "2027-04-04", Meal::kDinner)}));
  const std::int64_t end = problem.today + problem.horizon_days;
  ASSERT_EQ(problem.lots.size(), before.lots.size() + 1);
  EXPECT_EQ(problem.lots[1].id, problem.lots[0].id + " wished");
  EXPECT_EQ(problem.lots[1].units, 2);
  EXPECT_EQ(problem.lots[1].last_good_day, end - 1);
  EXPECT_EQ(problem.lots[0].units + 2, before.lots[0].units);
  EXPECT_GE(problem.lots[0].last_good_day, end) << "the rest is left alone";
  // Never said to be given away or left over: it is good for long.
  const auto plan =
      make_plan(with(household, {want("stew", "2027-04-04", Meal::kDinner)}), kReviewDay);
  ASSERT_TRUE(plan);
  EXPECT_TRUE(plan->report.eat_down.give_away.empty());
  EXPECT_TRUE(plan->report.eat_down.left_over.empty());
}

struct CannotBe {
  const char* why;
  Wish wish;
  std::function<void(Household&)> change;
  const char* today = "2027-04-03";
};

void only_lot_three(Household& h) {
  h.lots[0].state = h.lots[3].state = LotState::kDoubtful;
}

TEST(Wants, ThatCannotBeAreToldWithTheReason) {
  const auto nothing = [](Household&) {};
  const Wish sunday = want("stew", "2027-04-04", Meal::kDinner, "ida");
  const CannotBe cases[] = {
      {"the label says it contains sesame", sunday,
       [](Household& h) {
         for (Lot& lot : h.lots) if (lot.label) lot.label->declared["sesame"] = Declared::kContains;
       }},
      {"nobody has read the label of this lot", sunday,
       [](Household& h) {
         for (Lot& lot : h.lots) lot.label.reset();
       }},
      {"it was refused before", sunday,
       [](Household& h) { h.people[1].ratings[FoodKey("stew")] = -2; }},
      {"wish 1 says not", sunday, [](Household& h) { h = with(h, {no("stew", "ida")}); }},
      {"wish 1 says not", sunday,
       [](Household& h) { h = with(h, {no("", "2027-04-04", "2027-04-04", Meal::kDinner)}); }},
      {"nobody is at the table then", want("stew", "2027-04-04", Meal::kBreakfast), nothing},
      {"Ida is not at the table then", want("stew", "2027-04-04", Meal::kBreakfast, "ida"),
       nothing},
      {"Ida is not at the table then", sunday,
       [](Household& h) {
         h.exceptions = {
             {day_at("2027-04-04"), day_at("2027-04-04"), {}, false, {PersonKey("ida")}, {}, ""}};
       }},
      {"Ida has no appetite for kit food", sunday,
       [](Household& h) { h.people[1].appetite = HalfServings(); }},
      {"the plan reaches only through Fri 15 Oct 2027",
       want("stew", "2027-12-01", Meal::kDinner, "ida"), nothing},
      {"it is not a food for snack", want("stew", "2027-04-04", Meal::kSnack, "ida"),
       [](Household& h) {
         h.table.push_back({Weekday::kSunday, Meal::kSnack, {PersonKey("ida")}});
         sort_lists(h);
       }},
      {"there is none on hand", want("kibble", "2027-04-04", Meal::kDinner, "ida"), nothing},
      {"it is not a food that the kits rotate (larderloop food change jam --rotate yes)",
       want("jam", "2027-04-04", Meal::kDinner, "bo"), nothing},
      {"what is there is set aside", sunday,
       [](Household& h) {
         for (Lot& lot : h.lots) lot.state = LotState::kRecalled;
       }},
      {"what is there is past its date", sunday,
       [](Household& h) {
         for (Lot& lot : h.lots)
           lot.mark = {"", MarkKind::kBestBefore, Precision::kDay, day_at("2027-03-01")};
       }},
      {"what is there is packed in a kit and stays there", sunday,
       [](Household& h) { h.lots[0].state = h.lots[2].state = LotState::kDoubtful; }},
      {"it comes out of the kit on Sat 3 Apr 2027",
       want("stew", "2027-04-01", Meal::kDinner, "ida"), only_lot_three, "2027-03-31"},
      {"it is good only through Wed 30 Jun 2027", want("stew", "2027-07-01", Meal::kDinner, "ida"),
       only_lot_three},
      {"Ida has half a serving of kit food in a week at most", sunday,
       [](Household& h) { h.people[1].tolerance = HalfServings(1); }},
      {"Ida has half a serving of one food in a week at most", sunday,
       [](Household& h) { h.settings.monotony = HalfServings(1); }},
      {"other wishes fill that meal of Ida", sunday,
       [](Household& h) { h = with(h, {want("stew", "2027-04-04", Meal::kDinner)}); }},
      {"there is not enough of it for all wishes", sunday,
       [](Household& h) {
         only_lot_three(h);
         h = with(h, {want("stew", "2027-04-03", Meal::kDinner)});
       }},
  };
  for (const CannotBe& each : cases) {
    Household household = kit_household();
    each.change(household);
    const Asked asked = asked_on(each.today);
    household = with(household, {each.wish}, asked);
    const std::vector<WishTold> all = told(household, asked);
    ASSERT_FALSE(all.empty()) << each.why;
    const WishTold* mine = nullptr;
    for (const WishTold& one : all) {
      if (one.wish == household.wishes.back().id) mine = &one;
    }
    ASSERT_NE(mine, nullptr) << each.why;
    EXPECT_EQ(mine->why, each.why);
    for (const plan::MealServing& wished : problem_of(household, asked).wished)
      EXPECT_TRUE(wished.eater != "ida" || household.wishes.size() > 1) << each.why;
  }
}

TEST(NotWanted, ByEveryoneIsLeftOutOfTheMeal) {
  const plan::EatDownProblem problem =
      problem_of(with(kit_household(), {no("stew", "2027-04-04", "2027-04-05", Meal::kDinner)}));
  EXPECT_EQ(meal_of(problem, kSunday)->without, std::set<std::string>{"stew#1"});
  EXPECT_TRUE(meal_of(problem, "2027-04-04 1 lunch")->without.empty());
  EXPECT_TRUE(meal_of(problem, "2027-04-06 2 dinner")->without.empty());
}

TEST(NotWanted, AlwaysByOnePersonIsLikeATag) {
  const Household household = with(kit_household(), {no("stew", "bo")});
  const plan::EatDownProblem problem = problem_of(household);
  EXPECT_EQ(problem.products.front().contains.count("not-wished:bo"), 1U);
  EXPECT_EQ(problem.eaters[0].avoid.count("not-wished:bo"), 1U);
  EXPECT_EQ(problem.eaters[1].avoid.count("not-wished:bo"), 0U);
  EXPECT_EQ(meal_of(problem, kSunday)->eaters.size(), 2U);
  const auto plan = make_plan(household, kReviewDay);
  ASSERT_TRUE(plan);
  for (const PlannedMeal& meal : plan->report.eat_down.meals) {
    for (const Helping& helping : meal.helpings) EXPECT_EQ(helping.person, PersonKey("ida"));
  }
}

TEST(NotWanted, ByOnePersonForSomeDaysLeavesItToTheOthers) {
  const plan::EatDownProblem problem =
      problem_of(with(kit_household(), {no("stew", "2027-04-04", "2027-04-04", {}, "bo")}));
  EXPECT_EQ(meal_of(problem, kSunday)->eaters, std::vector<std::string>{"ida"});
  const plan::EatMeal* own = meal_of(problem, kSunday + " bo");
  ASSERT_NE(own, nullptr);
  EXPECT_EQ(own->eaters, std::vector<std::string>{"bo"});
  EXPECT_EQ(own->without, std::set<std::string>{"stew#1"});
  EXPECT_EQ(own->day, meal_of(problem, kSunday)->day);
  EXPECT_EQ(meal_of(problem, "2027-04-05 2 dinner bo"), nullptr);
  // A range over all that is planned is the same as always.
  const plan::EatDownProblem all =
      problem_of(with(kit_household(), {no("stew", "2027-04-01", "2028-12-31", {}, "bo")}));
  EXPECT_EQ(meal_of(all, kSunday)->eaters.size(), 2U);
  EXPECT_EQ(all.eaters[0].avoid.count("not-wished:bo"), 1U);
}

TEST(NotWanted, NothingAtAllLeavesTheMealOut) {
  const Household household = kit_household();
  const plan::EatDownProblem all =
      problem_of(with(household, {no("", "2027-04-04", "2027-04-04", Meal::kDinner)}));
  EXPECT_EQ(meal_of(all, kSunday), nullptr);
  EXPECT_NE(meal_of(all, "2027-04-04 1 lunch"), nullptr);
  const plan::EatDownProblem one =
      problem_of(with(household, {no("", "2027-04-04", "2027-04-04", Meal::kDinner, "bo")}));
  EXPECT_EQ(meal_of(one, kSunday)->eaters, std::vector<std::string>{"ida"});
}

TEST(NotWanted, AShownMealThatGoesIsSaidWithTheWish) {
  Household household = kit_household();
  auto first = make_plan(household, kReviewDay);
  ASSERT_TRUE(first);
  household = after(household, first->changes);
  const ShownMeal shown = household.shown_meals.front();
  const std::string day = iso_day(shown.day);
  household = with(household, {no("stew", day.c_str(), day.c_str(), shown.meal)});
  const auto plan = make_plan(household, kReviewDay);
  ASSERT_FALSE(plan->report.eat_down.changed.empty());
  EXPECT_NE(plan->report.eat_down.changed.front().find("asked for no Lentil stew then"),
            std::string::npos)
      << plan->report.eat_down.changed.front();
}

}  // namespace
}  // namespace larderloop
