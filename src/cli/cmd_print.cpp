// print: what lies in the box on paper.
#include "cli/command.h"
#include "cli/kit_argument.h"
#include "cli/paper_module.h"
#include "cli/values.h"
#include "larderloop/app/paper.h"
#include "larderloop/render/paper_html.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cmath>
#include <memory>

namespace larderloop::cli {
namespace {

struct Given {
  std::string what, output, format, sheet = "a4", url, label, columns, rows, left, top, pitch_x,
                                    pitch_y, start_at;
  std::vector<std::string> kits;
  bool private_ = false, large = false, pantry = false, outlines = false;
};

std::string name_of_paper(PaperWhat what) {
  return dashed(paper_name(what));
}

// "63.5", "63.5mm": millimetres with at most two places behind the point.
Result<double> read_mm(const std::string& what, std::string text) {
  const auto wrong = [&] {
    return fail(ErrorKind::kBadData, "cannot read the length '" + text + "' of " + what,
                "write millimetres with a point, for example 63.5");
  };
  std::string digits = text;
  if (digits.size() > 2 && digits.compare(digits.size() - 2, 2, "mm") == 0)
    digits.resize(digits.size() - 2);
  const std::size_t point = digits.find('.');
  const std::string whole = digits.substr(0, point);
  std::string part = point == std::string::npos ? "" : digits.substr(point + 1);
  const auto all_digits = [](const std::string& each) {
    return std::all_of(each.begin(), each.end(),
                       [](char digit) { return digit >= '0' && digit <= '9'; });
  };
  if (whole.empty() || whole.size() > 3 || part.size() > 2 ||
      (point != std::string::npos && part.empty()) || !all_digits(whole) || !all_digits(part)) {
    return wrong();
  }
  while (part.size() < 2) part += '0';
  return std::stoi(whole) + std::stoi(part) / 100.0;
}

Result<LabelGrid> read_grid(const Given& given, PaperSheet sheet) {
  GridRequest request;
  if (!given.label.empty()) {
    const std::size_t cross = given.label.find('x');
    if (cross == std::string::npos) {
      return fail(ErrorKind::kBadData, "cannot read the size of a label '" + given.label + "'",
                  "write WIDTHxHEIGHT in mm, for example 63.5x38.1");
    }
    auto width = read_mm("--label", given.label.substr(0, cross));
    if (!width) return fail(width.error());
    auto height = read_mm("--label", given.label.substr(cross + 1));
    if (!height) return fail(height.error());
    request.width = *width;
    request.height = *height;
  }
  const auto length = [](const char* name, const std::string& text,
                         std::optional<double>& into) -> Status {
    if (text.empty()) return {};
    auto read = read_mm(name, text);
    if (!read) return fail(read.error());
    into = *read;
    return {};
  };
  const auto count = [](const char* name, const std::string& text,
                        std::optional<int>& into) -> Status {
    if (text.empty()) return {};
    auto read = read_count(name, text, 1, 50);
    if (!read) return fail(read.error());
    into = static_cast<int>(*read);
    return {};
  };
  for (const Status& done :
       {count("--columns", given.columns, request.columns),
        count("--rows", given.rows, request.rows), length("--left", given.left, request.left),
        length("--top", given.top, request.top),
        length("--pitch-x", given.pitch_x, request.pitch_x),
        length("--pitch-y", given.pitch_y, request.pitch_y)}) {
    if (!done) return fail(done.error());
  }
  return label_grid(sheet, request);
}

Status check_url(const std::string& url) {
  const auto starts = [&](std::string_view with) { return url.compare(0, with.size(), with) == 0; };
  const bool plain =
      std::all_of(url.begin(), url.end(), [](char each) { return each > 0x20 && each < 0x7f; });
  if ((starts("http://") || starts("https://") || starts("webcal://") || starts("webcals://")) &&
      plain && url.size() <= 500)
    return {};
  return fail(ErrorKind::kBadData, "'" + url + "' is not an address for a code",
              "give a web address without blanks, for example --url https://example.org/kit");
}

Result<std::string> read_format(const Given& given) {
  const auto ends = [&](std::string_view with) {
    return given.output.size() > with.size() &&
           given.output.compare(given.output.size() - with.size(), with.size(), with) == 0;
  };
  if (given.format.empty()) return std::string(ends(".html") || ends(".htm") ? "html" : "pdf");
  if (given.format == "html" || given.format == "pdf") return given.format;
  return fail(unknown_word("--format", given.format, {"pdf", "html"}));
}

Result<PaperRequest> read_request(const Given& given) {
  PaperRequest request;
  auto what =
      read_word<PaperWhat>("WHAT", given.what, parse_paper, names_of(kAllPapers, paper_name));
  if (!what) return fail(what.error());
  auto size = read_word<PaperSize>("--sheet", given.sheet, parse_paper_size,
                                   names_of(kAllPaperSizes, paper_size_name));
  if (!size) return fail(size.error());
  request.what = *what;
  request.sheet.size = *size;
  const bool grid = !(given.label + given.columns + given.rows + given.left + given.top +
                      given.pitch_x + given.pitch_y + given.start_at)
                         .empty() ||
                    given.outlines;
  if (*what == PaperWhat::kLabels) {
    auto made = read_grid(given, request.sheet);
    if (!made) return fail(made.error());
    request.grid = *made;
    if (!given.start_at.empty()) {
      auto start = read_count("--start-at", given.start_at, 1, made->count());
      if (!start) return fail(start.error());
      request.start_at = static_cast<int>(*start);
    }
  } else if (grid) {
    return fail(ErrorKind::kUsage, "the options of label sheets are for 'labels'",
                "larderloop print labels -o labels.pdf");
  }
  if (!given.url.empty()) {
    if (*what != PaperWhat::kBoxCard && *what != PaperWhat::kHousehold) {
      return fail(ErrorKind::kUsage, "'--url' is for 'box-card' and 'household'",
                  "leave it out here");
    }
    if (Status sound = check_url(given.url); !sound) return fail(sound.error());
  }
  if (given.pantry && *what != PaperWhat::kReplacementList) {
    return fail(ErrorKind::kUsage, "'--pantry' is for 'replacement-list'", "leave it out here");
  }
  request.url = given.url;
  request.private_ = given.private_;
  request.large = given.large;
  request.pantry = given.pantry;
  request.outlines = given.outlines;
  return request;
}

Result<PaperDocument> make_document(const Given& given, PaperRequest request, Runtime& runtime) {
  const auto make = [&](const Household& household, Asked asked) -> Result<PaperDocument> {
    for (const std::string& text : given.kits) {
      auto kit = kit_named(household, text);
      if (!kit) return fail(kit.error());
      request.kits.push_back(*kit);
    }
    return make_paper(household, request, asked.today);
  };
  if (request.what != PaperWhat::kReplacementList) return runtime.read(make);
  auto plan = runtime.keep(
      [](const Household& household, Asked asked) { return make_plan(household, asked); });
  if (!plan) return fail(plan.error());
  request.plan = &*plan;
  return make(runtime.household(), runtime.asked());
}

Result<int> print_it(const Given& given, Runtime& runtime) {
  auto request = read_request(given);
  if (!request) return fail(request.error());
  auto format = read_format(given);
  if (!format) return fail(format.error());
  const bool to_stream = given.output.empty() || given.output == "-";
  if (to_stream && runtime.options.json) {
    return fail(ErrorKind::kUsage, "with '--json' the paper goes to a file",
                "name it: -o " + name_of_paper(request->what) + "." + *format);
  }
  if (to_stream && *format == "pdf" && runtime.width() > 0) {
    return fail(ErrorKind::kUsage, "a PDF is nothing for a terminal",
                "name a file: -o " + name_of_paper(request->what) + ".pdf");
  }
  auto document = make_document(given, *request, runtime);
  if (!document) return fail(document.error());
  const PaperModule* module = nullptr;
  if (*format == "pdf" || !request->url.empty()) {
    auto opened = paper_module();
    if (!opened) return fail(opened.error());
    module = *opened;
  }
  if (!request->url.empty()) {
    if (Status made = module->codes(*document); !made) return fail(made.error());
  }
  Printed printed{request->what,
                  *format,
                  given.output,
                  request->sheet,
                  0,
                  static_cast<int>(document->pages.size()),
                  static_cast<int>(document->labels.size()),
                  {}};
  std::string bytes;
  std::vector<std::string> too_long;
  if (*format == "pdf") {
    auto pdf = module->draw(*document, runtime.asked().now);
    if (!pdf) return fail(pdf.error());
    bytes = std::move(pdf->bytes);
    printed.sheets = pdf->sheets;
    too_long = pdf->too_long;
    for (const std::string& text : pdf->no_glyphs) {
      printed.warnings.push_back("no font here has all letters of '" + text +
                                 "': install one, for example fonts-noto-core or fonts-noto-cjk");
    }
  } else {
    PaperHtml html = render_paper_html(*document);
    bytes = std::move(html.text);
    too_long = html.too_long;
  }
  for (const std::string& title : too_long) {
    printed.warnings.push_back(
        "not everything fits on the label '" + title +
        "': what must be avoided is only on the box card; take larger labels: --label 99.1x67.7");
  }
  if (Status done = runtime.deliver(given.output, bytes); !done) return fail(done.error());
  for (const std::string& warning : printed.warnings) runtime.warn(warning);
  if (runtime.options.json)
    runtime.print_bytes(render_printed_json(printed, runtime.asked().today));
  return 0;
}

}  // namespace

Action add_print(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<Given>();
  app.add_option("WHAT", given->what,
                 "labels, box-card, review-sheet, menu-card, household or replacement-list")
      ->required();
  app.add_option("-o,--output", given->output, "Write to this file; - is standard output")
      ->type_name("FILE");
  app.add_option("--format", given->format,
                 "pdf or html; without it, what the file's name says, else pdf")
      ->type_name("FORMAT");
  app.add_option("--sheet", given->sheet, "a4 or letter")->type_name("SIZE");
  app.add_option("--kit", given->kits, "Only this kit; may be given again")->type_name("KIT");
  app.add_flag("--large", given->large, "Large type");
  app.add_flag("--private", given->private_,
               "Leave health facts off: allergies, diets and why something is not for somebody");
  app.add_option("--url", given->url, "On box-card and household: a code that opens this address")
      ->type_name("URL");
  app.add_flag("--pantry", given->pantry,
               "On replacement-list: also what is missing to the par levels of the pantry");
  app.add_option("--label", given->label, "Size of one label in mm, WIDTHxHEIGHT")
      ->type_name("SIZE");
  app.add_option("--columns", given->columns, "Labels side by side on a sheet")->type_name("N");
  app.add_option("--rows", given->rows, "Labels below each other on a sheet")->type_name("N");
  app.add_option("--left", given->left, "From the left edge of the sheet to the first label, in mm")
      ->type_name("MM");
  app.add_option("--top", given->top, "From the upper edge of the sheet to the first label, in mm")
      ->type_name("MM");
  app.add_option("--pitch-x", given->pitch_x,
                 "From the left edge of a label to that of the next, in mm")
      ->type_name("MM");
  app.add_option("--pitch-y", given->pitch_y,
                 "From the upper edge of a label to that of the next, in mm")
      ->type_name("MM");
  app.add_option("--start-at", given->start_at,
                 "The first label that is still on a half-used sheet, counted row by row")
      ->type_name("N");
  app.add_flag("--outlines", given->outlines,
               "Draw the edges of the labels, to try a sheet or to cut plain paper");
  set_help(app, {"larderloop print labels -o labels.pdf\nlarderloop print labels --label 63.5x38.1 "
                 "--start-at 4 -o labels.pdf\n"
                 "larderloop print menu-card --large -o card.pdf\nlarderloop print box-card "
                 "--sheet letter -o cards.html\n",
                 "What lies in the box on paper, black on white. The cards and labels say what "
                 "their owner must not have: that is "
                 "what they are for, and they stay in the house; --private leaves it off. Food "
                 "that somebody must not have, or whose "
                 "label nobody has read, is printed with a warning or not at all. Label sheets "
                 "known by their size in mm: on A4 "
                 "105x74, 99.1x67.7, 99.1x38.1, 63.5x46.6, 70x37, 63.5x38.1; on letter "
                 "101.6x84.67, 101.6x50.8, 66.68x25.4. "
                 "Try a sheet with --outlines on plain paper first, and print at 100 %.",
                 {}});
  return [given, &runtime]() -> Result<int> { return print_it(*given, runtime); };
}

}  // namespace larderloop::cli
