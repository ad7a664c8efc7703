#include "larderloop/render/plan_text.h"

#include <fmt/core.h>

#include <algorithm>

#include "larderloop/app/entering.h"
#include "larderloop/app/meal_items.h"
#include "larderloop/core/words.h"
#include "render/plain.h"

namespace larderloop {
namespace {

std::string kit_heading(const Household& household, const KitSchedule& schedule) {
  std::string text = plain::place(household, schedule.kit) + "\n";
  if (schedule.current) {
    text += fmt::format("  review {} {}, the next one on {}\n", slot_state_words(schedule.current->state),
                        plain_day(schedule.current->day), plain_day(schedule.next.day));
  } else {
    text += fmt::format("  next review on {}\n", plain_day(schedule.next.day));
  }
  return text + fmt::format("  what stays must be good through {}\n\n", plain_day(schedule.hold_until));
}

std::string leaving_line(const Household& household, const Leaving& each, const std::string& why) {
  return fmt::format("{} ({}, {}{})", plain::amount_of(household, each.food, each.amount), plain::lot(each.at),
                     plain::good_through(each.good_through), why.empty() ? "" : "; " + why);
}

void add_fills(const Household& household, const KitPlan& plan, plain::Section& pantry, plain::Section& other_bag) {
  // Several menu lines may share one lot in one bag: the person at the box moves them in one go.
  std::map<std::pair<PlaceKey, StockKey>, Fill> moves;
  for (const Fill& fill : plan.fills) {
    if (fill.from != FillFrom::kPantry && fill.from != FillFrom::kOtherBag) continue;
    const auto [move, fresh] = moves.emplace(std::make_pair(fill.place, fill.at), fill);
    if (!fresh) move->second.units += fill.units;
  }
  for (const auto& [key, fill] : moves) {
    const Food* food = find_food(household, fill.food);
    const std::string text =
        fmt::format("{} from {} ({}, {})",
                    plain::amount_of(household, fill.food, HalfServings::units(fill.units, food->servings)),
                    plain::place(household, fill.at.place), plain::lot(fill.at), plain::good_through(fill.good_through));
    (fill.from == FillFrom::kPantry ? pantry : other_bag).line("into " + plain::place(household, fill.place), text);
  }
}

std::string water_text(const Household& household, const WaterState& water) {
  if (water.need_ml == 0 && water.have_ml == 0) return {};
  plain::Section section("Drinking water: " + plain::litres(water.have_ml) + " there, " +
                         plain::litres(water.need_ml) + " wanted");
  section.line(water.have_ml >= water.need_ml ? "enough" : "too little, see above");
  for (const Leaving& each : water.to_refill) {
    section.line(fmt::format("pour out and fill again: {} in {} ({}, {})",
                             plain::amount_of(household, each.food, each.amount),
                             plain::place(household, each.at.place), plain::lot(each.at),
                             plain::good_through(each.good_through)));
  }
  for (const Leaving& each : water.past_date) {
    section.line(fmt::format("past its printed date, taste may change: {} in {} ({})",
                             plain::amount_of(household, each.food, each.amount),
                             plain::place(household, each.at.place), plain::lot(each.at)));
  }
  return section.text();
}

void add_unmet(const Household& household, const std::vector<Unmet>& unmet, plain::Section& section) {
  for (const Unmet& each : unmet) {
    const std::string what = each.ml > 0 ? plain::litres(each.ml) + " of water" : plain::menu_line(household, each.line);
    section.line(plain::place(household, each.place) + ": " + what);
    section.line("  " + each.why);
  }
}

std::string wishes_text(const Household& household, const EatDown& eat) {
  plain::Section section("Asked for by the family (all wishes: larderloop wish list)");
  // Of one wish, whoever it went the same way for stands on one line.
  for (auto each = eat.wishes.begin(); each != eat.wishes.end();) {
    std::vector<std::pair<std::string, std::vector<PersonKey>>> ways;
    auto end = each;
    for (; end != eat.wishes.end() && end->wish == each->wish; ++end) {
      auto way = std::find_if(ways.begin(), ways.end(), [&](const auto& known) { return known.first == end->why; });
      if (way == ways.end()) way = ways.insert(ways.end(), {end->why, {}});
      if (!end->person.empty()) way->second.push_back(end->person);
    }
    for (const auto& [why, people] : ways) {
      section.line(fmt::format("{}, {}: {}{}: {}", plain_day(each->day), meal_name(each->meal), plain::food(household, each->food),
                               people.empty() ? "" : " for " + plain::people(household, people), why.empty() ? "planned" : "cannot be: " + why));
    }
    each = end;
  }
  return section.text();
}

std::string skipped_text(const Household& household, const EatDown& eat) {
  plain::Section section("Planned again and again and not eaten");
  for (const Skipped& each : eat.skipped) {
    section.line(fmt::format("{} (lot {}) has been skipped {} times: {}rate it lower: larderloop person change {} --rate {}:-1",
                             plain::food(household, each.food), each.lot.value(), each.times,
                             each.give_by ? "give it away by " + plain_day(*each.give_by) + ", or " : "",
                             each.people.front().str(), each.food.str()));
  }
  return section.text();
}

std::string eat_text(const Household& household, const EatDown& eat, Day today, bool all_meals) {
  const Day end = start_of_week(today, household.settings.week_starts) + Days(14);
  plain::Section meals("Eat these, soonest date first (look, smell and read the label before serving)");
  std::size_t later = 0;
  for (const PlannedMeal& meal : eat.meals) {
    if (!all_meals && meal.day >= end) {
      later += 1;
      continue;
    }
    for (const MealItem& item : meal_items(meal)) {
      meals.line(plain_day(meal.day),
                 fmt::format("{}: {} for {} ({}, {}, {})", meal_name(meal.meal),
                             plain::amount_of(household, item.food, item.amount),
                             plain::people(household, item.people), plain::place(household, item.at.place),
                             plain::lot(item.at), plain::good_through(item.good_through)));
    }
  }
  std::string text = wishes_text(household, eat) + meals.text();
  if (later > 0) {
    text += fmt::format("  and {} more {} until {} (all of them: larderloop plan --all)\n\n", later,
                        plural("meal", static_cast<std::int64_t>(later)), plain_day(eat.until - Days(1)));
  }
  plain::Section give("Give away while it is good");
  for (const GiveAway& each : eat.give_away) {
    give.line(fmt::format("by {}: {} from {} ({}, {})", plain_day(each.by),
                          plain::amount_of(household, each.food, each.amount), plain::place(household, each.at.place),
                          plain::lot(each.at), plain::good_through(each.good_through)));
  }
  plain::Section left("Nobody can eat these in time, and it is too late to give them away");
  for (const LeftOver& each : eat.left_over) {
    left.line(fmt::format("{} from {} ({}, {})", plain::amount_of(household, each.food, each.amount),
                          plain::place(household, each.at.place), plain::lot(each.at),
                          plain::good_through(each.good_through)));
  }
  return text + skipped_text(household, eat) + give.text() + left.text();
}

std::string state_text(const Household& household, const EatDown& eat) {
  plain::Section unsafe("Throw out: past a use-by date, whatever it looks like");
  plain::Section look("Past its best-before date: look, smell, decide");
  for (const PastDate& each : eat.past) {
    (each.safety ? unsafe : look)
        .line(fmt::format("{} in {} ({}, was good through {}{})", plain::amount_of(household, each.food, each.amount),
                          plain::place(household, each.at.place), plain::lot(each.at), plain_day(each.good_through),
                          each.basis == DayBasis::kEstimated ? " by estimate" : ""));
  }
  plain::Section waiting("Set aside until settled, do not eat");
  for (const Waiting& each : eat.waiting) {
    waiting.line(fmt::format("{} in {} ({}, {})", plain::amount_of(household, each.food, each.amount),
                             plain::place(household, each.at.place), plain::lot(each.at), lot_state_name(each.state)));
  }
  plain::Section changed("Changed since you last saw the plan");
  for (const std::string& line : eat.changed) changed.line(line);
  return changed.text() + unsafe.text() + look.text() + waiting.text();
}

}  // namespace

std::string render_kit_plan_text(const Household& household, const KitPlan& plan) {
  std::string text = kit_heading(household, plan.schedule);
  plain::Section wrong("Take out now: not for who it is packed for");
  for (const Leaving& each : plan.wrong_bag) {
    wrong.line(plain::place(household, each.at.place), leaving_line(household, each, ""));
  }
  plain::Section unread("Read these labels: somebody who eats from this bag has an allergy or a diet");
  for (const Leaving& each : plan.label_needed) {
    unread.line(plain::place(household, each.at.place), leaving_line(household, each, ""));
  }
  plain::Section leaves("Take out");
  for (const Leaving& each : plan.leaves) {
    leaves.line("from " + plain::place(household, each.at.place),
                leaving_line(household, each, plain::reason(each.reason, each.good_through)));
  }
  plain::Section pantry("Put in from the pantry");
  plain::Section other_bag("Move within the kit");
  add_fills(household, plan, pantry, other_bag);
  plain::Section buy(plan.cost_cents > 0
                         ? "Buy, about " + money_words(plan.cost_cents, household.settings.currency) +
                               " (the list with dates and label cautions: larderloop shop)"
                         : "Buy (the list with dates and label cautions: larderloop shop)");
  for (const BuyLine& each : plan.buy) {
    const Food* food = find_food(household, each.food);
    const std::string what =
        plain::amount_of(household, each.food, HalfServings::units(each.units, food->servings));
    std::string line = each.for_people.empty() ? what : what + " for " + plain::people(household, each.for_people);
    if (const BuyNote* note = open_buy_note(household, each.food)) line += " (" + buy_note_words(household, *note) + ")";
    buy.line(line);
  }
  plain::Section surplus("Good, but no line of the menu needs it");
  for (const Leaving& each : plan.surplus) {
    surplus.line("in " + plain::place(household, each.at.place), leaving_line(household, each, ""));
  }
  plain::Section unmet("Still empty: nothing the book knows fits");
  add_unmet(household, plan.unmet, unmet);
  text += wrong.text() + unread.text() + leaves.text() + pantry.text() + other_bag.text() + buy.text() + unmet.text() +
          surplus.text() + water_text(household, plan.water);
  const bool moves = !leaves.empty() || !pantry.empty() || !other_bag.empty() || !wrong.empty() || !unread.empty();
  if (plan.full() && !moves) text += "  The kit is full: every line of its menu is filled.\n\n";
  return text;
}

std::string render_plan_text(const Household& household, const PlanReport& report, bool all_meals) {
  std::string text = "Plan of " + plain_day(report.as_of) + "\n\n";
  text += state_text(household, report.eat_down);
  for (const KitPlan& kit : report.kits) text += render_kit_plan_text(household, kit);
  text += eat_text(household, report.eat_down, report.as_of, all_meals);
  while (text.size() > 1 && text[text.size() - 2] == '\n') text.pop_back();
  return text;
}

}  // namespace larderloop
