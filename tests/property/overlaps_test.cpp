// What must hold of allergens and of the predicate whoever asks: seeded random people, labels and
// households.
#include "larderloop/core/eligible.h"
#include "larderloop/core/lot.h"
#include "support/household_gen.h"
#include "support/problem_maker.h"
#include "support/raw_predicate.h"

#include <gtest/gtest.h>

namespace larderloop {
namespace {

using test::Dice;
using test::test_scale;

std::vector<std::string> all_keys() {
  std::vector<std::string> keys = known_allergens();
  for (const char* key : {"fish:cod", "fish:hake", "crustacean:crab", "mollusc:squid", "kiwi",
                          "kiwi:gold", "star_fruit"})
    keys.emplace_back(key);
  return keys;
}

const std::string& some_key(Dice& dice, const std::vector<std::string>& keys) {
  return keys[static_cast<std::size_t>(
      dice.between(0, static_cast<std::int64_t>(keys.size()) - 1))];
}

Declared some_way(Dice& dice) {
  return dice.one_in(2) ? Declared::kContains : Declared::kMayContain;
}

Statement some_label(Dice& dice, const std::vector<std::string>& keys) {
  Statement label;
  label.read_by = "Ada";
  label.read_on = *resolve_day(2026, 11, 1);
  for (std::int64_t count = dice.between(0, 4); count > 0; --count)
    label.declared[some_key(dice, keys)] = some_way(dice);
  for (const Diet diet : kAllDiets) {
    if (dice.one_in(2)) label.suits.insert(diet);
  }
  return label;
}

Person some_person(Dice& dice, const std::vector<std::string>& keys) {
  Person person;
  person.key = PersonKey("ada");
  for (std::int64_t count = dice.between(0, 3); count > 0; --count)
    person.avoid.push_back({some_key(dice, keys), dice.one_in(3)});
  if (dice.one_in(3)) person.diets.insert(kAllDiets[dice.between(0, 5)]);
  if (dice.one_in(6)) person.ratings[FoodKey("stew")] = static_cast<int>(dice.between(-2, 2));
  return person;
}

Food stew() {
  Food food;
  food.key = FoodKey("stew");
  return food;
}

Household with_own_keys(Dice& dice) {
  Household home;
  home.own_allergens = {
      {"kiwi", *resolve_day(2026, static_cast<unsigned>(dice.between(1, 12)), 15)}};
  return home;
}

TEST(OverlapsProperty, IsReflexiveAndSymmetric) {
  const auto keys = all_keys();
  std::size_t pairs = 0;
  for (const std::string& a : keys) {
    EXPECT_TRUE(overlaps(a, a)) << a;
    for (const std::string& b : keys) {
      EXPECT_EQ(overlaps(a, b), overlaps(b, a)) << a << " " << b;
      if (a != b && overlaps(a, b)) ++pairs;
    }
  }
  EXPECT_GT(pairs, 20U);
}

const Day kOn = *parse_iso_day("2027-04-03");

TEST(WhyNotProperty, DeclaringMoreNeverTurnsANoIntoAYes) {
  const auto keys = all_keys();
  std::size_t refused = 0;
  for (std::uint64_t seed = 1; seed <= 20'000 * test_scale(); ++seed) {
    Dice dice(seed);
    const Household home = with_own_keys(dice);
    const Person person = some_person(dice, keys);
    const Statement label = some_label(dice, keys);
    if (!why_not(home, person, stew(), &label, kOn)) continue;
    ++refused;
    Statement more = label;
    const std::string& key = some_key(dice, keys);
    const auto there = more.declared.find(key);
    if (there == more.declared.end())
      more.declared[key] = some_way(dice);
    else
      there->second = Declared::kContains;
    ASSERT_TRUE(why_not(home, person, stew(), &more, kOn))
        << "seed " << seed << ": yes after declaring " << key;
  }
  EXPECT_GT(refused, 2'000U);
}

TEST(WhyNotProperty, AvoidingMoreOrAcceptingLessNeverTurnsANoIntoAYes) {
  const auto keys = all_keys();
  for (std::uint64_t seed = 1; seed <= 20'000 * test_scale(); ++seed) {
    Dice dice(seed);
    const Household home = with_own_keys(dice);
    const Person person = some_person(dice, keys);
    const Statement label = some_label(dice, keys);
    if (!why_not(home, person, stew(), &label, kOn)) continue;
    Person stricter = person;
    for (Avoid& avoid : stricter.avoid) avoid.accept_may_contain = false;
    stricter.avoid.push_back({some_key(dice, keys), true});
    ASSERT_TRUE(why_not(home, stricter, stew(), &label, kOn)) << "seed " << seed;
  }
}

TEST(WhyNotProperty, AnUnreadLabelNeverPassesForAnybodyWithAvoidOrDiet) {
  const auto keys = all_keys();
  std::size_t with_needs = 0;
  for (std::uint64_t seed = 1; seed <= 20'000 * test_scale(); ++seed) {
    Dice dice(seed);
    const Household home = with_own_keys(dice);
    const Person person = some_person(dice, keys);
    const bool needs = !person.avoid.empty() || !person.diets.empty();
    ASSERT_EQ(needs_label(person), needs);
    if (!needs) continue;
    ++with_needs;
    const auto reason = why_not(home, person, stew(), nullptr, kOn);
    ASSERT_TRUE(reason) << "seed " << seed;
    ASSERT_EQ(reason->refusal, Refusal::kLabelUnknown) << "seed " << seed;
  }
  EXPECT_GT(with_needs, 10'000U);
}

// A second predicate, written apart from core, says the same of every person and every lot of
// generated households.
TEST(WhyNotProperty, AgreesWithASecondOpinionOnEveryLot) {
  std::size_t yes = 0;
  std::size_t no = 0;
  for (std::uint64_t seed = 1; seed <= 40 * test_scale(); ++seed) {
    const Household home = generate_household(seed, 50);
    for (const LotFacts& facts : all_lot_facts(home)) {
      if (facts.state != LotState::kOk)
        continue;  // not the predicate's business, but the second opinion's
      for (const Person& person : home.people) {
        const bool mine = !why_not(home, person, *find_food(home, facts.food),
                                   facts.label ? &*facts.label : nullptr, kOn);
        const std::string other = raw::forbidden_lot(home, person.key, facts.id, kOn);
        ASSERT_EQ(mine, other.empty()) << "seed " << seed << ", lot " << facts.id.value() << " for "
                                       << person.name << ": " << other;
        mine ? ++yes : ++no;
      }
    }
  }
  EXPECT_GT(yes, 500U);
  EXPECT_GT(no, 500U);
}

}  // namespace
}  // namespace larderloop
