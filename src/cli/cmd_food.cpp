// food add, change, list, show.
#include "cli/command.h"
#include "cli/food_options.h"
#include "cli/option_parts.h"
#include "larderloop/app/find.h"
#include "larderloop/app/look.h"
#include "larderloop/app/placing.h"
#include "larderloop/app/things.h"
#include "larderloop/render/json_things.h"
#include "larderloop/render/text_things.h"

#include <memory>

namespace larderloop::cli {
namespace {

Result<int> save(const FoodOptions& given, bool fresh, Runtime& runtime) {
  auto saved =
      runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<FoodSaved>> {
        Food food;
        if (fresh) {
          food.name = given.name;
          food.key = FoodKey(given.key);
        } else {
          auto found = named_food(household, given.name);
          if (!found) return fail(found.error());
          food = **found;
          if (!given.rename.empty()) food.name = given.rename;
        }
        if (Status applied = apply_food_options(given, asked.today, food); !applied)
          return fail(applied.error());
        return fresh ? add_food(household, food, asked) : change_food(household, food, asked);
      });
  if (!saved) return fail(saved.error());
  const Food& food = saved->food;
  if (runtime.options.json)
    runtime.print_bytes(render_food_saved_json(runtime.household(), *saved, runtime.asked().today));
  runtime.note(std::string(fresh ? "added" : "changed") + " food " + food.key.str() + " (" +
               food.name + "); next: larderloop lot add " + food.key.str() +
               " --units N --at PLACE --date TEXT");
  for (const PersonRefusal& each : saved->must_not)
    runtime.note(must_not_words(runtime.household(), {each}));
  if (!food.label)
    runtime.note(
        "its label was not read: it counts as unsafe for everyone who avoids anything or keeps a "
        "diet");
  return 0;
}

}  // namespace

Action add_food_add(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<FoodOptions>();
  app.add_option("NAME", given->name, "The name, as people say it")->required();
  add_text(app, "--key", given->key, "KEY",
           "A short key for commands (made from the name if left out)");
  add_food_options(app, *given);
  set_help(app,
           {"larderloop food add 'Lentil stew' --unit pouch --mass 250g --energy 310kcal \\\n"
            "  --role main --meal dinner --pack 'Corner shop:6:8.40' \\\n"
            "  --label-read-by Mira --contains mustard --suits vegan\n"
            "larderloop food add 'Drinking water' --kind water --unit bottle --volume 1.5l\n",
            "Without a label that was read it is unsafe for everyone who avoids anything or keeps "
            "a diet." +
                known_keys_sentence(),
            {}});
  return [given, &runtime] { return save(*given, true, runtime); };
}

Action add_food_change(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<FoodOptions>();
  app.add_option("FOOD", given->name, "Key or name")->required();
  add_text(app, "--name", given->rename, "NAME", "Another name");
  add_food_options(app, *given);
  set_help(app,
           {"larderloop food change lentil-stew --par 8 --pack 'Market hall:1:1.60'\n"
            "larderloop food change lentil-stew --label-read-by Mira --contains mustard,celery\n",
            "What is not named stays. --meal, --role and --pack replace the lists they name; none takes "
            "away an amount, a number, the packs or a remark." +
                known_keys_sentence(),
            {}});
  return [given, &runtime] { return save(*given, false, runtime); };
}

Action add_food_list(CLI::App& app, Runtime& runtime) {
  auto kind = std::make_shared<std::string>();
  add_text(app, "--kind", *kind, "KIND", "Only food, drink, water, pet-food or thing");
  auto all = std::make_shared<bool>(false);
  app.add_flag("--all", *all, "Also what is retired");
  set_help(app, {"larderloop food list\nlarderloop food list --kind pet-food\n", "", {}});
  return [kind, all, &runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      std::vector<Food> foods = household.foods;
      const auto gone = [](const Food& each) { return each.retired.has_value(); };
      if (!*all) foods.erase(std::remove_if(foods.begin(), foods.end(), gone), foods.end());
      if (!kind->empty()) {
        auto wanted = read_food_kind("--kind", *kind);
        if (!wanted) return fail(wanted.error());
        const auto other = [&](const Food& each) { return each.kind != *wanted; };
        foods.erase(std::remove_if(foods.begin(), foods.end(), other), foods.end());
      }
      if (runtime.options.json)
        runtime.print_bytes(render_foods_json(foods, asked.today));
      else
        runtime.print(render_foods(household, foods, runtime.width()));
      return 0;
    });
  };
}

Action add_food_show(CLI::App& app, Runtime& runtime) {
  auto name = std::make_shared<std::string>();
  app.add_option("FOOD", *name, "Key or name")->required();
  set_help(app, {"larderloop food show lentil-stew\n",
                 "Shows the label, whom it is not for, and the lots on hand.",
                 {}});
  return [name, &runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      auto food = named_food(household, *name);
      if (!food) return fail(food.error());
      auto show = show_food(household, (*food)->key, asked.today);
      if (!show) return fail(show.error());
      if (runtime.options.json)
        runtime.print_bytes(render_food_json(household, *show, asked.today));
      else
        runtime.print(render_food(household, *show, asked.today));
      return 0;
    });
  };
}

}  // namespace larderloop::cli
