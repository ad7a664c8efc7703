// Wants: which of them can be, from which lots, and why the others cannot.
#include "app/plan_wishes.h"

#include "larderloop/core/words.h"

#include <algorithm>
#include <tuple>

namespace larderloop {
namespace {

constexpr std::int64_t kWished = 2;  // half servings: one serving, or less where appetite is less

std::string servings_words(HalfServings amount) {
  if (amount.halves() == 1) return "half a serving";
  return std::to_string(amount.halves() / 2) + (amount.halves() % 2 == 1 ? ".5 " : " ") +
         plural("serving", amount.halves() == 2 ? 1 : 2);
}

class Asking {
 public:
  Asking(const BookView& view, Day today, EatBuild& build)
      : view_(view),
        household_(*view.household),
        today_(today),
        build_(build),
        problem_(build.problem) {
    for (const plan::Eater& eater : problem_.eaters) eaters_[eater.id] = &eater;
    for (const plan::EatProduct& product : problem_.products) products_[product.id] = &product;
    for (const plan::EatMeal& meal : problem_.meals) {
      for (const std::string& eater : meal.eaters) seats_[{sits_at(meal), eater}] = &meal;
    }
    for (const plan::EatLot& lot : problem_.lots) {
      left_[lot.id] =
          lot.already_open ? lot.open_servings : lot.units * products_.at(lot.product)->servings;
      lots_.push_back(&lot);
    }
    std::stable_sort(lots_.begin(), lots_.end(), [](const plan::EatLot* a, const plan::EatLot* b) {
      return std::tie(a->last_good_day, a->id) < std::tie(b->last_good_day, b->id);
    });
  }

  void ask_all() {
    std::vector<const Wish*> wants;
    for (const Wish& wish : household_.wishes) {
      if (wish.kind == WishKind::kWant && *wish.from >= today_) wants.push_back(&wish);
    }
    std::stable_sort(wants.begin(), wants.end(), [](const Wish* a, const Wish* b) {
      return std::tie(*a->from, *a->meal) < std::tie(*b->from, *b->meal);
    });
    for (const Wish* wish : wants) ask(*wish);
    for (const auto& [key, amount] : granted_)
      problem_.wished.push_back({std::get<0>(key), std::get<1>(key), std::get<2>(key), amount});
    set_apart();
  }

 private:
  // A reason, and how far the wish had come: the reason that came furthest is told.
  struct Reason {
    int rank = -1;
    std::string why;
    void take(int at, std::string words) {
      if (at > rank) *this = {at, std::move(words)};
    }
  };

  void ask(const Wish& wish) {
    WishTold told;
    told.wish = wish.id;
    told.food = wish.food;
    told.day = *wish.from;
    told.meal = *wish.meal;
    std::vector<PersonKey> people;
    if (wish.person) {
      people.push_back(*wish.person);
    } else {
      people = at_table(household_, told.day, told.meal);
    }
    if (people.empty()) {
      told.why = told.day >= build_.until ? beyond() : "nobody is at the table then";
      build_.wishes.push_back(std::move(told));
      return;
    }
    for (const PersonKey& person : people) {
      told.person = person;
      told.amount = HalfServings();
      told.why = grant(told);
      build_.wishes.push_back(told);
    }
  }

  std::string beyond() const {
    return "the plan reaches only through " + plain_day(build_.until - Days(1));
  }

  // Empty: the wish can be, and its serving is in the problem.
  std::string grant(WishTold& told) {
    if (told.day >= build_.until) return beyond();
    const Person& person = *find_person(household_, told.person);
    if (const Wish* other = not_wanted(household_, told.food, told.day, told.meal, told.person))
      return "wish " + std::to_string(other->id.value()) + " says not";
    const auto seat = seats_.find({{told.day, told.meal}, told.person.str()});
    if (seat == seats_.end()) return why_not_seated(person, told);
    const plan::EatMeal& meal = *seat->second;
    told.amount = HalfServings(std::min(kWished, meal.appetite.at(told.person.str())));
    Reason reason;
    std::set<std::string> tried;
    for (const plan::EatLot* lot : lots_) {
      const Position& position = *build_.lots.at(lot->id);
      if (position.food->key != told.food || !tried.insert(lot->product).second) continue;
      if (serve(told, meal, person, *products_.at(lot->product), reason)) return {};
    }
    if (tried.empty()) none_in_the_problem(told.food, reason);
    return reason.why;
  }

  std::string why_not_seated(const Person& person, const WishTold& told) const {
    if (person.appetite.halves() <= 0) return person.name + " has no appetite for kit food";
    const std::vector<PersonKey> table = at_table(household_, told.day, told.meal);
    if (std::find(table.begin(), table.end(), told.person) != table.end())
      return "that meal is in the record already";
    return person.name + " is not at the table then";
  }

