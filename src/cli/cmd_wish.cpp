// wish add, list, remove.
#include "cli/command.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/app/wish.h"
#include "larderloop/render/wishes.h"

#include <memory>

namespace larderloop::cli {
namespace {

struct WishOptions {
  std::string kind, food, day, from, through, meal, person;
};

Status read_days(const WishOptions& given, Day today, Wish& wish) {
  if (!given.day.empty() && !(given.from.empty() && given.through.empty())) {
    return fail(ErrorKind::kUsage, "--day is one day, --from and --through are several",
                "give --day DATE, or --from DATE --through DATE");
  }
  const auto read = [&](const char* name, const std::string& text,
                        std::optional<Day>& into) -> Status {
    if (text.empty()) return {};
    auto day = read_day(name, text, today);
    if (!day) return fail(day.error());
    into = *day;
    return {};
  };
  if (Status done = read("--from", given.from, wish.from); !done) return done;
  if (Status done = read("--through", given.through, wish.through); !done) return done;
  if (given.day.empty()) return {};
  if (Status done = read("--day", given.day, wish.from); !done) return done;
  wish.through = wish.from;
  return {};
}

Result<Wish> read_wish(const Household& household, const WishOptions& given, Day today) {
  Wish wish;
  auto kind = read_word<WishKind>("KIND", given.kind, parse_wish_kind,
                                  names_of(kAllWishKinds, wish_kind_name));
  if (!kind) return fail(kind.error());
  wish.kind = *kind;
  if (!given.food.empty()) {
    auto food = named_food(household, given.food);
    if (!food) return fail(food.error());
    wish.food = (*food)->key;
  }
  if (Status days = read_days(given, today, wish); !days) return fail(days.error());
  if (!given.meal.empty()) {
    auto meal = read_word<Meal>("--meal", given.meal, parse_meal, names_of(kAllMeals, meal_name));
    if (!meal) return fail(meal.error());
    wish.meal = *meal;
  }
  if (!given.person.empty()) {
    auto person = named_person(household, given.person);
    if (!person) return fail(person.error());
    wish.person = (*person)->key;
  }
  return wish;
}

}  // namespace

Action add_wish_add(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<WishOptions>();
  app.add_option("KIND", given->kind, "want or not")->required();
  app.add_option("FOOD", given->food, "Key or name; not, without a food: nothing of the kit");
  add_text(app, "--day", given->day, "DATE", "On this day");
  add_text(app, "--from", given->from, "DATE", "From this day ...");
  add_text(app, "--through", given->through, "DATE", "... through this one");
  add_text(app, "--meal", given->meal, "MEAL", "At breakfast, lunch, dinner or snack");
  add_text(app, "--person", given->person, "PERSON",
           "For this person; left out: everyone at the table");
  set_help(app, {"larderloop wish add want lentil-pouch --day 2027-05-07 --meal dinner\n"
                 "larderloop wish add want oat-bar --day tomorrow --meal snack --person mira\n"
                 "larderloop wish add not chickpea-can --person ned\n"
                 "larderloop wish add not --day 2027-05-09 --meal dinner\n",
                 "A want names a food, a day and a meal. Without days, meal or person a 'not' is "
                 "for always, every meal, everyone. A wish is never stronger than a label, a date "
                 "or what somebody eats in a week; the plan says which want cannot be, and why.",
                 {}});
  return [given, &runtime]() -> Result<int> {
    auto added =
        runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<Wish>> {
          auto wish = read_wish(household, *given, asked.today);
          if (!wish) return fail(wish.error());
          return add_wish(household, std::move(*wish), asked);
        });
    if (!added) return fail(added.error());
    if (runtime.options.json) {
      runtime.print_bytes(render_wishes_json(runtime.household(), {*added}, runtime.asked().today));
    }
    runtime.note("wish " + std::to_string(added->id.value()) + ": " +
                 wish_words(runtime.household(), *added) + "; what becomes of it: larderloop plan");
    return 0;
  };
}

Action add_wish_list(CLI::App& app, Runtime& runtime) {
  set_help(app, {"larderloop wish list\nlarderloop wish list --json\n",
                 "Which of the wants can be is in the plan: larderloop plan.",
                 {}});
  return [&runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      if (runtime.options.json) {
        runtime.print_bytes(render_wishes_json(household, household.wishes, asked.today));
      } else {
        runtime.print(render_wishes(household, household.wishes, asked.today, runtime.width()));
      }
      return 0;
    });
  };
}

Action add_wish_remove(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<std::vector<std::string>>();
  app.add_option("WISH", *given, "Numbers of wishes")->required();
  set_help(app, {"larderloop wish remove 3\nlarderloop wish remove 3 4\n",
                 "See their numbers: larderloop wish list.",
                 {}});
  return [given, &runtime]() -> Result<int> {
    auto removed =
        runtime.write([&](const Household& household, Asked) -> Result<Outcome<std::vector<Wish>>> {
          std::vector<WishId> which;
          for (const std::string& text : *given) {
            auto wish = named_wish(household, text);
            if (!wish) return fail(wish.error());
            which.push_back(*wish);
          }
          return remove_wishes(household, which);
        });
    if (!removed) return fail(removed.error());
    if (runtime.options.json) {
      runtime.print_bytes(render_wishes_json(runtime.household(), *removed, runtime.asked().today));
    }
    for (const Wish& wish : *removed) {
      runtime.note("took back wish " + std::to_string(wish.id.value()) + ": " +
                   wish_words(runtime.household(), wish));
    }
    return 0;
  };
}

}  // namespace larderloop::cli
