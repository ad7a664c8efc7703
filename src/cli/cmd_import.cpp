// import, template, mapping list, mapping remove: spreadsheets into the book.
#include "cli/command.h"
#include "cli/files.h"
#include "cli/option_parts.h"
#include "cli/sheet_argument.h"
#include "cli/values.h"
#include "larderloop/app/sheets.h"
#include "larderloop/core/validate.h"
#include "larderloop/render/sheets.h"

#include <algorithm>
#include <memory>

namespace larderloop::cli {
namespace {

constexpr std::size_t kShownByReport = 20;

struct ImportOptions {
  std::string file, sheet, mapping, save_mapping, delimiter, read_by;
  std::vector<std::string> columns;
  bool pass_over = false;
  bool counted = false;
};

Result<std::optional<char>> read_delimiter(const std::string& text) {
  if (text.empty()) return std::optional<char>();
  for (const auto& [name, sign] :
       {std::pair{"comma", ','}, {"semicolon", ';'}, {"tab", '\t'}, {"bar", '|'}}) {
    if (text == name || text == std::string(1, sign)) return std::optional<char>(sign);
  }
  return fail(unknown_word("--delimiter", text, {"comma", "semicolon", "tab", "bar"}));
}

Result<SheetRequest> request_of(const ImportOptions& given) {
  SheetRequest request;
  auto sheet = read_sheet("--as", given.sheet);
  if (!sheet) return fail(sheet.error());
  request.sheet = *sheet;
  auto delimiter = read_delimiter(given.delimiter);
  if (!delimiter) return fail(delimiter.error());
  request.delimiter = *delimiter;
  for (const std::string& each : given.columns) {
    const std::size_t sign = each.rfind('=');
    if (sign == std::string::npos || sign == 0) {
      return fail(
          ErrorKind::kUsage, "cannot read --column '" + each + "'",
          "write the header as it stands in the file and our column, as 'Best before=date'; "
          "nothing behind = passes over it");
    }
    request.columns[each.substr(0, sign)] = each.substr(sign + 1);
  }
  request.mapping = given.mapping;
  request.save_mapping = given.save_mapping;
  request.pass_over = given.pass_over;
  request.read_by = given.read_by;
  request.counted = given.counted;
  auto bytes = read_input(given.file);
  if (!bytes) return fail(bytes.error());
  request.bytes = std::move(*bytes);
  return request;
}

void show(Runtime& runtime, const SheetReport& report) {
  if (report.encoding != "UTF-8")
    runtime.note("the file was read as " + report.encoding +
                 "; see that letters with accents are right");
  for (const std::string& each : report.first) runtime.warn(each);
  if (!runtime.options.json) runtime.print(render_sheet_report(report));
  for (const std::string& each : report.notes) runtime.note(each);
}

// Everything that is wrong is listed, however much it is; the last line sums it up.
tl::unexpected<Error> refused(Runtime& runtime, Error error) {
  if (runtime.options.json || error.problems.size() <= kShownByReport)
    return fail(std::move(error));
  std::string text;
  for (const Problem& each : error.problems) {
    text += each.where + ": " + each.what;
    if (!each.value.empty() && each.what.find(each.value) == std::string::npos)
      text += " ('" + each.value + "')";
    text += "\n    hint: " + each.remedy + "\n";
  }
  runtime.warn_lines(text);
  error.problems.clear();
  return fail(std::move(error));
}

Result<int> run(const ImportOptions& given, Runtime& runtime) {
  auto request = request_of(given);
  if (!request) return fail(request.error());
  const bool at_once = runtime.options.yes || runtime.options.dry_run;
  if (!at_once) {
    auto tried = runtime.read([&](const Household& household, Asked asked) -> Result<SheetReport> {
      auto outcome = import_sheet(household, *request, asked);
      if (!outcome) return fail(outcome.error());
      return std::move(outcome->report);
    });
    if (!tried) return refused(runtime, tried.error());
    show(runtime, *tried);
    const std::size_t count = tried->added + tried->changed + tried->counted;
    if (count > 0) {
      auto yes = runtime.confirm("write this into the book");
      if (!yes) return fail(yes.error());
      if (!*yes) {
        runtime.note("nothing was written");
        return 0;
      }
    } else if (tried->saved_mapping.empty()) {
      if (runtime.options.json)
        runtime.print_bytes(render_sheet_report_json(*tried, runtime.asked().today));
      return 0;
    }
  }
  auto imported = runtime.write([&](const Household& household, Asked asked) {
    return import_sheet(household, *request, asked);
  });
  if (!imported) return refused(runtime, imported.error());
  if (at_once) show(runtime, *imported);
  if (runtime.options.json)
    runtime.print_bytes(render_sheet_report_json(*imported, runtime.asked().today));
  if (runtime.options.dry_run) return 0;
  const std::size_t count = imported->added + imported->changed + imported->counted;
  if (count > 0)
    runtime.note("wrote " + std::to_string(count) + (count == 1 ? " row" : " rows") +
                 " into the book");
  if (!imported->saved_mapping.empty())
    runtime.note("kept the columns as '" + imported->saved_mapping + "'; next time: --mapping '" +
                 imported->saved_mapping + "'");
  return 0;
}

}  // namespace

Result<SheetKind> read_sheet(const std::string& what, const std::string& text) {
  return read_word<SheetKind>(what, text, parse_sheet_kind,
                              names_of(kAllSheetKinds, sheet_kind_name));
}

Action add_import(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ImportOptions>();
  app.add_option("FILE", given->file, "The spreadsheet, saved as CSV; - is standard input")
      ->required();
  add_text(app, "--as", given->sheet, "SHEET", "What its rows are: foods, lots, people or menu")
      ->required();
  app.add_option("--column", given->columns,
                 "What a column is, as 'Best before=date'; may be repeated; nothing behind = "
                 "passes over it")
      ->allow_extra_args(false)
      ->type_name("HEADER=COLUMN");
  add_text(app, "--mapping", given->mapping, "NAME", "What the columns are, as it was kept");
  add_text(app, "--save-mapping", given->save_mapping, "NAME",
           "Keep in the book what the columns of this file are");
  app.add_flag("--pass-over", given->pass_over, "Pass over every column that means nothing here");
  add_text(app, "--delimiter", given->delimiter, "SIGN",
           "What stands between cells: comma, semicolon, tab, bar; found by itself if left out");
  add_text(app, "--read-by", given->read_by, "NAME",
           "Who read the labels of rows that do not say it");
  app.add_flag("--counted", given->counted,
               "Lots: where a row names the lot by its number and another amount, that is a count");
  set_help(app,
           {"larderloop import pantry.csv --as lots -n\n"
            "larderloop import pantry.csv --as lots --column 'Haltbar=date' --column 'Regal="
            "place' \\\n"
            "  --save-mapping 'old list'\n"
            "larderloop import pantry.csv --as lots --mapping 'old list' -y\n",
            "With -n it says what would be written, or everything that is wrong, by line, column "
            "and value. Nothing is written unless every row is right. Rows that the book has "
            "already are not written again. An empty cell says nothing; for allergens it is "
            "unknown, and none has to be written out. Dates are read as printed. The columns: "
            "larderloop template lots --explain.",
            {{4, "the file or the mapping was not found"}}});
  return [given, &runtime] { return run(*given, runtime); };
}

Action add_template(CLI::App& app, Runtime& runtime) {
  auto given = std::make_shared<ImportOptions>();
  auto explain = std::make_shared<bool>(false);
  app.add_option("SHEET", given->sheet, "foods, lots, people or menu")->required();
  app.add_option("-o,--output", given->file, "Write to this file; - is standard output")
      ->type_name("FILE");
  app.add_flag("--explain", *explain, "Say what each column is, with an example");
  set_help(app,
           {"larderloop template lots -o lots.csv\nlarderloop template lots --explain\n",
            "An empty spreadsheet: the first row names the columns. Fill in a row a lot, food, "
            "person or menu line, leave out columns that you do not need, save it as CSV, and "
            "then: larderloop import.",
            {}});
  return [given, explain, &runtime]() -> Result<int> {
    auto sheet = read_sheet("SHEET", given->sheet);
    if (!sheet) return fail(sheet.error());
    auto asked = runtime.ask(Settings{});
    if (!asked) return fail(asked.error());
    const std::string text = runtime.options.json ? render_sheet_columns_json(*sheet, asked->today)
                             : *explain           ? render_sheet_columns(*sheet, runtime.width())
                                                  : sheet_template(*sheet);
    if (Status written = runtime.deliver(given->file, text); !written) return fail(written.error());
    if (!*explain && !runtime.options.json)
      runtime.note("what the columns say: larderloop template " + given->sheet + " --explain");
    return 0;
  };
}

Action add_mapping_list(CLI::App& app, Runtime& runtime) {
  set_help(app, {"larderloop mapping list\nlarderloop mapping list --json\n",
                 "They are kept by larderloop import --save-mapping.",
                 {}});
  return [&runtime]() -> Result<int> {
    return runtime.read([&](const Household& household, Asked asked) -> Result<int> {
      if (runtime.options.json)
        runtime.print_bytes(render_mappings_json(household.mappings, asked.today));
      else
        runtime.print(render_mappings(household.mappings, runtime.width()));
      return 0;
    });
  };
}

Action add_mapping_remove(CLI::App& app, Runtime& runtime) {
  auto name = std::make_shared<std::string>();
  app.add_option("MAPPING", *name, "Its name")->required();
  set_help(app, {"larderloop mapping remove 'old list'\n", "What was imported with it stays.", {}});
  return [name, &runtime]() -> Result<int> {
    auto removed =
        runtime.write([&](const Household& household, Asked) -> Result<Outcome<ImportMapping>> {
          std::vector<std::string> names;
          for (const ImportMapping& each : household.mappings) {
            names.push_back(each.name);
            if (each.name != *name) continue;
            Outcome<ImportMapping> outcome;
            outcome.report = each;
            outcome.changes.mappings_back = {each.name};
            return outcome;
          }
          const std::string near = nearest(*name, names);
          return fail(
              ErrorKind::kNotFound, "no mapping is kept under the name '" + *name + "'",
              near.empty() ? "see them: larderloop mapping list" : "did you mean '" + near + "'?");
        });
    if (!removed) return fail(removed.error());
    if (runtime.options.json)
      runtime.print_bytes(render_mappings_json({*removed}, runtime.asked().today));
    runtime.note("removed the mapping '" + removed->name + "'");
    return 0;
  };
}

}  // namespace larderloop::cli
