// meals show, set, away, guests, none, remove: the household's week at the table.
#include "cli/command.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/by_hand.h"
#include "larderloop/app/find.h"
#include "larderloop/render/by_hand.h"

#include <memory>

namespace larderloop::cli {
namespace {

struct WeekOptions {
  std::string days, meals, people;
};
struct TimeOptions {
  std::string people, day, from, through, note;
  std::vector<std::string> meals;
};

std::vector<std::string> split(const std::string& text) {
  std::vector<std::string> words;
  std::string word;
  for (const char each : text + ",") {
    if (each != ',')
      word += each;
    else if (!word.empty())
      words.push_back(std::move(word)), word.clear();
  }
  return words;
}

Result<std::vector<PersonKey>> read_people(const Household& household, const std::string& text) {
  std::vector<PersonKey> people;
  if (text == "nobody") return people;
  if (text == "everyone") {
    for (const Person& each : household.people) {
      if (each.is_human() && !each.retired) people.push_back(each.key);
    }
    return people;
  }
  for (const std::string& word : split(text)) {
    auto person = named_person(household, word);
    if (!person) return fail(person.error());
    people.push_back((*person)->key);
  }
  return people;
}

constexpr Weekday kWeek[] = {Weekday::kMonday,   Weekday::kTuesday, Weekday::kWednesday,
                             Weekday::kThursday, Weekday::kFriday,  Weekday::kSaturday,
                             Weekday::kSunday};

Result<std::set<Weekday>> read_weekdays(const std::string& text) {
  std::set<Weekday> days;
  for (const std::string& word : split(text)) {
    if (word == "daily") {
      days.insert(std::begin(kWeek), std::end(kWeek));
    } else if (word == "weekdays") {
      days.insert(std::begin(kWeek), std::begin(kWeek) + 5);
    } else if (word == "weekends") {
      days.insert(std::begin(kWeek) + 5, std::end(kWeek));
    } else if (const auto day = parse_weekday(word)) {
      days.insert(*day);
    } else {
      return fail(unknown_word("DAYS", word,
                               {"daily", "weekdays", "weekends", "monday", "tuesday", "wednesday",
                                "thursday", "friday", "saturday", "sunday"}));
    }
  }
  if (days.empty())
    return fail(ErrorKind::kBadData, "no day is named", "for example weekdays, or monday,friday");
  return days;
}

Result<TableException> read_time(const TimeOptions& given, Day today) {
  TableException exception;
  const bool span = !given.from.empty() || !given.through.empty();
  if (given.day.empty() == !span) {
    return fail(ErrorKind::kUsage, "one of '--day' and '--from' with '--through' is needed",
                "for example --day tomorrow, or --from 2027-07-05 --through 2027-07-18");
  }
  if (span && (given.from.empty() || given.through.empty()))
    return fail(ErrorKind::kUsage, "'--from' and '--through' go together",
                "name the first and the last day");
  auto from = read_day(span ? "--from" : "--day", span ? given.from : given.day, today);
  if (!from) return fail(from.error());
  auto through = read_day(span ? "--through" : "--day", span ? given.through : given.day, today);
  if (!through) return fail(through.error());
  auto meals = read_meals("--meal", given.meals);
  if (!meals) return fail(meals.error());
  exception.from = *from;
  exception.through = *through;
  exception.meals = *meals;
  exception.note = given.note;
  return exception;
}

void add_time_options(CLI::App& app, TimeOptions& given) {
  add_text(app, "--day", given.day, "DATE", "On this day");
  add_text(app, "--from", given.from, "DATE", "From this day ...");
  add_text(app, "--through", given.through, "DATE", "... through this one");
  add_list(app, "--meal", given.meals, "MEALS", "At these meals only");
  add_text(app, "--note", given.note, "TEXT", "A remark");
}

enum class Otherwise { kAway, kGuests, kNone };

Action exception_action(const std::shared_ptr<TimeOptions>& given, Otherwise what,
                        Runtime& runtime) {
  return [given, what, &runtime]() -> Result<int> {
    auto added = runtime.write(
        [&](const Household& household, Asked asked) -> Result<Outcome<TableException>> {
          auto exception = read_time(*given, asked.today);
          if (!exception) return fail(exception.error());
          auto people = read_people(household, given->people);
          if (!people) return fail(people.error());
          if (what == Otherwise::kAway) exception->away = *people;
          if (what == Otherwise::kGuests) exception->guests = *people;
          exception->nobody = what == Otherwise::kNone;
          return add_exception(household, std::move(*exception));
        });
    if (!added) return fail(added.error());
    if (runtime.options.json)
      runtime.print_bytes(render_meals_json(runtime.household(), runtime.asked().today));
    runtime.note("noted: " + exception_words(runtime.household(), *added) +
                 "; see: larderloop meals show");
    return 0;
  };
}

}  // namespace

Action add_meals_show(CLI::App& app, Runtime& runtime) {
  set_help(app, {"larderloop meals show\nlarderloop meals show --json\n",
                 "Kit food is planned into these meals, for these people.",
                 {}});
  return [&runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      if (runtime.options.json)
        runtime.print_bytes(render_meals_json(household, asked.today));
      else
        runtime.print(render_meals(household, runtime.width()));
      return 0;
    });
  };
}

