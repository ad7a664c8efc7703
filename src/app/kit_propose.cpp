#include "larderloop/app/kit_propose.h"

#include "app/kit_check_work.h"
#include "app/plan_build.h"
#include "larderloop/core/energy_need.h"
#include "larderloop/plan/solve.h"

#include <algorithm>
#include <map>

namespace larderloop {
namespace {


// A place in a day that one unit fills. `slot`: the name that foods carry in the problem as a role.
struct Slot {
  Meal meal = Meal::kBreakfast;
  const char* slot = "";
  const char* words = "";
};
// The same for everybody from school age on; small children and the very old eat smaller, softer
// meals: no side.
constexpr Slot kBreakfast{Meal::kBreakfast, "slot:breakfast", "food for breakfast"};
constexpr Slot kDrink{Meal::kBreakfast, "slot:drink", "drink"};
constexpr Slot kLunch{Meal::kLunch, "slot:lunch", "main meal for lunch"};
constexpr Slot kSide{Meal::kLunch, "slot:side", "side"};
constexpr Slot kDinner{Meal::kDinner, "slot:dinner", "main meal for dinner"};
constexpr Slot kFruit{Meal::kSnack, "slot:fruit", "fruit"};
constexpr Slot kSnack{Meal::kSnack, "slot:snack", "snack"};
constexpr Slot kPet{Meal::kDinner, "slot:pet", "pet food"};

std::vector<Slot> slots_of(const Person& person, Day today) {
  constexpr int kSchool = 6;
  if (!person.is_human()) return {kPet};
  const bool small = person.born && years_on(*person.born, today) < kSchool;
  if (small) return {kBreakfast, kDrink, kLunch, kDinner, kFruit};
  return {kBreakfast, kDrink, kLunch, kSide, kDinner, kFruit, kSnack};
}

std::set<std::string> slots_filled_by(const Food& food) {
  const auto role = [&](Role each) { return food.roles.count(each) > 0; };
  const auto meal = [&](Meal each) { return food.meals.count(each) > 0; };
  std::set<std::string> slots;
  if (food.kind == FoodKind::kPetFood && role(Role::kPetMeal)) slots.insert("slot:pet");
  if (food.kind == FoodKind::kDrink && role(Role::kDrink)) slots.insert("slot:drink");
  if (food.kind != FoodKind::kFood) return slots;
  if (meal(Meal::kBreakfast) && !role(Role::kFruit)) slots.insert("slot:breakfast");
  if (role(Role::kMain) && meal(Meal::kLunch)) slots.insert("slot:lunch");
  if (role(Role::kMain) && meal(Meal::kDinner)) slots.insert("slot:dinner");
  if (role(Role::kSide)) slots.insert("slot:side");
  if (role(Role::kFruit)) slots.insert("slot:fruit");
  if (role(Role::kSnack)) slots.insert("slot:snack");
  return slots;
}

// One sitting a unit, as it is, and to be had somewhere. Formula and what is home-canned are not
// for a tool to propose.
bool proposable(const BookView& view, const Food& food) {
  if (food.retired || !is_eaten(food) || !usable_in_kit(food) || food.infant_formula ||
      food.home_canned || food.servings != 1)
    return false;
  return !food.packs.empty() ||
         std::any_of(view.positions.begin(), view.positions.end(),
                     [&](const Position& each) { return each.food == &food; });
}

std::int64_t unit_price(const Food& food) {
  std::int64_t best = 0;
  for (const Pack& pack : food.packs) {
    const std::int64_t price = (pack.price_cents + pack.units - 1) / pack.units;
    if (best == 0 || price < best) best = price;
  }
  return best;
}

// Where somebody's food lies: a bag of this kit that is theirs already, else the kit itself.
PlaceKey place_for(const Household& household, const PlaceKey& kit, const PersonKey& person,
                   int day) {
  PlaceKey found = kit;
  for (const MenuLine& line : household.menu) {
    const bool theirs =
        line.people == std::vector<PersonKey>{person} && kit_of(household, line.place) == kit;
    if (!theirs || find_place(household, line.place)->kind != PlaceKind::kBag) continue;
    if (line.day == day || line.day == 0) return line.place;
    if (found == kit) found = line.place;
  }
  return found;
}

bool has_meals(const Household& household, const PlaceKey& kit, const PersonKey& person) {
  return std::any_of(household.menu.begin(), household.menu.end(), [&](const MenuLine& line) {
    const bool meal = line.meal.has_value() || line.role == Role::kPetMeal;
    return meal && line.people == std::vector<PersonKey>{person} &&
           kit_of(household, line.place) == kit;
  });
}

class Proposer {
 public:
  Proposer(const BookView& view, const KitSchedule& schedule, int days, Day today)
      : view_(view),
        household_(*view.household),
        schedule_(schedule),
        days_(days),
        today_(today),
        products_(household_, today_) {}