  // From lots of one product: may the person have it then, and is there enough of it?
  bool serve(const WishTold& told, const plan::EatMeal& meal, const Person& person,
             const plan::EatProduct& product, Reason& reason) {
    std::vector<const plan::EatLot*> usable;
    std::int64_t there = opened_[{meal.id, product.id}];
    for (const plan::EatLot* lot : lots_) {
      if (lot->product != product.id) continue;
      const Position& position = *build_.lots.at(lot->id);
      const auto refusal =
          why_not(household_, person, *position.food, effective_label(*position.facts), today_);
      if (refusal) {
        reason.take(3, refusal_words(*refusal));
      } else if (lot->available_from && meal.day < *lot->available_from) {
        reason.take(1, "it comes out of the kit on " + plain_day(number_day(*lot->available_from)));
      } else if (meal.day > lot->last_good_day) {
        reason.take(2, "it is good only through " + plain_day(number_day(lot->last_good_day)));
      } else if (!lot->already_open || !keeps(*lot)) {
        usable.push_back(lot);
        there += left_.at(lot->id);
      }
    }
    if (usable.empty()) return false;
    if (product.kinds.count(meal.kind) == 0) {
      reason.take(4, "it is not a food for " + std::string(meal_name(told.meal)));
      return false;
    }
    if (std::string why = over_a_limit(told, meal, product); !why.empty()) {
      reason.take(6, std::move(why));
      return false;
    }
    if (there < told.amount.halves() || !take(usable, meal, product, told.amount.halves())) {
      reason.take(5, "there is not enough of it for all wishes");
      return false;
    }
    const std::string& eater = told.person.str();
    const std::int64_t week = week_of(meal.day);
    at_meal_[{meal.id, eater}] += told.amount.halves();
    in_week_[{week, eater}] += told.amount.halves();
    of_product_[{week, eater, product.id}] += told.amount.halves();
    granted_[{product.id, meal.id, eater}] += told.amount.halves();
    return true;
  }

  // Beyond the horizon: no plan would touch it.
  bool keeps(const plan::EatLot& lot) const {
    return lot.last_good_day >= problem_.today + problem_.horizon_days;
  }
  std::int64_t week_of(std::int64_t day) const { return (day - problem_.week_start) / 7; }

  std::string over_a_limit(const WishTold& told, const plan::EatMeal& meal,
                           const plan::EatProduct& product) const {
    const plan::Eater& eater = *eaters_.at(told.person.str());
    const std::string& name = find_person(household_, told.person)->name;
    const std::int64_t week = week_of(meal.day);
    const std::int64_t more = told.amount.halves();
    const auto so_far = [](const auto& map, const auto& key) {
      const auto found = map.find(key);
      return found == map.end() ? std::int64_t{0} : found->second;
    };
    if (so_far(at_meal_, std::pair(meal.id, eater.id)) + more > meal.appetite.at(eater.id))
      return "other wishes fill that meal of " + name;
    std::int64_t all = so_far(in_week_, std::pair(week, eater.id));
    std::int64_t same = so_far(of_product_, std::tuple(week, eater.id, product.id));
    if (week == 0) {
      for (const auto& [id, eaten] : eater.eaten_this_week) all += eaten;
      same += eater.eaten_this_week.of(product.id, 0);
    }
    const std::int64_t tolerance = eater.tolerance.value_or(problem_.tolerance);
    if (all + more > tolerance)
      return name + " has " + servings_words(HalfServings(tolerance)) +
             " of kit food in a week at most";
    const std::int64_t monotony = eater.monotony.value_or(problem_.monotony);
    if (same + more > monotony)
      return name + " has " + servings_words(HalfServings(monotony)) +
             " of one food in a week at most";
    return {};
  }

  // Takes the servings off the lots, soonest date first. Of a lot that keeps beyond the horizon
  // whole units are set apart, since the plan would leave it alone.
  bool take(const std::vector<const plan::EatLot*>& usable, const plan::EatMeal& meal,
            const plan::EatProduct& product, std::int64_t amount) {
    std::int64_t& rest = opened_[{meal.id, product.id}];
    for (const plan::EatLot* lot : usable) {
      std::int64_t& left = left_.at(lot->id);
      if (!keeps(*lot)) {
        const std::int64_t taken = std::min(left, amount);
        left -= taken;
        amount -= taken;
        continue;
      }
      const std::int64_t taken = std::min(rest, amount);
      rest -= taken;
      amount -= taken;
      const std::int64_t units =
          std::min(left / product.servings, (amount + product.servings - 1) / product.servings);
      if (units == 0) continue;
      apart_[lot->id] += units;
      left -= units * product.servings;
      rest += units * product.servings - std::min(amount, units * product.servings);
      amount -= std::min(amount, units * product.servings);
    }
    return amount == 0;
  }

