// The eat-down problem: what was pulled or ages in the pantry, and the meals of the coming half-year.
#include <algorithm>
#include <tuple>

#include "app/plan_build.h"
#include "app/plan_wishes.h"

namespace larderloop {
namespace {

constexpr int kHorizonDays = 182;

std::string lot_id(const StockKey& at) {
  std::string id = padded(at.lot.value()) + "@" + at.place.str();
  if (at.opened_on) id += "@" + iso_day(*at.opened_on);
  return id;
}

plan::Kind kind_of(Meal meal) {
  switch (meal) {
    case Meal::kBreakfast:
      return plan::Kind::kBreakfast;
    case Meal::kLunch:
      return plan::Kind::kLunch;
    case Meal::kDinner:
      return plan::Kind::kDinner;
    case Meal::kSnack:
      return plan::Kind::kSnack;
  }
  return plan::Kind::kDinner;
}

class Builder {
 public:
  Builder(const BookView& view, const std::vector<KitPlan>& kits, const Reserved& reserved,
          const std::vector<ShownMeal>& shown, Day today)
      : view_(view),
        household_(*view.household),
        settings_(household_.settings),
        kits_(kits),
        reserved_(reserved),
        shown_(shown),
        today_(today),
        products_(household_, today_) {}

  EatBuild build() {
    plan::EatDownProblem& problem = build_.problem;
    problem.today = day_number(today_);
    problem.week_start = day_number(start_of_week(today_, settings_.week_starts));
    problem.horizon_days = horizon();
    problem.donate_days = settings_.donate_days;
    problem.late_days = settings_.late_days;
    problem.tolerance = settings_.tolerance.halves();
    problem.monotony = settings_.monotony.halves();
    build_.until = today_ + Days(static_cast<int>(problem.horizon_days));
    add_lots();
    add_meals();
    // People first: what somebody ate this week may be a product of which nothing is left.
    for (const Person& person : household_.people) add_eater(person);
    for (const auto& [id, product] : products_.all()) add_product(id, *product.food);
    ask_wishes(view_, today_, build_);
    add_published();
    return std::move(build_);
  }

 private:
  // Half a year, or until the kits' hold-until dates where they are later.
  std::int64_t horizon() const {
    int days = kHorizonDays;
    for (const KitPlan& kit : kits_) days = std::max(days, days_between(today_, kit.schedule.hold_until));
    return days;
  }

  // Kit units that leave, from the day of the review on; pantry units of rotating foods, less what refills were promised.
  void add_lots() {
    std::map<StockKey, Day> leaving_from;
    for (const KitPlan& kit : kits_) {
      const Day from = kit.schedule.current ? std::max(today_, kit.schedule.current->day) : today_;
      for (const Leaving& leaving : kit.leaves) leaving_from[leaving.at] = from;
    }
    build_.problem.lots.reserve(view_.positions.size());
    for (const Position& position : view_.positions) {
      const FoodKind kind = position.food->kind;
      if (kind == FoodKind::kWater || kind == FoodKind::kThing) continue;
      if (position.facts->state != LotState::kOk || !position.good_through || *position.good_through < today_) continue;
      const auto leaving = leaving_from.find(position.at);
      const bool in_kit = !position.kit->empty();
      if (in_kit ? leaving == leaving_from.end() : !rotates(household_, *position.food) && !was_pulled(position)) continue;
      add_lot(position, in_kit ? std::optional<Day>(leaving->second) : std::nullopt);
    }
  }

  void add_lot(const Position& position, std::optional<Day> from) {
    plan::EatLot lot;
    lot.id = lot_id(position.at);
    lot.last_good_day = day_number(*position.good_through);
    if (from && *from > today_) lot.available_from = day_number(*from);
    const Food& food = *position.food;
    lot.may_donate = !position.at.opened_on && !food.home_canned && !food.infant_formula;
    if (position.at.opened_on) {
      lot.product = products_.id_of(food, effective_label(*position.facts));
      lot.already_open = true;
      lot.units = 1;
      lot.open_servings = position.amount.halves();
    } else {
      lot.product = products_.id_of(food, effective_label(*position.facts));
      lot.units = position.amount.whole_units(food.servings);
      const auto promised = reserved_.find(position.at);
      if (promised != reserved_.end()) lot.units -= promised->second;
      if (position.facts->safety) finish_at_once_.insert(lot.product);
    }
    if (lot.units <= 0) return;
    build_.lots[lot.id] = &position;
    build_.problem.lots.push_back(std::move(lot));
  }

  // Moved out of a kit by a review: eaten down even when the pantry would not push this food on anyone.
  bool was_pulled(const Position& position) {
    if (pulled_.empty() && !pulled_known_) {
      pulled_known_ = true;
      for (const Entry& entry : household_.entries) {
        if (entry.kind != EntryKind::kMoved) continue;
        const bool from_kit = !view_.kit_of_place.at(entry.at.place).empty();
        const bool to_pantry = view_.kit_of_place.at(entry.to).empty();
        if (from_kit && to_pantry) pulled_.insert({entry.at.lot, entry.to});
      }
    }
    return pulled_.count({position.at.lot, position.at.place}) > 0;
  }

