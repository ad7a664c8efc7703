#include "larderloop/core/label_figures.h"
#include "larderloop/core/words.h"
#include "larderloop/render/kit_check.h"
#include "larderloop/render/cautions.h"
#include "render/plain.h"

#include <fmt/core.h>

#include <algorithm>

namespace larderloop {
namespace {

// The cautions that belong to this kit.
std::string cautions_text(const Household& household, const KitCheck& check, Day today) {
  std::vector<Caution> cautions{Caution::kNoPromise, Caution::kContainers, Caution::kOpened, Caution::kEstimates};
  if (concerns_formula(household, check.schedule.kit, today)) cautions.push_back(Caution::kFormula);
  const bool heavy = std::any_of(check.findings.begin(), check.findings.end(), [](const KitFinding& each) { return each.topic == Topic::kMass; });
  if (heavy) cautions.push_back(Caution::kLifting);
  return render_cautions(cautions);
}

// Rounded to a tenth: sums of packages are no finer than that.
std::string tenths(std::int64_t thousandths, std::string_view unit) {
  const std::int64_t rounded = (thousandths + 50) / 100;
  return fmt::format("{}.{} {}", rounded / 10, rounded % 10, unit);
}

std::string counted(std::string_view word, std::int64_t count) {
  return fmt::format("{} {}", count, plural(word, count));
}

std::string heading(const KitCheck& check, Gravity gravity) {
  const std::size_t count = check.count(gravity);
  switch (gravity) {
    case Gravity::kMust:
      return fmt::format("To put right ({})", count);
    case Gravity::kShould:
      return fmt::format("Better so ({})", count);
    case Gravity::kNote:
      return fmt::format("To know ({})", count);
  }
  return {};
}

std::string findings_text(const Household& household, const KitCheck& check, Gravity gravity) {
  std::string text;
  PlaceKey place;
  std::string last_todo;
  for (const KitFinding& each : check.findings) {
    if (each.gravity != gravity) continue;
    if (text.empty()) text += "\n" + heading(check, gravity) + "\n";
    if (each.place != place) {
      place = each.place;
      last_todo.clear();
      text += "  " + plain::place(household, place) + "\n";
    }
    // What is to be done is said once where it is the same from one line to the next.
    text += "    - " + each.what + (each.todo == last_todo ? "" : "\n        " + each.todo) + "\n";
    last_todo = each.todo;
  }
  return text;
}

std::string needs_text(const Household& household, const KitCheck& check) {
  std::string text =
      "\nEnergy a day, if everything meant for it is eaten, beside the estimated need\n";
  for (const PersonNeed& each : check.needs) {
    const Person& person = *find_person(household, each.person);
    std::string days;
    for (const DayFood& day : check.eaten) {
      if (day.person != each.person) continue;
      days +=
          fmt::format("{}{}{}", days.empty() ? "" : ", ", day.unknown_energy > 0 ? "at least " : "",
                      label_kcal(static_cast<double>(day.kcal)));
    }
    text += fmt::format("  {}: {} kcal; ", person.name, days.empty() ? "nothing" : days);
    text += each.need ? fmt::format("need about {} to {} ({})\n", each.need->low_kcal,
                                    each.need->high_kcal, each.need->inputs)
                      : "no estimate: " + each.why_not + "\n";
  }
  std::vector<std::string> sources;
  for (const PersonNeed& each : check.needs) {
    if (each.need && each.need->sources.size() > sources.size()) sources = each.need->sources;
  }
  if (!sources.empty()) text += "  Estimated by: " + list_words(sources) + ".\n";
  return text;
}

std::string carry_text(const Household& household, const KitCheck& check) {
  std::string text = "\nTo carry, drinking water apart\n";
  for (const Carried& each : check.carried) {
    text += fmt::format(
        "  {}: {}{}{}{}\n", plain::place(household, each.place), tenths(each.mass_g, "kg"),
        each.volume_ml > 0 ? fmt::format(", {} of packages", tenths(each.volume_ml, "l")) : "",
        each.unweighed + each.unmeasured > 0 ? ", not all of it known" : "",
        each.water_g > 0 ? fmt::format("; and {} of water", tenths(each.water_g, "kg")) : "");
  }
  text += fmt::format(
      "  One adult should lift about {:.1f} kg from the floor into a car: NIOSH 94-110 with hands "
      "40 cm from the ankles, from 20 cm up by\n"
      "  80 cm, no turn, fair handles. It does not cover children, stairs, one hand, or carrying "
      "far.\n",
      check.lift_limit_kg);
  return text;
}

std::string lots_text(const Household& household, const KitCheck& check) {
  std::string text =
      fmt::format("\nHow every lot stands today, at the next review ({}) and through {}\n",
                  plain_day(check.schedule.next.day), plain_day(check.schedule.hold_until));
  PlaceKey place;
  for (const LotStands& each : check.lots) {
    if (each.at.place != place) {
      place = each.at.place;
      text += "  " + plain::place(household, place) + "\n";
    }
    text += fmt::format(
        "    {} ({}, {}{}): {}, {}, {}\n", plain::amount_of(household, each.food, each.amount),
        plain::lot(each.at), plain::good_through(each.good_through),
        each.plan_through && each.plan_through != each.good_through
            ? ", with the heat there " + plain_day(*each.plan_through)
            : "",
        stand_name(each.today), stand_name(each.at_review), stand_name(each.at_hold));
  }
  return text;
}

}  // namespace

std::string render_kit_check_text(const Household& household, const KitCheck& check, bool all, Day today) {
  const std::string kit = plain::place(household, check.schedule.kit);
  std::string text = check.ready() ? fmt::format("{}: ready.", kit)
                                   : fmt::format("{}: not ready, {} to put right.", kit,
                                                 check.count(Gravity::kMust));
  text += fmt::format(" For {} and {}; what stays must be good through {}.\n",
                      counted("eater", static_cast<std::int64_t>(household.people.size())),
                      counted("day", check.days), plain_day(check.schedule.hold_until));
  for (const Gravity gravity : {Gravity::kMust, Gravity::kShould, Gravity::kNote})
    text += findings_text(household, check, gravity);
  const std::int64_t least =
      check.water.need.people_drink + check.water.need.pets_drink + check.water.food_ml;
  text += fmt::format(
      "\nWater: {} here; to drink at least {} ({} people, {} pets, {} for the food); with washing "
      "{}.\n",
      tenths(check.water.have_ml, "l"), tenths(least, "l"),
      tenths(check.water.need.people_drink, "l"), tenths(check.water.need.pets_drink, "l"),
      tenths(check.water.food_ml, "l"), tenths(check.water.need.all, "l"));
  text += needs_text(household, check);
  if (all)
    text += carry_text(household, check) + lots_text(household, check);
  else
    text += "\nMasses, and how every lot stands: larderloop kit check " + check.schedule.kit.str() +
            " --all\n";
  return text + "\n" + cautions_text(household, check, today);
}

}  // namespace larderloop
