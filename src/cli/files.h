// files.h - whole files in, whole files out.
#pragma once

#include "larderloop/core/result.h"

#include <string>
#include <string_view>

namespace larderloop::cli {

// The bytes of a file, or of standard input for "-". kNotFound: no such file; kBadData: a folder,
// or larger than 64 MiB.
[[nodiscard]] Result<std::string> read_input(const std::string& path);
// Written beside its place, synced and renamed, so that there is the old file or the whole new one.
// kOutput.
[[nodiscard]] Status write_file(const std::string& path, std::string_view bytes);
// Is it a regular file with just these bytes?
[[nodiscard]] bool file_holds(const std::string& path, std::string_view bytes);
// Makes the folders above a file, mode 0700 for new ones. kOutput.
[[nodiscard]] Status make_folder_of(const std::string& path);

}  // namespace larderloop::cli
