#include "larderloop/app/wish.h"

#include <algorithm>
#include <charconv>
#include <set>

namespace larderloop {
namespace {

Status check_want(const Wish& wish) {
  if (wish.food.empty())
    return fail(ErrorKind::kBadData, "the wish does not say for what",
                "name a food: larderloop wish add want FOOD --day DATE --meal MEAL");
  if (!wish.from || wish.through != wish.from)
    return fail(ErrorKind::kBadData, "a food is wanted on one day", "name it: --day DATE");
  if (!wish.meal)
    return fail(ErrorKind::kBadData, "a food is wanted at a meal",
                "name it: --meal breakfast, lunch, dinner or snack");
  return {};
}

Status check_days(const Wish& wish, Day today) {
  if (wish.from.has_value() != wish.through.has_value())
    return fail(ErrorKind::kBadData, "a wish names its first and its last day, or neither",
                "give both, --from DATE and --through DATE, or --day DATE for one");
  if (!wish.from) return {};
  if (*wish.through < *wish.from)
    return fail(ErrorKind::kBadData, "the days end before they begin",
                "give --through a day from " + iso_day(*wish.from));
  if (*wish.through < today)
    return fail(ErrorKind::kBadData, "that day has passed: " + plain_day(*wish.through),
                "name a day from today, " + iso_day(today));
  return {};
}

bool same_but_for_the_number(Wish a, const Wish& b) {
  a.id = b.id;
  return a == b;
}

}  // namespace

Result<Outcome<Wish>> add_wish(const Household& household, Wish wish, Asked asked) {
  if (Status right = check_days(wish, asked.today); !right) return fail(right.error());
  if (wish.kind == WishKind::kWant) {
    if (Status right = check_want(wish); !right) return fail(right.error());
  } else if (wish.food.empty() && !wish.from) {
    return fail(ErrorKind::kBadData, "the wish does not say what is not wanted, or when",
                "name a food, or the days on which nothing of the kit is to be planned");
  }
  if (!wish.food.empty()) {
    const Food* food = find_food(household, wish.food);
    if (food == nullptr)
      return fail(ErrorKind::kNotFound, "there is no food '" + wish.food.str() + "'",
                  "see them all: larderloop food list");
    if (food->kind == FoodKind::kWater || food->kind == FoodKind::kThing)
      return fail(ErrorKind::kBadData, "'" + food->name + "' is not served at meals",
                  "name a food: larderloop food list");
  }
  if (wish.person && find_person(household, *wish.person) == nullptr)
    return fail(ErrorKind::kNotFound, "there is no person '" + wish.person->str() + "'",
                "see them all: larderloop person list");
  for (const Wish& each : household.wishes) {
    if (same_but_for_the_number(wish, each))
      return fail(ErrorKind::kBadData,
                  "that wish is there already: " + std::to_string(each.id.value()),
                  "see them all: larderloop wish list");
  }
  wish.id = next_ids(household).wish;
  Outcome<Wish> outcome;
  outcome.report = wish;
  outcome.changes.wishes = {std::move(wish)};
  return outcome;
}

Result<WishId> named_wish(const Household& household, std::string_view text) {
  std::string_view digits = text;
  if (!digits.empty() && digits.front() == '#') digits.remove_prefix(1);
  std::int64_t number = 0;
  const auto [end, wrong] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
  const bool whole = wrong == std::errc() && end == digits.data() + digits.size();
  const bool there =
      whole && std::any_of(household.wishes.begin(), household.wishes.end(),
                           [&](const Wish& each) { return each.id.value() == number; });
  if (!there)
    return fail(ErrorKind::kNotFound, "there is no wish '" + std::string(text) + "'",
                "see them all: larderloop wish list");
  return WishId(number);
}

Result<Outcome<std::vector<Wish>>> remove_wishes(const Household& household,
                                                 const std::vector<WishId>& which) {
  Outcome<std::vector<Wish>> outcome;
  std::set<WishId> seen;
  for (const WishId id : which) {
    auto wish = named_wish(household, std::to_string(id.value()));
    if (!wish) return fail(wish.error());
    if (!seen.insert(id).second)
      return fail(ErrorKind::kBadData, "wish " + std::to_string(id.value()) + " is named twice",
                  "name it once");
    outcome.report.push_back(*std::find_if(household.wishes.begin(), household.wishes.end(),
                                           [&](const Wish& each) { return each.id == id; }));
  }
  outcome.changes.wishes_back = which;
  return outcome;
}

}  // namespace larderloop
