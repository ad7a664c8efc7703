// Menus, the week at the table, review rules, and what is retired.
#include "larderloop/app/by_hand.h"

#include "larderloop/app/review_series.h"
#include "larderloop/calendar/rule.h"
#include "larderloop/core/validate.h"

#include <algorithm>
#include <tuple>

namespace larderloop {
namespace {

struct NamedRule {
  std::string_view word, rule;
};
constexpr NamedRule kNamedRules[] = {
    {"twice-a-year", kDefaultReviewRule},
    {"four-times-a-year", "FREQ=YEARLY;BYMONTH=1,4,7,10;BYDAY=1SA"},
    {"once-a-year", "FREQ=YEARLY;BYMONTH=10;BYDAY=1SA"},
    {"every-month", "FREQ=MONTHLY;BYDAY=1SA"}};
constexpr int kLongestWait = 800;  // days; no accepted rule pauses for longer than two years

bool by_day(const TableException& a, const TableException& b) {
  return std::tie(a.from, a.through) < std::tie(b.from, b.through);
}

template <class Thing>
Status check_retiring(const Thing& thing, std::optional<Day> on, Asked asked) {
  if (on && thing.retired) {
    return fail(ErrorKind::kBadData,
                "'" + thing.name + "' is retired since " + iso_day(*thing.retired) + " already",
                "to bring it back: --back");
  }
  if (!on && !thing.retired)
    return fail(ErrorKind::kBadData, "'" + thing.name + "' is not retired",
                "there is nothing to bring back");
  if (on && *on > asked.today)
    return fail(ErrorKind::kBadData, "'" + iso_day(*on) + "' has not come yet",
                "leave --on away for today");
  return {};
}

}  // namespace

Result<MenuLine> named_menu_line(const Household& household, std::string_view text) {
  const std::string_view digits = text.substr(0, 1) == "#" ? text.substr(1) : text;
  for (const MenuLine& line : household.menu) {
    if (std::to_string(line.id.value()) == digits) return line;
  }
  return fail(ErrorKind::kNotFound, "there is no menu line '" + std::string(text) + "'",
              "see their numbers: larderloop kit list");
}

Outcome<MenuLine> save_menu_line(const Household& household, MenuLine line) {
  if (line.id.empty()) line.id = next_ids(household).menu_line;
  std::sort(line.people.begin(), line.people.end());
  Outcome<MenuLine> outcome;
  outcome.changes.menu = {line};
  outcome.report = std::move(line);
  return outcome;
}

Result<Outcome<std::vector<MenuLine>>> remove_menu_lines(const Household&,
                                                         const std::vector<MenuLine>& lines) {
  Outcome<std::vector<MenuLine>> outcome;
  for (const MenuLine& line : lines) {
    auto& back = outcome.changes.menu_back;
    if (std::find(back.begin(), back.end(), line.id) != back.end()) {
      return fail(ErrorKind::kBadData,
                  "menu line " + std::to_string(line.id.value()) + " is named twice",
                  "name it once");
    }
    back.push_back(line.id);
  }
  outcome.report = lines;
  return outcome;
}

Outcome<std::vector<TableSeat>> set_table(const Household& household,
                                          const std::set<Weekday>& weekdays,
                                          const std::set<Meal>& meals,
                                          std::vector<PersonKey> people) {
  std::sort(people.begin(), people.end());
  std::vector<TableSeat> table;
  for (const TableSeat& seat : household.table) {
    if (weekdays.count(seat.weekday) == 0 || meals.count(seat.meal) == 0) table.push_back(seat);
  }
  for (const Weekday weekday : weekdays) {
    for (const Meal meal : meals) {
      if (!people.empty()) table.push_back({weekday, meal, people});
    }
  }
  std::sort(table.begin(), table.end(), [](const TableSeat& a, const TableSeat& b) {
    return std::tie(a.weekday, a.meal) < std::tie(b.weekday, b.meal);
  });
  Outcome<std::vector<TableSeat>> outcome;
  outcome.changes.table = table;
  outcome.report = std::move(table);
  return outcome;
}

Result<Outcome<TableException>> add_exception(const Household& household,
                                              TableException exception) {
  std::sort(exception.away.begin(), exception.away.end());
  std::sort(exception.guests.begin(), exception.guests.end());
  std::vector<TableException> all = household.exceptions;
  if (std::find(all.begin(), all.end(), exception) != all.end()) {
    return fail(ErrorKind::kBadData, "the very same is noted already",
                "see: larderloop meals show");
  }
  all.insert(std::upper_bound(all.begin(), all.end(), exception, by_day), exception);
  Outcome<TableException> outcome;
  outcome.changes.exceptions = std::move(all);
  outcome.report = std::move(exception);
  return outcome;
}

Result<Outcome<std::vector<TableException>>> remove_exceptions(
    const Household& household, const std::vector<std::size_t>& numbers) {
  Outcome<std::vector<TableException>> outcome;
  std::vector<TableException> left;
  for (const std::size_t number : numbers) {
    if (number >= 1 && number <= household.exceptions.size()) continue;
    return fail(ErrorKind::kNotFound, "there is no number '" + std::to_string(number) + "'",
                "see them: larderloop meals show");
  }
  for (std::size_t index = 0; index < household.exceptions.size(); ++index) {
    const bool out = std::find(numbers.begin(), numbers.end(), index + 1) != numbers.end();
    (out ? outcome.report : left).push_back(household.exceptions[index]);
  }
  outcome.changes.exceptions = std::move(left);
  return outcome;
}

std::vector<std::string> review_rule_words() {
  std::vector<std::string> words;
  for (const NamedRule& each : kNamedRules) words.emplace_back(each.word);
  return words;
}

Result<Outcome<ReviewRule>> set_review_rule(const Household& household, const PlaceKey& kit,
                                            const std::string& rule, Day from,
                                            std::optional<int> slack_days) {
  ReviewRule made{kit, rule, from, slack_days};
  for (const NamedRule& each : kNamedRules) {
    if (each.word == rule) made.rule = std::string(each.rule);
  }
  const bool is_rule = made.rule.find('=') != std::string::npos;
  if (!is_rule) {
    const std::string near = nearest(rule, review_rule_words());
    std::string words;
    for (const std::string& each : review_rule_words()) words += (words.empty() ? "" : ", ") + each;
    return fail(ErrorKind::kBadData, "cannot read the rule '" + rule + "'",
                near.empty() ? "one of " + words + ", or a recurrence rule such as " +
                                   std::string(kDefaultReviewRule)
                             : "did you mean '" + near + "'?");
  }
  auto days = rule_dates(made.rule, from, from, from + Days(kLongestWait));
  // The engine counts the start itself as a date of the rule where the rule does not hit it; the
  // next one is hit.
  if (!days) return fail(days.error());
  Status fit = check_review_rule(made.rule, from);
  for (std::size_t index = 0; !fit && index < days->size() && index < 3; ++index) {
    made.starts = (*days)[index];
    fit = check_review_rule(made.rule, made.starts);
  }
  if (!fit) return fail(fit.error());
  if (household.settings.feed.reviews == FeedReviews::kSeries) {
    if (fit = check_series_of(household, made); !fit) return fail(fit.error());
  }
  Outcome<ReviewRule> outcome;
  outcome.changes.review_rules = {made};
  outcome.report = std::move(made);
  return outcome;
}

Result<Outcome<Person>> retire_person(const Household& household, const Person& person,
                                      std::optional<Day> on, Asked asked) {
  if (Status right = check_retiring(person, on, asked); !right) return fail(right.error());
  Outcome<Person> outcome;
  outcome.report = person;
  outcome.report.retired = on;
  outcome.changes.people = {outcome.report};
  if (!on) return outcome;
  const auto without = [&](std::vector<PersonKey>& people) {
    const auto end = std::remove(people.begin(), people.end(), person.key);
    const bool had = end != people.end();
    people.erase(end, people.end());
    return had;
  };
  std::vector<TableSeat> table = household.table;
  bool seated = false;
  for (TableSeat& seat : table) seated = without(seat.people) || seated;
  table.erase(std::remove_if(table.begin(), table.end(),
                             [](const TableSeat& seat) { return seat.people.empty(); }),
              table.end());
  if (seated) outcome.changes.table = std::move(table);
  std::vector<TableException> exceptions = household.exceptions;
  bool invited = false;
  for (TableException& each : exceptions) invited = without(each.guests) || invited;
  exceptions.erase(std::remove_if(exceptions.begin(), exceptions.end(),
                                  [](const TableException& each) {
                                    return !each.nobody && each.away.empty() && each.guests.empty();
                                  }),
                   exceptions.end());
  if (invited) outcome.changes.exceptions = std::move(exceptions);
  return outcome;
}

Result<Outcome<Food>> retire_food(const Household&, const Food& food, std::optional<Day> on,
                                  Asked asked) {
  if (Status right = check_retiring(food, on, asked); !right) return fail(right.error());
  Outcome<Food> outcome;
  outcome.report = food;
  outcome.report.retired = on;
  outcome.changes.foods = {outcome.report};
  return outcome;
}

Result<Outcome<Place>> retire_place(const Household& household, const Place& place,
                                    std::optional<Day> on, Asked asked) {
  if (Status right = check_retiring(place, on, asked); !right) return fail(right.error());
  Outcome<Place> outcome;
  outcome.report = place;
  outcome.report.retired = on;
  outcome.changes.places = {outcome.report};
  const bool ruled = std::any_of(household.review_rules.begin(), household.review_rules.end(),
                                 [&](const ReviewRule& each) { return each.kit == place.key; });
  if (on && ruled) outcome.changes.review_rules_back = {place.key};
  return outcome;
}

}  // namespace larderloop
