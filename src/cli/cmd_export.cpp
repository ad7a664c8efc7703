// export: the whole book as a household document, or one list of it as a spreadsheet.
#include "cli/command.h"
#include "cli/option_parts.h"
#include "cli/sheet_argument.h"
#include "larderloop/app/sheets.h"
#include "larderloop/intake/document.h"

#include <memory>

namespace larderloop::cli {

Action add_export(CLI::App& app, Runtime& runtime) {
  auto output = std::make_shared<std::string>();
  auto csv = std::make_shared<std::string>();
  app.add_option("-o,--output", *output, "Write to this file; - is standard output")
      ->type_name("FILE");
  add_text(app, "--csv", *csv, "SHEET",
           "One list as a spreadsheet (CSV): foods, lots, people or menu");
  set_help(app, {"larderloop export -o household.json\n"
                 "larderloop export | diff - household.json\n"
                 "larderloop export --csv lots -o lots.csv\n",
                 "The document holds everything, the record included; larderloop new --from makes "
                 "the same book of it. A spreadsheet may be changed and read back: larderloop "
                 "import. Texts that a spreadsheet would take for a formula, a number or a date "
                 "stand behind an apostrophe, which the import takes away.",
                 {}});
  return [output, csv, &runtime]() -> Result<int> {
    auto text = runtime.read([&](const Household& household, Asked) -> Result<std::string> {
      if (csv->empty()) return render_document(household);
      auto sheet = read_sheet("--csv", *csv);
      if (!sheet) return fail(sheet.error());
      return export_sheet(household, *sheet);
    });
    if (!text) return fail(text.error());
    if (Status written = runtime.deliver(*output, *text); !written) return fail(written.error());
    return 0;
  };
}

}  // namespace larderloop::cli
