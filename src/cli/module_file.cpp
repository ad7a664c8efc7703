#include "cli/module_file.h"

#include <array>
#include <dlfcn.h>
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

Result<void*> module_entry(const char* file, const char* entry, const std::string& cannot,
                           const std::string& instead) {
  const std::string folder = own_folder();
  const std::array<std::string, 2> places = {folder + "/" + file,
                                             folder + "/../lib/larderloop/" + file};
  for (const std::string& place : places) {
    if (access(place.c_str(), R_OK) != 0) continue;
    void* opened = dlopen(place.c_str(), RTLD_NOW | RTLD_LOCAL);
    if (opened == nullptr) return fail(ErrorKind::kConfig, cannot + ": " + dlerror(), instead);
    if (void* found = dlsym(opened, entry); found != nullptr) return found;
    return fail(ErrorKind::kConfig, cannot + ": " + place + " is of another build", instead);
  }
  return fail(ErrorKind::kConfig, cannot + ": " + file + " is not beside the program", instead);
}

const char* own_build() {
  return LARDERLOOP_VERSION " " __VERSION__;
}

}  // namespace larderloop::cli