  void set_apart() {
    std::vector<plan::EatLot> apart;
    for (plan::EatLot& lot : problem_.lots) {
      const auto units = apart_.find(lot.id);
      if (units == apart_.end()) continue;
      plan::EatLot wished = lot;
      wished.id += " wished";
      wished.units = units->second;
      wished.last_good_day = problem_.today + problem_.horizon_days - 1;
      lot.units -= units->second;
      build_.lots[wished.id] = build_.lots.at(lot.id);
      build_.apart.insert(build_.lots.at(lot.id)->at);
      apart.push_back(std::move(wished));
    }
    for (plan::EatLot& lot : apart) problem_.lots.push_back(std::move(lot));
    std::stable_sort(problem_.lots.begin(), problem_.lots.end(),
                     [](const plan::EatLot& a, const plan::EatLot& b) { return a.id < b.id; });
  }

  // Why nothing of a food that may lie somewhere is there to be planned.
  void none_in_the_problem(const FoodKey& food, Reason& reason) const {
    reason.take(0, "there is none on hand");
    for (const Position& position : view_.positions) {
      if (position.food->key != food) continue;
      if (position.facts->state != LotState::kOk) {
        reason.take(1, "what is there is set aside");
      } else if (!position.good_through) {
        reason.take(2, "nobody knows how long it is good");
      } else if (*position.good_through < today_) {
        reason.take(3, "what is there is past its date");
      } else if (!position.kit->empty()) {
        reason.take(4, "what is there is packed in a kit and stays there");
      } else if (!rotates(household_, *position.food)) {
        reason.take(5, "it is not a food that the kits rotate (larderloop food change " +
                           food.str() + " --rotate yes)");
      } else {
        reason.take(6, "a kit is filled with what is there");
      }
    }
  }

  using Seat = std::pair<std::pair<Day, Meal>, std::string>;
  const BookView& view_;
  const Household& household_;
  Day today_;
  EatBuild& build_;
  plan::EatDownProblem& problem_;
  std::map<std::string, const plan::Eater*> eaters_;
  std::map<std::string, const plan::EatProduct*> products_;
  std::map<Seat, const plan::EatMeal*> seats_;
  std::vector<const plan::EatLot*> lots_;      // soonest date first
  std::map<std::string, std::int64_t> left_;   // half servings of a lot that no wish has taken
  std::map<std::string, std::int64_t> apart_;  // units of lots that keep beyond the horizon
  std::map<std::pair<std::string, std::string>, std::int64_t> opened_;  // rest at (meal, product)
  // Half servings that wishes have been granted.
  std::map<std::pair<std::string, std::string>, std::int64_t> at_meal_;
  std::map<std::pair<std::int64_t, std::string>, std::int64_t> in_week_;
  std::map<std::tuple<std::int64_t, std::string, std::string>, std::int64_t> of_product_;
  std::map<std::tuple<std::string, std::string, std::string>, std::int64_t> granted_;
};

}  // namespace

void ask_wishes(const BookView& view, Day today, EatBuild& build) {
  if (!view.household->wishes.empty()) Asking(view, today, build).ask_all();
}

void tell_wishes(const EatBuild& build, EatDown& eat) {
  std::map<std::tuple<Day, Meal, PersonKey, FoodKey>, std::int64_t> planned;
  for (const PlannedMeal& meal : eat.meals) {
    for (const Helping& helping : meal.helpings)
      planned[{meal.day, meal.meal, helping.person, helping.food}] += helping.amount.halves();
  }
  eat.wishes = build.wishes;
  for (WishTold& wish : eat.wishes) {
    if (!wish.met()) continue;
    std::int64_t& there = planned[{wish.day, wish.meal, wish.person, wish.food}];
    if (there < wish.amount.halves()) {
      wish.why = "no place was found for it beside the other meals";
    } else {
      there -= wish.amount.halves();
    }
  }
  // What was set apart for a wish and not eaten simply stays: it is good for long.
  const auto stays = [&](const auto& each) { return build.apart.count(each.at) > 0; };
  eat.give_away.erase(std::remove_if(eat.give_away.begin(), eat.give_away.end(), stays),
                      eat.give_away.end());
  eat.left_over.erase(std::remove_if(eat.left_over.begin(), eat.left_over.end(), stays),
                      eat.left_over.end());
}

}  // namespace larderloop
