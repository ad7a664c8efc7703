// kit list, add, change, remove: the lines of kit menus.
#include "cli/command.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/by_hand.h"
#include "larderloop/app/find.h"
#include "larderloop/render/by_hand.h"

#include <memory>

namespace larderloop::cli {
namespace {

constexpr int kMostDay = 31;
constexpr int kMostPriority = 100;

struct LineOptions {
  std::string which, place, day, meal, role, food, units, volume, priority;
  std::vector<std::string> people;
};

void add_line_options(CLI::App& app, LineOptions& given) {
  add_list(app, "--for", given.people, "PEOPLE",
           "Who it is for: people, or everyone; nobody for a thing");
  add_text(app, "--day", given.day, "N", "Day of the kit, from 1; any when left out");
  add_text(app, "--meal", given.meal, "MEAL", "breakfast, lunch, dinner or snack; any for any");
  add_text(app, "--role", given.role, "ROLE",
           "What it is: main, side, fruit, snack, drink, comfort, pet-meal, water, thing");
  add_text(app, "--food", given.food, "FOOD", "This very food, instead of a role");
  add_text(app, "--units", given.units, "N", "How many packages (1 when left out)");
  add_text(app, "--volume", given.volume, "AMOUNT", "For water: how much, as 6l");
  add_text(app, "--priority", given.priority, "N",
           "1 to 100: what is filled first; by role when left out (main 10, others 3)");
}

Status apply_who(const Household& household, const LineOptions& given, MenuLine& line) {
  if (given.people.empty()) return {};
  line.everyone = false;
  line.people.clear();
  if (given.people == std::vector<std::string>{"nobody"}) return {};
  if (given.people == std::vector<std::string>{"everyone"}) {
    line.everyone = true;
    return {};
  }
  for (const std::string& text : given.people) {
    auto person = named_person(household, text);
    if (!person) return fail(person.error());
    line.people.push_back((*person)->key);
  }
  return {};
}

Status apply_what(const Household& household, const LineOptions& given, MenuLine& line) {
  if (!given.role.empty() && !given.food.empty())
    return fail(ErrorKind::kUsage, "'--role' and '--food' exclude each other", "give one of them");
  if (!given.role.empty()) {
    auto role = read_word<Role>("--role", given.role, parse_role, names_of(kAllRoles, role_name));
    if (!role) return fail(role.error());
    line.role = *role;
    line.food = FoodKey();
  }
  if (!given.food.empty()) {
    auto food = named_food(household, given.food);
    if (!food) return fail(food.error());
    line.food = (*food)->key;
    line.role.reset();
  }
  if (!given.units.empty()) {
    auto units = read_count("--units", given.units, 1, kMaxUnits);
    if (!units) return fail(units.error());
    line.units = *units;
    line.ml = 0;
  }
  if (!given.volume.empty()) {
    auto volume = read_volume("--volume", given.volume);
    if (!volume) return fail(volume.error());
    line.ml = *volume;
    line.units = MenuLine{}.units;
  }
  return {};
}

Status apply(const Household& household, const LineOptions& given, MenuLine& line) {
  if (!given.place.empty()) {
    auto place = named_place(household, given.place);
    if (!place) return fail(place.error());
    line.place = (*place)->key;
  }
  if (Status who = apply_who(household, given, line); !who) return who;
  if (Status what = apply_what(household, given, line); !what) return what;
  if (!given.day.empty()) {
    auto day =
        given.day == "any" ? Result<std::int64_t>(0) : read_count("--day", given.day, 0, kMostDay);
    if (!day) return fail(day.error());
    line.day = static_cast<int>(*day);
  }
  if (given.meal == "any") {
    line.meal.reset();
  } else if (!given.meal.empty()) {
    auto meal = read_word<Meal>("--meal", given.meal, parse_meal, names_of(kAllMeals, meal_name));
    if (!meal) return fail(meal.error());
    line.meal = *meal;
  }
  if (!given.priority.empty()) {
    auto priority = read_count("--priority", given.priority, 0, kMostPriority);
    if (!priority) return fail(priority.error());
    line.priority = static_cast<int>(*priority);
  }
  return {};
}

Result<int> save(const LineOptions& given, bool fresh, Runtime& runtime) {
  auto saved = runtime.write([&](const Household& household, Asked) -> Result<Outcome<MenuLine>> {
    MenuLine line;
    if (!fresh) {
      auto found = named_menu_line(household, given.which);
      if (!found) return fail(found.error());
      line = *found;
    }
    if (Status applied = apply(household, given, line); !applied) return fail(applied.error());
    return save_menu_line(household, std::move(line));
  });
  if (!saved) return fail(saved.error());
  if (runtime.options.json) runtime.print_bytes(render_menu_json({*saved}, runtime.asked().today));
  runtime.note(std::string(fresh ? "added" : "changed") + " menu line " +
               std::to_string(saved->id.value()) + ": " +
               menu_line_words(runtime.household(), *saved) +
               "; what is missing now: larderloop plan");
  return 0;
}

}  // namespace

Action add_kit_add(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<LineOptions>();
  app.add_option("PLACE", given->place, "The bag, box or kit where it is kept")->required();
  add_line_options(app, *given);
  set_help(app, {"larderloop kit add bag-mira --for mira --day 1 --meal dinner --role main\n"
                 "larderloop kit add home-kit --for everyone --role water --volume 27l\n"
                 "larderloop kit add home-kit --food can-opener\n",
                 "A kit is the food and the things packed for one purpose; its menu says, line by "
                 "line, who has what on which day, and "
                 "where it is kept. The plan fills the kit to its menu.",
                 {}});
  return [given, &runtime] { return save(*given, true, runtime); };
}

Action add_kit_change(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<LineOptions>();
  app.add_option("LINE", given->which, "The number of the line")->required();
  add_text(app, "--at", given->place, "PLACE", "Keep it in another bag, box or kit");
  add_line_options(app, *given);
  set_help(
      app,
      {"larderloop kit change 12 --units 2\nlarderloop kit change 12 --for mira,ned --meal lunch\n",
       "What is not named stays as it is. See the numbers: larderloop kit list.",
       {}});
  return [given, &runtime] { return save(*given, false, runtime); };
}

Action add_kit_list(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<LineOptions>();
  app.add_option("PLACE", given->place, "Only this kit, box or bag");
  add_list(app, "--for", given->people, "PERSON", "Only what is for this person");
  set_help(app, {"larderloop kit list\nlarderloop kit list home-kit --for mira\n",
                 "What is missing to it: larderloop plan.",
                 {}});
  return [given, &runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      PlaceKey outer;
      if (!given->place.empty()) {
        auto place = named_place(household, given->place);
        if (!place) return fail(place.error());
        outer = (*place)->key;
      }
      std::vector<PersonKey> people;
      for (const std::string& text : given->people) {
        auto person = named_person(household, text);
        if (!person) return fail(person.error());
        people.push_back((*person)->key);
      }
      std::vector<MenuLine> lines;
      for (const MenuLine& line : household.menu) {
        if (!outer.empty() && !is_within(household, line.place, outer)) continue;
        const auto concerns = [&](const PersonKey& key) {
          const Person* person = find_person(household, key);
          return (line.everyone && person->is_human()) ||
                 std::find(line.people.begin(), line.people.end(), key) != line.people.end();
        };
        if (!people.empty() && std::none_of(people.begin(), people.end(), concerns)) continue;
        lines.push_back(line);
      }
      if (runtime.options.json)
        runtime.print_bytes(render_menu_json(lines, asked.today));
      else
        runtime.print(render_menu(household, lines, runtime.width()));
      return 0;
    });
  };
}

Action add_kit_remove(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<std::vector<std::string>>();
  app.add_option("LINE", *given, "Numbers of menu lines")->required();
  set_help(app, {"larderloop kit remove 12\nlarderloop kit remove 12 13\n",
                 "The menu asks for it no more; what lies in the kit stays there until a review.",
                 {}});
  return [given, &runtime]() -> Result<int> {
    auto removed = runtime.write(
        [&](const Household& household, Asked) -> Result<Outcome<std::vector<MenuLine>>> {
          std::vector<MenuLine> lines;
          for (const std::string& text : *given) {
            auto line = named_menu_line(household, text);
            if (!line) return fail(line.error());
            lines.push_back(*line);
          }
          return remove_menu_lines(household, lines);
        });
    if (!removed) return fail(removed.error());
    if (runtime.options.json)
      runtime.print_bytes(render_menu_json(*removed, runtime.asked().today));
    for (const MenuLine& line : *removed)
      runtime.note("removed menu line " + std::to_string(line.id.value()) + ": " +
                   menu_line_words(runtime.household(), line));
    return 0;
  };
}

}  // namespace larderloop::cli
