// The refill problem of one kit: its menu lines, its good units, the pantry's, and what shops sell.
#include <algorithm>

#include "app/plan_build.h"

namespace larderloop {
namespace {

std::int64_t priority_of(const MenuLine& line) {
  if (line.priority > 0) return line.priority;
  return line.role == Role::kMain ? 10 : 3;
}

class Builder {
 public:
  Builder(const BookView& view, const KitSchedule& schedule, const Reserved& reserved, Day today)
      : view_(view),
        household_(*view.household),
        schedule_(schedule),
        reserved_(reserved),
        today_(today),
        products_(household_, today_) {}

  RefillBuild build() {
    plan::RefillProblem& problem = build_.problem;
    problem.today = day_number(today_);
    problem.keep_in_place = true;
    problem.hold_until = day_number(schedule_.hold_until);
    problem.variety_cap = household_.settings.variety_cap;
    add_lines();
    add_lots();
    add_offers();
    for (const auto& [id, product] : products_.all()) add_product(id, *product.food);
    for (const Person* person : eaters_) problem.eaters.push_back(make_eater(products_, *person));
    for (const PlaceKey& place : containers_) add_container(place);
    return std::move(build_);
  }

 private:
  void add_lines() {
    std::set<PersonKey> people;
    for (const MenuLine& menu_line : household_.menu) {
      if (view_.kit_of_place.at(menu_line.place) != schedule_.kit || wants_water(household_, menu_line)) continue;
      plan::RefillLine line;
      line.id = padded(menu_line.id.value());
      line.container = menu_line.place.str();
      for (const PersonKey& person : eaters_of(household_, menu_line)) {
        line.eaters.push_back(person.str());
        people.insert(person);
      }
      line.day = menu_line.day;
      if (menu_line.meal) line.kind = std::string(meal_name(*menu_line.meal));
      line.role = menu_line.role ? std::string(role_name(*menu_line.role)) : "food:" + menu_line.food.str();
      if (!menu_line.food.empty()) named_.insert(menu_line.food);
      line.units = menu_line.units;
      line.priority = priority_of(menu_line);
      containers_.insert(menu_line.place);
      build_.lines[line.id] = &menu_line;
      build_.problem.lines.push_back(std::move(line));
    }
    for (const PersonKey& key : people) eaters_.push_back(find_person(household_, key));
  }

  // Whole sealed units that are sound and will last; from this kit and the pantry, never from another kit.
  void add_lots() {
    for (const Position& position : view_.positions) {
      const PlaceKey& kit = *position.kit;
      if (!kit.empty() && kit != schedule_.kit) continue;
      if (position.at.opened_on || position.food->kind == FoodKind::kWater) continue;
      if (position.facts->state != LotState::kOk || !lasts(position, schedule_.hold_until)) continue;
      plan::RefillLot lot;
      lot.id = padded(position.at.lot.value()) + "@" + position.at.place.str();
      lot.product = products_.id_of(*position.food, effective_label(*position.facts));
      lot.units = position.amount.whole_units(position.food->servings);
      const auto promised = reserved_.find(position.at);
      if (promised != reserved_.end()) lot.units -= promised->second;
      lot.last_good_day = position.good_through
                              ? day_number(*position.good_through)
                              : build_.problem.hold_until + build_.problem.date_cap_days;  // a thing without a date
      lot.in_kit = !kit.empty();
      if (lot.in_kit) {
        lot.container = position.at.place.str();
        containers_.insert(position.at.place);
      }
      if (lot.units <= 0) continue;
      build_.lots[lot.id] = &position;
      build_.problem.lots.push_back(std::move(lot));
    }
  }

  void add_offers() {
    for (const Food& food : household_.foods) {
      if (food.kind == FoodKind::kWater || food.home_canned || food.retired) continue;
      const std::optional<Day> expected = expected_day(view_, food, today_);
      std::int64_t last = day_number(expected.value_or(schedule_.hold_until));
      if (food.kind == FoodKind::kThing && !expected) last = build_.problem.hold_until + build_.problem.date_cap_days;
      if (last < build_.problem.hold_until) continue;
      for (std::size_t index = 0; index < food.packs.size(); ++index) add_offer(food, &food.packs[index], index, last);
      // A line that names this very food asks for it even when nobody knows where to buy it.
      if (food.packs.empty() && named_.count(food.key) > 0) add_offer(food, nullptr, 0, last);
    }
  }

  void add_offer(const Food& food, const Pack* pack, std::size_t index, std::int64_t last) {
    plan::Offer offer;
    offer.id = food.key.str() + "/" + padded(static_cast<std::int64_t>(index));
    // A pack counts with the food's last read statement; whoever buys it is told to read the label.
    offer.product = products_.id_of(food, food.label ? &*food.label : nullptr);
    offer.pack_units = pack == nullptr ? 1 : pack->units;
    offer.price = pack == nullptr ? 0 : pack->price_cents;
    offer.last_good_day = last;
    build_.offers[offer.id] = {&food, pack};
    build_.problem.offers.push_back(std::move(offer));
  }

  void add_product(const std::string& id, const Food& food) {
    plan::RefillProduct product;
    product.id = id;
    // A conditional item helps only if hot water turns up, so it never fills a line.
    if (!food.needs_hot_water) {
      for (const Role role : food.roles) product.roles.insert(std::string(role_name(role)));
      product.roles.insert("food:" + food.key.str());
    }
    product.contains = products_.tags_of(id, eaters_);
    product.kcal = food.energy_kcal.value_or(0);
    product.mass = food.mass_g.value_or(0);
    product.volume = food.volume_ml.value_or(0);
    product.no_cook = food.no_cook;
    product.staple = food.staple || food.kind == FoodKind::kThing || food.kind == FoodKind::kPetFood;
    build_.problem.products.push_back(std::move(product));
  }

  void add_container(const PlaceKey& key) {
    const Place& place = *find_place(household_, key);
    plan::Container container;
    container.id = key.str();
    container.kit = schedule_.kit.str();
    container.mass_limit = place.mass_limit_g;
    container.volume_limit = place.volume_limit_ml;
    build_.problem.containers.push_back(std::move(container));
  }

  const BookView& view_;
  const Household& household_;
  const KitSchedule& schedule_;
  const Reserved& reserved_;
  Day today_;
  Products products_;
  RefillBuild build_;
  std::vector<const Person*> eaters_;
  std::set<PlaceKey> containers_;
  std::set<FoodKey> named_;
};

}  // namespace

RefillBuild build_refill(const BookView& view, const KitSchedule& schedule, const Reserved& reserved, Day today) {
  return Builder(view, schedule, reserved, today).build();
}

}  // namespace larderloop
