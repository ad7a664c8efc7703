// settings show, settings set, review rule, and retire for people, foods and places.
#include "cli/command.h"
#include "cli/kit_argument.h"
#include "cli/option_parts.h"
#include "cli/values.h"
#include "larderloop/app/by_hand.h"
#include "larderloop/app/find.h"
#include "larderloop/calendar/rule.h"
#include "larderloop/render/by_hand.h"

#include <memory>

namespace larderloop::cli {
namespace {

constexpr int kMostSlack = 365;

struct SettingOptions {
  std::string name, value;
};
struct RuleOptions {
  std::string kit, rule, from, slack;
};
struct RetireOptions {
  std::string name, on;
  bool back = false;
};

template <class Thing, class Find, class Retire>
Action retire_action(CLI::App& app, Runtime& runtime, const std::string& kind, Find find,
                     Retire retire, const std::string& example, const std::string& details) {
  auto given = std::make_shared<RetireOptions>();
  std::string argument = kind;
  for (char& each : argument) each = static_cast<char>(each - 'a' + 'A');
  app.add_option(argument, given->name, "Key or name")->required();
  add_text(app, "--on", given->on, "DATE", "Since this day; today when left out");
  app.add_flag("--back", given->back, "Bring back what was retired");
  set_help(app, {"larderloop " + kind + " retire " + example + "\nlarderloop " + kind + " retire " +
                     example + " --back\n",
                 details,
                 {}});
  return [given, &runtime, kind, find, retire]() -> Result<int> {
    auto done =
        runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<Thing>> {
          auto thing = find(household, given->name);
          if (!thing) return fail(thing.error());
          std::optional<Day> on;
          if (!given->back) {
            on = asked.today;
            if (!given->on.empty()) {
              auto day = read_day("--on", given->on, asked.today);
              if (!day) return fail(day.error());
              on = *day;
            }
          }
          return retire(household, **thing, on, asked);
        });
    if (!done) return fail(done.error());
    const std::string key = done->key.str();
    if (runtime.options.json)
      runtime.print_bytes(
          render_retired_json(kind, key, done->name, done->retired, runtime.asked().today));
    runtime.note(done->retired ? "retired " + kind + " " + key + " (" + done->name +
                                     "); back: larderloop " + kind + " retire " + key + " --back"
                               : "brought back " + kind + " " + key + " (" + done->name + ")");
    return 0;
  };
}

}  // namespace

Action add_settings_show(CLI::App& app, Runtime& runtime) {
  set_help(app, {"larderloop settings show\nlarderloop settings show --json\n",
                 "Change one: larderloop settings set.",
                 {}});
  return [&runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      if (runtime.options.json)
        runtime.print_bytes(render_settings_json(household.settings, asked.today));
      else
        runtime.print(render_settings(household.settings, runtime.width()));
      return 0;
    });
  };
}

Action add_settings_set(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<SettingOptions>();
  app.add_option("SETTING", given->name, "Its name, as larderloop settings show has it")
      ->required();
  app.add_option("VALUE", given->value, "The new value")->required();
  set_help(app, {"larderloop settings set date-order dmy\nlarderloop settings set slack-days "
                 "21\nlarderloop settings set region eu\n",
                 "",
                 {}});
  return [given, &runtime]() -> Result<int> {
    std::string before;
    auto set =
        runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<Settings>> {
          before = setting_text(household.settings, underscored(given->name));
          return set_setting(household, underscored(given->name), given->value, asked);
        });
    if (!set) return fail(set.error());
    if (runtime.options.json)
      runtime.print_bytes(render_settings_json(*set, runtime.asked().today));
    runtime.note(dashed(given->name) + " is now '" + setting_text(*set, underscored(given->name)) +
                 "', it was '" + before + "'");
    return 0;
  };
}

Action add_review_rule(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<RuleOptions>();
  app.add_option("KIT", given->kit, "The kit; may be left out to see all rules");
  app.add_option("RULE", given->rule, "How often from now on; left out: only show it");
  add_text(app, "--from", given->from, "DATE", "No review before this day; today when left out");
  add_text(app, "--slack", given->slack, "DAYS",
           "Days behind the next review that what is in this kit must still last");
  set_help(app, {"larderloop review rule\nlarderloop review rule home-kit twice-a-year\n"
                 "larderloop review rule car-kit four-times-a-year --from 2027-06-01 --slack 21\n"
                 "larderloop review rule home-kit 'FREQ=YEARLY;BYMONTH=3,9;BYDAY=2SU'\n",
                 "RULE is twice-a-year (the first Saturday of April and October), "
                 "four-times-a-year, once-a-year, every-month, or a "
                 "recurrence rule as calendars have it (RFC 5545) that never ends.",
                 {}});
  return [given, &runtime]() -> Result<int> {
    if (given->rule.empty()) {
      return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
        std::vector<ReviewRule> rules = household.review_rules;
        if (!given->kit.empty()) {
          auto kit = kit_named(household, given->kit);
          if (!kit) return fail(kit.error());
          rules.erase(std::remove_if(rules.begin(), rules.end(),
                                     [&](const ReviewRule& each) { return each.kit != *kit; }),
                      rules.end());
        }
        if (runtime.options.json)
          runtime.print_bytes(render_review_rules_json(rules, asked.today));
        else
          runtime.print(render_review_rules(household, rules, runtime.width()));
        return 0;
      });
    }
    auto set =
        runtime.write([&](const Household& household, Asked asked) -> Result<Outcome<ReviewRule>> {
          auto kit = kit_named(household, given->kit);
          if (!kit) return fail(kit.error());
          Day from = asked.today;
          if (!given->from.empty()) {
            auto day = read_day("--from", given->from, asked.today);
            if (!day) return fail(day.error());
            from = *day;
          }
          std::optional<int> slack;
          for (const ReviewRule& each : household.review_rules) {
            if (each.kit == *kit) slack = each.slack_days;
          }
          if (!given->slack.empty()) {
            auto days = read_count("--slack", given->slack, 0, kMostSlack);
            if (!days) return fail(days.error());
            slack = static_cast<int>(*days);
          }
          return set_review_rule(household, *kit, given->rule, from, slack);
        });
    if (!set) return fail(set.error());
    if (runtime.options.json)
      runtime.print_bytes(render_review_rules_json({*set}, runtime.asked().today));
    runtime.note("the first review by this rule is on " + plain_day(set->starts) +
                 "; see: larderloop review dates " + set->kit.str());
    return 0;
  };
}

Action add_person_retire(CLI::App& app, Runtime& runtime) {
  return retire_action<Person>(
      app, runtime, "person", named_person, retire_person, "ada",
      "For somebody who moved out, or a pet that is no more. What they ate stays in the record; "
      "they leave the "
      "weekly table. Kit menus and wishes that name them have to be changed first.");
}
Action add_food_retire(CLI::App& app, Runtime& runtime) {
  return retire_action<Food>(app, runtime, "food", named_food, retire_food, "oat-bar",
                             "For a food that is not bought any more. It stays in the record and "
                             "is offered nowhere. Nothing of it may be "
                             "on hand, and no kit menu or wish may name it.");
}
Action add_place_retire(CLI::App& app, Runtime& runtime) {
  return retire_action<Place>(app, runtime, "place", named_place, retire_place, "box-2",
                              "For a place that is not used any more. It has to be empty, what is "
                              "inside it retired before, and no kit "
                              "menu may name it. A kit loses its review rule.");
}

}  // namespace larderloop::cli