  Result<KitProposal> propose(const std::vector<const Person*>& people) {
    proposal_.kit = schedule_.kit;
    proposal_.days = days_;
    add_products();
    for (const Person* person : people) add_person(*person);
    if (problem_.lines.empty()) return std::move(proposal_);
    finish_problem();
    const auto solved = plan::solve(problem_, plan::household_limits());
    proposal_.levels = solved.levels;
    tell(solved.plan);
    return std::move(proposal_);
  }

 private:
  struct Wanted {
    const Person* person;
    int day;
    Slot slot;
    PlaceKey place;
  };

  void add_products() {
    for (const Food& food : household_.foods) {
      if (!proposable(view_, food)) continue;
      const std::set<std::string> slots = slots_filled_by(food);
      if (slots.empty()) continue;
      const std::string& id = products_.id_of(food, food.label ? &*food.label : nullptr);
      plan::RefillProduct product;
      product.id = id;
      product.roles = slots;
      product.kcal = food.energy_kcal.value_or(0);
      product.mass = food.mass_g.value_or(0);
      product.volume = food.volume_ml.value_or(0);
      product.staple = food.staple || food.kind == FoodKind::kPetFood;
      problem_.products.push_back(product);
      plan::Offer offer;
      offer.id = food.key.str();
      offer.product = id;
      offer.price = unit_price(food);
      offer.last_good_day = day_number(schedule_.hold_until);
      problem_.offers.push_back(offer);
      foods_[food.key.str()] = &food;
    }
  }

  void add_person(const Person& person) {
    if (person.is_human() && person.born && years_on(*person.born, today_) < kHoneyUnder) {
      proposal_.gaps.push_back(person.name +
                               " is under one year: infant feeding is for a professional to say");
      return;
    }
    people_.push_back(&person);
    for (int day = 1; day <= days_; ++day) {
      for (const Slot& slot : slots_of(person, today_)) {
        if (!somebody_fills(person, slot)) {
          if (day == 1)
            proposal_.gaps.push_back("the book knows no " + std::string(slot.words) + " that " +
                                     person.name + " may have");
          continue;
        }
        const PlaceKey place = place_for(household_, schedule_.kit, person.key, day);
        plan::RefillLine line;
        line.id = padded(static_cast<std::int64_t>(wanted_.size()));
        line.container = place.str();
        line.eaters = {person.key.str()};
        line.day = day;
        line.kind = std::string(meal_name(slot.meal));
        line.role = slot.slot;
        line.priority = slot.meal == Meal::kSnack ? 3 : 10;
        problem_.lines.push_back(std::move(line));
        places_.insert(place);
        wanted_.push_back({&person, day, slot, place});
      }
    }
  }

  [[nodiscard]] bool somebody_fills(const Person& person, const Slot& slot) const {
    return std::any_of(
        problem_.products.begin(), problem_.products.end(), [&](const plan::RefillProduct& each) {
          const auto& product = products_.product(each.id);
          return each.roles.count(slot.slot) > 0 &&
                 !why_not(household_, person, *product.food, product.label, today_);
        });
  }

