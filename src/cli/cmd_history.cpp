// history: what became of the food, and what it was worth.
#include "cli/command.h"
#include "cli/values.h"
#include "larderloop/app/advice.h"
#include "larderloop/app/find.h"
#include "larderloop/app/history.h"
#include "larderloop/app/waste.h"
#include "larderloop/render/history.h"

#include <CLI/CLI.hpp>

#include <memory>

namespace larderloop::cli {
namespace {

struct Given {
  std::string food, year;
  bool advice = false;
};

// Which part of the record is meant.
struct Part {
  std::optional<FoodKey> food;
  std::optional<int> year;
};

Result<Part> read_part(const Given& given, const Household& household) {
  Part part;
  if (!given.food.empty()) {
    auto food = named_food(household, given.food);
    if (!food) return fail(food.error());
    part.food = (*food)->key;
  }
  if (!given.year.empty()) {
    auto number = read_count("--year", given.year, 1900, 2199);
    if (!number) return fail(number.error());
    part.year = static_cast<int>(*number);
  }
  return part;
}

struct Answer {
  HistoryReport history;
  WasteReport waste;
  std::vector<Advice> advice;
};

Result<int> show_history(const Given& given, Runtime& runtime) {
  auto answer = runtime.read([&](const Household& household, Asked asked) -> Result<Answer> {
    auto part = read_part(given, household);
    if (!part) return fail(part.error());
    auto history = make_history(household, part->year, part->food);
    if (!history) return fail(history.error());
    auto waste = make_waste(household, part->year, part->food);
    if (!waste) return fail(waste.error());
    Answer all{std::move(*history), std::move(*waste), {}};
    if (given.advice) {
      auto advice = make_advice(household, part->year, part->food, asked.today);
      if (!advice) return fail(advice.error());
      all.advice = std::move(*advice);
    }
    return all;
  });
  if (!answer) return fail(answer.error());
  const Household& household = runtime.household();
  if (runtime.options.json) {
    runtime.print_bytes(render_history_json(household, answer->history, answer->waste,
                                            given.advice ? &answer->advice : nullptr,
                                            runtime.asked().today));
    return 0;
  }
  if (given.advice) {
    runtime.print(render_advice_text(household, answer->advice));
    return 0;
  }
  runtime.print(render_history_text(household, answer->history));
  const std::string worth = render_waste_text(household, answer->waste);
  if (!worth.empty()) runtime.print("\n" + worth);
  return 0;
}

}  // namespace

Action add_history(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<Given>();
  app.add_option("FOOD", given->food, "Only this food");
  app.add_option("--year", given->year, "Only this year")->type_name("YEAR");
  app.add_flag(
      "--advice", given->advice,
      "The three foods thrown out most, and the one change that would have avoided the most of it");
  set_help(app, {"larderloop history\nlarderloop history lentil-stew --year 2026\nlarderloop "
                 "history --advice\n",
                 "What became of the food, by food and year, in servings; then what it was worth: "
                 "money, energy, and how many "
                 "days before its date it was eaten, given away or thrown out. The sums are those "
                 "of the record. Money is what was "
                 "paid for the lot, else the price of the food's cheapest pack, which is said; "
                 "what is not known is counted as "
                 "not known. --advice replays the record with another pack size, par level, food "
                 "or review date; docs/history.md says what it assumes.",
                 {}});
  return [given, &runtime]() -> Result<int> { return show_history(*given, runtime); };
}

}  // namespace larderloop::cli
