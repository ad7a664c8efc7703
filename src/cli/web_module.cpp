#include "cli/web_module.h"

#include "cli/module_file.h"

namespace larderloop::cli {

Result<const WebModule*> web_module() {
  return open_module<WebModule, WebModuleEntry>(
      kWebModuleFile, kWebModuleEntry, "cannot serve",
      "build both together, or publish a file: larderloop calendar -o FILE");
}

}  // namespace larderloop::cli
