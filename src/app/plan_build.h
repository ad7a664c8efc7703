// plan_build.h - from the book to the planning problems. The only place where a household turns into products, tags and lines.
// Rule:     a product is a food with one effective statement; why_not() alone decides which eaters may have it: whoever must not is
//           given the tag that the product carries for them ("not-for:mira"), so that a planner cannot decide otherwise.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "app/book_view.h"
#include "app/plan_kept.h"
#include "larderloop/app/plan.h"
#include "larderloop/plan/problem.h"

namespace larderloop {

// Gives each (food, statement) an id and its tags.
class Products {
 public:
  Products(const Household& household, Day today) : household_(&household), today_(today) {}
  // The id of a food under a statement; null = label not read. Stable in the order of asking within one build.
  const std::string& id_of(const Food& food, const Statement* label);
  // Tags for the given eaters, worked out once a product.
  [[nodiscard]] std::set<std::string> tags_of(const std::string& id, const std::vector<const Person*>& eaters) const;
  [[nodiscard]] std::set<std::string> avoid_of(const Person& person) const;
  struct Product {
    const Food* food = nullptr;
    const Statement* label = nullptr;
  };
  [[nodiscard]] const Product& product(const std::string& id) const { return products_.at(id); }
  [[nodiscard]] const std::map<std::string, Product>& all() const { return products_; }
  // Each (statement, id) of a food; empty for a food that has no product.
  [[nodiscard]] const std::vector<std::pair<const Statement*, std::string>>& of(const FoodKey& food) const;

 private:
  const Household* household_;
  Day today_;
  std::map<std::string, Product> products_;
  std::map<const Food*, std::vector<std::pair<const Statement*, std::string>>> by_food_;
};

// A number with leading zeros, so that ids sort as numbers do.
[[nodiscard]] std::string padded(std::int64_t number);
[[nodiscard]] std::int64_t day_number(Day day);
[[nodiscard]] Day number_day(std::int64_t number);
[[nodiscard]] plan::Eater make_eater(const Products& products, const Person& person);

// Days that a pack bought today can be expected to be good through: today + the median life at receipt of that food's lots, else + the short
// end of the storage table, else absent: then the hold-until date is asked of the package.
[[nodiscard]] std::optional<Day> expected_day(const BookView& view, const Food& food, Day today);

// Units of pantry positions that refills of other kits have been promised.
using Reserved = std::map<StockKey, std::int64_t>;

struct RefillBuild {
  plan::RefillProblem problem;
  std::map<std::string, const Position*> lots;       // by problem lot id
  std::map<std::string, const MenuLine*> lines;      // by problem line id
  struct OfferOf {
    const Food* food = nullptr;
    const Pack* pack = nullptr;  // null: no pack known
  };
  std::map<std::string, OfferOf> offers;
};
// Water lines are left out (plan_water.cpp).
[[nodiscard]] RefillBuild build_refill(const BookView& view, const KitSchedule& schedule, const Reserved& reserved,
                                       Day today);

[[nodiscard]] WaterState plan_water(const BookView& view, const KitSchedule& schedule, const Reserved& reserved, Day today,
                                    KitPlan& plan);

struct EatBuild {
  plan::EatDownProblem problem;
  std::map<std::string, const Position*> lots;
  Day until{};
  std::vector<WishTold> wishes;  // wants by day and meal; those without a reason are in the problem
  std::set<StockKey> apart;      // keeps beyond the horizon, but units of it are wished
};
[[nodiscard]] EatBuild build_eat_down(const BookView& view, const std::vector<KitPlan>& kits, const Reserved& reserved,
                                      const std::vector<ShownMeal>& shown, Day today);
[[nodiscard]] std::string meal_id(Day day, Meal meal);
// The household's meal behind one of the problem: several may stand for one, as who has wishes of their own then sits at a meal of
// their own. Null or the meal with this id, of the problem that build_eat_down() built.
[[nodiscard]] std::pair<Day, Meal> sits_at(const plan::EatMeal& meal);
[[nodiscard]] const plan::EatMeal* find_meal(const plan::EatDownProblem& problem, std::string_view id);

// Who is at the table at a meal of the household on a day, exceptions applied; key order. Humans only.
[[nodiscard]] std::vector<PersonKey> at_table(const Household& household, Day day, Meal meal);
// Does no exception change who is at the table on this day? Then it is as on every such day of the week.
[[nodiscard]] bool is_usual_day(const Household& household, Day day);
// Foods that some kit menu can use, or that are marked so: what eats itself down.
[[nodiscard]] bool rotates(const Household& household, const Food& food);

// The solved plan of meals and the kits' plans beside plain date order. `kits`: in the order in which they are served.
[[nodiscard]] Comparison compare_with_plain(const BookView& view, const EatBuild& build, const plan::EatDownPlan& solved,
                                            const std::vector<KitPlan>& kits, Day today);

[[nodiscard]] Result<EatDown> plan_eating(const BookView& view, const std::vector<KitPlan>& kits, const Reserved& reserved,
                                          const std::vector<ShownMeal>& shown, Day today, bool with_plain, KeptPlans& kept);
[[nodiscard]] Result<KitPlan> plan_kit_in(const BookView& view, const KitSchedule& schedule, const Reserved& reserved,
                                          Day today, KeptPlans& kept);

}  // namespace larderloop
