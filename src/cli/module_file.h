// module_file.h - opens a room that is a file of its own, beside the program or in
// ../lib/larderloop.
#pragma once

#include "larderloop/core/result.h"

#include <cstring>
#include <string>

namespace larderloop::cli {

// The entry of a module's file. `cannot`, `instead`: what is not possible without it, and what to
// do then. kConfig when it is not there or lacks a library.
[[nodiscard]] Result<void*> module_entry(const char* file, const char* entry,
                                         const std::string& cannot, const std::string& instead);
// The compiler and version this program was built with.
[[nodiscard]] const char* own_build();

// Once a run; it stays open. kConfig when it is not there, not of this build, or lacks a library.
template <class Module, class Entry>
Result<const Module*> open_module(const char* file, const char* entry, const std::string& cannot,
                                  const std::string& instead) {
  auto found = module_entry(file, entry, cannot, instead);
  if (!found) return fail(found.error());
  const Module* module = reinterpret_cast<Entry>(*found)();
  if (module == nullptr || std::strcmp(module->build, own_build()) != 0 ||
      !module->same_form(Module{}))
    return fail(ErrorKind::kConfig, cannot + ": " + file + " is of another build", instead);
  return module;
}

}  // namespace larderloop::cli
