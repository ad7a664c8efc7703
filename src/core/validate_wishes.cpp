// What the family asks of the week's meals.
#include "core/validate_parts.h"

namespace larderloop {
namespace {

void check_days(Findings& findings, const std::string& where, const Wish& wish) {
  if (wish.from.has_value() != wish.through.has_value()) {
    findings.add(where + (wish.from ? "/through" : "/from"), "",
                 "a wish names its first and its last day, or neither",
                 "add the other one; for one day write it twice");
  } else if (wish.from && *wish.through < *wish.from) {
    findings.add(where + "/through", iso_day(*wish.through), "ends before it begins",
                 "write a day from " + iso_day(*wish.from));
  }
}

void check_want(Findings& findings, const std::string& where, const Wish& wish) {
  if (wish.food.empty())
    findings.add(where + "/food", "", "the wish does not say for what", "name a food");
  if (!wish.from) {
    findings.add(where + "/from", "", "a food is wanted on a day",
                 "name the day, as from and as through");
  } else if (wish.through && *wish.through > *wish.from) {
    findings.add(where + "/through", iso_day(*wish.through), "a food is wanted on one day",
                 "write a wish for each day");
  }
  if (!wish.meal)
    findings.add(where + "/meal", "", "a food is wanted at a meal",
                 "name breakfast, lunch, dinner or snack");
}

}  // namespace

void validate_wishes(Findings& findings) {
  std::int64_t last = 0;
  for (std::size_t index = 0; index < findings.household.wishes.size(); ++index) {
    const Wish& wish = findings.household.wishes[index];
    const std::string where = at("wishes", index);
    if (wish.id.value() <= last) {
      findings.add(where + "/id", std::to_string(wish.id.value()),
                   "numbers have to grow from one to the next",
                   "write a number above " + std::to_string(last));
    }
    last = std::max(last, wish.id.value());
    check_days(findings, where, wish);
    if (wish.kind == WishKind::kWant) {
      check_want(findings, where, wish);
    } else if (wish.food.empty() && !wish.from && !wish.through) {
      findings.add(where, "", "a wish for nothing at all needs its days",
                   "name a food, or the days");
    }
    if (!wish.food.empty()) {
      const Food* food = findings.food(wish.food);
      if (food == nullptr) {
        findings.check_food(where + "/food", wish.food);
      } else if (food->kind == FoodKind::kWater || food->kind == FoodKind::kThing) {
        findings.add(where + "/food", wish.food.str(), "it is not served at meals", "name a food");
      }
    }
    if (wish.person) findings.check_person(where + "/person", *wish.person);
  }
}

}  // namespace larderloop
