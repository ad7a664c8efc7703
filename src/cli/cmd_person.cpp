// person add, change, list, show.
#include "cli/command.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/app/look.h"
#include "larderloop/app/things.h"
#include "larderloop/render/json_things.h"
#include "larderloop/render/text_things.h"

#include <memory>

namespace larderloop::cli {
namespace {

struct PersonOptions {
  std::string name, key, rename, born, species, appetite, tolerance, energy, note, sex, height,
      body_mass, activity;
  std::vector<std::string> avoid, avoid_accepting, avoid_own, no_avoid, diets, no_diets, ratings;
};

void add_person_options(CLI::App& app, PersonOptions& given) {
  add_text(app, "--born", given.born, "DATE", "Day of birth");
  add_text(app, "--species", given.species, "WORD", "For a pet: cat, dog, ...");
  add_text(app, "--appetite", given.appetite, "SERVINGS",
           "Servings at one meal; a child's half portion is 0.5; 0: no kit food, as a baby");
  add_text(app, "--tolerance", given.tolerance, "SERVINGS",
           "Servings of kit food in one week at most; none: as the household's setting");
  add_text(app, "--energy", given.energy, "KCAL", "Energy wanted a day from a kit");
  add_text(app, "--note", given.note, "TEXT", "A remark");
  const std::string body = "For estimates of need and of what can be carried";
  add_text(app, "--sex", given.sex, "WORD", "female or male, as the equations of need have it")
      ->group(body);
  add_text(app, "--height", given.height, "CM", "Height in centimetres, as 165")->group(body);
  add_text(app, "--body-mass", given.body_mass, "AMOUNT", "Of the body, as 62kg; also of a pet")
      ->group(body);
  add_text(app, "--activity", given.activity, "WORD",
           "On an ordinary day: inactive, low-active, active, very-active")
      ->group(body);
  const std::string group = "What the person must not have";
  add_list(app, "--avoid", given.avoid, "KEYS",
           "Allergens, as sesame,tree_nut:almond; 'may contain' is refused too")
      ->group(group);
  add_list(app, "--avoid-accepting-may-contain", given.avoid_accepting, "KEYS",
           "Allergens where the person accepts 'may contain'")
      ->group(group);
  add_list(app, "--avoid-own", given.avoid_own, "KEYS",
           "Things that no list knows, as kiwi; labels read before today count as unread")
      ->group(group);
  add_list(app, "--diet", given.diets, "DIETS",
           "Diets the person keeps: vegan, vegetarian, gluten-free, ...")
      ->group(group);
}

// "none" takes away what was said; true when it did, or when nothing is said at all.
template <class T>
bool settled(const std::string& text, std::optional<T>& value) {
  if (text == "none") value.reset();
  return text.empty() || text == "none";
}

Status apply_body(const PersonOptions& given, Person& person) {
  if (!settled(given.sex, person.sex)) {
    auto sex = read_word<Sex>("--sex", given.sex, parse_sex, names_of(kAllSexes, sex_name));
    if (!sex) return fail(sex.error());
    person.sex = *sex;
  }
  if (!settled(given.height, person.height_cm)) {
    constexpr std::int64_t kLeastCm = 20;
    constexpr std::int64_t kMostCm = 250;
    auto height = read_count("--height", given.height, kLeastCm, kMostCm);
    if (!height) return fail(height.error());
    person.height_cm = *height;
  }
  if (!settled(given.body_mass, person.mass_g)) {
    auto mass = read_mass("--body-mass", given.body_mass);
    if (!mass) return fail(mass.error());
    person.mass_g = *mass;
  }
  if (!settled(given.activity, person.activity)) {
    auto activity = read_word<Activity>("--activity", given.activity, parse_activity,
                                        names_of(kAllActivities, activity_name));
    if (!activity) return fail(activity.error());
    person.activity = *activity;
  }
  return {};
}

Status apply(const Household& household, const PersonOptions& given, Day today, Person& person) {
  if (Status body = apply_body(given, person); !body) return body;
  if (!settled(given.born, person.born)) {
    auto day = read_day("--born", given.born, today);
    if (!day) return fail(day.error());
    person.born = *day;
  }
  if (!given.species.empty()) person.species = given.species;
  if (!given.appetite.empty()) {
    auto value = read_share("--appetite", given.appetite);
    if (!value) return fail(value.error());
    person.appetite = *value;
  }
  if (!settled(given.tolerance, person.tolerance)) {
    auto value = read_share("--tolerance", given.tolerance);
    if (!value) return fail(value.error());
    person.tolerance = *value;
  }
  if (!settled(given.energy, person.energy_kcal)) {
    auto value = read_energy("--energy", given.energy);
    if (!value) return fail(value.error());
    person.energy_kcal = *value;
  }
  if (!given.note.empty()) person.note = given.note == "none" ? "" : given.note;
  const auto forget = [&](const std::string& key) {
    for (auto each = person.avoid.begin(); each != person.avoid.end(); ++each) {
      if (each->key != key) continue;
      person.avoid.erase(each);
      return true;
    }
    return false;
  };
  for (const std::string& key : given.no_avoid) {
    if (!forget(key)) {
      return fail(ErrorKind::kBadData, "'" + person.name + "' does not avoid '" + key + "'",
                  "see what is avoided: larderloop person show " + person.key.str());
    }
  }
  const auto avoid = [&](const std::vector<std::string>& keys, bool accept) {
    for (const std::string& key : keys) {
      // In a change the new word replaces the old one; twice in one call is a contradiction and
      // stays visible.
      const bool twice =
          accept && std::find(given.avoid.begin(), given.avoid.end(), key) != given.avoid.end();
      if (!twice) forget(key);
      person.avoid.push_back({key, accept});
    }
  };
  avoid(given.avoid, false);
  avoid(given.avoid_accepting, true);
  avoid(given.avoid_own, false);
  auto diets = read_diets("--diet", given.diets);
  if (!diets) return fail(diets.error());
  auto no_diets = read_diets("--no-diet", given.no_diets);
  if (!no_diets) return fail(no_diets.error());
  for (const Diet diet : *no_diets) person.diets.erase(diet);
  person.diets.insert(diets->begin(), diets->end());
  for (const std::string& text : given.ratings) {
    const std::size_t colon = text.rfind(':');
    auto food = named_food(household, text.substr(0, colon));
    if (!food) return fail(food.error());
    const std::string number = colon == std::string::npos ? "" : text.substr(colon + 1);
    const std::vector<std::string> scale = {"-2", "-1", "0", "+1", "+2", "1", "2"};
    if (std::find(scale.begin(), scale.end(), number) == scale.end()) {
      return fail(ErrorKind::kBadData, "cannot read --rate '" + text + "'",
                  "write FOOD:NUMBER with -2 (refuses), -1, 0, 1 or 2 (likes)");
    }
    const int rating = std::stoi(number);
    if (rating == 0)
      person.ratings.erase((*food)->key);
    else
      person.ratings[(*food)->key] = rating;
  }
  return {};
}

Result<int> save(const PersonOptions& given, bool fresh, Runtime& runtime) {
  auto saved =
      runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<PersonSaved>> {
        Person person;
        if (fresh) {
          person.name = given.name;
          person.key = PersonKey(given.key);
        } else {
          auto found = named_person(household, given.name);
          if (!found) return fail(found.error());
          person = **found;
          if (!given.rename.empty()) person.name = given.rename;
        }
        if (Status applied = apply(household, given, asked.today, person); !applied)
          return fail(applied.error());
        return fresh ? add_person(household, person, given.avoid_own, asked)
                     : change_person(household, person, given.avoid_own, asked);
      });
  if (!saved) return fail(saved.error());
  const Person& person = saved->person;
  if (runtime.options.json)
    runtime.print_bytes(render_person_saved_json(*saved, runtime.asked().today));
  runtime.note(std::string(fresh ? "added" : "changed") + " person " + person.key.str() + " (" +
               person.name + "); see: larderloop person show " + person.key.str());
  for (const std::string& key : saved->own_allergens) {
    runtime.note("'" + key + "' is on no list: labels read before today count as unread for " +
                 person.name);
  }
  for (const LotId lot : saved->now_wrong) {
    runtime.warn("lot " + std::to_string(lot.value()) + " lies where " + person.name +
                 " eats and is not for " + person.name + "; move it: larderloop lot show " +
                 std::to_string(lot.value()));
  }
  return 0;
}

}  // namespace

