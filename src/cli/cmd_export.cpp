// export: the whole book as a household document.
#include "cli/command.h"
#include "larderloop/intake/document.h"

#include <CLI/CLI.hpp>

#include <memory>

namespace larderloop::cli {

Action add_export(CLI::App& app, Runtime& runtime) {
  auto output = std::make_shared<std::string>();
  app.add_option("-o,--output", *output, "Write to this file; - is standard output")
      ->type_name("FILE");
  set_help(app, {"larderloop export -o household.json\n"
                 "larderloop export | diff - household.json\n",
                 "The document holds everything, the record included; larderloop new --from makes "
                 "the same book of it.",
                 {}});
  return [output, &runtime]() -> Result<int> {
    auto text = runtime.read([](const Household& household, Asked) {
      return Result<std::string>(render_document(household));
    });
    if (!text) return fail(text.error());
    if (Status written = runtime.deliver(*output, *text); !written) return fail(written.error());
    return 0;
  };
}

}  // namespace larderloop::cli
