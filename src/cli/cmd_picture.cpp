// picture: the kit and the record as SVG.
#include "cli/command.h"
#include "cli/kit_argument.h"
#include "cli/values.h"
#include "larderloop/app/history.h"
#include "larderloop/app/reviews.h"
#include "larderloop/app/waste.h"
#include "larderloop/render/picture.h"

#include <CLI/CLI.hpp>

#include <memory>

namespace larderloop::cli {
namespace {

struct Given {
  std::string what, kit, output;
};

struct Answer {
  std::string svg;
  Drawn drawn;
};

Result<std::vector<PlaceKey>> read_kits(const Given& given, const Household& household) {
  if (given.what == "stock" && given.kit.empty()) return places_of_kind(household, PlaceKind::kKit);
  auto kit = kit_named(household, given.kit);
  if (!kit) return fail(kit.error());
  return std::vector<PlaceKey>{*kit};
}

Result<std::string> draw_kits(const Household& household, const std::string& what,
                              const std::vector<PlaceKey>& kits, Day today) {
  std::vector<ReviewSheet> sheets;
  for (const PlaceKey& kit : kits) {
    auto sheet = review_sheet(household, kit, today);
    if (!sheet) return fail(sheet.error());
    sheets.push_back(std::move(*sheet));
  }
  if (what == "stock") return render_stock_svg(household, sheets, today);
  auto slots = review_slots(household, kits.front(), today);
  if (!slots) return fail(slots.error());
  return render_timeline_svg(household, sheets.front(), *slots, today);
}

Result<std::string> draw_history(const Household& household, Day today) {
  auto history = make_history(household, std::nullopt, std::nullopt);
  if (!history) return fail(history.error());
  auto waste = make_waste(household, std::nullopt, std::nullopt);
  if (!waste) return fail(waste.error());
  return render_history_svg(household, *history, *waste, today);
}

Result<Answer> draw(const Given& given, const Household& household, Day today) {
  Answer answer;
  if (given.what != "history") {
    auto kits = read_kits(given, household);
    if (!kits) return fail(kits.error());
    answer.drawn.kits = std::move(*kits);
  }
  auto svg = given.what == "history" ? draw_history(household, today)
                                     : draw_kits(household, given.what, answer.drawn.kits, today);
  if (!svg) return fail(svg.error());
  answer.drawn.what = given.what;
  answer.drawn.file = given.output;
  const std::string group = "<g class=\"";
  for (std::size_t at = svg->find(group); at != std::string::npos; at = svg->find(group, at + 1))
    ++answer.drawn.bars;
  answer.svg = std::move(*svg);
  return answer;
}

Result<int> picture_it(const Given& given, Runtime& runtime) {
  if (given.what != "timeline" && given.what != "stock" && given.what != "history")
    return fail(unknown_word("WHAT", given.what, {"timeline", "stock", "history"}));
  if (given.what == "history" && !given.kit.empty()) {
    return fail(ErrorKind::kUsage, "'--kit' is for 'timeline' and 'stock'", "leave it out here");
  }
  if (runtime.options.json && (given.output.empty() || given.output == "-")) {
    return fail(ErrorKind::kUsage, "with '--json' the picture goes to a file",
                "name it: -o " + given.what + ".svg");
  }
  auto answer = runtime.read(
      [&](const Household& household, Asked asked) { return draw(given, household, asked.today); });
  if (!answer) return fail(answer.error());
  if (Status done = runtime.deliver(given.output, answer->svg); !done) return fail(done.error());
  if (runtime.options.json)
    runtime.print_bytes(render_drawn_json(answer->drawn, runtime.asked().today));
  return 0;
}

}  // namespace

Action add_picture(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<Given>();
  app.add_option("WHAT", given->what, "timeline, stock or history")->required();
  app.add_option("--kit", given->kit, "Of this kit; stock shows all of them without it")
      ->type_name("KIT");
  app.add_option("-o,--output", given->output, "Write to this file; - is standard output")
      ->type_name("FILE");
  set_help(app, {"larderloop picture timeline --kit home-kit -o timeline.svg\n"
                 "larderloop picture stock -o stock.svg\nlarderloop picture history -o years.svg\n",
                 "A picture as SVG, for a phone, a browser or paper, black on white: 'timeline' is "
                 "what lies in a kit by good-through "
                 "date, with the reviews and the hold-until date; 'stock' is how much lies in each "
                 "bag and box and how much of it "
                 "lasts; 'history' is what was eaten, given away and thrown out in each year. "
                 "Every amount and date stands beside its bar.",
                 {}});
  return [given, &runtime]() -> Result<int> { return picture_it(*given, runtime); };
}

}  // namespace larderloop::cli