Action add_person_add(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<PersonOptions>();
  app.add_option("NAME", given->name, "The name, as people say it")->required();
  add_text(app, "--key", given->key, "KEY",
           "A short key for commands (made from the name if left out)");
  add_person_options(app, *given);
  set_help(
      app,
      {"larderloop person add Mira --born 1988-04-02 --avoid sesame --diet vegetarian\n"
       "larderloop person add Ada --appetite 0.5 --avoid-accepting-may-contain milk\n"
       "larderloop person add Tomte --species cat\n",
       "A food whose label nobody read is not for a person who avoids anything or keeps a diet." +
           known_keys_sentence(),
       {}});
  return [given, &runtime] { return save(*given, true, runtime); };
}

Action add_person_change(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<PersonOptions>();
  app.add_option("PERSON", given->name, "Key or name")->required();
  add_text(app, "--name", given->rename, "NAME", "Another name");
  add_person_options(app, *given);
  add_list(app, "--no-avoid", given->no_avoid, "KEYS", "No longer avoided")
      ->group("What the person must not have");
  add_list(app, "--no-diet", given->no_diets, "DIETS", "Diets no longer kept")
      ->group("What the person must not have");
  add_list(app, "--rate", given->ratings, "FOOD:NUMBER",
           "-2 refuses (a hard no), -1 dislikes, 0, 1, 2 likes");
  set_help(app,
           {"larderloop person change mira --avoid egg\n"
            "larderloop person change ada --appetite 1 --rate lentil-pouch:2\n",
            "Lists are added to; --no-avoid and --no-diet take away, and none takes away a day, a "
            "number, a word or a remark. Lots that are wrong from now on are named." +
                known_keys_sentence(),
            {}});
  return [given, &runtime] { return save(*given, false, runtime); };
}

