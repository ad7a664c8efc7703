// why: the reason of a lot's fate, of a meal, of something on the replacement list.
#include "cli/command.h"
#include "cli/values.h"
#include "larderloop/app/find.h"
#include "larderloop/app/why.h"
#include "larderloop/core/lowered.h"
#include "larderloop/render/why.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <memory>
#include <sstream>

namespace larderloop::cli {
namespace {

std::vector<std::string> words_of(const std::vector<std::string>& given) {
  std::vector<std::string> words;
  for (const std::string& each : given) {
    std::istringstream text(each);
    for (std::string word; text >> word;) words.push_back(word);
  }
  return words;
}

// "tue", "Tuesday": the first such day from today on.
std::optional<Day> named_weekday(const std::string& text, Day today) {
  const std::string word = lowered(text);
  if (word.size() < 3) return std::nullopt;
  for (int ahead = 0; ahead < 7; ++ahead) {
    const Day day = today + Days(ahead);
    const std::string name = lowered(std::string(weekday_name(weekday_of(day))));
    if (name == word || name.substr(0, 3) == word) return day;
  }
  return std::nullopt;
}

// A day and a meal; nothing when the last word is no meal.
Result<std::optional<MealTime>> read_meal_time(const std::vector<std::string>& words, Day today) {
  if (words.size() != 2) return std::optional<MealTime>{};
  const auto meal = parse_meal(lowered(words.back()));
  if (!meal) return std::optional<MealTime>{};
  if (const auto day = named_weekday(words.front(), today))
    return std::optional<MealTime>{{*day, *meal}};
  auto day = read_day("the day of the meal", lowered(words.front()), today);
  if (!day) return fail(day.error());
  return std::optional<MealTime>{{*day, *meal}};
}

bool is_number(const std::string& text) {
  return !text.empty() &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

Result<WhyAbout> read_about(const Household& household, const std::vector<std::string>& given,
                            Day today) {
  const std::vector<std::string> words = words_of(given);
  auto when = read_meal_time(words, today);
  if (!when) return fail(when.error());
  if (*when) return WhyAbout(**when);
  const std::string text = joined_words(words);
  const std::string& last = words.empty() ? text : words.back();
  if (is_number(last[0] == '#' ? last.substr(1) : last) &&
      (words.size() == 1 || lowered(words.front()) == "lot")) {
    auto lot = named_lot(household, words.size() == 1 ? last : "lot " + last);
    if (!lot) return fail(lot.error());
    return WhyAbout((*lot)->id);
  }
  auto food = named_food(household, text);
  if (!food) {
    Error error = food.error();
    if (error.kind == ErrorKind::kNotFound)
      error.next_step =
          "name a lot by number, a meal as 'tue dinner' or '2027-04-06 dinner', or a food to buy";
    return fail(error);
  }
  return WhyAbout((*food)->key);
}

}  // namespace

Action add_why(CLI::App& app, Runtime& runtime) {
  auto what = std::make_shared<std::vector<std::string>>();
  app.add_option("WHAT", *what, "A lot, a meal (day and meal), or a food on the replacement list")
      ->required();
  set_help(app,
           {"larderloop why 17\nlarderloop why tue dinner\nlarderloop why 2027-04-06 dinner\n"
            "larderloop why chickpea-can\n",
            "The reason is found in the plan itself: a rule is named when a better plan would be "
            "possible "
            "without it, another way is named with what would be worse about it. A day is a date, "
            "today, tomorrow, +3d or a weekday, which is the next one.",
            {}});
  return [what, &runtime]() -> Result<int> {
    auto report =
        runtime.keep([&](const Household& household, Asked asked) -> Result<Outcome<WhyReport>> {
          auto about = read_about(household, *what, asked.today);
          if (!about) return fail(about.error());
          return why(household, *about, asked);
        });
    if (!report) return fail(report.error());
    if (runtime.options.json) {
      runtime.print_bytes(render_why_json(runtime.household(), *report));
    } else {
      runtime.print(render_why_text(runtime.household(), *report));
    }
    return 0;
  };
}

}  // namespace larderloop::cli