  void add_meals() {
    std::set<std::pair<Day, Meal>> eaten;  // meals of today that the record already knows
    for (const Entry& entry : household_.entries) {
      if (entry.kind == EntryKind::kEaten && entry.on == today_ && entry.meal && !corrected(entry.id)) eaten.insert({entry.on, *entry.meal});
    }
    const bool pet_food = std::any_of(build_.lots.begin(), build_.lots.end(), [](const auto& lot) {
      return lot.second->food->kind == FoodKind::kPetFood;
    });
    for (const Person& person : household_.people) {
      if (person.appetite.halves() > 0) hungry_[person.key] = person.appetite.halves();
    }
    build_.problem.meals.reserve(static_cast<std::size_t>(std::max<std::int64_t>(build_.problem.horizon_days, 0)) * std::size(kAllMeals));
    for (Day day = today_; day < build_.until; day += Days(1)) {
      for (const Meal meal : kAllMeals) {
        if (eaten.count({day, meal}) > 0 || wants_nothing(household_, day, meal, nullptr)) continue;
        plan::EatMeal each;
        each.id = meal_id(day, meal);
        each.day = day_number(day);
        each.kind = kind_of(meal);
        each.without = without_at(household_, products_, day, meal, nullptr, today_, build_.until);
        seat_table(each, day, meal);
        if (pet_food && meal == Meal::kDinner) seat_pets(each, day);
        add_meal(std::move(each));
      }
    }
    std::vector<plan::EatMeal>& meals = build_.problem.meals;
    const auto by_id = [](const plan::EatMeal& a, const plan::EatMeal& b) { return a.id < b.id; };
    if (!std::is_sorted(meals.begin(), meals.end(), by_id)) std::sort(meals.begin(), meals.end(), by_id);
  }

  void add_meal(plan::EatMeal meal) {
    if (meal.eaters.empty()) return;
    if (!std::is_sorted(meal.eaters.begin(), meal.eaters.end())) std::sort(meal.eaters.begin(), meal.eaters.end());
    build_.problem.meals.push_back(std::move(meal));
  }

  // Week after week the same people sit down: where nobody has wishes they are seated as a week before.
  void seat_table(plan::EatMeal& meal, Day day, Meal at) {
    if (!household_.wishes.empty()) {
      for (const PersonKey& key : at_table(household_, day, at)) seat_with_wishes(meal, key, day, at);
      return;
    }
    if (!is_usual_day(household_, day)) {
      for (const PersonKey& key : at_table(household_, day, at)) seat(meal, key);
      return;
    }
    const auto [usual, fresh] = usual_.try_emplace({weekday_of(day), at});
    if (fresh) {
      for (const PersonKey& key : at_table(household_, day, at)) seat(usual->second, key);
    }
    meal.eaters = usual->second.eaters;
    meal.appetite = usual->second.appetite;
  }

  // Who does not want something at this very meal has it at a table of their own, so that the rest of the table may have it.
  void seat_with_wishes(plan::EatMeal& meal, const PersonKey& key, Day day, Meal at) {
    if (wants_nothing(household_, day, at, &key)) return;
    const std::set<std::string> own = without_at(household_, products_, day, at, &key, today_, build_.until);
    if (own.empty()) return seat(meal, key);
    plan::EatMeal alone = meal;
    alone.id += " " + key.str();
    alone.eaters.clear();
    alone.appetite.clear();
    alone.without.insert(own.begin(), own.end());
    seat(alone, key);
    if (!alone.eaters.empty()) alone_[{meal.id, key.str()}] = alone.id;
    add_meal(std::move(alone));
  }

  void seat(plan::EatMeal& meal, const PersonKey& key) {
    const auto found = hungry_.find(key);
    if (found == hungry_.end()) return;
    if (meal.eaters.empty()) {
      meal.eaters.reserve(hungry_.size());
      meal.appetite.reserve(hungry_.size());
    }
    meal.eaters.push_back(key.str());
    meal.appetite[key.str()] = found->second;
  }

  // A pet's meal is its own, once a day; it is told beside the household's dinner.
  void seat_pets(plan::EatMeal& meal, Day day) {
    for (const Person& person : household_.people) {
      if (!person.is_human() && !person.retired) seat_with_wishes(meal, person.key, day, Meal::kDinner);
    }
  }

  void add_product(const std::string& id, const Food& food) {
    plan::EatProduct product;
    product.id = id;
    product.servings = 2 * food.servings;
    product.open_days = finish_at_once_.count(id) > 0 ? 0 : food.storage.opened_days;
    for (const Meal meal : food.meals) product.kinds.insert(kind_of(meal));
    if (food.kind == FoodKind::kPetFood) product.kinds = {plan::Kind::kDinner};
    std::vector<const Person*> everyone;
    for (const Person& person : household_.people) everyone.push_back(&person);
    product.contains = products_.tags_of(id, everyone);
    for (const auto& [person, foods] : never_wanted_) {
      if (foods.count(food.key) > 0) product.contains.insert(not_wished_tag(person));
    }
    build_.problem.products.push_back(std::move(product));
  }