  void finish_problem() {
    problem_.today = day_number(today_);
    problem_.hold_until = day_number(schedule_.hold_until);
    problem_.variety_cap = household_.settings.variety_cap;
    for (plan::RefillProduct& product : problem_.products) {
      product.contains = products_.tags_of(product.id, people_);
    }
    // Energy comes before variety in the planner's aims, so the cap is held by what there is of
    // each food.
    for (plan::Offer& offer : problem_.offers) {
      const Food& food = *foods_.at(offer.id);
      if (!food.staple && food.kind != FoodKind::kPetFood)
        offer.max_packs = problem_.variety_cap * static_cast<std::int64_t>(people_.size());
    }
    for (const Person* person : people_) {
      plan::Eater eater = make_eater(products_, *person);
      const auto need = energy_need(*person, today_);
      if (eater.energy_target == 0 && need) eater.energy_target = need->low_kcal;
      problem_.eaters.push_back(std::move(eater));
    }
    for (const PlaceKey& key : places_) {
      const Place& place = *find_place(household_, key);
      problem_.containers.push_back(
          {key.str(), schedule_.kit.str(), place.mass_limit_g, place.volume_limit_ml});
    }
    const auto by_id = [](const auto& a, const auto& b) { return a.id < b.id; };
    std::sort(problem_.products.begin(), problem_.products.end(), by_id);
    std::sort(problem_.offers.begin(), problem_.offers.end(), by_id);
    std::sort(problem_.eaters.begin(), problem_.eaters.end(), by_id);
  }

  void tell(const plan::RefillPlan& plan) {
    std::map<std::pair<PersonKey, int>, std::int64_t> kcal;
    MenuLineId id = next_ids(household_).menu_line;
    std::vector<plan::Move> moves = plan.moves;
    std::sort(moves.begin(), moves.end(),
              [](const plan::Move& a, const plan::Move& b) { return a.line < b.line; });
    for (const plan::Move& move : moves) {
      const Wanted& wanted = wanted_.at(static_cast<std::size_t>(std::stoll(move.line)));
      const Food& food = *foods_.at(move.offer);
      MenuLine line;
      line.id = id;
      id = MenuLineId(id.value() + 1);
      line.place = wanted.place;
      line.people = {wanted.person->key};
      line.day = wanted.day;
      line.meal = wanted.slot.meal;
      line.food = food.key;
      line.units = move.units;
      proposal_.lines.push_back(std::move(line));
      kcal[{wanted.person->key, wanted.day}] += move.units * food.energy_kcal.value_or(0);
      proposal_.cost_cents += move.units * unit_price(food);
      proposal_.mass_g += move.units * food.mass_g.value_or(0);
    }
    for (const auto& [who, sum] : kcal) proposal_.energy.push_back({who.first, who.second, sum});
    for (const plan::LineUnits& unmet : plan.unmet) {
      if (unmet.units == 0) continue;
      const Wanted& wanted = wanted_.at(static_cast<std::size_t>(std::stoll(unmet.line)));
      proposal_.gaps.push_back(
          "no " + std::string(wanted.slot.words) + " for " + wanted.person->name + " on day " +
          std::to_string(wanted.day) +
          ": more different food would have to be known, or the place is full");
    }
  }

  const BookView& view_;
  const Household& household_;
  const KitSchedule& schedule_;
  int days_;
  Day today_;
  Products products_;
  plan::RefillProblem problem_;
  KitProposal proposal_;
  std::vector<const Person*> people_;
  std::vector<Wanted> wanted_;
  std::set<PlaceKey> places_;
  std::map<std::string, const Food*> foods_;
};

}  // namespace

Result<Outcome<KitProposal>> propose_menu(const Household& household, const PlaceKey& kit,
                                          const std::optional<PersonKey>& person, int days,
                                          Asked asked) {
  auto view = view_book(household, asked.today);
  if (!view) return fail(view.error());
  auto schedule = kit_schedule(household, kit, asked.today);
  if (!schedule) return fail(schedule.error());
  std::vector<const Person*> people;
  for (const Person& each : household.people) {
    if (!each.retired && (!person || each.key == *person)) people.push_back(&each);
  }
  auto proposal = Proposer(*view, *schedule, days, asked.today).propose(people);
  if (!proposal) return fail(proposal.error());
  Outcome<KitProposal> outcome;
  outcome.report = std::move(*proposal);
  outcome.changes.menu = outcome.report.lines;
  for (const Person* each : people) {
    if (!has_meals(household, kit, each->key)) continue;
    outcome.report.have_meals.push_back(each->key);
    outcome.report.gaps.push_back(
        each->name +
        " has meals in this kit already: the lines would come on top, so they are not written");
  }
  return outcome;
}

}  // namespace larderloop