Action add_meals_set(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<WeekOptions>();
  app.add_option("DAYS", given->days,
                 "Days of the week with commas between, or daily, weekdays, weekends")
      ->required();
  app.add_option("MEALS", given->meals,
                 "Meals with commas between: breakfast, lunch, dinner, snack")
      ->required();
  app.add_option("PEOPLE", given->people, "People with commas between, everyone, or nobody")
      ->required();
  set_help(app, {"larderloop meals set weekdays dinner mira,ned\nlarderloop meals set sunday "
                 "breakfast,lunch everyone\n"
                 "larderloop meals set friday dinner nobody\n",
                 "Says who is usually at the table then, in place of what was said before.",
                 {}});
  return [given, &runtime]() -> Result<int> {
    auto set = runtime.write(
        [&](const Household& household, Asked) -> Result<Outcome<std::vector<TableSeat>>> {
          auto days = read_weekdays(given->days);
          if (!days) return fail(days.error());
          auto meals = read_meals("MEALS", split(given->meals));
          if (!meals) return fail(meals.error());
          auto people = read_people(household, given->people);
          if (!people) return fail(people.error());
          return set_table(household, *days, *meals, std::move(*people));
        });
    if (!set) return fail(set.error());
    if (runtime.options.json)
      runtime.print_bytes(render_meals_json(runtime.household(), runtime.asked().today));
    runtime.note("the usual week now has " + std::to_string(set->size()) +
                 " meals; see: larderloop meals show");
    return 0;
  };
}

Action add_meals_away(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<TimeOptions>();
  app.add_option("PEOPLE", given->people, "Who is away; several with commas between")->required();
  add_time_options(app, *given);
  set_help(app, {"larderloop meals away ned --from 2027-07-05 --through 2027-07-18\nlarderloop "
                 "meals away mira --day tomorrow --meal dinner\n",
                 "Nothing is planned for them then.",
                 {}});
  return exception_action(given, Otherwise::kAway, runtime);
}

Action add_meals_guests(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<TimeOptions>();
  app.add_option("PEOPLE", given->people,
                 "Who comes: people of the book; several with commas between")
      ->required();
  add_time_options(app, *given);
  set_help(app, {"larderloop meals guests tove --day tomorrow --meal dinner\n",
                 "Guests are people of the book, so that what they must not have is known: "
                 "larderloop person add.",
                 {}});
  return exception_action(given, Otherwise::kGuests, runtime);
}

Action add_meals_none(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<TimeOptions>();
  add_time_options(app, *given);
  set_help(app, {"larderloop meals none --from 2027-07-05 --through 2027-07-18 --note "
                 "holidays\nlarderloop meals none --day +3d --meal dinner\n",
                 "Nobody eats at home then: holidays, a meal out.",
                 {}});
  given->people = "nobody";
  return exception_action(given, Otherwise::kNone, runtime);
}

Action add_meals_remove(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<std::vector<std::string>>();
  app.add_option("NUMBER", *given, "Numbers as larderloop meals show has them")->required();
  set_help(app, {"larderloop meals remove 2\n", "It is as usual again then.", {}});
  return [given, &runtime]() -> Result<int> {
    auto removed = runtime.write(
        [&](const Household& household, Asked) -> Result<Outcome<std::vector<TableException>>> {
          std::vector<std::size_t> numbers;
          for (const std::string& text : *given) {
            auto number = read_count("NUMBER", text, 1, kMaxUnits);
            if (!number) return fail(number.error());
            numbers.push_back(static_cast<std::size_t>(*number));
          }
          return remove_exceptions(household, numbers);
        });
    if (!removed) return fail(removed.error());
    if (runtime.options.json)
      runtime.print_bytes(render_meals_json(runtime.household(), runtime.asked().today));
    for (const TableException& each : *removed)
      runtime.note("removed: " + exception_words(runtime.household(), each));
    return 0;
  };
}

}  // namespace larderloop::cli
