// Nothing is ever offered to somebody who must not have it: every output is walked over generated households and judged by a predicate
// of its own (raw_predicate.h). That the walk can fail is shown on every output: with the avoid lists taken away before
// planning, as if the program's predicate were broken, each of them is caught.
#include <gtest/gtest.h>

#include <cstdlib>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>

#include "support/household_gen.h"
#include "larderloop/app/feed.h"
#include "larderloop/app/nudge.h"
#include "larderloop/app/plan.h"
#include "larderloop/app/shop.h"
#include "larderloop/render/plan_json.h"
#include "larderloop/render/plan_text.h"
#include "support/raw_predicate.h"

namespace larderloop {
namespace {

using Findings = std::vector<std::string>;

int scale() {
  const char* text = std::getenv("LARDERLOOP_TEST_SCALE");
  return text == nullptr ? 1 : std::max(1, std::atoi(text));
}

void judge(Findings& findings, const std::string& where, const std::string& verdict) {
  if (!verdict.empty()) findings.push_back(where + ": " + verdict);
}

Asked asked_on(int year, unsigned month, unsigned day) {
  const Day today{date::local_days{date::year{year} / static_cast<int>(month) / static_cast<int>(day)}};
  return {today, midnight(today)};
}

const Asked kAsked = asked_on(2026, 11, 25);

// ---- one walk an output, each from what the output says and nothing else ----

Findings walk_plan_meals(const Household& truth, const nlohmann::json& plan) {
  Findings findings;
  for (const auto& meal : plan["data"]["eat_down"]["meals"]) {
    for (const auto& helping : meal["helpings"]) {
      judge(findings, "plan " + meal["day"].get<std::string>(),
            raw::forbidden_lot(truth, PersonKey(helping["person"]), LotId(helping["lot"].get<std::int64_t>()), kAsked.today));
    }
  }
  return findings;
}

std::vector<PersonKey> eaters(const Household& truth, std::int64_t line_id) {
  std::vector<PersonKey> people;
  for (const MenuLine& line : truth.menu) {
    if (line.id.value() != line_id) continue;
    people = line.people;
    if (!line.everyone) continue;
    for (const Person& person : truth.people) {
      if (person.species == "human") people.push_back(person.key);
    }
  }
  return people;
}

bool is_eaten(const Household& truth, const std::string& food) {
  for (const Food& each : truth.foods) {
    if (each.key.str() == food) return each.kind != FoodKind::kThing && each.kind != FoodKind::kWater;
  }
  return false;
}

Findings walk_refill(const Household& truth, const nlohmann::json& plan) {
  Findings findings;
  for (const auto& kit : plan["data"]["kits"]) {
    for (const auto& fill : kit["fills"]) {
      if (!is_eaten(truth, fill["food"])) continue;
      for (const PersonKey& person : eaters(truth, fill["menu_line"])) {
        judge(findings, "refill of " + kit["kit"].get<std::string>(),
              fill["lot"].is_null() ? raw::forbidden_pack(truth, person, FoodKey(fill["food"]), kAsked.today)
                                    : raw::forbidden_lot(truth, person, LotId(fill["lot"].get<std::int64_t>()), kAsked.today));
      }
    }
  }
  return findings;
}

Findings walk_shop(const Household& truth, const nlohmann::json& shop) {
  Findings findings;
  for (const auto& group : shop["data"]["shops"]) {
    for (const auto& line : group["lines"]) {
      if (!is_eaten(truth, line["food"])) continue;
      for (const auto& person : line["for"]) {
        judge(findings, "shop " + line["food"].get<std::string>(),
              raw::forbidden_pack(truth, PersonKey(person), FoodKey(line["food"]), kAsked.today));
      }
    }
  }
  return findings;
}

// "Food (Ada, Ben and Cy)" wherever it stands in a text: nobody named there may be barred from every lot of the food.
Findings walk_text(const Household& truth, const std::string& text, const std::string& output) {
  Findings findings;
  for (const Food& food : truth.foods) {
    const std::string opening = food.name + " (";
    for (std::size_t at = text.find(opening); at != std::string::npos; at = text.find(opening, at + 1)) {
      if (at > 0 && std::isalnum(static_cast<unsigned char>(text[at - 1])) != 0) continue;  // inside a longer name
      const std::size_t begin = at + opening.size();
      const std::string names = text.substr(begin, text.find(')', begin) - begin);
      for (const Person& person : truth.people) {
        const std::string first = person.name.substr(0, person.name.find(' '));
        const std::size_t found = names.find(first);
        if (found == std::string::npos) continue;
        const std::size_t after = found + first.size();
        const bool whole = (found == 0 || names[found - 1] == ' ') &&
                           (after == names.size() || names[after] == ',' || names[after] == ' ');
        if (!whole) continue;
        std::string verdict = "no lot of it";
        for (const Lot& lot : truth.lots) {
          if (lot.food == food.key && !verdict.empty()) verdict = raw::forbidden_lot(truth, person.key, lot.id, kAsked.today);
        }
        judge(findings, output + ": " + food.name + " for " + person.name, verdict);
      }
    }
  }
  return findings;
}

// ---- the outputs of a household, planned by `planner` (the same one, or one that forgot who must not have what) ----

struct Outputs {
  nlohmann::json plan;
  nlohmann::json shop;
  std::string feed;
  std::string nudge;
};

Outputs outputs_of(const Household& planner, Asked asked) {
  Outputs out;
  auto plan = make_plan(planner, asked);
  EXPECT_TRUE(plan) << plan.error().what;
  if (!plan) return out;
  out.plan = nlohmann::json::parse(render_plan_json(planner, plan->report));
  out.shop = nlohmann::json::parse(render_shop_json(planner, shop_list(planner, plan->report, true)));
  auto feed = make_feed(planner, plan->report, asked);
  EXPECT_TRUE(feed) << feed.error().what;
  if (feed) {
    for (const FeedEvent& event : feed->report.events) out.feed += event.summary + "\n" + event.description + "\n";
  }
  out.nudge = render_nudge_text(planner, make_nudge(planner, plan->report, asked));
  return out;
}

std::map<std::string, Findings> walk_all(const Household& truth, const Outputs& out) {
  return {{"plan", walk_plan_meals(truth, out.plan)},
          {"refill", walk_refill(truth, out.plan)},
          {"shop", walk_shop(truth, out.shop)},
          {"feed", walk_text(truth, out.feed, "feed")},
          {"nudge", walk_text(truth, out.nudge, "nudge")}};
}

Household without_hindrance(Household household) {
  for (Person& person : household.people) {
    person.avoid.clear();
    person.diets.clear();
    person.ratings.clear();
  }
  for (Food& food : household.foods) food.choking_risk = food.honey = false;
  return household;
}

constexpr int kHouseholds = 60;

TEST(SafetyWalk, NothingIsOfferedToWhoMustNotHaveIt) {
  std::size_t offers = 0;
  for (int seed = 1; seed <= kHouseholds * scale(); ++seed) {
    const Household household = generate_household(static_cast<std::uint64_t>(seed), 20 + seed % 60);
    const Outputs out = outputs_of(household, kAsked);
    for (const auto& [output, findings] : walk_all(household, out)) {
      EXPECT_TRUE(findings.empty()) << "seed " << seed << ", " << output << ": " << findings.front();
    }
    for (const auto& meal : out.plan["data"]["eat_down"]["meals"]) offers += meal["helpings"].size();
    for (const auto& kit : out.plan["data"]["kits"]) offers += kit["fills"].size();
  }
  EXPECT_GT(offers, 500U) << "the generated households plan next to nothing: the walk proves nothing";
}

// Everybody wants everything, at every meal of three days.
Household greedy(Household household) {
  std::int64_t id = household.wishes.empty() ? 0 : household.wishes.back().id.value();
  for (const Food& food : household.foods) {
    if (food.kind == FoodKind::kThing || food.kind == FoodKind::kWater) continue;
    for (const Person& person : household.people) {
      const Day day = kAsked.today + Days(static_cast<int>(id % 3));
      household.wishes.push_back({WishId(++id), WishKind::kWant, food.key, day, day, kAllMeals[id % 4], person.key});
    }
  }
  return household;
}

bool says_not(const Wish& wish, const std::string& day, const nlohmann::json& meal, const nlohmann::json& helping) {
  return wish.kind == WishKind::kNot && (wish.food.empty() || wish.food.str() == helping["food"]) &&
         (!wish.from || (iso_day(*wish.from) <= day && day <= iso_day(*wish.through))) &&
         (!wish.meal || meal_name(*wish.meal) == meal["meal"].get<std::string>()) &&
         (!wish.person || wish.person->str() == helping["person"]);
}

TEST(SafetyWalk, WishesAreNeverStrongerThanThePredicate) {
  std::size_t wanted = 0, unsafe_wants = 0, met = 0, nots = 0;
  for (int seed = 1; seed <= kHouseholds / 2 * scale(); ++seed) {
    const Household household = greedy(generate_household(static_cast<std::uint64_t>(seed), 20 + seed % 60));
    const Outputs out = outputs_of(household, kAsked);
    for (const auto& [output, findings] : walk_all(household, out)) {
      EXPECT_TRUE(findings.empty()) << "seed " << seed << ", " << output << ": " << findings.front();
    }
    std::map<std::string, int> served;  // "day meal person food"
    for (const auto& meal : out.plan["data"]["eat_down"]["meals"]) {
      const std::string day = meal["day"];
      for (const auto& helping : meal["helpings"]) {
        served[day + " " + meal["meal"].get<std::string>() + " " + helping["person"].get<std::string>() + " " + helping["food"].get<std::string>()] += 1;
        for (const Wish& wish : household.wishes) {
          EXPECT_FALSE(says_not(wish, day, meal, helping)) << "seed " << seed << ", wish " << wish.id.value();
        }
      }
    }
    for (const Wish& wish : household.wishes) nots += wish.kind == WishKind::kNot ? 1U : 0U;
    // Every want from today on is told, and what is told is what is planned.
    std::set<std::int64_t> told;
    for (const auto& wish : out.plan["data"]["eat_down"]["wishes"]) {
      told.insert(wish["wish"].get<std::int64_t>());
      EXPECT_EQ(wish["met"].get<bool>(), wish["why_not"].is_null());
      if (!wish["met"].get<bool>()) continue;
      met += 1;
      EXPECT_GT(served[wish["day"].get<std::string>() + " " + wish["meal"].get<std::string>() + " " + wish["person"].get<std::string>() + " " +
                       wish["food"].get<std::string>()],
                0)
          << "seed " << seed << ", wish " << wish["wish"];
    }
    for (const Wish& wish : household.wishes) {
      if (wish.kind != WishKind::kWant || *wish.from < kAsked.today) continue;
      wanted += 1;
      EXPECT_EQ(told.count(wish.id.value()), 1U) << "seed " << seed << ": wish " << wish.id.value() << " is dropped in silence";
      for (const Lot& lot : household.lots) {
        if (wish.person && lot.food == wish.food && !raw::forbidden_lot(household, *wish.person, lot.id, kAsked.today).empty()) {
          unsafe_wants += 1;
          break;
        }
      }
    }
  }
  EXPECT_GT(wanted, 1000U);
  EXPECT_GT(unsafe_wants, 100U) << "hardly anybody wants what they must not have: the test proves nothing";
  EXPECT_GT(met, 10U) << "no wish ever comes true: the test proves nothing";
  EXPECT_GT(nots, 10U);
}

TEST(SafetyWalk, ABrokenPredicateIsCaughtOnEveryOutput) {
  std::map<std::string, std::size_t> caught;
  for (int seed = 1; seed <= kHouseholds; ++seed) {
    const Household truth = generate_household(static_cast<std::uint64_t>(seed), 20 + seed % 60);
    const Outputs out = outputs_of(without_hindrance(truth), kAsked);
    for (const auto& [output, findings] : walk_all(truth, out)) caught[output] += findings.size();
  }
  for (const char* output : {"plan", "refill", "shop", "feed", "nudge"}) {
    EXPECT_GT(caught[output], 0U) << "a fault in " << output << " would go unnoticed";
  }
}

}  // namespace
}  // namespace larderloop
