#include "cli/paper_module.h"

#include "cli/module_file.h"

namespace larderloop::cli {

Result<const PaperModule*> paper_module() {
  return open_module<PaperModule, PaperModuleEntry>(
      kPaperModuleFile, kPaperModuleEntry, "cannot draw",
      "build both together, or print as HTML: --format html");
}

}  // namespace larderloop::cli
