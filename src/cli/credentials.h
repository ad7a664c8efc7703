// credentials.h - a name and a password from a file that nobody else can read; never from the
// command line or the environment.
#pragma once

#include "larderloop/core/result.h"

#include <string>

namespace larderloop::cli {

struct Credentials {
  std::string user;
  std::string password;
};
// The first line is the name, the second the password. kNotFound: no such file. kConfig: others may
// read or write it, it belongs to somebody else, it is no plain file, or it has no two lines.
[[nodiscard]] Result<Credentials> read_credentials(const std::string& path);

}  // namespace larderloop::cli
