#include "cli/paper_module.h"

#include <array>
#include <cstring>
#include <dlfcn.h>
#include <string>
#include <unistd.h>

namespace larderloop::cli {
namespace {

std::string own_folder() {
  std::array<char, 4096> path{};
  const ssize_t length = readlink("/proc/self/exe", path.data(), path.size() - 1);
  if (length <= 0) return ".";
  const std::string whole(path.data(), static_cast<std::size_t>(length));
  return whole.substr(0, whole.rfind('/'));
}

}  // namespace

Result<const PaperModule*> paper_module() {
  const std::string folder = own_folder();
  const std::array<std::string, 2> places = {folder + "/" + kPaperModuleFile,
                                             folder + "/../lib/larderloop/" + kPaperModuleFile};
  std::string why;
  for (const std::string& place : places) {
    if (access(place.c_str(), R_OK) != 0) continue;
    void* opened = dlopen(place.c_str(), RTLD_NOW | RTLD_LOCAL);
    if (opened == nullptr) {
      why = dlerror();
      break;
    }
    const auto entry = reinterpret_cast<PaperModuleEntry>(dlsym(opened, kPaperModuleEntry));
    const PaperModule* module = entry == nullptr ? nullptr : entry();
    if (module == nullptr || std::strcmp(module->build, LARDERLOOP_VERSION " " __VERSION__) != 0 ||
        !module->same_form(PaperModule{})) {
      why = place + " is of another build";
      break;
    }
    return module;
  }
  if (why.empty()) why = std::string(kPaperModuleFile) + " is not beside the program";
  return fail(ErrorKind::kConfig, "cannot draw: " + why,
              "build both together, or print as HTML: --format html");
}

}  // namespace larderloop::cli