  void add_eater(const Person& person) {
    plan::Eater eater = make_eater(products_, person);
    if (!person.is_human()) {  // no weekly tolerance and no variety for pets
      eater.tolerance = 14 * person.appetite.halves();
      eater.monotony = eater.tolerance;
    }
    std::set<FoodKey> never = never_wanted(household_, person.key, today_, build_.until);
    if (!never.empty()) {
      eater.avoid.insert(not_wished_tag(person.key));
      never_wanted_[person.key] = std::move(never);
    }
    const Day week = number_day(build_.problem.week_start);
    for (const Entry& entry : household_.entries) {
      if (entry.kind != EntryKind::kEaten || entry.who != person.key || entry.on < week || entry.on > today_) continue;
      const auto facts = view_.facts.find(entry.at.lot);
      const Food* food = facts == view_.facts.end() ? nullptr : find_food(household_, facts->second.food);
      if (food == nullptr || corrected(entry.id)) continue;
      eater.eaten_this_week[products_.id_of(*food, effective_label(facts->second))] += entry.amount.halves();
    }
    build_.problem.eaters.push_back(std::move(eater));
  }

  bool corrected(EntryId id) const {
    return std::any_of(household_.entries.begin(), household_.entries.end(), [&](const Entry& entry) {
      return entry.kind == EntryKind::kCorrected && entry.corrects == id;
    });
  }

  // What the household was shown for this week and the next.
  void add_published() {
    std::map<StockKey, std::string> products;
    for (const plan::EatLot& lot : build_.problem.lots) products[build_.lots.at(lot.id)->at] = lot.product;
    std::map<std::tuple<std::string, std::string, std::string>, std::int64_t> servings;
    for (const ShownMeal& meal : shown_) {
      if (meal.day < today_) continue;
      const std::string id = meal_id(meal.day, meal.meal);
      for (const ShownServing& serving : meal.servings) {
        const auto product = products.find(serving.at);
        const auto alone = alone_.find({id, serving.person.str()});
        const std::string& sits = alone == alone_.end() ? id : alone->second;
        if (product == products.end() || find_meal(build_.problem, sits) == nullptr) continue;
        servings[{product->second, sits, serving.person.str()}] += serving.amount.halves();
      }
    }
    for (const auto& [key, amount] : servings) {
      build_.problem.published.push_back({std::get<0>(key), std::get<1>(key), std::get<2>(key), amount});
    }
    build_.problem.keep_published = true;
    // Days after the last meal shown are new to the household: nothing there can be changed.
    build_.problem.published_until = build_.problem.today - 1;
    for (const ShownMeal& meal : shown_)
      build_.problem.published_until = std::max(build_.problem.published_until, day_number(meal.day));
  }

  const BookView& view_;
  const Household& household_;
  const Settings& settings_;
  const std::vector<KitPlan>& kits_;
  const Reserved& reserved_;
  const std::vector<ShownMeal>& shown_;
  Day today_;
  Products products_;
  std::map<PersonKey, std::int64_t> hungry_;  // half servings a meal
  std::map<std::pair<Weekday, Meal>, plan::EatMeal> usual_;  // without wishes and exceptions: eaters and appetites only
  EatBuild build_;
  std::set<std::string> finish_at_once_;  // products with a lot whose date is a safety date
  std::map<std::pair<std::string, std::string>, std::string> alone_;  // (meal, eater): the meal of their own
  std::map<PersonKey, std::set<FoodKey>> never_wanted_;
  std::set<std::pair<LotId, PlaceKey>> pulled_;
  bool pulled_known_ = false;
};

}  // namespace

std::string meal_id(Day day, Meal meal) {
  const std::string_view name = meal_name(meal);
  std::string id;
  id.reserve(std::size("2027-03-15 0 ") + name.size());
  id += iso_day(day);
  id += ' ';
  id += static_cast<char>('0' + static_cast<int>(meal));
  id += ' ';
  id += name;
  return id;
}

std::pair<Day, Meal> sits_at(const plan::EatMeal& meal) {
  for (const Meal each : kAllMeals) {
    if (kind_of(each) == meal.kind) return {number_day(meal.day), each};
  }
  return {number_day(meal.day), Meal::kDinner};
}

const plan::EatMeal* find_meal(const plan::EatDownProblem& problem, std::string_view id) {
  const auto found = std::lower_bound(problem.meals.begin(), problem.meals.end(), id,
                                      [](const plan::EatMeal& meal, std::string_view wanted) { return meal.id < wanted; });
  return found != problem.meals.end() && found->id == id ? &*found : nullptr;
}

EatBuild build_eat_down(const BookView& view, const std::vector<KitPlan>& kits, const Reserved& reserved,
                        const std::vector<ShownMeal>& shown, Day today) {
  return Builder(view, kits, reserved, shown, today).build();
}

}  // namespace larderloop