Action add_person_list(CLI::App& app, Runtime& runtime) {
  auto all = std::make_shared<bool>(false);
  app.add_flag("--all", *all, "Also who is retired");
  set_help(app, {"larderloop person list\nlarderloop person list --json\n", "", {}});
  return [all, &runtime]() -> Result<int> {
    return runtime.read([&](const Household& book, Asked asked) -> Result<int> {
      Household household = book;
      auto& people = household.people;
      const auto gone = [](const Person& each) { return each.retired.has_value(); };
      if (!*all) people.erase(std::remove_if(people.begin(), people.end(), gone), people.end());
      if (runtime.options.json)
        runtime.print_bytes(render_people_json(household, asked.today));
      else
        runtime.print(render_people(household, runtime.width()));
      return 0;
    });
  };
}

Action add_person_show(CLI::App& app, Runtime& runtime) {
  auto name = std::make_shared<std::string>();
  app.add_option("PERSON", *name, "Key or name")->required();
  set_help(app, {"larderloop person show mira\n",
                 "Shows what the person must not have, and what lies wrong.",
                 {}});
  return [name, &runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      auto person = named_person(household, *name);
      if (!person) return fail(person.error());
      auto show = show_person(household, (*person)->key, asked.today);
      if (!show) return fail(show.error());
      if (runtime.options.json)
        runtime.print_bytes(render_person_json(household, *show, asked.today));
      else
        runtime.print(render_person(household, *show, asked.today));
      return 0;
    });
  };
}

}  // namespace larderloop::cli
